package heat

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// Thomas's algorithm against gonum's tridiagonal solver.
func TestTridiagonalAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 60).Draw(t, "n")
		value := rapid.Float64Range(-1, 1)
		m := newTridiagonal(n)
		b := make([]float64, n)
		for i := range n {
			m.lower[i], m.upper[i], b[i] = value.Draw(t, "lower"), value.Draw(t, "upper"), value.Draw(t, "b")
			m.diag[i] = math.Abs(m.lower[i]) + math.Abs(m.upper[i]) + rapid.Float64Range(0.01, 2).Draw(t, "over")
		}
		want := mat.NewVecDense(n, nil)
		dl, d, du := append([]float64(nil), m.lower[1:]...), append([]float64(nil), m.diag...), append([]float64(nil), m.upper[:n-1]...)
		if err := mat.NewTridiag(n, dl, d, du).SolveVecTo(want, false, mat.NewVecDense(n, append([]float64(nil), b...))); err != nil {
			t.Fatal(err)
		}
		m.factor()
		m.solve(b)
		for i := range n {
			if math.Abs(b[i]-want.AtVec(i)) > 1e-10*(1+math.Abs(want.AtVec(i))) {
				t.Fatalf("x[%d] = %v; gonum has %v", i, b[i], want.AtVec(i))
			}
		}
	})
}

func constantW(powerW float64) func(float64, float64) float64 {
	return func(float64, float64) float64 { return powerW }
}

// march goes to a time in steps, and stops the test where heat is lost: what is
// in pieces and water is what was brought less the steam, to 1e-6 of the heat
// moved, at every step.
func march(t rapid.TB, m *March, untilS, stepS float64) (lowest float64) {
	lowest = m.WaterC()
	for m.AfterS() < untilS-1e-9 {
		if err := m.Step(math.Min(stepS, untilS-m.AfterS())); err != nil {
			t.Fatal(err)
		}
		moved := math.Abs(m.BroughtJ()) + m.SteamJ()
		for i := range m.kinds {
			moved += math.Abs(m.MeanC(i)-m.kinds[i].startC) * m.kinds[i].filmWPK // a floor for the first moments
		}
		if gap := m.HeldJ() + m.SteamJ() - m.BroughtJ(); !(math.Abs(gap) <= 1e-6*moved) {
			t.Fatalf("after %v s %v J of %v J are lost", m.AfterS(), gap, moved)
		}
		lowest = math.Min(lowest, m.WaterC())
	}
	return lowest
}

// The closed form of the kettle and the shells agree on all that is shown, and
// twice as many shells are four times as near.
func TestKettleAgainstShells(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 16222.8912 / waterHeatJPerKgK, PowerW: 1420, WaterC: 99.2}
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		p := Piece{Shape: shape, SizeM: 0.005, ConductivityWPerMK: 0.55, DensityKgPerM3: 1000, HeatJPerKgK: 3900, FilmWPerM2K: 800}
		exact, err := k.Blanch(p, 0.4536, 20)
		if err != nil {
			t.Fatal(err)
		}
		backOff := map[int]float64{}
		for _, cells := range []int{20, 40, 160} {
			m, err := MarchInPot(Pot{k.capacityJPK(), k.WaterC, k.BoilC, constantW(k.PowerW)}, cells, Load{p, 0.4536, 20})
			if err != nil {
				t.Fatal(err)
			}
			dip := march(t, m, 200, 0.25)
			backOff[cells] = math.Abs(m.BackS() - exact.BackS)
			if cells == 160 {
				nearly(t, "back", m.BackS(), exact.BackS, 0.01)
				nearly(t, "dip", dip, exact.DipC, 0.001)
				nearly(t, "centre", m.CentreC(0), exact.PieceC(200, 0), 0.002)
				nearly(t, "mean", m.MeanC(0), exact.MeanC(200), 0.002)
				nearly(t, "surface", m.SurfaceC(0), exact.PieceC(200, 1), 0.002)
			}
		}
		if ratio := backOff[20] / backOff[40]; ratio < 3.3 {
			t.Errorf("shape %d: return off by %.4f s with 20 shells and %.4f s with 40: not second order", shape, backOff[20], backOff[40])
		}
	}
}

