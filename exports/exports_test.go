package exports

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

func TestSameClassSameBytes(t *testing.T) {
	var first [32]byte
	for i := range 8 { // excelize orders parts by map: once alike proves little
		data, err := Workbook(demoWorked(t), Options{Made: time.Date(2027, 6, 1, 8, 0, 0, 0, time.UTC)})
		noErr(t, err)
		sum := sha256.Sum256(data)
		if i == 0 {
			first = sum
		} else if sum != first {
			t.Fatalf("run %d has other bytes than the first", i+1)
		}
	}
	other, err := Workbook(demoWorked(t), Options{Made: time.Date(2027, 6, 2, 8, 0, 0, 0, time.UTC)})
	noErr(t, err)
	if sha256.Sum256(other) == first {
		t.Error("another day of making gives the same bytes")
	}
}

func TestOptions(t *testing.T) {
	for _, c := range []struct {
		options Options
		option  string
	}{
		{Options{Paper: "a5"}, "paper"},
		{Options{Sheets: []string{"cover", "covers"}}, "sheets"},
		{Options{LabelGrid: "l99"}, "labels"},
	} {
		_, err := Workbook(demoWorked(t), c.options)
		var e *OptionError
		if !errors.As(err, &e) || e.Option != c.option || !strings.Contains(err.Error(), e.Allowed) {
			t.Errorf("%+v: %v; want an error about %s", c.options, err, c.option)
		}
	}
	data, err := Workbook(demoWorked(t), Options{Sheets: []string{BatchSheet, CoverSheet}})
	noErr(t, err)
	if got := open(t, data).GetSheetList(); len(got) != 2 || got[0] != "Cover" || got[1] != "Batches" {
		t.Errorf("sheets %v; want Cover, Batches", got)
	}
}

// All the cells of the columns are written in order; a reader that is strict
// refuses a file where they are not.
func TestColumnsAscend(t *testing.T) {
	data, err := Workbook(demoWorked(t), Options{})
	noErr(t, err)
	f := open(t, data)
	for path := range partsOf(t, data) {
		if !strings.HasPrefix(path, "xl/worksheets/sheet") {
			continue
		}
		last := 0
		for _, m := range regexp.MustCompile(`<col min="(\d+)"`).FindAllStringSubmatch(string(partsOf(t, data)[path]), -1) {
			var n int
			fmt.Sscan(m[1], &n)
			if n <= last {
				t.Errorf("%s: column %d after %d", path, n, last)
			}
			last = n
		}
		if last == 0 {
			t.Errorf("%s has no columns", path)
		}
	}
	if f.SheetCount != len(Sheets) {
		t.Errorf("%d sheets", f.SheetCount)
	}
}

func TestFormulasAreChecked(t *testing.T) {
	names := map[string]bool{"water_gal": true}
	for _, c := range []struct {
		formula string
		ok      bool
	}{
		{`IF(COUNT(water_gal)=0,"",ROUNDUP(water_gal*1.5-0.001,0))`, true},
		{`XLOOKUP(water_gal,water_gal,water_gal)`, false}, // not in every spreadsheet
		{`TEXT(water_gal,"0.0")`, false},                  // depends on the country
		{`CEILING.MATH(water_gal)`, false},                // newer than 2007
		{`A1+1`, false},                                   // a cell instead of a name
		{`$B$3*2`, false},                                 //
		{`water_gall*2`, false},                           // no such name
		{`"XLOOKUP(" & water_gal`, true},                  // text is text
	} {
		if err := checkFormula(c.formula, names); (err == nil) != c.ok {
			t.Errorf("%s: %v; want ok %v", c.formula, err, c.ok)
		}
	}
	for name, ok := range map[string]bool{
		"pounds_prepared": true, "kettle_gal": true, "A1": false, "t1": false, "r": false, "c": false, "R1C1": false, "Water": false, "_x": false, "x_": false,
	} {
		if err := checkName(name); (err == nil) != ok {
			t.Errorf("name %s: %v", name, err)
		}
	}
	bare := func(b *book) { // a formula without the program's value
		for _, r := range b.sheets[0].rows {
			for i := range r.cells {
				if r.cells[i].formula != "" {
					r.cells[i].value = nil
					return
				}
			}
		}
	}
	if _, err := workbook(demoWorked(t), Options{Sheets: []string{OwnNumbersSheet}}, bare); err == nil || !strings.Contains(err.Error(), "no value") {
		t.Errorf("a formula without value: %v", err)
	}
}

