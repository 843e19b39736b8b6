package exports

import (
	"fmt"
	"regexp"
	"strings"
)

// functions are the only ones that a formula may use: each was in spreadsheets
// by 2007 and needs no prefix in the file. A newer one shows #NAME? in other
// programs (shown by a conversion with LibreOffice) although excelize's own
// calculation accepts it.
var functions = map[string]bool{
	"IF": true, "AND": true, "OR": true, "NOT": true, "IFERROR": true,
	"COUNT": true, "ISNUMBER": true, "ISTEXT": true, "MATCH": true, "INDEX": true,
	"ROUND": true, "ROUNDUP": true, "MIN": true, "MAX": true, "SUM": true,
}

var (
	quotedText  = regexp.MustCompile(`"(?:[^"]|"")*"`)
	word        = regexp.MustCompile(`[A-Za-z_\\$][A-Za-z0-9_.$!]*\(?`)
	wellNamed   = regexp.MustCompile(`^[a-z][a-z]*(_[a-z]+)*$`)
	likeRowCol  = regexp.MustCompile(`^(?i:[rc])$`)
	oneLetterer = regexp.MustCompile(`^.$`)
)

// longestQuoted is how long a text inside a formula may be.
const longestQuoted = 255

// checkName refuses a defined name that a spreadsheet could take for a cell.
// Names here are small letters and underscores; without digits none can be a
// cell such as T1 or R1C1.
func checkName(name string) error {
	if !wellNamed.MatchString(name) || likeRowCol.MatchString(name) || oneLetterer.MatchString(name) {
		return fmt.Errorf("exports: %q is not a good name for a cell", name)
	}
	return nil
}

// checkFormula refuses a formula that not every spreadsheet program can work
// out, or that names something other than a defined name, or that holds a text
// that is too long.
func checkFormula(formula string, names map[string]bool) error {
	for _, text := range quotedText.FindAllString(formula, -1) {
		if n := utf16Len(text) - 2; n > longestQuoted {
			return fmt.Errorf("exports: the formula %q holds a text of %d characters; %d is the most", formula, n, longestQuoted)
		}
	}
	for _, w := range word.FindAllString(quotedText.ReplaceAllString(formula, `""`), -1) {
		if f, call := strings.CutSuffix(w, "("); call {
			if !functions[f] {
				return fmt.Errorf("exports: the formula %q uses %s, which is not among the functions that every spreadsheet has", formula, f)
			}
			continue
		}
		if !names[w] {
			return fmt.Errorf("exports: the formula %q uses %q, which is no defined name of the workbook", formula, w)
		}
	}
	return nil
}

// checkBook checks names, formulas and values of a whole workbook: a formula
// always travels with the value that the program worked out.
func checkBook(b *book) error {
	names := map[string]bool{}
	for _, s := range b.sheets {
		for _, r := range s.rows {
			for _, c := range r.cells {
				if c.name == "" {
					continue
				}
				if err := checkName(c.name); err != nil {
					return err
				}
				names[c.name] = true // a name on several rows is a range
			}
		}
	}
	for _, s := range b.sheets {
		for i, r := range s.rows {
			for _, c := range r.cells {
				if _, known := looks[c.role]; !known {
					return fmt.Errorf("exports: %s row %d: no look for role %q", s.id, i+1, c.role)
				}
				if c.formula == "" {
					continue
				}
				if c.value == nil {
					return fmt.Errorf("exports: %s row %d: the formula %q has no value with it", s.id, i+1, c.formula)
				}
				if err := checkFormula(c.formula, names); err != nil {
					return err
				}
			}
		}
		for _, k := range s.checks {
			if !names[k.cell] || k.list != "" && !names[k.list] {
				return fmt.Errorf("exports: %s: a limit on %q names no cell", s.id, k.cell)
			}
		}
	}
	return nil
}
