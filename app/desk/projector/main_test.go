package projector

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

func demo(t testing.TB) class.Class {
	t.Helper()
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// room is a view in a window, with the class of the demo.
type room struct {
	session *session.Session
	view    *View
	window  fyne.Window
}

func open(t testing.TB, v look.Variant, c class.Class, wide, high float32) *room {
	t.Helper()
	looktest.App(t, v)
	s := session.New(reference.Shipped(), c)
	view := New(s)
	return &room{s, view, looktest.Window(t, view.Content, wide, high)}
}

func equal[T comparable](t testing.TB, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// said is every text on view.
func (r *room) said() string { return textfits.All(r.view.Content) }

func (r *room) says(t testing.TB, texts ...string) {
	t.Helper()
	for _, text := range texts {
		if !strings.Contains(r.said(), text) {
			t.Errorf("page %s does not say “%s”: %s", r.view.Page(), text, r.said())
		}
	}
}

func (r *room) turnTo(t testing.TB, page string) {
	t.Helper()
	for i, name := range r.view.Pages() {
		if name == page {
			r.view.Turn(i)
			return
		}
	}
	t.Fatalf("there is no page %s: %v", page, r.view.Pages())
}

// eachPage does something with every page there is.
func (r *room) eachPage(do func(page string)) {
	for i, name := range r.view.Pages() {
		r.view.Turn(i)
		do(name)
	}
}

// letters are one text on view and where its letters stand, without the white
// above and below them.
type letters struct {
	text   string
	pt     float32
	at     fyne.Position
	size   fyne.Size
	drawn  bool // a label of a drawing
	strong bool
}

func (l letters) over(o letters) bool {
	return l.at.X < o.at.X+o.size.Width && o.at.X < l.at.X+l.size.Width && l.at.Y < o.at.Y+o.size.Height && o.at.Y < l.at.Y+l.size.Height
}

// lettersOf are the texts on view, and the places of the drawings.
func lettersOf(view fyne.CanvasObject) (texts, drawings []letters) {
	var walk func(o fyne.CanvasObject, at fyne.Position, drawn bool)
	walk = func(o fyne.CanvasObject, at fyne.Position, drawn bool) {
		if !o.Visible() {
			return
		}
		at = at.Add(o.Position())
		switch x := o.(type) {
		case *canvas.Text:
			if need := x.MinSize(); strings.TrimSpace(x.Text) != "" {
				texts = append(texts, letters{text: x.Text, pt: x.TextSize, drawn: drawn, strong: x.TextStyle.Bold,
					at: at.AddXY(0, need.Height*0.28), size: fyne.NewSize(need.Width, need.Height*0.5)})
			}
		case *fyne.Container:
			for _, one := range x.Objects {
				walk(one, at, drawn)
			}
		case fyne.Widget:
			if over, ok := x.(*container.ThemeOverride); ok && over != view {
				drawings = append(drawings, letters{text: fmt.Sprintf("%T", over.Content), at: at, size: over.Size()})
				drawn = true
			}
			for _, one := range test.WidgetRenderer(x).Objects() {
				walk(one, at, drawn)
			}
		}
	}
	walk(view, fyne.Position{}, false)
	return texts, drawings
}

// stands asks that no text stands out of its place or on another, and that
// every text can be read. A size is said for a view 1024 wide and 768 high.
func (r *room) stands(t testing.TB, where string) {
	t.Helper()
	before := t.Failed()
	size := r.view.Content.Size()
	k := min(size.Width/1024, size.Height/768)
	if n := textfits.Check(t, r.window); n < 4 {
		t.Errorf("%s: %d texts", where, n)
	}
	texts, drawings := lettersOf(r.view.Content)
	for i, a := range texts {
		for _, b := range texts[i+1:] {
			if a.over(b) {
				t.Errorf("%s: “%s” stands on “%s”", where, a.text, b.text)
			}
		}
		for _, d := range drawings {
			if !a.drawn && a.over(d) {
				t.Errorf("%s: “%s” stands on %s", where, a.text, d.text)
			}
		}
		switch least := float32(18); {
		case a.strong && !a.drawn && a.pt < 24*k-0.01:
			t.Errorf("%s: the result “%s” is set in %.1f", where, a.text, a.pt/k)
		case a.pt < least*k-0.01:
			t.Errorf("%s: “%s” is set in %.1f", where, a.text, a.pt/k)
		}
	}
	if t.Failed() && !before {
		t.Logf("%s: first failure is here", where)
	}
}
