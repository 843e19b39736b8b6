package drawing

import (
	"math"
	"strconv"

	"example.org/kettleside/app/desk/look"
)

// packForm is a container on the drawing, in units.
type packForm struct {
	kind             PackKind
	narrow           bool
	x, floor         float64
	wide, tall, unit float64
}

func digits(n int) string { return strconv.Itoa(n) }

// shoulder is how far below the brim a narrow jar begins to narrow, and how
// much it narrows on each side.
func (f packForm) shoulder() (below, inset float64) {
	if f.kind != PackJar || !f.narrow {
		return 0, 0
	}
	return 1.5 * f.unit, f.wide * 0.14
}

// insetAt is how far the wall stands in at a height above the floor.
func (f packForm) insetAt(height float64) float64 {
	below, inset := f.shoulder()
	if f.kind == PackBag { // a bag leans in towards its closure
		return f.wide * 0.07 * math.Pow(height/f.tall, 3)
	}
	if below == 0 {
		return 0
	}
	t := (height - (f.tall - below)) / (below * 0.6)
	t = math.Max(0, math.Min(1, t))
	return inset * t * t * (3 - 2*t)
}

// body is the inside up to a height, closed.
func (f packForm) body(height float64) path {
	r := math.Min(map[PackKind]float64{PackBag: 0.55, PackBox: 0.22, PackJar: 0.3}[f.kind]*f.unit, height)
	var out []point
	const steps = 24
	for i := range steps + 1 { // up the left wall, from the corner to the height
		h := r + (height-r)*float64(i)/steps
		out = append(out, point{f.x + f.insetAt(h), f.floor - h})
	}
	for i := range steps + 1 {
		h := height - (height-r)*float64(i)/steps
		out = append(out, point{f.x + f.wide - f.insetAt(h), f.floor - h})
	}
	out = append(out, arc(f.x+f.wide-r, f.floor-r, r, 0, math.Pi/2)...)
	out = append(out, arc(f.x+r, f.floor-r, r, math.Pi/2, math.Pi)...)
	return path{out}
}

// draw draws the container with its content up to the headspace, or so far over
// the brim.
func (f packForm) draw(p *pen, head, over float64, liquid bool) {
	full := f.tall - head
	p.fill(f.body(f.tall), p.colour(look.Air))
	if liquid {
		p.fill(f.body(full), p.colour(look.Plant))
	} else {
		p.fill(f.body(full), p.colour(look.Air))
		p.pieces(f.pieces(full))
	}
	if head > 0 {
		p.rule(point{f.x + f.insetAt(full), f.floor - full}, point{f.x + f.wide - f.insetAt(full), f.floor - full}, 1, onSubstance())
	}
	metal := p.colour(look.Metal)
	outline := f.body(f.tall)
	switch f.kind {
	case PackBag:
		p.outline(outline, 1.8, metal)
		f.drawClosure(p)
	case PackBox:
		p.outline(outline, 2.6, metal)
		p.fill(roundBox(f.x-4, f.floor-f.tall-over-6, f.wide+8, 6, 2, 1), metal)
	case PackJar:
		p.outline(outline, 2.6, metal)
		_, inset := f.shoulder()
		p.fill(roundBox(f.x+inset-2.5, f.floor-f.tall-over-8, f.wide-2*inset+5, 9, 2.5, 0), metal)
	}
	if over > 0 {
		f.drawOver(p, over)
	}
}

// drawOver hatches what has no room under the brim, with the brim as a strong
// line: the lid is lifted off, or the wall bursts.
func (f packForm) drawOver(p *pen, over float64) {
	in := f.insetAt(f.tall)
	left, right, brim := f.x+in, f.x+f.wide-in, f.floor-f.tall
	stop := p.colour(look.Stop)
	p.fill(box(left, brim-over, right-left, over), p.colour(look.Card))
	const apart = 6
	for x := left - over; x < right; x += apart {
		a, b := point{x, brim}, point{x + over, brim - over}
		if a.x < left {
			a = point{left, brim - (left - x)}
		}
		if b.x > right {
			b = point{right, brim - (right - x)}
		}
		p.stroke(line(a, b), 1.4, stop)
	}
	p.outline(box(left, brim-over, right-left, over), 1.4, stop)
	p.stroke(line(point{f.x - 7, brim}, point{f.x + f.wide + 7, brim}), 2.4, stop)
}

// drawClosure draws the folded top of a bag with its tie.
func (f packForm) drawClosure(p *pen) {
	metal := p.colour(look.Metal)
	in := f.insetAt(f.tall)
	top := f.floor - f.tall
	mid := f.x + f.wide/2
	p.stroke(path{{{f.x + in, top}, {mid - 3, top - 7}, {mid - 7, top - 13}}, {{f.x + f.wide - in, top}, {mid + 3, top - 7}, {mid + 7, top - 13}}}, 1.8, metal)
	p.stroke(line(point{mid - 4, top - 7}, point{mid + 4, top - 7}), 3, p.colour(look.InkSoft))
}

// pieces are vegetables that fill the body up to a height.
func (f packForm) pieces(height float64) path {
	thick := 0.36 * f.unit
	long := 2.1 * thick
	var all path
	row := 0
	for y := thick * 0.8; y+thick*0.5 <= height; y += thick * 1.28 {
		in := f.insetAt(y) + thick*0.35
		if corner := thick * 1.5; y < corner {
			in += (corner - y) * 0.5
		}
		room := f.wide - 2*in
		n := max(1, int(room/(long*1.1)))
		pitch := room / float64(n)
		// every other row is shifted by half a piece, as bricks are laid, with
		// half pieces at its ends
		from, count := 0.0, n
		if row%2 == 1 {
			from, count = -0.5, n+1
		}
		for i := range count {
			left := math.Max(0, (from+float64(i))*pitch)
			right := math.Min(room, (from+float64(i)+1)*pitch)
			bar := right - left - pitch*0.1
			if bar < thick {
				continue
			}
			all = append(all, piece(f.x+in+(left+right)/2, f.floor-y, bar, thick, 0.1*wobble(i*5+row*11))...)
		}
		row++
	}
	return all
}
