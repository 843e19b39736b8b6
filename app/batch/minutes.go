package batch

import (
	"fmt"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// minutes gives the published time, the time here with the altitude step, and
// the event that starts the clock.
func (w *worker) minutes() {
	t := w.Treatment
	w.out.Clock = w.clock()
	if t.Minutes == 0 {
		byWords := inWords("published-minutes", w.Say("Treatment"), t.Words, w.Say("not timed as a blanch: %s", lowerFirst(t.Words)))
		w.out.Published = from(t.Source, t.Standing, byWords)
		w.out.Minutes = w.out.Published
		w.out.Minutes.ID = "minutes"
		return
	}
	low, high, source := t.ShippedMinutes()
	published := w.minutesText(low, high)
	w.out.Published = from(source, t.Standing, measure.Figure{
		ID: "published-minutes", Label: w.Say("As published"), Value: low, High: high, Unit: "min", Words: t.Words,
		Text: published, Working: w.Say("published for low altitude: %s", published),
	})
	before := w.Say("%s published", published)
	if _, changed := t.Changed[reference.FieldMinutes]; changed {
		before = w.Say("%s entered here (%s shipped)", w.minutesText(t.Minutes, t.MinutesHigh), published)
		if shipped := w.shippedStanding(source); shipped != "" {
			w.out.Published.Standing = shipped
		}
	}
	extra, where := w.altitudeStep()
	here := w.minutesText(t.Minutes+extra, t.MinutesHigh+extra)
	w.out.Minutes = from(t.Source, t.Standing, measure.Figure{
		ID: "minutes", Label: w.Say("Blanch"), Value: t.Minutes + extra, High: t.MinutesHigh + extra, Unit: "min", Words: t.Words,
		Text: here, Working: fmt.Sprintf("%s + %s (%s) = %s", before, measure.Minutes(extra), where, here),
	})
	if t.Method == reference.SteamBlanch {
		w.out.Minutes.Label = w.Say("Steam")
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
	here := w.Amount(w.Altitude.String())
	if u := w.Altitude.Unit(); u != nil && u.Of(measure.Metric) != w.metric {
		here += " (" + w.height(w.Altitude.In(measure.Foot)) + ")"
	}
	switch {
	case !w.Altitude.Given():
		w.find(measure.Mind, "no-altitude", extraRule.Source, w.Say("No altitude is entered."),
			w.Say("Enter the height of the kitchen: from %s up the blanch is %s longer.", limit, measure.Minutes(extraRule.Value)))
		return 0, w.Say("no altitude entered, taken as below %s", limit)
	case w.Altitude.In(measure.Foot) < rule.Value*(1-1e-12):
		return 0, w.Say("%s is below %s", here, limit)
	}
	t := w.Treatment
	w.find(measure.Note, "altitude-minute", extraRule.Source,
		w.Say("At %s the blanch is %s longer than in the table.", here, measure.Minutes(extraRule.Value)),
		w.Say("Blanch %s instead of %s.", w.minutesText(t.Minutes+extraRule.Value, t.MinutesHigh+extraRule.Value), w.minutesText(t.Minutes, t.MinutesHigh)))
	return extraRule.Value, w.Say("%s is %s or more", here, limit)
}

// lowerFirst is a text that goes on inside a sentence.
func lowerFirst(s string) string { return withFirst(s, unicode.ToLower) }

// upperFirst is a text at the start of a sentence.
func upperFirst(s string) string { return withFirst(s, unicode.ToUpper) }

func withFirst(s string, change func(rune) rune) string {
	if s == "" {
		return s
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(change(first)) + s[size:]
}

func (w *worker) clock() measure.Figure {
	t := w.Treatment
	f := inWords("clock", w.Say("The clock starts"), w.Say(t.ClockStart.Says()), "")
	switch t.ClockStart {
	case reference.AtReturnToBoil:
		back := w.table.Rule("return-to-boil-min")
		f.Working = w.Say("the water should boil again within %s; if it does not, the load is too big for the water and the burner", measure.Minutes(back.Value))
		if t.SourceClock == reference.AtOnce {
			f.Note = w.Say("The page these minutes come from counts at once, when the lid goes on; counting from the boil never shortens them.")
		}
		return by(back, f)
	case reference.AtOnce:
		f.Working = w.Say("steam is there from the first moment")
		return by(w.table.Rule("steam-clock-min"), f)
	}
	f.Working = w.Say("this treatment goes by words, not by minutes")
	return from(t.Source, t.Standing, f)
}

// chill gives the chilling time and the ice by rule.
func (w *worker) chill() {
	t := w.Treatment
	if t.ChillFactor == 0 || t.Minutes == 0 {
		how, source := t.ChillWords, t.ChillSource
		if how == "" {
			how = w.Say("no chilling")
		}
		if source == "" {
			source = t.Source
		}
		w.out.Chill = from(source, t.ChillStanding, inWords("chill", w.Say("Chill"), how, how))
		w.out.Ice = by(w.table.Rule("ice-lb-per-lb"), inWords("ice", w.Say("Ice"), w.Say("none by rule"), w.Say("the rule of ice counts for blanched pieces")))
		return
	}
	low, high := w.out.Minutes.Value*t.ChillFactor, w.out.Minutes.High*t.ChillFactor
	text := w.minutesText(low, high)
	working := w.Say("as long as the blanch: %s", text)
	if t.ChillFactor != 1 {
		working = fmt.Sprintf("%s × %s = %s", w.out.Minutes.Text, measure.Plain(t.ChillFactor), text)
	}
	w.out.Chill = from(t.ChillSource, t.ChillStanding, measure.Figure{
		ID: "chill", Label: w.Say("Chill in ice water"), Value: low, High: high, Unit: "min", Text: text, Working: working,
	})
	if w.out.Chill.Basis == measure.Tabled {
		w.out.Chill.Basis = measure.Ruled
	}
	if t.ChillStanding == reference.CommonPractice {
		w.out.Chill.Note = w.Say("Common practice in the trade; no single source.")
	}
	if !w.weighed() {
		w.out.Ice = w.noWeight("ice", w.Say("Ice, by rule of thumb"))
		return
	}
	rule := w.table.Rule("ice-lb-per-lb")
	ice, iceText := w.mass(w.Prepared.SI() * rule.Value)
	unit := w.massUnit().Symbol
	w.out.Ice = by(rule, measure.Figure{
		ID: "ice", Label: w.Say("Ice, by rule of thumb"), Value: ice, High: ice, Unit: unit, Text: iceText,
		Working: fmt.Sprintf("%s × %s %s/%s = %s", w.massExact(w.Prepared.SI()), measure.Plain(rule.Value), unit, unit, iceText),
		Note:    w.Say("The rule of thumb counts the food only; warm tap water in the bath needs more."),
	})
}
