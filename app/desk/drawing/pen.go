package drawing

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/vector"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/palette"
)

// pen records one drawing: marks to be filled or stroked in order, and labels
// over them. It is replayed at whatever pixels the display has.
type pen struct {
	owner  fyne.Widget
	marks  []mark
	labels []label
}

// mark is one shape in one colour; width 0 fills it.
type mark struct {
	shape  path
	width  float64
	closed bool
	colour color.NRGBA
	snap   bool // onto whole pixels: upright rectangles and hairlines
}

// side says which edge of a label its place names.
type side int

const (
	start side = iota
	middle
	end
)

// label is one line of text in the drawing.
type label struct {
	text   string
	at     point // y is the middle of the line
	side   side
	size   fyne.ThemeSizeName
	colour fyne.ThemeColorName
	strong bool
}

// colour is the theme's colour of a name, solid.
func (p *pen) colour(name fyne.ThemeColorName) color.NRGBA {
	return color.NRGBAModel.Convert(theme.ColorForWidget(name, p.owner)).(color.NRGBA)
}

// onSubstance is the ink for lines on a filled substance, which is the same on
// every ground as the substances are.
func onSubstance() color.NRGBA { return palette.Light.Ink }

// tint is a colour with some of another in it: part 1 is all of the first.
func (p *pen) tint(name, into fyne.ThemeColorName, part float64) color.NRGBA {
	return mix(p.colour(name), p.colour(into), part)
}

func mix(a, b color.NRGBA, part float64) color.NRGBA {
	blend := func(x, y uint8) uint8 { return uint8(math.Round(float64(x)*part + float64(y)*(1-part))) }
	return color.NRGBA{blend(a.R, b.R), blend(a.G, b.G), blend(a.B, b.B), 255}
}

func (p *pen) fill(shape path, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: shape, colour: c})
}

// block fills an upright rectangle with edges on whole pixels.
func (p *pen) block(x, y, w, h float64, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: box(x, y, w, h), colour: c, snap: true})
}

// pieces fills vegetables with a fine outline, which keeps them apart from
// what lies around them in grey print too.
func (p *pen) pieces(shape path) {
	p.fill(shape, p.colour(look.Plant))
	p.outline(shape, 0.8, palette.Light.Card)
}

// outline strokes closed shapes.
func (p *pen) outline(shape path, width float64, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: shape, width: width, closed: true, colour: c})
}

// stroke draws open lines.
func (p *pen) stroke(shape path, width float64, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: shape, width: width, colour: c})
}

// rule draws an upright or level hairline, crisp.
func (p *pen) rule(a, b point, width float64, c color.NRGBA) {
	p.marks = append(p.marks, mark{shape: line(a, b), width: width, colour: c, snap: true})
}

// say puts a small label; text that is empty is left out.
func (p *pen) say(text string, x, y float64, side side) {
	p.label(label{text: text, at: point{x, y}, side: side, size: sizeLabel, colour: inkLabel})
}

// tell puts a strong label: a figure in the drawing.
func (p *pen) tell(text string, x, y float64, side side) {
	p.label(label{text: text, at: point{x, y}, side: side, size: sizeLabel, colour: inkFigure, strong: true})
}

func (p *pen) label(l label) {
	if l.text != "" {
		p.labels = append(p.labels, l)
	}
}

// room is how wide and high a small label is, in the units of the drawing.
func (p *pen) room(text string, strong bool) (wide, high float64) {
	size := theme.SizeForWidget(sizeLabel, p.owner)
	s := fyne.MeasureText(text, size, fyne.TextStyle{Bold: strong})
	return float64(s.Width * normalLabel / size), float64(s.Height * normalLabel / size)
}

// paint replays the marks into w × h pixels at a number of pixels for one unit.
func (p *pen) paint(w, h int, scale float64) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	var tool vector.Rasterizer
	for _, m := range p.marks {
		m.paint(img, &tool, scale)
	}
	return img
}

func (m mark) paint(img *image.RGBA, tool *vector.Rasterizer, scale float64) {
	shape := make(path, len(m.shape))
	for i, points := range m.shape {
		shape[i] = make([]point, len(points))
		for j, q := range points {
			shape[i][j] = point{q.x * scale, q.y * scale}
		}
	}
	width := m.width * scale
	if m.snap {
		width = shape.snapped(width)
	}
	if m.width > 0 {
		shape = shape.stroked(width, m.closed)
	}
	area := shape.bounds().Intersect(img.Bounds())
	if area.Empty() {
		return
	}
	tool.Reset(area.Dx(), area.Dy())
	dx, dy := float64(area.Min.X), float64(area.Min.Y)
	for _, points := range shape {
		for j, q := range points {
			if j == 0 {
				tool.MoveTo(float32(q.x-dx), float32(q.y-dy))
			} else {
				tool.LineTo(float32(q.x-dx), float32(q.y-dy))
			}
		}
		tool.ClosePath()
	}
	tool.Draw(img, area, image.NewUniform(m.colour), image.Point{})
}

// snapped moves points onto whole pixels, or half ones for a line of an odd
// number of pixels, and returns the width in whole pixels.
func (p path) snapped(width float64) float64 {
	half := 0.0
	if width > 0 {
		width = math.Max(1, math.Round(width))
		half = math.Mod(width, 2) / 2
	}
	for _, points := range p {
		for i, q := range points {
			points[i] = point{math.Round(q.x-half) + half, math.Round(q.y-half) + half}
		}
	}
	return width
}

func (p path) bounds() image.Rectangle {
	low, high := point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, points := range p {
		for _, q := range points {
			low = point{math.Min(low.x, q.x), math.Min(low.y, q.y)}
			high = point{math.Max(high.x, q.x), math.Max(high.y, q.y)}
		}
	}
	if low.x > high.x {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(low.x)), int(math.Floor(low.y)), int(math.Ceil(high.x))+1, int(math.Ceil(high.y))+1)
}
