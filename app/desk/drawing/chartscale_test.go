package drawing

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

func TestTicks(t *testing.T) {
	for _, one := range []struct {
		low, high, most float64
		unit            string
		want            string
	}{
		{60, 212, 4, "°F", "100 150 200"},
		{60, 212, 3, "°F", "100 200"},
		{-12, 41, 6, "°F", "−10 0 10 20 30 40"},
		{15.6, 100, 5, "°C", "20 40 60 80 100"},
		{-0.4, 0.4, 4, "", "−0.4 −0.2 0.0 0.2 0.4"},
		{0, 6, 6, "min", "0 1 2 3 4 5 6"},
		{0, 6, 5, "min", "0 2 4 6"},
		{0, 2, 5, "min", "0.0 0.5 1.0 1.5 2.0"},
		{0, 45, 5, "min", "0 10 20 30 40"},
		{0, 90, 5, "min", "0 30 60 90"},
		{0, 240, 5, "min", "0 60 120 180 240"},
		{0, 600, 5, "min", "0 120 240 360 480 600"},
		{0, 1, 5, "h", "0.0 0.2 0.4 0.6 0.8 1.0"},
		{0, 10, 6, "h", "0 2 4 6 8 10"},
		{0, 24, 8, "h", "0 3 6 9 12 15 18 21 24"},
		{0, 24, 5, "h", "0 6 12 18 24"},
		{0, 70, 6, "h", "0 12 24 36 48 60"},
		{0, 300, 6, "h", "0 120 240"},
		{3, 4, 1, "h", "3 4"},
		{1000000, 1000000.1, 5, "min", "1000000.00 1000000.02 1000000.04 1000000.06 1000000.08 1000000.10"},
	} {
		scale := ticks(span{one.low, one.high}, one.most, one.unit)
		var names []string
		for _, x := range scale.at {
			names = append(names, scale.name(x))
		}
		if got := strings.Join(names, " "); got != one.want {
			t.Errorf("%g–%g %s in %g steps: %s, want %s", one.low, one.high, one.unit, one.most, got, one.want)
		}
	}
}

// TestTicksAreFewAndRound asks it of any stretch.
func TestTicksAreFewAndRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e6, 1e6).Draw(t, "low")
		wide := math.Pow(10, rapid.Float64Range(-1, 6).Draw(t, "wide"))
		most := rapid.Float64Range(1, 9).Draw(t, "most")
		unit := rapid.SampledFrom([]string{"°F", "min", "h"}).Draw(t, "unit")
		scale := ticks(span{low, low + wide}, most, unit)
		if n := float64(len(scale.at)); n > most+1 {
			t.Errorf("%g ticks in %g steps", n, most)
		}
		if most >= 5 && len(scale.at) < 2 {
			t.Errorf("only %v on %g–%g", scale.at, low, low+wide)
		}
		for _, x := range scale.at {
			if x < low-scale.step*1e-6 || x > low+wide+scale.step*1e-6 {
				t.Errorf("%g is not on %g–%g", x, low, low+wide)
			}
		}
	})
}

func TestReadAt(t *testing.T) {
	celsius := freezingChart()
	celsius.Y.Unit = "°C"
	gap := measure.Chart{
		X: measure.Axis{Unit: "min"}, Y: measure.Axis{Unit: "°F"},
		Curves: []measure.Curve{
			{Label: "water", X: []float64{0, 1, 2, 3, 4}, Y: []float64{200, 210, math.NaN(), 100, 50}},
			{Label: "centre", X: []float64{2, 1, 3, 3, 4}, Y: []float64{60, 999, 70, 90, 80}},
			{Label: "one point", X: []float64{4}, Y: []float64{-0.4}},
		},
	}
	plain := measure.Chart{X: measure.Axis{Unit: "lb"}, Curves: []measure.Curve{{X: []float64{1, 2}, Y: []float64{0, 0.5}}}}
	for _, one := range []struct {
		chart measure.Chart
		x     float64
		want  string
	}{
		{kettleChart(), 2.5, "2.5 min · water 212 °F · centre 182 °F · mean 201 °F"},
		{kettleChart(), 2.53, "2.5 min · water 212 °F · centre 182 °F · mean 201 °F"}, // the values of the time that is printed
		{kettleChart(), 0, "0.0 min · water 212 °F · centre 60 °F · mean 60 °F"},
		{kettleChart(), 6.04, "6.0 min · water 212 °F · centre 211 °F · mean 212 °F"},
		{kettleChart(), 6.06, ""},
		{kettleChart(), -0.1, ""},
		{kettleChart(), math.NaN(), ""},
		{kettleChart(), math.Inf(1), ""},
		{celsius, 24, "24.0 h · core −4 °C · air −6 °C"},
		{gap, 0.5, "0.5 min · water 205 °F"},
		{gap, 1.5, ""}, // nothing is known between
		{gap, 2.5, "2.5 min · centre 65 °F"},
		{gap, 3.5, "3.5 min · water 75 °F · centre 85 °F"},
		{gap, 4, "4.0 min · water 50 °F · centre 80 °F · one point 0 °F"},
		{plain, 1.5, "1.5 lb · 0.25"},
		{measure.Chart{}, 1, ""},
	} {
		c := NewChart()
		c.Set(one.chart)
		if got := c.ReadAt(one.x); got != one.want {
			t.Errorf("at %g: %q, want %q", one.x, got, one.want)
		}
	}
}

// TestSpans asks that marks are on the axes unless they are far from all
// curves.
func TestSpans(t *testing.T) {
	c := measure.Chart{
		Curves: []measure.Curve{{X: []float64{1, 5}, Y: []float64{70, 5}}},
		Marks: []measure.Mark{
			{OnX: true, At: 6}, {OnX: true, At: 400}, {At: 0}, {At: -9000}, {At: math.NaN()},
		},
	}
	if x, y := graphOf(c).spans(); x != (span{1, 6}) || y != (span{0, 70}) {
		t.Errorf("the axes hold %v and %v", x, y)
	}
	c = measure.Chart{Curves: []measure.Curve{{X: []float64{3}, Y: []float64{40}}}}
	if x, y := graphOf(c).spans(); x.wide() < leastX*0.99 || y != (span{35, 45}) {
		t.Errorf("one point has the axes %v and %v", x, y)
	}
}

// A narrow chart reads all of its curves by their short names, which stand
// nowhere else.
func TestReadingFitsWhereItIsNarrow(t *testing.T) {
	looktest.App(t, look.Light)
	x, hot := []float64{0, 3}, []float64{212, 190.5}
	c := NewChart()
	c.Set(measure.Chart{ID: "bath", X: measure.Axis{Unit: "min"}, Y: measure.Axis{Unit: "°F"}, Curves: []measure.Curve{
		{ID: "water", Label: "water", X: x, Y: hot},
		{ID: "centre", Label: "centre of a piece", Short: "centre", X: x, Y: hot},
		{ID: "mean", Label: "whole piece, on average", Short: "average", X: x, Y: hot},
	}})
	p := &pen{owner: c}
	if said := c.graph.fitted(p, 1.55, 284); said != "1.6 min · water 201 · centre 201 · average 201" && said != "1.55 min · water 201 · centre 201 · average 201" {
		t.Errorf("a narrow chart reads %q", said)
	}
	c.draw(p, fyne.NewSize(284, 150))
	for _, l := range p.labels {
		if l.text == "average" {
			t.Error("the short name stands at the curve")
		}
	}
}
