package questions

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
)

// answer is the open question with its answer, the sentence for the batch on
// view, the source, and where to go on from there.
type answer struct {
	content *fyne.Container
	scroll  *container.Scroll
	matter  *fyne.Container // what should be read without scrolling
	body    *fyne.Container // all of it

	asks      *stepped
	prompt    *look.Text // instead of an answer, where no question is open
	says      *stepped
	here      *hereBlock
	source    *look.Text
	onward    *fyne.Container // the related questions
	related   []*relatedLine
	deference *look.Text
}

// topWhite is the white over the question and under everything.
const topWhite = 18

func newAnswer(open func(id string)) *answer {
	a := &answer{
		asks: newStepped(fyne.TextStyle{Bold: true}, questionSizes), prompt: look.Body(""), says: newStepped(fyne.TextStyle{}, answerSizes),
		here: newHereBlock(), source: look.Small(""), deference: look.Small(""),
	}
	a.onward = look.Column(0, look.Inset(lineInset, 4, smallHeading(look.Say("Related questions"))))
	for range mostRelated {
		one := newRelatedLine(open)
		a.related = append(a.related, one)
		a.onward.Add(one.box)
	}
	a.matter = look.Column(16, a.asks.box, a.prompt, a.says.box, a.here.box, a.source)
	a.scroll = look.VScroll(0, topWhite, look.Column(18,
		look.Inset(lineInset, 0, a.matter), a.onward, look.Inset(lineInset, 0, a.deference)))
	a.body = a.scroll.Content.(*fyne.Container)
	a.content = container.New(&fitted{a}, a.scroll)
	return a
}

// show shows the open question for what is on view.
func (a *answer) show(now shown) {
	open := now.read()
	none := open.Asks == ""
	if none {
		a.asks.said = look.Say("What would the room like to know?")
		a.prompt.SetText(now.prompt())
	} else {
		a.asks.said = open.Asks
		a.says.said = open.Says
		a.source.SetText(open.Source)
		a.showRelated(related(content.Questions(now.voice.Language()), now.open))
	}
	a.here.show(open)
	a.deference.SetText(now.deference())
	look.Show(a.prompt, none)
	look.Show(a.says.box, !none)
	look.Show(a.source, !none)
	look.Show(a.onward, !none)
	look.Show(a.deference, a.deference.Text() != "")
	look.Rearrange(a.content)
}

// step sets question, answer and the sentence of the batch in one of their sizes.
func (a *answer) step(at int) {
	for _, text := range []*stepped{a.asks, a.says, a.here.says} {
		text.step(at)
	}
}

func (a *answer) showRelated(list []content.Question) {
	for i, one := range a.related {
		look.Show(one.box, i < len(list))
		if i < len(list) {
			one.id = list[i].ID
			one.text.SetText(list[i].Asks)
		}
	}
}

// relatedLine opens a related question.
type relatedLine struct {
	*line
	id string
}

func newRelatedLine(open func(id string)) *relatedLine {
	r := &relatedLine{}
	r.line = newLine(func() { open(r.id) })
	return r
}
