package exports

import (
	"fmt"
	"strings"
	"unicode/utf8"

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
	p.head(w.Voice.Say("In all"))
	p.figures(w.Totals.Figures())
	if len(w.Shopping) > 0 {
		p.head(w.Voice.Say("Shopping, weight as bought"))
		for _, l := range w.Shopping {
			f := l.Buy
			f.Label = l.Crop.Name
			p.figures([]measure.Figure{f})
		}
	}
	p.findings(w.Findings)
	if g, ok := gridNamed(firstGrid(Letter)); ok {
		if text := m.labelsLeftOut(g); text != "" {
			p.line("%s", w.Voice.Say("Labels, %s: %s", g.Say(w.Voice), text))
		}
	}
	for i, b := range w.Batches {
		p.head(fmt.Sprintf("%d  %s", i+1, short(b.Batch.Name)))
		if b.Known {
			p.line("%s", m.batchLine(b))
			p.figures(b.Figures())
			for _, text := range m.editTexts(b.Treatment) {
				p.line("%s", text)
			}
		}
		p.findings(b.Findings)
		if list := b.Estimates.Figures(); len(list) > 0 {
			p.line("\n%s. %s", w.Voice.Say(estimatesHead), w.Voice.Say(estimatesSay))
			p.figures(list)
		}
	}
	p.head(w.Voice.Say("Cautions"))
	texts := m.ruleTexts()
	for _, c := range m.cautionsOf(w.Batches) {
		p.line("%s. %s", c.Title, filled(c.ID, c.Text, texts))
	}
	p.head(w.Voice.Say("Sources: %s", w.Table.Edition))
	for i, id := range p.sources.order {
		if p.sources.cited[id] {
			x, _ := w.Table.Source(id)
			p.line("%s", p.sources.line(i+1, x))
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
		p.line("    %s", sentences(f.Working, f.Note, p.sources.voice.Say("Rests on: %s", p.sources.basis(f))))
	}
}

func (p *plainText) findings(list []measure.Finding) {
	for _, f := range list {
		p.line("%s: %s", severityWord(p.sources.voice, f.Severity), strings.TrimSpace(f.Says+" "+f.Do+" "+p.sources.ref(f.Source)))
	}
}
