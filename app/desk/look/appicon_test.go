package look

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"testing"

	"example.org/kettleside/content/palette"
)

var update = flag.Bool("update", false, "write the app icon anew")

// TestAppIconIsDrawnByUs draws the sign of the program and compares it with
// the file that is shipped.
func TestAppIconIsDrawnByUs(t *testing.T) {
	drawn := drawAppIcon(256)
	if *update {
		var buf bytes.Buffer
		if err := png.Encode(&buf, drawn); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("appicon.png", buf.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	shipped, err := png.Decode(bytes.NewReader(appIcon))
	if err != nil {
		t.Fatal(err)
	}
	for y := range 256 {
		for x := range 256 {
			if color.NRGBAModel.Convert(shipped.At(x, y)) != drawn.At(x, y) {
				t.Fatalf("the shipped icon differs at %d, %d; run the test with -update and look at it", x, y)
			}
		}
	}
}

func drawAppIcon(size int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, size, size))
	const fine = 4 // samples each way in a pixel
	for y := range size {
		for x := range size {
			var r, g, b, a int
			for i := range fine * fine {
				c := iconAt((float64(x)+(float64(i%fine)+0.5)/fine)/float64(size), (float64(y)+(float64(i/fine)+0.5)/fine)/float64(size))
				r, g, b, a = r+int(c.R)*int(c.A), g+int(c.G)*int(c.A), b+int(c.B)*int(c.A), a+int(c.A)
			}
			if a > 0 {
				img.SetNRGBA(x, y, color.NRGBA{uint8(r / a), uint8(g / a), uint8(b / a), uint8(a / (fine * fine))})
			}
		}
	}
	return img
}

// iconAt is the colour of the sign at a point of the unit square.
func iconAt(x, y float64) color.NRGBA {
	g := palette.Light
	box := func(x0, y0, x1, y1, r float64) bool { // with rounded corners
		dx, dy := math.Max(math.Max(x0+r-x, x-x1+r), 0), math.Max(math.Max(y0+r-y, y-y1+r), 0)
		return x >= x0 && x <= x1 && y >= y0 && y <= y1 && math.Hypot(dx, dy) <= r
	}
	pod := func(cx, cy, radius, gap float64) bool { // where two circles meet
		return math.Hypot(x-cx, y-cy+gap) < radius && math.Hypot(x-cx, y-cy-gap) < radius
	}
	switch {
	case !box(0.02, 0.02, 0.98, 0.98, 0.2):
		return color.NRGBA{}
	case math.Hypot(x-0.42, y-0.59) < 0.024, math.Hypot(x-0.5, y-0.59) < 0.03, math.Hypot(x-0.58, y-0.59) < 0.024:
		return g.Card
	case pod(0.5, 0.59, 0.26, 0.18):
		return palette.Plant
	case box(0.3, 0.42, 0.7, 0.735, 0.04):
		return palette.Boiling
	case box(0.255, 0.3, 0.745, 0.78, 0.07) && y > 0.3:
		if box(0.3, 0.3, 0.7, 0.735, 0.04) || (x > 0.3 && x < 0.7 && y < 0.45) {
			return palette.Air
		}
		return g.Ink
	case box(0.2, 0.27, 0.8, 0.325, 0.025), box(0.14, 0.4, 0.28, 0.45, 0.02), box(0.72, 0.4, 0.86, 0.45, 0.02), box(0.42, 0.19, 0.58, 0.235, 0.02), box(0.475, 0.2, 0.525, 0.3, 0.01):
		return g.Ink
	case box(0.3, 0.84, 0.7, 0.885, 0.02):
		return palette.Heat
	default:
		return g.Paper
	}
}
