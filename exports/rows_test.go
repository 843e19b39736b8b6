package exports

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// No text is cut by its row. Each text is laid out by LibreOffice in a column
// as wide as its own cells and in a row with much more height; the lines that
// it takes there have to fit into the height that the sheet gives it.
func TestRowsAreHighEnough(t *testing.T) {
	slow(t)
	need(t, "soffice", "pdftotext")
	r := &ruler{file: excelize.NewFile(), seen: map[string]bool{}, sheets: map[string]*rulerSheet{}}
	var err error
	r.styles, err = makeStyles(r.file)
	noErr(t, err)
	wide := class.Work(wideClass(t), reference.Shipped())
	metric := wideClass(t)
	metric.Units = "metric"
	for _, b := range []*book{
		describe(demoWorked(t), mustSettle(t, Options{Sheets: everySheet()})),
		describe(wide, mustSettle(t, Options{Paper: A4, AllTreatments: true, Sheets: everySheet()})),
		describe(editedWorked(t), mustSettle(t, Options{Paper: A4})),
		describe(class.Work(metric, reference.Shipped()), mustSettle(t, Options{Sheets: everySheet()})),
		describe(workedIn(words.Spanish, demoClass(t)), mustSettle(t, Options{Sheets: everySheet()})),
		describe(workedIn(words.Spanish, wideClass(t)), mustSettle(t, Options{Paper: A4, AllTreatments: true, Sheets: everySheet()})),
		describe(editedIn(t, words.Spanish), mustSettle(t, Options{Paper: A4})),
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
	placed, sizes := pdfWords(t, office(t, "pdf", map[string][]byte{"ruler": data.Bytes()})["ruler"])
	if len(sizes) != len(pages) {
		t.Fatalf("the ruler has %d pages; want %d", len(sizes), len(pages))
	}
	measured, several, full := 0, 0, 0
	for i, page := range pages {
		for _, p := range page {
			lines := map[int]bool{}
			for _, w := range placed {
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
