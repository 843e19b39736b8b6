package batch

import (
	"fmt"
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
		w.out.Estimates.Enzyme = model(inWords("enzyme-left", "Enzyme left at the end", "no published data",
			"no study was found that says for this crop how heat destroys an enzyme"))
		return
	}
	s := studies[0]
	low, high := math.Min(d.Mean, d.Centre), math.Max(d.Mean, d.Centre)
	if s.WithLag { // the rates may count the warming already: the other end of the band
		low, high = math.Min(low, d.WholeAtWater), math.Max(high, d.WholeAtWater)
	}
	f := measure.Figure{ID: "enzyme-left", Label: upperFirst(s.Name) + " left at the end", Value: low * 100, High: high * 100, Unit: "%",
		Working: fmt.Sprintf("at the centre %s, as a mean %s, were it all as hot as the water %s; measured on %s%s", percentText(d.Centre), percentText(d.Mean), percentText(d.WholeAtWater), s.MeasuredOn, studyRange(w.kitchen, s)),
		Note:    s.Limits + " The minutes of the table stand.", Basis: measure.Estimate, Source: s.Source, Standing: string(s.Standing)}
	f.Text = percentText(high)
	if percentText(low) != f.Text {
		f.Text = percentRange(low, high)
	} else if low < 0.01 {
		f.Working = fmt.Sprintf("at the centre, as a mean and were it all as hot as the water; measured on %s%s", s.MeasuredOn, studyRange(w.kitchen, s))
	}
	w.out.Estimates.Enzyme = f
}

func studyRange(k kitchen, s reference.Enzyme) string {
	if s.HighC == 0 {
		return ", at temperatures that are not stated"
	}
	return " at " + k.degreesRange(s.LowC, s.HighC)
}

// vitaminC is what is kept of vitamin C in boiling water: the mean of many
// vegetables, within what whole preparations at home have cost.
func (w *worker) vitaminC() {
	minutes := w.out.Minutes.Value
	const id, label = "vitamin-c", "Vitamin C kept"
	kept, err := heat.VitaminCLeft(minutes)
	if err != nil {
		w.out.Estimates.VitaminC = model(inWords(id, label, "no published data", "it was measured for 1 to 6 min in boiling water"))
		return
	}
	low, high := math.Min(kept, 1-homeLossHigh), math.Max(kept, 1-homeLossLow)
	w.out.Estimates.VitaminC = measure.Figure{ID: id, Label: label, Value: low * 100, High: high * 100, Unit: "%",
		Text:    percentRange(low, high),
		Working: fmt.Sprintf("%s as a mean of many vegetables after %s in boiling water; preparing at home took %s in all (Tosun & Yücecan 2007)", percentText(kept), measure.Minutes(minutes), percentRange(homeLossLow, homeLossHigh)),
		Note:    "A mean: single vegetables lose a tenth or more than half. What blanching saves in the freezer is not in this number.",
		Basis:   measure.Estimate, Source: reference.VitaminCSource, Standing: string(reference.Read)}
}

// What washing, cutting and blanching at home took of vitamin C, as shares, by
// vegetable: Tosun & Yücecan 2007 (abstract read).
const (
	homeLossLow  = 0.309
	homeLossHigh = 0.480
)
