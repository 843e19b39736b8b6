package heat

import "math"

// shells is a piece cut into shells of equal thickness, from its centre (or
// its insulated or middle face) outwards.
type shells struct {
	shape     Shape
	stepM     float64
	volume    []float64 // share of the piece, adds up to 1
	areaPerM  []float64 // of the outer face of a shell, per volume of the piece
	squareIn  float64   // mean of (r/R)² over the first shell
	squareOut float64   // and over the second
}

func newShells(shape Shape, sizeM float64, n int) shells {
	s := shells{shape: shape, stepM: sizeM / float64(n), volume: make([]float64, n), areaPerM: make([]float64, n)}
	d := shape.dims()
	inner := 0.0
	for i := range n {
		x := float64(i+1) / float64(n)
		outer := math.Pow(x, d)
		s.volume[i] = outer - inner
		s.areaPerM[i] = d * math.Pow(x, d-1) / sizeM
		inner = outer
	}
	step := 1 / float64(n)
	square := d / (d + 2) * step * step
	s.squareIn = square
	s.squareOut = square * (math.Pow(2, d+2) - 1) / (math.Pow(2, d) - 1)
	return s
}

// centre is the temperature at the centre: a parabola through the two inner
// shells.
func (s *shells) centre(t []float64) float64 {
	return (s.squareOut*t[0] - s.squareIn*t[1]) / (s.squareOut - s.squareIn)
}

func (s *shells) mean(t []float64) float64 {
	sum := 0.0
	for i, v := range s.volume {
		sum += v * t[i]
	}
	return sum
}

// Load is one kind of piece, all alike.
type Load struct {
	Piece
	MassKg float64 // 0.001 to 1,000
	StartC float64 // −60 to 150 °C; nothing freezes or thaws in it
}

func (l Load) check() error {
	return first(l.Check(), within("load", l.MassKg, 0.001, 1000, "kg"), within("start temperature", l.StartC, -60, 150, "°C"))
}

// Pot is well-stirred water around the pieces of a March.
type Pot struct {
	CapacityJPK float64                              // of water and vessel, 10 to 1e7 J/K
	WaterC      float64                              // at the start, −5 °C up to BoilC
	BoilC       float64                              // the water stays there and power goes into steam, 60 to 150 °C
	NetW        func(afterS, waterC float64) float64 // power into the water less all losses; nil for none
}

func (p Pot) check() error {
	return first(
		within("heat capacity of the pot", p.CapacityJPK, 10, 1e7, "J/K"),
		within("boiling point", p.BoilC, 60, 150, "°C"),
		within("water temperature", p.WaterC, -5, p.BoilC, "°C"),
	)
}

// March follows pieces and their surroundings through time in steps: shells of
// equal thickness, heat that leaves one enters the next, so that none is lost.
// In time it takes TR-BDF2 (Bank et al. 1985, from memory): half a step of the
// trapezoid rule, then a backward formula; second order, and no step is too
// long to be stable, though one much longer than thin pieces need may carry
// them past the water by hundredths of a degree. It does what the closed form of Kettle cannot: several
// kinds of pieces, losses that depend on the water, burners that lag, lids
// lifted, surroundings that change.
//
// After it is made it allocates nothing.
type March struct {
	kinds  []marchKind
	pot    Pot
	around func(afterS float64) float64 // given surroundings; nil: the pot

	afterS, waterC float64
	broughtJ       float64 // by NetW, or by the given surroundings
	steamJ         float64
	backS          float64

	firstS  float64 // what an outer shell takes to follow, a first stride
	turnS   float64 // when the water last began to boil
	was     moment  // for steps that are taken again
	lastDtS float64
}

// moment is what a step changes, besides the shells.
type moment struct{ afterS, waterC, broughtJ, steamJ float64 }

// trTheta is the weight of a rate in each stage of TR-BDF2, per step, and
// trNew and trOld make the second stage's start out of the first's end and
// start. All three follow from the first stage's length, 2 − √2.
const (
	trLength = 2 - math.Sqrt2
	trTheta  = trLength / 2
	trNew    = 1 / (trLength * (2 - trLength))
	trOld    = trNew - 1
	trSide   = trNew * trTheta // weight of the rates at both ends of the first stage over a whole step
)

// MarchInPot puts loads into a pot, each cut into 5 to 1,000 shells.
func MarchInPot(pot Pot, cells int, loads ...Load) (*March, error) {
	if err := pot.check(); err != nil {
		return nil, err
	}
	m := &March{pot: pot, waterC: pot.WaterC}
	return m, m.add(cells, loads)
}

// MarchIn puts loads into surroundings whose temperature is given at all times.
func MarchIn(around func(afterS float64) float64, cells int, loads ...Load) (*March, error) {
	m := &March{around: around, waterC: around(0)}
	return m, m.add(cells, loads)
}

