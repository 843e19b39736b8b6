package projector

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// TestMarkup compares two pages with their golden markup. It changes where the
// crop table or the words do; go test -update takes a wanted change over.
func TestMarkup(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	looktest.Markup(t, r.window, "treatment.xml")
	r.try(t)
	r.turnTo(t, "Trial")
	looktest.Markup(t, r.window, "trial.xml")
}

// Each way of treating has the pages that say something about it.
func TestPages(t *testing.T) {
	c := demo(t)
	raw := c.Batches[3]
	raw.Treatment = "basil-chopped-raw"
	unheated := c.Batches[0]
	unheated.Burner = ""
	gone := c.Batches[0]
	gone.Treatment = "gone"
	c.Batches = append(c.Batches, raw, unheated, gone)
	r := open(t, look.Light, c, 1024, 768)
	for i, want := range []string{
		"Treatment Kettle Curve Ice bath Pack and freezer",
		"Treatment Kettle Curve Ice bath Pack and freezer",
		"Treatment Kettle Curve Ice bath Pack and freezer",
		"Treatment Pack and freezer",                 // cooked
		"Treatment Pack and freezer",                 // raw
		"Treatment Kettle Ice bath Pack and freezer", // no curve without a burner
		"No batch",
	} {
		r.session.Select(i)
		equal(t, r.session.Class().Batches[i].Treatment, strings.Join(r.view.Pages(), " "), want)
	}
	r.says(t, "The table has no treatment “gone”.")
}

// An empty class is said to be one, and the batch that comes back is shown.
func TestNoBatch(t *testing.T) {
	c := demo(t)
	c.Batches = c.Batches[:1]
	r := open(t, look.Light, c, 1024, 768)
	must(t, r.session.RemoveBatch(0))
	equal(t, "pages", strings.Join(r.view.Pages(), " "), "No batch")
	r.says(t, "No batch to show yet")
	r.stands(t, "no batch")
	r.session.Undo()
	equal(t, "page", r.view.Page(), "Treatment")
	r.says(t, "Snap beans")
}

func TestKeys(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	for _, one := range []struct {
		key  fyne.KeyName
		page string
	}{
		{fyne.KeyPageDown, "Kettle"}, {fyne.KeyRight, "Curve"}, {fyne.KeyPageDown, "Ice bath"}, {fyne.KeyPageUp, "Curve"}, {fyne.KeyLeft, "Kettle"},
		{fyne.KeyEnd, "Pack and freezer"}, {fyne.KeyPageDown, "Pack and freezer"}, {fyne.KeyHome, "Treatment"}, {fyne.KeyLeft, "Treatment"},
	} {
		if !r.view.TypedKey(&fyne.KeyEvent{Name: one.key}) {
			t.Errorf("%s is no key of the view", one.key)
		}
		equal(t, "page after "+string(one.key), r.view.Page(), one.page)
		r.says(t, one.page)
	}
	for _, key := range []fyne.KeyName{fyne.KeyF11, fyne.KeyEscape, fyne.KeySpace, fyne.KeyA} {
		equal(t, string(key), r.view.TypedKey(&fyne.KeyEvent{Name: key}), false)
	}
	equal(t, "page", r.view.Page(), "Treatment")
}

// The view shows a change at once, and stays on its page where that applies.
func TestFollows(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.view.Next()
	r.says(t, "3 lb in", "Beans at every station, for each of 4 stations")
	must(t, r.session.Change("more", func(c *class.Class) { c.Batches[0].Prepared = measure.New(6.5, measure.Pound) }))
	equal(t, "page", r.view.Page(), "Kettle")
	r.says(t, "6.5 lb in", "7 loads")
	r.session.Undo()
	r.says(t, "3 lb in")
	r.session.Select(1)
	equal(t, "page", r.view.Page(), "Kettle")
	r.says(t, "Spinach for show")
	r.session.Select(3)
	equal(t, "page of pumpkin, which sees no kettle", r.view.Page(), "Treatment")
	r.says(t, "Pumpkin", "Cook until")
}

// A closed view stays as it was.
func TestClose(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	before := r.said()
	r.view.Close()
	r.session.Select(1)
	equal(t, "closed view", r.said(), before)
}

