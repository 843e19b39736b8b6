package bench

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

// tiles sets objects in as many columns of at least a width as there is room
// for, each row as high as its highest; hidden ones take no room.
func tiles(least, gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&tileLayout{least: least, gap: gap}, objects...)
}

type tileLayout struct{ least, gap, width float32 }

func (t *tileLayout) columns(n int) int {
	fit := min(n, max(1, int((t.width+t.gap)/(t.least*look.Current().Scale+t.gap))))
	if n == 4 && fit == 3 { // two and two, rather than three and a lone one
		return 2
	}
	return max(fit, 1)
}

func visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	return slices.DeleteFunc(slices.Clone(objects), func(o fyne.CanvasObject) bool { return !o.Visible() })
}

func (t *tileLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects = visible(objects)
	t.width = size.Width
	n := t.columns(len(objects))
	each := (size.Width - t.gap*float32(n-1)) / float32(n)
	y := float32(0)
	for from := 0; from < len(objects); from += n {
		row := objects[from:min(from+n, len(objects))]
		height := float32(0)
		for i, o := range row {
			if o.Size().Width != each {
				o.Resize(fyne.NewSize(each, o.MinSize().Height))
			}
			o.Move(fyne.NewPos(float32(i)*(each+t.gap), y))
			height = max(height, o.MinSize().Height)
		}
		for _, o := range row {
			o.Resize(fyne.NewSize(each, height))
		}
		y += height + t.gap
	}
}

func (t *tileLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	objects = visible(objects)
	n := t.columns(len(objects))
	size := fyne.NewSize(t.least*look.Current().Scale, 0)
	for from := 0; from < len(objects); from += n {
		height := float32(0)
		for _, o := range objects[from:min(from+n, len(objects))] {
			height = max(height, o.MinSize().Height)
		}
		size.Height += height
		if from > 0 {
			size.Height += t.gap
		}
	}
	return size
}

// scaled gives a drawing a height in proportion to its width, between its own
// least height and a most.
func scaled(share, most float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(&scaledLayout{share: share, most: most}, o)
}

type scaledLayout struct{ share, most, width float32 }

func (s *scaledLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	s.width = size.Width
	for _, o := range objects {
		o.Move(fyne.Position{})
		o.Resize(size)
	}
}

func (s *scaledLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	if !objects[0].Visible() {
		return fyne.NewSize(least.Width, 0)
	}
	return fyne.NewSize(least.Width, max(least.Height, min(s.width*s.share, s.most*look.Current().Scale)))
}

// shut takes no room for what is hidden in it.
type shut struct{}

func (shut) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.Position{})
		o.Resize(size)
	}
}

func (shut) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		if o.Visible() {
			size = size.Max(o.MinSize())
		}
	}
	return size
}

// heights adds the height that each object in content asks for, −1 for one that
// is hidden.
func heights(content fyne.CanvasObject, to []float32) []float32 {
	if !content.Visible() {
		return append(to, -1)
	}
	inner, ok := content.(*fyne.Container)
	if !ok {
		return append(to, content.MinSize().Height)
	}
	for _, o := range inner.Objects {
		to = heights(o, to)
	}
	return to
}
