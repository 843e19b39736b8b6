package crops

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
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
	text := measure.MinutesRange(low, high)
	switch first, _ := utf8.DecodeRuneInString(words); {
	case words == "":
		return text
	case unicode.IsUpper(first):
		return text + ". " + words
	}
	return text + ", " + words
}

// clockShort says when the clock starts, for a narrow column.
func clockShort(c reference.ClockStart) string {
	switch c {
	case reference.AtReturnToBoil:
		return "boils again"
	case reference.AtOnce:
		return "at once"
	}
	return "no clock"
}

func chillWords(table *reference.Table, t reference.Treatment) string {
	if t.ChillFactor == 0 || t.Minutes == 0 {
		if t.ChillWords == "" {
			return "none"
		}
		return t.ChillWords
	}
	low := batch.Job{Treatment: t} // a place at low altitude, for which the table holds
	return batch.Work(low, table).Chill.Text
}

func headspaceWords(t reference.Treatment) string {
	switch {
	case t.HeadspaceRow != "":
		return "by size and mouth"
	case t.HeadspaceIn == 0:
		return "none"
	}
	return measure.Kitchen(t.HeadspaceIn, measure.Inch)
}

// sizeWords are grade and limits of a size class: "small, up to 1 1/4 in
// across", or "any".
func sizeWords(t reference.Treatment) string {
	text := joined(", ", t.Grade, t.Size)
	if text == "" {
		return "any"
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
		return "packs tightly"
	case reference.LoosePack:
		return "packs loosely by itself"
	case reference.TrayPack:
		return "frozen loose on a tray first"
	}
	return "in liquid or as a purée"
}

// standingWords say how a value came into the table.
func standingWords(s reference.Standing) string {
	switch s {
	case reference.Read:
		return "read on the source’s page"
	case reference.ReadElsewhere:
		return "read as a quotation, not on the source’s own page"
	case reference.FromMemory:
		return "from memory: not yet seen on a page"
	case reference.CommonPractice:
		return "common practice, no single source"
	}
	return "entered here, not published"
}

// fieldNames name the fields that may be changed, in the order of
// reference.EditFields.
var fieldNames = map[string]string{
	reference.FieldMinutes:     "Minutes",
	reference.FieldWords:       "Words",
	reference.FieldChillFactor: "Chill, times the minutes",
	reference.FieldChillWords:  "Chill, in words",
	reference.FieldHeadspace:   "Headspace, inches",
	reference.FieldWater:       "Boiling water, gallons a pound",
	reference.FieldBlanchWater: "Into the water or before it",
	reference.FieldNote:        "Note",
	reference.FieldStorage:     "Best quality, months",
}

// fieldNamed is the field of a name.
func fieldNamed(name string) string {
	for field, n := range fieldNames {
		if n == name {
			return field
		}
	}
	return ""
}

// changeable are the names of the fields that a treatment has.
func changeable(t reference.Treatment) []string {
	var names []string
	for _, field := range reference.EditFields {
		has := reference.ShippedText(t, field) != ""
		switch field {
		case reference.FieldNote, reference.FieldBlanchWater, reference.FieldWords:
			has = true
		}
		if has {
			names = append(names, fieldNames[field])
		}
	}
	return names
}

// fieldWords are the value of a field with its unit, as a sentence says it.
func fieldWords(field, text string) string {
	if text == "" {
		return "nothing"
	}
	switch field {
	case reference.FieldMinutes:
		if strings.HasSuffix(text, "s") {
			return text
		}
		return text + " min"
	case reference.FieldChillFactor:
		return text + " times the minutes"
	case reference.FieldHeadspace:
		if strings.HasSuffix(text, "table") {
			return "the " + text
		}
		return text + " in"
	case reference.FieldWater:
		return text + " gal a pound"
	case reference.FieldStorage:
		return text + " months"
	}
	return "“" + text + "”"
}
