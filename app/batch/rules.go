package batch

import (
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// RuleTexts prints the rules of method for texts that name them, by rule id:
// "return-to-boil-min" is "1 min". Units are those of the class; nil speaks
// English.
func RuleTexts(table *reference.Table, units measure.System, v *words.Voice) map[string]string {
	k := kitchenOf(units, v)
	texts := map[string]string{}
	for _, r := range table.Rules {
		texts[r.ID] = k.rule(r)
	}
	return texts
}

// rule prints one rule with its unit.
func (k kitchen) rule(r reference.Rule) string {
	plain := func(factor float64, unit string) string {
		return measure.Range(measure.Plain(r.Value*factor), measure.Plain(r.High*factor), unit)
	}
	perCuFt := measure.Pound.Factor / measure.CubicFoot.Factor * 100 // kg per 100 L
	switch r.Unit {
	case "min":
		return k.minutesText(r.Value, r.High)
	case "gal/lb":
		switch {
		case k.metric:
			return k.Say("%s L per kg", plain(gallonPerPound, ""))
		case r.Value == 1:
			return k.Say("1 gallon per pound")
		}
		return k.Say("%s gallons per pound", plain(1, ""))
	case "lb/lb":
		if k.metric {
			return k.Say("%s kg per kg", plain(1, ""))
		}
		return k.Say("%s lb per lb", plain(1, ""))
	case "lb/cu ft":
		if k.metric {
			return k.Say("%s kg per 100 L", plain(perCuFt, ""))
		}
		return k.Say("%s lb per cu ft", plain(1, ""))
	case "F":
		return k.temperature(r.Value)
	case "ft":
		return k.height(r.Value)
	case "in":
		_, low, _ := k.length(r.Value)
		_, high, _ := k.length(r.High)
		return k.ends(low, high)
	case "lb":
		_, text := k.mass(r.Value * measure.Pound.Factor)
		return text
	}
	if format, ok := ruleUnits[r.Unit]; ok {
		return k.Say(format, plain(1, ""))
	}
	return plain(1, r.Unit)
}

// ruleUnits are the units of rules that are words.
var ruleUnits = map[string]string{
	"lots": words.Key("%s lots"), "times": words.Key("%s times"), "months": words.Key("%s months"), "tsp/gal": words.Key("%s tsp/gal"),
}
