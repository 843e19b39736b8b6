package questions

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

// line is one question in a list. It is a look.Line whose text wraps, because
// questions that are cut short cannot be told apart.
type line struct {
	*look.Line
	text   *look.Text
	box    *fyne.Container
	marked bool
}

func newLine(opened func()) *line {
	l := &line{Line: look.NewLine(opened), text: look.Body("")}
	l.SetText("", "")
	l.box = container.NewStack(l.Line, look.Inset(lineInset, 5, l.text))
	return l
}

// lineInset is the white beside the text of a look.Line; what stands flush with
// a list has the same.
const lineInset = 20

func (l *line) choose(chosen bool) {
	if l.Chosen() != chosen {
		l.SetChosen(chosen)
	}
}

// mark draws the ring of the focus around the line that Enter opens while the
// entry has the focus.
func (l *line) mark(marked bool) {
	switch {
	case marked == l.marked:
		return
	case marked:
		l.FocusGained()
	default:
		l.FocusLost()
	}
	l.marked = marked
}

// smallHeading stands over a group of lines.
func smallHeading(text string) *look.Text {
	return look.NewText(text, look.SizeSmall, look.InkSoft, fyne.TextStyle{Bold: true}).Wrapped()
}
