package drawing

import (
	"fmt"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

// inside is an invented piece that warms from 70 to 212 °F.
func inside(form measure.Form) measure.Section {
	s := measure.Section{ID: "through", Form: form, Low: 70, High: 212}
	for i, middle := range []float64{78, 121, 185} {
		m := measure.Moment{Label: []string{"after 1 min", "half way, 3 min", "at the lift, 6 min"}[i], Middle: fmt.Sprintf("%g °F", middle), Outside: "208 °F"}
		for d := range 17 {
			at := float64(d) / 16
			m.Temps = append(m.Temps, middle+(208-middle)*at*at)
		}
		for _, temp := range []float64{200, 160, 120} {
			if temp > middle {
				m.Lines = append(m.Lines, measure.Isotherm{At: math.Sqrt((temp - middle) / (208 - middle)), Label: fmt.Sprintf("%g °F", temp)})
			}
		}
		s.Moments = append(s.Moments, m)
	}
	return s
}

// Bands cover the whole piece from outside in, each at a temperature between
// those of its two sides.
func TestBandsRunInward(t *testing.T) {
	all := bands([]float64{70, 100, 200})
	near(t, "the first band reaches", all[0].out, 1, 0)
	for i, b := range all {
		if i > 0 && (b.out >= all[i-1].out || b.temp >= all[i-1].temp) {
			t.Errorf("band %d: %+v after %+v", i, b, all[i-1])
		}
	}
	near(t, "the last band is at", all[len(all)-1].temp, 70+30.0/6, 1e-9)
}

// Every moment says its outside and its middle, and an isotherm is drawn only
// with its label.
func TestSectionIsWritten(t *testing.T) {
	looktest.App(t, look.Light)
	for _, form := range []measure.Form{measure.Flat, measure.Long, measure.Round} {
		for _, size := range []fyne.Size{fyne.NewSize(280, 170), fyne.NewSize(600, 216), fyne.NewSize(1100, 300)} {
			s := NewSection()
			s.Set(inside(form))
			p := &pen{owner: s}
			s.draw(p, size)
			texts := map[string]int{}
			for _, l := range p.labels {
				texts[l.text]++
				wide, _ := p.room(l.text, l.strong)
				if l.at.x-wide/2 < 0 || l.at.x+wide/2 > float64(size.Width) {
					t.Errorf("%s at %v: %q stands out", form, size, l.text)
				}
			}
			for _, m := range s.section.Moments {
				if texts[m.Label] != 1 || texts[m.Middle] != 1 || texts[m.Outside] != 3 {
					t.Errorf("%s at %v: written %v", form, size, texts)
				}
			}
			drawn := 0
			for _, m := range p.marks {
				if m.width == 1.2 {
					drawn++
				}
			}
			if labelled := texts["200 °F"] + texts["160 °F"] + texts["120 °F"]; drawn != labelled || size.Width > 500 && drawn < 3 {
				t.Errorf("%s at %v: %d isotherms, %d labels", form, size, drawn, labelled)
			}
		}
	}
}

// What stands over the brim is seen: hatched, with the brim as a line.
func TestTooFullIsSeen(t *testing.T) {
	looktest.App(t, look.Light)
	marks := func(over float64) int {
		s := NewPackSection()
		s.Set(PackState{Kind: PackJar, Pints: 1, HeadspaceIn: 0.5, Frozen: FrozenState{GrowsShare: 0.08, OverIn: over, LeftIn: 0.1}})
		p := &pen{owner: s}
		s.draw(p, fyne.NewSize(300, 160))
		n := 0
		for _, m := range p.marks {
			if m.colour == p.colour(look.Stop) {
				n++
			}
		}
		return n
	}
	if fits, tight := marks(0), marks(0.02); fits != 0 || tight < 5 {
		t.Errorf("%d marks where it fits, %d where it does not", fits, tight)
	}
}

// The headspace left is to scale, beside the published one.
func TestFrozenHeadIsToScale(t *testing.T) {
	f := packForm{kind: PackBox, tall: 100, unit: 20}
	for _, c := range []struct {
		state      FrozenState
		head       float64
		left, over float64
	}{
		{FrozenState{GrowsShare: 0.08, LeftIn: 0.5}, 20, 10, 0},
		{FrozenState{GrowsShare: 0.08, OverIn: 1}, 20, 0, 20},
		{FrozenState{GrowsShare: 0.08, OverIn: 0.01}, 20, 0, leastOver},
		{FrozenState{GrowsShare: 0.05}, 20, 16, 0}, // a bag: as it has grown
		{FrozenState{GrowsShare: 0.05}, 0, 0, 0},
	} {
		s := NewPackSection()
		s.state.Frozen = c.state
		left, over := s.frozenHead(f, c.head)
		near(t, "left", left, c.left, 1e-9)
		near(t, "over", over, c.over, 1e-9)
	}
}

// forgetful is a driver that has lost sight of everything, as the window's has
// of what was not painted for a minute.
type forgetful struct{ fyne.Driver }

func (forgetful) CanvasForObject(fyne.CanvasObject) fyne.Canvas { return nil }

type withDriver struct {
	fyne.App
	driver fyne.Driver
}

func (w withDriver) Driver() fyne.Driver { return w.driver }

// A picture that the canvas has forgotten is seen anew; one that it knows keeps
// its texture.
func TestForgottenPictureIsDrawnAnew(t *testing.T) {
	app := looktest.App(t, look.Light)
	k := NewKettle()
	looktest.Window(t, k, 300, 170)
	r := test.WidgetRenderer(k).(*surfaceRenderer)
	before := r.Objects()[0]
	k.Set(threeLoads)
	if r.Objects()[0] != before {
		t.Error("a raster on view is made anew at every change")
	}
	if anew := k.CreateRenderer().(*surfaceRenderer); anew.raster.Size() != k.Size() || len(anew.pen.labels) == 0 {
		t.Error("a renderer made anew draws nothing")
	}
	fyne.SetCurrentApp(withDriver{app, forgetful{app.Driver()}})
	defer fyne.SetCurrentApp(app)
	k.Set(KettleState{})
	if after := r.Objects()[0]; after == before || after.Size() != before.Size() {
		t.Error("the forgotten raster would be painted from its old texture")
	}
}
