package heat

import (
	"errors"
	"fmt"
	"math"
)

// Layer is something between the food and the air: film, card, an air gap.
type Layer struct{ ThicknessM, ConductivityWPerMK float64 }

// Conductivities of what lies between food and air, W/(m K). Polyethylene,
// card and still air as in the literature's worked examples (from memory).
const (
	PolyethyleneWPerMK = 0.3
	CardWPerMK         = 0.06
	StillAirWPerMK     = 0.024
)

// ThroughLayers is the surface coefficient (1 to 20,000 W/(m² K)) with layers in
// series, 0 to 0.05 m thick and 0.01 to 500 W/(m K): 1/(1/h + Σ thickness/k).
// A millimetre of air in a box takes as much as a film of 24 W/(m² K).
func ThroughLayers(filmWPerM2K float64, layers ...Layer) (float64, error) {
	if err := within("surface coefficient", filmWPerM2K, 1, 20000, "W/(m² K)"); err != nil {
		return 0, err
	}
	resistance := 1 / filmWPerM2K
	for _, l := range layers {
		if err := first(within("thickness of a layer", l.ThicknessM, 0, 0.05, "m"),
			within("conductivity of a layer", l.ConductivityWPerMK, 0.01, 500, "W/(m K)")); err != nil {
			return 0, err
		}
		resistance += l.ThicknessM / l.ConductivityWPerMK
	}
	return 1 / resistance, nil
}

// Pack is a package in the freezer, cold air all round.
type Pack struct {
	Shape       Shape   // Slab: a bag or box; Cylinder: a jar or round box; Sphere: a piece on a tray
	SizeM       float64 // half of the least thickness, or the radius, 0.001 to 0.1 m
	SecondM     float64 // Slab: half of the next dimension; Cylinder: half the height; 0 where it is very long
	ThirdM      float64 // Slab: half of the longest dimension, 0 where it is very long
	FilmWPerM2K float64 // surface coefficient with wrap and gaps, 1 to 1,000: still freezer air 4 to 9
	AirShare    float64 // air between the pieces, 0 (puree) to 0.6 of the volume: about 0.4 for loose peas
}

// Check returns a *RangeError for the first value that is out of range.
func (p Pack) Check() error {
	low := func(m float64) float64 {
		if m == 0 {
			return 0
		}
		return p.SizeM
	}
	least := low(p.SecondM)
	if p.Shape == Cylinder {
		least = 0
	}
	return first(
		within("shape", float64(p.Shape), float64(Slab), float64(Sphere), "(slab, cylinder, sphere)"),
		within("pack size", p.SizeM, 0.001, 0.1, "m"),
		within("second half size", p.SecondM, least, 1, "m"),
		within("third half size", p.ThirdM, low(p.ThirdM), 1, "m"),
		within("surface coefficient", p.FilmWPerM2K, 1, 1000, "W/(m² K)"),
		within("air in the pack", p.AirShare, 0, 0.6, "of the volume"),
	)
}

// run is the shape and size the pack is solved in, and how much faster than
// that it freezes for the faces left out.
func (p *Pack) run(frozenWPerMK float64) (shape Shape, sizeM, faster float64) {
	bi := func(sizeM float64) float64 { return p.FilmWPerM2K * sizeM / frozenWPerMK }
	switch {
	case p.Shape == Sphere, p.SecondM == 0 && p.ThirdM == 0:
		return p.Shape, p.SizeM, 1
	case p.Shape == Cylinder && p.SecondM >= p.SizeM:
		return Cylinder, p.SizeM, tallFaces(bi(p.SizeM), p.SecondM/p.SizeM) / 2
	case p.Shape == Cylinder:
		return Slab, p.SecondM, squatFaces(bi(p.SecondM), p.SizeM/p.SecondM)
	case p.SecondM == 0 || p.ThirdM == 0:
		return Slab, p.SizeM, barFaces(bi(p.SizeM), math.Max(p.SecondM, p.ThirdM)/p.SizeM)
	}
	return Slab, p.SizeM, brickFaces(bi(p.SizeM), p.SecondM/p.SizeM, p.ThirdM/p.SizeM)
}