// In surroundings that stay as they are the shells follow the series.
func TestShellsFollowTheSeries(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		p := bean
		p.Shape = shape
		m, err := MarchIn(constant1(100), 200, Load{p, 0.5, 20})
		if err != nil {
			t.Fatal(err)
		}
		exact, err := p.Into(20, 100)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []float64{5, 20, 60, 180} {
			march(t, m, s, 0.25)
			nearly(t, "centre", m.CentreC(0), exact.CentreC(s), 0.02)
			nearly(t, "mean", m.MeanC(0), exact.MeanC(s), 0.02)
			nearly(t, "surface", m.SurfaceC(0), exact.SurfaceC(s), 0.02)
		}
	}
}

func constant1(x float64) func(float64) float64 { return func(float64) float64 { return x } }

// Thin pieces in little water: two heat capacities with one resistance between
// them, whose difference fades exponentially.
func TestThinPiecesInAPotAreLumped(t *testing.T) {
	p := Piece{Shape: Slab, SizeM: 0.0005, ConductivityWPerMK: 1, DensityKgPerM3: 1000, HeatJPerKgK: 4000, FilmWPerM2K: 5}
	const mass, potJPK, startC, waterC = 1.0, 8000.0, 20.0, 60.0
	m, err := MarchInPot(Pot{potJPK, waterC, 100, nil}, 10, Load{p, mass, startC})
	if err != nil {
		t.Fatal(err)
	}
	piecesJPK, filmWPK := mass*p.HeatJPerKgK, mass/p.DensityKgPerM3/p.SizeM*p.FilmWPerM2K
	mixed := (piecesJPK*startC + potJPK*waterC) / (piecesJPK + potJPK)
	rate := filmWPK * (1/piecesJPK + 1/potJPK)
	for _, s := range []float64{50, 300, 1500} {
		march(t, m, s, 5)
		left := (waterC - startC) * math.Exp(-rate*s)
		nearly(t, "water", m.WaterC(), mixed+left*piecesJPK/(piecesJPK+potJPK), 0.02)
		nearly(t, "pieces", m.MeanC(0), mixed-left*potJPK/(piecesJPK+potJPK), 0.02)
	}
}

// Two kinds that are the same are one kind; a lid lifted, a lagging burner and
// losses that grow with the water bring the boil later, and nothing gets hotter
// than the water's boiling point.
func TestKindsLidsAndLaggingBurners(t *testing.T) {
	pot := Pot{CapacityJPK: 16000, WaterC: 100, BoilC: 100, NetW: constantW(1500)}
	back := func(pot Pot, loads ...Load) float64 {
		m, err := MarchInPot(pot, 40, loads...)
		if err != nil {
			t.Fatal(err)
		}
		march(t, m, 900, 0.5)
		if m.WaterC() != 100 || m.SteamJ() <= 0 {
			t.Errorf("water at %v °C with %v J of steam after a quarter of an hour", m.WaterC(), m.SteamJ())
		}
		return m.BackS()
	}
	one := back(pot, Load{bean, 0.4, 20})
	nearly(t, "two halves", back(pot, Load{bean, 0.2, 20}, Load{bean, 0.2, 20}), one, 1e-6)
	thick := bean
	thick.SizeM *= 2
	if mixed := back(pot, Load{bean, 0.2, 20}, Load{thick, 0.2, 20}); mixed >= one {
		t.Errorf("half of it thicker is back after %v s, all of it thin after %v s", mixed, one)
	}
	for name, net := range map[string]func(afterS, waterC float64) float64{
		"losses": func(_, waterC float64) float64 { return 1500 - 3*(waterC-20) },
		"lid lifted for 20 s": func(afterS, _ float64) float64 {
			if afterS < 20 {
				return 900
			}
			return 1500
		},
		"lagging burner": func(afterS, _ float64) float64 { return 1500 * (1 - math.Exp(-afterS/30)) },
	} {
		p := pot
		p.NetW = net
		if later := back(p, Load{bean, 0.4, 20}); !(later > one+1) {
			t.Errorf("%s: back after %v s, without after %v s", name, later, one)
		}
	}
}

