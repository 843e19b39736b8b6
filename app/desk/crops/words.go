package crops

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// minutesWords are the minutes of a treatment with what ends them, or its words:
// never nothing.
func minutesWords(t reference.Treatment) string {
	if t.Minutes == 0 {
		return t.Words
	}
	return timeAndWords(t.Minutes, t.MinutesHigh, t.Words)
}

// timeAndWords puts words behind minutes, as a sentence of their own where they
// are one.
func timeAndWords(low, high float64, words string) string {
	text := measure.MinutesRangeBy(look.Voice(), low, high)
	switch first, _ := utf8.DecodeRuneInString(words); {
	case words == "":
		return text
	case unicode.IsUpper(first):
		return text + ". " + words
	}
	return text + ", " + words
}

// timeAndClock are minutes with the rule that starts their clock, or words.
func timeAndClock(t reference.Treatment) string {
	if t.Minutes == 0 {
		return t.Words
	}
	return withClock(minutesWords(t), t.ClockStart)
}

// withClock puts behind minutes what starts their clock.
func withClock(minutes string, c reference.ClockStart) string {
	return look.Say("%s; the clock starts %s", minutes, look.Say(c.Says()))
}

// methodShort is a method in a narrow column.
func methodShort(m reference.Method) string {
	switch m {
	case reference.WaterBlanch:
		return look.Say("water")
	case reference.SteamBlanch:
		return look.Say("steam")
	case reference.CookThrough:
		return look.Say("cook")
	}
	return look.Say("raw")
}

// clockShort says when the clock starts, for a narrow column.
func clockShort(c reference.ClockStart) string {
	switch c {
	case reference.AtReturnToBoil:
		return look.Say("boils again")
	case reference.AtOnce:
		return look.Say("at once")
	}
	return look.Say("no clock")
}

func chillWords(table *reference.Table, t reference.Treatment) string {
	if t.ChillFactor == 0 || t.Minutes == 0 {
		if t.ChillWords == "" {
			return look.Say("none")
		}
		return t.ChillWords
	}
	low := batch.Job{Treatment: t, Voice: look.Voice()} // a place at low altitude, for which the table holds
	return batch.Work(low, table).Chill.Text
}

func headspaceWords(t reference.Treatment) string {
	switch {
	case t.HeadspaceRow != "":
		return look.Say("by size and mouth")
	case t.HeadspaceIn == 0:
		return look.Say("none")
	}
	return look.Amount(measure.Kitchen(t.HeadspaceIn, measure.Inch))
}

// sizeWords are grade and limits of a size class: "small, up to 1 1/4 in
// across", or "any".
func sizeWords(t reference.Treatment) string {
	text := joined(", ", t.Grade, t.Size)
	if text == "" {
		return look.Say("any")
	}
	return text
}

// joined puts what is there together.
func joined(with string, parts ...string) string {
	var there []string
	for _, p := range parts {
		if p != "" {
			there = append(there, p)
		}
	}
	return strings.Join(there, with)
}

// packWords say how pieces lie in the container.
func packWords(p reference.Pack) string {
	switch p {
	case reference.SolidPack:
		return look.Say("packs tightly")
	case reference.LoosePack:
		return look.Say("packs loosely by itself")
	case reference.TrayPack:
		return look.Say("frozen loose on a tray first")
	}
	return look.Say("in liquid or as a purée")
}

// standingWords say how a value came into the table.
func standingWords(s reference.Standing) string {
	switch s {
	case reference.Read:
		return look.Say("read on the source’s page")
	case reference.ReadElsewhere:
		return look.Say("read as a quotation, not on the source’s own page")
	case reference.FromMemory:
		return look.Say("from memory: not yet seen on a page")
	case reference.CommonPractice:
		return look.Say("common practice, no single source")
	}
	return look.Say("entered here, not published")
}

// fieldNames name the fields that may be changed, as keys to be said.
var fieldNames = map[string]string{
	reference.FieldMinutes:     words.Key("Minutes"),
	reference.FieldWords:       words.Key("Words"),
	reference.FieldChillFactor: words.Key("Chill, times the minutes"),
	reference.FieldChillWords:  words.Key("Chill, in words"),
	reference.FieldHeadspace:   words.Key("Headspace, inches"),
	reference.FieldWater:       words.Key("Boiling water, gallons a pound"),
	reference.FieldBlanchWater: words.Key("Into the water or before it"),
	reference.FieldNote:        words.Key("Note"),
	reference.FieldStorage:     words.Key("Best quality, months"),
}

// changeable are the fields that a treatment has, of those that may be changed.
func changeable(t reference.Treatment) []string {
	var fields []string
	for _, field := range reference.EditFields {
		has := reference.ShippedText(t, field) != ""
		switch field {
		case reference.FieldNote, reference.FieldBlanchWater, reference.FieldWords:
			has = true
		case reference.FieldHeadspace: // one number cannot stand for the headspace table
			has = has && t.HeadspaceRow == ""
		}
		if has {
			fields = append(fields, field)
		}
	}
	return fields
}

// fieldNow and fieldShipped are the value of a field with its unit, as a sentence
// says it: as it stands, and as it was shipped.
func fieldNow(t reference.Treatment, field string) string {
	return fieldWords(field, reference.FieldText(t, field))
}

func fieldShipped(t reference.Treatment, field string) string {
	text := reference.ShippedText(t, field)
	if _, changed := t.Changed[field]; changed && !inNumbers(field) {
		text = look.Say(text) // a change keeps what it replaced in English
	}
	return fieldWords(field, text)
}

// inNumbers says whether a field holds numbers and no words.
func inNumbers(field string) bool {
	switch field {
	case reference.FieldMinutes, reference.FieldChillFactor, reference.FieldHeadspace, reference.FieldWater, reference.FieldStorage:
		return true
	}
	return false
}

// fieldWords put its unit to the value of a field, as reference.FieldText gives
// it in every language.
func fieldWords(field, text string) string {
	if text == "" {
		return look.Say("nothing")
	}
	switch field {
	case reference.FieldMinutes:
		if strings.HasSuffix(text, "s") { // seconds
			return text
		}
		return text + " min"
	case reference.FieldChillFactor:
		return look.Say("%s times the minutes", text)
	case reference.FieldHeadspace:
		if strings.HasSuffix(text, "table") {
			return look.Say("the %s", look.Say(text))
		}
		return look.Amount(text + " in")
	case reference.FieldWater:
		return look.Say("%s gal a pound", text)
	case reference.FieldStorage:
		return look.Say("%s months", text)
	}
	return "“" + text + "”"
}
