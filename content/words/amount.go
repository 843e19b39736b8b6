package words

import "strings"

// unit is a unit of a printed amount that Spanish says otherwise. Symbols that
// stand on jugs and scales in the United States stay as they are: lb, oz, gal,
// qt, pt, W, °F.
type unit struct{ english, one, many string }

// spanishUnits are in the order in which they are tried: the longer first.
var spanishUnits = []unit{
	{"/cu ft", "/pie³", "/pie³"},
	{" cu ft", " pie³", " pies³"},
	{" cups", " taza", " tazas"},
	{" cup", " taza", " tazas"},
	{" ft", " pie", " pies"},
	{" in", " pulg", " pulg"},
}

// Amount puts the unit at the end of a printed amount into the language.
func (v *Voice) Amount(text string) string {
	if v.Language() == English {
		return text
	}
	for _, u := range spanishUnits {
		if number, found := strings.CutSuffix(text, u.english); found {
			if singular(number) {
				return number + u.one
			}
			return number + u.many
		}
	}
	return text
}

// singular says whether a printed number takes a unit in the singular: one, or
// a fraction of one.
func singular(number string) bool {
	whole, _, typed := strings.Cut(number, "/") // "1/2", as people type it
	return number == "1" || strings.Trim(number, "½⅓⅔¼¾⅛⅜⅝⅞") == "" || typed && !strings.Contains(whole, " ")
}
