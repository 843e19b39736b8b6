package heat

// phamCase is what Pham's method of 1986 works from, per m³ of pack.
type phamCase struct {
	startC, airC, coreC float64
	halfM               float64 // half thickness or radius
	faces               float64 // E
	filmWPerM2K         float64
	frozenWPerMK        float64
	coolJPerM3K         float64 // heat capacity before freezing
	freezeJPerM3        float64 // latent heat, and cooling from the mean freezing temperature to the end
}

// meanFreezingC is the temperature about which Pham takes the water to freeze.
func meanFreezingC(coreC, airC float64) float64 { return 1.8 + 0.263*coreC + 0.105*airC }

// seconds is the time until the core is at coreC. Source: Pham (1986), as in
// Singh & Heldman.
func (c *phamCase) seconds() float64 {
	freezeC := meanFreezingC(c.coreC, c.airC)
	first := c.coolJPerM3K * (c.startC - freezeC) / (0.5*(c.startC+freezeC) - c.airC)
	second := c.freezeJPerM3 / (freezeC - c.airC)
	bi := c.filmWPerM2K * c.halfM / c.frozenWPerMK
	return c.halfM / (c.faces * c.filmWPerM2K) * (first + second) * (1 + bi/2)
}
