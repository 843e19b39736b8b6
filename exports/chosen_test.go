package exports

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// only describes one sheet of a class, laid out on its pages.
func only(t testing.TB, w class.Worked, id string, p Paper) *sheet {
	t.Helper()
	o, err := Options{Sheets: []string{id}, Paper: p}.settle()
	noErr(t, err)
	s := describe(w, o).sheets[0]
	s.settle()
	s.paginate()
	return s
}

// pagesOf are the rows of each page.
func pagesOf(s *sheet) (pages [][]row) {
	for i, r := range s.rows {
		if i == 0 || r.split {
			pages = append(pages, nil)
		}
		pages[len(pages)-1] = append(pages[len(pages)-1], r)
	}
	return pages
}

// textsOf are the texts of some rows, one a line.
func textsOf(rows []row) string {
	var b strings.Builder
	for _, r := range rows {
		for _, c := range r.cells {
			b.WriteString(strings.ReplaceAll(c.text(), noBreak, " ") + "\n")
		}
	}
	return b.String()
}

// everyKind calls with each language, system of units and paper.
func everyKind(t *testing.T, c class.Class, test func(t *testing.T, w class.Worked, p Paper)) {
	t.Helper()
	for _, l := range languages {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			for _, p := range Papers {
				t.Run(fmt.Sprint(l, " ", units, " ", p), func(t *testing.T) {
					c := c.Clone()
					c.Units = units
					test(t, workedIn(l, c), p)
				})
			}
		}
	}
}

// Each batch has one page, its minutes never without what starts the clock and
// the source; what is read while standing is in 18 point or more.
func TestStationCardsAreOnePageEach(t *testing.T) {
	for _, c := range []class.Class{demoClass(t), wideClass(t)} {
		everyKind(t, c, func(t *testing.T, w class.Worked, p Paper) {
			pages := pagesOf(only(t, w, StationCardsSheet, p))
			if len(pages) < len(w.Batches)+1 {
				t.Fatalf("%d pages for %d batches", len(pages), len(w.Batches))
			}
			for i, b := range w.Batches {
				text := textsOf(pages[i])
				source, _ := w.Table.Source(b.Treatment.Source)
				for _, want := range []string{b.Batch.Name, b.Minutes.Text, b.Clock.Text, source.Publisher, b.Loads.Text, b.LoadWeight.Text, b.LoadWater.Text, b.Chill.Text, b.Headspace.Text, b.Packs.Text} {
					if !strings.Contains(text, want) {
						t.Errorf("page %d does not say %q", i+1, want)
					}
				}
				for _, f := range []measure.Figure{b.Minutes, b.Loads, b.LoadWater, b.Chill, b.Headspace} {
					if size := sizeOf(pages[i], f.Text); size < 18 {
						t.Errorf("page %d says %q in %v point", i+1, f.Text, size)
					}
				}
				boxes := w.Voice.Say("Load %d", 1) + "\n"
				if has := strings.Contains(text, boxes); has != (b.Treatment.ClockStart == reference.AtReturnToBoil) {
					t.Errorf("page %d has a box for the boil: %v", i+1, has)
				}
			}
		})
	}
}

// sizeOf is the largest type in which a text stands.
func sizeOf(rows []row, text string) float64 {
	size := 0.0
	for _, r := range rows {
		for _, c := range r.cells {
			if strings.Contains(strings.ReplaceAll(c.text(), noBreak, " "), text) {
				size = max(size, looks[c.role].size)
			}
		}
	}
	return size
}

// The ice of a card is what was entered, and never less than the rule.
func TestIceOfACard(t *testing.T) {
	for entered, want := range map[float64]string{1: "Ice, by rule of thumb: 3 lb", 9: "Ice at hand: 9 lb"} {
		c := demoClass(t)
		c.Batches[0].Ice = measure.New(entered, measure.Pound)
		name, text, _ := strings.Cut(want, ": ")
		page := pagesOf(only(t, class.Work(c, reference.Shipped()), StationCardsSheet, Letter))[0]
		for i, r := range page[:len(page)-1] {
			for j, x := range r.cells {
				if x.text() == name {
					if got := strings.ReplaceAll(page[i+1].cells[j].text(), noBreak, " "); got == text {
						text = ""
					}
				}
			}
		}
		if text != "" {
			t.Errorf("with %v lb entered the card does not say %q", entered, want)
		}
	}
}

