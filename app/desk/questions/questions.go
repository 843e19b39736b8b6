// Package questions is the area for what people in the room ask: a few words
// typed at the left find the question, and its short answer stands at the right
// in type that can be read when it is projected, with the numbers of the batch
// on view and with its source.
package questions

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// Area is the area of questions.
type Area struct {
	// Content is what the window shows.
	Content fyne.CanvasObject

	session  *session.Session
	follower *look.Follower
	search   *searchEntry
	list     *list
	answer   *answer
}

// New makes the area for a session, which it follows.
func New(s *session.Session) *Area {
	go content.Ask(s.Voice().Language(), "", "") // makes the index of the search, while the widgets are made
	a := &Area{session: s}
	a.search = newSearchEntry(a)
	a.list = newList(a.Open)
	a.list.chosen, _ = s.Asked()
	a.answer = newAnswer(a.Open)
	head := look.Inset(lineInset, 12, look.Column(4, a.search, look.Small(look.Say(keysHint))))
	a.Content = container.New(beside{}, head, look.Upright(), a.answer.content, a.list.scroll)
	a.follower = look.Follow(a.Content, a.show)
	s.Subscribe(a.follower.Changed)
	a.show()
	return a
}

// Shown is called when the area is shown again.
func (a *Area) Shown() { a.follower.Shown() }

// keysHint says how the list is used from the entry.
var keysHint = words.Key("Up and Down choose, Enter opens.")

// Focus puts the cursor into the search entry and selects what stands in it.
func (a *Area) Focus(c fyne.Canvas) {
	c.Focus(a.search)
	a.search.selectAll()
}

// Open opens a question, whatever is typed. An id that no question has changes
// nothing.
func (a *Area) Open(id string) {
	if _, ok := questionOf(a.session, id); !ok {
		return
	}
	a.list.choose(id)
	a.session.Ask(id) // shows it, here and on the projector
	a.answer.scroll.ScrollToTop()
}

// Answer is what is read: the question, its answer, and the sentence with the
// numbers of the batch on view; "" for what is not there.
func (a *Area) Answer() (question, answer, here string) {
	open, _ := Open(a.session)
	return open.Asks, open.Says, open.Here
}

// Sources say what the answer and the sentence of the batch rest on. Minutes
// are never shown without the second.
func (a *Area) Sources() (answer, here string) {
	open, _ := Open(a.session)
	return open.Source, open.Rests
}

// show brings the area up to date with the session. The open question stays.
func (a *Area) show() {
	now := shownOf(a.session)
	a.list.show(now.find(a.typed()))
	a.answer.show(now)
}

// searched lists what is found for the words in the entry.
func (a *Area) searched() {
	a.list.marked = ""
	a.list.show(shownOf(a.session).find(a.typed()))
	a.list.scroll.ScrollToTop()
}

func (a *Area) typed() string { return strings.TrimSpace(a.search.Text) }
