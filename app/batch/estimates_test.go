package batch

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// plugIn is a burner on which 2½ qt from 68 °F took 10 min 30 s; the kitchen
// lies at sea level.
func plugIn(t testing.TB, prepared, kettle string) Job {
	j := job(t, "snap-beans-cut-water", prepared, kettle)
	read(t, "0 ft", &j.Altitude)
	read(t, "70 °F", &j.Start)
	read(t, "68 °F", &j.Tap)
	read(t, "2 1/2 qt", &j.Burner.Rehearsal.Water)
	read(t, "68 °F", &j.Burner.Rehearsal.From)
	read(t, "10.5 min", &j.Burner.Rehearsal.Took)
	return j
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %v; want %v within %v %%", what, got, want, share*100)
	}
}

func seconds(f measure.Figure) float64 { return f.Value * secondsIn[f.Unit] }

// The heat balance by hand: 2.361 kg × 4.19 kJ/(kg K) × 80 K ÷ 630 s = 1,256 W, and a gallon
// from the same tap then takes 16.8 min. A pound of beans needs 0.4536 kg ×
// 3.94 kJ/(kg K) × 79 K = 141 kJ, which is 112 s of that power.
func TestPlugInBurner(t *testing.T) {
	table := reference.Shipped()
	pound := Work(plugIn(t, "1 lb", "1 gal"), table).Estimates
	near(t, "power, W", pound.Power.Value, 1258, 0.01)
	near(t, "first gallon, s", seconds(pound.FirstBoil), 16.8*60, 0.03)
	near(t, "a pound back, s", seconds(pound.Back), 112, 0.1)
	half := Work(plugIn(t, "0.5 lb", "1 gal"), table)
	if s := seconds(half.Estimates.Back); s > 60 {
		t.Errorf("half a pound is back after %v s", s)
	}
	if has(half, "return-too-slow") {
		t.Error("half a pound is remarked")
	}
	if !has(Work(plugIn(t, "1 lb", "1 gal"), table), "return-too-slow") {
		t.Error("a pound is not remarked")
	}
	// half a pound leaves little to spare: what is guessed decides
	if n := half.Estimates.InAMinute.Value; n <= 0 || n >= 10 {
		t.Errorf("half a pound is in time in %v of 10", n)
	}
	if lb := pound.LargestLoad.Value; lb < 0.5 || lb > 0.6 {
		t.Errorf("largest load %v lb", lb)
	}
}

// What is said by estimate is credited to the model, never to an agency, and
// never suggests more at once than the rule does.
func TestEstimatesAreNotCreditedToAgencies(t *testing.T) {
	table := reference.Shipped()
	memory := &estimate.Memory{}
	said := 0
	for _, tr := range table.Treatments {
		j := withKitchen(t, job(t, tr.ID, "9 lb", "4 gal"))
		j.Memory = memory
		for _, f := range Work(j, table).Findings {
			if !strings.HasPrefix(f.Says, "Estimate:") {
				continue
			}
			said++
			if f.Source != reference.HeatModelSource {
				t.Errorf("%s: %s is credited to %s", tr.ID, f.ID, f.Source)
			}
			if f.ID == "return-too-slow" && strings.Contains(f.Do, "up to 2") {
				t.Errorf("%s: %s", tr.ID, f.Do)
			}
		}
	}
	if said < 50 {
		t.Errorf("only %d findings by estimate", said)
	}
}

// People do what the rules say: nothing that is known for the estimates changes
// a figure of the rules.
func TestEstimatesLeaveTheRulesAlone(t *testing.T) {
	table := reference.Shipped()
	memory := &estimate.Memory{}
	for _, tr := range table.Treatments {
		plain := job(t, tr.ID, "3 lb", "1 gal")
		plain.Memory = memory
		rich := withKitchen(t, plain)
		a, b := Work(plain, table), Work(rich, table)
		for i, f := range a.Figures() {
			if g := b.Figures()[i]; f != g {
				t.Errorf("%s: %s is %+v, with a burner and a bath %+v", tr.ID, f.ID, f, g)
			}
		}
	}
}

