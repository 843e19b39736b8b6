package heat

import "math"

// Composition is what a vegetable is made of: mass fractions, 0 to 1, that add
// up to 0.97 to 1.03 (tables round, and some do not close).
type Composition struct {
	Water, Protein, Fat float64
	Carbohydrate        float64 // without the fiber: tables print it with the fiber
	Fiber, Ash          float64
	InitialFreezingC    float64 // where the first ice forms, −6 to −0.05 °C, as tabled; 0: none is tabled, FreezingC estimates one
}

// FromPercent is a row of a food table: percent of the mass, the carbohydrate
// with its fiber in it (none is left where a table has more fiber than that).
// freezingC is 0 where none is tabled.
func FromPercent(water, protein, fat, carbohydrateTotal, fiber, ash, freezingC float64) Composition {
	return Composition{
		Water: water / 100, Protein: protein / 100, Fat: fat / 100, Carbohydrate: math.Max(carbohydrateTotal-fiber, 0) / 100,
		Fiber: fiber / 100, Ash: ash / 100, InitialFreezingC: freezingC,
	}
}

// Check returns a *RangeError for the first value that is out of range.
func (c Composition) Check() error {
	return first(
		within("water", c.Water, 0.01, 1, "of the mass"),
		within("protein", c.Protein, 0, 0.5, "of the mass"),
		within("fat", c.Fat, 0, 0.5, "of the mass"),
		within("carbohydrate without fiber", c.Carbohydrate, 0, 0.9, "of the mass"),
		within("fiber", c.Fiber, 0, 0.5, "of the mass"),
		within("ash", c.Ash, 0, 0.1, "of the mass"),
		within("sum of the components", c.Water+c.Protein+c.Fat+c.Carbohydrate+c.Fiber+c.Ash, 0.97, 1.03, "of the mass"),
		within("initial freezing point (0 for none)", c.InitialFreezingC, -6, 0, "°C"),
	)
}

// FreezingC is where the first ice forms, and whether that is estimated: then
// it is the equation of Chang & Tao (1981) for fruit and vegetables, but never
// warmer than −0.7 °C, the median of the 27 vegetables over 88.5 % water in
// ASHRAE table 3, because the equation comes out above 0 °C for watery ones.
// Against the 46 points of table 3 it is off by 0.6 °C rms below that water
// content and 0.3 °C above it.
func (c Composition) FreezingC() (tempC float64, estimated bool) {
	if c.InitialFreezingC < 0 {
		return c.InitialFreezingC, false
	}
	return math.Min(changTaoC(math.Max(c.Water, 0.663)), -0.7), true
}

// changTaoC is the freezing point of fruit and vegetables of a water content of
// 0.663 (its minimum) to about 0.88, above which it turns positive. Source:
// Chang & Tao (1981).
func changTaoC(water float64) float64 {
	return 287.56 - 49.19*water + 37.07*water*water - zeroCelsiusK
}

// bound is the water that never freezes: 0.4 × protein. Source: ASHRAE
// Refrigeration 2006, chapter 9.
func (c *Composition) bound() float64 { return 0.4 * c.Protein }

// chenFreezingC is the one freezing point in Chen's equations that follows the
// measured heat content best, −(0.25 + 9.6 s), s what can be dissolved
// (carbohydrate without fiber, fat, ash) per water, at most the 0.26 of the
// data. The tabled point, where the first ice forms, is too warm for it: it
// leaves too little water liquid in sugary and starchy vegetables.
// Fitted here to the best points of the 15 foods of Riedel (1951–59) in
// ASHRAE's enthalpy table (from memory), −30 to −3 °C: predicting each food
// from the other fourteen is off by 2 to 12 kJ/kg rms, over the seven
// vegetables 4.5 on average; the tabled points are off by 3 to 45.
func (c *Composition) chenFreezingC() float64 {
	return -(0.25 + 9.6*math.Min((c.Carbohydrate+c.Fat+c.Ash)/c.Water, 0.26))
}

// fractions are the mass fractions of the components at a temperature.
func (c *Composition) fractions(tempC float64) [nComponents]float64 {
	frozen := 0.0
	if tempC < 0 {
		frozen = c.ice(tempC)
	}
	return [nComponents]float64{c.Protein, c.Fat, c.Carbohydrate, c.Fiber, c.Ash, c.Water - frozen, frozen}
}

