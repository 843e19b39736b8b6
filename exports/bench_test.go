package exports

import "testing"

// The demo workbook, described and written: the sheets of a workbook for which
// none was chosen, and all of them.
func BenchmarkWorkbook(b *testing.B) {
	w := demoWorked(b)
	for name, o := range map[string]Options{"usual": {}, "every sheet": {Sheets: everySheet()}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Workbook(w, o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// everySheet are the ids of all sheets.
func everySheet() []string { return each(Sheets, func(s Sheet) string { return s.ID }) }
