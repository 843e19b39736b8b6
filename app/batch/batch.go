// Package batch works one batch through by the rules of method: water, loads,
// minutes, chilling, ice, packs, headspace, freezer, storage. Every result is
// a measure.Figure with its working and source; what a person should mind is a
// measure.Finding. Beside the rules stand the estimates of the heat model,
// worded here, and a finding where the two disagree: people do what the rule
// says.
//
// The rules and their sources come from reference.Table; nothing here holds a
// published number of its own.
package batch

import (
	"slices"
	"time"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Job is everything that one station's batch depends on.
type Job struct {
	Crop      reference.Crop
	Treatment reference.Treatment

	Prepared measure.Mass   // trimmed, ready for the kettle
	Kettle   measure.Volume // water the kettle holds with room to boil; not given: unknown
	Basket   measure.Length // inside width of a steaming basket; not given: unknown
	Burner   Burner
	Start    measure.Temperature // vegetables before they go in; not given: guessed
	Tap      measure.Temperature // cold water; not given: guessed
	Bath     measure.Volume      // cold water in the ice bath; not given: unknown
	Ice      measure.Mass        // in the bath; not given: by the rule
	Altitude measure.Length      // of the place; not given: taken as low, and said so
	Freezer  measure.Volume      // capacity; not given: unknown

	Pack Packing

	FreezeOn time.Time // day of freezing; zero: not fixed
	Units    measure.System

	Memory *estimate.Memory // of estimates; nil: nothing is remembered
	Voice  *words.Voice     // that everything is said by; nil: English. The table's own texts are said already
}

// Worked is one batch worked through.
type Worked struct {
	Prepared    measure.Figure // prepared weight, entered
	Water       measure.Figure // boiling water for the whole batch at the water rule
	KettleTakes measure.Figure // most that one load in this kettle may weigh
	Loads       measure.Figure // fillings of the kettle
	LoadWeight  measure.Figure // each load, the batch shared evenly
	LoadWater   measure.Figure // least water in the kettle for one load
	Published   measure.Figure // minutes as published, at low altitude, or words
	Minutes     measure.Figure // minutes here, with the altitude step, or words
	Clock       measure.Figure // words: when the minutes start
	Boils       measure.Figure // temperature of boiling water at this altitude, an estimate
	Chill       measure.Figure // chilling time or words
	Ice         measure.Figure // by the rule of one pound per pound
	IceEntered  measure.Figure // as the batch says; without an id: by the rule
	Packs       measure.Figure // containers it fills
	Headspace   measure.Figure
	Buy         measure.Figure // weight as bought
	FreezerDay  measure.Figure // most food this freezer takes in a day
	FreezerDays measure.Figure // days this batch needs by itself
	BestBy      measure.Figure // best-quality window
	Label       Label

	PacksAtLeast bool // Packs is a lower bound, because trimming is not counted

	Estimates Estimates // what heat does, beside the rules

	Findings []measure.Finding
}

// Figures lists the figures of the rules in the order of the work; Estimates has
// its own list.
func (w Worked) Figures() []measure.Figure {
	all := []measure.Figure{
		w.Prepared, w.Water, w.KettleTakes, w.Loads, w.LoadWeight, w.LoadWater,
		w.Published, w.Minutes, w.Clock, w.Boils, w.Chill, w.Ice, w.IceEntered,
		w.Packs, w.Headspace, w.Buy, w.FreezerDay, w.FreezerDays, w.BestBy,
	}
	return slices.DeleteFunc(all, func(f measure.Figure) bool { return f.ID == "" })
}

// Label is the text on one pack; Best gives its best-quality line. Its days are
// year-month-day, whatever the language.
type Label struct {
	Food     string // "Snap beans", with the grade where the crop is sorted by size
	Cut      string // "whole or cut 2 to 4 in"
	Frozen   string // year-month-day, or "" where the day is not fixed
	Amount   string // "1 pint"
	BestFrom string // year-month-day: the early end of the best-quality window, or ""
	BestBy   string // year-month-day: its late end, or ""
	Cook     string // "Cook before eating."
}