// While a trial is on view every page is marked as one, and shows the trial.
func TestTrial(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	marked := func(want bool) {
		t.Helper()
		r.eachPage(func(page string) {
			equal(t, page+" says that it is a trial", strings.Contains(r.said(), "Trial: Two pounds"), want)
			equal(t, page+" says what that means", strings.Contains(r.said(), "nothing here changes the class"), want)
			equal(t, page+" has a frame", r.view.sheet.edge.Visible() && r.view.sheet.ground.Position().X > 5, want)
		})
	}
	marked(false)
	r.try(t)
	marked(true)
	r.turnTo(t, "Kettle")
	r.says(t, "4 lb in", "2 loads")
	r.turnTo(t, "Trial")
	r.says(t, "What was changed", "Station kettle Big kettle", "What follows", "3 loads 2 loads", "≈ 2 min 5 s")
	must(t, r.session.ChangeView("less", func(c *class.Class) { c.Batches[0].Prepared = measure.New(2, measure.Pound) }))
	equal(t, "page", r.view.Page(), "Trial")
	r.says(t, "3 loads 1 load")
	r.session.ReturnToPlan()
	equal(t, "page of the plan", r.view.Page(), "Treatment")
	marked(false)
	r.turnTo(t, "Kettle")
	r.says(t, "3 lb in")
	must(t, r.session.StartTrial("Nothing yet"))
	r.turnTo(t, "Trial")
	r.says(t, "Nothing differs from the plan.")
}

// What finds no room in the table of a trial is counted.
func TestTrialCountsTheRest(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.try(t)
	r.turnTo(t, "Trial")
	shown := 0
	for _, l := range r.view.open.(*beside).table.lines {
		if l.trial.text.Visible() {
			shown++
		}
	}
	if shown < 6 || shown >= len(r.session.Compare()) {
		t.Fatalf("%d of %d differences are shown", shown, len(r.session.Compare()))
	}
	r.says(t, "and "+measure.Plain(float64(len(r.session.Compare())-shown))+" more")
}

// TestMinutesStandWithStartAndSource asks it of every treatment of the table.
func TestMinutesStandWithStartAndSource(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	for _, treatment := range r.session.Table().Treatments {
		must(t, r.session.Change("treatment", func(c *class.Class) { c.Batches[0].Treatment = treatment.ID }))
		b, _ := r.session.ViewedBatch()
		source, _ := r.session.Table().Source(treatment.Source)
		said := plainly(r.said())
		for what, text := range map[string]string{
			"crop": b.Crop.Name, "cut": treatment.Cut, "minutes or words": b.Minutes.Text, "start of the clock": b.Clock.Text, "chill": b.Chill.Text,
			"title": source.Title, "edition": source.Edition, "water": treatment.BlanchWater, "end": treatment.Words, "caution": "not ready to eat",
		} {
			if !strings.Contains(said, plainly(text)) {
				t.Errorf("%s: the %s “%s” is not said: %s", treatment.ID, what, text, said)
			}
		}
		if treatment.Standing != reference.Read && !strings.Contains(said, plainly(string(treatment.Standing))) {
			t.Errorf("%s: is not said to be %s", treatment.ID, treatment.Standing)
		}
	}
}

// plainly is a text without what the breaking of lines and the cut between a
// number and its unit do to it.
func plainly(text string) string { return strings.ToLower(strings.Join(strings.Fields(text), "")) }

// Every estimate on view says that it is one, and nothing else does.
func TestEstimatesSayThatTheyAre(t *testing.T) {
	c := demo(t)
	c.Batches[1].Pack.Count = 0 // packs are then an estimate too
	r := open(t, look.Light, c, 1024, 768)
	seen := 0
	for i := range c.Batches {
		r.session.Select(i)
		b, _ := r.session.ViewedBatch()
		figures := map[string]measure.Figure{}
		for _, f := range append(b.Figures(), b.Estimates.Figures()...) {
			figures[f.Label] = f
		}
		r.eachPage(func(page string) {
			for _, f := range figuresOf(r.view.open) {
				is, known := figures[f.label.text.Text()]
				value := f.number.value.text.Text()
				if !known || !f.label.text.Visible() || value == "" {
					continue
				}
				seen++
				estimate := is.Basis == measure.Estimate
				equal(t, page+": sign of "+is.Label, strings.HasPrefix(value, "≈"), estimate)
				if said := f.basis.text.Text() == "estimate" || f.saidOver; said != estimate {
					t.Errorf("%s: %s says that it is an estimate: %t", page, is.Label, said)
				}
			}
			if slices.Contains([]string{"Kettle", "Curve"}, page) && !strings.Contains(strings.ToLower(r.said()), "estimate") {
				t.Errorf("page %s does not say that it estimates", page)
			}
		})
	}
	if seen < 20 {
		t.Errorf("only %d figures were seen", seen)
	}
}

