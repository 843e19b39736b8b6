package exports

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// A nudge is at most 5 mm, and less where the paper ends; what is more is
// refused in a sentence.
func TestNudgeLimits(t *testing.T) {
	for _, g := range Grids() {
		left, right, up, down := g.nudges()
		for _, c := range []struct {
			x, y float64
			ok   bool
		}{
			{0, 0, true}, {-left, -up, true}, {right, down, true},
			{-left - 0.01, 0, false}, {right + 0.01, 0, false}, {0, -up - 0.01, false}, {0, down + 0.01, false},
			{5.01, 0, false}, {0, -5.01, false}, {math.NaN(), 0, false}, {0, math.Inf(1), false},
		} {
			_, err := Options{LabelGrid: g.ID, NudgeXMm: c.x, NudgeYMm: c.y}.settle()
			var refused *NudgeError
			if c.ok != (err == nil) || !c.ok && !errors.As(err, &refused) {
				t.Errorf("%s by %g, %g mm: %v", g.ID, c.x, c.y, err)
			}
			if !c.ok && (!strings.Contains(err.Error(), "mm up and") || refused.Say(words.In(words.Spanish)) == err.Error()) {
				t.Errorf("%s by %g, %g mm: %v", g.ID, c.x, c.y, err)
			}
		}
		if min(left, right, up, down) <= 1 || max(left, right, up, down) > mostNudgeMm {
			t.Errorf("%s can be shifted by %g, %g, %g, %g mm", g.ID, left, right, up, down)
		}
	}
}

// Shifted as far as they go, all labels stay on their pages, and each word moves
// by what was asked for.
func TestNudgedLabelsMove(t *testing.T) {
	slow(t)
	need(t, "soffice", "pdftotext")
	c := demoClass(t)
	c.Batches[0].Pack.Count = 9 // more than one sheet of most grids
	w := class.Work(c, reference.Shipped())
	files := map[string][]byte{}
	moved := map[string][2]float64{}
	for _, g := range Grids() {
		left, right, up, down := g.nudges()
		for i, by := range [][2]float64{{0, 0}, {-left, -up}, {right, down}} {
			data, err := Workbook(w, Options{Sheets: []string{LabelsSheet}, LabelGrid: g.ID, NudgeXMm: by[0], NudgeYMm: by[1]})
			noErr(t, err)
			name := fmt.Sprint(g.ID, i)
			files[name], moved[name] = data, by
		}
	}
	pdfs := office(t, "pdf", files)
	for _, g := range Grids() {
		still, pages := pdfWords(t, pdfs[g.ID+"0"])
		for _, i := range []string{"1", "2"} {
			by := moved[g.ID+i]
			now, sizes := pdfWords(t, pdfs[g.ID+i])
			if len(now) != len(still) || len(sizes) != len(pages) {
				t.Errorf("%s by %v mm: %d words on %d pages; without a nudge %d on %d", g.ID, by, len(now), len(sizes), len(still), len(pages))
				continue
			}
			for j, p := range now {
				const near = 0.6 // points: a fifth of a millimetre
				dx, dy := p.left-still[j].left-mmToPoints(by[0]), p.top-still[j].top-mmToPoints(by[1])
				if p.text != still[j].text || abs(dx) > near || abs(dy) > near {
					t.Errorf("%s by %v mm: “%s” is %.2f, %.2f points away from where it should be", g.ID, by, p.text, dx, dy)
					break
				}
			}
		}
	}
}
