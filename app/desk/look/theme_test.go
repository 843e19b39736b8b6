package look

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"example.org/kettleside/content/palette"
)

var variants = []Variant{Light, Dark, HighContrast}

func TestThemeAnswersEveryName(t *testing.T) {
	test.NewTempApp(t)
	for _, v := range variants {
		test.AssertAllColorNamesDefined(t, New(v), string(v))
		for _, name := range []fyne.ThemeColorName{Ink, InkSoft, Paper, Card, Rule, Boiling, Ice, Heat, Plant, Metal, Air, Stop, Mind, Note, Edited} {
			if _, _, _, a := New(v).Color(name, theme.VariantLight).RGBA(); a != 0xFFFF {
				t.Errorf("%s: %s is not opaque", v, name)
			}
		}
	}
	for name, want := range map[fyne.ThemeSizeName]float32{SizeSmall: 13, SizeText: 16, SizeHeading: 21, SizeFigure: 28, SizeLarge: 44, SizeHuge: 72} {
		if got := New(Light).Size(name); got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
}

// Text needs a contrast of 4.5 to 1, and what means something 3 to 1
// (Web Content Accessibility Guidelines 2.1, 1.4.3 and 1.4.11, from memory).
func TestTextStandsOutFromItsGround(t *testing.T) {
	for _, v := range variants {
		g := groundOf(v)
		for _, ground := range []color.NRGBA{g.Paper, g.Card, g.Field} {
			for name, ink := range map[string]color.NRGBA{"ink": g.Ink, "ink-soft": g.InkSoft, "stop": g.Stop, "mind": g.Mind, "note": g.Note, "edited": g.Edited} {
				if got := contrast(ink, ground); got < 4.5 {
					t.Errorf("%s: %s on %v has a contrast of %.2f", v, name, ground, got)
				}
			}
		}
		if got := contrast(g.Edge, g.Field); got < 3 {
			t.Errorf("%s: the border of a field has a contrast of %.2f", v, got)
		}
	}
}

// The substances must stay apart in grey print, and for people who lack the
// long- or middle-wave cones; lightness (CIE L*) alone must do it.
func TestSubstancesStayApart(t *testing.T) {
	ladder := []color.NRGBA{palette.Boiling, palette.Plant, palette.Metal, palette.Heat, palette.Ice, palette.Air}
	for i := 1; i < len(ladder); i++ {
		if step := lightness(ladder[i]) - lightness(ladder[i-1]); step < 6 {
			t.Errorf("rung %d is only %.1f lighter than the one below", i, step)
		}
	}
}

func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	if x < y {
		x, y = y, x
	}
	return (x + 0.05) / (y + 0.05)
}

func luminance(c color.NRGBA) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func lightness(c color.NRGBA) float64 { return 116*math.Cbrt(luminance(c)) - 16 }
