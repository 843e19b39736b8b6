package batch

import (
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// section words the temperature through a piece on its way to the lift, or to
// the end of the steaming.
func (w *worker) section(c estimate.Case, through estimate.Moments, last string) measure.Section {
	p, _ := w.table.Piece(w.Treatment.ID)
	s := measure.Section{
		ID: "through", Title: w.Say("The piece warming from outside in"), Form: forms[p.Shape], Says: w.pieceWords(),
		Basis: measure.Estimate, Source: reference.HeatModelSource,
	}
	if p.Basis == reference.OurGuess {
		s.Note = w.Say("The size of the piece is guessed.")
	}
	s.Low, _ = w.tempIn(c.StartC.Likely)
	s.High, _ = w.tempIn(c.BoilC)
	labels := [...]string{words.Key("after %s"), words.Key("after %s"), last}
	for i, profile := range through {
		if i < len(through)-1 && through[i+1].AfterS-profile.AfterS < apartS {
			continue // of a short blanch: nobody could tell the two
		}
		s.Moments = append(s.Moments, w.moment(w.Say(labels[i], w.lasting(profile.AfterS)), profile))
	}
	return s
}

// apartS is how far apart two moments are, at least, that stand side by side.
const apartS = 5

var forms = map[reference.PieceShape]measure.Form{
	reference.SlabPiece: measure.Flat, reference.CylinderPiece: measure.Long, reference.SpherePiece: measure.Round,
}

func (w *worker) moment(label string, p estimate.Profile) measure.Moment {
	last := len(p.TempC) - 1
	m := measure.Moment{Label: label, Outside: w.degrees(p.TempC[last]), Middle: w.degrees(p.TempC[0])}
	for _, tempC := range p.TempC {
		temp, _ := w.tempIn(tempC)
		m.Temps = append(m.Temps, temp)
	}
	isotherms := isothermsF
	if w.metric {
		isotherms = isothermsC
	}
	_, unit := w.tempIn(0)
	for _, temp := range isotherms {
		if at, ok := depthOf(temp, m.Temps); ok {
			m.Lines = append(m.Lines, measure.Isotherm{At: at, Label: measure.Plain(temp) + " " + unit.Symbol})
		}
	}
	return m
}

// The isotherms that are drawn, from hot to cool: round numbers over the range
// of a blanch, a judgement of this program.
var (
	isothermsF = []float64{200, 160, 120}
	isothermsC = []float64{90, 70, 50}
)

// depthOf is the outermost place where a profile has a temperature, on the
// straight line between two depths; false where it has it nowhere.
func depthOf(temp float64, temps []float64) (at float64, ok bool) {
	for i := len(temps) - 1; i > 0; i-- {
		if inner, outer := temps[i-1], temps[i]; inner < temp && temp <= outer {
			share := (temp - inner) / (outer - inner)
			return (float64(i-1) + share) / float64(len(temps)-1), true
		}
	}
	return 0, false
}
