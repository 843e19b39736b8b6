package heat

import "math"

// Formulas that the engine does not need, for the rows that compare methods.

// plankS is the time to freeze what is at its freezing point already: Plank
// (1913) with the full thickness or diameter and its factors p and r. Source:
// ASHRAE Refrigeration 2006, chapter 10. It leaves out all heat but the
// latent, and comes out 20 to 40 % short.
func plankS(latentJPerM3, freezingC, airC, fullM, p, r, filmWPerM2K, frozenWPerMK float64) float64 {
	return latentJPerM3 / (freezingC - airC) * (p*fullM/filmWPerM2K + r*fullM*fullM/frozenWPerMK)
}

// plankFactors are Plank's p and r of a shape.
func plankFactors(s Shape) (p, r float64) {
	d := s.dims()
	return 1 / (2 * d), 1 / (8 * d)
}

// plankBrick are Plank's factors of a brick 1 × b1 × b2, both over 1 by at
// least 0.0001. Source: as plankS; the limits of a cube and a slab check.
func plankBrick(b1, b2 float64) (p, r float64) {
	q := math.Sqrt((b1-b2)*(b1-1) + (b2-1)*(b2-1))
	big, small := (b1+b2+1+q)/3, (b1+b2+1-q)/3
	part := func(x float64) float64 {
		return (x - 1) * (b1 - x) * (b2 - x) * math.Log(x/(x-1))
	}
	return b1 * b2 / (2 * (b1*b2 + b1 + b2)), (part(big)-part(small))/(8*q) + (2*b1+2*b2-1)/72
}

// clelandEarle is the method of Cleland & Earle (1977, 1979) as ASHRAE
// Refrigeration 2006, chapter 10, has it; for comparison only. liquid and solid
// are heat capacities, J/(m³ K).
type clelandEarle struct {
	heatJPerM3, liquid, solid      float64
	startC, freezingC, airC, coreC float64
	fullM, film, k                 float64
}

func (c *clelandEarle) numbers() (pk, ste, bi float64) {
	return c.liquid * (c.startC - c.freezingC) / c.heatJPerM3, c.solid * (c.freezingC - c.airC) / c.heatJPerM3, c.film * c.fullM / c.k
}

func (c *clelandEarle) seconds(p, r float64) float64 {
	_, ste, _ := c.numbers()
	return c.heatJPerM3 / (c.freezingC - c.airC) * (p*c.fullM/c.film + r*c.fullM*c.fullM/c.k) *
		(1 - 1.65*ste/c.k*math.Log((c.coreC-c.airC)/(-10-c.airC)))
}

func brickFactors(p1, r1, pk, ste, bi float64) (p, r float64) {
	p = p1*(1.026+0.5808*pk+ste*(0.2296*pk+0.0182/bi+0.1050)) + p1*(0.1136+ste*(5.766*p1-1.242))
	r = r1*(1.202+ste*(3.410*pk+0.7336)) + r1*(0.7344+ste*(49.89*r1-2.900))
	return p, r
}

func clelandEarleOf(r run, s substance) float64 {
	c := clelandEarle{
		liquid: s.unfrozen, solid: s.frozen, startC: r.num("Ti"), freezingC: r.num("tf"), airC: r.num("Ta"), coreC: r.num("Tc"),
		fullM: r.num("D"), film: r.num("h"), k: r.num("ks"),
	}
	c.heatJPerM3 = r.num("L_vol_to_minus10") + s.frozen*(c.freezingC+10)
	pk, ste, bi := c.numbers()
	nearly(r, r.id+": Pk", pk, r.num("Pk"), 1e-4)
	nearly(r, r.id+": Ste", ste, r.num("Ste"), 1e-4)
	nearly(r, r.id+": Bi", bi, r.num("Bi"), 1e-4)
	var p, q float64
	switch r.shape() {
	case Slab:
		p = 0.5072 + 0.2018*pk + ste*(0.3224*pk+0.0105/bi+0.0681)
		q = 0.1684 + ste*(0.2740*pk-0.0135)
	case Cylinder:
		p = 0.3751 + 0.0999*pk + ste*(0.4008*pk+0.0710/bi-0.5865)
		q = 0.0133 + ste*(0.0415*pk+0.3957)
	case Sphere:
		p = 0.1084 + 0.0924*pk + ste*(0.2310*pk-0.3114/bi+0.6739)
		q = 0.0784 + ste*(0.0386*pk-0.1694)
	}
	return c.seconds(p, q) / 3600
}

// linFaces is the regression for E in ASHRAE Refrigeration 2006, chapter 10,
// tables 9 and 10 (from memory).
func linFaces(bi, b1, b2, g1, g2, g3 float64) float64 {
	x := func(y float64) float64 { return y / (math.Pow(bi, 1.34) + y) }
	part := func(b, coefficient, power float64) float64 {
		if math.IsInf(b, 1) {
			return 0
		}
		share := x(2.32 / math.Pow(b, 1.77))
		return share/b + (1-share)*coefficient/math.Pow(b, power)
	}
	return g1 + g2*part(b1, 0.73, 2.50) + g3*part(b2, 0.50, 3.69)
}

// ellipsoidFaces is about E of an ellipsoid with half axes 1, b1 and b2 (b2
// infinite: a long bar of elliptic section), and of an irregular piece with
// the same shortest half thickness, smallest section through its middle and
// volume.
func ellipsoidFaces(bi, b1, b2 float64) float64 {
	return 1 + (1+2/bi)/(b1*b1+2*b1/bi) + (1+2/bi)/(b2*b2+2*b2/bi)
}
