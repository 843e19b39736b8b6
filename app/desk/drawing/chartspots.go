package drawing

import "math"

// trace is where a curve runs in each narrow column of the picture, from its
// upper to its lower end there; where it does not run upper is below lower.
type trace struct {
	left         float64
	upper, lower []float64
}

const columnWide = 2

func traceOf(f frame, places path) trace {
	n := int((f.right-f.left)/columnWide) + 1
	t := trace{left: f.left, upper: make([]float64, n), lower: make([]float64, n)}
	for i := range n {
		t.upper[i], t.lower[i] = math.Inf(1), math.Inf(-1)
	}
	for _, points := range places {
		for i, b := range points {
			t.add(points[max(i-1, 0)], b)
		}
	}
	return t
}

// add takes a straight piece in.
func (t trace) add(a, b point) {
	for i := t.column(a.x); i <= t.column(b.x); i++ {
		from, to := a.y, b.y // of an upright piece
		if b.x > a.x {
			x := t.left + columnWide*float64(i)
			slope := (b.y - a.y) / (b.x - a.x)
			from, to = a.y+slope*(max(x, a.x)-a.x), a.y+slope*(min(x+columnWide, b.x)-a.x)
		}
		t.upper[i], t.lower[i] = min(t.upper[i], from, to), max(t.lower[i], from, to)
	}
}

func (t trace) column(x float64) int { return min(max(int((x-t.left)/columnWide), 0), len(t.upper)-1) }

// over is where the curve runs above and below a stretch of the width, and on
// what share of it.
func (t trace) over(x, wide float64) (upper, lower, share float64) {
	from, to := t.column(x), t.column(x+wide)
	upper, lower = math.Inf(1), math.Inf(-1)
	for i := from; i <= to; i++ {
		if t.upper[i] <= t.lower[i] {
			share++
		}
		upper, lower = math.Min(upper, t.upper[i]), math.Max(lower, t.lower[i])
	}
	return upper, lower, share / float64(to-from+1)
}

// stretch is a part of the width, and how the curve runs there.
type stretch struct {
	from, to           int     // columns, the last one is out
	upper, lower       float64 // its highest and its lowest place
	sumUpper, sumLower float64
	columns            float64 // in which it runs
}

// beside is the stretch over the width of a text.
func (t trace) beside(r rect) stretch {
	s := stretch{from: t.column(r.x - 2), to: t.column(r.x+r.w+2) + 1, upper: math.Inf(1), lower: math.Inf(-1)}
	for i := s.from; i < s.to; i++ {
		if t.upper[i] > t.lower[i] {
			continue
		}
		s.upper, s.lower = min(s.upper, t.upper[i]), max(s.lower, t.lower[i])
		s.sumUpper, s.sumLower = s.sumUpper+t.upper[i], s.sumLower+t.lower[i]
		s.columns++
	}
	return s
}

// away is how far the curve stays above or below a text, nearest and on the
// average; s is the stretch over its width.
func (t trace) away(s stretch, r rect) (nearest, mean float64) {
	switch {
	case s.columns == 0:
		return math.Inf(1), math.Inf(1)
	case s.lower <= r.y: // it runs above
		return r.y - s.lower, r.y - s.sumLower/s.columns
	case s.upper >= r.y+r.h:
		return s.upper - r.y - r.h, s.sumUpper/s.columns - r.y - r.h
	}
	nearest = math.Inf(1)
	sum := 0.0
	for i := s.from; i < s.to; i++ {
		if t.upper[i] <= t.lower[i] {
			gap := max(0, r.y-t.lower[i], t.upper[i]-r.y-r.h)
			nearest, sum = min(nearest, gap), sum+gap
		}
	}
	return nearest, sum / s.columns
}

// open says whether no curve runs through a text.
func (s *setting) open(r rect) bool {
	for _, t := range s.traces {
		if nearest, _ := t.away(t.beside(r), r); nearest < 1 {
			return false
		}
	}
	return true
}

// spot is a place for the name of a line; the lower its cost, the better.
type spot struct {
	of    int // the curve
	label label
	room  rect
	keyed bool // with a piece of the line before it, as it does not stand at the line
	cost  float64
}

// What a place costs.
const (
	noPlace  = 1000 // a line without its name
	crossing = 200  // across another line: only where no place is left
	doubtful = 100  // nearer to another line
	keyCost  = 50   // away from the line
	onMark   = 30   // across the line of a mark; less is a good place
	noName   = 25   // a mark without its name
	tight    = 2    // for each unit that another line is too near
	loose    = 0.3  // for each unit away from its own line
)

