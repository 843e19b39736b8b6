package exports

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// classesOf are classes in both systems of units.
func classesOf(list map[string]class.Class) map[string]class.Worked {
	worked := map[string]class.Worked{}
	for name, c := range list {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			c = c.Clone()
			c.Units = units
			worked[name+" "+string(units)] = class.Work(c, reference.Shipped())
		}
	}
	return worked
}

// longClass has every estimate and names as long as somebody may type.
func longClass(t *testing.T) class.Class {
	t.Helper()
	c := wideClass(t)
	long := func(name string) string { return name + strings.Repeat(" with a long name", 7) }
	c.Title = long(c.Title)
	for i := range c.Kit.Kettles {
		c.Kit.Kettles[i].Name = long(c.Kit.Kettles[i].Name)
	}
	for i := range c.Kit.Burners {
		c.Kit.Burners[i].Name = long(c.Kit.Burners[i].Name)
	}
	for i := range c.Batches {
		b := &c.Batches[i]
		b.Name, b.Kettle, b.Burner = long(b.Name), long(b.Kettle), long(b.Burner)
	}
	return c
}

// blocks are the rows of each batch on the batch sheet.
func blocks(s *sheet, w class.Worked) [][]row {
	var starts []int
	for i, b := range w.Batches {
		starts = append(starts, slices.IndexFunc(s.rows, func(r row) bool {
			return len(r.cells) > 0 && r.cells[0].role == heading && r.cells[0].text() == (&maker{Worked: w}).batchName(i, b)
		}))
	}
	var list [][]row
	for i, from := range starts {
		to := len(s.rows)
		for j := from + 1; j < len(s.rows); j++ {
			if len(s.rows[j].cells) > 0 && s.rows[j].cells[0].role == heading {
				to = j
				break
			}
		}
		list = append(list, s.rows[from:to])
		if i > 0 && from <= starts[i-1] {
			return nil
		}
	}
	return list
}

func batchSheet(t *testing.T, w class.Worked, p Paper) *sheet {
	t.Helper()
	o, err := Options{Sheets: []string{BatchSheet}, Paper: p}.settle()
	noErr(t, err)
	return describe(w, o).sheets[0]
}

// An estimate never stands among the rules, and wherever one stands a line above
// it says what it is.
func TestEstimatesStandApart(t *testing.T) {
	told, worked := 0, 0
	for name, w := range classesOf(map[string]class.Class{"demo": demoClass(t), "wide": wideClass(t), "long": longClass(t)}) {
		for _, p := range Papers {
			s := batchSheet(t, w, p)
			for i, rows := range blocks(s, w) {
				list := w.Batches[i].Estimates.Figures()
				under := false // the line that says what follows is estimated
				for _, r := range rows {
					text := ""
					for _, c := range r.cells {
						text += c.text() + "\n"
					}
					starts := strings.HasPrefix(text, estimatesHead)
					under = under || starts
					for _, f := range list {
						at := strings.Contains(text, f.Label+": "+f.Text)
						if (strings.Contains(text, f.Label+"\n") || at) && !under {
							t.Errorf("%s, %s, %s: among the rules stands %q", name, p, f.ID, text)
						}
						if at && starts {
							told++
						}
					}
					if under && !starts && (len(r.cells) == 0 || r.cells[0].role != small) {
						t.Errorf("%s, %s: under the estimates stands %q", name, p, text)
					}
				}
			}
			worked += allWorkedOut(t, fmt.Sprint(name, ", ", p), s, w)
		}
	}
	if told < 200 || worked < 500 {
		t.Errorf("%d estimates told with their batch, %d worked out: this proves little", told, worked)
	}
}

// allWorkedOut looks for every estimate of every batch with its working, note
// and source, under a line that calls it one.
func allWorkedOut(t *testing.T, where string, s *sheet, w class.Worked) (found int) {
	t.Helper()
	numbering := newSources(w, nil)
	for i, b := range w.Batches {
		here, under := false, false
		missing := map[string]string{}
		for _, f := range b.Estimates.Figures() {
			missing[f.ID] = f.Label + ": " + f.Text
		}
		for _, r := range s.rows {
			if len(r.cells) == 0 {
				continue
			}
			first := r.cells[0]
			switch text := first.text(); {
			case first.role == heading && strings.HasPrefix(text, estimatesHead), first.role == small && strings.HasPrefix(text, estimatesHead):
				under = true
			case first.role == heading:
				here, under = text == (&maker{Worked: w}).batchName(i, b), false
			case first.role == subheading:
				here = text == (&maker{Worked: w}).batchName(i, b)
			case here && under && first.role == small:
				for _, f := range b.Estimates.Figures() {
					if !strings.HasPrefix(text, missing[f.ID]) || missing[f.ID] == "" {
						continue
					}
					if !strings.Contains(text, upperFirst(f.Working)) || !strings.Contains(text, f.Also) || !strings.Contains(text, f.Note) || !strings.Contains(text, numbering.ref(f.Source)) {
						t.Errorf("%s: %s is not whole: %q", where, f.ID, text)
					}
					delete(missing, f.ID)
					found++
				}
			}
		}
		for id := range missing {
			t.Errorf("%s: %s of %s is not worked out under “%s”", where, id, short(b.Batch.Name), estimatesHead)
		}
	}
	return found
}

