package exports

import (
	"maps"
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// cover is the first sheet: who, where, when, how much, what to mind, and what
// it all rests on.
func (m *maker) cover(def Sheet) *sheet {
	s := m.newSheet(def, m.figureShares()...)
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
	m.findings(s, m.Say("For the class as a whole"), plain, m.Findings)
	m.coverLabels(s)
	m.cautions(s, m.Say("Cautions"), m.cautionsOf(m.Worked.Batches))
	m.coverEdits(s)
	m.coverTable(s)
	if notes := strings.TrimSpace(m.Class.Notes); notes != "" {
		s.heading(m.Say("Notes of the educator"))
		s.para(plain, notes)
	}
	m.measuresLegend(s)
	m.notes(s)
	return s
}

func (m *maker) whenAndWhere() string {
	parts := []string{}
	if day, err := class.ParseDate(m.Class.Date); err == nil && !day.IsZero() {
		parts = append(parts, m.weekday(day))
	}
	if place := short(m.Class.Place.Name); place != "" {
		parts = append(parts, place)
	}
	if len(parts) == 0 {
		return m.Say("Day and place are not fixed yet")
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
	say(m.Say("Educator"), c.People.Educator)
	say(m.Say("Agency"), c.People.Agency)
	say(m.Say("Help line"), c.People.HelpLine)
	say(m.Say("People"), m.peopleAtStations())
	var place []string
	if c.Place.Altitude.Given() {
		place = append(place, m.Say("altitude %s", grouped(m.Voice, c.Place.Altitude)))
	}
	if c.Place.Tap.Given() {
		place = append(place, m.Say("tap water %s", c.Place.Tap))
	}
	if c.Place.Freezer.Given() {
		place = append(place, m.Say("freezer %s", m.Voice.Amount(c.Place.Freezer.String())))
	}
	say(m.Say("Kitchen"), strings.Join(place, ", "))
	for _, r := range c.People.Roles {
		say(r.Name, r.Does)
	}
	return list
}

// peopleAtStations is how many people work at how many stations.
func (m *maker) peopleAtStations() string {
	people, stations := m.Class.People.Headcount, m.Totals.Stations.Value
	switch {
	case people == 1:
		return m.Say("1 person at 1 station")
	case stations == 1:
		return m.Say("%d people at 1 station", people)
	}
	return m.Say("%d people at %s stations", people, measure.Plain(stations))
}

// coverTotals are the totals with their workings.
func (m *maker) coverTotals(s *sheet) {
	s.heading(m.Say("In all"))
	for _, f := range m.Totals.Figures() {
		m.figure(s, f)
	}
}

func (m *maker) coverShopping(s *sheet) {
	if len(m.Shopping) == 0 {
		return
	}
	s.heading(m.Say("Shopping, weight as bought"))
	for _, l := range m.Shopping {
		market := ""
		if l.MarketUnit != "" {
			market = m.Say("Market unit: %s", l.MarketUnit)
		}
		s.add(row{cells: []cell{
			{span: 2, role: labelSmall, value: l.Crop.Name},
			figureText(2, l.Buy),
			{col: 3, role: small, value: sentences(l.Buy.Working, l.Buy.Note, market)},
			m.basis(l.Buy),
		}, space: 1})
	}
	if f := m.Totals.IceBags; !f.InWords() {
		working := m.Say("See “In all”: bags of ice")
		if by := m.Totals.IceBalance; !by.InWords() {
			amount := by.Text
			if by.Also != "" {
				amount += ", " + by.Also
			}
			working = sentences(working, m.Say("Estimated by heat balance: %s", amount))
		}
		s.add(row{cells: []cell{
			{span: 2, role: labelSmall, value: m.Say("Ice")}, {col: 2, role: value, value: f.Text},
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
	s.heading(m.Say("Labels"))
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
	text := filled(c.ID, c.Text, m.ruleTexts())
	if ref := m.sources.ref(c.Source); ref != "" {
		text += " " + ref
	}
	return []run{{true, c.Title + ". "}, {false, text}}
}

// warningsTogether are several cautions as one paragraph, where room is short.
func (m *maker) warningsTogether(list []content.Caution) []run {
	var all []run
	for i, c := range list {
		if i > 0 {
			all = append(all, run{false, "  "})
		}
		all = append(all, m.warning(c)...)
	}
	return all
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
		for _, text := range m.editTexts(b.Treatment) {
			if first {
				s.heading(m.Say("Changed here, against the table as shipped"))
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
func (m *maker) editTexts(t reference.Treatment) []string {
	var list []string
	for _, field := range editedFields(t) {
		e := t.Changed[field]
		var by []string
		for _, part := range []string{short(e.Who), m.day(e.When), short(e.Why)} {
			if part != "" {
				by = append(by, part)
			}
		}
		text := m.Say("Changed here: %s %s; shipped value %s", m.fieldName(field), m.orNothing(e.New), m.orNothing(m.shipped(field, e.Old)))
		if len(by) > 0 {
			text += " (" + strings.Join(by, ", ") + ")"
		}
		list = append(list, text)
	}
	return list
}

// editedFields are the edited fields in a fixed order.
func editedFields(t reference.Treatment) []string { return slices.Sorted(maps.Keys(t.Changed)) }

func (m *maker) orNothing(s string) string {
	if s == "" {
		return m.Say("nothing")
	}
	return clip(s, 300)
}

// shipped is the shipped value of a field: a text of the table is said, a number
// stands as it is.
func (m *maker) shipped(field, value string) string {
	switch field {
	case reference.FieldWords, reference.FieldChillWords, reference.FieldBlanchWater, reference.FieldNote:
		return m.Say(value)
	case reference.FieldHeadspace:
		if strings.HasSuffix(value, " table") { // of headspaces, by size and mouth
			return m.Say(value)
		}
	}
	return value
}

// fieldNames are the names of the fields that can be edited, for a voice.
var fieldNames = map[string]string{
	reference.FieldMinutes: words.Key("minutes"), reference.FieldWords: words.Key("words"),
	reference.FieldChillFactor: words.Key("chill factor"), reference.FieldChillWords: words.Key("chill words"),
	reference.FieldHeadspace: words.Key("headspace"), reference.FieldWater: words.Key("water"),
	reference.FieldBlanchWater: words.Key("blanch water"), reference.FieldNote: words.Key("note"), reference.FieldStorage: words.Key("storage"),
}

func (m *maker) fieldName(field string) string { return m.Say(fieldNames[field]) }

// notes are lines to write on.
func (m *maker) notes(s *sheet) {
	s.heading(m.Say("Your own notes"))
	for range 5 {
		s.add(row{cells: []cell{s.wide(line, "")}, height: 24, keep: true})
	}
	s.rows[len(s.rows)-1].keep = false
}

// coverTable names the edition and lists the sources that the class uses.
func (m *maker) coverTable(s *sheet) {
	s.heading(m.Say("Where the times and rules come from"))
	s.para(plain, m.Say("%s: put together for this program from the sources below; no agency has published it. The current advice of your own agency stands above it.", m.Table.Edition))
	for _, id := range m.sources.order {
		m.sources.ref(id) // all of them
	}
	for i, id := range m.sources.order {
		x, _ := m.Table.Source(id)
		s.add(row{cells: []cell{s.wide(small, m.sources.line(i+1, x))}})
	}
}
