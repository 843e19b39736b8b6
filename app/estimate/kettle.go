package estimate

import "example.org/kettleside/app/heat"

// Kettle is what one load does in boiling water.
type Kettle struct {
	FirstBoilS   heat.Guess // from cold tap water to the boil: quickest, likely, slowest
	BackS        float64    // from the lid to the return of the boil; 0 where it never stops
	DipC, DipAtS float64    // the coldest the water gets, and when
	LiftS        float64    // the published time after the return
	CentreC      float64    // of a piece at the lift
	MeanC        float64
	LargestKg    float64 // largest load in a full kettle that is back within Case.WithinS, at most Case.MostKg
	Spread       heat.Spread
	Doneness     *heat.Doneness // nil where no enzyme is known
	Course       Course         // from the lid to the lift
	Through      Moments        // through the piece

	blanch heat.Blanch
}

const (
	draws = 1_000 // kitchens in a spread
	seed  = 1
	steps = 72 // of a course
)

func (c Case) kettleKnown() bool {
	return c.Heating == InWater && c.foodKnown() && c.Piece.Shape != 0 && c.LoadKg > 0 && c.WaterKg > 0 && c.PowerW.Likely > 0 && c.BlanchS > 0
}

func (c Case) kettle() (*Kettle, error) {
	piece, err := c.piece(boilFilm.Likely, c.StartC.Likely, c.BoilC)
	if err != nil {
		return nil, err
	}
	k, err := c.follow(piece)
	if err != nil {
		return nil, err
	}
	kitchens := heat.Kitchens{Kettle: c.pot(c.WaterKg), Piece: piece, LoadKg: c.LoadKg, BlanchS: c.BlanchS, WithinS: c.WithinS,
		PowerW: c.PowerW, SizeM: c.Piece.SizeM, FilmWPerM2K: boilFilm, StartC: c.StartC}
	var errs [3]error
	k.FirstBoilS, errs[0] = c.firstBoil()
	k.LargestKg, errs[1] = c.pot(c.FullKg).LargestLoadKg(piece, c.StartC.Likely, c.WithinS, c.MostKg)
	k.Spread, errs[2] = kitchens.Spread(draws, seed)
	if err := firstOf(errs[:]...); err != nil {
		return nil, err
	}
	return k, nil
}

// pot is so much water at the boil on the likely burner.
func (c Case) pot(waterKg float64) heat.Kettle {
	return heat.Kettle{BoilC: c.BoilC, WaterKg: waterKg, PowerW: c.PowerW.Likely, WaterC: c.BoilC}
}

// follow is the likely load from the lid to the lift.
func (c Case) follow(piece heat.Piece) (*Kettle, error) {
	k := &Kettle{}
	var err error
	if k.blanch, err = c.pot(c.WaterKg).Blanch(piece, c.LoadKg, c.StartC.Likely); err != nil {
		return nil, err
	}
	b := &k.blanch
	k.BackS, k.DipC, k.DipAtS = b.BackS, b.DipC, b.DipAtS
	k.LiftS = b.BackS + c.BlanchS
	k.CentreC, k.MeanC = b.PieceC(k.LiftS, 0), b.MeanC(k.LiftS)
	k.Course = course(k.LiftS, steps, func(s float64) (float64, float64, float64) {
		return b.WaterC(s), b.PieceC(s, 0), b.MeanC(s)
	})
	k.Through = moments(b, k.Course, c.BoilC)
	k.Doneness, err = c.doneness(b, k.LiftS)
	return k, err
}

// firstBoil is the time from the tap to the boil: the strongest burner is the
// quickest.
func (c Case) firstBoil() (heat.Guess, error) {
	quick, err := heat.FirstBoilS(c.WaterKg, 0, c.TapC, c.BoilC, c.PowerW.High)
	likely, err2 := heat.FirstBoilS(c.WaterKg, 0, c.TapC, c.BoilC, c.PowerW.Likely)
	slow, err3 := heat.FirstBoilS(c.WaterKg, 0, c.TapC, c.BoilC, c.PowerW.Low)
	return heat.Guess{Low: quick, Likely: likely, High: slow}, firstOf(err, err2, err3)
}

func (c Case) doneness(b *heat.Blanch, liftS float64) (*heat.Doneness, error) {
	enzyme, ok := c.Enzyme.inactivation()
	if !ok {
		return nil, nil
	}
	d, err := b.Doneness(enzyme, liftS)
	return &d, err
}
