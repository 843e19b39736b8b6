package app

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/projector"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// screen is one thing that the program shows: an area of the window with
// something open in it, or a page of the projector view.
type screen struct {
	name string
	open func(t *testing.T, d *desk)
}

func (s screen) projected() bool { return strings.HasPrefix(s.name, "projector-") }

// screens are all of them; the class is the demo's.
var screens = []screen{
	{"crops", func(_ *testing.T, d *desk) { d.open("crops") }}, // with its first record open
	{"class", classPage("class")},
	{"class-place", classPage("place")},
	{"class-people", classPage("people")},
	{"class-kit", classPage("kit")},
	{"class-batch", classPage("batch")},
	{"batch", func(_ *testing.T, d *desk) { d.open("batch") }},
	{"batch-trial", tryOnACopy},
	{"handouts", func(_ *testing.T, d *desk) { d.open("handouts") }},
	{"questions-answer", openQuestion},
	{"projector-treatment", projectorPage(0)},
	{"projector-kettle", projectorPage(1)},
	{"projector-curve", projectorPage(2)},
	{"projector-ice-bath", projectorPage(3)},
	{"projector-freezer", projectorPage(4)},
	{"projector-trial", projectorPage(5)},
	{"projector-question", projectorPage(6)},
}

func classPage(id string) func(*testing.T, *desk) {
	return func(_ *testing.T, d *desk) { d.openThen("class", func() { d.planning.OpenPage(id) }) }
}

// tryOnACopy starts a trial with more in the kettle and a stronger burner.
func tryOnACopy(t *testing.T, d *desk) {
	t.Helper()
	d.openThen("batch", func() { d.bench.Try() })
	prepared := measure.New(5, measure.Pound)
	if d.session.Class().Units == measure.Metric {
		prepared = measure.New(2.5, measure.Kilogram)
	}
	if err := d.session.ChangeView("Prepared", func(c *class.Class) {
		c.Batches[0].Prepared, c.Batches[0].Burner = prepared, c.Kit.Burners[1].Name
	}); err != nil {
		t.Fatal(err)
	}
}

// openQuestion opens the first question, by the keys that a person uses.
func openQuestion(t *testing.T, d *desk) {
	t.Helper()
	d.askQuestion()
	for _, key := range []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn} {
		d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
	}
	if asked, _, _ := d.questions.Answer(); asked == "" {
		t.Fatal("no question is open")
	}
}

// projectorPage opens a page of the projector view, beside a trial and with a
// question open.
func projectorPage(at int) func(*testing.T, *desk) {
	return func(t *testing.T, d *desk) {
		t.Helper()
		tryOnACopy(t, d)
		d.session.Ask("clock-start")
		d.openProjection()
		view := d.projection.view
		if pages := view.Pages(); len(pages) != 7 {
			t.Fatalf("the projector view of a trial has the pages %v", pages)
		}
		view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
		for range at {
			view.Next()
		}
	}
}

// dressing is how a screen is drawn: one column for each thing that changes its
// look.
type dressing struct {
	size    windowSize
	units   measure.System
	variant look.Variant
	scale   float32 // of the type
	said    words.Language
}

// windowSize is a size of the window and one of the projector's.
type windowSize struct{ window, projector fyne.Size }

var (
	small = windowSize{fyne.NewSize(1024, 700), fyne.NewSize(800, 600)}
	large = windowSize{fyne.NewSize(1280, 800), fyne.NewSize(1024, 768)}
)

// dressings are the combinations that every screen is drawn in. They are not
// all that there are: each value of a column stands in at least one row.
var dressings = []dressing{
	{small, measure.US, look.Light, 1, words.English},
	{large, measure.Metric, look.Dark, 1, words.English},
	{small, measure.Metric, look.HighContrast, 1, words.Spanish},
	{large, measure.US, look.Light, 1, words.Spanish},
}

func (s screen) size(x dressing) fyne.Size {
	if s.projected() {
		return x.size.projector
	}
	return x.size.window
}

