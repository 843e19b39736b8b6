package exports

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// metricDemo is the demo class in metric units.
func metricDemo(t *testing.T) class.Class {
	t.Helper()
	c := demoClass(t)
	c.Units = measure.Metric
	return c
}

// The Spanish workbook in every detail, in both systems of units and on both
// papers.
func TestSpanishWorkbookGoldens(t *testing.T) {
	for name, k := range map[string]struct {
		w class.Worked
		o Options
	}{
		"demo-workbook-es.txt":    {workedIn(words.Spanish, demoClass(t)), Options{}},
		"demo-handouts-es.txt":    {workedIn(words.Spanish, demoClass(t)), Options{Sheets: chosenSheets()}},
		"metric-handouts-es.txt":  {workedIn(words.Spanish, metricDemo(t)), Options{Paper: A4, Sheets: chosenSheets()}},
		"metric-workbook-es.txt":  {workedIn(words.Spanish, metricDemo(t)), Options{Paper: A4}},
		"edited-workbook-es.txt":  {editedIn(t, words.Spanish), Options{Paper: A4, Sheets: []string{CoverSheet, TreatmentsSheet}}},
		"metric-treatment-es.txt": {workedIn(words.Spanish, metricDemo(t)), Options{Sheets: []string{TreatmentsSheet}, AllTreatments: true}},
	} {
		data, err := Workbook(k.w, k.o)
		noErr(t, err)
		golden(t, name, dump(t, data))
	}
}

func TestPlainListInSpanishGolden(t *testing.T) {
	golden(t, "demo-plain-es.txt", []byte(Plain(workedIn(words.Spanish, demoClass(t)))))
}

// The document says in which language it is.
func TestLanguageOfTheDocument(t *testing.T) {
	for l, want := range map[words.Language]string{words.English: "en-US", words.Spanish: "es-US"} {
		data, err := Workbook(workedIn(l, demoClass(t)), Options{})
		noErr(t, err)
		props, err := open(t, data).GetDocProps()
		noErr(t, err)
		if props.Language != want {
			t.Errorf("%s: the document is in %q", l, props.Language)
		}
	}
}

// Tabs have names that every spreadsheet program takes.
func TestTabs(t *testing.T) {
	for _, l := range languages {
		taken := map[string]bool{}
		for _, s := range Sheets {
			name := words.In(l).Say(s.Title)
			if utf8.RuneCountInString(name) > 31 || strings.ContainsAny(name, `[]:*?/\'`) || taken[strings.ToLower(name)] {
				t.Errorf("%s: %q is no name for a tab", l, name)
			}
			taken[strings.ToLower(name)] = true
		}
	}
}

// What is said beside an open cell is short enough to be said whole.
func TestLimitsAreSaidWhole(t *testing.T) {
	for _, l := range languages {
		for _, c := range []class.Class{demoClass(t), metricDemo(t)} {
			s := describe(workedIn(l, c), mustSettle(t, Options{Sheets: []string{OwnNumbersSheet}})).sheets[0]
			for _, k := range s.checks {
				if clip(k.title, 31) != k.title || clip(k.help, 250) != k.help || clip(k.stop, 250) != k.stop || strings.Contains(strings.Join(k.choices, ""), ",") {
					t.Errorf("%s: %s is too long or has a comma in a choice: %q, %q, %q, %q", l, k.cell, k.title, k.help, k.stop, k.choices)
				}
			}
		}
	}
}

// Everything that is printed is translated, for every treatment of the table.
func TestNothingStaysEnglish(t *testing.T) {
	for name, c := range map[string]class.Class{"demo": demoClass(t), "metric": metricDemo(t), "wide": wideClass(t)} {
		w := workedIn(words.Spanish, c)
		b := describe(w, mustSettle(t, Options{AllTreatments: true, Sheets: everySheet()}))
		for _, text := range w.Voice.Untranslated() {
			if b.holds(placeholder.Split(text, -1)) {
				t.Errorf("%s: not translated: %q", name, text)
			}
		}
	}
}

// What stands in English in a Spanish workbook is listed on its first sheet;
// what is not in it, and what the educator typed, is not.
func TestUntranslatedTextsAreListed(t *testing.T) {
	const label, elsewhere = "A label of %d words that nobody translated", "Said, but not in this workbook"
	for _, sheets := range [][]string{nil, {BatchSheet, CoverSheet}, {BatchSheet}} {
		w := workedIn(words.Spanish, demoClass(t))
		w.Batches[0].Minutes.Label = w.Voice.Say(label, 7)
		w.Voice.Say(elsewhere)
		first := describe(w, mustSettle(t, Options{Sheets: sheets})).sheets[0]
		text := ""
		for _, r := range first.rows {
			for _, c := range r.cells {
				text += c.text() + "\n"
			}
		}
		if !strings.Contains(text, "En inglés\n") || !strings.Contains(text, "“A label of … words that nobody translated”") {
			t.Errorf("%v: the first sheet does not list it", sheets)
		}
		for _, not := range []string{elsewhere, "“" + w.Batches[0].Batch.Name + "”."} {
			if _, list, _ := strings.Cut(text, "En inglés\n"); strings.Contains(list, not) {
				t.Errorf("%v: %q is listed: %q", sheets, not, list)
			}
		}
	}
	labels := describe(workedIn(words.Spanish, demoClass(t)), mustSettle(t, Options{Sheets: []string{LabelsSheet}}))
	if labels.sheets[0].aside != "" {
		t.Errorf("beside the labels stands %q", labels.sheets[0].aside)
	}
}

