// Package planning is the class area of the window: where the class is held,
// with which kit, for whom, and in which batches, one page at a time, with the
// totals of the whole class beside it.
package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
)

// Area is the class area.
type Area struct {
	session *session.Session
	window  fyne.Window

	// OpenBatch is called to look at the selected batch worked through; nil
	// where there is nowhere to look.
	OpenBatch func()

	pages   []page
	shown   string // id of the page on view
	outline *outline
	totals  *totals
	content fyne.CanvasObject
	busy    bool // the area is filling its own entries
}

// page is one page of entries.
type page interface {
	id() string
	object() fyne.CanvasObject
	show(c class.Class)
}

// New makes the area for a session; the window is where its dialogs open.
func New(s *session.Session, w fyne.Window) *Area {
	a := &Area{session: s, window: w}
	a.pages = []page{newClassPage(a), newPlacePage(a), newPeoplePage(a), newKitPage(a), newBatchPage(a)}
	a.outline = newOutline(a)
	a.totals = newTotals(a)
	stack := container.NewStack()
	for _, p := range a.pages {
		stack.Add(container.NewVScroll(look.Inset(24, 18, p.object())))
	}
	a.content = container.New(&threeColumns{left: 228, middle: 400, right: 250}, a.outline.object(), stack, a.totals.object())
	a.OpenPage("class")
	s.Subscribe(a.Refresh)
	a.Refresh()
	return a
}

// Content is the area as one object.
func (a *Area) Content() fyne.CanvasObject { return a.content }

// Refresh shows the class as it stands in the session.
func (a *Area) Refresh() {
	a.busy = true
	defer func() { a.busy = false }()
	c := a.session.Class()
	if a.shown == "batch" && len(c.Batches) == 0 {
		a.OpenPage("class")
	}
	for _, p := range a.pages {
		p.show(c)
	}
	a.outline.show(c)
	a.totals.show()
}

// OpenPage shows one page: class, place, people, kit or batch.
func (a *Area) OpenPage(id string) {
	look.CommitFocused(a.window.Canvas())
	a.shown = id
	stack := a.content.(*fyne.Container).Objects[1].(*fyne.Container)
	for i, p := range a.pages {
		if p.id() == id {
			stack.Objects[i].Show()
		} else {
			stack.Objects[i].Hide()
		}
	}
	a.outline.mark()
}

// openBatch shows the page of a batch.
func (a *Area) openBatch(i int) {
	look.CommitFocused(a.window.Canvas())
	a.session.Select(i)
	a.OpenPage("batch")
}

// change changes the class, except while the area fills its own entries.
func (a *Area) change(label string, change func(*class.Class)) error {
	if a.busy {
		return nil
	}
	return a.session.Change(label, change)
}
