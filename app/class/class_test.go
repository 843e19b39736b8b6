package class

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
	"pgregory.net/rapid"
)

func demo(t testing.TB) Class {
	t.Helper()
	c, err := Read(bytes.NewReader(content.DemoClass()), "demo.kettleside")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func beans(lb float64, stations int) Batch {
	return Batch{Name: "Beans", Treatment: "snap-beans-cut-water", Prepared: measure.New(lb, measure.Pound), Stations: stations,
		Kettle: "Kettle", Pack: batch.Packing{Container: batch.Bag, Size: batch.Pint, Mouth: reference.WideMouth}}
}

func TestDemoClassReadsAndWorks(t *testing.T) {
	c := demo(t)
	w := Work(c, reference.Shipped())
	if len(w.Batches) != len(c.Batches) || len(w.Batches) == 0 {
		t.Fatalf("%d of %d batches worked", len(w.Batches), len(c.Batches))
	}
	for _, b := range w.Batches {
		if !b.Known {
			t.Errorf("batch %q: the shipped table does not know %s", b.Batch.Name, b.Batch.Treatment)
		}
		for _, f := range b.Findings {
			if f.Severity == measure.Stop {
				t.Errorf("batch %q of the demo stops: %s", b.Batch.Name, f.Says)
			}
		}
	}
	if !strings.Contains(c.Place.Name, "invented") || !strings.Contains(c.Notes, "invented") {
		t.Error("the demo class does not say that it is invented")
	}
	if c.Edition != reference.Edition {
		t.Errorf("the demo class was planned with %q, the shipped table is %q", c.Edition, reference.Edition)
	}
}

func TestTotals(t *testing.T) {
	// needs.md 3: 12 people, 3 at a station, 3 lb each station → 4 stations, 12 lb
	c := New(reference.Edition)
	c.People.Headcount, c.People.PerStation = 12, 3
	c.Place.Freezer = measure.New(10, measure.CubicFoot)
	c.Batches = []Batch{beans(3, 4)}
	w := Work(c, reference.Shipped())
	for _, f := range []struct {
		got  measure.Figure
		want string
	}{
		{w.Totals.Stations, "4"}, {w.Totals.Prepared, "12 lb"}, {w.Totals.Ice, "12 lb"}, {w.Totals.IceBags, "2 bags of 10 lb"}, {w.Totals.FreezerDays, "1 day"},
	} {
		if f.got.Text != f.want {
			t.Errorf("%s is %q (%s); want %q", f.got.ID, f.got.Text, f.got.Working, f.want)
		}
	}
	// 60 lb into 10 cu ft: two to three days (AIB410_50, read; questions.csv Q066)
	c.Batches = []Batch{beans(15, 4)}
	if w := Work(c, reference.Shipped()); w.Totals.FreezerDays.Text != "2–3 days" {
		t.Errorf("60 lb in 10 cu ft: %s", w.Totals.FreezerDays.Text)
	}
	// 13 people: 5 stations, and the uneven one is named (needs.md 3)
	c.People.Headcount = 13
	w = Work(c, reference.Shipped())
	if w.Totals.Stations.Value != 5 || !finds(w, "uneven-station") {
		t.Errorf("13 people: %s stations, findings %+v", w.Totals.Stations.Text, w.Findings)
	}
}

// Every total is counted on all stations, in words where nothing can be counted.
func TestTotalsOfEveryKind(t *testing.T) {
	c := New(reference.Edition)
	empty := Work(c, reference.Shipped())
	for _, f := range empty.Totals.Figures() {
		if strings.Contains(f.Text, "-0") || strings.Contains(f.Working, "-0") || f.Text == "" || f.Working == "" {
			t.Errorf("an empty class: %s is %q, %q", f.ID, f.Text, f.Working)
		}
	}
	one := beans(3, 4)
	one.Pack.Count = 0
	c.Batches = []Batch{one}
	w := Work(c, reference.Shipped())
	// 3 lb at 2/3 to 1 lb a pint is 3 to 4 1/2 pints: 3 to 5 bags at each of four stations
	if w.Totals.Packs.Value != 12 || w.Totals.Packs.High != 20 || w.Totals.Packs.Basis != measure.Estimate || w.Totals.Packs.Text != "at least 12–20 packs" {
		t.Errorf("packs: %+v", w.Totals.Packs)
	}
	counted := beans(3, 4)
	counted.Pack.Count = 3
	c.Batches = []Batch{counted}
	if w := Work(c, reference.Shipped()); w.Totals.Packs.Basis != measure.Entered || w.Totals.Packs.Text != "12 packs" {
		t.Errorf("packs entered: %+v", w.Totals.Packs)
	}
	raw := beans(2, 1)
	raw.Treatment = "sweet-peppers-raw"
	c.Batches = []Batch{raw}
	if w := Work(c, reference.Shipped()); w.Totals.Ice.Text != "0 lb" || !strings.Contains(w.Totals.Ice.Working, "no batch that is chilled") {
		t.Errorf("ice for raw peppers: %+v", w.Totals.Ice)
	}
	for _, lonely := range []string{"rutabagas-cubes-water"} {
		b := beans(2, 1)
		b.Treatment = lonely
		c.Batches = []Batch{b}
		if w := Work(c, reference.Shipped()); w.Totals.Packs.Text != "fill one and count" {
			t.Errorf("%s: %+v", lonely, w.Totals.Packs)
		}
	}
}

// A crop whose batches give numbers and words loses none of them.
func TestShoppingKeepsEveryBatch(t *testing.T) {
	c := New(reference.Edition)
	a, b, d := beans(3, 1), beans(9, 1), beans(2, 1)
	a.Name, b.Name, d.Name, d.Pack.Count = "a", "b", "d", 2
	c.Batches = []Batch{a, b, d}
	line := Work(c, reference.Shipped()).Shopping[0]
	for _, want := range []string{"1.33–2 lb", "more than 3 lb", "more than 9 lb"} {
		if !strings.Contains(line.Buy.Text, want) {
			t.Errorf("shopping %q lacks %q", line.Buy.Text, want)
		}
	}
	if line.Buy.Source == "" || line.MarketUnit != "bushel of about 30 lb" {
		t.Errorf("source %q, market unit %q", line.Buy.Source, line.MarketUnit)
	}
}

func finds(w Worked, id string) bool {
	for _, f := range w.Findings {
		if f.ID == id {
			return true
		}
	}
	return false
}

func TestShoppingAddsUpByCrop(t *testing.T) {
	c := New(reference.Edition)
	one, two := beans(3, 2), beans(1, 3)
	one.Pack.Count, two.Pack.Count = 3, 2
	c.Batches = []Batch{one, two}
	w := Work(c, reference.Shipped())
	// 12 pints at 2/3 to 1 lb a pint (HG10_MEM from memory; PSU_SNAP read, inside the range)
	if len(w.Shopping) != 1 || w.Shopping[0].Buy.Text != "8–12 lb" {
		t.Errorf("12 pints of beans in two batches: %+v", w.Shopping)
	}
}

func TestUnknownTreatmentIsAFinding(t *testing.T) {
	c := New(reference.Edition)
	b := beans(3, 1)
	b.Treatment = "dragon-fruit"
	c.Batches = []Batch{b}
	w := Work(c, reference.Shipped())
	if w.Batches[0].Known || w.Batches[0].Findings[0].Severity != measure.Stop || !strings.Contains(w.Batches[0].Findings[0].Says, "dragon-fruit") {
		t.Errorf("an unknown treatment: %+v", w.Batches[0].Findings)
	}
}

func TestSaveAndOpen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "Zoë’s class é.kettleside")
	c := demo(t)
	if err := Save(path, c); err != nil {
		t.Fatal(err)
	}
	back, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(c, back) {
		t.Errorf("saved and opened:\n%+v\nwant\n%+v", back, c)
	}
	data, _ := os.ReadFile(path)
	for _, want := range []string{`"prepared": "3 lb"`, `"prepared": "1.5 lb"`, `"altitude": "640 ft"`} {
		if !bytes.Contains(data, []byte(want)) {
			t.Errorf("the file does not have %s as people write it", want)
		}
	}
	left, _ := os.ReadDir(filepath.Dir(path))
	if len(left) != 1 {
		t.Errorf("saving left %d files", len(left))
	}
}

