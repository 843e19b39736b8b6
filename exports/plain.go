package exports

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
)

// Plain is everything that was worked out about a class as a list to read in a
// terminal or to paste into a letter: each figure with its working and what it
// rests on, each finding with what to do.
func Plain(w class.Worked) string {
	p := &plainText{sources: newSources(w, nil)}
	m := &maker{Worked: w, sources: p.sources}
	p.line("%s", m.className())
	p.line("%s", m.whenAndWhere())
	for _, fact := range m.people() {
		p.line("%s: %s", fact[0], fact[1])
	}
	p.head("In all")
	p.figures(w.Totals.Figures())
	if len(w.Shopping) > 0 {
		p.head("Shopping, weight as bought")
		for _, l := range w.Shopping {
			f := l.Buy
			f.Label = l.Crop.Name
			p.figures([]measure.Figure{f})
		}
	}
	p.findings(w.Findings)
	if g, ok := gridNamed(firstGrid(Letter)); ok {
		if text := m.labelsLeftOut(g); text != "" {
			p.line("Labels, %s: %s", g.Name(), text)
		}
	}
	for i, b := range w.Batches {
		p.head(fmt.Sprintf("%d  %s", i+1, short(b.Batch.Name)))
		if b.Known {
			p.line("%s", m.batchLine(b))
			p.figures(b.Figures())
			for _, text := range editTexts(b.Treatment) {
				p.line("%s", text)
			}
		}
		p.findings(b.Findings)
		if list := b.Estimates.Figures(); len(list) > 0 {
			p.line("\n%s. %s", estimatesHead, estimatesSay)
			p.figures(list)
		}
	}
	p.head("Cautions")
	texts := batch.RuleTexts(w.Table, w.Class.Units)
	for _, c := range cautionsOf(w.Batches) {
		p.line("%s. %s", c.Title, filled(c.ID, c.Text, texts))
	}
	p.head("Sources: " + w.Table.Edition)
	for i, id := range p.sources.order {
		if p.sources.cited[id] {
			x, _ := w.Table.Source(id)
			p.line("[%d] %s. %s, %s. %s", i+1, x.Title, x.Publisher, x.Edition, standingOf(x))
		}
	}
	return p.String()
}

// plainText gathers lines.
type plainText struct {
	strings.Builder
	sources *sources
}

func (p *plainText) line(format string, args ...any) {
	fmt.Fprintf(&p.Builder, format+"\n", args...)
}

func (p *plainText) head(text string) {
	p.line("\n%s\n%s", text, strings.Repeat("-", utf8.RuneCountInString(text)))
}

func (p *plainText) figures(list []measure.Figure) {
	for _, f := range list {
		text := f.Text
		if f.Also != "" {
			text += " (" + f.Also + ")"
		}
		p.line("%s: %s", f.Label, text)
		p.line("    %s", sentences(f.Working, f.Note, "Rests on: "+p.sources.basis(f)))
	}
}

func (p *plainText) findings(list []measure.Finding) {
	for _, f := range list {
		word, _ := severityCell(f.Severity).value.(string)
		_, word, _ = strings.Cut(word, " ")
		p.line("%s: %s", word, strings.TrimSpace(f.Says+" "+f.Do+" "+p.sources.ref(f.Source)))
	}
}
