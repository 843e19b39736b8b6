package exports

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"

	"pgregory.net/rapid"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// pdfKind is a class as a PDF is made of it.
type pdfKind struct {
	w class.Worked
	o Options
}

// pdfKinds are the classes that the pages are checked with: all sheets, both
// languages, both systems of units, both papers.
func pdfKinds(t *testing.T) map[string]pdfKind {
	t.Helper()
	kinds := map[string]pdfKind{
		"edited": {editedWorked(t), Options{}},
		"wide":   {class.Work(wideClass(t), reference.Shipped()), Options{AllTreatments: true, Paper: A4}},
		"thin":   {class.Work(class.New(reference.Edition), reference.Shipped()), Options{}},
	}
	every := each(Sheets, func(s Sheet) string { return s.ID })
	for _, l := range languages {
		kinds["long "+string(l)] = pdfKind{workedIn(l, longClass(t)), Options{}}
		for _, p := range Papers {
			kinds[fmt.Sprint("demo ", l, " ", p)] = pdfKind{workedIn(l, demoClass(t)), Options{Paper: p, Sheets: every, Made: time.Date(2027, 6, 1, 8, 0, 0, 0, time.UTC)}}
			kinds[fmt.Sprint("metric ", l, " ", p)] = pdfKind{workedIn(l, metricDemo(t)), Options{Paper: p, Sheets: every}}
		}
	}
	return kinds
}

// bare is a text without blanks and without the shapes, which are drawn.
func bare(text string) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsSpace(c) || isShape(c) {
			return -1
		}
		return c
	}, text)
}

// chartHere stands where a chart has its own texts.
const chartHere = "\x00"

// saysTheSame says whether a page says what is wanted and nothing else, but for
// the texts of its charts.
func saysTheSame(page, want string) bool {
	pieces := strings.Split(want, chartHere)
	last := len(pieces) - 1
	page, begins := strings.CutPrefix(page, pieces[0])
	if last == 0 {
		return begins && page == ""
	}
	page, ends := strings.CutSuffix(page, pieces[last])
	return begins && ends && hasAll(page, pieces[1:last])
}

// workbookPages are the texts of each page of the workbook, in order, with
// header and footer.
func workbookPages(b *book) []string {
	var pages []string
	var frames []page
	for _, s := range b.sheets {
		s.settle()
		s.paginate()
		heads := ""
		for i, r := range s.rows {
			if i == 0 || r.split {
				pages, frames = append(pages, heads), append(frames, s.page)
			}
			text := ""
			for _, c := range r.cells {
				text += shown(c)
				if c.chart != nil {
					text += chartHere
				}
			}
			if i+1 >= s.headFrom && i < s.headTo {
				heads += text
			}
			pages[len(pages)-1] += text
		}
	}
	for i, f := range frames {
		pageOf := strings.NewReplacer("&P", fmt.Sprint(i+1), "&N", fmt.Sprint(len(pages))).Replace(f.footer.right)
		pages[i] = bare(f.header.left + f.header.right + pages[i] + f.footer.left + pageOf)
	}
	return pages
}

// Page for page the PDF says what the workbook says, in the same order: heads of
// tables on every page, page x of y, and every text whole.
func TestPDFHasThePagesOfTheWorkbook(t *testing.T) {
	slow(t)
	need(t, "pdftotext", "pdftohtml")
	for name, k := range pdfKinds(t) {
		pdf, err := PDF(k.w, k.o)
		noErr(t, err)
		b := describe(k.w, mustSettle(t, k.o))
		want := workbookPages(b)
		got := strings.Split(strings.TrimSuffix(poppler(t, pdf, "pdftotext", "-raw", "-enc", "UTF-8", "IN", "-"), "\f"), "\f")
		if len(got) != len(want) {
			t.Errorf("%s: %d pages; the workbook has %d", name, len(got), len(want))
			continue
		}
		for i := range want {
			if text := bare(got[i]); !saysTheSame(text, want[i]) {
				t.Errorf("%s page %d says\n%s\nwant\n%s", name, i+1, text, want[i])
			}
		}
		typeSizes(t, name, pdf)
		insideMargins(t, name, pdf, b)
	}
}

