package session

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// compared is what Compare lists once a trial of the demo class was changed.
func compared(t *testing.T, change func(*class.Class)) []Difference {
	t.Helper()
	s := demo(t)
	must(t, s.StartTrial(""), s.ChangeView("change", change))
	return s.Compare()
}

func find(t *testing.T, all []Difference, id string) Difference {
	t.Helper()
	i := slices.IndexFunc(all, func(d Difference) bool { return d.ID == id })
	if i < 0 {
		t.Fatalf("nothing is said of %s: %+v", id, all)
	}
	return all[i]
}

// The question that trials are for: three pounds in a six-quart pot. By hand: a
// pound a gallon is 1 ½ lb in 6 qt, so 3 lb is 2 loads of 1 ½ lb.
func TestThreePoundsInASixQuartPot(t *testing.T) {
	all := compared(t, func(c *class.Class) { c.Kit.Kettles[0].Holds = measure.New(6, measure.Quart) })
	for i, want := range []Difference{
		{"kettle", "Kettle", "Station kettle, 1 gal", "Station kettle, 6 qt", "+2 qt", true},
		{"kettle-takes", "One load takes at most", "1 lb", "1.5 lb", "+0.5 lb", false},
		{"loads", "Loads", "3 loads", "2 loads", "−1", false},
		{"load-weight", "Each load", "1 lb", "1.5 lb", "+0.5 lb", false},
		{"load-water", "Least water in the kettle", "1 gal", "1 ½ gal", "+½ gal", false},
	} {
		if i >= len(all) || all[i] != want {
			t.Errorf("%d is not %+v in %+v", i, want, all)
		}
	}
	if all[5].ID != "first-boil" || !strings.HasSuffix(all[5].By, " longer") {
		t.Errorf("then comes %+v", all[5])
	}
}

func TestNothingDiffersWithoutATrialOrInAnUntouchedOne(t *testing.T) {
	s := demo(t)
	if got := s.Compare(); got != nil {
		t.Errorf("of the plan itself: %+v", got)
	}
	must(t, s.StartTrial(""))
	for i := range s.Worked().Batches {
		s.Select(i)
		if got := s.Compare(); len(got) != 0 {
			t.Errorf("batch %d of an untouched trial: %+v", i, got)
		}
	}
	must(t, s.ChangeView("Other batch", func(c *class.Class) { c.Batches[0].Stations = 2 }))
	if got := s.Compare(); len(got) != 0 {
		t.Errorf("a batch beside the one that was changed: %+v", got)
	}
}

