package drawing

import (
	"math"
	"slices"
)

// point is a place in the drawing, in the window's own units.
type point struct{ x, y float64 }

// path is a set of outlines. Curves are flattened when they are made; all
// closed shapes turn the same way round, so that overlapping shapes of one path
// do not cancel out.
type path [][]point

// flat is how many straight pieces stand for a quarter of a circle.
const flat = 10

// box is an upright rectangle.
func box(x, y, w, h float64) path {
	return path{{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}}
}

// roundBox is an upright rectangle with one radius at the two upper and one at
// the two lower corners.
func roundBox(x, y, w, h, upper, lower float64) path {
	limit := math.Min(w, h) / 2
	upper, lower = math.Min(upper, limit), math.Min(lower, limit)
	var out []point
	out = append(out, arc(x+upper, y+upper, upper, math.Pi, 1.5*math.Pi)...)
	out = append(out, arc(x+w-upper, y+upper, upper, 1.5*math.Pi, 2*math.Pi)...)
	out = append(out, arc(x+w-lower, y+h-lower, lower, 0, 0.5*math.Pi)...)
	out = append(out, arc(x+lower, y+h-lower, lower, 0.5*math.Pi, math.Pi)...)
	return path{out}
}

// disc is a circle.
func disc(x, y, r float64) path { return path{arc(x, y, r, 0, 2*math.Pi)} }

// arc runs from one angle to another, in radians clockwise from the right.
func arc(x, y, r, from, to float64) []point {
	if r <= 0 {
		return []point{{x, y}}
	}
	steps := max(2, int(math.Ceil(math.Abs(to-from)/(math.Pi/2)*flat)))
	out := make([]point, 0, steps+1)
	for i := range steps + 1 {
		a := from + (to-from)*float64(i)/float64(steps)
		out = append(out, point{x + r*math.Cos(a), y + r*math.Sin(a)})
	}
	return out
}

// piece is a rounded bar, turned by an angle about its middle.
func piece(x, y, long, thick, turn float64) path {
	out := roundBox(-long/2, -thick/2, long, thick, thick/2, thick/2)
	sin, cos := math.Sincos(turn)
	for i, p := range out[0] {
		out[0][i] = point{x + p.x*cos - p.y*sin, y + p.x*sin + p.y*cos}
	}
	return out
}

// line is an open line through points.
func line(points ...point) path { return path{points} }

// stroked turns lines into the outlines of lines of a width, with round joins.
func (p path) stroked(width float64, closed bool) path {
	var out path
	for _, points := range p {
		last := len(points) - 1
		for i, a := range points {
			if i == last && !closed {
				break
			}
			b := points[(i+1)%len(points)]
			long := math.Hypot(b.x-a.x, b.y-a.y)
			if long == 0 {
				continue
			}
			nx, ny := -(b.y-a.y)/long*width/2, (b.x-a.x)/long*width/2
			out = append(out, []point{{a.x - nx, a.y - ny}, {b.x - nx, b.y - ny}, {b.x + nx, b.y + ny}, {a.x + nx, a.y + ny}})
		}
		for i, a := range points {
			if closed || i > 0 && i < last {
				out = append(out, arc(a.x, a.y, width/2, 0, 2*math.Pi))
			}
		}
	}
	return out
}

// dashed cuts lines into dashes.
func (p path) dashed(on, off float64) path {
	var out path
	for _, points := range p {
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			long := math.Hypot(b.x-a.x, b.y-a.y)
			for at := 0.0; at < long; at += on + off {
				from, to := at/long, math.Min(at+on, long)/long
				out = append(out, []point{
					{a.x + (b.x-a.x)*from, a.y + (b.y-a.y)*from},
					{a.x + (b.x-a.x)*to, a.y + (b.y-a.y)*to},
				})
			}
		}
	}
	return out
}

// stitched cuts lines into dashes that run on round corners, for curves made of
// many short pieces.
func (p path) stitched(on, off float64) path {
	var out path
	for _, points := range p {
		dash, drawn, left := []point(nil), true, on
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			long := math.Hypot(b.x-a.x, b.y-a.y)
			for at := 0.0; at < long-1e-9; {
				step := math.Min(left, long-at)
				if drawn && dash == nil {
					dash = []point{{a.x + (b.x-a.x)*at/long, a.y + (b.y-a.y)*at/long}}
				}
				at, left = at+step, left-step
				if drawn {
					dash = append(dash, point{a.x + (b.x-a.x)*at/long, a.y + (b.y-a.y)*at/long})
				}
				if left > 1e-9 {
					continue
				}
				if drawn {
					out = append(out, dash)
					dash, drawn, left = nil, false, off
				} else {
					drawn, left = true, on
				}
			}
		}
		if dash != nil {
			out = append(out, dash)
		}
	}
	return out
}

// ribbon turns lines into bands of a width, each in one piece where it bends
// gently, so that a fine curve has no thick spots at its points.
func (p path) ribbon(width float64) path {
	var out path
	for _, points := range p {
		var there, back []point // the two edges so far
		edge := func(at, way point, wide float64) {
			there = append(there, point{at.x + way.y*wide, at.y - way.x*wide})
			back = append(back, point{at.x - way.y*wide, at.y + way.x*wide})
		}
		end := func() {
			slices.Reverse(back)
			out = append(out, append(there, back...))
			there, back = nil, nil
		}
		var last point // the direction of the piece before
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			long := math.Hypot(b.x-a.x, b.y-a.y)
			if long == 0 {
				continue
			}
			way := point{(b.x - a.x) / long, (b.y - a.y) / long}
			switch along := way.x*last.x + way.y*last.y; {
			case len(there) == 0:
				edge(a, way, width/2)
			case along > 0.7: // the edges meet on the line that halves the bend
				half := (1 + along) / 2
				edge(a, point{(way.x + last.x) / 2, (way.y + last.y) / 2}, width/2/half)
			default:
				edge(a, last, width/2)
				end()
				out = append(out, arc(a.x, a.y, width/2, 0, 2*math.Pi))
				edge(a, way, width/2)
			}
			last = way
		}
		if len(there) > 0 {
			edge(points[len(points)-1], last, width/2)
			end()
		}
	}
	return out
}
