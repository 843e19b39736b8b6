package heat

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The coupled problem, worked out by an independent implicit finite-volume
// solution of 400 cells (values of the derivation's own table): R 5 mm, k 0.55,
// ρ 1000, c 3900, h 800, 0.4536 kg at 20 °C, 16 222.8912 J/K of water, 99.2 °C
// when they go in, boiling point 100 °C, 1420 W.
func TestCoupledModes(t *testing.T) {
	const (
		radius, k, rho, c, h = 0.005, 0.55, 1000.0, 3900.0, 800.0
		water, power         = 16222.8912, 1420.0
	)
	alpha := k / (rho * c)
	bi, gamma := h*radius/k, 0.4536*c/water
	scale := radius * radius / alpha
	s := power * scale / water
	for _, want := range []struct {
		shape        Shape
		roots        [3]float64
		water        [5]float64
		centre, mean float64
	}{
		{Slab, [3]float64{1.447689, 4.207537, 7.089303}, [5]float64{98.7480, 98.6145, 98.8109, 99.8482, 103.0322}, 47.141, 62.217},
		{Cylinder, [3]float64{2.195705, 4.925925, 7.811879}, [5]float64{97.9306, 97.3592, 96.7502, 97.6032, 101.3826}, 70.480, 82.805},
		{Sphere, [3]float64{2.844776, 5.599335, 8.507858}, [5]float64{97.1839, 96.2964, 95.4395, 96.6839, 101.0630}, 84.435, 91.235},
	} {
		var m modes
		m.solve(want.shape, bi, gamma, s, 40)
		for i, z := range want.roots {
			near(t, "root", m.z[i], z, 1e-6)
		}
		begin := m.start(20-100, 99.2-100)
		for i, seconds := range []float64{5, 10, 30, 60, 120} {
			now := m.after(&begin, seconds/scale)
			near(t, "water", 100+m.water(&now), want.water[i], 0.0003)
		}
		now := m.after(&begin, 60/scale)
		near(t, "centre at 60 s", 100+m.at(&now, 0), want.centre, 0.002)
		near(t, "mean at 60 s", 100+m.mean(&now), want.mean, 0.002)
	}
}

// The heat in the pot grows by the power times the time, whatever the pieces
// do: energy is conserved to rounding for any number of modes.
func TestModesKeepTheHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := Shape(rapid.IntRange(1, 3).Draw(t, "shape"))
		bi := math.Exp(rapid.Float64Range(-4, 6).Draw(t, "ln Bi"))
		gamma := math.Exp(rapid.Float64Range(-6, 1).Draw(t, "ln γ"))
		n := rapid.IntRange(1, maxModes).Draw(t, "modes")
		power := rapid.Float64Range(0, 50).Draw(t, "s")
		tau := rapid.Float64Range(0, 3).Draw(t, "τ")
		var m modes
		m.solve(shape, bi, gamma, power, n)
		for i := 1; i < n; i++ {
			if !(m.z[i] > m.z[i-1]) {
				t.Fatalf("roots do not rise: %v", m.z[:n])
			}
		}
		begin := m.start(-80, -1)
		now := m.after(&begin, tau)
		before := m.gamma*m.mean(&begin) + m.water(&begin)
		after := m.gamma*m.mean(&now) + m.water(&now)
		moved := power*tau + 80*gamma
		if math.Abs(after-before-power*tau) > 1e-9*moved {
			t.Fatalf("%v came in and %v is there", power*tau, after-before)
		}
	})
}

// Modes with different roots are orthogonal, so that a start is taken apart
// exactly: with many modes the start is put together again.
func TestModesPutTheStartTogether(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		var m modes
		m.solve(shape, 8, 0.2, 3, maxModes)
		begin := m.start(-70, 0)
		near(t, "water at the start", m.water(&begin), 0, 0.02)
		near(t, "mean at the start", m.mean(&begin), -70, 0.1)
	}
}

// The sphere's first root at Bi = 1 is π/2 to the last digits.
func TestRootToTheLastDigits(t *testing.T) {
	var m modes
	m.solve(Sphere, 1, 0, 0, 1)
	near(t, "root", m.z[0], math.Pi/2, 1e-13)
}
