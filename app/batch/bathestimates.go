package batch

import (
	"fmt"
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// bathEstimates words what the ice bath does with the batch.
func (w *worker) bathEstimates(c estimate.Case, r estimate.Results) {
	b, e := *r.Bath, &w.out.Estimates
	loads, load := c.Loads, "load"
	if r.Steam != nil {
		loads, load = max(r.Steam.Layers, 1), "layer"
	}
	if loads > 1 {
		load = "last " + load
	}
	amount, text := w.roughMass(b.IceKg)
	e.IceBalance = model(measure.Figure{ID: "ice-balance", Label: "Ice, by heat balance", Value: amount, High: amount, Unit: w.massUnit().Symbol, Text: text,
		Working: fmt.Sprintf("cools %s from %s and the %s of the bath from %s to %s, all of it melted by then", w.out.Prepared.Text, w.degrees(c.BoilC), w.typedVolume(w.Bath), w.tapText(c), w.degrees(c.BathEndC)),
		Note:    "Heat from the room is not counted: a little more does no harm."})

	in := fmt.Sprintf("the centre of the %s, in %s from the tap with %s of ice for the batch", load, w.typedVolume(w.Bath), w.out.Ice.Text)
	e.Cool = w.chilledFigure("chill-cool", coolF, b.MarkS[0], in)
	e.Cold = w.chilledFigure("chill-cold", coldF, b.MarkS[1], in)
	e.Bath = w.chart("bath", "The "+load+" in the ice bath", "after the lift", "min", 60, b.Course)
	e.Bath.Marks = append(e.Bath.Marks, measure.Mark{ID: "chill", Label: "chill " + measure.Minutes(w.out.Chill.Value), OnX: true, At: c.ChillS / 60},
		measure.Mark{ID: "cool", Label: w.temperature(coolF), At: w.markAt(coolF)})
	w.iceFinding(c, b, loads)
	w.chillFinding(b)
}

func (w *worker) markAt(tempF float64) float64 {
	value, _ := w.tempIn(celsius(tempF))
	return value
}

// chilledFigure is when a centre is so cold, in a bath with the ice of the
// rule.
func (w *worker) chilledFigure(id string, tempF, seconds float64, in string) measure.Figure {
	label := "Centre at " + w.temperature(tempF) + " after"
	f := timeFigure(id, label, seconds, in)
	if math.IsInf(seconds, 1) {
		f = model(inWords(id, label, "not in this bath", in+": the ice is gone before that"))
	}
	if rule := w.table.Rule("ice-lb-per-lb"); rule.Standing == reference.FromMemory {
		f.Standing = string(rule.Standing)
	}
	return f
}
