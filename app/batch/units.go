package batch

import (
	"math"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// gallonPerPound in L/kg: the water rule in metric.
var gallonPerPound = measure.Gallon.Factor / measure.Pound.Factor

// kitchen prints amounts in the units of the class and says what stands beside
// them in its reader's language.
type kitchen struct {
	metric bool
	*words.Voice
}

func kitchenOf(units measure.System, v *words.Voice) kitchen {
	return kitchen{units == measure.Metric, v}
}

func (k kitchen) massUnit() *measure.MassUnit {
	if k.metric {
		return measure.Kilogram
	}
	return measure.Pound
}

// mass is a weight in the kitchen's unit: its number, and as text.
func (k kitchen) mass(massKg float64) (float64, string) {
	u := k.massUnit()
	amount := massKg / u.Factor
	return amount, measure.Plain(amount) + " " + u.Symbol
}

// massExact is a weight for a line of working.
func (k kitchen) massExact(massKg float64) string {
	u := k.massUnit()
	return measure.Exact(massKg/u.Factor) + " " + u.Symbol
}

func (k kitchen) waterUnit() *measure.VolumeUnit {
	if k.metric {
		return measure.Litre
	}
	return measure.Gallon
}

// water is a volume of water in the kitchen's unit.
func (k kitchen) water(volumeL float64) float64 { return volumeL / k.waterUnit().Factor }

// waterText is a volume of water that is needed at least, as a jug shows it,
// with the same in other units: whole and half gallons where they come near,
// otherwise quarts. The mark is never below the amount.
func (k kitchen) waterText(volumeL float64) (text, also string) {
	litres := measure.Plain(volumeL) + " L"
	quarts, _ := measure.KitchenUp(volumeL/measure.Quart.Factor, measure.Quart)
	gallons, above := measure.KitchenUp(volumeL/measure.Gallon.Factor, measure.Gallon)
	switch {
	case k.metric:
		return litres, quarts
	case volumeL < measure.Gallon.Factor*(1-1e-9) || above > 0.01*volumeL/measure.Gallon.Factor:
		return quarts, litres
	}
	return gallons, quarts + " · " + litres
}

// typedVolume is a volume as it was typed, with the kitchen's unit behind it
// where it was typed in the other system.
func (k kitchen) typedVolume(q measure.Volume) string {
	if q.Unit().Of(measure.Metric) != k.metric {
		return k.asTyped(q)
	}
	return k.Amount(q.String())
}

// asTyped is a volume as it was typed, with the kitchen's unit behind it where
// it was typed in another one.
func (k kitchen) asTyped(q measure.Volume) string {
	if u := k.waterUnit(); q.Unit() != u {
		return k.Amount(q.String()) + " (" + measure.Exact(q.In(u)) + " " + u.Symbol + ")"
	}
	return k.Amount(q.String())
}

// rate prints gallons per pound in the kitchen's units, for a working.
func (k kitchen) rate(galPerLb float64) string {
	if k.metric {
		return measure.Exact(galPerLb*gallonPerPound) + " L/kg"
	}
	return measure.Exact(galPerLb) + " gal/lb"
}

// length prints a headspace: inches on eighths, or millimetres.
func (k kitchen) length(inches float64) (value float64, text, unit string) {
	if k.metric {
		mm := inches * measure.Inch.Factor * 1000
		return mm, measure.Plain(math.Round(mm)) + " mm", "mm"
	}
	return inches, k.Amount(measure.Kitchen(inches, measure.Inch)), "in"
}

// temperature prints °F, or whole °C.
func (k kitchen) temperature(tempF float64) string {
	if k.metric {
		return measure.Plain(math.Round(measure.New(tempF, measure.Fahrenheit).SI())) + " °C"
	}
	return measure.Plain(tempF) + " °F"
}

// minutesText prints a time or a range of times.
func (k kitchen) minutesText(low, high float64) string {
	return measure.MinutesRangeBy(k.Voice, low, high)
}

// height prints an altitude.
func (k kitchen) height(feet float64) string {
	if k.metric {
		return measure.Plain(math.Round(feet*measure.Foot.Factor)) + " m"
	}
	return k.Amount(measure.Plain(feet) + " ft")
}

// wholeUp is the next whole number, never below nothing; a quotient that is
// whole but for rounding stays.
func wholeUp(x float64) float64 { return max(math.Ceil(x-1e-9), 0) }

// countedRange is "3–5 pint bags", "1 pint bag"; one and many are said already.
func countedRange(low, high float64, one, many string) string {
	if high == 1 && low == 1 {
		return "1 " + one
	}
	return measure.Range(measure.Plain(low), measure.Plain(high), many)
}
