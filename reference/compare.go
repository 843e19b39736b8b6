package reference

import (
	"math"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// Difference is one value of a sent table that is another one than here.
type Difference struct {
	Treatment string // Treatment.ID
	Field     string // one of EditFields, or the head of a column that cannot be edited
	Here      string // as FieldText has it
	There     string // as typed
	At        Place
	Refused   error // one sentence why it cannot be taken as an edit; nil where it can
}

// Name is how -only and the lists call a difference: "kale-leaves-water.minutes".
func (d Difference) Name() string { return d.Treatment + "." + d.Field }

// fieldColumns are the columns that hold what may be edited. Two that hold the
// ends of a range share a field; the second may be missing or empty.
var fieldColumns = []struct{ column, field string }{
	{"minutes", FieldMinutes}, {"minutes_high", FieldMinutes}, {"words", FieldWords},
	{"chill_factor", FieldChillFactor}, {"chill_words", FieldChillWords},
	{"headspace_in", FieldHeadspace}, {"water_gal_per_lb", FieldWater}, {"blanch_water", FieldBlanchWater},
	{"note", FieldNote}, {"storage_months", FieldStorage}, {"storage_high_months", FieldStorage},
}

// FieldColumn is the head of the column of an editable field in a table that
// goes out.
func FieldColumn(field string) string {
	for _, c := range fieldColumns {
		if c.field == field {
			return c.column
		}
	}
	return ""
}

// columnField is the editable field of a column, "" where there is none.
func columnField(column string) string {
	for _, c := range fieldColumns {
		if c.column == column {
			return c.field
		}
	}
	return ""
}

// fixedColumns say what a treatment is. They are read, and told where somebody
// changed them, but no edit can change them. The other columns only tell where a
// value comes from, and follow from it.
var fixedColumns = []string{"crop", "cut", "grade", "size", "method", "clock_starts", "pack", "headspace_from"}

// Compare lists where a sent table differs from t, in the order of the file. Rows
// are known by their ids; names and words may stand in any language. Numbers are
// compared as numbers: "1/2" is 0.5. The error is SentErrors: heads that are not
// known or missing, ids that are not known, missing or there twice; what could
// be compared is still listed.
func Compare(t *Table, sent Sent) ([]Difference, error) {
	c := newComparison(t, sent.File)
	for _, s := range sent.sheets {
		c.sheet(s)
	}
	for _, f := range EditFields {
		if !c.seen[FieldColumn(f)] {
			c.faults.add(wrongAt(Place{File: sent.File}, words.Later("no column %s", FieldColumn(f)), words.Later("a table with all columns that went out")))
		}
	}
	return c.list, c.faults.err()
}

// comparison is a comparison under way.
type comparison struct {
	table  *Table
	file   string
	rows   map[string]int // place of a treatment in the table by its id
	said   []saidTable    // the table in every language
	seen   map[string]bool
	list   []Difference
	faults SentErrors
}

// saidTable is the table in one language: its treatments, and its rows as they
// go out.
type saidTable struct {
	voice *words.Voice
	*Table
	rows []SheetRow
}

func newComparison(t *Table, file string) *comparison {
	if t.base != nil {
		t = t.base
	}
	c := &comparison{table: t, file: file, rows: map[string]int{}, seen: map[string]bool{}}
	for i := range t.Treatments {
		c.rows[t.Treatments[i].ID] = i
	}
	for _, l := range words.Languages() {
		voice := words.In(l)
		in := t.In(voice)
		c.said = append(c.said, saidTable{voice, in, in.sheetRows()})
	}
	return c
}

// headRows is how far down the row of heads is looked for: a title may stand
// above it.
const headRows = 10

// sheet compares one sheet. One without the head "id" holds no treatments, such
// as the sheet that says how to send the table back.
func (c *comparison) sheet(s sentSheet) {
	first := slices.IndexFunc(s.rows, func(r sentRow) bool { return r.at(0) == "id" })
	if first < 0 || s.rows[first].number > headRows {
		return
	}
	heads := s.rows[first]
	c.heads(s, heads)
	missing := map[string]bool{}
	for id := range c.rows {
		missing[id] = true
	}
	for _, r := range s.rows[first+1:] {
		at := c.place(s, heads, r, 0)
		id := r.at(0)
		i, known := c.rows[id]
		switch {
		case id == "":
			c.faults.add(wrongAt(at, words.Later("nothing"), words.Later("the id of a treatment")))
		case !known:
			c.faults.add(wrongAt(at, quoted(id), words.Later("the id of a treatment of this table")))
		case !missing[id]:
			c.faults.add(wrongAt(at, words.Later("%s a second time", quoted(id)), words.Later("one row for each treatment")))
		default:
			delete(missing, id)
			c.row(s, heads, r, i)
		}
	}
	c.absent(s, missing)
}

// heads looks at the heads of a sheet.
func (c *comparison) heads(s sentSheet, heads sentRow) {
	here := map[string]bool{}
	for i, name := range heads.cells {
		switch at := c.place(s, heads, heads, i); {
		case name == "":
		case !slices.Contains(sheetColumns, name):
			c.faults.add(wrongAt(at, words.Later("the column %s", quoted(name)), words.Later("the columns %s", strings.Join(sheetColumns, ", "))))
		case here[name] || c.seen[name] && columnField(name) != "":
			c.faults.add(wrongAt(at, words.Later("the column %s a second time", quoted(name)), words.Later("each column once")))
		}
		here[name] = true
	}
	for name := range here {
		c.seen[name] = true
	}
}

// absent tells which treatments of the table have no row on a sheet.
func (c *comparison) absent(s sentSheet, missing map[string]bool) {
	var ids []string
	for i := range c.table.Treatments {
		if id := c.table.Treatments[i].ID; missing[id] {
			ids = append(ids, id)
		}
	}
	const most = 5
	list := any(strings.Join(ids, ", "))
	if len(ids) > most {
		list = words.Later("%s and %d more", strings.Join(ids[:most], ", "), len(ids)-most)
	}
	if len(ids) > 0 {
		c.faults.add(wrongAt(Place{File: c.file, Sheet: s.name}, words.Later("no row for %s", list), words.Later("one row for each treatment")))
	}
}

func (c *comparison) place(s sentSheet, heads, r sentRow, column int) Place {
	return Place{File: c.file, Sheet: s.name, Row: r.number, Column: column + 1, Name: heads.at(column)}
}

// row compares the cells of one treatment.
func (c *comparison) row(s sentSheet, heads, r sentRow, i int) {
	told := map[string]bool{}
	for column := range max(len(heads.cells), len(r.cells)) {
		name, typed := heads.at(column), r.at(column)
		at := c.place(s, heads, r, column)
		field := columnField(name)
		switch {
		case name == "" && typed != "":
			c.faults.add(wrongAt(at, quoted(typed), words.Later("nothing under a column without a head")))
		case slices.Contains(fixedColumns, name):
			c.fixed(at, i, name, typed)
		case field != "" && !told[field]:
			told[field] = true
			c.field(at, i, field, c.ends(heads, r, i, field))
		}
	}
}

// fixed compares what no edit can change.
func (c *comparison) fixed(at Place, i int, column, typed string) {
	n := slices.Index(sheetColumns, column)
	for _, in := range c.said {
		if text := in.rows[i].texts()[n]; sameText(typed, text) || sameText(typed, in.voice.Say(text)) {
			return
		}
	}
	c.list = append(c.list, Difference{
		Treatment: c.table.Treatments[i].ID, Field: column, Here: c.said[0].rows[i].texts()[n], There: typed, At: at,
		Refused: words.Errorf("%s cannot be edited in %s; allowed is %s.", shown(column), c.table.named(&c.table.Treatments[i]), oneOf(EditFields)),
	})
}

// field compares an editable field, and tries whether the other value could be
// an edit.
func (c *comparison) field(at Place, i int, field, typed string) {
	x := &c.table.Treatments[i]
	for _, in := range c.said {
		if text := FieldText(in.Treatments[i], field); sameText(typed, text) || sameText(typed, in.voice.Say(text)) {
			return // "liquid table" is said by the surface
		}
	}
	byTable := field == FieldHeadspace && x.HeadspaceRow != "" && typed == "" // stands in headspace_from
	if byTable || sameValue(x, field, typed) {
		return
	}
	d := Difference{Treatment: x.ID, Field: field, Here: FieldText(*x, field), There: typed, At: at}
	if _, err := c.table.With([]Edit{c.table.NewEdit(x.ID, field, typed, "?", "?", someDay)}); err != nil {
		d.Refused = refusal(err)
	}
	c.list = append(c.list, d)
}

// someDay dates the trial of an edit, which is never kept.
var someDay = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// refusal is the one sentence of the one edit that was tried.
func refusal(err error) error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok && len(joined.Unwrap()) == 1 {
		return joined.Unwrap()[0]
	}
	return err
}

