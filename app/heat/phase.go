package heat

import "math"

// phase is a span of time in which pieces and water follow one set of modes:
// heating up to the return, boiling, chilling with ice, chilling without.
type phase struct {
	modes
	begin  state
	zeroC  float64 // the zero of the scale: the boiling point, or that of ice
	scaleS float64 // seconds of one unit of dimensionless time, R²/α
}

// set lets a phase begin with a field of the pieces and a water temperature,
// both counted from zeroC.
func (p *phase) set(start field, water float64) { p.begin = p.expand(start, water) }

// settledTau is when the modes that are left out would have faded to nothing.
// Earlier a single depth of a piece is drawn as a straight line from its start.
func (p *phase) settledTau() float64 { return 12 / (p.z[p.n-1] * p.z[p.n-1]) }

// pieceC is the temperature at depth x of a piece that was at startC there when
// the phase began.
func (p *phase) pieceC(afterS, x, startC float64) float64 {
	tau := math.Max(afterS, 0) / p.scaleS
	settled := p.settledTau()
	now := p.after(&p.begin, math.Max(tau, settled))
	t := p.zeroC + p.at(&now, x)
	if tau < settled {
		t = startC + (t-startC)*tau/settled
	}
	return t
}

func (p *phase) meanC(afterS float64) float64 {
	now := p.after(&p.begin, math.Max(afterS, 0)/p.scaleS)
	return p.zeroC + p.mean(&now)
}

func (p *phase) waterC(afterS float64) float64 {
	now := p.after(&p.begin, math.Max(afterS, 0)/p.scaleS)
	return p.zeroC + p.water(&now)
}
