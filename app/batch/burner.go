package batch

import "example.org/kettleside/app/measure"

// Burner is what heats a kettle, as far as the educator knows it: a rehearsal
// says most, kind and rating less. The zero value is a burner of which nothing
// is known.
type Burner struct {
	Kind      BurnerKind    `json:"kind"`
	Rating    measure.Power `json:"rating"` // on its plate
	Rehearsal Rehearsal     `json:"rehearsal"`
}

// BurnerKind is how a burner makes heat.
type BurnerKind string

const (
	UnknownBurner BurnerKind = ""
	Induction     BurnerKind = "induction"
	Coil          BurnerKind = "coil"    // electric coil or cast plate
	Radiant       BurnerKind = "radiant" // electric under glass
	Gas           BurnerKind = "gas"
)

// Electric says whether the burner has no flame; nothing is known of one without
// a kind.
func (k BurnerKind) Electric() bool { return k == Induction || k == Coil || k == Radiant }

// BurnerKinds lists them as they are offered.
var BurnerKinds = []BurnerKind{Coil, Radiant, Induction, Gas}

// Rehearsal is one trial boil on the burner, lid on, from the tap to the boil.
type Rehearsal struct {
	Water measure.Volume      `json:"water"`
	From  measure.Temperature `json:"from"`
	Took  measure.Duration    `json:"took"`
}

// Given says whether all three of a rehearsal are entered.
func (r Rehearsal) Given() bool { return r.Water.Given() && r.From.Given() && r.Took.Given() }
