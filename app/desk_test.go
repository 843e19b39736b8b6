package app

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// A common small screen, beside the least size of the window.
const usualWidth, usualHeight = 1024, 700

// answers stands for the person at the keyboard.
type answers struct {
	choose string // label of the answer to pick
	path   string // file to open or save
	asked  []string
	said   []string
}

func (a *answers) Question(title, _ string, list ...ask.Answer) {
	a.asked = append(a.asked, title)
	for _, one := range list {
		if one.Label == a.choose && one.Do != nil {
			one.Do()
			return
		}
	}
}
func (a *answers) Notice(title, text string)                     { a.said = append(a.said, title+": "+text) }
func (a *answers) Problem(title string, err error)               { a.said = append(a.said, title+": "+err.Error()) }
func (a *answers) Page(title string, _ fyne.CanvasObject)        { a.said = append(a.said, title) }
func (a *answers) OpenFile(_, _ string, then func(string))       { then(a.path) }
func (a *answers) SaveFile(_, _, _, _ string, then func(string)) { then(a.path) }

// newTestDesk is the window with settings in a folder of the test.
func newTestDesk(t *testing.T) (*desk, *answers) {
	t.Helper()
	a := looktest.App(t, look.Light)
	d := newDesk(a, Options{Folder: t.TempDir(), Version: "test"})
	t.Cleanup(d.window.Close)
	t.Cleanup(d.forgetRecovery)
	said := &answers{}
	d.ask = said
	d.window.Show()
	looktest.Settle(d.window, usualWidth, usualHeight)
	return d, said
}

func TestEveryAreaFitsTheSmallestWindow(t *testing.T) {
	d, _ := newTestDesk(t)
	for _, v := range []look.Variant{look.Light, look.Dark, look.HighContrast} {
		d.setVariant(v)
		for _, a := range d.areas {
			d.open(a.id)
			for _, size := range []fyne.Size{{Width: leastWidth, Height: leastHeight}, {Width: usualWidth, Height: usualHeight}} {
				// the menu bar takes about 36 of the height of a real window
				looktest.Settle(d.window, size.Width, size.Height-36)
				if least := d.window.Content().MinSize(); least.Width > size.Width || least.Height > size.Height-36 {
					t.Errorf("%s, %s: needs %v", v, a.id, least)
				}
				looktest.Picture(t, d.window, fmt.Sprintf("window-%s-%s-%.0f", a.id, v, size.Width))
			}
		}
	}
}

func TestTitleSaysWhatIsUnsaved(t *testing.T) {
	d, said := newTestDesk(t)
	if got := d.window.Title(); strings.Contains(got, "unsaved") || !strings.HasPrefix(got, "Kettleside — Green weekend") {
		t.Fatalf("title %q", got)
	}
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	if got := d.window.Title(); got != "Kettleside — Beans • unsaved" {
		t.Fatalf("title %q", got)
	}
	if got := d.menu.undo.Label; got != "Undo: Title" || d.menu.undo.Disabled {
		t.Errorf("undo item %q, disabled %v", got, d.menu.undo.Disabled)
	}
	said.path = filepath.Join(t.TempDir(), "beans.kettleside")
	d.save()
	if got := d.window.Title(); got != "Kettleside — Beans" || d.session.Path() != said.path {
		t.Errorf("after saving: title %q, path %q", got, d.session.Path())
	}
	if c, err := class.Open(said.path); err != nil || c.Title != "Beans" {
		t.Errorf("the file: %v, %q", err, c.Title)
	}
	if len(d.settings.Recent) != 1 || readSettings(d.folder).Recent[0] != said.path {
		t.Errorf("recent files: %v", d.settings.Recent)
	}
}

func TestNothingUnsavedIsLost(t *testing.T) {
	d, said := newTestDesk(t)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	for name, do := range map[string]func(){"new": d.newClass, "demo": d.demoClass, "open": d.chooseAndOpen, "quit": d.quit} {
		said.choose, said.asked = "Go back", nil
		do()
		if len(said.asked) != 1 || d.session.Class().Title != "Beans" {
			t.Errorf("%s: asked %v, title %q", name, said.asked, d.session.Class().Title)
		}
	}
	said.choose, said.path = "Save", filepath.Join(t.TempDir(), "beans.kettleside")
	d.newClass()
	if d.session.Class().Title != "" || d.session.Path() != "" {
		t.Errorf("new class: title %q, path %q", d.session.Class().Title, d.session.Path())
	}
	if _, err := os.Stat(said.path); err != nil {
		t.Error(err)
	}
}

