package look

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Field is a labelled entry for one value, an amount or a text. What is typed
// stays as it is while somebody types; Enter and leaving the field hand it
// over, Escape brings the last good value back. A value that cannot be used
// stays in the field with the reason under it, and nothing else changes.
type Field struct {
	widget.BaseWidget

	// Commit takes the typed text; its error is shown under the field. It is
	// called in the thread of the window, and only where the text changed.
	Commit func(text string) error
	// Typing hears of every keystroke, for a surface that follows while
	// somebody types; nothing is handed over by it. It may be nil.
	Typing func(text string)

	label *Text
	hint  string
	under *Text
	entry *fieldEntry
	value string            // the last good value, as shown
	shown func(text string) // hears of every text that comes to stand in the field; may be nil
	body  *fyne.Container
}

// NewField makes a field. The hint says what is allowed, such as "3 lb, 8 oz";
// it stands under the field until there is something more urgent to say.
func NewField(label, hint string, commit func(text string) error) *Field {
	return newField(label, hint, commit, false)
}

// NewNotes makes a field of several lines; Enter starts a new line in it.
func NewNotes(label, hint string, commit func(text string) error) *Field {
	return newField(label, hint, commit, true)
}

// NewSentence makes a field for a text that wraps over two lines; Enter hands it
// over as in any other field.
func NewSentence(label, hint string, commit func(text string) error) *Field {
	f := newField(label, hint, commit, true)
	f.entry.SetMinRowsVisible(2)
	f.entry.enterDone = true
	return f
}

// NewQuantity makes a field for an amount with its unit.
func NewQuantity(label, hint string, commit func(text string) error) *Field {
	return newField(label, hint, commit, false)
}

func newField(label, hint string, commit func(string) error, lines bool) *Field {
	f := &Field{Commit: commit, label: Label(label), hint: hint, under: Small(hint)}
	f.entry = &fieldEntry{field: f}
	f.entry.ExtendBaseWidget(f.entry)
	f.entry.OnChanged = f.typed
	f.entry.MultiLine = lines
	if lines {
		f.entry.Wrapping = fyne.TextWrapWord
		f.entry.SetMinRowsVisible(4)
	}
	Show(f.label, label != "")
	Show(f.under, hint != "")
	f.body = Column(2, f.label, f.entry, f.under)
	f.ExtendBaseWidget(f)
	return f
}

func (f *Field) typed(text string) {
	if f.shown != nil {
		f.shown(text)
	}
	if f.Typing != nil {
		f.Typing(text)
	}
}

// SetValue shows the value of the class. Text that is being typed, or was
// refused, stays until it is committed or taken back.
func (f *Field) SetValue(text string) {
	if text == f.value {
		return
	}
	f.value = text
	f.entry.SetText(text)
	f.complain(nil)
}

// Label is what the field is called.
func (f *Field) Label() string { return f.label.Text() }

// Text is what stands in the field at this moment.
func (f *Field) Text() string { return f.entry.Text }

// Value is the last good value.
func (f *Field) Value() string { return f.value }

// Dirty says whether something is typed that was not handed over.
func (f *Field) Dirty() bool { return f.entry.Text != f.value }

// Problem is the sentence under the field where the entry was refused.
func (f *Field) Problem() string {
	if f.under.segment.Style.ColorName == Stop {
		return f.under.Text()
	}
	return ""
}

// SetPlaceHolder shows a text while the field is empty.
func (f *Field) SetPlaceHolder(text string) { f.entry.SetPlaceHolder(text) }

// Entry is the entry inside, for focus and tests.
func (f *Field) Entry() fyne.Focusable { return f.entry }

// SetText types into the field without handing it over.
func (f *Field) SetText(text string) { f.entry.SetText(text) }

// Done hands the typed text over, and says whether it was taken.
func (f *Field) Done() bool {
	if !f.Dirty() {
		f.complain(nil)
		return true
	}
	typed := f.entry.Text
	if f.Commit != nil {
		if err := f.Commit(typed); err != nil {
			f.complain(err)
			return false
		}
	}
	if f.entry.Text == typed { // Commit may have shown it in its own form
		f.value = typed
	}
	f.complain(nil)
	return true
}

