package questions

import (
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// What is open for another view is what the area shows.
func TestOpenIsWhatTheAreaShows(t *testing.T) {
	r := openDemo(t)
	if open, ok := Open(r.session); ok {
		t.Errorf("at first %q is open", open.Asks)
	}
	for _, q := range content.Questions(words.English) {
		r.area.Open(q.ID)
		open, ok := Open(r.session)
		asks, says, here := r.area.Answer()
		source, rests := r.area.Sources()
		equal(t, q.ID+": one is open", ok, true)
		equal(t, q.ID, open, Answered{
			Asks: asks, Says: says, Source: source, Here: here, Rests: rests, Whose: open.Whose, Caution: open.Caution,
		})
		equal(t, q.ID+": its numbers are somebody's", open.Whose != "", here != "")
		has(t, "window", r.shows(), asks, here, open.Whose, open.Caution)
	}
	r.area.Open("no such question")
	equal(t, "open question", r.asked(), content.Questions(words.English)[len(content.Questions(words.English))-1].ID)
}

// Its numbers are those of the trial where one is on view, and it says so.
func TestOpenInATrial(t *testing.T) {
	r := openDemo(t)
	r.area.Open("ice-how-much")
	plan, _ := Open(r.session)
	must(t, r.session.StartTrial("More"))
	r.change(t, func(c *class.Class) { c.Batches[0].Prepared = measure.New(7, measure.Pound) })
	trial, _ := Open(r.session)
	equal(t, "plan is a trial", plan.Tried, false)
	equal(t, "trial is a trial", trial.Tried, true)
	has(t, "whose", trial.Whose, "in the trial “More”")
	has(t, "here", trial.Here, "7 lb")
	lacks(t, "here of the plan", plan.Here, "7 lb")
}

// An area that is made anew, as in another language, has the same question open.
func TestANewAreaKeepsTheQuestion(t *testing.T) {
	r := openDemo(t)
	r.area.Open("lid")
	asks, _, _ := New(r.session).Answer()
	before, _, _ := r.area.Answer()
	equal(t, "question", asks, before)
}
