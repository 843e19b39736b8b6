package heat

import "math"

const (
	// fusionJPerKg is the heat that melts ice at 0 °C: 333.43 kJ/kg, from IAPWS
	// R10-06 (ice, read) and IAPWS-95 (liquid, computed).
	fusionJPerKg = 333430.0
	// coldWaterJPerKgK is the specific heat of water between 0 and 30 °C,
	// IAPWS-95 (computed): 4.18 to 4.22 kJ/(kg K).
	coldWaterJPerKgK = 4190.0
)

// IceNeededKg is the ice at 0 °C that takes waterKg from waterC and massKg of
// pieces of specific heat heatJPerKgK from piecesC down to endC, all of it
// melted then: the heat balance that stands beside the rule of a pound a
// pound. Nothing is added for what the room gives. endC 0 to 30 °C.
func IceNeededKg(massKg, heatJPerKgK, piecesC, waterKg, waterC, endC float64) (float64, error) {
	if err := first(
		within("pieces", massKg, 0, 1000, "kg"), within("specific heat", heatJPerKgK, 1500, 4300, "J/(kg K)"),
		within("temperature of the pieces", piecesC, endC, 102, "°C"), within("water", waterKg, 0, 2000, "kg"),
		within("water temperature", waterC, 0, 60, "°C"), within("end temperature", endC, 0, 30, "°C"),
	); err != nil {
		return 0, err
	}
	heatJ := massKg*heatJPerKgK*(piecesC-endC) + waterKg*coldWaterJPerKgK*(waterC-endC)
	return math.Max(heatJ, 0) / (fusionJPerKg + coldWaterJPerKgK*endC), nil
}

// Bath is a stirred ice bath before the pieces go in.
type Bath struct {
	WaterKg   float64 // 0.2 to 500
	WaterC    float64 // as it comes from the tap, or as loads before have left it, 0 to 90 °C
	IceKg     float64 // 0 to 500
	RoomGainW float64 // heat from the room, 0 to 500 W
}

// Check returns a *RangeError for the first value that is out of range.
func (b Bath) Check() error {
	return first(within("water", b.WaterKg, 0.2, 500, "kg"), within("water temperature", b.WaterC, 0, 90, "°C"),
		within("ice", b.IceKg, 0, 500, "kg"), within("heat from the room", b.RoomGainW, 0, 500, "W"))
}

// Mixed is the bath after the ice has cooled the water: its temperature, the
// ice that is left and all of its water.
func (b Bath) Mixed() (tempC, iceKg, waterKg float64) {
	melts := b.WaterKg * coldWaterJPerKgK * b.WaterC / fusionJPerKg
	if melts < b.IceKg {
		return 0, b.IceKg - melts, b.WaterKg + melts
	}
	all := b.WaterKg + b.IceKg
	return (b.WaterKg*coldWaterJPerKgK*b.WaterC - b.IceKg*fusionJPerKg) / (all * coldWaterJPerKgK), 0, all
}

// After is the bath once massKg of pieces of specific heat heatJPerKgK that went
// in at piecesC have come to its temperature and were lifted out.
func (b Bath) After(massKg, heatJPerKgK, piecesC float64) Bath {
	tempC, iceKg, waterKg := b.Mixed()
	pieceJPK, waterJPK := massKg*heatJPerKgK, waterKg*coldWaterJPerKgK
	b.WaterKg, b.WaterC, b.IceKg = waterKg, tempC, iceKg
	if melts := pieceJPK * piecesC / fusionJPerKg; iceKg > 0 && melts < iceKg {
		b.WaterKg, b.IceKg = waterKg+melts, iceKg-melts
		return b
	}
	heatJ := pieceJPK*piecesC + waterJPK*tempC - iceKg*fusionJPerKg // over 0 °C
	b.WaterKg, b.IceKg = waterKg+iceKg, 0
	b.WaterC = heatJ / (pieceJPK + b.WaterKg*coldWaterJPerKgK)
	return b
}

// Chill is what one load does in a bath: at 0 °C while ice is left and the
// bath is stirred, then warming with it. It is an estimate in the same sense as
// Blanch.
type Chill struct {
	IceGoneS float64 // seconds until the last ice has melted, +Inf where it lasts

	massKg, heatJPerKgK float64
	startMeanC          float64
	startAt             func(x float64) float64
	iceKg, gainW        float64
	iced                phase // while there is ice
	bare                phase // without
}

// Chill works out massKg of pieces that start at startC throughout.
func (b Bath) Chill(p Piece, massKg, startC float64) (Chill, error) {
	return b.chill(p, massKg, field{base: startC}, startC, func(float64) float64 { return startC })
}

// ChillAfter works out the load of a blanch lifted after liftS seconds into
// this bath: it starts with the profile that the blanch left in the pieces.
// The film of the bath replaces that of the boil.
func (b Bath) ChillAfter(blanch *Blanch, liftS, filmWPerM2K float64) (Chill, error) {
	p := blanch.piece
	p.FilmWPerM2K = filmWPerM2K
	var now state
	return b.chill(p, blanch.massKg, blanch.profile(liftS, &now), blanch.MeanC(liftS), func(x float64) float64 { return blanch.PieceC(liftS, x) })
}

