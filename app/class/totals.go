package class

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// totals adds up all batches on all their stations.
func (w *Worked) totals(memory *estimate.Memory) {
	c, v := w.Class, w.Voice
	unit := measure.Pound
	if c.Units == measure.Metric {
		unit = measure.Kilogram
	}
	stations := math.Ceil(float64(c.People.Headcount) / float64(max(c.People.PerStation, 1)))
	w.Totals.Stations = measure.Figure{
		ID: "stations", Label: v.Say("Stations"), Value: stations, High: stations, Unit: "stations", Text: measure.Plain(stations),
		Basis: measure.Entered, Source: "entered",
		Working: v.Say("%s ÷ at most %d at a station = %s", peopleCount(v, c.People.Headcount), c.People.PerStation, measure.Plain(stations)),
	}
	w.totalPrepared(unit)
	w.totalIce(unit)
	w.totalPacks()
	w.heatTotals(memory, unit)
}

// known are the batches whose treatment the table has.
func (w *Worked) known() []BatchWorked {
	return slices.DeleteFunc(slices.Clone(w.Batches), func(b BatchWorked) bool { return !b.Known })
}

func (w *Worked) totalPrepared(unit *measure.MassUnit) {
	massKg := 0.0
	var parts []string
	for _, b := range w.known() {
		massKg += b.Batch.Prepared.SI() * float64(b.Batch.Stations)
		if b.Batch.Prepared.Given() {
			parts = append(parts, times(b.Batch.Stations, b.Prepared.Text))
		}
	}
	total := massKg / unit.Factor
	text := measure.Plain(total) + " " + unit.Symbol
	w.Totals.Prepared = measure.Figure{ID: "prepared-total", Label: w.Voice.Say("Prepared in all"), Value: total, High: total, Unit: unit.Symbol,
		Text: text, Basis: measure.Entered, Source: "entered", Working: sum(parts, text, w.Voice.Say("no weight entered yet"))}
	w.Totals.FreezerDay = batch.FreezerDay(w.Class.Place.Freezer, w.Class.Units, w.Table, w.Voice)
	w.Totals.FreezerDays = batch.FreezerDays(massKg, w.Class.Units, w.Totals.FreezerDay, w.Voice)
}

func (w *Worked) totalIce(unit *measure.MassUnit) {
	rule := w.Table.Rule("ice-lb-per-lb")
	ice := 0.0
	var parts []string
	for _, b := range w.known() {
		if !b.Ice.InWords() {
			ice += b.Ice.Value * float64(b.Batch.Stations)
			parts = append(parts, times(b.Batch.Stations, b.Ice.Text))
		}
	}
	text := measure.Plain(ice) + " " + unit.Symbol
	w.Totals.Ice = measure.Figure{ID: "ice-total", Label: w.Voice.Say("Ice, by rule of thumb"), Value: ice, High: ice, Unit: unit.Symbol, Text: text,
		Basis: measure.Ruled, Source: rule.Source, Standing: string(rule.Standing), Working: sum(parts, text, w.Voice.Say("no batch that is chilled in ice water")),
		Note: w.Voice.Say("The rule of thumb counts the food only; warm tap water in the baths needs more.")}
	w.plannedIce(unit)
	bags := w.Totals.Ice
	if w.Totals.IcePlanned.Value > bags.Value {
		bags = w.Totals.IcePlanned
	}
	w.Totals.IceBags = iceBags(bags.Value, bags.Text, unit, w.Class.Kit.IceBag, w.Voice)
}