// levy is the conductivity of a mixture of two substances, a share of the first
// and the rest the second, neither of which surrounds the other: swapping them
// gives the same. Source: Levy (1981), from memory.
func levy(one, two, shareOfOne float64) float64 {
	if one == two {
		return one
	}
	l := one / two
	s := 2/((l-1)*(l-1)/((l+1)*(l+1)+l/2)) - 1 + 2*shareOfOne
	f := 0.5 * (s - math.Sqrt(s*s-4*shareOfOne*(s+1-2*shareOfOne)))
	return two * (2 + l + 2*(l-1)*f) / (2 + l - (l-1)*f)
}

// substance is the food with the air between its pieces, per m³ of pack. The
// tissue conducts in parallel (an upper bound); between tissue and air Levy's
// model lies in the middle of what packed beds show, and an estimate.
func (c *Composition) substance(airShare float64) (substance, float64, error) {
	h, err := c.content()
	if err != nil {
		return substance{}, 0, err
	}
	tf := h.freezingC
	densityKgPerM3 := density(c.fractions(0), 0) * (1 - airShare)
	conducts := func(tempC float64) float64 {
		return levy(parallel(c.fractions(tempC), tempC), StillAirWPerMK, 1-airShare)
	}
	s := substance{content: newContent(tf, h.frozen*densityKgPerM3, h.latent*densityKgPerM3, h.unfrozen*densityKgPerM3)}
	s.unfrozenWPerMK = conducts(tf)
	const warmC, coolC = -6, -30
	warm := (conducts(warmC) - s.unfrozenWPerMK) / (1 - tf/warmC)
	cool := (conducts(coolC) - s.unfrozenWPerMK) / (1 - tf/coolC)
	s.icySlope = (warm - cool) / (warmC - coolC)
	s.icy = warm - s.icySlope*warmC
	return s, densityKgPerM3, nil
}

// freezingCells is enough shells for the time to a core temperature to 0.3 %.
const freezingCells = 30

// Freeze puts a pack of food at startC (0 to 60 °C) into the freezer. What it
// gives is an estimate: film, air in the pack and conductivity are guesses
// people can hardly make better than to a fifth.
func (p Pack) Freeze(food Composition, startC float64) (*Freezing, error) {
	if err := first(p.Check(), within("start temperature", startC, 0, 60, "°C")); err != nil {
		return nil, err
	}
	s, densityKgPerM3, err := food.substance(p.AirShare)
	if err != nil {
		return nil, err
	}
	shape, sizeM, faster := p.run(s.conductivity(-15))
	f := newFreezing(shape, sizeM, p.FilmWPerM2K, faster, startC, s, freezingCells)
	f.densityKgPerM3 = densityKgPerM3
	return f, nil
}

// AfterS is how long the pack has been in.
func (f *Freezing) AfterS() float64 { return f.afterS }

// CoreC is the temperature of the place that freezes last, MeanC the
// temperature the pack would come to if its heat were spread evenly, SurfaceC
// that of the food at the wrap in air at airC.
func (f *Freezing) CoreC() float64 { return f.centre(f.tempC) }
func (f *Freezing) MeanC() float64 { return f.temperature(f.mean(f.now)) }
func (f *Freezing) SurfaceC(airC float64) float64 {
	flow, _ := f.surface(airC)
	return airC + flow/f.filmWPerM2K
}

// OutJPerKg is the heat that has left a kg of pack.
func (f *Freezing) OutJPerKg() float64 { return f.outJPerM3 / f.densityKgPerM3 }

// OutWPerKg is the heat that leaves a kg of pack at this moment.
func (f *Freezing) OutWPerKg(airC float64) float64 {
	flow, _ := f.surface(airC)
	return flow * f.areaPerM[len(f.areaPerM)-1] * f.faster / f.densityKgPerM3
}

// A step lasts until a hundredth of the heat of freezing has left or the core
// has fallen by half a degree, at most five minutes.
const (
	longestStepS = 300
	heatShare    = 0.01
	longestFallK = 0.5
)

func (f *Freezing) stepS(airC float64) float64 {
	flow, _ := f.surface(airC)
	perS := math.Abs(flow) * f.areaPerM[len(f.areaPerM)-1] * f.faster
	return min(longestStepS, heatShare*f.latent/perS, longestFallK/f.coreKPerS) / f.finer
}

// tread goes on by at most stepS seconds in air that changes in a straight line
// from one temperature to another over those seconds, and says how far it came.
func (f *Freezing) tread(stepS, fromC, toC float64) (float64, error) {
	slope := (toC - fromC) / stepS
	for range 15 {
		if f.advance(stepS*f.faster, [3]float64{fromC, fromC + slope*trLength*stepS, fromC + slope*stepS}) {
			f.afterS += stepS
			return stepS, nil
		}
		stepS /= 4
	}
	return 0, errUnsettled
}

