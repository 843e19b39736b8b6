package exports

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

func TestLabelTable(t *testing.T) {
	for _, g := range Grids() {
		w, h := g.Paper.size()
		right := mmToPoints(g.LeftMm + float64(g.Columns-1)*g.PitchXMm + g.WidthMm + g.RightMm)
		bottom := mmToPoints(g.TopMm + float64(g.Rows-1)*g.PitchYMm + g.HeightMm + g.BottomMm)
		if abs(right-w) > 0.3 || abs(bottom-h) > 0.3 {
			t.Errorf("%s: labels and margins come to %.1f × %.1f points; the paper has %.1f × %.1f", g.ID, right, bottom, w, h)
		}
		if g.Basis != "read" || g.Source == "" {
			t.Errorf("%s: basis %q, source %q", g.ID, g.Basis, g.Source)
		}
		if _, ok := gridNamed(g.ID); !ok || g.Name() == "" {
			t.Errorf("%s is not found", g.ID)
		}
	}
	for _, p := range Papers {
		if g, ok := gridNamed(firstGrid(p)); !ok || g.Paper != p {
			t.Errorf("no grid for %s", p)
		}
	}
	for _, broken := range []string{"", "id,paper\nx,y\n", strings.Replace(string(labelData), "66.68", "wide", 1), strings.Replace(string(labelData), ",3,10,", ",3,x,", 1)} {
		if _, err := readGrids([]byte(broken)); err == nil {
			t.Errorf("a broken label table is read: %.40q", broken)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// needs.md 27: every pack has its label, and all of its text fits.
func TestLabelsFitEveryGrid(t *testing.T) {
	var ids []string
	for _, x := range reference.Shipped().Treatments {
		ids = append(ids, x.ID)
	}
	m := newMaker(class.Work(classOf(t, ids...), reference.Shipped()), Options{})
	for _, g := range Grids() {
		for _, l := range m.labelTexts(g) {
			if !labelFits(l.food, l.rest, l.role, g) {
				t.Errorf("%s: %q does not fit", g.ID, l.food+"\n"+l.rest)
			}
		}
	}
	demo := newMaker(demoWorked(t), Options{})
	g, _ := gridNamed("l10a")
	if got, want := len(demo.labelTexts(g)), int(demo.Totals.Packs.High); got != want {
		t.Errorf("%d labels for %d packs", got, want)
	}
	if l := demo.labelTexts(g)[0]; l.food != "Snap beans, green or wax, whole or cut 2 to 4 in" || !strings.Contains(l.rest, "Frozen 2027-06-12 · 1 pint\nBest by ") || !strings.HasSuffix(l.rest, "Cook before eating.") {
		t.Errorf("label %q %q", l.food, l.rest)
	}
	many := demoClass(t)
	many.Batches[0].Stations, many.Batches[0].Pack.Count = 100, 2000
	n := len(newMaker(class.Work(many, reference.Shipped()), Options{}).labelTexts(g))
	if n != mostLabelPages*g.Columns*g.Rows {
		t.Errorf("%d labels of 200,000 packs", n)
	}
	crowded := newMaker(class.Work(many, reference.Shipped()), mustSettle(t, Options{LabelGrid: g.ID}))
	printed := map[string]int{}
	for _, l := range crowded.labelTexts(g) {
		printed[l.food]++
	}
	for i, b := range crowded.Worked.Batches {
		want := crowded.labelsWanted(g)[i]
		if i == 0 {
			want = n - (len(demo.labelTexts(g)) - demo.labelsWanted(g)[0]) // what the others leave
		}
		got := 0
		for food, n := range printed {
			if strings.HasPrefix(food, b.Label.Food) {
				got += n
			}
		}
		if got != want {
			t.Errorf("%s has %d labels; want %d", b.Label.Food, got, want)
		}
	}
	// what is left out is said on the cover, beside the labels, and in the list
	says := fmt.Sprintf("; %s are left out", measure.Plain(float64(200000-printed[crowded.labelTexts(g)[0].food])))
	data, err := Workbook(crowded.Worked, Options{LabelGrid: g.ID})
	noErr(t, err)
	f := open(t, data)
	for _, name := range []string{"Cover", "Labels"} {
		if found, err := f.SearchSheet(name, ".*"+regexp.QuoteMeta(says)+".*", true); err != nil || len(found) != 1 {
			t.Errorf("%s does not say “%s”: %v, %v", name, says, found, err)
		}
	}
	if !strings.Contains(Plain(crowded.Worked), "are left out") || strings.Contains(Plain(demo.Worked), "left out") {
		t.Error("the list does not say what is left out, or says it without need")
	}
	if got := shareOut([]int{5, 0, 100, 7}, 20); !slices.Equal(got, []int{5, 0, 8, 7}) {
		t.Errorf("20 places are shared as %v", got)
	}
}

// needs.md 27: on every grid each label's whole text stands inside its label.
func TestLabelsPrintInsideTheirLabels(t *testing.T) {
	slow(t)
	need(t, "soffice", "pdftotext")
	files := map[string][]byte{}
	c := demoClass(t)
	c.Batches[0].Pack.Count = 9 // more than one sheet of most grids
	worked := map[string]class.Worked{}
	for _, l := range languages {
		worked[string(l)] = workedIn(l, c)
		for _, g := range Grids() {
			data, err := Workbook(worked[string(l)], Options{Sheets: []string{LabelsSheet}, LabelGrid: g.ID})
			noErr(t, err)
			files[g.ID+" "+string(l)] = data
		}
	}
	for id, pdf := range office(t, "pdf", files) {
		grid, language, _ := strings.Cut(id, " ")
		w := worked[language]
		g, _ := gridNamed(grid)
		texts := newMaker(w, Options{}).labelTexts(g)
		words, sizes := pdfWords(t, pdf)
		each := g.Columns * g.Rows
		if want := (len(texts) + each - 1) / each; len(sizes) != want {
			t.Errorf("%s: %d pages for %d labels", id, len(sizes), len(texts))
		}
		got := map[int]string{}
		for _, p := range words {
			col := int((p.left/mmToPoints(1) - g.LeftMm) / g.PitchXMm)
			line := int((p.top/mmToPoints(1) - g.TopMm) / g.PitchYMm)
			left, top := mmToPoints(g.LeftMm+float64(col)*g.PitchXMm), mmToPoints(g.TopMm+float64(line)*g.PitchYMm)
			const clear = 2.8 // 1 mm from the edge of the label
			if p.left < left+clear || p.right > left+mmToPoints(g.WidthMm)-clear || p.top < top || p.foot > top+mmToPoints(g.HeightMm) {
				t.Errorf("%s page %d: “%s” at %.1f–%.1f, %.1f–%.1f is not inside label %d,%d", id, p.page, p.text, p.left, p.right, p.top, p.foot, line+1, col+1)
			}
			got[(p.page-1)*each+line*g.Columns+col] += p.text
		}
		for i, l := range texts {
			if want := strings.Join(strings.Fields(l.food+" "+l.rest), ""); got[i] != want {
				t.Errorf("%s label %d: %q; want %q", id, i+1, got[i], want)
			}
		}
	}
}
