package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Button is the toolkit's button with a ring round it while it has the focus.
// Enter presses it as Space does, and it is scrolled into view.
type Button struct {
	widget.Button
	// Escape leaves the dialog that the button stands in; nil where it stands in
	// none.
	Escape func()

	focused bool
}

// NewButton makes a button.
func NewButton(label string, tapped func()) *Button { return NewButtonWithIcon(label, nil, tapped) }

// NewButtonWithIcon makes a button with an icon; the label may be "".
func NewButtonWithIcon(label string, icon fyne.Resource, tapped func()) *Button {
	b := &Button{}
	b.Text, b.Icon, b.OnTapped = label, icon, tapped
	b.ExtendBaseWidget(b)
	return b
}

// CreateRenderer is for the toolkit.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(b.Button.CreateRenderer(), &b.focused)
}

// FocusGained is for the toolkit.
func (b *Button) FocusGained() {
	b.focused = true
	b.Button.FocusGained()
	Reveal(b)
}

// FocusLost is for the toolkit.
func (b *Button) FocusLost() {
	b.focused = false
	b.Button.FocusLost()
}

// TypedKey is for the toolkit.
func (b *Button) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape:
		if b.Escape != nil {
			b.Escape()
		}
	case fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.Button.TypedKey(key)
	}
}

// Check is the toolkit's check box; it is scrolled into view when it gets the
// focus.
type Check struct {
	widget.Check
	focused bool
}

// NewCheck makes a check box.
func NewCheck(label string, changed func(on bool)) *Check {
	c := &Check{}
	c.Text, c.OnChanged = label, changed
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer is for the toolkit.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(c.Check.CreateRenderer(), &c.focused)
}

// FocusGained is for the toolkit.
func (c *Check) FocusGained() {
	c.focused = true
	c.Check.FocusGained()
	Reveal(c)
}

// FocusLost is for the toolkit.
func (c *Check) FocusLost() {
	c.focused = false
	c.Check.FocusLost()
}

// Select is the toolkit's list that opens; it is scrolled into view when it gets
// the focus.
type Select struct {
	widget.Select
	focused bool
}

// NewSelect makes a list that opens.
func NewSelect(options []string, changed func(string)) *Select {
	s := &Select{}
	s.Options, s.OnChanged = options, changed
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is for the toolkit.
func (s *Select) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(s.Select.CreateRenderer(), &s.focused)
}

// FocusGained is for the toolkit.
func (s *Select) FocusGained() {
	s.focused = true
	s.Select.FocusGained()
	Reveal(s)
}

// FocusLost is for the toolkit.
func (s *Select) FocusLost() {
	s.focused = false
	s.Select.FocusLost()
}
