package app

import (
	"fyne.io/fyne/v2"

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

// openProjection shows the projector view, or brings it to the front.
func (d *desk) openProjection() {
	if d.projection != nil {
		d.projection.window.RequestFocus()
		return
	}
	w := d.app.NewWindow("")
	p := &projection{window: w}
	w.SetPadded(false)
	p.furnish(d.session)
	w.Resize(fyne.NewSize(800, 600))
	w.Canvas().SetOnTypedKey(p.typedKey)
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

// typedKey is what a clicker or a hand at the projector window does.
func (p *projection) typedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyF11:
		p.fill(!p.window.FullScreen())
	case fyne.KeyEscape:
		p.fill(false)
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
