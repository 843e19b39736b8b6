package heat

import (
	"math"
	"testing"
)

var kitchens = Kitchens{
	Kettle: Kettle{BoilC: 100, WaterKg: 3.63, VesselJPK: 400, WaterC: 99.5}, Piece: bean, LoadKg: lb, BlanchS: 180, WithinS: 60,
	PowerW: Guess{1000, 1258, 1500}, SizeM: Guess{0.0035, 0.0045, 0.006}, FilmWPerM2K: Guess{500, 1500, 3000}, StartC: Guess{15, 21, 25},
}

func TestSpreadRepeats(t *testing.T) {
	a, err := kitchens.Spread(1000, 7)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := kitchens.Spread(1000, 7)
	if a != b {
		t.Errorf("the same seed gave %+v and %+v", a, b)
	}
	c, _ := kitchens.Spread(1000, 8)
	if a == c {
		t.Error("another seed gave the same draws")
	}
	if math.Abs(a.Within-c.Within) > 0.03 || math.Abs(a.BackS.Middle-c.BackS.Middle) > 0.02*a.BackS.Middle {
		t.Errorf("two seeds disagree: %+v and %+v", a, c)
	}
}

// Without a spread every draw is the plain calculation; with one the band holds
// it, and a smaller load passes more often.
func TestSpreadAroundThePlainAnswer(t *testing.T) {
	fixed := kitchens
	fixed.PowerW, fixed.SizeM, fixed.FilmWPerM2K, fixed.StartC = Known(1258), Known(0.0045), Known(1500), Known(21)
	s, err := fixed.Spread(50, 1)
	if err != nil {
		t.Fatal(err)
	}
	k := fixed.Kettle
	k.PowerW = 1258
	b, err := k.Blanch(bean, lb, 21)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "return", s.BackS.Middle, b.BackS, 0.05)
	near(t, "dip", s.DipC.Low, b.DipC, 0.01)
	near(t, "centre", s.CentreC.High, b.PieceC(b.BackS+180, 0), 0.05)
	wide, err := kitchens.Spread(1000, 1)
	if err != nil || wide.BackS.Low >= b.BackS || wide.BackS.High <= b.BackS {
		t.Errorf("the band %+v does not hold %v s, %v", wide.BackS, b.BackS, err)
	}
	half := kitchens
	half.LoadKg = lb / 2
	passes, err := half.Spread(1000, 1)
	if err != nil || passes.Within <= wide.Within {
		t.Errorf("half a pound passes in %v, a pound in %v of the kitchens, %v", passes.Within, wide.Within, err)
	}
}

// Draws of one input follow the triangle: its mean is the mean of the three.
func TestGuessIsATriangle(t *testing.T) {
	g := Guess{2, 3, 7}
	sum := 0.0
	const n = 10000
	for i := range n {
		x := g.at((float64(i) + 0.5) / n)
		if x < g.Low || x > g.High {
			t.Fatalf("a draw of %v", x)
		}
		sum += x
	}
	near(t, "mean", sum/n, 4, 1e-3)
}

func BenchmarkSpread(b *testing.B) {
	for b.Loop() {
		if _, err := kitchens.Spread(1000, 1); err != nil {
			b.Fatal(err)
		}
	}
}