// insideMargins checks that no word stands in a margin, but for headers and
// footers, and that the pages have the size of the paper. Labels have a grid.
func insideMargins(t *testing.T, name string, pdf []byte, b *book) {
	t.Helper()
	margin := b.sheets[0].page
	width, height := margin.paper.size()
	labels := 0 // pages at the end
	for _, s := range b.sheets {
		if s.whole {
			labels = len(s.pages())
		}
	}
	placed, sizes := pdfWords(t, pdf)
	for i, size := range sizes {
		if math.Abs(size[0]-width) > 0.01 || math.Abs(size[1]-height) > 0.01 {
			t.Errorf("%s page %d is %v points; want %.2f × %.2f", name, i+1, size, width, height)
		}
	}
	for _, w := range placed {
		if w.page <= len(sizes)-labels && (w.left < margin.left || w.right > width-margin.right || w.top < margin.headerAt-3 || w.foot > height-margin.footerAt+3) {
			t.Errorf("%s page %d: “%s” at %.1f–%.1f, %.1f–%.1f stands in the margin", name, w.page, w.text, w.left, w.right, w.top, w.foot)
		}
	}
}

// Every text fits into its cell and every page on its paper, and no page had to
// be added to those of the workbook.
func TestPDFTextsFit(t *testing.T) {
	slow(t)
	for name, k := range pdfKinds(t) {
		for _, s := range describe(k.w, mustSettle(t, k.o)).sheets {
			set := s.setIn(plex)
			if got, want := len(set.pages()), len(s.pages()); got != want {
				t.Errorf("%s %s: %d pages; want %d", name, s.id, got, want)
			}
			for i, rows := range set.pages() {
				sum := 0.0
				for _, r := range rows {
					sum += r.height
				}
				if sum > s.page.height() {
					t.Errorf("%s %s page %d: rows of %.1f points in %.1f", name, s.id, i+1, sum, s.page.height())
				}
			}
			for i, r := range set.rows {
				for _, c := range r.cells {
					fitsCell(t, fmt.Sprintf("%s, %s row %d", name, s.id, i+1), set, r, c)
				}
			}
		}
	}
}

func fitsCell(t *testing.T, where string, s *sheet, r row, c cell) {
	t.Helper()
	l := looks[c.role]
	if !l.wrap {
		c.value = shown(c)
		if piece, over := tooLong(s, c); over > 0 {
			t.Errorf("%s: %q is %.1f points too long", where, piece, over)
		}
		return
	}
	for _, w := range strings.Fields(c.text()) {
		_, typed := reference.Shipped().Treatment(strings.Trim(w, "“”(),.:;")) // an id, which may be broken
		if over := plex.width(w, l.size, l.bold, l.italic) - s.lineWidth(c) - plex.over; over > 0 && !typed {
			t.Errorf("%s: the word %q is %.1f points too long", where, w, over)
		}
	}
	lines := s.lines(c)
	if need := float64(len(lines)) * l.size * lineHeight; need > r.height {
		t.Errorf("%s: %d lines need %.1f points of %.1f: %.60q", where, len(lines), need, r.height, c.text())
	}
}

// Everything that the program says has its letters in the face.
func TestPDFHasEveryLetter(t *testing.T) {
	slow(t)
	const absent = '\u4e00'
	missing := func(c rune) bool {
		return !isShape(c) && c != absent && plexAdvance(c, false, false) == plexAdvance(absent, false, false) &&
			plexAdvance(c, true, false) == plexAdvance(absent, true, false) && plexAdvance(c, false, true) == plexAdvance(absent, false, true)
	}
	if !missing('☐') || missing('½') || missing('ñ') {
		t.Fatal("what is missing is not seen")
	}
	for name, k := range pdfKinds(t) {
		for _, s := range describe(k.w, mustSettle(t, k.o)).sheets {
			for _, text := range s.texts() {
				for _, c := range text {
					if c != '\n' && missing(c) {
						t.Errorf("%s %s: %q of %.60q", name, s.id, c, text)
					}
				}
			}
		}
	}
}

