package exports

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"codeberg.org/go-pdf/fpdf"
)

// placed is a cell on a page, in points from the top left of the paper.
type placed struct {
	cell
	left, top, width, height float64
	first                    float64 // largest type of those at the top of its row, in points
	side                     float64 // from its edges to its text, in points
}

// cells draws the rows of a page: fills under edges under texts, so that none
// covers another.
func (p *printer) cells(s *sheet, rows []row) {
	var list []placed
	top, side := s.page.top, cellSides/2
	if s.whole { // a label has its indent alone
		side = 0
	}
	for _, r := range rows {
		first := 0.0
		for _, c := range r.cells {
			if l := looks[c.role]; !l.middle && !l.low {
				first = max(first, l.size)
			}
		}
		for _, c := range r.cells {
			left := s.page.left
			for _, w := range s.cols[:c.col] {
				left += w
			}
			list = append(list, placed{c, left, top, s.cellWidth(c), r.height, first, side})
		}
		top += r.height
	}
	for _, c := range list {
		if fill := looks[c.role].fill; fill != nil {
			p.file.SetFillColor(int(fill.R), int(fill.G), int(fill.B))
			p.file.Rect(c.left, c.top, c.width, c.height, "F")
		}
	}
	for _, c := range list {
		p.edges(c)
	}
	for _, c := range list {
		p.words(s, c)
		if c.chart != nil {
			p.chart(s, c)
		}
	}
}

// edgeWidths are the widths of the edges in points, by weight.
var edgeWidths = map[int]float64{1: 0.5, 2: 1.25, 4: 0.5, 5: 2.5}

func (p *printer) edges(c placed) {
	l := looks[c.role]
	right, foot := c.left+c.width, c.top+c.height
	inside := c.left + edgeWidths[l.leftEdge.weight]/2 // never in the margin
	p.rule(l.leftEdge, inside, c.top, inside, foot)
	p.rule(l.above, c.left, c.top, right, c.top)
	p.rule(l.below, c.left, foot, right, foot)
	if l.box.weight > 0 {
		p.pen(l.box)
		p.file.Rect(c.left, c.top, c.width, c.height, "D")
	}
}

func (p *printer) rule(e edge, x1, y1, x2, y2 float64) {
	if e.weight == 0 {
		return
	}
	p.pen(e)
	p.file.Line(x1, y1, x2, y2)
}

func (p *printer) pen(e edge) {
	p.file.SetDrawColor(int(e.ink.R), int(e.ink.G), int(e.ink.B))
	p.file.SetLineWidth(edgeWidths[e.weight])
	p.file.SetDashPattern(dashes[e.weight], 0)
}

// dashes are the dashes and gaps of an edge that is not drawn through.
var dashes = map[int][]float64{4: {1, 1.5}}

func (p *printer) ink(c color.NRGBA) { p.file.SetTextColor(int(c.R), int(c.G), int(c.B)) }

// words draws the text of a cell.
func (p *printer) words(s *sheet, c placed) {
	l := looks[c.role]
	lines := [][]run{{{text: shown(c.cell)}}}
	if l.wrap && c.text() != "" {
		lines = s.lines(c.cell)
	}
	step := l.size * lineHeight
	top := c.top + cellEnds/2
	switch spare := c.height - cellEnds - float64(len(lines))*step; {
	case l.middle:
		top += spare / 2
	case l.low:
		top += spare
	default: // on one line with larger type beside it, where there is room
		top += max(min((c.first-l.size)*baseline, spare+cellEnds/2), 0)
	}
	p.ink(l.ink)
	for i, line := range lines {
		p.line(c, line, top+float64(i)*step)
	}
}

// line draws one line of a cell, its type beginning at a height.
func (p *printer) line(c placed, line []run, top float64) {
	l := looks[c.role]
	width := 0.0
	for _, r := range line {
		width += plex.width(r.text, l.size, l.bold || r.bold, l.italic)
	}
	at := c.startOf(width)
	for _, r := range line {
		as := l
		as.bold = l.bold || r.bold
		p.text(at, top, r.text, as)
		at += plex.width(r.text, l.size, as.bold, l.italic)
	}
}

