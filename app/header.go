package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
)

// header says which class is on the desk, whether it is saved, and whether
// something needs attention.
type header struct {
	title, when, saved *look.Text
	trouble            *look.Button
	line               *fyne.Container
	box                fyne.CanvasObject
}

func newHeader(showFindings func()) *header {
	h := &header{
		title: look.NewText("", look.SizeHeading, look.Ink, fyne.TextStyle{Bold: true}).Clipped(),
		when:  look.NewText("", look.SizeSmall, look.InkSoft, fyne.TextStyle{}).Clipped(),
		saved: look.NewText("", look.SizeSmall, look.InkSoft, fyne.TextStyle{}),
	}
	h.trouble = look.NewButton("", showFindings)
	right := container.NewHBox(container.NewCenter(h.saved), container.NewCenter(h.trouble))
	h.line = container.NewBorder(nil, nil, nil, look.Inset(10, 0, right), look.Column(1, h.title, h.when))
	h.box = look.Column(0, look.Inset(20, 8, h.line), look.Hairline())
	return h
}

func (h *header) show(s *session.Session) {
	c := s.Class()
	h.title.SetText(titleOf(c))
	h.when.SetText(whenAndWhere(c))
	h.saved.SetText("")
	if s.Unsaved() {
		h.saved.SetText(look.Say("not saved yet"))
	}
	findings := s.Findings()
	count := look.CountFindings(findings)
	switch {
	case count == "":
		h.trouble.SetText(look.Say("Nothing to mind"))
		h.trouble.SetIcon(nil)
	case hasStop(findings):
		h.trouble.SetText(count)
		h.trouble.SetIcon(look.IconSeverity(measure.Stop))
	default:
		h.trouble.SetText(count)
		h.trouble.SetIcon(look.IconSeverity(measure.Mind))
	}
	h.line.Refresh()
}

func hasStop(findings []measure.Finding) bool {
	for _, f := range findings {
		if f.Severity == measure.Stop {
			return true
		}
	}
	return false
}

func titleOf(c class.Class) string {
	if c.Title == "" {
		return look.Say("Class without a title")
	}
	return c.Title
}

// whenAndWhere is "2027-06-12 · Wren Hollow community kitchen".
func whenAndWhere(c class.Class) string {
	text := c.Date
	if text == "" {
		text = look.Say("No date yet")
	}
	if c.Place.Name != "" {
		text += " · " + c.Place.Name
	}
	return text
}
