package heat

import "math"

// rule is what the water does during a step.
type rule int

const (
	free    rule = iota // warms and cools by its heat balance
	boiling             // stays, and what is left over makes steam
	given               // follows the given surroundings
)

// marchKind is one kind of piece in a March: its shells and the numbers of its
// equations.
type marchKind struct {
	shells
	startC      float64
	capacityJPK []float64 // of each shell, all pieces of the kind together
	betweenWPK  []float64 // from a shell to the next one out
	filmWPK     float64   // surface to water
	surfaceWPK  float64   // middle of the outer shell to water

	now, kept, stage, pull []float64
	matrix                 tridiagonal
}

func newMarchKind(l Load, n int) marchKind {
	s := newShells(l.Shape, l.SizeM, n)
	all := make([]float64, 6*n)
	k := marchKind{
		shells: s, startC: l.StartC, capacityJPK: all[:n:n], betweenWPK: all[n : 2*n : 2*n],
		now: all[2*n : 3*n : 3*n], kept: all[3*n : 4*n : 4*n], stage: all[4*n : 5*n : 5*n], pull: all[5*n:],
		matrix: newTridiagonal(n),
	}
	volumeM3 := l.MassKg / l.DensityKgPerM3
	for i := range n {
		k.capacityJPK[i] = l.MassKg * l.HeatJPerKgK * s.volume[i]
		k.betweenWPK[i] = volumeM3 * s.areaPerM[i] * l.ConductivityWPerMK / s.stepM
		k.now[i] = l.StartC
	}
	k.filmWPK = volumeM3 * s.areaPerM[n-1] * l.FilmWPerM2K
	k.surfaceWPK = 1 / (1/k.filmWPK + 0.5/k.betweenWPK[n-1])
	return k
}

func (k *marchKind) takenW(waterC float64) float64 {
	return k.surfaceWPK * (waterC - k.now[len(k.now)-1])
}

// prepare sets up the equations of a stage, (C + θ flows) T = right side + θ
// surface × water, and what one degree of the water pulls the shells by.
func (k *marchKind) prepare(thetaS float64) {
	n := len(k.now)
	inner := 0.0
	for i := range n {
		outer := k.betweenWPK[i] * thetaS
		if i == n-1 {
			outer = k.surfaceWPK * thetaS
		}
		k.matrix.lower[i], k.matrix.upper[i] = -inner, -outer
		k.matrix.diag[i] = k.capacityJPK[i] + inner + outer
		inner = outer
		k.pull[i] = 0
	}
	k.matrix.factor()
	k.pull[n-1] = thetaS * k.surfaceWPK
	k.matrix.solve(k.pull)
}

// open makes stage the right side of the first stage: heat now and half of
// what flows now.
func (k *marchKind) open(thetaS, waterC float64) {
	n := len(k.now)
	in := 0.0 // from the shell inside
	for i := range n {
		out := k.surfaceWPK * (k.now[i] - waterC)
		if i < n-1 {
			out = k.betweenWPK[i] * (k.now[i] - k.now[i+1])
		}
		k.stage[i] = k.capacityJPK[i]*k.now[i] + thetaS*(in-out)
		in = out
	}
}

// close makes stage, the end of the first stage, the right side of the second.
func (k *marchKind) close() {
	for i, c := range k.capacityJPK {
		k.stage[i] = c * (trNew*k.stage[i] - trOld*k.now[i])
	}
}

// stage is one step of dtS under a rule.
func (m *March) stage(dtS float64, r rule) {
	thetaS := trTheta * dtS
	if dtS != m.lastDtS {
		for i := range m.kinds {
			m.kinds[i].prepare(thetaS)
		}
		m.lastDtS = dtS
	}
	startC, startW := m.waterC, m.netW(0, m.waterC)
	startTaken := m.takenW()
	for i := range m.kinds {
		m.kinds[i].open(thetaS, startC)
	}
	middleC, middleW := m.settle(thetaS, trLength*dtS, m.pot.CapacityJPK*startC+thetaS*(startW-startTaken), startC, r)
	middleTaken := m.stageTakenW(middleC)
	for i := range m.kinds {
		m.kinds[i].close()
	}
	endC, endW := m.settle(thetaS, dtS, m.pot.CapacityJPK*(trNew*middleC-trOld*startC), middleC, r)
	for i := range m.kinds {
		copy(m.kinds[i].now, m.kinds[i].stage)
	}
	m.waterC = endC
	m.afterS += dtS
	taken := dtS * (trSide*(startTaken+middleTaken) + trTheta*m.takenW())
	if r == given {
		m.broughtJ += taken
		return
	}
	brought := dtS * (trSide*(startW+middleW) + trTheta*endW)
	m.broughtJ += brought
	if r == boiling {
		m.steamJ += brought - taken
	}
}

func (m *March) stageTakenW(waterC float64) float64 {
	sum := 0.0
	for i := range m.kinds {
		k := &m.kinds[i]
		sum += k.surfaceWPK * (waterC - k.stage[len(k.stage)-1])
	}
	return sum
}

// settle solves one stage, whose right sides lie in the kinds' stage and in
// heatJ for the water: the shells follow the water in a straight line, so the
// water's balance is one equation, linear but for the losses, which a few
// rounds of the secant rule settle. It gives the water's temperature and the
// power then.
func (m *March) settle(thetaS, laterS, heatJ, guessC float64, r rule) (waterC, netW float64) {
	wayJPK := m.pot.CapacityJPK // water: wayJPK W = heatJ + θ NetW
	for i := range m.kinds {
		k := &m.kinds[i]
		k.matrix.solve(k.stage)
		last := len(k.stage) - 1
		wayJPK += thetaS * k.surfaceWPK * (1 - k.pull[last])
		heatJ += thetaS * k.surfaceWPK * k.stage[last]
	}
	switch r {
	case given:
		waterC = m.around(m.afterS + laterS)
	case boiling:
		waterC = m.pot.BoilC
		netW = m.netW(laterS, waterC)
	case free:
		waterC, netW = m.balance(thetaS, laterS, heatJ, wayJPK, guessC)
	}
	for i := range m.kinds {
		k := &m.kinds[i]
		for j, pull := range k.pull {
			k.stage[j] += pull * waterC
		}
	}
	return waterC, netW
}

// balance is the water temperature W with way W = heat + θ NetW(W), and that
// NetW.
func (m *March) balance(thetaS, laterS, heatJ, wayJPK, guessC float64) (waterC, netW float64) {
	was, wasW := guessC, m.netW(laterS, guessC)
	waterC = (heatJ + thetaS*wasW) / wayJPK
	for range 30 {
		netW = m.netW(laterS, waterC)
		slope := 0.0
		if waterC != was {
			slope = (netW - wasW) / (waterC - was)
		}
		was, wasW = waterC, netW
		next := (heatJ + thetaS*(netW-slope*waterC)) / (wayJPK - thetaS*slope)
		if math.Abs(next-waterC) <= 1e-12*(1+math.Abs(next)) {
			break
		}
		waterC = next
	}
	// the power that the equation was solved with, so that no heat is lost
	return waterC, (wayJPK*waterC - heatJ) / thetaS
}
