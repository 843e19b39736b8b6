package planning

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// speak lets widgets speak a language for the length of a test.
func speak(t *testing.T, l words.Language) *words.Voice {
	t.Helper()
	voice := words.In(l)
	look.Speak(voice)
	t.Cleanup(func() { look.Speak(nil) })
	return voice
}

// spanish is the area with the demo class on it, all of it in Spanish.
func spanish(t *testing.T, width, height float32) (*Area, fyne.Window) {
	t.Helper()
	voice := speak(t, words.Spanish)
	a, w := demo(t, look.Light, width, height)
	a.session.Speak(voice)
	looktest.Settle(w, width, height)
	return a, w
}

// What the area says of itself stands in its place in both languages, in normal
// and in large type, in what a window of 1024 by 700 leaves for it. What the
// figures of the totals say belongs to the engine.
func TestEveryPageFitsInBothLanguages(t *testing.T) {
	for _, l := range words.Languages() {
		for scale, width := range map[float32]float32{1: 920, 1.5: 872} {
			t.Run(string(l)+measure.Plain(float64(scale)), func(t *testing.T) {
				voice := speak(t, l)
				a, w := demo(t, look.Light, 920, 600)
				fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, scale))
				a.session.Speak(voice)
				for _, id := range []string{"class", "place", "people", "kit", "batch"} {
					a.OpenPage(id)
					looktest.Settle(w, width, 600)
					if least := a.Content().MinSize(); least.Width > width || least.Height > 600 {
						t.Errorf("%s needs %v", id, least)
					}
					looktest.Picture(t, w, "planning-"+id+"-"+string(l)+measure.Plain(float64(scale)))
					a.totals.object().Hide()
					textfits.Check(t, w)
					a.totals.object().Show()
				}
			})
		}
	}
}

func TestOutlineAndKitAreLaidOutInSpanish(t *testing.T) {
	voice := speak(t, words.Spanish)
	looktest.App(t, look.Light)
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	s := session.New(reference.Shipped(), class.New(reference.Edition))
	s.Speak(voice)
	a := New(s, w)
	a.OpenPage("kit")
	w.SetContent(a.Content())
	looktest.Settle(w, 920, 600)
	looktest.ObjectMarkup(t, a.outline.object(), "outline-es.xml")
	looktest.ObjectMarkup(t, opened(a, 3).object(), "kit-es.xml")
}

// Amounts are shown with Spanish units and read with them, and the class holds
// what it held before.
func TestAmountsAreTypedInSpanish(t *testing.T) {
	a, _ := spanish(t, 920, 600)
	place := opened(a, 1).(*placePage)
	across := kitOf(a).kettles.fields[0][kettleAcross]
	prepared := batchOf(a).prepared
	for _, one := range []struct {
		page               int
		field              *look.Field
		typed, shows, held string
		of                 func(class.Class) string
	}{
		{1, place.altitude, "5,000 pies", "5000 pies", "5000 ft", func(c class.Class) string { return c.Place.Altitude.String() }},
		{1, place.altitude, "1 pie", "1 pie", "1 ft", func(c class.Class) string { return c.Place.Altitude.String() }},
		{1, place.freezer, "20 pies³", "20 pies³", "20 cu ft", func(c class.Class) string { return c.Place.Freezer.String() }},
		{3, across, "10 1/2 pulg", "10 1/2 pulg", "10 1/2 in", func(c class.Class) string { return c.Kit.Kettles[0].Across.String() }},
		{3, across, "9", "9 pulg", "9 in", func(c class.Class) string { return c.Kit.Kettles[0].Across.String() }},
		{4, prepared, "4 libras", "4 lb", "4 lb", func(c class.Class) string { return c.Batches[0].Prepared.String() }},
	} {
		opened(a, one.page)
		enter(one.field, one.typed)
		if got := one.of(a.session.Class()); got != one.held || one.field.Text() != one.shows || one.field.Problem() != "" {
			t.Errorf("%q: the class holds %q, the field shows %q with %q", one.typed, got, one.field.Text(), one.field.Problem())
		}
		one.field.Entry().FocusLost()
		if one.field.Dirty() {
			t.Errorf("%q: the field is not settled: %q", one.typed, one.field.Text())
		}
	}
}

func TestChoicesMeanTheSameInSpanish(t *testing.T) {
	a, _ := spanish(t, 920, 600)
	a.openBatch(0)
	p := batchOf(a)
	p.container.group.SetSelected("Frasco")
	p.size.group.SetSelected("Cuarto de galón")
	p.mouth.group.SetSelected("Angosta")
	test.Tap(p.tray)
	p.burner.list.SetSelected("Ninguna elegida")
	kitOf(a).kinds[1].list.SetSelected("gas")
	class := opened(a, 0).(*classPage)
	class.units.group.SetSelected("Kilogramos, litros, °C")
	c := a.session.Class()
	b := c.Batches[0]
	if b.Pack.Container != "jar" || b.Pack.Size != "quart" || b.Pack.Mouth != reference.NarrowMouth || !b.Pack.Tray || b.Burner != "" {
		t.Errorf("the batch is %+v", b)
	}
	if c.Kit.Burners[1].Heat.Kind != "gas" || c.Units != measure.Metric {
		t.Errorf("kind %q, units %q", c.Kit.Burners[1].Heat.Kind, c.Units)
	}
}

