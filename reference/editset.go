package reference

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// set puts what was typed into one field, or says in the second half of a
// sentence why it cannot: what was typed and what is allowed.
func (t *Table) set(x *Treatment, field, typed string) error {
	switch field {
	case FieldMinutes:
		return t.setMinutes(x, typed)
	case FieldWords:
		if x.Minutes == 0 && typed == "" {
			return words.Errorf("nothing was typed, but this treatment has no minutes and needs words.")
		}
		if refused := badText(typed); refused != nil {
			return refused
		}
		if refused := timeInWords(x, typed); refused != nil {
			return refused
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
		if refused := badText(typed); refused != nil {
			return refused
		}
		x.BlanchWater, x.BlanchSource = typed, EnteredHereSource
		if typed == "" {
			x.BlanchSource = ""
		}
	case FieldNote:
		if refused := badText(typed); refused != nil {
			return refused
		}
		x.Note = typed
	case FieldStorage:
		low, high, ok := typedSpan(typed)
		if !ok || low < 1 || high > 24 || low != math.Trunc(low) || high != math.Trunc(high) {
			return youTyped(typed, Allowed(FieldStorage))
		}
		x.StorageMonths, x.StorageMonthsHigh, x.StorageSource = low, high, EnteredHereSource
	}
	return nil
}

// setMinutes enters minutes. Published times are never shortened: what is
// below the shortest published time is refused and that time named. Minutes
// that are below the shipped ones stay marked with the sources that print them.
func (t *Table) setMinutes(x *Treatment, typed string) error {
	if x.ClockStart == NoClock {
		return words.Errorf("you typed %s, but this treatment has no minutes; change its words (%s) instead.", quoted(typed), tableWords(x.Words))
	}
	low, high, ok := typedMinutes(typed)
	if !ok {
		return youTyped(typed, Allowed(FieldMinutes))
	}
	floor := x.shortest()
	if low < floor-1e-9 {
		names := t.printing(x, floor)
		if len(names) > 2 {
			names = append(names[:2], words.Later("and %d more", len(names)-2))
		}
		list := names[0]
		for _, name := range names[1:] {
			list = words.Later("%s; %s", list, name)
		}
		return words.Errorf("you typed %s, but the shortest published time is %s (%s) and published times are never shortened.",
			quoted(typed), measure.Minutes(floor), list)
	}
	low = max(low, floor) // the last digit of a third of a minute is nobody's wish
	high = max(low, high)
	t.keepPublished(x)
	x.Minutes, x.MinutesHigh = low, high
	x.Source, x.Standing, x.SourceClock = EnteredHereSource, EnteredHere, ""
	x.ShorterThanShipped = t.shorter(x)
	for i, p := range x.Also {
		x.Also[i].Agrees = (p.Method == "" || p.Method == x.Method) && p.Minutes == low && p.MinutesHigh == high
	}
	return nil
}

// keepPublished keeps the shipped value of an edited treatment among the
// published ones, so that every surface can still show it with its source.
func (t *Table) keepPublished(x *Treatment) {
	if _, ok := x.kept(); ok {
		return // an earlier edit of the same field has kept it
	}
	p := Published{Treatment: x.ID, Minutes: x.Minutes, MinutesHigh: x.MinutesHigh, ClockStart: x.SourceClock,
		Source: x.Source, Standing: x.Standing, Note: words.Key("the value as shipped")}
	if x.Minutes == 0 {
		p.Words, p.ClockStart = x.Words, NoClock
	}
	if len(x.Rows) > 0 {
		p.Row = x.Rows[0]
	}
	for i := range x.Also {
		x.Also[i].Agrees = false // they agreed with the shipped value, not with the entered one
	}
	x.Also = append([]Published{p}, x.Also...)
}

// counted returns the published times that an edit is held against: the
// shipped one and, by the treatment's own method, those of other sources unless
// they were only read as a quotation or without an author.
func (x *Treatment) counted() []Published {
	low, high, source := x.ShippedMinutes()
	list := []Published{{Minutes: low, MinutesHigh: high, Source: source, Standing: x.Standing}}
	also := x.Also
	if p, ok := x.kept(); ok {
		list[0].Standing, also = p.Standing, also[1:]
	}
	for _, p := range also {
		if p.Minutes > 0 && (p.Method == "" || p.Method == x.Method) && p.Standing != ReadElsewhere {
			list = append(list, p)
		}
	}
	return list
}

// shortest returns the shortest published minutes for the treatment.
func (x *Treatment) shortest() float64 {
	floor := math.Inf(1)
	for _, p := range x.counted() {
		floor = min(floor, p.Minutes)
	}
	return floor
}

// printing names the sources that print at most these minutes: first what was
// read, as texts, then what is remembered, as phrases that say so.
func (t *Table) printing(x *Treatment, minutes float64) []any {
	var read, remembered []any
	for _, p := range x.counted() {
		switch {
		case p.Minutes > minutes:
		case p.Standing == FromMemory:
			remembered = append(remembered, words.Later("%s, from memory", t.sourceName(p.Source)))
		default:
			read = append(read, t.sourceName(p.Source))
		}
	}
	return append(read, remembered...)
}

// shorter names, in the table's language, the sources that print minutes as
// short as the entered ones where those are below the shipped ones.
func (t *Table) shorter(x *Treatment) []string {
	if shipped, _, _ := x.ShippedMinutes(); x.Minutes >= shipped {
		return nil
	}
	var names []string
	for _, name := range t.printing(x, x.Minutes) {
		if remembered, ok := name.(words.Phrase); ok {
			name = remembered.Say(t.voice)
		}
		names = append(names, name.(string))
	}
	return names
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
func setChillFactor(x *Treatment, typed string) error {
	if x.ChillFactor == 0 {
		return words.Errorf("you typed %s, but this treatment is chilled by words (%s); change those instead.", quoted(typed), tableWords(x.ChillWords))
	}
	v, err := measure.ParseNumber(typed)
	if err != nil || v < 1 || v > 3 {
		return youTyped(typed, Allowed(FieldChillFactor))
	}
	x.ChillFactor, x.ChillSource, x.ChillStanding = v, EnteredHereSource, EnteredHere
	return nil
}

func setChillWords(x *Treatment, typed string) error {
	if x.ChillFactor != 0 {
		return words.Errorf("you typed %s, but this treatment is chilled for its minutes times %s; change the chill factor instead.", quoted(typed), plain(x.ChillFactor))
	}
	if typed == "" {
		return words.Errorf("nothing was typed; allowed is one line of words.")
	}
	if refused := badText(typed); refused != nil {
		return refused
	}
	x.ChillWords, x.ChillSource, x.ChillStanding = typed, EnteredHereSource, EnteredHere
	return nil
}

func setHeadspace(x *Treatment, typed string) error {
	if x.Pack == LoosePack || x.Pack == TrayPack {
		return words.Errorf("you typed %s, but a %s pack needs no headspace.", quoted(typed), words.Later(string(x.Pack)))
	}
	if x.HeadspaceRow != "" {
		return words.Errorf("you typed %s, but the headspace of this pack goes by the size and the mouth of the container (%s); one number cannot stand for it.",
			quoted(typed), words.Later(FieldText(*x, FieldHeadspace)))
	}
	q, err := measure.Parse(typed, measure.Inch)
	v := q.In(measure.Inch)
	if err != nil || v < 0.25-1e-9 || v > 3+1e-9 {
		return youTyped(typed, Allowed(FieldHeadspace))
	}
	x.HeadspaceIn, x.HeadspaceSource, x.HeadspaceStanding = v, EnteredHereSource, EnteredHere
	return nil
}

// withoutInches is a typed length without its unit, in either language.
func withoutInches(typed string) string {
	return strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(typed, "in"), "pulg"))
}

