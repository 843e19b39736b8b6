package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// ringWide is how wide the ring round what has the focus is.
const ringWide = 2.5

// ringed is the renderer of one of the toolkit's widgets, with a ring round it
// while it has the focus, and what else lies over it.
type ringed struct {
	fyne.WidgetRenderer
	focused *bool
	ring    *canvas.Rectangle
	over    []fyne.CanvasObject
	objects []fyne.CanvasObject // as they were last asked for
}

func newRinged(of fyne.WidgetRenderer, focused *bool, over ...fyne.CanvasObject) *ringed {
	r := &ringed{WidgetRenderer: of, focused: focused, ring: canvas.NewRectangle(color.Transparent)}
	r.over = append(over, r.ring)
	r.paint()
	return r
}

func (r *ringed) paint() {
	r.ring.StrokeColor, r.ring.StrokeWidth = Color(Ink), ringWide
	r.ring.CornerRadius = theme.InputRadiusSize()
	Show(r.ring, *r.focused)
}

// Layout is for the toolkit.
func (r *ringed) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	for _, o := range r.over {
		o.Move(fyne.Position{})
		o.Resize(size)
	}
}

// Objects is for the toolkit.
func (r *ringed) Objects() []fyne.CanvasObject {
	r.objects = append(append(r.objects[:0], r.WidgetRenderer.Objects()...), r.over...)
	return r.objects
}

// Refresh is for the toolkit.
func (r *ringed) Refresh() {
	r.paint()
	r.WidgetRenderer.Refresh()
	r.ring.Refresh()
}
