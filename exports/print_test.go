package exports

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// word is a word on a page of a PDF; lengths in points from the top left.
type pdfWord struct {
	page                   int
	left, top, right, foot float64
	text                   string
}

var (
	pageTag = regexp.MustCompile(`<page width="([\d.]+)" height="([\d.]+)">`)
	wordTag = regexp.MustCompile(`<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)</word>`)
	unxml   = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&quot;", `"`, "&apos;", "'", "&amp;", "&")
)

// pdfWords reads where every word stands, and the size of the pages.
func pdfWords(t *testing.T, pdf []byte) (placed []pdfWord, sizes [][2]float64) {
	t.Helper()
	for _, l := range strings.Split(poppler(t, pdf, "pdftotext", "-bbox", "IN", "-"), "\n") {
		number := func(s string) float64 { v, err := strconv.ParseFloat(s, 64); noErr(t, err); return v }
		if m := pageTag.FindStringSubmatch(l); m != nil {
			sizes = append(sizes, [2]float64{number(m[1]), number(m[2])})
		} else if m := wordTag.FindStringSubmatch(l); m != nil {
			placed = append(placed, pdfWord{len(sizes), number(m[1]), number(m[2]), number(m[3]), number(m[4]), unxml.Replace(m[5])})
		}
	}
	return placed, sizes
}

// tokens counts the words of a text, without the signs between them.
func tokens(text string, count map[string]int) {
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		count[w]++
	}
}

// needs.md 10: it prints right without touching it.
func TestHandoutsOnPaper(t *testing.T) {
	slow(t)
	need(t, "soffice", "pdftotext", "pdftohtml")
	wide := class.Work(wideClass(t), reference.Shipped())
	demos := classesOf(map[string]class.Class{"demo": demoClass(t), "long": longClass(t)})
	some := []string{BatchSheet, CoverSheet}
	wideSheets := []string{TreatmentsSheet, BatchSheet, OwnNumbersSheet, ShoppingSheet, StationCardsSheet, PracticeSheet, AnswersSheet}
	metric := demoClass(t)
	metric.Units = measure.Metric
	spanish := workedIn(words.Spanish, demoClass(t))
	wideSpanish := workedIn(words.Spanish, wideClass(t))
	kinds := map[string]struct {
		w class.Worked
		o Options
	}{
		"letter":     {demoWorked(t), Options{Paper: Letter, Sheets: everySheet()}},
		"a4":         {demoWorked(t), Options{Paper: A4, Sheets: everySheet()}},
		"edited":     {editedWorked(t), Options{Paper: Letter}},
		"all letter": {wide, Options{Paper: Letter, AllTreatments: true, Sheets: wideSheets}},
		"all a4":     {wide, Options{Paper: A4, AllTreatments: true, Sheets: wideSheets}},

		"metric letter":      {demos["demo metric"], Options{Paper: Letter, Sheets: some}},
		"metric a4":          {demos["demo metric"], Options{Paper: A4, Sheets: some}},
		"long letter":        {demos["long us"], Options{Paper: Letter, Sheets: some}},
		"long a4":            {demos["long us"], Options{Paper: A4, Sheets: some}},
		"long metric letter": {demos["long metric"], Options{Paper: Letter, Sheets: some}},
		"long metric a4":     {demos["long metric"], Options{Paper: A4, Sheets: some}},

		"Spanish letter":     {spanish, Options{Paper: Letter, Sheets: everySheet()}},
		"Spanish a4":         {spanish, Options{Paper: A4, Sheets: everySheet()}},
		"Spanish metric":     {workedIn(words.Spanish, metric), Options{Paper: A4, Sheets: everySheet()}},
		"Spanish edited":     {editedIn(t, words.Spanish), Options{Paper: Letter}},
		"Spanish all letter": {wideSpanish, Options{Paper: Letter, AllTreatments: true, Sheets: wideSheets}},
		"Spanish all a4":     {wideSpanish, Options{Paper: A4, AllTreatments: true, Sheets: wideSheets}},
		"Spanish long":       {workedIn(words.Spanish, longClass(t)), Options{Paper: Letter, Sheets: some}},
	}
	files := map[string][]byte{}
	for name, k := range kinds {
		data, err := Workbook(k.w, k.o)
		noErr(t, err)
		files[name] = data
	}
	for name, pdf := range office(t, "pdf", files) {
		placed, sizes := pdfWords(t, pdf)
		o, err := kinds[name].o.settle()
		noErr(t, err)
		b := describe(kinds[name].w, o)
		onPaper(t, name, b, kinds[name].w.Voice, o.Paper, placed, sizes)
		batchesOnPaper(t, name, b, kinds[name].w, placed)
		typeSizes(t, name, pdf)
		for _, s := range b.sheets {
			s.settle()
			sum := 0.0
			for _, c := range s.cols {
				sum += math.Round(c/pointsPerUnit*100) / 100 * 6.75 // the widest that a program makes of a unit: 9 pixels of 96 an inch
			}
			if !s.whole && sum > s.page.width() {
				t.Errorf("%s, %s: the columns may take %.1f points of %.1f and would be scaled down", name, s.id, sum, s.page.width())
			}
		}
	}
}

// onPaper checks pages: size, page x of y, repeated heads, nothing beyond the
// margins, and every word of every cell.
func onPaper(t *testing.T, name string, b *book, v *words.Voice, paper Paper, placed []pdfWord, sizes [][2]float64) {
	t.Helper()
	width, height := paper.size()
	margin := handoutPage(paper)
	pages := make([]string, len(sizes)+1)
	printed := map[string]int{}
	sheetOf := map[int]string{} // from the right part of the header
	pageOf := strings.NewReplacer("&P", "%d", "&N", "%d").Replace(v.Say("Page &P of &N"))
	first, _, _ := strings.Cut(pageOf, " ")
	for _, w := range placed {
		if w.foot < margin.top && w.left > width-margin.right-115 {
			sheetOf[w.page] = strings.TrimSpace(sheetOf[w.page] + " " + w.text)
		}
		pages[w.page] += w.text + " "
		tokens(w.text, printed)
		labels := !strings.Contains(pages[w.page], first) && strings.Contains(b.sheets[len(b.sheets)-1].id, LabelsSheet) && w.page == len(sizes)
		if !labels && (w.right > width-margin.right+1 || w.left < margin.left-1) {
			t.Errorf("%s page %d: “%s” stands from %.1f to %.1f, outside the margins", name, w.page, w.text, w.left, w.right)
		}
		if strings.Contains(w.text, "##") {
			t.Errorf("%s page %d: a number does not fit: %s", name, w.page, w.text)
		}
	}
	heads := 0
	for i, size := range sizes {
		if math.Abs(size[0]-width) > 1 || math.Abs(size[1]-height) > 1 {
			t.Errorf("%s page %d is %v points; want %.0f × %.0f", name, i+1, size, width, height)
		}
		text := pages[i+1]
		onLabels := i == len(sizes)-1 && b.sheets[len(b.sheets)-1].whole
		if !onLabels && !strings.Contains(text, fmt.Sprintf(pageOf, i+1, len(sizes))) {
			t.Errorf("%s page %d does not say so", name, i+1)
		}
		if !onLabels && !strings.Contains(text, reference.Edition) {
			t.Errorf("%s page %d does not name the edition", name, i+1)
		}
		if sheetOf[i+1] == v.Say("Batches") {
			heads++
			for _, head := range []string{"Figure", "One station", "How it is worked out", "Rests on"} {
				if !strings.Contains(text, v.Say(head)) {
					t.Errorf("%s page %d: the head “%s” is not repeated", name, i+1, head)
				}
			}
		}
	}
	if heads < 2 {
		t.Errorf("%s: the batch sheet has %d pages", name, heads)
	}
	want := map[string]int{}
	for _, s := range b.sheets {
		for _, r := range s.rows {
			for _, c := range r.cells {
				tokens(c.text(), want)
			}
		}
	}
	for _, w := range slices.Sorted(maps.Keys(want)) {
		if printed[w] < want[w] {
			t.Errorf("%s: “%s” stands %d times in the cells and %d times on paper", name, w, want[w], printed[w])
		}
	}
}

// batchesOnPaper checks that all words of a batch that fits on one page stand on
// one page.
func batchesOnPaper(t *testing.T, name string, b *book, w class.Worked, placed []pdfWord) {
	t.Helper()
	pages := map[int]map[string]int{}
	for _, p := range placed {
		if pages[p.page] == nil {
			pages[p.page] = map[string]int{}
		}
		tokens(p.text, pages[p.page])
	}
	s := b.sheets[slices.IndexFunc(b.sheets, func(s *sheet) bool { return s.id == BatchSheet })]
	for i, rows := range blocks(s, w) {
		want := map[string]int{}
		for _, r := range rows {
			for _, c := range r.cells {
				tokens(c.text(), want)
			}
		}
		there := false
		for _, have := range pages {
			whole := true
			for word, n := range want {
				whole = whole && have[word] >= n
			}
			there = there || whole
		}
		if there != rows[0].uncut {
			t.Errorf("%s: batch %d stands on one page: %v", name, i+1, there)
		}
	}
}

// typeSizes checks that no type is under 10 point, and that nothing was scaled:
// only the sizes of the roles occur.
func typeSizes(t *testing.T, name string, pdf []byte) {
	t.Helper()
	allowed := map[string]bool{}
	for _, l := range looks {
		allowed[fmt.Sprint(l.size*3)] = true
	}
	found := 0
	for _, m := range regexp.MustCompile(`<fontspec id="\d+" size="(\d+)"`).FindAllStringSubmatch(poppler(t, pdf, "pdftohtml", "-xml", "-i", "-zoom", "3", "-stdout", "IN"), -1) {
		found++
		if !allowed[m[1]] {
			t.Errorf("%s: type of %s thirds of a point on paper; the sheets use %v", name, m[1], slices.Sorted(maps.Keys(allowed)))
		}
	}
	if found == 0 {
		t.Errorf("%s: no type found in the PDF", name)
	}
}

func mustSettle(t *testing.T, o Options) Options {
	t.Helper()
	o, err := o.settle()
	noErr(t, err)
	return o
}
