package batch

import "example.org/kettleside/app/measure"

// gallonPerPound in L/kg: the water rule in metric.
var gallonPerPound = measure.Gallon.Factor / measure.Pound.Factor

// kitchen prints amounts in the units of the class.
type kitchen struct{ metric bool }

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

func (k kitchen) waterUnit() *measure.VolumeUnit {
	if k.metric {
		return measure.Litre
	}
	return measure.Gallon
}

// water is a volume of water in the kitchen's unit.
func (k kitchen) water(volumeL float64) float64 { return volumeL / k.waterUnit().Factor }

// waterText is a volume as a jug shows it, with the same in other units.
func (k kitchen) waterText(volumeL float64) (text, also string) {
	litres := measure.Plain(volumeL) + " L"
	gallons := measure.Kitchen(volumeL/measure.Gallon.Factor, measure.Gallon)
	quarts := measure.Kitchen(volumeL/measure.Quart.Factor, measure.Quart)
	switch {
	case k.metric:
		return litres, quarts
	case volumeL < measure.Gallon.Factor*(1-1e-9):
		return quarts, litres
	}
	return gallons, quarts + " · " + litres
}

// rate prints a rule of gallons per pound in the kitchen's units.
func (k kitchen) rate(galPerLb float64) string {
	if k.metric {
		return measure.Plain(galPerLb*gallonPerPound) + " L/kg"
	}
	return measure.Plain(galPerLb) + " gal/lb"
}

// length prints a headspace: inches on eighths, or millimetres.
func (k kitchen) length(inches float64) (float64, string, string) {
	if k.metric {
		mm := inches * 25.4
		return mm, measure.Plain(float64(int(mm+0.5))) + " mm", "mm"
	}
	return inches, measure.Kitchen(inches, measure.Inch), "in"
}
