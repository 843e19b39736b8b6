package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/content/words"
)

// front presses a key in the projector window, with Ctrl where it is a command.
func (p *projection) front(key fyne.KeyName, ctrl bool) {
	canvas := p.window.Canvas()
	if ctrl {
		canvas.(fyne.Shortcutable).TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault})
		return
	}
	canvas.OnTypedKey()(&fyne.KeyEvent{Name: key})
}

// Escape leaves the full screen first, and then the window; Ctrl+P closes it at
// once. The main window stays.
func TestTheProjectorWindowCloses(t *testing.T) {
	d, _ := newTestDesk(t)
	d.fillScreen()
	p := d.projection
	p.front(fyne.KeyEscape, false)
	if p.window.FullScreen() || d.projection != p {
		t.Fatalf("after one Escape: full screen %v, open %v", p.window.FullScreen(), d.projection != nil)
	}
	p.front(fyne.KeyEscape, false)
	if d.projection != nil {
		t.Error("Escape does not close the window")
	}
	d.fillScreen()
	d.projection.front(fyne.KeyP, true)
	if d.projection != nil {
		t.Error("Ctrl+P does not close the window")
	}
	d.openProjection()
	d.projection.front(fyne.KeyQ, true)
	if d.projection == nil {
		t.Error("Ctrl+Q closes it")
	}
	before := d.projection.view.Page()
	d.projection.front(fyne.KeySpace, false)
	if got := d.projection.view.Page(); got != before {
		t.Errorf("space turns from %s to %s", before, got)
	}
	d.projection.front(fyne.KeyPageDown, false)
	if got := d.projection.view.Page(); got == before {
		t.Error("page down does not turn")
	}
}

// Ctrl+K leads from the projector to the search of the questions, and what is
// opened there stands on the projector.
func TestAQuestionIsAskedFromTheProjector(t *testing.T) {
	d, _ := newTestDesk(t)
	d.openProjection()
	over := dialog.NewInformation("a", "b", d.window)
	over.Show()
	d.projection.front(fyne.KeyK, true)
	if d.settings.Area == "questions" {
		t.Error("an area is opened under a dialog")
	}
	over.Hide()
	d.projection.front(fyne.KeyK, true)
	if _, searching := d.window.Canvas().Focused().(interface{ SelectedText() string }); !searching || d.settings.Area != "questions" {
		t.Fatalf("area %s, focus on %T", d.settings.Area, d.window.Canvas().Focused())
	}
	openQuestion(t, d)
	if got := d.projection.view.Page(); got != "Question" {
		t.Errorf("the projector shows %s", got)
	}
	d.projection.view.Turn(0)
	d.openProjection()
	if got := d.projection.view.Page(); got != "Treatment" {
		t.Errorf("brought to the front it turns to %s", got)
	}
}

// The view begins with the question that is being read, and with the batch where
// another area is open. Another language leaves the question open.
func TestTheProjectorBeginsWithTheQuestion(t *testing.T) {
	d, _ := newTestDesk(t)
	openQuestion(t, d)
	asked, _, _ := d.questions.Answer()
	d.openProjection()
	if got := d.projection.view.Page(); got != "Question" {
		t.Errorf("it begins with %s", got)
	}
	d.setLanguage(words.Spanish)
	t.Cleanup(func() { d.setLanguage(words.English) })
	if got, _, _ := d.questions.Answer(); got == "" || got == asked || d.projection.view.Page() != "Pregunta" {
		t.Errorf("in Spanish %q is open, the projector shows %s", got, d.projection.view.Page())
	}
	d.projection.window.Close()
	d.open("batch")
	d.openProjection()
	if got := d.projection.view.Page(); got != "Tratamiento" {
		t.Errorf("over a batch it begins with %s", got)
	}
}