// A station whose table has no such treatment says so in place of figures, and
// twenty tasks stand on a card all the same.
func TestStationCardsOfOddClasses(t *testing.T) {
	c := demoClass(t)
	c.Batches[0].Treatment = "gone"
	for i := range 20 {
		c.People.Roles = append(c.People.Roles, class.Role{Name: fmt.Sprintf("Task %d", i+1), Does: "something"})
	}
	s := only(t, class.Work(c, reference.Shipped()), StationCardsSheet, Letter)
	text := textsOf(s.rows)
	if !strings.Contains(text, "no treatment “gone”") || strings.Count(text, "Task 20\n") != len(c.Batches) {
		t.Error("the treatment that is gone is not named, or a task is missing")
	}
	empty := textsOf(only(t, class.Work(class.New(reference.Edition), reference.Shipped()), StationCardsSheet, Letter).rows)
	if !strings.Contains(empty, "no batches yet") {
		t.Error("an empty class does not say that it is")
	}
}

// The form and the front of the power-cut card are one page each.
func TestFormAndPowerCutFitTheirPages(t *testing.T) {
	everyKind(t, demoClass(t), func(t *testing.T, w class.Worked, p Paper) {
		if n := len(pagesOf(only(t, w, EvaluationSheet, p))); n != 1 {
			t.Errorf("the form has %d pages", n)
		}
		pages := pagesOf(only(t, w, PowerCutSheet, p))
		if len(pages) != 2 {
			t.Fatalf("the power-cut card has %d pages", len(pages))
		}
		front := textsOf(pages[0])
		rules := newMaker(w, Options{}).ruleTexts()
		for _, id := range []string{"power-full-h", "power-half-h", "refreeze-max-f", "dry-ice-lb-per-cuft", "hold-f"} {
			if !strings.Contains(front, rules[id]) {
				t.Errorf("the card does not say %s, %s", rules[id], id)
			}
		}
		if note := w.Table.Rule("dry-ice-lb-per-cuft").Note; note == "" || !strings.Contains(front, note) {
			t.Error("the card does not say where the sources differ")
		}
	})
}

// Every amount of the shopping list is one of the class; ice is one line, the
// larger of rule and heat balance with both said.
func TestShoppingList(t *testing.T) {
	everyKind(t, demoClass(t), func(t *testing.T, w class.Worked, p Paper) {
		text := textsOf(only(t, w, ShoppingSheet, p).rows)
		for _, l := range w.Shopping {
			if !strings.Contains(text, l.Buy.Text) {
				t.Errorf("no line for %s: %s", l.Crop.Name, l.Buy.Text)
			}
		}
		for _, want := range []string{w.Totals.Ice.Text, w.Totals.IceBalance.Text, "\n" + w.Totals.IceBalance.Also + "\n", w.Totals.Packs.Text, "4 × " + w.Batches[0].Packs.Text, "4 × " + w.Batches[0].Water.Text} {
			if !strings.Contains(text, want) {
				t.Errorf("no %q on the list", want)
			}
		}
		if n := strings.Count(text, "\n"+w.Voice.Say("Clean ice")+"\n"); n != 1 {
			t.Errorf("ice stands on %d lines", n)
		}
	})
	cold := demoClass(t) // where the rule asks for more than the balance
	cold.Kit.BathWater, cold.Place.Tap, cold.Batches = measure.New(2, measure.Gallon), measure.New(33, measure.Fahrenheit), cold.Batches[:1]
	w := class.Work(cold, reference.Shipped())
	if w.Totals.IceBalance.InWords() || w.Totals.IceBalance.Value >= w.Totals.Ice.Value {
		t.Fatalf("the balance asks for %s, the rule for %s", w.Totals.IceBalance.Text, w.Totals.Ice.Text)
	}
	want := "\n" + measure.Counted(w.Totals.IceBags.Value, "bag", "bags") + " of 10 lb\n"
	if text := textsOf(only(t, w, ShoppingSheet, Letter).rows); !strings.Contains(text, want) {
		t.Errorf("no line of %q by the rule", want)
	}
}

