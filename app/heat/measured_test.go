package heat

import (
	"math"
	"testing"
)

// fruit is the measured freezing of one cape gooseberry, minute by minute, with
// the freezer's air, which goes through a defrost. Source: a student laboratory
// of the Universidad Nacional de Trujillo (2014: read). Size and film are not
// given.
type fruit struct{ coreC, airC []float64 }

func readFruit(t testing.TB) (f fruit) {
	for i, row := range readTable(t, "measured-freezing.csv") {
		if minute := number(t, row["minute"]); minute != float64(i) {
			t.Fatalf("minute %v after %d", minute, i-1)
		}
		f.coreC = append(f.coreC, number(t, row["fruit_c"]))
		f.airC = append(f.airC, number(t, row["air_c"]))
	}
	return f
}

func (f *fruit) airAt(afterS float64) float64 {
	minute := afterS / 60
	i := min(int(minute), len(f.airC)-2)
	return f.airC[i] + (f.airC[i+1]-f.airC[i])*(minute-float64(i))
}

// computed is the core minute by minute.
func (f *fruit) computed(t testing.TB, p Pack, minutes int) []float64 {
	// cape gooseberry, USDA (from memory); no freezing point is fitted
	food := FromPercent(85.4, 1.9, 0.7, 11.2, 4.9, 0.8, 0)
	one, err := p.Freeze(food, f.coreC[0])
	if err != nil {
		t.Fatal(err)
	}
	core := []float64{one.CoreC()}
	for range minutes {
		if err := one.Step(60, f.airAt); err != nil {
			t.Fatal(err)
		}
		core = append(core, one.CoreC())
	}
	return core
}

func (f *fruit) rms(core []float64, from int) float64 {
	sum := 0.0
	for i := from; i < len(core); i++ {
		sum += (core[i] - f.coreC[i]) * (core[i] - f.coreC[i])
	}
	return math.Sqrt(sum / float64(len(core)-from))
}

// Size and film are fitted to the first 45 minutes, cooling and plateau, and
// the rest of the curve, defrost and cooling down, is predicted. The smallest
// size offered fits best, where nearly all resistance is in the film: one curve
// of a small fruit tells the film over the size and little about the size.
func TestMeasuredFreezing(t *testing.T) {
	f := readFruit(t)
	const fitted = 45
	last := len(f.coreC) - 1
	best, bestRms := Pack{}, math.Inf(1)
	for _, radiusM := range []float64{0.005, 0.007, 0.009, 0.011} {
		p := Pack{Shape: Sphere, SizeM: radiusM}
		off := func(logFilm float64) float64 {
			p.FilmWPerM2K = math.Exp(logFilm)
			return f.rms(f.computed(t, p, fitted), 1)
		}
		low, high := math.Log(5), math.Log(60)
		for high-low > 0.01 { // golden section
			a, b := high-0.618034*(high-low), low+0.618034*(high-low)
			if off(a) < off(b) {
				high = b
			} else {
				low = a
			}
		}
		rms := off(0.5 * (low + high))
		core := f.computed(t, p, last)
		t.Logf("radius %.0f mm, film %.1f W/(m² K): fitted part %.2f °C rms, rest %.2f °C rms, end %.1f (measured %.1f)",
			radiusM*1000, p.FilmWPerM2K, rms, f.rms(core, fitted+1), core[last], f.coreC[last])
		if rms < bestRms {
			best, bestRms = p, rms
		}
	}
	core := f.computed(t, best, last)
	rest := f.rms(core, fitted+1)
	t.Logf("best radius %.0f mm: fitted part %.2f °C rms, rest %.2f °C rms", best.SizeM*1000, bestRms, rest)
	if !(bestRms < 1) || !(rest < 1.5) {
		t.Errorf("off by %.2f °C rms where it was fitted and %.2f °C rms in the rest", bestRms, rest)
	}
	// The plateau, where the measured fruit lies between −2.2 and −1.5 °C after
	// its undercooling: the computed one is not undercooled and falls from its
	// freezing point as the juice gets stronger.
	for i := 11; i <= 43; i++ {
		if !(f.coreC[i] >= -2.2 && f.coreC[i] <= -1.5) || !(core[i] >= -3 && core[i] <= -1) {
			t.Errorf("minute %d: measured %.1f °C, computed %.1f °C, not on the plateau", i, f.coreC[i], core[i])
		}
	}
	nearly(t, "end", core[last], f.coreC[last], 1)
}
