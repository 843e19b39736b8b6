package drawing

import (
	"flag"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

func init() {
	if flag.Lookup("update") == nil { // looktest may have it for golden markup
		flag.Bool("update", false, "write the golden pictures anew")
	}
}

// golden compares a picture with testdata/NAME.png, or writes it there with
// the flag -update.
func golden(t *testing.T, name string, img image.Image) {
	t.Helper()
	if flag.Lookup("update").Value.String() != "true" {
		test.AssertImageMatches(t, name+".png", img)
		return
	}
	f, err := os.Create(filepath.Join("testdata", name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}

// TestPictures compares every drawing with its golden picture, at a size as in
// the window. The flag -update takes wanted changes over.
func TestPictures(t *testing.T) {
	for _, state := range states {
		t.Run(state.name, func(t *testing.T) {
			state.app(t, look.Light)
			size := fyne.NewSize(300, 170)
			if _, isClock := state.make().(*ClockStart); isClock {
				size = fyne.NewSize(340, 64)
			}
			w := looktest.Window(t, look.NewSurface(look.Paper, state.make()), size.Width, size.Height)
			golden(t, state.name, looktest.Picture(t, w, "drawing-"+state.name))
		})
	}
}

// TestLabelsStand draws everything on either ground, also for a person to look
// at, and asks that no label stands out.
func TestLabelsStand(t *testing.T) {
	for _, variant := range []look.Variant{look.Light, look.Dark} {
		for _, state := range states {
			t.Run(fmt.Sprint(state.name, " ", variant), func(t *testing.T) {
				state.app(t, variant)
				w := looktest.Window(t, look.NewSurface(look.Paper, state.make()), 300, 170)
				if state.name != "kettle-empty" && state.name != "bath-empty" {
					textfits.Check(t, w)
				}
				img := looktest.Picture(t, w, fmt.Sprint("drawing-", variant, "-", state.name))
				ground, others := img.At(0, 0), 0
				for x := range img.Bounds().Dx() {
					for y := range img.Bounds().Dy() {
						if img.At(x, y) != ground {
							others++
						}
					}
				}
				if others < 200 {
					t.Errorf("only %d pixels are drawn", others)
				}
			})
		}
	}
}
