package reference

import (
	"regexp"
	"slices"
	"strings"

	"example.org/kettleside/content/words"
)

// spokenTime finds a time in a sentence in English or Spanish, whatever the
// language of the table: "5 minutes", "1 ½ min", "one minute", "30 s",
// "5 minutos", "media hora".
var spokenTime = regexp.MustCompile(`(?i)([\d½⅓⅔¼¾⅛⅜⅝⅞][\d ./½⅓⅔¼¾⅛⅜⅝⅞]*|\b(?:half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|` +
	`medi[ao]|un[ao]?|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez))[- ]*(hours?|horas?|h|minutes?|minutos?|mins?|seconds?|segundos?|secs?|segs?|s)\b`)

// spokenNumbers are the numbers in words, so that "five minutes" and
// "5 minutos" are the same time.
var spokenNumbers = map[string]string{
	"half a": "1/2", "half an": "1/2", "a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5",
	"six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10",
	"media": "1/2", "medio": "1/2", "un": "1", "una": "1", "uno": "1", "dos": "2", "tres": "3", "cuatro": "4", "cinco": "5",
	"seis": "6", "siete": "7", "ocho": "8", "nueve": "9", "diez": "10",
}

// timesIn lists the times of a sentence, each as it stands there and in one form
// for all languages.
func timesIn(sentence string) (asTyped, times []string) {
	for _, m := range spokenTime.FindAllStringSubmatch(sentence, -1) {
		number := strings.TrimSpace(strings.ToLower(m[1]))
		if digits, ok := spokenNumbers[number]; ok {
			number = digits
		}
		asTyped = append(asTyped, m[0])
		times = append(times, Folded(number)+strings.ToLower(m[2][:1])) // hours, minutes and seconds begin alike in both
	}
	return asTyped, times
}

// timeInWords refuses words that would carry another time past the minutes:
// a time beside minutes, and a time that the shipped words do not have.
// Published times are never shortened, in words either.
func timeInWords(x *Treatment, typed string) error {
	_, shipped := timesIn(ShippedText(*x, FieldWords))
	asTyped, times := timesIn(typed)
	for i, time := range times {
		if x.Minutes > 0 {
			return words.Errorf("you typed %s; allowed are words without a time: the minutes have their own field.", quoted(asTyped[i]))
		}
		if !slices.Contains(shipped, time) {
			return words.Errorf("you typed %s; allowed are only times that the shipped words have.", quoted(asTyped[i]))
		}
	}
	return nil
}
