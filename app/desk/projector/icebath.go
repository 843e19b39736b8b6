package projector

import (
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// iceBath says how long the batch is chilled and how much ice that takes, by
// rule and by heat balance, beside what is at hand where that was entered.
type iceBath struct {
	base
	title                     *words
	chill                     *figure
	atHand, byRule, byBalance *figure
	counts                    *words
	tub                       *drawing.Bath
	picture                   *picture
}

func newIceBath(s *stage) *iceBath {
	p := &iceBath{
		base: base{called: look.Say("Ice bath")}, title: s.say(look.Say("In the ice bath"), asTitle),
		chill: s.figure(130), atHand: s.figure(84), byRule: s.figure(84), byBalance: s.figure(84),
		counts: s.say("", asRange), tub: drawing.NewBath(),
	}
	p.picture = s.picture(p.tub)
	top := newRow(30, []float32{1, 1.5}, p.chill, p.picture)
	p.page = newColumn(16, p.title, top,
		newColumn(14, &rule{line: look.Hairline()}, newRow(30, []float32{1, 1, 1}, p.atHand, p.byRule, p.byBalance), p.counts),
	).growing(top)
	return p
}

func (p *iceBath) applies(now shown) bool { return now.known() && now.heated() && now.chilled() }

func (p *iceBath) show(now shown) {
	b := now.batch
	p.chill.set(renamed(b.Chill, look.Say("Chill")), now.edited(reference.FieldMinutes, reference.FieldChillFactor))
	p.atHand.set(b.IceEntered, false)
	p.byRule.set(renamed(b.Ice, look.Say("Ice, by rule")), false)
	p.byBalance.set(b.Estimates.IceBalance, false)
	p.counts.set(b.Ice.Note)
	p.picture.show(kilograms(b.Ice) > 0)
	p.tub.Set(now.bath())
}
