package heat

import "math"

// Shape is the form of a piece that heat enters from outside in. The size of a
// piece is its half thickness (Slab) or its radius.
type Shape int

const (
	Slab     Shape = 1 + iota // heat comes from both faces: slices, leaves, strips
	Cylinder                  // long: beans, asparagus, corn ears
	Sphere                    // peas, sprouts, flowerets
)

// dims is 1, 2 or 3: surface per volume is dims over the size.
func (s Shape) dims() float64 { return float64(s) }

// profile is the shape of one mode, X(z,x): cos zx, J0(zx), sin(zx)/(zx); x runs
// from 0 at the centre to 1 at the surface. Source: Carslaw & Jaeger,
// Conduction of Heat in Solids, chapters 3, 7 and 9 (from memory).
func (s Shape) profile(z, x float64) float64 {
	y := z * x
	switch s {
	case Slab:
		return math.Cos(y)
	case Cylinder:
		return math.J0(y)
	}
	if y < 1e-4 {
		return 1 - y*y/6
	}
	return math.Sin(y) / y
}

// surface gives X(z,1) and the integral of X x^(dims−1) from 0 to 1 for z > 0.
// The slope at the surface is X'(1) = −z² × integral.
func (s Shape) surface(z float64) (value, integral float64) {
	switch s {
	case Slab:
		sin, cos := math.Sincos(z)
		return cos, sin / z
	case Cylinder:
		return math.J0(z), math.J1(z) / z
	}
	if z < 1e-3 { // the closed form cancels
		return 1 - z*z/6, 1.0/3 - z*z/30
	}
	sin, cos := math.Sincos(z)
	return sin / z, (sin - z*cos) / (z * z * z)
}

// square is the integral of X² x^(dims−1) from 0 to 1, given X(z,1) and the
// integral of X.
func (s Shape) square(z, value, integral float64) float64 {
	switch s {
	case Slab:
		return 0.5 * (1 + value*integral)
	case Cylinder:
		j1 := integral * z
		return 0.5 * (value*value + j1*j1)
	}
	return (1 - value*math.Cos(z)) / (2 * z * z)
}

// zeros are where X(z,1) = 0: between them the modes lie one by one.
func (s Shape) zero(i int) float64 {
	switch s {
	case Slab:
		return (float64(i) - 0.5) * math.Pi
	case Cylinder:
		return besselZeros[i-1]
	}
	return float64(i) * math.Pi
}

// besselZeros are the first zeros of J0, by McMahon's expansion and Newton's
// method.
var besselZeros = func() (zeros [maxModes + 2]float64) {
	for i := range zeros {
		b := (float64(i+1) - 0.25) * math.Pi
		z := b + 1/(8*b) - 124/(3*math.Pow(8*b, 3))
		for range 4 {
			z += math.J0(z) / math.J1(z)
		}
		zeros[i] = z
	}
	return zeros
}()
