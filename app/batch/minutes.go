package batch

import (
	"fmt"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// minutes gives the published time, the time here with the altitude step, and
// the event that starts the clock.
func (w *worker) minutes() {
	t := w.Treatment
	w.out.Clock = w.clock()
	if t.Minutes == 0 {
		words := inWords("published-minutes", "Treatment", t.Words, "not timed as a blanch: "+lowerFirst(t.Words))
		w.out.Published = from(t.Source, t.Standing, words)
		w.out.Minutes = w.out.Published
		w.out.Minutes.ID = "minutes"
		return
	}
	low, high, source := t.ShippedMinutes()
	published := measure.MinutesRange(low, high)
	w.out.Published = from(source, t.Standing, measure.Figure{
		ID: "published-minutes", Label: "As published", Value: low, High: high, Unit: "min", Words: t.Words,
		Text: published, Working: "published for low altitude: " + published,
	})
	before := published + " published"
	if _, changed := t.Changed[reference.FieldMinutes]; changed {
		before = fmt.Sprintf("%s entered here (%s shipped)", measure.MinutesRange(t.Minutes, t.MinutesHigh), published)
		if shipped := w.shippedStanding(source); shipped != "" {
			w.out.Published.Standing = shipped
		}
	}
	extra, where := w.altitudeStep()
	here := measure.MinutesRange(t.Minutes+extra, t.MinutesHigh+extra)
	w.out.Minutes = from(t.Source, t.Standing, measure.Figure{
		ID: "minutes", Label: "Blanch", Value: t.Minutes + extra, High: t.MinutesHigh + extra, Unit: "min", Words: t.Words,
		Text: here, Working: fmt.Sprintf("%s + %s (%s) = %s", before, measure.Minutes(extra), where, here),
	})
	if t.Method == reference.SteamBlanch {
		w.out.Minutes.Label = "Steam"
	}
}

// shippedStanding is the standing of the shipped value of an edited treatment.
func (w *worker) shippedStanding(source string) string {
	for _, also := range w.Treatment.Also {
		if also.Source == source {
			return string(also.Standing)
		}
	}
	return ""
}

// altitudeStep is the time that the altitude adds, and why.
func (w *worker) altitudeStep() (extraMin float64, where string) {
	rule, extraRule := w.table.Rule("altitude-ft"), w.table.Rule("altitude-extra-min")
	limit := w.height(rule.Value)
	here := w.Altitude.String()
	if u := w.Altitude.Unit(); u != nil && (u == measure.Metre) != w.metric {
		here += " (" + w.height(w.Altitude.In(measure.Foot)) + ")"
	}
	switch {
	case !w.Altitude.Given():
		w.find(measure.Mind, "no-altitude", extraRule.Source, "No altitude is entered.",
			fmt.Sprintf("Enter the height of the kitchen: from %s up the blanch is %s longer.", limit, measure.Minutes(extraRule.Value)))
		return 0, "no altitude entered, taken as below " + limit
	case w.Altitude.In(measure.Foot) < rule.Value*(1-1e-12):
		return 0, here + " is below " + limit
	}
	t := w.Treatment
	w.find(measure.Note, "altitude-minute", extraRule.Source,
		fmt.Sprintf("At %s the blanch is %s longer than in the table.", here, measure.Minutes(extraRule.Value)),
		fmt.Sprintf("Blanch %s instead of %s.", measure.MinutesRange(t.Minutes+extraRule.Value, t.MinutesHigh+extraRule.Value), measure.MinutesRange(t.Minutes, t.MinutesHigh)))
	return extraRule.Value, here + " is " + limit + " or more"
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func (w *worker) clock() measure.Figure {
	t := w.Treatment
	f := inWords("clock", "The clock starts", t.ClockStart.Says(), "")
	switch t.ClockStart {
	case reference.AtReturnToBoil:
		back := w.table.Rule("return-to-boil-min")
		f.Working = fmt.Sprintf("the water should boil again within %s; if it does not, the load is too big for the water and the burner", measure.Minutes(back.Value))
		if t.SourceClock == reference.AtOnce {
			f.Note = "The page these minutes come from counts at once, when the lid goes on; counting from the boil never shortens them."
		}
		return by(back, f)
	case reference.AtOnce:
		f.Working = "steam is there from the first moment"
		return by(w.table.Rule("steam-clock-min"), f)
	}
	f.Working = "this treatment goes by words, not by minutes"
	return from(t.Source, t.Standing, f)
}

// chill gives the chilling time and the ice by rule.
func (w *worker) chill() {
	t := w.Treatment
	if t.ChillFactor == 0 || t.Minutes == 0 {
		words, source := t.ChillWords, t.ChillSource
		if words == "" {
			words = "no chilling"
		}
		if source == "" {
			source = t.Source
		}
		w.out.Chill = from(source, t.ChillStanding, inWords("chill", "Chill", words, words))
		w.out.Ice = by(w.table.Rule("ice-lb-per-lb"), inWords("ice", "Ice", "none by rule", "the rule of ice counts for blanched pieces"))
		return
	}
	low, high := w.out.Minutes.Value*t.ChillFactor, w.out.Minutes.High*t.ChillFactor
	text := measure.MinutesRange(low, high)
	working := "as long as the blanch: " + text
	if t.ChillFactor != 1 {
		working = fmt.Sprintf("%s × %s = %s", w.out.Minutes.Text, measure.Plain(t.ChillFactor), text)
	}
	w.out.Chill = from(t.ChillSource, t.ChillStanding, measure.Figure{
		ID: "chill", Label: "Chill in ice water", Value: low, High: high, Unit: "min", Text: text, Working: working,
	})
	if w.out.Chill.Basis == measure.Tabled {
		w.out.Chill.Basis = measure.Ruled
	}
	if t.ChillStanding == reference.CommonPractice {
		w.out.Chill.Note = "Common practice in the trade; no single source."
	}
	if !w.weighed() {
		w.out.Ice = w.noWeight("ice", "Ice, by rule of thumb")
		return
	}
	rule := w.table.Rule("ice-lb-per-lb")
	ice, iceText := w.mass(w.Prepared.SI() * rule.Value)
	unit := w.massUnit().Symbol
	w.out.Ice = by(rule, measure.Figure{
		ID: "ice", Label: "Ice, by rule of thumb", Value: ice, High: ice, Unit: unit, Text: iceText,
		Working: fmt.Sprintf("%s × %s %s/%s = %s", w.massExact(w.Prepared.SI()), measure.Plain(rule.Value), unit, unit, iceText),
		Note:    "The rule of thumb counts the food only; warm tap water in the bath needs more.",
	})
}
