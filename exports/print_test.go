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

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/class"
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
func pdfWords(t *testing.T, pdf []byte) (words []pdfWord, sizes [][2]float64) {
	t.Helper()
	for _, l := range strings.Split(poppler(t, pdf, "pdftotext", "-bbox", "IN", "-"), "\n") {
		number := func(s string) float64 { v, err := strconv.ParseFloat(s, 64); noErr(t, err); return v }
		if m := pageTag.FindStringSubmatch(l); m != nil {
			sizes = append(sizes, [2]float64{number(m[1]), number(m[2])})
		} else if m := wordTag.FindStringSubmatch(l); m != nil {
			words = append(words, pdfWord{len(sizes), number(m[1]), number(m[2]), number(m[3]), number(m[4]), unxml.Replace(m[5])})
		}
	}
	return words, sizes
}

// tokens counts the words of a text, without the signs between them.
func tokens(text string, count map[string]int) {
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		count[w]++
	}
}

// needs.md 10: it prints right without touching it.
func TestHandoutsOnPaper(t *testing.T) {
	need(t, "soffice", "pdftotext", "pdftohtml")
	wide := class.Work(wideClass(t), reference.Shipped())
	kinds := map[string]struct {
		w class.Worked
		o Options
	}{
		"letter":     {demoWorked(t), Options{Paper: Letter}},
		"a4":         {demoWorked(t), Options{Paper: A4}},
		"edited":     {editedWorked(t), Options{Paper: Letter}},
		"all letter": {wide, Options{Paper: Letter, AllTreatments: true, Sheets: []string{TreatmentsSheet, BatchSheet, OwnNumbersSheet}}},
		"all a4":     {wide, Options{Paper: A4, AllTreatments: true, Sheets: []string{TreatmentsSheet, BatchSheet, OwnNumbersSheet}}},
	}
	files := map[string][]byte{}
	for name, k := range kinds {
		data, err := Workbook(k.w, k.o)
		noErr(t, err)
		files[name] = data
	}
	for name, pdf := range office(t, "pdf", files) {
		words, sizes := pdfWords(t, pdf)
		o, err := kinds[name].o.settle()
		noErr(t, err)
		b := describe(kinds[name].w, o)
		onPaper(t, name, b, o.Paper, words, sizes)
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
func onPaper(t *testing.T, name string, b *book, paper Paper, words []pdfWord, sizes [][2]float64) {
	t.Helper()
	width, height := paper.size()
	margin := handoutPage(paper)
	pages := make([]string, len(sizes)+1)
	printed := map[string]int{}
	sheetOf := map[int]string{} // from the right half of the header
	for _, w := range words {
		if w.foot < margin.top && w.left > width/2 {
			sheetOf[w.page] = strings.TrimSpace(sheetOf[w.page] + " " + w.text)
		}
		pages[w.page] += w.text + " "
		tokens(w.text, printed)
		labels := !strings.Contains(pages[w.page], "Page") && strings.Contains(b.sheets[len(b.sheets)-1].id, LabelsSheet) && w.page == len(sizes)
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
		if !onLabels && !strings.Contains(text, fmt.Sprintf("Page %d of %d", i+1, len(sizes))) {
			t.Errorf("%s page %d does not say so", name, i+1)
		}
		if !onLabels && !strings.Contains(text, reference.Edition) {
			t.Errorf("%s page %d does not name the edition", name, i+1)
		}
		if sheetOf[i+1] == "Batches" {
			heads++
			for _, head := range []string{"Figure One station", "How it is worked out", "Rests on"} {
				if !strings.Contains(text, head) {
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

// No text is cut by its row. Each text is laid out by LibreOffice in a column
// as wide as its own cells and in a row with much more height; the lines that
// it takes there have to fit into the height that the sheet gives it.
func TestRowsAreHighEnough(t *testing.T) {
	need(t, "soffice", "pdftotext")
	r := &ruler{file: excelize.NewFile(), seen: map[string]bool{}, sheets: map[string]*rulerSheet{}}
	var err error
	r.styles, err = makeStyles(r.file)
	noErr(t, err)
	wide := class.Work(wideClass(t), reference.Shipped())
	metric := wideClass(t)
	metric.Units = "metric"
	for _, b := range []*book{
		describe(demoWorked(t), mustSettle(t, Options{})),
		describe(wide, mustSettle(t, Options{Paper: A4, AllTreatments: true})),
		describe(editedWorked(t), mustSettle(t, Options{Paper: A4})),
		describe(class.Work(metric, reference.Shipped()), mustSettle(t, Options{})),
	} {
		for _, s := range b.sheets {
			s.settle()
			for i, line := range s.rows {
				for _, c := range line.cells {
					r.add(t, s, i, line.height, c)
				}
			}
		}
	}
	pages := r.finish(t)
	data, err := r.file.WriteToBuffer()
	noErr(t, err)
	words, sizes := pdfWords(t, office(t, "pdf", map[string][]byte{"ruler": data.Bytes()})["ruler"])
	if len(sizes) != len(pages) {
		t.Fatalf("the ruler has %d pages; want %d", len(sizes), len(pages))
	}
	measured, several, full := 0, 0, 0
	for i, page := range pages {
		for _, p := range page {
			lines := map[int]bool{}
			for _, w := range words {
				if middle := (w.top + w.foot) / 2; w.page == i+1 && middle > p.top && middle < p.top+p.height+spare {
					lines[int(math.Round(w.foot))] = true
				}
			}
			room := int((p.height - 1) / (p.size * 1.118)) // LibreOffice's line: ascent and descent of the face
			if len(lines) == 0 || len(lines) > room {
				t.Errorf("%s has room for %d lines; LibreOffice needs %d for %.80q", p.where, room, len(lines), p.text)
			}
			measured++
			if len(lines) > 1 {
				several++
			}
			if len(lines) == room {
				full++
			}
		}
	}
	if measured < 500 || several < 100 || full < 200 {
		t.Errorf("%d texts measured, %d of several lines, %d that fill their row: this proves little", measured, several, full)
	}
}

// spare is how much more height a row of the ruler has than that of the sheet.
const spare = 60

// ruler is a workbook in which each text stands alone in a high row.
type ruler struct {
	file   *excelize.File
	styles map[role]int
	seen   map[string]bool
	sheets map[string]*rulerSheet
	order  []string
}

type rulerSheet struct {
	rows  int
	used  float64 // of the page
	pages [][]rulerPlace
}

// rulerPlace is where a text stands in the ruler.
type rulerPlace struct {
	where, text       string
	top, height, size float64
}

const rulerMargin = 18.0

func (r *ruler) add(t *testing.T, s *sheet, i int, height float64, c cell) {
	t.Helper()
	text := c.text()
	if strings.TrimSpace(text) == "" || !looks[c.role].wrap {
		return
	}
	width := 0.0
	for j := c.col; j < c.col+c.cols(); j++ {
		width += math.Round(s.cols[j]/pointsPerUnit*100) / 100
	}
	name := fmt.Sprintf("w%.2f", width)
	if key := fmt.Sprint(name, c.role, height, text); r.seen[key] {
		return
	} else {
		r.seen[key] = true
	}
	sheet := r.sheets[name]
	if sheet == nil {
		sheet = &rulerSheet{pages: [][]rulerPlace{nil}}
		r.sheets[name] = sheet
		r.order = append(r.order, name)
		_, err := r.file.NewSheet(name)
		noErr(t, err)
		noErr(t, r.file.SetColWidth(name, "A", "A", width))
	}
	sheet.rows++
	at := fmt.Sprintf("A%d", sheet.rows)
	if sheet.used+height+spare > 700 {
		noErr(t, r.file.InsertPageBreak(name, at))
		sheet.used = 0
		sheet.pages = append(sheet.pages, nil)
	}
	c.formula = ""
	v, err := cellValue(c)
	noErr(t, err)
	if rich, ok := v.([]excelize.RichTextRun); ok {
		noErr(t, r.file.SetCellRichText(name, at, rich))
	} else {
		noErr(t, r.file.SetCellValue(name, at, v))
	}
	style := looks[c.role].style()
	style.Alignment.Vertical = "top"
	id, err := r.file.NewStyle(style)
	noErr(t, err)
	noErr(t, r.file.SetCellStyle(name, at, at, id))
	noErr(t, r.file.SetRowHeight(name, sheet.rows, height+spare))
	last := len(sheet.pages) - 1
	sheet.pages[last] = append(sheet.pages[last], rulerPlace{
		fmt.Sprintf("%s row %d", s.id, i+1), text, rulerMargin + sheet.used, height, looks[c.role].size,
	})
	sheet.used += height + spare
}

// finish sets the pages up and gives back what stands on each.
func (r *ruler) finish(t *testing.T) (pages [][]rulerPlace) {
	t.Helper()
	noErr(t, r.file.DeleteSheet("Sheet1"))
	size, inch := 1, func(points float64) *float64 { v := points / 72; return &v }
	for _, name := range r.order {
		noErr(t, r.file.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &size}))
		noErr(t, r.file.SetPageMargins(name, &excelize.PageLayoutMarginsOptions{
			Left: inch(rulerMargin), Right: inch(rulerMargin), Top: inch(rulerMargin), Bottom: inch(rulerMargin), Header: inch(0), Footer: inch(0),
		}))
		pages = append(pages, r.sheets[name].pages...)
	}
	return pages
}

func mustSettle(t *testing.T, o Options) Options {
	t.Helper()
	o, err := o.settle()
	noErr(t, err)
	return o
}

// needs.md 27: on every grid each label's whole text stands inside its label.
func TestLabelsPrintInsideTheirLabels(t *testing.T) {
	need(t, "soffice", "pdftotext")
	files := map[string][]byte{}
	c := demoClass(t)
	c.Batches[0].Pack.Count = 9 // more than one sheet of most grids
	w := class.Work(c, reference.Shipped())
	for _, g := range Grids() {
		data, err := Workbook(w, Options{Sheets: []string{LabelsSheet}, LabelGrid: g.ID})
		noErr(t, err)
		files[g.ID] = data
	}
	for id, pdf := range office(t, "pdf", files) {
		g, _ := gridNamed(id)
		texts := newMaker(w, Options{}).labelTexts(g)
		words, sizes := pdfWords(t, pdf)
		each := g.Columns * g.Rows
		if want := (len(texts) + each - 1) / each; len(sizes) != want {
			t.Errorf("%s: %d pages for %d labels", id, len(sizes), len(texts))
		}
		got := map[int]string{}
		for _, p := range words {
			col := int((p.left/mmToPoints(1) - g.LeftMm) / g.PitchXMm)
			line := int((p.top/mmToPoints(1) - g.TopMm) / g.PitchYMm)
			left, top := mmToPoints(g.LeftMm+float64(col)*g.PitchXMm), mmToPoints(g.TopMm+float64(line)*g.PitchYMm)
			const clear = 2.8 // 1 mm from the edge of the label
			if p.left < left+clear || p.right > left+mmToPoints(g.WidthMm)-clear || p.top < top || p.foot > top+mmToPoints(g.HeightMm) {
				t.Errorf("%s page %d: “%s” at %.1f–%.1f, %.1f–%.1f is not inside label %d,%d", id, p.page, p.text, p.left, p.right, p.top, p.foot, line+1, col+1)
			}
			got[(p.page-1)*each+line*g.Columns+col] += p.text
		}
		for i, l := range texts {
			if want := strings.Join(strings.Fields(l.food+" "+l.rest), ""); got[i] != want {
				t.Errorf("%s label %d: %q; want %q", id, i+1, got[i], want)
			}
		}
	}
}