// ends is what was typed for a field, with the second end of a range where it
// has a column of its own. Somebody who raises both ends' one number in the first
// column alone means one number still.
func (c *comparison) ends(heads, r sentRow, i int, field string) string {
	var typed []string
	for _, c := range fieldColumns {
		if column := slices.Index(heads.cells, c.column); c.field == field && column >= 0 {
			typed = append(typed, r.at(column))
		}
	}
	if len(typed) == 1 || typed[1] == "" {
		return typed[0]
	}
	low, lowOK := typedEnd(field, typed[0])
	high, highOK := typedEnd(field, typed[1])
	x := &c.table.Treatments[i]
	left := sameValue(x, field, typed[1]) // the one number that stands here
	if typed[0] == typed[1] || lowOK && highOK && (alike(low, high) || left && high < low) {
		return typed[0]
	}
	return typed[0] + "-" + typed[1]
}

// typedEnd reads one end of a range: minutes, or a number.
func typedEnd(field, typed string) (float64, bool) {
	if field == FieldMinutes {
		low, high, ok := typedMinutes(typed)
		return low, ok && low == high
	}
	v, err := measure.ParseNumber(typed)
	return v, err == nil
}

// sameText says whether a typed text is one of the table, also where a CSV file
// guarded it and a workbook took the guard for a part of it.
func sameText(typed, text string) bool {
	text = breakable(strings.TrimSpace(text))
	return typed == text || typed == harmless(text)
}

