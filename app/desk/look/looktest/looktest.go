// Package looktest helps the tests of the window: an app in our theme, a
// window of a given size whose wrapped text has settled, and pictures to look
// at.
package looktest

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
)

// Pictures names the environment variable with the folder that Picture writes
// to; without it no picture is written.
const Pictures = "KETTLESIDE_PICTURES"

// App is an app in our theme for the length of a test.
func App(t testing.TB, v look.Variant) fyne.App {
	t.Helper()
	for _, name := range []string{"FYNE_SCALE", "FYNE_FONT", "FYNE_THEME"} {
		t.Setenv(name, "")
		os.Unsetenv(name)
	}
	a := test.NewTempApp(t)
	t.Cleanup(look.RestoreRefused) // of fields that go with this app
	a.Settings().SetTheme(look.New(v))
	return a
}

// Window shows content in a window of that size, without padding around it.
func Window(t testing.TB, content fyne.CanvasObject, width, height float32) fyne.Window {
	t.Helper()
	w := test.NewTempWindow(t, content)
	w.SetPadded(false)
	Settle(w, width, height)
	return w
}

// Settle lays a window out until wrapped text has found its height, which the
// real window does by itself.
func Settle(w fyne.Window, width, height float32) {
	for range 3 {
		w.Resize(fyne.NewSize(width, height+1))
		w.Resize(fyne.NewSize(width, height))
	}
}

// Picture draws a window and, where a folder for pictures is set, writes it
// there as NAME.png.
func Picture(t testing.TB, w fyne.Window, name string) image.Image {
	t.Helper()
	img := w.Canvas().Capture()
	dir := os.Getenv(Pictures)
	if dir == "" {
		return img
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
	return img
}
