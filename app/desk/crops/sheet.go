package crops

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/kettleside/app/desk/look"
)

// place is a cell of the table: row and column as shown.
type place struct{ row, col int }

// sheet draws a grid. Only cells in view exist; those that leave it are used
// again. The crop and the headings stand beside and over what scrolls, and are
// moved as it is.
type sheet struct {
	grid   *grid
	size   fyne.Size
	wide   float32 // that the widths were shared out for; 0: do so anew
	scale  float32
	widths []float32
	tops   []float32       // where each row begins, and where the last ends
	need   map[wrapped]int // lines that texts need, as far as asked
	cells  map[place]*cell
	spare  []*cell
	heads  []*head

	scroll              *container.Scroll
	body, crops, titles *fyne.Container
	headGround          *canvas.Rectangle
	rule                *canvas.Rectangle // right of the crop
	corner              *fyne.Container
	cropClip, titleClip *clip
}

// clip cuts off what does not fit into it, and leaves the wheel to the table.
type clip struct{ container.Clip }

func newClip(content fyne.CanvasObject) *clip {
	c := &clip{container.Clip{Content: content}}
	c.ExtendBaseWidget(c)
	return c
}

// The room in the table at normal size. A row has two lines, and one more where
// what it says of the treatment needs it.
const (
	rowHigh  = 44
	lineHigh = 17
	headHigh = 30
)

func newSheet(g *grid) *sheet {
	s := &sheet{grid: g, cells: map[place]*cell{}, headGround: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent)}
	s.body = container.New(extent(s.all))
	s.scroll = container.NewScroll(s.body)
	s.scroll.OnScrolled = func(fyne.Position) { s.place(false); g.onMoved() }
	s.crops = container.New(extent(func() fyne.Size { return fyne.NewSize(s.widths[0], s.all().Height) }))
	s.titles = container.New(extent(func() fyne.Size { return fyne.NewSize(s.all().Width, headHigh*look.Current().Scale) }))
	s.corner = container.NewWithoutLayout()
	s.cropClip, s.titleClip = newClip(s.crops), newClip(s.titles)
	return s
}

// extent is how large a part of the table is, of which some is in view.
type extent func() fyne.Size

// Layout leaves everything where it was put.
func (extent) Layout([]fyne.CanvasObject, fyne.Size) {}

// MinSize is the size of the part.
func (e extent) MinSize([]fyne.CanvasObject) fyne.Size { return e() }

// all is the size of all rows, in the columns that scroll.
func (s *sheet) all() fyne.Size {
	return fyne.NewSize(s.left(len(s.widths)), s.top(len(s.grid.rows)))
}

// top is where a row begins.
func (s *sheet) top(row int) float32 {
	if row < len(s.tops) {
		return s.tops[row]
	}
	return 0 // before the first layout
}

// high is the height of a row.
func (s *sheet) high(row int) float32 { return s.top(row+1) - s.top(row) }

// stack finds where the rows begin.
func (s *sheet) stack() {
	scale := look.Current().Scale
	s.tops = append(s.tops[:0], 0)
	for row := range s.grid.rows {
		high := float32(rowHigh)
		if s.lines(row) > 2 {
			high += lineHigh
		}
		s.tops = append(s.tops, s.tops[row]+high*scale)
	}
}

// wrapped is a text in a width.
type wrapped struct {
	text   string
	strong bool
	wide   float32
}

// lines are those that a row needs to tell its treatment from the others.
func (s *sheet) lines(row int) int {
	n := 1
	for col, c := range s.grid.columns {
		if !c.tells {
			continue
		}
		t := s.grid.treatment(row)
		text, _ := c.text(s.grid.table, t)
		w := wrapped{text, s.grid.strong(col), cellRoom(s.widths[col], s.grid.marked(t, col))}
		if _, known := s.need[w]; !known {
			s.need[w] = len(broken(text, w.wide, look.Size(look.SizeSmall), fyne.TextStyle{Bold: w.strong}, mostLines))
		}
		n = max(n, s.need[w])
	}
	return n
}

// left is where a column begins that scrolls.
func (s *sheet) left(col int) float32 {
	var x float32
	for i := 1; i < col; i++ {
		x += s.widths[i]
	}
	return x
}

// Objects is for the toolkit.
func (s *sheet) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{s.headGround, s.corner, s.titleClip, s.cropClip, s.scroll, s.rule}
}

// Destroy is for the toolkit.
func (s *sheet) Destroy() {}

// MinSize is for the toolkit.
func (s *sheet) MinSize() fyne.Size {
	return fyne.NewSize(200, 120).AddWidthHeight(0, headHigh*look.Current().Scale)
}

// Layout is for the toolkit.
func (s *sheet) Layout(size fyne.Size) {
	s.size = size
	s.share()
	if s.grid.table != nil {
		s.stack()
	}
	top, crop := headHigh*look.Current().Scale, s.widths[0]
	s.headGround.Resize(fyne.NewSize(size.Width, top))
	s.corner.Resize(fyne.NewSize(crop, top))
	s.titleClip.Move(fyne.NewPos(crop, 0))
	s.titleClip.Resize(fyne.NewSize(max(size.Width-crop, 0), top))
	s.cropClip.Move(fyne.NewPos(0, top))
	s.cropClip.Resize(fyne.NewSize(crop, max(size.Height-top, 0)))
	s.scroll.Move(fyne.NewPos(crop, top))
	s.scroll.Resize(fyne.NewSize(max(size.Width-crop, 0), max(size.Height-top, 0)))
	s.crops.Resize(s.crops.MinSize())
	s.titles.Resize(s.titles.MinSize())
	s.rule.Move(fyne.NewPos(crop-1, 0))
	s.rule.Resize(fyne.NewSize(1, size.Height))
	s.place(true)
}

