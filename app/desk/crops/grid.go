package crops

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// grid is the table on the screen. It shows rows of the crop table in the order
// that it is given and marks the chosen one; the toolkit's table marks only a
// cell, so the mark is ours.
type grid struct {
	widget.Table
	table  *reference.Table
	rows   []int // places in table.Treatments
	chosen string
	sorted reference.SortBy

	onChosen func(id string)
	onSort   func(reference.SortBy)
	onUse    func() // Enter
	width    float32
}

var _ fyne.Focusable = (*grid)(nil)

func newGrid() *grid {
	g := &grid{}
	g.Length = func() (int, int) { return len(g.rows), len(columns) }
	g.CreateCell = func() fyne.CanvasObject { return newCell() }
	g.UpdateCell = g.update
	g.ShowHeaderRow = true
	g.CreateHeader = func() fyne.CanvasObject { return newHead(g.sort) }
	g.UpdateHeader = g.updateHead
	g.OnSelected = func(id widget.TableCellID) { g.chooseRow(id.Row) }
	g.ExtendBaseWidget(g)
	return g
}

// setRows shows other rows, or the same rows of a table that changed.
func (g *grid) setRows(table *reference.Table, rows []int, sorted reference.SortBy) {
	g.table, g.rows, g.sorted = table, rows, sorted
	g.UnselectAll()
	g.Refresh()
}

// at is the row in which the chosen treatment stands, -1 where it is not shown.
func (g *grid) at() int {
	for i, r := range g.rows {
		if g.table.Treatments[r].ID == g.chosen {
			return i
		}
	}
	return -1
}

func (g *grid) chooseRow(row int) {
	g.UnselectAll()
	if row < 0 || row >= len(g.rows) {
		return
	}
	g.choose(g.table.Treatments[g.rows[row]].ID)
	g.onChosen(g.chosen)
}

// choose marks a treatment.
func (g *grid) choose(id string) {
	g.chosen = id
	g.Refresh()
}

func (g *grid) update(id widget.TableCellID, o fyne.CanvasObject) {
	c := o.(*cell)
	if id.Row < 0 || id.Row >= len(g.rows) || id.Col < 0 || id.Col >= len(columns) {
		return
	}
	t, col := g.table.Treatments[g.rows[id.Row]], columns[id.Col]
	c.first, c.second = col.text(g.table, t)
	c.ink, c.inkBelow = look.Ink, look.InkSoft
	c.strong = id.Col == 0 || col.sort == reference.ByMinutes
	c.chosen = t.ID == g.chosen
	if shipped, changed := col.edited(t); changed {
		c.second, c.ink, c.inkBelow = shipped, look.Edited, look.Edited
	}
	c.marked = id.Col == 0 && len(t.Changed) > 0
	c.Refresh()
}

func (g *grid) updateHead(id widget.TableCellID, o fyne.CanvasObject) {
	h := o.(*head)
	if id.Col < 0 || id.Col >= len(columns) {
		return
	}
	col := columns[id.Col]
	h.col, h.title, h.sorts, h.arrow = id.Col, col.title, col.sort != "", nil
	if col.sort != "" && col.sort == g.sorted.Column {
		h.arrow = look.IconUp()
		if g.sorted.Descending {
			h.arrow = look.IconDown()
		}
	}
	h.Refresh()
}

// sort goes from up to down to the order of the table.
func (g *grid) sort(col int) {
	next := reference.SortBy{Column: columns[col].sort}
	if g.sorted.Column == next.Column {
		next.Descending = true
		if g.sorted.Descending {
			next = reference.SortBy{}
		}
	}
	g.onSort(next)
}

// Resize lets the columns grow with the table.
func (g *grid) Resize(size fyne.Size) {
	if size.Width != g.width {
		g.width = size.Width
		for i, wide := range widths(size.Width) {
			g.SetColumnWidth(i, wide)
		}
	}
	g.Table.Resize(size)
}

// TypedKey moves the choice through the rows.
func (g *grid) TypedKey(key *fyne.KeyEvent) {
	const page = 10
	switch key.Name {
	case fyne.KeyDown:
		g.move(1)
	case fyne.KeyUp:
		g.move(-1)
	case fyne.KeyPageDown:
		g.move(page)
	case fyne.KeyPageUp:
		g.move(-page)
	case fyne.KeyHome:
		g.move(-len(g.rows))
	case fyne.KeyEnd:
		g.move(len(g.rows))
	case fyne.KeyReturn, fyne.KeyEnter:
		g.onUse()
	}
}

func (g *grid) move(by int) {
	if len(g.rows) == 0 {
		return
	}
	row := max(0, min(g.at()+by, len(g.rows)-1))
	g.chooseRow(row)
	g.ScrollTo(widget.TableCellID{Row: row})
}
