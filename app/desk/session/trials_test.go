package session

import (
	"reflect"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

func weigh(lb float64) func(*class.Class) {
	return func(c *class.Class) { c.Batches[0].Prepared = measure.New(lb, measure.Pound) }
}

// must is for what cannot be refused.
func must(t *testing.T, errs ...error) {
	t.Helper()
	for _, err := range errs {
		if err != nil {
			t.Fatal(err)
		}
	}
}

func names(s *Session) string {
	var all []string
	for _, one := range s.Trials() {
		all = append(all, one.Name)
	}
	return strings.Join(all, ", ")
}

func TestATrialNeverTouchesTheClass(t *testing.T) {
	s := demo(t)
	before, worked := s.Class(), s.Worked()
	must(t, s.StartTrial("Five pounds"), s.ChangeView("Weight", weigh(5)))
	if !reflect.DeepEqual(s.Class(), before) || !reflect.DeepEqual(s.Worked(), worked) || s.Unsaved() {
		t.Error("the class changed")
	}
	if name, ok := s.CanUndo(); ok {
		t.Errorf("the class would undo %q", name)
	}
	if b, _ := s.ViewedBatch(); b.Loads.Text != "5 loads" || s.View().Class.Batches[0].Prepared.String() != "5 lb" {
		t.Errorf("the trial has %s", b.Loads.Text)
	}
	if b, _ := s.SelectedBatch(); b.Loads.Text != "3 loads" {
		t.Errorf("the plan has %s", b.Loads.Text)
	}
	s.ReturnToPlan()
	if b, _ := s.ViewedBatch(); b.Loads.Text != "3 loads" || names(s) != "Five pounds" {
		t.Errorf("back at the plan: %s, trials %s", b.Loads.Text, names(s))
	}
}

// What is tried leads back into nothing.
func TestATrialIsACopy(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial(""))
	if _, ok := s.TryView(weigh(5)); !ok {
		t.Fatal("five pounds were refused")
	}
	if _, ok := s.TryView(weigh(5000)); ok {
		t.Error("five thousand pounds were worked out")
	}
	if err := s.ChangeView("Weight", weigh(5000)); err == nil || !strings.Contains(err.Error(), "500 lb") {
		t.Errorf("five thousand pounds: %v", err)
	}
	if _, undo := s.CanUndoView(); undo || !reflect.DeepEqual(s.View().Class, s.Class()) {
		t.Error("what was only tried, or refused, stayed")
	}
}

func TestATrialStartsFromWhatIsOnView(t *testing.T) {
	s := demo(t)
	s.Select(1)
	must(t, s.StartTrial(""), s.ChangeView("Weight", weigh(5)), s.StartTrial(""))
	if got, _ := s.Trying(); got.Name != "Trial 2" || got.Batch != 1 || got.Worked.Class.Batches[0].Prepared.String() != "5 lb" || s.TryingIndex() != 1 {
		t.Errorf("the second trial is %q about batch %d", got.Name, got.Batch)
	}
	if _, ok := s.CanUndoView(); ok {
		t.Error("the second trial can undo what was done in the first")
	}
	must(t, s.ChangeView("Weight", weigh(6)))
	if first := s.Trials()[0]; first.Worked.Class.Batches[0].Prepared.String() != "5 lb" {
		t.Error("the first trial changed with the second")
	}
}

func TestNamesOfTrials(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial("Trial 2"), s.StartTrial(""), s.StartTrial(" "), s.StartTrial("  my pot "))
	if got := names(s); got != "Trial 2, Trial 1, Trial 3, my pot" {
		t.Errorf("the trials are %s", got)
	}
	for _, c := range []struct{ typed, says string }{
		{"", "nothing typed; allowed is a name of its own"},
		{" \t", "nothing typed; allowed is a name of its own"},
		{" Trial 1 ", "is taken by another trial"},
		{"two\nlines", "is not one line of text"},
		{"turned \u202e round", "is not one line of text"},
		{strings.Repeat("a", 201), "at most 200 characters"},
	} {
		err := s.RenameTrial(0, c.typed)
		if err == nil || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "title") {
			t.Errorf("%q: %v; want %q", c.typed, err, c.says)
		}
		if strings.TrimSpace(c.typed) != "" && s.StartTrial(c.typed) == nil {
			t.Errorf("%q was taken for a new trial", c.typed)
		}
	}
	must(t, s.RenameTrial(0, "Trial 2"), s.RenameTrial(0, "Trial 4"))
	if got := names(s); got != "Trial 4, Trial 1, Trial 3, my pot" {
		t.Errorf("renamed: %s", got)
	}
	for _, i := range []int{-1, 4} {
		if s.RenameTrial(i, "x") == nil || s.AdoptTrial(i) == nil {
			t.Errorf("trial %d was there", i)
		}
		s.DropTrial(i)
		s.ViewTrial(i)
	}
	if len(s.Trials()) != 4 || s.TryingIndex() != 3 {
		t.Errorf("trials that are not there: %s, %d on view", names(s), s.TryingIndex())
	}
}

func TestThereAreOnlySoManyTrials(t *testing.T) {
	s := demo(t)
	for range 12 {
		must(t, s.StartTrial(""))
	}
	if err := s.StartTrial(""); err == nil || !strings.Contains(err.Error(), "12") || len(s.Trials()) != 12 {
		t.Errorf("a thirteenth: %v", err)
	}
	s.DropTrial(4)
	must(t, s.StartTrial(""))
	if got := s.Trials()[11].Name; got != "Trial 5" {
		t.Errorf("the free name is %q", got)
	}
}

func TestAnAdoptedTrialIsOneChange(t *testing.T) {
	s := demo(t)
	must(t, s.Change("Title", func(c *class.Class) { c.Title = "Beans" }))
	before := s.Class()
	s.Select(2)
	must(t, s.StartTrial("Five pounds"), s.ChangeView("Weight", weigh(5)), s.ChangeView("Weight", weigh(6)), s.StartTrial("other"))
	s.Select(3)
	must(t, s.AdoptTrial(0))
	if got := s.Class().Batches[0].Prepared.String(); got != "6 lb" || !s.Unsaved() || s.TryingIndex() != -1 || names(s) != "other" || s.Selected() != 2 {
		t.Errorf("adopted: %s, unsaved %v, on view %d, trials %s, batch %d", got, s.Unsaved(), s.TryingIndex(), names(s), s.Selected())
	}
	if got := s.Worked().Batches[0].Loads.Text; got != "6 loads" {
		t.Errorf("adopted and worked out: %s", got)
	}
	if name, _ := s.CanUndo(); name != "Adopt the trial" {
		t.Errorf("undo is %q", name)
	}
	s.Undo()
	if !reflect.DeepEqual(s.Class(), before) {
		t.Error("undo did not bring the class back")
	}
	if name, _ := s.CanUndo(); name != "Title" {
		t.Errorf("then undo is %q", name)
	}
}

// An untouched trial has nothing to adopt.
func TestAnUntouchedTrialIsAdoptedAsNothing(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial(""), s.AdoptTrial(0))
	if _, ok := s.CanUndo(); ok || s.Unsaved() || len(s.Trials()) != 0 || s.TryingIndex() != -1 {
		t.Errorf("undo %v, unsaved %v, %d trials", ok, s.Unsaved(), len(s.Trials()))
	}
}

func TestATrialUndoesItsOwnChanges(t *testing.T) {
	s := demo(t)
	must(t, s.Change("Title", func(c *class.Class) { c.Title = "Beans" }), s.StartTrial(""), s.ChangeView("Weight", weigh(5)))
	if name, _ := s.CanUndoView(); name != "Weight" {
		t.Errorf("on view undo is %q", name)
	}
	s.UndoView()
	s.UndoView()
	if name, _ := s.CanRedoView(); name != "Weight" || s.Class().Title != "Beans" || s.View().Class.Batches[0].Prepared.String() != "3 lb" {
		t.Errorf("undone: redo is %q, the class is %q", name, s.Class().Title)
	}
	s.RedoView()
	if b, _ := s.ViewedBatch(); b.Loads.Text != "5 loads" {
		t.Errorf("redone: %s", b.Loads.Text)
	}
	s.ReturnToPlan()
	s.UndoView()
	if name, _ := s.CanRedoView(); name != "Title" || s.Class().Title == "Beans" {
		t.Errorf("of the plan: redo is %q, the class is %q", name, s.Class().Title)
	}
	s.RedoView()
	if s.Class().Title != "Beans" {
		t.Error("the plan was not redone")
	}
}

func TestAnotherClassHasNoTrials(t *testing.T) {
	for name, start := range map[string]func(*Session){
		"start":         func(s *Session) { s.Start(s.Class(), "") },
		"start unsaved": func(s *Session) { s.StartUnsaved(s.Class()) },
	} {
		s := demo(t)
		must(t, s.StartTrial(""), s.ChangeView("Weight", weigh(5)))
		start(s)
		if _, ok := s.Trying(); ok || len(s.Trials()) != 0 || s.View().Class.Batches[0].Prepared.String() != "3 lb" {
			t.Errorf("%s: %s, on view %v", name, names(s), ok)
		}
	}
}

