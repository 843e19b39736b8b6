package reference

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// sheetColumns are the columns that WriteCSV writes and Compare knows.
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
// front. A sheet that was changed is held against the table by ReadSent and
// Compare; it is the same in every language.
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

// cells are the texts of the row, guarded against being run.
func (r SheetRow) cells() []string {
	cells := r.texts()
	for i, v := range cells {
		if _, number := r.numbers()[sheetColumns[i]]; !number {
			cells[i] = harmless(v)
		}
	}
	return cells
}

// texts are the texts of the row under sheetColumns.
func (r SheetRow) texts() []string {
	texts := []string{r.ID, r.Crop, r.Cut, r.Grade, r.Size, r.Method, "", "", r.Words, r.ClockStarts, "", r.ChillWords,
		r.Pack, "", r.HeadspaceFrom, "", r.BlanchWater, r.Note, "", "", r.Source, r.Publisher, r.Edition, r.Standing,
		r.Changed, r.ShippedValue}
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
