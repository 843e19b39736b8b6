// Package projector is the view of what is being worked on that a whole room
// reads: the batch on view in the window, of the plan or of a trial, on a few
// pages that each answer one question, and the question from the room that is
// open. It is a pure view: it holds nothing that
// takes the focus, and changes nothing.
//
// Everything is set from the size of the view, as large as it allows: a text
// gets smaller only where its page would not hold it.
package projector

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/session"
)

// View is the content of the window for the projector.
type View struct {
	// Content is what that window shows.
	Content fyne.CanvasObject

	session *session.Session
	now     shown
	pages   []page // all that there are
	open    page   // the one that is read
	asked   page   // that of the open question
	times   int    // how often a question was opened
	leave   func() // the session

	stage *stage
	over  *container.ThemeOverride
	sheet *sheet
}

// New makes a view of a session, which it listens to until it is closed.
func New(s *session.Session) *View {
	v := &View{session: s, stage: newStage()}
	v.asked = newQuestion(v.stage)
	_, v.times = s.Asked()
	v.pages = []page{
		newNothing(v.stage), newTreatment(v.stage), newKettle(v.stage), newCurve(v.stage),
		newIceBath(v.stage), newFreezer(v.stage), newBeside(v.stage), v.asked,
	}
	v.sheet = newSheet(v.stage)
	v.over = container.NewThemeOverride(v.sheet.box, v.stage)
	v.Content = v.over
	v.leave = s.Subscribe(v.show)
	v.show()
	return v
}

// Close ends the view: it follows the session no longer.
func (v *View) Close() { v.leave() }

// Page is the name of the page on view.
func (v *View) Page() string { return v.open.name() }

// Pages are the names of the pages that there are for the batch on view.
func (v *View) Pages() []string {
	var names []string
	for _, p := range v.there() {
		names = append(names, p.name())
	}
	return names
}

// Next turns to the next page; on the last it stays.
func (v *View) Next() { v.Turn(v.Index() + 1) }

// Previous turns back to the page before; on the first it stays.
func (v *View) Previous() { v.Turn(v.Index() - 1) }

// TypedKey turns the pages by the keys of a clicker, and says whether the key
// was one of them.
func (v *View) TypedKey(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyPageDown, fyne.KeyRight:
		v.Next()
	case fyne.KeyPageUp, fyne.KeyLeft:
		v.Previous()
	case fyne.KeyHome:
		v.Turn(0)
	case fyne.KeyEnd:
		v.Turn(len(v.pages))
	default:
		return false
	}
	return true
}

// there are the pages for the batch on view.
func (v *View) there() []page {
	return slices.DeleteFunc(slices.Clone(v.pages), func(p page) bool { return !p.applies(v.now) })
}

// Index is the place of the page on view among Pages.
func (v *View) Index() int { return slices.Index(v.there(), v.open) }

// Turn opens the page at a place, the last where there are fewer.
func (v *View) Turn(to int) {
	there := v.there()
	open := there[max(0, min(to, len(there)-1))]
	if open != v.open {
		v.openPage(open)
	}
}

// TurnToQuestion turns to the open question, where there is one.
func (v *View) TurnToQuestion() {
	if v.asked.applies(v.now) {
		v.openPage(v.asked)
	}
}

// show brings the view up to date with the session. The page stays where it
// still applies, unless a question was opened.
func (v *View) show() {
	v.now = shownOf(v.session)
	there := v.there()
	open := v.open
	if _, times := v.session.Asked(); times != v.times {
		v.times, open = times, v.asked
	}
	if !slices.Contains(there, open) {
		open = there[0]
	}
	v.openPage(open)
}

func (v *View) openPage(open page) {
	there := v.there()
	v.open = open
	v.sheet.turn(open.body())
	open.show(v.now)
	v.sheet.say(v.now, open.name(), slices.Index(there, open)+1, len(there))
	v.over.Refresh()
}
