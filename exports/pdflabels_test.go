package exports

import (
	"fmt"
	"math"
	"testing"
)

// needs.md 27: on every grid each label stands where its paper has it, to 0.3 mm.
func TestPDFLabelsStandOnTheirGrid(t *testing.T) {
	need(t, "pdftotext")
	c := demoClass(t)
	c.Batches[0].Pack.Count = 9 // more than one sheet of most grids
	for _, l := range languages {
		for _, g := range Grids() {
			w := workedIn(l, c)
			pdf, err := PDF(w, Options{Sheets: []string{LabelsSheet}, LabelGrid: g.ID})
			noErr(t, err)
			placed, sizes := pdfWords(t, pdf)
			if width, height := g.Paper.size(); math.Abs(sizes[0][0]-width) > 0.01 || math.Abs(sizes[0][1]-height) > 0.01 {
				t.Errorf("%s: paper of %v points", g.ID, sizes[0])
			}
			texts := newMaker(w, Options{}).labelTexts(g)
			onGrid(t, fmt.Sprint(g.ID, " ", l), g, texts, placed)
		}
	}
}

// onGrid compares left edge and middle of the text of each label with those of
// the label.
func onGrid(t *testing.T, name string, g Grid, texts []labelText, placed []pdfWord) {
	t.Helper()
	type block struct {
		left, top, right, foot float64
		text                   string
	}
	found := map[int]*block{}
	each := g.Columns * g.Rows
	for _, p := range placed {
		col, line := int((p.left/mmToPoints(1)-g.LeftMm)/g.PitchXMm), int(((p.top+p.foot)/2/mmToPoints(1)-g.TopMm)/g.PitchYMm)
		i := (p.page-1)*each + line*g.Columns + col
		b := found[i]
		if b == nil {
			b = &block{left: p.left, top: p.top, right: p.right, foot: p.foot}
			found[i] = b
		}
		b.left, b.top, b.right, b.foot = min(b.left, p.left), min(b.top, p.top), max(b.right, p.right), max(b.foot, p.foot)
		b.text += p.text
	}
	if len(found) != len(texts) {
		t.Errorf("%s: %d labels; want %d", name, len(found), len(texts))
	}
	for i, want := range texts {
		b := found[i]
		if b == nil || b.text != bare(want.food+want.rest) {
			t.Errorf("%s label %d: %+v; want %q", name, i+1, b, want)
			continue
		}
		col, line := i%each%g.Columns, i%each/g.Columns
		left := mmToPoints(g.LeftMm+float64(col)*g.PitchXMm) + indentWidth
		middle := mmToPoints(g.TopMm + float64(line)*g.PitchYMm + g.HeightMm/2)
		right := mmToPoints(g.LeftMm + float64(col)*g.PitchXMm + g.WidthMm)
		// the box of a word reaches from ascent to descent of the face
		size := looks[want.role].size
		drawn := (b.top+b.foot)/2 + size*(0.575-baseline+(1.025-0.275)/2)
		if tolerance := mmToPoints(0.3); math.Abs(b.left-left) > tolerance || math.Abs(drawn-middle) > tolerance || b.right > right-mmToPoints(1)+0.01 {
			t.Errorf("%s label %d stands at %.2f, its middle at %.2f; want %.2f, %.2f", name, i+1, b.left, drawn, left, middle)
		}
	}
}
