package exports

import (
	"fmt"
	"image/color"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/content/palette"
)

// drawing is a chart over the cell of one high row, from cells that stand on the
// same sheet. On a grey copier its lines differ by dash
// and marker.
type drawing struct {
	title, alt string
	across, up string // what the axes show, with the unit
	bars       bool   // a bar for each row of the one line, the last on top; else lines over x
	lines      []drawnLine
	low, high  float64 // ends of the upward axis; both 0: as the program finds them
}

// drawnLine is a line of a chart: two columns of cells, and its name in the second.
type drawnLine struct {
	x, y              int // columns, from 0
	head, first, last int // rows, from 1
	look              lineLook
}

// lineLook is how a line is drawn.
type lineLook struct {
	ink    color.NRGBA
	dash   excelize.LineDashType
	width  float64 // points
	symbol string
}

// The looks of curves and of marks, in order, and that of bars.
var (
	curveLooks = [mostCurves]lineLook{
		{palette.Boiling, excelize.LineDashSolid, 2.5, "none"},
		{ground.Ink, excelize.LineDashDash, 1.5, "circle"},
		{ground.InkSoft, excelize.LineDashSysDot, 1.5, "triangle"},
	}
	markLooks = [mostMarks]lineLook{
		{ground.Ink, excelize.LineDashLgDashDot, 1, "none"},
		{ground.Ink, excelize.LineDashSolid, 1, "diamond"},
	}
	barLook = lineLook{ink: ground.InkSoft, dash: excelize.LineDashSolid}
)

// draw puts the charts of a sheet into it. Their ends are found from the widths
// and heights of cells, so it comes after the columns; the row under each gets
// its height here, and again with its cells.
func (w *writer) draw(s *sheet) error {
	width := 0.0
	for _, c := range s.cols {
		width += c
	}
	for i, r := range s.rows {
		if len(r.cells) == 0 || r.cells[0].chart == nil {
			continue
		}
		if err := w.file.SetRowHeight(s.name, i+1, r.height); err != nil {
			return err
		}
		c := r.cells[0].chart.chart(s.name)
		c.Dimension = excelize.ChartDimension{Width: uint(pixels(width)), Height: uint(pixels(r.height) - 4)}
		if err := w.file.AddChart(s.name, fmt.Sprintf("A%d", i+1), c); err != nil {
			return err
		}
	}
	return nil
}

// pixels are those that spreadsheet programs count to a length in points.
func pixels(points float64) int { return int(points * 96 / 72) }

func (d drawing) chart(sheet string) *excelize.Chart {
	small := excelize.Font{Family: face, Size: 10, Color: hex(ground.Ink)}
	said := func(text string, size float64) excelize.ChartTitle {
		return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: text, Font: &excelize.Font{Family: face, Size: size, Bold: size > 10, Color: hex(ground.Ink)}}}}
	}
	locked, printed := true, true
	c := &excelize.Chart{
		Type: excelize.Scatter, Title: said(d.title, 12), ShowBlanksAs: "gap",
		Format: excelize.GraphicOptions{AltText: d.alt, Locked: &locked, PrintObject: &printed, Positioning: "oneCell"},
		Legend: excelize.ChartLegend{Position: "bottom", Font: &small},
		XAxis:  excelize.ChartAxis{Font: small, Title: said(d.across, 10)},
		YAxis:  excelize.ChartAxis{Font: small, Title: said(d.up, 10), MajorGridLines: true},
	}
	if d.high > d.low {
		c.YAxis.Minimum, c.YAxis.Maximum = &d.low, &d.high
	}
	if d.bars {
		c.Type, c.Legend.Position, c.PlotArea.ShowVal = excelize.Bar, "none", true
	}
	for _, l := range d.lines {
		fill := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{hex(l.look.ink)}}
		one := excelize.ChartSeries{
			Name: cells(sheet, l.y, l.head, l.head), Categories: cells(sheet, l.x, l.first, l.last), Values: cells(sheet, l.y, l.first, l.last),
			Fill:   fill, // of the line too
			Line:   excelize.LineOptions{Type: excelize.LineSolid, Dash: l.look.dash, Width: l.look.width},
			Marker: excelize.ChartMarker{Symbol: l.look.symbol, Size: 5, Fill: fill},
		}
		c.Series = append(c.Series, one)
	}
	return c
}

// cells names cells of one column for a chart; one row is one cell.
func cells(sheet string, col, first, last int) string {
	name, _ := excelize.ColumnNumberToName(col + 1)
	if first == last {
		return fmt.Sprintf("'%s'!$%s$%d", sheet, name, first)
	}
	return fmt.Sprintf("'%s'!$%s$%d:$%s$%d", sheet, name, first, name, last)
}

// numbers are those of cells of one column, from row to row.
func (s *sheet) numbers(col, first, last int) []float64 {
	var list []float64
	for _, r := range s.rows[first-1 : last] {
		for _, c := range r.cells {
			if v, ok := c.value.(float64); ok && c.col == col {
				list = append(list, v)
			}
		}
	}
	return list
}

// textAt is the text of one cell.
func (s *sheet) textAt(col, row int) string {
	for _, c := range s.rows[row-1].cells {
		if c.col == col {
			return c.text()
		}
	}
	return ""
}
