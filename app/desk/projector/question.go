package projector

import "example.org/kettleside/app/desk/look"

// question is what the room asked, with the short answer and the numbers of the
// batch on view.
type question struct {
	base
	asks, says         *words
	whose, here, rests *words
	caution            *words // beside minutes
	source             *words
}

func newQuestion(s *stage) *question {
	q := &question{
		base: base{called: look.Say("Question")},
		asks: s.say("", manner{50, 32, 2, look.Ink, bold}), says: s.say("", asAnswer),
		whose: s.say("", asLabel), here: s.say("", manner{40, 26, 3, look.Ink, bold}), rests: s.say("", asSmall),
		caution: s.say("", asBody), source: s.say("", asSmall),
	}
	numbers := newColumn(10, q.whose, q.here, newSign(look.IconCaution(), q.caution))
	q.page = newColumn(20, q.asks, q.says, numbers, newColumn(8, &rule{line: look.Hairline()}, q.rests, q.source)).growing(numbers, q.says)
	return q
}

// asAnswer is the manner of an answer, over as many lines as it takes.
var asAnswer = manner{46, 25, 12, look.Ink, plain}

func (q *question) applies(now shown) bool { return now.asked.Asks != "" }

func (q *question) show(now shown) {
	open := now.asked
	q.asks.set(open.Asks)
	q.says.set(open.Says)
	q.whose.set(open.Whose)
	q.here.set(open.Here)
	q.rests.set(open.Rests)
	q.caution.set(open.Caution)
	q.source.set(open.Source)
}
