package heat

import "math"

// BurnerKind is how a burner makes heat.
type BurnerKind string

const (
	Induction BurnerKind = "induction"
	Coil      BurnerKind = "coil"    // electric coil or cast plate
	Radiant   BurnerKind = "radiant" // electric under glass
	Gas       BurnerKind = "gas"
)

// Share is a guess with its range.
type Share struct{ Low, Likely, High float64 }

// IntoThePot is the share of a burner's rating that reaches a wide, filled
// kettle. Read second hand: gas 0.40, resistance 0.74, induction 0.84 (US
// Department of Energy figures); tests of 2014 (Sweeney et al., ACEEE; from
// memory) give induction 0.77, coil 0.42 with a small pan and 0.83 with a large
// one. The ranges are this program's judgement of these.
func (k BurnerKind) IntoThePot() (Share, bool) {
	switch k {
	case Induction:
		return Share{0.75, 0.82, 0.90}, true
	case Coil:
		return Share{0.42, 0.70, 0.83}, true
	case Radiant:
		return Share{0.55, 0.72, 0.80}, true
	case Gas:
		return Share{0.28, 0.38, 0.45}, true
	}
	return Share{}, false
}

// heatToBoilJPerKg is the heat that takes a kilogram of water from startC to
// endC; IAPWS-95's mean specific heat between 20 and 100 °C is 4.190 kJ/(kg K)
// (computed from its table).
func heatToBoilJPerKg(startC, endC float64) float64 { return 4190 * (endC - startC) }

// RehearsalPowerW is the mean power into the water of a trial boil: waterKg
// (0.2 to 200) from startC (0 to 60) to boilC with vesselJPK of kettle, in
// seconds (30 to 14,400). Losses are inside it, so it is what sizes a batch.
func RehearsalPowerW(waterKg, vesselJPK, startC, boilC, seconds float64) (float64, error) {
	if err := first(within("water", waterKg, 0.2, 200, "kg"), within("heat capacity of the kettle", vesselJPK, 0, 50000, "J/K"),
		within("start temperature", startC, 0, 60, "°C"), within("boiling point", boilC, 60, 102, "°C"), within("time", seconds, 30, 14400, "s")); err != nil {
		return 0, err
	}
	return (waterKg*heatToBoilJPerKg(startC, boilC) + vesselJPK*(boilC-startC)) / seconds, nil
}

// FirstBoilS is how long waterKg takes from startC to boilC at powerW into the
// water, 20 to 50,000 W.
func FirstBoilS(waterKg, vesselJPK, startC, boilC, powerW float64) (float64, error) {
	if err := first(within("water", waterKg, 0.2, 500, "kg"), within("heat capacity of the kettle", vesselJPK, 0, 50000, "J/K"),
		within("start temperature", startC, 0, 60, "°C"), within("boiling point", boilC, 60, 102, "°C"), within("power", powerW, 20, 50000, "W")); err != nil {
		return 0, err
	}
	return (waterKg*heatToBoilJPerKg(startC, boilC) + vesselJPK*(boilC-startC)) / powerW, nil
}

// VaporizationJPerKg is the heat that boils water away at 1 atm, IAPWS-95:
// 2,256.5 kJ/kg.
const VaporizationJPerKg = 2.2565e6

// Steamer is a kettle with a little water under a basket.
type Steamer struct {
	WaterKg   float64 // under the basket, 0.1 to 20
	PowerW    float64 // into the water less losses, 50 to 20,000
	BasketM2  float64 // area of the basket, 0.005 to 1
	BoilC     float64
	LiftOffKg float64 // water that must stay in the kettle, 0 or more
}

// LayerKg is the most that lies in the basket in a single layer: pieces of this
// thickness and density, packed side by side with the share of the area that
// they cover (0.5 to 0.85; round pieces side by side cover about 0.7).
func (s Steamer) LayerKg(thicknessM, densityKgPerM3, covered float64) (float64, error) {
	if err := first(within("basket", s.BasketM2, 0.005, 1, "m²"), within("thickness", thicknessM, 0.0005, 0.2, "m"),
		within("density", densityKgPerM3, 200, 1500, "kg/m³"), within("covered share", covered, 0.3, 1, "of the area")); err != nil {
		return 0, err
	}
	return s.BasketM2 * thicknessM * densityKgPerM3 * covered, nil
}

// BoiledAwayKg is the water that has turned to steam after so many seconds of
// boiling: what the power makes, whether it condenses on the food or leaves.
func (s Steamer) BoiledAwayKg(seconds float64) (float64, error) {
	if err := first(within("power", s.PowerW, 50, 20000, "W"), within("time", seconds, 0, 14400, "s")); err != nil {
		return 0, err
	}
	return s.PowerW * seconds / VaporizationJPerKg, nil
}

// DryAfterS is how long the kettle steams until only LiftOffKg of water is
// left: a caution, not a treatment.
func (s Steamer) DryAfterS() (float64, error) {
	if err := first(within("power", s.PowerW, 50, 20000, "W"), within("water", s.WaterKg, 0.1, 20, "kg"), within("water that must stay", s.LiftOffKg, 0, s.WaterKg, "kg")); err != nil {
		return 0, err
	}
	return math.Max(s.WaterKg-s.LiftOffKg, 0) * VaporizationJPerKg / s.PowerW, nil
}

// Blanch heats pieces in steam from startC: the clock starts at once, the
// surroundings stay at the boiling point, and the film of p is the condensing
// coefficient (1,000 to 5,000 W/(m² K) is a fair household figure, a judgement
// within the 400 to 12,000 that were read).
func (s Steamer) Blanch(p Piece, massKg, startC float64) (Blanch, error) {
	if err := first(p.Check(), within("boiling point", s.BoilC, 60, 102, "°C"), within("load", massKg, 0.005, 200, "kg"), within("start temperature", startC, 0, 60, "°C")); err != nil {
		return Blanch{}, err
	}
	b := Blanch{DipC: s.BoilC, piece: p, massKg: massKg, startC: startC}
	b.boiling.zeroC, b.boiling.scaleS = s.BoilC, p.scaleS()
	b.boiling.solve(p.Shape, p.biot(), 0, 0, curveModes)
	b.boiling.set(field{base: startC - s.BoilC}, 0)
	return b, nil
}
