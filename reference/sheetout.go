package reference

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// sheetColumns are the columns that WriteCSV writes and ReadWrittenCSV expects.
var sheetColumns = []string{"id", "crop", "cut", "grade", "size", "method", "minutes", "minutes_high", "words",
	"clock_starts", "chill_factor", "chill_words", "pack", "headspace_in", "headspace_from", "water_gal_per_lb",
	"blanch_water", "note", "storage_months", "storage_high_months", "source", "publisher", "edition", "standing",
	"changed", "shipped_value"}

// SheetRow is one treatment as WriteCSV writes it: everything in words, so that
// the sheet can be read without this program.
type SheetRow struct {
	ID, Crop, Cut, Grade, Size, Method string
	Minutes, MinutesHigh               float64 // 0 where words stand
	Words, ClockStarts                 string
	ChillFactor                        float64 // 0 where words stand
	ChillWords, Pack                   string
	HeadspaceIn                        float64 // inches; 0 none, or from the table
	HeadspaceFrom                      string  // "liquid table", "juice table" or ""
	WaterGalPerLb                      float64 // US gallons; 0 no water blanch
	BlanchWater, Note                  string
	StorageMonths, StorageHighMonths   float64
	Source, Publisher, Edition         string // title, publisher and edition of the source of the minutes or words
	Standing                           string
	Changed                            string // "", or the changed fields and who changed them
	ShippedValue                       string // "", or the shipped texts of these fields
}

// sheetRows returns the table as WriteCSV writes it, in table order.
func (t *Table) sheetRows() []SheetRow {
	out := make([]SheetRow, len(t.Treatments))
	for i := range t.Treatments {
		x := &t.Treatments[i]
		s, _ := t.Source(x.Source)
		r := SheetRow{
			ID: x.ID, Crop: t.cropOf(x).Name, Cut: x.Cut, Grade: x.Grade, Size: x.Size, Method: string(x.Method),
			Minutes: x.Minutes, MinutesHigh: x.MinutesHigh, Words: x.Words, ClockStarts: x.ClockStart.Says(),
			ChillFactor: x.ChillFactor, ChillWords: x.ChillWords, Pack: string(x.Pack), HeadspaceIn: x.HeadspaceIn,
			WaterGalPerLb: x.WaterGalPerLb, BlanchWater: x.BlanchWater, Note: x.Note,
			StorageMonths: x.StorageMonths, StorageHighMonths: x.StorageMonthsHigh,
			Source: s.Title, Publisher: s.Publisher, Edition: s.Edition, Standing: string(x.Standing),
		}
		if x.HeadspaceRow != "" {
			r.HeadspaceFrom = x.HeadspaceRow + " table"
		}
		var changed, shipped []string
		for _, f := range EditFields { // not by map order
			if e, ok := x.Changed[f]; ok {
				changed = append(changed, f+" by "+e.Who)
				shipped = append(shipped, f+": "+e.Old)
			}
		}
		r.Changed, r.ShippedValue = strings.Join(changed, "; "), strings.Join(shipped, "; ")
		out[i] = r
	}
	return out
}

// WriteCSV writes the table as one CSV sheet, a row a treatment. Numbers have
// a point and as many digits as give them back exactly; a number that is not
// there is empty. A text cell that a spreadsheet would take for a formula
// (= + - @, tab, carriage return first, also behind a ";") gets an apostrophe in
// front. The sheet is read back, so it is the same in every language.
func (t *Table) WriteCSV(w io.Writer) error {
	if t.base != nil {
		return t.base.WriteCSV(w)
	}
	out := csv.NewWriter(w)
	if err := out.Write(sheetColumns); err != nil {
		return fmt.Errorf("write the table: %w", err)
	}
	for _, r := range t.sheetRows() {
		if err := out.Write(r.cells()); err != nil {
			return fmt.Errorf("write the table: %w", err)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("write the table: %w", err)
	}
	return nil
}

func (r SheetRow) cells() []string {
	texts := []string{r.ID, r.Crop, r.Cut, r.Grade, r.Size, r.Method, "", "", r.Words, r.ClockStarts, "", r.ChillWords,
		r.Pack, "", r.HeadspaceFrom, "", r.BlanchWater, r.Note, "", "", r.Source, r.Publisher, r.Edition, r.Standing,
		r.Changed, r.ShippedValue}
	for i, v := range texts {
		texts[i] = harmless(v)
	}
	for column, v := range r.numbers() {
		texts[slices.Index(sheetColumns, column)] = emptyZero(v)
	}
	return texts
}

func (r SheetRow) numbers() map[string]float64 {
	return map[string]float64{"minutes": r.Minutes, "minutes_high": r.MinutesHigh, "chill_factor": r.ChillFactor,
		"headspace_in": r.HeadspaceIn, "water_gal_per_lb": r.WaterGalPerLb,
		"storage_months": r.StorageMonths, "storage_high_months": r.StorageHighMonths}
}

// formulaStart are the characters that a spreadsheet takes for the start of a
// formula, and the apostrophe that keeps it from doing so.
const formulaStart = "=+-@\t\r'＝＋－＠"

// harmless puts an apostrophe before what a spreadsheet would run, and before
// an apostrophe, so that the text can be given back exactly. A sheet opened
// with ";" between its cells starts a new one behind each, so these places are
// guarded as well.
func harmless(s string) string {
	parts := strings.Split(s, ";")
	for i, p := range parts {
		if runs(p) {
			parts[i] = "'" + p
		}
	}
	return strings.Join(parts, ";")
}

// runs says whether a cell that starts with s could be run as a formula.
func runs(s string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " \u00a0"))
	return s != "" && strings.ContainsRune(formulaStart, first)
}

