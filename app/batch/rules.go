package batch

import (
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// RuleTexts prints the rules of method for texts that name them, by rule id:
// "return-to-boil-min" is "1 min". Units are those of the class.
func RuleTexts(table *reference.Table, units measure.System) map[string]string {
	k := kitchen{metric: units == measure.Metric}
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
		return measure.MinutesRange(r.Value, r.High)
	case "gal/lb":
		switch {
		case k.metric:
			return plain(gallonPerPound, "L per kg")
		case r.Value == 1:
			return "1 gallon per pound"
		}
		return plain(1, "gallons per pound")
	case "lb/lb":
		if k.metric {
			return plain(1, "kg per kg")
		}
		return plain(1, "lb per lb")
	case "lb/cu ft":
		if k.metric {
			return plain(perCuFt, "kg per 100 L")
		}
		return plain(1, "lb per cu ft")
	case "F":
		return k.temperature(r.Value)
	case "ft":
		return k.height(r.Value)
	case "in":
		_, low, _ := k.length(r.Value)
		_, high, _ := k.length(r.High)
		if low == high {
			return low
		}
		return low + " to " + high
	case "lb":
		_, text := k.mass(r.Value * measure.Pound.Factor)
		return text
	}
	return plain(1, r.Unit)
}
