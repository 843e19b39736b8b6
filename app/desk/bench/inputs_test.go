package bench

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

func TestChoices(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in, a := r.bench.inputs, r.bench.answers
	in.kettle.SetSelected("Big kettle")
	equal(t, "loads in the big kettle", a.loads.Figure().Text, "1 load")
	equal(t, "what it holds", in.holds.Text(), "3 gal")
	in.kettle.SetSelected("No kettle")
	equal(t, "kettle in the class", r.first().Kettle, "")
	if !a.loads.Figure().InWords() || in.holds.Visible() {
		t.Error("loads are counted without a kettle")
	}
	equal(t, "burner", in.burner.Selected, "Plug-in burner")
	in.burner.SetSelected("Range, large plate")
	equal(t, "burner in the class", r.first().Burner, "Range, large plate")
	in.burner.SetSelected("No burner")
	equal(t, "no burner in the class", r.first().Burner, "")
	if !in.mouth.Disabled() {
		t.Error("a bag has a mouth")
	}
	in.container.SetSelected("Jar")
	in.size.SetSelected("Quart")
	in.mouth.SetSelected("Narrow")
	in.tray.SetChecked(true)
	equal(t, "pack", r.first().Pack, batch.Packing{Container: batch.Jar, Size: batch.Quart, Mouth: reference.NarrowMouth, Tray: true, Count: 3})
	equal(t, "headspace on a tray", a.space.Figure().Text, "none")
	if change, _ := r.session.CanUndo(); change != "Tray first" {
		t.Errorf("the last change is named %q", change)
	}
}

func TestHowWarmTheVegetablesGoIn(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	said := func() string { return fmt.Sprint(r.bench.answers.below.findings.List()) }
	before := said()
	r.typeInto(in.start.Field, "40")
	equal(t, "start in the class while typing", r.first().Start.String(), "70 °F")
	if said() == before {
		t.Errorf("colder vegetables change nothing while typing: %s", before)
	}
	r.press(fyne.KeyEscape)
	equal(t, "what is said after Escape", said(), before)
	r.typeInto(in.start.Field, "40")
	r.press(fyne.KeyReturn)
	equal(t, "start in the class", r.first().Start.String(), "40 °F")
	change, _ := r.session.CanUndo()
	equal(t, "name of the change", change, "Vegetables at")
	r.typeInto(in.start.Field, "")
	r.press(fyne.KeyReturn)
	equal(t, "given after clearing", r.first().Start.Given(), false)
	r.session.Undo()
	equal(t, "field after undo", in.start.Text(), "40 °F")
	r.typeInto(in.start.Field, "50")
	in.burner.SetSelected("Range, large plate")
	equal(t, "start that was typed before a choice", r.first().Start.String(), "50 °F")
	r.typeInto(in.start.Field, "55")
	r.session.Select(1)
	equal(t, "start in the batch it was typed for", r.first().Start.String(), "55 °F")
	equal(t, "start in the batch on view", r.session.Class().Batches[1].Start.Given(), false)
	equal(t, "field of the batch on view", in.start.Text(), "")
}

// TestTheKitIsOffered asks that the choices follow the kit, without a change of
// their own.
func TestTheKitIsOffered(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	err := r.session.Change("Burner", func(c *class.Class) {
		c.Kit.Burners[0].Name, c.Batches[0].Burner, c.Batches[2].Burner = "Blue burner", "Blue burner", ""
	})
	if err != nil {
		t.Fatal(err)
	}
	in := r.bench.inputs
	equal(t, "burner", in.burner.Selected, "Blue burner")
	equal(t, "burners offered", strings.Join(in.burner.Options, "; "), "Blue burner; Range, large plate; No burner")
	equal(t, "kettles offered", strings.Join(in.kettle.Options, "; "), "Station kettle; Big kettle; Steamer; No kettle")
	r.session.Select(2)
	equal(t, "burner of the steam", in.burner.Selected, "No burner")
	if change, _ := r.session.CanUndo(); change != "Burner" {
		t.Errorf("showing the kit made the change %q", change)
	}
}

func TestWhatTheKettleHolds(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.typeInto(r.bench.inputs.holds.Field, "3 3/4")
	equal(t, "loads while typing", r.bench.answers.loads.Figure().Text, "4 loads")
	r.press(fyne.KeyEnter)
	equal(t, "kettle", r.session.Class().Kit.Kettles[0].Holds.String(), "3 3/4 qt")
}
