package heat

import "math"

// How much faster a pack freezes than a slab of the same half thickness and
// surface coefficient, because heat also leaves by its other faces: the
// equivalent heat transfer dimensionality E, 1 for a slab, 2 for a long
// cylinder, 3 for a sphere. Exact forms of Cleland et al. (1987) and Hossain et
// al. (1992), from memory; each was checked against an independent
// finite-volume solution to five digits (testdata/heat/checks.csv, E-). bi is
// the Biot number of the half thickness, b a longer side over the shortest.

// barFaces is E of a long bar 1 × b, b ≥ 1.
func barFaces(bi, b float64) float64 {
	var m modes
	m.solve(Slab, bi, 0, 0, maxModes)
	return (1 + 2/bi) / (1 + 2/bi - 4*barSum(&m, bi, b))
}

func barSum(m *modes, bi, b float64) float64 {
	sum := 0.0
	for i := range m.n {
		z := m.z[i]
		sin := math.Sin(z)
		term := sin / (z * z * z * (1 + sin*sin/bi) * (z/bi*math.Sinh(z*b) + math.Cosh(z*b)))
		sum += term
		if math.Abs(term) < 1e-12 {
			break
		}
	}
	return sum
}

// brickFaces is E of a brick 1 × b1 × b2, both ≥ 1.
func brickFaces(bi, b1, b2 float64) float64 {
	var m, across modes
	m.solve(Slab, bi, 0, 0, maxModes)
	across.solve(Slab, bi*b1, 0, 0, maxModes)
	double := 0.0
	for i := range m.n {
		z := m.z[i]
		sin := math.Sin(z)
		row := 0.0
		for j := range across.n {
			y := across.z[j]
			sinY := math.Sin(y)
			long := math.Hypot(z*b2, y*b2/b1)
			term := sin * sinY / ((math.Cosh(long) + long/(bi*b2)*math.Sinh(long)) * z * y * long * long * (1 + sin*sin/bi) * (1 + sinY*sinY/(bi*b1)))
			row += term
			if math.Abs(term) < 1e-14 {
				break
			}
		}
		double += row
		if math.Abs(row) < 1e-13 {
			break
		}
	}
	return (1 + 2/bi) / (1 + 2/bi - 4*barSum(&m, bi, b1) - 8*b2*b2*double)
}

// tallFaces is E of a cylinder at least as high as wide: radius 1, half height
// b ≥ 1.
func tallFaces(bi, b float64) float64 {
	var m modes
	m.solve(Cylinder, bi, 0, 0, maxModes)
	sum := 0.0
	for i := range m.n {
		y := m.z[i]
		term := 1 / (y * y * y * math.J1(y) * (1 + y*y/(bi*bi)) * (math.Cosh(b*y) + y/bi*math.Sinh(b*y)))
		sum += term
		if math.Abs(term) < 1e-12 {
			break
		}
	}
	return (2 + 4/bi) / (1 + 2/bi - 8*sum)
}

// squatFaces is E of a cylinder wider than high: half height 1, radius b ≥ 1.
func squatFaces(bi, b float64) float64 {
	var m modes
	m.solve(Slab, bi, 0, 0, maxModes)
	sum := 0.0
	for i := range m.n {
		z := m.z[i]
		sin, cos := math.Sincos(z)
		i0, i1 := besselI(z * b)
		term := sin / (z * z * (z + sin*cos) * (i0 + z/bi*i1))
		sum += term
		if math.Abs(term) < 1e-12 {
			break
		}
	}
	return (1 + 2/bi) / (1 + 2/bi - 4*sum)
}

// besselI is the modified Bessel functions I0 and I1 for x ≥ 0, by their power
// series, whose terms are all positive; infinite from about 710.
func besselI(x float64) (i0, i1 float64) {
	if x > 700 {
		return math.Inf(1), math.Inf(1)
	}
	q := x * x / 4
	term := 1.0 // q^k / k!²
	for k := 1.0; ; k++ {
		i0 += term
		i1 += term * x / (2 * k)
		term *= q / (k * k)
		if term < 1e-17*i0 {
			return i0, i1
		}
	}
}
