package crops

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// beside sets the table and, right of a thin rule, the record, which takes a
// third of the width within limits.
type beside struct{}

func sideWidth(all float32) float32 {
	scale := look.Current().Scale
	return min(max(all*0.34, 296*scale), 440*scale, max(all-200, 0))
}

func (beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	side := sideWidth(size.Width)
	const inset = 14
	objects[0].Move(fyne.NewPos(inset, 0))
	objects[0].Resize(fyne.NewSize(size.Width-side-inset, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-side, 0))
	objects[1].Resize(fyne.NewSize(1, size.Height))
	objects[2].Move(fyne.NewPos(size.Width-side+1, 0))
	objects[2].Resize(fyne.NewSize(side-1, size.Height))
}

func (beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	side := objects[2].MinSize()
	scale := look.Current().Scale
	return fyne.NewSize(least.Width+max(side.Width, 296*scale), max(least.Height, side.Height, 240*scale))
}

// folding sets a first object that fills what is left, a second and a third in
// one line, or the second in a line of its own where the width is short.
type folding struct{ gap, least, width float32 }

func (f *folding) folds(objects []fyne.CanvasObject) bool {
	need := f.least*look.Current().Scale + objects[1].MinSize().Width + objects[2].MinSize().Width + 2*f.gap
	return f.width > 0 && f.width < need
}

func (f *folding) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.width = size.Width
	first, second, third := objects[0], objects[1], objects[2]
	high := max(first.MinSize().Height, second.MinSize().Height)
	last := third.MinSize().Width
	third.Resize(fyne.NewSize(last, high))
	third.Move(fyne.NewPos(size.Width-last, 0))
	middle := second.MinSize().Width
	second.Resize(fyne.NewSize(middle, high))
	if f.folds(objects) {
		first.Resize(fyne.NewSize(size.Width-last-f.gap, high))
		second.Move(fyne.NewPos(0, high+f.gap))
		return
	}
	first.Resize(fyne.NewSize(size.Width-last-middle-2*f.gap, high))
	second.Move(fyne.NewPos(size.Width-last-middle-f.gap, 0))
}

func (f *folding) MinSize(objects []fyne.CanvasObject) fyne.Size {
	high := max(objects[0].MinSize().Height, objects[1].MinSize().Height)
	least := fyne.NewSize(max(objects[1].MinSize().Width, f.least+objects[2].MinSize().Width), high)
	if f.folds(objects) {
		least.Height = 2*high + f.gap
	}
	return least
}
