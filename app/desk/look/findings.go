package look

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/measure"
)

// Findings lists what the engine wants a person to know: a shape and a word
// for how much it weighs, the sentence, and what to do.
type Findings struct {
	widget.BaseWidget
	// Empty is said where there is nothing to list; "" leaves the list empty.
	Empty string

	list  []measure.Finding
	said  string         // in place of a list
	kept  []*findingLine // made so far; a change of the list fills them anew
	lines *fyne.Container
}

// NewFindings makes a list.
func NewFindings(empty string, findings []measure.Finding) *Findings {
	f := &Findings{Empty: empty, lines: Column(10)}
	f.ExtendBaseWidget(f)
	f.SetFindings(findings)
	return f
}

// SetFindings shows other findings, the weightiest first.
func (f *Findings) SetFindings(findings []measure.Finding) {
	list := slices.Clone(findings)
	weight := []measure.Severity{measure.Stop, measure.Mind, measure.Note}
	slices.SortStableFunc(list, func(a, b measure.Finding) int {
		return slices.Index(weight, a.Severity) - slices.Index(weight, b.Severity)
	})
	if len(f.lines.Objects) > 0 && slices.Equal(list, f.list) && (len(list) > 0 || f.said == f.Empty) {
		return
	}
	f.list, f.said = list, f.Empty
	var lines []fyne.CanvasObject
	for i, one := range f.list {
		if i == len(f.kept) {
			f.kept = append(f.kept, newFindingLine())
		}
		f.kept[i].show(one)
		lines = append(lines, f.kept[i].content)
	}
	if len(f.list) == 0 && f.Empty != "" {
		lines = append(lines, Small(f.Empty))
	}
	same := slices.Equal(lines, f.lines.Objects)
	f.lines.Objects = lines
	Rearrange(f.lines)
	if !same { // a refresh draws every sign anew
		f.Refresh()
	}
}

// List is what is shown, in its order.
func (f *Findings) List() []measure.Finding { return f.list }

// CreateRenderer is for the toolkit.
func (f *Findings) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(f.lines) }

// SeverityWord is how a severity is called.
func SeverityWord(s measure.Severity) string {
	switch s {
	case measure.Stop:
		return Say("Stop")
	case measure.Mind:
		return Say("Mind")
	default:
		return Say("Note")
	}
}

// SeverityInk is the colour of a severity.
func SeverityInk(s measure.Severity) fyne.ThemeColorName {
	switch s {
	case measure.Stop:
		return Stop
	case measure.Mind:
		return Mind
	default:
		return Note
	}
}

// findingLine is one finding: its shape in the margin, its word, the sentence
// and what to do.
type findingLine struct {
	now            measure.Finding
	icon           *canvas.Image
	word, says, do *Text
	column         *fyne.Container
	content        *fyne.Container
}

func newFindingLine() *findingLine {
	l := &findingLine{
		icon: Icon(IconSeverity(measure.Note), 20),
		word: NewText("", SizeSmall, Note, fyne.TextStyle{Bold: true}),
		says: NewText("", SizeText, Ink, fyne.TextStyle{}).Wrapped(),
		do:   NewText("", SizeText, InkSoft, fyne.TextStyle{}).Wrapped(),
	}
	l.column = Column(1, l.word, l.says, l.do)
	l.content = container.New(&margin{20, 10}, l.icon, l.column)
	return l
}

func (l *findingLine) show(f measure.Finding) {
	if l.now.Severity != f.Severity {
		l.icon.Resource = IconSeverity(f.Severity)
		l.icon.Refresh()
	}
	l.now = f
	l.word.SetText(SeverityWord(f.Severity))
	l.word.SetInk(SeverityInk(f.Severity))
	l.says.SetText(f.Says)
	l.do.SetText(f.Do)
	Show(l.do, f.Do != "")
	Rearrange(l.column)
}

// Marked sets an icon in the margin beside content that wraps.
func Marked(icon fyne.Resource, content fyne.CanvasObject) *fyne.Container {
	return container.New(&margin{20, 10}, Icon(icon, 20), content)
}

// margin sets the first object in a margin to the left of the second.
type margin struct{ width, gap float32 }

func (m *margin) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width, gap := m.width*Current().Scale, m.gap*Current().Scale
	objects[0].Move(fyne.Position{})
	objects[0].Resize(fyne.NewSquareSize(width))
	rest := size.Width - width - gap
	objects[1].Move(fyne.NewPos(width+gap, 0))
	objects[1].Resize(fyne.NewSize(rest, heightAt(objects[1], rest)))
}

func (m *margin) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width, gap := m.width*Current().Scale, m.gap*Current().Scale
	least := objects[1].MinSize()
	return fyne.NewSize(least.Width+width+gap, max(least.Height, width))
}

// CountFindings is "1 stop, 2 to mind", or "" where there is neither.
func CountFindings(findings []measure.Finding) string {
	stops, minds := 0, 0
	for _, f := range findings {
		switch f.Severity {
		case measure.Stop:
			stops++
		case measure.Mind:
			minds++
		}
	}
	switch {
	case stops > 0 && minds > 0:
		return Say("%d stop, %d to mind", stops, minds)
	case stops > 0:
		return Say("%d stop", stops)
	case minds > 0:
		return Say("%d to mind", minds)
	}
	return ""
}
