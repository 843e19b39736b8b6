package exports

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// encode writes a book: styles first, then each sheet's print settings, limits
// and protection, then its rows through the stream writer, which alone keeps a
// formula and its value together.
func encode(b *book) ([]byte, error) {
	for _, s := range b.sheets {
		s.settle()
		s.paginate()
	}
	if err := checkBook(b); err != nil {
		return nil, err
	}
	f := excelize.NewFile()
	defer f.Close()
	f.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return newSortedZip(w) })
	styles, err := makeStyles(f)
	if err != nil {
		return nil, err
	}
	w := &writer{file: f, styles: styles, at: map[string]string{}}
	if err := w.properties(b); err != nil {
		return nil, err
	}
	for i, s := range b.sheets {
		if err := w.sheet(i, s); err != nil {
			return nil, fmt.Errorf("exports: sheet %s: %w", s.id, err)
		}
	}
	buf, err := f.WriteToBuffer()
	if err != nil {
		return nil, fmt.Errorf("exports: %w", err)
	}
	return bytes.Clone(buf.Bytes()), nil
}

// writer carries one workbook.
type writer struct {
	file   *excelize.File
	styles map[role]int
	at     map[string]string // defined name → its cells, with $ and without sheet
}

func (w *writer) properties(b *book) error {
	if err := w.file.SetDocProps(&excelize.DocProperties{
		Title: b.title, Creator: b.author, LastModifiedBy: b.author, Description: b.about,
		Created: b.created, Modified: b.created, Language: b.language,
	}); err != nil {
		return err
	}
	if err := w.file.SetAppProps(&excelize.AppProperties{Application: "Kettleside"}); err != nil {
		return err
	}
	always := true
	return w.file.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &always})
}

func (w *writer) sheet(index int, s *sheet) error {
	if index == 0 {
		if err := w.file.SetSheetName("Sheet1", s.name); err != nil {
			return err
		}
	} else if _, err := w.file.NewSheet(s.name); err != nil {
		return err
	}
	w.findNames(s)
	for _, step := range []func(*sheet) error{w.paper, w.printed, w.checks, w.seal, w.rows, w.names} {
		if err := step(s); err != nil {
			return err
		}
	}
	return nil
}

// paper sets page, margins, header and footer. All six margins are given: one
// left out would be written as 0.
func (w *writer) paper(s *sheet) error {
	p := s.page
	size, portrait, one, many, hundred := p.paper.code(), "portrait", 1, 0, uint(100)
	fit := !s.whole
	if err := w.file.SetSheetProps(s.name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	layout := &excelize.PageLayoutOptions{Size: &size, Orientation: &portrait}
	if fit {
		layout.FitToWidth, layout.FitToHeight = &one, &many
	} else {
		layout.AdjustTo = &hundred
	}
	if err := w.file.SetPageLayout(s.name, layout); err != nil {
		return err
	}
	inch := func(points float64) *float64 { v := math.Round(points/72*1e4) / 1e4; return &v }
	if err := w.file.SetPageMargins(s.name, &excelize.PageLayoutMarginsOptions{
		Left: inch(p.left), Right: inch(p.right), Top: inch(p.top), Bottom: inch(p.bottom),
		Header: inch(p.headerAt), Footer: inch(p.footerAt),
	}); err != nil {
		return err
	}
	no := false
	if err := w.file.SetSheetView(s.name, 0, &excelize.ViewOptions{ShowGridLines: &no}); err != nil {
		return err
	}
	if p.header == (edgeLine{}) && p.footer == (edgeLine{}) {
		return nil
	}
	align := true
	return w.file.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{
		AlignWithMargins: &align, OddHeader: p.header.codes(), OddFooter: p.footer.codes(),
	})
}

// printed names the area to print and the rows to repeat.
func (w *writer) printed(s *sheet) error {
	last, err := excelize.ColumnNumberToName(len(s.cols))
	if err != nil {
		return err
	}
	quoted := "'" + s.name + "'!"
	if err := w.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", Scope: s.name,
		RefersTo: fmt.Sprintf("%s$A$1:$%s$%d", quoted, last, len(s.rows)),
	}); err != nil || s.headTo == 0 {
		return err
	}
	return w.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", Scope: s.name,
		RefersTo: fmt.Sprintf("%s$%d:$%d", quoted, s.headFrom, s.headTo),
	})
}

