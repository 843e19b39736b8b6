package reference

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"

	"example.org/kettleside/content/words"
)

// A workbook is a zip of XML parts. Only the texts and numbers of its cells are
// wanted, from a file that anybody may have made: the parts are read as a
// stream, with one bound on all that they unpack to, and nothing is built of
// what they claim to hold. Formulas are seen and refused, never worked out.

// maxUnpacked is how many bytes the parts of a workbook may unpack to.
const maxUnpacked = 48 << 20

// oldBook starts a workbook that is locked by a password, and one of the format
// before .xlsx.
const oldBook = "\xD0\xCF\x11\xE0"

// readSentBook reads the cells of every sheet of a workbook.
func readSentBook(file string, data []byte, faults *SentErrors) []sentSheet {
	if bytes.HasPrefix(data, []byte(oldBook)) {
		faults.add(wrongAt(Place{File: file}, words.Later("a workbook with a password or of an old format"), words.Later("a workbook saved as .xlsx without a password")))
		return nil
	}
	b := &sentBook{file: file, faults: faults, left: maxUnpacked}
	sheets, err := b.read(data)
	switch {
	case errors.Is(err, errTooLarge):
		faults.add(wrongAt(Place{File: file}, words.Later("more than can be read"), words.Later("%d sheets and %d MB unpacked at most", maxSentSheets, maxUnpacked>>20)))
	case err != nil:
		faults.add(wrongAt(Place{File: file}, words.Later("no workbook, or a damaged one"), words.Later("a workbook saved as .xlsx")))
	}
	return sheets
}

// sentBook is a workbook while it is read.
type sentBook struct {
	file   string
	faults *SentErrors
	parts  map[string]*zip.File
	shared []string // texts that cells name by their number
	left   int64    // bytes that may still be unpacked
}

