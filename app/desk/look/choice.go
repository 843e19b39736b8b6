package look

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/reference"
)

// Choice is one line of a choice list.
type Choice struct {
	ID     string
	Title  string // "Snap beans, cut, water blanch"
	Detail string // "3 min from the return to the boil"
	Also   string // other names, which a search finds and nobody sees: "string beans"
}

// ChoiceList is a dialog to pick one of many: a search line and the list.
// Up and Down move, Enter picks, Escape leaves, wherever in it the focus is.
type ChoiceList struct {
	all, shown []Choice
	selected   int
	picked     func(id string)

	search *searchEntry
	list   *choiceLines
	none   *Text
	dialog *dialog.CustomDialog
}

// ShowChoice opens a choice list over a window. The current choice is marked.
func ShowChoice(parent fyne.Window, title string, choices []Choice, current string, picked func(id string)) *ChoiceList {
	c := NewChoiceList(choices, current, picked)
	cancel := NewButton(Say("Cancel"), c.close)
	cancel.Escape = c.close
	content := container.NewBorder(
		Column(6, c.search, c.none), container.NewHBox(cancel), nil, nil, c.list)
	c.dialog = dialog.NewCustomWithoutButtons(title, content, parent)
	size := parent.Canvas().Size()
	c.dialog.Resize(fyne.NewSize(min(640, size.Width-60), min(560, size.Height-60)))
	c.dialog.Show()
	parent.Canvas().Focus(c.search)
	if c.selected >= 0 {
		c.list.ScrollTo(c.selected)
	}
	return c
}

// NewChoiceList makes the list without its dialog.
func NewChoiceList(choices []Choice, current string, picked func(id string)) *ChoiceList {
	c := &ChoiceList{all: choices, shown: choices, selected: -1, picked: picked, none: Small("")}
	for i, one := range choices {
		if one.ID == current {
			c.selected = i
		}
	}
	c.none.Hide()
	c.search = &searchEntry{keys: c.key}
	c.search.ExtendBaseWidget(c.search)
	c.search.SetPlaceHolder(Say("Search"))
	c.search.OnChanged = c.Search
	c.list = &choiceLines{keys: c.key}
	c.list.Length, c.list.CreateItem, c.list.UpdateItem = func() int { return len(c.shown) }, newChoiceLine, c.updateLine
	c.list.ExtendBaseWidget(c.list)
	c.list.OnSelected = c.tapped
	c.list.HideSeparators = false
	return c
}

// Search shows the choices in which every typed word occurs.
func (c *ChoiceList) Search(text string) {
	words := strings.Fields(reference.Folded(text))
	c.shown = nil
	for _, one := range c.all {
		hay := reference.Folded(one.Title + " " + one.Detail + " " + one.Also)
		if hasAll(hay, words) {
			c.shown = append(c.shown, one)
		}
	}
	c.selected = min(0, len(c.shown)-1)
	c.none.SetText(Say("Nothing found for “%s”. Try fewer letters.", text))
	Show(c.none, len(c.shown) == 0)
	c.list.Refresh()
	c.list.ScrollToTop()
}

func hasAll(hay string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(hay, w) {
			return false
		}
	}
	return true
}

// Pick takes the marked choice.
func (c *ChoiceList) Pick() {
	if c.selected < 0 || c.selected >= len(c.shown) {
		return
	}
	id := c.shown[c.selected].ID
	c.close()
	c.picked(id)
}

func (c *ChoiceList) tapped(i widget.ListItemID) {
	c.selected = i
	c.Pick()
}

func (c *ChoiceList) close() {
	if c.dialog != nil {
		c.dialog.Hide()
	}
}

// key moves through the list and picks from it; it says whether it used the
// key.
func (c *ChoiceList) key(name fyne.KeyName) bool {
	step := 0
	switch name {
	case fyne.KeyEscape:
		c.close()
		return true
	case fyne.KeyReturn, fyne.KeyEnter:
		c.Pick()
		return true
	case fyne.KeyDown:
		step = 1
	case fyne.KeyUp:
		step = -1
	case fyne.KeyPageDown:
		step = 8
	case fyne.KeyPageUp:
		step = -8
	default:
		return false
	}
	c.selected = max(0, min(c.selected+step, len(c.shown)-1))
	c.list.Refresh()
	if len(c.shown) > 0 {
		c.list.ScrollTo(c.selected)
	}
	return true
}

// choiceLine is one line of the list.
type choiceLine struct {
	widget.BaseWidget
	title, detail *Text
	ground        *fyne.Container
	selected      bool
}

func newChoiceLine() fyne.CanvasObject {
	l := &choiceLine{
		title:  NewText("Crop, cut, method\n ", SizeText, Ink, fyne.TextStyle{}).Wrapped(),
		detail: NewText("minutes", SizeSmall, InkSoft, fyne.TextStyle{}).Clipped(),
	}
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer is for the toolkit.
func (l *choiceLine) CreateRenderer() fyne.WidgetRenderer {
	ground := newGround()
	l.ground = ground.box
	return &painted{
		WidgetRenderer: widget.NewSimpleRenderer(container.NewStack(ground.box, Inset(10, 5, Column(0, l.title, l.detail)))),
		repaint:        func() { ground.paint(l.selected) },
	}
}

func (c *ChoiceList) updateLine(i widget.ListItemID, o fyne.CanvasObject) {
	line := o.(*choiceLine)
	if i < 0 || i >= len(c.shown) {
		return
	}
	line.title.SetText(c.shown[i].Title)
	line.detail.SetText(c.shown[i].Detail)
	line.selected = i == c.selected
	line.Refresh()
}

// choiceLines is the list with the keys of the search line. The mark shows where
// it is; the toolkit would show a second one.
type choiceLines struct {
	widget.List
	keys    func(fyne.KeyName) bool
	focused bool
}

// CreateRenderer is for the toolkit.
func (l *choiceLines) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(l.List.CreateRenderer(), &l.focused)
}

// TypedKey is for the toolkit.
func (l *choiceLines) TypedKey(key *fyne.KeyEvent) { l.keys(key.Name) }

// FocusGained is for the toolkit.
func (l *choiceLines) FocusGained() { l.focused = true; l.Refresh() }

// FocusLost is for the toolkit.
func (l *choiceLines) FocusLost() { l.focused = false; l.Refresh() }

// searchEntry is an entry that hands the keys of the list on.
type searchEntry struct {
	widget.Entry
	keys    func(fyne.KeyName) bool
	focused bool
}

// CreateRenderer is for the toolkit.
func (e *searchEntry) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(e.Entry.CreateRenderer(), &e.focused)
}

// FocusGained is for the toolkit.
func (e *searchEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
}

// FocusLost is for the toolkit.
func (e *searchEntry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
}

// TypedKey is for the toolkit.
func (e *searchEntry) TypedKey(key *fyne.KeyEvent) {
	if !e.keys(key.Name) {
		e.Entry.TypedKey(key)
	}
}
