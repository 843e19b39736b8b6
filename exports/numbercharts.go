package exports

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"example.org/kettleside/app/measure"
)

type numbersChart struct {
	ID     string         `json:"id"`
	Title  string         `json:"title"`
	X      numbersAxis    `json:"x"`
	Y      numbersAxis    `json:"y"`
	Curves []numbersCurve `json:"curves"`
	Marks  []numbersMark  `json:"marks"`
	Basis  string         `json:"basis"`
	Note   string         `json:"note"`
}

type numbersAxis struct {
	Label string `json:"label"`
	Unit  string `json:"unit"`
}

type numbersCurve struct {
	ID    string    `json:"id"`
	Label string    `json:"label"`
	X     []float64 `json:"x"`
	Y     []float64 `json:"y"`
}

type numbersMark struct {
	ID    string  `json:"id"`
	Label string  `json:"label"`
	OnX   bool    `json:"onX"`
	At    float64 `json:"at"`
}

// chartsOf keeps of each chart what is a number: JSON has no word for what is
// none, and a curve goes on without such a point.
func chartsOf(list []measure.Chart) []numbersChart {
	out := []numbersChart{}
	for _, c := range list {
		n := numbersChart{
			ID: c.ID, Title: c.Title, X: numbersAxis{c.X.Label, c.X.Unit}, Y: numbersAxis{c.Y.Label, c.Y.Unit},
			Curves: []numbersCurve{}, Marks: []numbersMark{}, Basis: string(c.Basis), Note: c.Note,
		}
		for _, curve := range c.Curves {
			n.Curves = append(n.Curves, curveOf(curve))
		}
		for _, m := range c.Marks {
			if isNumber(m.At) {
				n.Marks = append(n.Marks, numbersMark{m.ID, m.Label, m.OnX, fourDigits(m.At)})
			}
		}
		out = append(out, n)
	}
	return out
}

func curveOf(c measure.Curve) numbersCurve {
	n := numbersCurve{ID: c.ID, Label: c.Label, X: []float64{}, Y: []float64{}}
	for i := range min(len(c.X), len(c.Y)) {
		if isNumber(c.X[i]) && isNumber(c.Y[i]) {
			n.X, n.Y = append(n.X, fourDigits(c.X[i])), append(n.Y, fourDigits(c.Y[i]))
		}
	}
	return n
}

func isNumber(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// fourDigits rounds to the digits that a chart is worth.
func fourDigits(x float64) float64 {
	n, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64)
	if err != nil { // a number that was just printed reads back, but for the last before infinity
		return x
	}
	return n
}

// numberList is a list of numbers as the indenter writes it, each on a line of
// its own. It starts with a line end, which no text in JSON has.
var numberList = regexp.MustCompile(`\[\n[-+.\deE,\s]+\]`)

// inLines puts each list of numbers into one line: people read the document.
func inLines(doc []byte) []byte {
	return numberList.ReplaceAllFunc(doc, func(list []byte) []byte {
		return []byte(strings.ReplaceAll(strings.Join(strings.Fields(string(list)), ""), ",", ", "))
	})
}