func TestAFileThatCannotBeReadLeavesTheClass(t *testing.T) {
	d, said := newTestDesk(t)
	bad := filepath.Join(t.TempDir(), "bad.kettleside")
	if err := os.WriteFile(bad, []byte("{"), 0o644); err != nil {
		t.Fatal(err)
	}
	before := d.session.Class().Title
	d.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(bad)})
	d.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(bad + ".txt")})
	said.path = filepath.Join(filepath.Dir(bad), "no", "such.kettleside")
	d.saveAs()
	if len(said.said) != 3 || d.session.Class().Title != before {
		t.Fatalf("said %q, title %q", said.said, d.session.Class().Title)
	}
}

// startAgain is another run of the program on the same folder. The earlier run
// counts as ended without having been asked to, unless it still runs.
func startAgain(t *testing.T, d *desk, earlierRuns bool) (*desk, *answers) {
	t.Helper()
	left := d.recoveryFile() + ".left"
	if err := os.Rename(d.recoveryFile(), left); err != nil { // a copy under the number of another process
		t.Fatal(err)
	}
	other := filepath.Join(d.folder, recoveryName+"1"+class.Extension)
	if err := os.Rename(left, other); err != nil {
		t.Fatal(err)
	}
	again := newDesk(d.app, Options{Folder: d.folder, Version: "test"})
	t.Cleanup(again.window.Close)
	t.Cleanup(again.forgetRecovery)
	said := &answers{}
	again.ask, again.running = said, func(int) bool { return earlierRuns }
	return again, said
}

func TestUnsavedWorkComesBack(t *testing.T) {
	d, _ := newTestDesk(t)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.writeRecovery()
	d.recovery.Stop()
	again, said := startAgain(t, d, false)
	other := again.leftBehind()
	if other == "" {
		t.Fatal("the copy of the earlier run is gone before anybody was asked")
	}
	again.offerRecovery() // nobody answers
	said.choose = "Ask me later"
	again.offerRecovery()
	if again.leftBehind() != other {
		t.Error("asking later lost the copy")
	}
	said.choose = "Bring it back"
	again.offerRecovery()
	if len(said.asked) != 3 || again.session.Class().Title != "Beans" || !again.session.Unsaved() {
		t.Errorf("asked %v, title %q, unsaved %v", said.asked, again.session.Class().Title, again.session.Unsaved())
	}
	if _, err := os.Stat(again.recoveryFile()); err != nil || again.leftBehind() != "" {
		t.Errorf("after bringing it back: own copy %v, left behind %q", err, again.leftBehind())
	}
	said.path = filepath.Join(t.TempDir(), "b.kettleside")
	again.save()
	if _, err := os.Stat(again.recoveryFile()); err == nil {
		t.Error("the recovery copy stays after saving")
	}
}

// The copy of a window that is still open is nobody else's.
func TestAnotherWindowKeepsItsCopy(t *testing.T) {
	d, _ := newTestDesk(t)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.writeRecovery()
	d.recovery.Stop()
	again, said := startAgain(t, d, true)
	again.offerRecovery()
	again.forgetRecovery()
	if len(said.asked) != 0 {
		t.Errorf("asked %v about the work of a window that is open", said.asked)
	}
	again.running = func(int) bool { return false }
	if again.leftBehind() == "" {
		t.Error("the copy of the other window was removed")
	}
}

// The toolkit makes shortcuts of its own of Ctrl+Z and Ctrl+Y; the menu has to
// use those, or the keys do nothing.
func TestUndoHasTheToolkitsShortcut(t *testing.T) {
	d, _ := newTestDesk(t)
	if name := d.menu.undo.Shortcut.ShortcutName(); name != (&fyne.ShortcutUndo{}).ShortcutName() {
		t.Errorf("undo is %s", name)
	}
	if name := d.menu.redo.Shortcut.ShortcutName(); name != (&fyne.ShortcutRedo{}).ShortcutName() {
		t.Errorf("redo is %s", name)
	}
	before := d.session.Class().Title
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	d.menu.undo.Action()
	if d.session.Class().Title != before {
		t.Errorf("undo left %q", d.session.Class().Title)
	}
}

// Under an open dialog a shortcut does nothing.
func TestNoCommandUnderADialog(t *testing.T) {
	d, _ := newTestDesk(t)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Beans" })
	over := widget.NewModalPopUp(widget.NewLabel("a question"), d.window.Canvas())
	over.Show()
	d.menu.undo.Action()
	if d.session.Class().Title != "Beans" {
		t.Error("undone under a dialog")
	}
	over.Hide()
	d.menu.undo.Action()
	if d.session.Class().Title == "Beans" {
		t.Error("not undone after the dialog")
	}
}

