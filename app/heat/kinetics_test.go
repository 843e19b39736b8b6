package heat

import (
	"errors"
	"math"
	"testing"
)

// sweetCornPeroxidase: Naveh, Mizrahi & Kopelman 1982 (read in a copy; the
// reference temperature of one constant was garbled, 100 °C assumed).
var sweetCornPeroxidase = Inactivation{
	Fractions: []Fraction{
		{Share: 0.93, RatePerMin: 8.9, RefC: 100, ActivationJPerMol: 74900},
		{Share: 0.07, RatePerMin: 0.23, RefC: 100, ActivationJPerMol: 87900},
	},
	LowC: 70, HighC: 100,
}

// Published kinetics, recomputed (facts/kinetics/worked.md W5, W1, W8, W11).
func TestPublishedKinetics(t *testing.T) {
	hot := func(c float64) func(float64) float64 { return func(float64) float64 { return c } }
	for minutes, want := range map[float64]float64{2: 0.044, 4: 0.028, 6: 0.018, 8: 0.011, 9: 0.009, 11: 0.006, 15: 0.002} {
		left, err := sweetCornPeroxidase.Left(hot(100), 0, minutes*60)
		near(t, "corn peroxidase left at 100 °C", must(t, left, err), want, 0.0006)
	}
	// broccoli peroxidase, water: a tenth left after 6.5 min at 70 °C, 0.4 min at 90 °C (Gonçalves et al. 2009, read)
	z := 20 / math.Log10(6.5/0.4)
	near(t, "z", z, 16.5, 0.1)
	broccoli := Inactivation{Fractions: []Fraction{FromD(1, 6.5, 70, z)}}
	left, err := broccoli.Left(hot(90), 0, 0.4*60)
	near(t, "broccoli at 90 °C", must(t, left, err), 0.1, 1e-6)
	left, err = broccoli.Left(hot(80), 0, 1.6*60)
	near(t, "broccoli at 80 °C", must(t, left, err), 0.1, 0.005)
	// mushroom polyphenol oxidase: D55 112 min, D75 1.2 min → 215.4 kJ/mol
	ea := math.Log(112/1.2) * gasConstant / (1/(55+zeroCelsiusK) - 1/(75+zeroCelsiusK))
	near(t, "mushroom activation energy, kJ/mol", ea/1000, 215.4, 0.1)
	mushroom := Fraction{Share: 1, RatePerMin: math.Ln10 / 112, RefC: 55, ActivationJPerMol: ea}
	near(t, "mushroom rate at 75 °C", mushroom.Rate(75), math.Ln10/1.2, 1e-9)
}

// Adam & Horner 1941, as given by Retzer et al. 1945 (read): 72, 64, 58 %.
func TestVitaminC(t *testing.T) {
	for minutes, want := range map[float64]float64{1: 0.72, 3: 0.64, 6: 0.58} {
		left, err := VitaminCLeft(minutes)
		near(t, "vitamin C left", must(t, left, err), want, 0.005)
	}
}

// The centre keeps more than the mean, the mean more than a piece that is at
// the water's temperature at once; a longer blanch leaves less.
func TestDonenessIsOrdered(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 7, PowerW: 2000, WaterC: 100}
	ear := Piece{Shape: Cylinder, SizeM: 0.0175, ConductivityWPerMK: 0.5, DensityKgPerM3: 950, HeatJPerKgK: 3600, FilmWPerM2K: 1500}
	b, err := k.Blanch(ear, 1, 20)
	if err != nil {
		t.Fatal(err)
	}
	var last float64 = 1
	for _, minutes := range []float64{2, 4, 7, 9, 11} {
		d, err := b.Doneness(sweetCornPeroxidase, b.BackS+minutes*60)
		if err != nil {
			t.Fatal(err)
		}
		if !(d.Centre >= d.Mean && d.Mean >= d.WholeAtWater && d.WholeAtWater >= 0 && d.Centre <= 1) || d.Mean > last {
			t.Errorf("after %v min: %+v, before %v", minutes, d, last)
		}
		last = d.Mean
	}
}

// Doneness is the integral of Left at the centre, in the water and over the five
// depths, only cheaper.
func TestDonenessIsLeftAtEachDepth(t *testing.T) {
	for _, shape := range []Shape{Slab, Cylinder, Sphere} {
		for _, sizeM := range []float64{0.0003, 0.004, 0.02} {
			p := Piece{Shape: shape, SizeM: sizeM, ConductivityWPerMK: 0.5, DensityKgPerM3: 1000, HeatJPerKgK: 3800, FilmWPerM2K: 1200}
			b, err := Kettle{BoilC: 97, WaterKg: 4, PowerW: 900, WaterC: 97}.Blanch(p, 0.5, 15)
			if err != nil {
				t.Fatal(err)
			}
			for _, liftS := range []float64{0.4 * b.BackS, b.BackS + 60, b.BackS + 420} {
				d, err := b.Doneness(sweetCornPeroxidase, liftS)
				if err != nil {
					t.Fatal(err)
				}
				leftAt := func(tempC func(float64) float64) float64 {
					left, err := sweetCornPeroxidase.Left(tempC, 0, liftS)
					return must(t, left, err)
				}
				near(t, "centre", d.Centre, leftAt(func(s float64) float64 { return b.PieceC(s, 0) }), 2e-6)
				near(t, "water", d.WholeAtWater, leftAt(b.WaterC), 2e-6)
				mean := 0.0
				for _, at := range depths {
					x := math.Pow(at[0], 1/shape.dims())
					mean += at[1] * leftAt(func(s float64) float64 { return b.PieceC(s, x) })
				}
				near(t, "mean", d.Mean, mean, 2e-6)
			}
		}
	}
}

// The volume mean of a known field, x² in a slab, cylinder and sphere, is
// n/(n+2): the five depths get it right to rounding where it is a polynomial
// in x^n, and to 0.4 % where it is not.
func TestDepthsMakeAMean(t *testing.T) {
	for _, n := range []float64{1, 2, 3} {
		sum := 0.0
		for _, p := range depths {
			x := math.Pow(p[0], 1/n)
			sum += p[1] * x * x
		}
		near(t, "mean of x²", sum, n/(n+2), 0.004*n/(n+2))
	}
}

func TestKineticsRefuses(t *testing.T) {
	var outside *RangeError
	for name, i := range map[string]Inactivation{
		"shares": {Fractions: []Fraction{FromD(0.5, 1, 80, 10)}},
		"both":   {Fractions: []Fraction{{Share: 1, RatePerMin: 1, RefC: 80, ZC: 10, ActivationJPerMol: 1e5}}},
		"none":   {Fractions: []Fraction{{Share: 1, RatePerMin: 1, RefC: 80}}},
	} {
		if _, err := i.Left(func(float64) float64 { return 90 }, 0, 60); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
	if _, err := VitaminCLeft(60); !errors.As(err, &outside) {
		t.Errorf("an hour: %v", err)
	}
}
