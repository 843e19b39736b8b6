package estimate

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/app/heat"
)

// Snap beans as in USDA SR26; the kitchen is invented.
var beans = Case{
	Food:  heat.FromPercent(90.32, 1.83, 0.22, 6.97, 2.7, 0.66, -0.7),
	Piece: Piece{heat.Cylinder, heat.Guess{Low: 0.0024, Likely: 0.004, High: 0.0047}},
	BoilC: 100, Heating: InWater, Loads: 3, LoadKg: 0.4536, MostKg: 0.4536, WaterKg: 3.78, FullKg: 3.78, WithinS: 60, PowerW: Around(1258, RehearsalSpread),
	StartC: heat.Known(21.1), TapC: 20, BlanchS: 180, LongestS: 180, ChillS: 180, MarksC: [2]float64{10, 40.0 / 9}, BathWaterKg: 3.78, BathIceKg: 1.361, BathEndC: 40.0 / 9,
	Pack:    heat.Pack{Shape: heat.Slab, SizeM: 0.0125, SecondM: 0.065, ThirdM: 0.075, AirShare: SolidPackAir},
	PackedC: 10, FreezerC: [2]float64{-23.3, -17.8}, CoreC: -12.2,
}

// steamed is a case of two pounds in steam.
func steamed() Case {
	c := beans
	c.Heating, c.Loads, c.LoadKg, c.BasketM2, c.WaterKg = InSteam, 1, 0.9, 0.041, 1.04
	return c
}

// largeSprouts is a case whose centre stays cool; the size is a guess.
func largeSprouts() Case {
	c := beans
	c.Piece = Piece{heat.Sphere, heat.Guess{Low: 0.017, Likely: 0.019, High: 0.022}}
	return c
}

func TestWorkFollowsTheWholeBatch(t *testing.T) {
	r := Work(beans)
	if r.Kettle == nil || r.Bath == nil || r.Freezing == nil || r.Steam != nil || r.Outside != (Outside{}) {
		t.Fatalf("parts: %+v", r)
	}
	k := r.Kettle
	if last := len(k.Course.AfterS) - 1; math.Abs(k.Course.AfterS[last]-k.LiftS) > 1e-9 || k.Course.CentreC[last] != k.CentreC || k.LiftS != k.BackS+beans.BlanchS {
		t.Error("the course of the kettle does not end at the lift")
	}
	if k.DipC >= 100 || k.BackS <= 60 || k.LargestKg >= beans.LoadKg || k.Spread.Within > 0.1 {
		t.Errorf("a pound on a plug-in burner: dip %v °C, back after %v s, largest load %v kg, in time in %v", k.DipC, k.BackS, k.LargestKg, k.Spread.Within)
	}
	// the load that was found is back after a minute, as near as the search goes
	c := beans
	c.LoadKg = k.LargestKg
	if back := Work(c).Kettle.BackS; math.Abs(back-60) > 0.1 {
		t.Errorf("the largest load is back after %v s", back)
	}
	// the ice of the balance brings the bath down to where it should end, all
	// loads at once
	c = beans
	c.BathIceKg, c.LoadKg, c.Loads = r.Bath.IceKg, c.LoadKg*c.Loads, 1
	if rest := Work(c).Bath.RestC; math.Abs(rest-c.BathEndC) > 0.05 {
		t.Errorf("with the ice of the balance the bath ends at %v °C", rest)
	}
	if !math.IsInf(r.Bath.MarkS[0], 1) || r.Bath.RestC < 10 {
		t.Errorf("a bath of warm tap water with the rule's ice: 50 °F after %v s, rests at %v °C", r.Bath.MarkS[0], r.Bath.RestC)
	}
	f := r.Freezing
	if !(f.QuickS < f.LikelyS && f.LikelyS < f.WarmS && f.WarmS < f.SlowS) || math.Abs(f.PhamS/f.LikelyS-1) > 0.25 {
		t.Errorf("freezing times %+v", f)
	}
}

