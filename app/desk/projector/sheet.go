package projector

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"example.org/kettleside/app/desk/look"
)

// sheet is what surrounds every page: the ground, the foot with the name of the
// batch and the number of the page, and around a trial its frame.
type sheet struct {
	stage        *stage
	box          *fyne.Container
	edge, ground *canvas.Rectangle
	trial        *words
	batch, place *words
	page         block

	trying bool
	laid   laid
}

// laid is what a layout was made for; it is made anew where something differs.
type laid struct {
	size  fyne.Size
	theme *look.Theme
}

// The view that sizes are said for, and the white in it.
const (
	normalWide, normalHigh = 1024, 768
	sideWhite, topWhite    = 44, 24
	footWhite              = 14
	frameWide              = 10
)

// anyWidth is one that nothing is set in, and in which no text has to wrap.
const anyWidth = 1e5

// tightest is the smallest that a page is set, as a share of its full size.
const tightest = 0.45

func newSheet(s *stage) *sheet {
	sh := &sheet{
		stage: s,
		edge:  canvas.NewRectangle(color.Transparent), ground: canvas.NewRectangle(color.Transparent),
		trial: s.say("", manner{28, 24, 1, look.Paper, bold}),
		batch: s.say("", manner{20, 18, 2, look.InkSoft, plain}),
		place: s.say("", manner{20, 18, 1, look.InkSoft, plain}),
	}
	sh.box = &fyne.Container{Layout: sh}
	return sh
}

// turn puts a page on the sheet. The toolkit forgets how a widget is drawn that
// was not seen for a minute, and lays it out again only where its size changes;
// so all that was not seen gets another size first.
func (sh *sheet) turn(page block) {
	sh.laid = laid{}
	other := page != sh.page
	if other {
		sh.page = page
		sh.box.Objects = append([]fyne.CanvasObject{sh.edge, sh.ground}, objectsOf([]block{page, sh.batch, sh.place, sh.trial})...)
	}
	for _, o := range sh.box.Objects {
		if other || !o.Visible() {
			o.Resize(fyne.NewSize(anyWidth, 0))
		}
	}
}

// say fills what surrounds the page.
func (sh *sheet) say(now shown, page string, at, of int) {
	sh.trying = now.trying()
	sh.trial.set("")
	if sh.trying {
		sh.trial.set(look.Say("Trial: %s — nothing here changes the class", now.trial))
	}
	sh.batch.set(join(", ", now.name(), now.station()))
	sh.place.set(look.Say("%s · %d of %d", page, at, of))
}

// MinSize is for the toolkit: everything is fitted to the size of the window.
func (sh *sheet) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(480, 360) }

// Layout is for the toolkit.
func (sh *sheet) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	now := laid{size, look.Current()}
	if sh.page == nil || sh.laid == now || size.Width < 1 {
		return
	}
	sh.laid = now
	k := min(size.Width/normalWide, size.Height/normalHigh)
	left, top := sideWhite*k, sh.frame(k, size)
	bottom := size.Height - sh.foot(k, size)
	wide, high := size.Width-2*left, bottom-top-footWhite*k
	for sh.stage.tight = 1; sh.page.fit(k, wide) > high && sh.stage.tight > tightest; sh.stage.tight *= 0.97 {
	}
	sh.page.put(left, top, high)
	sh.stage.tight = 1
}

// frame paints the ground, with the frame and the name of a trial around it,
// and says where the page begins.
func (sh *sheet) frame(k float32, size fyne.Size) float32 {
	sh.edge.FillColor, sh.ground.FillColor = look.Color(look.Edited), look.Color(look.Paper)
	sh.edge.Refresh()
	sh.ground.Refresh()
	sh.edge.Resize(size)
	look.Show(sh.edge, sh.trying)
	around, band := float32(0), float32(0)
	if sh.trying {
		around = frameWide * k
		band = sh.trial.fit(k, size.Width-2*sideWhite*k) + around
	} else {
		sh.trial.high = 0
	}
	sh.trial.put(sideWhite*k, around/2, 0)
	sh.ground.Move(fyne.NewPos(around, band))
	sh.ground.Resize(fyne.NewSize(size.Width-2*around, size.Height-band-around))
	return band + topWhite*k
}

// foot sets the foot and says how high it is.
func (sh *sheet) foot(k float32, size fyne.Size) float32 {
	white := footWhite * k
	if sh.trying {
		white += frameWide * k
	}
	all := size.Width - 2*sideWhite*k
	place := sh.place.fit(k, all)
	own := sh.place.length() + 2
	sh.place.wide = own
	batch := sh.batch.fit(k, all-own-30*k)
	high := max(place, batch)
	y := size.Height - white - high
	sh.place.put(size.Width-sideWhite*k-own, y+high-place, 0)
	sh.batch.put(sideWhite*k, y+high-batch, 0)
	return high + white
}
