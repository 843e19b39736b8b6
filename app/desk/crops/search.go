package crops

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// searchEntry searches as it is typed into. Down and Enter go into the table,
// Escape empties it.
type searchEntry struct {
	widget.Entry
	into func()
}

func newSearchEntry(into func()) *searchEntry {
	e := &searchEntry{into: into}
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey is for the toolkit.
func (e *searchEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnter:
		e.into()
	case fyne.KeyEscape:
		e.SetText("")
	default:
		e.Entry.TypedKey(key)
	}
}
