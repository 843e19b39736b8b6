package batch

import (
	"fmt"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// minutes gives the published time, the time here with the altitude step, and
// the event that starts the clock.
func (w *worker) minutes() {
	t := w.Treatment
	w.out.Clock = w.clock()
	if t.Minutes == 0 {
		words := measure.Figure{Label: "Treatment", Words: t.Words, Text: t.Words, Working: "no minutes are published: " + t.Words, Basis: measure.Tabled, Source: t.Source}
		words.ID = "published-minutes"
		w.out.Published = words
		words.ID = "minutes"
		w.out.Minutes = words
		return
	}
	published := measure.MinutesRange(t.Minutes, t.MinutesHigh)
	w.out.Published = measure.Figure{
		ID: "published-minutes", Label: "As published", Value: t.Minutes, High: t.MinutesHigh, Unit: "min", Words: t.Words,
		Text: published, Basis: measure.Tabled, Source: t.Source, Working: "published for low altitude: " + published,
	}
	rule, extraRule := w.table.Rule("altitude-ft"), w.table.Rule("altitude-extra-min")
	extra := 0.0
	limit := measure.New(rule.Value, measure.Foot)
	if w.Altitude.Given() && w.Altitude.SI() >= limit.SI()*(1-1e-12) {
		extra = extraRule.Value
	}
	limitText := limit.To(w.altitudeUnit())
	where := fmt.Sprintf("%s is below %s", w.Altitude, printed(limitText))
	switch {
	case !w.Altitude.Given():
		where = "no altitude entered, taken as below " + printed(limitText)
		w.find(measure.Mind, "no-altitude", extraRule.Source, "No altitude is entered.",
			fmt.Sprintf("Enter the height of the kitchen: from %s up the blanch is %s longer.", printed(limitText), measure.Minutes(extraRule.Value)))
	case extra > 0:
		where = fmt.Sprintf("%s is %s or more", w.Altitude, printed(limitText))
		w.find(measure.Note, "altitude-minute", extraRule.Source,
			fmt.Sprintf("At %s the blanch is %s longer than published.", w.Altitude, measure.Minutes(extra)),
			fmt.Sprintf("Blanch %s instead of %s.", measure.MinutesRange(t.Minutes+extra, t.MinutesHigh+extra), published))
	}
	here := measure.MinutesRange(t.Minutes+extra, t.MinutesHigh+extra)
	w.out.Minutes = measure.Figure{
		ID: "minutes", Label: "Blanch", Value: t.Minutes + extra, High: t.MinutesHigh + extra, Unit: "min", Words: t.Words,
		Text: here, Basis: measure.Tabled, Source: t.Source,
		Working: fmt.Sprintf("%s published + %s (%s) = %s", published, measure.Minutes(extra), where, here),
	}
	if t.Method == reference.SteamBlanch {
		w.out.Minutes.Label = "Steam"
	}
}

func (w *worker) altitudeUnit() *measure.LengthUnit {
	if u := w.Altitude.Unit(); u == measure.Metre || u == nil && w.metric {
		return measure.Metre
	}
	return measure.Foot
}

// printed is a quantity with thousands marks.
func printed(q measure.Length) string { return measure.Plain(q.Amount()) + " " + q.Unit().Symbol }

// ClockWords says when the minutes of a treatment start.
func ClockWords(start reference.ClockStart) string {
	switch start {
	case reference.AtReturnToBoil:
		return "when the water boils again"
	case reference.AtOnce:
		return "at once, when the lid goes on"
	}
	return "no clock: go by the words"
}

func (w *worker) clock() measure.Figure {
	words := ClockWords(w.Treatment.ClockStart)
	f := measure.Figure{ID: "clock", Label: "The clock starts", Words: words, Text: words, Basis: measure.Tabled, Source: w.Treatment.Source}
	switch w.Treatment.ClockStart {
	case reference.AtReturnToBoil:
		back := w.table.Rule("return-to-boil-min")
		f.Source = back.Source
		f.Basis = measure.Ruled
		f.Working = fmt.Sprintf("the water should boil again within %s; if it does not, the load is too big for the water and the burner", measure.Minutes(back.Value))
	case reference.AtOnce:
		f.Working = "steam is there from the first moment"
	default:
		f.Working = "no minutes are published for this treatment"
	}
	return f
}

// chill gives the chilling time and the ice by rule.
func (w *worker) chill() {
	t := w.Treatment
	if t.ChillFactor == 0 || t.Minutes == 0 {
		words := t.ChillWords
		if words == "" {
			words = "no chilling"
		}
		source := t.ChillSource
		if source == "" {
			source = t.Source
		}
		w.out.Chill = measure.Figure{ID: "chill", Label: "Chill", Words: words, Text: words, Working: words, Basis: measure.Tabled, Source: source}
		w.out.Ice = measure.Figure{ID: "ice", Label: "Ice", Words: "none by rule", Text: "none by rule", Working: "the rule of ice counts for blanched pieces", Basis: measure.Ruled, Source: source}
		return
	}
	low, high := w.out.Minutes.Value*t.ChillFactor, w.out.Minutes.High*t.ChillFactor
	text := measure.MinutesRange(low, high)
	working := fmt.Sprintf("as long as the blanch: %s", text)
	if t.ChillFactor != 1 {
		working = fmt.Sprintf("%s × %s = %s", w.out.Minutes.Text, measure.Plain(t.ChillFactor), text)
	}
	w.out.Chill = measure.Figure{
		ID: "chill", Label: "Chill in ice water", Value: low, High: high, Unit: "min", Text: text,
		Working: working, Basis: measure.Ruled, Source: t.ChillSource,
	}
	if t.ChillStanding == reference.CommonPractice {
		w.out.Chill.Note = "Common practice in the trade; no single source."
	}
	rule := w.table.Rule("ice-lb-per-lb")
	iceKg := w.Prepared.SI() * rule.Value
	ice, iceText := w.mass(iceKg)
	_, prepared := w.mass(w.Prepared.SI())
	unit := w.massUnit().Symbol
	w.out.Ice = measure.Figure{
		ID: "ice", Label: "Ice, by rule of thumb", Value: ice, High: ice, Unit: unit, Text: iceText,
		Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s × %s %s/%s = %s", prepared, measure.Plain(rule.Value), unit, unit, iceText),
		Note:    "The rule of thumb counts the food only; warm tap water in the bath needs more.",
	}
}