func TestWriteWorkbook(t *testing.T) {
	w := demoWorked(t)
	dir := t.TempDir()
	path := filepath.Join(dir, "Kurs äöü 1.xlsx")
	noErr(t, WriteWorkbook(path, w, Options{}))
	want, err := Workbook(w, Options{})
	noErr(t, err)
	got, err := os.ReadFile(path)
	noErr(t, err)
	if !bytes.Equal(got, want) {
		t.Error("the file is not the workbook")
	}
	noErr(t, WriteWorkbook(path, w, Options{Paper: A4})) // replaces

	readOnly := filepath.Join(dir, "old.xlsx")
	noErr(t, os.WriteFile(readOnly, []byte("old"), 0o444))
	opened := filepath.Join(dir, "opened.xlsx")
	noErr(t, os.WriteFile(opened, []byte("old"), 0o644))
	noErr(t, os.WriteFile(filepath.Join(dir, ".~lock.opened.xlsx#"), nil, 0o644))
	for _, c := range []struct{ path, says string }{
		{readOnly, "old.xlsx is write-protected"},
		{opened, "opened.xlsx is open in another program"},
		{filepath.Join(dir, "no", "x.xlsx"), "there is no folder"},
		{dir, "give another name"},
	} {
		if err := WriteWorkbook(c.path, w, Options{}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v; want %q", filepath.Base(c.path), err, c.says)
		}
	}
	for _, p := range []string{readOnly, opened} {
		if left, _ := os.ReadFile(p); string(left) != "old" {
			t.Errorf("%s was touched: %q", filepath.Base(p), left)
		}
	}
	entries, err := os.ReadDir(dir)
	noErr(t, err)
	if len(entries) != 4 {
		t.Errorf("something was left behind: %v", entries)
	}
}

// Names of emoji and ampersands only: the sheets keep their tabs and names, and
// the right half of each header and footer is whole.
func TestTitlesOfOneSign(t *testing.T) {
	plain := open(t, must(Workbook(demoWorked(t), Options{})))
	for _, sign := range []string{"🥦", "&", "'", "["} {
		c := demoClass(t)
		c.Title = strings.Repeat(sign, 150)
		c.Batches[0].Name, c.Place.Name, c.People.Educator = c.Title, c.Title, c.Title
		data, err := Workbook(class.Work(c, reference.Shipped()), Options{})
		noErr(t, err)
		f := open(t, data)
		if got, want := fmt.Sprint(f.GetSheetList(), f.GetDefinedName()), fmt.Sprint(plain.GetSheetList(), plain.GetDefinedName()); len(got) == 0 || f.GetSheetList()[0] != "Cover" || len(f.GetDefinedName()) != len(plain.GetDefinedName()) {
			t.Errorf("%s: %s; want %s", sign, got, want)
		}
		for _, s := range f.GetSheetList()[:4] {
			h, err := f.GetHeaderFooter(s)
			noErr(t, err)
			if !strings.HasSuffix(h.OddHeader, `&R&"Arial,Regular"&10 `+s) || !strings.HasSuffix(h.OddFooter, "Page &P of &N") {
				t.Errorf("%s: header %s, footer %s", sign, h.OddHeader, h.OddFooter)
			}
		}
	}
}

func must(data []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return data
}

