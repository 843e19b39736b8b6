package exports

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// cover is the first sheet: who, where, when, how much, what to mind, and what
// it all rests on.
func (m *maker) cover(def Sheet) *sheet {
	s := m.newSheet(def, figureShares...)
	s.add(row{cells: []cell{s.wide(title, m.className())}, space: 6, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.whenAndWhere())}, space: 6})
	for _, p := range m.people() {
		s.add(row{cells: []cell{
			{span: 2, role: label, value: p[0]},
			{col: 2, span: 3, role: plain, value: p[1]},
		}})
	}
	m.coverTotals(s)
	m.coverShopping(s)
	m.findings(s, "For the class as a whole", plain, m.Findings)
	m.coverLabels(s)
	m.cautions(s, "Cautions", cautionsOf(m.Worked.Batches))
	m.coverEdits(s)
	m.coverTable(s)
	if notes := strings.TrimSpace(m.Class.Notes); notes != "" {
		s.heading("Notes of the educator")
		s.para(plain, notes)
	}
	m.notes(s)
	return s
}

func (m *maker) whenAndWhere() string {
	parts := []string{}
	if day, err := class.ParseDate(m.Class.Date); err == nil && !day.IsZero() {
		parts = append(parts, day.Format("Monday, 2 January 2006")+" ("+day.Format(time.DateOnly)+")")
	}
	if place := short(m.Class.Place.Name); place != "" {
		parts = append(parts, place)
	}
	if len(parts) == 0 {
		return "Day and place are not fixed yet"
	}
	return strings.Join(parts, " · ")
}

// people are the facts that were typed in, each with its name.
func (m *maker) people() [][2]string {
	c := m.Class
	var list [][2]string
	say := func(name, text string) {
		if text = short(text); text != "" {
			list = append(list, [2]string{name, text})
		}
	}
	say("Educator", c.People.Educator)
	say("Agency", c.People.Agency)
	say("Help line", c.People.HelpLine)
	people := fmt.Sprintf("%d people at %s", c.People.Headcount, measure.Counted(m.Totals.Stations.Value, "station", "stations"))
	if c.People.Headcount == 1 {
		people = "1 person at 1 station"
	}
	say("People", people)
	var place []string
	if c.Place.Altitude.Given() {
		place = append(place, "altitude "+grouped(c.Place.Altitude))
	}
	if c.Place.Tap.Given() {
		place = append(place, "tap water "+c.Place.Tap.String())
	}
	if c.Place.Freezer.Given() {
		place = append(place, "freezer "+c.Place.Freezer.String())
	}
	say("Kitchen", strings.Join(place, ", "))
	for _, r := range c.People.Roles {
		say(r.Name, r.Does)
	}
	return list
}

// grouped is a quantity with thousands marks.
func grouped[D measure.Dimension](q measure.Of[D]) string {
	return measure.Plain(q.Amount()) + " " + q.Unit().Symbol
}

// coverTotals are the totals with their workings.
func (m *maker) coverTotals(s *sheet) {
	s.heading("In all")
	for _, f := range m.Totals.Figures() {
		m.figure(s, f)
	}
}

func (m *maker) coverShopping(s *sheet) {
	if len(m.Shopping) == 0 {
		return
	}
	s.heading("Shopping, weight as bought")
	for _, l := range m.Shopping {
		market := ""
		if l.MarketUnit != "" {
			market = "Market unit: " + l.MarketUnit
		}
		s.add(row{cells: []cell{
			{span: 2, role: labelSmall, value: l.Crop.Name},
			figureText(2, l.Buy),
			{col: 3, role: small, value: sentences(l.Buy.Working, l.Buy.Note, market)},
			m.basis(l.Buy),
		}, space: 1})
	}
	if f := m.Totals.IceBags; !f.InWords() {
		working := "See “In all”: " + strings.ToLower(f.Label[:1]) + f.Label[1:]
		if by := m.Totals.IceBalance; !by.InWords() {
			working = sentences(working, "Estimated by heat balance: "+by.Text)
			if by.Also != "" {
				working += ", " + by.Also
			}
		}
		s.add(row{cells: []cell{
			{span: 2, role: labelSmall, value: "Ice"}, {col: 2, role: value, value: f.Text},
			{col: 3, role: small, value: working + "."},
			m.basis(f),
		}, space: 1})
	}
}

