package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// ground is what lies under a line of a list: nothing, or the tint and the
// bar of the line that is chosen.
type ground struct {
	box       *fyne.Container
	fill, bar *canvas.Rectangle
}

func newGround() *ground {
	g := &ground{fill: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent)}
	g.bar.SetMinSize(fyne.NewSize(3, 1))
	g.box = container.NewStack(g.fill, container.NewBorder(nil, nil, g.bar, nil))
	return g
}

func (g *ground) paint(chosen bool) {
	g.fill.FillColor, g.bar.FillColor = color.Transparent, color.Transparent
	if chosen {
		g.fill.FillColor, g.bar.FillColor = Tint(Ink, 0x12), Color(Ink)
	}
	g.fill.Refresh()
	g.bar.Refresh()
}

// Surface is a ground in a colour of the theme under content: a card, the
// header, the rail.
type Surface struct {
	widget.BaseWidget
	name    fyne.ThemeColorName
	fill    *canvas.Rectangle
	content fyne.CanvasObject
}

// NewSurface lays a colour of the theme under content.
func NewSurface(name fyne.ThemeColorName, content fyne.CanvasObject) *Surface {
	s := &Surface{name: name, fill: canvas.NewRectangle(Color(name)), content: content}
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is for the toolkit.
func (s *Surface) CreateRenderer() fyne.WidgetRenderer {
	return &painted{
		WidgetRenderer: widget.NewSimpleRenderer(container.NewStack(s.fill, s.content)),
		repaint:        func() { s.fill.FillColor = Color(s.name) },
	}
}

// Boxed draws the border of an entry around something that has none of its
// own, such as a choice from a list.
func Boxed(o fyne.CanvasObject) fyne.CanvasObject {
	b := &boxed{edge: canvas.NewRectangle(color.Transparent), content: o}
	b.ExtendBaseWidget(b)
	return b
}

type boxed struct {
	widget.BaseWidget
	edge    *canvas.Rectangle
	content fyne.CanvasObject
}

// CreateRenderer is for the toolkit.
func (b *boxed) CreateRenderer() fyne.WidgetRenderer {
	b.paint()
	return Painted(container.NewStack(b.content, b.edge), b.paint)
}

func (b *boxed) paint() {
	b.edge.StrokeColor, b.edge.StrokeWidth = Color(theme.ColorNameInputBorder), theme.InputBorderSize()
	b.edge.CornerRadius = theme.InputRadiusSize()
}
