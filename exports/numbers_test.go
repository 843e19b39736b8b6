package exports

import (
	"bytes"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

func TestNumbersGolden(t *testing.T) {
	data, err := Numbers(editedWorked(t))
	noErr(t, err)
	golden(t, "edited-numbers.json", data)
}

func TestPlainGolden(t *testing.T) {
	golden(t, "demo-plain.txt", []byte(Plain(demoWorked(t))))
}

// The document is what the class says, number by number, with null where words
// stand.
func TestNumbersAreTheWorkedNumbers(t *testing.T) {
	w := class.Work(wideClass(t), reference.Shipped())
	data, err := Numbers(w)
	noErr(t, err)
	var doc numbersDoc
	mustJSON(t, data, &doc)
	if doc.Schema != NumbersSchema || doc.Edition != reference.Edition || doc.Class.Title != w.Class.Title || len(doc.Batches) != len(w.Batches) || len(doc.Shopping) != len(w.Shopping) {
		t.Fatalf("schema %d, edition %q, %d batches, %d lines of shopping", doc.Schema, doc.Edition, len(doc.Batches), len(doc.Shopping))
	}
	words := 0
	compare := func(where string, list []numbersFigure, figures []measure.Figure) {
		if len(list) != len(figures) {
			t.Fatalf("%s: %d figures of %d", where, len(list), len(figures))
		}
		for i, f := range figures {
			n := list[i]
			if n.ID != f.ID || n.Text != f.Text || n.Working != f.Working || n.Basis != string(f.Basis) || n.Standing != f.Standing || n.Source != f.Source || n.Unit != f.Unit {
				t.Errorf("%s: %+v is not %+v", where, n, f)
			}
			if f.InWords() {
				words++
				if n.Value != nil || n.High != nil || n.Words == "" {
					t.Errorf("%s: %s has words and the number %v", where, f.ID, n.Value)
				}
			} else if n.Value == nil || *n.Value != f.Value || *n.High != f.High {
				t.Errorf("%s: %s is %v; want %v to %v", where, f.ID, n.Value, f.Value, f.High)
			}
		}
	}
	compare("totals", doc.Totals, w.Totals.Figures())
	for i, b := range w.Batches {
		compare(b.Batch.Name, doc.Batches[i].Figures, b.Figures())
		compare(b.Batch.Name+", estimates", doc.Batches[i].Estimates, b.Estimates.Figures())
		compareCharts(t, b.Batch.Name, doc.Batches[i].Charts, b.Estimates.Charts())
		if len(doc.Batches[i].Findings) != len(b.Findings) || doc.Batches[i].Label == nil || doc.Batches[i].Label.Food != b.Label.Food {
			t.Errorf("%s: findings %v, label %v", b.Batch.Name, doc.Batches[i].Findings, doc.Batches[i].Label)
		}
	}
	if words < 5 {
		t.Errorf("only %d figures in words: this proves little", words)
	}
	for _, s := range doc.Sources {
		if _, ok := reference.Shipped().Source(s.ID); !ok {
			t.Errorf("source %s is not in the table", s.ID)
		}
	}
}

// compareCharts compares the numbers of charts to four digits that count.
func compareCharts(t *testing.T, where string, list []numbersChart, charts []measure.Chart) {
	t.Helper()
	if len(list) != len(charts) || len(list) == 0 {
		t.Fatalf("%s: %d charts of %d", where, len(list), len(charts))
	}
	near := func(a, b float64) bool { return math.Abs(a-b) <= 5.001e-4*math.Abs(b) }
	for i, c := range charts {
		n := list[i]
		if n.ID != c.ID || n.Title != c.Title || n.X != (numbersAxis{c.X.Label, c.X.Unit}) || n.Y != (numbersAxis{c.Y.Label, c.Y.Unit}) ||
			n.Basis != string(measure.Estimate) || n.Note != c.Note || len(n.Curves) != len(c.Curves) || len(n.Marks) != len(c.Marks) {
			t.Errorf("%s: the chart %s is not %s", where, n.ID, c.ID)
			continue
		}
		for j, curve := range c.Curves {
			got := n.Curves[j]
			ok := got.ID == curve.ID && got.Label == curve.Label && slices.EqualFunc(got.X, curve.X, near) && slices.EqualFunc(got.Y, curve.Y, near)
			if !ok || len(got.X) < 2 || len(got.X) != len(got.Y) {
				t.Errorf("%s, %s: the curve %s differs", where, c.ID, curve.ID)
			}
		}
		for j, m := range c.Marks {
			if got := n.Marks[j]; got.ID != m.ID || got.Label != m.Label || got.OnX != m.OnX || !near(got.At, m.At) {
				t.Errorf("%s, %s: mark %+v; want %+v", where, c.ID, got, m)
			}
		}
	}
}

// The demo class has every estimate that there is, its charts and what it typed.
func TestEstimatesOfTheDemoAreInTheNumbers(t *testing.T) {
	data, err := Numbers(demoWorked(t))
	noErr(t, err)
	var doc numbersDoc
	mustJSON(t, data, &doc)
	ids, charts := map[string]bool{}, map[string]bool{}
	for _, b := range doc.Batches {
		for _, f := range b.Estimates {
			ids[f.ID] = true
		}
		for _, c := range b.Charts {
			charts[c.ID] = true
		}
	}
	if len(ids) != 17 || len(charts) != 3 {
		t.Errorf("%d estimates and %d charts: %v, %v", len(ids), len(charts), ids, charts)
	}
	if b := doc.Batches[0]; b.Burner != "Plug-in burner" || b.Start != "70 °F" || doc.Batches[1].Start != "" {
		t.Errorf("burner %q, start %q and %q", b.Burner, b.Start, doc.Batches[1].Start)
	}
	if longest := slices.MaxFunc(bytes.Split(data, []byte("\n")), func(a, b []byte) int { return len(a) - len(b) }); !bytes.HasPrefix(bytes.TrimSpace(longest), []byte(`"y": [`)) && !bytes.HasPrefix(bytes.TrimSpace(longest), []byte(`"x": [`)) {
		t.Errorf("the numbers of a curve are not in one line; the longest is %.80s", longest)
	}
}

// The names that are said to be stable are all there.
func TestFigureNamesAreDocumented(t *testing.T) {
	text, err := os.ReadFile("numbers.go")
	noErr(t, err)
	doc, _, _ := strings.Cut(string(text), "func Numbers(")
	w := demoWorked(t)
	figures := append(w.Totals.Figures(), w.Batches[0].Figures()...)
	for _, b := range w.Batches {
		figures = append(figures, b.Estimates.Figures()...)
	}
	for _, f := range figures {
		if !regexp.MustCompile(`[ \t]` + f.ID + `[,.\n]`).MatchString(doc) {
			t.Errorf("%s is not among the documented names", f.ID)
		}
	}
}

func TestNoNumberIsNoNumber(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if n := figureOf(measure.Figure{ID: "x", Value: bad, High: bad}); n.Value != nil || n.High != nil {
			t.Errorf("%v goes out as %v", bad, *n.Value)
		}
	}
}

