// Package ask holds the questions that the window asks: a notice, a decision,
// which file to open, where to save. Every dialog leaves on Escape, takes
// Enter for its first button, and hands its answer to a function in the thread
// of the window.
package ask

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// Dialogs asks over one window.
type Dialogs struct{ Window fyne.Window }

// Answer is one button of a question.
type Answer struct {
	Label string
	Do    func() // nil: just close
}

// Question asks for a decision. The first answer is what Enter does; Escape
// does the last one that just closes, and the last where each does something.
func (d Dialogs) Question(title, text string, answers ...Answer) {
	d.show(title, look.Body(text), fyne.NewSize(480, 0), answers...)
}

// Notice says something that cannot be answered, only closed.
func (d Dialogs) Notice(title, text string) {
	d.Question(title, text, Answer{Label: look.Say("Close")})
}

// Problem says in plain words that something did not work; an error becomes a
// sentence.
func (d Dialogs) Problem(title string, err error) {
	d.Notice(title, look.Sentence(look.Voice().Error(err)))
}

// Page shows something long to read; it scrolls.
func (d Dialogs) Page(title string, content fyne.CanvasObject) {
	size := d.Window.Canvas().Size()
	scroll := look.VScroll(4, 4, content)
	d.show(title, scroll, fyne.NewSize(min(760, size.Width-80), min(640, size.Height-60)), Answer{Label: look.Say("Close")})
}

func (d Dialogs) show(title string, content fyne.CanvasObject, size fyne.Size, answers ...Answer) {
	var shown *dialog.CustomDialog
	buttons := make([]*look.Button, len(answers))
	row := container.NewHBox()
	for i, a := range answers {
		b := look.NewButton(a.Label, func() {
			shown.Hide()
			if a.Do != nil {
				a.Do()
			}
		})
		buttons[i] = b
		row.Add(b)
	}
	leave := len(answers) - 1
	for i := leave; i >= 0; i-- {
		if answers[i].Do == nil {
			leave = i
			break
		}
	}
	for _, b := range buttons {
		b.Escape = buttons[leave].OnTapped
	}
	if len(buttons) > 1 {
		buttons[0].Importance = widget.HighImportance
	}
	body := container.NewBorder(nil, look.Inset(0, 10, container.NewBorder(nil, nil, nil, row)), nil, nil, content)
	shown = dialog.NewCustomWithoutButtons(title, body, d.Window)
	shown.Resize(size.Max(fyne.NewSize(size.Width, 0)))
	shown.Show()
	// wrapped text has its height only now that it has a width
	shown.Resize(fyne.NewSize(size.Width, max(size.Height, shown.MinSize().Height)))
	d.Window.Canvas().Focus(buttons[0])
}
