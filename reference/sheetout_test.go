package reference

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWrittenSheetReadsBack(t *testing.T) {
	edited, err := Shipped().With([]Edit{
		edit("snap-beans-cut-water", FieldMinutes, "4-5"),
		edit("snap-beans-cut-water", FieldStorage, "8"),
		edit("kale-leaves-water", FieldNote, `=HYPERLINK("x")`),
		edit("chard-leaves-water", FieldNote, "'quoted', not run"),
		edit("collards-leaves-water", FieldNote, "@home"),
		edit("spinach-leaves-water", FieldNote, `ask;=HYPERLINK("x"); ;'-2;+1; -3;plain`),
		edit("chard-stems-water", FieldNote, "';' =;＝1"),
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
			sent, err := ReadSent("back.csv", buf.Bytes())
			if err != nil {
				t.Fatal(err)
			}
			if list, err := Compare(table, sent); len(list) > 0 || err != nil {
				t.Error(list, err)
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
			for _, part := range strings.Split(cell, ";") { // as a sheet opened with ";" between its cells splits it
				if part = strings.TrimLeft(part, " "); part != "" && strings.ContainsAny(part[:1], "=+-@\t\r") || strings.HasPrefix(part, "＝") {
					t.Errorf("%s: %s could run as a formula: %q", row[0], sheetColumns[i], cell)
				}
			}
		}
	}
	for _, r := range edited.sheetRows() {
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
		",when the water boils again,",
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

// Any text comes back from a sheet as it went in, and none of its parts runs.
func TestGuardedTextComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("=+-@'; ax＝\t")), 0, 12, -1).Draw(t, "text")
		if got := unguard(harmless(text)); got != text || isFormula(harmless(text)) {
			t.Fatalf("%q was written as %q and read as %q", text, harmless(text), got)
		}
		for _, part := range strings.Split(harmless(text), ";") {
			if strings.IndexAny(strings.TrimLeft(part, " "), "=+-@\t＝") == 0 {
				t.Fatalf("%q: %q runs", text, part)
			}
		}
	})
}
