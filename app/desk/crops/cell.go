package crops

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// cell is one cell of the table: a text over as many lines as its row has room
// for, or two texts, on the ground of its row.
type cell struct {
	widget.BaseWidget
	first, second string
	ink, inkBelow fyne.ThemeColorName
	strong        bool
	chosen        bool   // its row is
	current       bool   // what the keys are about
	marked        bool   // with the sign of a change made here
	bare          bool   // without the rule under it
	tapped        func() // set with everything else; nil: a tap does nothing
}

var _ fyne.Tappable = (*cell)(nil)

func newCell() *cell {
	c := &cell{ink: look.Ink, inkBelow: look.InkSoft}
	c.ExtendBaseWidget(c)
	return c
}

// The room in a cell at normal size.
const (
	cellPad   = 7
	signSize  = 15
	mostLines = 3
)

// cellRoom is the room for text in a cell of a width.
func cellRoom(wide float32, marked bool) float32 {
	if marked {
		wide -= signSize * look.Current().Scale
	}
	return wide - cellPad*look.Current().Scale
}

// Tapped chooses the cell.
func (c *cell) Tapped(*fyne.PointEvent) {
	if c.tapped != nil {
		c.tapped()
	}
}

// CreateRenderer is for the toolkit.
func (c *cell) CreateRenderer() fyne.WidgetRenderer {
	r := &cellRenderer{cell: c, ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent), sign: look.Icon(look.IconEdited(), signSize)}
	r.objects = []fyne.CanvasObject{r.ground, r.rule}
	for i := range r.lines {
		r.lines[i] = canvas.NewText("", nil)
		r.objects = append(r.objects, r.lines[i])
	}
	r.objects = append(r.objects, r.sign)
	return r
}

type cellRenderer struct {
	cell         *cell
	ground, rule *canvas.Rectangle // rule: under the row
	lines        [mostLines]*canvas.Text
	sign         *canvas.Image
	objects      []fyne.CanvasObject
	size         fyne.Size
}

func (r *cellRenderer) Destroy()                     {}
func (r *cellRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *cellRenderer) MinSize() fyne.Size {
	scale := look.Current().Scale
	return fyne.NewSize(40*scale, rowHigh*scale)
}

func (r *cellRenderer) Layout(size fyne.Size) {
	r.size = size
	r.rule.Move(fyne.NewPos(0, size.Height-1))
	r.rule.Resize(fyne.NewSize(size.Width, 1))
	r.Refresh()
}

func (r *cellRenderer) Refresh() {
	r.ground.FillColor, r.ground.StrokeColor, r.ground.StrokeWidth = color.Transparent, color.Transparent, 0
	r.ground.Resize(r.size.SubtractWidthHeight(0, 1))
	r.rule.FillColor = look.Color(look.Rule)
	look.Show(r.rule, !r.cell.bare)
	if r.cell.chosen {
		r.ground.FillColor = look.Tint(look.Ink, 0x14)
	}
	if r.cell.current {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Color(look.Ink), 1.5
		r.ground.Resize(r.size.SubtractWidthHeight(1, 1)) // its edge stays in view beside the bar
	}
	r.rule.Refresh()
	r.ground.Refresh()
	r.place()
}

// place breaks the texts and sets everything about them.
func (r *cellRenderer) place() {
	c := r.cell
	size := look.Size(look.SizeSmall)
	pad := cellPad * look.Current().Scale
	wide := cellRoom(r.size.Width, c.marked)
	look.Show(r.sign, c.marked)
	if c.marked {
		side := signSize * look.Current().Scale
		r.sign.Resize(fyne.NewSquareSize(side))
		r.sign.Move(fyne.NewPos(r.size.Width-side-2, (r.size.Height-side)/2))
	}
	strong := fyne.TextStyle{Bold: c.strong}
	line := fyne.MeasureText("", size, strong).Height
	lines := []string{clipped(c.first, wide, size, strong), clipped(c.second, wide, size, fyne.TextStyle{})}
	if c.second == "" {
		lines = broken(c.first, wide, size, strong, min(int(r.size.Height/line), mostLines))
	}
	y := (r.size.Height - float32(len(lines))*line) / 2
	for i, t := range r.lines {
		t.Text, t.Color, t.TextSize, t.TextStyle = "", look.Color(c.ink), size, strong
		if i < len(lines) {
			t.Text = lines[i]
		}
		if i > 0 && c.second != "" {
			t.Color, t.TextStyle = look.Color(c.inkBelow), fyne.TextStyle{}
		}
		t.Move(fyne.NewPos(pad/2, y+float32(i)*line))
		t.Refresh()
	}
}
