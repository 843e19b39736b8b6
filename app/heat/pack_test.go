package heat

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const inch = 0.0254

// containers are guesses at common ones (from memory): volume to the brim,
// height; a pint is 473.2 mL.
func containers(t testing.TB) map[string]Container {
	t.Helper()
	made := map[string]Container{}
	for name, make := range map[string]func() (Container, error){
		"wide pint":         func() (Container, error) { return NewBox(490e-6, 4.5*inch, 1) },
		"wide quart":        func() (Container, error) { return NewBox(980e-6, 6.5*inch, 1) },
		"tapered pint box":  func() (Container, error) { return NewBox(490e-6, 3.7*inch, 0.85) },
		"tapered quart box": func() (Container, error) { return NewBox(980e-6, 5.5*inch, 0.85) },
		"narrow pint jar":   func() (Container, error) { return NewJar(500e-6, 5*inch, 0.75, 0.88, 0.75) },
		"narrow quart jar":  func() (Container, error) { return NewJar(1000e-6, 6.75*inch, 0.75, 0.88, 0.65) },
		"straight pint jar": func() (Container, error) { return NewJar(490e-6, 4.6*inch, 1, 1, 1) },
	} {
		c, err := make()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		made[name] = c
	}
	return made
}

// Level and content are inverse, and a container holds what it was made for.
func TestContainersHoldTheirVolume(t *testing.T) {
	for name, c := range containers(t) {
		brim := c.HeightM()
		for i := range 101 {
			level := brim * float64(i) / 100
			nearly(t, name, c.LevelM(c.VolumeM3(level)), level, 1e-12)
		}
		nearly(t, name+" overfull", c.LevelM(1), brim, 1e-12)
		want := map[bool]float64{true: 490e-6, false: 980e-6}[strings.Contains(name, "pint")]
		if strings.Contains(name, "narrow") {
			want *= 500.0 / 490
		}
		if strings.Contains(name, "narrow quart") {
			want = 1000e-6
		}
		nearly(t, name, c.VolumeM3(brim), want, 1e-12)
	}
}

// Snap beans: 0.9 water of 1,020 kg/m³ would give 8.3 % if all of it froze
// (water.md); bound and liquid water take some off. Water itself: 9.07 % at
// 0 °C (IAPWS).
func TestGrowth(t *testing.T) {
	nearly(t, "water at 0 °C", waterGrowthPercent(0), 9.07, 0.03)
	for _, c := range []struct {
		name      string
		food      Composition
		low, high float64
	}{{"snap beans", snapBeans, 6.5, 8}, {"peas", peas, 4.5, 7}, {"spinach", spinach, 6.5, 8.2}} {
		g, err := c.food.GrowthPercent(10, -18)
		if err != nil || g < c.low || g > c.high {
			t.Errorf("%s grow by %.2f %%, want %v to %v: %v", c.name, g, c.low, c.high, err)
		}
		t.Logf("%s grow by %.2f %%", c.name, g)
	}
}

func TestGrowthLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawComposition(t)
		g, err1 := c.GrowthPercent(10, -18)
		colder, err2 := c.GrowthPercent(10, -25)
		if err := errors.Join(err1, err2); err != nil || g < 0 || g > waterGrowthPercent(-18) || colder < g-0.2 {
			t.Fatalf("%v %% at −18 °C, %v %% at −25 °C: %v", g, colder, err)
		}
		f := Filling{rapid.Float64Range(0, 0.5).Draw(t, "water"), rapid.Float64Range(0, 0.5).Draw(t, "air")}
		of, err := f.GrowthPercent(c, 10, -18)
		if err != nil || of > waterGrowthPercent(-18) || of < 0 {
			t.Fatalf("filling %+v grows by %v %%: %v", f, of, err)
		}
	})
}