// What is not known is left out, and nothing else.
func TestWorkWithoutAnInput(t *testing.T) {
	for name, c := range map[string]struct {
		change                 func(*Case)
		kettle, bath, freezing bool
	}{
		"burner":      {func(c *Case) { c.PowerW = heat.Guess{} }, false, true, true},
		"kettle":      {func(c *Case) { c.WaterKg = 0 }, false, true, true},
		"weight":      {func(c *Case) { c.LoadKg = 0 }, false, false, true},
		"bath":        {func(c *Case) { c.BathWaterKg = 0 }, true, false, true},
		"composition": {func(c *Case) { c.Food = heat.Composition{} }, false, false, false},
		"size":        {func(c *Case) { c.Piece = Piece{} }, false, false, true},
		"minutes":     {func(c *Case) { c.BlanchS, c.ChillS = 0, 0 }, false, false, true},
		"container":   {func(c *Case) { c.Pack = heat.Pack{} }, true, true, false},
	} {
		job := beans
		c.change(&job)
		r := Work(job)
		if (r.Kettle != nil) != c.kettle || (r.Bath != nil) != c.bath || (r.Freezing != nil) != c.freezing || r.Outside != (Outside{}) {
			t.Errorf("without %s: kettle %v, bath %v, freezing %v, %v", name, r.Kettle != nil, r.Bath != nil, r.Freezing != nil, r.Outside)
		}
	}
}

func TestWorkOutsideTheModel(t *testing.T) {
	c := beans
	c.LoadKg = 300
	r := Work(c)
	var outside *heat.RangeError
	if r.Kettle != nil || !errors.As(r.Outside.Kettle, &outside) {
		t.Errorf("a load of 300 kg: %+v, %v", r.Kettle, r.Outside)
	}
	if r.Freezing == nil || r.Outside.Freezing != nil {
		t.Error("the pack has nothing to do with the load")
	}
	c = beans
	c.BathWaterKg = 600
	r = Work(c)
	if r.Bath != nil || !errors.As(r.Outside.Bath, &outside) || r.Kettle == nil || r.Outside.Kettle != nil {
		t.Errorf("a bath of 600 kg: %+v, %v", r.Bath, r.Outside)
	}
	c = steamed()
	c.PowerW = Around(30000, 0.1)
	if s := Work(c).Steam; s == nil || s.DryS != 0 || s.CentreC.Likely == 0 {
		t.Errorf("pieces in steam need no burner: %+v", s)
	}
}

func TestSteam(t *testing.T) {
	s := Work(steamed()).Steam
	if s == nil {
		t.Fatal("no steam")
	}
	if !(s.CentreC.Low <= s.CentreC.Likely && s.CentreC.Likely <= s.CentreC.High && s.CentreC.High <= 100) {
		t.Errorf("centres %+v", s.CentreC)
	}
	// 1.04 kg of water at no more than 1.1 × 1,258 W and 2,257 kJ/kg
	if want := 1.04 * 2.257e6 / (1.1 * 1258); math.Abs(s.DryS-want) > 0.01*want {
		t.Errorf("dry after %v s, want %v", s.DryS, want)
	}
	if s.Layers < 2 || s.Layers != math.Ceil(0.9/s.LayerKg) {
		t.Errorf("%v fillings of %v kg", s.Layers, s.LayerKg)
	}
	c := steamed()
	c.BasketM2 = 0
	if s := Work(c).Steam; s.Layers != 0 || s.LayerKg != 0 {
		t.Error("a layer in a basket that nobody measured")
	}
	c.PowerW = heat.Guess{}
	if s := Work(c).Steam; s.DryS != 0 || s.AwayKg != 0 {
		t.Error("water boils away on a burner that nobody knows")
	}
}

// A large sprout is still cool in the middle after three minutes; an enzyme of
// one fraction with a published range is reported, whole and in the middle.
func TestCentreAndDoneness(t *testing.T) {
	c := largeSprouts()
	c.Enzyme = Enzyme{Fractions: [2]heat.Fraction{heat.FromD(1, 0.4, 90, 16.5)}, LowC: 70, HighC: 90, WithLag: true} // broccoli peroxidase: GONCALVES_2009
	k := Work(c).Kettle
	if k.CentreC > 75 {
		t.Errorf("centre at %v °C", k.CentreC)
	}
	if d := k.Doneness; d == nil || !(d.WholeAtWater < d.Mean && d.Mean < d.Centre && d.Centre > 0.5) {
		t.Errorf("doneness %+v", k.Doneness)
	}
	if Work(beans).Kettle.Doneness != nil {
		t.Error("an enzyme that nobody named")
	}
}

func TestKettleLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := beans
		c.LoadKg = rapid.Float64Range(0.05, 2).Draw(t, "load")
		c.WaterKg = rapid.Float64Range(1, 20).Draw(t, "water")
		c.BoilC = rapid.Float64Range(85, 101).Draw(t, "boil")
		c.PowerW = Around(rapid.Float64Range(200, 5000).Draw(t, "power"), 0.1)
		c.MostKg = 2
		c.StartC = heat.Known(rapid.Float64Range(1, 40).Draw(t, "start"))
		k := mustKettle(t, c)
		for i, w := range k.Course.AroundC {
			if centre := k.Course.CentreC[i]; w > c.BoilC+1e-6 || w < c.StartC.Likely || centre > c.BoilC+1e-6 || centre < c.StartC.Likely-1e-6 || math.IsNaN(w+centre+k.Course.MeanC[i]) {
				t.Fatalf("at %v s water %v, centre %v between %v and %v °C", k.Course.AfterS[i], w, centre, c.StartC.Likely, c.BoilC)
			}
		}
		if s := k.Spread; !(s.BackS.Low <= s.BackS.Middle && s.BackS.Middle <= s.BackS.High && s.CentreC.Low <= s.CentreC.High && s.Within >= 0 && s.Within <= 1) {
			t.Fatalf("spread %+v", s)
		}
		stronger := c
		stronger.PowerW = Around(1.5*c.PowerW.Likely, 0.1)
		if s := mustKettle(t, stronger); s.BackS > k.BackS+1e-6 || s.LargestKg < k.LargestKg-1e-6 || s.FirstBoilS.Likely > k.FirstBoilS.Likely {
			t.Fatalf("more power: back %v → %v s, largest %v → %v kg", k.BackS, s.BackS, k.LargestKg, s.LargestKg)
		}
		colder := c
		colder.StartC = heat.Known(c.StartC.Likely - 1)
		if s := mustKettle(t, colder); s.BackS < k.BackS-1e-6 {
			t.Fatalf("a colder start is back sooner: %v → %v s", k.BackS, s.BackS)
		}
	})
}

func mustKettle(t *rapid.T, c Case) *Kettle {
	k, err := c.kettle()
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func TestBathLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := beans
		c.BathIceKg = rapid.Float64Range(0, 5).Draw(t, "ice")
		c.TapC = rapid.Float64Range(3, 30).Draw(t, "tap")
		c.Loads = float64(rapid.IntRange(1, 6).Draw(t, "loads"))
		c.Piece.SizeM.Likely = rapid.Float64Range(0.001, 0.02).Draw(t, "size")
		b, err := c.bath(nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		more := c
		more.BathIceKg += 1
		m, err := more.bath(nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		if m.MarkS[0] > b.MarkS[0]+1e-6 || m.RestC > b.RestC+1e-9 || m.IceKg != b.IceKg || b.MarkS[1] < b.MarkS[0] {
			t.Fatalf("a kilogram more ice: 50 °F after %v → %v s, rests at %v → %v °C", b.MarkS[0], m.MarkS[0], b.RestC, m.RestC)
		}
	})
}

// What comes out of kettle or steamer goes into the bath in the same loads: a
// bath gets a load down to 50 °F just where it comes to rest under it.
func TestBathTakesTheLoadsThatWereHeated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := beans
		if rapid.Bool().Draw(t, "steam") {
			c = steamed()
			c.BasketM2 = rapid.Float64Range(0.01, 0.1).Draw(t, "basket")
		}
		c.BathIceKg = rapid.Float64Range(0.2, 6).Draw(t, "ice")
		c.TapC = rapid.Float64Range(3, 30).Draw(t, "tap")
		c.LoadKg = rapid.Float64Range(0.1, 1.5).Draw(t, "load")
		c.Loads = float64(rapid.IntRange(1, 5).Draw(t, "loads"))
		b := Work(c).Bath
		if b == nil || math.Abs(b.RestC-10) < 0.5 { // pieces come out a little cooler than the boil that RestC counts
			return
		}
		if never := math.IsInf(b.MarkS[0], 1); never != (b.RestC > 10) {
			t.Fatalf("rests at %v °C, 50 °F after %v s", b.RestC, b.MarkS[0])
		}
	})
}

// Loads chilled one after the other leave more heat behind than all at once.
func TestLoadsAreChilledOneByOne(t *testing.T) {
	c := beans
	c.BathIceKg = 0.8
	one := Work(c).Bath.RestC
	c.LoadKg, c.Loads = c.LoadKg*c.Loads, 1
	if all := Work(c).Bath.RestC; all >= one {
		t.Errorf("three loads leave the bath at %v °C, all at once at %v °C", one, all)
	}
}

