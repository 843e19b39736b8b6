package projector

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	spoken "example.org/kettleside/content/words" // the package has words of its own
)

// openSpanish is open with everything said in Spanish.
func openSpanish(t testing.TB, c class.Class, wide, high float32) *room {
	t.Helper()
	voice := spoken.In(spoken.Spanish)
	look.Speak(voice)
	t.Cleanup(func() { look.Speak(nil) })
	r := open(t, look.Light, c, wide, high)
	r.session.Speak(voice)
	return r
}

func TestMarkupInSpanish(t *testing.T) {
	r := openSpanish(t, demo(t), 1024, 768)
	looktest.Markup(t, r.window, "treatment-es.xml")
	r.try(t)
	r.turnTo(t, "Ensayo")
	looktest.Markup(t, r.window, "trial-es.xml")
}

func TestStandsInSpanish(t *testing.T) {
	for i, size := range sizes[:3] {
		for j, c := range []class.Class{demo(t), odd(t)} {
			c.Units = []measure.System{measure.US, measure.Metric}[(i+j)%2]
			r := openSpanish(t, c, size.Width, size.Height)
			name := fmt.Sprintf("projector-es-%.0f-%s", size.Width, []string{"demo", "odd"}[j])
			for b := range c.Batches {
				r.session.Select(b)
				r.standsOnEachPage(t, fmt.Sprintf("%s-%d", name, b))
			}
			r.session.Select(0)
			must(t, r.session.StartTrial(long))
			must(t, r.session.ChangeView("try", func(c *class.Class) {
				c.Batches[0], c.Batches[2] = c.Batches[2], c.Batches[0]
				c.Batches[0].Kettle, c.Batches[0].Prepared = "Big kettle", measure.New(4, measure.Pound)
			}))
			r.standsOnEachPage(t, name+"-trial")
		}
	}
}

func TestStandsForEveryTreatmentInSpanish(t *testing.T) {
	r := openSpanish(t, demo(t), 800, 600)
	for i, treatment := range r.session.Table().Treatments {
		must(t, r.session.Change("treatment", func(c *class.Class) {
			c.Batches[0].Treatment = treatment.ID
			c.Units = []measure.System{measure.US, measure.Metric}[i%2]
		}))
		r.eachPage(func(page string) { r.stands(t, treatment.ID+" "+page) })
	}
}

func TestLargePrintStandsInSpanish(t *testing.T) {
	r := openSpanish(t, demo(t), 800, 600)
	fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
	r.view.Content.Refresh()
	looktest.Settle(r.window, 800, 600)
	r.eachPage(func(page string) { r.stands(t, "large print "+page) })
}

// Each page and what it does is as in English.
func TestPagesInSpanish(t *testing.T) {
	c := demo(t)
	gone := c.Batches[0]
	gone.Treatment = "gone"
	c.Batches = append(c.Batches, gone)
	r := openSpanish(t, c, 1024, 768)
	for i, want := range map[int]string{
		0: "Tratamiento, Olla, Curva, Baño de hielo, Paquete y congelador",
		3: "Tratamiento, Paquete y congelador",
		4: "Sin tanda",
	} {
		r.session.Select(i)
		equal(t, "pages", strings.Join(r.view.Pages(), ", "), want)
	}
	r.session.Select(0)
	r.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
	equal(t, "page", r.view.Page(), "Olla")
	r.says(t, "Olla · 2 de 5", "3 lb en", "En la olla", "caben 1 gal", "para cada una de 4 estaciones")
	r.try(t)
	equal(t, "page of the trial", r.view.Page(), "Olla")
	r.says(t, "Ensayo: Two pounds at a time in the big kettle — nada de aquí cambia la clase", "4 lb en")
	r.turnTo(t, "Ensayo")
	r.says(t, "Lo que se cambió", "Plan Ensayo", "Station kettle Big kettle", "Lo que resulta", "≈ 2 min 5 s")
	r.session.ReturnToPlan()
	must(t, r.session.StartTrial("Otro"))
	r.turnTo(t, "Ensayo")
	r.says(t, "Nada difiere del plan.")
}

// The number of a figure stands large and its unit small, whatever the language
// says for the unit, and a lower bound behind it.
func TestFiguresAreCutInSpanish(t *testing.T) {
	look.Speak(spoken.In(spoken.Spanish))
	t.Cleanup(func() { look.Speak(nil) })
	for _, one := range []struct {
		figure      measure.Figure
		value, unit string
	}{
		{measure.Figure{Text: "1 ½ pulg", Unit: "in", Value: 1.5}, "1 ½", "pulg"},
		{measure.Figure{Text: "3 cargas", Unit: "loads", Value: 3}, "3", "cargas"},
		{measure.Figure{Text: "al menos 3–4 bolsas de una pinta", Unit: "pints", Value: 3}, "3–4", "bolsas de una pinta, al menos"},
		{measure.Figure{Text: "al menos 3–4 bolsas de una pinta", Unit: "pints", Value: 3, Basis: measure.Estimate}, "≈ 3–4", "bolsas de una pinta, al menos"},
		{measure.Figure{Text: "3 ¾ qt", Unit: "gal", Value: 0.9}, "3 ¾", "qt"},
		{measure.Figure{Text: "2 min 5 s", Unit: "s", Value: 125, Basis: measure.Estimate}, "≈ 2 min 5 s", ""},
		{measure.Figure{Text: "28–42 lb", Unit: "lb", Value: 28}, "28–42", "lb"},
		{measure.Figure{Words: "ninguno", Text: "ninguno", Unit: "in"}, "ninguno", ""},
	} {
		if value, unit := numberOf(one.figure); value != one.value || unit != one.unit {
			t.Errorf("%q is cut into %q and %q, want %q and %q", one.figure.Text, value, unit, one.value, one.unit)
		}
	}
	equal(t, "a lower bound in the table of a trial", signedIn(class.BatchWorked{}, "x", "al menos 3"), "al menos 3")
}

// Every estimate says that it is one, in Spanish too.
func TestEstimatesSaySoInSpanish(t *testing.T) {
	r := openSpanish(t, demo(t), 1024, 768)
	r.says(t, "Fuente: ")
	for _, page := range []string{"Olla", "Curva"} {
		r.turnTo(t, page)
		r.says(t, "estimación")
	}
	r.turnTo(t, "Baño de hielo")
	r.says(t, "Hielo, según la regla", "estimación ≈")
}
