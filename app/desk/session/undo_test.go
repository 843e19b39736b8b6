package session

import (
	"path/filepath"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/reference"
)

// One Undo serves class and table, in the order in which they were changed.
func TestUndoOfTheTable(t *testing.T) {
	s := demo(t)
	file := filepath.Join(t.TempDir(), "edits.json")
	must(t, s.KeepEditsIn(file))
	shipped := minutesOf(s)
	rename := func(title string) error { return s.Change("Title", func(c *class.Class) { c.Title = title }) }
	must(t, s.ApplyEdit(edit(s, "4")), rename("Second"), s.ApplyEdit(edit(s, "5")), s.TakeBack(beans, reference.FieldMinutes))

	steps := []struct {
		do      func() error
		minutes float64
		undo    string // what could be undone before
	}{
		{s.Undo, 5, takenBack},
		{s.Undo, 4, changeOfTable},
		{s.Undo, 4, "Title"},
		{s.Redo, 4, changeOfTable},
		{s.Redo, 5, "Title"},
		{s.Undo, 4, changeOfTable},
		{s.Undo, 4, "Title"},
		{s.Undo, shipped, changeOfTable},
		{s.Undo, shipped, ""},
		{s.Redo, 4, ""},
	}
	for i, step := range steps {
		if name, _ := s.CanUndo(); name != step.undo {
			t.Errorf("step %d: undo would take back %q, want %q", i, name, step.undo)
		}
		must(t, step.do())
		if got := minutesOf(s); got != step.minutes {
			t.Errorf("step %d: %v minutes, want %v", i, got, step.minutes)
		}
		kept, err := reference.ReadEdits(file)
		if err != nil || (len(kept) > 0) != (step.minutes != shipped) {
			t.Errorf("step %d: the file holds %v, %v", i, kept, err)
		}
	}
	if name, _ := s.CanRedo(); name != "Title" {
		t.Errorf("redo would make %q again", name)
	}
	must(t, s.ApplyEdit(edit(s, "6")))
	if name, ok := s.CanRedo(); ok {
		t.Errorf("after another change %q could be made again", name)
	}
	must(t, s.Redo())
	if got := minutesOf(s); got != 6 {
		t.Errorf("%v minutes", got)
	}
	if s.Start(s.Class(), ""); minutesOf(s) != 6 {
		t.Error("another class takes the edits away")
	}
	if name, ok := s.CanUndo(); ok {
		t.Errorf("another class could undo %q", name)
	}
}

// Where the file of the edits cannot be written, an undo changes nothing.
func TestUndoThatCannotBeWritten(t *testing.T) {
	s := demo(t)
	must(t, s.KeepEditsIn(filepath.Join(t.TempDir(), "edits.json")), s.ApplyEdit(edit(s, "4")))
	s.editsIn = filepath.Join(t.TempDir(), "\x00", "edits.json")
	if err := s.Undo(); err == nil {
		t.Error("the edits were written")
	}
	if name, _ := s.CanUndo(); name != changeOfTable || minutesOf(s) != 4 {
		t.Errorf("undo would take back %q; %v minutes", name, minutesOf(s))
	}
}

func minutesOf(s *Session) float64 {
	x, _ := s.Table().Treatment(beans)
	return x.Minutes
}