// picture is the name of the picture of a screen:
// batch-trial-1024x700-metric-dark-en.
func (s screen) picture(x dressing) string {
	size := s.size(x)
	return fmt.Sprintf("%s-%.0fx%.0f-%s-%s-%s", s.name, size.Width, size.Height, x.units, strings.ReplaceAll(string(x.variant), " ", "-"), x.said)
}

// program is the whole program, drawn in one way.
func program(t testing.TB, x dressing) *desk {
	t.Helper()
	a := looktest.App(t, x.variant)
	folder := t.TempDir()
	settings := usualSettings()
	settings.Variant, settings.Scale, settings.Language, settings.Greeted = string(x.variant), x.scale, x.said, true
	if err := settings.write(folder); err != nil {
		t.Fatal(err)
	}
	d := newDesk(a, Options{Folder: folder, Version: "test"})
	t.Cleanup(d.window.Close)
	t.Cleanup(d.forgetRecovery)
	t.Cleanup(func() { look.Speak(nil) })
	d.window.Show()
	c := d.session.Class()
	c.Units = x.units
	d.session.Start(c, "")
	looktest.Settle(d.window, x.size.window.Width, x.size.window.Height)
	return d
}

// stage opens a screen in a program and returns the window that it is in.
func (s screen) stage(t *testing.T, d *desk, x dressing) fyne.Window {
	t.Helper()
	s.open(t, d)
	w := d.window
	if s.projected() {
		w = d.projection.window
	}
	size := s.size(x)
	looktest.Settle(w, size.Width, size.Height)
	return w
}

// menuHigh is what the menu bar takes of the height of a real window.
const menuHigh = 36

// Every screen fits its window, in both systems of units and languages: the smallest with type
// a step under the largest, and a larger one with the largest.
func TestEveryScreenFits(t *testing.T) {
	for _, x := range []dressing{
		{small, measure.US, look.Light, 1.3, words.English},
		{small, measure.Metric, look.Light, 1.3, words.Spanish},
		{large, measure.Metric, look.Light, 1.5, words.English},
		{large, measure.US, look.Light, 1.5, words.Spanish},
	} {
		d := program(t, x)
		for _, s := range screens {
			least, room := s.stage(t, d, x).Content().MinSize(), s.size(x)
			if !s.projected() {
				room.Height -= menuHigh
			}
			if least.Width > room.Width || least.Height > room.Height {
				t.Errorf("%s in %s, %s at %.1f needs %v of %v", s.name, x.units, x.said, x.scale, least, room)
			}
		}
	}
}

// A page that is added to the projector view is drawn too.
func TestEveryPageOfTheProjectorIsAScreen(t *testing.T) {
	d, _ := newTestDesk(t)
	tryOnACopy(t, d)
	d.session.Ask("clock-start")
	pages := projector.New(d.session).Pages()
	drawn := 0
	for _, s := range screens {
		if s.projected() {
			drawn++
		}
	}
	if drawn != len(pages) {
		t.Errorf("%d screens for the pages %v", drawn, pages)
	}
}

// So does the window of the first start, with its pointers over the areas. The
// real window first gives its content the least room that it asks for, and takes
// the height from what that leads to.
func TestTheFirstStartFits(t *testing.T) {
	d := newFrame(looktest.App(t, look.Light), Options{Folder: t.TempDir(), Version: "test"})
	t.Cleanup(d.window.Close)
	t.Cleanup(d.forgetRecovery)
	content, room := d.window.Content(), fyne.NewSize(usualWidth, usualHeight-menuHigh)
	content.Resize(content.MinSize())
	if least := content.MinSize(); least.Width > room.Width || least.Height > room.Height {
		t.Errorf("before an area is open it needs %v", least)
	}
	for _, a := range d.areas {
		d.open(a.id)
		looktest.Settle(d.window, room.Width, room.Height)
		if least := content.MinSize(); least.Width > room.Width || least.Height > room.Height {
			t.Errorf("%s needs %v", a.id, least)
		}
	}
}
