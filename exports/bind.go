package exports

import "regexp"

// bound finds a number with the blank before its unit: the last figure, the
// blank, and a unit of either language that ends there.
var bound = regexp.MustCompile(`([0-9½⅓⅔¼¾⅛⅜⅝⅞]) (lb|oz|kg|g|gal|qt|pt|cups?|cu ft|L|mL|in|mm|cm|ft|m|pulg|pies?³?|tazas?|°F|°C|min|s|h|W|kW|%)($|[^\pL\pN])`)

// cubicFoot is a unit of two words.
var cubicFoot = regexp.MustCompile(`\bcu ft\b`)

const noBreak = "\u00a0"

// bind joins a number and its unit with a blank that is never broken: a unit
// must not stand alone on the next line.
func bind(text string) string {
	text = bound.ReplaceAllString(text, "${1}"+noBreak+"${2}${3}")
	return cubicFoot.ReplaceAllString(text, "cu"+noBreak+"ft")
}

// bindUnits binds the texts of a sheet, those of its formulas alike.
func (s *sheet) bindUnits() {
	for _, r := range s.rows {
		for i := range r.cells {
			c := &r.cells[i]
			if text, ok := c.value.(string); ok {
				c.value = bind(text)
			}
			for j := range c.runs {
				c.runs[j].text = bind(c.runs[j].text)
			}
			c.room, c.formula = bind(c.room), bind(c.formula)
		}
	}
}