// Restore brings the last good value back.
func (f *Field) Restore() {
	f.entry.SetText(f.value)
	f.complain(nil)
}

// complain shows an error, or the hint where there is none.
func (f *Field) complain(err error) {
	f.markRefused(err != nil)
	text, ink := f.hint, InkSoft
	if err != nil {
		text, ink = Sentence(voice.Error(err)), Stop
		if !strings.HasSuffix(text, ".") {
			text += "."
		}
	}
	changed := f.under.Text() != text
	f.under.SetText(text)
	f.under.SetInk(ink)
	Show(f.under, text != "")
	if changed {
		f.body.Refresh()
		f.Refresh()
	}
}

// CreateRenderer is for the toolkit.
func (f *Field) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(f.body) }

// fieldEntry is the entry of a field: it hands over on Enter and on leaving.
type fieldEntry struct {
	widget.Entry
	field     *Field
	enterDone bool          // Enter hands over although there are several lines
	steps     func(up bool) // Up and Down step the amount; nil where they do not
	focused   bool
}

// CreateRenderer is for the toolkit.
func (e *fieldEntry) CreateRenderer() fyne.WidgetRenderer {
	if e.MultiLine {
		return newRinged(e.Entry.CreateRenderer(), &e.focused)
	}
	return newRinged(e.Entry.CreateRenderer(), &e.focused, newWheel(e))
}

// AcceptsTab says that Tab leaves the entry, also one of several lines.
func (e *fieldEntry) AcceptsTab() bool { return false }

// FocusGained is for the toolkit.
func (e *fieldEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	Reveal(e.field)
}

// FocusLost is for the toolkit.
func (e *fieldEntry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
	e.field.Done()
}

// TypedKey is for the toolkit.
func (e *fieldEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyTab: // goes on to the next, and never into the text
	case fyne.KeyEscape:
		e.field.Restore()
	case fyne.KeyReturn, fyne.KeyEnter:
		if e.MultiLine && !e.enterDone {
			e.Entry.TypedKey(key)
			return
		}
		e.field.Done()
	case fyne.KeyUp, fyne.KeyDown:
		if e.steps == nil {
			e.Entry.TypedKey(key)
			return
		}
		e.steps(key.Name == fyne.KeyUp)
	default:
		e.Entry.TypedKey(key)
	}
}

// CommitFocused hands over what is being typed anywhere in the window. The
// toolkit leaves the focus in an entry when a button is clicked, so whatever
// saves, exports or leaves an area calls this first. It says false where the
// entry was refused.
func CommitFocused(c fyne.Canvas) bool {
	if c == nil {
		return true
	}
	if e, ok := c.Focused().(*fieldEntry); ok {
		return e.field.Done()
	}
	return true
}

// Row sets fields side by side, each from the top and in equal shares.
func Row(objects ...fyne.CanvasObject) *fyne.Container {
	shares := make([]float32, len(objects))
	for i := range shares {
		shares[i] = 1
	}
	return Columns(16, shares, objects...)
}

// Labelled puts a label over an object that is not a field, such as a choice,
// so that it stands in line with fields.
func Labelled(label string, o fyne.CanvasObject) *fyne.Container {
	return Column(2, Label(label), container.NewStack(o))
}

// RedoTyping brings back what UndoTyping took in an entry that can, and says
// whether it did.
func RedoTyping(c fyne.Canvas) bool {
	e, ok := c.Focused().(interface{ RedoTyping() bool })
	return ok && e.RedoTyping()
}

// UndoTyping takes back the last of what is being typed in the window and was
// not handed over, and says whether there was something.
func UndoTyping(c fyne.Canvas) bool {
	if other, ok := c.Focused().(interface{ UndoTyping() bool }); ok {
		return other.UndoTyping()
	}
	e, ok := c.Focused().(*fieldEntry)
	if !ok || !e.field.Dirty() {
		return false
	}
	typed := e.Text
	e.Undo()
	if e.Text == typed { // the entry has forgotten how it came to this
		e.field.Restore()
	} else if !e.field.Dirty() {
		e.field.complain(nil)
	}
	return true
}