// The answers go by the numbers of the questions, and each is a figure of the
// class with its working and source.
func TestPracticeAndAnswers(t *testing.T) {
	slow(t)
	for _, c := range []class.Class{demoClass(t), wideClass(t), classOf(t, "sweet-peppers-raw")} {
		everyKind(t, c, func(t *testing.T, w class.Worked, p Paper) {
			m := newMaker(w, mustSettle(t, Options{}))
			list := m.exercises()
			if len(list) != len(content.Practice(w.Voice.Language())) {
				t.Fatalf("%d questions", len(list))
			}
			questions, key := only(t, w, PracticeSheet, p), only(t, w, AnswersSheet, p)
			for i, x := range list {
				number := fmt.Sprintf("%d.\n", i+1)
				if !strings.Contains(textsOf(questions.rows), number+x.piece+". "+x.asks+"\n") {
					t.Errorf("question %d does not stand on the sheet: %s", i+1, x.asks)
				}
				if !strings.Contains(textsOf(key.rows), number+x.piece+"\n") {
					t.Errorf("answer %d does not stand in the key", i+1)
				}
				for _, f := range x.answers {
					if f.Text == "" || f.Basis == "" || !strings.Contains(textsOf(key.rows), f.Text) {
						t.Errorf("answer %d: %+v", i+1, f)
					}
				}
			}
		})
	}
}

// The question on altitude asks for the other side of the step.
func TestPracticeAtAnotherHeight(t *testing.T) {
	for _, feet := range []float64{640, 5000, 7500} {
		c := demoClass(t)
		c.Place.Altitude = measure.New(feet, measure.Foot)
		list := newMaker(class.Work(c, reference.Shipped()), mustSettle(t, Options{})).exercises()
		last := list[len(list)-1]
		x := last.answers[0]
		low := feet < reference.Shipped().Rule("altitude-ft").Value
		if strings.Contains(last.asks, "5,000 ft") != low || strings.Contains(last.asks, " 0 ft") == low || strings.Contains(x.Working, "+ 1 min") != low {
			t.Errorf("at %v ft it asks %q, and the answer is %s", feet, last.asks, x.Working)
		}
	}
}

// Items have different ids, and those of a kind stand together: the form and the
// key number them alike.
func TestEvaluationItems(t *testing.T) {
	ids := map[string]bool{}
	var kinds []content.ItemKind
	for _, x := range content.Evaluation(words.English) {
		if ids[x.ID] {
			t.Errorf("two items are called %s", x.ID)
		}
		ids[x.ID] = true
		if !slices.Contains(kinds, x.Kind) {
			kinds = append(kinds, x.Kind)
		} else if kinds[len(kinds)-1] != x.Kind {
			t.Errorf("%s does not stand with the others of its kind", x.ID)
		}
		if x.Kind == content.Statement {
			reference.Shipped().Rule(x.Rule) // panics where there is none
		}
	}
	if !slices.Equal(kinds, []content.ItemKind{content.Sure, content.Statement, content.WillDo, content.Open}) {
		t.Errorf("the kinds stand in the order %v", kinds)
	}
	o := mustSettle(t, Options{Sheets: []string{AnswersSheet, EvaluationSheet}})
	sheets := describe(demoWorked(t), o).sheets
	for i, x := range content.Evaluation(words.English) {
		text := filled(x.ID, x.Text, newMaker(demoWorked(t), o).ruleTexts())
		line := fmt.Sprintf("%d.\n%s\n", i+1, text)
		if !strings.Contains(textsOf(sheets[1].rows), line) {
			t.Errorf("the form has no line %q", line)
		}
		if so := map[bool]string{true: "true\n", false: "not true\n"}[x.True]; strings.Contains(textsOf(sheets[0].rows), line+so) != (x.Kind == content.Statement) {
			t.Errorf("the key does not say of %q that it is %s", line, so)
		}
	}
}

// The cover lists every source that the other sheets cite, and each sheet lists
// its own.
func TestSourcesOfChosenSheetsAreListed(t *testing.T) {
	cites := regexp.MustCompile(`\[\d+\]`)
	for _, ids := range [][]string{everySheet(), {CoverSheet, PowerCutSheet}, {CoverSheet, AnswersSheet, EvaluationSheet}} {
		sheets := describe(demoWorked(t), mustSettle(t, Options{Sheets: ids})).sheets
		cover := "\n" + textsOf(sheets[0].rows)
		for _, s := range sheets[1:] {
			text := "\n" + textsOf(s.rows)
			for _, ref := range cites.FindAllString(text, -1) {
				if line := "\n" + ref + " "; !strings.Contains(cover, line) || !strings.Contains(text, line) {
					t.Errorf("%v: %s cites %s; on the cover %v, on the sheet %v", ids, s.id, ref, strings.Contains(cover, line), strings.Contains(text, line))
				}
			}
		}
	}
}
