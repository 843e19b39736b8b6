package reference

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestWrittenSheetReadsBack(t *testing.T) {
	edited, err := Shipped().With([]Edit{
		edit("snap-beans-cut-water", FieldMinutes, "4-5"),
		edit("snap-beans-cut-water", FieldStorage, "8"),
		edit("kale-leaves-water", FieldNote, `=HYPERLINK("x")`),
		edit("chard-leaves-water", FieldNote, "'quoted', not run"),
		edit("collards-leaves-water", FieldNote, "@home"),
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, table := range map[string]*Table{"shipped": Shipped(), "edited": edited} {
		t.Run(name, func(t *testing.T) {
			var buf bytes.Buffer
			if err := table.WriteCSV(&buf); err != nil {
				t.Fatal(err)
			}
			got, err := ReadWrittenCSV(bytes.NewReader(buf.Bytes()))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(table.SheetRows(), got); diff != "" {
				t.Error(diff)
			}
		})
	}
	var buf bytes.Buffer
	if err := edited.WriteCSV(&buf); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&buf).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		for i, cell := range row {
			if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
				t.Errorf("%s: %s could run as a formula: %q", row[0], sheetColumns[i], cell)
			}
		}
	}
	for _, r := range edited.SheetRows() {
		if r.ID == "snap-beans-cut-water" && (r.Changed != "minutes by A. Teacher; storage by A. Teacher" || r.ShippedValue != "minutes: 3; storage: 6-8" || r.Standing != "entered here") {
			t.Errorf("%+v", r)
		}
	}
}

func TestWrittenCells(t *testing.T) {
	var buf bytes.Buffer
	if err := Shipped().WriteCSV(&buf); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"broccoli-flowerets-steam,Broccoli,flowerets,,up to 1 1/2 in across,steam,5,5,,\"at once, when the lid goes on\",1,,loose,,",
		"0.16666666666666666,0.25,", // onion rings: no digit is lost
		"\"when the water boils again, within one minute\"",
		"juice table",
	} {
		if !strings.Contains(buf.String(), want) {
			t.Errorf("%q is not in the sheet", want)
		}
	}
	if err := Shipped().WriteCSV(fullDisk{}); !errors.Is(err, errFull) {
		t.Errorf("a full disk: %v", err)
	}
}

var errFull = errors.New("disk full")

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestReadWrittenCSVIsStrict(t *testing.T) {
	var buf bytes.Buffer
	if err := Shipped().WriteCSV(&buf); err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string][2]string{
		"a header renamed":   {"id,crop", "id,vegetable"},
		"minutes as text":    {"spears,small,,water,2,2", "spears,small,,water,two,2"},
		"a formula let in":   {"Asparagus,spears,small", "=1+1,spears,small"},
		"a row twice":        {"asparagus-small-water", "asparagus-medium-water"},
		"an unknown method":  {"small,,water", "small,,boil"},
		"high below the low": {"spears,large,,water,4,4", "spears,large,,water,4,3"},
	} {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(buf.String(), change[0], change[1], 1)
			if text == buf.String() {
				t.Fatalf("%q is not in the sheet", change[0])
			}
			var e *DataError
			if rows, err := ReadWrittenCSV(strings.NewReader(text)); rows != nil || !errors.As(err, &e) || e.Line == 0 {
				t.Errorf("got %v", err)
			}
		})
	}
}
