package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/projector"
	"example.org/kettleside/app/desk/session"
)

// projection is the second window: a view of what is being worked on, to be
// read from the back of the room. It changes nothing.
type projection struct {
	window fyne.Window
	view   *projector.View
}

// openProjection shows the projector view, or brings it to the front. It begins
// with the question that is being read.
func (d *desk) openProjection() {
	if d.projection != nil {
		d.projection.window.RequestFocus()
		return
	}
	w := d.app.NewWindow("")
	p := &projection{window: w}
	w.SetPadded(false)
	p.furnish(d.session)
	if d.settings.Area == "questions" {
		p.view.TurnToQuestion()
	}
	w.Resize(fyne.NewSize(800, 600))
	w.Canvas().SetOnTypedKey(p.typedKey)
	p.command(fyne.KeyP, w.Close)
	p.command(fyne.KeyK, d.askFromProjector)
	w.SetOnClosed(func() {
		p.view.Close()
		d.projection = nil
		d.refreshMenu()
	})
	d.projection = p
	w.Show()
	d.refreshMenu()
}

// furnish makes what stands in the window, in the language that is spoken.
func (p *projection) furnish(s *session.Session) {
	page := 0
	if p.view != nil {
		page = p.view.Index()
	}
	p.window.SetTitle(look.Say("Kettleside — projector"))
	p.view = projector.New(s)
	p.view.Turn(page)
	p.window.SetContent(look.NewSurface(look.Paper, p.view.Content))
}

// askFromProjector brings the main window to the front, with the cursor in the
// search among the questions, unless a dialog is open there.
func (d *desk) askFromProjector() {
	d.window.RequestFocus()
	if d.window.Canvas().Overlays().Top() == nil {
		d.askQuestion()
	}
}

// turn shows the next or the previous page of the projector view.
func (d *desk) turn(next bool) {
	switch {
	case d.projection == nil:
		d.openProjection()
	case next:
		d.projection.view.Next()
	default:
		d.projection.view.Previous()
	}
}

// fillScreen lets the projector view fill its screen, or stand in a window
// again.
func (d *desk) fillScreen() {
	d.openProjection()
	d.projection.fill(!d.projection.window.FullScreen())
}

func (p *projection) fill(whole bool) { p.window.SetFullScreen(whole) }

// command is what Ctrl and a key do where the projector window is in front: it has
// no menu.
func (p *projection) command(key fyne.KeyName, do func()) {
	p.window.Canvas().AddShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}, func(fyne.Shortcut) { do() })
}

// typedKey is what a clicker or a hand at the projector window does. Escape first
// leaves the full screen, and then closes.
func (p *projection) typedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyF11:
		p.fill(!p.window.FullScreen())
	case fyne.KeyEscape:
		if p.window.FullScreen() {
			p.fill(false)
		} else {
			p.window.Close()
		}
	default:
		p.view.TypedKey(key)
	}
}

// typedKey is for keys that no entry of the main window takes.
func (d *desk) typedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyF11:
		d.fillScreen()
	case fyne.KeyPageDown, fyne.KeyPageUp:
		if d.projection != nil {
			d.projection.view.TypedKey(key)
		}
	}
}
