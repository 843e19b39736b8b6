package app

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// texts are all texts that are shown in the window.
func (d *desk) texts() []string {
	var all []string
	for _, text := range found[*look.Text](d.window.Content()) {
		all = append(all, text.Text())
	}
	return all
}

func TestLanguageSwitchesAtOnce(t *testing.T) {
	d, _ := newTestDesk(t)
	t.Cleanup(func() { look.Speak(nil) })
	d.open("batch")
	english := d.texts()
	d.session.Select(1)
	d.session.Change("Title", func(c *class.Class) { c.Title = "Typed and not saved" })
	d.setLanguage(words.Spanish)
	looktest.Settle(d.window, usualWidth, usualHeight)
	spanish := d.texts()
	for _, want := range []string{"Tanda", "Cultivos", "Typed and not saved", "sin guardar"} {
		if !slices.Contains(spanish, want) {
			t.Errorf("%q is not shown among %q", want, spanish)
		}
	}
	if slices.Contains(spanish, "Crops") || d.session.Selected() != 1 || d.settings.Area != "batch" || !d.session.Unsaved() {
		t.Errorf("batch %d, area %s, unsaved %v", d.session.Selected(), d.settings.Area, d.session.Unsaved())
	}
	if d.menu.main.Items[0].Label != "Archivo" || !d.menu.languages[words.Spanish].Checked {
		t.Errorf("menu %q", d.menu.main.Items[0].Label)
	}
	if got := readSettings(d.folder).Language; got != words.Spanish {
		t.Errorf("kept language %q", got)
	}
	// a change is heard once, by the areas that are there now
	d.session.Change("Title", func(c *class.Class) { c.Title = "Once more" })
	if !slices.Contains(d.texts(), "Once more") {
		t.Error("the window does not follow the session any more")
	}
	d.session.Undo()
	d.session.Undo()
	d.session.Select(0)
	d.setLanguage(words.English)
	looktest.Settle(d.window, usualWidth, usualHeight)
	if got := d.texts(); !slices.Equal(got, english) {
		t.Errorf("back in English:\n%q\nbefore:\n%q", got, english)
	}
}

// What is typed stays as it was typed, however often somebody switches.
func TestAHundredRoundTripsLeaveTheFileAlone(t *testing.T) {
	d, _ := newTestDesk(t)
	t.Cleanup(func() { look.Speak(nil) })
	before := encoded(t, d)
	for range 100 {
		d.setUnits(measure.Metric)
		d.session.Speak(words.In(words.Spanish))
		d.setUnits(measure.US)
		d.session.Speak(words.In(words.English))
	}
	if after := encoded(t, d); !bytes.Equal(after, before) {
		t.Errorf("after 100 round trips:\n%s", after)
	}
}

func encoded(t *testing.T, d *desk) []byte {
	t.Helper()
	data, err := class.Encode(d.session.Class())
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestUnitsOfATrial(t *testing.T) {
	d, _ := newTestDesk(t)
	d.openThen("batch", func() { d.bench.Try() })
	d.setUnits(measure.Metric)
	if d.session.Class().Units != measure.US || d.session.View().Class.Units != measure.Metric || !d.menu.metric.Checked {
		t.Errorf("plan in %s, trial in %s", d.session.Class().Units, d.session.View().Class.Units)
	}
}

// The workbook would be given up with the area that writes it.
func TestNoOtherLanguageWhileTheWorkbookIsWritten(t *testing.T) {
	d, said := newTestDesk(t)
	d.exporting = func() bool { return true }
	d.setLanguage(words.Spanish)
	if d.settings.Language != words.English || len(said.said) != 1 {
		t.Errorf("language %s, said %q", d.settings.Language, said.said)
	}
}

// An entry that was refused is asked for before the fields are made anew.
func TestARefusedEntryBeforeTheLanguage(t *testing.T) {
	d, said := newTestDesk(t)
	t.Cleanup(func() { look.Speak(nil) })
	d.open("batch")
	field := found[*look.Field](d.bench.Content)[1]
	field.SetText("nonsense")
	field.Done()
	said.choose = "Go back"
	d.setLanguage(words.Spanish)
	if d.settings.Language != words.English || len(said.asked) == 0 {
		t.Errorf("language %s, asked %q", d.settings.Language, said.asked)
	}
}

func TestFirstAndLaterStarts(t *testing.T) {
	folder := t.TempDir()
	start := func() (*desk, error) {
		a := looktest.App(t, look.Light)
		d := newDesk(a, Options{Folder: folder})
		t.Cleanup(d.window.Close)
		t.Cleanup(d.forgetRecovery)
		d.ask = &answers{}
		return d, d.openFirst("")
	}
	pointing := func(d *desk) bool {
		return slices.ContainsFunc(d.texts(), func(text string) bool { return strings.Contains(text, "Ctrl+T") })
	}
	first, err := start()
	if err != nil || first.session.Path() != "" || first.session.Class().Title != demoClass(words.English).Title || !pointing(first) {
		t.Errorf("first start: %v, %q, pointers %v", err, first.session.Path(), pointing(first))
	}
	file := filepath.Join(t.TempDir(), "last.kettleside")
	first.ask = &answers{path: file}
	first.saveAs()
	tapButton(t, first.window.Content(), "Put away")
	if pointing(first) {
		t.Error("the pointers stay")
	}
	later, err := start()
	if err != nil || later.session.Path() != file || pointing(later) {
		t.Errorf("later start: %v, %q, pointers %v", err, later.session.Path(), pointing(later))
	}
	if err := os.WriteFile(file, []byte("{"), 0o644); err != nil {
		t.Fatal(err)
	}
	damaged, err := start()
	if err == nil || damaged.session.Path() != "" || damaged.session.Class().Title != demoClass(words.English).Title {
		t.Errorf("with a damaged file: %v, %q", err, damaged.session.Path())
	}
	if data, _ := os.ReadFile(file); string(data) != "{" {
		t.Errorf("the damaged file is now %q", data)
	}
}

// A trial stays when the language changes; its commands work before the batch
// area is opened again.
func TestTheTrialsCommandsAfterALanguage(t *testing.T) {
	for name, then := range map[string]func(*session.Session) bool{
		"Volver al plan":      func(s *session.Session) bool { return s.TryingIndex() < 0 && len(s.Trials()) == 1 },
		"Llevar al plan":      func(s *session.Session) bool { return len(s.Trials()) == 0 },
		"Descartar el ensayo": func(s *session.Session) bool { return len(s.Trials()) == 0 },
	} {
		d, said := newTestDesk(t)
		t.Cleanup(func() { look.Speak(nil) })
		d.openThen("batch", func() { d.bench.Try() })
		d.open("crops")
		d.setLanguage(words.Spanish)
		said.choose = "Descartar"
		found := false
		for _, item := range d.menu.ofTrial {
			if item.Label == name {
				found = true
				item.Action()
			}
		}
		if !found || !then(d.session) {
			t.Errorf("%s: found %v, trials %d, on view %d", name, found, len(d.session.Trials()), d.session.TryingIndex())
		}
	}
}

// A class that is gone is told once.
func TestALastClassThatIsGone(t *testing.T) {
	d, _ := newTestDesk(t)
	d.settings.Recent = []string{filepath.Join(t.TempDir(), "gone.kettleside")}
	if err := d.openFirst(""); err == nil {
		t.Error("nothing is said of it")
	}
	if err := d.openFirst(""); err != nil || len(readSettings(d.folder).Recent) != 0 {
		t.Errorf("at the next start: %v, recent %q", err, readSettings(d.folder).Recent)
	}
}
