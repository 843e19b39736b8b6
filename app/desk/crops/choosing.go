package crops

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// choosing is where the columns of the table are chosen. It stands in place of
// the record.
type choosing struct {
	crops   *Crops
	content *fyne.Container
	scroll  *container.Scroll
	ticks   []*tick
	usual   *widget.Button
	done    *widget.Button
}

func newChoosing(c *Crops) *choosing {
	p := &choosing{crops: c}
	list := look.Column(2)
	for i, col := range choosable() {
		t := &tick{id: col.id, leave: c.closeColumns, next: func(by int) { p.step(i + by) }}
		t.Text = col.choice()
		t.ExtendBaseWidget(t)
		p.ticks = append(p.ticks, t)
		list.Add(t)
	}
	p.usual = widget.NewButton(look.Say("Show the usual columns"), func() { c.chooseColumns(usual()) })
	p.done = widget.NewButton(look.Say("Done"), c.closeColumns)
	p.done.Importance = widget.HighImportance
	all := widget.NewButton(look.Say("Show all"), func() { c.chooseColumns(everyColumn()) })
	head := look.Column(10, look.Heading(look.Say("Columns")), container.NewHBox(p.done, all), container.NewHBox(p.usual),
		look.Small(look.Say("The crop always stands in the table, and when the clock starts always stands beside the minutes.")))
	p.scroll = look.VScroll(14, 6, list)
	p.content = container.NewBorder(look.Column(0, look.Inset(14, 10, head), look.Hairline()), nil, nil, nil, p.scroll)
	p.content.Hide()
	return p
}

// everyColumn are the ids of all columns that may be chosen.
func everyColumn() []string {
	var ids []string
	for _, c := range choosable() {
		ids = append(ids, c.id)
	}
	return ids
}

// step puts the cursor on a tick.
func (p *choosing) step(to int) {
	p.crops.focus(p.ticks[max(0, min(to, len(p.ticks)-1))])
}

// show ticks the columns that stand.
func (p *choosing) show(ids []string) {
	for _, t := range p.ticks {
		t.OnChanged = nil // nobody ticked it
		t.SetChecked(slices.Contains(ids, t.id))
		t.OnChanged = func(bool) { p.crops.chooseColumns(p.ticked()) }
	}
}

// ticked are the ids of the columns that are ticked.
func (p *choosing) ticked() []string {
	var ids []string
	for _, t := range p.ticks {
		if t.Checked {
			ids = append(ids, t.id)
		}
	}
	return ids
}

// SetColumns shows the columns with these names, as they were chosen before;
// names of no column are passed over, and without any the usual ones stand.
func (c *Crops) SetColumns(names []string) {
	c.columns = known(names)
	c.grid.setColumns(standing(c.columns))
	c.choosing.show(c.columns)
}

// chooseColumns shows other columns and has them remembered. The crop alone is
// no table: without any other the usual ones come back.
func (c *Crops) chooseColumns(ids []string) {
	c.SetColumns(ids)
	if c.ColumnsChosen != nil {
		c.ColumnsChosen(c.columns)
	}
}

// openColumns shows the choice of columns, with the cursor in it.
func (c *Crops) openColumns() {
	if f := c.typing(); f != nil {
		f.complain(look.Say(unfinished))
		return
	}
	c.closeForm()
	c.closeCell()
	c.record.content.Hide()
	c.choosing.content.Show()
	c.choosing.step(0)
}

// closeColumns goes back into the table.
func (c *Crops) closeColumns() {
	c.choosing.content.Hide()
	c.record.content.Show()
	c.focus(c.grid)
}

// tick stands for one column. Up and Down go through the list, Space ticks,
// Escape leaves.
type tick struct {
	widget.Check
	id    string
	leave func()
	next  func(by int)
}

// FocusGained is for the toolkit.
func (t *tick) FocusGained() {
	t.Check.FocusGained()
	look.Reveal(t)
}

// TypedKey is for the toolkit.
func (t *tick) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyDown:
		t.next(1)
	case fyne.KeyUp:
		t.next(-1)
	case fyne.KeyEscape:
		t.leave()
	default:
		t.Check.TypedKey(key)
	}
}
