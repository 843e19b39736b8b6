package exports

import (
	"math"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/text/unicode/norm"

	"example.org/kettleside/content/typeface"
)

// plex is the face of a PDF. It is measured with the widths that it is embedded
// with, so that lines turn out as long as they were measured and may come nearer
// to the edge of their cell. A word that is too long may stand in the next one's.
// On a label a millimetre stays free at the right.
var plex = &lettering{perEm: 1000, advance: plexAdvance, stretch: 1, sides: 4, margins: 3, over: 3, tallest: math.Inf(1)}

// The weights of plex, as the file names them.
const (
	plexName = "plex"
	upright  = ""
	semiBold = "B"
	slanted  = "I"
)

// plexStyle is the weight for a piece of text. There is no slanted bold: such a
// text is slanted, and drawn with a stroke around it (printer.text).
func plexStyle(bold, italic bool) string {
	switch {
	case italic:
		return slanted
	case bold:
		return semiBold
	}
	return upright
}

// newPDF is an empty document in points that has the face.
func newPDF() *fpdf.Fpdf {
	file := fpdf.New("P", "pt", "Letter", "")
	file.SetAutoPageBreak(false, 0)
	file.AddUTF8FontFromBytes(plexName, upright, typeface.Regular)
	file.AddUTF8FontFromBytes(plexName, semiBold, typeface.SemiBold)
	file.AddUTF8FontFromBytes(plexName, slanted, typeface.Italic)
	file.SetFont(plexName, upright, headFootSize)
	return file
}

// plexWidths has the width of each character in 1/1000 of the type size, as the
// library writes it into the file; for a character that the face does not have
// it is the width of the box that stands in its place.
var plexWidths = sync.OnceValue(func() map[string][]uint16 {
	file := newPDF()
	widths := map[string][]uint16{}
	for _, style := range []string{upright, semiBold, slanted} {
		file.SetFontStyle(style)
		list := make([]uint16, lastPlane+1)
		for c := range list {
			list[c] = uint16(file.GetStringSymbolWidth(string(rune(c))))
		}
		widths[style] = list
	}
	return widths
})

// lastPlane is the last character that the library can write.
const lastPlane = 0xFFFF

func plexAdvance(c rune, bold, italic bool) int {
	if isShape(c) {
		return shapeWidth * 1000
	}
	if c > lastPlane || c < 0 {
		c = unicode.ReplacementChar
	}
	return int(plexWidths()[plexStyle(bold, italic)][c])
}

// printable is a text as it can be drawn: composed, without control and
// direction signs. A character that the face does not have shows as a box; so
// do those beyond the first plane, such as emoji. Letters that are written from
// the right stand in the order in which they were typed.
func printable(text string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == '\n' || c == '\u00a0':
			return c
		case unicode.IsSpace(c):
			return ' '
		case !unicode.IsGraphic(c) || unicode.Is(unicode.Variation_Selector, c):
			return -1
		case c > lastPlane:
			return unicode.ReplacementChar
		}
		return c
	}, norm.NFC.String(text))
}

// clean makes all texts of a book printable.
func (b *book) clean() {
	for _, text := range []*string{&b.title, &b.author, &b.about} {
		*text = printable(*text)
	}
	for _, s := range b.sheets {
		for _, text := range []*string{&s.name, &s.page.header.left, &s.page.header.right, &s.page.footer.left, &s.page.footer.right} {
			*text = printable(*text)
		}
		for _, r := range s.rows {
			for i := range r.cells {
				c := &r.cells[i]
				if text, ok := c.value.(string); ok {
					c.value = printable(text)
				}
				for j := range c.runs {
					c.runs[j].text = printable(c.runs[j].text)
				}
			}
		}
	}
}
