package questions

import (
	"bytes"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
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

// room is the area in a window, with a class.
type room struct {
	session *session.Session
	area    *Area
	window  fyne.Window
	size    fyne.Size
}

// The size that the area has in the least window.
const areaWide, areaHigh = 698, 540

func open(t testing.TB, v look.Variant, c class.Class, wide, high float32) *room {
	t.Helper()
	looktest.App(t, v)
	s := session.New(reference.Shipped(), c)
	s.Speak(look.Voice())
	a := New(s)
	w := looktest.Window(t, look.NewSurface(look.Paper, a.Content), wide, high)
	return &room{s, a, w, fyne.NewSize(wide, high)}
}

// speak lets everything that is opened later in a test speak a language.
func speak(t testing.TB, l words.Language) {
	look.Speak(words.In(l))
	t.Cleanup(func() { look.Speak(nil) })
}

// openDemo is the area with the demo class, and the cursor in its entry.
func openDemo(t testing.TB) *room {
	t.Helper()
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.area.Focus(r.window.Canvas())
	return r
}

func (r *room) settle() { looktest.Settle(r.window, r.size.Width, r.size.Height) }

// ask types words in place of what stands in the entry, key by key.
func (r *room) ask(words string) {
	r.area.Focus(r.window.Canvas())
	test.Type(r.area.search, words)
}

func (r *room) press(key fyne.KeyName) {
	r.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

// change changes what is on view.
func (r *room) change(t testing.TB, change func(*class.Class)) {
	t.Helper()
	must(t, r.session.ChangeView("change", change))
}

// asked is the id of the open question.
func (r *room) asked() string {
	id, _ := r.session.Asked()
	return id
}

func (r *room) here() string {
	_, _, says := r.area.Answer()
	return says
}

// shows is every text that is on view.
func (r *room) shows() string {
	return strings.ReplaceAll(textfits.All(r.window.Content()), "\n", " ")
}

func equal[T comparable](t testing.TB, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func has(t testing.TB, what, text string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(text, part) {
			t.Errorf("%s does not say “%s”: %s", what, part, text)
		}
	}
}

func lacks(t testing.TB, what, text string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if strings.Contains(text, part) {
			t.Errorf("%s says “%s”: %s", what, part, text)
		}
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
