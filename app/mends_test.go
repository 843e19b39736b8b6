package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/content/words"
)

// A second window on the folder of one that ended without being asked to: the
// copy is there to be offered, even where the number of the process is the same
// or somebody else's by now.
func TestACopyOutlivesTheNextStart(t *testing.T) {
	d, _ := newTestDesk(t)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.writeRecovery()
	d.recovery.Stop()
	again := newDesk(d.app, Options{Folder: d.folder, Version: "test"})
	t.Cleanup(again.window.Close)
	t.Cleanup(again.forgetRecovery)
	said := &answers{choose: "Ask me later"}
	again.ask = said
	if err := again.keepTableEdits(); err != nil {
		t.Fatal(err)
	}
	again.started(Options{}, nil, nil)
	file := again.leftBehind()
	if len(said.asked) != 1 || file == "" {
		t.Fatalf("asked %v, left behind %q", said.asked, file)
	}
	again.running = func(int) bool { return true } // the number was given out again
	if again.leftBehind() != "" {
		t.Error("the copy of a running process is taken")
	}
	old := time.Now().Add(-2 * recoveryAge)
	if err := os.Chtimes(file, old, old); err != nil {
		t.Fatal(err)
	}
	said.choose = "Discard it"
	again.started(Options{}, nil, nil)
	if _, err := os.Stat(file); err == nil || len(said.asked) != 2 {
		t.Errorf("discarded: %v, asked %v", err, said.asked)
	}
}

func TestUndoTakesBackWhatIsTyped(t *testing.T) {
	d, _ := newTestDesk(t)
	taken := 0
	field := look.NewField("Prepared", "", func(string) error { taken++; return nil })
	field.SetValue("3")
	d.window.SetContent(field)
	canvas := d.window.Canvas()
	before := d.session.Class().Title
	d.menu.undo.Disabled = true // nothing to take back in the class
	canvas.Focus(field.Entry())
	field.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	field.Entry().TypedRune('5')
	typed := field.Text()
	if typed == "3" {
		t.Fatal("nothing was typed")
	}
	for range 5 {
		d.menu.undo.Action()
	}
	if field.Text() != "3" || field.Dirty() || taken != 0 {
		t.Errorf("%q became %q, handed over %d times", typed, field.Text(), taken)
	}
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.menu.undo.Action()
	if got := d.session.Class().Title; got != before {
		t.Errorf("the class is %q", got)
	}
}

func TestADisabledCommandDoesNothing(t *testing.T) {
	d, _ := newTestDesk(t)
	d.newClass()
	for _, i := range d.menu.ofBatch {
		if !i.Disabled {
			t.Errorf("%s without a batch", i.Label)
		}
		i.Action()
	}
	d.demoClass()
	n := len(d.session.Class().Batches)
	for _, over := range []bool{true, false} {
		var shown dialog.Dialog
		if over {
			shown = dialog.NewInformation("a", "b", d.window)
			shown.Show()
		}
		for _, i := range d.menu.ofBatch {
			i.Action()
		}
		if over && (len(d.session.Class().Batches) != n || d.session.Unsaved()) {
			t.Error("a command ran under a dialog")
		}
		if over {
			shown.Hide()
		}
	}
	if !d.session.Unsaved() {
		t.Error("no command runs at all")
	}
}

// What was refused for one batch or class is not left to another.
func TestARefusedEntryStaysWithItsBatch(t *testing.T) {
	d, _ := newTestDesk(t)
	field := look.NewField("Prepared", "", func(string) error { return os.ErrInvalid })
	field.SetText("three apples")
	field.Done()
	d.session.Select(1)
	if field.Text() != "" || look.Refused() != "" {
		t.Errorf("the field holds %q", field.Text())
	}
	field.SetText("three apples")
	field.Done()
	d.session.Start(demoClass(words.English), "")
	if field.Text() != "" {
		t.Errorf("in another class the field holds %q", field.Text())
	}
	field.SetText("three apples")
	field.Done()
	d.session.Start(demoClass(words.English), "") // the same batch, another class
	if field.Text() != "" {
		t.Errorf("in a third class the field holds %q", field.Text())
	}
}

func TestNoTextStandsOut(t *testing.T) {
	d, _ := newTestDesk(t)
	for _, a := range d.areas {
		d.open(a.id)
		looktest.Settle(d.window, usualWidth, usualHeight-36)
		t.Run(a.id, func(t *testing.T) { textfits.Check(t, d.window) })
	}
}

func TestAnyNameCanBeOpened(t *testing.T) {
	for path, want := range map[string]string{
		"/tmp/100% beans #2?.xlsx": "file:///tmp/100%25%20beans%20%232%3F.xlsx",
		"C:/Users/a b/c.xlsx":      "file:///C:/Users/a%20b/c.xlsx",
	} {
		if got := fileURL(path).String(); got != want {
			t.Errorf("%s is %s", path, got)
		}
	}
}

func TestARecentFileThatIsGoneIsForgotten(t *testing.T) {
	d, said := newTestDesk(t)
	gone := filepath.Join(t.TempDir(), "gone.kettleside")
	d.settings.used(gone)
	d.openFile(gone)
	if len(d.settings.Recent) != 0 || len(said.said) != 1 {
		t.Errorf("recent %v, said %v", d.settings.Recent, said.said)
	}
}

func TestQuittingWaitsForTheWorkbook(t *testing.T) {
	d, said := newTestDesk(t)
	d.exporting = func() bool { return true }
	d.quit()
	if len(said.asked) != 1 || !strings.Contains(said.asked[0], "workbook") {
		t.Errorf("asked %v", said.asked)
	}
	said.choose = "Leave now"
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.quit()
	if len(said.asked) != 3 {
		t.Errorf("leaving does not ask for the class: %v", said.asked)
	}
}
