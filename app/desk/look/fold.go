package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Fold sets objects side by side in shares of the width where there is room,
// and one below the other where there is less than breakAt.
func Fold(breakAt, gap float32, shares []float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&fold{breakAt: breakAt, wide: columns{gap, shares}, narrow: column{gap}}, objects...)
}

type fold struct {
	breakAt float32
	wide    columns
	narrow  column
	folded  bool
}

func (f *fold) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.folded = size.Width < f.breakAt*Current().Scale
	if f.folded {
		f.narrow.Layout(objects, size)
		return
	}
	f.wide.Layout(objects, size)
}

// MinSize is as wide as the widest object, so that the window may become
// narrow, and as high as the objects are in the way they stand now.
func (f *fold) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := f.narrow.MinSize(objects)
	if !f.folded {
		least.Height = f.wide.MinSize(objects).Height
	}
	return least
}

// Flow sets objects in as many columns of at least a cell's width as there is
// room for, row by row.
func Flow(cell, gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&flow{cell: cell, gap: gap, across: 1}, objects...)
}

type flow struct {
	cell, gap float32
	across    int // columns at the last layout
}

func (f *flow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	scale := Current().Scale
	f.across = max(1, int((size.Width+f.gap*scale)/((f.cell+f.gap)*scale)))
	width := (size.Width - float32(f.across-1)*f.gap*scale) / float32(f.across)
	y, high := float32(0), float32(0)
	for i, o := range objects {
		if i%f.across == 0 && i > 0 {
			y, high = y+high+f.gap*scale, 0
		}
		height := heightAt(o, width)
		o.Move(fyne.NewPos(float32(i%f.across)*(width+f.gap*scale), y))
		o.Resize(fyne.NewSize(width, height))
		high = max(high, height)
	}
}

func (f *flow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	scale := Current().Scale
	size, high := fyne.NewSize(f.cell*scale, 0), float32(0)
	for i, o := range objects {
		if i%f.across == 0 && i > 0 {
			size.Height, high = size.Height+high+f.gap*scale, 0
		}
		high = max(high, o.MinSize().Height)
	}
	size.Height += high
	return size
}
