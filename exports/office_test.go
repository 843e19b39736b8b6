package exports

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// wide is a class whose treatments show everything that the own-numbers sheet
// can meet: plain minutes, twice the water, steam, words, a range, twice the
// chilling, seconds, the headspace table by mouth, pods and a known share.
func wideClass(t *testing.T) class.Class {
	t.Helper()
	ids := []string{"snap-beans-cut-water", "spinach-leaves-water", "broccoli-flowerets-steam", "pumpkin-mashed-cook", "sweet-peppers-raw"}
	for _, want := range []func(reference.Treatment) bool{
		func(x reference.Treatment) bool {
			return x.Method == reference.WaterBlanch && x.MinutesHigh > x.Minutes
		},
		func(x reference.Treatment) bool { return x.ChillFactor > 1 },
		func(x reference.Treatment) bool { return x.Minutes > 0 && x.Minutes < 1 },
		func(x reference.Treatment) bool { return x.HeadspaceRow == "liquid" },
		func(x reference.Treatment) bool { return x.HeadspaceRow == "juice" },
		func(x reference.Treatment) bool { return x.Pack == reference.TrayPack && x.Minutes > 0 },
		func(x reference.Treatment) bool {
			y, ok := reference.Shipped().ChosenYield(x.Crop)
			return ok && y.AsBought == "in pods" && y.UsableShare > 0 && x.Minutes > 0
		},
		func(x reference.Treatment) bool {
			y, ok := reference.Shipped().ChosenYield(x.Crop)
			return ok && (y.AsBought == "in pods" || y.AsBought == "in husk") && y.UsableShare == 0
		},
	} {
		for _, x := range reference.Shipped().Treatments {
			if want(x) {
				ids = append(ids, x.ID)
				break
			}
		}
	}
	return classOf(t, ids...)
}

// change is a class whose first batch is what a participant types.
type ownCase struct {
	name                                string
	treatment                           string
	prepared, kettle, freezer, altitude string // "" is left empty
	packs                               int
	size                                batch.Size
	mouth                               reference.Mouth
	tray                                bool
}

// class puts the case into the first batch of a class.
func (o ownCase) class(t *testing.T, c class.Class) class.Class {
	t.Helper()
	c = c.Clone()
	b := &c.Batches[0]
	b.Treatment, b.Kettle = o.treatment, "own"
	b.Pack = batch.Packing{Container: batch.Box, Size: o.size, Mouth: o.mouth, Tray: o.tray, Count: o.packs}
	if o.size == "" {
		b.Pack.Size = batch.Pint
	}
	if o.mouth == "" {
		b.Pack.Mouth = reference.WideMouth
	}
	b.Prepared, c.Place.Freezer, c.Place.Altitude = measure.Mass{}, measure.Volume{}, measure.Length{}
	kettle := class.Kettle{Name: "own", Count: 1}
	for _, q := range []struct {
		text string
		to   interface{ UnmarshalText([]byte) error }
	}{{o.prepared, &b.Prepared}, {o.kettle, &kettle.Holds}, {o.freezer, &c.Place.Freezer}, {o.altitude, &c.Place.Altitude}} {
		noErr(t, q.to.UnmarshalText([]byte(q.text)))
	}
	c.Kit.Kettles = append(c.Kit.Kettles, kettle)
	return c
}

