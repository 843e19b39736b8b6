package planning

import (
	"bytes"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// demo is the area with the demo class on it, in a window of the size that is
// left beside rail and header.
func demo(t *testing.T, v look.Variant, width, height float32) (*Area, fyne.Window) {
	t.Helper()
	looktest.App(t, v)
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	a := New(session.New(reference.Shipped(), c), w)
	a.OpenBatch = func() {}
	a.Refresh()
	w.SetContent(a.Content())
	looktest.Settle(w, width, height)
	return a, w
}

func TestEveryPageFitsTheSmallestWindow(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark} {
		a, w := demo(t, v, 920, 600)
		for _, id := range []string{"class", "place", "people", "kit", "batch"} {
			a.OpenPage(id)
			looktest.Settle(w, 920, 600)
			if least := a.Content().MinSize(); least.Width > 920 || least.Height > 600 {
				t.Errorf("%s needs %v", id, least)
			}
			looktest.Picture(t, w, "planning-"+id+"-"+string(v))
		}
	}
}

func TestANarrowWindowPutsTheTotalsBelow(t *testing.T) {
	a, w := demo(t, look.Light, 690, 500)
	a.openBatch(0)
	looktest.Settle(w, 690, 500)
	if least := a.Content().MinSize(); least.Width > 690 || least.Height > 500 {
		t.Errorf("needs %v", least)
	}
	looktest.Picture(t, w, "planning-narrow")
	pages, totals := a.content.(*fyne.Container).Objects[1], a.totals.object()
	if totals.Position().Y < pages.Size().Height {
		t.Errorf("the totals stand at %v beside pages of %v", totals.Position(), pages.Size())
	}
}

// enter types into a field and leaves it with Enter.
func enter(f *look.Field, text string) {
	f.SetText(text)
	f.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func batchOf(a *Area) *batchPage { return opened(a, 4).(*batchPage) }

func TestTypingChangesTheClassAndItsTotals(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(0)
	before := a.session.Worked().Totals.Prepared.Text
	enter(batchOf(a).prepared, "4 1/2")
	c := a.session.Class()
	if got := c.Batches[0].Prepared.String(); got != "4.5 lb" && got != "4 1/2 lb" {
		t.Fatalf("prepared is %q", got)
	}
	if got := batchOf(a).prepared.Text(); got != c.Batches[0].Prepared.String() {
		t.Errorf("the field shows %q", got)
	}
	if got := a.totals.figures[1].Figure().Text; got == before {
		t.Errorf("the total stayed at %q", got)
	}
	a.session.Undo()
	if got := batchOf(a).prepared.Text(); got != "3 lb" {
		t.Errorf("after undo the field shows %q", got)
	}
}

func TestARefusedEntryChangesNothing(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(0)
	for _, text := range []string{"three apples", "-2 lb", "9000 lb", "1e9", "3 gal"} {
		enter(batchOf(a).prepared, text)
		if batchOf(a).prepared.Problem() == "" || batchOf(a).prepared.Text() != text {
			t.Errorf("%q: problem %q, field %q", text, batchOf(a).prepared.Problem(), batchOf(a).prepared.Text())
		}
		if got := a.session.Class().Batches[0].Prepared.String(); got != "3 lb" {
			t.Fatalf("%q changed the class to %q", text, got)
		}
	}
	a.openBatch(1)
	if batchOf(a).prepared.Problem() != "" || batchOf(a).prepared.Text() == "3 gal" {
		t.Error("what was refused in one batch stands in another")
	}
}

// The largest class still takes a batch.
func TestACrowdTakesABatch(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	if err := a.session.Change("People", func(c *class.Class) { c.People.Headcount, c.People.PerStation = 500, 1 }); err != nil {
		t.Fatal(err)
	}
	if err := a.session.AddBatch("green-peas-shelled-water"); err != nil {
		t.Error(err)
	}
}

func TestBatchesAreAddedMovedCopiedAndRemoved(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	n := len(a.session.Class().Batches)
	a.session.AddBatch("spinach-leaves-water")
	if got := a.session.Class().Batches; len(got) != n+1 || a.session.Selected() != n || got[n].Stations != 4 {
		t.Fatalf("added: %+v, selected %d", got[len(got)-1], a.session.Selected())
	}
	a.OpenPage("batch")
	for i := range a.outline.tools {
		test.Tap(a.outline.tools[i]) // up, down, copy, remove
	}
	if got := a.session.Class().Batches; len(got) != n+1 || got[n].Treatment != "spinach-leaves-water" {
		t.Fatalf("after moving, copying and removing: %d batches, the last %+v", len(got), got[len(got)-1])
	}
	for range n + 1 {
		a.session.RemoveBatch(0)
	}
	if a.shown != "class" || !a.outline.none.Visible() {
		t.Errorf("without batches the page is %q", a.shown)
	}
}

func TestChoicesSetThePack(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(0)
	p := batchOf(a)
	p.container.group.SetSelected("Jar")
	p.size.group.SetSelected("Quart")
	p.mouth.group.SetSelected("Narrow")
	test.Tap(p.tray)
	p.kettle.list.SetSelected("Big kettle")
	b := a.session.Class().Batches[0]
	if b.Pack.Container != "jar" || b.Pack.Size != "quart" || b.Pack.Mouth != reference.NarrowMouth || !b.Pack.Tray || b.Kettle != "Big kettle" {
		t.Fatalf("the batch is %+v", b)
	}
	if !p.mouthBox.Visible() {
		t.Error("a jar has a mouth")
	}
}

func TestAKettleKeepsItsBatches(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	kit := kitOf(a)
	enter(kit.kettles.fields[0][0], "Blue kettle")
	c := a.session.Class()
	if c.Kit.Kettles[0].Name != "Blue kettle" || c.Batches[0].Kettle != "Blue kettle" {
		t.Fatalf("renamed: kit %q, batch %q", c.Kit.Kettles[0].Name, c.Batches[0].Kettle)
	}
	enter(kit.kettles.fields[1][0], "Blue kettle")
	if kit.kettles.fields[1][0].Problem() == "" {
		t.Error("two kettles of one name were taken")
	}
	a.change("Remove", func(c *class.Class) { kettles.takeOut(c, 0) })
	if got := a.session.Class().Batches[0].Kettle; got != "" {
		t.Errorf("the batch still uses %q", got)
	}
	kit.addKettle()
	kit.addKettle()
	if got := a.session.Class().Kit.Kettles; got[len(got)-1].Name == got[len(got)-2].Name {
		t.Errorf("two new kettles have one name: %+v", got)
	}
}

// The screen is compared without the figures, which belong to the engine.
func TestOutlineAndKitAreLaidOutAsBefore(t *testing.T) {
	looktest.App(t, look.Light)
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	a := New(session.New(reference.Shipped(), class.New(reference.Edition)), w)
	a.OpenPage("kit")
	w.SetContent(a.Content())
	looktest.Settle(w, 920, 600)
	looktest.ObjectMarkup(t, a.outline.object(), "outline.xml")
	looktest.ObjectMarkup(t, opened(a, 3).object(), "kit.xml")
}

func TestPeopleMakeStations(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	people := opened(a, 2).(*peoplePage)
	enter(people.head, "25")
	if got := a.totals.figures[0].Figure().Value; got != 9 {
		t.Errorf("25 people at 3 a station make %v stations", got)
	}
	enter(people.head, "2.5")
	if people.head.Problem() == "" {
		t.Error("half a person was taken")
	}
	people.addRole()
	if got := len(a.session.Class().People.Roles); got != 5 {
		t.Errorf("%d roles", got)
	}
}