// Each thing that can be entered is said in words, and nothing else is said to
// be entered.
func TestWhatWasEnteredIsSaid(t *testing.T) {
	for _, c := range []struct {
		id, plan, trial, by string
		change              func(*class.Class)
	}{
		{"prepared", "3 lb", "1 lb", "−2 lb", func(c *class.Class) { c.Batches[0].Prepared = measure.New(1, measure.Pound) }},
		{"prepared", "3 lb", "48 oz", "", func(c *class.Class) { c.Batches[0].Prepared = measure.New(48, measure.Ounce) }},
		{"prepared", "3 lb", "3.125 lb", "+0.125 lb", func(c *class.Class) { c.Batches[0].Prepared = measure.New(3.125, measure.Pound) }},
		{"prepared", "3 lb", "not entered", "", func(c *class.Class) { c.Batches[0].Prepared = measure.Mass{} }},
		{"treatment", "Snap beans, green or wax, whole or cut 2 to 4 in, water blanch", "“none such”, not in the table", "", func(c *class.Class) { c.Batches[0].Treatment = "none such" }},
		{"kettle", "Station kettle, 1 gal", "Big kettle, 3 gal", "+2 gal", func(c *class.Class) { c.Batches[0].Kettle = "Big kettle" }},
		{"kettle", "Station kettle, 1 gal", "Steamer, 2 qt, basket 9 in across", "−2 qt", func(c *class.Class) { c.Batches[0].Kettle = "Steamer" }},
		{"kettle", "Station kettle, 1 gal", "Station kettle, not known what it holds", "", func(c *class.Class) { c.Kit.Kettles[0].Holds = measure.Volume{} }},
		{"kettle", "Station kettle, 1 gal", "none chosen", "", func(c *class.Class) { c.Batches[0].Kettle = "" }},
		{"burner", "Plug-in burner, electric coil or cast plate, 1500 W, 2 qt from 66 °F boiled in 9 1/2 min", "Range, large plate, electric under glass, 2400 W", "", func(c *class.Class) { c.Batches[0].Burner = "Range, large plate" }},
		{"burner", "Plug-in burner, electric coil or cast plate, 1500 W, 2 qt from 66 °F boiled in 9 1/2 min", "Plug-in burner, its heat not known", "", func(c *class.Class) { c.Kit.Burners[0].Heat = batch.Burner{} }},
		{"burner", "Plug-in burner, electric coil or cast plate, 1500 W, 2 qt from 66 °F boiled in 9 1/2 min", "Plug-in burner, gas", "", func(c *class.Class) { c.Kit.Burners[0].Heat = batch.Burner{Kind: batch.Gas} }},
		{"burner", "Plug-in burner, electric coil or cast plate, 1500 W, 2 qt from 66 °F boiled in 9 1/2 min", "none chosen", "", func(c *class.Class) { c.Batches[0].Burner = "" }},
		{"start", "70 °F", "45 °F", "−25 °F", func(c *class.Class) { c.Batches[0].Start = measure.New(45, measure.Fahrenheit) }},
		{"start", "70 °F", "20 °C", "−2 °F", func(c *class.Class) { c.Batches[0].Start = measure.New(20, measure.Celsius) }},
		{"start", "70 °F", "guessed", "", func(c *class.Class) { c.Batches[0].Start = measure.Temperature{} }},
		{"altitude", "640 ft", "5000 ft", "+4,360 ft", func(c *class.Class) { c.Place.Altitude = measure.New(5000, measure.Foot) }},
		{"tap", "66 °F", "guessed", "", func(c *class.Class) { c.Place.Tap = measure.Temperature{} }},
		{"bath-water", "1 gal", "1 1/2 gal", "+½ gal", func(c *class.Class) { c.Kit.BathWater = measure.New(1.5, measure.Gallon) }},
		{"ice-entered", "by the rule", "2 lb", "", func(c *class.Class) { c.Batches[0].Ice = measure.New(2, measure.Pound) }},
		{"freezer", "14 cu ft", "3 cu ft", "−11 cu ft", func(c *class.Class) { c.Place.Freezer = measure.New(3, measure.CubicFoot) }},
		{"pack", "3 pint bags", "1 quart bag", "", func(c *class.Class) { c.Batches[0].Pack.Size, c.Batches[0].Pack.Count = batch.Quart, 1 }},
		{"pack", "3 pint bags", "pint bags, as many as it gives, loose on a tray first", "", func(c *class.Class) { c.Batches[0].Pack.Count, c.Batches[0].Pack.Tray = 0, true }},
		{"pack", "3 pint bags", "3 narrow-mouth pint boxes", "", func(c *class.Class) {
			c.Batches[0].Pack.Container, c.Batches[0].Pack.Mouth = batch.Box, reference.NarrowMouth
		}},
		{"stations", "4 stations", "3 stations", "−1", func(c *class.Class) { c.Batches[0].Stations = 3 }},
		{"units", "pounds, gallons, °F", "kilograms, litres, °C", "", func(c *class.Class) { c.Units = measure.Metric }},
	} {
		all := compared(t, c.change)
		got := find(t, all, c.id)
		if got.Plan != c.plan || got.Trial != c.trial || got.By != c.by || got.Label == "" {
			t.Errorf("%s is %+v; want %q, %q, %q", c.id, got, c.plan, c.trial, c.by)
		}
		for _, d := range all {
			if d.Entered != (d.ID == c.id) {
				t.Errorf("%s: %s is entered %v", c.id, d.ID, d.Entered)
			}
		}
	}
}

// A difference is said in the units of the class.
func TestDifferencesInTheUnitsOfTheClass(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial(""), s.ChangeView("change", func(c *class.Class) {
		c.Units = measure.Metric
		c.Batches[0].Prepared = measure.New(2.5, measure.Kilogram)
	}))
	if got := find(t, s.Compare(), "prepared"); got.By != "+1.139 kg" { // 2.5 kg − 3 × 0.4536 kg
		t.Errorf("from 3 lb to 2.5 kg it is %q", got.By)
	}
}

