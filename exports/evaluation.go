package exports

import (
	"slices"
	"strconv"
	"strings"

	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// scale is the five-point scale of the evaluation form, from 1.
var scale = []string{
	words.Key("not at all sure"), words.Key("a little sure"), words.Key("somewhat sure"), words.Key("sure"), words.Key("very sure"),
}

// evaluation is the form that participants fill in at the end of a short class:
// how sure they were before and are now, what they know, what they will do. It
// asks for no name, and its answers are counted.
func (m *maker) evaluation(def Sheet) *sheet {
	s := m.newSheet(def, evaluationShares()...)
	s.add(row{cells: []cell{s.wide(title, m.Say("What did this class do for you?"))}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.Say("Please do not write your name. Answers are only counted. You may leave out what you do not want to answer. Thank you."))}, space: 4, keep: true})
	e := &form{maker: m, sheet: s}
	e.sure()
	e.statements()
	e.will()
	e.open()
	e.keepFrom(0)
	return s
}

// form draws the items of the evaluation form with one running number.
type form struct {
	*maker
	*sheet
	count int // of the items so far
}

// evaluationShares are a number, the text, and five columns for each of before
// and now.
func evaluationShares() []float64 {
	return append([]float64{26, 306}, slices.Repeat([]float64{20.8}, 2*len(scale))...)
}

// items are those of a kind.
func (e *form) items(kind content.ItemKind) []content.Item {
	return slices.DeleteFunc(content.Evaluation(e.Voice.Language()), func(x content.Item) bool { return x.Kind != kind })
}

// asks begins the row of an item: its number and its text.
func (e *form) asks(x content.Item) []cell {
	e.count++
	return []cell{
		{role: number, value: strconv.Itoa(e.count) + "."},
		{col: 1, role: column, value: filled(x.ID, x.Text, e.ruleTexts())},
	}
}

// sure are the items with a scale, once for before the class and once for now.
func (e *form) sure() {
	e.heading(e.Say("How sure are you that you can do this? Circle one number for before the class and one for now."))
	var means []string
	for i, name := range scale {
		means = append(means, strconv.Itoa(i+1)+" = "+e.Say(name))
	}
	e.add(row{cells: []cell{e.wide(plain, strings.Join(means, " · "))}, space: 2})
	e.add(row{cells: []cell{
		{span: 2, role: head},
		{col: 2, span: len(scale), role: headMiddle, value: e.Say("Before the class")},
		{col: 2 + len(scale), span: len(scale), role: headMiddle, value: e.Say("Now")},
	}})
	for _, x := range e.items(content.Sure) {
		r := row{cells: e.asks(x), space: 3}
		for i := range 2 * len(scale) {
			as := choice
			if i >= len(scale) {
				as = choiceNow
			}
			r.cells = append(r.cells, cell{col: 2 + i, role: as, value: strconv.Itoa(i%len(scale) + 1)})
		}
		e.rows = append(e.rows, r)
	}
}

// choose are items with words to choose from, at the right.
func (e *form) choose(kind content.ItemKind, caption string, choices ...string) {
	e.heading(caption)
	width := 2 * len(scale) / len(choices)
	for _, x := range e.items(kind) {
		r := row{cells: e.asks(x), space: 3}
		for i, c := range choices {
			span := width
			if i == len(choices)-1 { // what is left over
				span = 2*len(scale) - width*i
			}
			r.cells = append(r.cells, cell{col: 2 + i*width, span: span, role: choiceWord, value: c})
		}
		e.add(r)
	}
}

func (e *form) statements() {
	e.choose(content.Statement, e.Say("Is it so? Circle one."), e.Say("true"), e.Say("not true"), e.Say("I do not know"))
}

func (e *form) will() {
	e.choose(content.WillDo, e.Say("What will you do after this class? Circle one."), e.Say("yes"), e.Say("maybe"), e.Say("no"), e.Say("I do it already"))
}

// open are the items in own words.
func (e *form) open() {
	e.gap(4)
	for _, x := range e.items(content.Open) {
		cells := e.asks(x)
		cells[1].span = len(e.cols) - 1
		e.add(row{cells: cells, space: 3})
		e.add(row{cells: []cell{{col: 1, span: len(e.cols) - 1, role: line}}, height: 20})
	}
}

// evaluationKey says which statements of the form are true, where the workbook
// has the form.
func (m *maker) evaluationKey(s *sheet) {
	if !slices.Contains(m.options.Sheets, EvaluationSheet) {
		return
	}
	first := len(s.rows)
	s.heading(m.Say("Statements of the evaluation form"))
	for i, x := range content.Evaluation(m.Voice.Language()) {
		if x.Kind != content.Statement {
			continue
		}
		so, rule := m.Say("not true"), m.Table.Rule(x.Rule)
		if x.True {
			so = m.Say("true")
		}
		s.add(row{cells: []cell{
			{role: number, value: strconv.Itoa(i+1) + "."},
			{col: 1, role: column, value: filled(x.ID, x.Text, m.ruleTexts())},
			{col: 2, role: value, value: so},
			{col: 3, role: small, value: rule.Says},
			{col: 4, role: small, value: m.Say("rule") + " " + m.sources.ref(rule.Source)},
		}, space: 2})
	}
	s.keepFrom(first)
}

// numberStatements numbers the sources of that key, so that the cover lists them.
func (m *maker) numberStatements() {
	for _, x := range content.Evaluation(m.Voice.Language()) {
		if x.Kind == content.Statement && slices.Contains(m.options.Sheets, EvaluationSheet) {
			m.sources.number(m.Table.Rule(x.Rule).Source)
		}
	}
}