// A unit stays with its figure.
func TestBind(t *testing.T) {
	for text, want := range map[string]string{
		"Cook to 165 °F before eating":   "Cook to 165~°F before eating",
		"1 1/2 gal, 6 qt · 5.7 L":        "1 1/2~gal, 6~qt · 5.7~L",
		"½ in of 20 cu ft":               "½~in of 20~cu~ft",
		"2 lb 3 oz; 5 kg 4 g":            "2~lb 3~oz; 5~kg 4~g",
		"3–4 min (90 s, 2 h)":            "3–4~min (90~s, 2~h)",
		"4 cm, 5,000 ft, 1,524 m, 12 mm": "4~cm, 5,000~ft, 1,524~m, 12~mm",
		"1 pt, 1 cup, 2 cups, 5 mL":      "1~pt, 1~cup, 2~cups, 5~mL",
		"1,800 W, 55 % left, 20 °C":      "1,800~W, 55~% left, 20~°C",
		"2 gal/lb":                       "2~gal/lb",
		"3 minutes, 2 inches, 4 people":  "3 minutes, 2 inches, 4 people",
		"in the water":                   "in the water",
	} {
		if got := strings.ReplaceAll(bind(text), noBreak, "~"); got != want {
			t.Errorf("%q; want %q", got, want)
		}
	}
	s := describe(demoWorked(t), mustSettle(t, Options{})).sheets[0]
	s.settle()
	for _, r := range s.rows {
		for _, c := range r.cells {
			if bound.MatchString(c.text()) {
				t.Errorf("a unit may wrap away: %q", c.text())
			}
		}
	}
}

// Cautions go with what a sheet lists, not only with the class's batches.
func TestCautionsOfWhatIsListed(t *testing.T) {
	says := func(s *sheet, id string) bool {
		for _, c := range content.Cautions(content.AllTopics()...) {
			for _, r := range s.rows {
				for _, x := range r.cells {
					if c.ID == id && strings.HasPrefix(x.text(), c.Title+". ") {
						return true
					}
				}
			}
		}
		return false
	}
	raw := classOf(t, "sweet-peppers-raw")
	all := describe(class.Work(raw, reference.Shipped()), mustSettle(t, Options{AllTreatments: true})).sheets
	few := describe(class.Work(raw, reference.Shipped()), mustSettle(t, Options{})).sheets
	empty := describe(class.Work(class.New(reference.Edition), reference.Shipped()), mustSettle(t, Options{})).sheets
	for _, c := range []struct {
		what string
		s    *sheet
		id   string
		want bool
	}{
		{"all, treatments", all[1], "scald", true}, {"all, treatments", all[1], "power", true}, {"all, own numbers", all[3], "scald", true},
		{"raw, treatments", few[1], "scald", false}, {"raw, own numbers", few[3], "scald", false},
		{"empty, own numbers", empty[3], "scald", true}, {"empty, own numbers", empty[3], "steam", true},
		{"empty, own numbers", empty[3], "power", true}, {"empty, own numbers", empty[3], "hot-pepper", true},
		{"empty, treatments", empty[1], "scald", false},
	} {
		if says(c.s, c.id) != c.want {
			t.Errorf("%s: the caution %s stands there: %v", c.what, c.id, !c.want)
		}
	}
}

// The heads of the treatments stand on one line, on both papers: no empty band.
func TestTreatmentHeadsOnOneLine(t *testing.T) {
	for _, p := range Papers {
		s := describe(demoWorked(t), mustSettle(t, Options{Paper: p})).sheets[1]
		s.settle()
		if h := s.rows[2].height; s.rows[2].cells[0].role != head || h > 10*lineHeight+cellEnds+3+0.75 {
			t.Errorf("%s: the heads take %v points", p, h)
		}
	}
}

// Every task of the class is printed.
func TestEveryTaskStandsOnTheCover(t *testing.T) {
	c := demoClass(t)
	c.People.Roles = nil
	for i := range 20 {
		c.People.Roles = append(c.People.Roles, class.Role{Name: fmt.Sprintf("Task %d", i+1), Does: "something"})
	}
	w := class.Work(c, reference.Shipped())
	if n := strings.Count(Plain(w), "Task "); n != 20 {
		t.Errorf("%d of 20 tasks in the list", n)
	}
	found := 0
	for _, r := range describe(w, mustSettle(t, Options{})).sheets[0].rows {
		if len(r.cells) > 0 && strings.HasPrefix(r.cells[0].text(), "Task ") {
			found++
		}
	}
	if found != 20 {
		t.Errorf("%d of 20 tasks on the cover", found)
	}
}

