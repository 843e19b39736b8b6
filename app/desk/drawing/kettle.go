package drawing

import (
	"math"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// KettleState is what the picture of a kettle shows. Volumes are in litres and
// weights in kilograms; the texts stand beside what they name and are taken
// from the figures of the worked batch.
type KettleState struct {
	HoldsL float64 // water it holds with room to boil; 0: unknown, drawn as just enough
	WaterL float64 // water in it for one load
	LoadKg float64 // one load
	Loads  int     // fillings; 0 draws none beside
	Steam  bool    // a little water below the basket, a single layer above it
	Cold   bool    // no burner: nothing is heated
	// Electric is a burner without flames: the windings of its coil are drawn.
	Electric bool
	// DepthCm is how deep the water of a steamer stands, where it is given as a
	// depth instead of a volume; BasketCm is how high its basket hangs.
	DepthCm, BasketCm float64

	Holds, Water, Load, LoadsText string
}

// Kettle is a kettle with lid and basket on a burner, in section: the level of
// the water in proportion to what the kettle holds, the load in proportion to
// the water, and every load as a small kettle beside.
type Kettle struct {
	surface
	state KettleState
}

// NewKettle makes an empty picture; Set fills it.
func NewKettle() *Kettle {
	k := &Kettle{}
	k.setUp(k, fyne.NewSize(270, 132), k.draw)
	return k
}

// Set shows another state.
func (k *Kettle) Set(state KettleState) {
	state.HoldsL, state.WaterL = upTo(state.HoldsL, mostLitres), upTo(state.WaterL, mostLitres)
	state.LoadKg = upTo(state.LoadKg, mostKg)
	state.DepthCm, state.BasketCm = upTo(state.DepthCm, mostCm), upTo(state.BasketCm, mostCm)
	if k.state == state {
		return
	}
	k.state = state
	k.Refresh()
}

// kettleForm is the outline of a kettle on the drawing, in units.
type kettleForm struct {
	x, floor    float64 // left inner wall, inner floor
	wide, tall  float64 // inside
	mark        float64 // height of the full mark above the floor
	unitsPerCm  float64
	litresToMrk float64
}

// The form of the drawn kettle: straight walls, the full mark at three
// quarters of the diameter, and a fifth more up to the rim as room to boil.
const (
	markToWide = 0.75
	rimToMark  = 1.22
	vegKgPerL  = 0.95 // drawn density of pieces
	pieceCm2   = 2.4  // drawn area of one piece in section
)

// kettleOf fits a kettle of a volume into a space whose scale suits kettles up
// to 30 cm across, so that a smaller kettle looks smaller.
func kettleOf(litres, x, floor, wide, tall float64) kettleForm {
	cm := math.Cbrt(litres * 1000 / (math.Pi / 4 * markToWide))
	room := math.Max(cm, 24)
	scale := math.Min(wide/room, tall/(room*markToWide*rimToMark))
	w := cm * scale
	mark := w * markToWide
	return kettleForm{
		x: x + (wide-w)/2, floor: floor, wide: w, tall: mark * rimToMark, mark: mark,
		unitsPerCm: scale, litresToMrk: litres,
	}
}

// holds is the volume that the drawing stands for.
func (s KettleState) holds() float64 {
	if s.HoldsL > 0 {
		return s.HoldsL
	}
	return math.Max(s.WaterL, 1)
}

func (k *Kettle) draw(p *pen, size fyne.Size) {
	s := k.state
	wide, tall := float64(size.Width), float64(size.Height)
	pot := math.Min(wide*0.5, tall)
	lid, burner := math.Max(tall*0.13, 20), math.Max(tall*0.13, 20)
	form := kettleOf(s.holds(), 10, tall-burner-3, pot-20, tall-lid-burner-3)
	if !s.Cold {
		drawBurner(p, form, burner, k.state.Electric)
	}
	level, heapTop := drawKettle(p, form, s)
	drawLid(p, form)
	k.drawLabels(p, form, level, heapTop, wide, tall)
}

// drawKettle draws walls, water and load and returns the heights of the water
// and of the middle of the load.
func drawKettle(p *pen, f kettleForm, s KettleState) (level, load float64) {
	share := math.Min(s.waterShare(f), rimToMark*0.97)
	level = f.floor - share*f.mark
	p.fill(roundBox(f.x, f.floor-f.tall, f.wide, f.tall, 0, f.wide*0.08), p.colour(look.Air))
	if share > 0 {
		p.fill(roundBox(f.x, level, f.wide, f.floor-level, 0, math.Min(f.wide*0.08, (f.floor-level)/2)), p.colour(look.Boiling))
		p.stroke(ripple(f.x+1, level, f.wide-2), 1.6, p.colour(look.Boiling))
	}
	load = drawBasket(p, f, s, level)
	p.stroke(wall(f), 2.6, p.colour(look.Metal))
	p.stroke(line(point{f.x - 9, f.floor - f.tall*0.72}, point{f.x - 2, f.floor - f.tall*0.72}), 4, p.colour(look.Metal))
	p.stroke(line(point{f.x + f.wide + 2, f.floor - f.tall*0.72}, point{f.x + f.wide + 9, f.floor - f.tall*0.72}), 4, p.colour(look.Metal))
	return level, load
}

// waterShare is the height of the water as a share of the full mark.
func (s KettleState) waterShare(f kettleForm) float64 {
	if s.DepthCm > 0 {
		return s.DepthCm * f.unitsPerCm / f.mark
	}
	return s.WaterL / f.litresToMrk
}

// wall is the body from rim to rim, open at the top.
func wall(f kettleForm) path {
	r := f.wide * 0.08
	left, right, top := f.x, f.x+f.wide, f.floor-f.tall
	out := []point{{right, top}}
	out = append(out, arc(right-r, f.floor-r, r, 0, math.Pi/2)...)
	out = append(out, arc(left+r, f.floor-r, r, math.Pi/2, math.Pi)...)
	return path{append(out, point{left, top})}
}

// ripple is the moving face of boiling water.
func ripple(x, y, wide float64) path {
	waves := math.Max(2, math.Round(wide/16))
	var out []point
	for i := range int(waves)*6 + 1 {
		t := float64(i) / (waves * 6)
		out = append(out, point{x + t*wide, y + 1.3*math.Sin(t*waves*2*math.Pi)})
	}
	return path{out}
}

// drawBasket draws the basket and the load in it and returns the height at
// which the load is named.
func drawBasket(p *pen, f kettleForm, s KettleState, level float64) float64 {
	gap := f.wide * 0.09
	left, wide := f.x+gap, f.wide-2*gap
	floor := f.floor - f.mark*0.1
	if s.Steam {
		floor = math.Max(f.floor-math.Max(s.BasketCm*f.unitsPerCm, f.mark*0.3), f.floor-f.tall*0.8)
		floor = math.Min(floor, level-f.mark*0.14)
	}
	rim := f.floor - f.tall*0.93
	metal := p.colour(look.Metal)
	p.stroke(line(point{left, rim}, point{left, floor}, point{left + wide, floor}, point{left + wide, rim}).dashed(3.2, 2.6), 1.3, metal)
	if s.LoadKg <= 0 {
		return floor
	}
	area := s.LoadKg / vegKgPerL / f.litresToMrk * f.wide * f.mark // share of the section
	one := pieceCm2 * f.unitsPerCm * f.unitsPerCm
	if s.Steam {
		pieces, top := layer(left+2, floor-2, wide-4, area, one)
		p.pieces(pieces)
		drawSteam(p, left, wide, level, floor)
		return (floor + top) / 2
	}
	count := max(1, int(math.Round(area/one)))
	pieces, top := heap(left+2, floor-2, wide-4, count, one)
	p.pieces(pieces)
	return (floor + math.Max(top, rim)) / 2
}

// drawSteam draws rising steam between water and basket.
func drawSteam(p *pen, left, wide, level, floor float64) {
	var wisps path
	for i := range 5 {
		x := left + wide*(float64(i)+0.5)/5
		var curl []point
		for j := range 9 {
			t := float64(j) / 8
			curl = append(curl, point{x + 2*math.Sin(t*2*math.Pi), level - 2 - t*(level-floor-4)})
		}
		wisps = append(wisps, curl)
	}
	p.stroke(wisps, 1.2, p.colour(look.Boiling))
}

func drawLid(p *pen, f kettleForm) {
	metal := p.colour(look.Metal)
	top := f.floor - f.tall
	p.stroke(line(point{f.x - 4, top - 2}, point{f.x + f.wide + 4, top - 2}), 3, metal)
	var dome []point
	for i := range 21 {
		t := float64(i) / 20
		dome = append(dome, point{f.x + t*f.wide, top - 3 - f.tall*0.1*math.Sin(t*math.Pi)})
	}
	p.stroke(path{dome}, 2, metal)
	p.fill(disc(f.x+f.wide/2, top-3-f.tall*0.1-3, 3.4), metal)
}

// drawBurner draws a ring with flames below the kettle, or the windings of an
// electric one, cut through.
func drawBurner(p *pen, f kettleForm, tall float64, electric bool) {
	base := f.floor + tall
	p.stroke(line(point{f.x + f.wide*0.04, base - 2}, point{f.x + f.wide*0.96, base - 2}), 3.4, p.colour(look.Metal))
	each := max(3, int(f.wide/15))
	var all path
	for i := range each {
		x := f.x + f.wide*(0.1+0.8*float64(i)/float64(each-1))
		if electric {
			all = append(all, disc(x, f.floor+5.5, 3)...)
		} else {
			all = append(all, flame(x, base-4, 7, tall-9)...)
		}
	}
	p.fill(all, p.colour(look.Heat))
}

// flame is a drop standing on its round end.
func flame(x, base, wide, tall float64) path {
	r := wide / 2
	out := arc(x, base-r, r, 0, math.Pi)
	return path{append(out, point{x - r*0.55, base - tall*0.66}, point{x, base - tall}, point{x + r*0.55, base - tall*0.66})}
}
