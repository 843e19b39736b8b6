package crops

import (
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// TestMarkupOfStates compares table, form over a cell, choice of columns and
// record with golden markup in two sizes of window, in either units, in each
// language.
func TestMarkupOfStates(t *testing.T) {
	for _, l := range words.Languages() {
		speak(t, l)
		for name, size := range map[string]fyne.Size{"1024x700": {Width: areaWide, Height: areaHigh}, "800x600": {Width: 701, Height: 500}} {
			for _, units := range []measure.System{measure.US, measure.Metric} {
				r := open(t, look.Light, size.Width, size.Height)
				if err := r.session.Change("Units", func(c *class.Class) { c.Units = units }); err != nil {
					t.Fatal(err)
				}
				r.eachState(func(state string, o fyne.CanvasObject) {
					t.Helper()
					looktest.Settle(r.window, size.Width, size.Height)
					textfits.Check(t, r.window)
					looktest.Picture(t, r.window, "crops-"+state+"-"+name+"-"+string(l))
					looktest.ObjectMarkup(t, o, state+"-"+name+"-"+string(units)+ending(l))
				})
			}
		}
	}
}

// eachState shows states of the area, each with the part that it is about.
func (r *room) eachState(see func(state string, o fyne.CanvasObject)) {
	r.goTo(beans, "minutes")
	see("table", r.crops.Content)
	r.press(fyne.KeyReturn)
	r.write("2")
	r.press(fyne.KeyReturn)
	see("cell", r.crops.cell.content)
	r.press(fyne.KeyEscape)
	r.crops.openColumns()
	see("columns", r.crops.choosing.content)
	r.crops.closeColumns()
	r.crops.record.scroll.ScrollToBottom()
	see("questions", r.crops.record.content)
}
