package drawing

import (
	"image"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/content/palette"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s = %g, want %g ± %g", what, got, want, tolerance)
	}
}

func TestWaterStandsAtItsShare(t *testing.T) {
	looktest.App(t, look.Light)
	k := NewKettle()
	for _, share := range []float64{0.25, 0.5, 1} {
		s := KettleState{HoldsL: 8, WaterL: 8 * share}
		form := kettleOf(s.holds(), 0, 100, 120, 100)
		level, _ := drawKettle(&pen{owner: k}, form, s)
		near(t, "height of the water", (form.floor-level)/form.mark, share, 1e-9)
	}
	form := kettleOf(2, 0, 100, 120, 100)
	level, _ := drawKettle(&pen{owner: k}, form, KettleState{HoldsL: 2, WaterL: 9})
	if level < form.floor-form.tall {
		t.Error("too much water stands over the rim")
	}
}

func TestKettleGrowsWithItsVolume(t *testing.T) {
	small, large := kettleOf(2, 0, 100, 120, 100), kettleOf(4, 0, 100, 120, 100)
	near(t, "width ratio", large.wide/small.wide, math.Cbrt(2), 1e-9)
	// the drawn section belongs to a kettle of the stated volume
	cm := large.wide / large.unitsPerCm
	near(t, "volume to the mark", math.Pi/4*cm*cm*large.mark/large.unitsPerCm/1000, 4, 1e-9)
	if huge := kettleOf(100, 0, 100, 120, 100); huge.wide > 120.001 || huge.tall > 100.001 {
		t.Error("a large kettle does not fit its space")
	}
}

// TestLoadIsToScale asks that the drawn area of the pieces is the share of the
// section that their volume is of the water.
func TestLoadIsToScale(t *testing.T) {
	for _, kg := range []float64{0.2, 0.4536, 1.2} {
		form := kettleOf(6, 0, 300, 300, 300)
		one := pieceCm2 * form.unitsPerCm * form.unitsPerCm
		want := kg / vegKgPerL / 6 * form.wide * form.mark
		pieces, top := heap(0, form.floor, form.wide, max(1, int(math.Round(want/one))), one)
		near(t, "area of the pieces", area(pieces), want, want*0.06+one)
		if top >= form.floor {
			t.Error("the pieces have no height")
		}
	}
	pieces, _ := layer(0, 100, 200, 900, 60)
	near(t, "area of one layer", area(pieces), 900, 900*0.1)
	if _, top := layer(0, 100, 200, 9000, 60); 100-top > 8 {
		t.Errorf("a single layer is %g high", 100-top)
	}
}

// area adds up the areas of closed shapes.
func area(p path) float64 {
	var sum float64
	for _, points := range p {
		var twice float64
		for i, a := range points {
			b := points[(i+1)%len(points)]
			twice += a.x*b.y - b.x*a.y
		}
		sum += math.Abs(twice) / 2
	}
	return sum
}

// TestIceFloatsAboveTheFood asks that ice and vegetables do not overlap in
// baths of any size.
func TestIceFloatsAboveTheFood(t *testing.T) {
	looktest.App(t, look.Light)
	for _, kg := range []float64{0.05, 0.3, 0.9, 1.4, 3, 6, 20, 100} {
		for _, size := range []fyne.Size{fyne.NewSize(284, 132), fyne.NewSize(420, 150), fyne.NewSize(420, 190)} {
			b := NewBath()
			b.state = BathState{FoodKg: kg, IceKg: kg}
			p := &pen{owner: b}
			b.draw(p, size)
			bottom, top := 0.0, 1e9
			for _, m := range p.marks {
				for _, shape := range m.shape {
					for _, q := range shape {
						switch {
						case m.width == 0 && m.colour == p.tint(look.Ice, look.Air, 0.25):
							bottom = max(bottom, q.y)
						case m.width == 0 && m.colour == palette.Plant:
							top = min(top, q.y)
						}
					}
				}
			}
			if bottom > top+4 {
				t.Errorf("%g kg at %v: ice reaches down to %.0f, food up to %.0f", kg, size, bottom, top)
			}
		}
	}
}

func TestPackHoldsItsPints(t *testing.T) {
	for _, pints := range []float64{1, 2} {
		wide, tall := PackState{Kind: PackJar, Pints: pints}.inside()
		near(t, "jar", math.Pi/4*wide*wide*tall, pints*pintCuIn, 1e-9)
		wide, tall = PackState{Kind: PackBox, Pints: pints}.inside()
		near(t, "box", wide*3.4*tall, pints*pintCuIn, 1e-9)
		if _, tall := (PackState{Kind: PackBag, Pints: pints}).inside(); tall < 3 || tall > 9 {
			t.Errorf("a bag of %g pints stands %g in tall", pints, tall)
		}
	}
}

// TestHeadspaceIsToScale measures the air drawn above the content against the
// pack.
func TestHeadspaceIsToScale(t *testing.T) {
	looktest.App(t, look.Light)
	p := NewPackSection()
	p.Set(PackState{Kind: PackBox, Pints: 2, HeadspaceIn: 1, Liquid: true})
	w := looktest.Window(t, p, 300, 300)
	img := w.Canvas().Capture()
	_, tall := p.state.inside()
	x := rulerLeast + 4 + 50 // within the pack, whatever its width
	air, plant := count(img, x, palette.Air), count(img, x, palette.Plant)
	near(t, "headspace over all", float64(air)/float64(air+plant), 1/tall, 0.03)
	p.Set(PackState{Kind: PackBox, Pints: 2, Liquid: true})
	if n := count(w.Canvas().Capture(), x, palette.Air); n > 1 {
		t.Errorf("a pack without headspace shows %d lines of air", n)
	}
}

