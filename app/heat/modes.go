package heat

import "math"

// maxModes is how many terms a solution may have. With 12 a centre is right to
// about 0.001 of the first temperature difference a few seconds after the
// start of a blanch; 40 serve as a check.
const maxModes = 40

// modes are the exact solution of pieces that all heat alike in one
// well-stirred water: the pieces from outside in, the water by what they take
// and by a constant power. The problem is linear, so the solution is a sum of
// decaying shapes and needs no marching in time.
//
// With x = r/R, τ = αt/R², Bi = hR/k and γ the heat capacity of all pieces over
// that of the water with its kettle, temperatures counted from the boiling
// point:
//
//	∂θ/∂τ = x^(1−n) ∂/∂x (x^(n−1) ∂θ/∂x),  −θ'(1) = Bi (θ(1) − W),  dW/dτ = −nγ θ'(1) + s
//
// A mode is θ = X(zx) e^(−z²τ), W = w e^(−z²τ) with w = −nγI, I the integral of
// X x^(n−1), and z a root of I (z² − nBiγ) = Bi X(1). Modes are orthogonal under
// ⟨a,b⟩ = ∫ X_a X_b x^(n−1) dx + w_a w_b/(nγ). The root z = 0 is the whole pot
// warming together; γ = 0 gives the textbook series in water that never cools.
// Derived for this program; the well-stirred bath is treated in Carslaw &
// Jaeger and in Crank, Mathematics of Diffusion (both cited from memory).
type modes struct {
	shape Shape
	gamma float64
	n     int
	z     [maxModes]float64 // roots
	value [maxModes]float64 // X at the surface
	integ [maxModes]float64 // I
	norm  [maxModes]float64 // ⟨m,m⟩
	ramp  ramp
}

// ramp is what a constant power comes to when the modes have faded: the whole
// pot warms at one rate, the pieces lagging behind the water by a parabola.
// It is kept in closed form because as a sum of modes it converges slowly.
type ramp struct {
	rate  float64 // of everything, per unit of τ
	base  float64 // piece: base + curve x²
	curve float64
	lift  float64 // water: base + curve + lift
}

// solve finds the first n modes for bi > 0 and gamma ≥ 0, under the power s
// (P R²/(αC); 0 for gamma = 0, where the water cannot warm).
func (m *modes) solve(shape Shape, bi, gamma, s float64, n int) {
	m.shape, m.gamma, m.n = shape, gamma, n
	d := shape.dims()
	m.ramp = ramp{rate: s / (1 + gamma)}
	m.ramp.curve = m.ramp.rate / (2 * d)
	m.ramp.lift = m.ramp.rate / (d * bi)
	// without a share of its own in the heat of the pot
	m.ramp.base = -(gamma*m.ramp.curve*d/(d+2) + m.ramp.curve + m.ramp.lift) / (1 + gamma)
	pivot := d * bi * gamma // z² of the pole on the water's side
	pole := math.Sqrt(pivot)
	// Between two neighbours among the zeros of X(1) and the pole lies exactly
	// one root, but for the first interval, which holds only z = 0; with
	// gamma = 0 the pole is at 0 and that interval is empty.
	low, next, poleDone := 0.0, 1, gamma == 0
	edge := func() float64 {
		if !poleDone && pole < shape.zero(next) {
			poleDone = true
			return pole
		}
		next++
		return shape.zero(next - 1)
	}
	if gamma > 0 {
		low = edge()
	}
	rises, part := false, 0.5
	for i := range n {
		high := edge()
		if i == 0 {
			value, integral := shape.surface(high)
			rises = integral*(high*high-pivot) > bi*value
		} else {
			rises = !rises // the function is continuous, with one root to an interval
		}
		z, value, integral := shape.root(bi, pivot, low, high, low+part*(high-low), rises)
		part = (z - low) / (high - low) // the next root lies much alike
		m.z[i], m.value[i], m.integ[i] = z, value, integral
		m.norm[i] = shape.square(z, value, integral) + d*gamma*integral*integral
		low = high
	}
}

// root finds the one root of I (z² − pivot) − Bi X(1) in [low, high] by Newton's
// method from a first guess, kept between the ends by halving; it returns X(1)
// and I there too. risesAtHigh says whether the function is positive at high.
// The slopes are X(1)' = −zI and I' = (X(1) − nI)/z.
func (s Shape) root(bi, pivot, low, high, guess float64, risesAtHigh bool) (z, value, integral float64) {
	d := s.dims()
	z = guess
	for range 100 {
		value, integral = s.surface(z)
		f := integral*(z*z-pivot) - bi*value
		if (f > 0) == risesAtHigh {
			high = z
		} else {
			low = z
		}
		slopeI := (value - d*integral) / z
		slope := slopeI*(z*z-pivot) + 2*z*integral + bi*z*integral
		step := -f / slope
		if next := z + step; !(next > low && next < high) {
			step = 0.5*(low+high) - z // Newton leaves the interval: halve it
		} else if math.Abs(step) <= 1e-7*z { // the step after this one would be 1e-14
			return next, value - z*integral*step, integral + slopeI*step
		}
		z += step
	}
	return z, value, integral
}

