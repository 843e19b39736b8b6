package class

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
	"pgregory.net/rapid"
)

// said is one thing that a class says, as it is the same in every language: its
// id, and everything that is no text.
type said struct {
	id, unit    string
	value, high float64
	basis       string
	texts       []string // the same fields in the same order
}

// everythingSaid lists all figures, findings and charts of a class.
func everythingSaid(w Worked) []said {
	var all []said
	figures := func(list []measure.Figure) {
		for _, f := range list {
			all = append(all, said{"figure " + f.ID, f.Unit, f.Value, f.High, string(f.Basis) + f.Source + f.Standing, []string{f.Text, f.Also, f.Working, f.Note, f.Label}})
		}
	}
	findings := func(list []measure.Finding) {
		for _, f := range list {
			all = append(all, said{id: "finding " + f.ID, basis: string(f.Severity) + f.Source, texts: []string{f.Says, f.Do}})
		}
	}
	charts := func(list ...measure.Chart) {
		for _, c := range list {
			one := said{id: "chart " + c.ID, unit: c.X.Unit + c.Y.Unit, texts: []string{c.Title, c.Note, c.X.Label, c.Y.Label}}
			for _, curve := range c.Curves {
				one.id += " " + curve.ID
				one.texts = append(one.texts, curve.Label, curve.Short)
			}
			for _, m := range c.Marks {
				one.id += " " + m.ID
				one.texts = append(one.texts, m.Label)
			}
			all = append(all, one)
		}
	}
	figures(w.Totals.Figures())
	for _, l := range w.Shopping {
		figures([]measure.Figure{l.Buy})
		all = append(all, said{id: "market unit", texts: []string{l.MarketUnit}})
	}
	findings(w.Findings)
	for _, b := range w.Batches {
		e := b.Estimates
		figures(b.Figures())
		figures(e.Figures())
		findings(b.Findings)
		charts(e.Kettle, e.Bath, e.Freezer)
		section := said{id: "section " + e.Through.ID, texts: []string{e.Through.Title, e.Through.Says, e.Through.Note, e.Frozen.Text}}
		for _, m := range e.Through.Moments {
			section.texts = append(section.texts, m.Label, m.Outside, m.Middle)
		}
		label := said{id: "label", basis: b.Label.Frozen + b.Label.BestFrom + b.Label.BestBy, texts: []string{b.Label.Amount, b.Label.Cook, b.Label.Best(w.Voice)}}
		all = append(all, section, label)
	}
	return all
}

// aNumber is a number as it is printed, with its fraction.
var aNumber = regexp.MustCompile(`\d[\d,.]*\d|\d|[½⅓⅔¼¾⅛⅜⅝⅞]`)

// numbers are the numbers of a text, sorted: another language may say them in
// another order.
func numbers(text string) []string {
	list := aNumber.FindAllString(text, -1)
	slices.Sort(list)
	return list
}

// sameInBoth compares a class in Spanish with the class in English, figure by
// figure and number by number.
func sameInBoth(t interface{ Errorf(string, ...any) }, english, spanish Worked) {
	en, es := everythingSaid(english), everythingSaid(spanish)
	if len(en) != len(es) {
		t.Errorf("%d things are said in English, %d in Spanish", len(en), len(es))
		return
	}
	for i := range en {
		a, b := en[i], es[i]
		if a.id != b.id || a.unit != b.unit || a.value != b.value || a.high != b.high || a.basis != b.basis {
			t.Errorf("English %+v\nSpanish %+v", a, b)
			continue
		}
		for k := range a.texts {
			if (a.texts[k] == "") != (b.texts[k] == "") || !slices.Equal(numbers(a.texts[k]), numbers(b.texts[k])) {
				t.Errorf("%s: %q\nin Spanish %q", a.id, a.texts[k], b.texts[k])
			}
		}
	}
}

// The demo class in Spanish says everything in Spanish, and the same numbers.
func TestDemoInSpanish(t *testing.T) {
	for _, units := range []measure.System{measure.US, measure.Metric} {
		c := demo(t)
		c.Units = units
		v := words.In(words.Spanish)
		english, spanish := Work(c, reference.Shipped()), WorkWith(With{Voice: v}, c, reference.Shipped())
		sameInBoth(t, english, spanish)
		if missing := v.Untranslated(); len(missing) > 0 {
			t.Errorf("%s: said in English: %q", units, missing)
		}
		text := spanish.Batches[0].Minutes.Working + spanish.Batches[0].Boils.Working
		if units == measure.US && (!strings.Contains(text, "pies") || strings.Contains(text, " ft")) {
			t.Errorf("heights are said as %q", text)
		}
	}
}

// Whatever a class is, both languages have the same figures with the same
// numbers and the same findings, and nothing stays English.
func TestAnyClassInBothLanguages(t *testing.T) {
	table, memory := reference.Shipped(), &estimate.Memory{}
	translated := table.In(words.In(words.Spanish))
	rapid.Check(t, func(t *rapid.T) {
		c := anyClass(t, table)
		v := words.In(words.Spanish)
		sameInBoth(t, WorkWith(With{Memory: memory}, c, table), WorkWith(With{Memory: memory, Voice: v}, c, translated))
		if missing := v.Untranslated(); len(missing) > 0 {
			t.Errorf("said in English: %q", missing)
		}
	})
}

