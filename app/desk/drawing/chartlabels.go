package drawing

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// setting is a chart laid out: its frame and every text in its place.
type setting struct {
	pen    *pen
	graph  graph
	wide   float64
	tall   float64
	frame  frame
	traces []trace
	spots  []spots // for the name of each curve
	labels []label
	taken  []rect
	keyed  []spot  // names with a piece of their line before them
	ticks  [2]int  // the labels on the y axis
	name   label   // of the x axis; gives way to what the curves say
	lost   float64 // how much had to give way
}

// rect is the room that a text takes.
type rect struct{ x, y, w, h float64 }

func (a rect) hits(b rect) bool {
	return a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h
}

// overlapping is how much of its own white a text may share with its
// neighbours above and below.
const overlapping = 1

func (s *setting) room(l label) rect {
	w, h := s.pen.room(l.text, l.strong)
	r := rect{l.at.x, l.at.y - h/2 + overlapping, w, h - 2*overlapping}
	switch l.side {
	case middle:
		r.x -= w / 2
	case end:
		r.x -= w
	}
	return r
}

// free says whether nothing is written there yet.
func (s *setting) free(r rect) bool {
	for _, t := range s.taken {
		if r.hits(t) {
			return false
		}
	}
	return true
}

// put takes a text in, unless it would lie on another.
func (s *setting) put(l label) bool {
	return s.putIn(l, s.room(l))
}

// putIn does so for a text with something before it.
func (s *setting) putIn(l label, r rect) bool {
	if l.text == "" || !s.inside(r) || !s.free(r) {
		return false
	}
	s.labels, s.taken = append(s.labels, l), append(s.taken, around(r))
	return true
}

// around is a text with the white at its ends.
func around(r rect) rect { return rect{r.x - 2, r.y, r.w + 4, r.h} }

// inside says whether a text stands in the picture.
func (s *setting) inside(r rect) bool {
	return r.x >= 0 && r.y >= 0 && r.x+r.w <= s.wide && r.y+r.h <= s.tall
}

// quiet is a label of an axis or a mark.
func quiet(text string, x, y float64, side side) label {
	return label{text: text, at: point{x, y}, side: side, size: sizeLabel, colour: inkLabel}
}

// bestSetting lays a chart out with as little white above and below the curves
// as leaves every label its place, and otherwise with what loses least.
func bestSetting(p *pen, g graph, wide, tall float64) *setting {
	const more = edge + rowHigh
	var best *setting
	for _, white := range [][2]float64{{edge, edge}, {more, edge}, {edge, more}, {more, more}} {
		bare := &setting{pen: p, graph: g, wide: wide, tall: tall, frame: frameFor(p, g, wide, tall, white[0], white[1])}
		bare.setAxes()
		for _, c := range g.curves {
			bare.traces = append(bare.traces, traceOf(bare.frame, bare.frame.places(c.parts)))
		}
		for i := range g.curves {
			bare.spots = append(bare.spots, spots{along: bare.spotsAlong(i)})
		}
		for _, marksFirst := range []bool{false, true} {
			s := *bare
			s.labels, s.taken = slices.Clone(bare.labels), slices.Clone(bare.taken)
			s.setNames(marksFirst)
			if best == nil || s.lost < best.lost {
				best = &s
			}
			if best.lost == 0 {
				return best
			}
		}
	}
	return best
}

// setNames names lines and marks, by choice the marks on x first: a line finds
// another place more easily than a mark.
func (s *setting) setNames(marksFirst bool) {
	if marksFirst {
		s.setUpright()
	}
	s.setCurves()
	if !marksFirst {
		s.setUpright()
	}
	s.setLevel()
	s.setName()
}

// setAxes writes units, names and ticks.
func (s *setting) setAxes() {
	f, g := s.frame, s.graph
	unit := quiet(cmp.Or(g.y.Unit, g.y.Label), f.left-besideTick, rowHigh/2, end)
	if r := s.room(unit); r.x < 0 {
		unit.at.x, unit.side = margin, start
	}
	s.put(unit)
	first := len(s.labels)
	for _, y := range f.yTicks.at {
		s.put(quiet(f.yTicks.name(y), f.left-besideTick, f.py(y), end))
	}
	s.ticks = [2]int{first, len(s.labels)}
	row := f.bottom + besideTick + rowHigh/2
	for _, x := range f.xTicks.at {
		s.put(quiet(f.xTicks.name(x), f.px(x), row, middle))
	}
	name := quiet(cut(s.pen, withUnit(g.x.Unit, g.x.Label), s.wide-f.left), f.left, s.tall-lastRow, start)
	if s.inside(s.room(name)) && s.tall > rows*rowHigh {
		s.name = name
	}
}

// setName writes the name of the y axis before its unit where there is room.
func (s *setting) setName() {
	if g := s.graph; g.y.Label != "" && len(s.labels) > 0 && s.labels[0].text == g.y.Unit {
		s.move(0, quiet(g.y.Label+", "+g.y.Unit, margin, s.labels[0].at.y, start))
	}
}

