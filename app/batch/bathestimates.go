package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// bathEstimates words what the ice bath does with the batch.
func (w *worker) bathEstimates(c estimate.Case, r estimate.Results) {
	b, e := *r.Bath, &w.out.Estimates
	loads, says := c.Loads, loadInBath
	if r.Steam != nil {
		loads, says = max(r.Steam.Layers, 1), layerInBath
	}
	first := says.one
	if loads > 1 {
		first = says.last
	}
	amount, text := w.roughMass(b.IceKg)
	e.IceBalance = model(measure.Figure{ID: "ice-balance", Label: w.Say("Ice, by heat balance"), Value: amount, High: amount, Unit: w.massUnit().Symbol, Text: text,
		Working: w.Say("cools %s from %s and the %s of the bath from %s to %s, all of it melted by then", w.out.Prepared.Text, w.degrees(c.BoilC), w.typedVolume(w.Bath), w.tapText(c), w.degrees(c.BathEndC)),
		Note:    w.Say("Heat from the room is not counted: a little more does no harm.")})

	in := w.Say(first.in, w.typedVolume(w.Bath), w.iceText())
	e.Cool = w.chilledFigure("chill-cool", coolF, b.MarkS[0], in)
	e.Cold = w.chilledFigure("chill-cold", coldF, b.MarkS[1], in)
	e.Bath = w.chart("bath", w.Say(first.title), w.Say("after the lift"), "min", 60, b.Course)
	e.Bath.Marks = append(e.Bath.Marks, measure.Mark{ID: "chill", Label: w.Say("chill %s", measure.Minutes(w.out.Chill.Value)), OnX: true, At: c.ChillS / 60},
		measure.Mark{ID: "cool", Label: w.temperature(coolF), At: w.markAt(coolF)})
	w.iceFinding(c, b, loads)
	w.chillFinding(b)
}

// bathWords are what is said of what lies in the bath: of the only one, and of
// the last of several.
type bathWords struct{ one, last inBath }

type inBath struct {
	in    string // in what the centre cools
	title string // of the chart
}

var (
	loadInBath = bathWords{
		one:  inBath{words.Key("the centre of the load, in %s from the tap with %s of ice for the batch"), words.Key("The load in the ice bath")},
		last: inBath{words.Key("the centre of the last load, in %s from the tap with %s of ice for the batch"), words.Key("The last load in the ice bath")},
	}
	layerInBath = bathWords{
		one:  inBath{words.Key("the centre of the layer, in %s from the tap with %s of ice for the batch"), words.Key("The layer in the ice bath")},
		last: inBath{words.Key("the centre of the last layer, in %s from the tap with %s of ice for the batch"), words.Key("The last layer in the ice bath")},
	}
)

func (w *worker) markAt(tempF float64) float64 {
	value, _ := w.tempIn(celsius(tempF))
	return value
}

// chilledFigure is when a centre is so cold, in a bath with the ice of the
// batch.
func (w *worker) chilledFigure(id string, tempF, seconds float64, in string) measure.Figure {
	label := w.Say("Centre at %s after", w.temperature(tempF))
	f := w.timeFigure(id, label, seconds, in)
	if math.IsInf(seconds, 1) {
		f = model(inWords(id, label, w.Say("not in this bath"), w.Say("%s: the ice is gone before that", in)))
	}
	if rule := w.table.Rule("ice-lb-per-lb"); rule.Standing == reference.FromMemory && !w.Ice.Given() {
		f.Standing = string(rule.Standing)
	}
	return f
}