// checks sets what may be typed into the open cells.
func (w *writer) checks(s *sheet) error {
	for _, c := range s.checks {
		v := excelize.NewDataValidation(true)
		v.SetSqref(strings.ReplaceAll(w.at[c.cell], "$", ""))
		var err error
		switch {
		case c.list != "":
			v.SetSqrefDropList(c.list)
		case len(c.choices) > 0:
			err = v.SetDropList(c.choices)
		case c.whole:
			err = v.SetRange(int(c.low), int(c.high), excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
		default:
			err = v.SetRange(c.low, c.high, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
		}
		if err != nil {
			return err
		}
		v.SetInput(clip(c.title, 31), clip(c.help, 250))
		v.SetError(excelize.DataValidationErrorStyleStop, clip(c.title, 31), clip(c.stop, 250))
		if err := w.file.AddDataValidation(s.name, v); err != nil {
			return err
		}
	}
	return nil
}

// seal protects a sheet against a slip of the finger, without a password:
// everything can be selected and read, rows and columns can be resized.
func (w *writer) seal(s *sheet) error {
	if !s.sealed {
		return nil
	}
	return w.file.ProtectSheet(s.name, &excelize.SheetProtectionOptions{
		SelectLockedCells: true, SelectUnlockedCells: true, FormatColumns: true, FormatRows: true,
	})
}

// rows streams the cells.
func (w *writer) rows(s *sheet) error {
	sw, err := w.file.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	for i := len(s.cols); i > 0; i-- { // the writer puts each new column before the others
		if err := sw.SetColWidth(i, i, math.Round(s.cols[i-1]/pointsPerUnit*100)/100); err != nil {
			return err
		}
	}
	if err := w.draw(s); err != nil {
		return err
	}
	if s.frozen > 0 {
		if err := sw.SetPanes(&excelize.Panes{Freeze: true, YSplit: s.frozen, TopLeftCell: fmt.Sprintf("A%d", s.frozen+1), ActivePane: "bottomLeft"}); err != nil {
			return err
		}
	}
	for i, r := range s.rows {
		if r.split && i > 0 {
			if err := sw.InsertPageBreak(fmt.Sprintf("A%d", i+1)); err != nil {
				return err
			}
		}
		values, err := w.cells(s, i+1, r, sw)
		if err != nil {
			return err
		}
		if i == 0 && s.aside != "" {
			values = append(values, excelize.Cell{StyleID: w.styles[blank], Value: s.aside})
		}
		if err := sw.SetRow(fmt.Sprintf("A%d", i+1), values, excelize.RowOpts{Height: r.height}); err != nil {
			return err
		}
	}
	return sw.Flush()
}

// cells are the values of a row, with the styles of covered cells filled in so
// that edges and fills go on under them.
func (w *writer) cells(s *sheet, number int, r row, sw *excelize.StreamWriter) ([]any, error) {
	values := make([]any, len(s.cols))
	for _, c := range r.cells {
		style := w.styles[c.role]
		for i := c.col; i < c.col+c.cols(); i++ {
			values[i] = excelize.Cell{StyleID: style}
		}
		v, err := cellValue(c)
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", number, err)
		}
		values[c.col] = excelize.Cell{StyleID: style, Formula: c.formula, Value: v}
		if c.cols() == 1 {
			continue
		}
		from, _ := excelize.CoordinatesToCellName(c.col+1, number)
		to, _ := excelize.CoordinatesToCellName(c.col+c.cols(), number)
		if err := sw.MergeCell(from, to); err != nil {
			return nil, err
		}
	}
	return values, nil
}

// cellValue is what goes into the file. A number that is none is refused, it
// would be stored as text.
func cellValue(c cell) (any, error) {
	if len(c.runs) > 0 {
		l := looks[c.role]
		rich := make([]excelize.RichTextRun, 0, len(c.runs))
		for _, r := range c.runs {
			rich = append(rich, excelize.RichTextRun{Text: r.text, Font: &excelize.Font{
				Family: face, Size: l.size, Bold: l.bold || r.bold, Italic: l.italic, Color: hex(l.ink),
			}})
		}
		return rich, nil
	}
	switch v := c.value.(type) {
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("%s holds a number that is none", c.role)
		}
	case string:
		if v == "" && c.formula == "" {
			return nil, nil
		}
	}
	return c.value, nil
}

// findNames notes the cells of each defined name: one cell, or those in the
// same column from its first to its last row.
func (w *writer) findNames(s *sheet) {
	type span struct{ col, first, last int }
	spans := map[string]*span{}
	for i, r := range s.rows {
		for _, c := range r.cells {
			if c.name == "" {
				continue
			}
			if _, ok := spans[c.name]; !ok {
				spans[c.name] = &span{c.col, i + 1, i + 1}
			}
			spans[c.name].last = i + 1
		}
	}
	for name, p := range spans {
		col, _ := excelize.ColumnNumberToName(p.col + 1)
		w.at[name] = fmt.Sprintf("$%s$%d", col, p.first)
		if p.last > p.first {
			w.at[name] += fmt.Sprintf(":$%s$%d", col, p.last)
		}
	}
}

// names defines the names of a sheet, in order.
func (w *writer) names(s *sheet) error {
	var list []string
	for _, r := range s.rows {
		for _, c := range r.cells {
			if c.name != "" && !slices.Contains(list, c.name) {
				list = append(list, c.name)
			}
		}
	}
	slices.Sort(list)
	for _, name := range list {
		if err := w.file.SetDefinedName(&excelize.DefinedName{
			Name: name, RefersTo: "'" + s.name + "'!" + w.at[name],
		}); err != nil {
			return err
		}
	}
	return nil
}