// setCurves names the lines, in the order in which all names find the best
// places.
func (s *setting) setCurves() {
	before := len(s.labels)
	best, cost := []spot(nil), math.Inf(1)
	for _, order := range orders(len(s.spots)) {
		if chosen, sum := s.choose(order); sum < cost {
			best, cost = chosen, sum
		}
		s.labels, s.taken = s.labels[:before], s.taken[:before]
	}
	for _, one := range best {
		s.putIn(one.label, one.room)
		if one.keyed {
			s.keyed = append(s.keyed, one)
		}
	}
	if cost >= onMark {
		s.lost += cost
	}
}

// choose gives each line in turn the best place that is left.
func (s *setting) choose(order []int) (chosen []spot, cost float64) {
	for _, i := range order {
		if s.graph.curves[i].label == "" {
			continue
		}
		at := &s.spots[i]
		found, ok := s.best(at.along)
		if !ok || found.cost >= keyCost {
			if at.apart == nil {
				at.apart = s.spotsApart(i)
			}
			if other, has := s.best(at.apart); has && (!ok || other.cost < found.cost) {
				found, ok = other, true
			}
		}
		if !ok || !s.putIn(found.label, found.room) {
			cost += noPlace
			continue
		}
		chosen, cost = append(chosen, found), cost+found.cost
	}
	return chosen, cost
}

// best is the best of some spots that is free.
func (s *setting) best(of []spot) (found spot, ok bool) {
	at := -1
	for i := range of {
		if (at < 0 || of[i].cost < of[at].cost) && s.inside(of[i].room) && s.free(of[i].room) {
			at = i
		}
	}
	if at < 0 {
		return spot{}, false
	}
	return of[at], true
}

// orders are ways to go through n lines: all of them for up to three.
func orders(n int) [][]int {
	switch n {
	case 2:
		return [][]int{{0, 1}, {1, 0}}
	case 3:
		return [][]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}
	}
	var on, back []int
	for i := range n {
		on, back = append(on, i), append(back, n-1-i)
	}
	return [][]int{on, back}
}

// setUpright names the marks on x at the top: first as far left as each can
// stand, so that most find room, then over its line where that is free.
func (s *setting) setUpright() {
	f := s.frame
	var marks []label
	for _, m := range s.graph.marks {
		if m.OnX && m.Label != "" && f.x.holds(m.At) {
			marks = append(marks, quiet(m.Label, f.px(m.At), rowHigh/2, middle))
		}
	}
	slices.SortStableFunc(marks, func(a, b label) int { return cmp.Compare(a.at.x, b.at.x) })
	first := len(s.labels)
	var over []label
	for _, m := range marks {
		down := f.top + rowHigh/2 - m.at.y
		switch {
		case s.putOne(at(m, 3, 0, end), m, at(m, -3, 0, start)):
			over = append(over, m)
		case !s.putOne(s.clear(at(m, 4, down, start), at(m, -4, down, end))...):
			s.lost += noName
		default:
			over = append(over, s.labels[len(s.labels)-1])
		}
	}
	for i, m := range over {
		s.move(first+i, m)
	}
}

// move puts a text to another place, if that is free.
func (s *setting) move(i int, l label) {
	was := s.taken[i]
	s.taken[i] = rect{}
	if r := s.room(l); s.inside(r) && s.free(r) {
		s.labels[i], s.taken[i] = l, around(r)
		return
	}
	s.taken[i] = was
}

// setLevel names the marks on y at their ends, and where curves leave no room
// there, among the ticks, which do not repeat the unit.
func (s *setting) setLevel() {
	f := s.frame
	for _, m := range s.graph.marks {
		if m.OnX || m.Label == "" || !f.y.holds(m.At) {
			continue
		}
		y := f.py(m.At)
		l, r := quiet(m.Label, f.left+3, y, start), quiet(m.Label, f.right-2, y, end)
		off := s.room(l).h/2 + 2
		ends := s.clear(at(r, 0, -off, end), at(r, 0, off, end), at(l, 0, -off, start), at(l, 0, off, start))
		tick := quiet(strings.TrimSuffix(m.Label, " "+s.graph.y.Unit), f.left-besideTick, y, end)
		if !s.putOne(ends...) && !s.putTick(tick) {
			s.lost += noName
		}
	}
}

// putTick writes among the ticks, instead of those that it would lie on.
func (s *setting) putTick(l label) bool {
	labels, taken := slices.Clone(s.labels), slices.Clone(s.taken)
	for i := s.ticks[0]; i < s.ticks[1]; i++ {
		if s.taken[i].hits(s.room(l)) {
			s.labels[i].text, s.taken[i] = "", rect{}
		}
	}
	if s.put(l) {
		return true
	}
	s.labels, s.taken = labels, taken
	return false
}

// at is a label moved, with its place at another side.
func at(l label, dx, dy float64, side side) label {
	l.at.x, l.at.y, l.side = l.at.x+dx, l.at.y+dy, side
	return l
}

// clear are those of some places that lie across no mark's line.
func (s *setting) clear(places ...label) []label {
	return slices.DeleteFunc(places, func(l label) bool { return s.marked(s.room(l)) > 0 })
}

// putOne takes the first of some places that is free of texts and curves.
func (s *setting) putOne(places ...label) bool {
	for _, l := range places {
		if s.open(s.room(l)) && s.put(l) {
			return true
		}
	}
	return false
}