// What people type stays text, whatever it looks like, and nothing breaks.
func TestHostileTexts(t *testing.T) {
	c := demoClass(t)
	c.Title = "=1+1 & <b>\"2027\" \x01\ufffe ~*? " + strings.Repeat("very long title ", 40)
	c.Notes = strings.Repeat("word ", 9000) + "\n\n=HYPERLINK(\"x\")\n" + strings.Repeat("x", 5000)
	c.Place.Name = "\u202e-3+5"
	c.Batches[0].Name = "+cmd"
	c.People.HelpLine = ""
	data, err := Workbook(class.Work(c, reference.Shipped()), Options{})
	noErr(t, err)
	f := open(t, data)
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		noErr(t, err)
		for i, r := range rows {
			for j := range r {
				at, _ := excelize.CoordinatesToCellName(j+1, i+1)
				formula, err := f.GetCellFormula(sheet, at)
				noErr(t, err)
				if formula != "" && sheet != "Your own numbers" {
					t.Errorf("%s %s holds a formula: %s", sheet, at, formula)
				}
			}
			if h, _ := f.GetRowHeight(sheet, i+1); h > 409 {
				t.Errorf("%s row %d is %v points high", sheet, i+1, h)
			}
		}
	}
}

// Unknown treatments, no batches, nothing entered: still a workbook.
func TestThinClasses(t *testing.T) {
	unknown := demoClass(t)
	unknown.Batches[0].Treatment = "no-such-thing"
	empty := class.New(reference.Edition)
	noWeight := demoClass(t)
	noWeight.Batches[0].Prepared = measure.Mass{}
	noWeight.Place = class.Place{}
	noWeight.Kit.IceBag = measure.Mass{}
	for name, c := range map[string]class.Class{"unknown": unknown, "empty": empty, "no weight": noWeight} {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			c.Units = units
			w := class.Work(c, reference.Shipped())
			if _, err := Workbook(w, Options{}); err != nil {
				t.Errorf("%s, %s: %v", name, units, err)
			}
			if _, err := Numbers(w); err != nil {
				t.Errorf("%s, %s: %v", name, units, err)
			}
			if Plain(w) == "" {
				t.Errorf("%s: nothing to read", name)
			}
		}
	}
}

// Every caution and step can be filled, in both systems of units.
func TestAllTextsCanBeFilled(t *testing.T) {
	for _, units := range []measure.System{measure.US, measure.Metric} {
		texts := batch.RuleTexts(reference.Shipped(), units)
		topics := []content.Topic{content.BoilWater, content.Steam, content.Cook, content.Raw, content.Glass, content.Power, content.IceBath, content.HotPepper, content.DryIce}
		for _, c := range content.Cautions(topics...) {
			filled(c.ID, c.Text, texts)
		}
		for _, method := range topics[:4] {
			for _, s := range content.Steps(method) {
				filled(s.ID, s.Text, texts)
			}
		}
	}
}

func TestMergedSteps(t *testing.T) {
	methods := []content.Topic{content.BoilWater, content.Steam, content.Cook, content.Raw}
	list := mergedSteps(methods)
	place := map[string]int{}
	for i, s := range list {
		if _, twice := place[s.ID]; twice {
			t.Errorf("step %s stands twice", s.ID)
		}
		place[s.ID] = i
	}
	for _, m := range methods {
		last := -1
		for _, s := range content.Steps(m) {
			if place[s.ID] <= last {
				t.Errorf("%s: step %s is out of order", m, s.ID)
			}
			last = place[s.ID]
		}
	}
	if got := mergedSteps(methods[:1]); len(got) != len(content.Steps(content.BoilWater)) {
		t.Errorf("one method alone has %d steps", len(got))
	}
}

