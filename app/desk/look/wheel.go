package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// wheel lies over an entry of one line, which would keep the mouse wheel to
// itself, and hands it on to the scroll that the entry lies in.
type wheel struct {
	widget.BaseWidget
	entry fyne.CanvasObject
}

var _ fyne.Scrollable = (*wheel)(nil)

func newWheel(entry fyne.CanvasObject) *wheel {
	w := &wheel{entry: entry}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled is for the toolkit.
func (w *wheel) Scrolled(turned *fyne.ScrollEvent) {
	for _, s := range onView(w.entry) {
		if holds(s, w.entry) {
			s.Scrolled(turned)
			return
		}
	}
}

// CreateRenderer is for the toolkit.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}