func ownCases(t *testing.T) []ownCase {
	c := wideClass(t)
	cases := []ownCase{
		{name: "picking", treatment: c.Batches[0].Treatment, prepared: "6.5 lb", kettle: "1 gal", freezer: "7 cu ft", altitude: "7500 ft", packs: 12},
		{name: "small pot", treatment: c.Batches[0].Treatment, prepared: "0.9 lb", kettle: "3.75 qt", freezer: "20 cu ft", altitude: "4999 ft", size: batch.Quart},
		{name: "exact", treatment: c.Batches[0].Treatment, prepared: "7 lb", kettle: "1 gal", freezer: "3.5 cu ft", altitude: "5000 ft"},
		{name: "metric words", treatment: c.Batches[0].Treatment, prepared: "2.5 kg", kettle: "6 L", freezer: "100 L", altitude: "1524 m", packs: 5, size: batch.Quart},
		{name: "no kettle", treatment: c.Batches[1].Treatment, prepared: "3 lb", freezer: "10 cu ft", altitude: "-200 ft"},
		{name: "no freezer", treatment: c.Batches[1].Treatment, prepared: "60 lb", kettle: "6 gal"},
		{name: "no weight", treatment: c.Batches[0].Treatment, kettle: "1 gal", freezer: "10 cu ft", altitude: "600 ft"},
		{name: "most", treatment: c.Batches[0].Treatment, prepared: "500 lb", kettle: "0.25 gal", freezer: "0.5 cu ft", altitude: "20000 ft", packs: 2000, size: batch.Quart},
		{name: "thirds", treatment: c.Batches[0].Treatment, prepared: "1 1/3 lb", kettle: "1 gal", freezer: "7 cu ft", altitude: "600 ft"},
		{name: "two thirds", treatment: c.Batches[0].Treatment, prepared: "2/3 lb", kettle: "1 gal", freezer: "7 cu ft", altitude: "600 ft"},
		{name: "four places", treatment: c.Batches[0].Treatment, prepared: "1.2345 lb", kettle: "1 gal", freezer: "7 cu ft", altitude: "600 ft"},
		{name: "tray", treatment: c.Batches[0].Treatment, prepared: "2 lb", kettle: "2 gal", freezer: "14 cu ft", altitude: "10 ft", tray: true},
	}
	for i, b := range c.Batches[1:] { // each treatment once, in turn at height, narrow and in quarts
		o := ownCase{name: fmt.Sprintf("treatment %d", i+2), treatment: b.Treatment, prepared: "3.3 lb", kettle: "1.5 gal", freezer: "12 cu ft", altitude: "600 ft"}
		if i%2 == 0 {
			o.altitude, o.size, o.mouth = "6200 ft", batch.Quart, reference.NarrowMouth
		}
		if i%3 == 0 {
			o.packs = 4
		}
		cases = append(cases, o)
	}
	return cases
}

// The formulas are live and say what the program says: workbooks whose open
// cells hold other entries, and whose formula cells hold nonsense as their last
// value, are worked out by LibreOffice and compared with class.Work.
func TestFormulasFollowTheEntries(t *testing.T) {
	slow(t)
	need(t, "soffice")
	files := map[string][]byte{}
	want := map[string]class.Worked{}
	places := map[string]string{} // defined name → cell, the same in all
	numbering := newMaker(class.Work(wideClass(t), reference.Shipped()), mustSettle(t, Options{})).sources
	for _, l := range languages {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			base := wideClass(t)
			base.Units = units
			start := workedIn(l, base)
			for _, o := range ownCases(t) {
				key := string(l) + "-" + string(units) + " " + o.name
				want[key] = workedIn(l, o.class(t, base))
				data, err := workbook(start, Options{Sheets: []string{OwnNumbersSheet}}, func(b *book) {
					typeIn(t, b.sheets[0], entriesOf(t, want[key]))
					spoil(b.sheets[0])
					for name, at := range cellsOf(b.sheets[0]) {
						places[string(l)+"-"+string(units)+name] = at
					}
				})
				noErr(t, err)
				files[key] = data
			}
		}
	}
	for key, data := range office(t, "xlsx", files) {
		f := open(t, data)
		kind, _, _ := strings.Cut(key, " ")
		get := func(name string) string {
			at, ok := places[kind+name]
			if !ok {
				t.Fatalf("no cell is named %s", name)
			}
			v, err := f.GetCellValue(f.GetSheetName(0), at, excelize.Options{RawCellValue: true})
			noErr(t, err)
			return strings.ReplaceAll(v, noBreak, " ")
		}
		compareOwn(t, key, want[key], get)
		compareMarks(t, key, want[key], numbering, get)
	}
}

// compareMarks holds the source beside each line against that of the program's
// figure; a line that rests on an entry or on nothing may name its rule.
func compareMarks(t *testing.T, key string, w class.Worked, numbering *sources, get func(string) string) {
	t.Helper()
	b := w.Batches[0]
	u := unitsOf(w.Class.Units)
	y, _ := w.Table.ChosenYield(b.Crop.ID)
	for name, id := range map[string]string{
		"what_to_do": b.Treatment.Source, "published_from": b.Treatment.Source, "minutes_from": b.Minutes.Source,
		"clock_start": b.Clock.Source, "chill_times": b.Chill.Source, "chill_from": b.Chill.Source, "how_to_chill": b.Chill.Source,
		"water_how": b.Water.Source, "water_rate": b.Water.Source, u.waterName: b.Water.Source, "load_most": b.KettleTakes.Source, "loads": b.Loads.Source,
		"load_weight": b.LoadWeight.Source, "load_water": b.LoadWater.Source, "ice_weight": b.Ice.Source,
		"headspace_rule": b.Treatment.HeadspaceSource, "headspace": b.Headspace.Source, "per_pint_from": y.Source, "share_left": y.UsableShareSource, "packs_from": b.Packs.Source, "buy_from": b.Buy.Source,
		"freezer_day_from": b.FreezerDay.Source, "days_from": b.FreezerDays.Source,
	} {
		if got, want := get(sourceName(name)), numbering.ref(id); got != want && id != "entered" {
			t.Errorf("%s: %s rests on %q; the program says %s, %s", key, name, got, want, id)
		}
	}
}

