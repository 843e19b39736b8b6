package drawing

import (
	"math"
	"strconv"
	"strings"

	"example.org/kettleside/app/measure"
)

// span is a stretch of an axis.
type span struct{ low, high float64 }

func (s span) wide() float64 { return s.high - s.low }

// with is the stretch widened to hold x.
func (s span) with(x float64) span { return span{math.Min(s.low, x), math.Max(s.high, x)} }

// atLeast is the stretch, widened about its middle where it is shorter.
func (s span) atLeast(wide float64) span {
	if more := (wide - s.wide()) / 2; more > 0 {
		return span{s.low - more, s.high + more}
	}
	return s
}

// The shortest axes that are drawn: a curve that hardly moves is not blown up
// into a slope.
const (
	leastX = 0.1
	leastY = 10
)

// spans are the stretches of both axes that hold all curves, and the marks as
// far as these do not press the curves into a corner.
func (g graph) spans() (x, y span) {
	x = span{math.Inf(1), math.Inf(-1)}
	y = x
	for _, c := range g.curves {
		for _, points := range c.parts {
			for _, q := range points {
				x, y = x.with(q.x), y.with(q.y)
			}
		}
	}
	x, y = x.atLeast(leastX), y.atLeast(leastY)
	farX, farY := span{x.low - x.wide(), x.high + x.wide()}, span{y.low - y.wide(), y.high + y.wide()}
	for _, m := range g.marks {
		switch {
		case m.OnX && m.At >= farX.low && m.At <= farX.high:
			x = x.with(m.At)
		case !m.OnX && m.At >= farY.low && m.At <= farY.high:
			y = y.with(m.At)
		}
	}
	return x, y
}

// scale is an axis with its ticks.
type scale struct {
	step float64
	at   []float64
}

// ticks chooses round values on a stretch, with at most so many steps.
func ticks(s span, most float64, unit string) scale {
	return every(s, roundStep(s.wide()/math.Max(most, 1), unit))
}

// every marks a stretch at all multiples of a step.
func every(s span, step float64) scale {
	t := scale{step: step}
	const hair = 1e-9 // a tick on the end of the axis is on it
	for i := math.Ceil(s.low/step - hair); i <= math.Floor(s.high/step+hair); i++ {
		t.at = append(t.at, i*step)
	}
	return t
}

// roundStep is the least round step that is not shorter: 1, 2 or 5 times a
// power of ten, or as hours and days are divided.
func roundStep(least float64, unit string) float64 {
	switch {
	case unit == "min" && least > 5:
		return among(least, []float64{10, 15, 30}, 60, "h")
	case unit == "h" && least > 2:
		return among(least, []float64{3, 6, 12}, 24, "day")
	}
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= least*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}

// among is one of some steps, or a round number of a larger unit.
func among(least float64, steps []float64, larger float64, unit string) float64 {
	for _, step := range steps {
		if step >= least {
			return step
		}
	}
	return larger * roundStep(math.Max(least/larger, 1), unit)
}

// name prints a tick with the decimals that its step needs.
func (t scale) name(x float64) string {
	return signed(x, max(0, int(math.Ceil(-math.Log10(t.step)-1e-9))))
}

// signed prints a number with so many decimals, a true minus sign and no minus
// nothing.
func signed(x float64, decimals int) string {
	text := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	if x < 0 && strings.Trim(text, "0.") != "" {
		return "−" + text
	}
	return text
}

// reads prints a value as people read the unit: whole degrees, tenths of
// minutes and hours.
func reads(x float64, unit string) string {
	switch {
	case strings.HasPrefix(unit, "°"):
		return signed(x, 0)
	case unit == "min" || unit == "h":
		return signed(x, 1)
	}
	return measure.Plain(x)
}

// finest is the step in which the x axis is read, so that the values belong to
// the time that is printed with them; 0: any place.
func (g graph) finest() float64 {
	if g.x.Unit == "min" || g.x.Unit == "h" {
		return 0.1
	}
	return 0
}

// slack is how far beyond its end a curve is read, for the last stop.
func (g graph) slack() float64 { return g.finest() * 0.51 }

// stop is the place nearest to x that is read.
func (g graph) stop(x float64) float64 {
	if !onAxis(x) || g.finest() == 0 {
		return x
	}
	return math.Round(x*10) / 10
}

// units says how often a reading names its unit.
type units int

const (
	unitsEach units = iota
	unitsLast
	unitsNone // it stands at the axis
)

// reading is the place and then the value of each curve there, nil where there
// is none.
func (g graph) reading(x float64, how units) []string {
	if !onAxis(x) {
		return nil
	}
	said := []string{withUnit(reads(x, g.x.Unit), g.x.Unit)}
	for _, c := range g.curves {
		y, ok := c.value(x, g.slack())
		if !ok {
			continue
		}
		text := strings.TrimSpace(c.short + " " + reads(y, g.y.Unit))
		if how == unitsEach {
			text = withUnit(text, g.y.Unit)
		}
		said = append(said, text)
	}
	if len(said) == 1 {
		return nil
	}
	if how == unitsLast {
		said[len(said)-1] = withUnit(said[len(said)-1], g.y.Unit)
	}
	return said
}

func joined(said []string) string { return strings.Join(said, " · ") }

// withUnit puts a unit behind a number, or a name behind a unit.
func withUnit(text, unit string) string { return strings.TrimSpace(text + " " + unit) }