func TestPDFSameBytes(t *testing.T) {
	made := func(day int, l words.Language) [32]byte {
		data, err := PDF(workedIn(l, demoClass(t)), Options{Made: time.Date(2027, 6, day, 8, 0, 0, 0, time.UTC)})
		noErr(t, err)
		return sha256.Sum256(data)
	}
	for _, l := range languages {
		first := made(1, l)
		for i := range 5 { // the library keeps fonts and letters in maps
			if made(1, l) != first {
				t.Fatalf("%s: run %d has other bytes than the first", l, i+2)
			}
		}
		if made(2, l) == first {
			t.Error("another day of making gives the same bytes")
		}
	}
}

func TestPDFProperties(t *testing.T) {
	need(t, "pdfinfo", "pdffonts")
	c := demoClass(t)
	c.Title = "Beans (½) & 🥦 \\ ñ"
	for _, l := range languages {
		pdf, err := PDF(workedIn(l, c), Options{Paper: A4})
		noErr(t, err)
		info := poppler(t, pdf, "pdfinfo", "-isodates", "IN")
		for _, want := range []string{"Title:           Beans (½) & \ufffd \\ ñ\n", "Author:          The lead educator\n", "CreationDate:    2027-06-12T00:00:00", "ModDate:         2027-06-12T00:00:00", "(A4)"} {
			if !strings.Contains(info, want) {
				t.Errorf("%s: no %q in\n%s", l, want, info)
			}
		}
		if want := fmt.Sprintf("/Lang (%s-US)", l); !bytes.Contains(pdf, []byte(want)) {
			t.Errorf("%s: no %s", l, want)
		}
		fonts := strings.Split(strings.TrimSpace(poppler(t, pdf, "pdffonts", "IN")), "\n")[2:]
		if len(fonts) != 3 {
			t.Errorf("%s: %d fonts; want three weights of one face", l, len(fonts))
		}
		for _, f := range fonts {
			if strings.Count(f, " yes") < 1 || !strings.Contains(f, plexName) {
				t.Errorf("%s: a font that is not embedded: %s", l, f)
			}
		}
	}
}

func TestPDFOptions(t *testing.T) {
	w := demoWorked(t)
	if _, err := PDF(w, Options{Paper: "a5"}); err == nil || !strings.Contains(err.Error(), "letter or a4") {
		t.Errorf("an unknown paper: %v", err)
	}
	path := filepath.Join(t.TempDir(), "Kurs äöü 1.pdf")
	noErr(t, WritePDF(path, w, Options{}))
	want, err := PDF(w, Options{})
	noErr(t, err)
	if got, err := os.ReadFile(path); err != nil || !bytes.Equal(got, want) {
		t.Errorf("the file is not the PDF: %v", err)
	}
	if err := WritePDF(filepath.Join(filepath.Dir(path), "no", "x.pdf"), w, Options{}); err == nil || !strings.Contains(err.Error(), "there is no folder") {
		t.Errorf("no folder: %v", err)
	}
}

