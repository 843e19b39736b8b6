package heat

import "math"

// substance is what a freezing pack is made of, per m³ of pack: heat content
// and conductivity over temperature. The conductivity is
//
//	k = unfrozenWPerMK + (1 − tf/t)(icy + icySlope t)  below the freezing point tf
//
// so that the heat flow potential ∫ k dt has a closed form too.
type substance struct {
	content
	unfrozenWPerMK, icy, icySlope float64
}

// conductivity is k at t.
func (s *substance) conductivity(t float64) float64 {
	if t >= s.freezingC {
		return s.unfrozenWPerMK
	}
	return s.unfrozenWPerMK + (1-s.freezingC/t)*(s.icy+s.icySlope*t)
}

// conductivitySlope is dk/dt.
func (s *substance) conductivitySlope(t float64) float64 {
	if t >= s.freezingC {
		return 0
	}
	return s.freezingC/(t*t)*(s.icy+s.icySlope*t) + (1-s.freezingC/t)*s.icySlope
}

// potential is ∫ k dt from the freezing point.
func (s *substance) potential(t float64) float64 {
	tf := s.freezingC
	p := s.unfrozenWPerMK * (t - tf)
	if t >= tf {
		return p
	}
	return p + s.icy*(t-tf-tf*math.Log(t/tf)) + s.icySlope*(0.5*(t*t-tf*tf)-tf*(t-tf))
}

// Freezing follows one pack through time: shells of equal thickness, the heat
// content of each as the unknown, so that the ice needs no extra bookkeeping
// and no heat is lost (enthalpy method). In time it takes TR-BDF2 with Newton's
// method in every stage. Density and size stay those of the unfrozen pack.
//
// After it is made it allocates nothing.
type Freezing struct {
	shells
	substance
	filmWPerM2K float64
	faster      float64 // how much faster than this shape the pack freezes, for its other faces
	finer       float64 // how many times shorter the steps are than they need be: 1, more for a check

	densityKgPerM3         float64 // of the pack, unfrozen
	afterS, outJPerM3      float64
	coreKPerS              float64   // how fast the core changed in the last step
	now, stage, right, gap []float64 // heat content, J/m³
	tempC, phi, rise       []float64 // temperature, potential and its slope over heat content
	matrix                 tridiagonal
}

func newFreezing(shape Shape, sizeM, filmWPerM2K, faster, startC float64, s substance, n int) *Freezing {
	f := &Freezing{shells: newShells(shape, sizeM, n), substance: s, filmWPerM2K: filmWPerM2K, faster: faster, finer: 1, matrix: newTridiagonal(n)}
	all := make([]float64, 7*n)
	for i, part := range []*[]float64{&f.now, &f.stage, &f.right, &f.gap, &f.tempC, &f.phi, &f.rise} {
		*part = all[i*n : (i+1)*n : (i+1)*n]
	}
	for i := range f.now {
		f.now[i] = s.at(startC)
	}
	f.look(f.now)
	return f
}

// look brings temperatures, potentials and slopes up to date with heat
// contents.
func (f *Freezing) look(h []float64) {
	for i, hi := range h {
		t := f.temperature(hi)
		f.tempC[i], f.phi[i] = t, f.potential(t)
		f.rise[i] = f.conductivity(t) / f.slope(t)
	}
}

// surface is what leaves the outer shell per m² towards air at airC, and its
// slope over the shell's temperature: half a shell in series with the film.
func (f *Freezing) surface(airC float64) (flow, slope float64) {
	t := f.tempC[len(f.tempC)-1]
	k := f.conductivity(t)
	g := 1 / (1/f.filmWPerM2K + f.stepM/(2*k))
	return g * (t - airC), g + g*g*f.stepM/(2*k*k)*f.conductivitySlope(t)*(t-airC)
}

// advance goes on by dtS seconds of this shape's own time in air at the
// temperatures of the step's start, of its first stage's end and of its end.
// It reports false, and stays where it was, if Newton's method does not settle.
func (f *Freezing) advance(dtS float64, airC [3]float64) bool {
	thetaS := trTheta * dtS
	n := len(f.now)
	f.look(f.now)
	startFlow, _ := f.surface(airC[0])
	startCore := f.centre(f.tempC)
	in := 0.0
	for i := range n {
		out := startFlow * f.areaPerM[i]
		if i < n-1 {
			out = f.areaPerM[i] / f.stepM * (f.phi[i] - f.phi[i+1])
		}
		f.right[i] = f.now[i] + thetaS*(in-out)/f.volume[i]
		in = out
	}
	copy(f.stage, f.now)
	if !f.settle(thetaS, airC[1]) {
		f.look(f.now)
		return false
	}
	middleFlow, _ := f.surface(airC[1])
	for i, h := range f.stage {
		f.right[i] = trNew*h - trOld*f.now[i]
		f.stage[i] = f.now[i] + (h-f.now[i])/trLength
	}
	if !f.settle(thetaS, airC[2]) {
		f.look(f.now)
		return false
	}
	endFlow, _ := f.surface(airC[2])
	copy(f.now, f.stage)
	f.coreKPerS = math.Abs(f.centre(f.tempC)-startCore) / dtS * f.faster
	f.outJPerM3 += f.areaPerM[n-1] * dtS * (trSide*(startFlow+middleFlow) + trTheta*endFlow)
	return true
}

// settle solves stage = right + θ flows(stage) by Newton's method.
func (f *Freezing) settle(thetaS, airC float64) bool {
	n := len(f.stage)
	m := &f.matrix
	for range 30 {
		f.look(f.stage)
		flow, slope := f.surface(airC)
		in, inSlope, before := 0.0, 0.0, 0.0
		for i := range n {
			var out, own, next float64
			if i < n-1 {
				g := f.areaPerM[i] / f.stepM
				out = g * (f.phi[i] - f.phi[i+1])
				own, next = g*f.rise[i], g*f.rise[i+1]
			} else {
				out = f.areaPerM[i] * flow
				own = f.areaPerM[i] * slope / f.slope(f.tempC[i])
			}
			w := thetaS / f.volume[i]
			m.lower[i], m.upper[i] = -w*before, -w*next
			m.diag[i] = 1 + w*(own+inSlope)
			f.gap[i] = f.right[i] - f.stage[i] + w*(in-out)
			in, inSlope, before = out, next, own
		}
		m.factor()
		m.solve(f.gap)
		worst := 0.0
		for i, d := range f.gap {
			f.stage[i] += d
			worst = math.Max(worst, math.Abs(d))
		}
		if worst <= 1e-7*f.latent {
			f.look(f.stage)
			return true
		}
	}
	return false
}