// A save that cannot be done leaves what is on disk as it was.
func TestSaveFailsWhole(t *testing.T) {
	folder := t.TempDir()
	if err := Save(filepath.Join(folder, "no such folder", "c.kettleside"), demo(t)); err == nil {
		t.Error("saving into a folder that is not there gave no error")
	}
	// a folder of that name stands where the file should go
	taken := filepath.Join(folder, "taken.kettleside")
	if err := os.MkdirAll(filepath.Join(taken, "inside"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := Save(taken, demo(t)); err == nil {
		t.Error("saving over a folder gave no error")
	}
	left, _ := os.ReadDir(folder)
	if _, err := os.Stat(filepath.Join(taken, "inside")); err != nil || len(left) != 1 {
		t.Errorf("a failed save left %d entries, %v", len(left), err)
	}
}

func TestReadNamesEveryProblem(t *testing.T) {
	demoText := string(content.DemoClass())
	for _, c := range []struct {
		name, old, new string
		want           []string
	}{
		{"not a number", `"3 lb"`, `"a lot"`, []string{"batches[0].prepared", "“a lot”", "a weight such as"}},
		{"negative", `"3 lb"`, `"-3 lb"`, []string{"batches[0].prepared", "too little", "0.05 lb to 500 lb"}},
		{"absurd", `"3 lb"`, `"1000000000 lb"`, []string{"batches[0].prepared", "too much", "0.05 lb to 500 lb"}},
		{"scientific", `"3 lb"`, `"1e9 lb"`, []string{"batches[0].prepared", "“1e9 lb”"}},
		{"zero", `"3 lb"`, `"0 lb"`, []string{"batches[0].prepared", "too little"}},
		{"wrong unit", `"3 lb"`, `"3 gal"`, []string{"batches[0].prepared", "a unit that does not fit"}},
		{"no unit", `"3 lb"`, `"3"`, []string{"batches[0].prepared", "has no unit"}},
		{"a bare number", `"3 lb"`, `3`, []string{"batches[0].prepared", "in quotes"}},
		{"part of a person", `"headcount": 12`, `"headcount": 12.5`, []string{"people.headcount", "12.5", "whole number"}},
		{"nobody", `"headcount": 12`, `"headcount": 0`, []string{"people.headcount", "from 1 to 500"}},
		{"a crowd", `"headcount": 12`, `"headcount": 99999999999`, []string{"people.headcount", "whole number"}},
		{"unknown field", `"baths": 4`, `"baths": 4, "wok": true`, []string{"kit.wok", "does not have"}},
		{"no such container", `"container": "bag"`, `"container": "sock"`, []string{"pack.container", "“sock”", "bag, box, jar"}},
		{"burner not in the kit", `"burner": "Range, large plate"`, `"burner": "Camp fire"`, []string{"batches[1].burner", "Camp fire"}},
		{"two burners of one name", `"name": "Range, large plate"`, `"name": "Plug-in burner"`, []string{"kit.burners[1].name", "Plug-in burner", "taken"}},
		{"no such burner", `"kind": "radiant"`, `"kind": "peat"`, []string{"kit.burners[1].heat.kind", "peat", "coil, radiant, induction, gas"}},
		{"a rating of a lamp", `"rating": "1500 W"`, `"rating": "15 W"`, []string{"kit.burners[0].heat.rating", "300 W to 15,000 W"}},
		{"a rehearsal in seconds", `"took": "9 1/2 min"`, `"took": "9 s"`, []string{"kit.burners[0].heat.rehearsal.took", "60 s to 10,800 s"}},
		{"hot vegetables", `"start": "70 °F"`, `"start": "170 °F"`, []string{"batches[0].start", "32 °F to 120 °F"}},
		{"a wide basket", `"across": "9 in"`, `"across": "9 ft"`, []string{"kit.kettles[2].across", "0.3 ft to 2.5 ft"}},
		{"kettle not in the kit", `"kettle": "Big kettle"`, `"kettle": "Cauldron"`, []string{"batches[1].kettle", "Cauldron"}},
		{"no day", `"2027-06-12"`, `"12/6/2027"`, []string{"date", "12/6/2027", "year-month-day"}},
		{"no schema", `"schema": 2,`, ``, []string{"schema", "missing"}},
		{"newer schema", `"schema": 2`, `"schema": 3`, []string{"newer"}},
		{"units", `"units": "us"`, `"units": "imperial"`, []string{"units", "imperial", "us, metric"}},
		{"a field twice", `"prepared": "3 lb"`, `"prepared": "3 lb", "prepared": "5 lb"`, []string{"batches[0].prepared", "twice"}},
		{"another encoding", "Green weekend", "Gr\xfcn weekend", []string{"UTF-8"}},
		{"a line break in a title", "Green weekend", `Green\nweekend`, []string{"title", "one line"}},
		{"a mark that turns text", "Green weekend", `Green \u202eweekend`, []string{"title", "one line"}},
		{"long before classes", `"2027-06-12"`, `"1900-01-01"`, []string{"date", "1950 to 2200"}},
		{"very deep", `"notes": "`, `"deep": ` + strings.Repeat("[", 40) + strings.Repeat("]", 40) + `, "notes": "`, []string{"deeper"}},
		{"damaged", `"people": {`, `"people": {{`, []string{"line 13"}},
		{"cut off", demoText[len(demoText)/2:], ``, []string{"cut off"}},
		{"empty", demoText, ``, []string{"empty"}},
		{"a list", demoText, `[]`, []string{"no class"}},
		{"two classes", demoText, demoText + demoText, []string{"after the end"}},
	} {
		text := strings.Replace(demoText, c.old, c.new, 1)
		_, err := Read(strings.NewReader(text), "x.kettleside")
		var fileErr *FileError
		if !errors.As(err, &fileErr) {
			t.Errorf("%s: %v; want a *FileError", c.name, err)
			continue
		}
		for _, want := range append(c.want, "x.kettleside") {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%s: the message lacks %q:\n%v", c.name, want, err)
			}
		}
	}
	// several problems are all reported
	text := strings.Replace(strings.Replace(demoText, `"3 lb"`, `"x"`, 1), `"640 ft"`, `"y"`, 1)
	_, err := Read(strings.NewReader(text), "x")
	var fileErr *FileError
	if !errors.As(err, &fileErr) || len(fileErr.Problems) != 2 {
		t.Errorf("two problems: %v", err)
	}
}

// A file of schema 1 knew only how many burners there are.
func TestReadSchema1(t *testing.T) {
	c, err := Read(strings.NewReader(`{"schema": 1, "units": "us", "people": {"headcount": 8, "perStation": 4}, "kit": {"burners": 3, "baths": 1}}`), "old")
	if err != nil {
		t.Fatal(err)
	}
	if want := []Burner{{Name: "Burner", Count: 3}}; c.Schema != Schema || !reflect.DeepEqual(c.Kit.Burners, want) {
		t.Errorf("schema %d, burners %+v; want %+v", c.Schema, c.Kit.Burners, want)
	}
	_, err = Read(strings.NewReader(`{"schema": 1, "units": "us", "people": {"headcount": 8, "perStation": 4}, "kit": {"burners": 101}}`), "old")
	if err == nil || !strings.Contains(err.Error(), "kit.burners[0].count") {
		t.Errorf("101 burners in schema 1: %v", err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(content.DemoClass())
	f.Add([]byte(`{"schema":1,"batches":[{"prepared":"3 lb"}]}`))
	f.Add([]byte(`{"schema":1,"kit":{"burners":4}}`))
	f.Add([]byte(`{"schema":1e0,"kit":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := Read(bytes.NewReader(data), "f")
		if err != nil {
			return
		}
		Work(c, reference.Shipped())
		encoded, err := Encode(c)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Read(bytes.NewReader(encoded), "again"); err != nil {
			t.Fatalf("what was written does not read: %v", err)
		}
	})
}

func TestHistory(t *testing.T) {
	h := NewHistory(demo(t), true)
	if h.Unsaved() {
		t.Error("a class just opened counts as unsaved")
	}
	c := h.Class()
	c.Title = "Another"
	h.Add("change the title", c)
	c.Batches[0].Name = "scribbled on after the fact"
	if got := h.Class(); got.Title != "Another" || got.Batches[0].Name == c.Batches[0].Name {
		t.Error("the history shares memory with its caller")
	}
	if what, ok := h.CanUndo(); !ok || what != "change the title" || !h.Unsaved() {
		t.Errorf("undo would take back %q, %v", what, ok)
	}
	h.Undo()
	if h.Unsaved() || !reflect.DeepEqual(h.Class(), demo(t)) {
		t.Error("undo did not restore the saved class")
	}
	h.Redo()
	if h.Class().Title != "Another" || !h.Unsaved() {
		t.Error("redo did not bring the change back")
	}
}

// Undo after any run of changes restores each earlier state, and the saved
// mark follows the state, not a flag.
func TestHistoryLaws(t *testing.T) {
	start := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		h := NewHistory(start, true)
		states, now, saved := []Class{start}, 0, 0
		for range rapid.IntRange(1, 40).Draw(t, "steps") {
			switch rapid.IntRange(0, 3).Draw(t, "do") {
			case 0:
				c := h.Class()
				c.Title = rapid.StringN(0, 8, 16).Draw(t, "title")
				h.Add("title", c)
				if saved > now {
					saved = -1
				}
				states = append(states[:now+1:now+1], c)
				now++
			case 1:
				if _, ok := h.Undo(); ok != (now > 0) {
					t.Fatal("undo")
				} else if ok {
					now--
				}
			case 2:
				if _, ok := h.Redo(); ok != (now < len(states)-1) {
					t.Fatal("redo")
				} else if ok {
					now++
				}
			case 3:
				h.MarkSaved()
				saved = now
			}
			if !reflect.DeepEqual(h.Class(), states[now]) || h.Unsaved() != (saved != now) {
				t.Fatalf("state %d of %d, saved %d, unsaved %v", now, len(states), saved, h.Unsaved())
			}
		}
	})
}

func TestWorkDoesNotTouchTheClass(t *testing.T) {
	c := demo(t)
	before := c.Clone()
	w := Work(c, reference.Shipped())
	w.Class.Batches[0].Name = "changed in the result"
	if !reflect.DeepEqual(c, before) {
		t.Error("Work changed its input, or shares memory with it")
	}
}

func BenchmarkWork(b *testing.B) {
	c := demo(b)
	for b.Loop() {
		Work(c, reference.Shipped())
	}
}

// Stations that have to share, and a tap too warm for a bath, are remarked.
func TestSharingAndWarmTap(t *testing.T) {
	c := New(reference.Edition)
	c.People.Headcount, c.People.PerStation = 12, 3
	c.Kit.Baths = 1
	c.Place.Tap = measure.New(70, measure.Fahrenheit)
	c.Batches = []Batch{beans(1, 4)}
	w := Work(c, reference.Shipped())
	for _, id := range []string{"burners-shared", "kettles-shared", "baths-shared", "warm-tap"} {
		if !finds(w, id) {
			t.Errorf("no finding %s: %+v", id, w.Findings)
		}
	}
	c.Kit.Burners[0].Count, c.Kit.Baths, c.Kit.Kettles[0].Count = 4, 4, 4
	c.Place.Tap = measure.New(60, measure.Fahrenheit)
	w = Work(c, reference.Shipped())
	for _, id := range []string{"burners-shared", "kettles-shared", "baths-shared", "warm-tap"} {
		if finds(w, id) {
			t.Errorf("finding %s does not belong", id)
		}
	}
	raw := beans(1, 4)
	raw.Treatment = "sweet-peppers-raw"
	c.Kit.Burners, c.Kit.Baths, c.Batches = nil, 0, []Batch{raw}
	if w := Work(c, reference.Shipped()); finds(w, "burners-shared") || finds(w, "baths-shared") {
		t.Error("raw peppers need no burner and no bath")
	}
}

// 12 lb of beans at the boil into four baths of a gallon of 70 °F tap water that
// end at 40 °F: about 19.6 lb of ice by heat balance, 12 lb by rule. By hand:
// 4 × 4.9 lb, see batch.TestIceByBalanceBesideTheRule.
func TestIceByBalanceOfTheClass(t *testing.T) {
	c := New(reference.Edition)
	c.Place.Tap = measure.New(70, measure.Fahrenheit)
	c.Place.Altitude = measure.New(0, measure.Foot)
	c.Kit.Baths, c.Kit.BathWater = 4, measure.New(1, measure.Gallon)
	c.Batches = []Batch{beans(3, 4)}
	w := Work(c, reference.Shipped())
	if got := w.Totals.IceBalance; math.Abs(got.Value-19.6) > 0.3 || got.Basis != measure.Estimate || w.Totals.Ice.Text != "12 lb" {
		t.Errorf("by balance %+v, by rule %s", got, w.Totals.Ice.Text)
	}
	c.Kit.BathWater = measure.Volume{}
	if got := Work(c, reference.Shipped()).Totals.IceBalance; got.Text != "bath water not entered" {
		t.Errorf("without bath water: %+v", got)
	}
}

func TestFreezerWarmth(t *testing.T) {
	c := demo(t)
	w := Work(c, reference.Shipped())
	some := w.Totals.FreezerWarmth
	if some.InWords() || some.Value <= -10 || some.Basis != measure.Estimate || !strings.Contains(some.Working, "the rule says 2–3 lb per cu ft") || finds(w, "freezer-slow") {
		t.Errorf("the demo class in its freezer: %+v", some)
	}
	c.Batches[0].Stations = 20
	c.Batches[0].Prepared = measure.New(6, measure.Pound)
	w = Work(c, reference.Shipped())
	if much := w.Totals.FreezerWarmth; much.Value <= some.Value || !finds(w, "freezer-slow") {
		t.Errorf("120 lb of beans in it: %+v", much)
	}
	c.Place.Freezer = measure.Volume{}
	if w := Work(c, reference.Shipped()); w.Totals.FreezerWarmth.Text != "freezer not entered" {
		t.Errorf("no freezer: %+v", w.Totals.FreezerWarmth)
	}
	if w := Work(New(reference.Edition), reference.Shipped()); w.Totals.FreezerWarmth.Text != "nothing to freeze yet" {
		t.Errorf("no batches: %+v", w.Totals.FreezerWarmth)
	}
}

// A memory changes nothing but the time.
func TestWorkWithAMemory(t *testing.T) {
	memory := &estimate.Memory{}
	c := demo(t)
	for range 2 {
		if got, want := WorkWith(With{Memory: memory}, c, reference.Shipped()), Work(c, reference.Shipped()); !reflect.DeepEqual(got, want) {
			t.Error("results differ")
		}
		c.Batches[0].Prepared = measure.New(2, measure.Pound)
	}
}

// One batch of many is changed, as a slider does.
func BenchmarkChangeOneBatch(b *testing.B) {
	for _, n := range []int{4, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			c := demo(b)
			for i := range n {
				one := c.Batches[i%4]
				one.Prepared = measure.New(1+float64(i)/100, measure.Pound)
				c.Batches = append(c.Batches, one)
			}
			c.Batches = c.Batches[4:]
			memory := &estimate.Memory{}
			WorkWith(With{Memory: memory}, c, reference.Shipped())
			for i := 0; b.Loop(); i++ {
				c.Batches[0].Prepared = measure.New(2+float64(i)/1e5, measure.Pound)
				WorkWith(With{Memory: memory}, c, reference.Shipped())
			}
		})
	}
}
