package questions

import (
	"strings"
	"testing"
	"time"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

func TestHereFollowsTheBatch(t *testing.T) {
	r := openDemo(t)
	r.area.Open("clock-start")
	for i, want := range []string{
		"This batch: 3 min; the clock starts when the water boils again.",
		"This batch: 2 min; the clock starts when the water boils again.",
		"This batch: 5 min; the clock starts at once, when the lid goes on.",
		"", // pumpkin is cooked by words
	} {
		r.session.Select(i)
		equal(t, "sentence", r.here(), want)
		equal(t, "open question", r.asked(), "clock-start")
		b, _ := r.session.ViewedBatch()
		if want == "" {
			equal(t, "block", r.area.answer.here.box.Visible(), false)
			continue
		}
		has(t, "window", r.shows(), "For “"+b.Batch.Name+"”")
		equal(t, "block", r.area.answer.here.box.Visible(), true)
		equal(t, "sentence on view", r.area.answer.here.says.said, want)
	}
}

// TestHereOnlyWhereItConcerns asks that numbers of another crop, method or
// container do not stand under an answer.
func TestHereOnlyWhereItConcerns(t *testing.T) {
	r := openDemo(t)
	for id, batches := range map[string]string{
		"corn-cob": "", "beans-many-times": "0", "steam-minutes": "2", "greens": "1",
		"water-how-much": "01", "headspace-none": "2", "jars": "", "headspace": "0123",
		"freezer-load": "0123", "why-blanch": "12", "how-much-to-buy": "0", "lid": "",
	} {
		r.area.Open(id)
		said := ""
		for i := range r.session.Class().Batches {
			r.session.Select(i)
			if r.here() != "" {
				said += string(rune('0' + i))
			}
		}
		equal(t, "batches of "+id, said, batches)
	}
	r.session.Select(0)
	r.area.Open("jars")
	r.change(t, func(c *class.Class) { c.Batches[0].Pack.Container = batch.Jar })
	equal(t, "sentence for a jar", r.here(), "Headspace of this batch: ½ in.")
}

func TestHereFollowsTheUnits(t *testing.T) {
	r := openDemo(t)
	r.area.Open("water-how-much")
	has(t, "window", r.shows(), "1 gallon per pound", "3 gal in all")
	r.change(t, func(c *class.Class) { c.Units = measure.Metric })
	has(t, "window", r.shows(), "8.35 L per kg", "11.4 L in all")
	lacks(t, "window", r.shows(), "gallon", "gal in all")
	r.session.Undo()
	has(t, "window", r.shows(), "1 gallon per pound", "3 gal in all")
}

func TestHereFollowsTheTable(t *testing.T) {
	r := openDemo(t)
	r.area.Open("clock-start")
	e := r.session.Shipped().NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4", "our bulletin", "A. Lead", time.Date(2027, 6, 1, 9, 0, 0, 0, time.UTC))
	must(t, r.session.ApplyEdit(e))
	has(t, "window", r.shows(), "This batch: 4 min;", "Figures from: Entered here")
	must(t, r.session.TakeBack(e.Treatment, e.Field))
	has(t, "window", r.shows(), "This batch: 3 min;")
	lacks(t, "window", r.shows(), "Entered here")
}

func TestHereFollowsTheTrial(t *testing.T) {
	r := openDemo(t)
	r.area.Open("all-at-once")
	must(t, r.session.StartTrial("Six pounds"))
	r.change(t, func(c *class.Class) { c.Batches[0].Prepared = measure.New(6, measure.Pound) })
	equal(t, "sentence of the trial", r.here(), "This batch: 6 loads, 1 lb a load.")
	has(t, "window", r.shows(), "For “Beans at every station” in the trial “Six pounds”")
	r.session.ReturnToPlan()
	equal(t, "sentence of the plan", r.here(), "This batch: 3 loads, 1 lb a load.")
	lacks(t, "window", r.shows(), "trial")
	r.session.ViewTrial(0)
	r.session.DropTrial(0)
	lacks(t, "window", r.shows(), "trial")
}

func TestBatchWithoutAName(t *testing.T) {
	r := openDemo(t)
	r.area.Open("all-at-once")
	r.change(t, func(c *class.Class) { c.Batches[0].Name = "" })
	has(t, "window", r.shows(), "For “Snap beans, green or wax”")
}

// TestMinutesNeverStandAlone asks of every question and every treatment of the
// table that minutes stand with their clock, their source, the words that belong
// to them, and the caution of the method.
func TestMinutesNeverStandAlone(t *testing.T) {
	r := openDemo(t)
	timed := 0
	for _, treatment := range r.session.Table().Treatments {
		must(t, r.session.Change("treatment", func(c *class.Class) {
			c.Batches = c.Batches[:1]
			c.Batches[0].Treatment = treatment.ID
		}))
		b, _ := r.session.ViewedBatch()
		now := shownOf(r.session)
		for _, q := range content.Questions(words.English) {
			h := now.here(q)
			if h.says == "" || !strings.Contains(q.SaysHere, "{figure:minutes}") {
				continue
			}
			timed++
			has(t, treatment.ID+", "+q.ID, h.says, b.Minutes.Text, b.Clock.Text, treatment.Words)
			has(t, treatment.ID+", "+q.ID, h.rests, r.session.SourceOf(treatment), r.session.SourceName(b.Clock.Source))
			has(t, treatment.ID+", "+q.ID, h.caution, "Not ready to eat")
			if b.Minutes.InWords() {
				t.Errorf("%s, %s: words are said as minutes: %s", treatment.ID, q.ID, h.says)
			}
		}
	}
	if timed < 300 {
		t.Errorf("minutes were said %d times only", timed)
	}
}

func TestTimesOfChillAndEstimatesHaveTheirSource(t *testing.T) {
	r := openDemo(t)
	for id, source := range map[string]string{
		"chill-how-long":  "Figures from: ",
		"boil-again-slow": "Heat model of this program",
		"freezing-time":   "Heat model of this program",
	} {
		r.area.Open(id)
		_, rests := r.area.Sources()
		has(t, id, rests, source)
		has(t, "window", r.shows(), source)
	}
	r.area.Open("ice-how-much") // its figure has the source of the answer, which stands below
	_, rests := r.area.Sources()
	equal(t, "sources of the figure", rests, "")
}

func TestSourceSaysHowSureItIs(t *testing.T) {
	r := openDemo(t)
	for id, want := range map[string]string{
		"lid":          "Source: University of Georgia / National Center for Home Food Preservation, How do I? Freeze: Blanching (general rules), SETP text; page refs 229-230",
		"ice-how-much": "Source: University of Georgia Extension, So Easy to Preserve, general freezing chapter, 5th ed. 2006 / 6th ed. 2014 · from memory",
		"outlets":      "No publication behind it: common practice",
		"longer-time":  "Source: Adam & Horner, Vitamin C left after 1, 3 and 6 minutes",
		"planned-cut":  "No publication behind it: common practice",
		"chewy":        "· common practice",
		"why-blanch":   "No publication behind it: from memory",
	} {
		r.area.Open(id)
		source, _ := r.area.Sources()
		has(t, "source of "+id, source, want)
		has(t, "window", r.shows(), source[:20])
	}
}

func TestAnswerBeforeAQuestion(t *testing.T) {
	r := openDemo(t)
	question, answer, here := r.area.Answer()
	source, rests := r.area.Sources()
	equal(t, "what is read", question+answer+here+source+rests, "")
	has(t, "window", r.shows(), "What would the room like to know?", "the numbers of “Beans at every station”")
	r.area.Open("lid")
	lacks(t, "window", r.shows(), "What would the room like to know?")
}

func TestDeference(t *testing.T) {
	r := openDemo(t)
	has(t, "window", r.shows(), "Your agency’s advice stands above this: Your own extension office", "Help line: The number of your own")
	r.change(t, func(c *class.Class) { c.People.Agency = "" })
	lacks(t, "window", r.shows(), "agency’s advice")
	has(t, "window", r.shows(), "Help line:")
	r.change(t, func(c *class.Class) { c.People.HelpLine = "" })
	lacks(t, "window", r.shows(), "Help line:")
	equal(t, "line", r.area.answer.deference.Visible(), false)
}
