package projector

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
)

// tableHead is the heading of a group of lines, over a rule.
type tableHead struct {
	words [3]*words
	rule  *rule
	high  float32
}

func newTableHead(s *stage, texts ...string) *tableHead {
	h := &tableHead{rule: &rule{line: look.Hairline()}}
	for i, text := range texts {
		h.words[i] = s.say(text, manner{24, 22, 1, look.InkSoft, italic})
	}
	return h
}

func (h *tableHead) fit(k, wide float32, widths [3]float32) float32 {
	h.high = 0
	for i, w := range h.words {
		h.high = max(h.high, w.fit(k, widths[i]))
	}
	h.high += 12*k + h.rule.fit(k, wide)
	return h.high
}

// put says where the lines begin.
func (h *tableHead) put(x, y float32, columns [3]float32, shown bool) float32 {
	for i, w := range h.words {
		if !shown {
			w.high = 0
		}
		w.put(x+columns[i], y, 0)
	}
	h.rule.put(x, y+h.words[0].lineHigh(), 1)
	look.Show(h.rule.line, shown)
	if !shown {
		return y
	}
	return y + h.high
}

func (h *tableHead) objects() []fyne.CanvasObject {
	return objectsOf([]block{h.words[0], h.words[1], h.words[2], h.rule})
}

// tableLine is one difference: what it is, as planned, as tried, and how far
// apart the two are.
type tableLine struct {
	label, plan, trial, by *words
	high                   float32
	beside                 bool // how far apart they are stands behind the value
}

func newTableLine(s *stage) *tableLine {
	value := func(ink fyne.ThemeColorName) manner { return manner{34, 26, 2, ink, bold} }
	return &tableLine{
		label: s.say("", manner{28, 24, 1, look.Ink, plain}),
		plan:  s.say("", value(look.InkSoft)), trial: s.say("", value(look.Edited)),
		by: s.say("", asRange),
	}
}

func (l *tableLine) set(d session.Difference) {
	l.label.set(d.Label)
	l.plan.set(d.Plan)
	l.trial.set(d.Trial)
	l.by.set(d.By)
}

func (l *tableLine) fit(k float32, widths [3]float32) {
	l.high = max(l.label.fit(k, widths[0]), l.plan.fit(k, widths[1]))
	trial, by := l.trial.fit(k, widths[2]), l.by.fit(k, widths[2])
	l.beside = l.trial.rows() == 1 && l.behind()+l.by.length() <= widths[2]
	if !l.beside {
		trial += by
	}
	l.high = max(l.high, trial)
}

// behind is where the trial's value is over.
func (l *tableLine) behind() float32 { return l.trial.length() + l.trial.pt()*0.5 }

// put sets all on the first line of writing of the trial's value.
func (l *tableLine) put(x, y float32, columns [3]float32, shown bool) {
	for _, w := range []*words{l.label, l.plan, l.trial, l.by} {
		if !shown {
			w.high = 0
		}
	}
	level := func(w *words) float32 { return y + (l.trial.lineHigh()-w.lineHigh())*(1-depth) }
	l.label.put(x+columns[0], level(l.label), 0)
	l.plan.put(x+columns[1], level(l.plan), 0)
	l.trial.put(x+columns[2], y, 0)
	if l.beside {
		l.by.put(x+columns[2]+l.behind(), level(l.by), 0)
	} else {
		l.by.put(x+columns[2], y+l.trial.high, 0)
	}
}