// needs.md 1: minutes never without the event that starts the clock and the
// source; words where there are no minutes, never 0.
func TestEveryTreatmentStandsWhole(t *testing.T) {
	table := reference.Shipped()
	var ids []string
	for _, x := range table.Treatments {
		ids = append(ids, x.ID)
	}
	w := class.Work(classOf(t, ids...), table)
	m := newMaker(w, Options{Paper: Letter})
	s := m.treatments(Sheets[1])
	found := 0
	for i, r := range s.rows {
		for _, b := range m.listed {
			if len(r.cells) < 5 || !strings.HasPrefix(r.cells[0].text(), b.Crop.Name+", ") || !strings.HasSuffix(r.cells[0].text(), methodWords(b.Treatment.Method)) ||
				!strings.Contains(r.cells[0].text(), b.Treatment.Cut) || !strings.Contains(r.cells[0].text(), b.Treatment.Size) || !strings.Contains(r.cells[0].text(), b.Treatment.Grade) {
				continue
			}
			line := ""
			for _, c := range r.cells {
				line += c.text() + "\n"
			}
			under := s.rows[i+1].cells[0].text()
			source, _ := table.Source(b.Treatment.Source)
			ok := strings.Contains(line, "\n"+b.Treatment.ClockStart.Says()+"\n") &&
				strings.Contains(under, source.Publisher+", "+source.Edition) && strings.Contains(under, string(b.Treatment.Standing))
			if b.Treatment.Minutes > 0 {
				ok = ok && strings.Contains(line, "\n"+measure.MinutesRange(b.Treatment.Minutes, b.Treatment.MinutesHigh)+"\n")
			} else {
				ok = ok && strings.Contains(line, "\n"+b.Treatment.Words+"\n") && !strings.Contains(line, "\n0")
			}
			if ok {
				found++
				break
			}
		}
	}
	if found < len(ids) {
		t.Errorf("%d of %d treatments stand whole on the sheet", found, len(ids))
	}
}

func TestAllTreatmentsOfTheCrops(t *testing.T) {
	w := demoWorked(t)
	want := 0
	for _, crop := range []string{"snap-beans", "spinach", "broccoli", "pumpkin"} {
		want += len(w.Table.TreatmentsOf(crop))
	}
	list := listedTreatments(w, true)
	if len(list) != want || len(listedTreatments(w, false)) != 4 {
		t.Errorf("%d treatments listed, %d of the class; want %d and 4", len(list), len(listedTreatments(w, false)), want)
	}
	for i := 1; i < len(list); i++ {
		if a, b := list[i-1].Crop.ID, list[i].Crop.ID; a != b {
			for _, later := range list[i:] {
				if later.Crop.ID == a {
					t.Errorf("the treatments of %s do not stand together", a)
				}
			}
		}
	}
}

func TestHeadFootCodes(t *testing.T) {
	got := headFoot("4 & 5 beans", "Page &P of &N")
	// a digit right after the size would become part of it
	if want := `&L&"Arial,Regular"&10 4 && 5 beans&R&"Arial,Regular"&10 Page &P of &N`; got != want {
		t.Errorf("got %s", got)
	}
	for _, long := range []string{strings.Repeat("&", 500), strings.Repeat("🥦", 150), "x" + strings.Repeat("🥦&", 70), "x" + strings.Repeat("&", 500), strings.Repeat("ä", 260)} {
		got := headFoot(long, "Page &P of &N")
		n := len(utf16.Encode([]rune(got)))
		left, whole := strings.CutSuffix(got, `…&R&"Arial,Regular"&10 Page &P of &N`)
		left, _ = strings.CutPrefix(left, `&L&"Arial,Regular"&10 `)
		if n > 255 || n < 250 || !whole || strings.Count(left, "&")%2 != 0 || !strings.HasPrefix(long, strings.ReplaceAll(left, "&&", "&")) {
			t.Errorf("%d units of UTF-16; 255 are allowed: %s", n, got)
		}
	}
}

