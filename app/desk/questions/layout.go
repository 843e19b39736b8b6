package questions

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// beside sets the search over the list at the left, and the answer right of a
// thin rule. In the order of the objects, which is that of the Tab key, the
// answer comes before the long list.
type beside struct{}

// listWide is the width of the list in units at normal size, and listMost the
// most of the width that it takes in a narrow window.
const listWide, listMost = 300, 0.42

// Layout is for the toolkit.
func (beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	put := func(o fyne.CanvasObject, x, y, wide, high float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(wide, high))
	}
	head, rule, answer, list := objects[0], objects[1], objects[2], objects[3]
	left := min(listWide*look.Current().Scale, size.Width*listMost)
	head.Resize(fyne.NewSize(left, head.MinSize().Height))
	high := head.MinSize().Height // the hint may wrap at this width
	put(head, 0, 0, left, high)
	put(rule, left, 0, 1, size.Height)
	put(answer, left+1, 0, size.Width-left-1, size.Height)
	put(list, 0, high, left, size.Height-high)
}

// leastWide and leastHigh are the room below which nothing could be read, in any
// size of type.
const leastWide, leastHigh = 600, 400

// MinSize is for the toolkit.
func (beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	head, answer, list := objects[0].MinSize(), objects[2].MinSize(), objects[3].MinSize()
	left := max(head.Width, list.Width)
	return fyne.NewSize(max(left/listMost, left+1+answer.Width, leastWide), max(head.Height+list.Height, answer.Height, leastHigh))
}

// fitted sets the answer in the largest type in which it stands in view with the
// sentence of the batch and the sources.
type fitted struct{ answer *answer }

// wide is from which width on, in units at normal size, the largest type has
// lines long enough to be read with ease.
const wide = 1000

// Layout is for the toolkit.
func (f *fitted) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width < 1 {
		return
	}
	a, scale := f.answer, look.Current().Scale
	for at := range answerSizes {
		if at == 0 && size.Width < wide*scale {
			continue
		}
		a.step(at)
		a.body.Resize(fyne.NewSize(size.Width, a.body.MinSize().Height))
		look.Rearrange(a.body)
		if a.matter.MinSize().Height <= size.Height-2*topWhite*scale {
			break
		}
	}
	objects[0].Resize(size)
	objects[0].Refresh()
}

// MinSize is for the toolkit.
func (f *fitted) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }
