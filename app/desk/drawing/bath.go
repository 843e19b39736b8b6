package drawing

import (
	"math"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// BathState is what the picture of an ice bath shows, in kilograms and litres.
type BathState struct {
	FoodKg float64 // vegetables to chill
	IceKg  float64
	WaterL float64 // cold water; 0: as much as covers ice and food

	Food, Ice, Water, Chill string
}

// Bath is a tub with ice, cold water and vegetables in section, their areas in
// proportion to the room they take.
type Bath struct {
	surface
	state BathState
}

// NewBath makes an empty picture; Set fills it.
func NewBath() *Bath {
	b := &Bath{}
	b.setUp(b, fyne.NewSize(284, 132), b.draw)
	return b
}

// Set shows another state.
func (b *Bath) Set(state BathState) {
	state.FoodKg, state.IceKg = upTo(state.FoodKg, mostKg), upTo(state.IceKg, mostKg)
	state.WaterL = upTo(state.WaterL, mostLitres)
	if b.state == state {
		return
	}
	b.state = state
	b.Refresh()
}

// The drawn room that a kilogram takes, in litres.
const (
	iceLPerKg  = 1 / 0.917
	foodLPerKg = 1 / vegKgPerL
)

// covers is the share of the section that ice and food fill where the water
// just covers them.
const covers = 0.38

func (b *Bath) draw(p *pen, size fyne.Size) {
	s := b.state
	wide, tall := float64(size.Width), float64(size.Height)
	tub := math.Min(math.Min(wide*0.53, tall*1.5), wide-besideTub-b.labelsWide(p))
	x, floor, inWide, inTall := 6.0, tall-8, tub-12, tall-20
	ice, food := s.IceKg*iceLPerKg, s.FoodKg*foodLPerKg
	water := s.WaterL
	if water <= 0 {
		water = (ice + food) * (1 - covers) / covers
	}
	total := ice + food + water
	level := floor - inTall*0.82
	p.fill(roundBox(x, floor-inTall, inWide, inTall, 0, 22), p.colour(look.Air))
	labels := []namedHeight{}
	if total > 0 {
		high := floor - level
		p.fill(roundBox(x, level, inWide, high, 0, 22), p.colour(look.Ice))
		unit := inWide * high / total // area of one litre
		cm := inWide / tubCm(total, high/inWide)
		iceBottom := b.drawIce(p, x+6, level, inWide-12, high, ice*unit, cm)
		heapTop := b.drawFood(p, x+14, floor-4, inWide-28, high, food*unit, cm)
		p.stroke(line(point{x + 1, level}, point{x + inWide - 1, level}), 1.4, p.colour(look.Ice))
		labels = append(labels,
			namedHeight{s.Ice, (level + iceBottom) / 2, s.IceKg > 0, true},
			namedHeight{s.Water, (iceBottom + heapTop) / 2, true, false},
			namedHeight{s.Food, (heapTop + floor) / 2, s.FoodKg > 0, true},
		)
	}
	rim := floor - inTall
	r := 22.0
	body := []point{{x + inWide + 7, rim}, {x + inWide, rim}}
	body = append(body, arc(x+inWide-r, floor-r, r, 0, math.Pi/2)...)
	body = append(body, arc(x+r, floor-r, r, math.Pi/2, math.Pi)...)
	body = append(body, point{x, rim}, point{x - 6, rim})
	p.stroke(path{body}, 2.6, p.colour(look.Metal))
	b.drawLabels(p, x+inWide, tub, labels, tall)
}

// besideTub is how far from the room of the tub its labels begin.
const besideTub = 14

// labelsWide is the width of the longest label.
func (b *Bath) labelsWide(p *pen) float64 {
	longest := 0.0
	for _, text := range []string{b.state.Ice, b.state.Water, b.state.Food, b.state.Chill} {
		w, _ := p.room(text, true)
		longest = math.Max(longest, w)
	}
	return longest
}

// tubCm is how wide in centimetres a square tub is that holds so many litres at
// a depth in proportion to its width.
func tubCm(litres, depth float64) float64 { return math.Cbrt(litres * 1000 / depth) }

// iceCm is the drawn side of an ice cube.
const iceCm = 3.2

// drawIce lays ice cubes under the face of the water and returns how far down
// they reach.
func (b *Bath) drawIce(p *pen, x, level, wide, high, area, cm float64) float64 {
	if area <= 0 {
		return level
	}
	side := math.Max(math.Min(iceCm*cm, high*0.17), math.Sqrt(area/mostPieces))
	count := min(mostPieces, max(1, int(math.Round(area/(side*side)))))
	pitch := side * 1.12
	perRow := max(1, int(wide/pitch))
	spare := wide - float64(perRow)*pitch
	var cubes path
	bottom := level
	for i := range count {
		row, col := i/perRow, i%perRow
		cx := x + spare/2 + (float64(col)+0.5)*pitch
		cy := level + (float64(row)+0.5)*pitch - side*0.12
		cubes = append(cubes, cube(cx, cy, side, 0.1*wobble(i*3+1))...)
		bottom = math.Max(bottom, cy+side/2)
	}
	p.fill(cubes, p.tint(look.Ice, look.Air, 0.25))
	p.outline(cubes, 0.8, p.colour(look.Metal))
	return bottom
}

// cube is a square with soft corners, turned a little.
func cube(x, y, side, turn float64) path {
	out := roundBox(-side/2, -side/2, side, side, side*0.16, side*0.16)
	sin, cos := math.Sincos(turn)
	for i, q := range out[0] {
		out[0][i] = point{x + q.x*cos - q.y*sin, y + q.x*sin + q.y*cos}
	}
	return out
}

// drawFood lays the vegetables on the floor of the tub and returns their top.
func (b *Bath) drawFood(p *pen, x, floor, wide, high, area, cm float64) float64 {
	if area <= 0 {
		return floor
	}
	one := math.Max(math.Min(pieceCm2*cm*cm, 2*math.Pow(high*0.12, 2)), area/mostPieces)
	pieces, top := heap(x, floor, wide, max(1, int(math.Round(area/one))), one)
	p.pieces(pieces)
	return top
}

func (b *Bath) drawLabels(p *pen, right, tub float64, names []namedHeight, tall float64) {
	if b.state.Chill != "" {
		p.tell(b.state.Chill, tub+besideTub, 10, start)
	}
	drawNames(p, names, right+2, tub+besideTub, 32, tall-10)
}