// entriesOf are the open cells as the sheet of that class would start.
func entriesOf(t *testing.T, w class.Worked) map[string]any {
	t.Helper()
	o, err := Options{Sheets: []string{OwnNumbersSheet}}.settle()
	noErr(t, err)
	entries := map[string]any{}
	for _, r := range describe(w, o).sheets[0].rows {
		for _, c := range r.cells {
			if looks[c.role].open && c.name != "" {
				entries[c.name] = c.value
			}
		}
	}
	return entries
}

// typeIn puts entries into the open cells.
func typeIn(t *testing.T, s *sheet, entries map[string]any) {
	t.Helper()
	done := 0
	for _, r := range s.rows {
		for i := range r.cells {
			if v, ok := entries[r.cells[i].name]; ok && looks[r.cells[i].role].open {
				r.cells[i].value = v
				done++
			}
		}
	}
	if done != len(entries) {
		t.Fatalf("%d of %d entries found their cell", done, len(entries))
	}
}

// spoil makes the last value of every formula wrong.
func spoil(s *sheet) {
	for _, r := range s.rows {
		for i := range r.cells {
			if r.cells[i].formula != "" {
				r.cells[i].value = -98765.4321
			}
		}
	}
}

// cellsOf are the first cells of the defined names.
func cellsOf(s *sheet) map[string]string {
	cells := map[string]string{}
	for i, r := range s.rows {
		for _, c := range r.cells {
			if _, ok := cells[c.name]; !ok && c.name != "" {
				cells[c.name], _ = excelize.CoordinatesToCellName(c.col+1, i+1)
			}
		}
	}
	return cells
}

// compareOwn holds what a spreadsheet worked out against the program.
func compareOwn(t *testing.T, key string, w class.Worked, get func(string) string) {
	t.Helper()
	b := w.Batches[0]
	u := unitsOf(w.Class.Units)
	weight := b.Batch.Prepared.Given()
	for _, c := range []struct {
		name  string
		f     measure.Figure
		words []string // cells that show the figure's words, if it has words
	}{
		{"published_from", tabled(b), []string{"what_to_do"}},
		{"minutes_from", b.Minutes, []string{"what_to_do"}},
		{"chill_from", b.Chill, []string{"how_to_chill"}},
		{u.waterName, b.Water, []string{"water_how"}},
		{"load_most", b.KettleTakes, []string{"water_how", "load_most"}},
		{"loads", b.Loads, []string{"water_how", "loads"}},
		{"load_weight", b.LoadWeight, []string{"water_how", "load_weight"}},
		{"load_water", b.LoadWater, []string{"water_how", "load_water"}},
		{"ice_weight", b.Ice, []string{"ice_weight"}},
		{"headspace", b.Headspace, []string{"headspace"}},
		{"packs_from", b.Packs, []string{"packs_from"}},
		{"buy_from", b.Buy, []string{"buy_from"}},
		{"freezer_day_from", b.FreezerDay, []string{"freezer_day_from"}},
		{"days_from", b.FreezerDays, []string{"days_from"}},
	} {
		got := get(c.name)
		switch {
		case c.f.Words == w.Voice.Say(noWeight):
			if got != "" {
				t.Errorf("%s: %s shows %q without a weight", key, c.name, got)
			}
		case c.f.InWords():
			shown := false
			for _, name := range c.words {
				shown = shown || strings.Contains(get(name), c.f.Words)
			}
			if _, err := strconv.ParseFloat(got, 64); err == nil || got == "" || !shown {
				t.Errorf("%s: %s shows %q; want words, and %q in %v", key, c.name, got, c.f.Words, c.words)
			}
		default:
			sameNumber(t, key+": "+c.name, got, c.f.Value)
			if name := toName(c.name); c.f.IsRange() {
				sameNumber(t, key+": "+name, get(name), c.f.High)
			} else if strings.HasSuffix(c.name, "_from") && get(name) != "" {
				t.Errorf("%s: %s shows %q; the figure is one number", key, name, get(name))
			}
		}
	}
	if got := get("clock_start"); got != b.Clock.Text {
		t.Errorf("%s: the clock starts %q; want %q", key, got, b.Clock.Text)
	}
	for name, id := range map[string]string{"mind_load": "load-over-a-pound", "mind_water": "change-water", "mind_freezer": "freezer-more-than-a-day", "mind_altitude": "no-altitude"} {
		if shown := get(name) != ""; weight && shown != has(b.Findings, id) {
			t.Errorf("%s: %s shows %q; the program's findings: %v", key, name, get(name), b.Findings)
		}
	}
}

