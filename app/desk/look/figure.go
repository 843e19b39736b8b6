package look

import (
	"image/color"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/measure"
)

// FigureView shows one figure: label, value with its smaller unit, the same
// in other units, and that it is an estimate where it is one. A click, Enter
// or Space opens its working and source in place.
type FigureView struct {
	widget.BaseWidget
	// SourceName turns the id of a source into words; nil shows the id.
	SourceName func(id string) string

	figure    measure.Figure
	size      fyne.ThemeSizeName
	open      bool
	edited    bool
	saidAbove bool

	label, basis, also    *Text
	value, unit           *Text
	words                 *Text
	working, source, note *Text
	number                *fyne.Container
	detail                *fyne.Container
	body                  *fyne.Container
	mark                  *canvas.Rectangle // a change just made
	ring                  *canvas.Rectangle // hover and focus
	hovered, focused      bool
	fading                *fyne.Animation
}

var (
	_ fyne.Tappable      = (*FigureView)(nil)
	_ fyne.Focusable     = (*FigureView)(nil)
	_ desktop.Hoverable  = (*FigureView)(nil)
	_ desktop.Cursorable = (*FigureView)(nil)
)

// NewFigure shows a figure at the usual size.
func NewFigure(f measure.Figure) *FigureView { return newFigure(f, SizeFigure) }

// NewLargeFigure shows the figure that matters most on a screen.
func NewLargeFigure(f measure.Figure) *FigureView { return newFigure(f, SizeLarge) }

// NewSmallFigure shows a figure in a dense list.
func NewSmallFigure(f measure.Figure) *FigureView { return newFigure(f, SizeHeading) }

func newFigure(f measure.Figure, size fyne.ThemeSizeName) *FigureView {
	unitSize, wordSize := SizeText, SizeText
	switch size {
	case SizeLarge:
		unitSize, wordSize = SizeHeading, SizeHeading
	case SizeHeading:
		unitSize = SizeSmall
	}
	v := &FigureView{
		size:  size,
		label: Label(""), basis: NewText("", SizeSmall, InkSoft, fyne.TextStyle{Italic: true}), also: Small(""),
		value: NewText("", size, Ink, fyne.TextStyle{Bold: true}),
		unit:  NewText("", unitSize, InkSoft, fyne.TextStyle{}),
		words: NewText("", wordSize, Ink, fyne.TextStyle{Bold: true}).Wrapped(),

		working: Small(""), source: Small(""), note: Small(""),
		mark: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
	}
	v.mark.CornerRadius, v.ring.CornerRadius = 3, 3
	v.number = container.New(&numberLine{value: v.value, unit: v.unit, full: size}, v.value, v.unit)
	v.detail = Column(1, v.working, v.source, v.note)
	v.detail.Hide()
	head := container.New(&labelLine{}, v.label, v.basis)
	v.body = Column(0, head, v.number, v.words, v.also, v.detail)
	v.figure = f
	v.fill()
	v.ExtendBaseWidget(v)
	return v
}

// Figure is what is shown.
func (v *FigureView) Figure() measure.Figure { return v.figure }

// SetFigure shows another state of the figure and marks it for a moment where
// it reads differently.
func (v *FigureView) SetFigure(f measure.Figure) {
	if f == v.figure {
		return
	}
	changed := f.Text != v.figure.Text && v.figure.ID == f.ID
	v.figure = f
	v.fill()
	Rearrange(v.body)
	if changed {
		v.flash()
	}
}

// SaidAbove leaves out the word that it is an estimate, where the heading over it
// says so.
func (v *FigureView) SaidAbove() *FigureView {
	v.saidAbove = true
	v.fill()
	return v
}

// SetEdited marks the figure as resting on a value that the educator changed.
func (v *FigureView) SetEdited(edited bool) {
	if v.edited != edited {
		v.edited = edited
		v.fill()
		Rearrange(v.body)
	}
}

func (v *FigureView) fill() {
	f := v.figure
	v.label.SetText(f.Label)
	v.basis.SetText(v.basisWords())
	v.basis.SetInk(InkSoft)
	if v.edited {
		v.basis.SetInk(Edited)
	}
	number, unit := Split(f)
	if bare, is := AtLeast(number); is && unit != "" { // the number stays short
		number, unit = bare, Say("%s, at least", unit)
	}
	if f.Basis == measure.Estimate && !f.InWords() && number != "" && !strings.HasPrefix(number, "≈") {
		number = "≈ " + number
	}
	v.value.SetText(number)
	v.unit.SetText(unit)
	v.words.SetText(f.Text)
	Show(v.words, f.InWords())
	Show(v.number, !f.InWords())
	v.also.SetText(f.Also)
	Show(v.also, f.Also != "")
	if v.open {
		v.fillDetail()
	}
}

// fillDetail says the working, which nobody measures while it is not shown.
func (v *FigureView) fillDetail() {
	f := v.figure
	v.working.SetText(f.Working)
	Show(v.working, f.Working != "")
	v.source.SetText(v.rests())
	v.note.SetText(f.Note)
	Show(v.note, f.Note != "")
}

// basisWords is what stands behind the label.
func (v *FigureView) basisWords() string {
	switch {
	case v.edited:
		return Say("edited")
	case v.figure.Basis == measure.Estimate && !v.saidAbove:
		return Say("estimate")
	}
	return ""
}

