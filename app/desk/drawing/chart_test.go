package drawing

import (
	"fmt"
	"image/color"
	"math"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/palette"
)

// The charts of these tests are invented: curves of the right shape, computed
// from nothing.

// drawnBy is a curve through n+1 places from 0 to end.
func drawnBy(id string, end float64, n int, y func(float64) float64) measure.Curve {
	c := measure.Curve{ID: id, Label: id}
	for i := range n + 1 {
		x := end * float64(i) / float64(n)
		c.X, c.Y = append(c.X, x), append(c.Y, y(x))
	}
	return c
}

// towards goes from a to b, by all but a third in each time.
func towards(a, b, time float64) func(float64) float64 {
	return func(x float64) float64 { return b + (a-b)*math.Exp(-x/time) }
}

func kettleChart() measure.Chart {
	water := func(x float64) float64 {
		return math.Min(212, 212-24*math.Exp(-math.Pow((x-0.4)/0.5, 2))+24*math.Exp(-0.64)*math.Exp(-x*8))
	}
	return measure.Chart{
		ID: "kettle", Title: "Invented kettle",
		X: measure.Axis{Label: "after the lid goes on", Unit: "min"}, Y: measure.Axis{Label: "temperature", Unit: "°F"},
		Curves: []measure.Curve{
			drawnBy("water", 6, 240, water),
			drawnBy("centre", 6, 240, func(x float64) float64 { return 60 + 152*math.Pow(1-math.Exp(-x/1.1), 2) }),
			drawnBy("mean", 6, 240, towards(60, 212, 0.95)),
		},
		Marks: []measure.Mark{
			{ID: "one-minute", Label: "one minute", OnX: true, At: 1},
			{ID: "return", Label: "boils again", OnX: true, At: 1.55},
			{ID: "lift", Label: "lift", OnX: true, At: 4.55},
		},
	}
}

func bathChart() measure.Chart {
	return measure.Chart{
		ID: "bath", Title: "Invented bath",
		X: measure.Axis{Label: "in the ice water", Unit: "min"}, Y: measure.Axis{Unit: "°F"},
		Curves: []measure.Curve{
			drawnBy("water", 8, 160, func(x float64) float64 { return 33 + 6*(1-math.Exp(-x/0.8))*math.Exp(-x/9) }),
			drawnBy("centre", 8, 160, func(x float64) float64 { return 37 + 165*(1-math.Pow(1-math.Exp(-x/1.3), 2)) }),
		},
		Marks: []measure.Mark{
			{ID: "fifty", Label: "50 °F", At: 50},
			{ID: "forty", Label: "40 °F", At: 40},
			{ID: "chill", Label: "published chill", OnX: true, At: 3},
		},
	}
}

func freezingChart() measure.Chart {
	return measure.Chart{
		ID: "freezing", Title: "Invented freezing",
		X: measure.Axis{Label: "in the freezer", Unit: "h"}, Y: measure.Axis{Label: "temperature", Unit: "°F"},
		Curves: []measure.Curve{
			drawnBy("core", 24, 240, func(x float64) float64 {
				return 4*math.Exp(-x) + 30 - 34/(1+math.Exp((11-x)/1.4))
			}),
			drawnBy("air", 24, 240, func(x float64) float64 { return -6 + 14*math.Exp(-x/3) }),
		},
		Marks: []measure.Mark{{ID: "zero", Label: "0 °F", At: 0}},
	}
}

func warmthChart() measure.Chart {
	c := freezingChart()
	c.ID, c.Curves = "warmth", []measure.Curve{drawnBy("freezer", 30, 60, func(x float64) float64 { return 9 * x * math.Exp(-x/4) / 2 })}
	c.Marks = []measure.Mark{{ID: "ten", Label: "10 °F", At: 10}}
	return c
}

// chartIn is a chart in a window.
func chartIn(t *testing.T, chart measure.Chart, wide, tall float32) (*Chart, fyne.Window) {
	t.Helper()
	c := NewChart()
	c.Set(chart)
	return c, looktest.Window(t, look.NewSurface(look.Card, c), wide, tall)
}

