package bench

import (
	"bytes"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
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

// TestToLookAt draws the area for a person to look at.
func TestToLookAt(t *testing.T) {
	for _, one := range []struct {
		name       string
		variant    look.Variant
		batch      int
		wide, high float32
	}{
		{"bench-beans", look.Light, 0, areaWide, areaHigh},
		{"bench-beans-dark", look.Dark, 0, 1181, 700},
		{"bench-steam", look.Light, 2, areaWide, areaHigh},
		{"bench-cook", look.Light, 3, areaWide, areaHigh},
		{"bench-spinach-narrow", look.Light, 1, 700, 500},
		{"bench-beans-tall", look.Light, 0, areaWide, 1500},
	} {
		r := open(t, one.variant, demo(t), one.wide, one.high)
		r.session.Select(one.batch)
		looktest.Settle(r.window, one.wide, one.high)
		looktest.Picture(t, r.window, one.name)
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
	if least := r.bench.Content.MinSize(); least.Width > 820 {
		t.Errorf("the area needs %v", least)
	}
}
