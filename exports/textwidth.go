package exports

// Advance widths of Arial in 1/2048 of the type size, for the characters from
// blank to tilde. Read from the metric-compatible Liberation Sans 2 (regular
// and bold); other characters are in wideGlyphs or count as wide.
var (
	regularWidths = [95]uint16{
		569, 569, 727, 1139, 1139, 1821, 1366, 391, 682, 682, 797, 1196, 569, 682, 569, 569,
		1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 569, 569, 1196, 1196, 1196, 1139,
		2079, 1366, 1366, 1479, 1479, 1366, 1251, 1593, 1479, 569, 1024, 1366, 1139, 1706, 1479, 1593,
		1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 569, 569, 569, 961, 1139,
		682, 1139, 1139, 1024, 1139, 1139, 569, 1139, 1139, 455, 455, 1024, 455, 1706, 1139, 1139,
		1139, 1139, 682, 1024, 569, 1139, 1024, 1479, 1024, 1024, 1024, 684, 532, 684, 1196,
	}
	boldWidths = [95]uint16{
		569, 682, 971, 1139, 1139, 1821, 1479, 487, 682, 682, 797, 1196, 569, 682, 569, 569,
		1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 682, 682, 1196, 1196, 1196, 1251,
		1997, 1479, 1479, 1479, 1479, 1366, 1251, 1593, 1479, 569, 1139, 1479, 1251, 1706, 1479, 1593,
		1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 682, 569, 682, 1196, 1139,
		682, 1139, 1251, 1139, 1251, 1139, 682, 1251, 1251, 569, 569, 1139, 569, 1821, 1251, 1251,
		1251, 1251, 797, 1139, 682, 1251, 1139, 1593, 1139, 1139, 1024, 797, 573, 797, 1196,
	}
	wideGlyphs = map[rune]uint16{
		'°': 819, '×': 1196, '÷': 1124, '–': 1139, '−': 1196, '·': 569, '≈': 1124, '≥': 1124, '≤': 1124,
		'“': 1024, '”': 1024, '‘': 569, '’': 569, '\u00a0': 569,
		'á': 1139, 'é': 1139, 'í': 569, 'ó': 1251, 'ú': 1251, 'ñ': 1251, 'ü': 1251, '¿': 1251, '¡': 682, '³': 682,
		'Á': 1479, 'É': 1366, 'Í': 569, 'Ó': 1593, 'Ú': 1479, 'Ñ': 1479,
	}
)

const (
	otherGlyph = 2048 // a character without a width of its own
	lineHeight = 1.15 // of the type size
	cellSides  = 6.0  // points that the edges of a cell take from its text
	cellEnds   = 3.0  // points above and below the text together
)

// textWidth is the length of a line of text in points.
func textWidth(text string, size float64, bold bool) float64 {
	widths := &regularWidths
	if bold {
		widths = &boldWidths
	}
	sum := 0
	for _, r := range text {
		switch w, ok := wideGlyphs[r]; {
		case r >= ' ' && r <= '~':
			sum += int(widths[r-' '])
		case ok:
			sum += int(w)
		default:
			sum += otherGlyph
		}
	}
	return float64(sum) / 2048 * size
}

// wrapped is how many lines a text takes in a width, broken at blanks as a
// spreadsheet breaks it.
func wrapped(text string, width, size float64, bold bool) int {
	return wrappedRuns([]run{{bold, text}}, width, size)
}

// wrappedRuns is the same for a text in bold and plain pieces.
func wrappedRuns(runs []run, width, size float64) int {
	lines, at, blank := 1, 0.0, 0.0
	word := 0.0 // length of the word so far; it may go on in the next piece
	endWord := func() {
		if word == 0 {
			return
		}
		if at > 0 && at+blank+word > width {
			lines++
			at = 0
		}
		if at > 0 {
			at += blank
		}
		at += word
		for at > width { // a word longer than the line is broken anywhere
			lines++
			at -= width
		}
		word, blank = 0, 0
	}
	for _, r := range runs {
		for _, c := range r.text {
			switch c {
			case '\n':
				endWord()
				lines++
				at, blank = 0, 0
			case ' ':
				endWord()
				blank = textWidth(" ", size, r.bold)
			default:
				word += textWidth(string(c), size, r.bold)
			}
		}
	}
	endWord()
	return lines
}

// rowHeight is the height that the texts of a row need, in points.
func (s *sheet) rowHeight(r row) float64 {
	height := 0.0
	for _, c := range r.cells {
		l := looks[c.role]
		lines := 1
		if text := c.text(); (text != "" || c.room != "") && l.wrap {
			width := -cellSides - float64(l.indent)*indentWidth
			for i := c.col; i < c.col+c.cols(); i++ {
				width += s.cols[i]
			}
			const extra = 1.03 // for programs that measure text otherwise
			runs := c.runs
			if len(runs) == 0 {
				runs = []run{{l.bold, text}}
			}
			lines = max(wrappedRuns(runs, width/extra, l.size), wrapped(c.room, width/extra, l.size, l.bold))
		}
		height = max(height, float64(lines)*l.size*lineHeight+cellEnds)
	}
	return height + r.space
}

// indentWidth is what one step of indent takes, in points.
const indentWidth = 9.0

// settle makes the texts ready for paper and gives every row its height.
func (s *sheet) settle() {
	s.bindUnits()
	for i := range s.rows {
		if s.rows[i].height == 0 {
			s.rows[i].height = min(roundUp(s.rows[i].textHeight(s), 0.75), 409)
		}
	}
}

func (r row) textHeight(s *sheet) float64 { return s.rowHeight(r) }

// roundUp rounds up to a step: spreadsheets keep row heights in pixels.
func roundUp(x, step float64) float64 {
	n := x / step
	if n > float64(int(n)) {
		n = float64(int(n) + 1)
	}
	return n * step
}
