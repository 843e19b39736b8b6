package projector

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// figure is a result of the worked class as the last row reads it: a label, the
// number with its smaller unit, and its range below. Where there is no number
// its words stand instead. An estimate says that it is one.
type figure struct {
	label, basis, sentence, also *words
	number                       *number

	beside   bool    // what it rests on stands behind the label, not under it
	head     float32 // height of both
	body     float32 // height of number or sentence
	saidOver bool    // a heading over the figure says that it is an estimate
}

// figure makes an empty figure whose number is set in a size at scale 1.
func (s *stage) figure(size float32) *figure {
	return &figure{
		label: s.say("", asLabel), basis: s.say("", asBasis),
		number: s.number(size), sentence: s.say("", asSentence), also: s.say("", asRange),
	}
}

// underHeading leaves out the word that it is an estimate.
func (f *figure) underHeading() *figure {
	f.saidOver = true
	return f
}

// set shows a figure; one without a text is not there.
func (f *figure) set(m measure.Figure, edited bool) {
	f.label.set(m.Label)
	f.basis.set("")
	f.basis.text.SetInk(look.InkSoft)
	switch {
	case edited:
		f.basis.set(look.Say("edited"))
		f.basis.text.SetInk(look.Edited)
	case m.Basis == measure.Estimate && !f.saidOver:
		f.basis.set(look.Say("estimate"))
	}
	f.also.set("")
	if m.Basis == measure.Estimate { // a range; that of a rule is the same in other units, for those who do it
		f.also.set(m.Also)
	}
	value, unit := numberOf(m)
	f.sentence.set("")
	if m.InWords() || wordy(value) {
		f.sentence.set(look.Sentence(value))
		value, unit = "", ""
	}
	f.number.value.set(value)
	f.number.unit.set(unit)
}

func (f *figure) fit(k, wide float32) float32 {
	f.head = f.fitHead(k, wide)
	f.body = max(f.sentence.fit(k, wide), f.number.fit(k, wide))
	also := f.also.fit(k, wide)
	if f.body == 0 { // no figure, whatever its label
		return 0
	}
	if also > 0 {
		f.body += 4 * k
	}
	return f.head + f.body + also
}

// fitHead sets the label and what the figure rests on.
func (f *figure) fitHead(k, wide float32) float32 {
	label, basis := f.label.fit(k, wide), f.basis.fit(k, wide)
	f.beside = f.behind()+f.basis.length() <= wide
	if f.beside {
		return max(label, basis)
	}
	return label + basis
}

// behind is where the label is over.
func (f *figure) behind() float32 { return f.label.length() + f.label.pt()*0.4 }

func (f *figure) put(x, y, high float32) {
	if high == 0 {
		f.hide()
	}
	f.label.put(x, y, 0)
	if f.beside {
		f.basis.put(x+f.behind(), y+(f.label.high-f.basis.high)*(1-depth), 0)
	} else {
		f.basis.put(x, y+f.label.high, 0)
	}
	f.sentence.put(x, y+f.head, 0)
	f.number.put(x, y+f.head, 0)
	f.also.put(x, y+f.head+f.body, 0)
}

func (f *figure) hide() {
	for _, w := range []*words{f.label, f.basis, f.sentence, f.also, f.number.value, f.number.unit} {
		w.high = 0
	}
}

func (f *figure) objects() []fyne.CanvasObject {
	return objectsOf([]block{f.label, f.basis, f.sentence, f.number, f.also})
}
