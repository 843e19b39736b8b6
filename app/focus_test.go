package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// tabThrough goes with Tab from the first area in the rail all the way round, and
// gives what had the focus.
func (k keyboard) tabThrough() []fyne.Focusable {
	k.t.Helper()
	first := fyne.Focusable(k.rail.items[0])
	k.window.Canvas().Focus(first)
	stops := []fyne.Focusable{first}
	for range 300 {
		test.FocusNext(k.window.Canvas())
		focused := k.window.Canvas().Focused()
		if focused == first {
			return stops
		}
		k.inView(focused)
		stops = append(stops, focused)
	}
	k.t.Fatal("Tab never comes round")
	return nil
}

// inView asks that all of an object, and the field that it is in, is in what each
// scroll round it shows.
func (k keyboard) inView(focused fyne.Focusable) {
	k.t.Helper()
	o := focused.(fyne.CanvasObject)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject
	for _, s := range found[*container.Scroll](k.window.Content()) {
		if s.Direction == container.ScrollNone || !holdsFocusable(s.Content, focused) || s.Content.MinSize().Height < o.Size().Height+50 {
			continue // of an entry, which scrolls its own text
		}
		from, place := at(s), at(o)
		if to := from.Add(s.Size()); place.Y < from.Y || place.Y+o.Size().Height > to.Y+1 || place.X < from.X-5 || place.X+o.Size().Width > to.X+5 {
			k.t.Errorf("%T with the focus stands at %v, %v large; in view is %v to %v", focused, place, o.Size(), from, to)
		}
	}
}

func holdsFocusable(in fyne.CanvasObject, o fyne.Focusable) bool {
	for _, f := range found[fyne.Focusable](in) {
		if f == o {
			return true
		}
	}
	return false
}

// Whatever gets the focus can be seen, and in the batch area the form comes
// before the figures.
func TestTheFocusStaysInView(t *testing.T) {
	d, _ := newTestDesk(t)
	k := keyboard{d, t}
	looktest.Settle(d.window, 1024, 700)
	d.open("batch")
	looktest.Settle(d.window, 1024, 700)
	stops := k.tabThrough()
	place := func(is func(fyne.Focusable) bool) int {
		for i, f := range stops {
			if is(f) {
				return i
			}
		}
		t.Fatalf("not among %d stops", len(stops))
		return 0
	}
	try := place(func(f fyne.Focusable) bool { b, ok := f.(*look.Button); return ok && b.Text == "Try it on a copy" })
	lastSlide := 0
	for i, f := range stops {
		if _, ok := f.(*look.Slide); ok {
			lastSlide = i
		}
	}
	figure := place(func(f fyne.Focusable) bool { _, ok := f.(*look.FigureView); return ok })
	if try > 12 || lastSlide > figure || len(stops) < 40 {
		t.Errorf("of %d stops “Try it on a copy” is %d, the last slide %d, the first figure %d", len(stops), try, lastSlide, figure)
	}
}

func TestTheFocusStaysInViewOnThePageOfTheKit(t *testing.T) {
	d, _ := newTestDesk(t)
	k := keyboard{d, t}
	d.openThen("class", func() { d.planning.OpenPage("kit") })
	looktest.Settle(d.window, 1024, 700)
	if stops := k.tabThrough(); len(stops) < 30 {
		t.Errorf("%d stops", len(stops))
	}
}

// Another language makes every area anew; the focus is followed there too.
func TestTheFocusStaysInViewInAnotherLanguage(t *testing.T) {
	d, _ := newTestDesk(t)
	k := keyboard{d, t}
	d.open("batch")
	t.Cleanup(func() { look.Speak(nil) })
	d.setLanguage("es")
	looktest.Settle(d.window, 1024, 700)
	k.tabThrough()
}