// rests says what the figure rests on, in words.
func (v *FigureView) rests() string {
	name := v.figure.Source
	if v.SourceName != nil {
		name = v.SourceName(name)
	}
	kind := map[measure.Basis]string{
		measure.Tabled: Say("From the crop table"), measure.Ruled: Say("Rule of method"),
		measure.Entered: Say("As entered"), measure.Estimate: Say("An estimate"),
	}[v.figure.Basis]
	if name == "" || v.figure.Basis == measure.Entered {
		return kind
	}
	if s := v.figure.Standing; s != "" && s != "read" {
		name += " · " + Say(s)
	}
	return kind + ": " + name
}

// Split cuts the printed text of a figure into its number and its unit, which may
// stand there in the language of the window.
func Split(f measure.Figure) (number, unit string) {
	if f.Unit == "" {
		return f.Text, ""
	}
	for _, said := range []func() string{
		func() string { return f.Unit },
		func() string { return strings.TrimPrefix(Amount("2 "+f.Unit), "2 ") },
		func() string { return Say(f.Unit) },
	} {
		unit := said()
		if n, ok := strings.CutSuffix(f.Text, " "+unit); ok {
			return strings.TrimSpace(n), unit
		}
	}
	return f.Text, ""
}

// Open says whether the working is shown.
func (v *FigureView) Open() bool { return v.open }

// SetOpen shows or hides the working.
func (v *FigureView) SetOpen(open bool) {
	v.open = open
	if open {
		v.fillDetail()
	}
	Show(v.detail, open)
	v.body.Refresh()
	v.Refresh()
}

// Show shows or hides an object.
func Show(o fyne.CanvasObject, visible bool) {
	if visible {
		o.Show()
	} else {
		o.Hide()
	}
}

// flash marks the value for a moment.
func (v *FigureView) flash() {
	if v.fading != nil {
		v.fading.Stop()
	}
	v.fading = canvas.NewColorRGBAAnimation(Tint(Heat, 0x66), Tint(Heat, 0), 1500*time.Millisecond, func(c color.Color) {
		v.mark.FillColor = c
		v.mark.Refresh()
	})
	v.fading.Curve = fyne.AnimationEaseIn
	v.fading.Start()
}

// Tapped opens or closes the working.
func (v *FigureView) Tapped(*fyne.PointEvent) { v.SetOpen(!v.open) }

// TypedKey opens or closes the working.
func (v *FigureView) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		v.SetOpen(!v.open)
	}
}

// TypedRune is for the toolkit.
func (v *FigureView) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (v *FigureView) FocusGained() {
	v.focused = true
	v.Refresh()
	Reveal(v)
}

// FocusLost is for the toolkit.
func (v *FigureView) FocusLost() { v.focused = false; v.Refresh() }

// MouseIn is for the toolkit.
func (v *FigureView) MouseIn(*desktop.MouseEvent) { v.hovered = true; v.Refresh() }

// MouseMoved is for the toolkit.
func (v *FigureView) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (v *FigureView) MouseOut() { v.hovered = false; v.Refresh() }

// Cursor is for the toolkit.
func (v *FigureView) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer is for the toolkit.
func (v *FigureView) CreateRenderer() fyne.WidgetRenderer {
	stack := container.New(&bleed{5, 3}, v.mark, v.ring, v.body)
	r := &painted{WidgetRenderer: widget.NewSimpleRenderer(stack), repaint: v.repaint}
	v.repaint()
	return r
}

func (v *FigureView) repaint() {
	v.ring.FillColor, v.ring.StrokeColor, v.ring.StrokeWidth = color.Transparent, color.Transparent, 0
	if v.hovered {
		v.ring.FillColor = Tint(Ink, 0x0C)
	}
	if v.focused {
		v.ring.StrokeColor, v.ring.StrokeWidth = Color(Ink), 1.5
	}
}

// bleed lets the grounds (all objects but the last) stand out over the edges
// of the last, so that text stays flush with the page.
type bleed struct{ x, y float32 }

func (b *bleed) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	last := len(objects) - 1
	for i, o := range objects {
		if i == last {
			o.Move(fyne.Position{})
			o.Resize(size)
			continue
		}
		o.Move(fyne.NewPos(-b.x, -b.y))
		o.Resize(size.AddWidthHeight(2*b.x, 2*b.y))
	}
}

func (b *bleed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[len(objects)-1].MinSize()
}

// onBaseline sets texts of different size side by side on one line of writing.
type onBaseline struct{}

// depth is how far below its baseline the face reaches, as a share of the
// height of a line.
const depth = 0.212

func (onBaseline) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	var tallest float32
	for _, o := range objects {
		tallest = max(tallest, o.MinSize().Height)
	}
	x := float32(0)
	for _, o := range objects {
		least := o.MinSize()
		y := (tallest - least.Height) * (1 - depth)
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(min(least.Width, max(0, size.Width-x)), least.Height))
		if least.Width > 0 {
			x += least.Width + 5*Current().Scale
		}
	}
}

func (onBaseline) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	shown := 0
	for _, o := range objects {
		least := o.MinSize()
		if least.Width > 0 {
			size.Width += least.Width
			shown++
		}
		size.Height = max(size.Height, least.Height)
	}
	if shown > 1 {
		size.Width += float32(shown-1) * 5 * Current().Scale
	}
	return size
}
