package batch

import (
	"math"

	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// weatherC is how far ordinary weather moves the boiling point: sea-level
// pressure wanders by about 2 kPa, and near 100 °C that is half a degree
// (computed from IAPWS R7-97).
const weatherC = 0.5

// boils gives the temperature of boiling water in this kitchen. It explains
// the altitude step and changes nothing.
func (w *worker) boils() {
	const id = "boils"
	label := w.Say("Water boils here at")
	boilC, err := heat.BoilingPointAtC(w.Altitude.SI())
	if !w.Altitude.Given() || err != nil { // a height that nobody lives at is refused where a class is read
		w.out.Boils = inWords(id, label, w.Say("altitude not entered"), w.Say("no altitude entered"))
		w.out.Boils.Basis, w.out.Boils.Source = measure.Entered, "entered"
		return
	}
	unit, weather := measure.Fahrenheit, weatherC*1.8
	if w.metric {
		unit, weather = measure.Celsius, weatherC
	}
	value := measure.New(boilC, measure.Celsius).In(unit)
	pressurePa, _ := heat.AirPressurePa(w.Altitude.SI()) // in range where the boiling point is
	w.out.Boils = measure.Figure{
		ID: id, Label: label, Value: value, High: value, Unit: unit.Symbol, Text: measure.Plain(math.Round(value)) + " " + unit.Symbol,
		Basis: measure.Estimate, Source: reference.BoilingPointSource, Standing: string(reference.Read),
		Working: w.Say("%s kPa of air at %s; weather: %s %s either way", measure.Plain(pressurePa/1000), w.Amount(w.Altitude.String()), measure.Plain(math.Round(weather*2)/2), unit.Symbol),
	}
}