// TestChartPictures compares a kettle and a bath, as large as a tile, with
// their golden pictures.
func TestChartPictures(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark} {
		for _, chart := range []measure.Chart{kettleChart(), bathChart()} {
			name := fmt.Sprint("chart-", chart.ID, "-", v)
			t.Run(name, func(t *testing.T) {
				looktest.App(t, v)
				_, w := chartIn(t, chart, 280, 150)
				golden(t, name, looktest.Picture(t, w, name))
			})
		}
	}
	looktest.App(t, look.Light)
	c, w := chartIn(t, kettleChart(), 700, 320)
	c.point(true, 2.5)
	golden(t, "chart-pointed", looktest.Picture(t, w, "chart-pointed"))
}

// TestChartsStand draws all charts on every ground, small, large and in larger
// type, also for a person to look at: every line has its name, no text lies on
// another, none stands out.
func TestChartsStand(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark, look.HighContrast} {
		for _, chart := range []measure.Chart{kettleChart(), bathChart(), freezingChart(), warmthChart()} {
			for _, size := range []struct{ wide, tall, larger float32 }{{280, 150, 1}, {300, 170, 1}, {420, 225, 1.5}, {700, 320, 1}} {
				t.Run(fmt.Sprint(chart.ID, " ", v, " ", size), func(t *testing.T) {
					app := looktest.App(t, v)
					app.Settings().SetTheme(look.NewScaled(v, size.larger))
					c, w := chartIn(t, chart, size.wide, size.tall)
					for _, pointed := range []bool{false, true} {
						c.point(pointed, 2.5)
						looktest.Picture(t, w, fmt.Sprint("chart-", chart.ID, "-", v, "-", size.wide, "-", pointed))
						textfits.Check(t, w)
						apartIn(t, c)
						for _, one := range chart.Curves {
							if !says(c, one.Label) {
								t.Errorf("the line of %s has no name", one.Label)
							}
						}
					}
				})
			}
		}
	}
}

// apartIn asks that no two texts of a chart lie on each other.
func apartIn(t testing.TB, c *Chart) {
	t.Helper()
	all := texts(c)
	for i, a := range all {
		for _, b := range all[i+1:] {
			if overlap(a, b) {
				t.Errorf("“%s” lies on “%s”", a.Text, b.Text)
			}
		}
	}
}

// TestCurvesGoWhereTheirNumbersAre looks for the colour of a line where the
// axes say that it is.
func TestCurvesGoWhereTheirNumbersAre(t *testing.T) {
	looktest.App(t, look.Light)
	c, w := chartIn(t, kettleChart(), 700, 320)
	img, f := w.Canvas().Capture(), c.frame
	for _, x := range []float64{0.5, 2.2, 3.1, 4.9} {
		for i, want := range []color.NRGBA{palette.Boiling, palette.Plant} {
			y, _ := c.graph.curves[i].value(x, 0)
			if got := color.NRGBAModel.Convert(img.At(int(f.px(x)), int(f.py(y)))); got != want {
				t.Errorf("at %g min and %.0f °F stands %v, not %v", x, y, got, want)
			}
		}
		near(t, "place under the pointer", f.xAt(f.px(x)), x, 1e-9)
	}
}

// TestLinesStandOut asks that each line has 3:1 against paper and card, by
// itself or by its outline, and that lines of one chart differ without colour.
func TestLinesStandOut(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark, look.HighContrast} {
		looktest.App(t, v)
		p := &pen{owner: NewChart()}
		for _, chart := range []measure.Chart{kettleChart(), bathChart(), freezingChart(), warmthChart()} {
			seen := map[style]bool{}
			for i, one := range chart.Curves {
				s := styleOf(chart.ID, one.ID, i)
				line, cased := p.lineColour(s.name)
				if cased {
					line = p.colour(look.InkSoft)
				}
				for _, ground := range []fyne.ThemeColorName{look.Paper, look.Card} {
					a, b := luminance(line), luminance(p.colour(ground))
					if ratio := (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05); ratio < 3 {
						t.Errorf("%s, %s of %s: %.2f to %s", v, one.ID, chart.ID, ratio, ground)
					}
				}
				grey := style{width: s.width, on: s.on}
				if seen[grey] {
					t.Errorf("%s of %s is drawn like another line", one.ID, chart.ID)
				}
				seen[grey] = true
			}
		}
	}
	if styleOf("kettle", "water", 0).name == styleOf("bath", "water", 0).name {
		t.Error("boiling water and ice water have one colour")
	}
}

