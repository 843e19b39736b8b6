package drawing

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

// wandering is a curve of any shape.
func wandering(t *rapid.T, name string) measure.Curve {
	c := measure.Curve{ID: rapid.SampledFrom([]string{"water", "centre", "mean", "core", "air", "x"}).Draw(t, name+" id"), Label: name}
	x, y := rapid.Float64Range(0, 3).Draw(t, name+" x"), rapid.Float64Range(-20, 212).Draw(t, name+" y")
	rough := rapid.SampledFrom([]float64{0, 1, 10, 100}).Draw(t, name+" rough")
	for range rapid.IntRange(1, 40).Draw(t, name+" points") {
		c.X, c.Y = append(c.X, x), append(c.Y, y)
		x += rapid.Float64Range(0, 2).Draw(t, "dx")
		y += rough * rapid.Float64Range(-1, 1).Draw(t, "dy")
	}
	return c
}

// TestTextsOfAnyChart asks of charts of any shape and size that no text lies
// on another or stands out, and of those as large as a tile that every line
// has its name.
func TestTextsOfAnyChart(t *testing.T) {
	app := looktest.App(t, look.Light)
	app.Settings().SetTheme(look.NewScaled(look.Light, 1.2)) // so that sizes are no whole numbers
	c := NewChart()
	least := test.WidgetRenderer(c).MinSize()
	rapid.Check(t, func(t *rapid.T) {
		chart := measure.Chart{
			ID: rapid.SampledFrom([]string{"kettle", "bath"}).Draw(t, "id"),
			X:  measure.Axis{Label: "after the lid goes on", Unit: rapid.SampledFrom([]string{"min", "h", ""}).Draw(t, "x unit")},
			Y:  measure.Axis{Label: rapid.SampledFrom([]string{"", "temperature"}).Draw(t, "y label"), Unit: "°F"},
		}
		for i := range rapid.IntRange(1, 5).Draw(t, "curves") {
			chart.Curves = append(chart.Curves, wandering(t, []string{"water", "centre", "mean", "a fourth line", "the last of them all"}[i]))
		}
		for i := range rapid.IntRange(0, 6).Draw(t, "marks") {
			chart.Marks = append(chart.Marks, measure.Mark{
				Label: fmt.Sprint("a mark with number ", i)[rapid.SampledFrom([]int{0, 7, 14}).Draw(t, "from"):],
				OnX:   rapid.Bool().Draw(t, "on x"), At: rapid.Float64Range(-10, 100).Draw(t, "at"),
			})
		}
		c.Set(chart)
		size := fyne.NewSize(rapid.Float32Range(1, 800).Draw(t, "wide"), rapid.Float32Range(1, 400).Draw(t, "tall"))
		c.Resize(size)
		for _, pointed := range []bool{false, true} {
			c.point(pointed, rapid.Float64Range(0, 6).Draw(t, "pointed"))
			checkTexts(t, c, size)
		}
		if size.Width >= least.Width && size.Height >= least.Height {
			for _, one := range chart.Curves[:min(3, len(chart.Curves))] {
				if len(chart.Curves) <= 3 && !says(c, one.Label) {
					t.Errorf("the line of %s has no name", one.Label)
				}
			}
		}
	})
}

func checkTexts(t *rapid.T, c *Chart, size fyne.Size) {
	all := texts(c)
	for i, a := range all {
		if p, s := a.Position(), a.Size(); p.X < -1 || p.Y < -2 || p.X+s.Width > size.Width+1 || p.Y+s.Height > size.Height+2 {
			t.Errorf("“%s” at %v of %v stands out of %v", a.Text, p, s, size)
		}
		for _, b := range all[i+1:] {
			if overlap(a, b) {
				t.Errorf("“%s” lies on “%s”", a.Text, b.Text)
			}
		}
	}
}

// TestLinesBeforeMarks asks that of a mark and a line that want the same room
// the mark stays without a name.
func TestLinesBeforeMarks(t *testing.T) {
	looktest.App(t, look.Light)
	chart := kettleChart()
	chart.Marks = nil
	for i := range 9 {
		chart.Marks = append(chart.Marks, measure.Mark{Label: fmt.Sprint("mark number ", i), At: 66 + float64(16*i)},
			measure.Mark{Label: fmt.Sprint("moment number ", i), OnX: true, At: float64(i) * 0.7})
	}
	c, _ := chartIn(t, chart, 280, 150)
	named := 0
	for _, text := range texts(c) {
		if strings.Contains(text.Text, "number") {
			named++
		}
	}
	if named == 0 || named == mostMarks {
		t.Errorf("%d marks have names", named)
	}
	for _, line := range []string{"water", "centre", "mean"} {
		if !says(c, line) {
			t.Errorf("the line of %s has no name", line)
		}
	}
}

