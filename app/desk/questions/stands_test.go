package questions

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// TestMarkup compares two states with their golden markup, in each language: a
// question with minutes, and nothing found while another stays open.
func TestMarkup(t *testing.T) {
	for _, one := range []struct {
		language    words.Language
		asks, names string
	}{{words.English, "clock", ""}, {words.Spanish, "reloj", "-es"}} {
		speak(t, one.language)
		r := open(t, look.Light, demo(t), 925, 600)
		r.area.Open("clock-start")
		r.ask(one.asks)
		r.settle()
		looktest.Markup(t, r.window, "clock"+one.names+".xml")
		r.session.Select(2)
		r.area.Open("headspace-none")
		r.ask("zzzzq")
		r.settle()
		looktest.Markup(t, r.window, "nothing"+one.names+".xml")
	}
}

var sizes = []fyne.Size{{Width: areaWide, Height: areaHigh}, {Width: 925, Height: 600}, {Width: 1181, Height: 640}, {Width: 1600, Height: 900}}

// TestTextStands asks that no text stands out of its place, on each ground, in
// windows of several sizes and in large type, and draws them for a person to
// look at.
func TestTextStands(t *testing.T) {
	for _, variant := range []look.Variant{look.Light, look.Dark, look.HighContrast} {
		for _, size := range sizes {
			for _, scale := range []float32{1, 1.5} {
				r := open(t, variant, demo(t), size.Width, size.Height)
				r.enlarge(variant, scale)
				r.eachState(t, fmt.Sprintf("questions-%s-%.0f-%g", strings.ReplaceAll(string(variant), " ", "-"), size.Width, scale))
			}
		}
	}
}

func (r *room) enlarge(v look.Variant, scale float32) {
	fyne.CurrentApp().Settings().SetTheme(look.NewScaled(v, scale))
	r.window.Content().Refresh()
	r.settle()
}

func (r *room) eachState(t *testing.T, name string) {
	stands := func(state string) {
		if os.Getenv(looktest.Pictures) != "" { // painting takes longer than all the rest
			looktest.Picture(t, r.window, name+"-"+state)
		}
		if n := textfits.Check(t, r.window); n < 8 || t.Failed() {
			t.Fatalf("%s-%s: %d texts", name, state, n)
		}
	}
	stands("none")
	for _, id := range []string{"clock-start", "beans-many-times", "ice-estimate", "freezer-load", "jars"} {
		r.area.Open(id)
		stands(id)
	}
	r.ask("how much ice")
	r.press(fyne.KeyReturn)
	r.press(fyne.KeyDown)
	stands("typed")
	must(t, r.session.StartTrial(""))
	stands("trial")
	r.ask("zzzzq")
	stands("nothing")
}

// TestEveryAnswerStands opens every question in each language for every batch in
// the least window.
func TestEveryAnswerStands(t *testing.T) {
	c := demo(t)
	c.Units = measure.Metric
	r := open(t, look.Light, c, areaWide, areaHigh)
	for _, l := range words.Languages() {
		r.session.Speak(words.In(l))
		for i := range c.Batches {
			r.session.Select(i)
			for _, q := range content.Questions(l) {
				r.area.Open(q.ID)
				if textfits.Check(t, r.window); t.Failed() {
					t.Fatalf("%s in %s for batch %d", q.ID, l, i+1)
				}
			}
		}
	}
}

// TestStandsAtOnce asks that what changes is laid out by itself, without the
// window being laid out again.
func TestStandsAtOnce(t *testing.T) {
	r := open(t, look.Light, demo(t), 925, 600)
	for i, do := range []func(){
		func() { r.area.Open("clock-start") },
		func() { r.session.Select(2) },
		func() { r.change(t, func(c *class.Class) { c.Units = measure.Metric }) },
		func() { r.session.Select(3) },
		func() { r.session.Select(0) },
		func() { r.ask("jars") },
		func() { r.press(fyne.KeyReturn) },
		func() { r.ask("zzzzq") },
		func() { r.press(fyne.KeyEscape) },
	} {
		do()
		at := test.RenderToMarkup(r.window.Canvas())
		r.settle()
		if at != test.RenderToMarkup(r.window.Canvas()) {
			t.Errorf("step %d: the area stands otherwise after it is laid out again", i+1)
		}
	}
}

// TestAnswersAreLarge asks that the answer is never set smaller than a heading,
// and larger where the room allows, but the largest only in a wide window.
func TestAnswersAreLarge(t *testing.T) {
	for i, want := range []fyne.ThemeSizeName{look.SizeHeading, look.SizeFigure, look.SizeFigure, look.SizeLarge} {
		r := open(t, look.Light, demo(t), sizes[i].Width, sizes[i].Height)
		r.area.Open("clock-start")
		for _, text := range []*stepped{r.area.answer.says, r.area.answer.here.says} {
			equal(t, fmt.Sprintf("size in %v", sizes[i]), text.sizes[text.at], want)
		}
		r.area.Open("find-altitude") // the shortest
		equal(t, fmt.Sprintf("size of a short answer in %v", sizes[i]), r.area.answer.says.at, min(1, 3-i))
	}
}

func TestFitsTheLeastWindow(t *testing.T) {
	for _, language := range words.Languages() {
		speak(t, language)
		for _, scale := range []float32{1, 1.5} {
			r := open(t, look.Light, demo(t), areaWide, areaHigh)
			r.enlarge(look.Light, scale)
			r.area.Open("clock-start")
			if least := r.area.Content.MinSize(); least.Width > 700 || least.Height > 480 {
				t.Errorf("%s: the area needs %v in type %g", language, least, scale)
			}
		}
	}
}

// TestLongWords asks that texts as long as they may be stand in their place.
func TestLongWords(t *testing.T) {
	c := demo(t)
	c.People.Agency, c.People.HelpLine = strings.Repeat("W", 200), strings.Repeat("m", 200)
	c.Batches[0].Name = strings.Repeat("M", 200)
	r := open(t, look.Light, c, areaWide, areaHigh)
	r.area.Open("clock-start")
	textfits.Check(t, r.window)
	r.area.search.SetText(strings.Repeat("W", 500))
	textfits.Check(t, r.window)
	if least := r.area.Content.MinSize(); least.Width > 700 {
		t.Errorf("the area needs %v", least)
	}
}