func TestChartUnderPointer(t *testing.T) {
	looktest.App(t, look.Light)
	c, w := chartIn(t, kettleChart(), 700, 320)
	bare := w.Canvas().Capture()
	name, said := "min after the lid goes on", "2.5 min · water 212 °F · centre 182 °F · mean 201 °F"
	test.MoveMouse(w.Canvas(), fyne.NewPos(float32(c.frame.px(2.48)), 100))
	if !says(c, said) || says(c, name) {
		t.Errorf("under the pointer stands %s", textfits.All(c))
	}
	if same(bare, w.Canvas().Capture()) {
		t.Error("no hairline is drawn")
	}
	test.MoveMouse(w.Canvas(), fyne.NewPos(float32(c.frame.px(0)-3), 100)) // beside the end
	if !says(c, c.ReadAt(0)) {
		t.Errorf("beside the end stands %s", textfits.All(c))
	}
	test.MoveMouse(w.Canvas(), fyne.NewPos(3, 100)) // on the numbers of the axis
	if says(c, said) || !says(c, name) || !same(bare, w.Canvas().Capture()) {
		t.Errorf("beside the curves stands %s", textfits.All(c))
	}
	c.point(true, 2.5)
	c.MouseOut()
	if !says(c, name) || !same(bare, w.Canvas().Capture()) {
		t.Error("when the pointer has left something stays")
	}
	// in a tile the unit is named once
	c, _ = chartIn(t, kettleChart(), 280, 150)
	c.point(true, 2.5)
	if short := "2.5 min · water 212 · centre 182 · mean 201 °F"; !says(c, short) {
		t.Errorf("in a tile stands %s", textfits.All(c))
	}
}

func TestChartSet(t *testing.T) {
	looktest.App(t, look.Light)
	chart := kettleChart()
	c, w := chartIn(t, chart, 280, 150)
	set, before := c.set, w.Canvas().Capture()
	c.Set(kettleChart())
	if c.set != set {
		t.Error("the same chart was laid out again")
	}
	chart.Curves[1].Y[100] = 20 // in place
	c.Set(chart)
	if c.set == set || same(before, w.Canvas().Capture()) {
		t.Error("a changed number is not drawn")
	}
}

// TestChartWithoutCurves asks for the note alone, in whole words, and cut where
// it is too long.
func TestChartWithoutCurves(t *testing.T) {
	looktest.App(t, look.Light)
	chart := kettleChart()
	chart.Curves, chart.Note = nil, "Enter what the kettle holds, and how hot the burner is, to see how fast it boils again."
	c, w := chartIn(t, chart, 280, 150)
	looktest.Picture(t, w, "chart-note")
	textfits.Check(t, w)
	if got := textfits.All(c); got != chart.Note {
		t.Errorf("instead of the note stands %q", got)
	}
	if n := len(test.WidgetRenderer(c).(*surfaceRenderer).pen.marks); n != 0 {
		t.Errorf("%d shapes are drawn around the note", n)
	}
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(100, 50)}})
	if c.pointed || c.ReadAt(1) != "" {
		t.Error("a note is read like a curve")
	}
	chart.Note = strings.Repeat("many words without an end ", 40)
	c.Set(chart)
	textfits.Check(t, w)
	if got := textfits.All(c); !strings.HasSuffix(got, "…") {
		t.Errorf("the long note ends with %q", got[len(got)-20:])
	}
	chart.Note = ""
	c.Set(chart)
	if got := textfits.All(c); got != "" {
		t.Errorf("without a note stands %q", got)
	}
	chart.Note, chart.Curves = "nothing yet", []measure.Curve{{ID: "water", Label: "water", X: []float64{math.NaN()}, Y: []float64{1}}}
	c.Set(chart)
	if got := textfits.All(c); got != "nothing yet" {
		t.Errorf("with a curve of nothing stands %q", got)
	}
}

