package exports

import "strings"

// book is a workbook before it is written.
type book struct {
	title    string // of the document
	author   string
	about    string
	created  string // RFC 3339
	language string // BCP 47
	sheets   []*sheet
}

// sheet is one sheet: its columns, its rows from the top, and how it prints.
type sheet struct {
	id   string
	name string // on the tab
	page page
	face *lettering // that its texts are measured in

	cols []float64 // widths in points
	rows []row

	// rows repeated on every page, counted from 1; 0: none
	headFrom, headTo int
	// last row under those heads; 0: the last of the sheet. Where all of them
	// stand on the first page, nothing needs to be repeated.
	headUntil int

	// rows that stay in view on a screen, from the top
	frozen int

	checks []check
	sealed bool // protected: only open cells can be typed into
	// whole keeps the sheet at its exact size, as a label grid needs; other
	// sheets are fitted to the width of the page as a guard.
	whole bool
	// aside stands to the right of the first row, outside of what is printed
	aside string
}

// row is one row of cells. Its height in points follows from its texts unless
// it is given.
type row struct {
	cells  []cell
	height float64
	space  float64 // more height than the texts need
	keep   bool    // on one page with the next row
	split  bool    // a new page starts with this row
	uncut  bool    // with what is kept with it on a new page, however much of the last stays empty
}

// cell is one cell: what it holds and what it is for.
type cell struct {
	col  int // from 0
	span int // columns it covers; 0 means 1
	role role

	value any    // string, float64 or nil
	runs  []run  // a text in pieces, instead of value
	room  string // the longest text that a formula may give: the row is made as high as it needs

	chart *drawing // drawn over the cell

	formula string // without "="; value then is the program's own result
	name    string // defined name, or ""
}

// run is a piece of text in bold or plain type.
type run struct {
	bold bool
	text string
}

// text is the text of the cell, if it is one.
func (c cell) text() string {
	if len(c.runs) > 0 {
		var b strings.Builder
		for _, r := range c.runs {
			b.WriteString(r.text)
		}
		return b.String()
	}
	s, _ := c.value.(string)
	return s
}

// cols is how many columns the cell covers.
func (c cell) cols() int { return max(c.span, 1) }

// check is a limit on what may be typed into an open cell.
type check struct {
	cell  string // name of the cell
	title string
	help  string // shown when the cell is chosen
	stop  string // shown when something else is typed: what is allowed

	list      string   // defined name of the cells whose texts are allowed, or
	choices   []string // the texts themselves, or
	low, high float64  // a number between
	whole     bool
}

// add appends a row and returns its number, counted from 1.
func (s *sheet) add(r row) int {
	s.rows = append(s.rows, r)
	return len(s.rows)
}

// keepFrom keeps the rows from there on one page.
func (s *sheet) keepFrom(first int) {
	for i := first; i < len(s.rows)-1; i++ {
		s.rows[i].keep = true
	}
}

// gap appends an empty row of some points.
func (s *sheet) gap(points float64) { s.add(row{height: points}) }

// wide makes a cell over all columns.
func (s *sheet) wide(r role, value any) cell {
	return cell{span: len(s.cols), role: r, value: value}
}

// heading opens a part of the sheet; it stays with what follows.
func (s *sheet) heading(text string) {
	s.add(row{cells: []cell{s.wide(heading, text)}, space: 8, keep: true})
	s.add(row{height: 3, keep: true})
}

// tallest is the height in points that no row may exceed; spreadsheets stop
// at 409.
const tallest = 400

// para appends a text over all columns, in as many rows as it needs.
func (s *sheet) para(r role, text string) {
	for _, part := range strings.Split(clip(text, 20000), "\n") {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		for len(part) > 0 {
			piece := part
			for s.rowHeight(row{cells: []cell{s.wide(r, piece)}}) > tallest {
				cut := strings.LastIndexByte(piece[:len(piece)*3/4], ' ')
				if cut <= 0 {
					cut = len([]rune(piece)) / 2
					piece = string([]rune(piece)[:cut])
					continue
				}
				piece = piece[:cut]
			}
			s.add(row{cells: []cell{s.wide(r, piece)}})
			part = strings.TrimSpace(part[len(piece):])
		}
	}
}

// clip shortens a text that nobody typed by intention, and shows that it did.
func clip(text string, runes int) string {
	if len(text) <= runes {
		return text
	}
	if r := []rune(text); len(r) > runes {
		return string(r[:runes]) + "…"
	}
	return text
}

// short is a name as typed, on one line and of bounded length.
func short(text string) string { return clip(strings.Join(strings.Fields(text), " "), 160) }
