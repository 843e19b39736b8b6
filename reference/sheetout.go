package reference

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
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

// Says puts the start of the clock in words.
func (c ClockStart) Says() string {
	switch c {
	case AtReturnToBoil:
		return "when the water boils again, within one minute"
	case AtOnce:
		return "at once, when the lid goes on"
	case NoClock:
		return "no minutes to count"
	}
	return ""
}

// SheetRows returns the table as WriteCSV writes it, in table order.
func (t *Table) SheetRows() []SheetRow {
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
// (= + - @, tab, carriage return first) gets an apostrophe in front.
func (t *Table) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(sheetColumns); err != nil {
		return fmt.Errorf("write the table: %w", err)
	}
	for _, r := range t.SheetRows() {
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

// harmless puts an apostrophe before what a spreadsheet would run, and before
// an apostrophe, so that the text can be given back exactly.
func harmless(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r'", rune(s[0])) {
		return "'" + s
	}
	return s
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
			HeadspaceIn: c.number("headspace_in", 0, 3), HeadspaceFrom: text("headspace_from"),
			WaterGalPerLb: c.number("water_gal_per_lb", 0, 5), BlanchWater: text("blanch_water"), Note: text("note"),
			Source: text("source"), Publisher: text("publisher"), Edition: text("edition"), Standing: text("standing"),
			Changed: text("changed"), ShippedValue: text("shipped_value")}
		row.Minutes, row.MinutesHigh = c.minuteSpan()
		row.StorageMonths, row.StorageHighMonths = c.span("storage_months", "storage_high_months", 0.5, 24)
		if row.Minutes == 0 && row.Words == "" {
			c.wrong("words", "neither minutes nor words", "minutes or words")
		}
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

// unguarded returns a text cell without the apostrophe that harmless added.
func (r record) unguarded(name string) string {
	v := r.raw(name)
	if cut, ok := strings.CutPrefix(v, "'"); ok {
		return cut
	}
	if harmless(v) != v {
		r.wrong(name, quoted(v), "text that a spreadsheet does not run")
	}
	return v
}
