package projector

import (
	"fmt"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// treatment says what is done to the vegetable, and for how long.
type treatment struct {
	base
	food, cut       *words
	minutes         *figure
	clock, chill    *figure
	what            *row // minutes, clock and chill
	ends, before    *words
	line            *drawing.ClockStart
	time            *picture
	caution, source *words
	mark            *sign
}

func newTreatment(s *stage) *treatment {
	t := &treatment{
		base: base{called: look.Say("Treatment")},
		food: s.say("", asTitle), cut: s.say("", asCut),
		minutes: s.figure(240), clock: s.figure(76), chill: s.figure(76),
		ends: s.say("", asBody), before: s.say("", asBody),
		line:    drawing.NewClockStart(),
		caution: s.say("", asBody), source: s.say("", asSmall),
	}
	t.minutes.sentence = s.say("", manner{64, 46, 4, look.Ink, bold})
	t.time = s.picture(t.line)
	t.mark = newSign(look.IconCaution(), t.caution)
	t.what = newRow(40, []float32{1, 1}, t.minutes, newColumn(16, t.clock, t.chill))
	t.page = newColumn(16,
		newColumn(0, t.food, t.cut),
		t.what,
		newColumn(6, t.ends, t.before),
		t.time,
		newColumn(12, &rule{line: look.Hairline()}, t.mark, t.source),
	).growing(t.time, t.what)
	return t
}

func (t *treatment) applies(now shown) bool { return now.known() }

func (t *treatment) show(now shown) {
	b := now.batch
	t.food.set(now.food())
	t.cut.set(now.cut())
	t.minutes.set(renamed(b.Minutes, look.Sentence(look.Say(session.MethodName(b.Treatment.Method)))), now.edited(reference.FieldMinutes, reference.FieldWords))
	t.minutes.also.set(published(b))
	t.clock.set(renamed(b.Clock, clockLabel(b.Treatment)), false)
	t.chill.set(renamed(b.Chill, chillLabel(b.Chill)), now.edited(reference.FieldChillFactor, reference.FieldChillWords))
	t.ends.set(now.ends())
	t.before.set(now.beforehand())
	t.time.show(b.Minutes.Value > 0)
	t.weigh(b.Minutes.InWords())
	t.line.Set(now.clock())
	t.caution.set(now.caution())
	t.source.set(now.source())
}

// weigh gives its size to what matters most: the start of the clock beside
// minutes, but the words where there are none.
func (t *treatment) weigh(words bool) {
	t.what.shares = []float32{1, 1.1}
	t.clock.sentence.manner, t.chill.sentence.manner = manner{50, 34, 2, look.Ink, bold}, asSentence
	if words {
		t.what.shares = []float32{1.6, 1}
		aside := manner{36, 28, 3, look.Ink, bold}
		t.clock.sentence.manner, t.chill.sentence.manner = aside, aside
	}
}

// published says the minutes of the page they come from, where those here are
// others.
func published(b class.BatchWorked) string {
	if b.Published.Text == b.Minutes.Text {
		return ""
	}
	return fmt.Sprintf("%s: %s", b.Published.Label, b.Published.Text)
}

func clockLabel(t reference.Treatment) string {
	if t.ClockStart == reference.NoClock {
		return look.Say("The clock")
	}
	return look.Say("The clock starts")
}

func chillLabel(f measure.Figure) string {
	if f.InWords() {
		return look.Say("Then")
	}
	return f.Label
}

// sign is an icon in the margin of a text; without text it takes no room.
type sign struct {
	icon  fyne.CanvasObject
	words *words
	side  float32
	gap   float32
}

func newSign(icon fyne.Resource, w *words) *sign {
	return &sign{icon: look.Icon(icon, 1), words: w}
}

func (s *sign) fit(k, wide float32) float32 {
	s.side, s.gap = 34*k, 14*k
	high := s.words.fit(k, wide-s.side-s.gap)
	if high == 0 {
		return 0
	}
	return max(high, s.side)
}

func (s *sign) put(x, y, high float32) {
	look.Show(s.icon, s.words.high > 0)
	s.icon.Move(fyne.NewPos(x, y))
	s.icon.Resize(fyne.NewSquareSize(s.side))
	s.words.put(x+s.side+s.gap, y, high)
}

func (s *sign) objects() []fyne.CanvasObject { return append(s.words.objects(), s.icon) }
