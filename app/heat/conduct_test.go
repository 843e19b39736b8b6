package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// With a weak film a piece is of one temperature, which falls by the rule of
// one heat capacity behind one resistance, ∂Y/∂Fo = −n Bi Y.
func TestSmallPiecesAreLumped(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		const bi = 1e-4
		var s series
		s.set(shape, bi, 1)
		for _, fo := range []float64{1e-4, 1, 1000, 10000} {
			lumped := math.Exp(-shape.dims() * bi * fo)
			nearly(t, "centre", s.at(fo, 0), lumped, 2e-4)
			nearly(t, "mean", s.mean(fo), lumped, 2e-4)
		}
	}
}

// The first moments as a body without an end and the series meet.
func TestShortTimesMeetTheSeries(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		tolerance := 1e-7
		if shape == Cylinder { // and the term left out
			tolerance = 1e-4
		}
		for _, bi := range []float64{0.01, 0.5, 1, 1.00001, 10, 100, 1e4} {
			var s series
			s.set(shape, bi, 1)
			for i := range 51 {
				x := float64(i) / 50
				nearly(t, "share left", 1-s.entered(shortFo, x), s.at(shortFo, x), tolerance)
			}
			nearly(t, "mean left", 1-s.taken(shortFo), s.mean(shortFo), tolerance)
		}
	}
}

// A slab cools as the square root of time through its first moments, whatever
// its thickness: Carslaw & Jaeger, for a surface kept at one temperature.
func TestSurfaceWithoutFilm(t *testing.T) {
	var s series
	s.set(Slab, 1e9, 1)
	for _, fo := range []float64{1e-6, 1e-4, 1e-2} {
		nearly(t, "taken", 1-s.mean(fo), 2*math.Sqrt(fo/math.Pi), 1e-6)
		nearly(t, "half way in", 1-s.at(fo, 0.5), math.Erfc(0.25/math.Sqrt(fo)), 1e-3)
	}
}

func drawPiece(t *rapid.T) Piece {
	return Piece{
		Shape: Shape(rapid.IntRange(1, 3).Draw(t, "shape")), SizeM: rapid.Float64Range(0.001, 0.05).Draw(t, "size"),
		ConductivityWPerMK: rapid.Float64Range(0.2, 0.7).Draw(t, "k"), DensityKgPerM3: rapid.Float64Range(400, 1200).Draw(t, "ρ"),
		HeatJPerKgK: rapid.Float64Range(3000, 4200).Draw(t, "c"), FilmWPerM2K: math.Exp(rapid.Float64Range(2, 9).Draw(t, "ln h")),
	}
}

// Between the extremes at all times, surface ahead of centre with the mean
// between, the end later than the middle, and back from temperature to time.
func TestConductionLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		start, around := rapid.Float64Range(-20, 40).Draw(t, "start"), rapid.Float64Range(60, 101).Draw(t, "around")
		var also []float64
		if p.Shape < Sphere && rapid.Bool().Draw(t, "short") {
			also = append(also, p.SizeM*rapid.Float64Range(0.5, 3).Draw(t, "half height"))
		}
		c, err := p.Into(start, around, also...)
		if err != nil {
			t.Fatal(err)
		}
		after := p.scaleS() * math.Exp(rapid.Float64Range(-14, 2).Draw(t, "ln Fo"))
		const slack = 2e-4 // of the cylinder's first moments, × 100 °C
		was := start
		for _, s := range []float64{0, after, 1.5 * after, 10 * after} {
			centre, mean, surface := c.CentreC(s), c.MeanC(s), c.SurfaceC(s)
			if !(start-slack*100 <= centre && centre <= mean+slack*100 && centre <= surface+slack*100 && surface <= around+slack*100 && mean <= around+slack*100) {
				t.Fatalf("after %v s: centre %v, mean %v, surface %v between %v and %v", s, centre, mean, surface, start, around)
			}
			if centre < was-slack*100 {
				t.Fatalf("centre falls from %v to %v", was, centre)
			}
			was = centre
			if f := c.FluxWPerM2(s); f < -slack*100*p.FilmWPerM2K || math.IsNaN(f) {
				t.Fatalf("flux %v", f)
			}
		}
		want := start + (around-start)*rapid.Float64Range(0.001, 0.999).Draw(t, "share")
		s, err := c.ReachesS(0, want)
		if err != nil || math.Abs(c.CentreC(s)-want) > 1e-6+slack*100 {
			t.Fatalf("centre at %v °C after %v s is at %v, %v", want, s, c.CentreC(s), err)
		}
		bigger := p
		bigger.SizeM *= 1.2
		b, err := bigger.Into(start, around, also...)
		if err != nil || b.CentreC(after) > c.CentreC(after)+slack*100 {
			t.Fatalf("a bigger piece is at %v °C, this one at %v °C: %v", b.CentreC(after), c.CentreC(after), err)
		}
	})
}