// withKitchen enters everything that estimates can use.
func withKitchen(t testing.TB, j Job) Job {
	read(t, "60 °F", &j.Tap)
	read(t, "1 gal", &j.Bath)
	read(t, "9 in", &j.Basket)
	read(t, "65 °F", &j.Start)
	j.Burner.Kind = Coil
	read(t, "1500 W", &j.Burner.Rating)
	return j
}

// Every treatment in every container and both systems of units: an estimate
// says that it is one, where it comes from and how it was worked out, and holds
// no nonsense.
func TestEveryEstimateExplainsItself(t *testing.T) {
	table := reference.Shipped()
	memory := &estimate.Memory{}
	seen := map[string]bool{}
	for _, tr := range table.Treatments {
		for _, p := range []Packing{{Container: Bag, Size: Pint, Mouth: reference.WideMouth}, {Container: Jar, Size: Quart, Mouth: reference.NarrowMouth}, {Container: Box, Size: Quart, Mouth: reference.WideMouth, Tray: true}} {
			for _, units := range []measure.System{measure.US, measure.Metric} {
				j := withKitchen(t, job(t, tr.ID, "3 lb", "1 gal"))
				j.Pack, j.Units, j.Memory = p, units, memory
				w := Work(j, table)
				for _, f := range w.Estimates.Figures() {
					seen[f.ID] = true
					where := tr.ID + ": " + f.ID
					if f.Basis != measure.Estimate {
						t.Errorf("%s rests on %q", where, f.Basis)
					}
					if _, ok := table.Source(f.Source); !ok {
						t.Errorf("%s: source %q", where, f.Source)
					}
					if f.Label == "" || f.Text == "" || f.Working == "" || f.Value > f.High || f.Words != "" && f.Text != f.Words {
						t.Errorf("%s: %+v", where, f)
					}
					if f.Words == "" && (f.Unit == "" || math.IsNaN(f.Value) || math.IsInf(f.High, 0)) {
						t.Errorf("%s: %+v", where, f)
					}
					said := f.Text + f.Also + f.Working + f.Note
					for _, bad := range []string{"NaN", "Inf", "%!", "1e+", "−0 "} {
						if strings.Contains(said, bad) {
							t.Errorf("%s says %q: %s", where, bad, said)
						}
					}
					if said := f.Text + " " + f.Also; otherUnits[units].MatchString(said) {
						t.Errorf("%s in %s: %s", where, units, said)
					}
				}
				for _, c := range w.Estimates.Charts() {
					checkChart(t, tr.ID, c)
				}
			}
		}
	}
	for _, id := range []string{"burner-power", "first-boil", "back-at-boil", "dip", "in-a-minute", "largest-load", "layer", "layers", "boiled-away", "centre", "enzyme-left", "vitamin-c", "ice-balance", "chill-cool", "chill-cold", "freezing", "growth"} {
		if !seen[id] {
			t.Errorf("no treatment has an estimate %s", id)
		}
	}
}

// otherUnits finds amounts in the units that a class does not use.
var otherUnits = map[measure.System]*regexp.Regexp{
	measure.US:     regexp.MustCompile(`[0-9] (°C|kg|mm)\b`),
	measure.Metric: regexp.MustCompile(`[0-9½⅛¼⅜⅝¾⅞] (°F|lb|in)\b`),
}

func checkChart(t *testing.T, treatment string, c measure.Chart) {
	t.Helper()
	if c.Basis != measure.Estimate || c.X.Unit == "" || c.Y.Unit == "" || c.Title == "" {
		t.Errorf("%s: chart %s: %+v", treatment, c.ID, c)
	}
	for _, curve := range c.Curves {
		if len(curve.X) < 10 || len(curve.X) != len(curve.Y) || curve.Label == "" {
			t.Errorf("%s: %s of %s has %d and %d numbers", treatment, curve.ID, c.ID, len(curve.X), len(curve.Y))
		}
		for i, y := range curve.Y {
			if math.IsNaN(y) || math.IsInf(y, 0) || i > 0 && curve.X[i] <= curve.X[i-1] {
				t.Fatalf("%s: %s of %s at %d: (%v, %v)", treatment, curve.ID, c.ID, i, curve.X[i], y)
			}
		}
	}
}

