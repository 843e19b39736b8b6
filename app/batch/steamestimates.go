package batch

import (
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// steamEstimates words what one layer does over boiling water.
func (w *worker) steamEstimates(c estimate.Case, s estimate.Steam) {
	e := &w.out.Estimates
	e.Centre = w.centre(s.CentreC.Likely, s.MeanC)
	e.Centre.Label = w.Say("Centre of a piece at the end")
	e.Centre.Also = w.Say("with what is guessed: %s", w.degreesRange(s.CentreC.Low, s.CentreC.High))
	w.enzymeLeft(s.Doneness)
	w.coolCentre(s.CentreC.Likely)
	e.Kettle = w.chart("kettle", w.Say("One layer in steam"), w.Say("after the lid goes on"), "min", 60, s.Course)
	e.Kettle.Curves[0].Label = w.Say("steam")
	e.Through = w.section(c, s.Through, words.Key("at the end, %s"))
	if s.LayerKg > 0 {
		w.layers(s)
	}
	if s.DryS > 0 {
		w.boilingDry(c, s)
	}
}

// layers is what lies in the basket at once, and how often it is filled.
func (w *worker) layers(s estimate.Steam) {
	amount, text := w.roughMass(s.LayerKg)
	w.out.Estimates.Layer = model(measure.Figure{ID: "layer", Label: w.Say("A single layer in the basket"), Value: amount, High: amount, Unit: w.massUnit().Symbol, Text: text,
		Working: w.Say("a basket %s across, %s of it covered by pieces side by side", w.typedLength(w.Basket), w.percentText(estimate.Covered))})
	w.out.Estimates.Layers = model(measure.Figure{ID: "layers", Label: w.Say("The basket is filled"), Value: s.Layers, High: s.Layers, Unit: "times",
		Text: measure.Counted(s.Layers, w.Say("time"), w.Say("times")), Working: w.Say("%s ÷ %s a layer, whole fillings", w.massExact(w.Prepared.SI()), w.massExact(s.LayerKg))})
	if s.Layers > 1 {
		w.find(measure.Note, "steam-fillings", reference.HeatModelSource,
			w.Say("Estimate: %s lies in a single layer, so %s is %s.", text, w.out.Prepared.Text, measure.Counted(s.Layers, w.Say("filling"), w.Say("fillings"))),
			w.Say("Steam one layer at a time; do not heap."))
	}
}

// boilingDry is the water that goes off as steam, against what stands under the
// basket. The shallow end of the rule is taken, and the burner at its strongest.
func (w *worker) boilingDry(c estimate.Case, s estimate.Steam) {
	awayL := s.AwayKg / waterKgPerL
	text, also := w.waterText(awayL)
	depth := w.table.Rule("steam-water-in")
	_, shallow, _ := w.length(depth.Value)
	w.out.Estimates.BoiledAway = model(measure.Figure{ID: "boiled-away", Label: w.Say("Water boiled away in one filling"), Value: w.water(awayL), High: w.water(awayL), Unit: w.waterUnit().Symbol,
		Text: text, Also: also,
		Working: w.Say("at most %s W for %s ÷ %s kJ/kg; %s of water would be gone after %s at full heat", toTen(c.PowerW.High), measure.Minutes(w.out.Minutes.High), measure.Plain(heat.VaporizationJPerKg/1000), shallow, w.lasting(s.DryS)),
		Note:    w.Say("A lid that fits keeps part of it.")})
	fillings := s.Layers
	if fillings == 0 { // leaves: about a pound at a time
		fillings = wholeUp(w.Prepared.In(measure.Pound) / w.table.Rule("batch-lb").Value)
	}
	if s.DryS < dryMargin*c.LongestS*fillings {
		w.find(measure.Mind, "boils-dry", reference.HeatModelSource,
			w.Say("Estimate: %s of water under the basket is boiled away after %s at full heat.", shallow, w.lasting(s.DryS)),
			w.Say("Look after the water before each filling, keep boiling water ready to top it up, and open the lid away from you."))
	}
}

// dryMargin is how many times the steaming the water should last: a judgement.
const dryMargin = 2
