package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// Columns are ticked by keys, remembered, and come back with one action.
func TestColumnsAreChosen(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	var kept []string
	r.crops.ColumnsChosen = func(names []string) { kept = slices.Clone(names) }
	titles := func() (out []string) {
		for _, c := range r.crops.grid.columns {
			out = append(out, c.id)
		}
		return out
	}
	all := titles()
	r.goTo(beans, "standing")
	r.crops.openColumns()
	canvas := r.window.Canvas()
	if canvas.Focused() != fyne.Focusable(r.crops.choosing.ticks[0]) || r.crops.record.content.Visible() {
		t.Fatalf("the keys are with %T", canvas.Focused())
	}
	for _, id := range []string{"cut", "standing", "source"} {
		for r.crops.choosing.ticks[0] != canvas.Focused() {
			r.press(fyne.KeyUp)
		}
		for canvas.Focused().(*tick).id != id {
			r.press(fyne.KeyDown)
		}
		canvas.Focused().TypedRune(' ')
	}
	equal(t, "columns", strings.Join(titles(), " "), "crop size method minutes clock chill headspace")
	equal(t, "kept", strings.Join(kept, " "), "size method minutes chill headspace")
	r.press(fyne.KeyEscape)
	if canvas.Focused() != fyne.Focusable(r.crops.grid) || !r.crops.record.content.Visible() {
		t.Error("Escape does not lead back into the table")
	}
	equal(t, "column that the keys are about", r.crops.grid.columns[r.crops.grid.column].id, "crop")
	r.crops.openColumns()
	test.Tap(r.crops.choosing.usual)
	equal(t, "usual columns", strings.Join(titles(), " "), strings.Join(all, " "))

	for _, one := range []struct{ names, want string }{
		{"", strings.Join(all, " ")},
		{"colour smell", strings.Join(all, " ")},
		{"standing colour minutes minutes crop clock", "crop minutes clock standing"},
		{"clock", strings.Join(all, " ")}, // never without the minutes, nor they without it
		{"water", "crop water"},
	} {
		r.crops.SetColumns(strings.Fields(one.names))
		equal(t, one.names, strings.Join(titles(), " "), one.want)
	}
	looktest.Settle(r.window, areaWide, areaHigh)
	textfits.Check(t, r.window)
}