// A bag has no mouth, so its mouth is no difference.
func TestTheMouthOfABag(t *testing.T) {
	if all := compared(t, func(c *class.Class) { c.Batches[0].Pack.Mouth = reference.NarrowMouth }); len(all) != 0 {
		t.Errorf("listed: %+v", all)
	}
}

func TestDifferencesOfFigures(t *testing.T) {
	english := &Session{}
	figure := func(unit, text string) measure.Figure {
		f := measure.Figure{Value: 1, High: 1, Unit: unit, Text: text}
		if strings.HasPrefix(text, "none") {
			f.Value, f.High = 0, 0
		}
		return f
	}
	for _, c := range []struct{ unit, plan, trial, by, back string }{
		{"lb", "3 lb", "1 lb", "−2 lb", "+2 lb"},
		{"lb", "11.4 lb", "0.94 lb", "−10.46 lb", "+10.46 lb"},
		{"lb", "about 4.4 lb in pods", "about 5.5 lb in pods", "+1.1 lb", "−1.1 lb"},
		{"lb", "2–3 lb", "4–5 lb", "+2 lb", "−2 lb"},
		{"lb", "2–3 lb", "2.67–4 lb", "", ""},
		{"lb", "2 lb", "2–3 lb", "", ""},
		{"lb", "under 0.05 lb", "1 lb", "", ""},
		{"W", "1,120 W", "1,060 W", "−60 W", "+60 W"},
		{"loads", "3 loads", "4 loads", "+1", "−1"},
		{"loads", "1 load", "2 loads", "+1", "−1"},
		{"loads", "1 load", "3 loads", "+2", "−2"},
		{"days", "1 day", "2 days", "+1", "−1"},
		{"days", "1–2 days", "2–3 days", "+1", "−1"},
		{"times", "3 times", "4 times", "+1", "−1"},
		{"months", "8–12 months at 0 °F or colder", "10–14 months at 0 °F or colder", "+2", "−2"},
		{"months", "1 month at 0 °F or colder", "2 months at 0 °F or colder", "+1", "−1"},
		{"pints", "3 pint bags", "4 pint bags", "+1", "−1"},
		{"pints", "1 pint box", "3 pint boxes", "+2", "−2"},
		{"pints", "at least 1–2 pint jars", "at least 3–4 pint jars", "+2", "−2"},
		{"pints", "3 pint bags", "at least 4 pint bags", "", ""},
		{"gal", "1 gal", "1 ½ gal", "+½ gal", "−½ gal"},
		{"gal", "3 ¼ qt", "1 gal", "+¾ qt", "−¾ qt"},
		{"gal", "1 ⅓ qt", "1 ¾ qt", "+0.4167 qt", "−0.4167 qt"},
		{"L", "3.79 L", "5 L", "+1.21 L", "−1.21 L"},
		{"in", "½ in", "1 ½ in", "+1 in", "−1 in"},
		{"°F", "211 °F", "203 °F", "−8 °F", "+8 °F"},
		{"°C", "−4 °C", "5 °C", "+9 °C", "−9 °C"},
		{"%", "6.5 %", "4.5 %", "−2 points", "+2 points"},
		{"%", "52–69 %", "51–68 %", "−1 point", "+1 point"},
		{"%", "under 1 %", "3 %", "", ""},
		{"of 10 kitchens", "none of 10 kitchens", "4 of 10 kitchens", "+4", "−4"},
		{"of 10 kitchens", "fewer than 1 of 10 kitchens", "4 of 10 kitchens", "", ""},
		{"min", "3 min", "4 min", "1 min longer", "1 min shorter"},
		{"min", "3–7 min", "4–8 min", "1 min longer", "1 min shorter"},
		{"min", "3–5 min", "4–7 min", "", ""},
		{"min", "10–15 s", "30 s to 1 min", "", ""},
		{"min", "1 min 10 s to 1 ¼ min", "10–15 s", "1 min shorter", "1 min longer"},
		{"s", "2 min 5 s", "3 min 10 s", "1 min 5 s longer", "1 min 5 s shorter"},
		{"s", "55 s", "1 min", "5 s longer", "5 s shorter"},
		{"min", "20 min", "60 min", "40 min longer", "40 min shorter"},
		{"h", "5–14 h", "6–15 h", "1 h longer", "1 h shorter"},
		{"h", "1.5 h", "3 h", "1.5 h longer", "1.5 h shorter"},
		{"h", "9 h", "never", "", ""},
	} {
		if got, back := english.figureBy(figure(c.unit, c.plan), figure(c.unit, c.trial)), english.figureBy(figure(c.unit, c.trial), figure(c.unit, c.plan)); got != c.by || back != c.back {
			t.Errorf("%q to %q is %q, back %q; want %q, %q", c.plan, c.trial, got, back, c.by, c.back)
		}
	}
	// times in two units, an estimate against another
	if got := english.figureBy(figure("min", "50 min"), figure("h", "9 h")); got != "8 h longer" {
		t.Errorf("from 50 min to 9 h it is %q", got)
	}
	if got := english.figureBy(figure("s", "55 s"), figure("min", "17 min")); got != "16 min 5 s longer" {
		t.Errorf("from 55 s to 17 min it is %q", got)
	}
	inPints, inQuarts := figure("pints", "3 pint bags"), figure("quarts", "4 quart bags")
	if got := english.figureBy(inPints, inQuarts); got != "" {
		t.Errorf("from pints to quarts it is %q", got)
	}
	words := measure.Figure{Unit: "lb", Words: "more than 2 lb", Text: "more than 2 lb"}
	if got := english.figureBy(words, measure.Figure{Unit: "lb", Words: "more than 3 lb", Text: "more than 3 lb"}); got != "" {
		t.Errorf("between words there is %q", got)
	}
}

