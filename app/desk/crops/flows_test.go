package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// press types a key into whatever has the keys.
func (r *room) press(keys ...fyne.KeyName) {
	for _, key := range keys {
		r.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
	}
}

// write types a text over what stands in the entry that has the keys.
func (r *room) write(text string) {
	e := r.window.Canvas().Focused().(*formEntry)
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	for _, letter := range text {
		e.TypedRune(letter)
	}
}

// goTo brings the keys to a cell of a treatment.
func (r *room) goTo(treatment, column string) {
	r.window.Canvas().Focus(r.crops.grid)
	r.crops.choose(treatment)
	r.press(slices.Repeat([]fyne.KeyName{fyne.KeyLeft}, len(columns))...)
	r.press(slices.Repeat([]fyne.KeyName{fyne.KeyRight}, r.column(column))...)
}

// textAt is the text at a place of the window.
func textAt(t *testing.T, r *room, part string) (fyne.Position, bool) {
	t.Helper()
	for at, c := range r.crops.grid.sheet.cells {
		if at.col == 0 && strings.HasPrefix(c.first, part) {
			return fyne.CurrentApp().Driver().AbsolutePositionForObject(c), true
		}
	}
	return fyne.Position{}, false
}

// The crop and its heading stay where they are when the table goes sideways; the
// headings stay over their columns, and when it goes down they stay too.
func TestCropAndHeadingsStayInView(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	s := r.crops.grid.sheet
	where := func(o fyne.CanvasObject) fyne.Position {
		return fyne.CurrentApp().Driver().AbsolutePositionForObject(o)
	}
	before, _ := textAt(t, r, "Asparagus")
	heading := where(s.heads[0])
	test.Scroll(r.window.Canvas(), fyne.NewPos(400, 300), -400, 0)
	if s.scroll.Offset.X < 300 {
		t.Fatalf("the table went %.0f sideways", s.scroll.Offset.X)
	}
	if after, ok := textAt(t, r, "Asparagus"); !ok || after.X != before.X {
		t.Errorf("the crop went from %v to %v", before, after)
	}
	equal(t, "heading of the crop", where(s.heads[0]), heading)
	for at, c := range s.cells {
		if x := where(c).X; x != where(s.heads[at.col]).X {
			t.Fatalf("%s stands at %.0f, its heading at %.0f", r.crops.grid.columns[at.col].title, x, where(s.heads[at.col]).X)
		}
	}
	test.Scroll(r.window.Canvas(), fyne.NewPos(40, 300), 0, -500) // over the crop, too
	if s.scroll.Offset.Y < 300 {
		t.Errorf("the table went %.0f down", s.scroll.Offset.Y)
	}
	equal(t, "heading of the crop", where(s.heads[0]), heading)
	for at, c := range s.cells {
		if crop := s.cells[place{at.row, 0}]; where(crop).Y != where(c).Y {
			t.Fatalf("row %d is torn: %v, %v", at.row, where(crop), where(c))
		}
	}
}

// Keys bring every cell into view, whole and not under the crop or the heading.
func TestKeysBringCellsIntoView(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.chooseColumns(everyColumn())
	r.window.Canvas().Focus(r.crops.grid)
	g := r.crops.grid
	inView := func() {
		t.Helper()
		at := place{g.at(), g.column}
		pos, size := g.sheet.where(at)
		low, view := g.sheet.scroll.Position(), g.sheet.scroll.Size()
		if at.col == 0 {
			low.X = 0
		}
		if c := g.sheet.cells[at]; c == nil || !c.current {
			t.Errorf("%v is not marked", at)
		}
		if pos.Y < low.Y-1 || pos.Y+size.Height > low.Y+view.Height+1 || pos.X < low.X-1 || pos.X+size.Width > g.Size().Width+1 {
			t.Errorf("%v stands at %v, %v", at, pos, size)
		}
	}
	for _, key := range []fyne.KeyName{fyne.KeyRight, fyne.KeyDown, fyne.KeyLeft} {
		for range len(columns) {
			r.press(key)
			inView()
		}
	}
	r.press(fyne.KeyEnd)
	inView()
	for range 20 {
		r.press(fyne.KeyUp)
		inView()
	}
	r.press(fyne.KeyHome)
	inView()
}

