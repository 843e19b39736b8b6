package planning

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// threeColumns gives the outer columns their widths and the middle the rest.
// Where that would leave the middle less than it needs, the right column goes
// below it.
type threeColumns struct{ left, middle, right float32 }

// lowShare is the share of the height that the right column has below.
const lowShare = 0.36

func (l *threeColumns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	scale := look.Current().Scale
	left, right := l.left*scale, l.right*scale
	put := func(i int, x, y, width, height float32) {
		objects[i].Move(fyne.NewPos(x, y))
		objects[i].Resize(fyne.NewSize(width, height))
	}
	put(0, 0, 0, left, size.Height)
	if rest := size.Width - left - right; rest >= l.middle*scale {
		put(1, left, 0, rest, size.Height)
		put(2, left+rest, 0, right, size.Height)
		return
	}
	low := size.Height * lowShare
	put(1, left, 0, size.Width-left, size.Height-low)
	put(2, left, size.Height-low, size.Width-left, low)
}

func (l *threeColumns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(l.left*look.Current().Scale+objects[1].MinSize().Width, 0)
	for _, o := range objects {
		size.Height = max(size.Height, o.MinSize().Height)
	}
	return size
}