func TestAFileHoldsThePlan(t *testing.T) {
	s := demo(t)
	path := t.TempDir() + "/a.kettleside"
	must(t, s.StartTrial(""), s.ChangeView("Weight", weigh(5)), s.Save(path))
	if saved, err := class.Open(path); err != nil || !reflect.DeepEqual(saved, s.Class()) || saved.Batches[0].Prepared.String() != "3 lb" {
		t.Errorf("saved: %v", err)
	}
	if _, ok := s.Trying(); !ok || s.Unsaved() {
		t.Error("saving the plan dropped the trial")
	}
}

// Each trial keeps the batch that it is about.
func TestSelectingSelectsInBoth(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial("beans"), s.StartTrial("spinach"))
	s.Select(1)
	s.ViewTrial(0)
	if got, _ := s.Trying(); got.Batch != 0 || s.Selected() != 0 {
		t.Errorf("the first trial is about batch %d, in the plan %d", got.Batch, s.Selected())
	}
	s.ViewTrial(1)
	if got, _ := s.Trying(); got.Batch != 1 || s.Selected() != 1 {
		t.Errorf("the second trial is about batch %d, in the plan %d", got.Batch, s.Selected())
	}
	s.ReturnToPlan()
	s.Select(3)
	if got := s.Trials()[1].Batch; got != 1 {
		t.Errorf("selecting in the plan moved a trial to batch %d", got)
	}
}

// Plan and trial may have different batches: each selects what it has.
func TestSelectingWhereBatchesAreGone(t *testing.T) {
	s := demo(t)
	told := 0
	s.Subscribe(func() { told++ })
	s.Select(3)
	must(t, s.StartTrial(""), s.ChangeView("Remove", func(c *class.Class) { c.Batches = c.Batches[:3] }))
	if got, _ := s.Trying(); got.Batch != 2 || s.Selected() != 3 {
		t.Errorf("of three batches %d is selected, in the plan %d", got.Batch, s.Selected())
	}
	must(t, s.RemoveBatch(3), s.RemoveBatch(2), s.RemoveBatch(1))
	told = 0
	s.Select(1)
	if got, _ := s.Trying(); got.Batch != 1 || s.Selected() != 0 || told != 1 {
		t.Errorf("of three batches %d is selected, in the plan %d, told %d times", got.Batch, s.Selected(), told)
	}
	must(t, s.ChangeView("Remove", func(c *class.Class) { c.Batches = nil }))
	if _, ok := s.ViewedBatch(); ok || s.Compare() != nil {
		t.Error("a trial without batches has one")
	}
}

// What is added to the class is looked at, and so the plan.
func TestPlanningTheClassPutsThePlanOnView(t *testing.T) {
	for name, plan := range map[string]func(*Session) error{
		"add":       func(s *Session) error { return s.AddBatch(beans) },
		"duplicate": func(s *Session) error { return s.DuplicateBatch(0) },
		"move":      func(s *Session) error { return s.MoveBatch(0, 1) },
	} {
		s := demo(t)
		must(t, s.StartTrial(""))
		trial := s.Trials()[0]
		must(t, plan(s))
		if s.TryingIndex() != -1 || !reflect.DeepEqual(s.Trials()[0], trial) {
			t.Errorf("%s: trial %d is on view, or changed", name, s.TryingIndex())
		}
		if viewed, _ := s.ViewedBatch(); !reflect.DeepEqual(viewed, s.Worked().Batches[s.Selected()]) || s.Selected() == 0 {
			t.Errorf("%s: batch %d is looked at", name, s.Selected())
		}
	}
}

func TestTableEditsReachTrials(t *testing.T) {
	s := demo(t)
	must(t, s.StartTrial(""))
	s.ReturnToPlan()
	minutes := func() string { return s.Trials()[0].Worked.Batches[0].Minutes.Text }
	must(t, s.ApplyEdit(edit(s, "4")))
	if got := minutes(); got != "4 min" {
		t.Errorf("edited: %s", got)
	}
	must(t, s.TakeBack(beans, reference.FieldMinutes))
	if got := minutes(); got != "3 min" {
		t.Errorf("taken back: %s", got)
	}
	file := t.TempDir() + "/edits.json"
	must(t, reference.WriteEdits(file, []reference.Edit{edit(s, "5")}), s.KeepEditsIn(file))
	if got := minutes(); got != "5 min" {
		t.Errorf("read from a file: %s", got)
	}
}