// Crops without a study say so; with one they give a band and its limits.
func TestDonenessIsABandOrWords(t *testing.T) {
	table := reference.Shipped()
	beans := Work(plugIn(t, "1 lb", "1 gal"), table).Estimates.Enzyme
	if beans.Text != "no published data" || !beans.InWords() {
		t.Errorf("beans: %+v", beans)
	}
	j := withKitchen(t, job(t, "corn-on-the-cob-medium-water", "4 lb", "4 gal"))
	corn := Work(j, table).Estimates.Enzyme
	if corn.InWords() || corn.Source != "NAVEH_1982" || corn.Note == "" || !strings.Contains(corn.Working, "at the centre") || corn.Value > corn.High {
		t.Errorf("corn: %+v", corn)
	}
}

// Where heat seems to contradict the table, the table stands.
func TestTheTableStands(t *testing.T) {
	j := withKitchen(t, job(t, "brussels-sprouts-large-water", "1 lb", "1 gal"))
	w := Work(j, reference.Shipped())
	if !has(w, "cool-centre") {
		t.Fatalf("the centre of a large sprout at %s is not remarked", w.Estimates.Centre.Text)
	}
	for _, f := range w.Findings {
		if f.ID == "cool-centre" && (!strings.HasPrefix(f.Do, "Follow the table") || f.Severity != measure.Note) {
			t.Errorf("%+v", f)
		}
	}
	if w.Minutes.Text != "5 min" {
		t.Errorf("minutes %s", w.Minutes.Text)
	}
}

func TestIceByBalanceBesideTheRule(t *testing.T) {
	// 3 lb of beans at the boil and a gallon of 70 °F water down to 40 °F, by
	// hand: (1.361 kg × 3.94 × 95.6 + 3.78 × 4.19 × 16.7) kJ ÷ (333.4 + 4.19 ×
	// 4.4) kJ/kg = 2.2 kg = 4.9 lb, against 3 lb by rule
	j := plugIn(t, "3 lb", "1 gal")
	read(t, "70 °F", &j.Tap)
	read(t, "1 gal", &j.Bath)
	w := Work(j, reference.Shipped())
	near(t, "ice, lb", w.Estimates.IceBalance.Value, 4.9, 0.01)
	// the same by hand with the rule's 3 lb of ice: the loads one after the other
	// leave the bath at about 17 °C, warmer than the rule's 60 °F
	if w.Ice.Text != "3 lb" || !has(w, "ice-short") {
		t.Errorf("by rule %s, remarked %v", w.Ice.Text, has(w, "ice-short"))
	}
	read(t, "50 °F", &j.Tap)
	if w := Work(j, reference.Shipped()); has(w, "ice-short") {
		t.Errorf("cold tap water: by balance %s, %+v", w.Estimates.IceBalance.Text, w.Findings)
	}
}

// A wedge's middle is slow to cool: the published chill leaves it warm, and the
// finding never asks for less.
func TestChillShort(t *testing.T) {
	j := withKitchen(t, job(t, "cabbage-thin-wedges-water", "1 lb", "1 gal"))
	read(t, "33 °F", &j.Tap)
	w := Work(j, reference.Shipped())
	if !has(w, "chill-short") || seconds(w.Estimates.Cool) <= w.Chill.Value*60 {
		t.Errorf("a wedge: at 50 °F after %s, chill %s, %+v", w.Estimates.Cool.Text, w.Chill.Text, w.Findings)
	}
	for _, f := range w.Findings {
		if f.ID == "chill-short" && !strings.Contains(f.Do, "Never take it out sooner") {
			t.Errorf("%+v", f)
		}
	}
	j = withKitchen(t, job(t, "snap-beans-cut-water", "1 lb", "1 gal"))
	read(t, "33 °F", &j.Tap)
	if w := Work(j, reference.Shipped()); has(w, "chill-short") {
		t.Errorf("thin beans: at 50 °F after %s, chill %s", w.Estimates.Cool.Text, w.Chill.Text)
	}
}