// anyClass draws a class that may be typed in: each entry is there or is not.
func anyClass(t *rapid.T, table *reference.Table) Class {
	c := New(rapid.SampledFrom([]string{reference.Edition, "another edition"}).Draw(t, "edition"))
	c.Units = rapid.SampledFrom([]measure.System{measure.US, measure.Metric}).Draw(t, "units")
	c.Date = rapid.SampledFrom([]string{"", "2027-06-12"}).Draw(t, "date")
	c.Place.Altitude = maybe(t, "altitude", []float64{1, 640, 2000, 5200}, measure.Foot, measure.Metre)
	c.Place.Tap = maybe(t, "tap", []float64{34, 45}, measure.Fahrenheit, measure.Celsius)
	c.Place.Freezer = maybe(t, "freezer", []float64{0.6, 5, 20}, measure.CubicFoot, measure.CubicFoot)
	c.People.Headcount = rapid.IntRange(1, 30).Draw(t, "people")
	c.Kit.BathWater = maybe(t, "bath", []float64{1, 3}, measure.Gallon, measure.Litre)
	c.Kit.IceBag = maybe(t, "ice bag", []float64{5, 10}, measure.Pound, measure.Kilogram)
	c.Kit.Kettles[0].Holds = maybe(t, "kettle", []float64{1, 2, 6, 12}, measure.Gallon, measure.Cup)
	c.Kit.Kettles[0].Across = maybe(t, "basket", []float64{7, 12}, measure.Inch, measure.Centimetre)
	c.Kit.Burners[0].Count = rapid.IntRange(0, 2).Draw(t, "burners")
	heat := &c.Kit.Burners[0].Heat
	heat.Kind = rapid.SampledFrom(append(slices.Clone(batch.BurnerKinds), batch.UnknownBurner)).Draw(t, "kind")
	heat.Rating = maybe(t, "rating", []float64{900, 5000}, measure.Watt, measure.BtuPerH)
	heat.Rehearsal.Took = maybe(t, "took", []float64{1, 10}, measure.Minute, measure.Hour)
	heat.Rehearsal.Water, heat.Rehearsal.From = measure.New(3, measure.Quart), measure.New(60, measure.Fahrenheit)
	for range rapid.IntRange(0, 3).Draw(t, "batches") {
		b := beans(1, rapid.IntRange(1, 3).Draw(t, "stations"))
		b.Treatment = rapid.SampledFrom(table.Treatments).Draw(t, "treatment").ID
		b.Prepared = maybe(t, "prepared", []float64{0.5, 1, 3.3, 17}, measure.Pound, measure.Kilogram)
		b.Start = maybe(t, "start", []float64{34, 45}, measure.Fahrenheit, measure.Celsius)
		b.Ice = maybe(t, "ice", []float64{0, 0.5, 20}, measure.Pound, measure.Kilogram)
		b.Burner = rapid.SampledFrom([]string{"", "Burner"}).Draw(t, "burner")
		b.Pack = batch.Packing{
			Container: rapid.SampledFrom([]batch.Container{batch.Bag, batch.Box, batch.Jar}).Draw(t, "container"),
			Size:      rapid.SampledFrom([]batch.Size{batch.Pint, batch.Quart}).Draw(t, "size"),
			Mouth:     rapid.SampledFrom([]reference.Mouth{reference.WideMouth, reference.NarrowMouth}).Draw(t, "mouth"),
			Tray:      rapid.Bool().Draw(t, "tray"), Count: rapid.IntRange(0, 2).Draw(t, "count"),
		}
		c.Batches = append(c.Batches, b)
	}
	return c
}

// maybe draws an amount in one of two units, or none.
func maybe[D measure.Dimension](t *rapid.T, what string, amounts []float64, one, other *measure.Unit[D]) measure.Of[D] {
	if rapid.IntRange(0, 3).Draw(t, what+" given") == 0 {
		return measure.Of[D]{}
	}
	return measure.New(rapid.SampledFrom(amounts).Draw(t, what), rapid.SampledFrom([]*measure.Unit[D]{one, other}).Draw(t, what+" unit"))
}

// With the table in Spanish too, nothing but texts and words is different.
func TestDemoWithTheTableInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	english := Work(demo(t), reference.Shipped())
	spanish := WorkWith(With{Voice: v}, demo(t), reference.Shipped().In(v))
	sameInBoth(t, english, spanish)
}

// A file that cannot be used says every problem in Spanish.
func TestFileErrorInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	_, err := Read(strings.NewReader(`{"schema": 2, "units": "us", "place": {"altitude": "9 lb"}, "people": {"headcount": 0.5, "perStation": 4}}`), "x.kettleside")
	want := "x.kettleside no se puede usar como clase:\n" +
		"  place.altitude: escribió “9 lb”, que tiene una unidad que no corresponde; se permite: un largo o una altura como 1/2 pulg, 5,000 pies o 1,524 m\n" +
		"  people.headcount: escribió “0.5”, que no es un número entero; se permite: un número entero sin comillas"
	if got := v.Error(err); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	for _, text := range []string{`{"schema": 9}`, `{`, `[]`, `{"schema": 2, "schema": 2}`, `{"schema": 2, "wok": 1, "kit": {"kettles": [{}, {}], "burners": [{}]}, "title": "a\nb", "notes": "\u0007", "date": "x"}`} {
		if _, err := Read(strings.NewReader(text), "x"); err == nil {
			t.Errorf("%s is read", text)
		} else {
			v.Error(err)
		}
	}
	if missing := v.Untranslated(); len(missing) > 0 {
		t.Errorf("said in English: %q", missing)
	}
}
