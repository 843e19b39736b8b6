package session

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

const beans = "snap-beans-cut-water" // a treatment of the demo class

func demo(t *testing.T) *Session {
	t.Helper()
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	return New(reference.Shipped(), c)
}

func TestChangeReworksAndTells(t *testing.T) {
	s := demo(t)
	told := 0
	s.Subscribe(func() { told++ })
	if err := s.Change("Headcount", func(c *class.Class) { c.People.Headcount = 24 }); err != nil {
		t.Fatal(err)
	}
	if got := s.Worked().Totals.Stations.Value; got != 8 || told != 1 || !s.Unsaved() {
		t.Fatalf("stations %v, told %d, unsaved %v", got, told, s.Unsaved())
	}
	if err := s.Change("Headcount", func(c *class.Class) { c.People.Headcount = 24 }); err != nil || told != 1 {
		t.Errorf("a change that changes nothing: %v, told %d", err, told)
	}
	s.Undo()
	if got := s.Class().People.Headcount; got != 12 || s.Unsaved() {
		t.Errorf("after undo: %d people, unsaved %v", got, s.Unsaved())
	}
	if name, ok := s.CanRedo(); !ok || name != "Headcount" {
		t.Errorf("redo is %q, %v", name, ok)
	}
	s.Redo()
	if got := s.Class().People.Headcount; got != 24 {
		t.Errorf("after redo: %d people", got)
	}
}

func TestWhatIsOutOfRangeChangesNothing(t *testing.T) {
	s := demo(t)
	told := 0
	s.Subscribe(func() { told++ })
	err := s.Change("Headcount", func(c *class.Class) { c.People.Headcount = -1; c.Title = "half done" })
	var entry *measure.EntryError
	if !errors.As(err, &entry) || entry.Field != "" || !strings.Contains(err.Error(), "1 to 500") {
		t.Fatalf("the error is %v", err)
	}
	if c := s.Class(); c.People.Headcount != 12 || c.Title == "half done" || told != 0 || s.Unsaved() {
		t.Errorf("the class changed: %d people, title %q, told %d", c.People.Headcount, c.Title, told)
	}
}

func TestTheClassIsACopy(t *testing.T) {
	s := demo(t)
	c := s.Class()
	c.Batches[0].Name, c.Kit.Kettles[0].Name = "changed behind its back", "so"
	if again := s.Class(); again.Batches[0].Name == c.Batches[0].Name || again.Kit.Kettles[0].Name == "so" {
		t.Error("a copy of the class leads back into the session")
	}
}