func TestSteamFillingsAndWater(t *testing.T) {
	table := reference.Shipped()
	j := withKitchen(t, job(t, "broccoli-flowerets-steam", "2 lb", "2 qt"))
	read(t, "500 W", &j.Burner.Rating)
	w := Work(j, table)
	e := w.Estimates
	if e.Layers.Value < 2 || !has(w, "steam-fillings") || e.BoiledAway.InWords() || e.Back.ID != "" || has(w, "boils-dry") {
		t.Errorf("layers %s, away %s, back %q, %+v", e.Layers.Text, e.BoiledAway.Text, e.Back.ID, w.Findings)
	}
	j.Burner.Kind = Induction
	read(t, "3500 W", &j.Burner.Rating)
	if w := Work(j, table); !has(w, "boils-dry") {
		t.Error("3,500 W under an inch of water for many fillings are not remarked")
	}
	// leaves: how many lie in a layer cannot be said, so they are counted by the
	// pound, and 3 lb of kale are 3 × 5 min on 3,500 W
	j = withKitchen(t, job(t, "kale-leaves-steam", "3 lb", "2 qt"))
	j.Burner.Kind = Induction
	read(t, "3500 W", &j.Burner.Rating)
	if w := Work(j, table); w.Estimates.Layers.ID != "" || !has(w, "boils-dry") {
		t.Errorf("kale: layers %q, %+v", w.Estimates.Layers.Text, w.Findings)
	}
	// 0.9 × 3,500 W for 5 min ÷ 2,256.5 kJ/kg = 0.419 kg
	if w := Work(j, table); math.Abs(w.Estimates.BoiledAway.Value*measure.Gallon.Factor*0.998-0.419) > 0.002 {
		t.Errorf("boiled away %+v", w.Estimates.BoiledAway)
	}
}

func TestHeadspaceAgainstGrowth(t *testing.T) {
	table := reference.Shipped()
	j := job(t, "snap-beans-cut-water", "3 lb", "1 gal")
	w := Work(j, table)
	if f := w.Estimates.Growth; f.Value < 3 || f.Value > 9 || !strings.Contains(f.Also, "holds it") || has(w, "headspace-tight") {
		t.Errorf("a box: %+v", f)
	}
	loose := Work(job(t, "asparagus-medium-water", "3 lb", "1 gal"), table)
	if f := loose.Estimates.Growth; !strings.Contains(f.Also, "air between") || has(loose, "headspace-tight") {
		t.Errorf("what packs loosely without headspace: %+v", f)
	}
	j.Pack.Container, j.Pack.Size, j.Pack.Mouth = Jar, Quart, reference.NarrowMouth
	w = Work(j, table)
	if has(w, "headspace-tight") != strings.Contains(w.Estimates.Growth.Also, "needs") {
		t.Errorf("figure and finding disagree: %+v", w.Estimates.Growth)
	}
	j.Pack.Container = Bag
	if w := Work(j, table); w.Estimates.Growth.Also != "" || has(w, "headspace-tight") {
		t.Errorf("a bag gives way: %+v", w.Estimates.Growth)
	}
}

