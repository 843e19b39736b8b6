package questions

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// A question that is asked in Spanish is answered in Spanish, with the numbers
// of the batch and with its source.
func TestAskInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := openDemo(t)
	has(t, "the area", r.shows(), "¿Qué quiere saber el salón?", "cuánto hielo", "Para “Beans at every station”")
	r.ask("cuanto hielo") // without the accent
	r.press(fyne.KeyReturn)
	asks, answer, here := r.area.Answer()
	if !strings.HasPrefix(asks, "¿") || !strings.Contains(answer, "1 lb por lb de verduras") {
		t.Errorf("asked “%s”, answered “%s”", asks, answer)
	}
	has(t, "the sentence of the batch", here, "3 lb")
	answers, _ := r.area.Sources()
	has(t, "the source", answers, "Fuente: ")
	has(t, "the area", r.shows(), "Preguntas relacionadas")
	must(t, r.session.StartTrial(""))
	has(t, "the area in a trial", r.shows(), "Para “Beans at every station” en el ensayo “Ensayo 1”")
	r.ask("zzzzq")
	has(t, "the area with nothing found", r.shows(), "Nada encontrado para “zzzzq”")
	lacks(t, "the area", r.shows(), "Nothing", "Source", "Related", "Or ask")
}

// What changes while the area is hidden is shown when it is shown again.
func TestHiddenAreaWaits(t *testing.T) {
	r := openDemo(t)
	r.area.Open("ice-how-much")
	change := func(pounds float64) {
		r.change(t, func(c *class.Class) { c.Batches[0].Prepared = measure.New(pounds, measure.Pound) })
	}
	before := r.shows()
	r.area.Content.Hide()
	change(5)
	change(6)
	r.session.Select(2)
	r.session.Select(0)
	r.area.Content.Show()
	equal(t, "what is said before it is shown again", r.shows(), before)
	r.area.Shown()
	has(t, "the area", r.shows(), r.here())
	has(t, "the sentence of the batch", r.here(), "6 lb")
	again := open(t, look.Light, r.session.Class(), areaWide, areaHigh)
	again.area.Focus(again.window.Canvas())
	again.area.Open("ice-how-much")
	equal(t, "what is shown again", r.shows(), again.shows())
}
