package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// The record leads to every other treatment of the crop, with minutes that keep
// their start, also where the filters hide it.
func TestJumpBetweenTreatments(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	table := r.session.Table()
	for _, x := range table.Treatments {
		r.crops.choose(x.ID)
		links := linksIn(r.crops.record.parts)
		for _, other := range table.Treatments {
			if other.Crop != x.Crop || other.ID == x.ID {
				continue
			}
			at := slices.IndexFunc(links, func(l *link) bool { return l.text.Text() == treatmentWords(other) })
			if at < 0 {
				t.Fatalf("%s does not lead to %s", x.ID, other.ID)
			}
			if other.Minutes > 0 && !strings.Contains(links[at].detail.Text(), other.ClockStart.Says()) {
				t.Errorf("%s: minutes travel alone: %q", other.ID, links[at].detail.Text())
			}
		}
	}
	r.crops.choose("broccoli-flowerets-water")
	r.crops.method.SetSelected("Water blanch")
	for _, l := range linksIn(r.crops.record.parts) {
		if strings.Contains(l.text.Text(), "team") && l.open != nil {
			r.window.Canvas().Focus(l)
			r.press(fyne.KeyReturn)
			break
		}
	}
	equal(t, "record", r.crops.record.shown, "broccoli-flowerets-steam")
	equal(t, "row on view", r.crops.grid.chosen, "broccoli-flowerets-steam")
	if r.crops.grid.at() < 0 {
		t.Error("the row is hidden")
	}
}

// The record lists what people ask about the crop, and each question opens.
func TestQuestionsOfTheCrop(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	var asked []string
	r.crops.OpenQuestion = func(id string) { asked = append(asked, id) }
	for _, q := range content.Questions(look.Voice().Language()) {
		for _, crop := range q.Crops {
			at := slices.IndexFunc(r.session.Table().Treatments, func(x reference.Treatment) bool { return x.Crop == crop })
			if at < 0 {
				continue
			}
			r.crops.choose(r.session.Table().Treatments[at].ID)
			i := slices.IndexFunc(linksIn(r.crops.record.parts), func(l *link) bool { return l.text.Text() == q.Asks })
			if i < 0 {
				t.Fatalf("%s: nobody asks %q", crop, q.Asks)
			}
			test.Tap(linksIn(r.crops.record.parts)[i])
			equal(t, "opened", asked[len(asked)-1], q.ID)
		}
	}
	if len(asked) < 20 {
		t.Errorf("%d questions were opened", len(asked))
	}
	for _, x := range r.session.Table().Treatments {
		for _, q := range concerning(x) {
			if !q.Concerns(string(x.Method), "", x.Crop) && !slices.Contains(q.Crops, x.Crop) {
				t.Errorf("%s: %q is about something else", x.ID, q.Asks)
			}
		}
	}
}

// linksIn are the links in an object, from the top.
func linksIn(o fyne.CanvasObject) (all []*link) {
	switch x := o.(type) {
	case *link:
		all = append(all, x)
	case *fyne.Container:
		for _, one := range x.Objects {
			all = append(all, linksIn(one)...)
		}
	}
	return all
}
