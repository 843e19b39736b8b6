package exports

import (
	"archive/zip"
	"bytes"
	"image/color"
	"io"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// curvesBook is the workbook with the sheet of curves alone.
func curvesBook(t *testing.T, w class.Worked) []byte {
	t.Helper()
	data, err := Workbook(w, Options{Sheets: []string{CurvesSheet}})
	noErr(t, err)
	again, err := Workbook(w, Options{Sheets: []string{CurvesSheet}})
	noErr(t, err)
	if !bytes.Equal(data, again) {
		t.Error("a workbook with charts has other bytes the second time")
	}
	return data
}

// part is a part of a workbook as text.
func part(t *testing.T, data []byte, name string) string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	noErr(t, err)
	f, err := z.Open(name)
	noErr(t, err)
	text, err := io.ReadAll(f)
	noErr(t, err)
	return string(text)
}

// The charts stand on cells of their sheet, and these hold what was worked out;
// titles speak the language of the class.
func TestChartsShowWhatWasWorkedOut(t *testing.T) {
	for _, l := range languages {
		w := workedIn(l, demoClass(t))
		data := curvesBook(t, w)
		voice := words.In(l)
		sheet := voice.Say("Curves")
		kettle := kettleChart(w.Batches[0])
		one, two := part(t, data, "xl/charts/chart1.xml"), part(t, data, "xl/charts/chart2.xml")
		for _, want := range []string{voice.Say("%s, estimated", kettle.Title), axisText(kettle.X), axisText(kettle.Y), sheet + "&#39;!$A$", `prstDash val="dash"`, `prstDash val="sysDot"`, `symbol val="circle"`, `symbol val="triangle"`} {
			if !strings.Contains(one, want) {
				t.Errorf("%s: the kettle's chart has no %q", l, want)
			}
		}
		if want := voice.Say("What the class packs, and what the freezer takes in a day"); !strings.Contains(two, want) || !strings.Contains(two, "barChart") {
			t.Errorf("%s: the freezer's chart has no %q", l, want)
		}
		s := describe(w, mustSettle(t, Options{Sheets: []string{CurvesSheet}})).sheets[0]
		says := strings.Join(s.texts(), "\n")
		if !strings.Contains(says, voice.Say("Every figure here is an estimate.")) || len(w.Voice.Untranslated()) > 0 {
			t.Errorf("%s: %q", l, w.Voice.Untranslated())
		}
		var charts []*drawing
		for _, r := range s.rows {
			for _, c := range r.cells {
				if c.chart != nil {
					charts = append(charts, c.chart)
				}
			}
		}
		if len(charts) != 2 {
			t.Fatalf("%s: %d charts", l, len(charts))
		}
		for i, curve := range kettle.Curves {
			line := charts[0].lines[i]
			x, y := s.numbers(line.x, line.first, line.last), s.numbers(line.y, line.first, line.last)
			want := curveOf(curve)
			if len(x) < 15 || len(x) != len(y) || x[0] != want.X[0] || y[0] != want.Y[0] || x[len(x)-1] != want.X[len(want.X)-1] || y[len(y)-1] != want.Y[len(want.Y)-1] {
				t.Errorf("%s: the curve %s goes from %v,%v to %v,%v", l, curve.ID, x[0], y[0], x[len(x)-1], y[len(y)-1])
			}
			for j := range x {
				if at := slices.Index(want.X, x[j]); at < 0 || want.Y[at] != y[j] {
					t.Errorf("%s: the curve %s has %v at %v", l, curve.ID, y[j], x[j])
				}
			}
			if head := s.textAt(line.y, line.head); !strings.HasPrefix(head, curve.Label) {
				t.Errorf("%s: the curve %s is called %q", l, curve.ID, head)
			}
		}
		for i, mark := range kettle.Marks {
			line := charts[0].lines[len(kettle.Curves)+i]
			if x := s.numbers(line.x, line.first, line.last); !slices.Equal(x, []float64{fourDigits(mark.At), fourDigits(mark.At)}) || s.textAt(line.y, line.head) != mark.Label {
				t.Errorf("%s: the mark %s stands at %v, called %q", l, mark.ID, x, s.textAt(line.y, line.head))
			}
		}
		bars := charts[1].lines[0]
		if got, want := s.numbers(bars.y, bars.first, bars.last), []float64{w.Totals.FreezerDay.High, w.Totals.FreezerDay.Value, fourDigits(w.Totals.Prepared.Value)}; !slices.Equal(got, want) {
			t.Errorf("%s: bars of %v; want %v", l, got, want)
		}
	}
}

