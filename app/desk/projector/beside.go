package projector

import (
	"cmp"
	"slices"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
)

// beside sets the trial beside the plan: what was changed, and what follows.
type beside struct {
	base
	title *words
	same  *words
	table *table
}

func newBeside(s *stage) *beside {
	p := &beside{
		base: base{called: look.Say("Trial")}, title: s.say(look.Say("The trial beside the plan"), asTitle),
		same: s.say("", asSentence), table: newTable(s),
	}
	p.page = newColumn(14, p.title, p.same, p.table).growing(p.table)
	return p
}

func (p *beside) applies(now shown) bool { return now.trying() }

func (p *beside) show(now shown) {
	p.same.set("")
	if len(now.differences) == 0 {
		p.same.set(look.Say("Nothing differs from the plan."))
	}
	var changed, follows []session.Difference
	for _, d := range now.differences {
		if d.Entered {
			changed = append(changed, now.brief(d))
		} else {
			follows = append(follows, now.signed(d))
		}
	}
	p.table.set(changed, leadingFirst(follows))
}

// brief is a difference that names a kettle or burner without all that is known
// of it, where another one was chosen.
func (s shown) brief(d session.Difference) session.Difference {
	plan, trial := s.plan.Batch, s.batch.Batch
	names := map[string][2]string{"kettle": {plan.Kettle, trial.Kettle}, "burner": {plan.Burner, trial.Burner}}[d.ID]
	if names[0] != names[1] {
		d.Plan, d.Trial = cmp.Or(names[0], d.Plan), cmp.Or(names[1], d.Trial)
	}
	return d
}

// signed is a difference of figures with the sign of an estimate at each that is
// one.
func (s shown) signed(d session.Difference) session.Difference {
	d.Plan, d.Trial = signedIn(s.plan, d.ID, d.Plan), signedIn(s.batch, d.ID, d.Trial)
	return d
}

func signedIn(b class.BatchWorked, id, text string) string {
	for _, f := range append(b.Figures(), b.Estimates.Figures()...) {
		if f.ID != id || f.Basis != measure.Estimate {
			continue
		}
		if bare, is := look.AtLeast(text); is {
			text = look.Say("%s, at least", bare)
		}
		return about(text)
	}
	return text
}

// leading are the figures that the pages before show, in their order.
var leading = []string{
	"minutes", "clock", "chill", "loads", "load-weight", "load-water", "layer", "layers", "back-at-boil", "largest-load",
	"ice", "ice-balance", "headspace", "packs", "freezer-day", "freezing",
}

// leadingFirst puts the figures first that the pages show.
func leadingFirst(all []session.Difference) []session.Difference {
	rank := func(d session.Difference) int {
		if at := slices.Index(leading, d.ID); at >= 0 {
			return at
		}
		return len(leading)
	}
	slices.SortStableFunc(all, func(a, b session.Difference) int { return rank(a) - rank(b) })
	return all
}