func (b *sentBook) read(data []byte) ([]sentSheet, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	b.parts = map[string]*zip.File{}
	for _, f := range z.File {
		b.parts[f.Name] = f
	}
	targets, err := b.targets()
	if err != nil {
		return nil, err
	}
	if b.parts[sharedPart] != nil {
		if err := b.each(sharedPart, b.sharedText()); err != nil {
			return nil, err
		}
	}
	var names, parts []string
	err = b.each(bookPart, func(_ *xml.Decoder, e xml.StartElement) error {
		if e.Name.Local != "sheet" {
			return nil
		}
		if names, parts = append(names, attr(e, "name")), append(parts, targets[attr(e, "id")]); len(names) > maxSentSheets {
			return errTooLarge
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	var out []sentSheet
	for i, name := range names {
		s, err := b.sheet(name, parts[i])
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

const (
	bookPart   = "xl/workbook.xml"
	linksPart  = "xl/_rels/workbook.xml.rels"
	sharedPart = "xl/sharedStrings.xml"
)

// targets are the parts of the workbook by the ids that it gives them.
func (b *sentBook) targets() (map[string]string, error) {
	out := map[string]string{}
	err := b.each(linksPart, func(_ *xml.Decoder, e xml.StartElement) error {
		if e.Name.Local == "Relationship" {
			to := attr(e, "Target")
			if !strings.HasPrefix(to, "/") {
				to = "/xl/" + to
			}
			out[attr(e, "Id")] = strings.TrimPrefix(path.Clean(to), "/")
		}
		return nil
	})
	return out, err
}

// each opens a part and hands every element that starts to a function.
func (b *sentBook) each(part string, do func(*xml.Decoder, xml.StartElement) error) error {
	f := b.parts[part]
	if f == nil {
		return fmt.Errorf("no part %q", part)
	}
	r, err := f.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	bounded := &bounded{r, &b.left}
	d := xml.NewDecoder(bounded)
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err == nil {
			if e, ok := token.(xml.StartElement); ok {
				err = do(d, e)
			}
		}
		if err != nil {
			return err
		}
	}
}

// bounded reads until what is left is used up.
type bounded struct {
	from io.Reader
	left *int64
}

func (b *bounded) Read(p []byte) (int, error) {
	n, err := b.from.Read(p)
	if *b.left -= int64(n); *b.left < 0 {
		return 0, errTooLarge
	}
	return n, err
}

// sharedText gathers the shared texts.
func (b *sentBook) sharedText() func(*xml.Decoder, xml.StartElement) error {
	return func(d *xml.Decoder, e xml.StartElement) error {
		if e.Name.Local != "si" {
			return nil
		}
		text, err := textIn(d)
		b.shared = append(b.shared, text)
		return err
	}
}

// textIn is the text of the element that was just opened, from its pieces in
// different type; how a word is pronounced is left out.
func textIn(d *xml.Decoder) (string, error) {
	var text strings.Builder
	inText := false
	for depth := 1; depth > 0; {
		token, err := d.Token()
		if err != nil {
			return "", err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Local == "rPh" {
				if err := d.Skip(); err != nil {
					return "", err
				}
				continue
			}
			inText = token.Name.Local == "t" || token.Name.Local == "v"
			depth++
		case xml.EndElement:
			inText = false
			depth--
		case xml.CharData:
			if inText {
				text.Write(token)
			}
		}
	}
	return text.String(), nil
}

// sheet reads the cells of one sheet.
func (b *sentBook) sheet(name, part string) (sentSheet, error) {
	out := sentSheet{name: name}
	row, column := 0, 0
	err := b.each(part, func(d *xml.Decoder, e xml.StartElement) error {
		switch e.Name.Local {
		case "row":
			next := row + 1
			if r := attr(e, "r"); r != "" {
				var err error
				if next, err = strconv.Atoi(r); err != nil || next <= row {
					return fmt.Errorf("row %q after %d", r, row)
				}
			}
			row, column = next, 0
		case "c":
			next := column + 1
			if r := attr(e, "r"); r != "" {
				if next = columnOf(r); next <= column {
					return fmt.Errorf("cell %q after column %d", r, column)
				}
			}
			column = next
			text, formula, err := b.cell(d, attr(e, "t"))
			if err != nil {
				return err
			}
			at := Place{File: b.file, Sheet: name, Row: row, Column: column}
			if formula {
				b.faults.add(formulaAt(at))
			} else if !out.place(at, text, b.faults) {
				return errStop
			}
		}
		return nil
	})
	if errors.Is(err, errStop) { // what was wrong is told already
		err = nil
	}
	return out, err
}

var errStop = errors.New("reference: read no further")

// cell reads what stands in a cell of a kind: "s" names a shared text.
func (b *sentBook) cell(d *xml.Decoder, kind string) (text string, formula bool, err error) {
	for {
		token, err := d.Token()
		if err != nil {
			return "", false, err
		}
		switch token := token.(type) {
		case xml.EndElement:
			return b.meant(text, kind), formula, nil
		case xml.StartElement:
			switch token.Name.Local {
			case "v", "is":
				if text, err = valueText(d, token); err != nil {
					return "", false, err
				}
			default:
				formula = formula || token.Name.Local == "f"
				if err := d.Skip(); err != nil {
					return "", false, err
				}
			}
		}
	}
}

// valueText is the text of a value, or of a text that stands in its cell.
func valueText(d *xml.Decoder, e xml.StartElement) (string, error) {
	if e.Name.Local == "is" {
		return textIn(d)
	}
	var text string
	err := d.DecodeElement(&text, &e)
	return text, err
}

// meant is the text of a cell as a person sees it: shared texts by their
// number, numbers with the fewest digits.
func (b *sentBook) meant(text, kind string) string {
	switch kind {
	case "s":
		if i, err := strconv.Atoi(text); err == nil && i >= 0 && i < len(b.shared) {
			return b.shared[i]
		}
		return ""
	case "", "n":
		if x, err := strconv.ParseFloat(text, 64); err == nil {
			return plain(x)
		}
	}
	return text
}

// columnOf is the number of the column of a cell: 28 of "AB3"; 0 of what is no
// cell.
func columnOf(cell string) int {
	n := 0
	for _, c := range cell {
		if c < 'A' || c > 'Z' || n > 1<<20 {
			break
		}
		n = n*26 + int(c-'A') + 1
	}
	return n
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