// A brick that is very long in two directions is a slab, a can that is very
// high a long cylinder.
func TestProductsHaveTheirLimits(t *testing.T) {
	p := bean
	p.Shape = Slab
	slab, err1 := p.Into(20, 100)
	brick, err2 := p.Into(20, 100, 0.5, 0.5)
	cube, err3 := p.Into(20, 100, p.SizeM, p.SizeM)
	if err := errors.Join(err1, err2, err3); err != nil {
		t.Fatal(err)
	}
	for _, s := range []float64{0.1, 10, 60, 300} {
		nearly(t, "long brick", brick.CentreC(s), slab.CentreC(s), 1e-9)
		left := (100 - slab.CentreC(s)) / 80
		nearly(t, "cube", cube.CentreC(s), 100-80*left*left*left, 1e-9)
	}
}

func TestConductionRefusesWithTheRange(t *testing.T) {
	c, err := bean.Into(20, 100)
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"glowing":               func() error { _, err := bean.Into(20, 500); return err },
		"not a number":          func() error { _, err := bean.Into(math.NaN(), 100); return err },
		"a cylinder's width":    func() error { _, err := bean.Into(20, 100, 0.01, 0.01); return err },
		"thin as a hair":        func() error { _, err := bean.Into(20, 100, 1e-6); return err },
		"hotter than the water": func() error { _, err := c.ReachesS(0, 101); return err },
		"as hot as the water":   func() error { _, err := c.ReachesS(0, 100); return err },
		"outside of the piece":  func() error { _, err := c.ReachesS(2, 50); return err },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) || outside.Low > outside.High {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
	if s, err := c.ReachesS(0, 20); s != 0 || err != nil {
		t.Errorf("start temperature after %v s, %v", s, err)
	}
}

// No input makes a panic or a number that is none.
func FuzzConduction(f *testing.F) {
	f.Add(1, 0.0045, 0.58, 1000.0, 3950.0, 1500.0, 20.0, 100.0, 30.0, 0.5, 60.0)
	f.Add(2, 0.02, 0.5, 1000.0, 3900.0, 5.0, 5.0, 95.0, 0.0, 1.0, 10.0)
	f.Fuzz(func(t *testing.T, shape int, size, k, density, heat, film, start, around, after, x, reach float64) {
		p := Piece{Shape(shape), size, k, density, heat, film}
		c, err := p.Into(start, around)
		if err != nil || !(after >= 0 && after < 1e9 && x >= 0 && x <= 1) {
			return
		}
		low, high := math.Min(start, around)-0.1, math.Max(start, around)+0.1
		for _, v := range []float64{c.AtC(after, x), c.MeanC(after), c.SurfaceC(after)} {
			if !(v >= low && v <= high) {
				t.Fatalf("%+v in %v from %v after %v s at %v: %v", p, around, start, after, x, v)
			}
		}
		if s, err := c.ReachesS(x, reach); err == nil && !(s >= 0 && s < 1e12) {
			t.Fatalf("%+v reaches %v after %v s", p, reach, s)
		}
	})
}

func BenchmarkConduction(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		c, err := bean.Into(20, 100)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := c.ReachesS(0, 85); err != nil {
			b.Fatal(err)
		}
	}
}
