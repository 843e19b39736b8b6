package projector

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	spoken "example.org/kettleside/content/words"
)

// The view turns to a question when it is opened, and only then; the page is
// there from then on, also without a batch.
func TestTurnsToAQuestion(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	equal(t, "pages without a question", len(r.view.Pages()), 5)
	r.view.TurnToQuestion()
	equal(t, "page without a question", r.view.Page(), "Treatment")
	r.session.Ask("ice-how-much")
	equal(t, "page", r.view.Page(), "Question")
	r.says(t, "How much ice do I need?", "For “Beans at every station”", "3 lb", "Source: ", "Question · 6 of 6")
	r.session.Select(1)
	equal(t, "page after another batch", r.view.Page(), "Question")
	r.says(t, "For “Spinach for show”")
	r.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	must(t, r.session.Change("less", func(c *class.Class) { c.Batches[1].Prepared = measure.New(2, measure.Pound) }))
	equal(t, "page after a change", r.view.Page(), "Treatment")
	r.session.Ask("ice-how-much")
	equal(t, "page of the same question", r.view.Page(), "Question")
	r.says(t, "2 lb")
	r.view.Previous()
	equal(t, "page before", r.view.Page(), "Pack and freezer")
	r.view.TurnToQuestion()
	equal(t, "page", r.view.Page(), "Question")
	r.session.Start(class.New("2027-06-12"), "")
	equal(t, "page of a class without batches", r.view.Page(), "Question")
	r.says(t, "How much ice do I need?")
}

// A view that is opened later begins with the batch, until it is told.
func TestAQuestionBeforeTheView(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.session.Ask("lid")
	v := New(r.session)
	t.Cleanup(v.Close)
	equal(t, "page", v.Page(), "Treatment")
	v.TurnToQuestion()
	equal(t, "page", v.Page(), "Question")
}

// The numbers are those of the trial on view, and minutes never stand without
// the caution and what they rest on.
func TestAQuestionInATrial(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.try(t)
	r.session.Ask("ice-how-much")
	r.says(t, "4 lb", "in the trial “Two pounds at a time in the big kettle”", "nothing here changes the class")
	r.session.Ask("clock-start")
	r.says(t, "Figures from: ", "Not ready to eat", "Source: ")
}

// Every question stands in its page in both languages, and its answer in 24
// points or more for a view 1024 wide.
func TestEveryQuestionStands(t *testing.T) {
	for _, l := range spoken.Languages() {
		for _, size := range sizes[:2] {
			t.Run(fmt.Sprintf("%s-%.0f", l, size.Width), func(t *testing.T) {
				r := openIn(t, l, demo(t), size)
				for i := range 2 {
					if i == 1 {
						must(t, r.session.StartTrial(long))
						must(t, r.session.ChangeView("name", func(c *class.Class) { c.Batches[0].Name, c.Units = long, measure.Metric }))
					}
					for _, q := range content.Questions(l) {
						r.session.Ask(q.ID)
						r.stands(t, q.ID)
						k := size.Width / normalWide
						if pt := r.view.asked.(*question).says.pt() / k; pt < 24 {
							t.Errorf("the answer to %s is set in %.1f", q.ID, pt)
						}
					}
				}
			})
		}
	}
}

func openIn(t *testing.T, l spoken.Language, c class.Class, size fyne.Size) *room {
	if l == spoken.Spanish {
		return openSpanish(t, c, size.Width, size.Height)
	}
	return open(t, look.Light, c, size.Width, size.Height)
}

func TestMarkupOfAQuestion(t *testing.T) {
	for l, golden := range map[spoken.Language]string{spoken.English: "question.xml", spoken.Spanish: "question-es.xml"} {
		t.Run(golden, func(t *testing.T) {
			r := openIn(t, l, demo(t), sizes[1])
			r.session.Ask("clock-start")
			looktest.Markup(t, r.window, golden)
		})
	}
}

// The ice that was entered stands in the bath and beside that of the rule.
func TestIceAtHand(t *testing.T) {
	r := open(t, look.Light, demo(t), 800, 600)
	r.turnTo(t, "Ice bath")
	p := r.view.open.(*iceBath)
	equal(t, "a figure of ice at hand where none was entered", p.atHand.number.value.text.Visible(), false)
	r.says(t, "3 lb ice")
	must(t, r.session.Change("ice", func(c *class.Class) { c.Batches[0].Ice = measure.New(7, measure.Pound) }))
	equal(t, "page", r.view.Page(), "Ice bath")
	r.says(t, "7 lb ice", "Ice at hand 7 lb", "Ice, by rule 3 lb")
	for _, l := range spoken.Languages() {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			for _, size := range sizes[:2] {
				c := demo(t)
				c.Units = units
				for i := range c.Batches {
					c.Batches[i].Ice = measure.New(12.75, measure.Pound)
				}
				r := openIn(t, l, c, size)
				r.standsOnEachPage(t, fmt.Sprintf("ice-%s-%.0f-%s", l, size.Width, units))
			}
		}
		look.Speak(nil)
	}
}

// The freezer is shared: what goes in is that of the whole class, of the plan or
// of the trial on view.
func TestTheFreezerHoldsTheWholeClass(t *testing.T) {
	r := open(t, look.Light, demo(t), 1024, 768)
	r.turnTo(t, "Pack and freezer")
	r.says(t, "The whole class, all stations", r.session.Worked().Totals.Prepared.Text+" today")
	r.try(t)
	r.turnTo(t, "Pack and freezer")
	trial := r.session.View().Totals
	if trial.Prepared.Text == r.session.Worked().Totals.Prepared.Text {
		t.Fatal("the trial prepares as much as the plan")
	}
	r.says(t, trial.Prepared.Text+" today")
	must(t, r.session.ChangeView("more", func(c *class.Class) { c.Batches[0].Prepared = measure.New(30, measure.Pound) }))
	r.says(t, "a day’s share", r.session.View().Totals.FreezerDays.Text)
}
