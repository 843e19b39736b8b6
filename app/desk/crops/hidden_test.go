package crops

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// What changes while the area is hidden costs nothing, and is shown when the area
// is shown again.
func TestHiddenAreaFollowsWhenItIsShown(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.goTo(beans, "minutes")
	r.press(fyne.KeyF2) // a form in which nothing is typed
	row, col := r.crops.grid.at(), r.column("minutes")
	before := test.RenderToMarkup(r.window.Canvas())
	shown := r.crops.grid.table

	r.crops.Content.Hide()
	e := r.session.Table().NewEdit(beans, reference.FieldMinutes, "4", "our own bulletin", "A. Lead", r.crops.now())
	if err := r.session.ApplyEdit(e); err != nil {
		t.Fatal(err)
	}
	r.crops.Content.Show()
	if r.crops.grid.table != shown || test.RenderToMarkup(r.window.Canvas()) != before {
		t.Error("the hidden area was brought up to date")
	}
	r.crops.Shown()
	equal(t, "cell", r.cellOf(row, col).first, "4 min")
	equal(t, "minutes of the record", r.crops.record.minutes.Figure().Text, "4 min")
	equal(t, "form over the value that was", r.crops.cell.content.Visible(), false)

	shown = r.crops.grid.table
	r.crops.Shown()
	if err := r.session.Undo(); err != nil {
		t.Fatal(err)
	}
	if r.crops.grid.table == shown || r.cellOf(row, col).first != "3 min" {
		t.Error("the area in sight does not follow")
	}
}
