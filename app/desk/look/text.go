package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Text is a text in one size and colour of the theme, flush with its edges.
// It wraps where Wrapped was called, and follows the theme by itself.
type Text struct {
	widget.BaseWidget
	segment *widget.TextSegment
	rich    *widget.RichText
}

// NewText makes a text in a size and colour of the theme.
func NewText(text string, size fyne.ThemeSizeName, ink fyne.ThemeColorName, style fyne.TextStyle) *Text {
	segment := &widget.TextSegment{Text: text, Style: widget.RichTextStyle{
		SizeName: size, ColorName: ink, TextStyle: style,
	}}
	t := &Text{segment: segment, rich: widget.NewRichText(segment)}
	t.ExtendBaseWidget(t)
	return t
}

// Heading is the heading of an area or a section.
func Heading(text string) *Text {
	return NewText(text, SizeHeading, Ink, fyne.TextStyle{Bold: true})
}

// Label names what stands beside or below it.
func Label(text string) *Text { return NewText(text, SizeSmall, InkSoft, fyne.TextStyle{}) }

// Body is running text; it wraps.
func Body(text string) *Text { return NewText(text, SizeText, Ink, fyne.TextStyle{}).Wrapped() }

// Small is working, sources and hints; it wraps.
func Small(text string) *Text { return NewText(text, SizeSmall, InkSoft, fyne.TextStyle{}).Wrapped() }

// Wrapped lets the text run over several lines.
func (t *Text) Wrapped() *Text {
	t.rich.Wrapping = fyne.TextWrapWord
	return t
}

// Clipped ends the text with an ellipsis where there is no room for it.
func (t *Text) Clipped() *Text {
	t.rich.Truncation = fyne.TextTruncateEllipsis
	return t
}

// Trailing sets the text flush right.
func (t *Text) Trailing() *Text {
	t.segment.Style.Alignment = fyne.TextAlignTrailing
	return t
}

// Text is what is shown.
func (t *Text) Text() string { return t.segment.Text }

// SetText shows another text.
func (t *Text) SetText(text string) {
	if t.segment.Text == text {
		return
	}
	t.segment.Text = text
	t.rich.Refresh()
	t.Refresh()
}

// SetInk shows the text in another colour of the theme.
func (t *Text) SetInk(ink fyne.ThemeColorName) {
	if t.segment.Style.ColorName == ink {
		return
	}
	t.segment.Style.ColorName = ink
	t.rich.Refresh()
}

// setSize shows the text in another size of the theme.
func (t *Text) setSize(size fyne.ThemeSizeName) {
	if t.segment.Style.SizeName == size {
		return
	}
	t.segment.Style.SizeName = size
	t.rich.Refresh()
}

// CreateRenderer is for the toolkit.
func (t *Text) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.New(flush{}, t.rich))
}

// flush cuts off the padding that the toolkit puts around text.
type flush struct{}

func (flush) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	pad := theme.InnerPadding()
	for _, o := range objects {
		o.Move(fyne.NewPos(-pad, -pad))
		o.Resize(size.AddWidthHeight(2*pad, 2*pad))
	}
}

func (flush) MinSize(objects []fyne.CanvasObject) fyne.Size {
	pad := theme.InnerPadding()
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.SubtractWidthHeight(2*pad, 2*pad)
}

// Hairline is a thin rule across the page; Upright is one from top to bottom.
func Hairline() fyne.CanvasObject { return newRuleLine() }

// Upright is a thin rule from top to bottom.
func Upright() fyne.CanvasObject { return newRuleLine() }

type ruleLine struct {
	widget.BaseWidget
}

func newRuleLine() *ruleLine {
	r := &ruleLine{}
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer is for the toolkit.
func (r *ruleLine) CreateRenderer() fyne.WidgetRenderer {
	line := canvas.NewRectangle(Color(Rule))
	line.SetMinSize(fyne.NewSize(1, 1))
	return &painted{WidgetRenderer: widget.NewSimpleRenderer(line), repaint: func() { line.FillColor = Color(Rule) }}
}

// Painted is a renderer of content that takes its colours from the theme again
// on each refresh, by calling repaint.
func Painted(content fyne.CanvasObject, repaint func()) fyne.WidgetRenderer {
	return &painted{WidgetRenderer: widget.NewSimpleRenderer(content), repaint: repaint}
}

// painted is a renderer that takes its colours from the theme again on each
// refresh.
type painted struct {
	fyne.WidgetRenderer
	repaint func()
}

func (p *painted) Refresh() {
	p.repaint()
	p.WidgetRenderer.Refresh()
}

// Section is a heading over a hairline, with content below.
func Section(title string, content ...fyne.CanvasObject) *fyne.Container {
	head := Column(4, Heading(title), Hairline())
	return Column(10, append([]fyne.CanvasObject{head}, content...)...)
}
