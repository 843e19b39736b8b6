package planning

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
)

// begin types into a field without leaving it.
func begin(a *Area, f *look.Field, text string) {
	a.window.Canvas().Focus(f.Entry())
	f.SetText(text)
}

func TestARefusedEntryKeepsItsPage(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(0)
	begin(a, batchOf(a).prepared, "three apples")
	for name, leave := range map[string]func(){
		"page": func() { a.OpenPage("place") }, "batch": func() { a.openBatch(1) },
		"up": a.outline.tools[0].OnTapped, "copy": a.outline.tools[2].OnTapped, "remove": a.outline.tools[3].OnTapped,
		"kettle": kitOf(a).addKettle, "burner": kitOf(a).addBurner, "task": opened(a, 2).(*peoplePage).addRole,
		"add": a.AddBatch, "treatment": batchOf(a).chooseTreatment,
	} {
		before, _ := a.session.CanUndo()
		leave()
		after, _ := a.session.CanUndo()
		if a.shown != "batch" || a.session.Selected() != 0 || after != before || a.window.Canvas().Overlays().Top() != nil {
			t.Errorf("%s: page %q, batch %d, change %q", name, a.shown, a.session.Selected(), after)
		}
		if batchOf(a).prepared.Problem() == "" || batchOf(a).prepared.Text() != "three apples" {
			t.Errorf("%s: the sentence is gone", name)
		}
	}
	begin(a, batchOf(a).prepared, "4 lb")
	a.OpenPage("place")
	if a.shown != "place" || a.window.Canvas().Focused() != nil {
		t.Errorf("page %q, focus on %T", a.shown, a.window.Canvas().Focused())
	}
}

func TestCommandsTakeWhatIsTypedFirst(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(1)
	begin(a, batchOf(a).prepared, "4.25 lb")
	test.Tap(a.outline.tools[0])
	if c := a.session.Class(); c.Batches[0].Prepared.String() != "4.25 lb" || c.Batches[1].Prepared.String() == "4.25 lb" {
		t.Errorf("the batch moved up holds %v, the other %v", c.Batches[0].Prepared, c.Batches[1].Prepared)
	}
	begin(a, batchOf(a).name, "Copied")
	test.Tap(a.outline.tools[2])
	if c := a.session.Class(); c.Batches[0].Name != "Copied" || c.Batches[1].Name != "Copied" {
		t.Errorf("copied: %q, %q", c.Batches[0].Name, c.Batches[1].Name)
	}
	kit := kitOf(a)
	a.OpenPage("kit")
	begin(a, kit.kettles.fields[0][0], "Blue kettle")
	kit.addKettle()
	if got := a.session.Class().Kit.Kettles[0].Name; got != "Blue kettle" {
		t.Errorf("the kettle is %q", got)
	}
}

func TestWhatIsRefusedStaysWithItsRow(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	kit := kitOf(a)
	kit.addKettle()
	count := kit.kettles.fields[1][kettleCount]
	enter(count, "many")
	enter(kit.kettles.fields[0][0], "Blue kettle")
	if count.Text() != "many" {
		t.Errorf("a change of another row took %q back", "many")
	}
	a.session.Change("Remove", func(c *class.Class) { kettles.takeOut(c, 0) })
	if count.Text() == "many" || count.Problem() != "" {
		t.Error("what was refused for one kettle stands at another")
	}
	people := opened(a, 2).(*peoplePage)
	if n := len(a.session.Class().People.Roles); n < 2 {
		t.Fatalf("%d tasks", n)
	}
	people.roles.fields[0][0].SetText("typed")
	a.session.Change("Turn", func(c *class.Class) {
		r := c.People.Roles
		r[0], r[1] = r[1], r[0]
	})
	if people.roles.fields[0][0].Dirty() {
		t.Error("what was typed for one task stands at another")
	}
}

func TestWhatCannotBeAddedIsSaid(t *testing.T) {
	a, w := demo(t, look.Light, 920, 600)
	a.must(a.session.AddBatch("no such treatment"))
	if w.Canvas().Overlays().Top() == nil {
		t.Error("nothing is said")
	}
}
