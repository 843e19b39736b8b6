package batch

import (
	"math"
	"strings"

	"example.org/kettleside/app/measure"
)

// How estimates are printed: with no more digits than they are worth.

// lasting prints a time: "55 s", "1 min 50 s", "17 min", "9 h".
func lasting(seconds float64) string {
	switch {
	case math.IsInf(seconds, 1):
		return "never"
	case seconds < 57.5:
		return measure.Plain(max(math.Round(seconds/5)*5, 5)) + " s"
	case seconds < 595:
		step := 5.0
		if seconds >= 180 {
			step = 10
		}
		whole := math.Round(seconds/step) * step
		minutes := math.Floor(whole / 60)
		if rest := whole - 60*minutes; rest > 0 {
			return measure.Plain(minutes) + " min " + measure.Plain(rest) + " s"
		}
		return measure.Plain(minutes) + " min"
	case seconds < 5370:
		return measure.Plain(math.Round(seconds/60)) + " min"
	case seconds < 5*3600:
		return measure.Plain(math.Round(seconds/1800)/2) + " h"
	}
	return measure.Plain(math.Round(seconds/3600)) + " h"
}

// lastingRange prints two ends: "1 min 20 s to 2 min 40 s", or one where both
// print alike.
func lastingRange(lowS, highS float64) string {
	low, high := lasting(lowS), lasting(highS)
	if low == high {
		return low
	}
	return low + " to " + high
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
	us := q.Unit() == measure.Inch || q.Unit() == measure.Foot
	switch {
	case us && k.metric:
		return q.String() + " (" + measure.Plain(math.Round(q.SI()*100)) + " cm)"
	case !us && !k.metric:
		return q.String() + " (" + measure.Kitchen(q.In(measure.Inch), measure.Inch) + ")"
	}
	return q.String()
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
func timeFigure(id, label string, seconds float64, working string) measure.Figure {
	text := lasting(seconds)
	unit := unitOf(text)
	value := seconds / secondsIn[unit]
	return model(measure.Figure{ID: id, Label: label, Value: value, High: value, Unit: unit, Text: text, Working: working})
}

// timeRangeFigure is a figure of two times.
func timeRangeFigure(id, label string, lowS, highS float64, working string) measure.Figure {
	f := timeFigure(id, label, highS, working)
	f.Value = lowS / secondsIn[f.Unit]
	low, high := lasting(lowS), f.Text
	if unitOf(low) == f.Unit && !strings.Contains(strings.TrimSuffix(low, " "+f.Unit), " ") {
		f.Text = measure.Range(strings.TrimSuffix(low, " "+f.Unit), strings.TrimSuffix(high, " "+f.Unit), f.Unit)
	} else {
		f.Text = lastingRange(lowS, highS)
	}
	return f
}

var secondsIn = map[string]float64{"s": 1, "min": 60, "h": 3600}

// unitOf is the last word of a time.
func unitOf(text string) string { return text[strings.LastIndex(text, " ")+1:] }

// lengthUp prints a headspace that is needed at least: the next eighth of an
// inch, or millimetre.
func (k kitchen) lengthUp(metres float64) string {
	if k.metric {
		return measure.Plain(math.Ceil(metres*1000-1e-9)) + " mm"
	}
	text, _ := measure.KitchenUp(metres/measure.Inch.Factor, measure.Inch)
	return text
}

// percentText prints a share in whole percent, and says "under 1 %" rather than
// nothing.
func percentText(share float64) string {
	if share < 0.01 {
		return "under 1 %"
	}
	return measure.Plain(math.Round(share*100)) + " %"
}

// percentRange prints two shares.
func percentRange(low, high float64) string {
	return measure.Range(measure.Plain(math.Round(low*100)), measure.Plain(math.Round(high*100)), "%")
}

// roundM2 is the area of something round that is so wide.
func roundM2(acrossM float64) float64 { return math.Pi / 4 * acrossM * acrossM }
