package session

import (
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// maxTrials is how many trials can be kept beside one class: more than anybody
// compares in an hour.
const maxTrials = 12

// Trial is a what-if on a copy of the class. It is read-only.
type Trial struct {
	Name   string
	Worked class.Worked // Worked.Class is the copy
	// Batch is the index of the batch that it is about; meaningless where the
	// copy has no batches.
	Batch int
}

// trial is a trial that is kept, with its own history.
type trial struct {
	name    string
	history *class.History
	worked  class.Worked
	batch   int
}

func (t *trial) shown() Trial { return Trial{Name: t.name, Worked: t.worked, Batch: t.batch} }

func (s *Session) reworkTrial(t *trial) {
	t.worked = s.work(t.history.Class())
	t.batch = inside(t.batch, t.worked)
}

// reworkAll works out plan and trials again, after a change of the crop table.
func (s *Session) reworkAll() {
	s.rework()
	for _, t := range s.trials {
		s.reworkTrial(t)
	}
}

// Trials are all trials in the order in which they were started.
func (s *Session) Trials() []Trial {
	all := make([]Trial, len(s.trials))
	for i, t := range s.trials {
		all[i] = t.shown()
	}
	return all
}

// Trying is the trial on view; false where the plan is.
func (s *Session) Trying() (Trial, bool) {
	if s.viewed == nil {
		return Trial{}, false
	}
	return s.viewed.shown(), true
}

// TryingIndex is the index of the trial on view in Trials; -1 where the plan is
// on view.
func (s *Session) TryingIndex() int { return slices.Index(s.trials, s.viewed) }

// StartTrial copies what is on view, which may be a trial itself, into a new
// trial and puts that on view. An empty name makes it “Trial 1” or the next that
// is free; the error says why a name cannot be used, or that there are too many
// trials.
func (s *Session) StartTrial(name string) error {
	if len(s.trials) >= maxTrials {
		return words.Errorf("there are %d trials already; drop one before you start another", maxTrials)
	}
	if strings.TrimSpace(name) == "" {
		name = s.freeName()
	}
	name, err := s.trialName(name, nil)
	if err != nil {
		return err
	}
	t := &trial{name: name, history: class.NewHistory(s.View().Class, true), worked: s.View(), batch: s.selected}
	if s.viewed != nil {
		t.batch = s.viewed.batch
	}
	s.trials = append(s.trials, t)
	s.viewed = t
	s.tell()
	return nil
}

// freeName is the first of “Trial 1”, “Trial 2”, … that no trial has.
func (s *Session) freeName() string {
	for n := 1; ; n++ {
		if name := s.voice.Say("Trial %d", n); s.named(name) == nil {
			return name
		}
	}
}

func (s *Session) named(name string) *trial {
	for _, t := range s.trials {
		if t.name == name {
			return t
		}
	}
	return nil
}

// trialName is a typed name without the space around it, where a trial can have
// it; own is the trial that may have it already, or nil.
func (s *Session) trialName(typed string, own *trial) (string, error) {
	name := strings.TrimSpace(typed)
	problem := &measure.EntryError{Typed: typed, Allowed: words.Later("a name of its own for each trial")}
	if name == "" {
		return "", problem
	}
	if other := s.named(name); other != nil && other != own {
		problem.Problem = words.Key("is taken by another trial")
		return "", problem
	}
	titled := class.New("") // a name is one line of text, as a title is
	titled.Title = name
	return name, plainly(titled.Check())
}

// ViewTrial puts a trial on view, and looks in the plan at the batch of the same
// place. An index that no trial has changes nothing.
func (s *Session) ViewTrial(i int) {
	t, ok := s.trialAt(i)
	if !ok || t == s.viewed {
		return
	}
	s.viewed = t
	s.selected = inside(t.batch, s.worked)
	s.tell()
}

func (s *Session) trialAt(i int) (*trial, bool) {
	if i < 0 || i >= len(s.trials) {
		return nil, false
	}
	return s.trials[i], true
}

// ReturnToPlan puts the plan on view. All trials are kept.
func (s *Session) ReturnToPlan() { s.lookAt(s.selected) }

// errNoTrial is said where an index is that of no trial.
var errNoTrial = words.Errorf("this trial is not kept any more")

// RenameTrial gives a trial another name; the error says why it cannot have it.
func (s *Session) RenameTrial(i int, name string) error {
	t, ok := s.trialAt(i)
	if !ok {
		return errNoTrial
	}
	name, err := s.trialName(name, t)
	if err != nil || name == t.name {
		return err
	}
	t.name = name
	s.tell()
	return nil
}

// DropTrial lets a trial go; where it was on view, the plan is then. An index
// that no trial has changes nothing.
func (s *Session) DropTrial(i int) {
	t, ok := s.trialAt(i)
	if !ok {
		return
	}
	s.drop(t)
	s.tell()
}

func (s *Session) drop(t *trial) {
	s.trials = slices.DeleteFunc(s.trials, func(other *trial) bool { return other == t })
	if s.viewed == t {
		s.viewed = nil
	}
}

// AdoptTrial makes a trial the class, as one change that Undo takes back. The
// trial is dropped, and the plan on view with the batch that the trial was
// about. Where it differs in nothing from the plan there is no change to undo.
func (s *Session) AdoptTrial(i int) error {
	t, ok := s.trialAt(i)
	if !ok {
		return errNoTrial
	}
	adopted := t.history.Class()
	_, err := s.alter(s.history, words.Key("Adopt the trial"), func(c *class.Class) { *c = adopted })
	if err != nil {
		return err
	}
	s.drop(t)
	s.viewed, s.selected = nil, t.batch
	s.rework()
	s.tell()
	return nil
}
