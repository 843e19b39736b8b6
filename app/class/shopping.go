package class

import (
	"slices"
	"strings"

	"example.org/kettleside/app/measure"
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
	var numbers, words []string
	for _, b := range w.known() {
		if b.Crop.ID != crop.ID {
			continue
		}
		part := times(b.Batch.Stations, b.Buy.Text)
		if b.Buy.InWords() {
			words = append(words, part)
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
			f.Text = "about " + f.Text
		}
		if bought && y.AsBought != "" {
			f.Text += " " + y.AsBought
		}
		f.Working = sum(numbers, f.Text, "")
	}
	if len(words) > 0 {
		more := strings.Join(words, " and ")
		if f.Text == "" {
			f.Words, f.Text, f.Working = more, more, more+", for trimming"
		} else {
			f.Text += ", and " + more
			f.Working += "; and " + more + ", for trimming"
		}
	}
	return ShoppingLine{Crop: crop, Buy: f, MarketUnit: marketUnit(y, bought, w.Class.Units)}
}

// leastMarketLb is the smallest net weight that is worth naming as a unit of
// the market; below it the table's unit is only a way of giving a yield.
const leastMarketLb = 10

func marketUnit(y reference.Yield, ok bool, units measure.System) string {
	if !ok || y.WeightLb < leastMarketLb || strings.Contains(y.MarketUnit, "lot") || y.MarketUnit == "" {
		return ""
	}
	unit := measure.Pound
	if units == measure.Metric {
		unit = measure.Kilogram
	}
	toUnit := measure.Pound.Factor / unit.Factor
	return y.MarketUnit + " of about " + measure.Range(measure.Plain(y.WeightLb*toUnit), measure.Plain(max(y.WeightLb, y.WeightHighLb)*toUnit), unit.Symbol)
}
