package look

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"example.org/kettleside/content/palette"
	"example.org/kettleside/content/typeface"
)

// Variant is one of the grounds on which the window is drawn.
type Variant string

// The grounds that the View menu offers.
const (
	Light        Variant = "light"
	Dark         Variant = "dark"
	HighContrast Variant = "high contrast"
)

// VariantNamed is the variant of that name, Light for any other text, so that
// a damaged setting is harmless.
func VariantNamed(name string) Variant {
	switch v := Variant(name); v {
	case Dark, HighContrast:
		return v
	default:
		return Light
	}
}

// Theme answers every colour, size and face of the window.
type Theme struct {
	Variant Variant
	Scale   float32 // of the type scale and the white around it; 1 is normal

	colors map[fyne.ThemeColorName]color.Color
}

var _ fyne.Theme = (*Theme)(nil)

// New is the theme for a variant at normal size.
func New(v Variant) *Theme { return NewScaled(v, 1) }

// NewScaled is the theme for a variant with larger or smaller type.
func NewScaled(v Variant, scale float32) *Theme {
	return &Theme{Variant: v, Scale: scale, colors: colorsOf(groundOf(v))}
}

func groundOf(v Variant) palette.Ground {
	switch v {
	case Dark:
		return palette.Dark
	case HighContrast:
		return palette.HighContrast
	default:
		return palette.Light
	}
}

// colorsOf maps every name, ours and the toolkit's, to a colour.
func colorsOf(g palette.Ground) map[fyne.ThemeColorName]color.Color {
	return map[fyne.ThemeColorName]color.Color{
		Ink: g.Ink, InkSoft: g.InkSoft, Paper: g.Paper, Card: g.Card, Rule: g.Rule,
		Boiling: palette.Boiling, Ice: palette.Ice, Heat: palette.Heat,
		Plant: palette.Plant, Metal: palette.Metal, Air: palette.Air,
		Stop: g.Stop, Mind: g.Mind, Note: g.Note, Edited: g.Edited,

		theme.ColorNameBackground:          g.Paper,
		theme.ColorNameButton:              over(g.Paper, g.Ink, 0x16),
		theme.ColorNameDisabled:            mix(g.Paper, g.Ink, 0.45),
		theme.ColorNameDisabledButton:      over(g.Paper, g.Ink, 0x0C),
		theme.ColorNameError:               g.Stop,
		theme.ColorNameFocus:               alpha(g.Ink, 0x38),
		theme.ColorNameForeground:          g.Ink,
		theme.ColorNameForegroundOnError:   g.Card,
		theme.ColorNameForegroundOnPrimary: g.Paper,
		theme.ColorNameForegroundOnSuccess: g.Card,
		theme.ColorNameForegroundOnWarning: g.Card,
		theme.ColorNameHeaderBackground:    over(g.Paper, g.Ink, 0x0C),
		theme.ColorNameHover:               alpha(g.Ink, 0x12),
		theme.ColorNameHyperlink:           g.Note,
		theme.ColorNameInputBackground:     g.Field,
		theme.ColorNameInputBorder:         g.Edge,
		theme.ColorNameMenuBackground:      g.Card,
		theme.ColorNameOverlayBackground:   g.Card,
		theme.ColorNamePlaceHolder:         g.InkSoft,
		theme.ColorNamePressed:             alpha(g.Ink, 0x26),
		theme.ColorNamePrimary:             g.Ink,
		theme.ColorNameScrollBar:           alpha(g.Ink, 0x70),
		theme.ColorNameScrollBarBackground: alpha(g.Ink, 0x0A),
		theme.ColorNameSelection:           alpha(g.Ink, 0x22),
		theme.ColorNameSeparator:           g.Rule,
		theme.ColorNameShadow:              color.NRGBA{A: 0x40},
		theme.ColorNameSuccess:             g.Note,
		theme.ColorNameWarning:             g.Mind,
	}
}

// Color answers a colour name. The toolkit's own variant is not asked: the
// ground is chosen in the View menu.
func (t *Theme) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	if c, ok := t.colors[name]; ok {
		return c
	}
	return theme.DefaultTheme().Color(name, v)
}

// sizes are the type scale and the white around it, at scale 1.
var sizes = map[fyne.ThemeSizeName]float32{
	SizeSmall: 13, SizeText: 16, SizeHeading: 21, SizeFigure: 28, SizeLarge: 44, SizeHuge: 72,

	theme.SizeNameText:           16,
	theme.SizeNameCaptionText:    13,
	theme.SizeNameSubHeadingText: 21,
	theme.SizeNameHeadingText:    28,
	theme.SizeNamePadding:        4,
	theme.SizeNameInnerPadding:   7,
	theme.SizeNameLineSpacing:    3,
	theme.SizeNameInlineIcon:     20,
	theme.SizeNameInputRadius:    3,
}

// Size answers a size name.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	size, ok := sizes[name]
	if !ok {
		return theme.DefaultTheme().Size(name)
	}
	if name == theme.SizeNameInputRadius {
		return size
	}
	return size * t.Scale
}

var (
	regular  = fyne.NewStaticResource("PlexSans-Regular.ttf", typeface.Regular)
	semiBold = fyne.NewStaticResource("PlexSans-SemiBold.ttf", typeface.SemiBold)
	italic   = fyne.NewStaticResource("PlexSans-Italic.ttf", typeface.Italic)
)

// Font answers the one face; its digits all have one width, so that it serves
// as the monospaced face too.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return theme.DefaultTheme().Font(style)
	case style.Bold:
		return semiBold
	case style.Italic:
		return italic
	default:
		return regular
	}
}

// Icon answers the toolkit's own icons.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

// Color is a colour of the current theme. Where another theme is set (a test
// of the toolkit's own widgets) our names are answered in their light form.
func Color(name fyne.ThemeColorName) color.Color { return Current().Color(name, theme.VariantLight) }

// Size is a size of the current theme.
func Size(name fyne.ThemeSizeName) float32 { return Current().Size(name) }

// Current is the theme that the program is shown in.
func Current() *Theme {
	if app := fyne.CurrentApp(); app != nil {
		if t, ok := app.Settings().Theme().(*Theme); ok {
			return t
		}
	}
	return fallback
}

var fallback = New(Light)

// Tint is a colour of the current theme laid thinly over whatever is below,
// for areas that must not drown the text on them.
func Tint(name fyne.ThemeColorName, a uint8) color.Color {
	c := color.NRGBAModel.Convert(Color(name)).(color.NRGBA)
	return alpha(c, a)
}

func alpha(c color.NRGBA, a uint8) color.NRGBA {
	c.A = a
	return c
}

// over is c at strength a laid on a ground, as an opaque colour.
func over(ground, c color.NRGBA, a uint8) color.NRGBA { return mix(ground, c, float64(a)/255) }

func mix(a, b color.NRGBA, share float64) color.NRGBA {
	part := func(x, y uint8) uint8 { return uint8(float64(x)*(1-share) + float64(y)*share + 0.5) }
	return color.NRGBA{R: part(a.R, b.R), G: part(a.G, b.G), B: part(a.B, b.B), A: 0xFF}
}

// Sentence makes a text begin with a capital letter, unless it begins with the
// name of a file.
func Sentence(text string) string {
	first, _, _ := strings.Cut(text, " ")
	if text == "" || strings.Contains(strings.TrimRight(first, ".…"), ".") {
		return text
	}
	r := []rune(text)
	return strings.ToUpper(string(r[0])) + string(r[1:])
}
