package estimate

import (
	"math"

	"example.org/kettleside/app/heat"
)

// Steam is what one layer does over boiling water.
type Steam struct {
	CentreC  heat.Guess // at the end of the published time: coldest, likely, warmest
	MeanC    float64
	LayerKg  float64 // most that lies in a single layer; 0: cannot be said
	Layers   float64 // fillings of the basket for the batch; 0: cannot be said
	AwayKg   float64 // water boiled away in the longest published time, at the strongest; 0: cannot be said
	DryS     float64 // until the kettle has boiled dry; 0: cannot be said
	Doneness *heat.Doneness
	Course   Course
	Through  Moments // through the piece

	loadKg, loads float64 // what lies in the basket at once
	blanch        heat.Blanch
}

func (c Case) steamKnown() bool {
	return c.Heating == InSteam && c.foodKnown() && c.Piece.Shape != 0 && c.LoadKg > 0 && c.BlanchS > 0
}

func (c Case) steam() (*Steam, error) {
	s := &Steam{loadKg: c.LoadKg, loads: c.Loads}
	if err := c.layer(s); err != nil {
		return nil, err
	}
	if err := c.steamed(s); err != nil {
		return nil, err
	}
	if err := c.boilAway(s); err != nil { // no matter for the pieces
		s.AwayKg, s.DryS = 0, 0
	}
	return s, nil
}

// layer is what lies in the basket at once, where its size is known and the
// pieces are no leaves or shreds.
func (c Case) layer(s *Steam) error {
	if c.BasketM2 == 0 || c.Piece.SizeM.Likely < smallM {
		return nil
	}
	density, err := c.Food.DensityKgPerM3(20, 0)
	if err != nil {
		return err
	}
	s.LayerKg, err = heat.Steamer{BasketM2: c.BasketM2}.LayerKg(2*c.Piece.SizeM.Likely, density, Covered)
	if err != nil {
		return err
	}
	batchKg := c.LoadKg * c.Loads
	s.Layers = math.Ceil(batchKg/s.LayerKg - 1e-9)
	s.loadKg, s.loads = batchKg/s.Layers, s.Layers
	return nil
}

// smallM is the half thickness below which pieces are leaves or shreds: these
// lie over one another in what people call a layer, and how many cannot be
// said.
const smallM = 0.002

// steamed follows a layer from the lid to the end of the published time.
func (c Case) steamed(s *Steam) error {
	after := func(sizeM, film, startC float64) (heat.Blanch, error) {
		piece, err := c.Food.Piece(c.Piece.Shape, sizeM, 0, film, startC, c.BoilC)
		if err != nil {
			return heat.Blanch{}, err
		}
		return heat.Steamer{BoilC: c.BoilC}.Blanch(piece, s.loadKg, startC)
	}
	size := c.Piece.SizeM
	cold, err := after(size.High, steamFilm.Low, c.StartC.Low)
	likely, err2 := after(size.Likely, steamFilm.Likely, c.StartC.Likely)
	warm, err3 := after(size.Low, steamFilm.High, c.StartC.High)
	if err := firstOf(err, err2, err3); err != nil {
		return err
	}
	s.blanch = likely
	b := &s.blanch
	s.CentreC = heat.Guess{Low: cold.PieceC(c.BlanchS, 0), Likely: b.PieceC(c.BlanchS, 0), High: warm.PieceC(c.BlanchS, 0)}
	s.MeanC = b.MeanC(c.BlanchS)
	s.Course = course(c.BlanchS, steps, func(at float64) (float64, float64, float64) {
		return c.BoilC, b.PieceC(at, 0), b.MeanC(at)
	})
	s.Through = moments(b, s.Course, c.BoilC)
	s.Doneness, err = c.doneness(b, c.BlanchS)
	return err
}

// boilAway is the water that goes, where burner and water are known. The burner
// is taken at its strongest: the kettle must not boil dry.
func (c Case) boilAway(s *Steam) error {
	if c.PowerW.Likely == 0 || c.WaterKg == 0 {
		return nil
	}
	pot := heat.Steamer{WaterKg: c.WaterKg, PowerW: c.PowerW.High}
	var err, err2 error
	s.AwayKg, err = pot.BoiledAwayKg(c.LongestS)
	s.DryS, err2 = pot.DryAfterS()
	return firstOf(err, err2)
}
