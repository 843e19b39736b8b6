package batch

import (
	"math"

	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// enzymeLeft is what a blanch leaves of an enzyme, as a band with its limits in
// words, or that nothing solid is published.
func (w *worker) enzymeLeft(d *heat.Doneness) {
	studies := w.table.Enzymes(w.Crop.ID)
	if d == nil || len(studies) == 0 {
		w.out.Estimates.Enzyme = model(inWords("enzyme-left", w.Say("Enzyme left at the end"), w.Say("no published data"),
			w.Say("no study was found that says for this crop how heat destroys an enzyme")))
		return
	}
	s := studies[0]
	low, high := math.Min(d.Mean, d.Centre), math.Max(d.Mean, d.Centre)
	if s.WithLag { // the rates may count the warming already: the other end of the band
		low, high = math.Min(low, d.WholeAtWater), math.Max(high, d.WholeAtWater)
	}
	f := measure.Figure{ID: "enzyme-left", Label: w.Say("%s left at the end", upperFirst(s.Name)), Value: low * 100, High: high * 100, Unit: "%",
		Working: w.Say("at the centre %s, as a mean %s, were it all as hot as the water %s; measured on %s", w.percentText(d.Centre), w.percentText(d.Mean), w.percentText(d.WholeAtWater), w.measuredOn(s)),
		Note:    w.Say("%s The minutes of the table stand.", s.Limits), Basis: measure.Estimate, Source: s.Source, Standing: string(s.Standing)}
	f.Text = w.percentText(high)
	if w.percentText(low) != f.Text {
		f.Text = percentRange(low, high)
	} else if low < 0.01 {
		f.Working = w.Say("at the centre, as a mean and were it all as hot as the water; measured on %s", w.measuredOn(s))
	}
	w.out.Estimates.Enzyme = f
}

// measuredOn is what a study heated, and to what temperatures.
func (k kitchen) measuredOn(s reference.Enzyme) string {
	if s.HighC == 0 {
		return k.Say("%s, at temperatures that are not stated", s.MeasuredOn)
	}
	return k.Say("%s at %s", s.MeasuredOn, k.degreesRange(s.LowC, s.HighC))
}

// vitaminC is what is kept of vitamin C in boiling water: the mean of many
// vegetables, within what whole preparations at home have cost.
func (w *worker) vitaminC() {
	minutes := w.out.Minutes.Value
	const id = "vitamin-c"
	label := w.Say("Vitamin C kept")
	kept, err := heat.VitaminCLeft(minutes)
	if err != nil {
		w.out.Estimates.VitaminC = model(inWords(id, label, w.Say("no published data"), w.Say("it was measured for 1 to 6 min in boiling water")))
		return
	}
	low, high := math.Min(kept, 1-homeLossHigh), math.Max(kept, 1-homeLossLow)
	w.out.Estimates.VitaminC = measure.Figure{ID: id, Label: label, Value: low * 100, High: high * 100, Unit: "%",
		Text:    percentRange(low, high),
		Working: w.Say("%s as a mean of many vegetables after %s in boiling water; preparing at home took %s in all (Tosun & Yücecan 2007)", w.percentText(kept), measure.Minutes(minutes), percentRange(homeLossLow, homeLossHigh)),
		Note:    w.Say("A mean: single vegetables lose a tenth or more than half. What blanching saves in the freezer is not in this number."),
		Basis:   measure.Estimate, Source: reference.VitaminCSource, Standing: string(reference.Read)}
}

// What washing, cutting and blanching at home took of vitamin C, as shares, by
// vegetable: Tosun & Yücecan 2007 (abstract read).
const (
	homeLossLow  = 0.309
	homeLossHigh = 0.480
)
