package exports

import (
	"fmt"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Names of emoji and ampersands only: the sheets keep their tabs and names, and
// the right half of each header and footer is whole.
func TestTitlesOfOneSign(t *testing.T) {
	plain := open(t, must(Workbook(demoWorked(t), Options{Sheets: everySheet()})))
	for _, sign := range []string{"🥦", "&", "'", "["} {
		c := demoClass(t)
		c.Title = strings.Repeat(sign, 150)
		c.Batches[0].Name, c.Place.Name, c.People.Educator = c.Title, c.Title, c.Title
		data, err := Workbook(class.Work(c, reference.Shipped()), Options{Sheets: everySheet()})
		noErr(t, err)
		f := open(t, data)
		if got, want := fmt.Sprint(f.GetSheetList(), f.GetDefinedName()), fmt.Sprint(plain.GetSheetList(), plain.GetDefinedName()); len(got) == 0 || f.GetSheetList()[0] != "Cover" || len(f.GetDefinedName()) != len(plain.GetDefinedName()) {
			t.Errorf("%s: %s; want %s", sign, got, want)
		}
		for _, s := range f.GetSheetList()[:len(Sheets)-1] {
			h, err := f.GetHeaderFooter(s)
			noErr(t, err)
			if !strings.HasSuffix(h.OddHeader, `&R&"Arial,Regular"&10 `+s) || !strings.HasSuffix(h.OddFooter, "Page &P of &N") {
				t.Errorf("%s: header %s, footer %s", sign, h.OddHeader, h.OddFooter)
			}
		}
	}
}

// Cautions go with what a sheet lists, not only with the class's batches.
func TestCautionsOfWhatIsListed(t *testing.T) {
	says := func(s *sheet, id string) bool {
		for _, c := range content.Cautions(words.English, content.AllTopics()...) {
			for _, r := range s.rows {
				for _, x := range r.cells {
					if c.ID == id && strings.HasPrefix(x.text(), c.Title+". ") {
						return true
					}
				}
			}
		}
		return false
	}
	raw := classOf(t, "sweet-peppers-raw")
	all := describe(class.Work(raw, reference.Shipped()), mustSettle(t, Options{AllTreatments: true})).sheets
	few := describe(class.Work(raw, reference.Shipped()), mustSettle(t, Options{})).sheets
	empty := describe(class.Work(class.New(reference.Edition), reference.Shipped()), mustSettle(t, Options{})).sheets
	for _, c := range []struct {
		what string
		s    *sheet
		id   string
		want bool
	}{
		{"all, treatments", all[1], "scald", true}, {"all, treatments", all[1], "power", true}, {"all, own numbers", all[3], "scald", true},
		{"raw, treatments", few[1], "scald", false}, {"raw, own numbers", few[3], "scald", false},
		{"empty, own numbers", empty[3], "scald", true}, {"empty, own numbers", empty[3], "steam", true},
		{"empty, own numbers", empty[3], "power", true}, {"empty, own numbers", empty[3], "hot-pepper", true},
		{"empty, treatments", empty[1], "scald", false},
	} {
		if says(c.s, c.id) != c.want {
			t.Errorf("%s: the caution %s stands there: %v", c.what, c.id, !c.want)
		}
	}
}

// The heads of the treatments stand on one line, on both papers: no empty band.
func TestTreatmentHeadsOnOneLine(t *testing.T) {
	for _, p := range Papers {
		s := describe(demoWorked(t), mustSettle(t, Options{Paper: p})).sheets[1]
		s.settle()
		if h := s.rows[2].height; s.rows[2].cells[0].role != head || h > 10*lineHeight+cellEnds+3+0.75 {
			t.Errorf("%s: the heads take %v points", p, h)
		}
	}
}

// Every task of the class is printed.
func TestEveryTaskStandsOnTheCover(t *testing.T) {
	c := demoClass(t)
	c.People.Roles = nil
	for i := range 20 {
		c.People.Roles = append(c.People.Roles, class.Role{Name: fmt.Sprintf("Task %d", i+1), Does: "something"})
	}
	w := class.Work(c, reference.Shipped())
	if n := strings.Count(Plain(w), "Task "); n != 20 {
		t.Errorf("%d of 20 tasks in the list", n)
	}
	found := 0
	for _, r := range describe(w, mustSettle(t, Options{})).sheets[0].rows {
		if len(r.cells) > 0 && strings.HasPrefix(r.cells[0].text(), "Task ") {
			found++
		}
	}
	if found != 20 {
		t.Errorf("%d of 20 tasks on the cover", found)
	}
}

// Every caution and step can be filled, in both systems of units.
func TestAllTextsCanBeFilled(t *testing.T) {
	for _, units := range []measure.System{measure.US, measure.Metric} {
		texts := batch.RuleTexts(reference.Shipped(), units, nil)
		topics := []content.Topic{content.BoilWater, content.Steam, content.Cook, content.Raw, content.Glass, content.Power, content.IceBath, content.HotPepper, content.DryIce}
		for _, c := range content.Cautions(words.English, topics...) {
			filled(c.ID, c.Text, texts)
		}
		for _, method := range topics[:4] {
			for _, s := range content.Steps(words.English, method) {
				filled(s.ID, s.Text, texts)
			}
		}
	}
}

func TestMergedSteps(t *testing.T) {
	methods := []content.Topic{content.BoilWater, content.Steam, content.Cook, content.Raw}
	list := mergedSteps(words.English, methods)
	place := map[string]int{}
	for i, s := range list {
		if _, twice := place[s.ID]; twice {
			t.Errorf("step %s stands twice", s.ID)
		}
		place[s.ID] = i
	}
	for _, m := range methods {
		last := -1
		for _, s := range content.Steps(words.English, m) {
			if place[s.ID] <= last {
				t.Errorf("%s: step %s is out of order", m, s.ID)
			}
			last = place[s.ID]
		}
	}
	if got := mergedSteps(words.English, methods[:1]); len(got) != len(content.Steps(words.English, content.BoilWater)) {
		t.Errorf("one method alone has %d steps", len(got))
	}
}

// needs.md 1: minutes never without the event that starts the clock and the
// source; words where there are no minutes, never 0.
func TestEveryTreatmentStandsWhole(t *testing.T) {
	table := reference.Shipped()
	var ids []string
	for _, x := range table.Treatments {
		ids = append(ids, x.ID)
	}
	w := class.Work(classOf(t, ids...), table)
	m := newMaker(w, Options{Paper: Letter})
	s := m.treatments(Sheets[1])
	found := 0
	for i, r := range s.rows {
		for _, b := range m.listed {
			if len(r.cells) < 5 || !strings.HasPrefix(r.cells[0].text(), b.Crop.Name+", ") || !strings.HasSuffix(r.cells[0].text(), methodWords(nil, b.Treatment.Method)) ||
				!strings.Contains(r.cells[0].text(), b.Treatment.Cut) || !strings.Contains(r.cells[0].text(), b.Treatment.Size) || !strings.Contains(r.cells[0].text(), b.Treatment.Grade) {
				continue
			}
			line := ""
			for _, c := range r.cells {
				line += c.text() + "\n"
			}
			under := s.rows[i+1].cells[0].text()
			source, _ := table.Source(b.Treatment.Source)
			ok := strings.Contains(line, "\n"+b.Treatment.ClockStart.Says()+"\n") &&
				strings.Contains(under, source.Publisher+", "+source.Edition) && strings.Contains(under, string(b.Treatment.Standing))
			if b.Treatment.Minutes > 0 {
				ok = ok && strings.Contains(line, "\n"+measure.MinutesRange(b.Treatment.Minutes, b.Treatment.MinutesHigh)+"\n")
			} else {
				ok = ok && strings.Contains(line, "\n"+b.Treatment.Words+"\n") && !strings.Contains(line, "\n0")
			}
			if ok {
				found++
				break
			}
		}
	}
	if found < len(ids) {
		t.Errorf("%d of %d treatments stand whole on the sheet", found, len(ids))
	}
}

func TestAllTreatmentsOfTheCrops(t *testing.T) {
	w := demoWorked(t)
	want := 0
	for _, crop := range []string{"snap-beans", "spinach", "broccoli", "pumpkin"} {
		want += len(w.Table.TreatmentsOf(crop))
	}
	list := listedTreatments(w, true)
	if len(list) != want || len(listedTreatments(w, false)) != 4 {
		t.Errorf("%d treatments listed, %d of the class; want %d and 4", len(list), len(listedTreatments(w, false)), want)
	}
	for i := 1; i < len(list); i++ {
		if a, b := list[i-1].Crop.ID, list[i].Crop.ID; a != b {
			for _, later := range list[i:] {
				if later.Crop.ID == a {
					t.Errorf("the treatments of %s do not stand together", a)
				}
			}
		}
	}
}