// plannedIce is the ice with what was entered for batches; none where nothing
// was. Bags are counted for it or for the rule, whichever is more.
func (w *Worked) plannedIce(unit *measure.MassUnit) {
	ice, some := 0.0, false
	var parts []string
	for _, b := range w.known() {
		one := b.Ice
		if b.IceEntered.ID != "" {
			one, some = b.IceEntered, true
		}
		if !one.InWords() {
			ice += one.Value * float64(b.Batch.Stations)
			parts = append(parts, times(b.Batch.Stations, one.Text))
		}
	}
	if !some {
		return
	}
	text := measure.Plain(ice) + " " + unit.Symbol
	w.Totals.IcePlanned = measure.Figure{ID: "ice-planned-total", Label: w.Voice.Say("Ice, as entered"), Value: ice, High: ice, Unit: unit.Symbol, Text: text,
		Basis: measure.Entered, Source: "entered", Working: sum(parts, text, ""), Note: w.Voice.Say("By the rule where nothing is entered.")}
}

func (w *Worked) totalPacks() {
	v := w.Voice
	f := measure.Figure{ID: "packs-total", Label: v.Say("Packs in all"), Unit: "packs", Basis: measure.Entered, Source: "entered"}
	var parts []string
	counts := 0 // batches that are counted
	atLeast := false
	for _, b := range w.known() {
		if b.Packs.InWords() {
			continue
		}
		counts++
		if b.Packs.Basis == measure.Estimate {
			f.Basis, f.Source = measure.Estimate, ""
			atLeast = atLeast || b.PacksAtLeast
		}
		f.Value += b.Packs.Value * float64(b.Batch.Stations)
		f.High += b.Packs.High * float64(b.Batch.Stations)
		parts = append(parts, times(b.Batch.Stations, measure.Range(measure.Plain(b.Packs.Value), measure.Plain(b.Packs.High), "")))
	}
	uncounted := len(w.known()) - counts
	numbers := measure.Range(measure.Plain(f.Value), measure.Plain(f.High), v.Say("packs"))
	if f.Value == 1 && f.High == 1 {
		numbers = "1 " + v.Say("pack")
	}
	f.Text, f.Working = numbers, sum(parts, numbers, "")
	if atLeast {
		f.Text = v.Say("at least %s", numbers)
	}
	switch {
	case counts == 0 && uncounted == 0:
		f.Words = v.Say("no batches yet")
		f.Text, f.Working = f.Words, f.Words
	case counts == 0:
		f.Words = v.Say("fill one and count")
		f.Text, f.Working = f.Words, v.Say("no yield is published for these crops")
	case uncounted > 0:
		more := words.Key("%s and what %d more batches give")
		if uncounted == 1 {
			more = words.Key("%s and what %d more batch gives")
		}
		f.Text = v.Say(more, f.Text, uncounted)
		f.Note = v.Say("Fill one and count where no yield is published.")
	}
	w.Totals.Packs = f
}

// times prints "4 × 3 lb", or "3 lb" for a single station.
func times(stations int, text string) string {
	if stations == 1 {
		return text
	}
	return fmt.Sprintf("%d × %s", stations, text)
}

// sum prints "4 × 3 lb + 2 × 1 lb = 14 lb", or none where nothing is added up.
func sum(parts []string, result, none string) string {
	if len(parts) == 0 {
		return none
	}
	text := strings.Join(parts, " + ")
	if text == result { // one batch at one station
		return result
	}
	return text + " = " + result
}

func iceBags(ice float64, iceText string, unit *measure.MassUnit, bag measure.Mass, v *words.Voice) measure.Figure {
	f := measure.Figure{ID: "ice-bags", Label: v.Say("Bags of ice"), Unit: "bags", Basis: measure.Ruled, Source: "entered"}
	if !bag.Given() {
		f.Words, f.Working = v.Say("bag weight not entered"), v.Say("no bag weight entered")
		f.Text = f.Words
		return f
	}
	f.Value = max(math.Ceil(ice/bag.In(unit)-1e-9), 0)
	f.High = f.Value
	f.Text = v.Say("%s of %s", measure.Counted(f.Value, v.Say("bag"), v.Say("bags")), bag)
	bagText := bag.String()
	if bag.Unit() != unit {
		bagText += " (" + measure.Exact(bag.In(unit)) + " " + unit.Symbol + ")"
	}
	f.Working = v.Say("%s ÷ %s a bag, whole bags = %s", iceText, bagText, measure.Plain(f.Value))
	return f
}
