package bench

import (
	"fmt"
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
	line := name(t.Source)
	if source, ok := now.table.Source(t.Source); ok && source.Publisher != "" {
		line = source.Publisher + ", " + line
	}
	if t.Standing != reference.Read {
		line += " · " + look.Say(string(t.Standing))
	}
	return look.Say("Source: %s", line)
}

// stationLine says for whom the figures are.
func stationLine(now shown) string {
	if n := now.batch.Batch.Stations; n > 1 {
		return look.Say("All figures are for one of %d stations.", n)
	}
	return look.Say("All figures are for the one station.")
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
	values := batch.RuleTexts(table, units, look.Voice())
	for _, c := range content.Cautions(look.Voice().Language(), content.TopicsOf(method, container, crop)...) {
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
		return content.Cautions(look.Voice().Language())
	}
	return content.Cautions(look.Voice().Language(), content.TopicsOf(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)...)
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
		findings: look.NewFindings(look.Say("Nothing to mind for this batch."), nil), cautions: look.Column(10),
		more: newRest(named), heat: newHeatPart(named),
	}
	b.label = look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{}).Wrapped()
	label := look.NewSurface(look.Card, look.Inset(14, 10, b.label))
	b.figures = look.Column(22,
		look.Section(look.Say("To buy, to keep, and the figures behind"), b.more.content),
		look.Section(look.Say("On every label"), label))
	b.content = look.Column(22,
		look.Section(look.Say("What to mind"), b.findings),
		b.heat.content,
		b.figures,
		look.Section(look.Say("Cautions"), b.cautions))
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
	values := batch.RuleTexts(now.table, now.class.Units, look.Voice())
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
		lines = append(lines, look.Say("Frozen %s", l.Frozen))
	} else {
		lines = append(lines, look.Say("Frozen ____-__-__"))
	}
	if best := l.Best(look.Voice()); best != "" {
		lines = append(lines, best)
	}
	return strings.Join(append(lines, l.Cook), "\n")
}
