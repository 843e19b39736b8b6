package questions

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
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

// show shows the sentence of the open question, and nothing where it has none
// for the batch on view.
func (h *hereBlock) show(open Answered) {
	look.Show(h.box, open.Here != "")
	if open.Here == "" {
		return
	}
	ink := look.InkSoft
	if open.Tried {
		ink = look.Edited
	}
	h.whose.SetInk(ink)
	h.whose.SetText(open.Whose)
	h.says.said = open.Here
	h.rests.SetText(open.Rests)
	look.Show(h.rests, open.Rests != "")
	h.caution.SetText(open.Caution)
	look.Show(h.warned, open.Caution != "")
}
