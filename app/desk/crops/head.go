package crops

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// head is the heading of a column; a click, Enter or Space sorts by it.
type head struct {
	widget.BaseWidget
	col              int
	title            string
	sorts            bool
	arrow            fyne.Resource // nil where the table is not sorted by it
	tapped           func(col int)
	hovered, focused bool
}

var (
	_ fyne.Tappable     = (*head)(nil)
	_ fyne.Focusable    = (*head)(nil)
	_ desktop.Hoverable = (*head)(nil)
)

func newHead(tapped func(col int)) *head {
	h := &head{tapped: tapped}
	h.ExtendBaseWidget(h)
	return h
}

// Tapped sorts by the column.
func (h *head) Tapped(*fyne.PointEvent) {
	if h.sorts {
		h.tapped(h.col)
	}
}

// TypedKey sorts by the column on Enter and Space.
func (h *head) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		h.Tapped(nil)
	}
}

// TypedRune is for the toolkit.
func (h *head) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (h *head) FocusGained() { h.focused = true; h.Refresh() }

// FocusLost is for the toolkit.
func (h *head) FocusLost() { h.focused = false; h.Refresh() }

// MouseIn is for the toolkit.
func (h *head) MouseIn(*desktop.MouseEvent) { h.hovered = h.sorts; h.Refresh() }

// MouseMoved is for the toolkit.
func (h *head) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (h *head) MouseOut() { h.hovered = false; h.Refresh() }

// CreateRenderer is for the toolkit.
func (h *head) CreateRenderer() fyne.WidgetRenderer {
	r := &headRenderer{head: h, ground: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", nil), arrow: look.Icon(nil, arrowSize)}
	r.objects = []fyne.CanvasObject{r.ground, r.text, r.arrow}
	r.Refresh()
	return r
}

const arrowSize = 13

type headRenderer struct {
	head    *head
	ground  *canvas.Rectangle
	text    *canvas.Text
	arrow   *canvas.Image
	objects []fyne.CanvasObject
	size    fyne.Size
}

func (r *headRenderer) Destroy()                     {}
func (r *headRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *headRenderer) MinSize() fyne.Size {
	scale := look.Current().Scale
	return fyne.NewSize(40*scale, 30*scale)
}

func (r *headRenderer) Layout(size fyne.Size) {
	r.size = size
	r.Refresh()
}

func (r *headRenderer) Refresh() {
	h := r.head
	scale := look.Current().Scale
	r.ground.Resize(r.size)
	r.ground.FillColor, r.ground.StrokeColor, r.ground.StrokeWidth = color.Transparent, color.Transparent, 0
	if h.hovered {
		r.ground.FillColor = look.Tint(look.Ink, 0x0C)
	}
	if h.focused {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Color(look.Ink), 1.5
	}
	room := r.size.Width - cellPad*scale
	look.Show(r.arrow, h.arrow != nil)
	if h.arrow != nil {
		r.arrow.Resource = h.arrow
		room -= arrowSize * scale
	}
	r.text.TextSize, r.text.TextStyle, r.text.Color = look.Size(look.SizeSmall), fyne.TextStyle{Bold: true}, look.Color(look.Ink)
	r.text.Text = clipped(h.title, room, r.text.TextSize, r.text.TextStyle)
	least := r.text.MinSize()
	r.text.Move(fyne.NewPos(cellPad/2*scale, (r.size.Height-least.Height)/2))
	r.arrow.Resize(fyne.NewSquareSize(arrowSize * scale))
	r.arrow.Move(fyne.NewPos(cellPad/2*scale+least.Width+2, (r.size.Height-arrowSize*scale)/2))
	for _, o := range r.objects {
		o.Refresh()
	}
}
