package bench

import (
	"slices"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// urgent is what must be seen beside the minutes: every stop, the first things
// to mind, and the caution of the method.
type urgent struct {
	content *fyne.Container
	lines   []urgentLine
}

// urgentLine is one of them, with its sign in the margin.
type urgentLine struct {
	severity measure.Severity // "" for a caution
	text     *look.Text
	box      *fyne.Container
}

func newUrgent() *urgent { return &urgent{content: look.Column(5)} }

// mindsShown is how many things to mind stand beside the minutes; the rest is
// counted and stands below.
const mindsShown = 1

func (u *urgent) show(now shown) {
	n, minds := 0, 0
	say := func(severity measure.Severity, text string) {
		u.say(n, severity, text)
		n++
	}
	for _, f := range now.batch.Findings {
		switch f.Severity {
		case measure.Stop:
			say(f.Severity, look.Say("Stop: %s", f.Says+" "+f.Do))
		case measure.Mind:
			if minds++; minds <= mindsShown {
				say(f.Severity, look.Say("Mind: %s", f.Says))
			}
		}
	}
	text := cautionLine(now)
	if rest := minds - mindsShown; rest > 0 {
		text += " " + look.Say("%d more to mind below.", rest)
	}
	say("", text)
	u.lines = u.lines[:n]
	objects := make([]fyne.CanvasObject, n)
	for i, line := range u.lines {
		objects[i] = line.box
	}
	if !slices.Equal(objects, u.content.Objects) {
		u.content.Objects = objects
		u.content.Refresh()
	}
}

// say puts a text into a line, which is made anew only where it needs another
// sign.
func (u *urgent) say(at int, severity measure.Severity, text string) {
	if at < len(u.lines) && u.lines[at].severity == severity {
		u.lines[at].text.SetText(text)
		return
	}
	sign := look.IconCaution()
	if severity != "" {
		sign = look.IconSeverity(severity)
	}
	line := urgentLine{severity: severity, text: look.NewText(text, look.SizeSmall, look.Ink, fyne.TextStyle{}).Wrapped()}
	line.box = look.Marked(sign, line.text)
	u.lines = append(u.lines[:at], line)
}
