package batch

import (
	"maps"
	"slices"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Work computes everything about one batch by the rules of method. It is pure:
// the same job and table give the same result.
func Work(job Job, table *reference.Table) Worked {
	w := worker{Job: job, table: table, kitchen: kitchenOf(job.Units, job.Voice)}
	w.entered()
	w.boilingWater()
	w.minutes()
	w.boils()
	w.chill()
	w.iceEntered()
	w.pack()
	w.buy()
	w.freezer()
	w.storage()
	w.estimates()
	w.provenance()
	return w.out
}

// worker carries one batch through its steps.
type worker struct {
	Job
	kitchen
	table       *reference.Table
	headspaceIn float64 // of the table
	loadWaterL  float64 // in the kettle for one load, by the rule
	out         Worked
}

func (w *worker) find(severity measure.Severity, id, source, says, do string) {
	w.out.Findings = append(w.out.Findings, measure.Finding{ID: id, Severity: severity, Says: says, Do: do, Source: source})
}

// by lets a figure rest on a rule of method.
func by(rule reference.Rule, f measure.Figure) measure.Figure {
	f.Basis, f.Source, f.Standing = measure.Ruled, rule.Source, string(rule.Standing)
	return f
}

// from lets a figure rest on a value of the table, or on the educator where
// that value was entered here.
func from(source string, standing reference.Standing, f measure.Figure) measure.Figure {
	f.Basis, f.Source, f.Standing = measure.Tabled, source, string(standing)
	if source == reference.EnteredHereSource {
		f.Basis = measure.Entered
	}
	return f
}

// inWords is a figure that has no number.
func inWords(id, label, text, working string) measure.Figure {
	return measure.Figure{ID: id, Label: label, Words: text, Text: text, Working: working}
}

func (w *worker) entered() {
	if !w.Prepared.Given() {
		f := inWords("prepared", w.Say("Prepared weight"), w.Say("not entered"), w.Say("no weight entered"))
		f.Basis, f.Source, f.Unit = measure.Entered, "entered", w.massUnit().Symbol
		w.out.Prepared = f
		w.find(measure.Stop, "no-weight", "", w.Say("No prepared weight is entered for this batch."), w.Say("Enter what one station weighs after trimming, such as 3 lb."))
		return
	}
	amount, text := w.mass(w.Prepared.SI())
	if w.Prepared.Unit() == w.massUnit() {
		text = w.Prepared.String() // to the last digit that was typed
	}
	_, other := kitchen{!w.metric, w.kitchen.Voice}.mass(w.Prepared.SI())
	w.out.Prepared = measure.Figure{
		ID: "prepared", Label: w.Say("Prepared weight"), Value: amount, High: amount, Unit: w.massUnit().Symbol,
		Text: text, Also: other, Working: w.Say("as entered: %s, trimmed and ready for the kettle", w.Prepared),
		Basis: measure.Entered, Source: "entered",
	}
}

// weighed says whether there is a weight to work with; without one the
// figures that need it say so in words.
func (w *worker) weighed() bool { return w.Prepared.SI() > 0 }

func (w *worker) noWeight(id, label string) measure.Figure {
	f := inWords(id, label, w.Say("enter a weight"), w.Say("no prepared weight entered"))
	f.Basis, f.Source = measure.Entered, "entered"
	return f
}

// provenance says what the minutes rest on where a person should know.
func (w *worker) provenance() {
	t := w.Treatment
	if t.Standing == reference.FromMemory {
		w.find(measure.Mind, "from-memory", t.Source, w.Say("This treatment was entered from memory; the page was not read for this table."),
			w.Say("Check it against your agency's current table before class."))
	}
	for _, field := range slices.Sorted(maps.Keys(t.Changed)) {
		edit := t.Changed[field]
		severity, do := measure.Note, w.Say("Reason given: %s", sentence(edit.Why))
		if field == reference.FieldMinutes || field == reference.FieldWords {
			severity = measure.Mind
			if len(t.ShorterThanShipped) > 0 && field == reference.FieldMinutes {
				do = w.Say("Shorter than shipped; printed by %s. Reason given: %s", w.list(t.ShorterThanShipped), sentence(edit.Why))
			}
		}
		w.find(severity, "changed-here-"+field, "", w.Say("Changed here: %s now “%s”, shipped “%s”.", w.Say(fieldNames[field]), w.orNone(edit.New), w.orNone(edit.Old)), do)
	}
	if t.Note != "" {
		w.find(measure.Note, "treatment-note", "", t.Note, "")
	}
}

// fieldNames are the names of the fields that can be changed.
var fieldNames = map[string]string{
	reference.FieldMinutes: words.Key("minutes"), reference.FieldWords: words.Key("words"),
	reference.FieldChillFactor: words.Key("chill factor"), reference.FieldChillWords: words.Key("chill words"),
	reference.FieldHeadspace: words.Key("headspace"), reference.FieldWater: words.Key("water"),
	reference.FieldBlanchWater: words.Key("blanch water"), reference.FieldNote: words.Key("note"), reference.FieldStorage: words.Key("storage"),
}

// list is "A", "A and B", "A, B and C".
func (k kitchen) list(names []string) string {
	last := len(names) - 1
	if last < 1 {
		return strings.Join(names, "")
	}
	return k.Say("%s and %s", strings.Join(names[:last], ", "), names[last])
}

// sentence ends with one full stop.
func sentence(s string) string {
	if s == "" || slices.Contains([]byte(".!?"), s[len(s)-1]) {
		return s
	}
	return s + "."
}

func (k kitchen) orNone(s string) string {
	if s == "" {
		return k.Say("nothing")
	}
	return s
}
