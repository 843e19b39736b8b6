// Package crops is the crop table in the window: search, filters and sorting,
// the record of the chosen treatment beside it with everything that belongs to
// it, its use in a batch, and changes that are laid over the shipped values.
package crops

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Crops is the crop table area.
type Crops struct {
	// Content is what the window shows.
	Content fyne.CanvasObject
	// OpenQuestion leads to the answer of a question from the room.
	OpenQuestion func(id string)
	// ColumnsChosen is called with the names of the columns after each choice.
	ColumnsChosen func(names []string)

	session *session.Session
	now     func() time.Time // the day and hour of an edit
	view    reference.View

	search                  *searchEntry
	group, method, standing *widget.Select
	changed                 *widget.Check
	count                   *look.Text
	filters                 *fyne.Container
	grid                    *grid
	foot                    *cell             // the chosen cell in full
	none                    fyne.CanvasObject // instead of rows, where nothing fits
	record                  *record
	form, cell              *form // in place of the record, over a cell
	choosing                *choosing
	columns                 []string // that were chosen
	shownTable              *reference.Table
	follower                *look.Follower
}

// New makes the area. openBatch leads to the batch that was just added.
func New(s *session.Session, openBatch func()) *Crops {
	c := &Crops{session: s, now: time.Now}
	c.makeFilters()
	c.grid = newGrid()
	c.grid.onChosen, c.grid.onSort, c.grid.onUse = c.choose, c.sortBy, c.use
	c.grid.onChange, c.grid.onLeave, c.grid.onMoved = c.changeCell, func() { c.focus(c.search) }, c.moved
	c.foot = newCell()
	c.foot.bare = true
	c.record = newRecord(c, openBatch)
	c.form, c.cell = newSideForm(c), newCellForm(c)
	c.form.content.Hide()
	c.choosing = newChoosing(c)
	side := container.NewStack(c.record.content, c.form.content, c.choosing.content)
	c.none = container.NewCenter(look.Column(10, look.Heading(look.Say("Nothing fits")),
		look.Label(look.Say("No treatment of the table fits this search and these filters.")),
		container.NewHBox(widget.NewButton(look.Say("Show all"), c.ShowAll))))

	foot := container.NewBorder(look.Hairline(), nil, nil, look.Inset(8, 4, widget.NewButton(look.Say("Columns…"), c.openColumns)), c.foot)
	rows := container.NewBorder(nil, foot, nil, nil, container.NewStack(c.grid, c.none, c.cell.content))
	body := container.New(&beside{}, rows, look.NewSurface(look.Rule, look.Inset(0.5, 0, look.Column(0))), side)
	c.filters = c.filterLine()
	c.Content = container.NewBorder(look.Column(0, look.Inset(14, 8, c.filters), look.Hairline()), nil, nil, nil, body)
	if len(s.Table().Treatments) > 0 {
		c.grid.chosen = s.Table().Treatments[0].ID
	}
	c.SetColumns(nil)
	c.follower = look.Follow(c.Content, c.show)
	s.Subscribe(c.follower.Changed)
	c.show()
	return c
}

func (c *Crops) makeFilters() {
	c.search = newSearchEntry(func() { c.focus(c.grid); c.grid.reveal() })
	c.search.SetPlaceHolder(look.Say("Search crop, cut, words"))
	c.search.OnChanged = func(text string) { c.view.Text = text; c.show() }
	c.count = look.NewText("", look.SizeSmall, look.InkSoft, fyne.TextStyle{})
	c.group = filter(c, look.Say("All groups"), groups(c.session.Table()),
		func(g reference.Group) string { return look.Say(string(g)) },
		func(only []reference.Group) {
			c.view.Group = ""
			if len(only) > 0 {
				c.view.Group = only[0]
			}
		})
	c.method = filter(c, look.Say("All methods"), []reference.Method{reference.WaterBlanch, reference.SteamBlanch, reference.CookThrough, reference.NoHeat},
		func(m reference.Method) string { return look.Sentence(look.Say(session.MethodName(m))) },
		func(only []reference.Method) { c.view.Methods = only })
	c.standing = filter(c, look.Say("Any standing"),
		[]reference.Standing{reference.Read, reference.ReadElsewhere, reference.FromMemory, reference.CommonPractice, reference.EnteredHere},
		func(s reference.Standing) string { return look.Say(string(s)) },
		func(only []reference.Standing) { c.view.Standings = only })
	c.changed = widget.NewCheck(look.Say("Changed here"), func(on bool) { c.view.Changed = on; c.show() })
}

// filter is one choice that narrows the view to one of the values, by their
// names; the first option does not.
func filter[T any](c *Crops, all string, values []T, name func(T) string, set func(only []T)) *widget.Select {
	options := []string{all}
	for _, v := range values {
		options = append(options, name(v))
	}
	s := widget.NewSelect(options, nil)
	s.PlaceHolder = " "
	s.SetSelectedIndex(0)
	s.OnChanged = func(string) {
		at := s.SelectedIndex()
		set(values[max(at-1, 0):max(at, 0)])
		c.show()
	}
	return s
}

// filterLine is one line where there is room, two in a narrow window.
func (c *Crops) filterLine() *fyne.Container {
	choices := container.NewHBox(look.Wide(150, look.Boxed(c.group)), look.Wide(136, look.Boxed(c.method)), look.Wide(136, look.Boxed(c.standing)), c.changed)
	return container.New(&folding{gap: 8, least: 190}, c.search, choices, container.NewCenter(c.count))
}

