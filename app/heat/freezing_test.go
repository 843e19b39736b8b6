package heat

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A pint bag lying flat and a quart box, in still freezer air: sizes, film and
// air share are guesses.
var (
	pintBag  = Pack{Shape: Slab, SizeM: 0.0125, SecondM: 0.065, ThirdM: 0.075, FilmWPerM2K: 6, AirShare: 0.1}
	quartBox = Pack{Shape: Slab, SizeM: 0.0475, SecondM: 0.05, ThirdM: 0.05, FilmWPerM2K: 6, AirShare: 0.1}
)

// step goes one step on and stops the test where heat is lost, 1e-6 of the heat
// moved, or a temperature leaves what it is exposed to.
func (f *Freezing) stepChecked(t rapid.TB, begin, airC, warmestC float64) {
	if _, err := f.tread(f.stepS(airC), airC, airC); err != nil {
		t.Fatal(err)
	}
	gone := begin - f.mean(f.now)
	if math.Abs(gone-f.outJPerM3) > 1e-6*math.Abs(f.outJPerM3) {
		t.Fatalf("after %v s %v J/m³ are gone, %v came out", f.afterS, gone, f.outJPerM3)
	}
	for _, c := range f.tempC {
		if !(c >= airC-0.01 && c <= warmestC+0.01) {
			t.Fatalf("after %v s a shell at %v °C, between air of %v °C and a start of %v °C", f.afterS, c, airC, warmestC)
		}
	}
}

func drawPack(t *rapid.T) Pack {
	p := Pack{
		Shape: Shape(rapid.IntRange(1, 3).Draw(t, "shape")), SizeM: rapid.Float64Range(0.004, 0.06).Draw(t, "size"),
		FilmWPerM2K: math.Exp(rapid.Float64Range(1, 5).Draw(t, "ln h")), AirShare: rapid.Float64Range(0, 0.5).Draw(t, "air"),
	}
	if p.Shape != Sphere && rapid.Bool().Draw(t, "other faces") {
		p.SecondM = p.SizeM * rapid.Float64Range(1, 4).Draw(t, "second")
		if p.Shape == Slab {
			p.ThirdM = p.SizeM * rapid.Float64Range(1, 4).Draw(t, "third")
		}
	}
	return p
}

// Heat is kept at every step, no shell leaves its extremes, colder air and a
// thinner pack are never later.
func TestFreezingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		food, p := drawComposition(t), drawPack(t)
		start, air := rapid.Float64Range(0.5, 40).Draw(t, "start"), rapid.Float64Range(-40, -12).Draw(t, "air")
		f, err := p.Freeze(food, start)
		if err != nil {
			t.Fatal(err)
		}
		begin, was := f.mean(f.now), math.Inf(1)
		for range 60 {
			f.stepChecked(t, begin, air, start)
			if mean := f.MeanC(); !(mean < was) {
				t.Fatalf("mean goes from %v to %v °C", was, mean)
			}
			was = f.MeanC()
		}
		core := air + rapid.Float64Range(2, 6).Draw(t, "core over air")
		s, err := p.FreezingTimeS(food, start, air, core)
		if err != nil || !(s > 0) {
			t.Fatal(s, err)
		}
		colder, err := p.FreezingTimeS(food, start, air-2, core)
		if err != nil || colder > s*1.001 {
			t.Fatalf("%v s in air of %v °C, %v s two degrees colder: %v", s, air, colder, err)
		}
		thicker := p
		thicker.SizeM *= 1.2
		thicker.SecondM *= 1.2
		thicker.ThirdM *= 1.2
		later, err := thicker.FreezingTimeS(food, start, air, core)
		if err != nil || later < s*0.999 {
			t.Fatalf("%v s, a thicker pack %v s: %v", s, later, err)
		}
	})
}