// count is how many pixels of one column have a colour.
func count(img image.Image, x int, want color.NRGBA) int {
	n := 0
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		if color.NRGBAModel.Convert(img.At(x, y)) == want {
			n++
		}
	}
	return n
}

func TestSetRedraws(t *testing.T) {
	looktest.App(t, look.Light)
	k := NewKettle()
	k.Set(threeLoads)
	w := looktest.Window(t, k, 300, 170)
	before := w.Canvas().Capture()
	more := threeLoads
	more.WaterL, more.Water = 2, "2 qt water"
	k.Set(more)
	after := w.Canvas().Capture()
	if same(before, after) {
		t.Error("Set did not redraw")
	}
	if !says(k, "2 qt water") || says(k, "1 gal water") {
		t.Error("the old label stands")
	}
}

func same(a, b image.Image) bool {
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			if a.At(x, y) != b.At(x, y) {
				return false
			}
		}
	}
	return true
}

func texts(o fyne.Widget) []*canvas.Text {
	var out []*canvas.Text
	for _, one := range test.WidgetRenderer(o).Objects() {
		if text, ok := one.(*canvas.Text); ok && text.Visible() {
			out = append(out, text)
		}
	}
	return out
}

func says(o fyne.Widget, what string) bool {
	for _, text := range texts(o) {
		if text.Text == what {
			return true
		}
	}
	return false
}

// TestLabelsStayInside asks that no label is cut at the least size, and that
// none lies on another.
func TestLabelsStayInside(t *testing.T) {
	for _, state := range states {
		t.Run(state.name, func(t *testing.T) {
			state.app(t, look.Light)
			fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
			o := state.make()
			least := o.MinSize()
			looktest.Window(t, o, least.Width, least.Height)
			all := texts(o.(fyne.Widget))
			for i, a := range all {
				if p, s := a.Position(), a.Size(); p.X < -1 || p.Y < -4 || p.X+s.Width > least.Width+1 || p.Y+s.Height > least.Height+4 {
					t.Errorf("“%s” at %v of %v stands out of %v", a.Text, p, s, least)
				}
				for _, b := range all[i+1:] {
					if overlap(a, b) {
						t.Errorf("“%s” lies on “%s”", a.Text, b.Text)
					}
				}
			}
		})
	}
}

func overlap(a, b fyne.CanvasObject) bool {
	const slack = 3
	p, q, s, r := a.Position(), b.Position(), a.Size(), b.Size()
	return p.X+slack < q.X+r.Width && q.X+slack < p.X+s.Width && p.Y+slack < q.Y+r.Height && q.Y+slack < p.Y+s.Height
}

// TestGrey asks that substances that touch in a drawing differ in luminance, so
// that a grey print keeps them apart.
func TestGrey(t *testing.T) {
	touching := map[string][2]color.NRGBA{
		"vegetables in boiling water": {palette.Plant, palette.Boiling},
		"vegetables in ice water":     {palette.Plant, palette.Ice},
		"vegetables below headspace":  {palette.Plant, palette.Air},
		"boiling water below air":     {palette.Boiling, palette.Air},
		"ice water below air":         {palette.Ice, palette.Air},
		"wall beside boiling water":   {palette.Metal, palette.Boiling},
		"wall beside ice water":       {palette.Metal, palette.Ice},
		"wall beside air":             {palette.Metal, palette.Air},
		"counted beside chilled":      {palette.Boiling, palette.Ice},
		"outline of vegetables":       {palette.Plant, palette.Light.Card},
		"line on air":                 {palette.Light.Ink, palette.Air},
	}
	for what, pair := range touching {
		a, b := luminance(pair[0]), luminance(pair[1])
		if ratio := (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05); ratio < 1.3 {
			t.Errorf("%s: contrast in grey is only %.2f", what, ratio)
		}
	}
}

// luminance is the relative luminance of a colour (WCAG 2, from memory).
func luminance(c color.NRGBA) float64 {
	part := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

// TestOddNumbers draws what cannot be: nothing may panic.
func TestOddNumbers(t *testing.T) {
	looktest.App(t, look.Light)
	odd := []float64{0, -1, 1e-6, 1e6, math.NaN(), math.Inf(1)}
	for _, x := range odd {
		for _, o := range []fyne.CanvasObject{
			kettleIn(KettleState{HoldsL: x, WaterL: x, LoadKg: x, Loads: 3})(),
			kettleIn(KettleState{HoldsL: 4, WaterL: x, LoadKg: x, Steam: true, Loads: 1000000})(),
			bathIn(BathState{FoodKg: x, IceKg: x, WaterL: x})(),
			packIn(PackState{Kind: PackJar, Pints: x, HeadspaceIn: x, Narrow: true})(),
			packIn(PackState{Pints: 1, HeadspaceIn: x})(),
			freezerIn(FreezerState{CapacityL: x, FoodKg: x, DayLowKg: x, DayHighKg: x, Days: 5})(),
			freezerIn(FreezerState{CapacityL: 100, FoodKg: x, Days: 1000000})(),
			clockIn(ClockState{Minutes: x, MinutesHigh: x, ChillMin: x, AtBoil: true})(),
		} {
			o.Resize(fyne.NewSize(280, 140))
			test.WidgetRenderer(o.(fyne.Widget)).(*surfaceRenderer).generate(280, 140)
		}
	}
}
