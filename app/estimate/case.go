package estimate

import (
	"math"

	"example.org/kettleside/app/heat"
)

// Heating is how a load is heated.
type Heating int

const (
	NotHeated Heating = iota
	InWater
	InSteam
)

// Case is everything that the estimates of one batch depend on. It can be
// compared, so that what was worked out once can be remembered.
type Case struct {
	Food  heat.Composition // zero: nothing can be estimated
	Piece Piece            // zero: no size is known
	BoilC float64          // boiling point here

	Heating  Heating
	Loads    float64    // fillings of the kettle
	LoadKg   float64    // each; 0: not known
	MostKg   float64    // the largest load worth asking for
	WaterKg  float64    // in the kettle for one load; of a steamer under the basket; 0: not known
	BasketM2 float64    // area of a steaming basket; 0: not known
	PowerW   heat.Guess // burner power into the water less losses; zero: not known
	StartC   heat.Guess // vegetables before they go in
	TapC     float64    // cold water from the tap
	BlanchS  float64    // published time here, the shorter end; 0: none

	ChillS      float64 // published time in the bath, the shorter end; 0: none
	BathWaterKg float64 // cold water in the bath; 0: not known
	BathIceKg   float64 // ice by the rule, for the whole batch
	BathEndC    float64 // the bath should end so cold

	Enzyme Enzyme // zero: no published data

	Pack     heat.Pack // its film is guessed here; zero: not known
	PackedC  float64   // its food when it goes into the freezer
	FreezerC [2]float64
	CoreC    float64 // frozen through: the core is so cold
}

// Piece is the form of a piece and its half thickness or radius.
type Piece struct {
	Shape heat.Shape
	SizeM heat.Guess
}

// Enzyme is an enzyme of one or two fractions, as package heat has it, in a
// form that can be compared; a fraction without a share is none.
type Enzyme struct {
	Fractions   [2]heat.Fraction
	LowC, HighC float64
	WithLag     bool
}

func (e Enzyme) inactivation() (heat.Inactivation, bool) {
	i := heat.Inactivation{LowC: e.LowC, HighC: e.HighC, WithLag: e.WithLag}
	for _, f := range e.Fractions {
		if f.Share > 0 {
			i.Fractions = append(i.Fractions, f)
		}
	}
	return i, len(i.Fractions) > 0
}

// Results is what could be estimated. A part that is nil lacks an input.
type Results struct {
	Kettle   *Kettle
	Steam    *Steam
	Bath     *Bath
	Freezing *Freezing

	// Outside is the first input that lies outside the range of the model, of
	// type *heat.RangeError or *heat.UnreachableError; its part is nil then.
	Outside error
}

// Course is how temperatures go over time: all slices have one length.
type Course struct {
	AfterS        []float64
	WaterC        []float64 // of water, or of the air in a freezer
	CentreC, Mean []float64 // of a piece or a pack, °C
}

// Work estimates everything that a case has the inputs for.
func Work(c Case) Results {
	var r Results
	note := func(err error) bool {
		if err != nil && r.Outside == nil {
			r.Outside = err
		}
		return err == nil
	}
	var blanch *heat.Blanch // as far as it could be followed
	liftS := 0.0
	if c.kettleKnown() {
		if k, err := c.kettle(); note(err) {
			r.Kettle, blanch, liftS = k, &k.blanch, k.LiftS
		}
	}
	if c.steamKnown() {
		if s, err := c.steam(); note(err) {
			r.Steam, blanch, liftS = s, &s.blanch, c.BlanchS
			if s.Layers > 0 { // into the bath one layer at a time
				c.LoadKg, c.Loads = c.LoadKg*c.Loads/s.Layers, s.Layers
			}
		}
	}
	if c.bathKnown() {
		if b, err := c.bath(blanch, liftS); note(err) {
			r.Bath = b
		}
	}
	if c.packKnown() {
		if f, err := c.freezing(); note(err) {
			r.Freezing = f
		}
	}
	return r
}

// foodKnown says whether there is a composition to work with.
func (c Case) foodKnown() bool { return c.Food != (heat.Composition{}) }

// piece is the likely piece in surroundings of a film, for temperatures between
// the two.
func (c Case) piece(filmWPerM2K, lowC, highC float64) (heat.Piece, error) {
	return c.Food.Piece(c.Piece.Shape, c.Piece.SizeM.Likely, 0, filmWPerM2K, lowC, highC)
}

// course follows something for seconds in steps, from 0 to the end, closer
// together where everything still changes fast.
func course(endS float64, steps int, at func(afterS float64) (waterC, centreC, meanC float64)) Course {
	var c Course
	for i := range steps + 1 {
		share := float64(i) / float64(steps)
		s := endS * share * math.Sqrt(share)
		water, centre, mean := at(s)
		c.AfterS, c.WaterC = append(c.AfterS, s), append(c.WaterC, water)
		c.CentreC, c.Mean = append(c.CentreC, centre), append(c.Mean, mean)
	}
	return c
}