// ice is the mass of ice per mass of food, Chen (1985), which with a freezing
// point given is Miles (1974).
func (c *Composition) ice(tempC float64) float64 {
	tf := c.chenFreezingC()
	if tempC >= tf {
		return 0
	}
	return math.Max(c.Water-c.bound(), 0) * (1 - tf/tempC)
}

func density(x [nComponents]float64, tempC float64) float64 {
	volume := 0.0
	for i, xi := range x {
		volume += xi / components[i].densityAt(tempC)
	}
	return 1 / volume
}

// parallel is the conductivity of components lying side by side along the
// heat's way, in proportion to their volumes: the upper bound.
func parallel(x [nComponents]float64, tempC float64) float64 {
	sum, volume := 0.0, 0.0
	for i, xi := range x {
		v := xi / components[i].densityAt(tempC)
		sum += v * components[i].conductivityAt(tempC)
		volume += v
	}
	return sum / volume
}

func (c Composition) checkAt(tempC float64) error {
	return first(c.Check(), within("temperature", tempC, -40, 150, "°C"))
}

// IceFraction is the mass of ice per mass of food at −40 to 150 °C. Source:
// Chen (1985), with bound water 0.4 × protein; against measurements the best of
// the models compared by Fricke & Becker (2001).
func (c Composition) IceFraction(tempC float64) (float64, error) {
	if err := c.checkAt(tempC); err != nil {
		return 0, err
	}
	return c.fractions(tempC)[ofIce], nil
}

// DensityKgPerM3 is the density at −40 to 150 °C of pieces with a share of air
// in their tissue (porosity, 0 to 0.9; leafy and spongy vegetables float).
// Source: Choi & Okos (1986), (1 − porosity) / Σ x/ρ.
func (c Composition) DensityKgPerM3(tempC, porosity float64) (float64, error) {
	if err := first(c.checkAt(tempC), within("porosity", porosity, 0, 0.9, "of the volume")); err != nil {
		return 0, err
	}
	return (1 - porosity) * density(c.fractions(tempC), tempC), nil
}

// HeatJPerKgK is the specific heat of the unfrozen vegetable at 0 to 150 °C:
// the sum of the components'. Source: Choi & Okos (1986). Within 0.006 kJ/(kg K)
// of 46 of the 48 printed values of ASHRAE table 3 once the fiber is counted
// twice, as that table does; counted once it is 0.01 to 0.09 lower.
func (c Composition) HeatJPerKgK(tempC float64) (float64, error) {
	if err := first(c.Check(), within("temperature", tempC, 0, 150, "°C")); err != nil {
		return 0, err
	}
	return specificHeat(c.fractions(tempC), tempC), nil
}

func specificHeat(x [nComponents]float64, tempC float64) float64 {
	sum := 0.0
	for i, xi := range x {
		sum += xi * components[i].heatAt(tempC)
	}
	return sum
}

// ConductivityWPerMK is the thermal conductivity of the tissue at −40 to
// 150 °C, parallel model with the ice in it. Source: Choi & Okos (1986).
// Diffusivities from it are 7 to 17 % below measured ones for potato, squash,
// tomato, lima beans and peas and 14 % above for rutabaga: heating times carry
// that uncertainty.
func (c Composition) ConductivityWPerMK(tempC float64) (float64, error) {
	if err := c.checkAt(tempC); err != nil {
		return 0, err
	}
	return parallel(c.fractions(tempC), tempC), nil
}

// Piece is a piece of this composition between two temperatures over the
// freezing point, with the properties at their middle.
func (c Composition) Piece(shape Shape, sizeM, porosity, filmWPerM2K, lowC, highC float64) (Piece, error) {
	tempC := 0.5 * (lowC + highC)
	heat, err := c.HeatJPerKgK(tempC)
	if err != nil {
		return Piece{}, err
	}
	densityKgPerM3, err := c.DensityKgPerM3(tempC, porosity)
	if err != nil {
		return Piece{}, err
	}
	p := Piece{
		Shape: shape, SizeM: sizeM, ConductivityWPerMK: parallel(c.fractions(tempC), tempC),
		DensityKgPerM3: densityKgPerM3, HeatJPerKgK: heat, FilmWPerM2K: filmWPerM2K,
	}
	return p, p.Check()
}