// sameValue says whether a typed number, or the ends of a typed range, are those
// of the treatment. Texts are never the same by value.
func sameValue(x *Treatment, field, typed string) bool {
	low, high, ok := typedValue(field, typed)
	var x0, x1 float64
	switch field {
	case FieldMinutes:
		x0, x1 = x.Minutes, x.MinutesHigh
	case FieldChillFactor:
		x0, x1 = x.ChillFactor, x.ChillFactor
	case FieldHeadspace:
		x0, x1 = x.HeadspaceIn, x.HeadspaceIn
	case FieldWater:
		x0, x1 = x.WaterGalPerLb, x.WaterGalPerLb
	case FieldStorage:
		x0, x1 = x.StorageMonths, x.StorageMonthsHigh
	}
	return ok && x0 > 0 && alike(low, x0) && alike(high, x1)
}

// typedValue reads a field that is a number or a range.
func typedValue(field, typed string) (low, high float64, ok bool) {
	switch field {
	case FieldMinutes:
		return typedMinutes(typed)
	case FieldStorage:
		return typedSpan(typed)
	case FieldChillFactor, FieldWater, FieldHeadspace:
		if field == FieldHeadspace {
			typed = withoutInches(typed)
		}
		v, err := measure.ParseNumber(typed)
		return v, v, err == nil
	}
	return 0, 0, false
}

// alike says whether two numbers are the same but for the last digits, of which
// spreadsheet programs keep fifteen.
func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b)) }
