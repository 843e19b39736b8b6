package drawing

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// The text of drawings.
const (
	sizeLabel = look.SizeSmall
	inkLabel  = look.InkSoft
	inkFigure = look.Ink
)

// surface is what the drawings have in common: a sketch recorded by a pen and
// replayed into a raster, with labels over it.
type surface struct {
	widget.BaseWidget
	self   fyne.Widget
	sketch func(*pen, fyne.Size)
	least  fyne.Size
}

// setUp is called by each constructor with the widget that embeds the surface.
func (s *surface) setUp(self fyne.Widget, least fyne.Size, sketch func(*pen, fyne.Size)) {
	s.self, s.least, s.sketch = self, least, sketch
	s.ExtendBaseWidget(self)
}

// CreateRenderer implements fyne.Widget.
func (s *surface) CreateRenderer() fyne.WidgetRenderer {
	r := &surfaceRenderer{surface: s}
	r.raster = canvas.NewRaster(r.generate)
	r.objects = []fyne.CanvasObject{r.raster}
	r.Layout(s.Size()) // one made anew, for a picture not seen for a while, is not laid out again by the toolkit
	return r
}

// normalLabel is the size of labels for which the drawings are laid out.
const normalLabel = 13

// grown is by how much larger type enlarges the whole drawing.
func (s *surface) grown() float32 {
	return theme.SizeForWidget(sizeLabel, s.self) / normalLabel
}

type surfaceRenderer struct {
	surface *surface
	size    fyne.Size
	pen     *pen
	raster  *canvas.Raster
	texts   []*canvas.Text
	objects []fyne.CanvasObject
}

func (r *surfaceRenderer) Destroy()                     {}
func (r *surfaceRenderer) Objects() []fyne.CanvasObject { return r.objects }

func (r *surfaceRenderer) MinSize() fyne.Size {
	k := r.surface.grown()
	return fyne.NewSize(r.surface.least.Width*k, r.surface.least.Height*k)
}

func (r *surfaceRenderer) Layout(size fyne.Size) {
	r.size = size
	r.record()
	r.raster.Resize(size)
}

func (r *surfaceRenderer) Refresh() {
	r.record()
	r.known()
	r.raster.Refresh()
}

// known lets the window see the raster anew where it has lost sight of it. What
// was not painted for a while, as in an area that is not on view, is forgotten
// by the canvas: a refresh of it is lost, and the old picture would come back
// beside new labels.
func (r *surfaceRenderer) known() {
	if fyne.CurrentApp().Driver().CanvasForObject(r.raster) != nil {
		return
	}
	size := r.raster.Size()
	r.raster = canvas.NewRaster(r.generate)
	r.raster.Resize(size)
	r.objects[0] = r.raster
}

// record draws anew and places the labels.
func (r *surfaceRenderer) record() {
	r.pen = &pen{owner: r.surface.self}
	if r.size.Width > 0 && r.size.Height > 0 {
		k := r.surface.grown()
		r.surface.sketch(r.pen, fyne.NewSize(r.size.Width/k, r.size.Height/k))
	}
	for len(r.texts) < len(r.pen.labels) {
		text := canvas.NewText("", nil)
		r.texts = append(r.texts, text)
		r.objects = append(r.objects, text)
	}
	for i, text := range r.texts {
		if i >= len(r.pen.labels) {
			text.Hide()
			continue
		}
		r.place(text, r.pen.labels[i])
	}
}

// place sets everything of a text object, which may have stood for another
// label before.
func (r *surfaceRenderer) place(text *canvas.Text, l label) {
	text.Text = l.text
	text.Color = theme.ColorForWidget(l.colour, r.surface.self)
	text.TextSize = theme.SizeForWidget(l.size, r.surface.self)
	text.TextStyle = fyne.TextStyle{Bold: l.strong}
	size := fyne.MeasureText(l.text, text.TextSize, text.TextStyle)
	k := r.surface.grown()
	x := float32(l.at.x) * k
	switch l.side {
	case middle:
		x -= size.Width / 2
	case end:
		x -= size.Width
	}
	text.Move(fyne.NewPos(x, float32(l.at.y)*k-size.Height/2))
	text.Resize(size)
	text.Show()
	text.Refresh()
}

func (r *surfaceRenderer) generate(w, h int) image.Image {
	if r.size.Width == 0 || r.pen == nil {
		return image.NewRGBA(image.Rect(0, 0, w, h))
	}
	return r.pen.paint(w, h, float64(w)/float64(r.size.Width/r.surface.grown()))
}
