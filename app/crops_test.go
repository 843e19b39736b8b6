package app

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/reference"
)

// The columns that were chosen are there at the next start, whatever else
// stands in the settings.
func TestColumnsAreRemembered(t *testing.T) {
	d, _ := newTestDesk(t)
	d.open("crops")
	d.crops.ColumnsChosen([]string{"minutes", "source"})
	if got := readSettings(d.folder).Columns; !slices.Equal(got, []string{"minutes", "source"}) {
		t.Errorf("remembered are %v", got)
	}
	if err := os.WriteFile(filepath.Join(d.folder, "settings.json"), []byte(`{"columns":["colour","minutes"],"scale":1.3}`), 0o600); err != nil {
		t.Fatal(err)
	}
	again := newDesk(d.app, Options{Folder: d.folder, Version: "test"})
	t.Cleanup(again.window.Close)
	t.Cleanup(again.forgetRecovery)
	again.open("crops")
	looktest.Settle(again.window, usualWidth, usualHeight)
	shown := test.RenderObjectToMarkup(again.crops.Content)
	if !strings.Contains(shown, ">Clock starts<") || strings.Contains(shown, ">Cut<") || again.settings.Scale != 1.3 {
		t.Errorf("the columns are others, or the scale is: %v", again.settings.Scale)
	}
}

// A question of a record opens in its own area.
func TestARecordLeadsToItsQuestions(t *testing.T) {
	d, _ := newTestDesk(t)
	d.open("crops")
	d.crops.OpenQuestion("carrots")
	if asks, _, _ := d.questions.Answer(); d.settings.Area != "questions" || asks == "" {
		t.Errorf("%s shows %q", d.settings.Area, asks)
	}
}

// Undo and Redo of the menu take the crop table back and forth, and say why
// they cannot.
func TestMenuUndoesTheTable(t *testing.T) {
	d, said := newTestDesk(t)
	d.open("crops")
	if err := d.keepTableEdits(); err != nil {
		t.Fatal(err)
	}
	s := d.session
	minutes := func() float64 {
		x, _ := s.Table().Treatment("carrots-sliced-water")
		return x.Minutes
	}
	shipped := minutes()
	e := s.Shipped().NewEdit("carrots-sliced-water", reference.FieldMinutes, "9", "our bulletin", "A. Educator", time.Unix(0, 0).UTC())
	if err := s.ApplyEdit(e); err != nil {
		t.Fatal(err)
	}
	if d.menu.undo.Disabled {
		t.Fatal("the menu cannot undo a change of the table")
	}
	d.menu.undo.Action()
	if minutes() != shipped {
		t.Errorf("undone it is %v", minutes())
	}
	d.menu.redo.Action()
	if minutes() != 9 {
		t.Errorf("made again it is %v", minutes())
	}
	kept := filepath.Join(d.folder, "table-edits.json")
	if err := os.RemoveAll(kept); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(kept, "in the way"), 0o700); err != nil {
		t.Fatal(err)
	}
	before := len(said.said)
	d.menu.undo.Action()
	if minutes() != 9 || len(said.said) == before {
		t.Errorf("a change that cannot be written: %v, %v", minutes(), said.said)
	}
}

// Undo and Redo of the menu go through what is typed into a cell of the crop
// table, and leave the class alone until that is made or given up.
func TestMenuUndoesTypingInTheTable(t *testing.T) {
	d, _ := newTestDesk(t)
	d.open("crops")
	title := d.session.Class().Title
	if err := d.session.Change("Title", func(c *class.Class) { c.Title = "Another" }); err != nil {
		t.Fatal(err)
	}
	d.menu.undo.Action()
	d.find()
	for _, key := range []fyne.KeyName{fyne.KeyDown, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyF2} {
		d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
	}
	entry := d.window.Canvas().Focused()
	text := func() string {
		entry.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		return entry.(interface{ SelectedText() string }).SelectedText()
	}
	if text() == "" {
		t.Fatalf("F2 leads to %T", entry)
	}
	entry.TypedRune('9')
	d.menu.undo.Action()
	if text() == "9" {
		t.Error("undo leaves what was typed")
	}
	d.menu.redo.Action()
	if text() != "9" {
		t.Errorf("redo leaves %q", text())
	}
	d.menu.redo.Action()
	if d.session.Class().Title != title {
		t.Error("redo changes the class while something is typed")
	}
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	d.menu.redo.Action()
	if d.session.Class().Title != "Another" {
		t.Errorf("after Escape the title is %q", d.session.Class().Title)
	}
}
