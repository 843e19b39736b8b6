package session

import (
	"slices"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
)

// Difference is one thing that differs between plan and trial.
type Difference struct {
	ID    string // that of the figure, or of what was entered: "kettle"
	Label string // "Loads"
	Plan  string // as the plan has it, in words: "3 loads", or “—” for no such figure
	Trial string // as the trial has it
	// By says how far the trial is from the plan: "+1", "−2 lb", "1 min 5 s
	// longer"; "" where no difference of numbers can be said.
	By      string
	Entered bool // it was changed, rather than that it follows from a change
}

// noFigure stands where only the other side has a figure.
const noFigure = "—"

// side is one of the two batches that are compared, with its class.
type side struct {
	class class.Class
	class.BatchWorked
}

// Compare lists what differs between the selected batch of the plan and that of
// the trial on view: first what was changed, then the figures that differ as
// printed, those of the rules before the estimates. It is nil where no trial is
// on view, or one of the two has no batch.
func (s *Session) Compare() []Difference {
	if s.viewed == nil {
		return nil
	}
	trial, ok := batchOf(s.viewed.worked, s.viewed.batch)
	if !ok {
		return nil
	}
	return s.compareWith(side{s.viewed.worked.Class, trial})
}

// compareWith compares the selected batch of the plan with a batch of the trial
// on view, as it is or as a change would make it.
func (s *Session) compareWith(trial side) []Difference {
	plan, ok := s.SelectedBatch()
	if s.viewed == nil || !ok {
		return nil
	}
	return s.compare(side{s.worked.Class, plan}, trial)
}

func (s *Session) compare(plan, trial side) []Difference {
	all := s.entered(plan, trial)
	changed := len(all)
	for _, pair := range append(
		paired(plan.Figures(), trial.Figures()),
		paired(plan.Estimates.Figures(), trial.Estimates.Figures())...) {
		d := s.difference(pair)
		said := slices.ContainsFunc(all[:changed], func(e Difference) bool { return e.ID == d.ID }) // the prepared weight is both
		if d.Plan != d.Trial && !said {
			all = append(all, d)
		}
	}
	return all
}

// pair is a figure of the plan and the same of the trial; one that is not there
// has no id.
type pair struct{ plan, trial measure.Figure }

// paired puts together the figures of two lists that are in the same order, in
// which either may lack some.
func paired(plan, trial []measure.Figure) []pair {
	var pairs []pair
	for _, p := range plan {
		at := slices.IndexFunc(trial, func(t measure.Figure) bool { return t.ID == p.ID })
		if at < 0 {
			pairs = append(pairs, pair{plan: p})
			continue
		}
		for _, only := range trial[:at] {
			pairs = append(pairs, pair{trial: only})
		}
		pairs = append(pairs, pair{p, trial[at]})
		trial = trial[at+1:]
	}
	for _, only := range trial {
		pairs = append(pairs, pair{trial: only})
	}
	return pairs
}

func (s *Session) difference(p pair) Difference {
	d := Difference{ID: p.plan.ID, Label: p.plan.Label, Plan: p.plan.Text, Trial: p.trial.Text}
	switch {
	case p.plan.ID == p.trial.ID:
		d.By = s.figureBy(p.plan, p.trial)
		if p.plan.InWords() && !p.trial.InWords() { // “Blanch” rather than “Treatment”
			d.Label = p.trial.Label
		}
	case p.plan.ID == "":
		d.ID, d.Label, d.Plan = p.trial.ID, p.trial.Label, noFigure
	default:
		d.Trial = noFigure
	}
	return d
}
