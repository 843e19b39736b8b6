package crops

import (
	"bytes"
	"fmt"
	"testing"
	"time"

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

// room is the crop table in a window, with the class of the demo.
type room struct {
	session *session.Session
	crops   *Crops
	window  fyne.Window
	opened  int // how often the batch area was asked for
}

// The size that the area has in the least window.
const areaWide, areaHigh = 925, 600

func open(t testing.TB, v look.Variant, wide, high float32) *room {
	t.Helper()
	looktest.App(t, v)
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	r := &room{session: session.New(reference.Shipped(), c)}
	r.session.Speak(look.Voice())
	r.crops = New(r.session, func() { r.opened++ })
	r.crops.now = func() time.Time { return time.Date(2027, 6, 1, 9, 0, 0, 0, time.UTC) }
	r.window = test.NewTempWindow(t, nil)
	r.window.SetPadded(false)
	r.window.SetContent(look.NewSurface(look.Paper, r.crops.Content))
	looktest.Settle(r.window, wide, high)
	return r
}

// speak lets the rooms that are opened from now on speak a language.
func speak(t testing.TB, l words.Language) {
	look.Speak(words.In(l))
	t.Cleanup(func() { look.Speak(nil) })
}

// ending is what the goldens of a language have at the end of their names.
func ending(l words.Language) string {
	if l == words.English {
		return ".xml"
	}
	return "-" + string(l) + ".xml"
}

// TestMarkup compares the area with its golden markup, in each language. It
// changes where the crop table or the words do.
func TestMarkup(t *testing.T) {
	for _, l := range words.Languages() {
		speak(t, l)
		r := open(t, look.Light, areaWide, areaHigh)
		looktest.Markup(t, r.window, "crops"+ending(l))
		r.crops.search.SetText("zzz")
		looktest.Markup(t, r.window, "nothing-fits"+ending(l))
	}
}

// TestTextStands asks in every state of the area that no text stands out of its
// place, on either ground and in windows of several sizes, and draws them for a
// person to look at.
func TestTextStands(t *testing.T) {
	sizes := []fyne.Size{{Width: areaWide, Height: areaHigh}, {Width: 1024, Height: 700}, {Width: 1400, Height: 1400}, {Width: 700, Height: 500}}
	for _, ground := range []struct {
		look.Variant
		words.Language
	}{{look.Light, words.English}, {look.Dark, words.English}, {look.Light, words.Spanish}} {
		speak(t, ground.Language)
		for _, size := range sizes {
			r := open(t, ground.Variant, size.Width, size.Height)
			see := func(state string) {
				t.Helper()
				name := fmt.Sprintf("crops-%s-%s-%s-%.0fx%.0f", state, ground.Language, ground.Variant, size.Width, size.Height)
				looktest.Settle(r.window, size.Width, size.Height)
				looktest.Picture(t, r.window, name)
				if n := textfits.Check(t, r.window); n < 20 || t.Failed() {
					t.Fatalf("%s: %d texts", name, n)
				}
			}
			r.crops.choose("snap-beans-cut-water")
			see("beans")
			r.crops.openForm()
			see("form")
			r.crops.form.value.SetText("4")
			r.crops.form.why.SetText("our own bulletin of 2026")
			r.crops.choose("broccoli-flowerets-steam")
			see("unfinished")
			r.crops.form.save()
			see("changed")
			r.crops.choose("hot-peppers-whole-raw")
			r.crops.use()
			see("used")
			r.crops.search.SetText("zzz")
			see("none")
		}
	}
}

// TestLargeType asks that the area can be used with type half as large again.
func TestLargeType(t *testing.T) {
	for _, l := range words.Languages() {
		speak(t, l)
		r := open(t, look.Light, 1181, 700)
		fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
		r.window.Content().Refresh()
		looktest.Settle(r.window, 1181, 700)
		looktest.Picture(t, r.window, "crops-large-type-"+string(l))
		textfits.Check(t, r.window)
		if least := r.crops.Content.MinSize(); least.Width > 1181 {
			t.Errorf("%s: the area needs %v", l, least)
		}
	}
}
