package reference

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"example.org/kettleside/app/measure"
)

// set puts what was typed into one field, or says in the second half of a
// sentence why it cannot: what was typed and what is allowed.
func (t *Table) set(x *Treatment, field, typed string) string {
	switch field {
	case FieldMinutes:
		return t.setMinutes(x, typed)
	case FieldWords:
		if x.Minutes == 0 && typed == "" {
			return "nothing was typed, but this treatment has no minutes and needs words."
		}
		if says := badText(typed); says != "" {
			return says
		}
		if x.Minutes == 0 {
			t.keepPublished(x)
			x.Source, x.Standing = EnteredHereSource, EnteredHere
		}
		x.Words = typed
	case FieldChillFactor:
		return setChillFactor(x, typed)
	case FieldChillWords:
		return setChillWords(x, typed)
	case FieldHeadspace:
		return setHeadspace(x, typed)
	case FieldWater:
		return setWater(x, typed)
	case FieldBlanchWater:
		if says := badText(typed); says != "" {
			return says
		}
		x.BlanchWater, x.BlanchSource = typed, EnteredHereSource
		if typed == "" {
			x.BlanchSource = ""
		}
	case FieldNote:
		if says := badText(typed); says != "" {
			return says
		}
		x.Note = typed
	case FieldStorage:
		low, high, ok := typedSpan(typed)
		if !ok || low < 0.5 || high > 24 {
			return youTyped(typed) + `months from 0.5 to 24, such as "8" or "8-12".`
		}
		x.StorageMonths, x.StorageMonthsHigh, x.StorageSource = low, high, EnteredHereSource
	}
	return ""
}

// setMinutes enters minutes. Published times are never shortened: what is
// below the shortest published time is refused and that time named.
func (t *Table) setMinutes(x *Treatment, typed string) string {
	if x.ClockStart == NoClock {
		return fmt.Sprintf("you typed %s, but this treatment has no minutes; change its words (%s) instead.", quoted(typed), quoted(x.Words))
	}
	low, high, ok := typedMinutes(typed)
	if !ok {
		return youTyped(typed) + `minutes from above 0 to 60, such as "3", "1 1/2" or "4-6", or seconds such as "10 s".`
	}
	if floor, sources := t.shortest(x); low < floor-1e-9 {
		return fmt.Sprintf("you typed %s, but the shortest published time is %s (%s) and published times are never shortened.",
			quoted(typed), measure.Minutes(floor), strings.Join(sources, "; "))
	}
	t.keepPublished(x)
	x.Minutes, x.MinutesHigh = low, high
	x.Source, x.Standing = EnteredHereSource, EnteredHere
	for i, p := range x.Also {
		x.Also[i].Agrees = (p.Method == "" || p.Method == x.Method) && p.Minutes == low && p.MinutesHigh == high
	}
	return ""
}

// keepPublished keeps the shipped value of an edited treatment among the
// published ones, so that every surface can still show it with its source.
func (t *Table) keepPublished(x *Treatment) {
	if x.Source == EnteredHereSource {
		return // an earlier edit of the same field has kept it
	}
	p := Published{Treatment: x.ID, Minutes: x.Minutes, MinutesHigh: x.MinutesHigh, ClockStart: x.ClockStart,
		Source: x.Source, Standing: x.Standing, Note: "the value as shipped"}
	if x.Minutes == 0 {
		p.Words = x.Words
	}
	if len(x.Rows) > 0 {
		p.Row = x.Rows[0]
	}
	for i := range x.Also {
		x.Also[i].Agrees = false // they agreed with the shipped value, not with the entered one
	}
	x.Also = append([]Published{p}, x.Also...)
}

// shortest returns the shortest published minutes for the treatment by its own
// method, and the sources that print them. The shipped value always counts;
// others do unless they were only read as a quotation or without an author.
func (t *Table) shortest(x *Treatment) (float64, []string) {
	floor := math.Inf(1)
	if x.Source != EnteredHereSource {
		floor = x.Minutes
	}
	counts := func(p Published) bool {
		shippedValue := x.Source == EnteredHereSource && len(x.Rows) > 0 && p.Row == x.Rows[0]
		return p.Minutes > 0 && (p.Method == "" || p.Method == x.Method) && (p.Standing != ReadElsewhere || shippedValue)
	}
	for _, p := range x.Also {
		if counts(p) {
			floor = min(floor, p.Minutes)
		}
	}
	var read, remembered []string
	note := func(source string, standing Standing) {
		if standing == FromMemory {
			remembered = append(remembered, t.sourceName(source)+", from memory")
		} else {
			read = append(read, t.sourceName(source))
		}
	}
	if x.Source != EnteredHereSource && x.Minutes == floor {
		note(x.Source, x.Standing)
	}
	for _, p := range x.Also {
		if counts(p) && p.Minutes == floor {
			note(p.Source, p.Standing)
		}
	}
	names := append(read, remembered...) // what was read is named first
	if len(names) > 2 {
		names = append(names[:2], fmt.Sprintf("and %d more", len(names)-2))
	}
	return floor, names
}

