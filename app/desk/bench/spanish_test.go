package bench

import (
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/content/words"
)

// The main way through the area, in Spanish: type pounds, try on a copy, return.
func TestTypeTryAndReturnInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in, a := r.bench.inputs, r.bench.answers
	equal(t, "place", in.place.Text, "Tanda 1 de 4")
	r.typeInto(in.prepared.Field, "6 1/2 libras")
	equal(t, "loads while typing", a.loads.Figure().Text, "7 cargas")
	r.press(fyne.KeyReturn)
	equal(t, "prepared in the class", r.first().Prepared.String(), "6.5 lb")
	r.tap(t, "Probar en una copia")
	before := r.session.Class()
	r.typeInto(in.prepared.Field, "2")
	differs := map[string]string{}
	for _, d := range a.beside.shown {
		differs[d.Label] = d.Plan + " → " + d.Trial
	}
	equal(t, "loads beside the plan", differs["Cargas"], "7 cargas → 2 cargas")
	r.press(fyne.KeyReturn)
	r.tap(t, "Volver al plan")
	equal(t, "field of the plan", in.prepared.Text(), "6.5 lb")
	if !reflect.DeepEqual(r.session.Class(), before) {
		t.Error("the trial touched the class")
	}
}

// An amount that stands in a field in Spanish is read back as it was, and what
// cannot be used is answered in Spanish.
func TestAmountsInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	equal(t, "altitude", in.altitude.Text(), "640 pies")
	equal(t, "freezer", in.freezer.Text(), "14 pies³")
	before := r.session.Class()
	for _, f := range append(in.ofBatch(), in.ofClass()...) {
		text := f.Text()
		r.typeInto(f, "")
		r.typeInto(f, text)
		r.press(fyne.KeyReturn)
		equal(t, "problem of "+f.Label(), f.Problem(), "")
	}
	if !reflect.DeepEqual(r.session.Class(), before) {
		t.Errorf("reading back changed the class: %+v", r.session.Class().Place)
	}
	in.altitude.Slide().Step(true)
	in.altitude.Done()
	equal(t, "altitude, a step up", in.altitude.Text(), "700 pies")
	r.typeInto(in.prepared.Field, "muchas")
	r.press(fyne.KeyReturn)
	if says := in.prepared.Problem(); !strings.Contains(says, "escribió “muchas”") && !strings.Contains(says, "Escribió “muchas”") {
		t.Errorf("“muchas” is answered with “%s”", says)
	}
}

// Choices are values, whatever they are called.
func TestChoicesInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	in.container.SetSelected("Frasco")
	in.size.SetSelected("Cuarto de galón")
	in.mouth.SetSelected("Angosta")
	in.kettle.SetSelected("Sin olla")
	pack := r.first().Pack
	equal(t, "pack", string(pack.Container)+" "+string(pack.Size)+" "+string(pack.Mouth), "jar quart narrow")
	equal(t, "kettle", r.first().Kettle, "")
	s, _ := r.bench.now()
	equal(t, "the drawing says", s.packState().Amount, "frasco 1 qt, angosto")
	if s.packState().Headspace == look.Say("no headspace") {
		t.Error("a jar is drawn without headspace")
	}
	in.tray.SetChecked(true)
	s, _ = r.bench.now()
	equal(t, "the drawing says", s.packState().Headspace, look.Say("no headspace"))
}

// TestSpanishStands asks that no text stands out of its place, in a trial too.
func TestSpanishStands(t *testing.T) {
	speak(t, words.Spanish)
	for _, size := range []fyne.Size{{Width: areaWide, Height: areaHigh}, {Width: 1181, Height: 700}, {Width: 700, Height: 500}} {
		r := open(t, look.Light, demo(t), size.Width, size.Height)
		for i := range r.session.Class().Batches {
			r.session.Select(i)
			looktest.Settle(r.window, size.Width, size.Height)
			textfits.Check(t, r.window)
		}
		r.bench.Try()
		r.typeInto(r.bench.inputs.prepared.Field, "9 lb")
		r.press(fyne.KeyReturn)
		looktest.Settle(r.window, size.Width, size.Height)
		textfits.Check(t, r.window)
	}
}
