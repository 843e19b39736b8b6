package app

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

var pictures = flag.String("pictures", "", "write the picture of every screen to this `folder`")

// sampled are the screens that an ordinary run draws.
var sampled = []string{"batch-trial", "questions-answer", "projector-kettle"}

// TestPictures draws the screens without a display, in each of the dressings:
// all of them where -pictures names a folder, otherwise a few.
func TestPictures(t *testing.T) {
	for _, s := range screens {
		if *pictures == "" && !slices.Contains(sampled, s.name) {
			continue
		}
		var drawn []image.Image
		for _, x := range dressings {
			t.Run(s.picture(x), func(t *testing.T) {
				img := s.stage(t, program(t, x), x).Canvas().Capture()
				checkDrawn(t, s, x, img)
				drawn = append(drawn, img)
				if *pictures != "" {
					keepPicture(t, filepath.Join(*pictures, s.picture(x)+".png"), img)
				}
			})
		}
		for i, img := range drawn {
			for j, other := range drawn[:i] {
				if dressings[i].variant != dressings[j].variant && corner(img) == corner(other) {
					t.Errorf("%s has the same ground in two looks", s.name)
				}
			}
		}
	}
}

// checkDrawn asks that a picture has its size and something on it.
func checkDrawn(t *testing.T, s screen, x dressing, img image.Image) {
	t.Helper()
	if size, got := s.size(x), img.Bounds().Size(); float32(got.X) != size.Width || float32(got.Y) != size.Height {
		t.Errorf("drawn %v, want %v", got, size)
	}
	ground, other := corner(img), 0
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if rgba(img.At(x, y)) != ground {
				other++
			}
		}
	}
	if area := img.Bounds().Dx() * img.Bounds().Dy(); other < area/100 {
		t.Errorf("%d of %d dots are not ground", other, area)
	}
}

// corner is the colour of the ground of a picture. The trial has a line round
// everything, which lies within the first few dots.
func corner(img image.Image) color.RGBA { return rgba(img.At(12, img.Bounds().Dy()-12)) }

func rgba(c color.Color) color.RGBA { return color.RGBAModel.Convert(c).(color.RGBA) }

func keepPicture(t *testing.T, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, img); err != nil {
		t.Fatalf("write %s: %v", path, err)
	}
}

// Every value of every column stands in a row of the dressings.
func TestDressingsCoverEveryLook(t *testing.T) {
	covered := map[string]bool{}
	for _, x := range dressings {
		for _, value := range []any{x.size.window, x.units, x.variant, x.said} {
			covered[fmt.Sprint(value)] = true
		}
	}
	for _, value := range []any{small.window, large.window, measure.US, measure.Metric, look.Light, look.Dark, look.HighContrast, words.English, words.Spanish} {
		if !covered[fmt.Sprint(value)] {
			t.Errorf("no screen is drawn in %v", value)
		}
	}
}
