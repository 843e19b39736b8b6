package projector

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// manner is how a text of the view is set: its size in a view 1024 wide and 768
// high, the size that it may go down to where it would take too many lines or
// its page does not fit, and its ink.
type manner struct {
	size, least float32
	lines       int // more are avoided
	ink         fyne.ThemeColorName
	style       fyne.TextStyle
}

// The manners of the view.
var (
	asTitle    = manner{54, 36, 1, look.Ink, bold}
	asCut      = manner{34, 24, 1, look.InkSoft, plain}
	asSentence = manner{44, 28, 2, look.Ink, bold}
	asLabel    = manner{28, 24, 2, look.InkSoft, plain}
	asBasis    = manner{28, 24, 1, look.InkSoft, italic}
	asUnit     = manner{42, 28, 1, look.InkSoft, plain}
	asRange    = manner{24, 20, 1, look.InkSoft, plain}
	asBody     = manner{26, 21, 3, look.Ink, plain}
	asSmall    = manner{20, 18, 2, look.InkSoft, plain}
)

var (
	plain  = fyne.TextStyle{}
	bold   = fyne.TextStyle{Bold: true}
	italic = fyne.TextStyle{Italic: true}
)

// words is a text of the view; without text it takes no room.
type words struct {
	manner
	stage *stage
	name  fyne.ThemeSizeName
	text  *look.Text
	wide  float32
	high  float32 // 0: not shown
}

func (s *stage) say(text string, how manner) *words {
	w := &words{manner: how, stage: s, name: s.name()}
	w.text = look.NewText(text, w.name, how.ink, how.style).Wrapped()
	return w
}

func (w *words) set(text string) { w.text.SetText(text) }

func (w *words) empty() bool { return w.text.Text() == "" }

func (w *words) fit(k, wide float32) float32 {
	w.wide, w.high = wide, 0
	if w.empty() {
		return 0
	}
	for size := max(w.size*w.stage.tight, w.least); ; size = max(size*0.94, w.least) {
		w.high = w.setIn(size*k, wide)
		if size <= w.least || w.rows() <= w.lines {
			break
		}
	}
	if w.style.Bold || w.manner == asLabel {
		w.balance()
	}
	return w.high
}

// fitLine sets the text in a size and no wider than it is, so that something
// may follow it.
func (w *words) fitLine(size, most float32) {
	w.wide = min(w.lengthIn(size)+2, most)
	w.high = w.setIn(size, w.wide)
}

// balance makes the lines of a text alike in length, by narrowing it as far as
// it has no more of them.
func (w *words) balance() {
	if w.rows() < 2 {
		return
	}
	narrow, wide := w.wide/2, w.wide
	for wide-narrow > w.pt()/4 {
		mid := (narrow + wide) / 2
		if w.setIn(w.pt(), mid) > w.high+1 {
			narrow = mid
		} else {
			wide = mid
		}
	}
	w.wide = wide
	w.setIn(w.pt(), wide)
}

// setIn sets the text in a size and a width and says how high it is.
func (w *words) setIn(size, wide float32) float32 {
	if w.stage.sizes[w.name] != size {
		w.stage.sizes[w.name] = size
		w.text.Refresh()
	}
	w.text.Resize(fyne.NewSize(wide, w.text.MinSize().Height))
	return w.text.MinSize().Height
}

// pt is the size that the text is set in.
func (w *words) pt() float32 { return w.stage.sizes[w.name] }

func (w *words) rows() int { return int(w.high/w.lineHigh() + 0.5) }

func (w *words) lineHigh() float32 { return fyne.MeasureText("M", w.pt(), w.style).Height }

// length is how wide the text is in one line; lengthIn is so for another size.
func (w *words) length() float32 { return w.lengthIn(w.pt()) }

func (w *words) lengthIn(size float32) float32 {
	return fyne.MeasureText(w.text.Text(), size, w.style).Width
}

func (w *words) put(x, y, _ float32) {
	look.Show(w.text, w.high > 0)
	if w.high == 0 {
		return
	}
	w.text.Move(fyne.NewPos(x, y))
	w.text.Resize(fyne.NewSize(w.wide, w.high))
}

func (w *words) objects() []fyne.CanvasObject { return []fyne.CanvasObject{w.text} }