// coverLabels says so where the label sheet has no room for every pack.
func (m *maker) coverLabels(s *sheet) {
	g, _ := gridNamed(m.options.LabelGrid) // checked with the options
	text := m.labelsLeftOut(g)
	if text == "" || !slices.Contains(m.options.Sheets, LabelsSheet) {
		return
	}
	s.heading("Labels")
	s.para(plain, text)
}

// cautions lists warnings: what it is, then what to do.
func (m *maker) cautions(s *sheet, caption string, list []content.Caution) {
	m.warnings(s, caption, warning, list)
}

// warnings lists cautions in the type of a role.
func (m *maker) warnings(s *sheet, caption string, as role, list []content.Caution) {
	if caption != "" {
		s.heading(caption)
	}
	for _, c := range list {
		s.add(row{cells: []cell{{span: len(s.cols), role: as, runs: m.warning(c)}}, space: 2})
	}
}

// warning is a caution as text: what it is in bold, then what to do.
func (m *maker) warning(c content.Caution) []run {
	text := filled(c.ID, c.Text, batch.RuleTexts(m.Table, m.Class.Units))
	if ref := m.sources.ref(c.Source); ref != "" {
		text += " " + ref
	}
	return []run{{true, c.Title + ". "}, {false, text}}
}

// filled puts the rules into the placeholders of a text. The texts are part of
// the program: one that cannot be filled is a broken invariant, and a test
// fills them all.
func filled(id, text string, texts map[string]string) string {
	full, err := content.Fill(text, texts)
	if err != nil {
		panic("exports: " + id + ": " + err.Error())
	}
	return full
}

// coverEdits lists every value of the class's treatments that was changed
// here, beside the value that was shipped.
func (m *maker) coverEdits(s *sheet) {
	first := true
	for _, b := range m.listed {
		for _, text := range editTexts(b.Treatment) {
			if first {
				s.heading("Changed here, against the table as shipped")
				first = false
			}
			s.add(row{cells: []cell{
				{span: 3, role: label, value: pieceName(b.Crop, b.Treatment)},
				{col: 3, span: 2, role: edited, value: text},
			}, space: 1})
		}
	}
}

// editTexts say of a treatment what was changed: "minutes: 4, shipped value 3
// (by A. Person, 2026-11-01: our bulletin)".
func editTexts(t reference.Treatment) []string {
	var list []string
	for _, field := range editedFields(t) {
		e := t.Changed[field]
		text := fmt.Sprintf("Changed here: %s %s; shipped value %s", field, orNothing(e.New), orNothing(e.Old))
		var by []string
		for _, part := range []string{short(e.Who), day(e.When), short(e.Why)} {
			if part != "" {
				by = append(by, part)
			}
		}
		if len(by) > 0 {
			text += " (" + strings.Join(by, ", ") + ")"
		}
		list = append(list, text)
	}
	return list
}

// editedFields are the edited fields in a fixed order.
func editedFields(t reference.Treatment) []string { return slices.Sorted(maps.Keys(t.Changed)) }

func orNothing(s string) string {
	if s == "" {
		return "nothing"
	}
	return clip(s, 300)
}

func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// notes are lines to write on.
func (m *maker) notes(s *sheet) {
	s.heading("Your own notes")
	for range 5 {
		s.add(row{cells: []cell{s.wide(line, "")}, height: 24, keep: true})
	}
	s.rows[len(s.rows)-1].keep = false
}

// coverTable names the edition and lists the sources that the class uses.
func (m *maker) coverTable(s *sheet) {
	s.heading("Where the times and rules come from")
	s.para(plain, fmt.Sprintf("%s: put together for this program from the sources below; no agency has published it. The current advice of your own agency stands above it.", m.Table.Edition))
	for _, id := range m.sources.order {
		m.sources.ref(id) // all of them
	}
	for i, id := range m.sources.order {
		x, _ := m.Table.Source(id)
		s.add(row{cells: []cell{s.wide(small, fmt.Sprintf("[%d] %s. %s, %s. %s", i+1, x.Title, x.Publisher, x.Edition, standingOf(x)))}})
	}
}
