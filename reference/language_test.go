package reference

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/content/words"
)

func inSpanish() *Table { return Shipped().In(words.In(words.Spanish)) }

func TestEnglishIsTheTableItself(t *testing.T) {
	table := Shipped()
	for name, v := range map[string]*words.Voice{"nil": nil, "zero": {}, "English": words.In(words.English)} {
		if table.In(v) != table || inSpanish().In(v) != table {
			t.Errorf("the %s voice gets another table", name)
		}
	}
}

func TestSpanishSaysEveryText(t *testing.T) {
	v := words.In(words.Spanish)
	Shipped().In(v)
	if left := v.Untranslated(); len(left) > 0 {
		t.Errorf("untranslated: %q", left)
	}
}

// same are the texts that are the same words in both languages.
var same = []string{"Chayote", "bushel", "2/3 lb", "3 lb"}

// Whatever row is looked at: its texts are other texts, and nothing else of it
// has changed.
func TestOnlyTextsChange(t *testing.T) {
	english, spanish := Shipped(), inSpanish()
	said := map[string]bool{
		"Crop.Name": true, "Crop.Note": true, "Prep.Prepare": true, "Prep.Select": true, "Prep.Soak": true,
		"Treatment.Cut": true, "Treatment.Grade": true, "Treatment.Size": true, "Treatment.Words": true,
		"Treatment.ChillWords": true, "Treatment.BlanchWater": true, "Treatment.Note": true,
		"Published.Words": true, "Published.Note": true, "Yield.MarketUnit": true, "Yield.Note": true,
		"Rule.Says": true, "Rule.Note": true, "Composition.Note": true, "Piece.Note": true,
		"Enzyme.Name": true, "Enzyme.MeasuredOn": true, "Enzyme.Limits": true, "EnzymePart.Ours": true,
		"Container.Name": true, "Container.Note": true,
	}
	other := map[string]bool{"Crop.AlsoCalled": true} // tested by itself
	lists := []string{"Crops", "Treatments", "Yields", "Headspaces", "Rules", "Sources", "Compositions", "Pieces", "Kinetics", "Containers"}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(lists).Draw(t, "list")
		e, s := reflect.ValueOf(*english).FieldByName(name), reflect.ValueOf(*spanish).FieldByName(name)
		if e.Len() != s.Len() {
			t.Fatalf("%d rows, want %d", s.Len(), e.Len())
		}
		i := rapid.IntRange(0, e.Len()-1).Draw(t, "row")
		var compare func(at string, e, s reflect.Value)
		compare = func(at string, e, s reflect.Value) {
			switch {
			case other[at]:
			case e.Kind() == reflect.Struct:
				for f := range e.NumField() {
					compare(e.Type().Name()+"."+e.Type().Field(f).Name, e.Field(f), s.Field(f))
				}
			case e.Kind() == reflect.Slice:
				if e.Len() != s.Len() {
					t.Fatalf("%s: %d, want %d", at, s.Len(), e.Len())
				}
				for k := range e.Len() {
					compare(at, e.Index(k), s.Index(k))
				}
			case said[at] && e.String() != "" && !slices.Contains(same, e.String()):
				if e.String() == s.String() || s.String() == "" {
					t.Errorf("%s of %s %d says %q still", at, name, i, s)
				}
			case !reflect.DeepEqual(e.Interface(), s.Interface()):
				t.Errorf("%s of %s %d is %v, was %v", at, name, i, s, e)
			}
		}
		compare(name, e.Index(i), s.Index(i))
	})
}

// The table that a copy is made from stays as it is.
func TestTheTableStaysEnglish(t *testing.T) {
	before := *Shipped()
	crop, piece := before.Crops[0], before.Kinetics[0].Parts[0].Ours
	prep, also := crop.Prep[0], slices.Clone(before.Treatments[3].Also)
	inSpanish()
	if now := Shipped(); !reflect.DeepEqual(now.Crops[0], crop) || now.Crops[0].Prep[0] != prep || now.Kinetics[0].Parts[0].Ours != piece || !reflect.DeepEqual(now.Treatments[3].Also, also) {
		t.Error("the English table has changed")
	}
}

