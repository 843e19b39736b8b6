package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// needs.md 5: 12 lb of beans at the boil, four one-gallon baths of 70 °F tap
// water, everything to 40 °F: about 19.6 lb of ice by heat balance, 12 by rule.
// Specific heat of snap beans 3.99 kJ/(kg K): ASHRAE Table 3 (read).
func TestIceForTwelvePoundsOfBeans(t *testing.T) {
	ice, err := IceNeededKg(12*lb, 3990, 100, 4*3.785411784*0.998, f(70), f(40))
	near(t, "ice by heat balance, lb", must(t, ice, err)/lb, 19.6, 0.15)
	// only the food, no bath: needs.md 5; job.md 2.3: 0.85 to 1.06 lb per lb
	food, err := IceNeededKg(1*lb, 3990, 100, 0, 0, f(40))
	if per := must(t, food, err) / lb; per < 0.85 || per > 1.10 {
		t.Errorf("%v lb of ice for a pound of food", per)
	}
	// job.md 2.3: 1.1 lb per gallon from 60 °F to 40 °F, 1.6 lb from 70 °F
	for tapF, want := range map[float64]float64{60: 1.1, 70: 1.6} {
		gallon, err := IceNeededKg(0, 3990, 100, 3.785411784*0.998, f(tapF), f(40))
		near(t, "ice for a gallon, lb", must(t, gallon, err)/lb, want, 0.2)
	}
}

func TestMixedBath(t *testing.T) {
	tempC, ice, water := (Bath{WaterKg: 4, WaterC: 20, IceKg: 2}).Mixed()
	near(t, "temperature with ice left", tempC, 0, 0)
	near(t, "nothing is lost", ice+water, 6, 1e-12)
	tempC, ice, _ = (Bath{WaterKg: 4, WaterC: 20, IceKg: 0.5}).Mixed()
	if ice != 0 || tempC <= 0 || tempC >= 20 {
		t.Errorf("half a kilo of ice in 4 kg: %v °C, %v kg left", tempC, ice)
	}
}

// Heat is neither made nor lost: what the pieces gave is in the melted ice and
// the bath, before and after the ice is gone; temperatures stay between the
// pieces' start and the ice.
func TestChillKeepsTheHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := bean
		p.Shape = Shape(rapid.IntRange(1, 3).Draw(t, "shape"))
		p.SizeM = rapid.Float64Range(0.002, 0.03).Draw(t, "size")
		p.FilmWPerM2K = rapid.Float64Range(200, 2000).Draw(t, "film")
		b := Bath{WaterKg: rapid.Float64Range(1, 20).Draw(t, "water"), WaterC: rapid.Float64Range(0, 30).Draw(t, "tap"), IceKg: rapid.Float64Range(0, 6).Draw(t, "ice")}
		mass := rapid.Float64Range(0.1, 4).Draw(t, "load")
		c, err := b.Chill(p, mass, 95)
		if err != nil {
			t.Fatal(err)
		}
		mixedC, ice, water := b.Mixed()
		enthalpy := func(meanC, waterC, iceKg float64) float64 {
			return mass*p.HeatJPerKgK*meanC + (water+ice-iceKg)*coldWaterJPerKgK*waterC - iceKg*fusionJPerKg
		}
		before := enthalpy(95, mixedC, ice)
		for _, at := range []float64{0.5, 5, 60, 600, 6000} {
			left := c.IceLeftKg(at)
			now := enthalpy(c.MeanC(at), c.WaterC(at), left)
			if math.Abs(now-before) > 1e-6*mass*p.HeatJPerKgK*95 {
				t.Fatalf("after %v s the heat is %v J, it was %v J (ice %v kg)", at, now, before, left)
			}
			if m := c.MeanC(at); m > 95+1e-6 || m < -1e-6 || left < -1e-9 || left > ice+1e-9 || c.WaterC(at) < -1e-9 {
				t.Fatalf("after %v s: mean %v °C, water %v °C, ice %v kg", at, m, c.WaterC(at), left)
			}
		}
	})
}

