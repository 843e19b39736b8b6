package batch

import (
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// FreezerDay is the most food that a freezer of this capacity should be given
// in 24 hours, said by a voice.
func FreezerDay(capacity measure.Volume, units measure.System, table *reference.Table, v *words.Voice) measure.Figure {
	rule := table.Rule("freezer-lb-per-cuft-day")
	k := kitchenOf(units, v)
	if !capacity.Given() {
		return by(rule, inWords("freezer-day", k.Say("The freezer takes in a day"), k.Say("freezer not entered"), k.Say("no capacity entered")))
	}
	cuFt := capacity.In(measure.CubicFoot)
	low, _ := k.mass(cuFt * rule.Value * measure.Pound.Factor)
	high, _ := k.mass(cuFt * rule.High * measure.Pound.Factor)
	f := by(rule, measure.Figure{ID: "freezer-day", Label: k.Say("The freezer takes in a day"), Value: low, High: high, Unit: k.massUnit().Symbol})
	f.Text = measure.Range(measure.Plain(low), measure.Plain(high), f.Unit)
	f.Working = k.Say("%s cu ft × %s–%s lb per cu ft = %s", measure.Exact(cuFt), measure.Plain(rule.Value), measure.Plain(rule.High), f.Text)
	if k.metric {
		perL := measure.Pound.Factor / measure.CubicFoot.Factor * 100
		f.Working = k.Say("%s L × %s–%s kg per 100 L = %s", measure.Exact(capacity.In(measure.Litre)), measure.Exact(rule.Value*perL), measure.Exact(rule.High*perL), f.Text)
	}
	return f
}

// FreezerDays is how many days a load needs in a freezer that takes perDay a
// day, as a range: the quick end for the higher limit.
func FreezerDays(massKg float64, units measure.System, perDay measure.Figure, v *words.Voice) measure.Figure {
	k := kitchenOf(units, v)
	f := measure.Figure{ID: "freezer-days", Label: k.Say("Days to freeze it"), Unit: "days", Basis: measure.Ruled, Source: perDay.Source, Standing: perDay.Standing}
	switch {
	case perDay.InWords() || perDay.Value <= 0:
		f.Words, f.Working = k.Say("freezer not entered"), k.Say("no capacity entered")
		f.Text = f.Words
		return f
	case massKg <= 0:
		f.Words, f.Working = k.Say("enter a weight"), k.Say("no prepared weight entered")
		f.Text = f.Words
		return f
	}
	load, _ := k.mass(massKg)
	f.Value, f.High = wholeUp(load/perDay.High), wholeUp(load/perDay.Value)
	f.Text = countedRange(f.Value, f.High, k.Say("day"), k.Say("days"))
	f.Working = k.Say("%s ÷ %s a day, whole days = %s", k.massExact(massKg), perDay.Text, f.Text)
	return f
}

// FreezerWarning is what to say where a load is more than a day's worth; what
// names the load, in the language of the voice.
func FreezerWarning(id, what string, perDay, days measure.Figure, v *words.Voice) (measure.Finding, bool) {
	if days.InWords() || days.High <= 1 {
		return measure.Finding{}, false
	}
	f := measure.Finding{ID: id, Severity: measure.Mind, Source: perDay.Source,
		Says: v.Say("%s is more than this freezer should take in a day (%s).", what, perDay.Text),
		Do:   v.Say("Spread it over %s, or use more freezers; keep the rest in the refrigerator.", days.Text)}
	if days.Value <= 1 { // within the upper end only
		f.Says = v.Say("%s is more than the careful end of what this freezer should take in a day (%s).", what, perDay.Text)
		f.Do = v.Say("Better spread it over %s, or use a second freezer; keep the rest in the refrigerator.", measure.Counted(days.High, v.Say("day"), v.Say("days")))
	}
	return f, true
}

func (w *worker) freezer() {
	w.out.FreezerDay = FreezerDay(w.Freezer, w.Units, w.table, w.kitchen.Voice)
	w.out.FreezerDays = FreezerDays(w.Prepared.SI(), w.Units, w.out.FreezerDay, w.kitchen.Voice)
	w.out.FreezerDays.Label = w.Say("Days for these packs") // the class adds up all stations
	if f, ok := FreezerWarning("freezer-more-than-a-day", w.Say("One batch of %s", w.out.Prepared.Text), w.out.FreezerDay, w.out.FreezerDays, w.kitchen.Voice); ok {
		w.out.Findings = append(w.out.Findings, f)
	}
}