// share shares the width out among the columns, where it or they changed.
func (s *sheet) share() {
	scale := look.Current().Scale
	if s.wide == s.size.Width && s.scale == scale && s.wide > 0 {
		return
	}
	s.wide, s.scale = s.size.Width, scale
	s.widths = widths(s.grid.columns, s.wide)
	s.need = map[wrapped]int{}
}

// Refresh shows other rows, columns or colours.
func (s *sheet) Refresh() {
	s.headGround.FillColor = look.Color(theme.ColorNameHeaderBackground)
	s.rule.FillColor = look.Color(look.Rule)
	s.headGround.Refresh()
	s.rule.Refresh()
	s.Layout(s.size)
	s.scroll.Base.Refresh() // its bars; the cells are set already
}

// place puts cells and headings where they belong. Cells that were there
// already are only moved, unless all are to be set anew.
func (s *sheet) place(all bool) {
	if s.size.Width <= 0 || s.grid.table == nil {
		return
	}
	s.limit()
	off, view := s.scroll.Offset, s.scroll.Size()
	was := s.cells
	s.cells = make(map[place]*cell, len(was))
	s.body.Objects, s.crops.Objects = nil, nil
	put := func(at place, in *fyne.Container, x, y float32) {
		c, there := was[at]
		delete(was, at)
		if !there {
			c = s.take()
		}
		s.cells[at] = c
		in.Objects = append(in.Objects, c)
		c.Move(fyne.NewPos(x, y))
		c.Resize(fyne.NewSize(s.widths[at.col], s.high(at.row)))
		if all || !there {
			s.grid.update(at, c)
		}
	}
	row, begins := slices.BinarySearch(s.tops, off.Y)
	if !begins {
		row-- // it began above
	}
	for ; row < len(s.grid.rows) && s.top(row) < off.Y+view.Height; row++ {
		y := s.top(row)
		put(place{row, 0}, s.crops, 0, y)
		x := float32(0)
		for col := 1; col < len(s.widths); col++ {
			if x+s.widths[col] > off.X && x < off.X+view.Width {
				put(place{row, col}, s.body, x, y)
			}
			x += s.widths[col]
		}
	}
	s.crops.Move(fyne.NewPos(0, -off.Y))
	s.titles.Move(fyne.NewPos(-off.X, 0))
	for _, c := range was {
		s.spare = append(s.spare, c)
	}
	s.placeHeads(all)
	for _, o := range []fyne.CanvasObject{s.body, s.crops, s.titles, s.corner} {
		canvas.Refresh(o)
	}
}

// limit keeps what is in view inside the table, which may have become smaller.
func (s *sheet) limit() {
	room := s.all().Subtract(s.scroll.Size())
	s.scroll.Offset.X = max(0, min(s.scroll.Offset.X, room.Width))
	s.scroll.Offset.Y = max(0, min(s.scroll.Offset.Y, room.Height))
}

func (s *sheet) take() *cell {
	if n := len(s.spare); n > 0 {
		c := s.spare[n-1]
		s.spare = s.spare[:n-1]
		return c
	}
	return newCell()
}

func (s *sheet) placeHeads(all bool) {
	for len(s.heads) < len(s.widths) {
		s.heads = append(s.heads, newHead(s.grid.sort))
	}
	s.corner.Objects, s.titles.Objects = []fyne.CanvasObject{s.heads[0]}, nil
	x := float32(0)
	for col, wide := range s.widths {
		h := s.heads[col]
		if col > 0 {
			s.titles.Objects = append(s.titles.Objects, h)
			h.Move(fyne.NewPos(x, 0))
			x += wide
		}
		h.Resize(fyne.NewSize(wide, headHigh*look.Current().Scale))
		if all {
			s.grid.updateHead(col, h)
		}
	}
}

// reveal scrolls as far as a cell needs to be seen whole, with the column that
// belongs to it.
func (s *sheet) reveal(at place) {
	if s.size.Width <= 0 {
		return
	}
	off, view := s.scroll.Offset, s.scroll.Size()
	off.Y = max(min(off.Y, s.top(at.row)), s.top(at.row+1)-view.Height)
	if at.col > 0 {
		x := s.left(at.col)
		wide := s.widths[at.col]
		if next := at.col + 1; next < len(s.widths) && s.grid.columns[next].with == s.grid.columns[at.col].id {
			wide += s.widths[next]
		}
		off.X = min(max(off.X, x+wide-view.Width), x)
	}
	if off != s.scroll.Offset {
		s.scroll.ScrollToOffset(off)
		s.place(false)
	}
}

// raise scrolls a row up as far as what stands on it, of that height, has room;
// the last rows go no further.
func (s *sheet) raise(row int, high float32) {
	pos, _ := s.where(place{row, 0})
	if over := pos.Y + high - s.size.Height; over > 0 {
		s.scroll.ScrollToOffset(s.scroll.Offset.AddXY(0, over))
		s.place(false)
	}
}

// toTop shows the first rows.
func (s *sheet) toTop() {
	s.scroll.ScrollToOffset(fyne.NewPos(s.scroll.Offset.X, 0))
	s.place(false)
}

// where is the place and size of a cell in the table, in view or not.
func (s *sheet) where(at place) (fyne.Position, fyne.Size) {
	pos := s.cropClip.Position().AddXY(0, s.top(at.row)-s.scroll.Offset.Y)
	if at.col > 0 {
		pos.X = s.scroll.Position().X + s.left(at.col) - s.scroll.Offset.X
	}
	return pos, fyne.NewSize(s.widths[at.col], s.high(at.row))
}