// state is a temperature field at one moment: the ramp's share, what the whole
// pot has in common, and the fading modes.
type state struct {
	common float64
	a      [maxModes]float64
}

// start is pieces at piece and water at water, both counted from the boiling
// point; with gamma = 0 the water is the zero of the scale and stays there.
func (m *modes) start(piece, water float64) state {
	return m.expand(field{base: piece}, water)
}

// field is a temperature over the depth of a piece: base + curve x² and a sum
// of the modes of a solution.
type field struct {
	base, curve float64
	modes       *modes // nil for none
	a           *[maxModes]float64
}

// of is the temperature field of the pieces in a state of m, counted from a
// scale whose zero lies lower by shift.
func (m *modes) of(s *state, shift float64) field {
	return field{base: s.common + m.ramp.base + shift, curve: m.ramp.curve, modes: m, a: &s.a}
}

// expand takes a field and a water temperature apart in the modes of m. The
// integral of two profiles with different roots needs only their ends, and
// ∫ x² X x^(n−1) = I + (2X(1) − 2nI)/z².
func (m *modes) expand(f field, water float64) (to state) {
	d := m.shape.dims()
	if m.gamma > 0 {
		mean := f.base + f.curve*d/(d+2)
		if f.modes != nil {
			mean += d * f.modes.faded(&state{a: *f.a})
		}
		to.common = (m.gamma*mean + water) / (1 + m.gamma)
	}
	power := m.ramp.rate * (1 + m.gamma)
	for k := range m.n {
		y, yValue, yIntegral := m.z[k], m.value[k], m.integ[k]
		sum := (f.base+f.curve-water+power/(y*y))*yIntegral + f.curve*2*(yValue-d*yIntegral)/(y*y)
		if f.modes != nil {
			for i := range f.modes.n {
				z, zValue, zIntegral := f.modes.z[i], f.modes.value[i], f.modes.integ[i]
				if gap := z*z - y*y; math.Abs(gap) > 1e-9*y*y {
					// [X_z X_y' − X_z' X_y]/(z² − y²) at the surface, X' = −z² I
					sum += f.a[i] * (z*z*zIntegral*yValue - y*y*yIntegral*zValue) / gap
				} else {
					sum += f.a[i] * m.shape.square(y, yValue, yIntegral)
				}
			}
		}
		to.a[k] = sum / m.norm[k]
	}
	// What the modes left out lack goes into the last one, so that the heat of
	// the start is there to the last digit; it fades first.
	share := (f.base-to.common-m.ramp.base)/d + (f.curve-m.ramp.curve)/(d+2)
	if f.modes != nil {
		share += f.modes.faded(&state{a: *f.a})
	}
	to.a[m.n-1] += (share - m.faded(&to)) / m.integ[m.n-1]
	return to
}

// after is the state a dimensionless time later.
func (m *modes) after(from *state, tau float64) (to state) {
	to.common = from.common + m.ramp.rate*tau
	for i := range m.n {
		to.a[i] = from.a[i] * math.Exp(-m.z[i]*m.z[i]*tau)
	}
	return to
}

// faded is the sum of the modes' integrals, from the smallest term up.
func (m *modes) faded(s *state) float64 {
	sum := 0.0
	for i := m.n - 1; i >= 0; i-- {
		sum += s.a[i] * m.integ[i]
	}
	return sum
}

// water is the temperature of the water in a state.
func (m *modes) water(s *state) float64 {
	return s.common + m.ramp.base + m.ramp.curve + m.ramp.lift - m.shape.dims()*m.gamma*m.faded(s)
}

// mean is the temperature of the pieces averaged over their volume.
func (m *modes) mean(s *state) float64 {
	d := m.shape.dims()
	return s.common + m.ramp.base + m.ramp.curve*d/(d+2) + d*m.faded(s)
}

// at is the temperature of a piece at x, 0 at its centre and 1 at its surface.
func (m *modes) at(s *state, x float64) float64 {
	t := s.common + m.ramp.base + m.ramp.curve*x*x
	for i := range m.n {
		t += s.a[i] * m.shape.profile(m.z[i], x)
	}
	return t
}