// TestNamesStandAtTheirLines measures how far each name is from its line and
// from the others, where a chart has room.
func TestNamesStandAtTheirLines(t *testing.T) {
	looktest.App(t, look.Light)
	for _, chart := range []measure.Chart{kettleChart(), bathChart(), freezingChart()} {
		c, _ := chartIn(t, chart, 700, 320)
		for i, one := range chart.Curves {
			for _, l := range c.set.labels {
				if l.text != one.Label {
					continue
				}
				own := nearest(c.set.traces[i], c.set.room(l))
				if own > 3 {
					t.Errorf("%s: “%s” stands %.1f from its line", chart.ID, l.text, own)
				}
				for j, other := range c.set.traces {
					if gap := nearest(other, c.set.room(l)); j != i && gap <= own {
						t.Errorf("%s: “%s” stands nearer to the line of %s", chart.ID, l.text, chart.Curves[j].ID)
					}
				}
			}
		}
	}
	// in a tile the mean runs too near to the water and has a piece of its line
	c, _ := chartIn(t, kettleChart(), 280, 150)
	if len(c.set.keyed) != 1 || c.set.keyed[0].label.text != "mean" {
		t.Errorf("pieces of a line stand before %v", c.set.keyed)
	}
	// where curves crowd a mark it is named among the ticks
	c, _ = chartIn(t, bathChart(), 280, 150)
	if !says(c, "50 °F") || !says(c, "40") || says(c, "40 °F") {
		t.Errorf("the marks of the bath are named %s", textfits.All(c))
	}
}

// TestTrace asks that a trace is where the line was drawn.
func TestTrace(t *testing.T) {
	f := frame{left: 10, right: 110, top: 0, bottom: 100}
	rise := traceOf(f, path{{{20, 80}, {60, 40}, {60, 10}}})
	if upper, lower, share := rise.over(30, 9); upper != 60 || lower != 70 || share != 1 {
		t.Errorf("the line runs from %g to %g on %g of the stretch", upper, lower, share)
	}
	if upper, lower, _ := rise.over(60, 0); upper != 10 || lower != 40 {
		t.Errorf("the upright piece runs from %g to %g", upper, lower)
	}
	if _, _, share := rise.over(62.5, 40); share != 0 {
		t.Errorf("behind its end the line runs on %g of the stretch", share)
	}
	if gap := nearest(rise, rect{30, 80, 10, 10}); gap != 8 { // the line is lowest at 28, in the white beside the text
		t.Errorf("the text is %g below the line", gap)
	}
	if gap := nearest(rise, rect{30, 64, 10, 10}); gap != 0 {
		t.Errorf("a text on the line is %g away", gap)
	}
	if gap := nearest(rise, rect{80, 64, 10, 10}); !math.IsInf(gap, 1) {
		t.Errorf("a text behind the line is %g away", gap)
	}
}

// nearest is how near a curve comes to a text.
func nearest(t trace, r rect) float64 {
	gap, _ := t.away(t.beside(r), r)
	return gap
}

// However a curve runs past a text, it is as far away as it is column by column.
func TestAwayOfAnyCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []point
		for x := 0.0; x < 100; x += rapid.Float64Range(1, 30).Draw(t, "dx") {
			points = append(points, point{x, rapid.Float64Range(0, 100).Draw(t, "y")})
		}
		curve := traceOf(frame{right: 100}, path{points})
		r := rect{rapid.Float64Range(0, 90).Draw(t, "x"), rapid.Float64Range(0, 90).Draw(t, "top"), rapid.Float64Range(1, 40).Draw(t, "w"), 12}
		least, sum, n := math.Inf(1), 0.0, 0.0
		for i := curve.column(r.x - 2); i <= curve.column(r.x+r.w+2); i++ {
			if curve.upper[i] <= curve.lower[i] {
				gap := max(0, r.y-curve.lower[i], curve.upper[i]-r.y-r.h)
				least, sum, n = min(least, gap), sum+gap, n+1
			}
		}
		gap, mean := curve.away(curve.beside(r), r)
		switch {
		case n == 0 && (!math.IsInf(gap, 1) || !math.IsInf(mean, 1)):
			t.Fatalf("no curve is %v away", gap)
		case n > 0 && (math.Abs(gap-least) > 1e-9 || math.Abs(mean-sum/n) > 1e-9):
			t.Fatalf("%v and %v on the average, want %v and %v", gap, mean, least, sum/n)
		}
	})
}
