package crops

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// A value is changed in its cell; what is refused is said there and stays.
func TestChangeInTheCell(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	canvas := r.window.Canvas()
	f := r.crops.cell
	r.goTo(beans, "minutes")
	r.press(fyne.KeyF2)
	if !f.content.Visible() || canvas.Focused() != fyne.Focusable(f.value) {
		t.Fatal("F2 opens nothing")
	}
	equal(t, "value", f.value.Text, "3")
	pos, size := r.crops.grid.sheet.where(place{r.crops.grid.at(), r.crops.grid.column})
	cell := fyne.CurrentApp().Driver().AbsolutePositionForObject(r.crops.grid).Add(pos)
	entry := fyne.CurrentApp().Driver().AbsolutePositionForObject(f.value)
	if entry.X > cell.X+1 || entry.X+f.value.Size().Width < cell.X+size.Width-9 || entry.Y < cell.Y-9 || entry.Y > cell.Y+size.Height {
		t.Errorf("the entry stands at %v, the cell at %v", entry, cell)
	}
	for _, one := range []struct{ typed, says string }{
		{"2", "never shortened"}, {"soon", "allowed is"}, {"", "allowed is"}, {"3", "is the shipped value"},
	} {
		r.write(one.typed)
		if one.typed == "" {
			f.value.SetText("")
		}
		r.press(fyne.KeyReturn)
		if !f.content.Visible() || !f.problem.Visible() || !strings.Contains(f.problem.Text(), one.says) {
			t.Errorf("%q is answered with %q", one.typed, f.problem.Text())
		}
		equal(t, "what was typed", f.value.Text, one.typed)
	}
	equal(t, "edits", len(r.session.Edits()), 0)
	r.write("4")
	r.crops.grid.chooseRow(0)
	if r.crops.grid.chosen != beans || f.problem.Text() != unfinished || !r.crops.Unfinished() {
		t.Errorf("another row gives the change up: %q", f.problem.Text())
	}
	r.press(fyne.KeyEscape)
	if f.content.Visible() || len(r.session.Edits()) != 0 || canvas.Focused() != fyne.Focusable(r.crops.grid) {
		t.Error("Escape does not give the change up")
	}

	r.press(fyne.KeyReturn)
	r.write("4")
	r.press(fyne.KeyReturn)
	if canvas.Focused() != fyne.Focusable(f.why) {
		t.Fatalf("after the value comes %T", canvas.Focused())
	}
	r.press(fyne.KeyReturn)
	if !strings.Contains(f.problem.Text(), "a reason") {
		t.Errorf("without a reason it says %q", f.problem.Text())
	}
	r.write("our own bulletin")
	r.press(fyne.KeyReturn)
	minutes := r.cellOf(r.crops.grid.at(), r.column("minutes"))
	equal(t, "cell", minutes.first, "4 min")
	equal(t, "beside it", minutes.second, "shipped 3 min")
	equal(t, "marked", minutes.marked, true)

	r.press(fyne.KeyF2)
	if !f.back.Visible() || !strings.Contains(f.shipped.Text(), "As shipped: 3 min") {
		t.Errorf("the form says %q", f.shipped.Text())
	}
	test.Tap(f.back)
	equal(t, "edits taken back", len(r.session.Edits()), 0)
	equal(t, "cell", r.cellOf(r.crops.grid.at(), r.column("minutes")).first, "3 min")
}

// Every cell that may be changed opens with its own field, the others use the
// treatment in a batch.
func TestCellsThatMayBeChanged(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.chooseColumns(everyColumn())
	want := map[string]string{"minutes": reference.FieldMinutes, "chill": reference.FieldChillFactor, "headspace": reference.FieldHeadspace,
		"water": reference.FieldWater, "storage": reference.FieldStorage}
	for _, col := range r.crops.grid.columns {
		r.goTo(beans, col.id)
		r.press(fyne.KeyF2)
		equal(t, col.id+" opens", r.crops.cell.content.Visible(), want[col.id] != "")
		if r.crops.cell.content.Visible() {
			equal(t, "field", r.crops.cell.field.Selected, fieldNames[want[col.id]])
			r.press(fyne.KeyEscape)
		}
	}
	n := len(r.session.Class().Batches)
	r.goTo(beans, "cut")
	r.press(fyne.KeyReturn)
	equal(t, "batches after Enter on the cut", len(r.session.Class().Batches), n+1)
	r.goTo("pumpkin-mashed-cook", "minutes") // has words, no minutes
	r.press(fyne.KeyReturn)
	equal(t, "field", r.crops.cell.field.Selected, fieldNames[reference.FieldWords])
}

