package questions

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// stepped is a text that is set in the largest of some sizes for which there is
// room, and in which no unit leaves its figure. The toolkit would break lines
// there, so the breaks are made here, for the width that the text gets.
type stepped struct {
	box   *fyne.Container
	said  string
	style fyne.TextStyle
	sizes []fyne.ThemeSizeName // the largest first
	texts []*look.Text         // one in each size
	at    int
}

// The sizes of an answer and of the question over it, step by step; the largest
// is for a wide window.
var (
	answerSizes   = []fyne.ThemeSizeName{look.SizeLarge, look.SizeFigure, look.SizeHeading}
	questionSizes = []fyne.ThemeSizeName{look.SizeFigure, look.SizeHeading, look.SizeHeading}
)

func newStepped(style fyne.TextStyle, sizes []fyne.ThemeSizeName) *stepped {
	s := &stepped{style: style, sizes: sizes}
	s.box = &fyne.Container{Layout: s}
	for _, size := range sizes {
		text := look.NewText("", size, look.Ink, style).Wrapped()
		s.texts = append(s.texts, text)
		s.box.Objects = append(s.box.Objects, text)
	}
	s.step(0)
	return s
}

// step sets the text in one of its sizes; it has to be laid out after that.
func (s *stepped) step(at int) {
	s.at = at
	for i, text := range s.texts {
		look.Show(text, i == at)
	}
}

// Layout is for the toolkit.
func (s *stepped) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	pt := look.Size(s.sizes[s.at])
	text := s.texts[s.at]
	text.SetText(broken(s.said, size.Width, func(part string) float32 { return fyne.MeasureText(part, pt, s.style).Width }))
	text.Resize(size)
}

// MinSize is for the toolkit.
func (s *stepped) MinSize([]fyne.CanvasObject) fyne.Size { return s.texts[s.at].MinSize() }

// broken is a text in lines of a width, none of which ends between a figure and
// its unit.
func broken(text string, width float32, measure func(string) float32) string {
	var out strings.Builder
	space, used := measure(" "), float32(0)
	for i, part := range unbreakable(text) {
		wide := measure(part)
		switch {
		case i == 0:
		case used+space+wide > width:
			out.WriteByte('\n')
			used = 0
		default:
			out.WriteByte(' ')
			used += space
		}
		out.WriteString(part)
		used += wide
	}
	return out.String()
}

// unbreakable takes a text apart where a line may end: between words, but not
// after a figure.
func unbreakable(text string) []string {
	var parts []string
	for i, word := range strings.Split(text, " ") {
		if i > 0 && endsInFigure(parts[len(parts)-1]) {
			parts[len(parts)-1] += " " + word
			continue
		}
		parts = append(parts, word)
	}
	return parts
}

func endsInFigure(part string) bool {
	last, _ := utf8.DecodeLastRuneInString(part)
	return unicode.IsNumber(last) // digits and fractions
}
