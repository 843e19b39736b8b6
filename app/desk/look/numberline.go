package look

import "fyne.io/fyne/v2"

// numberLine sets a number and its unit on one line of writing. Where there is
// no room for both the unit goes below, and where there is none for the number
// it becomes smaller.
type numberLine struct {
	value, unit *Text
	full        fyne.ThemeSizeName
	below       bool // at the last layout
}

func (n *numberLine) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width <= 0 {
		return
	}
	n.value.setSize(n.fitting(size.Width))
	n.below = false
	n.below = n.unit.Text() != "" && n.MinSize(objects).Width > size.Width
	if !n.below {
		onBaseline{}.Layout(objects, size)
		return
	}
	stack(objects, size.Width)
}

// stack sets objects below each other.
func stack(objects []fyne.CanvasObject, width float32) {
	y := float32(0)
	for _, o := range objects {
		height := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(width, height))
		y += height
	}
}

// stacked is what they need so.
func stacked(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		least := o.MinSize()
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height)
	}
	return size
}

// fitting is the largest size in which the number fits a width.
func (n *numberLine) fitting(width float32) fyne.ThemeSizeName {
	for _, name := range []fyne.ThemeSizeName{n.full, SizeFigure, SizeHeading} {
		style := n.value.segment.Style.TextStyle
		if Size(name) <= Size(n.full) && fyne.MeasureText(n.value.Text(), Size(name), style).Width <= width {
			return name
		}
	}
	return SizeText
}

func (n *numberLine) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if !n.below {
		return onBaseline{}.MinSize(objects)
	}
	return stacked(objects)
}

// labelLine sets the label of a figure and the word behind it on one line of
// writing, or that word below where there is no room for both.
type labelLine struct{ below bool } // at the last layout

func (l *labelLine) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width <= 0 {
		return
	}
	l.below = objects[1].MinSize().Width > 0 && (onBaseline{}).MinSize(objects).Width > size.Width+0.5
	if l.below {
		stack(objects, size.Width)
	} else {
		onBaseline{}.Layout(objects, size)
	}
}

func (l *labelLine) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if l.below {
		return stacked(objects)
	}
	return onBaseline{}.MinSize(objects)
}
