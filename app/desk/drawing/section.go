package drawing

import (
	"math"
	"reflect"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// Section is a piece cut through the middle at a few moments side by side, so
// that heat is seen to move inward. Tints run from the plant's colour to that of
// heat; the temperatures of outside and middle are written, and the isotherms
// that leave room for it carry theirs, so that it reads without colour too.
type Section struct {
	surface
	section measure.Section
}

// NewSection makes an empty picture; Set fills it.
func NewSection() *Section {
	s := &Section{}
	s.setUp(s, fyne.NewSize(280, 170), s.draw)
	return s
}

// Set shows another section.
func (s *Section) Set(section measure.Section) {
	if reflect.DeepEqual(s.section, section) {
		return
	}
	s.section = section
	s.Refresh()
}

const (
	mostMoments = 4
	headRows    = 2 * rowHigh // the moment and the outside, over each piece
	besidePiece = 8           // white between two pieces, on either side
)

func (s *Section) draw(p *pen, size fyne.Size) {
	moments := s.section.Moments[:min(len(s.section.Moments), mostMoments)]
	each := float64(size.Width) / float64(max(len(moments), 1))
	tall := float64(size.Height)
	top := float64(headRows) + 12
	cut := cutPiece{form: s.section.Form, radius: math.Min((tall-top-4)/2, each/2-besidePiece)}
	cut.y = top + cut.radius
	for i, m := range moments {
		cut.x = (float64(i) + 0.5) * each
		p.label(label{text: m.Label, at: point{cut.x, rowHigh / 2}, side: middle, size: sizeLabel, colour: inkLabel})
		p.tell(m.Outside, cut.x, 1.5*rowHigh, middle)
		if cut.radius > 0 && len(m.Temps) > 1 {
			s.drawMoment(p, cut, m)
		}
	}
}

// drawMoment draws one cut with its isotherms and the figure in its middle.
func (s *Section) drawMoment(p *pen, cut cutPiece, m measure.Moment) {
	for _, band := range bands(m.Temps) {
		part := upTo((band.temp-s.section.Low)/(s.section.High-s.section.Low), 1)
		p.fill(cut.within(band.out), p.tint(look.Heat, look.Plant, part))
	}
	cut.outline(p)
	p.rule(point{cut.x, headRows}, point{cut.x, cut.y - cut.radius}, 1, p.colour(look.InkSoft))
	p.fill(disc(cut.x, cut.y-cut.radius, 2.5), p.colour(look.Ink))
	_, high := p.room(m.Middle, true)
	below := high / 2 // how far down from the middle labels stand
	written := math.Inf(1)
	for _, one := range m.Lines {
		from := upTo(one.At, 1) * cut.radius
		if from-high/2 < below+2 || from+high/2 > math.Min(cut.radius, written-2) {
			continue // no room to say which it is
		}
		written = from - high/2
		p.stroke(cut.line(from), 1.2, onSubstance())
		p.plate(label{text: one.Label, at: point{cut.x, cut.y + from}, side: middle, size: sizeLabel, colour: inkLabel})
	}
	p.plate(label{text: m.Middle, at: point{cut.x, cut.y}, side: middle, size: sizeLabel, colour: inkFigure, strong: true})
}

// plate writes a label on a ground of its own, so that it reads on a substance.
func (p *pen) plate(l label) {
	wide, high := p.room(l.text, l.strong)
	p.fill(roundBox(l.at.x-wide/2-3, l.at.y-high/2, wide+6, high, 3, 3), p.colour(look.Card))
	p.label(l)
}

// band is all that lies within a distance from the middle, to be filled from
// outside in.
type band struct{ out, temp float64 }

// finely is into how many bands each step between two depths is taken apart.
const finely = 3

func bands(temps []float64) []band {
	steps := finely * (len(temps) - 1)
	all := make([]band, 0, steps)
	for i := steps; i > 0; i-- {
		at := (float64(i) - 0.5) / finely
		inner := min(int(at), len(temps)-2)
		temp := temps[inner] + (temps[inner+1]-temps[inner])*(at-float64(inner))
		all = append(all, band{float64(i) / float64(steps), temp})
	}
	return all
}

// cutPiece is a piece cut through on the drawing: a disc, or for a flat piece a
// strip between its two faces, which goes on at both sides.
type cutPiece struct {
	form         measure.Form
	x, y, radius float64
}

// sideways is how far a flat piece is drawn to either side of its middle.
func (c cutPiece) sideways() float64 { return c.radius }

// within is all of the piece up to a share of the way out.
func (c cutPiece) within(out float64) path {
	if c.form == measure.Flat {
		return box(c.x-c.sideways(), c.y-out*c.radius, 2*c.sideways(), 2*out*c.radius)
	}
	return c.circle(out * c.radius)
}

// line is the isotherm at a distance from the middle.
func (c cutPiece) line(from float64) path {
	if c.form == measure.Flat {
		left, right := c.x-c.sideways(), c.x+c.sideways()
		return path{{{left, c.y - from}, {right, c.y - from}}, {{left, c.y + from}, {right, c.y + from}}}
	}
	return c.circle(from)
}

// circle is finer than the curves of small drawings: this one is large.
func (c cutPiece) circle(r float64) path {
	const corners = 120
	out := make([]point, 0, corners+1)
	for i := range corners + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		out = append(out, point{c.x + r*cos, c.y + r*sin})
	}
	return path{out}
}

// outline draws where the piece ends.
func (c cutPiece) outline(p *pen) {
	p.stroke(c.line(c.radius), 1.4, p.colour(look.InkSoft))
}
