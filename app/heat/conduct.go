package heat

import "math"

// Conduction is a piece of one temperature put into surroundings that stay at
// another: the exact series, a product of up to three for a piece of finite
// length or a brick. Properties are constant; nothing in it freezes.
type Conduction struct {
	factor          [3]series
	n               int
	filmWPerM2K     float64
	startC, aroundC float64
}

// Into puts a piece at startC into surroundings at aroundC, both −60 to 150 °C.
// A cylinder may have a half height in alsoM, a slab its one or two other half
// widths (a long bar, a brick), 0.0005 to 1 m, all with the piece's surface
// coefficient; without them it is endless in those directions.
// Source: the series of Carslaw & Jaeger (from memory), as in Cengel and
// Incropera; the product rule as in both.
func (p Piece) Into(startC, aroundC float64, alsoM ...float64) (Conduction, error) {
	c := Conduction{n: 1 + len(alsoM), filmWPerM2K: p.FilmWPerM2K, startC: startC, aroundC: aroundC}
	most := [4]int{Slab: 2, Cylinder: 1, Sphere: 0}
	if err := first(p.Check(), within("start temperature", startC, -60, 150, "°C"), within("surroundings", aroundC, -60, 150, "°C")); err != nil {
		return c, err
	}
	if err := within("number of further half sizes of this shape", float64(len(alsoM)), 0, float64(most[p.Shape]), ""); err != nil {
		return c, err
	}
	c.factor[0].set(p.Shape, p.biot(), p.scaleS())
	for i, halfM := range alsoM {
		if err := within("further half size", halfM, 0.0005, 1, "m"); err != nil {
			return c, err
		}
		ratio := halfM / p.SizeM
		c.factor[i+1].set(Slab, p.biot()*ratio, p.scaleS()*ratio*ratio)
	}
	return c, nil
}

// AtC is the temperature after so many seconds at depth x of the first
// dimension, 0 at the centre and 1 at the surface, at the middle of the others.
func (c *Conduction) AtC(afterS, x float64) float64 {
	return c.aroundC + (c.startC-c.aroundC)*c.left(afterS, x)
}

// CentreC is the temperature of the centre.
func (c *Conduction) CentreC(afterS float64) float64 { return c.AtC(afterS, 0) }

// SurfaceC is the temperature in the middle of the surface of the first
// dimension.
func (c *Conduction) SurfaceC(afterS float64) float64 { return c.AtC(afterS, 1) }

// MeanC is the temperature averaged over the volume: the heat in the piece.
func (c *Conduction) MeanC(afterS float64) float64 {
	y := 1.0
	for i := range c.n {
		y *= c.factor[i].mean(afterS / c.factor[i].scaleS)
	}
	return c.aroundC + (c.startC-c.aroundC)*y
}

// FluxWPerM2 is the heat that goes into the middle of the surface of the first
// dimension; negative where the piece cools.
func (c *Conduction) FluxWPerM2(afterS float64) float64 {
	return c.filmWPerM2K * (c.aroundC - c.SurfaceC(afterS))
}

// ReachesS is when depth x (0 to 1) gets to tempC, which lies between the start
// and the surroundings, not nearer to these than a millionth of the difference.
func (c *Conduction) ReachesS(x, tempC float64) (float64, error) {
	nearly := c.aroundC + (c.startC-c.aroundC)*1e-6
	if err := first(within("depth", x, 0, 1, "of the half size"),
		within("temperature to reach", tempC, math.Min(c.startC, nearly), math.Max(c.startC, nearly), "°C")); err != nil {
		return 0, err
	}
	if tempC == c.startC {
		return 0, nil
	}
	want := math.Log((tempC - c.aroundC) / (c.startC - c.aroundC))
	return falling(func(afterS float64) float64 { return math.Log(c.left(afterS, x)) - want }, c.factor[0].scaleS), nil
}

// left is the share of the first temperature difference that is left.
func (c *Conduction) left(afterS, x float64) float64 {
	y := c.factor[0].at(afterS/c.factor[0].scaleS, x)
	for i := 1; i < c.n; i++ {
		y *= c.factor[i].at(afterS/c.factor[i].scaleS, 0)
	}
	return y
}