func TestLabelTable(t *testing.T) {
	for _, g := range Grids() {
		w, h := g.Paper.size()
		right := mmToPoints(g.LeftMm + float64(g.Columns-1)*g.PitchXMm + g.WidthMm + g.RightMm)
		bottom := mmToPoints(g.TopMm + float64(g.Rows-1)*g.PitchYMm + g.HeightMm + g.BottomMm)
		if abs(right-w) > 0.3 || abs(bottom-h) > 0.3 {
			t.Errorf("%s: labels and margins come to %.1f × %.1f points; the paper has %.1f × %.1f", g.ID, right, bottom, w, h)
		}
		if g.Basis != "read" || g.Source == "" {
			t.Errorf("%s: basis %q, source %q", g.ID, g.Basis, g.Source)
		}
		if _, ok := gridNamed(g.ID); !ok || g.Name() == "" {
			t.Errorf("%s is not found", g.ID)
		}
	}
	for _, p := range Papers {
		if g, ok := gridNamed(firstGrid(p)); !ok || g.Paper != p {
			t.Errorf("no grid for %s", p)
		}
	}
	for _, broken := range []string{"", "id,paper\nx,y\n", strings.Replace(string(labelData), "66.68", "wide", 1), strings.Replace(string(labelData), ",3,10,", ",3,x,", 1)} {
		if _, err := readGrids([]byte(broken)); err == nil {
			t.Errorf("a broken label table is read: %.40q", broken)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// needs.md 27: every pack has its label, and all of its text fits.
func TestLabelsFitEveryGrid(t *testing.T) {
	var ids []string
	for _, x := range reference.Shipped().Treatments {
		ids = append(ids, x.ID)
	}
	m := newMaker(class.Work(classOf(t, ids...), reference.Shipped()), Options{})
	for _, g := range Grids() {
		for _, l := range m.labelTexts(g) {
			if !labelFits(l.food, l.rest, l.role, g) {
				t.Errorf("%s: %q does not fit", g.ID, l.food+"\n"+l.rest)
			}
		}
	}
	demo := newMaker(demoWorked(t), Options{})
	g, _ := gridNamed("l10a")
	if got, want := len(demo.labelTexts(g)), int(demo.Totals.Packs.High); got != want {
		t.Errorf("%d labels for %d packs", got, want)
	}
	if l := demo.labelTexts(g)[0]; l.food != "Snap beans, green or wax, whole or cut 2 to 4 in" || !strings.Contains(l.rest, "Frozen 2027-06-12 · 1 pint\nBest by ") || !strings.HasSuffix(l.rest, "Cook before eating.") {
		t.Errorf("label %q %q", l.food, l.rest)
	}
	many := demoClass(t)
	many.Batches[0].Stations, many.Batches[0].Pack.Count = 100, 2000
	n := len(newMaker(class.Work(many, reference.Shipped()), Options{}).labelTexts(g))
	if n != mostLabelPages*g.Columns*g.Rows {
		t.Errorf("%d labels of 200,000 packs", n)
	}
	crowded := newMaker(class.Work(many, reference.Shipped()), mustSettle(t, Options{LabelGrid: g.ID}))
	printed := map[string]int{}
	for _, l := range crowded.labelTexts(g) {
		printed[l.food]++
	}
	for i, b := range crowded.Worked.Batches {
		want := crowded.labelsWanted(g)[i]
		if i == 0 {
			want = n - (len(demo.labelTexts(g)) - demo.labelsWanted(g)[0]) // what the others leave
		}
		got := 0
		for food, n := range printed {
			if strings.HasPrefix(food, b.Label.Food) {
				got += n
			}
		}
		if got != want {
			t.Errorf("%s has %d labels; want %d", b.Label.Food, got, want)
		}
	}
	// what is left out is said on the cover, beside the labels, and in the list
	says := fmt.Sprintf("; %s are left out", measure.Plain(float64(200000-printed[crowded.labelTexts(g)[0].food])))
	data, err := Workbook(crowded.Worked, Options{LabelGrid: g.ID})
	noErr(t, err)
	f := open(t, data)
	for _, name := range []string{"Cover", "Labels"} {
		if found, err := f.SearchSheet(name, ".*"+regexp.QuoteMeta(says)+".*", true); err != nil || len(found) != 1 {
			t.Errorf("%s does not say “%s”: %v, %v", name, says, found, err)
		}
	}
	if !strings.Contains(Plain(crowded.Worked), "are left out") || strings.Contains(Plain(demo.Worked), "left out") {
		t.Error("the list does not say what is left out, or says it without need")
	}
	if got := shareOut([]int{5, 0, 100, 7}, 20); !slices.Equal(got, []int{5, 0, 8, 7}) {
		t.Errorf("20 places are shared as %v", got)
	}
}
