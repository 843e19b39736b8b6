package projector

import (
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// curve is what the heat model says of one load in the kettle, as lines over
// time.
type curve struct {
	base
	title, said, rests *words
	chart              *drawing.Chart
	picture            *picture
}

func newCurve(s *stage) *curve {
	p := &curve{
		base: base{called: look.Say("Curve")}, title: s.say("", asTitle), said: s.say("", manner{30, 24, 1, look.InkSoft, italic}),
		rests: s.say("", asRange),
		chart: drawing.NewChart(),
	}
	p.picture = s.picture(p.chart)
	p.page = newColumn(14, newColumn(2, p.title, p.said), p.picture, p.rests).growing(p.picture)
	return p
}

func (p *curve) applies(now shown) bool { return now.known() && now.batch.Estimates.Kettle.Drawn() }

func (p *curve) show(now shown) {
	e := now.batch.Estimates
	p.title.set(e.Kettle.Title)
	p.said.set(look.Say("An estimate"))
	if e.Back.Working != "" {
		p.said.set(look.Say("An estimate: %s", e.Back.Working))
	}
	p.rests.set(look.Say("An estimate explains and warns; what to do is what the rules say."))
	if e.Kettle.Standing == string(reference.FromMemory) {
		p.rests.set(look.Say("An estimate, in part from values from memory. What to do is what the rules say."))
	}
	p.chart.Set(e.Kettle)
}
