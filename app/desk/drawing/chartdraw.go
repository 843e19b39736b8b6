package drawing

import (
	"image/color"
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// frame is the part of the picture in which the curves stand, and what its
// sides mean.
type frame struct {
	left, right, top, bottom float64
	x, y                     span
	xTicks, yTicks           scale
}

func (f frame) px(x float64) float64 { return f.left + (x-f.x.low)/f.x.wide()*(f.right-f.left) }
func (f frame) py(y float64) float64 { return f.bottom - (y-f.y.low)/f.y.wide()*(f.bottom-f.top) }
func (f frame) xAt(px float64) float64 {
	return f.x.low + (px-f.left)/(f.right-f.left)*f.x.wide()
}

// The white in a chart, in units.
const (
	margin     = 2  // at the left edge
	besideTick = 7  // between an axis and the numbers along it
	rowHigh    = 16 // a row of text
	rows       = 4  // of text; a lower chart goes without its lowest
	lastRow    = 9  // the middle of the lowest row above the lower edge
	edge       = 5  // above and below the curves, so that none is cut
)

func (c *Chart) draw(p *pen, size fyne.Size) {
	g, wide, tall := c.graph, float64(size.Width), float64(size.Height)
	if len(g.curves) == 0 {
		c.frame = frame{}
		drawNote(p, g.note, wide, tall)
		return
	}
	// the pointer moves over what stands
	if now := [3]float32{size.Width, size.Height, c.grown()}; c.set == nil || c.setFor != now {
		c.set, c.setFor = bestSetting(p, g, wide, tall), now
	}
	set, f := c.set, c.set.frame
	c.frame = f
	drawAxes(p, set)
	drawMarks(p, g, f)
	for i, one := range g.curves {
		drawCurve(p, f.places(one.parts), styleOf(g.id, one.id, i))
	}
	if !c.pointed || !c.drawPointed(p, f, wide, tall) {
		p.label(set.name)
	}
	for _, l := range set.labels {
		p.label(l)
	}
	for _, one := range set.keyed {
		r := set.room(one.label)
		drawCurve(p, line(point{r.x - keyWide, one.label.at.y}, point{r.x - keyGap, one.label.at.y}), styleOf(g.id, g.curves[one.of].id, one.of))
	}
}

// frameFor lays out the sides of a chart with so much white above and below
// the curves.
func frameFor(p *pen, g graph, wide, tall, above, below float64) frame {
	f := frame{top: rowHigh + 4, bottom: tall - lastRow - 1.5*rowHigh - besideTick}
	f.bottom = math.Max(f.bottom, f.top+1)
	f.x, f.y = g.spans()
	high, near := f.bottom-f.top, f.y.wide()*0.15
	unit := f.y.wide() / math.Max(high-above-below, high/4)
	f.y = span{f.y.low - below*unit, f.y.high + above*unit}
	f.yTicks = ticks(f.y, math.Min(6, high/28), g.y.Unit)
	// down to a round value where one is near and no white is wanted
	if floor := math.Floor(f.y.low/f.yTicks.step) * f.yTicks.step; below <= edge && f.y.low-floor < near {
		f.y.low = floor
		f.yTicks = every(f.y, f.yTicks.step)
	}
	f.left = besideTick
	for _, y := range f.yTicks.at {
		w, _ := p.room(f.yTicks.name(y), false)
		f.left = math.Max(f.left, margin+math.Ceil(w)+besideTick)
	}
	f.right = math.Max(wide-besideTick-3, f.left+1)
	f.xTicks = ticks(f.x, math.Min(8, (f.right-f.left)/38), g.x.Unit)
	return f
}

// places are the points of a curve in the picture, without those that nobody
// could tell apart.
func (f frame) places(parts path) path {
	var out path
	for _, points := range parts {
		var seen []point
		for i, q := range points {
			at := point{f.px(q.x), f.py(q.y)}
			if n := len(seen); n > 0 && i < len(points)-1 && math.Hypot(at.x-seen[n-1].x, at.y-seen[n-1].y) < 0.7 {
				continue
			}
			seen = append(seen, at)
		}
		out = append(out, seen)
	}
	return out
}

// drawAxes draws the level hairlines, the ground line and the ticks.
func drawAxes(p *pen, set *setting) {
	f := set.frame
	ink, rule := p.colour(look.InkSoft), p.colour(look.Rule)
	reach := f.right
	if contrast(rule, p.colour(look.Card)) >= 3 { // so strong a grid would hide the curves
		reach = f.left + 4
	}
	for _, y := range f.yTicks.at {
		if slices.ContainsFunc(set.graph.marks, func(m measure.Mark) bool { return !m.OnX && math.Abs(f.py(m.At)-f.py(y)) < 2 }) {
			continue // the mark's own line runs here
		}
		p.rule(point{f.left, f.py(y)}, point{reach, f.py(y)}, 1, rule)
	}
	p.rule(point{f.left, f.bottom}, point{f.right, f.bottom}, 1, ink)
	for _, x := range f.xTicks.at {
		p.rule(point{f.px(x), f.bottom}, point{f.px(x), f.bottom + 4}, 1, ink)
	}
}

func drawMarks(p *pen, g graph, f frame) {
	ink := p.colour(look.InkSoft)
	for _, m := range g.marks {
		switch {
		case m.OnX && f.x.holds(m.At):
			p.dots(point{f.px(m.At), f.bottom}, point{f.px(m.At), f.top}, ink)
		case !m.OnX && f.y.holds(m.At):
			p.dots(point{f.left, f.py(m.At)}, point{f.right, f.py(m.At)}, ink)
		}
	}
}

func (s span) holds(x float64) bool { return x >= s.low && x <= s.high }

// dots draws a crisp dashed hairline.
func (p *pen) dots(a, b point, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: line(a, b).dashed(3, 3), width: 1, colour: c, snap: true})
}

