package bench

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// sourceLine is the source of the minutes in one line: title, edition, and how
// the value came into the table where it was not read on the page.
func sourceLine(now shown, name func(string) string) string {
	t := now.batch.Treatment
	line := "Source: " + name(t.Source)
	if source, ok := now.table.Source(t.Source); ok && source.Publisher != "" {
		line = "Source: " + source.Publisher + ", " + name(t.Source)
	}
	if t.Standing != reference.Read {
		line += " · " + string(t.Standing)
	}
	return line
}

// stationLine says for whom the figures are.
func stationLine(now shown) string {
	if n := now.batch.Batch.Stations; n > 1 {
		return fmt.Sprintf("All figures are for one of %d stations.", n)
	}
	return "All figures are for the one station."
}

// urgent is what must be seen beside the minutes: every stop, the first things
// to mind, and the caution of the method.
type urgent struct {
	content *fyne.Container
	said    []string
}

func newUrgent() *urgent { return &urgent{content: look.Column(5)} }

// mindsShown is how many things to mind stand beside the minutes; the rest is
// counted and stands below.
const mindsShown = 1

func (u *urgent) show(now shown) {
	var icons []fyne.Resource
	var said []string
	line := func(icon fyne.Resource, text string) { icons, said = append(icons, icon), append(said, text) }
	minds := 0
	for _, f := range now.batch.Findings {
		switch f.Severity {
		case measure.Stop:
			line(look.IconSeverity(f.Severity), "Stop: "+f.Says+" "+f.Do)
		case measure.Mind:
			if minds++; minds <= mindsShown {
				line(look.IconSeverity(f.Severity), "Mind: "+f.Says)
			}
		}
	}
	text := cautionLine(now)
	if rest := minds - mindsShown; rest > 0 {
		text += fmt.Sprintf(" %d more to mind below.", rest)
	}
	line(look.IconCaution(), text)
	if slices.Equal(said, u.said) {
		return
	}
	u.said = said
	u.content.Objects = nil
	for i, text := range said {
		u.content.Objects = append(u.content.Objects, look.Marked(icons[i], look.NewText(text, look.SizeSmall, look.Ink, fyne.TextStyle{}).Wrapped()))
	}
	u.content.Refresh()
}

// cautionLine is the caution of the method in one sentence, and that the food
// is not ready to eat.
func cautionLine(now shown) string {
	b := now.batch
	return CautionLine(now.table, now.class.Units, string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)
}

// CautionLine is what must be seen beside the minutes of a treatment, wherever
// they stand: the cautions against burns in their first sentence, and how the
// food, which is not ready to eat, is to be cooked. The container may be "".
func CautionLine(table *reference.Table, units measure.System, method, container, crop string) string {
	var parts []string
	notReady := ""
	values := batch.RuleTexts(table, units)
	for _, c := range content.Cautions(content.TopicsOf(method, container, crop)...) {
		text, err := content.Fill(c.Text, values)
		if err != nil {
			fyne.LogError("a caution has a gap", err)
			continue
		}
		switch c.ID {
		case "scald", "steam", "hot-pepper":
			parts = append(parts, firstSentence(text))
		case "not-ready-to-eat":
			notReady = c.Title + ": " + lastSentence(text)
		}
	}
	return strings.Join(append(parts, notReady), " ")
}

func firstSentence(text string) string {
	if first, _, more := strings.Cut(text, ". "); more {
		return first + "."
	}
	return text
}

func lastSentence(text string) string {
	if at := strings.LastIndex(text, ". "); at >= 0 {
		return text[at+len(". "):]
	}
	return text
}

func cautions(now shown) []content.Caution {
	b := now.batch
	if !b.Known {
		return content.Cautions()
	}
	return content.Cautions(content.TopicsOf(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)...)
}

// below is what stands under the grid: what to buy and how long it keeps, the
// label, the remaining figures, all findings, all cautions.
type below struct {
	content  fyne.CanvasObject
	figures  fyne.CanvasObject
	more     *rest
	heat     *heatPart
	label    *look.Text
	findings *look.Findings
	cautions *fyne.Container
	warned   string // what the cautions that stand were chosen by
}

func newBelow(named func(*look.FigureView) *look.FigureView) *below {
	b := &below{
		findings: look.NewFindings("Nothing to mind for this batch.", nil), cautions: look.Column(10),
		more: newRest(named), heat: newHeatPart(named),
	}
	b.label = look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{}).Wrapped()
	label := look.NewSurface(look.Card, look.Inset(14, 10, b.label))
	b.figures = look.Column(22,
		look.Section("To buy, to keep, and the figures behind", b.more.content),
		look.Section("On every label", label))
	b.content = look.Column(22,
		look.Section("What to mind", b.findings),
		b.heat.content,
		b.figures,
		look.Section("Cautions", b.cautions))
	return b
}

func (b *below) show(now shown) {
	w := now.batch.Worked
	b.findings.SetFindings(w.Findings)
	look.Show(b.figures, now.batch.Known)
	b.showCautions(now)
	b.heat.show(now)
	if now.batch.Known {
		b.more.show(now, now.batch.Figures(), above)
		b.label.SetText(labelText(w.Label))
	}
}

func (b *below) showCautions(now shown) {
	by := fmt.Sprintf("%p %s %s %s", now.table, now.class.Units, now.batch.Treatment.ID, now.batch.Batch.Pack.Container)
	if by == b.warned {
		return
	}
	b.warned = by
	values := batch.RuleTexts(now.table, now.class.Units)
	b.cautions.Objects = nil
	for _, c := range cautions(now) {
		text, err := content.Fill(c.Text, values)
		if err != nil {
			fyne.LogError("a caution has a gap", err)
			continue
		}
		title := look.NewText(c.Title, look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
		b.cautions.Add(look.Marked(look.IconCaution(), look.Column(1, title, look.Body(text))))
	}
	b.cautions.Refresh()
}

// labelText is the label as it stands on the pack, line by line.
func labelText(l batch.Label) string {
	food := l.Food
	if l.Cut != "" {
		food += ", " + l.Cut
	}
	lines := []string{food, l.Amount}
	if l.Frozen != "" {
		lines = append(lines, "Frozen "+l.Frozen)
	} else {
		lines = append(lines, "Frozen ____-__-__")
	}
	if best := l.Best(); best != "" {
		lines = append(lines, best)
	}
	return strings.Join(append(lines, l.Cook), "\n")
}
