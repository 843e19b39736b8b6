package exports

import (
	"regexp"
	"slices"

	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// powerCutParts are the parts of the card, in order, with their headings.
var powerCutParts = []struct {
	part    content.Part
	caption string
}{
	{content.PowerOff, words.Key("While the power is out")},
	{content.PowerBack, words.Key("When the power is back")},
	{content.WithDryIce, words.Key("Dry ice")},
}

// powerCut is the card for the door of a freezer: how long it keeps, what may be
// frozen again, what is thrown out, and how to handle dry ice.
func (m *maker) powerCut(def Sheet) *sheet {
	s := m.newSheet(def, 186, 292, 62)
	s.add(row{cells: []cell{s.wide(title, m.Say("Power cut: what to do with the freezer"))}, keep: true})
	m.powerCutTimes(s)
	texts := m.ruleTexts()
	for _, p := range powerCutParts {
		s.heading(m.Say(p.caption))
		for _, a := range content.PowerCut(m.Voice.Language()) {
			if a.Part == p.part {
				s.add(row{cells: []cell{
					{role: value, value: a.Title},
					{col: 1, role: plain, value: filled(a.ID, a.Text, texts)},
					{col: 2, role: small, value: m.adviceRests(a)},
				}, space: 2})
			}
		}
	}
	if note := m.Table.Rule("dry-ice-lb-per-cuft").Note; note != "" {
		s.add(row{cells: []cell{
			{role: value, value: m.Say("Where sources differ")},
			{col: 1, role: plain, value: note},
		}, space: 3})
	}
	m.warnings(s, "", warning, dryIceCautions(m.Voice.Language()))
	s.gap(6)
	s.add(row{cells: []cell{{span: len(s.cols), role: warningSmall, runs: m.warningsTogether(content.Cautions(m.Voice.Language()))}}})
	m.powerCutLog(s)
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// powerCutTimes are boxes for the day and hour.
func (m *maker) powerCutTimes(s *sheet) {
	for _, text := range []string{m.Say("The power went off (day, hour)"), m.Say("The power came back (day, hour)")} {
		s.add(row{cells: []cell{
			{role: entryLabel, value: text},
			{col: 1, span: 2, role: writeBox},
		}, height: 24, keep: true})
	}
	s.rows[len(s.rows)-1].keep = false
}

// powerCutLog is a page to write down what became of each pack.
func (m *maker) powerCutLog(s *sheet) {
	s.add(row{cells: []cell{
		{role: head, value: m.Say("Packs looked at")},
		{col: 1, role: head, value: m.Say("Ice crystals, or the temperature")},
		{col: 2, role: head, value: m.Say("Kept?")},
	}, keep: true, split: true})
	for range 14 {
		s.add(row{cells: []cell{{role: line}, {col: 1, role: line}, {col: 2, role: line}}, height: 22, keep: true})
	}
	s.rows[len(s.rows)-1].keep = false
}

// adviceRests says what a line rests on: the sources of its rules, or its own.
func (m *maker) adviceRests(a content.Advice) string {
	if refs := m.sources.refs(m.sourcesOf(a.Text)...); refs != "" {
		return m.Say("rule") + " " + refs
	}
	if a.Source == string(reference.CommonPractice) {
		return m.Say(a.Source)
	}
	return m.sources.ref(a.Source)
}

// ruleInText finds the placeholders of a text.
var ruleInText = regexp.MustCompile(`\{([a-z0-9-]+)\}`)

// sourcesOf are the sources of the rules that a text names.
func (m *maker) sourcesOf(text string) []string {
	var list []string
	for _, found := range ruleInText.FindAllStringSubmatch(text, -1) {
		list = append(list, m.Table.Rule(found[1]).Source)
	}
	return list
}

// dryIceCautions are the cautions of dry ice alone.
func dryIceCautions(l words.Language) []content.Caution {
	return slices.DeleteFunc(content.Cautions(l, content.DryIce), func(c content.Caution) bool { return !slices.Contains(c.Topics, content.DryIce) })
}

// numberPowerCut numbers the sources of the card, so that the cover lists them.
func (m *maker) numberPowerCut() {
	for _, a := range content.PowerCut(m.Voice.Language()) {
		for _, id := range m.sourcesOf(a.Text) {
			m.sources.number(id)
		}
	}
	for _, c := range dryIceCautions(m.Voice.Language()) {
		m.sources.number(c.Source)
	}
}
