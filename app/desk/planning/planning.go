// Package planning is the class area of the window: where the class is held,
// with which kit, for whom, and in which batches, one page at a time, with the
// totals of the whole class beside it.
package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
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

	pages    []page
	shown    string // id of the page on view
	outline  *outline
	totals   *totals
	content  fyne.CanvasObject
	follower *look.Follower
	busy     bool // the area is filling its own entries
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
		stack.Add(look.VScroll(24, 18, p.object()))
	}
	a.content = container.New(&threeColumns{left: 228, middle: 400, right: 250}, a.outline.object(), stack, a.totals.object())
	a.OpenPage("class")
	a.follower = look.Follow(a.content, a.Refresh)
	s.Subscribe(a.follower.Changed)
	a.Refresh()
	return a
}

// Shown is called when the area was hidden and is shown again.
func (a *Area) Shown() { a.follower.Shown() }

// Content is the area as one object.
func (a *Area) Content() fyne.CanvasObject { return a.content }

// Refresh shows the class as it stands in the session.
func (a *Area) Refresh() {
	a.busy = true
	defer func() { a.busy = false }()
	c := a.session.Class()
	if a.shown == "batch" && len(c.Batches) == 0 {
		a.open("class")
	}
	for _, p := range a.pages {
		if p.id() == a.shown { // the others when they are opened
			p.show(c)
		}
	}
	a.outline.show(c)
	a.totals.show()
}

// OpenPage shows one page: class, place, people, kit or batch. Where what is
// being typed is refused the page stays, with the sentence under the entry.
func (a *Area) OpenPage(id string) { a.committed(func() { a.open(id) }) }

// committed does something after what is being typed was handed over, and not
// where it was refused. The focus leaves the entry: it may be on a page that
// goes out of view.
func (a *Area) committed(do func()) {
	if c := a.window.Canvas(); look.CommitFocused(c) {
		if c != nil {
			if _, stays := c.Focused().(*look.Line); !stays {
				c.Unfocus()
			}
		}
		do()
	}
}

// must says why something was refused.
func (a *Area) must(err error) {
	if err != nil {
		ask.Dialogs{Window: a.window}.Problem(look.Say("That cannot be done"), err)
	}
}

func (a *Area) open(id string) {
	a.shown = id
	stack := a.content.(*fyne.Container).Objects[1].(*fyne.Container)
	for i, p := range a.pages {
		if p.id() == id {
			a.fill(p)
			stack.Objects[i].Show()
		} else {
			stack.Objects[i].Hide()
		}
	}
	a.outline.mark()
}

// fill shows the class on a page.
func (a *Area) fill(p page) {
	a.busy = true
	defer func() { a.busy = false }()
	p.show(a.session.Class())
}

// openBatch shows the page of a batch.
func (a *Area) openBatch(i int) {
	a.committed(func() {
		a.session.Select(i)
		a.open("batch")
	})
}

// change changes the class, except while the area fills its own entries.
func (a *Area) change(label string, change func(*class.Class)) error {
	if a.busy {
		return nil
	}
	return a.session.Change(label, change)
}