func (m *March) add(cells int, loads []Load) error {
	if err := within("shells", float64(cells), 5, 1000, ""); err != nil {
		return err
	}
	for _, l := range loads {
		if err := l.check(); err != nil {
			return err
		}
	}
	m.firstS = 1e6
	for _, l := range loads {
		k := newMarchKind(l, cells)
		m.kinds = append(m.kinds, k)
		m.firstS = min(m.firstS, 0.25*k.capacityJPK[cells-1]/(k.surfaceWPK+k.betweenWPK[cells-1]))
	}
	return nil
}

// AfterS is how far it has come.
func (m *March) AfterS() float64 { return m.afterS }

// WaterC is the temperature of the water or the surroundings.
func (m *March) WaterC() float64 { return m.waterC }

// BackS is when the water last came up to its boiling point; 0 if it never did.
func (m *March) BackS() float64 { return m.backS }

// SteamJ is the heat that went into steam, BroughtJ what came in from outside.
func (m *March) SteamJ() float64   { return m.steamJ }
func (m *March) BroughtJ() float64 { return m.broughtJ }

// CentreC, MeanC and SurfaceC are of one kind of piece, counted from 0.
func (m *March) CentreC(kind int) float64 { return m.kinds[kind].centre(m.kinds[kind].now) }
func (m *March) MeanC(kind int) float64   { return m.kinds[kind].mean(m.kinds[kind].now) }
func (m *March) SurfaceC(kind int) float64 {
	k := &m.kinds[kind]
	last := k.now[len(k.now)-1]
	return m.waterC - (m.waterC-last)*k.surfaceWPK/k.filmWPK
}

// HeldJ is the heat in pieces and water over that at the start; it is BroughtJ
// less SteamJ.
func (m *March) HeldJ() float64 {
	sum := 0.0
	if m.around == nil {
		sum = m.pot.CapacityJPK * (m.waterC - m.pot.WaterC)
	}
	for i := range m.kinds {
		k := &m.kinds[i]
		for j, c := range k.capacityJPK {
			sum += c * (k.now[j] - k.startC)
		}
	}
	return sum
}

// Step goes on by dtS seconds (0 up to 1e6). Where the pieces have only just
// gone in, or the water has only just begun to boil, it goes in shorter
// strides, a quarter of the time since, because a long one would overshoot.
func (m *March) Step(dtS float64) error {
	if err := within("step", dtS, 0, 1e6, "s"); err != nil {
		return err
	}
	for dtS > 0 {
		stride := min(dtS, m.firstS+0.25*(m.afterS-m.turnS))
		if m.around != nil {
			m.stage(stride, given)
		} else {
			stride = m.towards(stride)
		}
		dtS -= stride
	}
	return nil
}

// towards goes on by dtS or to the moment at which the water comes to the boil
// or leaves it, and says how far it came.
func (m *March) towards(dtS float64) float64 {
	m.keep()
	if m.waterC >= m.pot.BoilC && m.netW(0, m.waterC)-m.takenW() >= 0 {
		m.stage(dtS, boiling)
		if m.steamJ >= m.was.steamJ {
			return dtS
		}
		m.restore() // the pieces took more than the burner gave
	}
	m.stage(dtS, free)
	if m.waterC <= m.pot.BoilC {
		return dtS
	}
	high := dtS
	low := high
	for m.waterC > m.pot.BoilC && low > 1e-9 { // below the boil again, for a bracket
		high, low = low, low/4
		m.redo(low)
	}
	if m.waterC > m.pot.BoilC { // power and pieces are even: it keeps boiling
		m.restore()
		m.stage(dtS, boiling)
		return dtS
	}
	for high-low > 1e-9*high {
		mid := 0.5 * (low + high)
		m.redo(mid)
		if m.waterC > m.pot.BoilC {
			high = mid
		} else {
			low = mid
		}
	}
	m.redo(high)
	m.steamJ += m.pot.CapacityJPK * (m.waterC - m.pot.BoilC) // the last 1e−9 of the step
	m.waterC, m.backS, m.turnS = m.pot.BoilC, m.afterS, m.afterS
	return high
}

func (m *March) redo(dtS float64) {
	m.restore()
	m.stage(dtS, free)
}

func (m *March) keep() {
	m.was = moment{m.afterS, m.waterC, m.broughtJ, m.steamJ}
	for i := range m.kinds {
		copy(m.kinds[i].kept, m.kinds[i].now)
	}
}

func (m *March) restore() {
	m.afterS, m.waterC, m.broughtJ, m.steamJ = m.was.afterS, m.was.waterC, m.was.broughtJ, m.was.steamJ
	for i := range m.kinds {
		copy(m.kinds[i].now, m.kinds[i].kept)
	}
}

func (m *March) netW(laterS, waterC float64) float64 {
	if m.pot.NetW == nil {
		return 0
	}
	return m.pot.NetW(m.afterS+laterS, waterC)
}

// takenW is the heat that goes from the water into the pieces.
func (m *March) takenW() float64 {
	sum := 0.0
	for i := range m.kinds {
		sum += m.kinds[i].takenW(m.waterC)
	}
	return sum
}
