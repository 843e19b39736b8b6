package reference

import (
	"math"
	"slices"
)

// What the heat model needs to know of a crop, a cut piece, an enzyme and a
// container. These rows explain and size; nothing that people are told to do
// rests on them.

// Composition is what a crop is made of, raw, in percent of its weight; the six
// parts add up to 100 within what food tables round away.
type Composition struct {
	Crop string // Crop.ID
	Item string // the row of the source: number and name

	WaterPct, ProteinPct, FatPct float64
	CarbohydratePct              float64 // without the fiber, which food tables print with it
	FiberPct, AshPct             float64
	Source                       string
	Standing                     Standing

	// FreezingC is where the first ice forms, °C, below 0; 0 means that no
	// source gives one, and then FreezingSource and FreezingStanding are empty.
	FreezingC        float64
	FreezingSource   string
	FreezingStanding Standing

	StandIn string // Crop.ID of the crop whose kind of values these are; "" where they are the crop's own
	Note    string
}

// SizeBasis says what an estimated size rests on.
type SizeBasis string

const (
	FromTheCut  SizeBasis = "from the cut"  // inches printed in the treatment's cut or size; Note says which ends are ours
	FromASource SizeBasis = "from a source" // inches printed elsewhere: Source names the page
	OurGuess    SizeBasis = "our guess"     // no page was found that prints it
)

// PieceShape is the simple body that a piece stands for.
type PieceShape string

const (
	SlabPiece     PieceShape = "slab"     // heated from both faces
	CylinderPiece PieceShape = "cylinder" // long and round
	SpherePiece   PieceShape = "sphere"
)

// Piece is the size of what lies in the kettle in a timed treatment. Every
// value is an estimate, also one that starts from printed inches: kitchens cut
// unevenly and vegetables are no spheres.
//
// Sizes are half the thickness of a slab and the radius of a cylinder or
// sphere. Cubes are spheres: half the side at the low end (as much surface per
// volume), 1.155 times half the side as likely (the centre warms as late), the
// cube's volume at the high end. Leaves are single leaves; those that mat
// together act as one thick slab, which no row counts in.
type Piece struct {
	Treatment                     string // Treatment.ID
	Shape                         PieceShape
	SizeLowMm, SizeMm, SizeHighMm float64 // low, likely, high
	Basis                         SizeBasis
	Source                        string   // Source.ID with FromASource, else ""
	Standing                      Standing // of Source; "" where there is none
	Note                          string
}

// EnzymePart is one part of an enzyme that heat destroys at its own rate, first
// order, with the numbers as they were published: a rate or a D value, an
// activation energy or a z value; the others are 0. An error is the printed
// plus or minus, 0 where none is printed.
type EnzymePart struct {
	Name                  string  // "heat-labile", "heat-resistant", or "whole"
	Share                 float64 // of the enzyme, 0 to 1
	RatePerMin, RateError float64 // at RefC
	DMin, DError          float64 // minutes at RefC after which a tenth is left
	RefC                  float64
	EaKJPerMol, EaErrorKJ float64
	ZC, ZErrorC           float64
	Ours                  string // what of these numbers is our own working or assumption, in words, or ""
}

// PerMin is the rate at RefC, also where a D value was published.
func (p EnzymePart) PerMin() float64 {
	if p.DMin > 0 {
		return math.Ln10 / p.DMin
	}
	return p.RatePerMin
}

// Enzyme is one study of how an enzyme is destroyed by heat. Minutes were set by
// tests of quality; this only lets a model show what heat does.
type Enzyme struct {
	ID    string // "corn-peroxidase"
	Crops []string
	Name  string       // "peroxidase"
	Parts []EnzymePart // shares add up to 1

	// LowC and HighC are the temperatures between which it was measured; both
	// are 0 where what was read does not say.
	LowC, HighC float64
	// WithLag says that the rates may include the time a piece took to warm:
	// true for pieces unless the source says that it was taken out. Used in a
	// model of warming they count it twice.
	WithLag    bool
	MeasuredOn string // what was heated
	StandIn    bool   // another plant than the crops, or another kind of them, was measured
	Limits     string // one sentence: what the numbers can say and what they cannot
	Source     string
	Standing   Standing
}

// Container is the inside of a typical container, for the estimate whether a
// headspace holds.
type Container struct {
	ID       string
	Name     string  // "pint freezer box"
	Kind     string  // "box", "jar", "bag"
	Size     string  // "pint", "quart"
	Mouth    Mouth   // of a jar; "" for box and bag
	VolumeML float64 // to the brim; of a bag what it is sold as
	HeightMm float64 // to the brim; of a bag from the bottom to the seal

	BottomShare   float64 // box: width of the bottom over that of the brim
	ShoulderShare float64 // jar: where the shoulder begins, of the height; 1 for none
	NeckShare     float64 // jar: where the neck begins, of the height
	MouthShare    float64 // jar: width of the mouth over that of the body

	WidthMm, ThicknessMm float64 // bag: lying flat and filled

	Basis    SizeBasis // OurGuess or FromASource
	Source   string    // Source.ID with FromASource, else ""
	Standing Standing
	Note     string
}

// Composition returns what a crop is made of; false for a crop without a row.
func (t *Table) Composition(crop string) (Composition, bool) {
	return find(t.Compositions, func(c *Composition) bool { return c.Crop == crop })
}

// Piece returns the size of a piece in a timed treatment; false for a treatment
// without minutes.
func (t *Table) Piece(treatment string) (Piece, bool) {
	return find(t.Pieces, func(p *Piece) bool { return p.Treatment == treatment })
}

// Enzymes returns the studies that speak for a crop, in table order; none where
// no usable one was found.
func (t *Table) Enzymes(crop string) []Enzyme {
	var out []Enzyme
	for i := range t.Kinetics {
		if slices.Contains(t.Kinetics[i].Crops, crop) {
			out = append(out, t.Kinetics[i])
		}
	}
	return out
}

// ContainerFor returns the typical container of a kind ("box", "jar", "bag") and
// size ("pint", "quart"); the mouth counts for jars only.
func (t *Table) ContainerFor(kind, size string, mouth Mouth) (Container, bool) {
	return find(t.Containers, func(c *Container) bool {
		return c.Kind == kind && c.Size == size && (c.Mouth == "" || c.Mouth == mouth)
	})
}