// What the educator typed stays as it is; the shipped value beside it is said.
func TestEditsInSpanish(t *testing.T) {
	shipped := reference.Shipped()
	when := time.Date(2027, 3, 4, 9, 0, 0, 0, time.UTC)
	edited, err := shipped.With([]reference.Edit{
		shipped.NewEdit("pumpkin-mashed-cook", reference.FieldWords, "Steam until very soft", "our own bulletin", "A. Educator", when),
		shipped.NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4", "our own bulletin", "A. Educator", when),
	})
	noErr(t, err)
	v := words.In(words.Spanish)
	w := class.WorkWith(class.With{Voice: v}, demoClass(t), edited.In(v))
	data, err := Workbook(w, Options{})
	noErr(t, err)
	pumpkin, _ := shipped.In(v).Treatment("pumpkin-mashed-cook")
	out := string(dump(t, data))
	for _, want := range []string{
		"Cambiado aquí: palabras Steam until very soft; valor original " + pumpkin.Words + " (A. Educator, 4 de marzo de 2027, our own bulletin)",
		"Cambiado aquí: minutos 4; valor original 3 (A. Educator, 4 de marzo de 2027, our own bulletin)",
	} {
		if n := strings.Count(out, want); n < 2 {
			t.Errorf("%d times in the workbook: %q", n, want)
		}
	}
	if strings.Contains(out, "En inglés") {
		t.Error("what the educator typed is listed as English")
	}
}

var (
	digits   = regexp.MustCompile(`[0-9½⅓⅔¼¾⅛⅜⅝⅞]+`)
	byNumber = regexp.MustCompile(` \(\d{4}-\d\d-\d\d\)`) // the day, beside the same in words
)

// numbersOn counts the numbers of a sheet, as values and inside texts. Left out
// is how far the estimates are told with their batch, which is as much as a page
// has room for, and the names of batches over those that are told later.
func numbersOn(s *sheet, v *words.Voice) map[string]int {
	count := map[string]int{}
	for _, r := range s.rows {
		for _, c := range r.cells {
			if n, ok := c.value.(float64); ok {
				count[fmt.Sprint("value ", n)]++
			}
			text := c.text()
			if c.role == small && strings.Contains(text, v.Say(estimatesHead)) || s.id == BatchSheet && c.role == subheading {
				continue
			}
			if c.role == subtitle {
				text = byNumber.ReplaceAllString(text, "")
			}
			for _, d := range digits.FindAllString(text, -1) {
				count[d]++
			}
		}
	}
	return count
}

// Every sheet has the same numbers in both languages.
func TestNumbersAreTheSameInBothLanguages(t *testing.T) {
	for name, c := range map[string]class.Class{"demo": demoClass(t), "metric": metricDemo(t), "wide": wideClass(t)} {
		english, spanish := workedIn(words.English, c), workedIn(words.Spanish, c)
		o := mustSettle(t, Options{AllTreatments: true, Sheets: everySheet()})
		ours := describe(spanish, o).sheets
		for i, s := range describe(english, o).sheets {
			want, got := numbersOn(s, english.Voice), numbersOn(ours[i], spanish.Voice)
			for _, n := range slices.Sorted(maps.Keys(want)) {
				if got[n] != want[n] {
					t.Errorf("%s, %s: %s stands %d times in English, %d times in Spanish", name, s.id, n, want[n], got[n])
				}
			}
			for _, n := range slices.Sorted(maps.Keys(got)) {
				if want[n] == 0 {
					t.Errorf("%s, %s: %s stands only in Spanish", name, s.id, n)
				}
			}
		}
	}
}

// Texts that are not broken into lines fit into their columns, and so does every
// word of the others.
func TestTextsFitIntoTheirColumns(t *testing.T) {
	for _, l := range languages {
		for name, k := range map[string]struct {
			c class.Class
			o Options
		}{
			"demo":   {demoClass(t), Options{Paper: Letter, Sheets: everySheet()}},
			"metric": {metricDemo(t), Options{Paper: A4, Sheets: everySheet()}},
			"wide":   {wideClass(t), Options{Paper: A4, AllTreatments: true, Sheets: everySheet()}},
		} {
			for _, s := range describe(workedIn(l, k.c), mustSettle(t, k.o)).sheets {
				for i, r := range s.rows {
					for _, c := range r.cells {
						if piece, over := tooLong(s, c); over > 0 {
							t.Errorf("%s %s, %s row %d: %q is %.1f points too long", l, name, s.id, i+1, piece, over)
						}
					}
				}
			}
		}
	}
}

// tooLong finds what does not fit into a cell: its text, or a word of it where
// it is broken into lines.
func tooLong(s *sheet, c cell) (piece string, points float64) {
	k := looks[c.role]
	room := -2 - float64(k.indent)*indentWidth // the least that edges take
	for i := c.col; i < c.col+c.cols(); i++ {
		room += s.cols[i]
	}
	pieces := []string{c.text()}
	if k.wrap {
		pieces = strings.Fields(c.text() + " " + c.room)
	}
	for _, p := range pieces {
		if over := s.face.width(p, k.size, k.bold, k.italic) - room; over > points {
			piece, points = p, over
		}
	}
	return piece, points
}