func (b Bath) chill(p Piece, massKg float64, start field, meanC float64, startAt func(float64) float64) (Chill, error) {
	if err := first(b.Check(), p.Check(), within("load", massKg, 0.005, 200, "kg"), within("start temperature", meanC, 0, 102, "°C")); err != nil {
		return Chill{}, err
	}
	c := Chill{massKg: massKg, heatJPerKgK: p.HeatJPerKgK, gainW: b.RoomGainW, startMeanC: meanC, startAt: startAt}
	mixedC, iceKg, waterKg := b.Mixed()
	c.iceKg = iceKg
	var now state
	if iceKg > 0 {
		c.iced.scaleS = p.scaleS()
		c.iced.solve(p.Shape, p.biot(), 0, 0, curveModes)
		c.iced.set(start, 0)
		c.IceGoneS = c.iceGoneS()
		if math.IsInf(c.IceGoneS, 1) {
			return c, nil
		}
		now = c.iced.after(&c.iced.begin, c.IceGoneS/c.iced.scaleS)
		start, mixedC, waterKg = c.iced.of(&now, 0), 0, waterKg+iceKg
	}
	capacity := waterKg * coldWaterJPerKgK
	c.bare.scaleS = p.scaleS()
	c.bare.solve(p.Shape, p.biot(), massKg*p.HeatJPerKgK/capacity, b.RoomGainW*c.bare.scaleS/capacity, curveModes)
	c.bare.set(start, mixedC)
	return c, nil
}

// meltedJ is the heat that the ice has taken after so many seconds of ice.
func (c *Chill) meltedJ(afterS float64) float64 {
	return c.massKg*c.heatJPerKgK*(c.startMeanC-c.iced.meanC(afterS)) + c.gainW*afterS
}

// iceGoneS finds when the melted heat is that of all the ice: it only grows.
func (c *Chill) iceGoneS() float64 {
	need := c.iceKg * fusionJPerKg
	high := c.iced.scaleS
	for c.meltedJ(high) < need {
		if high *= 2; high > 1e7 { // four months: the ice outlasts any class
			return math.Inf(1)
		}
	}
	low := 0.0
	for high-low > 1e-9*high {
		if mid := 0.5 * (low + high); c.meltedJ(mid) < need {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

func (c *Chill) icy(afterS float64) bool { return c.iceKg > 0 && afterS < c.IceGoneS }

// PieceC is the temperature of a piece at depth x: 0 its centre, 1 its surface.
func (c *Chill) PieceC(afterS, x float64) float64 { return c.pieceC(afterS, x, c.startAt(x)) }

// pieceC is PieceC at a depth that was at startC.
func (c *Chill) pieceC(afterS, x, startC float64) float64 {
	if c.icy(afterS) {
		return c.iced.pieceC(afterS, x, startC)
	}
	if c.iceKg > 0 {
		startC = c.iced.pieceC(c.IceGoneS, x, startC)
	}
	return c.bare.pieceC(afterS-c.IceGoneS, x, startC)
}

// MeanC is the temperature of a piece averaged over its volume.
func (c *Chill) MeanC(afterS float64) float64 {
	if c.icy(afterS) {
		return c.iced.meanC(afterS)
	}
	return c.bare.meanC(afterS - c.IceGoneS)
}

// WaterC is the temperature of the bath.
func (c *Chill) WaterC(afterS float64) float64 {
	if c.icy(afterS) {
		return 0
	}
	return c.bare.waterC(afterS - c.IceGoneS)
}

// IceLeftKg is the ice that is left.
func (c *Chill) IceLeftKg(afterS float64) float64 {
	if !c.icy(afterS) {
		return 0
	}
	return c.iceKg - c.meltedJ(math.Max(afterS, 0))/fusionJPerKg
}

// CentreReachesS is the first second at which the centre is down to tempC, over
// 0 °C; false where the bath does not bring it down so far.
func (c *Chill) CentreReachesS(tempC float64) (float64, bool) {
	startC := c.startAt(0)
	above := func(afterS float64) bool { return c.pieceC(afterS, 0, startC) > tempC }
	const finest = 1.0 / 64 // of the piece's own time scale: nothing happens faster
	scaleS := math.Max(c.iced.scaleS, c.bare.scaleS)
	endS := c.settledS()
	for low, high := 0.0, 0.0; low <= endS; {
		if !above(high) {
			for range 40 {
				if mid := 0.5 * (low + high); above(mid) {
					low = mid
				} else {
					high = mid
				}
			}
			return high, true
		}
		low, high = high, high+math.Max(finest*scaleS, high/32)
	}
	return 0, false
}

// settledS is when pieces and bath have come to one temperature: the slowest
// mode has faded to e^−20. In ice they have come to 0 °C long before.
func (c *Chill) settledS() float64 {
	faded := func(p *phase) float64 { return 20 / (p.z[0] * p.z[0]) * p.scaleS }
	switch {
	case c.iceKg > 0 && math.IsInf(c.IceGoneS, 1):
		return faded(&c.iced)
	case c.iceKg > 0:
		return c.IceGoneS + faded(&c.bare)
	}
	return faded(&c.bare)
}
