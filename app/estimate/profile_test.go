package estimate

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/app/heat"
)

// someKitchen draws a case of a kettle or a steamer with pieces that are thick
// enough to have an inside.
func someKitchen(t *rapid.T) Case {
	c := beans
	if rapid.Bool().Draw(t, "steam") {
		c = steamed()
	}
	size := rapid.Float64Range(0.003, 0.03).Draw(t, "half size in m")
	c.Piece = Piece{heat.Shape(rapid.IntRange(1, 3).Draw(t, "shape")), heat.Known(size)}
	c.LoadKg = rapid.Float64Range(0.1, 0.9).Draw(t, "load in kg")
	c.StartC = heat.Known(rapid.Float64Range(1, 40).Draw(t, "start in °C"))
	c.BlanchS = rapid.Float64Range(30, 900).Draw(t, "blanch in s")
	c.LongestS = c.BlanchS
	return c
}

// through are the profiles of whichever heats the case, with the curve beside.
func through(t *rapid.T, c Case) (Moments, Course) {
	switch r := Work(c); {
	case r.Kettle != nil:
		return r.Kettle.Through, r.Kettle.Course
	case r.Steam != nil:
		return r.Steam.Through, r.Steam.Course
	default:
		t.Fatalf("not followed: %v", r.Outside)
	}
	panic("not reached")
}

// Heat comes from outside: until the lift no depth is warmer than the outside or
// cooler than the middle, and every depth only gets warmer.
func TestHeatMovesInward(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all, _ := through(t, someKitchen(t))
		const rounding = 0.1 // °C, of the series in its first seconds
		for i, p := range all {
			for d := 1; d < profileDepths; d++ {
				if p.TempC[d] < p.TempC[d-1]-rounding {
					t.Fatalf("moment %d, depth %d: %v", i, d, p.TempC)
				}
			}
			if i == 0 {
				continue
			}
			if !(p.AfterS > all[i-1].AfterS) {
				t.Fatalf("moments at %v and %v s", all[i-1].AfterS, p.AfterS)
			}
			if p.TempC[0] < all[i-1].TempC[0]-rounding {
				t.Fatalf("the middle cools from %v to %v", all[i-1].TempC[0], p.TempC[0])
			}
		}
	})
}

// The last profile is where the curves end: its middle is the curve's, and its
// mean over the volume is the mean curve's.
func TestProfileEndsWithTheCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someKitchen(t)
		all, course := through(t, c)
		end, last := all[2], len(course.AfterS)-1
		if math.Abs(end.AfterS-course.AfterS[last]) > 1e-9 || end.TempC[0] != course.CentreC[last] {
			t.Fatalf("at %v s the middle is at %v, the curve ends at %v s with %v", end.AfterS, end.TempC[0], course.AfterS[last], course.CentreC[last])
		}
		// shells between the depths, each at the mean of its two sides; the
		// piece curves between them
		mean, dims := 0.0, float64(c.Piece.Shape)
		for d := 1; d < profileDepths; d++ {
			inner, outer := float64(d-1)/(profileDepths-1), float64(d)/(profileDepths-1)
			mean += (math.Pow(outer, dims) - math.Pow(inner, dims)) * (end.TempC[d-1] + end.TempC[d]) / 2
		}
		if span := c.BoilC - c.StartC.Likely; math.Abs(mean-course.MeanC[last]) > 0.01*span {
			t.Fatalf("mean through the piece %v, of the curve %v", mean, course.MeanC[last])
		}
	})
}

// The first two moments find heat on its way, at times that can be read: within
// a minute and half way, sooner in a thin piece.
func TestMomentsFindHeatOnItsWay(t *testing.T) {
	for _, c := range []struct{ halfMm, blanchS, firstS, secondS float64 }{
		{1, 180, 5, 10}, {4, 180, 10, 25}, {12, 240, 60, 120}, {25, 900, 60, 450}, {12, 60, 15, 30},
	} {
		one := steamed()
		one.Piece.SizeM = heat.Known(c.halfMm / 1000)
		one.BlanchS, one.LongestS = c.blanchS, c.blanchS
		all := Work(one).Steam.Through
		if all[0].AfterS != c.firstS || all[1].AfterS != c.secondS || all[2].AfterS != c.blanchS {
			t.Errorf("%v mm for %v s: at %v, %v and %v s", c.halfMm, c.blanchS, all[0].AfterS, all[1].AfterS, all[2].AfterS)
		}
	}
}

// More ice never makes the centre colder later, nor the bath warmer in the end.
func TestMoreIceIsNeverLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := beans
		c.BathWaterKg = rapid.Float64Range(1, 20).Draw(t, "water in kg")
		c.TapC = rapid.Float64Range(1, 30).Draw(t, "tap in °C")
		c.Loads = float64(rapid.IntRange(1, 4).Draw(t, "loads"))
		c.BathIceKg = rapid.Float64Range(0, 5).Draw(t, "ice in kg")
		less := Work(c).Bath
		c.BathIceKg += rapid.Float64Range(0, 5).Draw(t, "more in kg")
		more := Work(c).Bath
		for i := range less.MarkS {
			if more.MarkS[i] > less.MarkS[i]*(1+1e-6) {
				t.Fatalf("to %v °C: %v s with less ice, %v s with more", c.MarksC[i], less.MarkS[i], more.MarkS[i])
			}
		}
		if more.RestC > less.RestC+1e-9 || more.EndC > less.EndC+1e-3 {
			t.Fatalf("rest %v and %v °C, end %v and %v °C", less.RestC, more.RestC, less.EndC, more.EndC)
		}
		if less.IceKg != more.IceKg {
			t.Fatal("the balance of heat asks for another amount where there is more")
		}
	})
}
