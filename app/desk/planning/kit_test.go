package planning

import (
	"reflect"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// The fields of a row, in the order of rows.fields.
const (
	kettleAcross, kettleCount                                               = 2, 3
	burnerName, burnerCount, burnerRating, trialWater, trialFrom, trialTook = 0, 1, 2, 3, 4, 5
)

// opened is a page that is on view: only that one follows changes.
func opened(a *Area, i int) page {
	a.open(a.pages[i].id())
	return a.pages[i]
}

func kitOf(a *Area) *kitPage { return opened(a, 3).(*kitPage) }

// burnerFields are the fields of a burner's row.
func burnerFields(a *Area, i int) []*look.Field { return kitOf(a).burners.fields[i] }

func TestEveryAmountOfTheKitIsEntered(t *testing.T) {
	amounts := []struct {
		what       string
		field      func(a *Area) *look.Field
		typed      string
		us, metric string
		held       func(c class.Class) string
	}{
		{"rating", func(a *Area) *look.Field { return burnerFields(a, 0)[burnerRating] }, "1,800", "1800 W", "1800 W",
			func(c class.Class) string { return c.Kit.Burners[0].Heat.Rating.String() }},
		{"water of the rehearsal", func(a *Area) *look.Field { return burnerFields(a, 1)[trialWater] }, "3 1/2", "3 1/2 qt", "3.5 L",
			func(c class.Class) string { return c.Kit.Burners[1].Heat.Rehearsal.Water.String() }},
		{"start of the rehearsal", func(a *Area) *look.Field { return burnerFields(a, 1)[trialFrom] }, "38", "38 °F", "38 °C",
			func(c class.Class) string { return c.Kit.Burners[1].Heat.Rehearsal.From.String() }},
		{"time of the rehearsal", func(a *Area) *look.Field { return burnerFields(a, 1)[trialTook] }, "7.25", "7 1/4 min", "7 1/4 min",
			func(c class.Class) string { return c.Kit.Burners[1].Heat.Rehearsal.Took.String() }},
		{"basket", func(a *Area) *look.Field { return kitOf(a).kettles.fields[0][kettleAcross] }, "10", "10 in", "10 cm",
			func(c class.Class) string { return c.Kit.Kettles[0].Across.String() }},
		{"water in a bath", func(a *Area) *look.Field { return kitOf(a).bathWater }, "8", "8 qt", "8 L",
			func(c class.Class) string { return c.Kit.BathWater.String() }},
		{"vegetables", func(a *Area) *look.Field { return batchOf(a).start }, "40", "40 °F", "40 °C",
			func(c class.Class) string { return c.Batches[0].Start.String() }},
	}
	for _, units := range []measure.System{measure.US, measure.Metric} {
		a, _ := demo(t, look.Light, 920, 600)
		a.session.Change("Units", func(c *class.Class) { c.Units = units })
		for _, one := range amounts {
			want := one.us
			if units == measure.Metric {
				want = one.metric
			}
			f := one.field(a)
			enter(f, one.typed)
			if got := one.held(a.session.Class()); got != want || f.Text() != want || f.Problem() != "" {
				t.Errorf("%s, %s: the class holds %q, the field %q with %q; want %q", one.what, units, got, f.Text(), f.Problem(), want)
			}
			enter(f, " ")
			if got := one.held(a.session.Class()); got != "" || f.Problem() != "" {
				t.Errorf("%s, %s: cleared it holds %q with %q", one.what, units, got, f.Problem())
			}
		}
	}
}

func TestWhatCannotBeOfTheKitIsRefused(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	before := a.session.Class()
	kit, fields := kitOf(a), burnerFields(a, 0)
	for _, one := range []struct {
		field       *look.Field
		typed, says string
	}{
		{fields[burnerName], " ", "a name of its own for each burner"},
		{fields[burnerName], "Range, large plate", "taken by another burner"},
		{fields[burnerCount], "2.5", "not a whole number"},
		{fields[burnerRating], "15", "too little; allowed is"},
		{fields[burnerRating], "5 gal", "a unit that does not fit"},
		{fields[trialWater], "lots", "no number at the start"},
		{fields[trialFrom], "170", "too much; allowed is 32 °F to"},
		{fields[trialTook], "9 s", "too little"},
		{kit.kettles.fields[0][kettleAcross], "9 ft", "too much"},
		{kit.bathWater, "0", "too little"},
		{batchOf(a).start, "boiling", "no number at the start"},
		{batchOf(a).start, "121", "too much; allowed is 32 °F to"},
	} {
		enter(one.field, one.typed)
		if !strings.Contains(one.field.Problem(), one.says) || one.field.Text() != one.typed {
			t.Errorf("%q is answered with %q, which does not say %q; the field shows %q", one.typed, one.field.Problem(), one.says, one.field.Text())
		}
	}
	if got := a.session.Class(); !reflect.DeepEqual(got, before) {
		t.Errorf("what was refused changed the class: %+v", got.Kit)
	}
}

func TestTheKindOfABurnerIsChosenInWords(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	kind := kitOf(a).kinds[1]
	if got := kind.list.Selected; got != "electric under glass" {
		t.Errorf("the range is shown as %q", got)
	}
	if got, want := len(kind.list.Options), len(batch.BurnerKinds)+1; got != want {
		t.Errorf("%d kinds are offered, want %d", got, want)
	}
	held := func() batch.BurnerKind { return a.session.Class().Kit.Burners[1].Heat.Kind }
	for _, want := range append([]batch.BurnerKind{batch.UnknownBurner}, batch.BurnerKinds...) {
		before := held()
		kind.show(string(want))
		if held() != before {
			t.Errorf("showing a kind made a burner of kind %q into %q", before, held())
		}
		if kind.list.SetSelected(kind.list.Selected); held() != want {
			t.Errorf("%q makes a burner of kind %q, want %q", kind.list.Selected, held(), want)
		}
	}
	if change, _ := a.session.CanUndo(); change != "Burner" {
		t.Errorf("the change is called %q", change)
	}
}

func TestABurnerKeepsItsBatches(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	enter(burnerFields(a, 0)[burnerName], "Blue burner")
	c := a.session.Class()
	if c.Kit.Burners[0].Name != "Blue burner" || c.Batches[0].Burner != "Blue burner" || c.Batches[1].Burner != "Range, large plate" || c.Batches[2].Burner != "Blue burner" {
		t.Fatalf("renamed: kit %+v, batches %+v", c.Kit.Burners, c.Batches)
	}
	a.change("Remove", func(c *class.Class) { burners.takeOut(c, 0) })
	c = a.session.Class()
	if len(c.Kit.Burners) != 1 || c.Batches[0].Burner != "" || c.Batches[1].Burner != "Range, large plate" || c.Batches[2].Burner != "" {
		t.Errorf("removed: kit %+v, batches %+v", c.Kit.Burners, c.Batches)
	}
	if got := kitOf(a).kinds[0].list.Selected; got != "electric under glass" {
		t.Errorf("the burner that moved up is shown as %q", got)
	}
	kitOf(a).addBurner()
	kitOf(a).addBurner()
	if got := a.session.Class().Kit.Burners; len(got) != 3 || got[1].Name == got[2].Name || got[2].Count != 1 {
		t.Errorf("two new burners: %+v", got)
	}
	a.change("Remove", func(c *class.Class) { burners.takeOut(c, 9) }) // gone in the meantime
	if got := len(a.session.Class().Kit.Burners); got != 3 {
		t.Errorf("%d burners are left", got)
	}
}

func TestABatchChoosesFromTheKit(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	a.openBatch(3)
	p := batchOf(a)
	if p.kettle.list.Selected != "None chosen" || p.burner.list.Selected != "None chosen" {
		t.Errorf("the pumpkin is shown in %q on %q", p.kettle.list.Selected, p.burner.list.Selected)
	}
	p.burner.list.SetSelected("Range, large plate")
	if got := a.session.Class().Batches[3]; got.Burner != "Range, large plate" || got.Kettle != "" {
		t.Errorf("the batch is in %q on %q", got.Kettle, got.Burner)
	}
	p.burner.list.SetSelected("None chosen")
	if got := a.session.Class().Batches[3].Burner; got != "" {
		t.Errorf("none chosen is %q", got)
	}
	enter(p.start, "lots")
	a.openBatch(1) // where nothing is given either
	if p.start.Text() != "" || p.start.Problem() != "" {
		t.Errorf("what was refused for the pumpkin stands at the spinach: %q", p.start.Text())
	}
	a.openBatch(0)
	if p.start.Text() != "70 °F" || p.start.Problem() != "" || p.burner.list.Selected != "Plug-in burner" {
		t.Errorf("the beans are shown on %q at %q with %q", p.burner.list.Selected, p.start.Text(), p.start.Problem())
	}
}

func TestWhatIsRefusedStaysWithItsBurner(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	took := burnerFields(a, 1)[trialTook]
	enter(took, "long")
	enter(burnerFields(a, 0)[burnerRating], "1600")
	if took.Text() != "long" || took.Problem() == "" {
		t.Error("a change of another burner took the text back")
	}
	a.session.Change("Remove", func(c *class.Class) { burners.takeOut(c, 0) })
	if took.Text() == "long" || took.Problem() != "" {
		t.Error("what was refused for one burner stands at another")
	}
}
