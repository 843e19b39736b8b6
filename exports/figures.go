package exports

import (
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// figureShares are the columns of a figure: its name over the first two, what
// it comes to, how it was worked out, and what it rests on with its source. The
// first alone holds the severity of a finding, and where heat does its work:
// longer words in Spanish.
func (m *maker) figureShares() []float64 {
	if m.Voice.Language() == words.Spanish {
		return []float64{70, 58, 104, 230, 70}
	}
	return []float64{54, 64, 106, 240, 68}
}

// figureHeads are the heads over them.
func (m *maker) figureHeads(second string) []cell {
	return []cell{
		{span: 2, role: head, value: m.Say("Figure")},
		{col: 2, role: head, value: second},
		{col: 3, role: head, value: m.Say("How it is worked out")},
		{col: 4, role: head, value: m.Say("Rests on")},
	}
}

// figure is one figure over the columns of a cover or batch sheet.
func (m *maker) figure(s *sheet, f measure.Figure) {
	s.add(row{cells: []cell{
		{span: 2, role: labelSmall, value: f.Label},
		figureText(2, f),
		{col: 3, role: small, value: figureWorking(f)},
		m.basis(f),
	}})
}

// figureText is a figure as printed, with the same in other units beside it; an
// estimate looks different from a rule.
func figureText(col int, f measure.Figure) cell {
	if f.Also == "" && f.Basis != measure.Estimate {
		return cell{col: col, role: value, value: f.Text}
	}
	c := cell{col: col, role: plain, runs: []run{{true, f.Text}}}
	if f.Basis == measure.Estimate {
		c.role = guessValue
	}
	if f.Also != "" {
		c.runs = append(c.runs, run{false, " (" + f.Also + ")"})
	}
	return c
}

// basis says what a figure rests on, with its source; an estimate stands out.
func (m *maker) basis(f measure.Figure) cell {
	c := cell{col: 4, role: small, value: m.sources.basis(f)}
	if f.Basis == measure.Estimate {
		c.role = guess
	}
	return c
}

// figureWorking is the line of working, and the note.
func figureWorking(f measure.Figure) string {
	return sentences(f.Working, f.Note)
}

// sentences joins texts with full stops between them.
func sentences(parts ...string) string {
	text := ""
	for _, p := range parts {
		if p == "" {
			continue
		}
		if text != "" {
			text = strings.TrimSuffix(text, ".") + ". "
		}
		text += p
	}
	return text
}

// severityWord is the word of a severity.
func severityWord(v *words.Voice, s measure.Severity) string {
	switch s {
	case measure.Stop:
		return v.Say("Stop")
	case measure.Mind:
		return v.Say("Mind")
	}
	return v.Say("Note")
}

// severityCell is the shape and the word of a severity.
func severityCell(v *words.Voice, s measure.Severity) cell {
	said := severityWord(v, s)
	switch s {
	case measure.Stop:
		return cell{role: stopWord, value: "■ " + said}
	case measure.Mind:
		return cell{role: mindWord, value: "▲ " + said}
	}
	return cell{role: noteWord, value: "● " + said}
}

// findings lists what the engine wants a person to know, in the type of a role.
func (m *maker) findings(s *sheet, caption string, as role, list []measure.Finding) {
	if len(list) == 0 {
		return
	}
	if caption != "" {
		s.heading(caption)
	}
	last := len(s.cols) - 1
	for _, f := range list {
		s.add(row{cells: []cell{
			severityCell(m.Voice, f.Severity),
			{col: 1, span: last - 1, role: as, runs: saysDo(f.Says, f.Do)},
			{col: last, role: small, value: m.sources.ref(f.Source)},
		}, space: 1})
	}
}

// saysDo is a finding as text: what it is in bold, then what to do.
func saysDo(says, do string) []run {
	runs := []run{{true, clip(says, 400)}}
	if do != "" {
		runs = append(runs, run{false, " " + clip(do, 400)})
	}
	return runs
}
