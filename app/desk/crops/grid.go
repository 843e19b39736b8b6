package crops

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// grid is the table on the screen. It shows rows of the crop table in the order
// that it is given, with a heading that stays in view when they go up and down
// and the crop that stays in view when they go sideways. One row is chosen, and
// in it one cell is what the keys are about. The toolkit's own table keeps its
// first columns in view only where all columns are of one width.
type grid struct {
	widget.BaseWidget
	table   *reference.Table
	rows    []int // places in table.Treatments
	columns []column
	chosen  string // treatment
	column  int    // of the cell that the keys are about
	sorted  reference.SortBy
	focused bool

	onChosen func(id string)
	onSort   func(reference.SortBy)
	onUse    func()                         // Enter where nothing can be changed
	onChange func(id string, c column) bool // Enter and F2; false where nothing can be changed
	onLeave  func()                         // Up from the first row, Escape
	onMoved  func()                         // another cell, or other rows in view
	sheet    *sheet
}

var (
	_ fyne.Focusable  = (*grid)(nil)
	_ fyne.Scrollable = (*grid)(nil)
)

func newGrid() *grid {
	g := &grid{columns: standing(usual())}
	g.sheet = newSheet(g)
	g.ExtendBaseWidget(g)
	return g
}

// CreateRenderer is for the toolkit.
func (g *grid) CreateRenderer() fyne.WidgetRenderer { return g.sheet }

// setRows shows other rows, or the same rows of a table that changed.
func (g *grid) setRows(table *reference.Table, rows []int, sorted reference.SortBy) {
	g.table, g.rows, g.sorted = table, rows, sorted
	g.Refresh()
}

// setColumns shows other columns. The cell that the keys are about stays in its
// column where that still stands.
func (g *grid) setColumns(columns []column) {
	was := g.columns[g.column].id
	g.columns, g.column = columns, 0
	for i, c := range columns {
		if c.id == was {
			g.column = i
		}
	}
	g.sheet.wide = 0 // the widths are shared out anew
	g.Refresh()
	g.reveal()
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

// placeOf is where a treatment and a column stand; false where one is not shown.
func (g *grid) placeOf(id, columnID string) (place, bool) {
	row := slices.IndexFunc(g.rows, func(r int) bool { return g.table.Treatments[r].ID == id })
	col := slices.IndexFunc(g.columns, func(c column) bool { return c.id == columnID })
	return place{row, col}, row >= 0 && col >= 0
}

// treatment is the one of a row.
func (g *grid) treatment(row int) reference.Treatment { return g.table.Treatments[g.rows[row]] }

// chooseRow is the choice of a person.
func (g *grid) chooseRow(row int) {
	if row >= 0 && row < len(g.rows) {
		g.onChosen(g.treatment(row).ID)
	}
}

// choose marks a treatment.
func (g *grid) choose(id string) {
	if g.chosen != id {
		g.chosen = id
		g.Refresh()
	}
}

// update sets everything about a cell.
func (g *grid) update(at place, c *cell) {
	if at.row >= len(g.rows) || at.col >= len(g.columns) {
		return
	}
	t, col := g.treatment(at.row), g.columns[at.col]
	c.tapped = func() { g.tapped(at) }
	c.first, c.second = col.text(g.table, t)
	c.ink, c.inkBelow = look.Ink, look.InkSoft
	c.strong = g.strong(at.col)
	c.chosen = t.ID == g.chosen
	c.current = c.chosen && g.focused && at.col == g.column
	shipped, changed := col.edited(t)
	if changed {
		c.second, c.ink, c.inkBelow = shipped, look.Edited, look.Edited
	}
	c.marked = g.marked(t, at.col)
	c.Refresh()
}

// strong says whether a column is set in bold.
func (g *grid) strong(col int) bool { return col == 0 || g.columns[col].id == "minutes" }

// marked says whether a cell has the sign of a change made here: what was
// changed, and its crop.
func (g *grid) marked(t reference.Treatment, col int) bool {
	_, changed := g.columns[col].edited(t)
	return changed || col == 0 && len(t.Changed) > 0
}

func (g *grid) updateHead(col int, h *head) {
	c := g.columns[col]
	h.col, h.title, h.sorts, h.arrow = col, look.Say(c.title), c.sort != "", nil
	if h.sorts && c.sort == g.sorted.Column {
		h.arrow = look.IconUp()
		if g.sorted.Descending {
			h.arrow = look.IconDown()
		}
	}
	h.Refresh()
}

// sort goes from up to down to the order of the table.
func (g *grid) sort(col int) {
	next := reference.SortBy{Column: g.columns[col].sort}
	if g.sorted.Column == next.Column {
		next.Descending = true
		if g.sorted.Descending {
			next = reference.SortBy{}
		}
	}
	g.onSort(next)
}

// tapped chooses a cell; a tap on the chosen one changes it, where it can be.
func (g *grid) tapped(at place) {
	again := at == place{g.at(), g.column}
	if g.chooseRow(at.row); g.at() == at.row { // and not where a form is still open
		g.column = at.col
	}
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(g); canvas != nil {
		canvas.Focus(g)
	}
	if again {
		g.change()
	}
	g.onMoved()
}

// change asks for a change of the chosen cell; false where it has none.
func (g *grid) change() bool { return g.at() >= 0 && g.onChange(g.chosen, g.columns[g.column]) }

// TypedKey moves the choice through rows and columns.
func (g *grid) TypedKey(key *fyne.KeyEvent) {
	const page = 10
	switch key.Name {
	case fyne.KeyDown:
		g.move(1)
	case fyne.KeyUp:
		if g.at() <= 0 {
			g.onLeave()
			return
		}
		g.move(-1)
	case fyne.KeyPageDown:
		g.move(page)
	case fyne.KeyPageUp:
		g.move(-page)
	case fyne.KeyHome:
		g.move(-len(g.rows))
	case fyne.KeyEnd:
		g.move(len(g.rows))
	case fyne.KeyLeft:
		g.moveAcross(-1)
	case fyne.KeyRight:
		g.moveAcross(1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if !g.change() {
			g.onUse()
		}
	case fyne.KeyF2:
		g.change()
	case fyne.KeyEscape:
		g.onLeave()
	}
}

func (g *grid) move(by int) {
	if len(g.rows) == 0 {
		return
	}
	g.chooseRow(max(0, min(g.at()+by, len(g.rows)-1)))
	g.reveal()
}

func (g *grid) moveAcross(by int) {
	g.column = max(0, min(g.column+by, len(g.columns)-1))
	g.Refresh()
	g.reveal()
}

// reveal scrolls to the cell that the keys are about.
func (g *grid) reveal() {
	if row := g.at(); row >= 0 {
		g.sheet.reveal(place{row, g.column})
	}
	g.onMoved()
}

// Scrolled passes the wheel on where it turns over the crop or the headings.
func (g *grid) Scrolled(e *fyne.ScrollEvent) { g.sheet.scroll.Scrolled(e) }

// TypedRune is for the toolkit.
func (g *grid) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (g *grid) FocusGained() { g.setFocused(true) }

// FocusLost is for the toolkit.
func (g *grid) FocusLost() { g.setFocused(false) }

func (g *grid) setFocused(focused bool) {
	g.focused = focused
	g.sheet.place(true)
	g.onMoved()
}