// What is missing is named, once, in words.
func TestEstimatesSayWhatIsMissing(t *testing.T) {
	table := reference.Shipped()
	for _, c := range []struct{ name, treatment, kettle, words string }{
		{"no burner", "snap-beans-cut-water", "1 gal", "burner not known"},
		{"no kettle", "snap-beans-cut-water", "", "kettle not known"},
	} {
		w := Work(job(t, c.treatment, "3 lb", c.kettle), table)
		if w.Estimates.Back.Text != c.words || w.Estimates.Kettle.Drawn() {
			t.Errorf("%s: %+v", c.name, w.Estimates.Back)
		}
	}
	if w := Work(job(t, "snap-beans-cut-water", "3 lb", "1 gal"), table); !has(w, "no-burner") {
		t.Error("a missing burner is not remarked")
	}
	if w := Work(job(t, "snap-beans-cut-water", "", "1 gal"), table); len(w.Estimates.Figures()) > 2 || has(w, "no-burner") {
		t.Errorf("without a weight: %+v", w.Estimates.Figures())
	}
}

// A composition that nobody read marks what rests on it.
func TestFromMemoryIsMarked(t *testing.T) {
	table := reference.Shipped()
	memory := &estimate.Memory{}
	marked, clear := 0, 0
	for _, tr := range table.Treatments {
		c, ok := table.Composition(tr.Crop)
		j := withKitchen(t, job(t, tr.ID, "1 lb", "1 gal"))
		j.Memory = memory
		w := Work(j, table)
		if !ok || w.Estimates.Centre.ID == "" {
			continue
		}
		is := w.Estimates.Centre.Standing == string(reference.FromMemory)
		if chart := w.Estimates.Freezer; chart.Drawn() && (chart.Standing == string(reference.FromMemory)) != is {
			t.Errorf("%s: the chart says %q", tr.ID, chart.Standing)
		}
		if is != (c.Standing == reference.FromMemory) {
			t.Errorf("%s: composition %s, centre %q", tr.ID, c.Standing, w.Estimates.Centre.Standing)
		}
		if is {
			marked++
		} else {
			clear++
		}
	}
	if marked == 0 || clear == 0 {
		t.Errorf("%d marked, %d not", marked, clear)
	}
}

// More than the model covers is worded with the limits, part by part; the other
// parts stand.
func TestOutsideTheModel(t *testing.T) {
	table := reference.Shipped()
	j := withKitchen(t, job(t, "snap-beans-cut-water", "500 lb", "100 gal"))
	read(t, "150 gal", &j.Bath)
	w := Work(j, table)
	e := w.Estimates
	if e.IceBalance.Words != "outside the model" || !strings.Contains(e.IceBalance.Working, "allowed is 0.2 to 500 kg") || e.Bath.Drawn() {
		t.Errorf("a bath of 150 gal: %+v", e.IceBalance)
	}
	if e.Back.InWords() || e.Freezing.InWords() {
		t.Errorf("the other parts: back %+v, freezing %+v", e.Back, e.Freezing)
	}
}

// A rehearsal that no burner could have done is said, and not used.
func TestRehearsalThatCannotBe(t *testing.T) {
	for name, took := range map[string]string{"a few watts": "180 min", "a furnace": "1 s"} {
		j := withKitchen(t, job(t, "snap-beans-cut-water", "1 lb", "1 gal"))
		read(t, "1 qt", &j.Burner.Rehearsal.Water)
		read(t, "120 °F", &j.Burner.Rehearsal.From)
		read(t, took, &j.Burner.Rehearsal.Took)
		w := Work(j, reference.Shipped())
		if !has(w, "rehearsal-outside") || w.Estimates.Power.ID != "" || w.Estimates.Back.Words != "burner not known" {
			t.Errorf("%s: power %+v, back %+v", name, w.Estimates.Power, w.Estimates.Back)
		}
	}
}

