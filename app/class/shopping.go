package class

import (
	"slices"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// shopping adds up what to buy, crop by crop.
func (w *Worked) shopping() {
	for _, b := range w.known() {
		if !slices.ContainsFunc(w.Shopping, func(l ShoppingLine) bool { return l.Crop.ID == b.Crop.ID }) {
			w.Shopping = append(w.Shopping, w.shoppingLine(b.Crop))
		}
	}
}

// shoppingLine is what to buy of one crop: the numbers of its batches added up,
// and beside them the words of those that have no number.
func (w *Worked) shoppingLine(crop reference.Crop) ShoppingLine {
	f := measure.Figure{ID: "buy-" + crop.ID, Label: crop.Name, Basis: measure.Estimate}
	v := w.Voice
	var numbers, inWords []string
	for _, b := range w.known() {
		if b.Crop.ID != crop.ID {
			continue
		}
		part := times(b.Batch.Stations, b.Buy.Text)
		if b.Buy.InWords() {
			inWords = append(inWords, part)
			continue
		}
		numbers = append(numbers, part)
		f.Value += b.Buy.Value * float64(b.Batch.Stations)
		f.High += b.Buy.High * float64(b.Batch.Stations)
		f.Unit, f.Source, f.Standing = b.Buy.Unit, b.Buy.Source, b.Buy.Standing
	}
	y, bought := w.Table.ChosenYield(crop.ID)
	if len(numbers) > 0 {
		f.Text = measure.Range(measure.Plain(f.Value), measure.Plain(f.High), f.Unit)
		if !f.IsRange() {
			f.Text = v.Say("about %s", f.Text)
		}
		if bought && y.AsBought != "" {
			f.Text += " " + v.Say(string(y.AsBought))
		}
		f.Working = sum(numbers, f.Text, "")
	}
	if len(inWords) > 0 {
		more := inWords[0]
		for _, next := range inWords[1:] {
			more = v.Say("%s and %s", more, next)
		}
		if f.Text == "" {
			f.Words, f.Text, f.Working = more, more, v.Say("%s, for trimming", more)
		} else {
			f.Text, f.Working = v.Say("%s, and %s", f.Text, more), v.Say("%s; and %s, for trimming", f.Working, more)
		}
	}
	return ShoppingLine{Crop: crop, Buy: f, MarketUnit: marketUnit(y, bought, w.Class.Units, v)}
}

// marketUnit is the unit of the market in which the crop is sold, with its
// weight where one is known.
func marketUnit(y reference.Yield, ok bool, units measure.System, v *words.Voice) string {
	if !ok || y.WeightLb == 0 || y.Lot || y.MarketUnit == "" {
		return ""
	}
	unit := measure.Pound
	if units == measure.Metric {
		unit = measure.Kilogram
	}
	toUnit := measure.Pound.Factor / unit.Factor
	return v.Say("%s of about %s", y.MarketUnit, measure.Range(measure.Plain(y.WeightLb*toUnit), measure.Plain(max(y.WeightLb, y.WeightHighLb)*toUnit), unit.Symbol))
}
