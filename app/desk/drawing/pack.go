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

	Frozen FrozenState // the same pack after freezing, beside it; zero: not shown
}

// FrozenState is what becomes of a pack in the freezer.
type FrozenState struct {
	GrowsShare float64 // of what is in it; 0: not shown
	LeftIn     float64 // headspace left, inches; 0: none, or not known: it stands as high as it has grown
	OverIn     float64 // how far it would stand over the brim, inches

	Text, When string // "3/8 in left", "frozen, by estimate"
}

// PackSection is a bag, box or jar in section, as tall as its content of pints
// makes it, filled to the headspace, with the headspace as a dimension and a
// ruler in inches; beside it the same pack after freezing, where that is known.
type PackSection struct {
	surface
	state PackState
}

// NewPackSection makes an empty picture; Set fills it.
func NewPackSection() *PackSection {
	s := &PackSection{}
	s.setUp(s, fyne.NewSize(264, 156), s.draw)
	return s
}

// Set shows another state.
func (s *PackSection) Set(state PackState) {
	state.Pints, state.HeadspaceIn = upTo(state.Pints, mostPints), upTo(state.HeadspaceIn, mostInches)
	f := &state.Frozen
	f.GrowsShare, f.LeftIn, f.OverIn = upTo(f.GrowsShare, 1), upTo(f.LeftIn, mostInches), upTo(f.OverIn, mostInches)
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

const (
	// tallest is the height of the picture in inches: a quart jar with its lid.
	tallest = 7.2
	// widest is the width of a pack in inches that the picture has room for.
	widest = 4.6
	// rulerLeast is what the ruler takes at the left at least, and besideRuler
	// what of it is no text.
	rulerLeast, besideRuler = 36, 13
	// dimension is what a dimension takes beside a pack.
	dimension = 22
	// besideText is the white between what is said of one pack and of the next.
	besideText = 10
	// captionRow is from one line under a pack to the next.
	captionRow = lineGap * 0.95
)

func (s *PackSection) draw(p *pen, size fyne.Size) {
	st := s.state
	wide, tall := float64(size.Width), float64(size.Height)
	inWide, inTall := st.inside()
	high, _ := p.room(inchText(rulerInches(inTall)), false)
	rulerWide := math.Max(rulerLeast, high+besideRuler)
	packs := 1.0
	if st.Frozen.GrowsShare > 0 {
		packs = 2
	}
	each := (wide - rulerWide) / packs
	room := wide
	if packs == 2 {
		room = each - besideText
	}
	fresh := captionOf(p, room, st.Headspace, st.Amount)
	frozen := captionOf(p, room, st.Frozen.Text, st.Frozen.When)
	rows := max(len(fresh), len(frozen))
	floor := tall - 2*lineGap - 4 - float64(rows-2)*captionRow
	firstRow := tall - lineGap*0.65 - float64(rows-1)*captionRow
	unit := math.Min((floor-8)/math.Max(tallest, inTall+0.9), (each-dimension-4)/widest)
	drawRuler(p, rulerWide-6, floor, unit, rulerInches(inTall))
	form := packForm{kind: st.Kind, narrow: st.Narrow, floor: floor, wide: inWide * unit, tall: inTall * unit, unit: unit}
	head := math.Min(st.HeadspaceIn, inTall*0.8) * unit
	form.x = rulerWide + 4
	form.draw(p, head, 0, st.Liquid)
	form.drawDimension(p, head)
	fresh.write(p, form.x, wide, firstRow)
	if packs == 1 {
		return
	}
	form.x += each
	left, over := s.frozenHead(form, head)
	form.draw(p, left, over, st.Liquid)
	form.drawDimension(p, left)
	frozen.write(p, form.x, wide, firstRow)
}

// caption is what stands under a pack, line by line, its figure first.
type caption []captionLine

type captionLine struct {
	text   string
	figure bool
}

// captionOf breaks figure and name of a pack where the room is narrow. Either
// has a line, also where nothing is said.
func captionOf(p *pen, wide float64, figure, name string) caption {
	var lines caption
	for i, text := range []string{figure, name} {
		broken := wrapped(p, text, i == 0, wide, 2)
		for _, line := range append(broken, "")[:max(len(broken), 1)] {
			lines = append(lines, captionLine{line, i == 0})
		}
	}
	return lines
}

// write writes the lines, the first one at a height.
func (c caption) write(p *pen, x, wide, first float64) {
	for i, line := range c {
		w, _ := p.room(line.text, line.figure)
		at, y := math.Max(0, math.Min(x, wide-w)), first+captionRow*float64(i)
		if line.figure {
			p.tell(line.text, at, y, start)
		} else {
			p.say(line.text, at, y, start)
		}
	}
}

// leastOver is how high what stands over the brim is drawn at least, so that
// it is seen.
const leastOver = 6

// frozenHead is the headspace that is left on the drawing, and how far the
// filling stands over the brim.
func (s *PackSection) frozenHead(f packForm, head float64) (left, over float64) {
	frozen := s.state.Frozen
	switch {
	case frozen.OverIn > 0:
		return 0, math.Max(math.Min(frozen.OverIn*f.unit, f.tall/3), leastOver)
	case frozen.LeftIn > 0:
		return math.Min(frozen.LeftIn*f.unit, head), 0
	case head == 0: // it grows into the air between
		return 0, 0
	}
	return math.Max(head-(f.tall-head)*frozen.GrowsShare, 0), 0
}

// drawDimension draws the headspace as a dimension beside the pack.
func (f packForm) drawDimension(p *pen, head float64) {
	ink, soft := p.colour(look.Ink), p.colour(look.InkSoft)
	brim, edge := f.floor-f.tall, f.x+f.wide
	end := edge + dimension - 4
	p.rule(point{edge + 3, brim}, point{end, brim}, 1, soft)
	if head <= 0 {
		return
	}
	fill, at := brim+head, end-6
	p.rule(point{edge + 3, fill}, point{end, fill}, 1, soft)
	p.rule(point{at, brim - 9}, point{at, fill + 9}, 1, ink)
	p.fill(path{{{at, brim}, {at + 3, brim - 6}, {at - 3, brim - 6}}}, ink)
	p.fill(path{{{at, fill}, {at - 3, fill + 6}, {at + 3, fill + 6}}}, ink)
}

// rulerInches is how many inches the ruler beside a pack shows.
func rulerInches(tall float64) int { return int(math.Ceil(math.Max(tall, 2))) }

func inchText(n int) string { return look.Amount(digits(n) + " in") }

// drawRuler draws inches from the floor upwards.
func drawRuler(p *pen, x, floor, unit float64, last int) {
	ink := p.colour(look.InkSoft)
	p.rule(point{x, floor}, point{x, floor - float64(last)*unit}, 1, ink)
	for i := range last + 1 {
		y := floor - float64(i)*unit
		p.rule(point{x - 4, y}, point{x, y}, 1, ink)
	}
	for _, i := range []int{0, last} {
		text := map[bool]string{true: "0", false: inchText(i)}[i == 0]
		p.label(label{text: text, at: point{x - 7, floor - float64(i)*unit}, side: end, size: sizeLabel, colour: inkLabel})
	}
}
