package projector

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

// picture is a drawing that grows with its place, its labels with it.
type picture struct {
	drawing fyne.CanvasObject
	over    *container.ThemeOverride
	letters *lettering
	least   fyne.Size // of the drawing with labels at their normal size
	missing bool
	k, wide float32
	high    float32
}

// The labels of drawings: the size for which drawings are laid out, and the
// least and largest that they have here at scale 1.
const (
	normalLabel  = 13
	leastLabel   = 18.5
	largestLabel = 30
)

func (s *stage) picture(drawing fyne.CanvasObject) *picture {
	p := &picture{drawing: drawing, letters: &lettering{s, normalLabel}}
	p.over = container.NewThemeOverride(drawing, p.letters)
	p.least = drawing.MinSize()
	return p
}

// show says whether there is anything to draw.
func (p *picture) show(there bool) { p.missing = !there }

func (p *picture) fit(k, wide float32) float32 {
	p.k, p.wide, p.high = k, wide, 0
	if !p.missing {
		p.high = p.least.Height * leastLabel / normalLabel * k
	}
	return p.high
}

func (p *picture) put(x, y, high float32) {
	look.Show(p.over, p.high > 0 && high > 0)
	if p.high == 0 || high == 0 {
		return
	}
	label := normalLabel * min(p.wide/p.least.Width, high/p.least.Height)
	label = min(label, largestLabel*p.k)
	if p.letters.label != label {
		p.letters.label = label
		p.drawing.Refresh()
	}
	p.over.Move(fyne.NewPos(x, y))
	p.over.Resize(fyne.NewSize(p.wide, high))
}

func (p *picture) objects() []fyne.CanvasObject { return []fyne.CanvasObject{p.over} }