func TestSaveAndOpen(t *testing.T) {
	s := demo(t)
	path := filepath.Join(t.TempDir(), "a.kettleside")
	if err := s.Change("Title", func(c *class.Class) { c.Title = "Beans" }); err != nil {
		t.Fatal(err)
	}
	if err := s.Save(path); err != nil || s.Unsaved() || s.Path() != path {
		t.Fatalf("save: %v, unsaved %v, path %q", err, s.Unsaved(), s.Path())
	}
	s.Start(class.New(""), "")
	if err := s.Open(path); err != nil || s.Class().Title != "Beans" || s.Path() != path {
		t.Fatalf("open: %v, title %q", err, s.Class().Title)
	}
	if err := os.WriteFile(path, []byte("{}"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := s.Open(path); err == nil || s.Class().Title != "Beans" {
		t.Errorf("a damaged file: %v, title %q", err, s.Class().Title)
	}
	if err := s.Save(filepath.Join(path, "not", "a", "folder")); err == nil || s.Path() != path {
		t.Errorf("saving nowhere: %v, path %q", err, s.Path())
	}
}

func TestSelectionStaysInside(t *testing.T) {
	s := demo(t)
	n := len(s.Worked().Batches)
	s.Select(99)
	if s.Selected() != n-1 {
		t.Errorf("selected %d of %d", s.Selected(), n)
	}
	for range n {
		if err := s.RemoveBatch(s.Selected()); err != nil {
			t.Fatal(err)
		}
	}
	if _, ok := s.SelectedBatch(); ok || s.Selected() != 0 {
		t.Errorf("nothing is left, and %d is selected", s.Selected())
	}
	if err := s.RemoveBatch(5); err != nil {
		t.Error(err)
	}
	s.Undo()
	if _, ok := s.SelectedBatch(); !ok {
		t.Error("the batch did not come back")
	}
}

// A new batch stands in the first kettle on the first burner, where the kit has
// them.
func TestANewBatchUsesTheKit(t *testing.T) {
	s := demo(t)
	add := func() class.Batch {
		if err := s.AddBatch(beans); err != nil {
			t.Fatal(err)
		}
		b, _ := s.SelectedBatch()
		return b.Batch
	}
	if b := add(); b.Kettle != "Station kettle" || b.Burner != "Plug-in burner" || b.Start.Given() {
		t.Errorf("the batch is in %q on %q, from %q", b.Kettle, b.Burner, b.Start)
	}
	s.Start(class.New(""), "")
	if err := s.Change("Kit", func(c *class.Class) { c.Kit.Kettles, c.Kit.Burners = nil, nil }); err != nil {
		t.Fatal(err)
	}
	if b := add(); b.Kettle != "" || b.Burner != "" {
		t.Errorf("without a kit the batch is in %q on %q", b.Kettle, b.Burner)
	}
}

func edit(s *Session, typed string) reference.Edit {
	return s.Shipped().NewEdit(beans, reference.FieldMinutes, typed, "our own bulletin", "A. Educator", time.Unix(0, 0).UTC())
}

func TestEditsAreALayer(t *testing.T) {
	s := demo(t)
	file := filepath.Join(t.TempDir(), "sub", "edits.json")
	if err := s.KeepEditsIn(file); err != nil {
		t.Fatal(err)
	}
	before := s.Worked().Batches[0].Minutes.Text
	if err := s.ApplyEdit(edit(s, "4")); err != nil {
		t.Fatal(err)
	}
	if got := s.Worked().Batches[0].Minutes.Text; got == before {
		t.Errorf("the edit does not show: %q", got)
	}
	if x, _ := reference.Shipped().Treatment(beans); len(x.Changed) != 0 {
		t.Error("the shipped table was changed")
	}
	if err := s.ApplyEdit(edit(s, "5")); err != nil || len(s.Edits()) != 1 {
		t.Errorf("a later edit of the field: %v, %d edits", err, len(s.Edits()))
	}
	if err := s.ApplyEdit(edit(s, "soon")); err == nil || len(s.Edits()) != 1 || s.Edits()[0].New != "5" {
		t.Errorf("an edit that cannot be used: %v, %v", err, s.Edits())
	}
	other := demo(t)
	if err := other.KeepEditsIn(file); err != nil || other.Worked().Batches[0].Minutes.Text != s.Worked().Batches[0].Minutes.Text {
		t.Errorf("the edits were not kept: %v", err)
	}
	if err := s.TakeBack(beans, reference.FieldMinutes); err != nil {
		t.Fatal(err)
	}
	if got := s.Worked().Batches[0].Minutes.Text; got != before {
		t.Errorf("taken back it is %q, shipped it was %q", got, before)
	}
}

func TestEditsThatCannotBeUsedAreReportedAndKept(t *testing.T) {
	file := filepath.Join(t.TempDir(), "edits.json")
	s := demo(t)
	good, stale := edit(s, "4"), edit(s, "5")
	stale.Field, stale.Old = reference.FieldNote, "something that was never shipped"
	if err := reference.WriteEdits(file, []reference.Edit{good, stale}); err != nil {
		t.Fatal(err)
	}
	if err := s.KeepEditsIn(file); err == nil || len(s.Refused()) != 1 || len(s.Edits()) != 2 {
		t.Fatalf("%v, refused %d, kept %d", err, len(s.Refused()), len(s.Edits()))
	}
	if x, _ := s.Table().Treatment(beans); x.Minutes != 4 {
		t.Errorf("the good edit is not in use: %v min", x.Minutes)
	}
	if err := s.ApplyEdit(edit(s, "6")); err != nil {
		t.Errorf("a stale edit stands in the way of another: %v", err)
	}
	if err := os.WriteFile(file, []byte("["), 0o644); err != nil {
		t.Fatal(err)
	}
	again := demo(t)
	if err := again.KeepEditsIn(file); err == nil {
		t.Error("a damaged file was taken")
	}
	if err := again.ApplyEdit(edit(again, "4")); err != nil {
		t.Error(err)
	}
	aside, _ := filepath.Glob(file + ".damaged-*")
	if len(aside) != 1 {
		t.Fatalf("set aside: %v", aside)
	}
	if data, _ := os.ReadFile(aside[0]); string(data) != "[" {
		t.Errorf("the damaged file was not kept aside: %q", data)
	}
	if kept, err := reference.ReadEdits(file); err != nil || len(kept) != 1 {
		t.Errorf("the later edit was not kept: %v, %v", kept, err)
	}
}

func TestTreatmentsAreNamedWithWhatStartsTheClock(t *testing.T) {
	s := demo(t)
	for _, x := range s.Table().Treatments {
		if s.TreatmentName(x) == "" || s.TreatmentDoes(x) == "" {
			t.Errorf("%s has no words", x.ID)
		}
		if x.Minutes > 0 && x.ClockStart != reference.NoClock && !strings.Contains(s.TreatmentDoes(x), "from ") {
			t.Errorf("%s: minutes without a start: %q", x.ID, s.TreatmentDoes(x))
		}
		if s.SourceName(x.Source) == x.Source {
			t.Errorf("%s: source %s has no name", x.ID, x.Source)
		}
	}
	if got := s.SourceName("entered"); got != "as entered" {
		t.Errorf("entered is %q", got)
	}
}

func TestWhoLeavesHearsNoMore(t *testing.T) {
	s := demo(t)
	var first, second int
	var leave func()
	leave = s.Subscribe(func() {
		first++
		leave() // while being told
	})
	s.Subscribe(func() { second++ })
	s.Select(1)
	s.Select(0)
	if first != 1 || second != 2 {
		t.Errorf("heard %d and %d times, want 1 and 2", first, second)
	}
}