// A batch stands on one page, which it does not start low on another; where its
// names are too long for a page, heads and words are tested on paper.
func TestABatchStandsOnOnePage(t *testing.T) {
	cut := 0
	for name, w := range classesOf(map[string]class.Class{"demo": demoClass(t), "wide": wideClass(t), "long": longClass(t)}) {
		for _, p := range Papers {
			s := batchSheet(t, w, p)
			s.settle()
			s.paginate()
			list := blocks(s, w)
			if len(list) != len(w.Batches) {
				t.Fatalf("%s: %d of %d batches in order", name, len(list), len(w.Batches))
			}
			for i, rows := range list {
				if !slices.ContainsFunc(rows[1:], func(r row) bool { return r.split }) {
					continue
				}
				if cut++; !strings.HasPrefix(name, "long") || rows[0].uncut {
					t.Errorf("%s, %s: batch %d is cut by the end of a page", name, p, i+1)
				}
			}
		}
	}
	if cut == 0 {
		t.Error("no batch is too long for a page: the other case is not tested")
	}
}

// The totals of the heat model stand after those of the rule, look different and
// say what they are.
func TestTotalsThatAreEstimates(t *testing.T) {
	w := demoWorked(t)
	s := describe(w, mustSettle(t, Options{})).sheets[0]
	place := map[string]int{}
	for i, r := range s.rows {
		if len(r.cells) == 4 && r.cells[0].role == labelSmall {
			if _, twice := place[r.cells[0].text()]; !twice {
				place[r.cells[0].text()] = i
			}
		}
	}
	looksLikeOne := func(f measure.Figure) bool {
		r := s.rows[place[f.Label]]
		return r.cells[1].role == guessValue && r.cells[3].role == guess && strings.HasPrefix(r.cells[3].text(), "estimate [")
	}
	ice, byHeat := w.Totals.Ice, w.Totals.IceBalance
	if place[ice.Label] == 0 || place[byHeat.Label] <= place[ice.Label] || looksLikeOne(ice) || !looksLikeOne(byHeat) || !looksLikeOne(w.Totals.FreezerWarmth) {
		t.Errorf("ice by rule in row %d, by heat in row %d: %+v", place[ice.Label], place[byHeat.Label], s.rows[place[byHeat.Label]])
	}
	list := Plain(w)
	for _, want := range []string{
		"\n" + byHeat.Label + ": " + byHeat.Text + " (" + byHeat.Also + ")\n    " + byHeat.Working + ". Rests on: estimate [",
		"\n\n" + estimatesHead + ". " + estimatesSay + "\n" + w.Batches[0].Estimates.Power.Label + ": ",
	} {
		if !strings.Contains(list, want) {
			t.Errorf("the list does not say %q", want)
		}
	}
}

// Every source that an estimate rests on has a number and is listed.
func TestSourcesOfEstimates(t *testing.T) {
	w := demoWorked(t)
	s := newSources(w, nil)
	ids := map[string]bool{}
	for _, b := range w.Batches {
		for _, f := range b.Estimates.Figures() {
			ids[f.Source] = true
		}
	}
	sheets := describe(w, mustSettle(t, Options{Sheets: []string{CoverSheet, BatchSheet}})).sheets
	list := Plain(w)
	for _, id := range []string{reference.HeatModelSource, reference.VitaminCSource, w.Batches[1].Estimates.Enzyme.Source} {
		x, ok := w.Table.Source(id)
		if !ok || !ids[id] || !slices.Contains(s.order, id) {
			t.Fatalf("%s: in the table %v, used %v, numbered %v", id, ok, ids[id], s.order)
		}
		line := s.ref(id) + " " + x.Title + ". "
		if !strings.Contains(list, line) {
			t.Errorf("the list has no source %q", line)
		}
		for _, on := range sheets {
			if !slices.ContainsFunc(on.rows, func(r row) bool { return len(r.cells) > 0 && strings.HasPrefix(r.cells[0].text(), line) }) {
				t.Errorf("the sheet %s has no source %q", on.id, line)
			}
		}
	}
}
