package reference

import (
	"math"
	"strings"
	"testing"
)

const gasKJ = 8.314462618e-3 // kJ/(mol K)

// rate is a part's rate at a temperature, by its energy or z value.
func (p EnzymePart) rate(c float64) float64 {
	if p.ZC > 0 {
		return p.PerMin() * math.Pow(10, (c-p.RefC)/p.ZC)
	}
	return p.PerMin() * math.Exp(p.EaKJPerMol/gasKJ*(1/(p.RefC+273.15)-1/(c+273.15)))
}

func only(t *testing.T, crop, name string) Enzyme {
	t.Helper()
	all := Shipped().Enzymes(crop)
	if len(all) != 1 || all[0].Name != name {
		t.Fatalf("%s: %+v", crop, all)
	}
	return all[0]
}

func TestKineticsAreWhole(t *testing.T) {
	for _, e := range Shipped().Kinetics {
		sum := 0.0
		for _, p := range e.Parts {
			sum += p.Share
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s: shares add up to %v", e.ID, sum)
		}
		if e.Standing != Read || e.Limits == "" || strings.Count(e.Limits, ". ") > 0 {
			t.Errorf("%s: %s, %q", e.ID, e.Standing, e.Limits)
		}
		for _, crop := range e.Crops {
			if c, ok := Shipped().Crop(crop); !ok || e.ID == "leafy-greens-peroxidase" && !c.Leafy {
				t.Errorf("%s speaks for %s", e.ID, crop)
			}
		}
	}
	for _, c := range Shipped().Crops {
		if c.Leafy {
			if e := only(t, c.ID, "peroxidase"); !e.StandIn || e.MeasuredOn != "watercress in water" {
				t.Errorf("%s: %+v", c.ID, e)
			}
		}
	}
	// no usable numbers were found: one time without a z value, or none
	for _, crop := range []string{"snap-beans", "green-peas", "carrots", "asparagus", "cauliflower", "brussels-sprouts", "potatoes", "cabbage"} {
		if got := Shipped().Enzymes(crop); got != nil {
			t.Errorf("%s: %+v", crop, got)
		}
	}
}

// Naveh, Mizrahi & Kopelman 1982: 93 % at 8.9 and 7 % at 0.23 per minute; what
// is left at 100 °C as worked out in the notes on kinetics (4.4, 2.8, 1.8, 1.1,
// 0.6, 0.2 % after 2, 4, 6, 8, 11, 15 minutes).
func TestCornPeroxidase(t *testing.T) {
	for _, crop := range []string{"corn-on-the-cob", "corn-whole-kernel", "corn-cream-style"} {
		e := only(t, crop, "peroxidase")
		if e.WithLag || e.StandIn || e.Source != "NAVEH_1982" || len(e.Parts) != 2 || e.LowC != 0 {
			t.Fatalf("%+v", e)
		}
		for minutes, percent := range map[float64]float64{2: 4.4, 4: 2.8, 6: 1.8, 8: 1.1, 11: 0.6, 15: 0.2} {
			left := 0.0
			for _, p := range e.Parts {
				left += 100 * p.Share * math.Exp(-p.rate(100)*minutes)
			}
			if math.Abs(left-percent) > 0.06 {
				t.Errorf("%v %% after %v min, want %v", left, minutes, percent)
			}
		}
		if kcal := [2]float64{e.Parts[0].EaKJPerMol / 4.184, e.Parts[1].EaKJPerMol / 4.184}; math.Abs(kcal[0]-17.9) > 0.02 || math.Abs(kcal[1]-21) > 0.02 {
			t.Errorf("kcal/mol %v, printed 17.9 and 21", kcal)
		}
		if !strings.Contains(e.Parts[0].Ours, "assumed") {
			t.Errorf("the temperature of the quick part is assumed, but %q", e.Parts[0].Ours)
		}
	}
}

// Gonçalves and others 2009: nine tenths gone in 6.5 min at 70 °C and 0.4 min
// at 90 °C.
func TestBroccoliPeroxidase(t *testing.T) {
	e := only(t, "broccoli", "peroxidase")
	p := e.Parts[0]
	if !e.WithLag || e.LowC != 70 || e.HighC != 90 || e.Source != "GONCALVES_2009" || p.Ours == "" {
		t.Errorf("%+v", e)
	}
	for c, minutes := range map[float64]float64{70: 6.5, 90: 0.4} {
		if d := math.Ln10 / p.rate(c); math.Abs(d/minutes-1) > 0.01 {
			t.Errorf("D at %v °C is %v min, want %v", c, d, minutes)
		}
	}
}

// Cruz, Vieira & Silva 2006, with the printed errors; z values of about 5.8 and
// 7.0 °C follow from the energies.
func TestLeafyGreensPeroxidase(t *testing.T) {
	e := only(t, "kale", "peroxidase")
	if e.LowC != 40 || e.HighC != 92.5 || e.Source != "CRUZ_2006" {
		t.Errorf("%+v", e)
	}
	for i, want := range []EnzymePart{
		{Name: "heat-labile", Share: 0.5, RatePerMin: 18, RateError: 14, RefC: 84.6, EaKJPerMol: 421, EaErrorKJ: 115},
		{Name: "heat-resistant", Share: 0.5, RatePerMin: 0.24, RateError: 0.14, RefC: 84.6, EaKJPerMol: 352, EaErrorKJ: 81},
	} {
		if e.Parts[i] != want {
			t.Errorf("%+v, want %+v", e.Parts[i], want)
		}
		k := 357.75
		if z := math.Ln10 * gasKJ * k * k / want.EaKJPerMol; math.Abs(z-[]float64{5.8, 7.0}[i]) > 0.05 {
			t.Errorf("z %v", z)
		}
	}
}

// The browning enzyme: pumpkin sticks (D 179 ± 27 s at 90 °C, z 13.61 ± 0.76,
// k 130.49e-4 per second) and mushrooms (D 112 ± 8.4 min at 55 °C and 1.2 ±
// 0.07 at 75 °C, 214 ± 17 kJ/mol).
func TestPolyphenolOxidase(t *testing.T) {
	for _, crop := range []string{"pumpkin", "winter-squash"} {
		e := only(t, crop, "polyphenol oxidase")
		p := e.Parts[0]
		if !e.WithLag || !e.StandIn || math.Abs(p.DMin*60-179) > 1e-9 || math.Abs(p.DError*60-27) > 1e-9 || p.ZC != 13.61 || p.ZErrorC != 0.76 {
			t.Errorf("%+v", e)
		}
		if math.Abs(p.PerMin()/60/130.49e-4-1) > 0.02 {
			t.Errorf("%v per second", p.PerMin()/60)
		}
		if !strings.Contains(e.Limits, "10.84") {
			t.Errorf("the other z value of the paper is not named: %s", e.Limits)
		}
	}
	p := only(t, "mushrooms", "polyphenol oxidase").Parts[0]
	if p.DMin != 1.2 || p.DError != 0.07 || p.EaKJPerMol != 214 || p.EaErrorKJ != 17 {
		t.Errorf("%+v", p)
	}
	if d := math.Ln10 / p.rate(55); math.Abs(d-112) > 8.4 {
		t.Errorf("D at 55 °C is %v min", d)
	}
}