// style is how a curve is drawn, so that it is known without its colour too.
type style struct {
	name    fyne.ThemeColorName
	width   float64
	on, off float64 // of its dashes; 0: solid
}

func styleOf(chart, curve string, i int) style {
	switch curve {
	case "water":
		if chart == "kettle" {
			return style{name: look.Boiling, width: 1.8}
		}
		return style{name: look.Ice, width: 1.8}
	case "centre", "core":
		return style{name: look.Plant, width: 2.6}
	case "mean":
		return style{name: look.Plant, width: 1.6, on: 6, off: 4}
	case "air":
		return style{name: look.Ice, width: 1.8, on: 20, off: 5}
	}
	return style{name: look.Ink, width: 1.6, on: float64(5 * (i % 3)), off: 3}
}

func drawCurve(p *pen, line path, s style) {
	c, cased := p.lineColour(s.name)
	for _, points := range line {
		if len(points) == 1 {
			p.fill(disc(points[0].x, points[0].y, s.width), c)
			p.outline(disc(points[0].x, points[0].y, s.width), 0.8, p.colour(look.InkSoft))
		}
	}
	if s.on > 0 {
		line = line.stitched(s.on, s.off)
	}
	if cased {
		p.fill(line.ribbon(s.width+1.8), p.colour(look.InkSoft))
	}
	p.fill(line.ribbon(s.width), c)
}

// lineColour is a substance as a line on paper or card. Where it stands out
// too little it is taken a little towards the ink; a pale one, which would
// lose itself so, keeps its colour and wants an outline.
func (p *pen) lineColour(name fyne.ThemeColorName) (c color.NRGBA, cased bool) {
	paper, card := p.colour(look.Paper), p.colour(look.Card)
	for part := 1.0; part > 0.8; part -= 0.05 {
		c = p.tint(name, look.Ink, part)
		if contrast(c, paper) >= 3 && contrast(c, card) >= 3 {
			return c, false
		}
	}
	return p.colour(name), true
}

// contrast is the ratio of the luminances of two colours (WCAG 2, from
// memory).
func contrast(a, b color.NRGBA) float64 {
	light := func(c color.NRGBA) float64 {
		part := func(v uint8) float64 {
			if x := float64(v) / 255; x > 0.04045 {
				return math.Pow((x+0.055)/1.055, 2.4)
			}
			return float64(v) / 255 / 12.92
		}
		return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B) + 0.05
	}
	return math.Max(light(a)/light(b), light(b)/light(a))
}

// drawPointed draws a hairline under the pointer and, in the row of the axis's
// name, what the curves say there. It says whether they say anything.
func (c *Chart) drawPointed(p *pen, f frame, wide, tall float64) bool {
	g := c.graph
	at := math.Min(math.Max(c.at, f.x.low), f.x.high)
	text := g.fitted(p, c.at, wide)
	if text == "" || tall < rows*rowHigh {
		return false
	}
	x := f.px(at)
	p.rule(point{x, f.top}, point{x, f.bottom}, 1, p.colour(look.InkSoft))
	for i, one := range g.curves {
		if y, ok := one.value(c.at, g.slack()); ok {
			colour, _ := p.lineColour(styleOf(g.id, one.id, i).name)
			p.fill(disc(x, f.py(y), 3), colour)
			p.outline(disc(x, f.py(y), 3), 1, p.colour(look.Ink))
		}
	}
	w, _ := p.room(text, false)
	p.label(label{
		text: text, at: point{math.Max(0, math.Min(f.left, wide-w)), tall - lastRow},
		size: sizeLabel, colour: inkFigure,
	})
	return true
}

// fitted is the reading in as few words as the width asks for.
func (g graph) fitted(p *pen, x, wide float64) string {
	var said []string
	for _, how := range []units{unitsEach, unitsLast, unitsNone} {
		said = g.reading(x, how)
		if w, _ := p.room(joined(said), false); w <= wide {
			return joined(said)
		}
	}
	for len(said) > 1 {
		said = said[:len(said)-1]
		if w, _ := p.room(joined(said), false); w <= wide {
			return joined(said)
		}
	}
	return ""
}
