package look

import (
	"runtime"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// manyFields is a scroll with more fields than there is room for, beside a
// margin, in a window.
func manyFields(t *testing.T) (w fyne.Window, s *container.Scroll, fields []*Field) {
	t.Helper()
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Light))
	column := Column(8)
	for range 12 {
		f := NewField("Prepared", "such as 3 lb", nil)
		fields = append(fields, f)
		column.Add(f)
	}
	s = VScroll(10, 10, column)
	w = test.NewTempWindow(t, s)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(220, 301))
	w.Resize(fyne.NewSize(220, 300))
	return w, s, fields
}

// seen says whether all of an object is within what a scroll shows.
func seen(s *container.Scroll, o fyne.CanvasObject) bool {
	top, from := at(o).Y, at(s).Y
	return top >= from && top+o.Size().Height <= from+s.Size().Height
}

func TestWhatGetsTheFocusIsScrolledIntoView(t *testing.T) {
	w, s, fields := manyFields(t)
	for i, f := range append(fields, fields[0], fields[11], fields[5]) {
		w.Canvas().Focus(f.Entry())
		if !seen(s, f) {
			t.Errorf("step %d: the field stands at %v, scrolled by %v", i, at(f), s.Offset)
		}
	}
	before := s.Offset
	w.Canvas().Focus(fields[6].Entry())
	w.Canvas().Focus(fields[5].Entry())
	if s.Offset != before && seen(s, fields[6]) {
		t.Errorf("scrolled from %v to %v between two that are both in view", before, s.Offset)
	}
}

func TestAScrollInAScrollMovesToo(t *testing.T) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Light))
	field := NewField("Prepared", "", nil)
	tall := func() fyne.CanvasObject { return container.NewGridWrap(fyne.NewSize(100, 400), Body("")) }
	inner := VScroll(4, 4, Column(0, tall(), field))
	outer := VScroll(4, 4, Column(0, tall(), container.NewGridWrap(fyne.NewSize(150, 120), inner)))
	w := test.NewTempWindow(t, outer)
	w.Resize(fyne.NewSize(200, 200))
	w.Canvas().Focus(field.Entry())
	if !seen(inner, field) || !seen(outer, field) {
		t.Errorf("the field stands at %v, scrolled by %v in %v", at(field), inner.Offset, outer.Offset)
	}
}

// What is hidden at the same place, or was left behind by a window made anew,
// keeps its offset.
func TestOnlyScrollsOnViewMove(t *testing.T) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Light))
	page := func() (*container.Scroll, *Field) {
		column, last := Column(8), (*Field)(nil)
		for range 12 {
			last = NewField("Prepared", "", nil)
			column.Add(last)
		}
		return VScroll(10, 10, column), last
	}
	shown, last := page()
	hidden, _ := page()
	left, _ := page()
	area := container.NewStack(hidden)
	w := test.NewTempWindow(t, left)
	w.Resize(fyne.NewSize(220, 300))
	w.SetContent(container.NewStack(area, shown))
	area.Hide()
	w.Resize(fyne.NewSize(220, 301))
	w.Canvas().Focus(last.Entry())
	if !seen(shown, last) || hidden.Offset.Y != 0 || left.Offset.Y != 0 {
		t.Errorf("scrolled by %v, hidden %v, left behind %v", shown.Offset, hidden.Offset, left.Offset)
	}
}

func TestScrollsThatAreGoneAreForgotten(t *testing.T) {
	test.NewTempApp(t)
	known := func() int { VScroll(1, 1, Body("")); return len(scrolls) }
	runtime.GC()
	before := known()
	for range 50 {
		VScroll(1, 1, Body(""))
	}
	runtime.GC()
	if now := known(); now > before+1 {
		t.Errorf("%d scrolls are known, %d were", now, before)
	}
}

func TestTheWheelOverAnEntryTurnsThePage(t *testing.T) {
	w, s, fields := manyFields(t)
	over := at(fields[1].entry).AddXY(20, 10)
	test.Scroll(w.Canvas(), over, 0, -50)
	if s.Offset.Y != 50 {
		t.Errorf("turned by 50 over an entry, the page scrolled by %v", s.Offset.Y)
	}
}

func TestTabLeavesEveryEntry(t *testing.T) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Light))
	said := ""
	take := func(text string) error { said = text; return nil }
	notes := NewNotes("Notes", "", take)
	fields := []*Field{NewField("Name", "", nil), notes, NewSentence("Summary", "", nil), NewQuantity("Prepared", "", nil)}
	column := Column(8)
	for _, f := range fields {
		column.Add(f)
	}
	w := test.NewTempWindow(t, column)
	w.Resize(fyne.NewSize(300, 500))
	tab := func(move func(fyne.Canvas)) { // as the driver of the window does it
		if e, ok := w.Canvas().Focused().(fyne.Tabbable); ok && e.AcceptsTab() {
			w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
			return
		}
		move(w.Canvas())
	}
	w.Canvas().Focus(fields[0].Entry())
	for _, f := range fields {
		if w.Canvas().Focused() != f.Entry() {
			t.Fatalf("Tab does not come to %s", f.Label())
		}
		tab(test.FocusNext)
	}
	w.Canvas().Focus(fields[2].Entry())
	tab(test.FocusPrevious)
	if w.Canvas().Focused() != notes.Entry() {
		t.Error("Shift+Tab does not go back into the notes")
	}
	notes.Entry().TypedRune('a')
	notes.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
	tab(test.FocusPrevious)
	if said != "a" || w.Canvas().Focused() != fields[0].Entry() {
		t.Errorf("the notes are %q, the focus is in %T", said, w.Canvas().Focused())
	}
}

func TestTheFocusHasARing(t *testing.T) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Dark))
	field, button := NewField("Name", "", nil), NewButton("Save", nil)
	check, list := NewCheck("Tray", nil), NewSelect([]string{"a"}, nil)
	w := test.NewTempWindow(t, Column(4, field, button, check, list))
	w.Resize(fyne.NewSize(300, 200))
	for _, o := range []fyne.Widget{field.entry, button, check, list} {
		ring := test.WidgetRenderer(o).(*ringed).ring
		if ring.Visible() {
			t.Errorf("%T has a ring without the focus", o)
		}
		w.Canvas().Focus(o.(fyne.Focusable))
		if !ring.Visible() || ring.StrokeColor != Color(Ink) || ring.Size() != o.Size() {
			t.Errorf("%T with the focus: ring %v, %v of %v", o, ring.Visible(), ring.Size(), o.Size())
		}
		fyne.CurrentApp().Settings().SetTheme(New(HighContrast))
		o.Refresh()
		if ring.StrokeColor != Color(Ink) {
			t.Errorf("%T: the ring keeps the colour of the theme before", o)
		}
		w.Canvas().Unfocus()
		if ring.Visible() {
			t.Errorf("%T keeps its ring", o)
		}
	}
}

func TestTheKeysOfAButton(t *testing.T) {
	test.NewTempApp(t)
	pressed, left := 0, 0
	b := NewButton("Save", func() { pressed++ })
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) // in no dialog
	b.Escape = func() { left++ }
	for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyEscape, fyne.KeyA} {
		b.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if pressed != 3 || left != 1 {
		t.Errorf("pressed %d times, left %d times", pressed, left)
	}
	b.Disable()
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if pressed != 3 {
		t.Error("Enter pressed a button that is off")
	}
}
