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

// lettering is a typeface as texts are measured in it.
type lettering struct {
	perEm   int                                 // parts of the type size
	advance func(c rune, bold, italic bool) int // width of a character in such parts
	stretch float64                             // how much longer a line may turn out
	sides   float64                             // points that the edges of a cell take from its text
	margins float64                             // the same of a label
	over    float64                             // points that a word may be too long by before it is broken
	tallest float64                             // the most that a row is high, in points
}

// arial is the face of the workbook, which other programs set, each a little
// otherwise. Slanted type is as wide as upright.
var arial = &lettering{perEm: 2048, advance: arialAdvance, stretch: 1.03, sides: cellSides, margins: cellSides, tallest: 409}

func arialAdvance(c rune, bold, _ bool) int {
	switch w, ok := wideGlyphs[c]; {
	case c >= ' ' && c <= '~' && bold:
		return int(boldWidths[c-' '])
	case c >= ' ' && c <= '~':
		return int(regularWidths[c-' '])
	case ok:
		return int(w)
	}
	return otherGlyph
}

// width is the length of a line of text in points.
func (f *lettering) width(text string, size float64, bold, italic bool) float64 {
	sum := 0
	for _, c := range text {
		sum += f.advance(c, bold, italic)
	}
	return float64(sum) / float64(f.perEm) * size
}

// wrapped is how many lines a text takes in a width.
func (f *lettering) wrapped(text string, width, size float64, bold bool) int {
	return len(f.lines([]run{{bold, text}}, width, size, false))
}

// rowHeight is the height that the texts of a row need, in points.
func (s *sheet) rowHeight(r row) float64 {
	height := 0.0
	for _, c := range r.cells {
		l := looks[c.role]
		lines := 1
		if (c.text() != "" || c.room != "") && l.wrap {
			lines = max(len(s.lines(c)), s.face.wrapped(c.room, s.lineWidth(c), l.size, l.bold))
		}
		height = max(height, float64(lines)*l.size*lineHeight+cellEnds)
	}
	return height + r.space
}

// lines are the lines that the text of a cell is broken into.
func (s *sheet) lines(c cell) [][]run {
	l := looks[c.role]
	runs := c.runs
	if len(runs) == 0 {
		runs = []run{{l.bold, c.text()}}
	}
	return s.face.lines(runs, s.lineWidth(c), l.size, l.italic)
}

// lineWidth is the room for a line of the text of a cell.
func (s *sheet) lineWidth(c cell) float64 {
	sides := s.face.sides
	if s.whole {
		sides = s.face.margins
	}
	return (s.cellWidth(c) - sides - float64(looks[c.role].indent)*indentWidth) / s.face.stretch
}

// cellWidth is the width of the columns that a cell covers.
func (s *sheet) cellWidth(c cell) float64 {
	width := 0.0
	for _, w := range s.cols[c.col : c.col+c.cols()] {
		width += w
	}
	return width
}

// indentWidth is what one step of indent takes, in points.
const indentWidth = 9.0

// settle makes the texts ready for paper and gives every row its height.
func (s *sheet) settle() {
	s.bindUnits()
	for i := range s.rows {
		if s.rows[i].height == 0 {
			s.rows[i].height = min(roundUp(s.rowHeight(s.rows[i]), 0.75), s.face.tallest)
		}
	}
}

// roundUp rounds up to a step: spreadsheets keep row heights in pixels.
func roundUp(x, step float64) float64 {
	n := x / step
	if n > float64(int(n)) {
		n = float64(int(n) + 1)
	}
	return n * step
}