// Twice the shells and half the steps change no figure by more than half a
// percent.
func TestFreezingStepsAreEnough(t *testing.T) {
	for _, c := range []struct {
		name               string
		p                  Pack
		food               Composition
		start, airC, coreC float64
	}{
		{"pint bag", pintBag, snapBeans, 10, -18, -15},
		{"quart box", quartBox, peas, 10, -23, -18},
		{"loose pint", Pack{Shape: Cylinder, SizeM: 0.04, SecondM: 0.055, FilmWPerM2K: 8, AirShare: 0.4}, peas, 5, -18, -10},
		{"pea on a tray", Pack{Shape: Sphere, SizeM: 0.004, FilmWPerM2K: 15}, peas, 10, -20, -15},
		{"plate freezer", Pack{Shape: Slab, SizeM: 0.05, FilmWPerM2K: 300}, spinach, 20, -35, -18},
		{"can in a blast", Pack{Shape: Cylinder, SizeM: 0.06, FilmWPerM2K: 50}, spinach, 20, -35, -18},
	} {
		figures := func(cells int, finer float64) [3]float64 {
			s, _, err := c.food.substance(c.p.AirShare)
			if err != nil {
				t.Fatal(err)
			}
			shape, size, faster := c.p.run(s.conductivity(-15))
			f := newFreezing(shape, size, c.p.FilmWPerM2K, faster, c.start, s, cells)
			f.finer = finer
			// a third of the way: core and mean, then the time to the core
			third, err := c.p.FreezingTimeS(c.food, c.start, c.airC, c.coreC)
			if err != nil {
				t.Fatal(err)
			}
			if err := f.Step(third/3, constant1(c.airC)); err != nil {
				t.Fatal(err)
			}
			core, mean := f.CoreC(), f.mean(f.now)
			until, err := f.UntilCore(c.coreC, c.airC)
			if err != nil {
				t.Fatal(err)
			}
			return [3]float64{until, s.at(c.start) - mean, c.start - core}
		}
		base := figures(freezingCells, 1)
		for k, other := range [][3]float64{figures(2*freezingCells, 1), figures(freezingCells, 2), figures(4*freezingCells, 4)} {
			tolerance := 0.005
			if k == 2 { // both, and both again
				tolerance = 0.01
			}
			for i, what := range []string{"time", "heat out", "core's fall"} {
				nearly(t, fmt.Sprint(c.name, ": ", what, " ", k), other[i], base[i], tolerance*base[i])
			}
		}
	}
}

// Without ice it is conduction: the series.
func TestNothingToFreezeIsTheSeries(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		s := substance{content: newContent(-50, 3.7e6, 2e8, 3.7e6), unfrozenWPerMK: 0.5}
		f := newFreezing(shape, 0.02, 20, 1, 30, s, 60)
		f.finer = 4
		p := Piece{shape, 0.02, 0.5, 1000, 3700, 20}
		exact, err := p.Into(30, -20)
		if err != nil {
			t.Fatal(err)
		}
		for _, after := range []float64{300, 1000, 4000} {
			if err := f.Step(after-f.afterS, constant1(-20)); err != nil {
				t.Fatal(err)
			}
			nearly(t, "core", f.CoreC(), exact.CentreC(after), 0.03)
			nearly(t, "mean", f.MeanC(), exact.MeanC(after), 0.03)
			nearly(t, "surface", f.SurfaceC(-20), exact.SurfaceC(after), 0.03)
		}
	}
}

// A small piece in a weak film is of one temperature: its heat content falls by
// film × area × (temperature − air), worked out here by Runge and Kutta.
func TestSmallPackIsLumped(t *testing.T) {
	p := Pack{Shape: Sphere, SizeM: 0.002, FilmWPerM2K: 2}
	f, err := p.Freeze(peas, 20)
	if err != nil {
		t.Fatal(err)
	}
	h, air := f.at(20), -20.0
	fall := func(h float64) float64 { return -3 / p.SizeM * p.FilmWPerM2K * (f.temperature(h) - air) }
	const dt = 0.5
	for s := 0.0; s < 3000; s += dt {
		k1 := fall(h)
		k2 := fall(h + dt/2*k1)
		k3 := fall(h + dt/2*k2)
		h += dt / 6 * (k1 + 2*k2 + 2*k3 + fall(h+dt*k3))
	}
	if err := f.Step(3000, constant1(air)); err != nil {
		t.Fatal(err)
	}
	nearly(t, "mean", f.MeanC(), f.temperature(h), 0.05)
	if f.MeanC() > -2 || f.MeanC() < -19 {
		t.Errorf("mean at %v °C tests nothing", f.MeanC())
	}
}

