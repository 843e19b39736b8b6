// Package textfits helps the tests of the window: it looks for text that
// stands out of what holds it.
package textfits

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// slack is by how much text may stand out: its box is higher than its letters.
const slackWide, slackHigh = 1, 4

// Check asks that every text of a window stands inside all that holds it, up
// to the window or to what scrolls or clips it, and that nothing that scrolls
// only up and down is wider than its view. It reports how many texts it saw,
// and fails where there are none.
func Check(t testing.TB, w fyne.Window) int {
	t.Helper()
	s := spill{t: t}
	s.walk(w.Content(), fyne.Position{}, nil)
	if s.seen == 0 {
		t.Error("there is no text")
	}
	return s.seen
}

// All are the texts under an object, in the order in which they are drawn.
func All(o fyne.CanvasObject) string {
	var s spill
	s.walk(o, fyne.Position{}, nil)
	return strings.Join(s.said, " ")
}

type spill struct {
	t    testing.TB // nil: only collect
	seen int
	said []string
}

// box is the place of an object in the window.
type box struct {
	of   fyne.CanvasObject
	at   fyne.Position
	size fyne.Size
}

func (s *spill) walk(o fyne.CanvasObject, at fyne.Position, holders []box) {
	if !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	here := append(holders[:len(holders):len(holders)], box{o, at, o.Size()})
	switch x := o.(type) {
	case *canvas.Text:
		s.text(x, at, here)
	case *fyne.Container:
		s.walkAll(x.Objects, at, here)
	case *container.Scroll:
		if x.Direction == container.ScrollVerticalOnly && x.Content.Size().Width > x.Size().Width+slackWide {
			s.complain("what scrolls is %.0f wide in a view of %.0f", x.Content.Size().Width, x.Size().Width)
		}
		s.walk(x.Content, at, nil)
	case fyne.Widget:
		if strings.HasSuffix(fmt.Sprintf("%T", x), ".clip") {
			here = nil
		}
		s.walkAll(test.WidgetRenderer(x).Objects(), at, here)
	}
}

func (s *spill) walkAll(objects []fyne.CanvasObject, at fyne.Position, holders []box) {
	for _, o := range objects {
		s.walk(o, at, holders)
	}
}

func (s *spill) text(x *canvas.Text, at fyne.Position, holders []box) {
	if strings.TrimSpace(x.Text) == "" {
		return
	}
	s.seen++
	s.said = append(s.said, x.Text)
	need := x.MinSize()
	switch free := x.Size().Width - need.Width; x.Alignment {
	case fyne.TextAlignCenter:
		at.X += free / 2
	case fyne.TextAlignTrailing:
		at.X += free
	}
	for i := len(holders) - 1; i >= 0; i-- {
		h := holders[i]
		if h.size.IsZero() { // a mere group, such as the headings of the toolkit's table
			continue
		}
		if at.X < h.at.X-slackWide || at.X+need.Width > h.at.X+h.size.Width+slackWide ||
			at.Y < h.at.Y-slackHigh || at.Y+need.Height > h.at.Y+h.size.Height+slackHigh {
			s.complain("“%s” at %v, %v, stands out of %T at %v, %v", x.Text, at, need, h.of, h.at, h.size)
			return
		}
	}
}

func (s *spill) complain(format string, values ...any) {
	if s.t != nil {
		s.t.Helper()
		s.t.Errorf(format, values...)
	}
}