// startOf is where a line of a width begins; without an alignment of their own
// texts stand left and numbers right.
func (c placed) startOf(width float64) float64 {
	l := looks[c.role]
	inset := c.side + float64(l.indent)*indentWidth
	_, isNumber := c.value.(float64)
	switch {
	case l.across == "center":
		return c.left + (c.width-width)/2
	case l.across == "right", l.across == "" && isNumber:
		return c.left + c.width - inset - width
	}
	return c.left + inset
}

// baseline is how far the letters stand below the top of their line, in parts
// of the type size: capitals then have as much room above as descenders below.
const baseline = 0.9

// text sets a piece of text in size and weight of a look.
func (p *printer) text(left, top float64, text string, l look) {
	foot := top + l.size*baseline
	for text != "" {
		i := strings.IndexFunc(text, isShape)
		if i == 0 {
			c, n := utf8.DecodeRuneInString(text)
			p.shape(c, left, foot, l.size)
			left += plex.width(text[:n], l.size, l.bold, l.italic)
			text = text[n:]
			continue
		}
		if i < 0 {
			i = len(text)
		}
		p.letters(left, foot, text[:i], l)
		left += plex.width(text[:i], l.size, l.bold, l.italic)
		text = text[i:]
	}
}

// letters sets text that the face has, or that shows as boxes.
func (p *printer) letters(left, foot float64, text string, l look) {
	p.file.SetFont(plexName, plexStyle(l.bold, l.italic), l.size)
	if !l.bold || !l.italic {
		p.file.Text(left, foot, text)
		return
	}
	const stroke = 0.02 // of the type size
	p.file.SetDrawColor(p.file.GetTextColor())
	p.file.SetLineWidth(l.size * stroke)
	p.file.SetTextRenderingMode(2)
	p.file.Text(left, foot, text)
	p.file.SetTextRenderingMode(0)
}

// The shapes of the severities, which the face does not have, are drawn.
const (
	square   = '■'
	triangle = '▲'
	disc     = '●'

	shapeWidth = 0.66 // of the type size
)

func isShape(c rune) bool { return c == square || c == triangle || c == disc }

func (p *printer) shape(c rune, left, foot, size float64) {
	p.file.SetFillColor(p.file.GetTextColor())
	side := size * shapeWidth
	switch c {
	case square:
		p.file.Rect(left, foot-side, side, side, "F")
	case triangle:
		p.file.Polygon([]fpdf.PointType{{X: left, Y: foot}, {X: left + side, Y: foot}, {X: left + side/2, Y: foot - side}}, "F")
	case disc:
		p.file.Circle(left+side/2, foot-side/2, side/2, "F")
	}
}

// shown is what a cell shows: its text, or its number in the format of its role.
func shown(c cell) string {
	v, ok := c.value.(float64)
	if !ok {
		return c.text()
	}
	switch format := looks[c.role].format; format {
	case eighths:
		return inEighths(v)
	case noDecimals:
		return decimals(v, 0)
	case oneDecimal:
		return decimals(v, 1)
	case twoDecimals:
		return decimals(v, 2)
	case fourDecimals:
		return decimals(v, 4)
	}
	const digits = 10 // what a spreadsheet shows of a number without a format
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// inEighths shows inches on the nearest eighth as a ruler does: "1 1/2".
func inEighths(v float64) string {
	whole, part := math.Modf(math.Round(v*8) / 8)
	n, d := int(part*8), 8
	for n > 0 && n%2 == 0 {
		n, d = n/2, d/2
	}
	switch {
	case n == 0:
		return strconv.Itoa(int(whole))
	case whole == 0:
		return fmt.Sprintf("%d/%d", n, d)
	}
	return fmt.Sprintf("%d %d/%d", int(whole), n, d)
}

// decimals rounds as spreadsheets do, a half away from zero.
func decimals(v float64, n int) string {
	step := math.Pow10(n)
	return strconv.FormatFloat(math.Round(v*step)/step, 'f', n, 64)
}
