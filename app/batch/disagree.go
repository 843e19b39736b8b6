package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Where the heat model and the rules of method disagree both stand, and a
// finding says what to do. It is never less than the rule. What a finding says
// by estimate is credited to the model, never to the agency whose rule it
// touches.

// returnFinding says so where the water is estimated to take longer than the
// rule allows, clearly or only as likely as not.
func (w *worker) returnFinding(c estimate.Case, k estimate.Kettle) {
	rule := w.table.Rule("return-to-boil-min")
	limit := measure.Minutes(rule.Value)
	switch {
	case k.BackS > c.WithinS*clearlyLate:
		pound := w.table.Rule("batch-lb")
		do := w.Say("By estimate a load up to %s would be back in time: use less at once, or a stronger burner. The minutes are counted from the return of the boil all the same.", w.out.Estimates.LargestLoad.Text)
		switch {
		case k.LargestKg < leastUsefulLb*measure.Pound.Factor:
			do = w.Say("Use a stronger burner: on this one hardly any load is back in time. The minutes are counted from the return of the boil all the same.")
		case k.LargestKg > pound.Value*measure.Pound.Factor:
			do = w.Say("Use less at once, or a stronger burner; the rule works with about %s at a time. The minutes are counted from the return of the boil all the same.", w.rule(pound))
		}
		w.find(measure.Mind, "return-too-slow", reference.HeatModelSource,
			w.Say("Estimate: %s takes %s to boil again on this burner, not %s.", w.out.LoadWeight.Text, w.lasting(k.BackS), limit), do)
	case k.Spread.Within < oftenEnough:
		w.find(measure.Note, "return-unsure", reference.HeatModelSource,
			w.Say("Estimate: %s takes about %s to boil again, and with what is guessed only %s like this one are back within %s.", w.out.LoadWeight.Text, w.lasting(k.BackS), w.ofTen(k.Spread.Within), limit),
			w.Say("Time the first load; if it takes longer, use less at a time. The minutes are counted from the return of the boil all the same."))
	}
}

const (
	// leastUsefulLb is the smallest load that is worth naming.
	leastUsefulLb = 0.1
	// clearlyLate is how far over the rule's time a return is remarked as too
	// slow, and oftenEnough the share of kitchens that makes it sure: judgements
	// of this program.
	clearlyLate = 1.15
	oftenEnough = 0.75
)

// coolCentreF is the centre below which the model and the table are remarked to
// disagree: a judgement of this program.
const coolCentreF = 160

// coolCentre says so where the middle of a piece is still cool after the
// published time. The time stands.
func (w *worker) coolCentre(centreC float64) {
	if centreC >= celsius(coolCentreF) {
		return
	}
	w.find(measure.Note, "cool-centre", reference.HeatModelSource,
		w.Say("Estimate: after %s the centre of a piece is at %s.", w.out.Minutes.Text, w.degrees(centreC)),
		w.Say("Follow the table: its minutes were set by tests of quality. The model only follows heat, and takes a size that it guesses; it does not know what the middle of a piece needs."))
}

// chillFinding says so where the middle of a piece is still warm after the
// published chill.
func (w *worker) chillFinding(b estimate.Bath) {
	if b.EndC <= celsius(warmMiddleF) {
		return
	}
	w.find(measure.Note, "chill-short", reference.HeatModelSource,
		w.Say("Estimate: after the chill of %s the middle of a piece is still at %s.", w.out.Chill.Text, w.degrees(b.EndC)),
		w.Say("Cut one open: where its middle is warm, leave the load in longer. Never take it out sooner than the table says."))
}

// warmMiddleF is a middle that is clearly warm, about a room's: a judgement of
// this program, well over the rule's warmest bath.
const warmMiddleF = 75

// iceFinding says so where the bath, with its ice, ends warmer than the rule of
// the bath allows.
func (w *worker) iceFinding(c estimate.Case, b estimate.Bath, loads float64) {
	rule := w.table.Rule("chill-water-max-f")
	if b.RestC < celsius(rule.Value)+noticedC {
		return
	}
	ice := w.out.Estimates.IceBalance.Text
	do := w.Say("Have %s of ice at hand, or start with colder water.", ice)
	if loads > 1 {
		do = w.Say("Have %s of ice at hand, or change the water between loads.", ice)
	}
	says := w.Say("Estimate: with %s of ice the bath ends at %s, warmer than %s. The water has to be cooled too: down to %s that takes %s by heat balance.",
		w.iceText(), w.degrees(b.RestC), w.rule(rule), w.degrees(c.BathEndC), ice)
	if w.tempRounded(b.RestC) == w.tempRounded(celsius(rule.Value)) {
		says = w.Say("Estimate: with %s of ice the bath ends a little warmer than %s. The water has to be cooled too: down to %s that takes %s by heat balance.",
			w.iceText(), w.rule(rule), w.degrees(c.BathEndC), ice)
	}
	w.find(measure.Mind, "ice-short", reference.HeatModelSource, says, do)
}

// noticedC is how much warmer than the rule a bath ends before it is remarked,
// half a degree Fahrenheit: the same in every unit.
const noticedC = 0.5 / 1.8

// tempRounded is a temperature as it is printed.
func (k kitchen) tempRounded(tempC float64) float64 {
	value, _ := k.tempIn(tempC)
	return math.Round(value)
}
