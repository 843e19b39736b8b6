package drawing

import (
	"math"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// PackKind is the shape of a container.
type PackKind string

// The containers that are drawn.
const (
	PackBag PackKind = "bag"
	PackBox PackKind = "box"
	PackJar PackKind = "jar"
)

// PackState is what the picture of one pack shows.
type PackState struct {
	Kind        PackKind
	Pints       float64 // US pints it holds to the brim
	Narrow      bool    // a jar with shoulders
	HeadspaceIn float64 // inches; 0: none, filled to the brim
	Liquid      bool    // puree or juice instead of pieces

	Headspace, Amount string // "1/2 in headspace", "quart jar, wide mouth"
}

// PackSection is a bag, box or jar in section, as tall as its content of pints
// makes it, filled to the headspace, with the headspace as a dimension and a
// ruler in inches.
type PackSection struct {
	surface
	state PackState
}

// NewPackSection makes an empty picture; Set fills it.
func NewPackSection() *PackSection {
	s := &PackSection{}
	s.setUp(s, fyne.NewSize(264, 132), s.draw)
	return s
}

// Set shows another state.
func (s *PackSection) Set(state PackState) {
	state.Pints, state.HeadspaceIn = upTo(state.Pints, mostPints), upTo(state.HeadspaceIn, mostInches)
	if s.state == state {
		return
	}
	s.state = state
	s.Refresh()
}

// pintCuIn is a US pint: an eighth of 231 cubic inches.
const pintCuIn = 231.0 / 8

// inside is the width and height in inches of a container that holds so many
// pints; the footprints are those of common freezing containers, the height
// follows from the volume.
func (s PackState) inside() (wide, tall float64) {
	volume := math.Max(s.Pints, 0.5) * pintCuIn
	switch s.Kind {
	case PackJar:
		across := 3.0
		if s.Pints > 1.5 {
			across = 3.5
		}
		return across, volume / (math.Pi / 4 * across * across)
	case PackBox:
		return 4, volume / (4 * 3.4)
	default: // a bag standing on its gusset
		return 2.6 + 0.6*math.Min(s.Pints, 2), volume / ((2.6 + 0.6*math.Min(s.Pints, 2)) * 2.4 * 0.86)
	}
}

// packWide is the share of the picture's width that the container may take.
const packWide = 0.36

// tallest is the height of the picture in inches: a quart jar with its lid.
const tallest = 7.2

func (s *PackSection) draw(p *pen, size fyne.Size) {
	st := s.state
	wide, tall := float64(size.Width), float64(size.Height)
	inWide, inTall := st.inside()
	floor := tall - 8
	unit := math.Min((tall-16)/math.Max(tallest, inTall+0.9), packWide*wide/4.6)
	w, h := inWide*unit, inTall*unit
	x := 36 + (packWide*wide-w)/2
	drawRuler(p, 30, floor, unit, math.Max(inTall, 2))
	form := packForm{kind: st.Kind, narrow: st.Narrow, x: x, floor: floor, wide: w, tall: h, unit: unit}
	head := math.Min(st.HeadspaceIn, inTall*0.8) * unit
	form.draw(p, head, st.Liquid)
	right := 36 + packWide*wide + 14
	s.drawHeadspace(p, form, head, right)
}

// drawHeadspace draws the dimension beside the pack and writes its names.
func (s *PackSection) drawHeadspace(p *pen, f packForm, head, x float64) {
	ink := p.colour(look.Ink)
	brim := f.floor - f.tall
	edge := f.x + f.wide
	mid := brim
	if head > 0 {
		fill := brim + head
		mid = (brim + fill) / 2
		p.rule(point{edge + 3, brim}, point{x, brim}, 1, p.colour(look.InkSoft))
		p.rule(point{edge + 3, fill}, point{x, fill}, 1, p.colour(look.InkSoft))
		at := x - 6
		p.rule(point{at, brim - 9}, point{at, fill + 9}, 1, ink)
		p.fill(path{{{at, brim}, {at + 3, brim - 6}, {at - 3, brim - 6}}}, ink)
		p.fill(path{{{at, fill}, {at - 3, fill + 6}, {at + 3, fill + 6}}}, ink)
	} else {
		p.rule(point{edge + 3, brim}, point{x, brim}, 1, p.colour(look.InkSoft))
	}
	names := spread([]float64{mid, mid + lineGap}, lineGap, 10, f.floor)
	p.tell(s.state.Headspace, x+5, names[0], start)
	p.say(s.state.Amount, x+5, names[1], start)
}

// drawRuler draws inches from the floor upwards.
func drawRuler(p *pen, x, floor, unit, inches float64) {
	ink := p.colour(look.InkSoft)
	last := int(math.Ceil(inches))
	p.rule(point{x, floor}, point{x, floor - float64(last)*unit}, 1, ink)
	for i := range last + 1 {
		y := floor - float64(i)*unit
		p.rule(point{x - 4, y}, point{x, y}, 1, ink)
	}
	for _, i := range []int{0, last} {
		text := map[bool]string{true: "0", false: digits(i) + " in"}[i == 0]
		p.label(label{text: text, at: point{x - 7, floor - float64(i)*unit}, side: end, size: sizeLabel, colour: inkLabel})
	}
}
