package exports

import (
	"math"
	"os"
	"regexp"
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

// The names that are said to be stable are all there.
func TestFigureNamesAreDocumented(t *testing.T) {
	text, err := os.ReadFile("numbers.go")
	noErr(t, err)
	doc, _, _ := strings.Cut(string(text), "func Numbers(")
	w := demoWorked(t)
	for _, f := range append(w.Totals.Figures(), w.Batches[0].Figures()...) {
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

// An unknown treatment has no figures and says why.
func TestNumbersOfAnUnknownTreatment(t *testing.T) {
	c := demoClass(t)
	c.Batches[0].Treatment = "no-such-thing"
	data, err := Numbers(class.Work(c, reference.Shipped()))
	noErr(t, err)
	var doc numbersDoc
	mustJSON(t, data, &doc)
	b := doc.Batches[0]
	if b.Known || len(b.Figures) != 0 || b.Label != nil || b.Treatment.ID != "no-such-thing" || b.Findings[0].Severity != "stop" || !strings.Contains(b.Findings[0].Says, "no-such-thing") {
		t.Errorf("%+v", b)
	}
}
