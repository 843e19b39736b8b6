// Package crops is the crop table in the window: search, filters and sorting,
// the record of the chosen treatment beside it with everything that belongs to
// it, its use in a batch, and changes that are laid over the shipped values.
package crops

import (
	"fmt"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/reference"
)

// Crops is the crop table area.
type Crops struct {
	// Content is what the window shows.
	Content fyne.CanvasObject

	session *session.Session
	now     func() time.Time // the day and hour of an edit
	view    reference.View

	search                  *widget.Entry
	group, method, standing *widget.Select
	changed                 *widget.Check
	count                   *look.Text
	filters                 *fyne.Container
	grid                    *grid
	none                    fyne.CanvasObject // instead of rows, where nothing fits
	record                  *record
	form                    *form
	side                    *fyne.Container
}

// The choices that do not filter.
const (
	allGroups    = "All groups"
	allMethods   = "All methods"
	anyStanding  = "Any standing"
	searchPrompt = "Search crop, cut, words"
)

var methods = map[string]reference.Method{
	"Water blanch": reference.WaterBlanch, "Steam blanch": reference.SteamBlanch,
	"Cook": reference.CookThrough, "Without heating": reference.NoHeat,
}

// New makes the area. openBatch leads to the batch that was just added.
func New(s *session.Session, openBatch func()) *Crops {
	c := &Crops{session: s, now: time.Now}
	c.makeFilters()
	c.grid = newGrid()
	c.grid.onChosen, c.grid.onSort, c.grid.onUse = c.choose, c.sortBy, c.use
	c.record = newRecord(c, openBatch)
	c.form = newForm(c)
	c.form.content.Hide()
	c.side = container.NewStack(c.record.content, c.form.content)
	c.none = container.NewCenter(look.Column(10, look.Heading("Nothing fits"),
		look.Label("No treatment of the table fits this search and these filters."),
		container.NewHBox(widget.NewButton("Show all", c.ShowAll))))

	body := container.New(&beside{}, container.NewStack(c.grid, c.none), look.NewSurface(look.Rule, look.Inset(0.5, 0, look.Column(0))), c.side)
	c.filters = c.filterLine()
	c.Content = container.NewBorder(look.Column(0, look.Inset(14, 8, c.filters), look.Hairline()), nil, nil, nil, body)
	if len(s.Table().Treatments) > 0 {
		c.grid.chosen = s.Table().Treatments[0].ID
	}
	s.Subscribe(c.show)
	c.show()
	return c
}

func (c *Crops) makeFilters() {
	c.search = widget.NewEntry()
	c.search.SetPlaceHolder(searchPrompt)
	c.search.OnChanged = func(text string) { c.view.Text = text; c.show() }
	c.count = look.NewText("", look.SizeSmall, look.InkSoft, fyne.TextStyle{})
	c.group = c.filter(append([]string{allGroups}, groups(c.session.Table())...), func(text string) {
		c.view.Group = ""
		if text != allGroups {
			c.view.Group = text
		}
	})
	c.method = c.filter([]string{allMethods, "Water blanch", "Steam blanch", "Cook", "Without heating"}, func(text string) {
		c.view.Methods = nil
		if m, ok := methods[text]; ok {
			c.view.Methods = []reference.Method{m}
		}
	})
	standings := []reference.Standing{reference.Read, reference.ReadElsewhere, reference.FromMemory, reference.CommonPractice, reference.EnteredHere}
	names := []string{anyStanding}
	for _, s := range standings {
		names = append(names, string(s))
	}
	c.standing = c.filter(names, func(text string) {
		c.view.Standings = nil
		if text != anyStanding {
			c.view.Standings = []reference.Standing{reference.Standing(text)}
		}
	})
	c.changed = widget.NewCheck("Changed here", func(on bool) { c.view.Changed = on; c.show() })
}

// filter is one choice that narrows the view; the first option does not.
func (c *Crops) filter(options []string, set func(string)) *widget.Select {
	s := widget.NewSelect(options, nil)
	s.PlaceHolder = " "
	s.SetSelectedIndex(0)
	s.OnChanged = func(text string) { set(text); c.show() }
	return s
}

// filterLine is one line where there is room, two in a narrow window.
func (c *Crops) filterLine() *fyne.Container {
	choices := container.NewHBox(look.Wide(150, look.Boxed(c.group)), look.Wide(136, look.Boxed(c.method)), look.Wide(136, look.Boxed(c.standing)), c.changed)
	return container.New(&folding{gap: 8, least: 190}, c.search, choices, container.NewCenter(c.count))
}

// groups are the groups of crops, in the order of the table.
func groups(t *reference.Table) []string {
	var names []string
	for _, crop := range t.Crops {
		if !slices.Contains(names, crop.Group) {
			names = append(names, crop.Group)
		}
	}
	return names
}

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
	sorted := reference.SortBy{}
	if len(c.view.Sort) > 0 {
		sorted = c.view.Sort[0]
	}
	c.grid.setRows(table, rows, sorted)
	look.Show(c.none, len(rows) == 0)
	look.Show(c.grid, len(rows) > 0)
	c.count.SetText(countText(len(rows), len(table.Treatments)))
	c.filters.Refresh()
	if !c.Unfinished() && len(rows) > 0 && !c.shown(rows) {
		c.grid.choose(table.Treatments[rows[0]].ID) // the record is one of those on view
	}
	c.record.show(c.grid.chosen)
}

// shown says whether the chosen treatment is among the rows on view.
func (c *Crops) shown(rows []int) bool {
	for _, r := range rows {
		if c.session.Table().Treatments[r].ID == c.grid.chosen {
			return true
		}
	}
	return false
}

func countText(shown, all int) string {
	if shown == all {
		return fmt.Sprintf("%d treatments", all)
	}
	return fmt.Sprintf("%d of %d", shown, all)
}

func (c *Crops) sortBy(by reference.SortBy) {
	c.view.Sort = nil
	if by.Column != "" {
		c.view.Sort = []reference.SortBy{by}
	}
	c.show()
	c.grid.ScrollToTop()
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
	if c.Unfinished() {
		c.grid.choose(c.form.treatment.ID)
		c.form.complain(unfinished)
		return
	}
	c.closeForm()
	c.grid.choose(id)
	c.record.show(id)
}

// unfinished is what the form says when another record is asked for.
const unfinished = "This change is not made yet: choose “Change it here” to make it, or “Cancel” to give it up."

// Unfinished says whether a change of a value is being typed and was neither
// made nor given up.
func (c *Crops) Unfinished() bool { return c.form.content.Visible() && c.form.typed() }

// GiveUp closes the form without making the change that is typed in it.
func (c *Crops) GiveUp() { c.closeForm() }

// use adds a batch with the chosen treatment to the class.
func (c *Crops) use() {
	if err := c.session.AddBatch(c.grid.chosen); err != nil {
		c.record.say(look.Sentence(err.Error()))
		return
	}
	one, _ := c.session.SelectedBatch()
	c.record.added(fmt.Sprintf("“%s” is batch %d of the class.", one.Batch.Name, c.session.Selected()+1))
}

func (c *Crops) openForm() {
	t, ok := c.session.Table().Treatment(c.grid.chosen)
	if !ok {
		return
	}
	c.form.start(t)
	c.record.content.Hide()
	c.form.content.Show()
}

func (c *Crops) closeForm() {
	c.form.content.Hide()
	c.record.content.Show()
}