// groups are the groups of crops in the order of the table.
func groups(t *reference.Table) (all []reference.Group) {
	for _, crop := range t.Crops {
		if !slices.Contains(all, crop.Group) {
			all = append(all, crop.Group)
		}
	}
	return all
}

// Shown is called when the area is shown again.
func (c *Crops) Shown() { c.follower.Shown() }

// show brings rows and record up to date.
func (c *Crops) show() {
	if c.record == nil { // filters are still being made
		return
	}
	table := c.session.Table()
	rows, err := table.Rows(c.view)
	if err != nil {
		fyne.LogError("the crop table cannot be sorted so", err)
		rows = nil
	}
	if table != c.shownTable && c.typing() == nil { // an open form shows what was
		c.closeForm()
		c.closeCell()
	}
	c.shownTable = table
	sorted := reference.SortBy{}
	if len(c.view.Sort) > 0 {
		sorted = c.view.Sort[0]
	}
	c.grid.setRows(table, rows, sorted)
	look.Show(c.none, len(rows) == 0)
	look.Show(c.grid, len(rows) > 0)
	c.count.SetText(countText(len(rows), len(table.Treatments)))
	look.Rearrange(c.filters) // the count is of another width
	if !c.Unfinished() && len(rows) > 0 && !c.among(c.grid.chosen) {
		c.grid.choose(table.Treatments[rows[0]].ID) // the record is one of those on view
	}
	if c.typing() == nil && c.cell.content.Visible() && c.cell.treatment.ID != c.grid.chosen {
		c.cell.content.Hide() // its cell is not on view any more
	}
	c.record.show(c.grid.chosen)
	c.moved()
}

// moved follows the chosen cell: its text in full stands under the table, and
// the form that is open over it goes with it.
func (c *Crops) moved() {
	if c.foot == nil {
		return
	}
	c.foot.first = c.cellText()
	c.foot.Refresh()
	if c.cell.content.Visible() {
		look.Rearrange(c.cell.content)
	}
}

// jump goes to a treatment, whether or not the filters let it through.
func (c *Crops) jump(id string) {
	if !c.among(id) {
		c.ShowAll()
	}
	c.choose(id)
	c.grid.reveal()
}

// openQuestion leads to a question, where somebody listens.
func (c *Crops) openQuestion(id string) {
	if c.OpenQuestion != nil {
		c.OpenQuestion(id)
	}
}

// among says whether a treatment is among the rows on view.
func (c *Crops) among(id string) bool { return slices.Contains(c.grid.table.IDs(c.grid.rows), id) }

func countText(shown, all int) string {
	if shown == all {
		return look.Say("%d treatments", all)
	}
	return look.Say("%d of %d", shown, all)
}

func (c *Crops) sortBy(by reference.SortBy) {
	c.view.Sort = nil
	if by.Column != "" {
		c.view.Sort = []reference.SortBy{by}
	}
	c.show()
	c.grid.sheet.toTop()
}

// ShowAll takes every filter away.
func (c *Crops) ShowAll() {
	c.search.SetText("")
	for _, s := range []*widget.Select{c.group, c.method, c.standing} {
		s.SetSelectedIndex(0)
	}
	c.changed.SetChecked(false)
}

// Focus puts the cursor into the search line.
func (c *Crops) Focus(canvas fyne.Canvas) { canvas.Focus(c.search) }

// choose shows another record, unless a change of this one is being typed: the
// form then stays and says so.
func (c *Crops) choose(id string) {
	if f := c.typing(); f != nil {
		c.grid.choose(f.treatment.ID)
		f.complain(look.Say(unfinished))
		return
	}
	c.closeForm()
	c.cell.content.Hide()
	c.grid.choose(id)
	c.record.show(id)
	c.moved()
}

// unfinished is what the form says when another record is asked for.
var unfinished = words.Key("This change is not made yet: make it, or give it up, before you go on.")

// Unfinished says whether a change of a value is being typed and was neither
// made nor given up.
func (c *Crops) Unfinished() bool { return c.typing() != nil }

// typing is the form in which something is typed, nil where none is.
func (c *Crops) typing() *form {
	for _, f := range []*form{c.form, c.cell} {
		if f.content.Visible() && f.typed() {
			return f
		}
	}
	return nil
}

// GiveUp closes the forms without making the change that is typed in them.
func (c *Crops) GiveUp() {
	c.closeForm()
	c.closeCell()
}

// use adds a batch with the chosen treatment to the class.
func (c *Crops) use() {
	if err := c.session.AddBatch(c.grid.chosen); err != nil {
		c.record.say(plain(err))
		return
	}
	one, _ := c.session.SelectedBatch()
	c.record.added(look.Say("“%s” is batch %d of the class.", one.Batch.Name, c.session.Selected()+1))
}

func (c *Crops) openForm() {
	t, ok := c.session.Table().Treatment(c.grid.chosen)
	if !ok {
		return
	}
	if f := c.typing(); f != nil {
		f.complain(look.Say(unfinished))
		return
	}
	c.closeCell()
	c.form.start(t, "")
	c.record.content.Hide()
	c.form.content.Show()
	c.focus(c.form.field)
}

func (c *Crops) closeForm() {
	c.form.content.Hide()
	if !c.choosing.content.Visible() {
		c.record.content.Show()
	}
}
