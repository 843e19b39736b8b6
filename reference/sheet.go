package reference

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// sheet is one data file read as text: a header that must match exactly, and
// its records with the line each of them starts on.
type sheet struct {
	file   string
	header []string
	rows   []record
	faults *faults
}

// record is one line of a sheet.
type record struct {
	sheet  *sheet
	line   int
	fields []string
}

// readSheet reads file from fsys. A byte-order mark is skipped; a header that
// is not exactly want, a broken quote or a record of another length is a fault.
func readSheet(fsys fs.FS, file string, want []string, f *faults) *sheet {
	s := &sheet{file: file, header: want, faults: f}
	data, err := fs.ReadFile(fsys, file)
	if err != nil {
		f.add(&DataError{File: file, Found: "no readable file", Allowed: "a CSV file with the columns " + strings.Join(want, ", ")})
		return s
	}
	s.parse(data)
	return s
}

// parse splits data into records.
func (s *sheet) parse(data []byte) {
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if !utf8.Valid(data) {
		s.faults.add(&DataError{File: s.file, Found: "bytes that are not UTF-8 text", Allowed: "UTF-8"})
		return
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.FieldsPerRecord = -1
	header, err := r.Read()
	if err != nil {
		s.broken(err)
		return
	}
	if !s.checkHeader(header) {
		return
	}
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			s.broken(err)
			return
		}
		line, _ := r.FieldPos(0)
		if len(fields) != len(s.header) {
			s.faults.add(&DataError{File: s.file, Line: line,
				Found: fmt.Sprintf("%d fields", len(fields)), Allowed: fmt.Sprintf("%d, one for each column", len(s.header))})
			continue
		}
		s.rows = append(s.rows, record{s, line, fields})
	}
}

// broken reports what the CSV reader could not read.
func (s *sheet) broken(err error) {
	e := &DataError{File: s.file, Line: 1, Found: "nothing", Allowed: "a header and rows"}
	var p *csv.ParseError
	if errors.As(err, &p) {
		e.Line, e.Column = p.Line, p.Column
		e.Found, e.Allowed = p.Err.Error(), "CSV with quotes in pairs"
	}
	s.faults.add(e)
}

// checkHeader names the first column that is missing, too much or out of order.
func (s *sheet) checkHeader(got []string) bool {
	for i := range max(len(got), len(s.header)) {
		switch {
		case i >= len(got):
			s.faults.add(&DataError{File: s.file, Line: 1, Column: i + 1, Name: s.header[i], Found: "no such column", Allowed: s.headerText()})
		case i >= len(s.header):
			s.faults.add(&DataError{File: s.file, Line: 1, Column: i + 1, Name: got[i], Found: "one column too many", Allowed: s.headerText()})
		case got[i] == s.header[i]:
			continue
		case slices.Contains(got, s.header[i]) && slices.Contains(s.header, got[i]):
			s.faults.add(&DataError{File: s.file, Line: 1, Column: i + 1, Name: s.header[i], Found: "the column " + quoted(got[i]) + " out of its order", Allowed: s.headerText()})
		case slices.Contains(s.header, got[i]):
			s.faults.add(&DataError{File: s.file, Line: 1, Column: i + 1, Name: s.header[i], Found: "no such column", Allowed: s.headerText()})
		default:
			s.faults.add(&DataError{File: s.file, Line: 1, Column: i + 1, Name: s.header[i], Found: "the column " + quoted(got[i]), Allowed: s.headerText()})
		}
		return false
	}
	return true
}

func (s *sheet) headerText() string { return "the columns " + strings.Join(s.header, ",") }

// at returns the number of a column, 0-based. An unknown name is a programmer's
// error.
func (s *sheet) at(name string) int {
	i := slices.Index(s.header, name)
	if i < 0 {
		panic("reference: no column " + name + " in " + s.file)
	}
	return i
}

// wrong adds a fault for one field of the record.
func (r record) wrong(name, found, allowed string) {
	r.sheet.faults.add(&DataError{File: r.sheet.file, Line: r.line, Column: r.sheet.at(name) + 1, Name: name, Found: found, Allowed: allowed})
}

// raw returns the field as it stands.
func (r record) raw(name string) string { return r.fields[r.sheet.at(name)] }

// text returns a field of words. Blanks around it and characters that nobody
// sees are faults: they would travel unnoticed into every handout.
func (r record) text(name string) string {
	v := r.raw(name)
	if strings.TrimSpace(v) != v {
		r.wrong(name, quoted(v), "text without blanks around it")
	}
	if strings.ContainsFunc(v, unseen) {
		r.wrong(name, quoted(v), "text on one line, without control characters")
	}
	return v
}

// unseen says whether a character is one that does not print: control
// characters, those that turn the direction of writing or join letters, and the
// separators of lines and paragraphs.
func unseen(c rune) bool { return unicode.In(c, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) }

