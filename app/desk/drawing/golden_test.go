package drawing

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// TestPictures compares every drawing with its golden picture, at a size as in
// the window. A wanted change is taken over by copying testdata/failed.
func TestPictures(t *testing.T) {
	for _, state := range states {
		t.Run(state.name, func(t *testing.T) {
			looktest.App(t, look.Light)
			size := fyne.NewSize(300, 170)
			if _, isClock := state.make().(*ClockStart); isClock {
				size = fyne.NewSize(340, 64)
			}
			w := looktest.Window(t, look.NewSurface(look.Paper, state.make()), size.Width, size.Height)
			test.AssertImageMatches(t, state.name+".png", looktest.Picture(t, w, "drawing-"+state.name))
		})
	}
}

// TestDarkPictures draws everything on the dark ground for a person to look at.
func TestDarkPictures(t *testing.T) {
	for _, state := range states {
		looktest.App(t, look.Dark)
		w := looktest.Window(t, look.NewSurface(look.Paper, state.make()), 300, 170)
		looktest.Picture(t, w, "drawing-dark-"+state.name)
	}
}
