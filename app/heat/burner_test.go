package heat

import (
	"errors"
	"testing"
)

// field measurement (a practitioner's 1,800 W plug-in plate, cases/job.md 2.2):
// 2½ quarts from 68 °F in 10:30 is 1,258 W into the water within 1 %; a first
// gallon then takes 16.8 min within 3 %.
func TestRehearsal(t *testing.T) {
	const quart = 3.785411784 / 4
	power, err := RehearsalPowerW(2.5*quart*0.9982, 0, 20, 100, 630)
	near(t, "power, W", must(t, power, err), 1258, 12.58)
	boil, err := FirstBoilS(4*quart*0.9982, 0, 20, 100, power)
	near(t, "first gallon, min", must(t, boil, err)/60, 16.8, 16.8*0.03)
	// field-cases.csv C05: a gallon on 2,100 W coil takes 15 to 20 minutes
	share, _ := Coil.IntoThePot()
	coil, err := FirstBoilS(4*quart*0.9982, 0, 15, 100, 2100*share.Likely)
	if minutes := must(t, coil, err) / 60; minutes < 13 || minutes > 20 {
		t.Errorf("a gallon on a 2,100 W coil: %v min", minutes)
	}
}

func TestSharesAreRanges(t *testing.T) {
	for _, k := range []BurnerKind{Induction, Coil, Radiant, Gas} {
		s, ok := k.IntoThePot()
		if !ok || !(0 < s.Low && s.Low < s.Likely && s.Likely < s.High && s.High < 1) {
			t.Errorf("%s: %+v", k, s)
		}
	}
	if _, ok := BurnerKind("bonfire").IntoThePot(); ok {
		t.Error("an unknown burner has a share")
	}
}

func TestSteamer(t *testing.T) {
	s := Steamer{WaterKg: 1.2, PowerW: 1200, BasketM2: 0.045, BoilC: 100, LiftOffKg: 0.2}
	layer, err := s.LayerKg(0.03, 950, 0.7)
	near(t, "one layer of flowerets, kg", must(t, layer, err), 0.045*0.03*950*0.7, 1e-12)
	dry, err := s.DryAfterS()
	near(t, "a kilo of water at 1,200 W, min", must(t, dry, err)/60, 31.3, 0.1) // 2,256.5 kJ/kg, IAPWS-95
	away, err := s.BoiledAwayKg(dry)
	near(t, "boiled away by then", must(t, away, err), 1, 1e-12)
	p := bean
	p.FilmWPerM2K = 3000
	steam, err := s.Blanch(p, 0.3, 20)
	if err != nil {
		t.Fatal(err)
	}
	kettle, err := (Kettle{BoilC: 100, WaterKg: 3.8, PowerW: 1200, WaterC: 100}).Blanch(p, 0.3, 20)
	if err != nil {
		t.Fatal(err)
	}
	if steam.BackS != 0 || steam.PieceC(60, 0) <= kettle.PieceC(60, 0) {
		t.Errorf("steam: clock waits %v s, centre %v °C after a minute, %v °C in the kettle", steam.BackS, steam.PieceC(60, 0), kettle.PieceC(60, 0))
	}
}

func TestBurnerRefusesWithTheRange(t *testing.T) {
	for name, call := range map[string]func() error{
		"no time":    func() error { _, err := RehearsalPowerW(2, 0, 20, 100, 0); return err },
		"warm start": func() error { _, err := FirstBoilS(2, 0, 99, 100, 1000); return err },
		"no basket":  func() error { _, err := (Steamer{}).LayerKg(0.01, 900, 0.7); return err },
		"stays wet":  func() error { _, err := (Steamer{PowerW: 900, WaterKg: 1, LiftOffKg: 2}).DryAfterS(); return err },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
}
