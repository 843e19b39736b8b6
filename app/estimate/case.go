package estimate

import (
	"math"
	"sync"

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
	WaterKg  float64    // in the kettle for one load; of a steamer under the basket; 0: not known
	FullKg   float64    // water in the kettle when it is full
	MostKg   float64    // the largest load that the rule of water lets into a full kettle
	BasketM2 float64    // area of a steaming basket; 0: not known
	PowerW   heat.Guess // burner power into the water less losses; zero: not known
	StartC   heat.Guess // vegetables before they go in
	TapC     float64    // cold water from the tap
	BlanchS  float64    // published time here, the shorter end; 0: none
	LongestS float64    // its longer end
	WithinS  float64    // the rule's time for the return of the boil

	ChillS      float64    // published time in the bath, the shorter end; 0: none
	BathWaterKg float64    // cold water in the bath; 0: not known
	BathIceKg   float64    // ice for the whole batch
	BathEndC    float64    // the bath should end so cold
	MarksC      [2]float64 // when is a centre down to these?

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

// Results is what could be estimated. A part that is nil lacks an input, or its
// input lies outside the range of the model: then Outside says why.
type Results struct {
	Kettle   *Kettle
	Steam    *Steam
	Bath     *Bath
	Freezing *Freezing
	Outside  Outside
}

// Outside are the inputs that lie outside the range of the model, part by part:
// a *heat.RangeError or a *heat.UnreachableError, nil where there is none.
type Outside struct{ Kettle, Steam, Bath, Freezing error }

// Course is how temperatures go over time: all slices have one length.
type Course struct {
	AfterS  []float64
	AroundC []float64 // water, steam, or the air of a freezer
	CentreC []float64 // the middle of a piece or a pack
	MeanC   []float64 // as a mean over it
}

// Work estimates everything that a case has the inputs for.
func Work(c Case) Results { return work(c, Case.freezing) }

// work is Work, with a pack frozen in its own way.
func work(c Case, freeze func(Case) (*Freezing, error)) Results {
	var r Results
	var freezing sync.WaitGroup // beside the rest: it follows from none of it
	if c.packKnown() {
		pack := c
		freezing.Go(func() { r.Freezing, r.Outside.Freezing = freeze(pack) })
	}
	var blanch *heat.Blanch // as far as it could be followed
	liftS := 0.0
	if c.kettleKnown() {
		r.Kettle, r.Outside.Kettle = c.kettle()
		if r.Kettle != nil {
			blanch, liftS = &r.Kettle.blanch, r.Kettle.LiftS
		}
	}
	if c.steamKnown() {
		r.Steam, r.Outside.Steam = c.steam()
		if r.Steam != nil {
			blanch, liftS = &r.Steam.blanch, c.BlanchS
			c.LoadKg, c.Loads = r.Steam.loadKg, r.Steam.loads // one layer at a time into the bath
		}
	}
	if c.bathKnown() {
		r.Bath, r.Outside.Bath = c.bath(blanch, liftS)
	}
	freezing.Wait()
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
func course(endS float64, steps int, at func(afterS float64) (aroundC, centreC, meanC float64)) Course {
	var c Course
	for i := range steps + 1 {
		share := float64(i) / float64(steps)
		s := endS * share * math.Sqrt(share)
		around, centre, mean := at(s)
		c.AfterS, c.AroundC = append(c.AfterS, s), append(c.AroundC, around)
		c.CentreC, c.MeanC = append(c.CentreC, centre), append(c.MeanC, mean)
	}
	return c
}

// firstOf is the first error that there is.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
