package session

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/reference"
)

// Whatever is done, the class, its file and the table are what the plan alone
// makes them, each trial is its own, and who listens hears of every change and
// of nothing else.
func TestLawsOfTrials(t *testing.T) {
	start := smallClass()
	s, memory := New(reference.Shipped(), start), &estimate.Memory{} // for all runs, which ask the same again
	told := 0
	s.Subscribe(func() { told++ })
	rapid.Check(t, func(t *rapid.T) {
		if err := s.TakeBack(beans, reference.FieldMinutes); err != nil {
			t.Fatal(err)
		}
		s.Start(start, "")
		m := &model{session: s, memory: memory, started: s.Started(), plan: newLine(start)}
		actions := m.actions()
		for name, act := range actions {
			actions[name] = func(t *rapid.T) {
				before := m.seen()
				told = 0
				act(t)
				if changed := !reflect.DeepEqual(before, m.seen()); changed != (told > 0) && name != "adopt" {
					t.Fatalf("%s: changed is %v, told %d times", name, changed, told)
				}
			}
		}
		actions[""] = m.agrees
		t.Repeat(actions)
	})
}

// agrees holds the session against the model.
func (m *model) agrees(t *rapid.T) {
	s := m.session
	expect := func(what string, got, want any) {
		t.Helper()
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("%s: %v; want %v", what, got, want)
		}
	}
	work := func(l *line) class.Worked { return class.WorkWith(class.With{Memory: m.memory}, l.class(), s.Table()) }
	label := func(change string, _ bool) string { return change }

	expect("the class", s.Class(), m.plan.class())
	expect("the plan worked out", s.Worked(), work(m.plan))
	expect("unsaved", s.Unsaved(), m.plan.changes() != m.plan.saved)
	expect("undo", label(s.CanUndo()), m.plan.label(m.plan.now))
	expect("redo", label(s.CanRedo()), m.plan.label(m.plan.now+1))
	expect("path", s.Path(), "")
	expect("classes started", s.Started(), m.started)
	expect("selected", s.Selected(), m.selected)
	minutes, _ := s.Table().Treatment(beans)
	shipped, _ := reference.Shipped().Treatment(beans)
	edited := m.plan.edited[m.plan.now]
	expect("the table is edited", minutes.Minutes != shipped.Minutes, edited)
	expect("edits", len(s.Edits()) > 0, edited)

	expect("trials", len(s.Trials()), len(m.trials))
	for i, got := range s.Trials() {
		want := m.trials[i]
		expect("name", got.Name, want.name)
		expect("batch", got.Batch, want.batch)
		expect("copy", got.Worked.Class, want.line.class())
		if want == m.viewed || m.laid { // the others stayed as they were
			expect("trial worked out", got.Worked, work(want.line))
		}
	}
	m.laid = false
	expect("on view", s.TryingIndex(), slices.Index(m.trials, m.viewed))
	trial, trying := s.Trying()
	expect("trying", trying, m.viewed != nil)
	expect("view", s.View().Class, m.onView().class())
	expect("undo of the view", label(s.CanUndoView()), m.onView().label(m.onView().now))
	expect("redo of the view", label(s.CanRedoView()), m.onView().label(m.onView().now+1))
	viewed, plan, at := s.View(), s.Worked(), m.selected
	if trying {
		expect("view of a trial", viewed, trial.Worked)
		at = m.viewed.batch
	}
	one, ok := s.ViewedBatch()
	expect("a batch on view", ok, len(viewed.Batches) > 0)
	if !ok || !trying || len(plan.Batches) == 0 {
		expect("compared", s.Compare(), []Difference(nil))
		return
	}
	expect("the batch on view", one, viewed.Batches[at])
	m.compares(t, side{plan.Class, plan.Batches[m.selected]}, side{viewed.Class, one})
}

// compares holds what is compared against laws: no difference where nothing
// differs, the same differences the other way round, each said once, and no
// figure that differs without something entered that does.
func (m *model) compares(t *rapid.T, plan, trial side) {
	all, back := m.session.Compare(), m.session.compare(trial, plan)
	if reflect.DeepEqual(plan.class, trial.class) && reflect.DeepEqual(plan.Batch, trial.Batch) && len(all) > 0 {
		t.Fatalf("nothing differs, and this does: %+v", all)
	}
	byID := map[string]Difference{}
	for _, d := range back {
		byID[d.ID] = d
	}
	if len(byID) != len(back) || len(all) != len(back) {
		t.Fatalf("%d differences, back %d of %d", len(all), len(byID), len(back))
	}
	for i, d := range all {
		b := byID[d.ID]
		if b.Plan != d.Trial || b.Trial != d.Plan || b.Entered != d.Entered || b.By != turnedBack(d.By) {
			t.Fatalf("%+v is back %+v", d, b)
		}
		if d.Plan == d.Trial || d.Label == "" || d.Plan == "" || d.Trial == "" {
			t.Fatalf("no difference: %+v", d)
		}
		if i > 0 && d.Entered && !all[i-1].Entered || i == 0 && !d.Entered {
			t.Fatalf("nothing was entered before %+v of %+v", d, all)
		}
	}
	for _, p := range append(plan.Figures(), plan.Estimates.Figures()...) {
		for _, f := range append(trial.Figures(), trial.Estimates.Figures()...) {
			if _, listed := byID[p.ID]; p.ID != "" && p.ID == f.ID && p.Text != f.Text && !listed {
				t.Fatalf("%s differs and is not listed", p.ID)
			}
		}
	}
}

// turnedBack is a difference seen from the other side.
func turnedBack(by string) string {
	return strings.NewReplacer("+", "−", "−", "+", "longer", "shorter", "shorter", "longer").Replace(by)
}