func setWater(x *Treatment, typed string) error {
	if x.Method != WaterBlanch {
		return words.Errorf("you typed %s, but this is no water blanch.", quoted(typed))
	}
	v, err := measure.ParseNumber(typed)
	if err != nil || v < 1 || v > 5 {
		return youTyped(typed, Allowed(FieldWater))
	}
	x.WaterGalPerLb, x.WaterSource, x.WaterStanding = v, EnteredHereSource, EnteredHere
	return nil
}

// allowed are the numbers that may be typed into a field.
var allowed = map[string]string{
	FieldMinutes:     words.Key(`minutes from above 0 to 60, such as "3", "1 1/2", "4-6" or "2 min 30 s", or seconds such as "10 s".`),
	FieldChillFactor: words.Key(`a factor from 1 to 3: chilling takes at least as long as the blanch.`),
	FieldHeadspace:   words.Key(`inches from 1/4 to 3, such as "1/2".`),
	FieldWater:       words.Key("gallons for a pound from 1 to 5."),
	FieldStorage:     words.Key(`whole months from 1 to 24, such as "8" or "8-12".`),
}

// Allowed says what may be typed into an editable field, in English: a voice
// says it.
func Allowed(field string) string {
	if inWords(field) {
		return words.Key("one line of at most 300 characters.")
	}
	return allowed[field]
}

