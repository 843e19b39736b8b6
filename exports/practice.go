package exports

import (
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// exercise is one question of the practice sheet with its answer: figures that
// the class was worked through with.
type exercise struct {
	number  int
	piece   string // what is frozen, how
	asks    string
	answers []measure.Figure
}

// exercises are the questions of the practice sheet, each about a batch that
// has a number for it; those of a kind go round the batches.
func (m *maker) exercises() []exercise {
	if m.asked != nil {
		return m.asked
	}
	var list []exercise
	for _, x := range content.Practice(m.Voice.Language()) {
		b, ok := m.batchFor(x.ID, len(list))
		if !ok {
			continue
		}
		texts := m.exerciseTexts(b)
		if x.ID == "altitude" {
			height := m.otherHeight()
			texts["altitude"] = grouped(m.Voice, height)
			b = m.at(height, b)
		}
		list = append(list, exercise{
			number: len(list) + 1,
			piece:  pieceName(b.Crop, b.Treatment) + "; " + methodWords(m.Voice, b.Treatment.Method),
			asks:   filled(x.ID, x.Asks, texts), answers: answersTo(x.ID, b),
		})
	}
	m.asked = list
	return list
}

// answersTo are the figures that answer a question, the one that must be there
// first.
func answersTo(id string, b class.BatchWorked) []measure.Figure {
	switch id {
	case "water":
		return []measure.Figure{b.Water}
	case "loads":
		return []measure.Figure{b.Loads, b.LoadWeight}
	case "chill":
		return []measure.Figure{b.Chill}
	case "ice":
		return []measure.Figure{b.Ice}
	case "headspace":
		return []measure.Figure{b.Headspace}
	case "freezer-day":
		return []measure.Figure{b.FreezerDay}
	}
	return []measure.Figure{b.Minutes, b.Clock} // minutes never stand alone
}

// batchFor is the batch that a question is about: of those with a number, or of
// all known where none has one, another one for each question.
func (m *maker) batchFor(id string, turn int) (class.BatchWorked, bool) {
	var known, numbered []class.BatchWorked
	for _, b := range m.Worked.Batches {
		if !b.Known {
			continue
		}
		known = append(known, b)
		if !answersTo(id, b)[0].InWords() {
			numbered = append(numbered, b)
		}
	}
	if len(numbered) == 0 {
		numbered = known
	}
	if len(numbered) == 0 {
		return class.BatchWorked{}, false
	}
	return numbered[turn%len(numbered)], true
}

// otherHeight is that from which on the blanch is longer; for a class at such a
// height it is sea level.
func (m *maker) otherHeight() measure.Length {
	height := measure.New(m.Table.Rule("altitude-ft").Value, measure.Foot)
	if a := m.Class.Place.Altitude; a.Given() && a.SI() >= height.SI() {
		height = measure.New(0, measure.Foot)
	}
	if m.Class.Units == measure.Metric {
		height = height.To(measure.Metre)
	}
	return height
}

// at is a batch worked at another height.
func (m *maker) at(height measure.Length, b class.BatchWorked) class.BatchWorked {
	trial := m.Class.Clone()
	trial.Place.Altitude, trial.Batches = height, []class.Batch{b.Batch}
	return class.WorkBatch(class.With{Voice: m.Voice}, trial, 0, m.Table)
}

// exerciseTexts are what the class has, for the places of a question.
func (m *maker) exerciseTexts(b class.BatchWorked) map[string]string {
	one, _ := b.Batch.Pack.ContainerName(m.Voice)
	texts := map[string]string{
		"prepared": b.Prepared.Text, "pack": one,
		"kettle": m.Say("an unknown amount"), "freezer": m.Say("an unknown amount"),
	}
	if k, ok := m.Class.Kit.KettleNamed(b.Batch.Kettle); ok && k.Holds.Given() {
		texts["kettle"] = m.Voice.Amount(k.Holds.String())
	}
	if f := m.Class.Place.Freezer; f.Given() {
		texts["freezer"] = m.Voice.Amount(f.String())
	}
	return texts
}

// practiceShares are a number and the rest.
var practiceShares = []float64{30, 510}

// practice is the sheet of questions, with room to write.
func (m *maker) practice(def Sheet) *sheet {
	s := m.newSheet(def, practiceShares...)
	s.add(row{cells: []cell{s.wide(title, m.Say("Practice"))}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.Say("Use the table and the numbers of this class. With each answer write how you worked it out, and where the number comes from."))}, space: 6})
	list := m.exercises()
	if len(list) == 0 {
		s.para(plain, m.Say("The class has no batches yet: choose a treatment in the crop table and add a batch."))
	}
	for _, x := range list {
		s.add(row{cells: []cell{
			{role: number, value: exerciseNumber(x)},
			{col: 1, role: column, runs: []run{{true, x.piece + ". "}, {false, x.asks}}},
		}, space: 4, keep: true})
		for range 2 {
			s.add(row{cells: []cell{{col: 1, role: line}}, height: 19, keep: true})
		}
		s.gap(5)
	}
	m.cautions(s, m.Say("Cautions"), m.cautionsOf(m.Worked.Batches))
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

func exerciseNumber(x exercise) string { return measure.Plain(float64(x.number)) + "." }

// answers is the key to the practice sheet, and to the statements of the
// evaluation form where the workbook has one.
func (m *maker) answers(def Sheet) *sheet {
	s := m.newSheet(def, m.answerShares()...)
	s.add(row{cells: []cell{s.wide(title, m.Say("Answer key"))}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.Say("For whoever leads the class. The numbers are those of the practice sheet."))}, space: 6, keep: true})
	s.headFrom = s.add(row{cells: []cell{
		{role: headRight, value: m.Say("No.")},
		{col: 1, role: headUnit, value: m.Say("Question")},
		{col: 2, role: head, value: m.Say("Answer")},
		{col: 3, role: head, value: m.Say("How it is worked out")},
		{col: 4, role: head, value: m.Say("Rests on")},
	}, space: 3, keep: true})
	s.headTo = s.headFrom
	for _, x := range m.exercises() {
		m.answer(s, x)
	}
	s.headUntil = len(s.rows)
	m.evaluationKey(s)
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// answerShares are the columns: number, question, answer, working, and what it
// rests on.
func (m *maker) answerShares() []float64 {
	if m.Voice.Language() == words.Spanish {
		return []float64{30, 144, 112, 184, 70}
	}
	return []float64{30, 144, 112, 188, 66}
}

// answer is one question with its figures, one below the other.
func (m *maker) answer(s *sheet, x exercise) {
	for i, f := range x.answers {
		text := f.Text
		if len(x.answers) > 1 {
			text = f.Label + ": " + f.Text
		}
		working := f
		if f.InWords() && strings.EqualFold(f.Working, f.Text) {
			working.Working = ""
		}
		r := row{cells: []cell{
			{col: 2, role: value, value: text},
			{col: 3, role: small, value: figureWorking(working)},
			m.basis(f),
		}, space: 2, keep: i < len(x.answers)-1}
		if i == 0 {
			r.cells = append([]cell{
				{role: number, value: exerciseNumber(x)},
				{col: 1, role: column, runs: []run{{true, x.piece}}},
			}, r.cells...)
		}
		s.add(r)
	}
	s.rows[len(s.rows)-1].keep = true
	s.add(row{cells: []cell{s.wide(ruled, nil)}, height: 3})
}