// Step goes on by dtS seconds (up to 1e7) in air whose temperature is given for
// all times since the pack went in, −60 to 60 °C.
func (f *Freezing) Step(dtS float64, airC func(afterS float64) float64) error {
	if err := within("step", dtS, 0, 1e7, "s"); err != nil {
		return err
	}
	for end := f.afterS + dtS; end-f.afterS > 1e-9*end; {
		now := airC(f.afterS)
		if err := within("air", now, -60, 60, "°C"); err != nil {
			return err
		}
		step := min(f.stepS(now), end-f.afterS)
		if _, err := f.tread(step, now, airC(f.afterS+step)); err != nil {
			return err
		}
	}
	return nil
}

// errUnsettled is a freezing that no step is short enough for; an air that is
// not a number does it.
var errUnsettled = errors.New("the freezing of the pack cannot be worked out: is the air temperature a number at all times?")

// UnreachableError is a temperature that a pack comes ever nearer to and never
// gets to.
type UnreachableError struct{ CoreC, AirC float64 }

func (e *UnreachableError) Error() string {
	return fmt.Sprintf("a core of %g °C is not reached in air of %g °C, it only comes ever nearer: ask for %g °C or warmer, or for colder air",
		e.CoreC, e.AirC, e.AirC+reachableK)
}

// reachableK is how far over the air a core temperature must be to be asked
// for.
const reachableK = 1

// UntilCore goes on in air of one temperature (−60 to −5 °C) until the core is
// at coreC, and gives the seconds since the pack went in. A coreC within 1 °C
// of the air or below it is an *UnreachableError.
func (f *Freezing) UntilCore(coreC, airC float64) (float64, error) {
	if err := first(within("air", airC, -60, -5, "°C"), within("core temperature", coreC, -60, 60, "°C")); err != nil {
		return 0, err
	}
	if coreC < airC+reachableK {
		return 0, &UnreachableError{coreC, airC}
	}
	for {
		was := f.CoreC()
		if was <= coreC {
			return f.afterS, nil
		}
		step, err := f.tread(f.stepS(airC), airC, airC)
		if err != nil {
			return 0, err
		}
		if now := f.CoreC(); now <= coreC { // between the two a straight line in time
			return f.afterS - step*(coreC-now)/(was-now), nil
		}
	}
}

// FreezingTimeS is the time until the core of a pack is at coreC, by the
// enthalpy method.
func (p Pack) FreezingTimeS(food Composition, startC, airC, coreC float64) (float64, error) {
	f, err := p.Freeze(food, startC)
	if err != nil {
		return 0, err
	}
	return f.UntilCore(coreC, airC)
}

// PhamTimeS is the same by Pham's method (1986), to show beside it: air −45 to
// −15 °C, core −18 to −5 °C. Its heat is that between the two temperatures by
// Chen, not latent heat times all the water. The method was set up for surface
// coefficients from 10 up and freezing points down to −1.5 °C; in a freezer at
// home it comes out between 13 % below (peas) and 10 % above (loose packs) the
// enthalpy method.
func (p Pack) PhamTimeS(food Composition, startC, airC, coreC float64) (float64, error) {
	if err := first(p.Check(), within("start temperature", startC, 0, 60, "°C"), within("air", airC, -45, -15, "°C"),
		within("core temperature", coreC, -18, -5, "°C")); err != nil {
		return 0, err
	}
	if coreC < airC+reachableK {
		return 0, &UnreachableError{coreC, airC}
	}
	s, _, err := food.substance(p.AirShare)
	if err != nil {
		return 0, err
	}
	frozen := s.conductivity(0.5 * (coreC + airC))
	shape, sizeM, faster := p.run(frozen)
	c := phamCase{
		startC: startC, airC: airC, coreC: coreC, halfM: sizeM, faces: faster * shape.dims(),
		filmWPerM2K: p.FilmWPerM2K, frozenWPerMK: frozen, coolJPerM3K: s.unfrozen,
	}
	c.freezeJPerM3 = s.at(startC) - s.at(coreC) - s.unfrozen*(startC-meanFreezingC(coreC, airC))
	return c.seconds(), nil
}
