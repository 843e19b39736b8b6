package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"example.org/kettleside/content/words"
)

// EntryError is an entry that cannot be used: what was typed and what is
// allowed, in one sentence. Nothing is guessed from it.
type EntryError struct {
	Field   string // "Pounds per station", or ""
	Typed   string
	Problem string       // "is not a number", "has no unit", or "": in English, said with the rest
	Allowed words.Phrase // "a weight such as 3 lb"
}

func (e *EntryError) Error() string { return e.Say(nil) }

// Say is the sentence by a voice; the name of the field stays as it is.
func (e *EntryError) Say(v *words.Voice) string {
	typed, allowed := clip(e.Typed, 40), e.Allowed.Say(v)
	text := v.Say("you typed “%s”, which %s; allowed is %s", typed, v.Say(e.Problem), allowed)
	switch {
	case typed == "":
		text = v.Say("nothing typed; allowed is %s", allowed)
	case e.Problem == "":
		text = v.Say("you typed “%s”; allowed is %s", typed, allowed)
	}
	if e.Field != "" {
		return e.Field + ": " + text
	}
	return text
}

func clip(s string, n int) string {
	r := []rune(strings.TrimSpace(s))
	if len(r) <= n {
		return string(r)
	}
	return string(r[:n]) + "…"
}

// Parse reads an amount with its unit: "3 lb", "1 1/2 gal", "½ in", ".5 lb",
// "5,000 ft", and amounts in two units, "3 lb 4 oz", which come out in the
// first. Where fallback is not nil a bare number is in that unit. The error is
// an *EntryError.
func Parse[D Dimension](text string, fallback *Unit[D]) (Of[D], error) {
	var d D
	fail := func(problem string) (Of[D], error) {
		return Of[D]{}, &EntryError{Typed: text, Problem: problem, Allowed: d.such()}
	}
	number, unitText := splitUnit(text)
	if i := strings.IndexFunc(unitText, startsNumber); i > 0 {
		return parseTwo(text, text[:len(text)-len(unitText[i:])], unitText[i:], fail)
	}
	if number == "" {
		if unitText == "" {
			return fail("")
		}
		return fail(words.Key("has no number at the start"))
	}
	amount, err := ParseNumber(number)
	if err != nil {
		return fail(words.Key("is not a number"))
	}
	if unitText == "" {
		if fallback == nil {
			return fail(words.Key("has no unit"))
		}
		return Of[D]{amount, fallback}, nil
	}
	for _, u := range unitsOf[D]() {
		if u.reads(unitText) {
			return Of[D]{amount, u}, nil
		}
	}
	return fail(words.Key("has a unit that does not fit"))
}

func startsNumber(r rune) bool {
	_, isFraction := vulgar[r]
	return isFraction || r >= '0' && r <= '9'
}

// parseTwo reads a large and a small part of one amount, such as 3 lb and 4 oz.
// The small part has to be less than one of the large unit. Temperatures do
// not add up and are refused.
func parseTwo[D Dimension](text, large, small string, fail func(string) (Of[D], error)) (Of[D], error) {
	a, errA := Parse[D](strings.TrimRight(large, " ,"), nil)
	b, errB := Parse[D](small, nil)
	if errA != nil || errB != nil || a.amount < 0 || b.amount < 0 || a.unit.Offset != 0 || b.unit.Offset != 0 ||
		a.unit == b.unit || b.SI() >= a.unit.Factor {
		return fail(words.Key("is not one amount"))
	}
	return Of[D]{a.amount + b.SI()/a.unit.Factor, a.unit}, nil
}

// reads says whether a typed unit means u. Case matters only where a symbol
// would otherwise be ambiguous, which none here is.
func (u *Unit[D]) reads(typed string) bool {
	typed = strings.ToLower(strings.TrimSuffix(strings.Join(strings.Fields(typed), " "), "."))
	if typed == strings.ToLower(u.Symbol) {
		return true
	}
	for _, w := range u.words {
		if typed == w {
			return true
		}
	}
	return false
}

