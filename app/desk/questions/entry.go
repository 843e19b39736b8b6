package questions

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// searchEntry is where the words are typed. It keeps the focus while the list is
// walked.
type searchEntry struct {
	widget.Entry
	area *Area
}

func newSearchEntry(a *Area) *searchEntry {
	e := &searchEntry{area: a}
	e.ExtendBaseWidget(e)
	e.SetPlaceHolder(look.Say("Ask in a few words"))
	e.OnChanged = func(string) { a.searched() }
	return e
}

// pageStep is by how many questions Page Down walks.
const pageStep = 6

// TypedKey walks the list and opens from it; all other keys are the entry's.
func (e *searchEntry) TypedKey(key *fyne.KeyEvent) {
	l := e.area.list
	switch key.Name {
	case fyne.KeyDown:
		l.walk(1)
	case fyne.KeyUp:
		l.walk(-1)
	case fyne.KeyPageDown:
		l.walk(pageStep)
	case fyne.KeyPageUp:
		l.walk(-pageStep)
	case fyne.KeyReturn, fyne.KeyEnter:
		if l.marked != "" {
			e.area.Open(l.marked)
			e.selectAll() // the next question replaces this one
		}
	case fyne.KeyEscape:
		e.SetText("")
	default:
		e.Entry.TypedKey(key)
	}
}

// FocusGained shows which question Enter opens.
func (e *searchEntry) FocusGained() {
	e.Entry.FocusGained()
	e.area.list.setWalking(true)
}

// FocusLost is for the toolkit.
func (e *searchEntry) FocusLost() {
	e.Entry.FocusLost()
	e.area.list.setWalking(false)
}

func (e *searchEntry) selectAll() { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }
