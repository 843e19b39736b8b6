package look

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Range is what a slide runs over: the amounts that are worth trying, not all
// that may be typed.
type Range struct{ Low, High, Step float64 }

// near is the nearest mark of the range.
func (r Range) near(x float64) float64 {
	x = r.Low + math.Round((x-r.Low)/r.Step)*r.Step
	return min(max(x, r.Low), r.High)
}

// next is the first mark over or under x, also over the end of the range; an x
// under its beginning goes no lower.
func (r Range) next(x float64, up bool) float64 {
	const slack = 1e-9
	marks := (x - r.Low) / r.Step
	if up {
		return max(r.Low+(math.Floor(marks+slack)+1)*r.Step, r.Low)
	}
	return min(max(r.Low+(math.Ceil(marks-slack)-1)*r.Step, r.Low), x)
}

// Slide is a slim slider under a field. It is dragged, tapped, or moved with
// the arrow keys.
type Slide struct {
	widget.BaseWidget
	Range Range
	Moved func(x float64) // while it moves
	Let   func()          // when it is let go

	at               float64
	given            bool // there is an amount
	hovered, focused bool
	held             bool
	track, filled    *canvas.Rectangle
	knob, ring       *canvas.Circle
}

var (
	_ fyne.Draggable    = (*Slide)(nil)
	_ fyne.Tappable     = (*Slide)(nil)
	_ fyne.Focusable    = (*Slide)(nil)
	_ desktop.Hoverable = (*Slide)(nil)
)

// NewSlide makes a slide.
func NewSlide(over Range, moved func(x float64), let func()) *Slide {
	s := &Slide{Range: over, Moved: moved, Let: let,
		track: canvas.NewRectangle(color.Transparent), filled: canvas.NewRectangle(color.Transparent),
		knob: canvas.NewCircle(color.Transparent), ring: canvas.NewCircle(color.Transparent)}
	s.ExtendBaseWidget(s)
	return s
}

// Place sets the knob; given is false where there is no amount.
func (s *Slide) Place(x float64, given bool) {
	if s.at == x && s.given == given {
		return
	}
	s.at, s.given = x, given
	s.Refresh()
}

// At is the amount that the knob stands for.
func (s *Slide) At() float64 { return s.at }

// slideHigh is its height, and knobWide the width of its knob.
const (
	slideHigh = 16
	knobWide  = 12
)

// Dragged moves the knob under the pointer.
func (s *Slide) Dragged(e *fyne.DragEvent) { s.held = true; s.moveTo(e.Position.X) }

// DragEnd lets the knob go.
func (s *Slide) DragEnd() {
	s.held = false
	s.Let()
}

// Tapped moves the knob to where it was tapped.
func (s *Slide) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		c.Focus(s)
	}
	s.moveTo(e.Position.X)
	s.Let()
}

func (s *Slide) moveTo(x float32) {
	scale := Current().Scale
	room := s.Size().Width - knobWide*scale
	if room <= 0 {
		return
	}
	share := float64(min(max((x-knobWide*scale/2)/room, 0), 1))
	s.set(s.Range.near(s.Range.Low + share*(s.Range.High-s.Range.Low)))
}

func (s *Slide) set(x float64) {
	if s.given && x == s.at {
		return
	}
	s.Place(x, true)
	s.Moved(x)
}

// Step moves by one mark.
func (s *Slide) Step(up bool) {
	from := s.at
	if !s.given {
		from = s.Range.near((s.Range.Low + s.Range.High) / 2)
	}
	s.set(s.Range.next(from, up))
	s.Let()
}

// TypedKey moves by one mark, or to an end.
func (s *Slide) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		s.Step(false)
	case fyne.KeyRight, fyne.KeyUp:
		s.Step(true)
	case fyne.KeyHome:
		s.set(s.Range.Low)
		s.Let()
	case fyne.KeyEnd:
		s.set(s.Range.High)
		s.Let()
	}
}

// TypedRune is for the toolkit.
func (s *Slide) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (s *Slide) FocusGained() {
	s.focused = true
	s.Refresh()
	Reveal(s)
}

// FocusLost is for the toolkit.
func (s *Slide) FocusLost() { s.focused = false; s.Refresh() }

// MouseIn is for the toolkit.
func (s *Slide) MouseIn(*desktop.MouseEvent) { s.hovered = true; s.Refresh() }

// MouseMoved is for the toolkit.
func (s *Slide) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (s *Slide) MouseOut() { s.hovered = false; s.Refresh() }

// CreateRenderer is for the toolkit.
func (s *Slide) CreateRenderer() fyne.WidgetRenderer {
	r := &slideRenderer{s}
	r.paint()
	return r
}

type slideRenderer struct{ s *Slide }

func (r *slideRenderer) Destroy() {}
func (r *slideRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.track, r.s.filled, r.s.ring, r.s.knob}
}

func (r *slideRenderer) MinSize() fyne.Size {
	scale := Current().Scale
	return fyne.NewSize(3*knobWide*scale, slideHigh*scale)
}

func (r *slideRenderer) Layout(size fyne.Size) {
	s, scale := r.s, Current().Scale
	wide, high := knobWide*scale, 3*scale
	room := size.Width - wide
	share := float32(0)
	if span := s.Range.High - s.Range.Low; span > 0 {
		share = float32(min(max((s.at-s.Range.Low)/span, 0), 1))
	}
	y := size.Height / 2
	s.track.Move(fyne.NewPos(wide/2, y-high/2))
	s.track.Resize(fyne.NewSize(room, high))
	s.filled.Move(fyne.NewPos(wide/2, y-high/2))
	s.filled.Resize(fyne.NewSize(room*share, high))
	s.knob.Move(fyne.NewPos(room*share, y-wide/2))
	s.knob.Resize(fyne.NewSquareSize(wide))
	grow := 3 * scale
	s.ring.Move(fyne.NewPos(room*share-grow, y-wide/2-grow))
	s.ring.Resize(fyne.NewSquareSize(wide + 2*grow))
}

func (r *slideRenderer) paint() {
	s := r.s
	s.track.FillColor, s.track.CornerRadius = Color(InkSoft), 1.5
	s.filled.FillColor, s.filled.CornerRadius = Color(Ink), 1.5
	s.knob.FillColor, s.knob.StrokeColor, s.knob.StrokeWidth = Color(Ink), Color(Paper), 1
	if !s.given {
		s.filled.FillColor, s.knob.FillColor = color.Transparent, Color(InkSoft)
	}
	s.ring.FillColor, s.ring.StrokeColor, s.ring.StrokeWidth = color.Transparent, color.Transparent, 0
	if s.hovered {
		s.ring.FillColor = Tint(Ink, 0x18)
	}
	if s.focused {
		s.ring.StrokeColor, s.ring.StrokeWidth = Color(Ink), 1.5
	}
}

func (r *slideRenderer) Refresh() {
	r.paint()
	r.Layout(r.s.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
