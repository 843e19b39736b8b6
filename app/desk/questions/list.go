package questions

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

// list is the questions that were found. One of them may be open, and one is
// marked: Enter opens that.
type list struct {
	scroll *container.Scroll
	whole  *fyne.Container
	box    *fyne.Container
	none   *look.Text // instead of lines, where nothing was found
	place  *fyne.Container
	open   func(id string)

	lines    map[string]*line // of every question that was listed once
	headings map[string]fyne.CanvasObject
	now      found
	listed   []string // the ids, in their order
	marked   string
	chosen   string
	walking  bool // the entry has the focus
}

func newList(open func(id string)) *list {
	l := &list{open: open, lines: map[string]*line{}, headings: map[string]fyne.CanvasObject{}}
	l.none = look.Small("")
	l.place = look.Inset(lineInset, 4, l.none)
	l.box = look.Column(0)
	l.whole = look.Column(0, l.place, l.box)
	l.scroll = container.NewVScroll(l.whole)
	return l
}

// show lists what was found. Where words were typed the first question is
// marked, unless another one is.
func (l *list) show(f found) {
	if !f.equal(l.now) {
		l.now = f
		l.fill()
	}
	if !slices.Contains(l.listed, l.marked) {
		l.marked = ""
	}
	if f.typed && l.marked == "" && len(l.listed) > 0 {
		l.marked = l.listed[0]
	}
	l.paint()
}

func (l *list) fill() {
	l.listed, l.box.Objects = nil, nil
	for _, g := range l.now.groups {
		if g.heading != "" && len(g.questions) > 0 {
			l.box.Objects = append(l.box.Objects, l.heading(g.heading))
		}
		for _, q := range g.questions {
			l.listed = append(l.listed, q.ID)
			one := l.line(q.ID)
			one.text.SetText(q.Asks)
			l.box.Objects = append(l.box.Objects, one.box)
		}
	}
	l.none.SetText(l.now.none)
	look.Show(l.place, l.now.none != "")
	if l.scroll.Size().Width > 0 { // without a width every letter would be a line of its own
		look.Rearrange(l.whole)
		l.scroll.Refresh()
	}
}

func (l *list) line(id string) *line {
	if l.lines[id] == nil {
		l.lines[id] = newLine(func() { l.open(id) })
	}
	return l.lines[id]
}

func (l *list) heading(text string) fyne.CanvasObject {
	if l.headings[text] == nil {
		l.headings[text] = look.Inset(lineInset, 8, smallHeading(text))
	}
	return l.headings[text]
}

// choose says which question is open.
func (l *list) choose(id string) {
	l.chosen = id
	if slices.Contains(l.listed, id) {
		l.marked = id
		l.reveal(id)
	}
	l.paint()
}

// setWalking says whether the entry has the focus, so that Enter opens what is
// marked.
func (l *list) setWalking(walking bool) {
	l.walking = walking
	l.paint()
}

// walk moves the mark and brings it into view.
func (l *list) walk(by int) {
	if len(l.listed) == 0 {
		return
	}
	at := slices.Index(l.listed, l.marked)
	if at < 0 && by > 0 {
		by = 1 // the first step is onto the list
	}
	l.marked = l.listed[max(0, min(at+by, len(l.listed)-1))]
	l.reveal(l.marked)
	l.paint()
}

func (l *list) paint() {
	for id, one := range l.lines {
		one.choose(id == l.chosen)
		one.mark(l.walking && id == l.marked)
	}
}

// reveal scrolls as little as brings a question into view; with the first one
// comes the heading over it.
func (l *list) reveal(id string) {
	one := l.lines[id].box
	top := l.box.Position().Y + one.Position().Y
	low := top + one.Size().Height - l.scroll.Size().Height
	if id == l.listed[0] {
		top = 0
	}
	l.scroll.ScrollToOffset(fyne.NewPos(0, min(max(l.scroll.Offset.Y, low), top)))
}
