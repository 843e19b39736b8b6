package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// cropsShown are those of the rows on view, by id.
func (r *room) cropsShown() (ids []string) {
	for _, row := range r.crops.grid.rows {
		ids = append(ids, r.session.Table().Treatments[row].Crop)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// A crop is found by its Spanish name, with or without accents, by what else it
// is called, and by its English name too.
func TestSearchInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, areaWide, areaHigh)
	for typed, crop := range map[string]string{"ejotes": "snap-beans", "brocoli": "broccoli", "BRÓCOLI": "broccoli", "broccoli": "broccoli"} {
		r.crops.search.SetText(typed)
		if got := r.cropsShown(); !slices.Contains(got, crop) || len(got) > 3 {
			t.Errorf("%q finds %q", typed, got)
		}
	}
	r.crops.search.SetText("ejotes")
	if !strings.Contains(r.crops.count.Text(), " de 140") {
		t.Errorf("the count says %q", r.crops.count.Text())
	}
}

// The choices of a filter are said in Spanish and filter by what they stand for.
func TestFiltersInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, areaWide, areaHigh)
	for _, one := range []struct {
		choice string
		among  func(reference.Treatment) bool
	}{
		{"de memoria", func(x reference.Treatment) bool { return x.Standing == reference.FromMemory }},
		{"Escaldado al vapor", func(x reference.Treatment) bool { return x.Method == reference.SteamBlanch }},
		{"familia de la col", func(x reference.Treatment) bool {
			crop, _ := r.session.Table().Crop(x.Crop)
			return crop.Group == "cabbage family"
		}},
	} {
		want := 0
		for _, x := range r.session.Table().Treatments {
			if one.among(x) {
				want++
			}
		}
		r.crops.ShowAll()
		for _, s := range []interface{ SetSelected(string) }{r.crops.group, r.crops.method, r.crops.standing} {
			s.SetSelected(one.choice) // the others do not have it
		}
		if got := len(r.shown()); got != want || want == 0 {
			t.Errorf("%q shows %d rows, want %d", one.choice, got, want)
		}
	}
}

// Minutes are changed in their cell: what would shorten a published time is
// refused in Spanish, and what is used is undone and done again.
func TestChangeMinutesInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, areaWide, areaHigh)
	f := r.crops.cell
	cell := func() *cell { return r.cellOf(r.crops.grid.at(), r.column("minutes")) }
	r.goTo(beans, "minutes")
	if text := r.crops.foot.first; !strings.Contains(text, "el tiempo empieza cuando el agua vuelva a hervir") || !strings.Contains(text, "F2") {
		t.Errorf("under the table stands %q", text)
	}
	r.press(fyne.KeyF2)
	equal(t, "shipped value", f.shipped.Text(), "Original: 3 min")
	r.write("2")
	r.press(fyne.KeyReturn)
	if !strings.Contains(f.problem.Text(), "los tiempos publicados nunca se acortan") {
		t.Errorf("2 min are answered with %q", f.problem.Text())
	}
	r.write("4")
	r.crops.grid.chooseRow(0)
	if !strings.HasPrefix(f.problem.Text(), "Este cambio todavía no está hecho") {
		t.Errorf("another row is answered with %q", f.problem.Text())
	}
	r.press(fyne.KeyReturn)
	r.write("nuestro boletín")
	r.press(fyne.KeyReturn)
	equal(t, "cell", cell().first, "4 min")
	equal(t, "beside it", cell().second, "original: 3 min")
	says := r.recordSays()
	for _, text := range []string{"Minutos: 4 min en vez de 3 min, el original.", "nuestro boletín", "Otro valor"} {
		if !strings.Contains(says, text) {
			t.Errorf("the record does not say %q: %s", text, says)
		}
	}
	if err := r.session.Undo(); err != nil {
		t.Fatal(err)
	}
	equal(t, "cell after undo", cell().first, "3 min")
	if err := r.session.Redo(); err != nil {
		t.Fatal(err)
	}
	equal(t, "cell after redo", cell().first, "4 min")
}

// Words are changed from what they are in Spanish; what was shipped is said in
// Spanish where it stands beside the change, and typed again it is no change.
func TestChangeWordsInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, areaWide, areaHigh)
	const pumpkin = "pumpkin-mashed-cook"
	x, _ := r.session.Table().Treatment(pumpkin)
	shipped := x.Words
	if english, _ := reference.Shipped().Treatment(pumpkin); english.Words == shipped {
		t.Fatal("the words are not Spanish")
	}
	r.crops.choose(pumpkin)
	r.edit(reference.FieldWords, shipped, "nuestro boletín", "A. Guía")
	if !strings.Contains(r.crops.form.problem.Text(), "es el valor original") {
		t.Errorf("the shipped words are answered with %q", r.crops.form.problem.Text())
	}
	r.crops.GiveUp()
	r.edit(reference.FieldWords, "Cueza en olla de presión.", "nuestro boletín", "A. Guía")
	equal(t, "told", r.crops.record.told.Text(), "Cambiado aquí: Palabras.")
	x, _ = r.session.Table().Treatment(pumpkin)
	equal(t, "words", x.Words, "Cueza en olla de presión.")
	if says := r.recordSays(); !strings.Contains(says, "en vez de “"+shipped+"”") {
		t.Errorf("the record does not say “%s”: %s", shipped, says)
	}
	r.goTo(pumpkin, "minutes")
	r.press(fyne.KeyF2)
	equal(t, "form", r.crops.cell.shipped.Text(), "Ahora: “Cueza en olla de presión.”\nOriginal: “"+shipped+"”")
}

// Every record, column and form is said in Spanish to the last word.
func TestAllIsSaidInSpanish(t *testing.T) {
	speak(t, words.Spanish)
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.chooseColumns(everyColumn())
	for _, x := range r.session.Table().Treatments {
		r.crops.choose(x.ID)
		for _, col := range columns {
			col.text(r.session.Table(), x)
		}
		r.crops.openForm()
		for at := range r.crops.form.fields {
			r.crops.form.field.SetSelectedIndex(at)
		}
		r.crops.GiveUp()
	}
	for _, text := range look.Voice().Untranslated() {
		if text == "min" { // the same in Spanish
			continue
		}
		t.Errorf("not said in Spanish: %q", text)
	}
	names := map[string]bool{}
	for _, name := range fieldNames {
		names[look.Say(name)] = true
	}
	equal(t, "names of fields", len(names), len(reference.EditFields))
}