// splitUnit cuts "1 1/2 gal" into the number and the unit.
func splitUnit(text string) (number, unit string) {
	text = strings.TrimSpace(text)
	end := len(text)
	for i, r := range text {
		if !numeric(r) {
			end = i
			break
		}
	}
	return strings.TrimSpace(text[:end]), strings.TrimSpace(text[end:])
}

func numeric(r rune) bool {
	_, isFraction := vulgar[r]
	return isFraction || unicode.IsSpace(r) || r >= '0' && r <= '9' || strings.ContainsRune("+-−.,/⁄", r)
}

// vulgar are the one-character fractions.
var vulgar = map[rune][2]int{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
}

// ParseNumber reads a number as kitchens write it: "3", "1.5", ".5", "1/2",
// "1 1/2", "1½", "−2", "5,000". A comma is a thousands mark and must stand
// where one belongs; ParseNumberComma reads it as the decimal mark.
func ParseNumber(text string) (float64, error) { return parseNumber(text, false) }

// ParseNumberComma reads numbers of a language that writes 1,5 for one and a
// half; a point is then refused as a thousands mark in the wrong place.
func ParseNumberComma(text string) (float64, error) { return parseNumber(text, true) }

func parseNumber(text string, comma bool) (float64, error) {
	bad := func() (float64, error) {
		return 0, &EntryError{Typed: text, Problem: words.Key("is not a number"), Allowed: words.Later("a number such as 3, 1.5 or 1 1/2")}
	}
	s := strings.TrimSpace(text)
	sign := 1.0
	switch {
	case strings.HasPrefix(s, "-"):
		sign, s = -1, s[1:]
	case strings.HasPrefix(s, "−"):
		sign, s = -1, strings.TrimPrefix(s, "−")
	case strings.HasPrefix(s, "+"):
		s = s[1:]
	}
	// a one-character fraction becomes " n/d"
	var spread strings.Builder
	for _, r := range s {
		if f, ok := vulgar[r]; ok {
			fmt.Fprintf(&spread, " %d/%d ", f[0], f[1])
		} else if r == '⁄' {
			spread.WriteByte('/')
		} else {
			spread.WriteRune(r)
		}
	}
	fields := strings.Fields(spread.String())
	var value float64
	switch len(fields) {
	case 1:
		if n, ok := fraction(fields[0]); ok {
			value = n
		} else if n, ok := decimal(fields[0], comma); ok {
			value = n
		} else {
			return bad()
		}
	case 2:
		whole, okWhole := decimal(fields[0], comma)
		part, okPart := fraction(fields[1])
		if !okWhole || !okPart || whole != math.Trunc(whole) || part >= 1 {
			return bad()
		}
		value = whole + part
	default:
		return bad()
	}
	if math.IsInf(value, 0) || math.IsNaN(value) {
		return bad()
	}
	return sign * value, nil
}

// fraction reads "n/d" with whole, positive n and d.
func fraction(s string) (float64, bool) {
	n, d, ok := strings.Cut(s, "/")
	if !ok || !digits(n) || !digits(d) {
		return 0, false
	}
	top, errTop := strconv.ParseFloat(n, 64)
	bottom, errBottom := strconv.ParseFloat(d, 64)
	if errTop != nil || errBottom != nil || bottom == 0 {
		return 0, false
	}
	return top / bottom, true
}

// decimal reads digits with one decimal mark and thousands marks in groups of
// three; nothing else, so that "1e9", "0x10" and "inf" are not numbers.
func decimal(s string, comma bool) (float64, bool) {
	mark, group := ".", ","
	if comma {
		mark, group = ",", "."
	}
	whole, frac, hasMark := strings.Cut(s, mark)
	if hasMark && frac != "" && !digits(frac) || whole == "" && frac == "" {
		return 0, false
	}
	if strings.Contains(whole, group) {
		groups := strings.Split(whole, group)
		for i, g := range groups {
			if !digits(g) || i > 0 && len(g) != 3 || i == 0 && len(g) > 3 {
				return 0, false
			}
		}
		whole = strings.Join(groups, "")
	}
	if whole != "" && !digits(whole) {
		return 0, false
	}
	n, err := strconv.ParseFloat("0"+whole+"."+frac+"0", 64)
	return n, err == nil
}

func digits(s string) bool {
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return s != ""
}
