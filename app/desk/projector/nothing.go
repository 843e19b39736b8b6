package projector

import "example.org/kettleside/app/desk/look"

// nothing stands instead of all pages where there is no batch, or none that the
// table knows how to treat.
type nothing struct {
	base
	title, said *words
}

func newNothing(s *stage) *nothing {
	p := &nothing{base: base{called: look.Say("No batch")}, title: s.say("", asTitle), said: s.say("", asSentence)}
	p.page = newColumn(30, p.title, p.said)
	return p
}

func (p *nothing) applies(now shown) bool { return !now.known() }

func (p *nothing) show(now shown) {
	p.title.set(look.Say("No batch to show yet"))
	p.said.set(look.Say("As soon as the class has a batch, it stands here."))
	if now.there && len(now.batch.Findings) > 0 {
		f := now.batch.Findings[0]
		p.title.set(now.name())
		p.said.set(join(" ", f.Says, f.Do))
	}
}
