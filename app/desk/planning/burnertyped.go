package planning

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// What people type at a burner and mean otherwise than it reads. Each function
// stands before the one that takes the typed text into the class.

// stopwatch is a time as it stands on a stopwatch: 10:30.
var stopwatch = regexp.MustCompile(`^([0-9]{1,3}):([0-5][0-9])$`)

// byStopwatch reads 10:30 as minutes and seconds.
func byStopwatch(take func(typed string) error) func(typed string) error {
	return func(typed string) error {
		parts := stopwatch.FindStringSubmatch(strings.TrimSpace(typed))
		if parts == nil {
			return take(typed)
		}
		minutes, _ := strconv.Atoi(parts[1])
		seconds, _ := strconv.Atoi(parts[2])
		text := fmt.Sprintf("%d s", 60*minutes+seconds)
		if seconds%15 == 0 { // prints as a part of a minute
			text = fmt.Sprintf("%d min %d s", minutes, seconds)
		}
		err := take(text)
		if refused := (*measure.EntryError)(nil); errors.As(err, &refused) {
			refused.Typed = typed
		}
		return err
	}
}

// askedW is the power from which a number without a unit is asked about rather
// than taken for watts: burners of ranges are rated below it in watts, and gas
// burners above it in Btu/h. It is a guess.
const askedW = 5000

// withUnit refuses a rating without a unit that hardly is in watts.
func withUnit(take func(typed string) error) func(typed string) error {
	return func(typed string) error {
		if n, err := measure.ParseNumber(typed); err == nil && n >= askedW {
			return words.Errorf("%[1]s needs its unit, such as %[1]s Btu/h; %[1]s W is more than most burners give", measure.Plain(n))
		}
		return take(typed)
	}
}