func TestSpanishViewFinds(t *testing.T) {
	table := inSpanish()
	for _, c := range []struct{ text, want, not string }{
		{"ejotes", "snap-beans-cut-water", "lima-beans-small-water"},
		{"habichuelas", "snap-beans-cut-water", "lima-beans-small-water"},
		{"judias verdes", "snap-beans-french-water", "green-peas-shelled-water"},
		{"beans", "snap-beans-cut-water", "kale-leaves-water"},
		{"green beans", "snap-beans-cut-water", "kale-leaves-water"},
		{"brocoli", "broccoli-flowerets-water", "kale-leaves-water"},
		{"BRÓCOLI", "broccoli-stems-water", "kale-leaves-water"},
		{"broccoli", "broccoli-flowerets-steam", "kale-leaves-water"},
		{"brecol", "broccoli-flowerets-steam", "kale-leaves-water"},
		{"floretes", "broccoli-flowerets-water", "broccoli-stems-water"},
		{"chicharos", "green-peas-shelled-water", "field-peas-shelled-water"},
		{"arvejas", "green-peas-shelled-water", "field-peas-shelled-water"},
		{"calabacin", "zucchini-slices-water", "pumpkin-cubes-cook"},
		{"colinabo", "kohlrabi-whole-water", "turnips-cubes-water"},
		{"colinabo", "rutabagas-cubes-water", "turnips-cubes-water"},
		{"habas", "lima-beans-small-water", "snap-beans-cut-water"},
		{"elotes tamaño mediano", "corn-on-the-cob-medium-water", "corn-on-the-cob-large-water"},
		{"1 ½ pulg", "corn-on-the-cob-large-water", "celery-pieces-water"},
	} {
		t.Run(c.text, func(t *testing.T) {
			rows, err := table.Rows(View{Text: c.text})
			if err != nil {
				t.Fatal(err)
			}
			ids := table.IDs(rows)
			if !slices.Contains(ids, c.want) {
				t.Errorf("%s is not among %v", c.want, ids)
			}
			if slices.Contains(ids, c.not) {
				t.Errorf("%s is there", c.not)
			}
		})
	}
}

// What the project's notes on Spanish call traps.
func TestSpanishTraps(t *testing.T) {
	table := inSpanish()
	names := map[string]Crop{}
	for _, c := range table.Crops {
		names[c.ID] = c
	}
	for id, want := range map[string]string{
		"kohlrabi": "Colirrábano (kohlrabi)", "collards": "Berza (collard greens)", "kale": "Col rizada (kale)", "pumpkin": "Calabaza (pumpkin)",
		"parsnips": "Chirivías (parsnips)", "chard": "Acelgas", "lima-beans": "Frijoles lima", "green-tomatoes": "Tomates verdes (sin madurar)",
		"field-peas": "Frijoles carita (ojo negro)", "mustard-greens": "Hojas de mostaza", "snap-beans": "Ejotes (habichuelas tiernas)",
	} {
		if names[id].Name != want {
			t.Errorf("%s is called %q, want %q", id, names[id].Name, want)
		}
	}
	for _, c := range table.Crops {
		name := strings.ToLower(c.Name)
		if strings.Contains(name, "colinabo") || c.ID != "chard" && strings.Contains(name, "acelga") || strings.HasPrefix(name, "habas") {
			t.Errorf("%s is called %q", c.ID, c.Name)
		}
		english, _ := Shipped().Crop(c.ID)
		for _, other := range c.AlsoCalled {
			if other == english.Name {
				continue
			}
			if strings.EqualFold(other, "habas") || c.ID != "chard" && strings.Contains(other, "acelga") || strings.ContainsAny(other, "()") {
				t.Errorf("%s is also called %q", c.ID, other)
			}
		}
	}
	v := words.In(words.Spanish)
	for _, x := range table.Treatments {
		for _, text := range []string{x.Cut, x.Size, x.Words, x.ChillWords, x.BlanchWater, x.Note, v.Say(x.ClockStart.Says())} {
			for _, trap := range []string{"blanque", "espacio de cabeza", "remover", "remueva", " cuartos o", "lanza"} {
				if strings.Contains(strings.ToLower(text), trap) {
					t.Errorf("%s: %q says %q", x.ID, text, trap)
				}
			}
		}
	}
}