func TestEstimateLaws(t *testing.T) {
	table := reference.Shipped()
	rapid.Check(t, func(t *rapid.T) {
		tr := rapid.SampledFrom(table.Treatments).Draw(t, "treatment")
		crop, _ := table.Crop(tr.Crop)
		j := Job{Crop: crop, Treatment: tr, Units: rapid.SampledFrom([]measure.System{measure.US, measure.Metric}).Draw(t, "units"),
			Prepared: measure.New(rapid.Float64Range(0.05, 500).Draw(t, "pounds"), measure.Pound),
			Kettle:   measure.New(rapid.Float64Range(0.25, 200).Draw(t, "kettle"), measure.Gallon),
			Altitude: measure.New(rapid.Float64Range(-1400, 20000).Draw(t, "altitude"), measure.Foot),
			Tap:      measure.New(rapid.Float64Range(32, 120).Draw(t, "tap"), measure.Fahrenheit),
			Start:    measure.New(rapid.Float64Range(32, 120).Draw(t, "start"), measure.Fahrenheit),
			Bath:     measure.New(rapid.Float64Range(0.25, 200).Draw(t, "bath"), measure.Gallon),
			Basket:   measure.New(rapid.Float64Range(3, 40).Draw(t, "basket"), measure.Inch),
			Burner:   Burner{Kind: rapid.SampledFrom(BurnerKinds).Draw(t, "burner"), Rating: measure.New(rapid.Float64Range(300, 15000).Draw(t, "rating"), measure.Watt)},
			Pack: Packing{Container: rapid.SampledFrom([]Container{Bag, Box, Jar}).Draw(t, "container"), Size: rapid.SampledFrom([]Size{Pint, Quart}).Draw(t, "size"),
				Mouth: rapid.SampledFrom([]reference.Mouth{reference.WideMouth, reference.NarrowMouth}).Draw(t, "mouth"), Tray: rapid.Bool().Draw(t, "tray")}}
		w := Work(j, table)
		for _, f := range w.Estimates.Figures() {
			if text := fmt.Sprint(f); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
				t.Fatalf("%+v", f)
			}
		}
		for _, f := range w.Findings {
			if strings.Contains(f.Says+f.Do, "NaN") || strings.Contains(f.Says+f.Do, "never") && f.ID == "chill-short" {
				t.Fatalf("%+v", f)
			}
		}
	})
}

// The largest load keeps the rule of water: what it takes is what the full
// kettle holds, also where little is planned.
func TestLargestLoadKeepsTheRuleOfWater(t *testing.T) {
	table := reference.Shipped()
	j := plugIn(t, "0.5 lb", "2 gal")
	read(t, "1 gal", &j.Bath)
	j.Burner = Burner{Kind: Induction}
	read(t, "5000 W", &j.Burner.Rating)
	e := Work(j, table).Estimates
	if lb := e.LargestLoad.Value; lb < 1 || lb > 2 || !strings.Contains(e.LargestLoad.Working, "the full kettle, 2 gal") {
		t.Errorf("5 kW under 2 gal: %+v", e.LargestLoad)
	}
	read(t, "15000 W", &j.Burner.Rating)
	if e := Work(j, table).Estimates; e.LargestLoad.Text != "all that the rule lets in" {
		t.Errorf("15 kW: %+v", e.LargestLoad)
	}
}

func TestOfTen(t *testing.T) {
	for share, want := range map[float64]string{0: "none", 0.007: "fewer than 1", 0.05: "1", 0.5: "5", 0.94: "9", 0.96: "more than 9", 1: "10"} {
		want += " of 10 kitchens"
		if got := (kitchen{}).ofTen(share); got != want {
			t.Errorf("%v: %q; want %q", share, got, want)
		}
	}
}

func TestLasting(t *testing.T) {
	for seconds, want := range map[float64]string{
		1: "5 s", 52: "50 s", 58: "1 min", 62: "1 min", 112: "1 min 50 s", 118: "2 min", 124: "2 min 5 s", 236: "4 min",
		594: "9 min 50 s", 600: "10 min", 1007: "17 min", 5300: "88 min", 5400: "1.5 h", 9000: "2.5 h", 40000: "11 h",
	} {
		if got := (kitchen{}).lasting(seconds); got != want {
			t.Errorf("%v s: %q; want %q", seconds, got, want)
		}
	}
}

func BenchmarkWorkWithEstimates(b *testing.B) {
	table := reference.Shipped()
	j := withKitchen(b, job(b, "snap-beans-cut-water", "3 lb", "1 gal"))
	for b.Loop() {
		Work(j, table)
	}
}