// Undo and redo take the table back and forth, and what is typed is undone first.
func TestUndoInTheTable(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.goTo(beans, "minutes")
	says := func(want string, marked bool) {
		t.Helper()
		c := r.cellOf(r.crops.grid.at(), r.column("minutes"))
		if c.first != want || c.marked != marked {
			t.Errorf("the cell says %q, marked %v; want %q", c.first, c.marked, want)
		}
	}
	step := func(do func() error) {
		t.Helper()
		if err := do(); err != nil {
			t.Fatal(err)
		}
	}
	r.press(fyne.KeyF2)
	r.write("4")
	if !look.UndoTyping(r.window.Canvas()) || r.crops.cell.value.Text == "4" {
		t.Errorf("undo leaves %q", r.crops.cell.value.Text)
	}
	if !look.RedoTyping(r.window.Canvas()) || r.crops.cell.value.Text != "4" {
		t.Errorf("redo leaves %q", r.crops.cell.value.Text)
	}
	r.window.Canvas().Focus(r.crops.cell.why)
	if !look.RedoTyping(r.window.Canvas()) || !look.UndoTyping(r.window.Canvas()) {
		t.Error("undo and redo go past what is being typed in another entry")
	}
	r.window.Canvas().Focus(r.crops.cell.value)
	r.write("4")
	r.press(fyne.KeyReturn)
	r.write("our own bulletin")
	r.press(fyne.KeyReturn)
	says("4 min", true)
	if look.UndoTyping(r.window.Canvas()) || look.RedoTyping(r.window.Canvas()) {
		t.Error("nothing is being typed")
	}
	step(r.session.Undo)
	says("3 min", false)
	equal(t, "what the record said of the change", r.crops.record.told.Visible(), false)
	step(r.session.Redo)
	says("4 min", true)
	step(func() error { return r.session.TakeBack(beans, reference.FieldMinutes) })
	says("3 min", false)
	step(r.session.Undo)
	says("4 min", true)
	r.press(fyne.KeyF2) // a form in which nothing is typed does not outlive its value
	step(r.session.Undo)
	if r.crops.cell.content.Visible() {
		t.Error("the form still shows the value that was undone")
	}
}

// A tap on the chosen cell changes it, a tap on another chooses that.
func TestTapOnTheChosenCell(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.goTo(beans, "cut")
	c := r.crops.grid.sheet.cells[place{r.crops.grid.at(), r.column("minutes")}]
	test.Tap(c)
	equal(t, "column", r.crops.grid.columns[r.crops.grid.column].id, "minutes")
	if r.crops.cell.content.Visible() {
		t.Fatal("the first tap changes the cell")
	}
	test.Tap(c)
	if !r.crops.cell.content.Visible() {
		t.Error("the second tap does not")
	}
}

// The form belongs to its cell: where a search takes the cell away it goes, and
// with something typed it stays with its crop.
func TestTheFormStaysWithItsCell(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	f := r.crops.cell
	r.goTo(beans, "minutes")
	r.press(fyne.KeyF2)
	r.crops.search.SetText("kale")
	if f.content.Visible() {
		t.Error("the form of the beans stands over the kale")
	}
	r.crops.search.SetText("")
	r.goTo(beans, "minutes")
	r.press(fyne.KeyF2)
	if !strings.HasPrefix(f.name.Text(), "Snap beans") {
		t.Errorf("the form is about %q", f.name.Text())
	}
	r.write("4")
	before := f.content.Objects[0].Position()
	r.crops.search.SetText("kale")
	if !f.content.Visible() || f.treatment.ID != beans || !r.crops.Unfinished() || f.content.Objects[0].Position() != before {
		t.Errorf("typed for beans, the form is about %s at %v", f.treatment.ID, f.content.Objects[0].Position())
	}
}