func youTyped(typed, allowed string) error {
	if typed == "" {
		return words.Errorf("nothing was typed; allowed is %s", words.Later(allowed))
	}
	return words.Errorf("you typed %s; allowed is %s", quoted(typed), words.Later(allowed))
}

// maxText is how many characters a typed text may have: what a label or a
// handout line can still carry.
const maxText = 300

func badText(typed string) error {
	if !utf8.ValidString(typed) || utf8.RuneCountInString(typed) > maxText || strings.ContainsFunc(typed, unseen) {
		return words.Errorf("you typed %s; allowed is one line of at most %d characters that can all be seen.", quoted(typed), maxText)
	}
	return nil
}

// typedSpan reads "8", "8-12", "8–12", "8 to 12" or "8 a 12".
func typedSpan(typed string) (low, high float64, ok bool) {
	a, b, both := cutSpan(typed)
	low, err := measure.ParseNumber(a)
	if err != nil {
		return 0, 0, false
	}
	if !both {
		return low, low, true
	}
	high, err = measure.ParseNumber(b)
	return low, high, err == nil && high >= low
}

func cutSpan(typed string) (low, high string, both bool) {
	low, high, both = strings.Cut(strings.NewReplacer("–", "-", " to ", "-", " a ", "-").Replace(typed), "-")
	return strings.TrimSpace(low), strings.TrimSpace(high), both
}

// typedMinutes reads a time or a span of two as they are typed and as
// measure.MinutesRange prints them: "3", "4 mins", "4-6", "10–15 s",
// "2 min 18 s", "50 s to 1 ½ min", and the same in Spanish. A low end without a unit takes that of the
// high end.
func typedMinutes(typed string) (low, high float64, ok bool) {
	a, b, both := cutSpan(typed)
	if !both {
		low, _, ok = typedTime(a, 1)
		return low, low, ok && low > 0 && low <= maxMinutes
	}
	high, unit, ok := typedTime(b, 1)
	if !ok {
		return 0, 0, false
	}
	low, _, ok = typedTime(a, unit)
	return low, high, ok && low > 0 && low <= high && high <= maxMinutes
}

// timeUnits are the units of time by the words for them, in minutes.
var timeUnits = map[string]float64{
	"min": 1, "mins": 1, "minute": 1, "minutes": 1,
	"minuto": 1, "minutos": 1, "segundo": 1.0 / 60, "segundos": 1.0 / 60, "seg": 1.0 / 60,
	"s": 1.0 / 60, "sec": 1.0 / 60, "secs": 1.0 / 60, "second": 1.0 / 60, "seconds": 1.0 / 60,
}

// typedTime reads one time: a number, a number with a unit, or whole minutes
// and seconds. A number alone is in the given unit. It returns minutes and the
// unit that a number before it would have.
func typedTime(text string, unit float64) (minutes, before float64, ok bool) {
	text = strings.ToLower(strings.TrimSuffix(text, "."))
	number := strings.TrimRightFunc(text, unicode.IsLetter)
	if word := text[len(number):]; word != "" {
		if unit, ok = timeUnits[word]; !ok {
			return 0, 0, false
		}
	}
	number = strings.TrimSpace(number)
	if at := strings.IndexFunc(number, unicode.IsLetter); at >= 0 { // "2 min 18" of "2 min 18 s"
		end := at + len(number[at:]) - len(strings.TrimLeftFunc(number[at:], unicode.IsLetter))
		whole, err := measure.ParseNumber(number[:at])
		rest, errRest := measure.ParseNumber(number[end:])
		ok := err == nil && errRest == nil && unit < 1 && timeUnits[number[at:end]] == 1 &&
			whole > 0 && whole == math.Trunc(whole) && rest >= 0 && rest < 60
		return whole + rest/60, 1, ok
	}
	v, err := measure.ParseNumber(number)
	if unit < 1 {
		v /= 60 // not v times unit: n seconds are n/60 to the last digit
	}
	return v, unit, err == nil
}
