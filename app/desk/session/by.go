package session

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// Differences are taken between numbers as they are printed, so that what is
// said agrees with what stands beside it and has no more digits than that.

// same is what two numbers may differ by and still be one.
const same = 1e-6

// figureBy says how far the trial's figure is from the plan's; "" where they
// have no numbers of the same unit, or ranges whose ends differ by two
// different amounts.
func (s *Session) figureBy(plan, trial measure.Figure) string {
	if plan.InWords() || trial.InWords() {
		return ""
	}
	if isTime(plan.Unit) && isTime(trial.Unit) {
		return s.timeBy(plan.Text, trial.Text)
	}
	p, readPlan := read(plan)
	t, readTrial := read(trial)
	if !readPlan || !readTrial || plan.Unit != trial.Unit || p.before != t.before {
		return ""
	}
	p, t = inOneUnit(p, t)
	diff := t.low - p.low
	if p.unit != t.unit || math.Abs(t.high-p.high-diff) > same {
		return ""
	}
	switch { // a difference between shares is no share
	case p.unit == "%" && math.Abs(math.Abs(diff)-1) < same:
		p.unit = s.voice.Say("point")
	case p.unit == "%":
		p.unit = s.voice.Say("points")
	}
	return s.voice.Amount(signed(diff, p.unit))
}

// amountBy says how far a trial's amount is from the plan's, where both were
// entered: in that of their units that belongs to the class, and where both or
// neither does in the smaller, "+2 qt" from 1 gal to 6 qt.
func amountBy[D measure.Dimension](v *words.Voice, units measure.System, plan, trial measure.Of[D]) string {
	if !plan.Given() || !trial.Given() {
		return ""
	}
	unit, other := plan.Unit(), trial.Unit()
	if fits := other.Of(units); fits != unit.Of(units) && fits || fits == unit.Of(units) && other.Factor < unit.Factor {
		unit = other
	}
	return v.Amount(signed(trial.In(unit)-plan.In(unit), unit.Symbol))
}

// reading is the text of a figure taken apart: "at least 3–4 lb".
type reading struct {
	before    string  // "at least "
	low, high float64 // 3 and 4
	unit      string  // "lb"; "" for what is counted: the figure's name says what
}

// number is a number as the figures print it.
const number = `−?(?:[0-9][0-9,]*(?:\.[0-9]+)?(?: ?[½⅓⅔¼¾⅛⅜⅝⅞])?|[½⅓⅔¼¾⅛⅜⅝⅞])`

var figureText = regexp.MustCompile(`^([^0-9½⅓⅔¼¾⅛⅜⅝⅞−]*)(` + number + `)(?:–(` + number + `))? ([^ ]+)`)

func read(f measure.Figure) (reading, bool) {
	parts := figureText.FindStringSubmatch(f.Text)
	if parts == nil || f.Value == 0 && f.High == 0 { // none of 10 kitchens
		return reading{}, f.Value == 0 && f.High == 0
	}
	if parts[3] == "" {
		parts[3] = parts[2]
	}
	low, err := measure.ParseNumber(parts[2])
	high, errHigh := measure.ParseNumber(parts[3])
	r := reading{before: parts[1], low: low, high: high}
	switch {
	case f.Unit == measure.Gallon.Symbol: // may be printed in quarts
		r.unit = parts[4]
	case slices.Contains(measured, f.Unit):
		r.unit = f.Unit
	}
	return r, err == nil && errHigh == nil
}

// measured are the units of figures that are no count of things.
var measured = []string{
	measure.Pound.Symbol, measure.Kilogram.Symbol, measure.Gallon.Symbol, measure.Quart.Symbol, measure.Litre.Symbol,
	measure.Inch.Symbol, "mm", measure.Fahrenheit.Symbol, measure.Celsius.Symbol, measure.Watt.Symbol, "%",
}

// inOneUnit brings gallons to quarts where only one of the two is printed in
// gallons.
func inOneUnit(p, t reading) (reading, reading) {
	gallon, quart := measure.Gallon.Symbol, measure.Quart.Symbol
	switch {
	case p.unit == gallon && t.unit == quart:
		return p.inQuarts(), t
	case p.unit == quart && t.unit == gallon:
		return p, t.inQuarts()
	}
	return p, t
}

func (r reading) inQuarts() reading {
	in := func(gallons float64) float64 { return measure.New(gallons, measure.Gallon).In(measure.Quart) }
	return reading{r.before, in(r.low), in(r.high), measure.Quart.Symbol}
}

func isTime(unit string) bool {
	return unit == measure.Second.Symbol || unit == measure.Minute.Symbol || unit == measure.Hour.Symbol
}

// timeBy is "1 min 5 s longer".
func (s *Session) timeBy(plan, trial string) string {
	low, high, ok := readTimes(plan)
	trialLow, trialHigh, trialOk := readTimes(trial)
	diff := trialLow - low
	switch {
	case !ok || !trialOk || math.Abs(trialHigh-high-diff) > same || math.Abs(diff) < same:
		return ""
	case diff < 0:
		return s.voice.Say("%s shorter", lasting(-diff))
	}
	return s.voice.Say("%s longer", lasting(diff))
}

// timeText is a time as the figures print it, or two that share a unit.
var timeText = regexp.MustCompile(`(?:(` + number + `)–)?(` + number + ` (?:min|s|h)\b(?: [0-9]+ s\b)?)`)

// readTimes reads one time or two, in seconds: "2 min 18 s", "5–14 h", "30 s to
// 1 min".
func readTimes(text string) (lowS, highS float64, ok bool) {
	times := timeText.FindAllStringSubmatch(text, -1)
	if len(times) == 0 || len(times) > 2 {
		return 0, 0, false
	}
	first, last := times[0], times[len(times)-1]
	var itsOwn *measure.DurationUnit
	high, err := measure.Parse(last[2], itsOwn)
	if err != nil {
		return 0, 0, false
	}
	if first[1] == "" {
		first[1] = first[2]
	}
	low, err := measure.Parse(first[1], high.Unit())
	return low.SI(), high.SI(), err == nil
}

// lasting prints a difference of times; long ones to the half hour, as the
// estimates of long times are.
func lasting(seconds float64) string {
	const hour, long = 3600, 5370
	if seconds >= long || math.Abs(seconds-hour) < same {
		return measure.Plain(math.Round(2*seconds/hour)/2) + " h"
	}
	return measure.Minutes(seconds / 60)
}

// signed prints a difference with its sign and its unit, which may be ""; ""
// for none.
func signed(diff float64, unit string) string {
	if math.Abs(diff) < same {
		return ""
	}
	sign := "+"
	if diff < 0 {
		sign, diff = "−", -diff
	}
	return strings.TrimSuffix(sign+sized(diff, unit)+" "+unit, " ")
}

// sized prints a number that is not negative: on the marks of a tool where its
// unit has them and it is on one.
func sized(x float64, unit string) string {
	switch unit {
	case measure.Gallon.Symbol, measure.Quart.Symbol, measure.Inch.Symbol:
		text := measure.KitchenNumber(x, []int{2, 3, 4, 8})
		if shown, err := measure.ParseNumber(text); err == nil && math.Abs(shown-x) < same {
			return text
		}
	}
	return measure.Exact(x)
}
