package heat

import "math"

// depths are the points and weights of a mean over the volume of a piece:
// five-point Gauss–Legendre in the volume coordinate x^n.
var depths = [5][2]float64{
	{0.5 - 0.4530899229693320, 0.1184634425280945},
	{0.5 - 0.2692346550528415, 0.2393143352496832},
	{0.5, 0.2844444444444444},
	{0.5 + 0.2692346550528415, 0.2393143352496832},
	{0.5 + 0.4530899229693320, 0.1184634425280945},
}

// Doneness is what a blanch leaves of an enzyme, at the centre and as a mean
// over the piece; WholeAtWater is what would be left if every part had the
// water's temperature at once, the other end of the band for rates that
// already include a piece's warming. It is an estimate: the table's minutes
// were set by tests of quality, this only follows heat.
type Doneness struct{ Centre, Mean, WholeAtWater float64 }

// Doneness works out an enzyme for this blanch, lifted after liftS seconds (at
// most a day).
func (b *Blanch) Doneness(enzyme Inactivation, liftS float64) (Doneness, error) {
	if err := first(enzyme.Check(), within("time", liftS, 0, 86400, "s")); err != nil {
		return Doneness{}, err
	}
	var doses [watched][]float64
	for i := range doses {
		doses[i] = make([]float64, len(enzyme.Fractions))
	}
	heating := b.watch(&b.heating, func(float64) float64 { return b.startC })
	boiling := b.watch(&b.boiling, func(x float64) float64 { return b.PieceC(b.BackS, x) })
	backS := math.Min(b.BackS, liftS) // the history has a kink there
	if err := heating.dose(enzyme, backS, &doses); err != nil {
		return Doneness{}, err
	}
	if err := boiling.dose(enzyme, liftS-backS, &doses); err != nil {
		return Doneness{}, err
	}
	var left [watched]float64
	for i := range left {
		for j, f := range enzyme.Fractions {
			left[i] += f.Share * math.Exp(-doses[i][j])
		}
	}
	d := Doneness{Centre: left[atCentre], WholeAtWater: left[inWater]}
	for i, p := range depths {
		d.Mean += p[1] * left[i]
	}
	return d, nil
}

// What is watched: the depths of the mean, the centre, and the water.
const (
	atCentre = len(depths)
	inWater  = atCentre + 1
	watched  = inWater + 1
)

// watch is one phase seen at several depths at once. The profiles of the modes
// at these depths are worked out beforehand, so that a moment costs one set of
// exponentials for all of them.
type watch struct {
	phase    *phase
	x        [inWater]float64
	startC   [inWater]float64
	profiles [inWater][maxModes]float64
}

func (b *Blanch) watch(p *phase, startAt func(x float64) float64) *watch {
	w := &watch{phase: p}
	for i, d := range depths {
		w.x[i] = math.Pow(d[0], 1/b.piece.Shape.dims())
	}
	for i, x := range w.x { // the last one is the centre, 0
		w.startC[i] = startAt(x)
		for m := range p.n {
			w.profiles[i][m] = p.shape.profile(p.z[m], x)
		}
	}
	return w
}

// tempsC are the temperatures after so many seconds, as phase.pieceC and
// phase.waterC give them one by one.
func (w *watch) tempsC(afterS float64, to *[watched]float64) {
	p := w.phase
	tau, settled := afterS/p.scaleS, p.settledTau()
	now := p.after(&p.begin, math.Max(tau, settled))
	for i, x := range w.x {
		t := now.common + p.ramp.base + p.ramp.curve*x*x
		for m := range p.n {
			t += now.a[m] * w.profiles[i][m]
		}
		to[i] = p.zeroC + t
		if tau < settled {
			to[i] = w.startC[i] + (to[i]-w.startC[i])*tau/settled
		}
	}
	to[inWater] = p.waterC(afterS)
}

// dose adds the integral of the rates over the first seconds of a phase, by
// Simpson's rule on panels that halve until no share that is left changes by
// more than 1e-7.
func (w *watch) dose(enzyme Inactivation, seconds float64, doses *[watched][]float64) error {
	if seconds <= 0 {
		return nil
	}
	n := len(enzyme.Fractions)
	sums, coarse, fine := make([]float64, watched*n), make([]float64, watched*n), make([]float64, watched*n)
	add := func(afterS, weight float64) {
		var temps [watched]float64
		w.tempsC(afterS, &temps)
		for i, t := range temps {
			for j, f := range enzyme.Fractions {
				sums[i*n+j] += weight * f.Rate(t) / 60
			}
		}
	}
	add(0, 0.5)
	add(seconds, 0.5)
	simpson := math.NaN()
	for panels := 1; panels <= 1<<14; panels *= 2 {
		step := seconds / float64(panels)
		if panels > 1 { // the points between those that are summed already
			for i := 1; i < panels; i += 2 {
				add(float64(i)*step, 1)
			}
		}
		worst := 0.0
		for k, s := range sums {
			trapezoid := s * step
			simpson = (4*trapezoid - coarse[k]) / 3
			worst = math.Max(worst, math.Abs(simpson-fine[k])*math.Exp(-simpson))
			coarse[k], fine[k] = trapezoid, simpson
		}
		if panels >= 32 && worst <= 1e-7 {
			break
		}
	}
	if math.IsNaN(simpson) {
		return &RangeError{Quantity: "temperature of the blanch", Value: simpson, High: 140, Unit: "°C"}
	}
	for i := range doses {
		for j := range doses[i] {
			doses[i][j] += fine[i*n+j]
		}
	}
	return nil
}
