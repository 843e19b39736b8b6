package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// power is what the burner gives the water: from its rehearsal, else from kind
// and plate. Both are zero where nothing is known of it.
func (w *worker) power(boilC float64) (heat.Guess, measure.Figure) {
	f := measure.Figure{ID: "burner-power", Label: w.Say("The burner gives the water"), Unit: measure.Watt.Symbol}
	if trial := w.Burner.Rehearsal; trial.Given() {
		waterKg := trial.Water.SI() * waterKgPerL
		powerW, err := heat.RehearsalPowerW(waterKg, 0, trial.From.SI(), boilC, trial.Took.SI())
		if err != nil {
			w.find(measure.Mind, "rehearsal-outside", "", w.Say("The rehearsal of the burner cannot be used: %s.", w.Error(err)), w.Say("Check what was entered: water, temperature and time."))
			return heat.Guess{}, measure.Figure{}
		}
		if powerW < leastPowerW || powerW > mostPowerW {
			w.find(measure.Mind, "rehearsal-outside", "", w.Say("The rehearsal of the burner cannot be right: it would take %s W.", toTen(powerW)), w.Say("Check what was entered: water, temperature and time."))
			return heat.Guess{}, measure.Figure{}
		}
		f.Value, f.High, f.Text = powerW, powerW, toTen(powerW)+" W"
		f.Working = w.Say("rehearsal: %s from %s to the boil (%s) took %s; %s kg × 4.19 kJ/(kg °C) × %s °C ÷ %s s = %s W",
			w.typedVolume(trial.Water), w.typedTemp(trial.From), w.degrees(boilC), trial.Took, measure.Exact(waterKg), measure.Exact(boilC-trial.From.SI()), measure.Plain(trial.Took.SI()), toTen(powerW))
		f.Note = w.Say("What kettle and room took during the rehearsal is taken off already. Another boil may differ by a tenth either way.")
		return estimate.Around(powerW, estimate.RehearsalSpread), model(f)
	}
	guess, known := estimate.FromPlate(heat.BurnerKind(w.Burner.Kind), w.Burner.Rating.SI())
	if !known {
		return heat.Guess{}, measure.Figure{}
	}
	f.Value, f.High = guess.Low, guess.High
	f.Text = measure.Range(toTen(guess.Low), toTen(guess.High), f.Unit)
	f.Working = w.Say("%s, of which a part reaches the water; %s W as likely", w.plate(), toTen(guess.Likely))
	f.Note = w.Say("A rehearsal says it better: time one boil in a lidded kettle.")
	f = model(f)
	f.Standing = string(reference.FromMemory) // some of the shares and ratings are
	return guess, f
}

// What a burner in a kitchen gives the water, W: wider than any is, so that a
// slip in a rehearsal is caught.
const (
	leastPowerW = 80
	mostPowerW  = 20000
)

// plate says what is known of a burner without a rehearsal.
func (w *worker) plate() string {
	kind, rating := w.Say(burnerWords[w.Burner.Kind]), w.Burner.Rating
	switch {
	case w.Burner.Kind == UnknownBurner:
		return w.Say("plate of %s, kind not known", watts(rating))
	case !rating.Given():
		return w.Say("%s, rating not known", kind)
	}
	return w.Say("%s, plate of %s", kind, watts(rating))
}

var burnerWords = map[BurnerKind]string{
	Coil: words.Key("electric coil or cast plate"), Radiant: words.Key("electric under glass"), Induction: words.Key("induction"), Gas: words.Key("gas"),
}

func watts(p measure.Power) string { return measure.Plain(p.SI()) + " W" }

// toTen prints watts to the nearest ten.
func toTen(powerW float64) string { return measure.Plain(math.Round(powerW/10) * 10) }
