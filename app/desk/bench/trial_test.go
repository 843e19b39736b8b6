package bench

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// tap presses the button of a name that stands somewhere in the area.
func (r *room) tap(t *testing.T, name string) {
	t.Helper()
	var found *look.Button
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if !o.Visible() {
			return
		}
		switch o := o.(type) {
		case *look.Button:
			if o.Text == name {
				found = o
			}
		case *fyne.Container:
			for _, inner := range o.Objects {
				walk(inner)
			}
		case fyne.Widget:
			for _, inner := range test.WidgetRenderer(o).Objects() {
				walk(inner)
			}
		}
	}
	walk(r.bench.Content)
	if found == nil {
		t.Fatalf("no button “%s” is to be seen", name)
	}
	test.Tap(found)
}

// "What about a pound and a half in a six-quart pot?": tried on a copy, seen
// beside the plan, kept under a name, left with one action; the class is as it
// was.
func TestTrialAndReturn(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	before := r.session.Class()
	equal(t, "frame", r.bench.frame.Visible(), false)
	r.tap(t, "Try it on a copy")
	equal(t, "frame", r.bench.frame.Visible(), true)
	r.typeInto(r.bench.inputs.prepared, "1 1/2 lb")
	r.press(fyne.KeyReturn)
	r.typeInto(r.bench.inputs.holds, "6 qt")
	r.press(fyne.KeyReturn)
	equal(t, "loads of the trial", r.bench.answers.loads.Figure().Text, "1 load")
	r.typeInto(r.bench.strip.name, "The back row’s pot")
	r.press(fyne.KeyReturn)
	shown := map[string]string{}
	for _, d := range r.bench.answers.beside.shown {
		shown[d.Label] = d.Plan + " → " + d.Trial
	}
	for label, want := range map[string]string{"Loads": "3 loads → 1 load", "Each load": "1 lb → 1.5 lb"} {
		equal(t, label, shown[label], want)
	}
	if !reflect.DeepEqual(r.session.Class(), before) || r.session.Unsaved() {
		t.Error("the trial touched the class")
	}
	r.tap(t, "Return to the plan")
	equal(t, "frame", r.bench.frame.Visible(), false)
	equal(t, "field of the plan", r.bench.inputs.prepared.Text(), "3 lb")
	equal(t, "loads of the plan", r.bench.answers.loads.Figure().Text, "3 loads")
	equal(t, "beside", r.bench.answers.beside.content.Visible(), false)
	r.tap(t, "The back row’s pot") // it is kept
	equal(t, "field of the trial", r.bench.inputs.prepared.Text(), "1.5 lb")
	r.tap(t, "Drop it")
	equal(t, "trials", len(r.session.Trials()), 0)
	equal(t, "strip", r.bench.strip.whole.Visible(), false)
}

// A trial becomes the plan on purpose only, and Undo takes that back.
func TestTrialAdopted(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	before := r.session.Class()
	r.tap(t, "Try it on a copy")
	r.typeInto(r.bench.inputs.prepared, "2 lb")
	r.tap(t, "Adopt into the plan") // with what is being typed
	equal(t, "the plan", r.first().Prepared.String(), "2 lb")
	equal(t, "trials", len(r.session.Trials()), 0)
	r.session.Undo()
	if !reflect.DeepEqual(r.session.Class(), before) {
		t.Error("undo did not bring the plan back")
	}
}

// What is typed shows beside the plan at once, before it is handed over.
func TestTrialComparesWhileTyping(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.tap(t, "Try it on a copy")
	equal(t, "nothing yet", len(r.bench.answers.beside.shown), 0)
	r.typeInto(r.bench.inputs.prepared, "5 lb")
	found := false
	for _, d := range r.bench.answers.beside.shown {
		found = found || d.Label == "Loads" && d.Trial == "5 loads" && strings.HasPrefix(d.By, "+2")
	}
	if !found {
		t.Errorf("typed 5 lb: %+v", r.bench.answers.beside.shown)
	}
	r.press(fyne.KeyEscape)
	equal(t, "taken back", len(r.bench.answers.beside.shown), 0)
}

// Another class has no trials, and what was typed in one stays out of it.
func TestTrialEndsWithItsClass(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.tap(t, "Try it on a copy")
	r.typeInto(r.bench.inputs.prepared, "5 lb")
	c := demo(t)
	c.Title = "Another"
	r.session.Start(c, "")
	equal(t, "frame", r.bench.frame.Visible(), false)
	equal(t, "field", r.bench.inputs.prepared.Text(), "3 lb")
	equal(t, "class", r.first().Prepared.String(), "3 lb")
}

func TestTrialStands(t *testing.T) {
	for _, variant := range []look.Variant{look.Light, look.Dark} {
		for _, size := range []fyne.Size{{Width: areaWide, Height: areaHigh}, {Width: 1181, Height: 700}, {Width: 700, Height: 500}} {
			r := open(t, variant, demo(t), size.Width, size.Height)
			r.tap(t, "Try it on a copy")
			if err := r.session.ChangeView("x", func(c *class.Class) { c.Batches[0].Treatment = "corn-on-the-cob-large-water" }); err != nil {
				t.Fatal(err)
			}
			r.typeInto(r.bench.inputs.prepared, "9 lb")
			r.press(fyne.KeyReturn)
			looktest.Settle(r.window, size.Width, size.Height)
			looktest.Picture(t, r.window, fmt.Sprintf("bench-trial-%s-%.0f", variant, size.Width))
			textfits.Check(t, r.window)
		}
	}
}
