package exports

import (
	"math"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
)

// mostLabelPages bounds a sheet of labels: those of one batch are alike, so
// that a sheet can be printed again. How many are left out is said.
const mostLabelPages = 100

// labels is the sheet that is printed on label paper: a label for each pack of
// each batch, on the grid that was chosen. Nothing else stands on it: no
// header, no footer, no margin but that of the grid. The texts can be changed.
func (m *maker) labels(def Sheet) *sheet {
	g, _ := gridNamed(m.options.LabelGrid) // checked with the options, like the nudge
	g, _ = g.nudged(m.options.NudgeXMm, m.options.NudgeYMm)
	// the space after the last label stays free by a little, so that rounding
	// of a width never pushes a column to the next page
	const free = 6
	s := &sheet{id: def.ID, name: def.Title, whole: true, face: arial, page: page{
		paper: g.Paper, left: mmToPoints(g.LeftMm), top: mmToPoints(g.TopMm),
		right: max(mmToPoints(g.RightMm)-free, 0), bottom: max(mmToPoints(g.BottomMm)-free, 0),
	}}
	gapX, gapY := g.PitchXMm-g.WidthMm, g.PitchYMm-g.HeightMm
	for i := range g.Columns {
		if i > 0 && gapX > 0.005 {
			s.cols = append(s.cols, mmToPoints(gapX))
		}
		s.cols = append(s.cols, mmToPoints(g.WidthMm))
	}
	step := 1
	if len(s.cols) > g.Columns {
		step = 2
	}
	texts := m.labelTexts(g)
	s.aside = m.labelsLeftOut(g)
	if len(texts) == 0 {
		texts = []labelText{{food: m.Say("No packs yet"), role: packLabel}}
	}
	for first := 0; first < len(texts); first += g.Columns {
		number := first / g.Columns
		if gapY > 0.005 && number%g.Rows != 0 {
			s.gap(mmToPoints(gapY))
		}
		r := row{height: mmToPoints(g.HeightMm), split: number > 0 && number%g.Rows == 0}
		for i, t := range texts[first:min(first+g.Columns, len(texts))] {
			r.cells = append(r.cells, cell{col: i * step, role: t.role, runs: t.runs()})
		}
		s.add(r)
	}
	return s
}

// labelText is what one label says: the food in bold, then the other lines.
type labelText struct {
	food, rest string
	role       role
}

func (t labelText) runs() []run {
	runs := []run{{true, t.food}}
	if t.rest != "" {
		runs = append(runs, run{false, "\n" + t.rest})
	}
	return runs
}

// labelTexts are the labels of all packs, batch by batch, all in one size of
// type. Where the number of packs is not published, each station gets a row of
// labels.
func (m *maker) labelTexts(g Grid) []labelText {
	var list []labelText
	size := packLarge
	for _, b := range m.Worked.Batches {
		if b.Known && !labelFits(withCut(b.Label), m.labelLines(b.Label), packLarge, g) {
			size = packLabel
		}
	}
	for i, n := range shareOut(m.labelsWanted(g), labelRoom(g)) {
		if n == 0 {
			continue
		}
		b := m.Worked.Batches[i]
		one := labelText{m.labelFood(b, size, g), m.labelLines(b.Label), size}
		for range n {
			list = append(list, one)
		}
	}
	return list
}

// labelRoom is how many labels the most pages hold.
func labelRoom(g Grid) int { return mostLabelPages * g.Columns * g.Rows }

// labelsWanted is how many labels each batch of the class takes.
func (m *maker) labelsWanted(g Grid) []int {
	wanted := make([]int, len(m.Worked.Batches))
	for i, b := range m.Worked.Batches {
		if !b.Known {
			continue
		}
		each := float64(g.Columns)
		if !b.Packs.InWords() {
			each = b.Packs.High
		}
		// the bound only keeps the number whole; no class comes near it
		wanted[i] = int(math.Min(each*float64(b.Batch.Stations), 1e9))
	}
	return wanted
}

// shareOut gives each batch what it wants where there is room for all; else the
// room in equal shares, and what one does not need goes to the others.
func shareOut(wanted []int, room int) []int {
	given := make([]int, len(wanted))
	for {
		open := 0
		for i := range wanted {
			if given[i] < wanted[i] {
				open++
			}
		}
		if open == 0 || room == 0 {
			return given
		}
		share := max(room/open, 1)
		for i := range wanted {
			more := min(share, wanted[i]-given[i], room)
			given[i] += more
			room -= more
		}
	}
}

// labelsLeftOut says how many labels have no room, "" where all have.
func (m *maker) labelsLeftOut(g Grid) string {
	all, printed := 0, 0
	wanted := m.labelsWanted(g)
	for _, n := range wanted {
		all += n
	}
	for _, n := range shareOut(wanted, labelRoom(g)) {
		printed += n
	}
	if all == printed {
		return ""
	}
	n := func(x int) string { return measure.Plain(float64(x)) }
	return m.Say("%s of %s labels are on the %d pages of the label sheet, shared among the batches; %s are left out. Print the pages again for more.",
		n(printed), n(all), mostLabelPages, n(all-printed))
}

// labelFood is the name of the food with its cut where both fit; the cut gives
// way, never a line below.
func (m *maker) labelFood(b class.BatchWorked, size role, g Grid) string {
	if name := withCut(b.Label); labelFits(name, m.labelLines(b.Label), size, g) {
		return name
	}
	return b.Label.Food
}

func withCut(l batch.Label) string {
	if l.Cut == "" {
		return l.Food
	}
	return l.Food + ", " + l.Cut
}

// labelFits says whether a text fits into a label, in the workbook and in a PDF.
func labelFits(food, rest string, r role, g Grid) bool {
	l := looks[r]
	for _, f := range []*lettering{arial, plex} {
		width := (mmToPoints(g.WidthMm) - f.margins - indentWidth) / f.stretch
		lines := f.wrapped(bind(food), width, l.size, true) + f.wrapped(bind(rest), width, l.size, false)
		if float64(lines)*l.size*lineHeight+cellEnds > mmToPoints(g.HeightMm) {
			return false
		}
	}
	return true
}

// labelLines are day and amount, the best-quality window and the reminder.
func (m *maker) labelLines(l batch.Label) string {
	frozen := m.Say("Frozen ____-__-__")
	if l.Frozen != "" {
		frozen = m.Say("Frozen %s", l.Frozen)
	}
	lines := []string{frozen + " · " + l.Amount}
	if best := l.Best(m.Voice); best != "" {
		lines = append(lines, best)
	}
	return strings.Join(append(lines, l.Cook), "\n")
}
