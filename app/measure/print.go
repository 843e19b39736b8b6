package measure

import (
	"math"
	"strconv"
	"strings"

	"example.org/kettleside/content/words"
)

// glyph are the fractions that are printed as one character.
var glyph = map[[2]int]string{
	{1, 2}: "½", {1, 3}: "⅓", {2, 3}: "⅔", {1, 4}: "¼", {3, 4}: "¾",
	{1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
}

// Kitchen prints an amount as the tool for its unit can show it: volumes in
// halves, thirds and quarters, inches in eighths, other units in decimals that
// matter. The nearest mark is taken, and never 0 for something that is not 0.
func Kitchen[D Dimension](amount float64, unit *Unit[D]) string {
	return KitchenNumber(amount, unit.parts) + " " + unit.Symbol
}

// KitchenNumber prints a number on the marks of a tool; parts lists the
// denominators of the marks, nil for decimals.
func KitchenNumber(amount float64, parts []int) string {
	if len(parts) == 0 || math.Abs(amount) >= 100 || amount < 0 {
		return Plain(amount)
	}
	whole := math.Floor(amount)
	frac := amount - whole
	best, bestN, bestD := frac, 0, 1 // distance to the whole number below
	try := func(n, d int) {
		if gap := math.Abs(frac - float64(n)/float64(d)); gap < best-1e-9 {
			best, bestN, bestD = gap, n, d
		}
	}
	for _, d := range parts {
		for n := 1; n <= d; n++ {
			try(n, d)
		}
	}
	if bestN == bestD {
		return Plain(whole + 1)
	}
	if bestN == 0 && whole == 0 && amount > 0 { // something is never printed as nothing
		d := parts[len(parts)-1]
		bestN, bestD = 1, d
	}
	if bestN == 0 {
		return Plain(whole)
	}
	text := glyph[[2]int{bestN, bestD}]
	if whole == 0 {
		return text
	}
	return Plain(whole) + " " + text
}

// Plain prints a number with the digits a kitchen can use, about three that
// count, with thousands marks and without trailing zeros: 11.4, 0.94, 5,000.
// Something that is not 0 never prints as 0.
func Plain(x float64) string {
	switch {
	case x < 0:
		return "−" + Plain(-x)
	case x == 0: // and minus nothing is nothing
		return "0"
	case x < 1e-9:
		return strconv.FormatFloat(x, 'g', 2, 64)
	}
	return grouped(trimZeros(strconv.FormatFloat(x, 'f', decimals(x), 64)))
}

// decimals is how many places Plain prints.
func decimals(x float64) int {
	switch {
	case x < 1:
		return 1 - int(math.Floor(math.Log10(x))) // two digits that count
	case x < 10:
		return 2
	case x < 100:
		return 1
	}
	return 0
}

// plainUp and plainDown print like Plain, but never less or never more than x.
func plainUp(x float64) string {
	if x < 0 {
		return "−" + plainDown(-x)
	}
	step := math.Pow10(-decimals(max(x, 1e-9)))
	return Plain(math.Ceil(x/step-1e-9) * step)
}

func plainDown(x float64) string {
	if x < 0 {
		return "−" + plainUp(-x)
	}
	step := math.Pow10(-decimals(max(x, 1e-9)))
	return Plain(math.Floor(x/step+1e-9) * step)
}

// Exact prints a number for a line of working: kitchen fractions where it is
// one, otherwise four digits that count, so that the numbers shown give the
// result shown.
func Exact(x float64) string {
	if whole, frac := math.Modf(x); x > 0 && x < 100 && frac != 0 {
		for _, d := range kitchenParts {
			n := math.Round(frac * float64(d))
			if sign, ok := glyph[[2]int{int(n), d}]; ok && math.Abs(frac*float64(d)-n) < 1e-9 {
				switch {
				case d == 2 || d == 4: // in decimals these are short and exact
				case whole == 0:
					return sign
				default:
					return Plain(whole) + " " + sign
				}
			}
		}
	}
	if x <= 0 || x >= 1000 {
		return Plain(x)
	}
	return grouped(trimZeros(strconv.FormatFloat(x, 'f', max(0, 3-int(math.Floor(math.Log10(x)))), 64)))
}

// KitchenUp is Kitchen for an amount that is needed at least: the mark is
// never below it. It says how far above it the mark lies.
func KitchenUp[D Dimension](amount float64, unit *Unit[D]) (text string, above float64) {
	best := math.Ceil(amount - 1e-9)
	for _, d := range unit.parts {
		best = min(best, math.Ceil(amount*float64(d)-1e-9)/float64(d))
	}
	return Kitchen(best, unit), best - amount
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// grouped puts thousands marks into a number of five digits or more, and into
// four digits too, so that columns agree.
func grouped(s string) string {
	whole, frac, hasFrac := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if hasFrac {
		return whole + "." + frac
	}
	return whole
}

// Minutes prints a time as a kitchen timer is set: "3 min", "1 ½ min",
// "10 s", "2 min 18 s". It is exact to the second, because a published time
// is never shortened by printing it: a part of a second counts as a whole one.
func Minutes(minutes float64) string {
	seconds := math.Ceil(minutes*60 - 1e-6)
	whole := math.Floor(seconds / 60)
	rest := seconds - whole*60
	switch {
	case minutes <= 0:
		return "0 min"
	case seconds == 0:
		return "1 s"
	case whole == 0:
		return Plain(rest) + " s"
	case rest == 0, rest == 15, rest == 30, rest == 45:
		return KitchenNumber(seconds/60, Minute.parts) + " min"
	}
	return Plain(whole) + " min " + Plain(rest) + " s"
}

// MinutesRange prints a range of times in English, the unit once where both ends
// share it: "3–7 min", "10–15 s", "30 s to 2 min".
func MinutesRange(low, high float64) string { return MinutesRangeBy(nil, low, high) }

// MinutesRangeBy is MinutesRange by a voice.
func MinutesRangeBy(v *words.Voice, low, high float64) string {
	a, b := Minutes(low), Minutes(high)
	if a == b {
		return a
	}
	for _, unit := range []string{" min", " s"} {
		if bare, ok := strings.CutSuffix(a, unit); ok && strings.HasSuffix(b, unit) && !strings.Contains(bare, "min") && !strings.Contains(strings.TrimSuffix(b, unit), "min") {
			return bare + "–" + b
		}
	}
	return v.Say("%s to %s", a, b)
}

// Counted prints a number of things: "1 load", "3 loads".
func Counted(n float64, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return Plain(n) + " " + many
}