// On a grey copier no two lines look the same.
func TestLinesDifferWithoutColour(t *testing.T) {
	seen := map[lineLook]bool{}
	for _, look := range slices.Concat(curveLooks[:], markLooks[:]) {
		look.ink, look.width = color.NRGBA{}, 0
		if seen[look] {
			t.Errorf("two lines have %+v", look)
		}
		seen[look] = true
	}
}

// What a class does not say has no chart, and the sheet says why.
func TestNoChartWithoutNumbers(t *testing.T) {
	w := class.Work(class.New(reference.Edition), reference.Shipped())
	s := describe(w, mustSettle(t, Options{Sheets: []string{CurvesSheet}})).sheets[0]
	says := strings.Join(s.texts(), "\n")
	if !strings.Contains(says, "No curve of a kettle") || !strings.Contains(says, "No chart of the freezer") {
		t.Error(says)
	}
	curvesBook(t, w)
}

// LibreOffice opens the sheet and draws both charts inside the page: the words of
// their titles, axes and legends stand where the charts are.
func TestLibreOfficeDrawsTheCharts(t *testing.T) {
	slow(t)
	need(t, "soffice", "pdftotext")
	files := map[string][]byte{}
	for _, l := range languages {
		files[string(l)] = curvesBook(t, workedIn(l, demoClass(t)))
	}
	for l, pdf := range office(t, "pdf", files) {
		w := workedIn(words.Language(l), demoClass(t))
		placed, sizes := pdfWords(t, pdf)
		if len(sizes) != 2 {
			t.Errorf("%s: %d pages", l, len(sizes))
		}
		var all []string
		for _, p := range placed {
			all = append(all, p.text)
			if p.left < 36 || p.right > sizes[p.page-1][0]-36 {
				t.Errorf("%s page %d: “%s” stands at %.0f–%.0f", l, p.page, p.text, p.left, p.right)
			}
		}
		text := strings.Join(all, " ")
		kettle := kettleChart(w.Batches[0])
		legend := []string{kettle.Title, axisText(kettle.X), w.Voice.Say("What the class packs, and what the freezer takes in a day")}
		for _, m := range kettle.Marks {
			legend = append(legend, m.Label)
		}
		for _, want := range legend {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not on paper", l, want)
			}
		}
		if n := strings.Count(text, kettle.Curves[1].Label); n < 1 {
			t.Errorf("%s: no legend with %q", l, kettle.Curves[1].Label)
		}
	}
}

// A PDF draws the same charts: titles, axes, legends and bars, inside the page.
func TestPDFDrawsTheCharts(t *testing.T) {
	need(t, "pdftotext")
	for _, l := range languages {
		w := workedIn(l, demoClass(t))
		data, err := PDF(w, Options{Sheets: []string{CurvesSheet}})
		noErr(t, err)
		placed, sizes := pdfWords(t, data)
		var all []string
		for _, p := range placed {
			all = append(all, p.text)
			if p.left < 36 || p.right > sizes[p.page-1][0]-36 {
				t.Errorf("%s page %d: “%s” stands at %.0f–%.0f", l, p.page, p.text, p.left, p.right)
			}
		}
		text := strings.Join(all, " ")
		kettle := kettleChart(w.Batches[0])
		want := []string{w.Voice.Say("%s, estimated", kettle.Title), axisText(kettle.X), axisText(kettle.Y), w.Voice.Say("What the class packs, and what the freezer takes in a day"), "28 lb", "42 lb"}
		for _, c := range kettle.Curves {
			want = append(want, c.Label+", "+kettle.Y.Unit)
		}
		for _, one := range want {
			if !strings.Contains(text, one) {
				t.Errorf("%s: %q is not in the PDF", l, one)
			}
		}
	}
}

// Marks on an axis stand at round distances, some three to nine of them.
func TestRoundStep(t *testing.T) {
	for span, want := range map[float64]float64{1: 0.2, 5.06: 1, 8: 1, 9: 2, 0.5: 0.1, 160: 20, 45: 10, 100: 20, 1000: 200} {
		if got := roundStep(span); abs(got-want) > 1e-12 {
			t.Errorf("%g: steps of %g; want %g", span, got, want)
		}
	}
}
