package reference

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"example.org/kettleside/content/words"
)

// grid is a table that goes out, as cells to be changed by a test.
type grid [][]string

func outGrid(t testing.TB, table *Table) grid {
	t.Helper()
	var buf bytes.Buffer
	if err := table.WriteCSV(&buf); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&buf).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// set types a text into the cell of a treatment.
func (g grid) set(id, column, typed string) {
	for _, r := range g {
		if r[0] == id {
			r[slices.Index(g[0], column)] = typed
		}
	}
}

func (g grid) csv(comma rune) []byte {
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.Comma = comma
	if err := w.WriteAll(g); err != nil {
		panic(err)
	}
	return buf.Bytes()
}

// book is the same as a spreadsheet program saves it: cells that are numbers
// are stored as numbers, of which fifteen digits are kept.
func (g grid) book(t testing.TB) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for i, r := range g {
		for j, text := range r {
			at, _ := excelize.CoordinatesToCellName(j+1, i+1)
			var v any = unguard(text)
			if x, err := parseDecimal(text); err == nil {
				v = x
			}
			if err := f.SetCellValue("Sheet1", at, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	return bookBytes(t, f)
}

func bookBytes(t testing.TB, f *excelize.File) []byte {
	t.Helper()
	buf, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Clone(buf.Bytes())
}

// compare reads and compares; a file that cannot be read has no differences.
func compare(table *Table, file string, data []byte) ([]Difference, error) {
	sent, err := ReadSent(file, data)
	if err != nil {
		return nil, err
	}
	return Compare(table, sent)
}

// told are differences without their places, for tests to compare.
func told(list []Difference) string {
	var b strings.Builder
	for _, d := range list {
		fmt.Fprintf(&b, "%s: %q, there %q; %v\n", d.Name(), d.Here, d.There, d.Refused == nil)
	}
	return b.String()
}

// What goes out and comes back says the same: in every language, with and
// without edits, through either kind of file and whatever stands between cells.
func TestRoundTripHasNoDifference(t *testing.T) {
	edited, err := Shipped().With([]Edit{
		edit("snap-beans-cut-water", FieldMinutes, "4-5"),
		edit("snap-beans-cut-water", FieldStorage, "8"),
		edit("collards-leaves-water", FieldNote, "@home"),
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, table := range map[string]*Table{"shipped": Shipped(), "edited": edited} {
		for _, l := range words.Languages() {
			out := outGrid(t, table.In(words.In(l)))
			for kind, data := range map[string][]byte{"a.csv": out.csv(','), "b.csv": out.csv(';'), "c.CSV": append([]byte("\uFEFF"), out.csv('\t')...), "d.xlsx": out.book(t)} {
				if list, err := compare(table, kind, data); len(list) > 0 || err != nil {
					t.Errorf("%s, %s, %s: %s%v", name, l, kind, told(list), err)
				}
			}
		}
	}
}

// Other ways to write what stands here are no difference; what is another value
// is one, with the reason where it cannot be an edit.
func TestDifferences(t *testing.T) {
	for _, c := range []struct {
		id, column, typed string
		want              string // "" none, "yes" an edit, else what the refusal says
	}{
		{"snap-beans-cut-water", "minutes", "3.0", ""},
		{"snap-beans-cut-water", "minutes", "3 min", ""},
		{"snap-beans-cut-water", "minutes", "4", "yes"},
		{"snap-beans-cut-water", "minutes", "2", "published times are never shortened"},
		{"snap-beans-cut-water", "minutes", "900", "minutes from above 0 to 60"},
		{"snap-beans-cut-water", "minutes", "three", "minutes from above 0 to 60"},
		{"snap-beans-cut-water", "minutes", "", "minutes from above 0 to 60"},
		{"snap-beans-cut-water", "minutes_high", "", ""},
		{"snap-beans-cut-water", "minutes_high", "4 1/2", "yes"},
		{"snap-beans-cut-water", "chill_factor", "2", "yes"},
		{"snap-beans-cut-water", "chill_factor", "9", "a factor from 1 to 3"},
		{"snap-beans-cut-water", "water_gal_per_lb", "1 1/2", "yes"},
		{"snap-beans-cut-water", "water_gal_per_lb", "0.5", "from 1 to 5"},
		{"snap-beans-cut-water", "storage_high_months", "10", "yes"},
		{"snap-beans-cut-water", "storage_high_months", "99", "whole months from 1 to 24"},
		{"snap-beans-cut-water", "note", "Ask for young ones.", "yes"},
		{"snap-beans-cut-water", "note", strings.Repeat("x", 301), "at most 300 characters"},
		{"snap-beans-cut-water", "crop", "Runner beans", "cannot be edited"},
		{"snap-beans-cut-water", "method", "steam", "cannot be edited"},
		{"snap-beans-cut-water", "source", "My bulletin", ""}, // follows from the value
		{"pumpkin-mashed-cook", "headspace_in", "1/2", ""},
		{"pumpkin-mashed-cook", "headspace_in", "1/2 in", ""},
		{"pumpkin-mashed-cook", "headspace_in", "1", "yes"},
		{"pumpkin-mashed-cook", "minutes", "5", "has no minutes"},
	} {
		g := outGrid(t, Shipped())
		g.set(c.id, c.column, c.typed)
		for file, data := range map[string][]byte{"back.csv": g.csv(','), "back.xlsx": g.book(t)} {
			list, err := compare(Shipped(), file, data)
			if err != nil {
				t.Errorf("%s %s %q: %v", file, c.column, c.typed, err)
				continue
			}
			switch {
			case c.want == "" && len(list) == 0:
			case c.want == "" || len(list) != 1:
				t.Errorf("%s %s %q: %s", file, c.column, c.typed, told(list))
			case c.want == "yes" && list[0].Refused != nil, c.want != "yes" && (list[0].Refused == nil || !strings.Contains(list[0].Refused.Error(), c.want)):
				t.Errorf("%s %s %q: %v; want %s", file, c.column, c.typed, list[0].Refused, c.want)
			case list[0].Treatment != c.id || list[0].At.Row == 0 || list[0].At.Name == "":
				t.Errorf("%s %s: %+v", file, c.column, list[0])
			}
		}
	}
}

// Random changes come back as exactly these differences, from either file.
func TestRandomChangesComeBack(t *testing.T) {
	out := outGrid(t, Shipped())
	text := rapid.StringOfN(rapid.RuneFrom([]rune("abc ,;\"'=+-@½ñ\n")), 1, 20, -1)
	rapid.Check(t, func(rt *rapid.T) {
		g := make(grid, len(out))
		for i, r := range out {
			g[i] = slices.Clone(r)
		}
		var want []string
		cells := rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) [2]int {
			column := rapid.SampledFrom([]string{"minutes", "words", "chill_factor", "chill_words", "headspace_in", "water_gal_per_lb", "blanch_water", "note", "storage_months"}).Draw(t, "column")
			return [2]int{rapid.IntRange(1, len(out)-1).Draw(t, "row"), slices.Index(sheetColumns, column)}
		}), 1, 12, func(c [2]int) [2]int { return c }).Draw(rt, "cells")
		for _, c := range cells {
			row, column, field := c[0], c[1], columnField(sheetColumns[c[1]])
			typed := "30"
			if inWords(field) {
				typed = strings.TrimSpace("new " + text.Draw(rt, "text"))
			} else if rapid.Bool().Draw(rt, "fraction") {
				typed = rapid.SampledFrom([]string{"20 1/2", "25.25", "21 to 22", "junk"}).Draw(rt, "number")
			}
			g[row][column] = harmless(typed)
			if high := slices.Index(sheetColumns, sheetColumns[column]+"_high"); high >= 0 {
				g[row][high] = ""
			}
			if field == FieldStorage {
				g[row][column+1] = ""
			}
			want = append(want, g[row][0]+"."+field+"="+typed)
		}
		slices.Sort(want)
		for file, data := range map[string][]byte{"back.csv": g.csv(','), "back.xlsx": g.book(t)} {
			list, err := compare(Shipped(), file, data)
			if err != nil {
				rt.Fatal(err)
			}
			var got []string
			for _, d := range list {
				got = append(got, d.Name()+"="+d.There)
				e := Shipped().NewEdit(d.Treatment, d.Field, d.There, "why", "who", someDay)
				if _, err := Shipped().With([]Edit{e}); (err == nil) != (d.Refused == nil) {
					rt.Fatalf("%s: %v, but as an edit: %v", d.Name(), d.Refused, err)
				}
			}
			slices.Sort(got)
			if !slices.Equal(got, want) {
				rt.Fatalf("%s: %q; want %q", file, got, want)
			}
		}
	})
}

func TestTake(t *testing.T) {
	g := outGrid(t, Shipped())
	g.set("snap-beans-cut-water", "minutes", "4")
	g.set("snap-beans-cut-water", "note", "Young ones.")
	g.set("kale-leaves-water", "minutes", "1")
	list, err := compare(Shipped(), "back.csv", g.csv(','))
	if err != nil {
		t.Fatal(err)
	}
	edits, left, err := Take(Shipped(), list, nil, "sent back", "B. Colleague", someDay)
	if err != nil || len(edits) != 2 || len(left) != 1 || left[0].Name() != "kale-leaves-water.minutes" {
		t.Errorf("%+v, %+v, %v", edits, left, err)
	}
	edits, left, err = Take(Shipped(), list, []string{"snap-beans-cut-water.note"}, "sent back", "B. Colleague", someDay)
	if err != nil || len(edits) != 1 || edits[0].New != "Young ones." || len(left) != 2 {
		t.Errorf("%+v, %+v, %v", edits, left, err)
	}
	if table, err := Shipped().With(edits); err != nil {
		t.Error(err)
	} else if x, _ := table.Treatment("snap-beans-cut-water"); x.Note != "Young ones." {
		t.Errorf("%+v", x.Note)
	}
	for name, c := range map[string]struct{ only, why, who, says string }{
		"unknown": {"kale-leaves-water.note", "y", "w", "no difference"},
		"refused": {"kale-leaves-water.minutes", "y", "w", "never shortened"},
		"no name": {"snap-beans-cut-water.note", "y", " ", "needs a name and a reason"},
	} {
		if got, _, err := Take(Shipped(), list, []string{c.only}, c.why, c.who, someDay); got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
	over := Over([]Edit{edit("kale-leaves-water", FieldNote, "a"), edit("snap-beans-cut-water", FieldNote, "old")}, edits)
	if len(over) != 2 || over[1].New != "Young ones." {
		t.Errorf("%+v", over)
	}
}

// A field takes some edit exactly where it says so.
func TestTakes(t *testing.T) {
	for _, x := range Shipped().Treatments {
		for _, f := range append([]string{"crop"}, EditFields...) {
			some := false
			for _, typed := range []string{"3", "2.5", "20", "7-8", "New words."} {
				_, err := Shipped().With([]Edit{Shipped().NewEdit(x.ID, f, typed, "why", "who", someDay)})
				some = some || err == nil
			}
			if some != x.Takes(f) {
				t.Errorf("%s.%s: an edit is laid over it: %v, but it says %v", x.ID, f, some, x.Takes(f))
			}
		}
	}
}
