package app

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// rail is the line of areas at the left of the window.
type rail struct {
	items []*railItem
	box   fyne.CanvasObject
}

func newRail(areas []*area, open func(id string)) *rail {
	r := &rail{}
	var column []fyne.CanvasObject
	for _, a := range areas {
		item := newRailItem(a, open)
		r.items = append(r.items, item)
		column = append(column, item)
	}
	r.box = look.Frame(nil, nil, nil, look.Upright(), look.Inset(8, 12, look.Column(4, column...)))
	return r
}

// show marks the area that is open.
func (r *rail) show(id string) {
	for _, item := range r.items {
		item.chosen = item.area.id == id
		item.Refresh()
	}
}

// railItem is one area in the rail: its drawing and its name.
type railItem struct {
	widget.BaseWidget
	area             *area
	open             func(id string)
	fill, bar        *canvas.Rectangle
	chosen           bool
	hovered, focused bool
}

var (
	_ fyne.Tappable     = (*railItem)(nil)
	_ fyne.Focusable    = (*railItem)(nil)
	_ desktop.Hoverable = (*railItem)(nil)
)

func newRailItem(a *area, open func(id string)) *railItem {
	r := &railItem{area: a, open: open, fill: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent)}
	r.fill.CornerRadius = 4
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer is for the toolkit.
func (r *railItem) CreateRenderer() fyne.WidgetRenderer {
	r.bar.SetMinSize(fyne.NewSize(3, 1))
	name := look.NewText(r.area.name, look.SizeSmall, look.Ink, fyne.TextStyle{Bold: true})
	drawn := look.Column(5, container.NewCenter(look.Icon(r.area.icon, 26)), container.NewCenter(name))
	content := container.NewStack(r.fill, container.NewBorder(nil, nil, r.bar, nil, look.Wide(78, look.Inset(6, 10, drawn))))
	r.paint()
	return look.Painted(content, r.paint)
}

func (r *railItem) paint() {
	r.fill.FillColor, r.fill.StrokeColor, r.fill.StrokeWidth = color.Transparent, color.Transparent, 0
	r.bar.FillColor = color.Transparent
	switch {
	case r.chosen:
		r.fill.FillColor, r.bar.FillColor = look.Tint(look.Ink, 0x12), look.Color(look.Ink)
	case r.hovered:
		r.fill.FillColor = look.Tint(look.Ink, 0x0A)
	}
	if r.focused {
		r.fill.StrokeColor, r.fill.StrokeWidth = look.Color(look.Ink), 1.5
	}
}

// Tapped opens the area.
func (r *railItem) Tapped(*fyne.PointEvent) { r.open(r.area.id) }

// TypedKey opens the area on Enter and Space.
func (r *railItem) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		r.open(r.area.id)
	}
}

// TypedRune is for the toolkit.
func (r *railItem) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (r *railItem) FocusGained() { r.focused = true; r.Refresh() }

// FocusLost is for the toolkit.
func (r *railItem) FocusLost() { r.focused = false; r.Refresh() }

// MouseIn is for the toolkit.
func (r *railItem) MouseIn(*desktop.MouseEvent) { r.hovered = true; r.Refresh() }

// MouseMoved is for the toolkit.
func (r *railItem) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (r *railItem) MouseOut() { r.hovered = false; r.Refresh() }
