package exports

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/disk"
)

// PDF makes the pages of the handout workbook as a PDF, for those who print
// elsewhere: the same description, row for row and page for page, set in the
// face that is embedded. Formulas stand as the values that the program worked out. Equal
// class, table and options give equal bytes.
func PDF(w class.Worked, o Options) ([]byte, error) {
	o, err := o.settle()
	if err != nil {
		return nil, err
	}
	return encodePDF(describe(w, o))
}

// WritePDF makes the PDF and puts it into a file as Replace does.
func WritePDF(path string, w class.Worked, o Options) error {
	data, err := PDF(w, o)
	if err != nil {
		return err
	}
	return disk.Replace(path, data)
}

// encodePDF draws a book on the pages that its workbook has.
func encodePDF(b *book) ([]byte, error) {
	b.clean()
	pages := 0
	for i, s := range b.sheets {
		b.sheets[i] = s.setIn(plex)
		pages += len(b.sheets[i].pages())
	}
	if err := checkBook(b); err != nil {
		return nil, err
	}
	file := newPDF()
	if err := properties(file, b); err != nil {
		return nil, err
	}
	p := &printer{file: file, pages: pages}
	for _, s := range b.sheets {
		p.sheet(s)
	}
	var out bytes.Buffer
	if err := file.Output(&out); err != nil {
		return nil, fmt.Errorf("exports: PDF: %w", err)
	}
	return out.Bytes(), nil
}

// properties say what the document is. Its times are the time of the workbook:
// the clock is never asked.
func properties(file *fpdf.Fpdf, b *book) error {
	created, err := time.Parse(time.RFC3339, b.created)
	if err != nil {
		return fmt.Errorf("exports: PDF: %w", err)
	}
	file.SetTitle(b.title, true)
	file.SetAuthor(b.author, true)
	file.SetSubject(b.about, true)
	file.SetCreator("Kettleside", true)
	file.SetLang(b.language)
	file.SetCreationDate(created)
	file.SetModificationDate(created)
	file.SetCatalogSort(true)
	return nil
}

// setIn is the sheet set in another face, on the pages that it has in its own. A
// page begins besides only where rows no longer fit. Here the columns take the
// whole width: nothing rounds them.
func (s *sheet) setIn(f *lettering) *sheet {
	set := *s
	set.face, set.rows = f, slices.Clone(s.rows)
	if !s.whole {
		set.cols = s.page.columnsOver(1, s.cols)
	}
	s.settle()
	s.paginate()
	for _, r := range set.rows {
		for i := range r.cells {
			r.cells[i].room = "" // no formula changes any more
		}
	}
	set.settle()
	set.headFrom, set.headTo = s.headFrom, s.headTo
	head, room := set.headHeight(), 0.0
	for i := range set.rows {
		r := &set.rows[i]
		r.split = s.rows[i].split || r.height > room
		if r.split {
			room = s.page.height()
			if i >= set.headTo {
				room -= head
			}
		}
		room -= r.height
	}
	return &set
}

// pages are the rows of each page, with the heads that it repeats.
func (s *sheet) pages() [][]row {
	var list [][]row
	for i, r := range s.rows {
		if i == 0 || r.split {
			var heads []row
			if s.headFrom > 0 && i >= s.headTo {
				heads = slices.Clone(s.rows[s.headFrom-1 : s.headTo])
			}
			list = append(list, heads)
		}
		list[len(list)-1] = append(list[len(list)-1], r)
	}
	return list
}

// printer draws sheets, page after page.
type printer struct {
	file  *fpdf.Fpdf
	pages int // in all
}

func (p *printer) sheet(s *sheet) {
	width, height := s.page.paper.size()
	for i, rows := range s.pages() {
		p.file.AddPageFormat("P", fpdf.SizeType{Wd: width, Ht: height})
		if i == 0 {
			p.file.Bookmark(s.name, 0, 0)
		}
		p.edgeLine(s.page, s.page.header, s.page.headerAt)
		p.cells(s, rows)
		p.edgeLine(s.page, s.page.footer, height-s.page.footerAt-headFootSize*lineHeight)
	}
}

// edgeLine draws a header or footer whose type begins at a height.
func (p *printer) edgeLine(on page, e edgeLine, top float64) {
	if e == (edgeLine{}) {
		return
	}
	right := strings.NewReplacer("&P", fmt.Sprint(p.file.PageNo()), "&N", fmt.Sprint(p.pages)).Replace(e.right)
	width, _ := on.paper.size()
	p.ink(ground.InkSoft)
	p.text(on.left+cellSides/2, top, e.left, look{size: headFootSize})
	p.text(width-on.right-cellSides/2-plex.width(right, headFootSize, false, false), top, right, look{size: headFootSize})
}