// With ice to spare the bath is the textbook's infinite bath at 0 °C.
func TestPlentyOfIceIsTheSeries(t *testing.T) {
	b := Bath{WaterKg: 10, WaterC: 10, IceKg: 50}
	c, err := b.Chill(bean, 0.4, 90)
	if err != nil {
		t.Fatal(err)
	}
	var m modes
	m.solve(bean.Shape, bean.biot(), 0, 0, maxModes)
	start := m.start(90, 0)
	for _, at := range []float64{5, 30, 90} {
		now := m.after(&start, at/bean.scaleS())
		near(t, "centre", c.PieceC(at, 0), m.at(&now, 0), 1e-6)
		near(t, "mean", c.MeanC(at), m.mean(&now), 1e-6)
	}
	if !math.IsInf(c.IceGoneS, 1) {
		t.Errorf("50 kg of ice gone after %v s", c.IceGoneS)
	}
}

// From kettle to bath nothing jumps: the profile that the blanch left is the
// one the chill starts with.
func TestKettleToBath(t *testing.T) {
	k := Kettle{BoilC: 100, WaterKg: 3.6, PowerW: 1500, WaterC: 100}
	big := bean
	big.Shape, big.SizeM = Sphere, 0.018
	blanch, err := k.Blanch(big, lb, 21)
	if err != nil {
		t.Fatal(err)
	}
	lift := blanch.BackS + 240
	c, err := (Bath{WaterKg: 8, WaterC: 15, IceKg: 4}).ChillAfter(&blanch, lift, 800)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []float64{0, 0.3, 0.6} {
		near(t, "profile handed over", c.PieceC(0, x), blanch.PieceC(lift, x), 1e-9)
		// the cold has not come this deep yet: what the blanch would have gone on to do
		near(t, "profile a little later", c.PieceC(6, x), blanch.PieceC(lift+6, x), 0.02)
	}
	near(t, "mean handed over", c.MeanC(0), blanch.MeanC(lift), 1e-9)
	warm, okWarm := c.CentreReachesS(f(50))
	cold, okCold := c.CentreReachesS(f(40))
	if !okWarm || !okCold || cold <= warm || warm < 60 {
		t.Errorf("a big sprout's centre: 50 °F after %v s (%v), 40 °F after %v s (%v)", warm, okWarm, cold, okCold)
	}
	near(t, "centre then", c.PieceC(warm, 0), f(50), 1e-6)
}

// A bath that comes to rest above a temperature never gets there, and one that
// rests below it does: the balance of heat says which (see After).
func TestBathReachesWhatItsBalanceAllows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bath{WaterKg: rapid.Float64Range(1, 20).Draw(t, "water"), WaterC: rapid.Float64Range(2, 30).Draw(t, "tap"), IceKg: rapid.Float64Range(0, 6).Draw(t, "ice")}
		p := bean
		p.SizeM = rapid.Float64Range(0.0002, 0.03).Draw(t, "size")
		kg := rapid.Float64Range(0.1, 5).Draw(t, "load")
		c, err := b.Chill(p, kg, 95)
		if err != nil {
			t.Fatal(err)
		}
		restC := b.After(kg, p.HeatJPerKgK, 95).WaterC
		if s, ok := c.CentreReachesS(restC + 0.05); !ok {
			t.Fatalf("rests at %v °C and is said never to come near", restC)
		} else if got := c.PieceC(s, 0); math.Abs(got-restC-0.05) > 0.01 {
			t.Fatalf("after %v s the centre is at %v °C, not %v", s, got, restC+0.05)
		}
		if restC > 0.5 {
			if s, ok := c.CentreReachesS(restC - 0.05); ok {
				t.Fatalf("rests at %v °C and is said to be colder after %v s", restC, s)
			}
		}
	})
}

func TestBathRefusesWithTheRange(t *testing.T) {
	for name, call := range map[string]func() error{
		"hot tap":         func() error { _, err := (Bath{WaterKg: 4, WaterC: 95}).Chill(bean, 1, 90); return err },
		"no water":        func() error { _, err := (Bath{}).Chill(bean, 1, 90); return err },
		"nothing in it":   func() error { _, err := (Bath{WaterKg: 4}).Chill(bean, 0, 90); return err },
		"ends too warm":   func() error { _, err := IceNeededKg(1, 3900, 100, 4, 20, 50); return err },
		"colder than ice": func() error { _, err := IceNeededKg(1, 3900, 100, 4, 20, -5); return err },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
}

func BenchmarkChill(b *testing.B) {
	bath := Bath{WaterKg: 4, WaterC: 20, IceKg: 1.2}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bath.Chill(bean, lb, 95); err != nil {
			b.Fatal(err)
		}
	}
}