// The time of a bar from a slab's time by E, against the enthalpy method in two
// dimensions.
func TestBarAgainstTwoDimensions(t *testing.T) {
	for _, c := range []struct{ film, wide, tolerance float64 }{{8, 1, 0.04}, {8, 2, 0.05}, {40, 1, 0.05}} {
		s, _, err := snapBeans.substance(0)
		if err != nil {
			t.Fatal(err)
		}
		p := Pack{Shape: Slab, SizeM: 0.03, SecondM: 0.03 * c.wide, FilmWPerM2K: c.film}
		quick, err := p.FreezingTimeS(snapBeans, 10, -20, -15)
		if err != nil {
			t.Fatal(err)
		}
		slow := barByHand(&s, p, 10, -20, -15)
		t.Logf("film %v, 1 × %v: %.2f h by E, %.2f h in two dimensions (%+.1f %%)", c.film, c.wide, quick/3600, slow/3600, 100*(quick/slow-1))
		nearly(t, "time of a bar", quick, slow, c.tolerance*slow)
	}
}

// barByHand is a quarter of a bar in squares, forward in time: slow and
// obvious.
func barByHand(s *substance, p Pack, startC, airC, coreC float64) float64 {
	const n = 10
	step := p.SizeM / n
	wide := int(math.Round(p.SecondM / step))
	h := make([][]float64, n)
	flow := make([][]float64, n)
	for i := range h {
		h[i], flow[i] = make([]float64, wide), make([]float64, wide)
		for j := range h[i] {
			h[i][j] = s.at(startC)
		}
	}
	dt := 0.2 * step * step * s.frozen / s.conductivity(airC)
	for after := 0.0; ; after += dt {
		for i := range n {
			for j := range wide {
				flow[i][j] = 0
			}
		}
		temp := func(i, j int) float64 { return s.temperature(h[i][j]) }
		out := func(t float64) float64 {
			return (t - airC) / (1/p.FilmWPerM2K + step/(2*s.conductivity(t)))
		}
		for i := range n {
			for j := range wide {
				t := temp(i, j)
				if i < n-1 {
					q := (s.potential(t) - s.potential(temp(i+1, j))) / step
					flow[i][j] -= q
					flow[i+1][j] += q
				} else {
					flow[i][j] -= out(t)
				}
				if j < wide-1 {
					q := (s.potential(t) - s.potential(temp(i, j+1))) / step
					flow[i][j] -= q
					flow[i][j+1] += q
				} else {
					flow[i][j] -= out(t)
				}
			}
		}
		for i := range n {
			for j := range wide {
				h[i][j] += dt / step * flow[i][j]
			}
		}
		if temp(0, 0) <= coreC {
			return after
		}
	}
}

// Pham's formula beside the enthalpy method over packs of a household.
func TestPhamBesideTheEnthalpyMethod(t *testing.T) {
	low, high := 0.0, 0.0
	for _, food := range []Composition{snapBeans, peas, spinach} {
		for _, p := range []Pack{pintBag, quartBox, {Shape: Cylinder, SizeM: 0.04, SecondM: 0.055, FilmWPerM2K: 8, AirShare: 0.4}} {
			for _, air := range []float64{-18, -23} {
				enthalpy, err1 := p.FreezingTimeS(food, 10, air, -15)
				pham, err2 := p.PhamTimeS(food, 10, air, -15)
				if err := errors.Join(err1, err2); err != nil {
					t.Fatal(err)
				}
				off := pham/enthalpy - 1
				low, high = math.Min(low, off), math.Max(high, off)
			}
		}
	}
	t.Logf("Pham is %.1f %% to %+.1f %% off the enthalpy method", 100*low, 100*high)
	if low < -0.14 || high > 0.11 {
		t.Errorf("Pham is %.1f %% to %+.1f %% off the enthalpy method", 100*low, 100*high)
	}
}

