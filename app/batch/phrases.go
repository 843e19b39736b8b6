package batch

import (
	"math"
	"strings"

	"example.org/kettleside/app/measure"
)

// How estimates are printed: with no more digits than they are worth.

// lasting prints a time: "55 s", "1 min 50 s", "17 min", "9 h".
func (k kitchen) lasting(seconds float64) string {
	if math.IsInf(seconds, 1) {
		return k.Say("never")
	}
	number, unit := lastingIn(seconds)
	return number + " " + unit
}

// lastingIn is a time as it is printed and the unit that it ends with: "1 min 50"
// and "s". It is finite.
func lastingIn(seconds float64) (number, unit string) {
	switch {
	case seconds < 57.5:
		return measure.Plain(max(math.Round(seconds/5)*5, 5)), "s"
	case seconds < 595:
		step := 5.0
		if seconds >= 180 {
			step = 10
		}
		whole := math.Round(seconds/step) * step
		minutes := math.Floor(whole / 60)
		if rest := whole - 60*minutes; rest > 0 {
			return measure.Plain(minutes) + " min " + measure.Plain(rest), "s"
		}
		return measure.Plain(minutes), "min"
	case seconds < 5370:
		return measure.Plain(math.Round(seconds / 60)), "min"
	case seconds < 5*3600:
		return measure.Plain(math.Round(seconds/1800) / 2), "h"
	}
	return measure.Plain(math.Round(seconds / 3600)), "h"
}

// lastingRange prints two ends: "1 min 20 s to 2 min 40 s", or one where both
// print alike.
func (k kitchen) lastingRange(lowS, highS float64) string {
	return k.ends(k.lasting(lowS), k.lasting(highS))
}

// ends are the two ends of a range that have a unit each, or one where both
// print alike.
func (k kitchen) ends(low, high string) string {
	if low == high {
		return low
	}
	return k.Say("%s to %s", low, high)
}

// roughMass is a weight with the two digits that an estimate is worth.
func (k kitchen) roughMass(massKg float64) (float64, string) {
	u := k.massUnit()
	amount := massKg / u.Factor
	step := math.Pow10(int(math.Floor(math.Log10(max(amount, 0.01)))) - 1)
	return amount, measure.Plain(math.Round(amount/step)*step) + " " + u.Symbol
}

// degrees prints a temperature in whole degrees.
func (k kitchen) degrees(tempC float64) string {
	value, unit := k.tempIn(tempC)
	return measure.Plain(math.Round(value)) + " " + unit.Symbol
}

func (k kitchen) tempIn(tempC float64) (float64, *measure.TemperatureUnit) {
	unit := measure.Fahrenheit
	if k.metric {
		unit = measure.Celsius
	}
	return measure.New(tempC, measure.Celsius).In(unit), unit
}

// typedTemp is a temperature as it was typed, with the kitchen's unit behind it
// where it was typed in another one.
func (k kitchen) typedTemp(q measure.Temperature) string {
	if _, unit := k.tempIn(0); q.Unit() != unit {
		return q.String() + " (" + k.degrees(q.SI()) + ")"
	}
	return q.String()
}

// typedLength is a width as it was typed, with the kitchen's unit behind it
// where it was typed in the other system.
func (k kitchen) typedLength(q measure.Length) string {
	us, typed := q.Unit().Of(measure.US), k.Amount(q.String())
	switch {
	case us && k.metric:
		return typed + " (" + measure.Plain(math.Round(q.SI()*100)) + " cm)"
	case !us && !k.metric:
		return typed + " (" + k.Amount(measure.Kitchen(q.In(measure.Inch), measure.Inch)) + ")"
	}
	return typed
}

// degreesRange prints two ends with one unit.
func (k kitchen) degreesRange(lowC, highC float64) string {
	low, unit := k.tempIn(lowC)
	high, _ := k.tempIn(highC)
	return measure.Range(measure.Plain(math.Round(low)), measure.Plain(math.Round(high)), unit.Symbol)
}

// temperatureFigure is a figure of one temperature, in whole degrees.
func (k kitchen) temperatureFigure(id, label string, tempC float64, working string) measure.Figure {
	value, unit := k.tempIn(tempC)
	return model(measure.Figure{ID: id, Label: label, Value: value, High: value, Unit: unit.Symbol, Text: k.degrees(tempC), Working: working})
}

// timeFigure is a figure of one time, in the unit that its text ends with.
func (k kitchen) timeFigure(id, label string, seconds float64, working string) measure.Figure {
	_, unit := lastingIn(seconds)
	value := seconds / secondsIn[unit]
	return model(measure.Figure{ID: id, Label: label, Value: value, High: value, Unit: unit, Text: k.lasting(seconds), Working: working})
}

// timeRangeFigure is a figure of two times.
func (k kitchen) timeRangeFigure(id, label string, lowS, highS float64, working string) measure.Figure {
	f := k.timeFigure(id, label, highS, working)
	f.Value, f.Text = lowS/secondsIn[f.Unit], k.timeRange(lowS, highS)
	return f
}

// timeRange prints two times, the unit once where both ends have only that one.
func (k kitchen) timeRange(lowS, highS float64) string {
	low, unit := lastingIn(lowS)
	high, highUnit := lastingIn(highS)
	if unit == highUnit && !strings.Contains(low+high, " ") && !math.IsInf(highS, 1) {
		return measure.Range(low, high, unit)
	}
	return k.lastingRange(lowS, highS)
}

var secondsIn = map[string]float64{"s": 1, "min": 60, "h": 3600}

// lengthUp prints a headspace that is needed at least: the next eighth of an
// inch, or millimetre.
func (k kitchen) lengthUp(metres float64) string {
	if k.metric {
		return measure.Plain(math.Ceil(metres*1000-1e-9)) + " mm"
	}
	text, _ := measure.KitchenUp(metres/measure.Inch.Factor, measure.Inch)
	return k.Amount(text)
}

// percentText prints a share in whole percent, and says "under 1 %" rather than
// nothing.
func (k kitchen) percentText(share float64) string {
	if share < 0.01 {
		return k.Say("under %s", "1 %")
	}
	return measure.Plain(math.Round(share*100)) + " %"
}

// percentRange prints two shares.
func percentRange(low, high float64) string {
	return measure.Range(measure.Plain(math.Round(low*100)), measure.Plain(math.Round(high*100)), "%")
}

// roundM2 is the area of something round that is so wide.
func roundM2(acrossM float64) float64 { return math.Pi / 4 * acrossM * acrossM }
