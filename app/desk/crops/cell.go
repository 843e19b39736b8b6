package crops

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// cell is one cell of the table: a text over two lines, or two texts, on the
// ground of its row.
type cell struct {
	widget.BaseWidget
	first, second string
	ink, inkBelow fyne.ThemeColorName
	strong        bool
	chosen        bool
	marked        bool // with the sign of a change made here
}

func newCell() *cell {
	c := &cell{ink: look.Ink, inkBelow: look.InkSoft}
	c.ExtendBaseWidget(c)
	return c
}

// The room in a cell at normal size.
const (
	cellHigh = 42
	cellPad  = 7
	signSize = 15
)

// CreateRenderer is for the toolkit.
func (c *cell) CreateRenderer() fyne.WidgetRenderer {
	r := &cellRenderer{cell: c, ground: canvas.NewRectangle(color.Transparent), above: canvas.NewText("", nil), below: canvas.NewText("", nil), sign: look.Icon(look.IconEdited(), signSize)}
	r.objects = []fyne.CanvasObject{r.ground, r.above, r.below, r.sign}
	return r
}

type cellRenderer struct {
	cell         *cell
	ground       *canvas.Rectangle
	above, below *canvas.Text
	sign         *canvas.Image
	objects      []fyne.CanvasObject
	size         fyne.Size
}

func (r *cellRenderer) Destroy()                     {}
func (r *cellRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *cellRenderer) MinSize() fyne.Size {
	scale := look.Current().Scale
	return fyne.NewSize(40*scale, cellHigh*scale)
}

func (r *cellRenderer) Layout(size fyne.Size) {
	r.size = size
	r.ground.Resize(size)
	r.place()
}

func (r *cellRenderer) Refresh() {
	r.ground.FillColor = color.Transparent
	if r.cell.chosen {
		r.ground.FillColor = look.Tint(look.Ink, 0x14)
	}
	r.ground.Refresh()
	r.place()
}

// place breaks the texts and sets everything about them.
func (r *cellRenderer) place() {
	c := r.cell
	size := look.Size(look.SizeSmall)
	pad := cellPad * look.Current().Scale
	wide := r.size.Width - pad
	look.Show(r.sign, c.marked)
	if c.marked {
		side := signSize * look.Current().Scale
		wide -= side
		r.sign.Resize(fyne.NewSquareSize(side))
		r.sign.Move(fyne.NewPos(r.size.Width-side-2, (r.size.Height-side)/2))
	}
	style := fyne.TextStyle{Bold: c.strong}
	first, second := c.first, c.second
	inkBelow := c.inkBelow
	if second == "" {
		first, second = twoLines(c.first, wide, size, style)
		inkBelow = c.ink
	} else {
		first, second = clipped(first, wide, size, style), clipped(second, wide, size, fyne.TextStyle{})
	}
	set := func(t *canvas.Text, text string, ink fyne.ThemeColorName, bold bool) {
		t.Text, t.Color, t.TextSize, t.TextStyle = text, look.Color(ink), size, fyne.TextStyle{Bold: bold}
	}
	set(r.above, first, c.ink, c.strong)
	set(r.below, second, inkBelow, c.strong && c.second == "")
	line := r.above.MinSize().Height
	y := (r.size.Height - line) / 2
	if second != "" {
		y = (r.size.Height - 2*line) / 2
	}
	r.above.Move(fyne.NewPos(pad/2, y))
	r.below.Move(fyne.NewPos(pad/2, y+line))
	r.above.Refresh()
	r.below.Refresh()
}
