package exports

import (
	"slices"
	"strings"
	"unicode/utf16"

	"example.org/kettleside/content/words"
)

// Paper is the size of the sheets that are printed on.
type Paper string

const (
	Letter Paper = "letter" // 8 1/2 × 11 in
	A4     Paper = "a4"     // 210 × 297 mm
)

// paperNames name the papers, for a voice.
var paperNames = map[Paper]string{Letter: words.Key("letter"), A4: words.Key("a4")}

// Papers lists the papers that can be chosen.
var Papers = []Paper{Letter, A4}

// size is width and height in points.
func (p Paper) size() (width, height float64) {
	if p == A4 {
		return mmToPoints(210), mmToPoints(297)
	}
	return 612, 792
}

// code is the number of the paper in a spreadsheet file.
func (p Paper) code() int {
	if p == A4 {
		return 9
	}
	return 1
}

func mmToPoints(mm float64) float64 { return mm * 72 / 25.4 }

// page is how a sheet lies on paper. Lengths are in points.
type page struct {
	paper                    Paper
	left, right, top, bottom float64
	headerAt, footerAt       float64 // distance from the edge of the paper
	header, footer           edgeLine
}

// edgeLine is a line of header or footer in 10 point type. In its right part
// &P stands for the number of the page and &N for that of all pages.
type edgeLine struct{ left, right string }

// headFootSize is the size of the type in headers and footers.
const headFootSize = 10

// width is the room between the margins.
func (p page) width() float64 {
	w, _ := p.paper.size()
	return w - p.left - p.right
}

// height is the room between the margins.
func (p page) height() float64 {
	_, h := p.paper.size()
	return h - p.top - p.bottom
}

// handoutPage is the page of every sheet but the labels.
func handoutPage(p Paper) page {
	return page{paper: p, left: 38, right: 38, top: 42, bottom: 42, headerAt: 22, footerAt: 22}
}

// columns shares the width of the page in the given proportions. A part of the
// width stays free, because spreadsheet programs round column widths each in
// its own way, and a sheet that is a hair too wide would be scaled down.
func (p page) columns(shares ...float64) []float64 {
	const used = 0.985
	return p.columnsOver(used, shares)
}

// columnsOver shares a part of the width of the page.
func (p page) columnsOver(part float64, shares []float64) []float64 {
	sum := 0.0
	for _, s := range shares {
		sum += s
	}
	cols := make([]float64, len(shares))
	for i, s := range shares {
		cols[i] = s / sum * p.width() * part
	}
	return cols
}

// oneLine cuts a text so that the right part of a header has room beside it: two
// lines there would push the sheet down and make it smaller.
func (p page) oneLine(text string) string {
	const right = 120
	fits := func(text string) bool { return arial.width(text, headFootSize, false, false) <= p.width()-right }
	if fits(text) {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && !fits(string(runes)+"…") {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// codes is the line in the codes of a spreadsheet, "" where there is none. They
// allow 255 units of UTF-16: what is too long is cut from the left part, never
// from the right one with its codes.
func (e edgeLine) codes() string {
	if e == (edgeLine{}) {
		return ""
	}
	const face = `&"Arial,Regular"&10 ` // the blank ends the size, should a digit follow
	const most = 255
	fixed := utf16Len("&L" + face + "&R" + face + e.right)
	return "&L" + face + escaped(e.left, most-fixed) + "&R" + face + e.right
}

// escaped writes a text for a header in so many units of UTF-16: "&" stands
// twice there, and neither a pair nor a character is ever cut apart.
func escaped(text string, most int) string {
	if whole := strings.ReplaceAll(text, "&", "&&"); utf16Len(whole) <= most {
		return whole
	}
	var b strings.Builder
	room := most - utf16Len("…")
	for _, r := range text {
		piece := string(r)
		if r == '&' {
			piece = "&&"
		}
		if room -= utf16Len(piece); room < 0 {
			break
		}
		b.WriteString(piece)
	}
	return b.String() + "…"
}

func utf16Len(text string) int {
	n := 0
	for _, r := range text {
		n += utf16.RuneLen(r)
	}
	return n
}

// room is what rows may take of the height.
func (p page) room() float64 {
	const used = 0.985 // what rounding of row heights may take
	return p.height() * used
}

// headHeight is the height of the heads that every page repeats.
func (s *sheet) headHeight() float64 {
	sum := 0.0
	for i := s.headFrom; i > 0 && i <= s.headTo; i++ {
		sum += s.rows[i-1].height
	}
	return sum
}

// fits says whether the last rows, from first on, stand on one page: that of the
// title where nothing else stands above them, else one of their own under the
// repeated heads.
func (s *sheet) fits(first int) bool {
	from := max(s.headFrom-1, 0)
	if first <= s.headTo {
		from = 0
	}
	trial := &sheet{cols: s.cols, face: s.face}
	for _, r := range append(slices.Clone(s.rows[from:s.headTo]), s.rows[first:]...) {
		r.cells = slices.Clone(r.cells) // settling changes them
		for i := range r.cells {
			r.cells[i].runs = slices.Clone(r.cells[i].runs)
		}
		trial.rows = append(trial.rows, r)
	}
	trial.settle()
	need := 0.0
	for _, r := range trial.rows {
		need += r.height
	}
	return need <= s.page.room()
}

// paginate starts a new page before every row that no longer fits, and keeps
// rows together that belong together. Rows that were told to start a page do.
func (s *sheet) paginate() {
	if s.whole {
		return
	}
	full := s.page.room()
	if s.headUntil > 0 {
		table := 0.0
		for _, r := range s.rows[:s.headUntil] {
			table += r.height
		}
		if table <= full {
			s.headFrom, s.headTo = 0, 0
		}
	}
	head := s.headHeight()
	room := full
	for i := 0; i < len(s.rows); {
		end, need := s.block(i)
		// what fits on no page flows on, and so does what would leave most of
		// a page empty
		fits := need <= room || !s.rows[i].uncut && (need > full-head && room > full/3 || room > full*0.6)
		if i > 0 && (s.rows[i].split || !fits) {
			s.rows[i].split = true
			room = full
			if i >= s.headTo {
				room -= head
			}
		}
		for ; i < end; i++ {
			if s.rows[i].height > room && i > 0 && !s.rows[i].split {
				s.rows[i].split = true
				room = full - head
			}
			room -= s.rows[i].height
		}
	}
}

// block is the run of rows from i that stay on one page: its end and height.
func (s *sheet) block(i int) (end int, height float64) {
	for end = i; end < len(s.rows); end++ {
		height += s.rows[end].height
		if !s.rows[end].keep {
			return end + 1, height
		}
	}
	return end, height
}
