package reference

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// spokenTime finds a time in a sentence: "5 minutes", "1 1/2 min", "one
// minute", "30 s".
var spokenTime = regexp.MustCompile(`(?i)\b(\d[\d ./]*|half a|an?|one|two|three|four|five|six|seven|eight|nine|ten)[- ]*(hours?|minutes?|mins?|seconds?|secs?|s)\b`)

// timeInWords refuses words that would carry another time past the minutes:
// a time beside minutes, and a time that the shipped words do not have.
// Published times are never shortened, in words either.
func timeInWords(x *Treatment, typed string) string {
	shipped := spokenTime.FindAllString(strings.ToLower(ShippedText(*x, FieldWords)), -1)
	for _, time := range spokenTime.FindAllString(typed, -1) {
		if x.Minutes > 0 {
			return fmt.Sprintf("you typed %s; allowed are words without a time: the minutes have their own field.", quoted(time))
		}
		if !slices.Contains(shipped, strings.ToLower(time)) {
			return fmt.Sprintf("you typed %s; allowed are only times that the shipped words have.", quoted(time))
		}
	}
	return ""
}