const (
	apart   = 8  // how far a name likes to be from lines that it does not name
	keyWide = 22 // a piece of the line and the white behind it
	keyGap  = 5
)

// spots are the places for the name of a line.
type spots struct {
	along []spot // above and below the line, and behind its end
	apart []spot // anywhere with a key; found when they are wanted
}

// nameOf is the name of a line, without its place.
func (s *setting) nameOf(i int) label {
	text := cut(s.pen, s.graph.curves[i].label, (s.frame.right-s.frame.left)*0.6)
	return label{text: text, size: sizeLabel, colour: inkFigure, strong: true}
}

func (s *setting) spotsAlong(i int) []spot {
	f, c, name := s.frame, s.graph.curves[i], s.nameOf(i)
	if name.text == "" {
		return nil
	}
	size := s.room(name)
	off := size.h/2 + 1 + styleOf(s.graph.id, c.id, i).width/2
	last := c.parts[len(c.parts)-1]
	q := last[len(last)-1]
	at := []point{{f.px(q.x) + 5, f.py(q.y)}}
	for x := f.left + 3; x+size.w <= f.right; x += max(3, (f.right-f.left)/90) {
		upper, lower, share := s.traces[i].over(x, size.w)
		if share >= 0.6 {
			at = append(at, point{x, upper - off}, point{x, lower + off})
		}
	}
	return s.weighed(spot{of: i, label: name, room: size}, at)
}

func (s *setting) spotsApart(i int) []spot {
	f, name := s.frame, s.nameOf(i)
	size := s.room(name)
	var at []point
	for x := f.left + keyWide + 3; x+size.w <= f.right; x += max(10, (f.right-f.left)/30) {
		for y := f.top + size.h/2; y < f.bottom; y += max(7, (f.bottom-f.top)/15) {
			at = append(at, point{x, y})
		}
	}
	return s.weighed(spot{of: i, label: name, room: size, keyed: true}, at)
}

// weighed are the spots at some places that stand among the curves.
func (s *setting) weighed(one spot, at []point) (out []spot) {
	f, size := s.frame, one.room
	beside := make([]stretch, len(s.traces))
	seen := math.NaN() // the x that these are for: several places are over each other
	for _, q := range at {
		one.label.at = q
		one.room = rect{q.x, q.y - size.h/2, size.w, size.h}
		if one.keyed {
			one.room.x, one.room.w = one.room.x-keyWide, one.room.w+keyWide
		}
		if r := one.room; r.x < f.left || r.x+r.w > f.right || r.y < f.top-2 || r.y+r.h > f.bottom-1 {
			continue
		}
		if q.x != seen {
			seen = q.x
			for i, t := range s.traces {
				beside[i] = t.beside(one.room)
			}
		}
		one.cost = s.cost(one, beside)
		out = append(out, one)
	}
	return out
}

// cost weighs a spot; beside are the stretches of the curves over its width.
func (s *setting) cost(one spot, beside []stretch) float64 {
	f, r := s.frame, one.room
	close, own := s.traces[one.of].away(beside[one.of], r)
	sum, white := math.Min(own, 60)*loose, float64(apart)
	if one.keyed { // it stands by itself
		sum, white = sum+keyCost, 2*apart
	}
	for j, t := range s.traces {
		if j == one.of && !one.keyed {
			continue
		}
		nearest, _ := t.away(beside[j], r)
		switch {
		case nearest < 1:
			sum += crossing
		case nearest <= close && !one.keyed:
			sum += doubtful
		}
		sum += tight * math.Max(0, white-nearest)
	}
	sum += onMark * float64(s.marked(r))
	for _, y := range f.yTicks.at {
		if py := f.py(y); py > r.y+1 && py < r.y+r.h-1 {
			sum++
		}
	}
	return sum
}

// marked is across the lines of how many marks a text stands.
func (s *setting) marked(r rect) (n int) {
	for _, m := range s.graph.marks {
		x, y := s.frame.px(m.At), s.frame.py(m.At)
		if m.OnX && x > r.x-2 && x < r.x+r.w+2 || !m.OnX && y > r.y-1.5 && y < r.y+r.h+1.5 {
			n++
		}
	}
	return n
}
