package textfits

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// heard takes the complaints instead of failing.
type heard struct {
	testing.TB
	said []string
}

func (h *heard) Helper() {}
func (h *heard) Errorf(format string, args ...any) {
	h.said = append(h.said, fmt.Sprintf(format, args...))
}
func (h *heard) Error(args ...any) { h.said = append(h.said, fmt.Sprint(args...)) }

func TestFindsWhatStandsOut(t *testing.T) {
	test.NewTempApp(t)
	long := func() *canvas.Text {
		return canvas.NewText("a text that is much too long for its place", theme.Color(theme.ColorNameForeground))
	}
	for _, one := range []struct {
		name string
		in   fyne.CanvasObject
		bad  bool
	}{
		{"fits", container.NewHBox(long()), false},
		{"stands out", container.NewGridWrap(fyne.NewSize(40, 20), long()), true},
		{"scrolls", container.NewHScroll(long()), false},
		{"nothing", container.NewHBox(), true},
	} {
		w := test.NewTempWindow(t, one.in)
		w.Resize(fyne.NewSize(400, 60))
		h := &heard{TB: t}
		Check(h, w)
		if bad := len(h.said) > 0; bad != one.bad {
			t.Errorf("%s: %v", one.name, h.said)
		}
	}
}
