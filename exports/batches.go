package exports

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
)

// batches is the sheet for the stations: every figure of every batch with its
// working, what it rests on and its source, and the estimates apart from them.
func (m *maker) batches(def Sheet) *sheet {
	s := m.newSheet(def, m.figureShares()...)
	s.add(row{cells: []cell{s.wide(title, m.Say("Batches"))}, keep: true})
	s.headFrom = s.add(row{cells: m.figureHeads(m.Say("One station")), space: 3, keep: true})
	s.headTo = s.headFrom
	if len(m.Worked.Batches) == 0 {
		s.para(plain, m.Say("The class has no batches yet: choose a treatment in the crop table and add a batch."))
	}
	var later []int
	for i, b := range m.Worked.Batches {
		if !m.batch(s, i, b) {
			later = append(later, i)
		}
	}
	m.cautions(s, m.Say("For every station"), m.stationCautions())
	m.estimatesOf(s, later)
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// batch is the block of one batch: its rules, then as many estimates as one page
// has room for; all of them where the rules alone are longer. A new batch starts a new page where it does not fit on what is
// left. It says whether all estimates stand there.
func (m *maker) batch(s *sheet, i int, b class.BatchWorked) (whole bool) {
	first := len(s.rows)
	m.batchRules(s, i, b)
	rules := len(s.rows)
	n := allTold
	for ; n >= untold; n-- {
		s.rows = s.rows[:rules]
		m.estimates(s, b, n)
		if s.fits(first) {
			break
		}
	}
	s.rows[first].uncut = n >= untold
	if n < untold { // longer than a page all the same: it flows on, where there is room for all
		s.rows = s.rows[:rules]
		n = allTold
		m.estimates(s, b, n)
	}
	s.keepFrom(first)
	return n == allTold
}

// batchRules is what people do: the figures of the rules, what to mind, and the
// cautions.
func (m *maker) batchRules(s *sheet, i int, b class.BatchWorked) {
	s.heading(m.batchName(i, b))
	if b.Known {
		s.add(row{cells: []cell{s.wide(value, m.batchLine(b))}})
		s.gap(2)
		for _, f := range joined(saidOnce(b)) {
			m.batchFigure(s, f)
		}
		for _, text := range m.editTexts(b.Treatment) {
			s.add(row{cells: []cell{s.wide(edited, text)}})
		}
	}
	m.findings(s, "", labelSmall, b.Findings)
	own := m.warningsTogether(m.ownCautions(b)) // room is short
	if len(own) > 0 {
		s.gap(4)
		s.add(row{cells: []cell{{span: len(s.cols), role: warningSmall, runs: own}}, space: 2})
	}
}

// batchName is the heading of a batch.
func (m *maker) batchName(i int, b class.BatchWorked) string {
	name := short(b.Batch.Name)
	if name == "" {
		name = m.Say("Batch")
	}
	return fmt.Sprintf("%d  %s", i+1, name)
}

// saidOnce are the figures of a batch without those whose number stands in the
// working of the next: the published minutes where nothing is added to them,
// and what the freezer takes in a day.
func saidOnce(b class.BatchWorked) []measure.Figure {
	return slices.DeleteFunc(b.Figures(), func(f measure.Figure) bool {
		return f.ID == b.Published.ID && !f.InWords() && f.Text == b.Minutes.Text ||
			f.ID == b.FreezerDay.ID && !f.InWords() && !b.FreezerDays.InWords()
	})
}

// batchFigure is one figure; the minutes and the chill carry their substance's
// colour at the edge.
func (m *maker) batchFigure(s *sheet, f measure.Figure) {
	if f.ID == "best-by" && f.Also != "" { // two days are too long to stand beside
		f.Working, f.Also = f.Also+"; "+f.Working, ""
	}
	m.figure(s, f)
	r := &s.rows[len(s.rows)-1]
	if f.InWords() {
		return
	}
	switch f.ID {
	case "minutes":
		r.cells[1].role = boilValue
	case "chill":
		r.cells[1].role = iceValue
	}
}

// joined puts figures that say the same words for the same reason into one
// line: “one layer at a time” counts for loads and their weight alike.
func joined(list []measure.Figure) []measure.Figure {
	var out []measure.Figure
	for _, f := range list {
		if n := len(out) - 1; n >= 0 && f.InWords() && out[n].InWords() && out[n].Words == f.Words && out[n].Working == f.Working && out[n].Source == f.Source {
			if out[n].Label != f.Label {
				out[n].Label += "; " + lowerFirst(f.Label)
			}
			continue
		}
		out = append(out, f)
	}
	return out
}

// batchLine says what is done with what, at how many stations.
func (m *maker) batchLine(b class.BatchWorked) string {
	parts := []string{pieceName(b.Crop, b.Treatment)}
	if b.Treatment.Size != "" {
		parts[0] += ", " + b.Treatment.Size
	}
	parts = append(append(parts, methodWords(m.Voice, b.Treatment.Method)), m.kitOf(b)...)
	p := b.Batch.Pack
	pack, _ := p.ContainerName(m.Voice)
	if p.Tray {
		pack = m.Say("%s, loose on a tray first", pack)
	}
	return strings.Join(append(parts, pack), " · ")
}

// kitOf is how many stations work a batch, with which kettle and burner.
func (m *maker) kitOf(b class.BatchWorked) []string {
	parts := []string{m.stations(b.Batch.Stations)}
	if b.Batch.Kettle != "" {
		kettle := short(b.Batch.Kettle)
		if k, ok := m.Class.Kit.KettleNamed(b.Batch.Kettle); ok && k.Holds.Given() {
			kettle = m.Say("%s, %s of water", kettle, m.Voice.Amount(k.Holds.String()))
		}
		parts = append(parts, kettle)
	}
	if b.Batch.Burner != "" {
		parts = append(parts, short(b.Batch.Burner))
	}
	return parts
}

func (m *maker) stations(n int) string {
	if n == 1 {
		return m.Say("1 station")
	}
	return m.Say("%s stations", measure.Plain(float64(n)))
}

// shared are the topics of the room rather than of one batch.
var shared = []content.Topic{content.Always, content.Power, content.IceBath}

// ownCautions are the cautions of one batch, without those of the room.
func (m *maker) ownCautions(b class.BatchWorked) []content.Caution {
	return slices.DeleteFunc(content.Cautions(m.Voice.Language(), topicsOf(b)...), ofTheRoom)
}

// stationCautions are those of the room that concern the class: they stand once
// at the end.
func (m *maker) stationCautions() []content.Caution {
	return slices.DeleteFunc(m.cautionsOf(m.Worked.Batches), func(c content.Caution) bool { return !ofTheRoom(c) })
}

func ofTheRoom(c content.Caution) bool {
	return slices.ContainsFunc(c.Topics, func(t content.Topic) bool { return slices.Contains(shared, t) })
}
