package batch

import (
	"fmt"
	"maps"
	"slices"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Work computes everything about one batch by the rules of method. It is pure:
// the same job and table give the same result.
func Work(job Job, table *reference.Table) Worked {
	w := worker{Job: job, table: table, kitchen: kitchen{metric: job.Units == measure.Metric}}
	w.entered()
	w.boilingWater()
	w.minutes()
	w.boils()
	w.chill()
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
func inWords(id, label, words, working string) measure.Figure {
	return measure.Figure{ID: id, Label: label, Words: words, Text: words, Working: working}
}

func (w *worker) entered() {
	if !w.Prepared.Given() {
		f := inWords("prepared", "Prepared weight", "not entered", "no weight entered")
		f.Basis, f.Source, f.Unit = measure.Entered, "entered", w.massUnit().Symbol
		w.out.Prepared = f
		w.find(measure.Stop, "no-weight", "", "No prepared weight is entered for this batch.", "Enter what one station weighs after trimming, such as 3 lb.")
		return
	}
	amount, text := w.mass(w.Prepared.SI())
	if w.Prepared.Unit() == w.massUnit() {
		text = w.Prepared.String() // to the last digit that was typed
	}
	_, other := kitchen{metric: !w.metric}.mass(w.Prepared.SI())
	w.out.Prepared = measure.Figure{
		ID: "prepared", Label: "Prepared weight", Value: amount, High: amount, Unit: w.massUnit().Symbol,
		Text: text, Also: other, Working: "as entered: " + w.Prepared.String() + ", trimmed and ready for the kettle",
		Basis: measure.Entered, Source: "entered",
	}
}

// weighed says whether there is a weight to work with; without one the
// figures that need it say so in words.
func (w *worker) weighed() bool { return w.Prepared.SI() > 0 }

func (w *worker) noWeight(id, label string) measure.Figure {
	f := inWords(id, label, "enter a weight", "no prepared weight entered")
	f.Basis, f.Source = measure.Entered, "entered"
	return f
}

// provenance says what the minutes rest on where a person should know.
func (w *worker) provenance() {
	t := w.Treatment
	if t.Standing == reference.FromMemory {
		w.find(measure.Mind, "from-memory", t.Source, "This treatment was entered from memory; the page was not read for this table.",
			"Check it against your agency's current table before class.")
	}
	for _, field := range slices.Sorted(maps.Keys(t.Changed)) {
		edit := t.Changed[field]
		severity, do := measure.Note, "Reason given: "+edit.Why
		if field == reference.FieldMinutes || field == reference.FieldWords {
			severity = measure.Mind
			if len(t.ShorterThanShipped) > 0 && field == reference.FieldMinutes {
				do = "Shorter than shipped; printed by " + list(t.ShorterThanShipped) + ". " + do
			}
		}
		w.find(severity, "changed-here-"+field, "", fmt.Sprintf("Changed here: %s now “%s”, shipped “%s”.", field, orNone(edit.New), orNone(edit.Old)), sentence(do))
	}
	if t.Note != "" {
		w.find(measure.Note, "treatment-note", "", t.Note, "")
	}
}

func list(names []string) string {
	text := ""
	for i, name := range names {
		switch {
		case i > 0 && i == len(names)-1:
			text += " and "
		case i > 0:
			text += ", "
		}
		text += name
	}
	return text
}

// sentence ends with one full stop.
func sentence(s string) string {
	if s == "" || slices.Contains([]byte(".!?"), s[len(s)-1]) {
		return s
	}
	return s + "."
}

func orNone(s string) string {
	if s == "" {
		return "nothing"
	}
	return s
}