// falling is the root t > 0 of a function that falls from a value over 0 at
// t = 0, by regula falsi with the idle end halved (Illinois), from a first
// guess of its order.
func falling(f func(float64) float64, guess float64) float64 {
	low, high := 0.0, guess
	fLow, fHigh := f(low), f(high)
	for fHigh > 0 {
		low, fLow = high, fHigh
		high *= 2
		fHigh = f(high)
	}
	for range 200 {
		mid := low + (high-low)*fLow/(fLow-fHigh)
		if high-low <= 1e-12*high || mid <= low || mid >= high {
			break
		}
		fMid := f(mid)
		if math.Abs(fMid) < 1e-13 {
			return mid
		}
		if fMid > 0 {
			low, fLow = mid, fMid
			fHigh /= 2
		} else {
			high, fHigh = mid, fMid
			fLow /= 2
		}
	}
	return 0.5 * (low + high)
}

// series is one dimension of a conduction, in dimensionless time (Fourier
// number) and depth.
type series struct {
	modes
	bi     float64
	scaleS float64
}

// shortFo is up to where the first moments are taken as a body without an end,
// exact for slab and sphere, right to 0.0001 for the cylinder; from there on 40
// terms of the series are right to 1e−8.
const shortFo = 0.0015

func (s *series) set(shape Shape, bi, scaleS float64) {
	s.bi, s.scaleS = bi, scaleS
	s.solve(shape, bi, 0, 0, maxModes)
}

// at is the share of the first difference left at depth x. It takes as many
// terms as the moment needs: a term with z² Fo > 40 is below 1e−17.
func (s *series) at(fo, x float64) float64 {
	if fo < shortFo {
		return 1 - s.entered(fo, x)
	}
	y := 0.0
	for i := range s.n {
		fade := s.z[i] * s.z[i] * fo
		if fade > 40 && i > 0 {
			break
		}
		profile := s.value[i]
		if x < 1 {
			profile = s.shape.profile(s.z[i], x)
		}
		y += s.integ[i] / s.norm[i] * profile * math.Exp(-fade)
	}
	return y
}

// mean is the share of the first difference left on average over the volume.
func (s *series) mean(fo float64) float64 {
	if fo < shortFo {
		return 1 - s.taken(fo)
	}
	y := 0.0
	for i := range s.n {
		fade := s.z[i] * s.z[i] * fo
		if fade > 40 && i > 0 {
			break
		}
		y += s.integ[i] * s.integ[i] / s.norm[i] * math.Exp(-fade)
	}
	return y * s.shape.dims()
}

// entered is 1 − at for short times. With u = x^((n−1)/2) (1 − Y) the shells
// become a wall, but for the term u/(4x²) of the cylinder, which is left out,
// and the film is weakened by (n−1)/2. Source for the wall without an end and
// with a film: Carslaw & Jaeger, section 2.7 (from memory).
func (s *series) entered(fo, x float64) float64 {
	if fo <= 0 {
		return 0
	}
	curved := (s.shape.dims() - 1) / 2
	h, root := s.bi-curved, math.Sqrt(fo)
	depth := (1 - x) / (2 * root)
	if depth > 6 { // below 1e−16
		return 0
	}
	// erfc(a) − e^(2ab + b²) erfc(a + b) over h, with a = depth, b = h √Fo
	b := h * root
	var u float64
	if math.Abs(b) < 1e-5 {
		u = 2 * root * (math.Exp(-depth*depth)/math.SqrtPi - depth*math.Erfc(depth))
	} else {
		u = (math.Erfc(depth) - math.Exp(-depth*depth)*erfcx(depth+b)) / h
	}
	return s.bi * u / math.Pow(x, curved)
}

// taken is 1 − mean for short times: what the film has let in.
func (s *series) taken(fo float64) float64 {
	if fo <= 0 {
		return 0
	}
	h := s.bi - (s.shape.dims()-1)/2
	b := h * math.Sqrt(fo)
	// ∫ (1 − Bi u) with Bi u = (Bi/h)(1 − e^b² erfc b)
	var over float64 // ∫ (1 − e^b² erfc b) dFo / h
	if math.Abs(b) < 1e-3 {
		over = fo * math.Sqrt(fo) * (4/(3*math.SqrtPi) - b/2)
	} else {
		over = (fo - (erfcx(b)-1+2*b/math.SqrtPi)/(h*h)) / h
	}
	return s.shape.dims() * s.bi * (fo - s.bi*over)
}

// erfcx is e^(x²) erfc(x), by its asymptotic series where the product would
// overflow.
func erfcx(x float64) float64 {
	if x < 20 {
		return math.Exp(x*x) * math.Erfc(x)
	}
	r := 1 / (2 * x * x)
	return (1 - r*(1-3*r*(1-5*r))) / (x * math.SqrtPi)
}
