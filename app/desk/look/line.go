package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Line is one line of a short list that is built once: a name, a detail under
// it, an icon at the right. A click, Enter or Space opens what it stands for.
type Line struct {
	widget.BaseWidget
	// Opened is called in the thread of the window.
	Opened func()

	name, detail     *Text
	icon             *canvas.Image
	ground           *ground
	chosen           bool
	hovered, focused bool
}

var (
	_ fyne.Tappable     = (*Line)(nil)
	_ fyne.Focusable    = (*Line)(nil)
	_ desktop.Hoverable = (*Line)(nil)
)

// NewLine makes a line.
func NewLine(opened func()) *Line {
	l := &Line{
		Opened: opened,
		name:   NewText("", SizeText, Ink, fyne.TextStyle{}).Clipped(),
		detail: NewText("", SizeSmall, InkSoft, fyne.TextStyle{}).Clipped(),
		icon:   Icon(nil, 18), ground: newGround(),
	}
	l.icon.Hide()
	l.ExtendBaseWidget(l)
	return l
}

// SetText says the name and the detail.
func (l *Line) SetText(name, detail string) {
	l.name.SetText(name)
	l.detail.SetText(detail)
	Show(l.detail, detail != "")
}

// Text is the name and the detail.
func (l *Line) Text() (name, detail string) { return l.name.Text(), l.detail.Text() }

// SetIcon shows an icon at the right; nil shows none.
func (l *Line) SetIcon(icon fyne.Resource) {
	l.icon.Resource = icon
	Show(l.icon, icon != nil)
	l.icon.Refresh()
}

// SetChosen says whether this is the line that is open.
func (l *Line) SetChosen(chosen bool) {
	l.chosen = chosen
	l.Refresh()
}

// Chosen says whether this is the line that is open.
func (l *Line) Chosen() bool { return l.chosen }

// CreateRenderer is for the toolkit.
func (l *Line) CreateRenderer() fyne.WidgetRenderer {
	text := container.NewBorder(nil, nil, nil, container.NewCenter(l.icon), Column(0, l.name, l.detail))
	l.paint()
	return Painted(container.NewStack(l.ground.box, Inset(20, 5, text)), l.paint)
}

func (l *Line) paint() {
	l.ground.paint(l.chosen)
	if l.hovered && !l.chosen {
		l.ground.fill.FillColor = Tint(Ink, 0x0A)
	}
	l.ground.fill.StrokeWidth = 0
	if l.focused {
		l.ground.fill.StrokeColor, l.ground.fill.StrokeWidth = Color(Ink), 1.5
	}
	l.ground.fill.Refresh()
}

// Tapped opens the line.
func (l *Line) Tapped(*fyne.PointEvent) { l.Opened() }

// TypedKey opens the line on Enter and Space.
func (l *Line) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		l.Opened()
	}
}

// TypedRune is for the toolkit.
func (l *Line) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (l *Line) FocusGained() {
	l.focused = true
	l.Refresh()
	Reveal(l)
}

// FocusLost is for the toolkit.
func (l *Line) FocusLost() { l.focused = false; l.Refresh() }

// MouseIn is for the toolkit.
func (l *Line) MouseIn(*desktop.MouseEvent) { l.hovered = true; l.Refresh() }

// MouseMoved is for the toolkit.
func (l *Line) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (l *Line) MouseOut() { l.hovered = false; l.Refresh() }
