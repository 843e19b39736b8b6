package session

import (
	"math"
	"regexp"
	"strings"

	"example.org/kettleside/app/measure"
)

// Differences are taken between numbers as they are printed, so that what is
// said agrees with what stands beside it and has no more digits than that.

// same is what two numbers may differ by and still be one.
const same = 1e-6

// figureBy says how far the trial's figure is from the plan's; "" where they
// have no numbers of the same unit, or ranges whose ends differ by two
// different amounts.
func figureBy(plan, trial measure.Figure) string {
	if plan.InWords() || trial.InWords() {
		return ""
	}
	if isTime(plan.Unit) && isTime(trial.Unit) {
		return timeBy(plan.Text, trial.Text)
	}
	p, readPlan := read(plan)
	t, readTrial := read(trial)
	if !readPlan || !readTrial || p.before != t.before {
		return ""
	}
	p, t = inOneUnit(p, t)
	diff := t.low - p.low
	if p.unit != t.unit || math.Abs(t.high-p.high-diff) > same {
		return ""
	}
	return signed(diff, p.unit)
}

// amountBy says how far a trial's amount is from the plan's, where both were
// entered: in the smaller of their units, "+2 qt" from 1 gal to 6 qt.
func amountBy[D measure.Dimension](plan, trial measure.Of[D]) string {
	if !plan.Given() || !trial.Given() {
		return ""
	}
	unit := plan.Unit()
	if trial.Unit().Factor < unit.Factor {
		unit = trial.Unit()
	}
	return signed(trial.In(unit)-plan.In(unit), unit.Symbol)
}

// reading is the text of a figure taken apart: "at least 3–4 pint bags".
type reading struct {
	before    string  // "at least "
	low, high float64 // 3 and 4
	unit      string  // "pint bags"; in the plural for what is counted
}

// number is a number as the figures print it.
const number = `−?(?:[0-9][0-9,]*(?:\.[0-9]+)?(?: ?[½⅓⅔¼¾⅛⅜⅝⅞])?|[½⅓⅔¼¾⅛⅜⅝⅞])`

var figureText = regexp.MustCompile(`^([^0-9½⅓⅔¼¾⅛⅜⅝⅞−]*)(` + number + `)(?:–(` + number + `))? (.+)$`)

func read(f measure.Figure) (reading, bool) {
	text := f.Text
	if rest, none := strings.CutPrefix(text, "none "); none { // of 10 kitchens
		text = "0 " + rest
	}
	parts := figureText.FindStringSubmatch(text)
	if parts == nil {
		return reading{}, false
	}
	if parts[3] == "" {
		parts[3] = parts[2]
	}
	low, err := measure.ParseNumber(parts[2])
	high, errHigh := measure.ParseNumber(parts[3])
	return reading{parts[1], low, high, unitOf(parts[4], f.Unit)}, err == nil && errHigh == nil
}

// unitOf is the unit that stands behind the number of a figure. What is said
// behind it, as in "months at 0 °F or colder", is left out where the figure
// names its unit.
func unitOf(behind, unit string) string {
	words := strings.Fields(behind)
	for i := range words {
		words[i] = plural(words[i])
	}
	behind = strings.Join(words, " ")
	if unit != "" && (behind == unit || strings.HasPrefix(behind, unit+" ")) {
		return unit
	}
	return behind
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
func timeBy(plan, trial string) string {
	low, high, ok := readTimes(plan)
	trialLow, trialHigh, trialOk := readTimes(trial)
	diff := trialLow - low
	switch {
	case !ok || !trialOk || math.Abs(trialHigh-high-diff) > same || math.Abs(diff) < same:
		return ""
	case diff < 0:
		return lasting(-diff) + " shorter"
	}
	return lasting(diff) + " longer"
}

// readTimes reads one time or two, in seconds: "2 min 18 s", "5–14 h", "30 s to
// 1 min".
func readTimes(text string) (lowS, highS float64, ok bool) {
	first, last, two := strings.Cut(text, " to ")
	if !two {
		first, last, two = strings.Cut(text, "–")
	}
	if !two {
		last = first
	}
	var itsOwn *measure.DurationUnit
	high, err := measure.Parse(last, itsOwn)
	if err != nil {
		return 0, 0, false
	}
	low, err := measure.Parse(first, high.Unit())
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

// signed prints a difference with its sign; "" for none.
func signed(diff float64, unit string) string {
	if math.Abs(diff) < same {
		return ""
	}
	sign := "+"
	if diff < 0 {
		sign, diff = "−", -diff
	}
	if unit == "%" { // a difference between shares is no share
		unit = "points"
	}
	if math.Abs(diff-1) < same {
		unit = singular(unit)
	}
	return sign + sized(diff, unit) + " " + unit
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

// counted are the things that figures count, one and many.
var counted = [][2]string{
	{"load", "loads"}, {"day", "days"}, {"month", "months"}, {"time", "times"}, {"station", "stations"}, {"point", "points"},
	{"bag", "bags"}, {"box", "boxes"}, {"jar", "jars"},
}

// plural and singular turn the last word, where it is something counted.
func plural(words string) string   { return turned(words, 0, 1) }
func singular(words string) string { return turned(words, 1, 0) }

func turned(words string, from, to int) string {
	last := words[strings.LastIndex(words, " ")+1:]
	for _, c := range counted {
		if last == c[from] {
			return strings.TrimSuffix(words, last) + c[to]
		}
	}
	return words
}