func TestDay(t *testing.T) {
	d := Day{CapacityL: 396, SetC: -23.3, Food: beans.Food, Pack: beans.Pack, PackedC: 10, MassKg: 5, CoreC: -12.2}
	some, err := d.Work()
	if err != nil {
		t.Fatal(err)
	}
	d.MassKg = 30
	much, err := d.Work()
	if err != nil {
		t.Fatal(err)
	}
	if !(some.WarmestC > d.SetC && much.WarmestC > some.WarmestC && much.FrozenS > some.FrozenS && some.FrozenS < 86400) {
		t.Errorf("5 kg %+v, 30 kg %+v", some, much)
	}
	d.MassKg = 200
	if flood, err := d.Work(); err != nil || !math.IsInf(flood.FrozenS, 1) {
		t.Errorf("200 kg in 14 cu ft: %+v, %v", flood, err)
	}
	var outside *heat.RangeError
	for _, capacityL := range []float64{0, 10, 5000, math.NaN()} {
		d.CapacityL = capacityL
		if _, err := d.Work(); !errors.As(err, &outside) {
			t.Errorf("a freezer of %v L: %v", capacityL, err)
		}
	}
}

func TestFromPlate(t *testing.T) {
	if _, ok := FromPlate("", 0); ok {
		t.Error("a burner of which nothing is known has a power")
	}
	for _, kind := range []heat.BurnerKind{"", heat.Coil, heat.Radiant, heat.Induction, heat.Gas} {
		for _, rating := range []float64{0, 1500} {
			g, ok := FromPlate(kind, rating)
			if kind == "" && rating == 0 {
				continue
			}
			if !ok || !(0 < g.Low && g.Low <= g.Likely && g.Likely <= g.High) || rating > 0 && g.High >= rating {
				t.Errorf("%q of %v W: %+v, %v", kind, rating, g, ok)
			}
		}
	}
}

// What is remembered is what would be worked out; each case is worked out once,
// and what was not asked for lately goes.
func TestMemory(t *testing.T) {
	var m Memory
	for range 2 {
		if got := m.Work(beans); !reflect.DeepEqual(got, Work(beans)) {
			t.Error("remembered results differ")
		}
	}
	if got := (*Memory)(nil).Work(beans); !reflect.DeepEqual(got, Work(beans)) {
		t.Error("without a memory results differ")
	}
	worked := 0
	var squares memo[int, int]
	square := func(x int) int { worked++; return x * x }
	for range 3 {
		for x := range 2 * remembered / 3 {
			if squares.get(x, square) != x*x {
				t.Fatal("wrong result")
			}
		}
	}
	if worked != 2*remembered/3 {
		t.Errorf("%d results were worked out %d times", 2*remembered/3, worked)
	}
	for x := range 10 * remembered {
		squares.get(x, square)
		squares.get(7, square)
	}
	if n := len(squares.young) + len(squares.old); n > 2*remembered {
		t.Errorf("%d results are kept", n)
	}
	if before := worked; squares.get(7, square) != 49 || worked != before {
		t.Error("what is asked for all the time was forgotten")
	}
}

// Everything of one batch: curves, largest load, a thousand kitchens, freezing.
func BenchmarkBatch(b *testing.B) {
	for b.Loop() {
		Work(beans)
	}
}

// The curves of kettle, piece, bath and pack of one batch, with an enzyme.
func BenchmarkCurves(b *testing.B) {
	c := beans
	c.Enzyme = Enzyme{Fractions: [2]heat.Fraction{heat.FromD(1, 0.4, 90, 16.5)}}
	piece, err := c.piece(boilFilm.Likely, c.StartC.Likely, c.BoilC)
	if err != nil {
		b.Fatal(err)
	}
	p := c.Pack
	p.FilmWPerM2K = packFilm.Likely
	for b.Loop() {
		k, err := c.follow(piece)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := c.bath(&k.blanch, k.LiftS); err != nil {
			b.Fatal(err)
		}
		if _, err := c.freezingCourse(p, 9*3600); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFreezing(b *testing.B) {
	for b.Loop() {
		if _, err := beans.freezing(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRemembered(b *testing.B) {
	var m Memory
	for b.Loop() {
		m.Work(beans)
	}
}

// A pack is frozen once for all loads of the kettle, and again where anything
// of it changes.
func TestMemoryOfPacks(t *testing.T) {
	var m Memory
	for i, change := range []func(*Case){
		func(c *Case) {},
		func(c *Case) { c.LoadKg /= 2 },
		func(c *Case) { c.TapC, c.BathIceKg = 5, 2 },
		func(c *Case) { c.FreezerC[1]++ },
		func(c *Case) { c.CoreC-- },
		func(c *Case) { c.PackedC++ },
		func(c *Case) { c.Pack.SizeM *= 1.1 },
	} {
		c := beans
		change(&c)
		if got, want := m.Work(c), Work(c); !reflect.DeepEqual(got, want) {
			t.Errorf("change %d: remembered results differ", i)
		}
		if n, want := len(m.packs.young), max(1, i-1); n != want {
			t.Errorf("change %d: %d packs were frozen, want %d", i, n, want)
		}
	}
}
