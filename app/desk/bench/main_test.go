package bench

import (
	"bytes"
	"fmt"
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

// room is a bench in a window, with the class of the demo.
type room struct {
	session *session.Session
	bench   *Bench
	window  fyne.Window
}

// The size that the area has in the least window.
const areaWide, areaHigh = 925, 600

func open(t testing.TB, v look.Variant, c class.Class, wide, high float32) *room {
	t.Helper()
	looktest.App(t, v)
	s := session.New(reference.Shipped(), c)
	s.Speak(look.Voice())
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	b := New(s, w, func() {})
	w.SetContent(look.NewSurface(look.Paper, b.Content))
	looktest.Settle(w, wide, high)
	return &room{s, b, w}
}

// speak lets everything that is opened later in a test speak a language.
func speak(t testing.TB, l words.Language) {
	look.Speak(words.In(l))
	t.Cleanup(func() { look.Speak(nil) })
}

// TestMarkup compares two batches with their golden markup, in each language. It
// changes where the crop table or the words do.
func TestMarkup(t *testing.T) {
	for _, language := range words.Languages() {
		speak(t, language)
		for name, i := range map[string]int{"water": 0, "steam": 2} {
			if language != words.English {
				name += "-" + string(language)
			}
			r := open(t, look.Light, demo(t), areaWide, areaHigh)
			r.session.Select(i)
			looktest.Settle(r.window, areaWide, areaHigh)
			looktest.Markup(t, r.window, name+".xml")
		}
	}
}

// TestTextStands asks that no text stands out of its place, on either ground
// and in windows of several sizes, and draws them for a person to look at.
func TestTextStands(t *testing.T) {
	sizes := []fyne.Size{{Width: areaWide, Height: areaHigh}, {Width: 1024, Height: 700}, {Width: 1181, Height: 700}, {Width: 700, Height: 500}, {Width: areaWide, Height: 1500}}
	for _, variant := range []look.Variant{look.Light, look.Dark} {
		for _, size := range sizes {
			r := open(t, variant, demo(t), size.Width, size.Height)
			for i, name := range []string{"beans", "spinach", "steam", "cook"} {
				name = fmt.Sprintf("bench-%s-%s-%.0fx%.0f", name, variant, size.Width, size.Height)
				r.session.Select(i)
				looktest.Settle(r.window, size.Width, size.Height)
				looktest.Picture(t, r.window, name)
				if n := textfits.Check(t, r.window); n < 60 || t.Failed() {
					t.Fatalf("%s: %d texts", name, n)
				}
			}
		}
	}
}

// TestLargeType asks that the area can be used with type half as large again, in
// each language.
func TestLargeType(t *testing.T) {
	for _, language := range words.Languages() {
		speak(t, language)
		r := open(t, look.Light, demo(t), 1181, 700)
		fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
		r.window.Content().Refresh()
		r.session.Select(1)
		looktest.Settle(r.window, 1181, 700)
		looktest.Picture(t, r.window, "bench-large-type-"+string(language))
		textfits.Check(t, r.window)
		if least := r.bench.Content.MinSize(); least.Width > 820 {
			t.Errorf("%s: the area needs %v", language, least)
		}
	}
}

// TestNothingRunsOutAtTheSide asks that in the least window the answers need no
// scrolling sideways, with larger type too and in each language.
func TestNothingRunsOutAtTheSide(t *testing.T) {
	for _, language := range words.Languages() {
		speak(t, language)
		for _, scale := range []float32{1, 1.3} {
			r := open(t, look.Light, demo(t), areaWide, areaHigh)
			fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, scale))
			r.window.Content().Refresh()
			wide := areaWide - 99*(scale-1) // what the rail leaves
			for i := range r.session.Class().Batches {
				r.session.Select(i)
				looktest.Settle(r.window, wide, areaHigh)
				at := fyne.CurrentApp().Driver().AbsolutePositionForObject(r.bench.answers.content).X
				if ends := at + r.bench.answers.content.Size().Width; ends > wide {
					t.Errorf("%s in type %g: batch %d ends at %.0f of %.0f", language, scale, i+1, ends, wide)
				}
			}
		}
	}
}
