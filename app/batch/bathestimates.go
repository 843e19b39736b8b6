package batch

import (
	"fmt"
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
)

// bathEstimates words what the ice bath does with the batch.
func (w *worker) bathEstimates(c estimate.Case, b estimate.Bath) {
	e := &w.out.Estimates
	amount, text := w.roughMass(b.IceKg)
	e.IceBalance = model(measure.Figure{ID: "ice-balance", Label: "Ice, by heat balance", Value: amount, High: amount, Unit: w.massUnit().Symbol, Text: text,
		Working: fmt.Sprintf("cools %s from %s and the %s of the bath from %s to %s, all of it melted by then", w.out.Prepared.Text, w.degrees(c.BoilC), w.typedVolume(w.Bath), w.tapText(c), w.degrees(c.BathEndC)),
		Note:    "Heat from the room is not counted: a little more does no harm."})
	w.iceFinding(c, b)

	which, loads := "the load", max(c.Loads, w.out.Estimates.Layers.Value)
	if loads > 1 {
		which = "the last load"
	}
	in := fmt.Sprintf("the centre of %s, in %s from the tap with %s of ice for the batch", which, w.typedVolume(w.Bath), w.out.Ice.Text)
	e.Cool = w.chilledFigure("chill-cool", coolF, b.To50S, in)
	e.Cold = w.chilledFigure("chill-cold", bathEndF, b.To40S, in)
	e.Bath = w.chart("bath", "The last load in the ice bath", "after the lift", "min", 60, b.Course)
	if loads <= 1 {
		e.Bath.Title = "The load in the ice bath"
	}
	e.Bath.Marks = append(e.Bath.Marks, measure.Mark{ID: "chill", Label: "chill " + measure.Minutes(w.out.Chill.Value), OnX: true, At: c.ChillS / 60},
		measure.Mark{ID: "cool", Label: w.temperature(coolF), At: w.markAt(coolF)})
	w.chillFinding(c, b)
}

// coolF is the mark that tells a cooled centre from a warm one, °F: at 50 a
// piece feels cold. A judgement of this program.
const coolF = 50

func (w *worker) markAt(tempF float64) float64 {
	value, _ := w.tempIn(celsius(tempF))
	return value
}

func (w *worker) chilledFigure(id string, tempF, seconds float64, in string) measure.Figure {
	label := "Centre at " + w.temperature(tempF) + " after"
	if math.IsInf(seconds, 1) {
		return model(inWords(id, label, "not in this bath", in+": the ice is gone before that"))
	}
	return timeFigure(id, label, seconds, in)
}
