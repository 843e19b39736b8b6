package crops

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// newCellForm is a form over a cell of the table, for the value in it: its first
// entry lies on the cell. A change needs a reason and a name beside the value,
// and a refusal is a sentence, so the form is larger than the cell.
func newCellForm(c *Crops) *form {
	f := newForm(c, c.closeCell)
	body := look.Inset(cellFormInset, cellFormInset, look.Column(8, f.value, look.Column(0, f.name, f.shipped), f.problem,
		look.Columns(8, []float32{3, 2}, look.Labelled(look.Say("Why: reason or bulletin"), f.why), look.Labelled(look.Say("Who changes it"), f.who)),
		container.NewHBox(f.buttons(look.Say("Keep it"), look.Say("Give up")), f.back)))
	edge := canvas.NewRectangle(color.Transparent)
	edge.StrokeWidth = 1
	frame := look.NewSurface(look.Paper, container.NewStack(edge, container.NewVScroll(body)))
	f.content = container.New(&overCell{crops: c, edge: edge, body: body}, frame)
	f.content.Hide()
	return f
}

// The room round the entries, and the width of the form, at normal size.
const (
	cellFormInset = 8
	cellFormWide  = 380
)

// overCell lays the form over its cell, and inside the table.
type overCell struct {
	crops *Crops
	edge  *canvas.Rectangle
	body  *fyne.Container // scrolls where the table is low
}

func (o *overCell) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	g, form := o.crops.grid, objects[0]
	o.edge.StrokeColor = look.Color(look.Ink)
	at, ok := g.placeOf(o.crops.cell.treatment.ID, o.crops.cell.at)
	if !ok { // filtered away while something is typed: it stays where it is
		return
	}
	pos, cell := g.sheet.where(at)
	wide := min(max(cell.Width+2*cellFormInset, cellFormWide*look.Current().Scale), size.Width)
	o.body.Resize(fyne.NewSize(wide, o.body.MinSize().Height)) // its text finds its lines
	high := min(o.body.MinSize().Height, size.Height)
	form.Resize(fyne.NewSize(wide, high))
	form.Move(fyne.NewPos(max(0, min(pos.X-cellFormInset, size.Width-wide)), max(0, min(pos.Y-cellFormInset, size.Height-high))))
}

func (o *overCell) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// changeCell opens the form over the chosen cell; false where nothing in it may
// be changed.
func (c *Crops) changeCell(id string, col column) bool {
	t, ok := c.session.Table().Treatment(id)
	field := col.field(t)
	if !ok || field == "" {
		return false
	}
	if f := c.typing(); f != nil {
		f.complain(look.Say(unfinished))
		return true
	}
	c.closeForm()
	c.grid.reveal()
	c.cell.start(t, field)
	crop, _ := c.session.Table().Crop(t.Crop)
	c.cell.name.SetText(crop.Name + ": " + look.Say(fieldNames[field]))
	c.cell.at = col.id
	c.cell.content.Show()
	c.cell.content.Refresh()
	c.grid.sheet.raise(c.grid.at(), c.cell.content.Objects[0].Size().Height-cellFormInset)
	c.focus(c.cell.value)
	c.cell.value.TypedShortcut(&fyne.ShortcutSelectAll{})
	return true
}

// closeCell goes back into the table.
func (c *Crops) closeCell() {
	if c.cell.content.Visible() {
		c.cell.content.Hide()
		c.focus(c.grid)
	}
}

// focus gives the keys to a widget, where the area is in a window.
func (c *Crops) focus(to fyne.Focusable) {
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(c.grid); canvas != nil {
		canvas.Focus(to)
	}
}

// cellText is the chosen cell in full, which the cell may have no room for, with
// what the keys do about it. Minutes keep the rule that starts their clock.
func (c *Crops) cellText() string {
	row := c.grid.at()
	if row < 0 {
		return ""
	}
	t, col := c.grid.treatment(row), c.grid.columns[c.grid.column]
	text := inFull(c.session.Table(), t, col)
	if shipped, changed := col.edited(t); changed {
		text = joined("; ", text, shipped)
	}
	if col.field(t) == "" {
		return text
	}
	return look.Say("%s. Enter or F2 changes it.", strings.TrimSuffix(text, "."))
}

func inFull(table *reference.Table, t reference.Treatment, col column) string {
	if col.id == "minutes" || col.id == "clock" {
		return timeAndClock(t)
	}
	first, second := col.text(table, t)
	return joined(", ", first, second)
}
