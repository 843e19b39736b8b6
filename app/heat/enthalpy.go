package heat

import "math"

// chenFusionJPerKg is the heat of fusion that ASHRAE takes in Chen's equations;
// IAPWS has 333,430 J/kg.
const chenFusionJPerKg = 333600

// coldC is where the heat content of food counts from.
const coldC = -40

// content is the heat content of a food that freezes over a range, per kg or
// per m³: Chen (1985), in ASHRAE Refrigeration 2006, chapter 9,
//
//	H = frozen (t − t0) − latent tf (1/t0 − 1/t) up to tf,  then H(tf) + unfrozen (t − tf)
//
// with t0 = −40 °C. Its slope is the apparent specific heat frozen − latent
// tf/t², and the ice share of the latent heat 1 − tf/t. It can be turned round
// in closed form, so heat content and temperature always agree.
type content struct {
	freezingC float64 // tf < 0
	frozen    float64 // J/K per unit, all ice that there will be
	latent    float64 // J per unit, of the water that can freeze
	unfrozen  float64 // J/K per unit

	atFreezing float64 // H(tf)
	lift       float64 // makes H = frozen t + latent tf/t + lift
}

func newContent(freezingC, frozen, latent, unfrozen float64) content {
	c := content{freezingC: freezingC, frozen: frozen, latent: latent, unfrozen: unfrozen}
	c.lift = -frozen*coldC - latent*freezingC/coldC
	c.atFreezing = frozen*freezingC + latent + c.lift
	return c
}

// chenContent is Chen's heat content per kg from the water and protein of a
// food: frozen 1.55 + 1.26 x_s, unfrozen 4.19 − 2.30 x_s − 0.628 x_s³ kJ/(kg K)
// with x_s = 1 − x_w, latent (x_w − 0.4 x_p) × 333.6 kJ/kg.
func chenContent(water, protein, freezingC float64) content {
	solids := 1 - water
	return newContent(freezingC, 1550+1260*solids, math.Max(water-0.4*protein, 0)*chenFusionJPerKg,
		4190-2300*solids-628*solids*solids*solids)
}

// at is the heat content at t.
func (c *content) at(t float64) float64 {
	if t > c.freezingC {
		return c.atFreezing + c.unfrozen*(t-c.freezingC)
	}
	return c.frozen*t + c.latent*c.freezingC/t + c.lift
}

// temperature is the inverse of at: the colder root of
// frozen t² − (H − lift) t + latent tf = 0.
func (c *content) temperature(h float64) float64 {
	if h > c.atFreezing {
		return c.freezingC + (h-c.atFreezing)/c.unfrozen
	}
	u := h - c.lift
	root := math.Sqrt(u*u - 4*c.frozen*c.latent*c.freezingC)
	if u > 0 { // no difference of near numbers
		return 2 * c.latent * c.freezingC / (u + root)
	}
	return (u - root) / (2 * c.frozen)
}

// slope is the apparent specific heat at t.
func (c *content) slope(t float64) float64 {
	if t > c.freezingC {
		return c.unfrozen
	}
	return c.frozen - c.latent*c.freezingC/(t*t)
}

// EnthalpyJPerKg is the heat content over that at −40 °C, −40 to 150 °C, for
// foods of at least half water. Source: Chen (1985) with the freezing point
// that fits measured heat contents best (see the notes on accuracy at
// chenFreezingC). Its inverse is TemperatureC.
func (c Composition) EnthalpyJPerKg(tempC float64) (float64, error) {
	h, err := c.content()
	if err == nil {
		err = within("temperature", tempC, coldC, 150, "°C")
	}
	if err != nil {
		return 0, err
	}
	return h.at(tempC), nil
}

// TemperatureC is the temperature of food of a heat content, in J/kg over that
// at −40 °C.
func (c Composition) TemperatureC(enthalpyJPerKg float64) (float64, error) {
	h, err := c.content()
	if err == nil {
		err = within("heat content", enthalpyJPerKg, 0, h.at(150), "J/kg")
	}
	if err != nil {
		return 0, err
	}
	return h.temperature(enthalpyJPerKg), nil
}

// ApparentHeatJPerKgK is the slope of the heat content: specific heat and the
// melting of ice in one, −40 to 150 °C. Source: Chen (1985).
func (c Composition) ApparentHeatJPerKgK(tempC float64) (float64, error) {
	h, err := c.content()
	if err == nil {
		err = within("temperature", tempC, coldC, 150, "°C")
	}
	if err != nil {
		return 0, err
	}
	return h.slope(tempC), nil
}

func (c *Composition) content() (content, error) {
	if err := first(c.Check(), within("water", c.Water, 0.5, 0.99, "of the mass")); err != nil {
		return content{}, err
	}
	return chenContent(c.Water, c.Protein, c.chenFreezingC()), nil
}
