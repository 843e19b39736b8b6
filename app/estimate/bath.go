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

	// The last load, in a bath with the ice of the rule that has cooled the
	// loads before it.
	To50S, To40S float64 // until the centre is at 50 and 40 °F; +Inf where this bath does not get there
	IceGoneS     float64 // until its last ice has melted; 0: gone before, +Inf: some is left
	EndC         float64 // of the centre at the end of the published chill
	RestC        float64 // what bath and pieces come to in the end
	Course       Course  // from the lift on
}

// The two marks on the way to cold: 50 and 40 °F.
const (
	coolC = 10.0
	coldC = 40.0 / 9
)

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
	batchKg := c.LoadKg * c.Loads
	if b.IceKg, err = heat.IceNeededKg(batchKg, piece.HeatJPerKgK, c.BoilC, c.BathWaterKg, c.TapC, c.BathEndC); err != nil {
		return nil, err
	}
	water := heat.Bath{WaterKg: c.BathWaterKg, WaterC: c.TapC, IceKg: c.BathIceKg}
	before := water.After(batchKg-c.LoadKg, piece.HeatJPerKgK, c.BoilC)
	chill, err := before.Chill(piece, c.LoadKg, c.BoilC)
	if blanch != nil {
		chill, err = before.ChillAfter(blanch, liftS, bathFilm)
	}
	if err != nil {
		return nil, err
	}
	reaches := func(tempC float64) float64 {
		if s, ok := chill.CentreReachesS(tempC); ok {
			return s
		}
		return math.Inf(1)
	}
	b.To50S, b.To40S, b.IceGoneS = reaches(coolC), reaches(coldC), chill.IceGoneS
	b.EndC, b.RestC = chill.PieceC(c.ChillS, 0), water.After(batchKg, piece.HeatJPerKgK, c.BoilC).WaterC
	endS := c.ChillS
	if !math.IsInf(b.To50S, 1) {
		endS = min(max(endS, 1.1*b.To50S), 4*c.ChillS)
	}
	b.Course = course(endS, steps, func(s float64) (float64, float64, float64) {
		return chill.WaterC(s), chill.PieceC(s, 0), chill.MeanC(s)
	})
	return b, nil
}