// sourceName is a source in a sentence: publisher and title.
func (t *Table) sourceName(id string) string {
	if s, ok := t.Source(id); ok {
		return s.Publisher + ", " + s.Title
	}
	return id
}

// setChillFactor and setChillWords: a treatment is chilled by one of the two,
// and an edit does not change which.
func setChillFactor(x *Treatment, typed string) string {
	if x.ChillFactor == 0 {
		return fmt.Sprintf("you typed %s, but this treatment is chilled by words (%s); change those instead.", quoted(typed), quoted(x.ChillWords))
	}
	v, err := measure.ParseNumber(typed)
	if err != nil || v < 1 || v > 3 {
		return youTyped(typed) + `a factor from 1 to 3: chilling takes at least as long as the blanch.`
	}
	x.ChillFactor, x.ChillSource, x.ChillStanding = v, EnteredHereSource, EnteredHere
	return ""
}

func setChillWords(x *Treatment, typed string) string {
	if x.ChillFactor != 0 {
		return fmt.Sprintf("you typed %s, but this treatment is chilled for its minutes times %s; change the chill factor instead.", quoted(typed), plain(x.ChillFactor))
	}
	if typed == "" {
		return "nothing was typed; allowed is one line of words."
	}
	if says := badText(typed); says != "" {
		return says
	}
	x.ChillWords, x.ChillSource, x.ChillStanding = typed, EnteredHereSource, EnteredHere
	return ""
}

func setHeadspace(x *Treatment, typed string) string {
	if x.Pack == LoosePack || x.Pack == TrayPack {
		return fmt.Sprintf("you typed %s, but a %s pack needs no headspace.", quoted(typed), x.Pack)
	}
	v, err := measure.ParseNumber(strings.TrimSpace(strings.TrimSuffix(typed, "in")))
	if err != nil || v < 0.25 || v > 3 {
		return youTyped(typed) + `inches from 1/4 to 3, such as "1/2".`
	}
	x.HeadspaceIn, x.HeadspaceRow = v, ""
	return ""
}

func setWater(x *Treatment, typed string) string {
	if x.Method != WaterBlanch {
		return fmt.Sprintf("you typed %s, but this is no water blanch.", quoted(typed))
	}
	v, err := measure.ParseNumber(typed)
	if err != nil || v < 1 || v > 5 {
		return youTyped(typed) + "gallons for a pound from 1 to 5."
	}
	x.WaterGalPerLb = v
	return ""
}

func youTyped(typed string) string {
	if typed == "" {
		return "nothing was typed; allowed is "
	}
	return "you typed " + quoted(typed) + "; allowed is "
}

// maxText is how many characters a typed text may have: what a label or a
// handout line can still carry.
const maxText = 300

func badText(typed string) string {
	if !utf8.ValidString(typed) || utf8.RuneCountInString(typed) > maxText || strings.ContainsFunc(typed, func(c rune) bool { return c < ' ' || c == 0x7f }) {
		return fmt.Sprintf("you typed %s; allowed is one line of at most %d characters.", quoted(typed), maxText)
	}
	return ""
}

// typedSpan reads "8", "8-12", "8–12" or "8 to 12".
func typedSpan(typed string) (low, high float64, ok bool) {
	a, b, both := strings.Cut(strings.NewReplacer("–", "-", " to ", "-").Replace(typed), "-")
	low, err := measure.ParseNumber(strings.TrimSpace(a))
	if err != nil {
		return 0, 0, false
	}
	if !both {
		return low, low, true
	}
	high, err = measure.ParseNumber(strings.TrimSpace(b))
	return low, high, err == nil && high >= low
}

// typedMinutes reads what typedSpan reads, with "min" or "s" after it.
func typedMinutes(typed string) (low, high float64, ok bool) {
	text := strings.TrimSpace(typed)
	for _, unit := range []string{"minutes", "minute", "min"} {
		text = strings.TrimSpace(strings.TrimSuffix(text, unit))
	}
	perMinute := 1.0
	for _, unit := range []string{"seconds", "sec", "s"} {
		if cut, found := strings.CutSuffix(text, unit); found {
			text, perMinute = strings.ReplaceAll(cut, " s", ""), 60
			break
		}
	}
	low, high, ok = typedSpan(strings.TrimSpace(text))
	low, high = low/perMinute, high/perMinute
	return low, high, ok && low > 0 && high <= maxMinutes
}
