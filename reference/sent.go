package reference

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// What is read of a table that somebody sends back. The shipped table has some
// hundred rows and forty columns, so that these bounds meet no honest file.
const (
	maxSentBytes   = 20 << 20
	maxSentRows    = 20_000
	maxSentColumns = 200
	maxSentSheets  = 50
)

// Sent is a crop table that a person sent back: the texts of its cells, as
// typed. Nothing of it is believed yet; Compare holds it against a table.
type Sent struct {
	File   string // name of the file, for sentences
	sheets []sentSheet
}

// sentSheet is a sheet of a workbook; a CSV file is one without a name.
type sentSheet struct {
	name string
	rows []sentRow // those that hold anything, from the top
}

type sentRow struct {
	number int // from 1
	cells  []string
}

// at returns a cell, "" where the row is shorter.
func (r sentRow) at(column int) string {
	if column >= len(r.cells) {
		return ""
	}
	return r.cells[column]
}

// Place is where a cell of a sent table stands.
type Place struct {
	File, Sheet string // Sheet is "" in a CSV file
	Row, Column int    // from 1; 0 for the file, or the sheet, as a whole
	Name        string // name of the column, or ""
}

// Say is the place by a voice: “back.xlsx, sheet Minutes, cell H12 (minutes)”.
func (p Place) Say(v *words.Voice) string {
	switch {
	case p.Row == 0 && p.Sheet == "":
		return p.File
	case p.Row == 0:
		return v.Say("%s, sheet %s", p.File, p.Sheet)
	case p.Sheet == "" && p.Name == "":
		return v.Say("%s, row %d, column %d", p.File, p.Row, p.Column)
	case p.Sheet == "":
		return v.Say("%s, row %d, column %d (%s)", p.File, p.Row, p.Column, p.Name)
	case p.Name == "":
		return v.Say("%s, sheet %s, cell %s", p.File, p.Sheet, cellName(p.Column, p.Row))
	}
	return v.Say("%s, sheet %s, cell %s (%s)", p.File, p.Sheet, cellName(p.Column, p.Row), p.Name)
}

// String is the place in English.
func (p Place) String() string { return p.Say(nil) }

// cellName is a cell as a spreadsheet calls it: column 28 of row 3 is AB3.
func cellName(column, row int) string {
	letters := ""
	for ; column > 0; column = (column - 1) / 26 {
		letters = string(rune('A'+(column-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, row)
}

// SentError says what is wrong in a sent table, where, and what is allowed.
type SentError struct {
	At    Place
	fault error
}

// Error returns the sentence.
func (e *SentError) Error() string { return e.fault.Error() }

// Say is the sentence by a voice.
func (e *SentError) Say(v *words.Voice) string { return v.Error(e.fault) }

// wrongAt makes the sentence of a fault at a place; found and allowed are texts
// or phrases.
func wrongAt(at Place, found, allowed any) *SentError {
	return &SentError{at, words.Errorf("%s: found %s; allowed is %s.", at, found, allowed)}
}

// SentErrors are all faults of a sent table in its order, at most maxFaults.
type SentErrors []*SentError

// Error returns one sentence a line.
func (e SentErrors) Error() string { return e.Say(nil) }

// Say is one sentence a line by a voice.
func (e SentErrors) Say(v *words.Voice) string {
	lines := make([]string, len(e))
	for i, one := range e {
		lines[i] = one.Say(v)
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets errors.As and errors.Is look at each fault.
func (e SentErrors) Unwrap() []error {
	out := make([]error, len(e))
	for i, one := range e {
		out[i] = one
	}
	return out
}

func (e *SentErrors) add(one *SentError) {
	if len(*e) < maxFaults {
		*e = append(*e, one)
	}
}

func (e SentErrors) err() error {
	if len(e) == 0 {
		return nil
	}
	return e
}

// ReadSentFile reads a table that was sent back from a file ending in .csv or
// .xlsx. A file over 20 MB is not read at all.
func ReadSentFile(path string) (Sent, error) {
	f, err := os.Open(path)
	if err != nil {
		return Sent{}, words.Errorf("read the table: %w", err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxSentBytes+1))
	if err != nil {
		return Sent{}, words.Errorf("read the table: %w", err)
	}
	return ReadSent(filepath.Base(path), data)
}

// ReadSent reads a table that was sent back: the CSV or the workbook that went
// out, or what a spreadsheet program made of it. It is bounded in size, and no
// formula is ever worked out: a cell that holds one is refused by its name. The
// error is SentErrors.
func ReadSent(file string, data []byte) (Sent, error) {
	out := Sent{File: file}
	var faults SentErrors
	switch ending := strings.ToLower(filepath.Ext(file)); {
	case len(data) > maxSentBytes:
		faults.add(wrongAt(Place{File: file}, words.Later("more than %d MB", maxSentBytes>>20), words.Later("a smaller file")))
	case ending == ".csv":
		out.sheets = []sentSheet{readSentCSV(file, data, &faults)}
	case ending == ".xlsx":
		out.sheets = readSentBook(file, data, &faults)
	default:
		faults.add(wrongAt(Place{File: file}, words.Later("another kind of file"), words.Later("a name that ends in .csv or .xlsx")))
	}
	if err := faults.err(); err != nil {
		return Sent{}, err
	}
	return out, nil
}

var errTooLarge = errors.New("reference: more than may be read")

// place holds a cell against the bounds and puts it into its row. It says
// whether to read on.
func (s *sentSheet) place(at Place, text string, faults *SentErrors) bool {
	switch text = breakable(strings.TrimSpace(text)); {
	case text == "":
		return true
	case at.Row > maxSentRows:
		faults.add(wrongAt(at, words.Later("row %d", at.Row), words.Later("at most %s rows", measure.Plain(maxSentRows))))
		return false
	case at.Column > maxSentColumns:
		faults.add(wrongAt(at, words.Later("column %d", at.Column), words.Later("at most %d columns", maxSentColumns)))
		return false
	}
	if n := len(s.rows); n == 0 || s.rows[n-1].number != at.Row {
		s.rows = append(s.rows, sentRow{number: at.Row})
	}
	r := &s.rows[len(s.rows)-1]
	for len(r.cells) < at.Column {
		r.cells = append(r.cells, "")
	}
	r.cells[at.Column-1] = text
	return true
}

// breakable has plain blanks for those that hold a number and its unit together:
// a workbook gets them when it goes out, and they are nobody's edit.
func breakable(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// formulaAt is the refusal of a cell that holds a formula.
func formulaAt(at Place) *SentError {
	return wrongAt(at, words.Later("a formula"), words.Later("the number or the words themselves"))
}
