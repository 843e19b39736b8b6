package exports

import (
	"math"

	"codeberg.org/go-pdf/fpdf"
	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/measure"
)

// In a PDF the charts are drawn here, from the same cells and with the same dashes
// and markers as a spreadsheet program draws them.

var (
	chartTitle = look{size: 12, bold: true}
	chartText  = look{size: 10}
)

// dashLengths are the dashes and gaps of lines in points.
var dashLengths = map[excelize.LineDashType][]float64{
	excelize.LineDashDash: {6, 4}, excelize.LineDashSysDot: {1.5, 2.5}, excelize.LineDashLgDashDot: {10, 3, 2, 3},
}

// plot is the part of a chart between its axes, and what its edges stand for.
type plot struct {
	left, top, right, foot float64 // points on the page
	x0, x1, y0, y1         float64
}

func (a plot) at(x, y float64) (float64, float64) {
	return a.left + (x-a.x0)/(a.x1-a.x0)*(a.right-a.left), a.foot - (y-a.y0)/(a.y1-a.y0)*(a.foot-a.top)
}

// chart draws a chart over its cell.
func (p *printer) chart(s *sheet, c placed) {
	p.pen(hair)
	p.file.Rect(c.left, c.top, c.width, c.height, "D")
	p.ink(ground.Ink)
	p.middle(c.left+c.width/2, c.top+6, c.chart.title, chartTitle)
	if c.chart.bars {
		p.barChart(s, c)
	} else {
		p.lineChart(s, c)
	}
	p.file.SetDashPattern(nil, 0)
}

// middle sets a text around a place.
func (p *printer) middle(at, top float64, text string, l look) {
	p.text(at-plex.width(text, l.size, l.bold, l.italic)/2, top, text, l)
}

// lineChart draws lines over x with their legend below.
func (p *printer) lineChart(s *sheet, c placed) {
	d := c.chart
	legend := d.legend(s, c.width-24)
	a := plot{c.left + 44, c.top + 42, c.left + c.width - 16, c.top + c.height - 38 - 14*float64(len(legend)), 0, 0, d.low, d.high}
	for _, l := range d.lines {
		for _, x := range s.numbers(l.x, l.first, l.last) {
			a.x1 = max(a.x1, x)
		}
	}
	step := roundStep(a.x1)
	a.x1 = math.Ceil(a.x1/step) * step
	p.text(c.left+8, c.top+24, d.up, chartText)
	p.middle((a.left+a.right)/2, a.foot+17, d.across, chartText)
	for x := 0.0; x <= a.x1+step/2; x += step {
		at, _ := a.at(x, a.y0)
		p.middle(at, a.foot+4, measure.Plain(x), chartText)
	}
	step = roundStep(a.y1 - a.y0)
	p.pen(hair)
	for y := math.Ceil(a.y0/step) * step; y <= a.y1; y += step {
		_, at := a.at(a.x0, y)
		p.file.Line(a.left, at, a.right, at)
		text := measure.Plain(y)
		p.text(a.left-5-plex.width(text, chartText.size, false, false), at-7, text, chartText)
	}
	for _, l := range d.lines {
		xs, ys := s.numbers(l.x, l.first, l.last), s.numbers(l.y, l.first, l.last)
		path := make([]fpdf.PointType, min(len(xs), len(ys)))
		for i := range path {
			path[i].X, path[i].Y = a.at(xs[i], ys[i])
		}
		p.path(l.look, path)
	}
	for i, row := range legend {
		for _, e := range row {
			top := a.foot + 34 + 14*float64(i)
			p.path(e.look, []fpdf.PointType{{X: c.left + e.left, Y: top + 6}, {X: c.left + e.left + legendLine/2, Y: top + 6}, {X: c.left + e.left + legendLine, Y: top + 6}})
			p.text(c.left+e.left+legendLine+5, top, e.text, chartText)
		}
	}
}

// legendEntry is a line of the legend, so far from the left of the chart.
type legendEntry struct {
	left float64
	text string
	look lineLook
}

// legendLine is the length of a line in the legend in points.
const legendLine = 34

// legend lays the names of the lines out in rows of a width.
func (d *drawing) legend(s *sheet, width float64) [][]legendEntry {
	const first, gap = 12, 18
	rows, left := [][]legendEntry{nil}, float64(first)
	for _, l := range d.lines {
		e := legendEntry{text: s.textAt(l.y, l.head), look: l.look}
		long := legendLine + 5 + plex.width(e.text, chartText.size, false, false) + gap
		if left+long > width && left > first {
			rows, left = append(rows, nil), first
		}
		e.left = left
		left += long
		rows[len(rows)-1] = append(rows[len(rows)-1], e)
	}
	return rows
}

// path draws a line and its markers.
func (p *printer) path(l lineLook, points []fpdf.PointType) {
	p.file.SetDrawColor(int(l.ink.R), int(l.ink.G), int(l.ink.B))
	p.file.SetFillColor(int(l.ink.R), int(l.ink.G), int(l.ink.B))
	p.file.SetLineWidth(l.width)
	p.file.SetDashPattern(dashLengths[l.dash], 0)
	for i := 1; i < len(points); i++ {
		p.file.Line(points[i-1].X, points[i-1].Y, points[i].X, points[i].Y)
	}
	const half = 2.5
	for _, at := range points {
		switch l.symbol {
		case "circle":
			p.file.Circle(at.X, at.Y, half, "F")
		case "triangle":
			p.file.Polygon([]fpdf.PointType{{X: at.X - half, Y: at.Y + half}, {X: at.X + half, Y: at.Y + half}, {X: at.X, Y: at.Y - half}}, "F")
		case "diamond":
			p.file.Polygon([]fpdf.PointType{{X: at.X - half, Y: at.Y}, {X: at.X, Y: at.Y - half}, {X: at.X + half, Y: at.Y}, {X: at.X, Y: at.Y + half}}, "F")
		}
	}
}

// barChart draws a bar for each row, the last on top, with its number behind it.
func (p *printer) barChart(s *sheet, c placed) {
	l := c.chart.lines[0]
	values := s.numbers(l.y, l.first, l.last)
	names, most, widest := 0.0, 0.0, 60.0
	for i, v := range values {
		names, most = max(names, plex.width(s.textAt(l.x, l.first+i), chartText.size, false, false)), max(most, v)
	}
	left := c.left + 16 + names
	long := c.left + c.width - widest - left
	step := (c.height - 34) / float64(len(values))
	p.file.SetFillColor(int(l.look.ink.R), int(l.look.ink.G), int(l.look.ink.B))
	for i, v := range values {
		name, top := s.textAt(l.x, l.first+i), c.top+26+step*float64(len(values)-1-i)
		p.text(left-6-plex.width(name, chartText.size, false, false), top+step/2-6, name, chartText)
		p.file.Rect(left, top+step*0.25, long*v/most, step*0.5, "F")
		p.text(left+long*v/most+5, top+step/2-6, measure.Plain(v)+" "+c.chart.up, chartText)
	}
}

// roundStep is a round distance of marks on an axis, for some six of them.
func roundStep(span float64) float64 {
	step := math.Pow(10, math.Floor(math.Log10(max(span, 1e-6)/6)))
	for _, times := range []float64{1, 2, 5} {
		if span/(step*times) <= 8 {
			return step * times
		}
	}
	return step * 10
}
