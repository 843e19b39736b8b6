package session

import (
	"fmt"
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

// The history of the class drops its oldest changes; what was changed in the
// table before them can be taken back no more by Undo, and what is left keeps
// its order.
func TestTheOrderOfManyChanges(t *testing.T) {
	s := demo(t)
	title := func(n int) { must(t, s.Change("title", func(c *class.Class) { c.Title = fmt.Sprint("title ", n) })) }
	for n := range 99 {
		title(n)
	}
	must(t, s.ApplyEdit(edit(s, "4")))
	for n := range 150 {
		title(100 + n)
	}
	for s.Class().Title != "title 100" {
		must(t, s.Undo())
	}
	must(t, s.Undo())
	if name, _ := s.CanUndo(); name != changeOfTable || minutesOf(s) != 4 {
		t.Fatalf("under the first change after the table stands %q, minutes %v", name, minutesOf(s))
	}
	undone := 0
	for _, ok := s.CanUndo(); ok; _, ok = s.CanUndo() {
		must(t, s.Undo())
		undone++
	}
	if undone != 51 || minutesOf(s) != 3 { // 200 of 249 changes of the class are kept
		t.Errorf("%d more could be undone, minutes %v", undone, minutesOf(s))
	}
	for _, ok := s.CanRedo(); ok; _, ok = s.CanRedo() {
		was := minutesOf(s)
		must(t, s.Redo())
		if minutesOf(s) != was && s.Class().Title != "title 98" {
			t.Errorf("the table is changed again after %q", s.Class().Title)
		}
	}
	if minutesOf(s) != 4 || s.Class().Title != "title 249" {
		t.Errorf("all made again: minutes %v, %q", minutesOf(s), s.Class().Title)
	}
	for n := range 200 {
		title(300 + n)
	}
	for _, ok := s.CanUndo(); ok; _, ok = s.CanUndo() {
		must(t, s.Undo())
	}
	if minutesOf(s) != 4 || len(s.Edits()) != 1 {
		t.Errorf("an edit older than the history was taken back: minutes %v", minutesOf(s))
	}
}