// A straight box rises by its growth; a narrowing one by more the narrower it
// gets, a widening one by less; the least headspace just holds.
func TestFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := rapid.Float64Range(0.05, 0.2).Draw(t, "height")
		growth := rapid.Float64Range(0.5, 10).Draw(t, "growth")
		space := height * rapid.Float64Range(0.15, 0.4).Draw(t, "headspace")
		straight, err1 := NewBox(5e-4, height, 1)
		wide, err2 := NewBox(5e-4, height, rapid.Float64Range(0.6, 0.95).Draw(t, "narrowing"))
		jar, err3 := NewJar(5e-4, height, 0.5, 0.8, rapid.Float64Range(0.5, 0.95).Draw(t, "mouth"))
		if err := errors.Join(err1, err2, err3); err != nil {
			t.Fatal(err)
		}
		s, err1 := straight.Fit(space, growth)
		w, err2 := wide.Fit(space, growth)
		j, err3 := jar.Fit(space, growth)
		if err := errors.Join(err1, err2, err3); err != nil {
			t.Fatal(err)
		}
		if math.Abs(s.RiseM-(height-space)*growth/100) > 1e-9 {
			t.Fatalf("a straight box rises by %v m of %v m", s.RiseM, height-space)
		}
		if w.RiseM >= s.RiseM || j.RiseM <= s.RiseM {
			t.Fatalf("straight %v, widening %v, jar %v", s.RiseM, w.RiseM, j.RiseM)
		}
		for _, c := range []Container{straight, wide, jar} {
			fit, err := c.Fit(space, growth)
			if err != nil || fit.Holds != (fit.NeedM <= space+1e-9) || fit.Holds != (fit.RiseM <= space+1e-9) {
				t.Fatalf("%+v in %v m: %v", fit, space, err)
			}
			just, err1 := c.Fit(fit.NeedM*(1+1e-6)+1e-9, growth)
			short, err2 := c.Fit(fit.NeedM*0.999, growth)
			if err := errors.Join(err1, err2); err != nil || !just.Holds || short.Holds {
				t.Fatalf("needs %v m, but %v with a little more and %v with less: %v", fit.NeedM, just.Holds, short.Holds, err)
			}
		}
	})
}

// The headspace table of the bulletins (NCHFP_HEADSPACE: read) holds for a wide
// and a narrow container of the guessed sizes, dry pack with its air and liquid
// pack alike.
func TestPublishedHeadspaceHolds(t *testing.T) {
	made := containers(t)
	for _, c := range []struct {
		container string
		inches    float64
		f         Filling
	}{
		{"wide pint", 0.5, Filling{AirShare: 0.3}},
		{"wide quart", 0.5, Filling{AirShare: 0.3}},
		{"tapered quart box", 0.5, Filling{AirShare: 0.3}},
		{"wide pint", 0.5, Filling{WaterShare: 0.4}},
		{"wide quart", 1, Filling{WaterShare: 0.4}},
		{"tapered pint box", 0.5, Filling{WaterShare: 0.4}},
		{"tapered quart box", 1, Filling{WaterShare: 0.4}},
		{"narrow pint jar", 0.75, Filling{WaterShare: 0.4}},
		{"narrow quart jar", 1.5, Filling{WaterShare: 0.4}},
	} {
		growth, err1 := c.f.GrowthPercent(snapBeans, 10, -18)
		fit, err2 := made[c.container].Fit(c.inches*inch, growth)
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(err)
		}
		t.Logf("%-18s %.2f in: grows %.1f %%, rises %.2f in, needs %.2f in", c.container, c.inches, growth, fit.RiseM/inch, fit.NeedM/inch)
		if !fit.Holds {
			t.Errorf("%s with %v in does not hold: %+v", c.container, c.inches, fit)
		}
	}
	// to the brim it holds in none
	for name, container := range made {
		if fit, err := container.Fit(0, 7); err != nil || fit.Holds || fit.LeftM != 0 {
			t.Errorf("%s full to the brim: %+v, %v", name, fit, err)
		}
	}
}

func TestPackRefusesWithTheRange(t *testing.T) {
	box, err := NewBox(5e-4, 0.1, 1)
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"thawed":           func() error { _, err := snapBeans.GrowthPercent(10, 0); return err },
		"filled frozen":    func() error { _, err := snapBeans.GrowthPercent(-10, -18); return err },
		"more than full":   func() error { _, err := (Filling{0.7, 0.5}).GrowthPercent(snapBeans, 10, -18); return err },
		"a bucket":         func() error { _, err := NewBox(1, 0.1, 1); return err },
		"neck under it":    func() error { _, err := NewJar(5e-4, 0.1, 0.8, 0.5, 0.7); return err },
		"no container":     func() error { _, err := Container(nil).Fit(0, 5); return err },
		"empty box":        func() error { _, err := box.Fit(0.1, 5); return err },
		"doubles its size": func() error { _, err := box.Fit(0.01, 100); return err },
	} {
		var outside *RangeError
		if err := call(); !errors.As(err, &outside) {
			t.Errorf("%s: %v; want a *RangeError", name, err)
		}
	}
}