// What people type comes out on paper, whatever it is.
func TestPDFHostileTexts(t *testing.T) {
	need(t, "pdftotext")
	c := demoClass(t)
	c.Title = "=1+1 & <b>\"2027\" \x01\ufffe ~*? (\\) &P " + strings.Repeat("very long title ", 40)
	c.Notes = strings.Repeat("word ", 1000) + "\n\n\tשלום \u202eabc\u202c\r\ncafe\u0301 🥦👩‍🌾 \U000e0001漢字\n" + strings.Repeat("x", 10000) + "\nlast words" // twice as much as a class takes
	c.Place.Name = "\u202e-3+5\xff"
	c.Batches[0].Name = strings.Repeat("W", 200) // the longest that a class takes
	c.People.HelpLine = "☎ 555"
	pdf, err := PDF(class.Work(c, reference.Shipped()), Options{})
	noErr(t, err)
	text := bare(poppler(t, pdf, "pdftotext", "-raw", "-enc", "UTF-8", "IN", "-"))
	for _, want := range []string{"=1+1&<b>\"2027\"~*?(\\)&P", strings.Repeat("word", 20), "café", "漢字", "lastwords", "-3+5", "☎555", strings.Repeat("x", 50)} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not come out", want)
		}
	}
	if n := strings.Count(text, "x"); n < 10000 {
		t.Errorf("%d of 10,000 signs come out", n)
	}
	placed, _ := pdfWords(t, pdf)
	width, height := Letter.size()
	for _, w := range placed {
		if w.left < 0 || w.right > width || w.top < 0 || w.foot > height {
			t.Errorf("page %d: “%s” at %.1f–%.1f, %.1f–%.1f stands off the paper", w.page, w.text, w.left, w.right, w.top, w.foot)
		}
	}
}

// Any text at all can be drawn.
func TestPDFDrawsAnyText(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := &book{title: rapid.String().Draw(r, "title"), created: "2027-06-12T00:00:00Z", language: "en-US"}
		s := &sheet{page: handoutPage(Letter), face: arial, cols: handoutPage(Letter).columns(1, 3)}
		s.name = rapid.String().Draw(r, "name")
		s.page.header = edgeLine{rapid.String().Draw(r, "left"), rapid.String().Draw(r, "right")}
		bold, plain := rapid.String().Draw(r, "bold"), string(rapid.SliceOf(rapid.Byte()).Draw(r, "bytes"))
		s.add(row{cells: []cell{{role: value, value: rapid.String().Draw(r, "text")}, {col: 1, role: guess, runs: []run{{true, bold}, {false, plain}}}}})
		b.sheets = []*sheet{s}
		if _, err := encodePDF(b); err != nil {
			r.Fatal(err)
		}
	})
}

func TestPDFWeights(t *testing.T) {
	for _, c := range []struct {
		bold, italic bool
		want         string
	}{{false, false, upright}, {true, false, semiBold}, {false, true, slanted}, {true, true, slanted}} {
		if got := plexStyle(c.bold, c.italic); got != c.want {
			t.Errorf("bold %v, italic %v: %q; want %q", c.bold, c.italic, got, c.want)
		}
	}
	if a, b := plex.width("half", 1000, false, false), plex.width("half", 1000, true, false); a >= b || plex.width("½", 1000, false, false) == 0 {
		t.Errorf("widths %v, semi-bold %v", a, b)
	}
}

func TestNumbersAreShownAsASpreadsheetShowsThem(t *testing.T) {
	for _, c := range []struct {
		role  role
		value float64
		want  string
	}{
		{resultAmount, 3, "3.00"}, {resultAmount, 0.125, "0.13"}, {resultAmount, 28.004, "28.00"},
		{resultTenth, 11.36, "11.4"}, {resultCount, 2.5, "3"}, {constantFour, 0.45359, "0.4536"},
		{resultTime, 1.5, "1.5"}, {resultTime, 0.1 + 0.2, "0.3"}, {resultTime, 180, "180"},
		{inputAmount, 1.0 / 3, "0.3333333333"}, {inputAmount, 640, "640"},
		{resultInch, 0.5, "1/2"}, {resultInch, 1.5, "1 1/2"}, {resultInch, 0.375, "3/8"}, {resultInch, 2, "2"}, {resultInch, 0, "0"},
	} {
		if got := shown(cell{role: c.role, value: c.value}); got != c.want {
			t.Errorf("%v as %s: %q; want %q", c.value, c.role, got, c.want)
		}
	}
}

// BenchmarkPDF makes the PDF of a class of 12 batches.
func BenchmarkPDF(b *testing.B) {
	c := demoClass(b)
	for len(c.Batches) < 12 {
		c.Batches = append(c.Batches, c.Batches[len(c.Batches)%4])
	}
	w := class.Work(c, reference.Shipped())
	for b.Loop() {
		if _, err := PDF(w, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
