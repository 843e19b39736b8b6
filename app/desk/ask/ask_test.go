package ask

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

func dialogs(t *testing.T) Dialogs {
	t.Helper()
	looktest.App(t, look.Light)
	return Dialogs{looktest.Window(t, widget.NewLabel("under"), 800, 600)}
}

func (d Dialogs) press(name fyne.KeyName) {
	d.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

func (d Dialogs) open() bool { return d.Window.Canvas().Overlays().Top() != nil }

func TestEnterTakesTheFirstAnswerAndEscapeTheLast(t *testing.T) {
	d := dialogs(t)
	got := ""
	ask := func() {
		d.Question("Save first?", "The class has changes that are not saved. They would be lost.",
			Answer{"Save", func() { got = "save" }}, Answer{"Leave", func() { got = "leave" }}, Answer{"Go back", func() { got = "back" }})
	}
	ask()
	looktest.Picture(t, d.Window, "ask-question")
	d.press(fyne.KeyReturn)
	if got != "save" || d.open() {
		t.Errorf("Enter: %q, open %v", got, d.open())
	}
	ask()
	d.press(fyne.KeyEscape)
	if got != "back" || d.open() {
		t.Errorf("Escape: %q, open %v", got, d.open())
	}
}

func TestAProblemIsASentence(t *testing.T) {
	d := dialogs(t)
	d.Problem("This class cannot be opened", errors.New("bad.kettleside cannot be used as a class:\n  place.altitude: you typed “high”, which has no number at the start; allowed is -1,400 ft to 20,000 ft"))
	looktest.Picture(t, d.Window, "ask-problem")
	d.press(fyne.KeyReturn)
	if d.open() {
		t.Error("the notice stays")
	}
}

// save opens the dialog, types a name and presses Enter.
func save(d Dialogs, folder, name string) (written string) {
	d.SaveFile("Save the class", folder, "class.kettleside", ".kettleside", func(path string) { written = path })
	entry := d.Window.Canvas().Focused().(*keyEntry)
	entry.SetText(name)
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	return written
}

func TestSaveFilePutsTheExtension(t *testing.T) {
	d := dialogs(t)
	dir := t.TempDir()
	for typed, want := range map[string]string{"beans": "beans.kettleside", "beans.kettleside": "beans.kettleside", "B. Day 2.5": "B. Day 2.5.kettleside", "x.Kettleside": "x.Kettleside"} {
		if got := save(d, dir, typed); got != filepath.Join(dir, want) {
			t.Errorf("%q is written to %q", typed, got)
		}
	}
}

func TestSaveFileRefusesWhatCannotBeWritten(t *testing.T) {
	d := dialogs(t)
	dir := t.TempDir()
	for name, folder := range map[string]string{"": dir, "a/b": dir, `what?`: dir, "fine": filepath.Join(dir, "gone")} {
		if got := save(d, folder, name); got != "" || !d.open() {
			t.Errorf("%q in %q is written to %q", name, folder, got)
		}
		if name == "fine" {
			looktest.Picture(t, d.Window, "ask-save")
		}
		d.press(fyne.KeyEscape)
		if d.open() {
			t.Fatal("Escape does not leave")
		}
	}
}

func TestSaveFileAsksBeforeReplacing(t *testing.T) {
	d := dialogs(t)
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "old.kettleside"), []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	written := ""
	for _, c := range []struct {
		key  fyne.KeyName
		want bool
	}{{fyne.KeyEscape, false}, {fyne.KeyReturn, false}, {fyne.KeySpace, true}} {
		d.SaveFile("Save", dir, "old.kettleside", ".kettleside", func(path string) { written = path })
		d.press(fyne.KeyReturn)
		if written != "" || !d.open() {
			t.Fatal("it does not ask")
		}
		if c.want { // the answer in the middle has to be gone to
			d.Window.Canvas().FocusNext()
		}
		d.press(c.key)
		if got := strings.HasSuffix(written, "old.kettleside"); got != c.want || d.open() {
			t.Errorf("%s: written %q, open %v", c.key, written, d.open())
		}
	}
}

func TestTheFileDialogLeavesOnEscape(t *testing.T) {
	d := dialogs(t)
	for _, show := range []func(){
		func() { d.OpenFile(t.TempDir(), ".kettleside", func(string) { t.Error("something was opened") }) },
		func() { d.Folder(t.TempDir(), func(string) { t.Error("a folder was chosen") }) },
	} {
		show()
		if !d.open() {
			t.Fatal("no dialog")
		}
		d.Window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if d.open() || d.Window.Canvas().OnTypedKey() != nil {
			t.Error("Escape does not leave, or the key stays taken")
		}
	}
}
