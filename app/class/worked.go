package class

import (
	"slices"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Worked is a class worked through: the one truth that window, projector,
// workbook and numbers show.
type Worked struct {
	Class   Class
	Table   *reference.Table // the table it was worked with, edits included
	Voice   *words.Voice     // that everything here is said by; nil: English
	Batches []BatchWorked
	Totals  Totals
	// Shopping has one line for each crop.
	Shopping []ShoppingLine
	Findings []measure.Finding // of the class as a whole
}

// BatchWorked is one batch of the class with everything worked out for one
// station.
type BatchWorked struct {
	Batch     Batch
	Crop      reference.Crop
	Treatment reference.Treatment
	batch.Worked
	// Known is false where the table has no such treatment; then there are
	// no figures, only a finding.
	Known bool
}

// Totals are the figures of the class as a whole.
type Totals struct {
	Stations    measure.Figure // from headcount and people per station
	Prepared    measure.Figure // all batches on all stations
	Ice         measure.Figure // by rule
	IcePlanned  measure.Figure // with what was entered; without an id where nothing was
	IceBags     measure.Figure // whole bags
	IceBalance  measure.Figure // by heat balance, an estimate
	Packs       measure.Figure // containers
	FreezerDay  measure.Figure
	FreezerDays measure.Figure

	FreezerWarmth measure.Figure // with the whole class in it at once, an estimate
}

// Figures lists the totals in order.
func (t Totals) Figures() []measure.Figure {
	all := []measure.Figure{t.Stations, t.Prepared, t.Ice, t.IcePlanned, t.IceBags, t.IceBalance, t.Packs, t.FreezerDay, t.FreezerDays, t.FreezerWarmth}
	return slices.DeleteFunc(all, func(f measure.Figure) bool { return f.ID == "" })
}

// ShoppingLine is what to buy of one crop for the whole class.
type ShoppingLine struct {
	Crop reference.Crop
	Buy  measure.Figure
	// MarketUnit is "bushel of about 30 lb", or "" where none is listed.
	MarketUnit string
}
