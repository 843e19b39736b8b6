package estimate

import (
	"math"

	"example.org/kettleside/app/heat"
)

// Bath is what the ice bath does with the batch.
type Bath struct {
	// IceKg is the ice by heat balance: it takes the water and all loads down
	// to Case.BathEndC and has melted then. All pieces are counted as hot as
	// the boil, which is a little too much for thick ones.
	IceKg float64

	// The last load, in a bath with the ice of the case that has cooled the
	// loads before it, one after the other.
	MarkS  [2]float64 // until the centre is at Case.MarksC; +Inf where this bath does not get there
	EndC   float64    // of the centre at the end of the published chill
	RestC  float64    // what bath and pieces come to in the end
	Course Course     // from the lift on
}

func (c Case) bathKnown() bool {
	return c.ChillS > 0 && c.foodKnown() && c.Piece.Shape != 0 && c.LoadKg > 0 && c.BathWaterKg > 0
}

// bath chills the last load; blanch is nil where it could not be followed, and
// the pieces are then taken to be as hot as the boil throughout.
func (c Case) bath(blanch *heat.Blanch, liftS float64) (*Bath, error) {
	piece, err := c.piece(bathFilm, 0, c.BoilC)
	if err != nil {
		return nil, err
	}
	b := &Bath{}
	if b.IceKg, err = heat.IceNeededKg(c.LoadKg*c.Loads, piece.HeatJPerKgK, c.BoilC, c.BathWaterKg, c.TapC, c.BathEndC); err != nil {
		return nil, err
	}
	before := heat.Bath{WaterKg: c.BathWaterKg, WaterC: c.TapC, IceKg: c.BathIceKg}
	for range int(c.Loads) - 1 {
		before = before.After(c.LoadKg, piece.HeatJPerKgK, c.BoilC)
	}
	b.RestC = before.After(c.LoadKg, piece.HeatJPerKgK, c.BoilC).WaterC
	chill, err := before.Chill(piece, c.LoadKg, c.BoilC)
	if blanch != nil {
		chill, err = before.ChillAfter(blanch, liftS, bathFilm)
	}
	if err != nil {
		return nil, err
	}
	for i, tempC := range c.MarksC {
		s, ok := chill.CentreReachesS(tempC)
		if !ok {
			s = math.Inf(1)
		}
		b.MarkS[i] = s
	}
	b.EndC = chill.PieceC(c.ChillS, 0)
	endS := c.ChillS
	if cool := b.MarkS[0]; !math.IsInf(cool, 1) {
		endS = min(max(endS, 1.1*cool), 4*c.ChillS)
	}
	b.Course = course(endS, steps, func(s float64) (float64, float64, float64) {
		return chill.WaterC(s), chill.PieceC(s, 0), chill.MeanC(s)
	})
	return b, nil
}
