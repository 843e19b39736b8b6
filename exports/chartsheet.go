package exports

import (
	"math"
	"slices"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
)

// Heights of the charts in points.
const curveHeight, barsHeight = 250, 150

// mostCurves and mostMarks are what the columns of the sheet have room for.
const mostCurves, mostMarks = 3, 2

// everyPoint thins a curve: the model gives some seventy points, close to each
// other where it bends, and a quarter of them draws the same line.
const everyPoint = 4

// curves is the sheet of charts: the kettle of the first batch that has a curve,
// and what the class packs against what the freezer takes in a day. Their cells
// stand under them.
func (m *maker) curves(def Sheet) *sheet {
	s := m.newSheet(def, 84, 66, 74, 84, 84, 64, 64)
	s.add(row{cells: []cell{s.wide(title, m.Say(def.Title))}})
	s.add(row{cells: []cell{s.wide(subtitle, m.className())}, space: 6})
	drawn := func(b class.BatchWorked) bool { return kettleChart(b).Drawn() }
	if i := slices.IndexFunc(m.Worked.Batches, drawn); i >= 0 {
		m.kettleCurve(s, m.batchName(i, m.Worked.Batches[i]), kettleChart(m.Worked.Batches[i]))
	} else {
		s.para(plain, m.Say("No curve of a kettle: no batch of this class says enough of its kettle, its burner and its pieces."))
	}
	m.freezerBars(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

func kettleChart(b class.BatchWorked) measure.Chart {
	for _, c := range b.Estimates.Charts() {
		if c.ID == "kettle" {
			return c
		}
	}
	return measure.Chart{}
}

// kettleCurve draws what heat does in a kettle. All of it is an estimate and says
// so, above the chart and in its title. The cells of its marks stand beside the
// first rows of those of its curves.
func (m *maker) kettleCurve(s *sheet, name string, c measure.Chart) {
	s.heading(name)
	s.add(row{cells: []cell{{span: len(s.cols), role: small, runs: []run{{true, m.Say(estimatesHead) + ". "}, {false, m.Say(estimatesSay) + " " + m.Say("Every figure here is an estimate.") + " " + m.sources.ref(c.Source)}}}}, keep: true})
	d := &drawing{title: m.Say("%s, estimated", c.Title), across: axisText(c.X), up: axisText(c.Y),
		alt: m.Say("Estimated temperatures of the water and of a piece over time; the numbers stand under the chart.")}
	s.add(row{cells: []cell{{span: len(s.cols), role: blank, chart: d}}, height: curveHeight, keep: true})
	d.low, d.high = ends(c)
	heads := []cell{{role: headRight, value: axisText(c.X)}}
	var rows []row
	put := func(i, col int, r role, v float64) {
		for len(rows) <= i {
			rows = append(rows, row{keep: true})
		}
		rows[i].cells = append(rows[i].cells, cell{col: col, role: r, value: v})
	}
	first := len(s.rows) + 2
	for i, curve := range c.Curves[:min(len(c.Curves), mostCurves)] {
		line := thinned(curveOf(curve))
		heads = append(heads, cell{col: i + 1, role: headRight, value: curve.Label + ", " + c.Y.Unit})
		for j := range line.X {
			if i == 0 {
				put(j, 0, constantTwo, line.X[j])
			}
			put(j, i+1, curveValue, line.Y[j])
		}
		d.lines = append(d.lines, drawnLine{x: 0, y: i + 1, head: first - 1, first: first, last: first + len(line.X) - 1, look: curveLooks[i]})
	}
	heads = append(heads, m.kettleMarks(d, c, first, put)...)
	s.add(row{cells: heads, space: 2, keep: true})
	s.rows = append(s.rows, rows...)
	s.rows[len(s.rows)-1].keep = false
}

// kettleMarks are the moments to compare with, drawn as lines across the chart:
// each takes two rows in a column of its own. It gives back their heads.
func (m *maker) kettleMarks(d *drawing, c measure.Chart, first int, put func(i, col int, r role, v float64)) []cell {
	var heads []cell
	x, at := mostCurves+1, 0
	for _, mark := range c.Marks {
		if !mark.OnX || !isNumber(mark.At) || len(heads) > mostMarks {
			continue
		}
		if heads == nil {
			heads = []cell{{col: x, role: headRight, value: axisText(c.X)}}
		}
		y := x + len(heads)
		heads = append(heads, cell{col: y, role: headRight, value: mark.Label})
		d.lines = append(d.lines, drawnLine{x: x, y: y, head: first - 1, first: first + at, last: first + at + 1, look: markLooks[y-x-1]})
		for _, end := range []float64{d.low, d.high} {
			put(at, x, constantTwo, fourDigits(mark.At))
			put(at, y, constant, end)
			at++
		}
	}
	return heads
}

// ends are round ends of the upward axis around all of a chart's curves.
func ends(c measure.Chart) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, curve := range c.Curves {
		for _, y := range curve.Y {
			if isNumber(y) {
				low, high = min(low, y), max(high, y)
			}
		}
	}
	const step = 20
	return math.Floor(low/step) * step, math.Ceil(high/step) * step
}

// thinned keeps some points of a curve, its last among them.
func thinned(c numbersCurve) numbersCurve {
	out := numbersCurve{ID: c.ID, Label: c.Label}
	for i := range c.X {
		if i%everyPoint == 0 || i == len(c.X)-1 {
			out.X, out.Y = append(out.X, c.X[i]), append(out.Y, c.Y[i])
		}
	}
	return out
}

func axisText(a measure.Axis) string { return a.Label + ", " + a.Unit }

// freezerBars draws what the class packs against both ends of what the freezer
// takes in a day. These are rules and entries, and no estimates.
func (m *maker) freezerBars(s *sheet) {
	s.heading(m.Say("The freezer of the class"))
	packed, day := m.Totals.Prepared, m.Totals.FreezerDay
	if day.InWords() || packed.InWords() || packed.Value <= 0 {
		s.para(plain, m.Say("No chart of the freezer: its capacity or the weights are not entered."))
		return
	}
	s.add(row{cells: []cell{s.wide(small, sentences(day.Working, m.Totals.FreezerDays.Label+": "+m.Totals.FreezerDays.Text, m.sources.basis(day)))}, keep: true})
	d := &drawing{bars: true, title: m.Say("What the class packs, and what the freezer takes in a day"), up: packed.Unit,
		alt: m.Say("A bar for the weight that the class packs and one for each end of what the freezer takes in a day; the numbers stand under the chart.")}
	s.add(row{cells: []cell{{span: len(s.cols), role: blank, chart: d}}, height: barsHeight, keep: true})
	s.add(row{cells: []cell{{role: head, value: m.Say("Bar"), span: 3}, {col: 3, role: headRight, value: packed.Unit}}, keep: true})
	first := len(s.rows) + 1
	for _, bar := range []struct {
		text  string
		value float64
	}{
		{m.Say("Limit for a day, upper end"), day.High},
		{m.Say("Limit for a day, careful end"), day.Value},
		{m.Say("The class packs"), packed.Value},
	} {
		s.add(row{cells: []cell{{role: constantText, value: bar.text, span: 3}, {col: 3, role: constant, value: fourDigits(bar.value)}}, keep: true})
	}
	s.rows[len(s.rows)-1].keep = false
	d.lines = []drawnLine{{x: 0, y: 3, head: first - 1, first: first, last: len(s.rows), look: barLook}}
}