// An entry that was refused and left is asked for before it is lost.
func TestARefusedEntryIsAskedFor(t *testing.T) {
	d, said := newTestDesk(t)
	field := look.NewField("Altitude", "", func(string) error { return errors.New("allowed is a height") })
	field.SetText("six thousand")
	field.Done()
	left := false
	d.guard(func() { left = true })
	if left || len(said.asked) != 1 {
		t.Fatalf("left %v, asked %v", left, said.asked)
	}
	said.choose = "Leave it out"
	d.guard(func() { left = true })
	if !left || field.Text() != "" || look.Refused() != "" {
		t.Errorf("left %v, the field holds %q, refused %q", left, field.Text(), look.Refused())
	}
}

// What is being typed belongs to the batch it was typed for.
func TestCommandsTakeWhatIsBeingTyped(t *testing.T) {
	d, _ := newTestDesk(t)
	taken := ""
	field := look.NewField("Prepared", "", func(text string) error { taken = text; return nil })
	d.window.SetContent(field)
	d.window.Canvas().Focus(field.Entry())
	field.SetText("7 lb")
	d.withBatch(func(int) error {
		if taken != "7 lb" {
			t.Errorf("the command ran before %q was handed over", field.Text())
		}
		return nil
	})
}

func TestSettingsSurviveNonsense(t *testing.T) {
	folder := t.TempDir()
	for _, text := range []string{"", "{", `{"scale": -3, "variant": "pink", "width": 5, "paper": "papyrus", "folder": "/no/such"}`} {
		if err := os.WriteFile(filepath.Join(folder, "settings.json"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		s := readSettings(folder)
		if s.Scale != 1 || s.Variant != "light" || s.Width < leastWidth || s.Paper != "letter" {
			t.Errorf("%q gives %+v", text, s)
		}
	}
}

func TestLookIsChosenAndKept(t *testing.T) {
	d, _ := newTestDesk(t)
	d.menu.dark.Action()
	d.menu.larger.Action()
	got := readSettings(d.folder)
	if got.Variant != "dark" || got.Scale != 1.15 || look.Current().Variant != look.Dark {
		t.Errorf("kept %+v, shown %v", got, look.Current().Variant)
	}
	if !d.menu.dark.Checked || d.menu.light.Checked {
		t.Error("the menu ticks another look")
	}
	for range 9 {
		d.menu.larger.Action()
	}
	if d.settings.Scale != 1.5 || !d.menu.larger.Disabled {
		t.Errorf("scale %v", d.settings.Scale)
	}
}

func TestHelpPagesOpen(t *testing.T) {
	d, said := newTestDesk(t)
	for _, show := range []func(){d.showSources, d.showCautions, d.showKeys, d.showAbout, d.showFindings} {
		show()
	}
	if len(said.said) != 5 {
		t.Errorf("opened %v", said.said)
	}
	d.ask = ask.Dialogs{Window: d.window}
	d.window.Resize(fyne.NewSize(usualWidth, usualHeight))
	for name, show := range map[string]func(){"sources": d.showSources, "cautions": d.showCautions, "keys": d.showKeys, "about": d.showAbout, "findings": d.showFindings} {
		show()
		looktest.Picture(t, d.window, "help-"+name)
		test.TypeOnCanvas(d.window.Canvas(), "")
		d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if d.window.Canvas().Overlays().Top() != nil {
			t.Fatalf("%s does not close on Escape", name)
		}
	}
}

func TestWhatTheProgramIsStartedWith(t *testing.T) {
	d, said := newTestDesk(t)
	file := filepath.Join(t.TempDir(), "a.kettleside")
	if err := class.Save(file, class.New("x")); err != nil {
		t.Fatal(err)
	}
	if err := d.openFirst(file); err != nil || d.session.Path() != file || d.settings.Recent[0] != file {
		t.Errorf("%v, path %q", err, d.session.Path())
	}
	if err := os.WriteFile(file, []byte("[]"), 0o644); err != nil {
		t.Fatal(err)
	}
	d.started(Options{File: file}, nil, d.openFirst(file))
	if len(said.said) != 1 || d.session.Class().Edition != "x" {
		t.Errorf("said %v, the class is %q", said.said, d.session.Class().Edition)
	}
}

func TestAClassWithNothingInItIsShown(t *testing.T) {
	d, _ := newTestDesk(t)
	d.newClass()
	for _, a := range d.areas {
		d.open(a.id)
		looktest.Settle(d.window, usualWidth, usualHeight)
		looktest.Picture(t, d.window, "empty-"+a.id)
	}
	if got := d.window.Title(); got != "Kettleside — Class without a title" {
		t.Errorf("title %q", got)
	}
}
