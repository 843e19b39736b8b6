package exports

import (
	"math"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// Printers draw in the paper a little off. A nudge shifts all labels on their
// sheet, to the right and down where it is positive.
const (
	mostNudgeMm = 5
	// clearMm stays free beside and below the labels: what rounding of widths
	// takes, so that no column is pushed to another page.
	clearMm = 0.5
)

// NudgeError is a shift that would move labels over the edge of the paper, or
// further than any printer is off. Lengths are in millimetres.
type NudgeError struct {
	XMm, YMm float64
	Grid     Grid
}

func (e *NudgeError) Error() string { return e.Say(nil) }

// Say is the sentence by a voice.
func (e *NudgeError) Say(v *words.Voice) string {
	left, right, up, down := e.Grid.nudges()
	mm := func(x float64) string { return measure.Plain(math.Floor(x*10) / 10) }
	return v.Say("nudge: the labels were to be shifted by %s, %s mm; on this sheet (%s) they can be shifted by at most %s mm to the left, %s mm to the right, %s mm up and %s mm down.",
		measure.Plain(e.XMm), measure.Plain(e.YMm), e.Grid.Say(v), mm(left), mm(right), mm(up), mm(down))
}

// nudges are how far the labels of a grid can be shifted to each side, in
// millimetres.
func (g Grid) nudges() (left, right, up, down float64) {
	most := func(free float64) float64 { return max(min(free, mostNudgeMm), 0) }
	return most(g.LeftMm), most(g.RightMm - clearMm), most(g.TopMm), most(g.BottomMm - clearMm)
}

// nudged is the grid shifted, with the same labels.
func (g Grid) nudged(xMm, yMm float64) (Grid, error) {
	left, right, up, down := g.nudges()
	if !(xMm >= -left && xMm <= right && yMm >= -up && yMm <= down) { // NaN neither
		return g, &NudgeError{xMm, yMm, g}
	}
	g.LeftMm, g.RightMm = g.LeftMm+xMm, g.RightMm-xMm
	g.TopMm, g.BottomMm = g.TopMm+yMm, g.BottomMm-yMm
	return g, nil
}
