package batch

import (
	"fmt"
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
)

// Where the heat model and the rules of method disagree both stand, and a
// finding says what to do. It is never less than the rule.

// returnFinding says so where the water is estimated to take longer than the
// rule allows.
func (w *worker) returnFinding(c estimate.Case, k estimate.Kettle) {
	rule := w.table.Rule("return-to-boil-min")
	if k.BackS <= rule.Value*60 {
		if k.Spread.Within < 0.8 {
			w.find(measure.Note, "return-unsure", rule.Source,
				fmt.Sprintf("Estimate: the water is back at the boil within %s, but only in %s of 10 kitchens like this one.", measure.Minutes(rule.Value), ofTen(k.Spread.Within)),
				"Time the first load; if it takes longer, use less at a time.")
		}
		return
	}
	says := fmt.Sprintf("Estimate: %s takes %s to boil again on this burner, not %s.", w.out.LoadWeight.Text, lasting(k.BackS), measure.Minutes(rule.Value))
	do := fmt.Sprintf("Use loads of %s, or a stronger burner.", w.out.Estimates.LargestLoad.Text)
	if k.LargestKg < leastUsefulLb*measure.Pound.Factor {
		do = "Use a stronger burner: on this one hardly any load is back in time."
	}
	w.find(measure.Mind, "return-too-slow", rule.Source, says, do+" The minutes are counted from the return of the boil all the same.")
}

// leastUsefulLb is the smallest load that is worth naming.
const leastUsefulLb = 0.1

// coolCentreC is the centre below which the model and the table are remarked to
// disagree, 160 °F: a judgement of this program.
const coolCentreC = 71.1

// coolCentre says so where the middle of a piece is still cool after the
// published time. The time stands.
func (w *worker) coolCentre(centreC float64) {
	if centreC >= coolCentreC {
		return
	}
	t := w.Treatment
	w.find(measure.Note, "cool-centre", t.Source,
		fmt.Sprintf("Estimate: after %s the centre of a piece is at %s.", w.out.Minutes.Text, w.degrees(centreC)),
		"Follow the table: its minutes were set by tests of quality. The model only follows heat, and takes a size that it guesses; it does not know what the middle of a piece needs.")
}

// chillFinding says so where a centre in the bath is still warm after the
// published chill.
func (w *worker) chillFinding(c estimate.Case, b estimate.Bath) {
	if b.To50S <= c.ChillS || math.IsInf(b.To50S, 1) { // a bath that never gets there is iceFinding's
		return
	}
	w.find(measure.Note, "chill-short", w.out.Chill.Source,
		fmt.Sprintf("Estimate: after the chill of %s the centre of a piece is still at %s.", w.out.Chill.Text, w.degrees(b.EndC)),
		fmt.Sprintf("Leave it in until it is cold through, about %s; cut one open and feel.", lasting(b.To50S)))
}

// iceFinding says so where the heat balance asks for clearly more ice than the
// rule.
func (w *worker) iceFinding(c estimate.Case, b estimate.Bath) {
	if b.IceKg <= c.BathIceKg*iceMargin {
		return
	}
	ice := w.out.Estimates.IceBalance.Text
	says := fmt.Sprintf("Estimate: by heat balance this batch needs %s of ice, the rule of thumb gives %s: the water has to be cooled too.", ice, w.out.Ice.Text)
	if math.IsInf(b.To50S, 1) {
		says += fmt.Sprintf(" With %s the last pieces stay at about %s.", w.out.Ice.Text, w.degrees(max(b.EndC, b.RestC)))
	}
	w.find(measure.Mind, "ice-short", w.out.Ice.Source, says, "Have "+ice+" at hand, or change the warm water for fresh between loads.")
}

// iceMargin is how much more ice than the rule's is remarked: a judgement.
const iceMargin = 1.15
