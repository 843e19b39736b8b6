package handouts

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/exports"
	"example.org/kettleside/reference"
)

// speak lets widgets speak a language for the length of a test.
func speak(t *testing.T, l words.Language) *words.Voice {
	t.Helper()
	voice := words.In(l)
	look.Speak(voice)
	t.Cleanup(func() { look.Speak(nil) })
	return voice
}

func TestTheAreaFitsInBothLanguages(t *testing.T) {
	for _, l := range words.Languages() {
		for _, scale := range []float32{1, 1.5} {
			t.Run(string(l)+measure.Plain(float64(scale)), func(t *testing.T) {
				voice := speak(t, l)
				a, h := demo(t, look.Light)
				fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, scale))
				a.session.Speak(voice)
				test.Tap(a.export)
				for _, width := range []float32{920, 690} {
					looktest.Settle(h.window, width, 600)
					if least := a.Content().MinSize(); least.Width > width || least.Height > 600 {
						t.Errorf("needs %v", least)
					}
					textfits.Check(t, h.window)
					looktest.Picture(t, h.window, "handouts-"+string(l)+measure.Plain(float64(scale))+"-"+measure.Plain(float64(width)))
				}
			})
		}
	}
}

// The area is compared with an empty class: what a batch says belongs to the
// engine and the table.
func TestTheAreaIsLaidOutAsBefore(t *testing.T) {
	for _, l := range words.Languages() {
		t.Run(string(l), func(t *testing.T) {
			voice := speak(t, l)
			looktest.App(t, look.Light)
			h := &host{paper: exports.Letter}
			h.window = test.NewTempWindow(t, nil)
			h.window.SetPadded(false)
			s := session.New(reference.Shipped(), class.New(reference.Edition))
			s.Speak(voice)
			a := New(s, h)
			h.window.SetContent(a.Content())
			for _, size := range []fyne.Size{{Width: 920, Height: 600}, {Width: 690, Height: 500}} {
				looktest.Settle(h.window, size.Width, size.Height)
				looktest.Markup(t, h.window, "empty-"+string(l)+"-"+measure.Plain(float64(size.Width))+".xml")
			}
		})
	}
}

// What is chosen means the same in either language.
func TestChoicesMeanTheSameInSpanish(t *testing.T) {
	chosen := func(l words.Language) (all []exports.Options) {
		speak(t, l)
		a, h := demo(t, look.Light)
		if a.paper.Selected != map[words.Language]string{words.English: "Letter", words.Spanish: "Carta"}[l] {
			t.Errorf("in %s the paper is %q", l, a.paper.Selected)
		}
		for range 2 {
			for i := range a.grid.Options {
				a.grid.SetSelectedIndex(i)
				all = append(all, a.options())
			}
			test.Tap(a.checks[1])
			a.paper.SetSelected("A4")
		}
		if h.paper != exports.A4 {
			t.Errorf("in %s the paper kept is %q", l, h.paper)
		}
		return all
	}
	english, spanish := chosen(words.English), chosen(words.Spanish)
	if len(english) < 4 || !slices.EqualFunc(english, spanish, func(a, b exports.Options) bool {
		return a.Paper == b.Paper && a.LabelGrid == b.LabelGrid && slices.Equal(a.Sheets, b.Sheets)
	}) {
		t.Errorf("in English %+v, in Spanish %+v", english, spanish)
	}
}

func TestTheExportIsSaidInSpanish(t *testing.T) {
	voice := speak(t, words.Spanish)
	a, h := demo(t, look.Light)
	a.session.Speak(voice)
	test.Tap(a.export)
	if got := a.outcome.says.Text(); got != "Escrito: "+h.name {
		t.Errorf("says %q", got)
	}
	h.fails = errors.New("nothing opens it")
	test.Tap(a.outcome.workbook)
	if got := a.outcome.says.Text(); got != "No se pudo abrir desde aquí: nothing opens it" {
		t.Errorf("says %q", got)
	}
	h.folder += "/gone"
	test.Tap(a.export)
	if got := a.outcome.says.Text(); !strings.HasPrefix(got, "El libro no se pudo escribir. ") {
		t.Errorf("says %q", got)
	}
	untick(a)
	if got := a.hint.Text(); got != "Marque al menos una hoja." {
		t.Errorf("hint %q", got)
	}
}
