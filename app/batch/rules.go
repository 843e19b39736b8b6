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

// rule prints one rule with its unit. Rates are per unit of weight of
// prepared vegetables.
func (k kitchen) rule(r reference.Rule) string {
	plain := func(factor float64, unit string) string {
		return measure.Range(measure.Plain(r.Value*factor), measure.Plain(r.High*factor), unit)
	}
	switch r.Unit {
	case "min":
		return measure.MinutesRange(r.Value, r.High)
	case "gal/lb":
		if k.metric {
			return plain(gallonPerPound, "L per kg")
		}
		if r.Value == 1 {
			return "1 gallon per pound"
		}
		return plain(1, "gallons per pound")
	case "lb/lb":
		if k.metric {
			return plain(1, "kg per kg")
		}
		return plain(1, "lb per lb")
	case "F":
		if k.metric {
			return measure.Plain(float64(int(measure.New(r.Value, measure.Fahrenheit).In(measure.Celsius)+sign(r.Value-32)*0.5))) + " °C"
		}
		return plain(1, "°F")
	case "in":
		_, low, _ := k.length(r.Value)
		_, high, unit := k.length(r.High)
		if low == high {
			return low
		}
		if k.metric {
			return plain(25.4, unit)
		}
		return plain(1, unit)
	case "lb":
		_, text := k.mass(r.Value * measure.Pound.Factor)
		return text
	}
	return plain(1, r.Unit)
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
