package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// FreezerWarmth is how warm a freezer of this capacity gets that is given
// massKg of packs like those of one batch at once, and how long it takes to
// freeze them; a finding where that is more than a day.
func FreezerWarmth(like Worked, massKg float64, capacity measure.Volume, units measure.System, table *reference.Table, memory *estimate.Memory, v *words.Voice) (measure.Figure, measure.Finding, bool) {
	k := kitchenOf(units, v)
	f := inWords("freezer-warmth", k.Say("The freezer warms to"), "", "")
	f.Basis, f.Source = measure.Entered, "entered"
	without := func(why, working string) (measure.Figure, measure.Finding, bool) {
		f.Words, f.Text, f.Working = why, why, working
		return f, measure.Finding{}, false
	}
	switch {
	case massKg <= 0:
		return without(k.Say("nothing to freeze yet"), k.Say("no batch with a weight"))
	case !capacity.Given():
		return without(k.Say("freezer not entered"), k.Say("no capacity entered"))
	}
	day := like.Estimates.packed
	day.CapacityL, day.MassKg, day.SetC, day.CoreC = capacity.SI(), massKg, celsius(table.Rule("freezer-set-f").Value), celsius(frozenThroughF)
	f = model(f)
	if day.Pack.Shape == 0 {
		return without(k.Say("not estimated"), k.Say("no batch with a pack that the model knows"))
	}
	load, err := memory.Day(day)
	if err != nil {
		return without(k.Say("not estimated"), k.Say("outside the model: %s", k.Error(err)))
	}
	_, mass := k.mass(massKg)
	f = k.temperatureFigure(f.ID, f.Label, load.WarmestC, "")
	if k.tempRounded(load.WarmestC) == k.tempRounded(day.SetC) {
		f = model(inWords(f.ID, f.Label, k.Say("hardly warmer"), ""))
	}
	f.Also = k.Say("frozen through after %s", k.lasting(load.FrozenS))
	if math.IsInf(load.FrozenS, 1) {
		f.Also = k.Say("not frozen through within five days")
	}
	f.Working = k.Say("%s at once in %s set to %s: warmest after %s, cores at %s after %s; %s", mass, k.Amount(capacity.String()), k.degrees(day.SetC), k.lasting(load.WarmestAtS), k.degrees(day.CoreC), k.lasting(load.FrozenS), k.loading(massKg, capacity, table))
	f.Note = k.Say("What the freezer can pull is guessed from its size alone, and what lies frozen in it already is not counted.")
	if load.FrozenS <= 86400 {
		return f, measure.Finding{}, false
	}
	return f, measure.Finding{ID: "freezer-slow", Severity: measure.Mind, Source: reference.HeatModelSource,
		Says: k.Say("Estimate: %s at once are not frozen through within a day and warm the freezer to %s.", mass, f.Text),
		Do:   k.Say("Freeze a part today and keep the rest in the refrigerator, or use a second freezer.")}, true
}

// loading compares a load with the rule: "1.6 lb per cu ft, the rule says 2–3".
func (k kitchen) loading(massKg float64, capacity measure.Volume, table *reference.Table) string {
	rule := table.Rule("freezer-lb-per-cuft-day")
	amount := massKg / measure.Pound.Factor / capacity.In(measure.CubicFoot)
	if k.metric {
		return k.Say("%s kg per 100 L, the rule says %s", measure.Plain(massKg/capacity.SI()*100), k.rule(rule))
	}
	return k.Say("%s lb per cu ft, the rule says %s", measure.Plain(amount), k.rule(rule))
}
