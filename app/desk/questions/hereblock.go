package questions

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
)

// hereBlock sets the sentence with the numbers of the batch on view apart, with
// what its figures rest on.
type hereBlock struct {
	box, warned *fyne.Container

	whose          *look.Text
	says           *stepped
	rests, caution *look.Text
}

func newHereBlock() *hereBlock {
	h := &hereBlock{
		whose: smallHeading(""), says: newStepped(fyne.TextStyle{Bold: true}, answerSizes), rests: look.Small(""),
		caution: look.NewText("", look.SizeSmall, look.Ink, fyne.TextStyle{}).Wrapped(),
	}
	h.warned = look.Marked(look.IconCaution(), h.caution)
	inside := look.Column(6, h.whose, h.says.box, h.rests, h.warned)
	h.box = container.NewStack(look.NewSurface(look.Card, look.Column(0)),
		look.Frame(look.Hairline(), look.Hairline(), look.Upright(), look.Upright(), look.Inset(16, 12, inside)))
	return h
}

// show shows the sentence of a question, and nothing where it has none for the
// batch on view.
func (h *hereBlock) show(now shown, q content.Question) {
	one := now.here(q)
	look.Show(h.box, one.says != "")
	if one.says == "" {
		return
	}
	ink := look.InkSoft
	if now.trial != "" {
		ink = look.Edited
	}
	h.whose.SetInk(ink)
	h.whose.SetText(look.Say("For %s", now.name()))
	h.says.said = one.says
	h.rests.SetText(one.rests)
	look.Show(h.rests, one.rests != "")
	h.caution.SetText(one.caution)
	look.Show(h.warned, one.caution != "")
}
