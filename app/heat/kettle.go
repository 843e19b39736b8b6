package heat

import "math"

// Piece is one kind of piece that is heated, all alike.
type Piece struct {
	Shape              Shape
	SizeM              float64 // half thickness or radius, 0.0001 to 0.1 m
	ConductivityWPerMK float64 // 0.1 to 1
	DensityKgPerM3     float64 // 200 to 1,500
	HeatJPerKgK        float64 // specific heat, 1,500 to 4,300
	FilmWPerM2K        float64 // surface coefficient, 5 to 20,000
}

// Check returns a *RangeError for the first property that is out of range.
func (p Piece) Check() error {
	if p.Shape < Slab || p.Shape > Sphere {
		return &RangeError{"shape", float64(p.Shape), float64(Slab), float64(Sphere), "(slab, cylinder, sphere)"}
	}
	return first(
		within("piece size", p.SizeM, 0.0001, 0.1, "m"),
		within("conductivity", p.ConductivityWPerMK, 0.1, 1, "W/(m K)"),
		within("density", p.DensityKgPerM3, 200, 1500, "kg/m³"),
		within("specific heat", p.HeatJPerKgK, 1500, 4300, "J/(kg K)"),
		within("surface coefficient", p.FilmWPerM2K, 5, 20000, "W/(m² K)"),
	)
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// biot is hR/k, and scaleS the seconds that make one unit of dimensionless
// time, R²/α.
func (p *Piece) biot() float64 { return p.FilmWPerM2K * p.SizeM / p.ConductivityWPerMK }
func (p *Piece) scaleS() float64 {
	return p.SizeM * p.SizeM * p.DensityKgPerM3 * p.HeatJPerKgK / p.ConductivityWPerMK
}

// Kettle is boiling or nearly boiling water on a burner, lid on, well stirred
// by its own boil.
type Kettle struct {
	BoilC     float64 // boiling point at this altitude, 60 to 102 °C
	WaterKg   float64 // 0.2 to 500
	VesselJPK float64 // heat capacity of kettle and basket, 0 to 50,000 J/K
	PowerW    float64 // burner power into the water less losses, constant near the boil, 50 to 50,000
	WaterC    float64 // when the load goes in: at the boil, or less where the lid was off
}

// Check returns a *RangeError for the first value that is out of range.
func (k Kettle) Check() error {
	return first(
		within("boiling point", k.BoilC, 60, 102, "°C"),
		within("water", k.WaterKg, 0.2, 500, "kg"),
		within("heat capacity of the kettle", k.VesselJPK, 0, 50000, "J/K"),
		within("power", k.PowerW, 50, 50000, "W"),
		within("water temperature", k.WaterC, k.BoilC-20, k.BoilC, "°C"),
	)
}

// waterHeatJPerKgK is the specific heat of liquid water near the boil, IAPWS-95
// at 97.85 °C (computed): 4.2132 kJ/(kg K).
const waterHeatJPerKgK = 4213.2

func (k *Kettle) capacityJPK() float64 { return k.WaterKg*waterHeatJPerKgK + k.VesselJPK }

// Blanch is what one load does in a kettle, from the moment it goes in. It is
// the exact solution in modes; temperatures are an estimate for what people
// only guess (film, size, power).
type Blanch struct {
	BackS  float64 // seconds until the water boils again; 0 where it never stops
	DipC   float64 // lowest temperature of the water
	DipAtS float64

	piece   Piece
	massKg  float64
	startC  float64
	heating phase // until the water boils again
	boiling phase // from then on, in water that stays at the boil
}

// kettleModes is enough terms for the return and the dip to a few thousandths
// of a second and of a degree; curveModes for the centre of a big piece from
// its first seconds on, to 0.1 °C in the seconds after the return, where the
// water's slope breaks off, and far better elsewhere.
const (
	kettleModes = 8
	curveModes  = 24
)

// Blanch works out one load of massKg (0.005 to 200 kg) of pieces at startC
// (0 to 60 °C) in the kettle.
func (k Kettle) Blanch(p Piece, massKg, startC float64) (Blanch, error) {
	var b Blanch
	err := b.work(k, p, massKg, startC, curveModes)
	return b, err
}

// work fills b in place, so that a thousand draws allocate nothing.
func (b *Blanch) work(k Kettle, p Piece, massKg, startC float64, n int) error {
	if err := first(k.Check(), p.Check(), within("load", massKg, 0.005, 200, "kg"), within("start temperature", startC, 0, 60, "°C")); err != nil {
		return err
	}
	capacity, scaleS := k.capacityJPK(), p.scaleS()
	b.piece, b.massKg, b.startC = p, massKg, startC
	h := &b.heating
	h.zeroC, h.scaleS = k.BoilC, scaleS
	h.solve(p.Shape, p.biot(), massKg*p.HeatJPerKgK/capacity, k.PowerW*scaleS/capacity, n)
	h.set(field{base: startC - k.BoilC}, k.WaterC-k.BoilC)
	back := h.returnTau()
	dip := h.dipTau(back)
	low := h.after(&h.begin, dip)
	b.BackS, b.DipAtS = back*scaleS, dip*scaleS
	b.DipC = math.Min(k.BoilC+h.water(&low), k.WaterC)
	b.boiling.zeroC, b.boiling.scaleS = k.BoilC, scaleS
	b.boiling.solve(p.Shape, p.biot(), 0, 0, n)
	end := h.after(&h.begin, back)
	b.boiling.set(h.of(&end, 0), 0)
	return nil
}

// returnTau is the last moment at which the water rises to the boiling point.
// After the dip the water's temperature is convex, so Newton's method from the
// right comes down on it without overshoot. The right end is where the power
// would have paid for all the heat that the mixed pot lacks: the pieces are
// still colder than the water then, so the water is at the boil or above.
func (p *phase) returnTau() float64 {
	tau := -p.begin.common / p.ramp.rate
	for range 60 {
		w, slope, _ := p.waterAt(tau)
		if slope <= 0 || w <= 0 {
			break
		}
		step := w / slope
		tau -= step
		if tau <= 0 {
			return 0
		}
		if step <= 1e-8*tau { // the next step would be far below rounding
			break
		}
	}
	return tau
}

// dipTau is the moment of the lowest water between 0 and back: the root of the
// slope, which rises steeply first and levels off, so that Newton's method from
// the left climbs to it without overshoot; halving keeps it inside.
func (p *phase) dipTau(back float64) float64 {
	low, high, tau := 0.0, back, 0.0
	for range 60 {
		_, slope, bend := p.waterAt(tau)
		if slope < 0 {
			low = tau
		} else {
			high = tau
		}
		if tau == 0 && slope >= 0 {
			return 0
		}
		next := tau - slope/bend
		if !(next > low && next < high) {
			next = 0.5 * (low + high)
		}
		if math.Abs(next-tau) <= 1e-5*back { // W is flat there: the dip itself is right to 1e-10
			return next
		}
		tau = next
	}
	return tau
}

// waterAt is the water's temperature over the boiling point with its first and
// second slope, as if it could pass the boiling point.
func (p *phase) waterAt(tau float64) (w, slope, bend float64) {
	m := &p.modes
	w = p.begin.common + m.ramp.base + m.ramp.curve + m.ramp.lift + m.ramp.rate*tau
	slope = m.ramp.rate
	weight := m.shape.dims() * m.gamma
	for i := range m.n {
		z2 := m.z[i] * m.z[i]
		fading := weight * m.integ[i] * p.begin.a[i] * math.Exp(-z2*tau)
		w -= fading
		slope += z2 * fading
		bend -= z2 * z2 * fading
	}
	return w, slope, bend
}

// WaterC is the temperature of the water after so many seconds.
func (b *Blanch) WaterC(afterS float64) float64 {
	if afterS >= b.BackS {
		return b.boiling.zeroC
	}
	return math.Min(b.heating.waterC(afterS), b.heating.zeroC)
}

// PieceC is the temperature of a piece after so many seconds at depth x: 0 is
// its centre, 1 its surface.
func (b *Blanch) PieceC(afterS, x float64) float64 {
	if afterS < b.BackS {
		return b.heating.pieceC(afterS, x, b.startC)
	}
	start := b.startC
	if b.BackS > 0 {
		start = b.heating.pieceC(b.BackS, x, start)
	}
	return b.boiling.pieceC(afterS-b.BackS, x, start)
}

// MeanC is the temperature of a piece averaged over its volume.
func (b *Blanch) MeanC(afterS float64) float64 {
	if afterS < b.BackS {
		return b.heating.meanC(afterS)
	}
	return b.boiling.meanC(afterS - b.BackS)
}

// profile is the temperature field of the pieces in °C.
func (b *Blanch) profile(afterS float64, now *state) field {
	p, since := &b.heating, afterS
	if afterS >= b.BackS {
		p, since = &b.boiling, afterS-b.BackS
	}
	*now = p.after(&p.begin, math.Max(since, 0)/p.scaleS)
	return p.of(now, p.zeroC)
}

// LargestLoadKg is the largest load that is back at the boil within
// withinS seconds, at most maxKg: a root in the mass, since more never boils
// sooner. It is 0 where even the smallest load takes longer.
func (k Kettle) LargestLoadKg(p Piece, startC, withinS, maxKg float64) (float64, error) {
	var b Blanch
	low, high := 0.005, maxKg
	if err := b.work(k, p, high, startC, kettleModes); err != nil {
		return 0, err
	}
	if b.BackS <= withinS {
		return high, nil
	}
	if err := b.work(k, p, low, startC, kettleModes); err != nil || b.BackS > withinS {
		return 0, err
	}
	for high-low > 1e-6*high {
		mid := 0.5 * (low + high)
		if err := b.work(k, p, mid, startC, kettleModes); err != nil {
			return 0, err
		}
		if b.BackS <= withinS {
			low = mid
		} else {
			high = mid
		}
	}
	return low, nil
}
