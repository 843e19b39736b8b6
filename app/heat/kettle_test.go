package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// bean is a cut snap bean as a long cylinder 9 mm thick; the values are guesses
// within the ranges of the literature (Sweat 1974 for the conductivity).
var bean = Piece{Shape: Cylinder, SizeM: 0.0045, ConductivityWPerMK: 0.58, DensityKgPerM3: 1000, HeatJPerKgK: 3950, FilmWPerM2K: 1500}

const lb = 0.45359237

// The return and the dip of the derivation's own table (independent implicit
// finite-volume solution, 400 cells).
func TestReturnToTheBoil(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 16222.8912 / waterHeatJPerKgK, PowerW: 1420, WaterC: 99.2}
	for _, c := range []struct {
		shape              Shape
		dipC, dipAtS, back float64
	}{
		{Slab, 98.5881, 14.20, 63.49}, {Cylinder, 96.7474, 28.48, 100.41}, {Sphere, 95.4265, 27.33, 106.26},
	} {
		p := Piece{Shape: c.shape, SizeM: 0.005, ConductivityWPerMK: 0.55, DensityKgPerM3: 1000, HeatJPerKgK: 3900, FilmWPerM2K: 800}
		b, err := k.Blanch(p, 0.4536, 20)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "dip", b.DipC, c.dipC, 0.0005)
		near(t, "time of the dip", b.DipAtS, c.dipAtS, 0.02)
		near(t, "back at the boil", b.BackS, c.back, 0.01)
	}
}

// needs.md 22: on a burner that gives 1,258 W, one pound of 70 °F beans in a
// gallon is not back within a minute, half a pound is; all heat into the
// pieces first is a bound: 111 s and 0.54 lb.
func TestAPoundOnAPlugInBurner(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 3.785411784 * 0.958, PowerW: 1258, WaterC: 100}
	startC := (70 - 32) / 1.8
	pound, err := k.Blanch(bean, lb, startC)
	if err != nil {
		t.Fatal(err)
	}
	half, err := k.Blanch(bean, lb/2, startC)
	if err != nil {
		t.Fatal(err)
	}
	bound := lb * bean.HeatJPerKgK * (100 - startC) / k.PowerW
	near(t, "bound for a pound", bound, 111, 2)
	if pound.BackS <= 60 || pound.BackS > bound || half.BackS > 60 {
		t.Errorf("a pound is back in %.0f s (bound %.0f s), half a pound in %.0f s", pound.BackS, bound, half.BackS)
	}
	largest, err := k.LargestLoadKg(bean, startC, 60, 2)
	if err != nil || largest/lb < 0.53 || largest/lb > 1 {
		t.Errorf("largest load back within a minute: %.3f lb, %v", largest/lb, err)
	}
}

// From the return on the piece is solved in other modes: nothing may jump.
func TestNothingJumpsAtTheReturn(t *testing.T) {
	k := Kettle{BoilC: 97, WaterKg: 3.8, VesselJPK: 500, PowerW: 1500, WaterC: 97}
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		p := bean
		p.Shape = shape
		b, err := k.Blanch(p, lb, 20)
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []float64{0, 0.5, 0.9} {
			near(t, "piece just before and after", b.PieceC(b.BackS+1e-6, x), b.PieceC(b.BackS-1e-6, x), 0.01)
		}
		near(t, "mean just before and after", b.MeanC(b.BackS+1e-6), b.MeanC(b.BackS-1e-6), 0.005)
		near(t, "water at the return", b.WaterC(b.BackS-1e-6), 97, 1e-3)
	}
}

func TestKettleLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Kettle{
			BoilC: rapid.Float64Range(80, 101).Draw(t, "boil"), WaterKg: rapid.Float64Range(1, 40).Draw(t, "water"),
			VesselJPK: rapid.Float64Range(0, 3000).Draw(t, "vessel"), PowerW: rapid.Float64Range(300, 8000).Draw(t, "power"),
		}
		k.WaterC = k.BoilC - rapid.Float64Range(0, 3).Draw(t, "lid off")
		p := Piece{
			Shape: Shape(rapid.IntRange(1, 3).Draw(t, "shape")), SizeM: rapid.Float64Range(0.001, 0.04).Draw(t, "size"),
			ConductivityWPerMK: rapid.Float64Range(0.3, 0.7).Draw(t, "k"), DensityKgPerM3: rapid.Float64Range(500, 1100).Draw(t, "ρ"),
			HeatJPerKgK: rapid.Float64Range(3300, 4100).Draw(t, "c"), FilmWPerM2K: rapid.Float64Range(200, 4000).Draw(t, "h"),
		}
		mass, start := rapid.Float64Range(0.05, 5).Draw(t, "load"), rapid.Float64Range(0, 40).Draw(t, "start")
		b, err := k.Blanch(p, mass, start)
		if err != nil {
			t.Fatal(err)
		}
		if math.IsNaN(b.BackS) || b.BackS < 0 || b.DipC > k.WaterC+1e-9 || b.DipC < start-0.5 {
			t.Fatalf("back %v s, dip %v °C", b.BackS, b.DipC)
		}
		// all heat into the pieces first is a bound
		bound := (mass*p.HeatJPerKgK*(k.BoilC-start) + k.capacityJPK()*(k.BoilC-k.WaterC)) / k.PowerW
		if b.BackS > bound*(1+1e-9) {
			t.Fatalf("back after %v s, the bound is %v s", b.BackS, bound)
		}
		stronger := k
		stronger.PowerW *= 1.3
		s, err := stronger.Blanch(p, mass, start)
		if err != nil || s.BackS > b.BackS*(1+1e-9)+1e-9 {
			t.Fatalf("more power boils later: %v s after %v s", s.BackS, b.BackS)
		}
		bigger := p
		bigger.SizeM *= 1.3
		g, err := k.Blanch(bigger, mass, start)
		if err != nil {
			t.Fatal(err)
		}
		for _, seconds := range []float64{60, 180, 400} {
			// 0.1 °C is what the modes resolve in the first seconds after the return
			if g.PieceC(seconds, 0) > b.PieceC(seconds, 0)+0.1 {
				t.Fatalf("a bigger piece heats faster: centre %v °C over %v °C at %v s", g.PieceC(seconds, 0), b.PieceC(seconds, 0), seconds)
			}
		}
	})
}

func TestKettleRefusesWithTheRange(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 4, PowerW: 1500, WaterC: 100}
	for name, call := range map[string]func() error{
		"no water":       func() error { k := k; k.WaterKg = 0; _, err := k.Blanch(bean, 0.5, 20); return err },
		"no power":       func() error { k := k; k.PowerW = math.NaN(); _, err := k.Blanch(bean, 0.5, 20); return err },
		"negative load":  func() error { _, err := k.Blanch(bean, -1, 20); return err },
		"frozen pieces":  func() error { _, err := k.Blanch(bean, 0.5, -18); return err },
		"no shape":       func() error { p := bean; p.Shape = 0; _, err := k.Blanch(p, 0.5, 20); return err },
		"enormous limit": func() error { _, err := k.LargestLoadKg(bean, 20, 60, 1e9); return err },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
}

// A thousand draws of dip, return and centre at the end of a blanch: what a
// slider with a spread asks for at every frame.
func BenchmarkThousandDraws(b *testing.B) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		b.Run([]string{"", "slab", "cylinder", "sphere"}[shape], func(b *testing.B) {
			p := bean
			p.Shape = shape
			var out Blanch
			b.ReportAllocs()
			for b.Loop() {
				for i := range 1000 {
					k := Kettle{BoilC: 100, WaterKg: 3.6, PowerW: 1000 + float64(i), WaterC: 100}
					if err := out.work(k, p, lb, 21, kettleModes); err != nil {
						b.Fatal(err)
					}
					out.PieceC(out.BackS+180, 0)
				}
			}
		})
	}
}