// A figure that only one side has stands in its place all the same, and one
// with a number is called by it.
func TestFiguresOfOneSideOnly(t *testing.T) {
	all := compared(t, func(c *class.Class) {
		c.Batches[0].Treatment, c.Batches[0].Kettle = "broccoli-flowerets-steam", "Steamer"
	})
	for id, want := range map[string][3]string{
		"back-at-boil": {"Back at the boil after", "2 min 5 s", "—"},
		"layers":       {"The basket is filled", "—", "4 times"},
	} {
		if d := find(t, all, id); d.Label != want[0] || d.Plan != want[1] || d.Trial != want[2] || d.By != "" {
			t.Errorf("%s is %+v; want %q", id, d, want)
		}
	}
	var ids []string
	for _, d := range all {
		if !d.Entered {
			ids = append(ids, d.ID)
		}
	}
	sorted := slices.Clone(ids)
	slices.SortFunc(sorted, func(a, b string) int { return slices.Index(inOrder, a) - slices.Index(inOrder, b) })
	if !reflect.DeepEqual(ids, sorted) {
		t.Errorf("they come as %q", ids)
	}
	s := demo(t)
	s.Select(3) // pumpkin, cooked and not timed
	must(t, s.StartTrial(""), s.ChangeView("Treatment", func(c *class.Class) { c.Batches[3].Treatment = beans }))
	if d := find(t, s.Compare(), "minutes"); d.Label != "Blanch" || d.By != "" {
		t.Errorf("minutes are %+v", d)
	}
}

// inOrder are the figures in the order of the work.
var inOrder = []string{"prepared", "water", "kettle-takes", "loads", "load-weight", "load-water", "published-minutes", "minutes", "clock", "boils", "chill", "ice",
	"packs", "headspace", "buy", "freezer-day", "freezer-days", "best-by", "burner-power", "first-boil", "back-at-boil", "dip", "in-a-minute", "largest-load",
	"layer", "layers", "boiled-away", "centre", "enzyme-left", "vitamin-c", "ice-balance", "chill-cool", "chill-cold", "freezing", "growth"}

// Two treatments never read alike.
func TestEveryTreatmentIsToldFromEveryOther(t *testing.T) {
	s, seen := demo(t), map[string]string{}
	for _, treatment := range s.Table().Treatments {
		text := s.treatmentText(side{BatchWorked: class.BatchWorked{Treatment: treatment, Known: true}})
		if other, there := seen[text]; there {
			t.Errorf("%s and %s are both %q", other, treatment.ID, text)
		}
		seen[text] = treatment.ID
	}
}