// Every regional name belongs to a crop of the table, stands there once and
// says where it is used and what that rests on.
func TestRegionalNames(t *testing.T) {
	f := &faults{}
	rows := readSheet(shippedFiles(), "names_es.csv", nameColumns, f).rows
	seen := map[string]bool{}
	for _, r := range rows {
		crop, name := r.raw("crop"), r.needed("name")
		if _, ok := Shipped().Crop(crop); !ok {
			t.Errorf("no crop %q", crop)
		}
		if once(r, "name", crop+" "+strings.ToLower(name), seen) {
			seen[crop+" "+strings.ToLower(name)] = true
		}
		basis := r.needed("basis")
		if r.needed("where"); strings.Contains(basis, "read") != (r.raw("source") != "") {
			t.Errorf("%s: basis %q beside source %q", name, basis, r.raw("source"))
		}
	}
	if err := f.err(); err != nil {
		t.Error(err)
	}
	for _, c := range inSpanish().Crops {
		english, _ := Shipped().Crop(c.ID)
		if !slices.Contains(c.AlsoCalled, english.Name) {
			t.Errorf("%s is not found by its English name", c.ID)
		}
		for i, name := range c.AlsoCalled {
			if slices.ContainsFunc(c.AlsoCalled[:i], func(n string) bool { return strings.EqualFold(n, name) }) {
				t.Errorf("%s is called %q twice", c.ID, name)
			}
		}
	}
}

// What an educator typed stays as typed and is not taken for a text that lacks
// a translation, and the value as shipped stands beside it.
func TestEditsStayAsTyped(t *testing.T) {
	edits := []Edit{
		edit("broccoli-flowerets-water", FieldNote, "Remember the boss's pot."),
		edit("broccoli-flowerets-water", FieldMinutes, "4"),
		edit("sweet-potatoes-whole-cook", FieldWords, "Cook until almost tender in the big pot."),
		edit("sweet-potatoes-whole-cook", FieldChillWords, "Let them cool."),
		edit("chard-leaves-water", FieldBlanchWater, "a pinch of salt"),
	}
	english, err := Shipped().With(edits)
	if err != nil {
		t.Fatal(err)
	}
	v := words.In(words.Spanish)
	spanish := english.In(v)
	if left := v.Untranslated(); len(left) > 0 {
		t.Errorf("untranslated: %q", left)
	}
	for _, e := range edits {
		x, _ := spanish.Treatment(e.Treatment)
		if FieldText(x, e.Field) != e.New || x.Changed[e.Field] != e {
			t.Errorf("%s of %s is %q, want %q", e.Field, e.Treatment, FieldText(x, e.Field), e.New)
		}
	}
	x, _ := spanish.Treatment("sweet-potatoes-whole-cook")
	if p := x.Also[0]; !strings.HasPrefix(p.Words, "Cueza") || p.Note != v.Say("the value as shipped") {
		t.Errorf("as shipped: %q, %q", p.Words, p.Note)
	}
	if s, ok := spanish.Source(EnteredHereSource); !ok || s.Title != v.Say(enteredHere.Title) || s.Title == enteredHere.Title {
		t.Errorf("an entered value is credited to %q", s.Title)
	}
}

// Edits are made on the table itself, also by way of a copy.
func TestEditsOfACopy(t *testing.T) {
	spanish := inSpanish()
	e := spanish.NewEdit("sweet-potatoes-whole-cook", FieldWords, "Cueza en la olla grande.", "prueba", "Ana", noon)
	if shipped, _ := Shipped().Treatment(e.Treatment); e.Old != shipped.Words {
		t.Errorf("the shipped words are %q", e.Old)
	}
	got, err := spanish.With([]Edit{e})
	if err != nil {
		t.Fatal(err)
	}
	want, err := Shipped().With([]Edit{e})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got.In(nil), want) {
		t.Error("the edited copy is made from another table")
	}
	if !reflect.DeepEqual(got.Treatments, want.In(spanish.voice).Treatments) || got.Crops[0].Name != spanish.Crops[0].Name {
		t.Error("the edited copy is not in Spanish")
	}

	x, _ := spanish.Treatment(e.Treatment)
	unchanged := spanish.NewEdit(x.ID, FieldWords, x.Words, "prueba", "Ana", noon)
	var refused *EditError
	if _, err := spanish.With([]Edit{unchanged}); !errors.As(err, &refused) {
		t.Errorf("the shipped words in Spanish count as a change: %v", err)
	}
	spanish.NewEdit("snap-beans-cut-water", FieldMinutes, "4", "prueba", "Ana", noon)
	if left := spanish.voice.Untranslated(); len(left) > 0 {
		t.Errorf("untranslated: %q", left)
	}
}

