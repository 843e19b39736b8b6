package projector

import (
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// kettle says how the batch goes through the kettle, and what heat is
// estimated to do in it.
type kettle struct {
	base
	title                *words
	loads, weight, water *figure
	pot                  *drawing.Kettle
	picture              *picture

	estimated     *words // heading of the estimates
	first, second *figure
	must          *words // what the rule says to the first
}

func newKettle(s *stage) *kettle {
	p := &kettle{
		base: base{called: look.Say("Kettle")}, title: s.say("", asTitle), estimated: s.say("", asBasis),
		loads: s.figure(84), weight: s.figure(84), water: s.figure(84),
		pot:   drawing.NewKettle(),
		first: s.figure(64).underHeading(), second: s.figure(64).underHeading(),
		must: s.say("", asRange),
	}
	p.picture = s.picture(p.pot)
	top := newRow(30, []float32{1, 1.7}, newColumn(12, p.loads, p.weight, p.water), p.picture)
	p.page = newColumn(16, p.title, top,
		newColumn(8, &rule{line: look.Hairline()}, p.estimated, newRow(30, []float32{1, 1}, p.first, p.second), p.must),
	).growing(top)
	return p
}

func (p *kettle) applies(now shown) bool { return now.known() && now.heated() }

func (p *kettle) show(now shown) {
	b, edited := now.batch, now.edited(reference.FieldWater)
	loads, weight, water := b.Loads, b.LoadWeight, renamed(b.LoadWater, look.Say("Water, each load"))
	if !loads.InWords() {
		loads.Label = look.Say("%s in", b.Prepared.Text) // “3 lb in 3 loads”
	}
	if same(loads, weight) {
		weight = measure.Figure{}
	}
	if same(loads, water) {
		water = measure.Figure{}
	}
	p.title.set(look.Say("In the kettle"))
	if now.steamed() {
		p.title.set(look.Say("In the steamer"))
		water.Label = look.Say("Water")
	}
	p.loads.set(loads, edited)
	p.weight.set(weight, edited)
	p.water.set(water, edited)
	p.pot.Set(now.kettle())
	p.showEstimates(now)
}

func (p *kettle) showEstimates(now shown) {
	e := now.batch.Estimates
	first, second, must := e.Back, renamed(e.LargestLoad, look.Say("Largest load back in time")), look.Sentence(now.batch.Clock.Working)+"."
	if now.steamed() {
		first, second, must = e.Layer, e.Layers, ""
		if first.ID == "" { // leaves, or a basket of unknown width
			first = e.Centre
		}
	}
	p.estimated.set("")
	if first.Basis == measure.Estimate {
		p.estimated.set(look.Say("By estimate"))
	}
	p.first.set(first, false)
	p.second.set(second, false)
	p.must.set(must)
}

// same says whether two figures say the same in words.
func same(a, b measure.Figure) bool { return a.InWords() && b.InWords() && a.Words == b.Words }
