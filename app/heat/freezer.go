package heat

import "math"

// Freezer is a household freezer as its air feels it. All of it is a guess but
// for what the plate and the thermostat say; the compressor's pull is taken as
// the same at all temperatures, and running just as much as it must.
type Freezer struct {
	SetC      float64 // thermostat, −35 to −10 °C
	RoomC     float64 // 0 to 45 °C
	LeakWPerK float64 // heat that gets in through the walls, 0.1 to 20
	PullW     float64 // heat the compressor can take out, more than the leak, up to 5,000
	HeldJPerK float64 // heat capacity that follows the air: lining, shelves, some of what is frozen, 5,000 to 1e6
}

// Check returns a *RangeError for the first value that is out of range.
func (z Freezer) Check() error {
	return first(
		within("thermostat", z.SetC, -35, -10, "°C"),
		within("room", z.RoomC, 0, 45, "°C"),
		within("heat leak", z.LeakWPerK, 0.1, 20, "W/K"),
		within("pull of the compressor", z.PullW, z.LeakWPerK*(z.RoomC-z.SetC), 5000, "W"),
		within("heat capacity", z.HeldJPerK, 5000, 1e6, "J/K"),
	)
}

// DayLoad is a freezer with fresh packs in it, all alike and put in at once.
// The packs warm the air, the air slows the packs.
type DayLoad struct {
	Freezer
	Freezing *Freezing
	massKg   float64

	airC, warmestC, warmestAtS float64
	pulledJ, leakedJ           float64
}

// Load puts massKg (0.05 to 200 kg) of packs at startC into the freezer.
func (z Freezer) Load(p Pack, food Composition, massKg, startC float64) (*DayLoad, error) {
	if err := first(z.Check(), within("load", massKg, 0.05, 200, "kg")); err != nil {
		return nil, err
	}
	f, err := p.Freeze(food, startC)
	if err != nil {
		return nil, err
	}
	return &DayLoad{Freezer: z, Freezing: f, massKg: massKg, airC: z.SetC, warmestC: z.SetC}, nil
}

// AirC is the air in the freezer now; WarmestC and WarmestAtS are its warmest
// so far and when that was.
func (d *DayLoad) AirC() float64       { return d.airC }
func (d *DayLoad) WarmestC() float64   { return d.warmestC }
func (d *DayLoad) WarmestAtS() float64 { return d.warmestAtS }

// step goes on by at most limitS seconds.
func (d *DayLoad) step(limitS float64) error {
	f := d.Freezing
	// what of the air's heat balance grows with its temperature
	given := d.massKg * f.OutWPerKg(d.airC)
	slope := d.LeakWPerK + d.massKg*(f.OutWPerKg(d.airC-0.5)-f.OutWPerKg(d.airC+0.5))
	step := min(limitS, f.stepS(d.airC), 0.5*d.HeldJPerK/slope)
	// where the air goes if nothing else changes, for the packs
	idle := d.airC + (d.LeakWPerK*(d.RoomC-d.airC)+given-d.PullW)/slope*-math.Expm1(-step*slope/d.HeldJPerK)
	was := f.outJPerM3
	step, err := f.tread(step, d.airC, math.Max(idle, d.SetC))
	if err != nil {
		return err
	}
	gave := d.massKg * (f.outJPerM3 - was) / f.densityKgPerM3
	// the walls leak at the mean of both ends
	half := 0.5 * d.LeakWPerK * step
	next := (d.HeldJPerK*d.airC + gave + d.LeakWPerK*step*d.RoomC - half*d.airC - d.PullW*step) / (d.HeldJPerK + half)
	next = math.Max(next, d.SetC)
	leaked := d.LeakWPerK*step*d.RoomC - half*(d.airC+next)
	d.leakedJ += leaked
	d.pulledJ += leaked + gave - d.HeldJPerK*(next-d.airC)
	d.airC = next
	if next > d.warmestC {
		d.warmestC, d.warmestAtS = next, f.afterS
	}
	return nil
}

// Step goes on by dtS seconds (0 to 1e7).
func (d *DayLoad) Step(dtS float64) error {
	if err := within("step", dtS, 0, 1e7, "s"); err != nil {
		return err
	}
	for end := d.Freezing.afterS + dtS; end-d.Freezing.afterS > 1e-9*end; {
		if err := d.step(end - d.Freezing.afterS); err != nil {
			return err
		}
	}
	return nil
}

// UntilCore goes on until the cores of the packs are at coreC, and gives the
// seconds since they went in; at most limitS, up to 1e7. ok is false where they
// are not there by then.
func (d *DayLoad) UntilCore(coreC, limitS float64) (afterS float64, ok bool, err error) {
	if err := first(within("core temperature", coreC, -60, 60, "°C"), within("time limit", limitS, 0, 1e7, "s")); err != nil {
		return 0, false, err
	}
	if coreC < d.SetC+reachableK {
		return 0, false, &UnreachableError{coreC, d.SetC}
	}
	f := d.Freezing
	for f.afterS < limitS {
		was, wasS := f.CoreC(), f.afterS
		if was <= coreC {
			return wasS, true, nil
		}
		if err := d.step(limitS - f.afterS); err != nil {
			return 0, false, err
		}
		if now := f.CoreC(); now <= coreC {
			return f.afterS - (f.afterS-wasS)*(coreC-now)/(was-now), true, nil
		}
	}
	return f.afterS, f.CoreC() <= coreC, nil
}