// A sheet is read back by the program: it is the same from any copy.
func TestSheetOfACopy(t *testing.T) {
	var english, spanish strings.Builder
	if err := errors.Join(Shipped().WriteCSV(&english), inSpanish().WriteCSV(&spanish)); err != nil {
		t.Fatal(err)
	}
	if english.String() != spanish.String() {
		t.Error("the sheets differ")
	}
}

func TestViewsInSpanish(t *testing.T) {
	table := inSpanish()
	rows, err := table.Rows(View{Group: "greens", Sort: []SortBy{{Column: ByCrop}}})
	if err != nil || len(rows) == 0 {
		t.Fatal(rows, err)
	}
	if first := table.cropOf(&table.Treatments[rows[0]]); first.ID != "chard" {
		t.Errorf("%s stands before acelgas", first.Name)
	}
	counts, err := table.CountBy(rows, ByGroup, ByStanding)
	if err != nil || counts[0].Values[0] != "verduras de hoja" || counts[0].Values[1] == string(Read) {
		t.Errorf("%v, %v", counts, err)
	}
}

func BenchmarkIn(b *testing.B) {
	v := words.In(words.Spanish)
	table := Shipped().In(v).In(nil) // what is read once is read
	b.ReportAllocs()
	for b.Loop() {
		table.In(v)
	}
}

// What is wrong with an edit is said in the language of the reader, whatever
// table it was laid over.
func TestRefusedEditsInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	for _, c := range []struct {
		id, field, typed string
		want             []string
	}{
		{"asparagus-small-water", FieldMinutes, "1", []string{"Espárragos (tamaño pequeño, tallos enteros): escribió \"1\"", "nunca se acortan"}},
		{"snap-beans-cut-water", FieldMinutes, "", []string{"Ejotes (habichuelas tiernas) (piezas enteras", "no se escribió nada; se permite: minutos"}},
		{"beets-small-cook", FieldMinutes, "3", []string{"no tiene minutos; cambie sus palabras (\"Cueza hasta que estén tiernas"}},
		{"tomatoes-juice-cook", FieldHeadspace, "1", []string{"boca del envase (tabla para jugos)"}},
		{"broccoli-flowerets-water", FieldHeadspace, "1", []string{"un empaque de tipo “suelto” no necesita espacio libre"}},
		{"beets-small-cook", FieldWords, "Cueza media hora.", []string{"escribió \"media hora\"", "las palabras originales"}},
	} {
		t.Run(c.id+" "+c.field, func(t *testing.T) {
			spanish := inSpanish()
			_, err := spanish.With([]Edit{spanish.NewEdit(c.id, c.field, c.typed, "prueba", "Ana", noon)})
			var refused *EditError
			if !errors.As(err, &refused) {
				t.Fatal("not refused")
			}
			says := v.Error(refused)
			for _, want := range c.want {
				if !strings.Contains(says, want) {
					t.Errorf("says %q, want %q in it", says, want)
				}
			}
		})
	}
	if left := v.Untranslated(); len(left) > 0 {
		t.Errorf("untranslated: %q", left)
	}
}

// The sources of shorter minutes are named in the language of the table.
func TestShorterThanShippedInSpanish(t *testing.T) {
	english, err := Shipped().With([]Edit{edit("carrots-sliced-water", FieldMinutes, "2")})
	if err != nil {
		t.Fatal(err)
	}
	was, _ := english.Treatment("carrots-sliced-water")
	x, _ := english.In(words.In(words.Spanish)).Treatment("carrots-sliced-water")
	if len(x.ShorterThanShipped) != len(was.ShorterThanShipped) || len(was.ShorterThanShipped) == 0 {
		t.Fatalf("named are %q, in English %q", x.ShorterThanShipped, was.ShorterThanShipped)
	}
	for i, name := range was.ShorterThanShipped {
		source, remembered := strings.CutSuffix(name, ", from memory")
		if want := source + ", de memoria"; remembered && x.ShorterThanShipped[i] != want || !remembered && x.ShorterThanShipped[i] != name {
			t.Errorf("%q is said as %q", name, x.ShorterThanShipped[i])
		}
	}
}