// TestOddCharts draws what cannot be: nothing may panic or take long.
func TestOddCharts(t *testing.T) {
	looktest.App(t, look.Light)
	long := make([]float64, 300000)
	for i := range long {
		long[i] = wobble(i)
	}
	inf, nan := math.Inf(1), math.NaN()
	odd := [][]float64{
		nil, {}, {0}, {1, 1, 1}, {3, 2, 1}, {0, nan, 2}, {nan, nan}, {-inf, 0, inf}, {1e300, 2e300}, {1e6, -1e6, 1e6},
		{0, 1e-300}, {5, 5 + 1e-12}, long,
	}
	c := NewChart()
	began := time.Now()
	for i, x := range odd {
		for j, y := range odd {
			chart := kettleChart()
			chart.Curves = append(chart.Curves, measure.Curve{ID: "odd", Label: strings.Repeat("odd ", i*j), X: x, Y: y})
			if i%2 == 0 {
				chart.Curves = chart.Curves[3:]
			}
			for _, at := range []float64{0, nan, inf, -inf, 1e300, 1e6} {
				chart.Marks = append(chart.Marks, measure.Mark{Label: "odd", At: at}, measure.Mark{Label: "odd", OnX: true, At: at})
			}
			c.Set(chart)
			for _, size := range []fyne.Size{fyne.NewSize(280, 150), fyne.NewSize(1, 1), fyne.NewSize(40, 400)} {
				c.Resize(size)
				c.point(true, float64(i-2))
				test.WidgetRenderer(c).(*surfaceRenderer).generate(int(size.Width), int(size.Height))
			}
			for _, at := range []float64{nan, inf, -1e300, 0, 1} {
				c.ReadAt(at)
			}
		}
	}
	if took := time.Since(began); took > 30*time.Second {
		t.Errorf("%d odd charts took %v", len(odd)*len(odd), took)
	}
	c.Set(measure.Chart{Curves: []measure.Curve{{Label: "one", X: []float64{3}, Y: []float64{40}}}})
	c.Resize(fyne.NewSize(280, 150))
	if !says(c, "one") || c.ReadAt(3) != "3 · one 40" {
		t.Errorf("a curve of one point says %s, %q", textfits.All(c), c.ReadAt(3))
	}
}

// TestDashesAndRibbons measures the lines that curves are drawn with.
func TestDashesAndRibbons(t *testing.T) {
	var bend []point
	for i := range 201 {
		bend = append(bend, point{float64(i) / 2, 30 * math.Sin(float64(i)/60)})
	}
	long := func(p path) (sum float64) {
		for _, points := range p {
			for i := 1; i < len(points); i++ {
				sum += math.Hypot(points[i].x-points[i-1].x, points[i].y-points[i-1].y)
			}
		}
		return sum
	}
	whole := long(path{bend})
	dashes := path{bend}.stitched(6, 4)
	near(t, "length of the dashes", long(dashes), whole*0.6, 6)
	for _, dash := range dashes[:len(dashes)-1] {
		near(t, "one dash", long(path{dash}), 6, 1e-6)
	}
	near(t, "area of a ribbon", area(path{bend}.ribbon(2)), whole*2, 0.5)
	corner := path{{{0, 0}, {10, 0}, {10, 0}, {10, 10}}}
	near(t, "area at a corner, with its round", area(corner.ribbon(2)), 2*20+math.Pi, 0.1)
}

func BenchmarkChart(b *testing.B) {
	looktest.App(b, look.Light)
	for _, wide := range []float32{280, 700} {
		c := NewChart()
		c.Set(kettleChart())
		c.Resize(fyne.NewSize(wide, wide/2))
		r := test.WidgetRenderer(c).(*surfaceRenderer)
		b.Run(fmt.Sprint("layout ", wide), func(b *testing.B) {
			for b.Loop() {
				c.set = nil
				r.record()
			}
		})
		b.Run(fmt.Sprint("paint ", wide), func(b *testing.B) {
			for b.Loop() {
				r.generate(int(2*wide), int(wide))
			}
		})
	}
}
