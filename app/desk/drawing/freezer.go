package drawing

import (
	"math"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// FreezerState is what the picture of a freezer shows: what is put in and what
// it freezes well in a day.
type FreezerState struct {
	CapacityL float64 // 0: unknown, only words are drawn
	FoodKg    float64 // all that is to be frozen
	DayLowKg  float64 // the daily limit as a range
	DayHighKg float64
	Days      int // days needed; 0: not said

	Capacity, Food, Limit, DaysText string
}

// FreezerShelf is a chest freezer in section with one day's food at its true
// share of the volume, the same enlarged against the daily limit, and each day
// needed as a small freezer.
type FreezerShelf struct {
	surface
	state FreezerState
}

// NewFreezerShelf makes an empty picture; Set fills it.
func NewFreezerShelf() *FreezerShelf {
	f := &FreezerShelf{}
	f.setUp(f, fyne.NewSize(284, 132), f.draw)
	return f
}

// Set shows another state.
func (f *FreezerShelf) Set(state FreezerState) {
	state.CapacityL, state.FoodKg = upTo(state.CapacityL, mostLitres), upTo(state.FoodKg, mostKg)
	state.DayLowKg, state.DayHighKg = upTo(state.DayLowKg, mostKg), upTo(state.DayHighKg, mostKg)
	if f.state == state {
		return
	}
	f.state = state
	f.Refresh()
}

// packedKgPerL is the drawn density of packs side by side.
const packedKgPerL = 0.6

// today is what goes in on the first day: the food shared evenly over the days.
func (s FreezerState) today() float64 {
	if s.Days > 1 {
		return s.FoodKg / float64(s.Days)
	}
	return s.FoodKg
}

func (f *FreezerShelf) draw(p *pen, size fyne.Size) {
	s := f.state
	wide, tall := float64(size.Width), float64(size.Height)
	if s.CapacityL <= 0 {
		f.drawUnknown(p, wide, tall)
		return
	}
	chest := math.Min(wide*0.33, tall)
	x, top, w, h := 8.0, 34.0, chest-16, tall-34-26
	share := func(kg float64) float64 { return math.Min(1, kg/packedKgPerL/s.CapacityL) * h }
	drawChest(p, x, top, w, h)
	day := math.Max(share(s.today()), 1.5)
	p.block(x, top+h-day, w, day, p.colour(look.Plant))
	p.say(s.Capacity, x+w/2, top-22, middle)
	barX, barTop, barH := chest+28, 30.0, tall-30-26
	zoom := f.scaleTop()
	p.stroke(path{
		{{x + w + 5, top + h}, {barX - 4, barTop + barH}},
		{{x + w + 5, top + h - share(zoom)}, {barX - 4, barTop}},
	}, 1, p.colour(look.InkSoft))
	f.drawDay(p, barX, barTop, barH, wide)
	f.drawDays(p, x, tall, wide)
}

// scaleTop is the top of the enlarged scale, in kilograms.
func (f *FreezerShelf) scaleTop() float64 {
	return math.Max(1.25*math.Max(f.state.DayHighKg, math.Min(f.state.today(), 2*f.state.DayHighKg)), 1e-3)
}

// drawDay draws the enlarged share of a day against the limit.
func (f *FreezerShelf) drawDay(p *pen, x, top, tall, wide float64) {
	s := f.state
	const w = 40
	y := func(kg float64) float64 { return top + tall - math.Min(1, kg/f.scaleTop())*tall }
	p.block(x, top, w, tall, p.colour(look.Air))
	p.pieces(packRows(x, top+tall, w, top+tall-y(s.today())))
	p.rule(point{x, y(s.today())}, point{x + w, y(s.today())}, 1, onSubstance())
	low, high := y(s.DayLowKg), y(s.DayHighKg)
	ink := p.colour(look.Ink)
	for _, at := range []float64{low, high} {
		p.rule(point{x, at}, point{x + w, at}, 2, onSubstance())
		p.rule(point{x + w, at}, point{x + w + 6, at}, 2, ink)
	}
	p.rule(point{x + w + 6, low}, point{x + w + 6, high}, 2, ink)
	p.outline(box(x, top, w, tall), 1.2, p.colour(look.InkSoft))
	drawNames(p, []namedHeight{
		{s.Limit, (low + high) / 2, true, true},
		{s.Food, (y(s.today()) + top + tall) / 2, s.FoodKg > 0, true},
	}, x+w+8, x+w+24, top, top+tall)
}

// packRows are packs stacked in a width up to a height.
func packRows(x, floor, wide, tall float64) path {
	const row, n = 8.0, 3
	var all path
	for y := 0.0; y < tall-0.5; y += row {
		h := math.Min(row, tall-y) - 1
		for i := range n {
			each := wide / n
			all = append(all, roundBox(x+float64(i)*each+0.8, floor-y-h-0.5, each-1.6, math.Max(h, 1), 1.5, 1.5)...)
		}
	}
	return all
}

// drawChest draws the freezer with its lid.
func drawChest(p *pen, x, top, w, h float64) {
	metal := p.colour(look.Metal)
	p.block(x, top, w, h, p.colour(look.Air))
	p.outline(roundBox(x-3, top-3, w+6, h+6, 3, 5), 6, metal)
	p.fill(roundBox(x-7, top-12, w+14, 8, 3, 1), metal)
	p.fill(roundBox(x+w/2-9, top-5, 18, 4, 0, 2), onSubstance())
}

// drawDays draws each day as a small freezer with its share.
func (f *FreezerShelf) drawDays(p *pen, x, tall, wide float64) {
	s := f.state
	if s.Days <= 0 {
		return
	}
	const w, h, pitch = 15.0, 12.0, 20.0
	fit := int(wide * 0.42 / pitch)
	n := min(s.Days, fit)
	for i := range n {
		left := x + float64(i)*pitch
		p.block(left, tall-h-2, w, h, p.colour(look.Air))
		fill := math.Max(2, h*math.Min(1, s.today()/f.scaleTop()))
		p.block(left, tall-2-fill, w, fill, p.colour(look.Plant))
		p.outline(box(left, tall-h-2, w, h), 1.4, p.colour(look.Metal))
	}
	text := s.DaysText
	if n < s.Days {
		text = "… " + text
	}
	p.say(text, x+float64(n)*pitch+4, tall-9, start)
}

// drawUnknown draws an empty freezer with a question in words.
func (f *FreezerShelf) drawUnknown(p *pen, wide, tall float64) {
	chest := math.Min(wide*0.33, tall)
	drawChest(p, 8, 34, chest-16, tall-60)
	p.say(f.state.Food, chest+16, tall/2-10, start)
	p.say(f.state.Limit, chest+16, tall/2+10, start)
}