// What changed is kept under its text to be said, so that the Edit menu can say
// it in whatever language is spoken then.
func TestChangesAreNamedToBeSaid(t *testing.T) {
	a, _ := spanish(t, 920, 600)
	kit := kitOf(a)
	a.openBatch(0)
	for _, one := range []struct {
		do          func()
		key, spoken string
	}{
		{func() { enter(batchOf(a).name, "Otra") }, "Name of the batch", "Nombre de la tanda"},
		{func() { enter(batchOf(a).stations, "2") }, "Stations", "Estaciones"},
		{func() { enter(kit.kettles.fields[0][kettleCount], "2") }, "Kettle", "Olla"},
		{kit.addKettle, "Add a kettle", "Agregar una olla"},
		{kit.addBurner, "Add a burner", "Agregar una hornilla"},
		{opened(a, 2).(*peoplePage).addRole, "Add a task", "Agregar una tarea"},
	} {
		one.do()
		if change, _ := a.session.CanUndo(); change != one.key || look.Say(change) != one.spoken {
			t.Errorf("the change is kept as %q and said as %q, want %q and %q", change, look.Say(change), one.key, one.spoken)
		}
	}
	c := a.session.Class()
	if n := len(c.Kit.Kettles); c.Kit.Kettles[n-1].Name != "Olla 4" || c.People.Roles[len(c.People.Roles)-1].Name != "Ayudante" {
		t.Errorf("named %+v, %+v", c.Kit.Kettles, c.People.Roles)
	}
}

func TestTheOutlineCountsInSpanish(t *testing.T) {
	a, w := spanish(t, 920, 600)
	said := textfits.All(w.Content())
	for _, want := range []string{"12 personas, 4 estaciones", "6 ollas, 5 hornillas", "3 lb × 4 estaciones", "Agregar tanda"} {
		if !strings.Contains(said, want) {
			t.Errorf("the outline does not say %q: %s", want, said)
		}
	}
	a.session.Change("one", func(c *class.Class) {
		c.People.Headcount, c.Batches[0].Stations = 1, 1
		c.Kit.Kettles, c.Kit.Burners = c.Kit.Kettles[:1], nil
		c.Kit.Kettles[0].Count = 1
		for i := range c.Batches {
			c.Batches[i].Kettle, c.Batches[i].Burner = "", ""
		}
	})
	said = textfits.All(w.Content())
	for _, want := range []string{"1 persona, 1 estación", "1 olla, 0 hornillas", "3 lb × 1 estación"} {
		if !strings.Contains(said, want) {
			t.Errorf("the outline does not say %q: %s", want, said)
		}
	}
}

// Whatever the area itself says is translated.
func TestNothingOfTheAreaIsLeftInEnglish(t *testing.T) {
	voice := speak(t, words.Spanish)
	a, _ := demo(t, look.Light, 920, 600)
	a.session.Speak(voice)
	a.openBatch(0)
	a.session.Change("another", func(c *class.Class) { c.Batches[0].Treatment = "gone" })
	units := []string{"lb", "°F"} // which are the same
	for _, text := range voice.Untranslated() {
		if !slices.Contains(units, text) {
			t.Errorf("left in English: %q", text)
		}
	}
}

// Why an entry cannot be used is said in Spanish.
func TestRefusalsAreSaidInSpanish(t *testing.T) {
	a, _ := spanish(t, 920, 600)
	fields := burnerFields(a, 0)
	for _, one := range []struct {
		field       *look.Field
		typed, says string
	}{
		{fields[burnerRating], "12000", "12,000 necesita su unidad, por ejemplo 12,000 Btu/h; 12,000 W es más de lo que dan casi todas las hornillas"},
		{fields[burnerRating], "15", "escribió “15”, que es muy poco; se permite: 300 W a 15,000 W"},
		{fields[trialTook], "0:30", "escribió “0:30”, que es muy poco; se permite:"},
		{fields[burnerCount], "2.5", "no es un número entero"},
		{fields[burnerName], " ", "no se escribió nada; se permite: un nombre propio para cada hornilla"},
	} {
		enter(one.field, one.typed)
		if got := one.field.Problem(); !strings.Contains(got, look.Sentence(one.says)) && !strings.Contains(got, one.says) {
			t.Errorf("%q is answered with %q, want %q", one.typed, got, one.says)
		}
	}
}
