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
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	b := New(s, w, func() {})
	w.SetContent(look.NewSurface(look.Paper, b.Content))
	looktest.Settle(w, wide, high)
	return &room{s, b, w}
}

// TestMarkup compares two batches with their golden markup. It changes where the
// crop table or the words do; a wanted change is taken over by copying
// testdata/failed.
func TestMarkup(t *testing.T) {
	for i, name := range []string{"water.xml", "", "steam.xml"} {
		if name == "" {
			continue
		}
		r := open(t, look.Light, demo(t), areaWide, areaHigh)
		r.session.Select(i)
		looktest.Settle(r.window, areaWide, areaHigh)
		looktest.Markup(t, r.window, name)
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

// TestLargeType asks that the area can be used with type half as large again.
func TestLargeType(t *testing.T) {
	r := open(t, look.Light, demo(t), 1181, 700)
	fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
	r.window.Content().Refresh()
	r.session.Select(1)
	looktest.Settle(r.window, 1181, 700)
	looktest.Picture(t, r.window, "bench-large-type")
	textfits.Check(t, r.window)
	if least := r.bench.Content.MinSize(); least.Width > 820 {
		t.Errorf("the area needs %v", least)
	}
}
