package exports

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// Say is a text in the language of the class.
func (m *maker) Say(text string, args ...any) string { return m.Voice.Say(text, args...) }

// ruleTexts are the rules of the table in words, for the places of a text.
func (m *maker) ruleTexts() map[string]string {
	return batch.RuleTexts(m.Table, m.Class.Units, m.Voice)
}

// again works another class through as the first was: with its table, in its
// language.
func again(w class.Worked, c class.Class) class.Worked {
	return class.WorkWith(class.With{Voice: w.Voice}, c, w.Table)
}

// documentLanguage is the language of a document as its properties name it: as
// it is spoken in the United States.
func documentLanguage(v *words.Voice) string { return string(v.Language()) + "-US" }

// symbol is the symbol of a unit as it stands after a number: "in", "pulg".
func symbol(v *words.Voice, unit string) string {
	return strings.TrimPrefix(v.Amount("2 "+unit), "2 ")
}

// grouped is a quantity with thousands marks.
func grouped[D measure.Dimension](v *words.Voice, q measure.Of[D]) string {
	return v.Amount(measure.Plain(q.Amount()) + " " + q.Unit().Symbol)
}

var (
	weekdays = [...]string{
		words.Key("Sunday"), words.Key("Monday"), words.Key("Tuesday"), words.Key("Wednesday"), words.Key("Thursday"), words.Key("Friday"), words.Key("Saturday"),
	}
	months = [...]string{
		words.Key("January"), words.Key("February"), words.Key("March"), words.Key("April"), words.Key("May"), words.Key("June"),
		words.Key("July"), words.Key("August"), words.Key("September"), words.Key("October"), words.Key("November"), words.Key("December"),
	}
)

// day is a date as it stands in a line: year, month and day by numbers in
// English; in Spanish the month has its name.
func (m *maker) day(t time.Time) string {
	switch {
	case t.IsZero():
		return ""
	case m.Voice.Language() == words.English:
		return t.Format(time.DateOnly)
	}
	return m.longDay(t)
}

// longDay is a date with the name of the month.
func (m *maker) longDay(t time.Time) string {
	return m.Say("%d %s %d", t.Day(), m.Say(months[t.Month()-1]), t.Year())
}

// typedDay is the same of a date as a class keeps it; what is none stays as it
// is.
func (m *maker) typedDay(text string) string {
	if t, err := class.ParseDate(text); err == nil && !t.IsZero() {
		return m.day(t)
	}
	return text
}

// weekday is a date with the day of the week, for the cover. English has the
// date by numbers beside it.
func (m *maker) weekday(t time.Time) string {
	text := m.Say("%s, %s", m.Say(weekdays[t.Weekday()]), m.longDay(t))
	if m.Voice.Language() == words.English {
		text += " (" + t.Format(time.DateOnly) + ")"
	}
	return text
}

// measuresLegend says what the symbols on jugs and scales mean, where the
// language of the handouts has other words for them.
func (m *maker) measuresLegend(s *sheet) {
	if m.Voice.Language() != words.English {
		s.para(small, m.Say("qt = quart, pt = pint, gal = gallon, lb = pound, oz = ounce (US measures)"))
	}
}

var placeholder = regexp.MustCompile(`%(?:\[\d+\])?[a-z%]|\{[a-z0-9-]+\}`)

// inEnglish lists on the first sheet what stands in English in a workbook of
// another language: nothing is mixed in silence.
func (m *maker) inEnglish(b *book) {
	var list []string
	for _, text := range m.Voice.Untranslated() {
		if b.holds(placeholder.Split(text, -1)) {
			list = append(list, "“"+placeholder.ReplaceAllString(text, "…")+"”")
		}
	}
	if len(list) == 0 {
		return
	}
	first := b.sheets[0]
	if first.whole { // labels alone
		first.aside = strings.TrimSpace(first.aside + " " + m.Say("In English here, not translated yet: %s.", strings.Join(list, ", ")))
		return
	}
	first.heading(m.Say("In English"))
	first.para(plain, m.Say("In English here, not translated yet: %s.", strings.Join(list, ", ")))
}

// holds says whether a text of the book has all these pieces.
func (b *book) holds(pieces []string) bool {
	return slices.ContainsFunc(b.sheets, func(s *sheet) bool {
		return slices.ContainsFunc(s.texts(), func(text string) bool { return hasAll(text, pieces) })
	})
}

// texts are all texts of a sheet that somebody may come to read.
func (s *sheet) texts() []string {
	p := s.page
	list := []string{s.name, p.header.left, p.header.right, p.footer.left, p.footer.right, s.aside}
	for _, c := range s.checks {
		list = append(list, c.help, c.stop)
	}
	for _, r := range s.rows {
		for _, c := range r.cells {
			list = append(list, c.text(), c.formula)
		}
	}
	return list
}

// hasAll says whether the pieces stand in a text, one after the other.
func hasAll(text string, pieces []string) bool {
	for _, p := range pieces {
		_, rest, found := strings.Cut(text, p)
		if !found {
			return false
		}
		text = rest
	}
	return true
}
