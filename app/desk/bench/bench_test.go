package bench

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// typeInto replaces what stands in a field, key by key, without leaving it.
func (r *room) typeInto(f interface {
	SetText(string)
	Entry() fyne.Focusable
}, text string) {
	r.window.Canvas().Focus(f.Entry())
	f.SetText("")
	test.Type(f.Entry(), text)
}

func (r *room) press(key fyne.KeyName) {
	r.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

func (r *room) first() class.Batch { return r.session.Class().Batches[0] }

func TestTypingShowsAtOnce(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	a := r.bench.answers
	equal(t, "loads", a.loads.Figure().Text, "3 loads")
	r.typeInto(r.bench.inputs.prepared.Field, "6 1/2")
	equal(t, "loads while typing", a.loads.Figure().Text, "7 loads")
	equal(t, "ice while typing", a.ice.Figure().Text, "6.5 lb")
	equal(t, "prepared in the class while typing", r.first().Prepared.String(), "3 lb")
	if _, can := r.session.CanUndo(); can {
		t.Error("typing alone changed the class")
	}
	r.press(fyne.KeyReturn)
	equal(t, "prepared in the class", r.first().Prepared.String(), "6.5 lb")
	equal(t, "loads", a.loads.Figure().Text, "7 loads")
	r.session.Undo()
	equal(t, "loads after undo", a.loads.Figure().Text, "3 loads")
	equal(t, "field after undo", r.bench.inputs.prepared.Text(), "3 lb")
}

func TestEscapeTakesBackWhatWasTried(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.typeInto(r.bench.inputs.prepared.Field, "9 lb")
	equal(t, "loads while typing", r.bench.answers.loads.Figure().Text, "9 loads")
	r.press(fyne.KeyEscape)
	equal(t, "field", r.bench.inputs.prepared.Text(), "3 lb")
	equal(t, "loads", r.bench.answers.loads.Figure().Text, "3 loads")
}

func TestBadEntriesAreSaidAndLoseNothing(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	before := r.session.Class()
	for _, one := range []struct {
		field *look.Field
		typed string
		says  string
	}{
		{in.prepared.Field, "abc", "no number at the start"},
		{in.prepared.Field, "0", "too little"},
		{in.prepared.Field, "-3 lb", "too little"},
		{in.prepared.Field, "3 gal", "a unit that does not fit"},
		{in.prepared.Field, "", "Nothing typed"},
		{in.stations, "2.5", "whole number"},
		{in.holds.Field, "lots", "no number"},
		{in.altitude.Field, "90000", "too much"},
		{in.freezer.Field, "0.01", "too little"},
		{in.start.Field, "170", "too much; allowed is 32 °F to"},
		{in.start.Field, "mild", "no number"},
		{in.ice.Field, "600", "too much; allowed is 0 lb to"},
		{in.ice.Field, "heaps", "no number"},
		{in.count, "-1", "too little"},
	} {
		r.typeInto(one.field, one.typed)
		r.press(fyne.KeyReturn)
		if !strings.Contains(one.field.Problem(), one.says) {
			t.Errorf("“%s” is answered with “%s”, which does not say “%s”", one.typed, one.field.Problem(), one.says)
		}
		equal(t, "text that stays", one.field.Text(), one.typed)
		equal(t, "loads", r.bench.answers.loads.Figure().Text, "3 loads")
		r.press(fyne.KeyEscape)
		equal(t, "problem after Escape", one.field.Problem(), "")
	}
	if got := r.session.Class(); got.Batches[0] != before.Batches[0] || got.Place != before.Place {
		t.Error("a refused entry changed the class")
	}
}

func TestAltitudeMovesTheMinutes(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	for typed, minutes := range map[string]string{"4,999": "3 min", "5000 ft": "4 min", "1524 m": "4 min", "": "3 min"} {
		r.typeInto(r.bench.inputs.altitude.Field, typed)
		r.press(fyne.KeyReturn)
		equal(t, "minutes at "+typed, r.bench.answers.minutes.Figure().Text, minutes)
	}
}

// TestMinutesStandWithStartAndSource asks it of every treatment of the table.
func TestMinutesStandWithStartAndSource(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	a := r.bench.answers
	c := r.session.Class()
	for _, treatment := range r.session.Table().Treatments {
		c.Batches[0].Treatment = treatment.ID
		one := c
		one.Batches = c.Batches[:1]
		a.show(shown{class: one, table: r.session.Table(), batch: class.Work(one, r.session.Table()).Batches[0]})
		source, _ := r.session.Table().Source(treatment.Source)
		switch {
		case a.minutes.Figure().Text == "":
			t.Errorf("%s: no minutes and no words", treatment.ID)
		case a.clock.Figure().Text == "":
			t.Errorf("%s: nothing says when the clock starts", treatment.ID)
		case !strings.Contains(a.source.Text(), source.Title) || !strings.Contains(a.source.Text(), source.Edition):
			t.Errorf("%s: “%s” does not name title and edition", treatment.ID, a.source.Text())
		case treatment.Standing != reference.Read && !strings.Contains(a.source.Text(), string(treatment.Standing)):
			t.Errorf("%s: “%s” does not say %s", treatment.ID, a.source.Text(), treatment.Standing)
		}
	}
}

func TestStepsThroughBatches(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	equal(t, "place", in.place.Text, "Batch 1 of 4")
	if !in.before.Disabled() || in.after.Disabled() {
		t.Error("the first batch has one before it, or none after it")
	}
	r.typeInto(in.prepared.Field, "2 lb")
	test.Tap(in.after)
	equal(t, "prepared before the step", r.first().Prepared.String(), "2 lb")
	equal(t, "place", in.place.Text, "Batch 2 of 4")
	equal(t, "name", in.name.Text(), "Spinach for show")
	r.typeInto(in.prepared.Field, "lots")
	test.Tap(in.after)
	equal(t, "place with a bad entry", in.place.Text, "Batch 2 of 4")
	in.prepared.Restore()
	in.pickBatch("3")
	equal(t, "place", in.place.Text, "Batch 4 of 4")
	if !in.after.Disabled() {
		t.Error("the last batch has one after it")
	}
	if r.bench.answers.kettle.Visible() || r.bench.answers.line.Visible() {
		t.Error("a kettle or a clock is drawn for pumpkin, which is cooked until soft")
	}
}

func TestDialogsOpen(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.bench.inputs.chooseTreatment()
	if r.window.Canvas().Overlays().Top() == nil {
		t.Error("the list of treatments did not open")
	}
	r.window.Canvas().Overlays().Remove(r.window.Canvas().Overlays().Top())
	r.bench.inputs.chooseBatch()
	if r.window.Canvas().Overlays().Top() == nil {
		t.Error("the list of batches did not open")
	}
	if n := len(TreatmentChoices(r.session)); n != len(r.session.Table().Treatments) {
		t.Errorf("%d choices", n)
	}
}

func TestFindingsAndCautionsStand(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	a := r.bench.answers
	said := func() string { return test.RenderObjectToMarkup(a.urgent.content) }
	if text := said(); !strings.Contains(text, "wet baskets scald") || !strings.Contains(text, "Not ready to eat") {
		t.Error("the scald caution or the cooking does not stand beside the minutes")
	}
	r.session.Select(2)
	if !strings.Contains(said(), "Steam burns") {
		t.Error("the caution of steam does not stand beside the minutes")
	}
	r.session.Select(1) // one load of 1 1/2 lb
	if !strings.Contains(said(), "Each load is 1.5 lb") {
		t.Error("the load over a pound is not said beside the minutes")
	}
	list, _ := r.session.SelectedBatch()
	equal(t, "number of findings", len(a.below.findings.List()), len(list.Findings))
	if n := len(a.below.cautions.Objects); n != len(cautions(shown{batch: list})) || n < 4 {
		t.Errorf("%d cautions", n)
	}
}

func TestUnknownTreatmentAndNoBatch(t *testing.T) {
	c := demo(t)
	c.Batches[0].Treatment = "gone"
	r := open(t, look.Light, c, areaWide, areaHigh)
	if r.bench.answers.figures.Visible() {
		t.Error("figures stand for a treatment that is not in the table")
	}
	equal(t, "finding", r.bench.answers.below.findings.List()[0].Severity, measure.Stop)
	for range 4 {
		if err := r.session.RemoveBatch(0); err != nil {
			t.Fatal(err)
		}
	}
	if r.bench.work.Visible() || !r.bench.empty.Visible() {
		t.Error("an empty class is not shown as empty")
	}
	r.session.Undo()
	if !r.bench.work.Visible() {
		t.Error("the batch that came back is not shown")
	}
}

// TestFits asks that the area fits the least window, and that in it the
// figures that matter stand without scrolling.
func TestFits(t *testing.T) {
	for _, one := range []struct {
		variant  look.Variant
		language words.Language
	}{{look.Light, words.English}, {look.HighContrast, words.English}, {look.Light, words.Spanish}} {
		speak(t, one.language)
		r := open(t, one.variant, demo(t), areaWide, areaHigh)
		if least := r.bench.Content.MinSize(); least.Width > 820 || least.Height > areaHigh {
			t.Errorf("the area needs %v", least)
		}
		for i := range 3 {
			r.session.Select(i)
			looktest.Settle(r.window, areaWide, areaHigh)
			a := r.bench.answers
			for _, f := range []*look.FigureView{a.minutes, a.clock, a.loads, a.water, a.chill, a.ice, a.space, a.packs, a.freezer, a.days} {
				at := fyne.CurrentApp().Driver().AbsolutePositionForObject(f)
				if bottom := at.Y + f.Size().Height; bottom > areaHigh || at.X+f.Size().Width > areaWide {
					t.Errorf("batch %d: %s ends at %.0f", i+1, f.Figure().Label, bottom)
				}
			}
		}
	}
}

func TestMetric(t *testing.T) {
	c := demo(t)
	c.Units = measure.Metric
	r := open(t, look.Light, c, areaWide, areaHigh)
	r.typeInto(r.bench.inputs.prepared.Field, "1,5")
	if r.bench.inputs.prepared.Done() {
		t.Error("1,5 was read although the comma is a thousands mark here")
	}
	r.typeInto(r.bench.inputs.prepared.Field, "2")
	r.press(fyne.KeyReturn)
	equal(t, "a bare number", r.first().Prepared.String(), "2 kg")
	r.typeInto(r.bench.inputs.start.Field, "4")
	r.press(fyne.KeyReturn)
	equal(t, "a bare number", r.first().Start.String(), "4 °C")
	s, _ := r.bench.now()
	if k := s.kettleState(); k.LoadKg < 0.35 || k.LoadKg > 0.46 || k.WaterL < 3 || k.WaterL > 3.8 {
		t.Errorf("the kettle is drawn with %g kg in %g L", k.LoadKg, k.WaterL)
	}
}

// TestRemovedWhileTyping asks that a batch may go while its field has the
// focus, also by redo.
func TestRemovedWhileTyping(t *testing.T) {
	c := demo(t)
	c.Batches = c.Batches[:2]
	c.Batches[1].Prepared = c.Batches[0].Prepared
	r := open(t, look.Light, c, areaWide, areaHigh)
	remove := func(i int) {
		if err := r.session.RemoveBatch(i); err != nil {
			t.Fatal(err)
		}
	}
	other := c.Batches[1]
	r.typeInto(r.bench.inputs.prepared.Field, "7 lb")
	remove(0)
	r.window.Canvas().Unfocus()
	equal(t, "the batch that took its place", r.first(), other)
	equal(t, "field", r.bench.inputs.prepared.Text(), other.Prepared.String())
	r.typeInto(r.bench.inputs.prepared.Field, "7 lb")
	remove(0)
	r.window.Canvas().Unfocus()
	r.session.Undo()
	r.typeInto(r.bench.inputs.prepared.Field, "5 lb")
	r.session.Redo()
	r.press(fyne.KeyReturn)
	r.window.Canvas().Unfocus()
	equal(t, "batches left", len(r.session.Class().Batches), 0)
	r.bench.inputs.pickTreatment("broccoli-flowerets-steam") // from a list that was left open
	r.session.Undo()
	equal(t, "the batch that came back", r.first(), other)
}

// TestTypedGoesToItsBatch asks that what is typed lands in the batch it was
// typed for, whatever command moves it.
func TestTypedGoesToItsBatch(t *testing.T) {
	for name, do := range map[string]func(*room) error{
		"duplicate": func(r *room) error { return r.session.DuplicateBatch(0) },
		"move":      func(r *room) error { return r.session.MoveBatch(0, 1) },
		"select":    func(r *room) error { r.session.Select(1); return nil },
		"add":       func(r *room) error { return r.session.AddBatch("snap-beans-cut-water") },
		"leave":     func(r *room) error { return nil },
	} {
		c := demo(t)
		for i := range c.Batches { // nothing but the name tells them apart
			c.Batches[i] = c.Batches[0]
			c.Batches[i].Name = string(rune('a' + i))
		}
		r := open(t, look.Light, c, areaWide, areaHigh)
		r.typeInto(r.bench.inputs.prepared.Field, "7 lb")
		if err := do(r); err != nil {
			t.Fatal(err)
		}
		r.window.Canvas().Unfocus()
		seven := 0
		for _, b := range r.session.Class().Batches {
			if b.Prepared.String() == "7 lb" {
				seven++
				equal(t, name+": batch of 7 lb", b.Name, "a")
			}
		}
		equal(t, name+": batches of 7 lb", seven, 1)
		if b, _ := r.session.SelectedBatch(); b.Batch.Prepared.String() != r.bench.inputs.prepared.Text() {
			t.Errorf("%s: the field shows %s, the batch has %s", name, r.bench.inputs.prepared.Text(), b.Batch.Prepared)
		}
		if name == "duplicate" && r.first().Prepared.String() != "7 lb" {
			t.Error("the copy got what was typed for the original")
		}
	}
}

// TestRefusedTextStaysWithItsBatch asks that a text that cannot be used does
// not stand in the field of another batch.
func TestRefusedTextStaysWithItsBatch(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	r.typeInto(in.prepared.Field, "lots")
	r.press(fyne.KeyReturn)
	r.session.Select(1)
	equal(t, "field", in.prepared.Text(), r.session.Class().Batches[1].Prepared.String())
	equal(t, "problem", in.prepared.Problem(), "")
}

func TestTreatmentChoicesMarkChanges(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	const id = "snap-beans-cut-water"
	e := r.session.Shipped().NewEdit(id, reference.FieldMinutes, "4", "our bulletin", "A. Lead", time.Date(2027, 6, 1, 9, 0, 0, 0, time.UTC))
	if err := r.session.ApplyEdit(e); err != nil {
		t.Fatal(err)
	}
	for _, c := range TreatmentChoices(r.session) {
		equal(t, c.ID+" is marked", strings.Contains(c.Detail, "edited"), c.ID == id)
	}
}

// Every treatment of a crop is found by the other names of the crop.
func TestTreatmentsAreFoundByOtherNames(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	picked := ""
	list := look.NewChoiceList(TreatmentChoices(r.session), "", func(id string) { picked = id })
	list.Search("string beans")
	list.Pick()
	found, ok := r.session.Table().Treatment(picked)
	if !ok || found.Crop != "beans" && !strings.Contains(found.Crop, "bean") {
		t.Errorf("“string beans” finds %q of %q", picked, found.Crop)
	}
}

// TestCookingWordsComeFromTheContent asks that the heat of cooking is the rule
// of the table, in the units of the class.
func TestCookingWordsComeFromTheContent(t *testing.T) {
	c := demo(t)
	r := open(t, look.Light, c, areaWide, areaHigh)
	for units, heat := range map[measure.System]string{measure.US: "165 °F", measure.Metric: "74 °C"} {
		line := CautionLine(r.session.Table(), units, "water", "bag", "hot-peppers")
		for _, part := range []string{"wet baskets scald.", "Wear gloves", "Not ready to eat: Cook frozen vegetables to " + heat} {
			if !strings.Contains(line, part) {
				t.Errorf("“%s” does not say “%s”", line, part)
			}
		}
	}
}