// Twice the shells and half the step change nothing that is shown by more than
// half a percent.
func TestShellsAndStepsAreEnough(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		p := bean
		p.Shape = shape
		figures := func(cells int, stepS float64) [4]float64 {
			m, err := MarchInPot(Pot{15000, 99, 100, func(_, waterC float64) float64 { return 1700 - 2*(waterC-20) }}, cells, Load{p, 0.4536, 21})
			if err != nil {
				t.Fatal(err)
			}
			dip := march(t, m, 180, stepS)
			return [4]float64{m.BackS(), 100 - dip, m.CentreC(0) - 21, m.MeanC(0) - 21}
		}
		base := figures(40, 1)
		for _, other := range [][4]float64{figures(40, 0.5), figures(80, 1)} {
			for i := range base {
				nearly(t, "figure", other[i], base[i], 0.005*base[i])
			}
		}
	}
}

// overshootK is how far a long step may carry thin pieces past the water that
// they come to rest in.
const overshootK = 0.01

// Whatever is put in: heat is kept at every step, temperatures stay between
// what they are exposed to, and more power never boils later.
func TestMarchLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pot := Pot{CapacityJPK: rapid.Float64Range(2000, 80000).Draw(t, "pot"), BoilC: rapid.Float64Range(85, 101).Draw(t, "boil")}
		pot.WaterC = pot.BoilC - rapid.Float64Range(0, 5).Draw(t, "under the boil")
		power, loss := rapid.Float64Range(300, 5000).Draw(t, "power"), rapid.Float64Range(0, 4).Draw(t, "loss")
		pot.NetW = func(_, waterC float64) float64 { return power - loss*(waterC-20) }
		var loads []Load
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			loads = append(loads, Load{drawPiece(t), rapid.Float64Range(0.05, 1).Draw(t, "mass"), rapid.Float64Range(0, 40).Draw(t, "start")})
		}
		cells, step := rapid.IntRange(5, 40).Draw(t, "shells"), rapid.Float64Range(0.2, 20).Draw(t, "step")
		m, err := MarchInPot(pot, cells, loads...)
		if err != nil {
			t.Fatal(err)
		}
		for m.AfterS() < 300 {
			march(t, m, m.AfterS()+step, step)
			if !(m.WaterC() >= -1e-9 && m.WaterC() <= pot.BoilC) {
				t.Fatalf("water at %v °C", m.WaterC())
			}
			for i := range loads {
				for _, c := range []float64{m.MeanC(i), m.SurfaceC(i)} {
					if !(c >= -overshootK && c <= pot.BoilC+overshootK) {
						t.Fatalf("piece at %v °C", c)
					}
				}
			}
		}
		stronger := pot
		stronger.NetW = func(afterS, waterC float64) float64 { return 1.2*power - loss*(waterC-20) }
		s, err := MarchInPot(stronger, cells, loads...)
		if err != nil {
			t.Fatal(err)
		}
		march(t, s, 300, step)
		if m.BackS() > 0 && (s.BackS() == 0 && s.WaterC() < pot.BoilC || s.BackS() > m.BackS()*(1+1e-6)+1e-3*step) {
			t.Fatalf("more power boils after %v s, less after %v s", s.BackS(), m.BackS())
		}
	})
}

func TestMarchAllocatesNothing(t *testing.T) {
	m, err := MarchInPot(Pot{15000, 99, 100, constantW(1500)}, 40, Load{bean, 0.3, 20}, Load{bean, 0.2, 20})
	if err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(200, func() {
		if err := m.Step(1); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
}

func TestMarchRefusesWithTheRange(t *testing.T) {
	pot := Pot{15000, 99, 100, nil}
	m, err := MarchInPot(pot, 20)
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"no pot":          func() error { _, err := MarchInPot(Pot{BoilC: 100}, 20); return err },
		"over the boil":   func() error { _, err := MarchInPot(Pot{1000, 120, 100, nil}, 20); return err },
		"two shells":      func() error { _, err := MarchInPot(pot, 2, Load{bean, 0.4, 20}); return err },
		"no mass":         func() error { _, err := MarchInPot(pot, 20, Load{bean, 0, 20}); return err },
		"no piece":        func() error { _, err := MarchIn(constant1(90), 20, Load{Piece{}, 1, 20}); return err },
		"backwards":       func() error { return m.Step(-1) },
		"step of no time": func() error { return m.Step(math.NaN()) },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
}

// Five minutes of a kettle in steps of a second with 40 shells.
func BenchmarkMarch(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		m, err := MarchInPot(Pot{15000, 99, 100, constantW(1500)}, 40, Load{bean, 0.45, 20})
		if err != nil {
			b.Fatal(err)
		}
		for range 300 {
			if err := m.Step(1); err != nil {
				b.Fatal(err)
			}
		}
	}
}