func figuresOf(p page) []*figure {
	switch p := p.(type) {
	case *treatment:
		return []*figure{p.minutes, p.clock, p.chill}
	case *kettle:
		return []*figure{p.loads, p.weight, p.water, p.first, p.second}
	case *iceBath:
		return []*figure{p.chill, p.byRule, p.byBalance}
	case *freezer:
		return []*figure{p.space, p.packs, p.day, p.through}
	}
	return nil
}

// A value that was changed here is marked.
func TestEditedIsMarked(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	e := r.session.Shipped().NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4", "our bulletin", "A. Lead", time.Date(2027, 6, 1, 9, 0, 0, 0, time.UTC))
	must(t, r.session.ApplyEdit(e))
	r.says(t, "Water blanch edited 4 min", "As published: 3 min")
	must(t, r.session.TakeBack("snap-beans-cut-water", reference.FieldMinutes))
	if strings.Contains(r.said(), "edited") {
		t.Error("the shipped value is marked as edited")
	}
}

// The view is a pure one: nothing in it takes the focus, a click or the wheel,
// and it asks for no more room than the least window has.
func TestPureView(t *testing.T) {
	c := odd(t)
	r := open(t, look.Light, c, 800, 600)
	must(t, r.session.StartTrial(long))
	seen := 0
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		seen++
		_, focus := o.(fyne.Focusable)
		_, tap := o.(fyne.Tappable)
		_, scroll := o.(fyne.Scrollable)
		if focus || tap || scroll {
			t.Errorf("%T is not only looked at", o)
		}
		switch x := o.(type) {
		case *fyne.Container:
			for _, one := range x.Objects {
				walk(one)
			}
		case fyne.Widget:
			for _, one := range test.WidgetRenderer(x).Objects() {
				walk(one)
			}
		}
	}
	r.eachPage(func(page string) {
		walk(r.view.Content)
		if least := r.view.Content.MinSize(); least.Width > 800 || least.Height > 600 {
			t.Errorf("page %s needs %v", page, least)
		}
	})
	if seen < 100 {
		t.Errorf("only %d objects were seen", seen)
	}
}

// The view is as large as its window: twice the window, twice the size of every
// text.
func TestGrowsWithTheWindow(t *testing.T) {
	r := open(t, look.Light, demo(t), 800, 600)
	r.eachPage(func(page string) {
		small, _ := lettersOf(r.view.Content)
		looktest.Settle(r.window, 1600, 1200)
		large, _ := lettersOf(r.view.Content)
		if len(small) != len(large) {
			t.Fatalf("page %s: %d texts, %d twice as large", page, len(small), len(large))
		}
		for i := range small {
			if ratio := large[i].pt / small[i].pt; ratio < 1.85 || ratio > 2.15 {
				t.Errorf("page %s: “%s” grows by %.2f", page, small[i].text, ratio)
			}
		}
		looktest.Settle(r.window, 800, 600)
	})
}

// The minutes are the largest by far, and results are larger than the window's.
func TestResultsAreLarge(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	if pt := r.view.open.(*treatment).minutes.number.value.pt(); pt < 200 {
		t.Errorf("the minutes are set in %.0f", pt)
	}
	for i := range demo(t).Batches {
		r.session.Select(i)
		r.eachPage(func(page string) {
			for _, f := range figuresOf(r.view.open) {
				if v := f.number.value; v.text.Visible() && v.pt() < 44 {
					t.Errorf("page %s: “%s” is set in %.0f", page, v.text.Text(), v.pt())
				}
			}
		})
	}
}

// The view takes on another look at once.
func TestTakesOnTheLook(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.try(t)
	for _, v := range []look.Variant{look.Dark, look.HighContrast, look.Light} {
		fyne.CurrentApp().Settings().SetTheme(look.New(v))
		r.view.Content.Refresh()
		equal(t, "ground", r.view.sheet.ground.FillColor, look.Color(look.Paper))
		equal(t, "frame", r.view.sheet.edge.FillColor, look.Color(look.Edited))
	}
	fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
	r.view.Content.Refresh()
	looktest.Settle(r.window, 1024, 768)
	r.eachPage(func(page string) { r.stands(t, "large print "+page) })
}
