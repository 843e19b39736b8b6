package reference

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"example.org/kettleside/content/words"
)

// readSentCSV reads a CSV file with commas, semicolons or tabs between its
// cells: spreadsheet programs write what the language of the machine asks for.
func readSentCSV(file string, data []byte, faults *SentErrors) sentSheet {
	var out sentSheet
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if !utf8.Valid(data) {
		faults.add(wrongAt(Place{File: file}, words.Later("bytes that are not UTF-8 text"), words.Later("a file saved as CSV UTF-8")))
		return out
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.FieldsPerRecord, r.ReuseRecord, r.Comma = -1, true, separator(data)
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			at := Place{File: file}
			var p *csv.ParseError
			if errors.As(err, &p) {
				at.Row, at.Column = p.Line, p.Column
			}
			faults.add(wrongAt(at, words.Later("a quotation mark out of its place"), words.Later("quotation marks in pairs")))
			return out
		}
		for i, text := range fields {
			line, _ := r.FieldPos(0)
			at := Place{File: file, Row: line, Column: i + 1}
			if isFormula(text) {
				faults.add(formulaAt(at))
				continue
			}
			if !out.place(at, unguard(text), faults) {
				return out
			}
		}
	}
}

// separator is what stands between the cells: what follows the first head.
func separator(data []byte) rune {
	head, _, _ := bytes.Cut(data, []byte("\n"))
	for _, comma := range []rune{';', '\t'} {
		if bytes.HasPrefix(head, []byte("id"+string(comma))) || bytes.HasPrefix(head, []byte(`"id"`+string(comma))) {
			return comma
		}
	}
	return ','
}

// isFormula says whether a spreadsheet program wrote a formula here, or would
// take the text for one.
func isFormula(text string) bool {
	text = strings.TrimLeft(text, " \u00a0")
	return strings.HasPrefix(text, "=") || strings.HasPrefix(text, "＝")
}

// unguard takes back the apostrophes that harmless put before what a
// spreadsheet would run.
func unguard(text string) string {
	parts := strings.Split(text, ";")
	for i, p := range parts {
		if cut, ok := strings.CutPrefix(p, "'"); ok && runs(cut) {
			parts[i] = cut
		}
	}
	return strings.Join(parts, ";")
}
