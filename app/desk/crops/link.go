package crops

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// link is a text in the record that leads somewhere: a click, Enter or Space
// opens it. It wraps, with a detail under it.
type link struct {
	widget.BaseWidget
	open             func() // nil: this is where one is
	text, detail     *look.Text
	ground           *canvas.Rectangle
	hovered, focused bool
}

var (
	_ fyne.Tappable     = (*link)(nil)
	_ fyne.Focusable    = (*link)(nil)
	_ desktop.Hoverable = (*link)(nil)
)

// newLink makes a link.
func newLink(text, detail string, open func()) *link {
	l := &link{open: open, text: look.Body(text), detail: look.Small(detail), ground: canvas.NewRectangle(color.Transparent)}
	look.Show(l.detail, detail != "")
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer is for the toolkit.
func (l *link) CreateRenderer() fyne.WidgetRenderer {
	l.paint()
	return look.Painted(container.NewStack(l.ground, look.Inset(6, 3, look.Column(0, l.text, l.detail))), l.paint)
}

func (l *link) paint() {
	l.ground.FillColor, l.ground.StrokeColor, l.ground.StrokeWidth = look.Tint(look.Ink, 0x08), color.Transparent, 0
	switch {
	case l.open == nil:
		l.ground.FillColor = look.Tint(look.Ink, 0x14)
	case l.hovered:
		l.ground.FillColor = look.Tint(look.Ink, 0x10)
	}
	if l.focused {
		l.ground.StrokeColor, l.ground.StrokeWidth = look.Color(look.Ink), 1.5
	}
	l.ground.Refresh()
}

// Tapped opens the link.
func (l *link) Tapped(*fyne.PointEvent) {
	if l.open != nil {
		l.open()
	}
}

// TypedKey opens the link on Enter and Space.
func (l *link) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		l.Tapped(nil)
	}
}

// TypedRune is for the toolkit.
func (l *link) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (l *link) FocusGained() {
	l.focused = true
	l.Refresh()
	look.Reveal(l)
}

// FocusLost is for the toolkit.
func (l *link) FocusLost() { l.focused = false; l.Refresh() }

// MouseIn is for the toolkit.
func (l *link) MouseIn(*desktop.MouseEvent) { l.hovered = true; l.Refresh() }

// MouseMoved is for the toolkit.
func (l *link) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (l *link) MouseOut() { l.hovered = false; l.Refresh() }
