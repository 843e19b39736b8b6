package class

import (
	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
)

// heatTotals adds up what the heat model says, beside the rules: the ice that a
// balance of heat asks for, and how warm the freezer gets.
func (w *Worked) heatTotals(memory *estimate.Memory, unit *measure.MassUnit) {
	w.totalIceBalance(unit)
	w.freezerWarmth(memory)
}

func (w *Worked) totalIceBalance(unit *measure.MassUnit) {
	v := w.Voice
	f := measure.Figure{ID: "ice-balance-total", Label: v.Say("Ice, by heat balance"), Unit: unit.Symbol, Basis: measure.Estimate}
	var parts []string
	missing := 0
	for _, b := range w.known() {
		ice := b.Estimates.IceBalance
		switch {
		case ice.ID != "" && !ice.InWords():
			f.Source = ice.Source
			if ice.Standing != "" {
				f.Standing = ice.Standing
			}
			f.Value += ice.Value * float64(b.Batch.Stations)
			parts = append(parts, times(b.Batch.Stations, measure.Plain(ice.Value)+" "+ice.Unit))
		case !b.Ice.InWords():
			missing++
		}
	}
	f.High = f.Value
	switch {
	case len(parts) == 0 && missing > 0:
		f.Words, f.Working = v.Say("bath water not entered"), v.Say("how much cold water a bath holds is not entered")
		f.Basis, f.Source = measure.Entered, "entered"
		f.Text = f.Words
	case len(parts) == 0:
		f.Words, f.Working = v.Say("none"), v.Say("no batch that is chilled in ice water")
		f.Text = f.Words
	default:
		f.Text = measure.Plain(f.Value) + " " + unit.Symbol
		f.Working = sum(parts, f.Text, "")
		switch {
		case missing == 1:
			f.Note = v.Say("1 batch more could not be estimated and needs ice too.")
		case missing > 1:
			f.Note = v.Say("%d batches more could not be estimated and need ice too.", missing)
		}
		if bags := iceBags(f.Value, f.Text, unit, w.Class.Kit.IceBag, v); !bags.InWords() {
			f.Also = bags.Text
		}
	}
	w.Totals.IceBalance = f
}

// freezerWarmth is the whole class in the freezer at once, as if all packs were
// those of the batch that weighs most.
func (w *Worked) freezerWarmth(memory *estimate.Memory) {
	massKg, mostKg := 0.0, 0.0
	var heaviest BatchWorked
	for _, b := range w.known() {
		kg := b.Batch.Prepared.SI() * float64(b.Batch.Stations)
		massKg += kg
		if kg > mostKg && b.Estimates.Freezing.ID != "" {
			heaviest, mostKg = b, kg
		}
	}
	f, finding, ok := batch.FreezerWarmth(heaviest.Worked, massKg, w.Class.Place.Freezer, w.Class.Units, w.Table, memory, w.Voice)
	f.Standing = heaviest.Estimates.Freezing.Standing
	if f.Basis == measure.Estimate && mostKg > 0 {
		f.Working = w.Voice.Say("%s; all packs taken as those of “%s”", f.Working, heaviest.Batch.Name)
	}
	w.Totals.FreezerWarmth = f
	if ok {
		w.Findings = append(w.Findings, finding)
	}
}