// ReadWrittenCSV reads back what WriteCSV wrote. It is strict: another header,
// an unguarded formula, a number that is text or a missing id is a *DataError
// or DataErrors with line and column.
func ReadWrittenCSV(r io.Reader) ([]SheetRow, error) {
	f := &faults{}
	s := &sheet{file: "table", header: sheetColumns, faults: f}
	data, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("read the table: %w", err)
	}
	s.parse(data)
	var out []SheetRow
	seen := map[string]bool{}
	for _, c := range s.rows {
		text := c.unguarded
		row := SheetRow{ID: c.id("id"), Crop: text("crop"), Cut: text("cut"), Grade: text("grade"), Size: text("size"),
			Method: string(enum(c, "method", methods)), Words: text("words"), ClockStarts: text("clock_starts"),
			ChillFactor: c.number("chill_factor", 0, 3), ChillWords: text("chill_words"), Pack: string(enum(c, "pack", packs)),
			HeadspaceIn: c.number("headspace_in", 0, 3), HeadspaceFrom: enum(c, "headspace_from", []string{"", "liquid table", "juice table"}),
			WaterGalPerLb: c.number("water_gal_per_lb", 0, 5), BlanchWater: text("blanch_water"), Note: text("note"),
			Source: text("source"), Publisher: text("publisher"), Edition: text("edition"), Standing: string(enum(c, "standing", append([]Standing{EnteredHere}, standings...))),
			Changed: text("changed"), ShippedValue: text("shipped_value")}
		row.Minutes, row.MinutesHigh = c.minuteSpan()
		row.StorageMonths, row.StorageHighMonths = c.span("storage_months", "storage_high_months", 1, 24)
		c.checkWritten(&row)
		if once(c, "id", row.ID, seen) {
			seen[row.ID] = true
			out = append(out, row)
		}
	}
	if err := f.err(); err != nil {
		return nil, err
	}
	return out, nil
}

// unguarded returns a text cell without the apostrophes that harmless added.
func (r record) unguarded(name string) string {
	v := r.raw(name)
	parts := strings.Split(v, ";")
	for i, p := range parts {
		if cut, ok := strings.CutPrefix(p, "'"); ok && runs(cut) {
			parts[i] = cut
		} else if runs(p) {
			r.wrong(name, quoted(v), "text that a spreadsheet does not run")
			break
		}
	}
	return strings.Join(parts, ";")
}

// checkWritten looks at the words of a row that must go together: the method
// with the start of the clock and with minutes, and the standing with its
// source and with what was changed.
func (r record) checkWritten(row *SheetRow) {
	timed := row.Method == string(WaterBlanch) || row.Method == string(SteamBlanch)
	switch {
	case timed && row.Minutes == 0:
		r.wrong("minutes", "a blanch without minutes", "minutes")
	case !timed && row.Minutes != 0:
		r.wrong("minutes", "minutes for a treatment of words", "nothing")
	case row.Minutes == 0 && row.Words == "":
		r.wrong("words", "neither minutes nor words", "minutes or words")
	}
	if says := clockOf[Method(row.Method)].Says(); row.ClockStarts != says {
		r.wrong("clock_starts", quoted(row.ClockStarts)+" for method "+quoted(row.Method), quoted(says))
	}
	if (row.Changed == "") != (row.ShippedValue == "") {
		r.wrong("shipped_value", quoted(row.ShippedValue), "the shipped value where something was changed, and only there")
	}
	entered := row.Standing == string(EnteredHere)
	if entered != (row.Source == enteredHere.Title) || entered && row.Changed == "" {
		r.wrong("standing", quoted(row.Standing), "that of the source, and "+quoted(string(EnteredHere))+" only for what was changed")
	}
}