// tabled are the minutes of the table as a figure; they may be edited, which the
// figure “as published” is not.
func tabled(b class.BatchWorked) measure.Figure {
	return measure.Figure{Value: b.Treatment.Minutes, High: b.Treatment.MinutesHigh, Words: b.Treatment.Words}
}

func has(list []measure.Finding, id string) bool {
	for _, f := range list {
		if f.ID == id {
			return true
		}
	}
	return false
}

// sameNumber compares far beyond the digits that are shown.
func sameNumber(t *testing.T, what, got string, want float64) {
	t.Helper()
	n, err := strconv.ParseFloat(got, 64)
	if err != nil || math.Abs(n-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: %q; the program says %v", what, got, want)
	}
}

// What stands beside each formula is what LibreOffice works out for it; no cell
// is an error or turned into a date. Also an empty sheet and another first
// batch.
func TestValuesBesideFormulas(t *testing.T) {
	slow(t)
	need(t, "soffice")
	classes := map[string]class.Class{"demo": demoClass(t), "wide": wideClass(t), "empty": class.New(reference.Edition)}
	pumpkin := demoClass(t)
	pumpkin.Batches[0], pumpkin.Batches[3] = pumpkin.Batches[3], pumpkin.Batches[0]
	classes["words first"] = pumpkin
	high := demoClass(t)
	high.Place.Altitude = measure.New(7500, measure.Foot)
	high.Batches[0].Prepared = measure.New(6.5, measure.Pound)
	classes["high picking"] = high
	metric := demoClass(t)
	metric.Units = measure.Metric
	classes["metric"] = metric
	files := map[string][]byte{}
	for name, c := range classes {
		for _, l := range languages {
			data, err := Workbook(workedIn(l, c), Options{Paper: A4, Sheets: everySheet()})
			noErr(t, err)
			files[name+" "+string(l)] = data
		}
	}
	formulas := 0
	for name, data := range office(t, "xlsx", files) {
		ours, theirs := open(t, files[name]), open(t, data)
		for _, sheet := range ours.GetSheetList() {
			rows, err := ours.GetRows(sheet, excelize.Options{RawCellValue: true})
			noErr(t, err)
			for i, r := range rows {
				for j := range r {
					at, _ := excelize.CoordinatesToCellName(j+1, i+1)
					formula, err := ours.GetCellFormula(sheet, at)
					noErr(t, err)
					want, err := ours.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
					noErr(t, err)
					got, err := theirs.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
					noErr(t, err)
					if formula != "" {
						formulas++
					}
					where := name + " " + sheet + " " + at
					if n, err := strconv.ParseFloat(want, 64); err == nil && got != want {
						sameNumber(t, where, got, n)
					} else if err != nil && got != want {
						t.Errorf("%s: LibreOffice has %q, the program wrote %q (%s)", where, got, want, formula)
					}
					if strings.HasPrefix(got, "#") {
						t.Errorf("%s is an error: %s", where, got)
					}
					noDate(t, theirs, sheet, at, where)
				}
			}
		}
	}
	if formulas < 200 {
		t.Errorf("only %d formulas were compared", formulas)
	}
}

// noDate refuses a cell that a spreadsheet shows as a date.
func noDate(t *testing.T, f *excelize.File, sheet, at, where string) {
	t.Helper()
	id, err := f.GetCellStyle(sheet, at)
	noErr(t, err)
	s, err := f.GetStyle(id)
	noErr(t, err)
	if s.NumFmt >= 14 && s.NumFmt <= 22 || s.NumFmt >= 45 && s.NumFmt <= 47 {
		t.Errorf("%s is a date (format %d)", where, s.NumFmt)
	}
	if s.CustomNumFmt != nil && strings.ContainsAny(strings.ReplaceAll(*s.CustomNumFmt, "General", ""), "ymdhs") {
		t.Errorf("%s is a date (format %s)", where, *s.CustomNumFmt)
	}
}
