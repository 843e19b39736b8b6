package handouts

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/exports"
	"example.org/kettleside/reference"
)

// host stands for the window program: it saves into a folder of the test.
type host struct {
	window fyne.Window
	folder string
	name   string // asked for
	shown  []string
	paper  exports.Paper
	fails  error
}

func (h *host) SaveFile(_, _, name, _ string, then func(string)) {
	h.name = name
	then(filepath.Join(h.folder, name))
}
func (h *host) Show(path string) error   { h.shown = append(h.shown, path); return h.fails }
func (h *host) Folder() string           { return h.folder }
func (h *host) Paper() exports.Paper     { return h.paper }
func (h *host) SetPaper(p exports.Paper) { h.paper = p }
func (h *host) Canvas() fyne.Canvas      { return h.window.Canvas() }

func demo(t *testing.T, v look.Variant) (*Area, *host) {
	t.Helper()
	looktest.App(t, v)
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	h := &host{folder: t.TempDir(), paper: exports.Letter}
	h.window = test.NewTempWindow(t, nil)
	h.window.SetPadded(false)
	a := New(session.New(reference.Shipped(), c), h)
	a.away = func(work func()) { work() }
	h.window.SetContent(a.Content())
	looktest.Settle(h.window, 920, 600)
	return a, h
}

func TestTheAreaFitsTheSmallestWindow(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark} {
		a, h := demo(t, v)
		if least := a.Content().MinSize(); least.Width > 920 || least.Height > 600 {
			t.Errorf("needs %v", least)
		}
		looktest.Picture(t, h.window, "handouts-"+string(v))
		test.Tap(a.export)
		looktest.Settle(h.window, 920, 600)
		looktest.Picture(t, h.window, "handouts-done-"+string(v))
	}
}

func TestExportWritesWhatIsTicked(t *testing.T) {
	a, h := demo(t, look.Light)
	if got := a.options().Sheets; !slices.Equal(got, usual()) {
		t.Errorf("at first %v are ticked", got)
	}
	test.Tap(a.checks[len(a.checks)-1]) // no labels
	a.paper.SetSelected("A4")
	if o := a.options(); !slices.Equal(o.Sheets, usual()[:len(usual())-1]) || o.Paper != exports.A4 || h.paper != exports.A4 || !strings.HasPrefix(o.LabelGrid, "a") {
		t.Fatalf("options are %+v", o)
	}
	test.Tap(a.export)
	path := filepath.Join(h.folder, h.name)
	if data, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(data, []byte("PK")) {
		t.Fatalf("the workbook: %v, %d bytes", err, len(data))
	}
	if !strings.HasSuffix(h.name, ".xlsx") || strings.ContainsAny(h.name, `/\:`) {
		t.Errorf("the name is %q", h.name)
	}
	test.Tap(a.outcome.workbook)
	test.Tap(a.outcome.folder)
	if len(h.shown) != 2 || h.shown[0] != path || h.shown[1] != h.folder {
		t.Errorf("opened %v", h.shown)
	}
	if a.progress.Running() || a.export.Disabled() {
		t.Error("the area still looks busy")
	}
}

// usual are the ids of the sheets that a workbook usually has.
func usual() (ids []string) {
	for _, s := range exports.Sheets {
		if s.Usual {
			ids = append(ids, s.ID)
		}
	}
	return ids
}

// Every sheet has a box with words on what it is for, and goes into the workbook
// where it is ticked.
func TestEverySheetCanBeTicked(t *testing.T) {
	a, _ := demo(t, look.Light)
	for i, s := range exports.Sheets {
		if does[s.ID] == "" {
			t.Errorf("%s: nothing says what it is for", s.ID)
		}
		if !s.Usual {
			test.Tap(a.checks[i])
		}
	}
	if got := a.options().Sheets; len(got) != len(exports.Sheets) {
		t.Errorf("all are ticked, and %v would be written", got)
	}
}

func TestWhatFailsIsSaid(t *testing.T) {
	a, h := demo(t, look.Light)
	h.folder = filepath.Join(h.folder, "gone")
	test.Tap(a.export)
	if !strings.Contains(a.outcome.says.Text(), "could not be written") || a.outcome.workbook.Visible() {
		t.Errorf("a failed export says %q", a.outcome.says.Text())
	}
	h.fails = errors.New("no program for it")
	a.outcome.open("x")
	if !strings.Contains(a.outcome.says.Text(), "no program for it") {
		t.Errorf("says %q", a.outcome.says.Text())
	}
}

// untick takes the tick off every box.
func untick(a *Area) {
	for _, c := range a.checks {
		c.SetChecked(false)
	}
}

func TestNothingToPrint(t *testing.T) {
	a, _ := demo(t, look.Light)
	untick(a)
	if !a.export.Disabled() {
		t.Error("no sheet is ticked, and it can be exported")
	}
	test.Tap(a.checks[0])
	for range len(a.session.Class().Batches) {
		a.session.RemoveBatch(0)
	}
	if !a.export.Disabled() || !strings.Contains(a.hint.Text(), "no batches") {
		t.Errorf("without batches: %q", a.hint.Text())
	}
}