// From the search into the table, to a value, and back, without a mouse.
func TestFlowWithoutAMouse(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	canvas := r.window.Canvas()
	r.crops.Focus(canvas)
	test.Type(r.crops.search, "snap beans")
	r.press(fyne.KeyDown)
	if canvas.Focused() != fyne.Focusable(r.crops.grid) {
		t.Fatalf("Down from the search leads to %T", canvas.Focused())
	}
	r.press(fyne.KeyDown, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	equal(t, "column", r.crops.grid.columns[r.crops.grid.column].id, "minutes")
	changed := r.crops.grid.chosen
	tabs := 0
	for b, ok := canvas.Focused().(*widget.Button); !ok || b.Text != "Columns…"; b, ok = canvas.Focused().(*widget.Button) {
		if tabs++; tabs > len(columns)+2 { // after the headings, which sort
			t.Fatalf("Tab from the table does not come to the columns but to %T", canvas.Focused())
		}
		test.FocusNext(canvas)
	}
	r.press(fyne.KeySpace, fyne.KeyDown)
	canvas.Focused().TypedRune(' ')
	r.press(fyne.KeyEscape)
	if at := r.column("size"); at >= 0 || r.crops.grid.columns[r.crops.grid.column].id != "minutes" {
		t.Errorf("size stands at %d", at)
	}
	if !strings.Contains(r.crops.foot.first, "the clock starts") || !strings.Contains(r.crops.foot.first, "F2") {
		t.Errorf("under the table stands %q", r.crops.foot.first)
	}
	if clock := r.crops.grid.sheet.cells[place{r.crops.grid.at(), r.column("clock")}]; clock == nil {
		t.Error("the minutes came into view without the start of their clock")
	}
	r.press(fyne.KeyReturn)
	r.write("5")
	r.press(fyne.KeyReturn)
	r.write("our own bulletin")
	r.press(fyne.KeyReturn)
	x, _ := r.session.Table().Treatment(changed)
	equal(t, "minutes", x.Minutes, 5)
	if canvas.Focused() != fyne.Focusable(r.crops.grid) || r.crops.cell.content.Visible() {
		t.Fatalf("the keys are with %T", canvas.Focused())
	}
	if !strings.Contains(r.crops.foot.first, "shipped 3 min") {
		t.Errorf("under the table stands %q", r.crops.foot.first)
	}
	r.press(fyne.KeyUp, fyne.KeyUp)
	if canvas.Focused() != fyne.Focusable(r.crops.search) {
		t.Errorf("Up from the first row leads to %T", canvas.Focused())
	}
	r.press(fyne.KeyEscape)
	equal(t, "search after Escape", r.crops.search.Text, "")
	r.press(fyne.KeyReturn, fyne.KeyEscape)
	if canvas.Focused() != fyne.Focusable(r.crops.search) {
		t.Errorf("Escape from the table leads to %T", canvas.Focused())
	}
}

// What Tab leads to comes into view.
func TestFocusScrolls(t *testing.T) {
	r := open(t, look.Light, 701, 500)
	r.crops.choose(beans)
	inside := func(what string, scroll fyne.CanvasObject, o fyne.CanvasObject) {
		t.Helper()
		d := fyne.CurrentApp().Driver()
		y, top := d.AbsolutePositionForObject(o).Y, d.AbsolutePositionForObject(scroll).Y
		if y < top-1 || y+o.Size().Height > top+scroll.Size().Height+1 {
			t.Errorf("%s stands at %.0f, in view is %.0f to %.0f", what, y, top, top+scroll.Size().Height)
		}
	}
	for _, l := range linksIn(r.crops.record.parts) {
		r.window.Canvas().Focus(l)
		inside(l.text.Text(), r.crops.record.scroll, l)
	}
	r.crops.openColumns()
	for _, tick := range r.crops.choosing.ticks {
		inside(tick.Text, r.crops.choosing.scroll, r.window.Canvas().Focused().(fyne.CanvasObject))
		r.press(fyne.KeyDown)
	}
}

// What has the keys is seen.
func TestFocusIsSeen(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	for _, o := range append([]fyne.Focusable{r.crops.grid}, linksAsFocusable(r)...) {
		r.window.Canvas().Unfocus()
		before := test.RenderToMarkup(r.window.Canvas())
		r.window.Canvas().Focus(o)
		if test.RenderToMarkup(r.window.Canvas()) == before {
			t.Errorf("%T shows nothing", o)
		}
		if h, ok := o.(desktop.Hoverable); ok {
			h.MouseIn(nil)
			h.MouseOut()
		}
	}
}

func linksAsFocusable(r *room) (out []fyne.Focusable) {
	for _, l := range linksIn(r.crops.record.parts)[:2] {
		out = append(out, l)
	}
	return out
}
