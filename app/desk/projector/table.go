package projector

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
)

// table has a line for each difference of a trial from the plan, first of what
// was changed and then of what follows, as many as there is room for.
type table struct {
	changed, follows *tableHead
	lines            []*tableLine
	more             *words
	first            int // lines of what was changed
	all              int // differences; lines beyond the last are empty
	k, wide          float32
}

// mostLines is more than a view ever holds, and leastLines are set whatever
// their length.
const mostLines, leastLines = 24, 9

func newTable(s *stage) *table {
	t := &table{
		changed: newTableHead(s, look.Say("What was changed"), look.Say("Plan"), look.Say("Trial")), follows: newTableHead(s, look.Say("What follows"), "", ""),
		more: s.say("", asRange),
	}
	for range mostLines {
		t.lines = append(t.lines, newTableLine(s))
	}
	return t
}

func (t *table) set(changed, follows []session.Difference) {
	t.first, t.all = len(changed), len(changed)+len(follows)
	all := append(changed, follows...)
	for i, l := range t.lines {
		if i < len(all) {
			l.set(all[i])
		}
	}
}

// columns is where the three columns begin, and how wide they are.
func (t *table) columns() (x, wide [3]float32) {
	shares, gap := [3]float32{1, 1, 1.3}, 24*t.k
	at := float32(0)
	for i, share := range shares {
		x[i], wide[i] = at, (t.wide-2*gap)*share/total(shares[:])
		at += wide[i] + gap
	}
	return x, wide
}

func (t *table) between() float32 { return 10 * t.k }

func (t *table) fit(k, wide float32) float32 {
	t.k, t.wide = k, wide
	if t.all == 0 {
		return 0
	}
	t.more.set(t.below(t.all))
	_, widths := t.columns()
	high := t.changed.fit(k, wide, widths) + t.follows.fit(k, wide, widths) + t.more.fit(k, wide)
	for i, l := range t.there() {
		l.fit(k, widths)
		if i < leastLines {
			high += l.high + t.between()
		}
	}
	return high
}

// there are the lines that say something.
func (t *table) there() []*tableLine { return t.lines[:min(t.all, mostLines)] }

func (t *table) put(x, y, high float32) {
	fits := t.fitting(high)
	columns, _ := t.columns()
	y = t.changed.put(x, y, columns, fits > 0)
	for i, l := range t.lines {
		if i == t.first {
			y = t.follows.put(x, y, columns, i < fits)
		}
		l.put(x, y, columns, i < fits)
		if i < fits {
			y += l.high + t.between()
		}
	}
	t.more.high = 0
	if fits > 0 {
		t.more.set(t.below(t.all - fits))
		t.more.fit(t.k, t.wide)
	}
	t.more.put(x, y, 0)
}

// below says what the sign of an estimate means, and how many differences found
// no room.
func (t *table) below(left int) string {
	switch left {
	case 0:
		return look.Say("≈ by estimate")
	case 1:
		return look.Say("≈ by estimate · and 1 more that differs")
	}
	return look.Say("≈ by estimate · and %d more that differ", left)
}

// fitting is how many lines there is room for above the last.
func (t *table) fitting(high float32) int {
	if high == 0 || t.all == 0 {
		return 0
	}
	at := t.changed.high
	for i, l := range t.there() {
		if i == t.first {
			at += t.follows.high
		}
		at += l.high + t.between()
		if at > high-t.more.high {
			return i
		}
	}
	return len(t.there())
}

func (t *table) objects() []fyne.CanvasObject {
	all := append(t.more.objects(), append(t.changed.objects(), t.follows.objects()...)...)
	for _, l := range t.lines {
		all = append(all, objectsOf([]block{l.label, l.plan, l.trial, l.by})...)
	}
	return all
}
