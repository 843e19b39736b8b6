package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// threeColumns gives the outer columns their widths and the middle the rest.
// Where that would leave the middle less than it needs, the right column goes
// below it.
type threeColumns struct{ left, middle, right float32 }

// lowShare is the share of the height that the right column has below, and
// leftShare that of the width which the left one has at most, unless it needs
// more.
const lowShare, leftShare = 0.36, 0.27

func (l *threeColumns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	scale := look.Current().Scale
	left, right := l.leftIn(objects, size.Width), l.right*scale
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
	size := fyne.NewSize(objects[0].MinSize().Width+objects[1].MinSize().Width, 0)
	for _, o := range objects {
		size.Height = max(size.Height, o.MinSize().Height)
	}
	return size
}

// leftIn is how wide the left column is where all have a width.
func (l *threeColumns) leftIn(objects []fyne.CanvasObject, width float32) float32 {
	return max(min(l.left*look.Current().Scale, leftShare*width), objects[0].MinSize().Width)
}

// lastColumn gives the second object a width and the first the rest.
type lastColumn struct{ gap, width float32 }

func (l *lastColumn) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	scale := look.Current().Scale
	rest := size.Width - (l.gap+l.width)*scale
	objects[0].Resize(fyne.NewSize(rest, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-l.width*scale, 0))
	objects[1].Resize(fyne.NewSize(l.width*scale, size.Height))
}

func (l *lastColumn) MinSize(objects []fyne.CanvasObject) fyne.Size {
	first, last := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(first.Width+(l.gap+l.width)*look.Current().Scale, max(first.Height, last.Height))
}

// acrossOrDown lays out the options of a choice in a line where there is room,
// and otherwise one below the other.
type acrossOrDown struct{ group *widget.RadioGroup }

func (l *acrossOrDown) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	if across := l.turned(true).Width <= size.Width; across != l.group.Horizontal {
		l.group.Horizontal = across
		l.group.Resize(fyne.Size{}) // laid out anew, also in the same size
	}
	l.group.Resize(size)
}

// MinSize is as wide as the widest option, and as high as the options are in the
// way they stand now.
func (l *acrossOrDown) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(l.turned(false).Width, l.group.MinSize().Height)
}

// turned is the room that the options need in a line, or below each other.
func (l *acrossOrDown) turned(across bool) fyne.Size {
	now := l.group.Horizontal
	defer func() { l.group.Horizontal = now }()
	l.group.Horizontal = across
	return l.group.MinSize()
}
