package exports

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

func TestSameClassSameBytes(t *testing.T) {
	var first [32]byte
	for i := range 8 { // excelize orders parts by map: once alike proves little
		data, err := Workbook(demoWorked(t), Options{Sheets: everySheet(), Made: time.Date(2027, 6, 1, 8, 0, 0, 0, time.UTC)})
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
		if !errors.As(err, &e) || e.Option != c.option || !strings.Contains(err.Error(), e.Allowed[0]) {
			t.Errorf("%+v: %v; want an error about %s", c.options, err, c.option)
		}
	}
	data, err := Workbook(demoWorked(t), Options{Sheets: []string{BatchSheet, CoverSheet}})
	noErr(t, err)
	if got := open(t, data).GetSheetList(); len(got) != 2 || got[0] != "Cover" || got[1] != "Batches" {
		t.Errorf("sheets %v; want Cover, Batches", got)
	}
	data, err = Workbook(demoWorked(t), Options{})
	noErr(t, err)
	if got := fmt.Sprint(open(t, data).GetSheetList()); got != "[Cover Treatments Batches Your own numbers Shopping list Labels]" {
		t.Errorf("where none is chosen the sheets are %s", got)
	}
}

// All the cells of the columns are written in order; a reader that is strict
// refuses a file where they are not.
func TestColumnsAscend(t *testing.T) {
	data, err := Workbook(demoWorked(t), Options{Sheets: everySheet()})
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
		{`IF(water_gal="","` + strings.Repeat("é", 255) + `")`, true},
		{`IF(water_gal="","` + strings.Repeat("é", 256) + `")`, false},
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

func must(data []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return data
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
				if formula != "" && sheet != "Your own numbers" && formula != priceSum {
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
