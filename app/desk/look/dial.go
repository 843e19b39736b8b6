package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Dial is a field for an amount that can also be slid and stepped: Up and Down
// in the entry step it, the slide under it follows what is typed. What is slid
// shows as if it were typed, and is handed over when the slide is let go.
type Dial struct {
	widget.BaseWidget
	*Field

	slide *Slide
	read  func(text string) (float64, bool)
	print func(x float64) string
	box   *fyne.Container
}

// NewDial puts a slide under a field. read gives the amount in the unit of the
// range, false where the text is none; print writes one as it would be typed.
func NewDial(field *Field, over Range, read func(text string) (float64, bool), print func(x float64) string) *Dial {
	d := &Dial{Field: field, read: read, print: print}
	d.slide = NewSlide(over, func(x float64) { field.SetText(d.print(x)) }, func() { field.Done() })
	field.entry.steps = d.slide.Step
	field.shown = func(text string) { d.slide.Place(read(text)) }
	d.box = Column(0, field, d.slide)
	d.ExtendBaseWidget(d)
	return d
}

// SetRange gives the slide another range, where the units of the class change.
func (d *Dial) SetRange(over Range) {
	if d.slide.Range == over {
		return
	}
	d.slide.Range = over
	d.slide.Refresh()
}

// Slide is the slide, for tests and focus.
func (d *Dial) Slide() *Slide { return d.slide }

// CreateRenderer is for the toolkit.
func (d *Dial) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(d.box) }