// Films in series: a millimetre of air takes as much as 24 W/(m² K).
func TestThroughLayers(t *testing.T) {
	h, err := ThroughLayers(1e4, Layer{0.001, StillAirWPerMK})
	nearly(t, "air gap", must(t, h, err), 1/(1e-4+0.001/0.024), 1e-9)
	h, err = ThroughLayers(600, Layer{0.001, CardWPerMK}) // Earle 6.6 (memory): 4.1 h wrapped, 2.1 h bare
	p, r := plankFactors(Slab)
	nearly(t, "Earle 6.6", plankS(1090*256e3, -2, -34, 0.1, p, r, must(t, h, err), 1.6)/3600, 4.1, 0.02)
	nearly(t, "Earle 6.6, bare", plankS(1090*256e3, -2, -34, 0.1, p, r, 600, 1.6)/3600, 2.09, 0.01)
}

func TestFreezingRefusesInWords(t *testing.T) {
	_, err := pintBag.FreezingTimeS(snapBeans, 10, -18, -18)
	var never *UnreachableError
	if !errors.As(err, &never) || !strings.Contains(err.Error(), "-17 °C or warmer") {
		t.Errorf("a core of −18 °C in air of −18 °C: %v", err)
	}
	if _, err := pintBag.PhamTimeS(snapBeans, 10, -18, -18); !errors.As(err, &never) {
		t.Errorf("the same by Pham: %v", err)
	}
	f, err := pintBag.Freeze(snapBeans, 10)
	if err != nil {
		t.Fatal(err)
	}
	flat := pintBag
	flat.SecondM = 0.001
	for name, call := range map[string]func() error{
		"frozen before":    func() error { _, err := pintBag.Freeze(snapBeans, -5); return err },
		"no film":          func() error { _, err := ThroughLayers(0); return err },
		"a wall of card":   func() error { _, err := ThroughLayers(5, Layer{1, 0.06}); return err },
		"no pack":          func() error { _, err := Pack{}.Freeze(snapBeans, 10); return err },
		"sizes not sorted": func() error { return flat.Check() },
		"warm air":         func() error { _, err := f.UntilCore(-1, 5); return err },
		"Pham in mild air": func() error { _, err := pintBag.PhamTimeS(snapBeans, 10, -10, -5); return err },
		"backwards":        func() error { return f.Step(-1, constant1(-18)) },
		"air of no number": func() error { return f.Step(10, constant1(math.NaN())) },
		"onion flakes": func() error {
			_, err := pintBag.Freeze(FromPercent(3.93, 8.95, 0.46, 83.28, 9.2, 3.38, 0), 10)
			return err
		},
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
	// an air that turns into no number within a step
	err = f.Step(3600, func(afterS float64) float64 { return math.Sqrt(100-afterS) - 30 })
	if err == nil {
		t.Error("an air that is no number went through")
	}
}

func TestFreezingAllocatesNothing(t *testing.T) {
	f, err := pintBag.Freeze(snapBeans, 10)
	if err != nil {
		t.Fatal(err)
	}
	air := constant1(-18)
	if n := testing.AllocsPerRun(100, func() {
		if err := f.Step(60, air); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
}

// A day of a pack in the freezer: at most 5 ms.
func BenchmarkFreezingDay(b *testing.B) {
	air := constant1(-18)
	b.ReportAllocs()
	for b.Loop() {
		f, err := pintBag.Freeze(snapBeans, 10)
		if err != nil {
			b.Fatal(err)
		}
		if err := f.Step(86400, air); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFreezingTime(b *testing.B) {
	for b.Loop() {
		if _, err := quartBox.FreezingTimeS(snapBeans, 10, -18, -15); err != nil {
			b.Fatal(err)
		}
	}
}

// The order of a brick's two longer sides does not matter, and long sides are
// as good as none.
func TestFacesHaveTheirLimits(t *testing.T) {
	for _, bi := range []float64{0.05, 0.3, 2, 20} {
		nearly(t, "sides swapped", brickFaces(bi, 1.3, 2.5), brickFaces(bi, 2.5, 1.3), 1e-6)
		nearly(t, "long brick", brickFaces(bi, 1.5, 1000), barFaces(bi, 1.5), 1e-6)
		nearly(t, "wide bar", barFaces(bi, 1000), 1, 1e-6)
		nearly(t, "high can", tallFaces(bi, 1000), 2, 1e-6)
		nearly(t, "flat can", squatFaces(bi, 1000), 1, 1e-6)
		nearly(t, "a can as high as wide", tallFaces(bi, 1), squatFaces(bi, 1), 1e-4)
	}
}
