package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Column stacks objects from top to bottom. Unlike the toolkit's own box it
// settles wrapped text in one pass: it gives each object its width first and
// asks for its height afterwards.
func Column(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&column{gap}, objects...)
}

type column struct{ gap float32 }

func (c *column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		height := heightAt(o, size.Width)
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height + c.gap*Current().Scale
	}
}

func (c *column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	shown := 0
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		least := o.MinSize()
		size.Width = max(size.Width, least.Width)
		size.Height += least.Height
		shown++
	}
	if shown > 1 {
		size.Height += float32(shown-1) * c.gap * Current().Scale
	}
	return size
}

// heightAt is the height that an object needs at a width.
func heightAt(o fyne.CanvasObject, width float32) float32 {
	if o.Size().Width != width {
		o.Resize(fyne.NewSize(width, o.MinSize().Height))
	}
	return o.MinSize().Height
}

// Columns sets objects side by side in shares of the width, each from the
// top: Columns(24, []float32{1, 2}, left, right).
func Columns(gap float32, shares []float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&columns{gap, shares}, objects...)
}

type columns struct {
	gap    float32
	shares []float32
}

func (c *columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, width := range c.widths(objects, size.Width) {
		objects[i].Move(fyne.NewPos(x, 0))
		objects[i].Resize(fyne.NewSize(width, max(size.Height, heightAt(objects[i], width))))
		x += width + c.gap*Current().Scale
	}
}

// widths shares the width out.
func (c *columns) widths(objects []fyne.CanvasObject, width float32) []float32 {
	free := width - c.gap*Current().Scale*float32(len(objects)-1)
	var sum float32
	for i := range objects {
		sum += c.share(i)
	}
	widths := make([]float32, len(objects))
	for i := range objects {
		widths[i] = free * c.share(i) / sum
	}
	return widths
}

func (c *columns) share(i int) float32 {
	if i < len(c.shares) {
		return c.shares[i]
	}
	return 1
}

func (c *columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	var sum, unit float32
	for i, o := range objects {
		least := o.MinSize()
		sum += c.share(i)
		unit = max(unit, least.Width/c.share(i))
		size.Height = max(size.Height, least.Height)
	}
	size.Width = unit*sum + c.gap*Current().Scale*float32(len(objects)-1)
	return size
}

// Inset puts white around an object.
func Inset(horizontal, vertical float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(&inset{horizontal, vertical}, o)
}

type inset struct{ x, y float32 }

func (in *inset) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x, y := in.x*Current().Scale, in.y*Current().Scale
	for _, o := range objects {
		o.Move(fyne.NewPos(x, y))
		o.Resize(size.SubtractWidthHeight(2*x, 2*y))
	}
}

func (in *inset) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.AddWidthHeight(2*in.x*Current().Scale, 2*in.y*Current().Scale)
}

// Wide gives an object a least width, so that a column of entries lines up.
func Wide(width float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(&wide{width}, o)
}

type wide struct{ width float32 }

func (w *wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.Position{})
		o.Resize(size)
	}
}

func (w *wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	size.Width = max(size.Width, w.width*Current().Scale)
	return size
}

// Frame sets objects along the edges of content, without white between them;
// each may be nil. Top and bottom lie between left and right.
func Frame(top, bottom, left, right, content fyne.CanvasObject) *fyne.Container {
	f := &frame{top, bottom, left, right, content}
	c := container.New(f)
	for _, o := range []fyne.CanvasObject{top, bottom, left, right, content} {
		if o != nil {
			c.Add(o)
		}
	}
	return c
}

type frame struct{ top, bottom, left, right, content fyne.CanvasObject }

func (f *frame) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	x0, x1, y0, y1 := float32(0), size.Width, float32(0), size.Height
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	if f.left != nil {
		x0 = f.left.MinSize().Width
		put(f.left, 0, 0, x0, size.Height)
	}
	if f.right != nil {
		x1 -= f.right.MinSize().Width
		put(f.right, x1, 0, size.Width-x1, size.Height)
	}
	if f.top != nil {
		y0 = heightAt(f.top, x1-x0)
		put(f.top, x0, 0, x1-x0, y0)
	}
	if f.bottom != nil {
		y1 -= heightAt(f.bottom, x1-x0)
		put(f.bottom, x0, y1, x1-x0, size.Height-y1)
	}
	put(f.content, x0, y0, x1-x0, y1-y0)
}

func (f *frame) MinSize(_ []fyne.CanvasObject) fyne.Size {
	size := f.content.MinSize()
	for _, o := range []fyne.CanvasObject{f.top, f.bottom} {
		if o != nil {
			least := o.MinSize()
			size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height)
		}
	}
	for _, o := range []fyne.CanvasObject{f.left, f.right} {
		if o != nil {
			least := o.MinSize()
			size = fyne.NewSize(size.Width+least.Width, max(size.Height, least.Height))
		}
	}
	return size
}

// AtTop keeps an object at its own height at the top of the room it gets.
func AtTop(o fyne.CanvasObject) *fyne.Container { return container.New(atTop{}, o) }

type atTop struct{}

func (atTop) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.Position{})
		o.Resize(fyne.NewSize(size.Width, o.MinSize().Height))
	}
}

func (atTop) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size
}

// Lowered sets an object in line with the entry of a field beside it, below
// the height of the label.
func Lowered(o fyne.CanvasObject) *fyne.Container { return AtTop(Column(2, Label(" "), o)) }

// Rearrange lays out a container and those in it anew, after something in them
// changed its size. Refresh would do so too, but it also sets every text in them
// again.
func Rearrange(c *fyne.Container) {
	for _, o := range c.Objects {
		if inner, ok := o.(*fyne.Container); ok && inner.Visible() {
			Rearrange(inner)
		}
	}
	if c.Layout != nil {
		c.Layout.Layout(c.Objects, c.Size())
	}
}
