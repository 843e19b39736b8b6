package exports

import (
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// cardColumns is how many columns of equal width a card has: three figures side
// by side over two columns each.
const cardColumns = 6

// stationCards are one page for each batch, to stand on its stations: in large
// type what is read while standing, and a page with what holds for all of them.
func (m *maker) stationCards(def Sheet) *sheet {
	s := m.newSheet(def, slices.Repeat([]float64{1}, cardColumns)...)
	if len(m.Worked.Batches) == 0 {
		s.add(row{cells: []cell{s.wide(title, m.Say("Station cards"))}, keep: true})
		s.para(plain, m.Say("The class has no batches yet: choose a treatment in the crop table and add a batch."))
	}
	for _, b := range m.Worked.Batches {
		m.stationCard(s, b)
	}
	first := len(s.rows)
	m.cautions(s, m.Say("For every station"), m.roomCautions())
	s.rows[first].split = first > 0
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// stationCard is the page of one batch, its cautions in as large a type as the
// page has room for. Of the findings only those stand there that stop people;
// the batch sheet has them all.
func (m *maker) stationCard(s *sheet, b class.BatchWorked) {
	first := len(s.rows)
	m.cardHead(s, b)
	if b.Known {
		m.cardMinutes(s, b)
		m.cardFigures(s, b)
		m.cardBoils(s, b)
	}
	m.findings(s, "", plain, slices.DeleteFunc(slices.Clone(b.Findings), func(f measure.Finding) bool { return f.Severity != measure.Stop }))
	m.cardRoles(s)
	rows := len(s.rows)
	for _, large := range []bool{true, false} {
		s.rows = s.rows[:rows]
		m.cardWarnings(s, b, large)
		if s.fits(first) {
			break
		}
	}
	s.rows[first].split = first > 0
	s.rows[first].uncut = true
	s.keepFrom(first)
}

// cardWarnings are the cautions of a batch, in large type or close together.
func (m *maker) cardWarnings(s *sheet, b class.BatchWorked, large bool) {
	list := m.cardCautions(b)
	if large {
		m.warnings(s, "", warningCard, list)
	} else if len(list) > 0 {
		s.add(row{cells: []cell{{span: len(s.cols), role: warningSmall, runs: m.warningsTogether(list)}}, space: 2})
	}
}

// cardHead is the batch, what is cut how, and where.
func (m *maker) cardHead(s *sheet, b class.BatchWorked) {
	name := short(b.Batch.Name)
	if name == "" {
		name = m.Say("Batch")
	}
	s.add(row{cells: []cell{s.wide(cardTitle, name)}})
	if !b.Known {
		return
	}
	what := pieceName(b.Crop, b.Treatment)
	if b.Treatment.Size != "" {
		what += ", " + b.Treatment.Size
	}
	s.add(row{cells: []cell{s.wide(cardWhat, what+" · "+methodWords(m.Voice, b.Treatment.Method))}})
	s.add(row{cells: []cell{s.wide(subtitle, strings.Join(m.kitOf(b), " · "))}, space: 4})
}

// cardMinutes are the minutes or the words with what starts the clock, how they
// are worked out, and where they come from: never one without the other.
func (m *maker) cardMinutes(s *sheet, b class.BatchWorked) {
	t := b.Treatment
	if b.Minutes.InWords() {
		s.add(row{cells: []cell{s.wide(cardWords, b.Minutes.Text)}, space: 4})
		s.add(row{cells: []cell{s.wide(cardWhat, b.Clock.Label+": "+b.Clock.Text)}})
	} else {
		clock := []run{{false, b.Clock.Label + "\n"}, {true, b.Clock.Text}}
		if t.Words != "" {
			clock = append(clock, run{false, "\n" + t.Words})
		}
		minutes := cell{span: 2, role: cardMinutes, value: b.Minutes.Text}
		if len(s.lines(minutes)) > 1 {
			minutes.span++
		}
		s.add(row{cells: []cell{minutes, {col: minutes.span, span: cardColumns - minutes.span, role: cardClock, runs: clock}}, space: 4})
	}
	texts := []string{b.Minutes.Working, m.Say("Source: %s; %s.", m.sources.named(t.Source), m.Say(string(t.Standing))), b.Clock.Note}
	s.add(row{cells: []cell{s.wide(small, sentences(texts...))}, space: 2})
	for _, text := range m.editTexts(t) {
		s.add(row{cells: []cell{s.wide(edited, text)}})
	}
}

// cardFigures are the other figures, three side by side, each with what it
// rests on.
func (m *maker) cardFigures(s *sheet, b class.BatchWorked) {
	ice := b.Ice
	if b.IceEntered.ID != "" && b.IceEntered.Value > b.Ice.Value { // never less than the rule
		ice = b.IceEntered
	}
	figures := []measure.Figure{b.Prepared, b.Loads, b.LoadWeight, b.LoadWater, ice, b.Chill, b.Headspace, b.Packs, b.FreezerDay}
	s.gap(4)
	for len(figures) > 0 {
		var names, values, rests []cell
		for i, f := range figures[:3] {
			as := cardValue
			if f.Basis == measure.Estimate {
				as = cardGuess
			}
			names = append(names, cell{col: 2 * i, span: 2, role: cardLabel, value: f.Label})
			values = append(values, cell{col: 2 * i, span: 2, role: as, value: f.Text})
			rest := m.basis(f)
			rest.col, rest.span = 2*i, 2
			rests = append(rests, rest)
		}
		s.add(row{cells: names, space: 3})
		s.add(row{cells: values})
		s.add(row{cells: rests, space: 3})
		figures = figures[3:]
	}
}

// mostBoxes is how many loads have a box of their own on a card.
const mostBoxes = 6

// cardBoils are boxes to write when the water boiled again: one for each load,
// as many as stand side by side.
func (m *maker) cardBoils(s *sheet, b class.BatchWorked) {
	if b.Treatment.ClockStart != reference.AtReturnToBoil {
		return
	}
	back := m.Table.Rule("return-to-boil-min")
	s.gap(6)
	s.add(row{cells: []cell{s.wide(boxLabelWide, m.Say("Boiled again after: write it down for each load. It should be within %s %s.",
		m.ruleTexts()[back.ID], m.sources.ref(back.Source)))}, space: 4})
	boxes := mostBoxes
	if !b.Loads.InWords() {
		boxes = min(int(b.Loads.Value), mostBoxes)
	}
	names, empty := row{}, row{height: 32}
	for i := range boxes {
		names.cells = append(names.cells, cell{col: i, role: boxLabel, value: m.Say("Load %d", i+1)})
		empty.cells = append(empty.cells, cell{col: i, role: writeBox})
	}
	s.add(names)
	s.add(empty)
}

// cardRoles say who does what.
func (m *maker) cardRoles(s *sheet) {
	if len(m.Class.People.Roles) == 0 {
		return
	}
	s.gap(6)
	for _, r := range m.Class.People.Roles {
		s.add(row{cells: []cell{
			{span: 2, role: cardTask, runs: []run{{true, short(r.Name)}}},
			{col: 2, span: 4, role: cardTask, value: short(r.Does)},
		}, space: 1})
	}
	s.gap(4)
}

// cardCautions are the batch's own cautions, and that of the plug-in burner: it
// stands on the station.
func (m *maker) cardCautions(b class.BatchWorked) []content.Caution {
	if !b.Known {
		return nil
	}
	return slices.DeleteFunc(content.Cautions(m.Voice.Language(), topicsOf(b)...), func(c content.Caution) bool {
		return ofTheRoom(c) && !slices.Contains(c.Topics, content.Power)
	})
}

// roomCautions are those of the room that stand on no card.
func (m *maker) roomCautions() []content.Caution {
	return slices.DeleteFunc(m.stationCautions(), func(c content.Caution) bool { return slices.Contains(c.Topics, content.Power) })
}