// list returns the parts of a field that are separated by "; ".
func (r record) list(name string) []string {
	v := r.text(name)
	if v == "" {
		return nil
	}
	parts := strings.Split(v, "; ")
	if slices.ContainsFunc(parts, func(p string) bool { return p == "" || strings.TrimSpace(p) != p || strings.Contains(p, ";") }) {
		r.wrong(name, quoted(v), `texts separated by "; "`)
	}
	return parts
}

// needed returns a field that must not be empty.
func (r record) needed(name string) string {
	v := r.text(name)
	if v == "" {
		r.wrong(name, "nothing", "text")
	}
	return v
}

// id returns a field in the form of an id: lower case letters, digits, hyphens.
func (r record) id(name string) string {
	v := r.raw(name)
	ok := v != "" && v[0] != '-' && v[len(v)-1] != '-'
	for _, c := range v {
		ok = ok && (c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '-')
	}
	if !ok {
		r.wrong(name, quoted(v), "an id of lower case letters, digits and hyphens")
	}
	return v
}

// yes returns a yes-or-no field; empty means no.
func (r record) yes(name string) bool {
	switch v := r.raw(name); v {
	case "yes":
		return true
	case "", "no":
	default:
		r.wrong(name, quoted(v), `"yes", "no" or nothing`)
	}
	return false
}

// number returns a field that is a number from lo to hi, or 0 for an empty one.
// Fractions as kitchens write them are read exactly: "2/3", "1 1/4".
func (r record) number(name string, lo, hi float64) float64 {
	v := r.raw(name)
	if v == "" {
		return 0
	}
	x, err := parseAmount(v)
	if err != nil || x < lo || x > hi {
		r.wrong(name, quoted(v), fmt.Sprintf("a number from %s to %s", plain(lo), plain(hi)))
		return 0
	}
	return x
}

// minutes returns a field of minutes: "3", "1.5", or seconds as "10 s". Empty
// is 0: no minutes.
func (r record) minutes(name string) float64 {
	v := r.raw(name)
	if v == "" {
		return 0
	}
	x, err := parseMinutes(v)
	if err != nil {
		r.wrong(name, quoted(v), minutesAllowed)
	}
	return x
}

// enum returns a field that is one of the allowed values; empty only if "" is
// among them.
func enum[T ~string](r record, name string, allowed []T) T {
	v := T(r.raw(name))
	if slices.Contains(allowed, v) {
		return v
	}
	shown := slices.DeleteFunc(slices.Clone(allowed), func(a T) bool { return a == "" })
	r.wrong(name, quoted(string(v)), oneOf(shown))
	return v
}

const (
	// maxMinutes is the longest blanch that is believed: the longest published
	// one is 11 minutes, and cooking stands in words.
	maxMinutes     = 60
	minutesAllowed = `minutes from above 0 to 60, such as "3" or "1.5", or seconds such as "10 s"`
)

var errAmount = errors.New("not a number")

// parseMinutes reads "3", "1.5" or "10 s" (whole seconds, exactly n/60).
func parseMinutes(s string) (float64, error) {
	text, seconds := strings.CutSuffix(s, " s")
	x, err := parseAmount(text)
	if err != nil {
		return 0, err
	}
	if seconds {
		if x != math.Trunc(x) {
			return 0, errAmount
		}
		x /= 60
	}
	if x <= 0 || x > maxMinutes {
		return 0, errAmount
	}
	return x, nil
}

// parseAmount reads a decimal number with a point, a fraction "2/3" or a whole
// number and a fraction "1 1/4". Nothing else: no exponent, no sign but a
// leading minus, no blanks around it.
func parseAmount(s string) (float64, error) {
	whole, frac, mixed := strings.Cut(s, " ")
	if !mixed {
		if strings.Contains(s, "/") {
			return parseFraction(s)
		}
		return parseDecimal(s)
	}
	w, err := parseDecimal(whole)
	if err != nil || w < 0 || w != math.Trunc(w) {
		return 0, errAmount
	}
	f, err := parseFraction(frac)
	if err != nil || f >= 1 {
		return 0, errAmount
	}
	return w + f, nil
}

func parseFraction(s string) (float64, error) {
	a, b, ok := strings.Cut(s, "/")
	if !ok {
		return 0, errAmount
	}
	n, err1 := strconv.ParseUint(a, 10, 16)
	d, err2 := strconv.ParseUint(b, 10, 16)
	if err1 != nil || err2 != nil || d == 0 {
		return 0, errAmount
	}
	return float64(n) / float64(d), nil
}

func parseDecimal(s string) (float64, error) {
	digits := strings.TrimPrefix(s, "-")
	if digits == "" || strings.Count(digits, ".") > 1 || strings.Trim(digits, "0123456789.") != "" || digits == "." {
		return 0, errAmount
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(x, 0) {
		return 0, errAmount
	}
	return x, nil
}

// plain prints a number with the fewest digits that give it back.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
