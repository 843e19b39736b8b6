package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A freezer of about 15 cubic feet; its leak, pull and heat capacity are
// guesses.
var chest = Freezer{SetC: -20, RoomC: 21, LeakWPerK: 1.2, PullW: 110, HeldJPerK: 30000}

// What the packs give and the walls let in is what the compressor takes out
// and the air keeps; more food warms the air more and takes no less time.
func TestFreezerLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := Freezer{
			SetC: rapid.Float64Range(-30, -15).Draw(t, "set"), RoomC: rapid.Float64Range(10, 35).Draw(t, "room"),
			LeakWPerK: rapid.Float64Range(0.3, 3).Draw(t, "leak"), HeldJPerK: rapid.Float64Range(5000, 200000).Draw(t, "held"),
		}
		z.PullW = z.LeakWPerK*(z.RoomC-z.SetC) + rapid.Float64Range(10, 300).Draw(t, "spare pull")
		mass := rapid.Float64Range(0.5, 20).Draw(t, "mass")
		p, food := drawPack(t), snapBeans
		d, err := z.Load(p, food, mass, 10)
		if err != nil {
			t.Fatal(err)
		}
		for range 40 {
			if err := d.Step(rapid.Float64Range(10, 3000).Draw(t, "step")); err != nil {
				t.Fatal(err)
			}
			gave := mass * d.Freezing.OutJPerKg()
			if gap := gave + d.leakedJ - d.pulledJ - z.HeldJPerK*(d.AirC()-z.SetC); math.Abs(gap) > 1e-6*(gave+d.leakedJ) {
				t.Fatalf("%v J of %v J are lost", gap, gave+d.leakedJ)
			}
			if !(d.AirC() >= z.SetC-1e-9 && d.AirC() <= math.Max(10, z.RoomC)) || d.pulledJ > z.PullW*d.Freezing.AfterS()*(1+1e-9) {
				t.Fatalf("air at %v °C, %v J pulled out in %v s", d.AirC(), d.pulledJ, d.Freezing.AfterS())
			}
		}
		one, err1 := z.Load(p, food, mass, 10)
		two, err2 := z.Load(p, food, 1.5*mass, 10)
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(err)
		}
		s1, ok1, err1 := one.UntilCore(-10, 1e6)
		s2, ok2, err2 := two.UntilCore(-10, 1e6)
		if err := errors.Join(err1, err2); err != nil || !ok1 || !ok2 || s2 < s1*0.995 || two.WarmestC() < one.WarmestC()-0.05 {
			t.Fatalf("%v kg frozen after %v s (%v), air up to %v; half as much again after %v s (%v), up to %v: %v",
				mass, s1, ok1, one.WarmestC(), s2, ok2, two.WarmestC(), err)
		}
	})
}

// A little food in a strong freezer freezes as in air that stays; finer steps
// change nothing that is shown by more than half a percent.
func TestFreezerLimits(t *testing.T) {
	strong := chest
	strong.PullW = 5000
	d, err := strong.Load(pintBag, snapBeans, 0.5, 10)
	if err != nil {
		t.Fatal(err)
	}
	s, ok, err := d.UntilCore(-15, 1e6)
	alone, err2 := pintBag.FreezingTimeS(snapBeans, 10, chest.SetC, -15)
	if err := errors.Join(err, err2); err != nil || !ok {
		t.Fatal(err)
	}
	nearly(t, "time in a strong freezer", s, alone, 0.002*alone)
	var times, warmest [2]float64
	for i, finer := range []float64{1, 4} {
		d, err := chest.Load(pintBag, snapBeans, 6, 10)
		if err != nil {
			t.Fatal(err)
		}
		d.Freezing.finer = finer
		if times[i], _, err = d.UntilCore(-15, 1e6); err != nil {
			t.Fatal(err)
		}
		warmest[i] = d.WarmestC() - chest.SetC
	}
	nearly(t, "time", times[1], times[0], 0.005*times[0])
	nearly(t, "warming", warmest[1], warmest[0], 0.005*warmest[0])
}

// The load limit of the bulletins, 2 to 3 lb per cubic foot a day, in a freezer
// of 15 cubic feet that is guessed: by the estimate 30 lb put in at once are
// frozen through within a day, though the air warms by about ten degrees, and 60
// lb are not.
func TestLoadLimitInAGuessedFreezer(t *testing.T) {
	for _, c := range []struct {
		loadLb float64
		inADay bool
	}{{10, true}, {30, true}, {60, false}} {
		d, err := chest.Load(pintBag, snapBeans, c.loadLb*lb, 10)
		if err != nil {
			t.Fatal(err)
		}
		s, ok, err := d.UntilCore(-15, 10*86400)
		if err != nil || !ok {
			t.Fatal(ok, err)
		}
		t.Logf("%v lb: frozen through to −15 °C after %.1f h, air up to %.1f °C after %.1f h", c.loadLb, s/3600, d.WarmestC(), d.WarmestAtS()/3600)
		if (s < 86400) != c.inADay {
			t.Errorf("%v lb are frozen after %.1f h", c.loadLb, s/3600)
		}
	}
}

func TestFreezerRefuses(t *testing.T) {
	weak := chest
	weak.PullW = 20 // less than the leak
	var outside *RangeError
	if _, err := weak.Load(pintBag, snapBeans, 5, 10); !errors.As(err, &outside) {
		t.Errorf("a compressor weaker than the leak: %v", err)
	}
	if _, err := chest.Load(pintBag, snapBeans, 0, 10); !errors.As(err, &outside) {
		t.Errorf("no food: %v", err)
	}
	d, err := chest.Load(pintBag, snapBeans, 5, 10)
	if err != nil {
		t.Fatal(err)
	}
	var never *UnreachableError
	if _, _, err := d.UntilCore(-20, 1e6); !errors.As(err, &never) {
		t.Errorf("a core as cold as the air: %v", err)
	}
	if s, ok, err := d.UntilCore(-15, 600); ok || err != nil || math.Abs(s-600) > 1e-6 {
		t.Errorf("in ten minutes: %v s, %v, %v", s, ok, err)
	}
	if n := testing.AllocsPerRun(50, func() { _ = d.Step(60) }); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
}

func BenchmarkFreezerDay(b *testing.B) {
	for b.Loop() {
		d, err := chest.Load(pintBag, snapBeans, 12, 10)
		if err != nil {
			b.Fatal(err)
		}
		if err := d.Step(86400); err != nil {
			b.Fatal(err)
		}
	}
}
