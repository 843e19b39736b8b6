package batch

import (
	"fmt"
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// FreezerWarmth is how warm a freezer of this capacity gets that is given
// massKg of packs like those of one batch at once, and how long it takes to
// freeze them; a finding where that is more than a day.
func FreezerWarmth(like Worked, massKg float64, capacity measure.Volume, units measure.System, table *reference.Table, memory *estimate.Memory) (measure.Figure, measure.Finding, bool) {
	k := kitchen{metric: units == measure.Metric}
	f := inWords("freezer-warmth", "The freezer warms to", "", "")
	f.Basis, f.Source = measure.Entered, "entered"
	without := func(words, working string) (measure.Figure, measure.Finding, bool) {
		f.Words, f.Text, f.Working = words, words, working
		return f, measure.Finding{}, false
	}
	switch {
	case massKg <= 0:
		return without("nothing to freeze yet", "no batch with a weight")
	case !capacity.Given():
		return without("freezer not entered", "no capacity entered")
	}
	day := like.Estimates.packed
	day.CapacityL, day.MassKg, day.SetC, day.CoreC = capacity.SI(), massKg, celsius(table.Rule("freezer-set-f").Value), celsius(frozenThroughF)
	f = model(f)
	if day.Pack.Shape == 0 {
		return without("not estimated", "no batch with a pack that the model knows")
	}
	load, err := memory.Day(day)
	if err != nil {
		return without("not estimated", "outside the model: "+err.Error())
	}
	_, mass := k.mass(massKg)
	f = k.temperatureFigure(f.ID, f.Label, load.WarmestC, "")
	if k.tempRounded(load.WarmestC) == k.tempRounded(day.SetC) {
		f = model(inWords(f.ID, f.Label, "hardly warmer", ""))
	}
	f.Also = "frozen through after " + lasting(load.FrozenS)
	if math.IsInf(load.FrozenS, 1) {
		f.Also = "not frozen through within five days"
	}
	f.Working = fmt.Sprintf("%s at once in %s set to %s: warmest after %s, cores at %s after %s; %s", mass, capacity, k.degrees(day.SetC), lasting(load.WarmestAtS), k.degrees(day.CoreC), lasting(load.FrozenS), k.loading(massKg, capacity, table))
	f.Note = "What the freezer can pull is guessed from its size alone, and what lies frozen in it already is not counted."
	if load.FrozenS <= 86400 {
		return f, measure.Finding{}, false
	}
	return f, measure.Finding{ID: "freezer-slow", Severity: measure.Mind, Source: reference.HeatModelSource,
		Says: fmt.Sprintf("Estimate: %s at once are not frozen through within a day and warm the freezer to %s.", mass, f.Text),
		Do:   "Freeze a part today and keep the rest in the refrigerator, or use a second freezer."}, true
}

// loading compares a load with the rule: "1.6 lb per cu ft, the rule says 2–3".
func (k kitchen) loading(massKg float64, capacity measure.Volume, table *reference.Table) string {
	rule := table.Rule("freezer-lb-per-cuft-day")
	amount := massKg / measure.Pound.Factor / capacity.In(measure.CubicFoot)
	if k.metric {
		return fmt.Sprintf("%s kg per 100 L, the rule says %s", measure.Plain(massKg/capacity.SI()*100), k.rule(rule))
	}
	return fmt.Sprintf("%s lb per cu ft, the rule says %s", measure.Plain(amount), k.rule(rule))
}