// A curve goes on without a point that is no number, and a mark without a place
// is left out.
func TestChartsHoldNumbersOnly(t *testing.T) {
	list := chartsOf([]measure.Chart{{
		ID:     "x",
		Curves: []measure.Curve{{X: []float64{0, 1, 2, math.NaN(), 4.00004}, Y: []float64{123456, math.NaN(), math.Inf(1), 3, -0.00123449}}, {}},
		Marks:  []measure.Mark{{ID: "never", At: math.Inf(1)}, {ID: "once", At: 2.05779}, {ID: "none", At: math.NaN()}},
	}})
	c := list[0].Curves[0]
	if !slices.Equal(c.X, []float64{0, 4}) || !slices.Equal(c.Y, []float64{123500, -0.001234}) || list[0].Curves[1].X == nil || len(list[0].Marks) != 1 || list[0].Marks[0].At != 2.058 {
		t.Errorf("%+v", list[0])
	}
}

// Only lists of numbers are put into one line, never what somebody typed.
func TestNumbersInLines(t *testing.T) {
	const doc = "{\n  \"x\": [\n    1,\n    -2.5e-07\n  ],\n  \"y\": [],\n  \"t\": \"[\\n 1, 2]\",\n  \"z\": [\n    \"1\"\n  ]\n}\n"
	const want = "{\n  \"x\": [1, -2.5e-07],\n  \"y\": [],\n  \"t\": \"[\\n 1, 2]\",\n  \"z\": [\n    \"1\"\n  ]\n}\n"
	if got := string(inLines([]byte(doc))); got != want {
		t.Errorf("%s", got)
	}
}

// An unknown treatment has no figures and says why.
func TestNumbersOfAnUnknownTreatment(t *testing.T) {
	c := demoClass(t)
	c.Batches[0].Treatment = "no-such-thing"
	data, err := Numbers(class.Work(c, reference.Shipped()))
	noErr(t, err)
	var doc numbersDoc
	mustJSON(t, data, &doc)
	b := doc.Batches[0]
	if b.Known || len(b.Figures) != 0 || len(b.Estimates) != 0 || len(b.Charts) != 0 || b.Label != nil || b.Treatment.ID != "no-such-thing" || b.Findings[0].Severity != "stop" || !strings.Contains(b.Findings[0].Says, "no-such-thing") {
		t.Errorf("%+v", b)
	}
}
