package reference

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func rowsOf(t *testing.T, v View) []string {
	t.Helper()
	rows, err := Shipped().Rows(v)
	if err != nil {
		t.Fatal(err)
	}
	return Shipped().IDs(rows)
}

func TestViewFinds(t *testing.T) {
	for _, c := range []struct {
		name string
		view View
		want []string // must be there
		not  []string // must not
	}{
		{"by name, capitals", View{Text: "BROCCOLI"}, []string{"broccoli-flowerets-water", "broccoli-flowerets-steam"}, []string{"kale-leaves-water"}},
		{"accents do not matter", View{Text: "bróccolì"}, []string{"broccoli-stems-water"}, []string{"kale-leaves-water"}},
		{"two words, both needed", View{Text: "corn medium"}, []string{"corn-on-the-cob-medium-water"}, []string{"corn-on-the-cob-large-water", "lima-beans-medium-water"}},
		{"a printed fraction", View{Text: "½ in"}, []string{"turnips-cubes-water"}, []string{"kale-leaves-water"}},
		{"a whole number and a fraction", View{Text: "1½ in"}, []string{"broccoli-flowerets-water", "corn-on-the-cob-large-water", "snap-beans-pieces-water"}, []string{"turnips-cubes-water", "celery-pieces-water"}},
		{"the same in figures", View{Text: "1 1/2 in"}, []string{"broccoli-flowerets-water", "corn-on-the-cob-large-water"}, []string{"turnips-cubes-water", "celery-pieces-water"}},
		{"a fraction alone", View{Text: "broccoli ½"}, []string{"broccoli-flowerets-water"}, nil},
		{"florets", View{Text: "florets"}, []string{"broccoli-flowerets-water", "broccoli-flowerets-steam"}, []string{"broccoli-stems-water"}},
		{"green beans", View{Text: "green beans"}, []string{"snap-beans-cut-water"}, []string{"lima-beans-small-water"}},
		{"string beans", View{Text: "String beans"}, []string{"snap-beans-french-water"}, []string{"lima-beans-small-water"}},
		{"sweetcorn", View{Text: "sweetcorn"}, []string{"corn-on-the-cob-small-water", "corn-whole-kernel-water"}, []string{"sweet-peppers-raw"}},
		{"corn is in no acorn", View{Text: "corn"}, []string{"corn-cream-style-water"}, []string{"winter-squash-mashed-cook"}},
		{"acorn squash", View{Text: "acorn squash"}, []string{"winter-squash-mashed-cook"}, []string{"summer-squash-slices-water"}},
		{"scallions", View{Text: "scallion"}, []string{"green-onions-chopped-raw"}, []string{"onions-chopped-raw"}},
		{"bell peppers", View{Text: "bell pepper"}, []string{"sweet-peppers-raw"}, []string{"hot-peppers-cut-raw"}},
		{"swede", View{Text: "swede"}, []string{"rutabagas-cubes-water"}, []string{"turnips-cubes-water"}},
		{"mangetout", View{Text: "mangetout"}, []string{"edible-pod-peas-small-water"}, []string{"green-peas-shelled-water"}},
		{"snow peas", View{Text: "snow peas"}, []string{"edible-pod-peas-whole-steam"}, []string{"green-peas-shelled-water"}},
		{"aubergine", View{Text: "aubergine"}, []string{"eggplant-slices-water"}, nil},
		{"courgette", View{Text: "Courgettes"}, []string{"zucchini-slices-water", "summer-squash-cubes-water"}, []string{"winter-squash-mashed-cook"}},
		{"zucchini is a summer squash", View{Text: "zucchini"}, []string{"zucchini-grated-steam", "summer-squash-cubes-steam"}, []string{"winter-squash-mashed-cook"}},
		{"edamame", View{Text: "edamame"}, []string{"soybeans-green-in-pods-water"}, nil},
		{"black eyed peas", View{Text: "black eyed peas"}, []string{"field-peas-shelled-water"}, []string{"green-peas-shelled-water"}},
		{"by words", View{Text: "translucent"}, []string{"zucchini-grated-steam"}, []string{"zucchini-slices-water"}},
		{"by group and method", View{Group: "greens", Methods: []Method{SteamBlanch}}, []string{"kale-leaves-steam"}, []string{"kale-leaves-water", "broccoli-flowerets-steam"}},
		{"by standing", View{Standings: []Standing{FromMemory}}, []string{"onions-rings-water"}, []string{"onions-bulbs-water"}},
		{"by crop", View{Crop: "okra"}, []string{"okra-for-frying-small-water"}, []string{"kale-leaves-water"}},
		{"nothing changed", View{Changed: true}, nil, []string{"kale-leaves-water"}},
		{"nothing found", View{Text: "xyzzy", Sort: []SortBy{{Column: ByMinutes}}}, nil, []string{"kale-leaves-water"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := rowsOf(t, c.view)
			for _, id := range c.want {
				if !slices.Contains(got, id) {
					t.Errorf("%s is missing in %v", id, got)
				}
			}
			for _, id := range c.not {
				if slices.Contains(got, id) {
					t.Errorf("%s is there", id)
				}
			}
		})
	}
	if got := rowsOf(t, View{}); len(got) != len(Shipped().Treatments) {
		t.Errorf("the zero view shows %d", len(got))
	}
	edited, err := Shipped().With([]Edit{edit("kale-leaves-water", FieldMinutes, "3")})
	if err != nil {
		t.Fatal(err)
	}
	if rows, err := edited.Rows(View{Changed: true}); err != nil || !slices.Equal(edited.IDs(rows), []string{"kale-leaves-water"}) {
		t.Errorf("changed here: %v, %v", edited.IDs(rows), err)
	}
}

func TestViewSorts(t *testing.T) {
	rows, err := Shipped().Rows(View{Sort: []SortBy{{ByMinutes, true}, {ByCrop, false}, {ByCut, false}}})
	if err != nil {
		t.Fatal(err)
	}
	if first := Shipped().Treatments[rows[0]]; first.Minutes != 11 {
		t.Errorf("the longest blanch is first: %s", first.ID)
	}
	if last := Shipped().Treatments[rows[len(rows)-1]]; last.Minutes != 0 {
		t.Errorf("those without minutes come last: %s", last.ID)
	}
}

var sortColumns = []Column{ByCrop, ByGroup, ByCut, ByGrade, ByMethod, ByPack, BySource, ByStanding, ByChanged, ByMinutes, ByChill, ByHeadspace, ByWater, ByStorage}

// Views equal naive loops for any filter and sorting.
func TestViewsAreNaiveLoops(t *testing.T) {
	table := Shipped()
	rapid.Check(t, func(t *rapid.T) {
		v := View{
			Text:      rapid.SampledFrom([]string{"", "bean", "1/2 in", "pEa", "whole small", "sweetcorn", "acorn", "snow"}).Draw(t, "text"),
			Group:     rapid.SampledFrom([]Group{"", "", "greens", "none"}).Draw(t, "group"),
			Methods:   rapid.SliceOfN(rapid.SampledFrom(methods), 0, 2).Draw(t, "methods"),
			Standings: rapid.SliceOfN(rapid.SampledFrom(standings), 0, 2).Draw(t, "standings"),
		}
		for _, c := range rapid.SliceOfN(rapid.SampledFrom(sortColumns), 0, 4).Draw(t, "sort") {
			v.Sort = append(v.Sort, SortBy{c, rapid.Bool().Draw(t, "down")})
		}
		got, err := table.Rows(v)
		if err != nil {
			t.Fatal(err)
		}
		var want []int
		for i, x := range table.Treatments {
			crop, _ := table.Crop(x.Crop)
			all := strings.ToLower(strings.Join([]string{crop.Name, x.Grade, x.Cut, x.Size, string(x.Method), x.Words, x.Note}, "\n"))
			ok := (v.Group == "" || crop.Group == v.Group) && (len(v.Methods) == 0 || slices.Contains(v.Methods, x.Method)) &&
				(len(v.Standings) == 0 || slices.Contains(v.Standings, x.Standing))
			for _, term := range strings.Fields(strings.ToLower(v.Text)) {
				named := slices.ContainsFunc(strings.Fields(strings.ToLower(strings.Join(crop.AlsoCalled, " "))), func(w string) bool { return strings.HasPrefix(w, term) })
				ok = ok && (named || strings.Contains(all, term))
			}
			if ok {
				want = append(want, i)
			}
		}
		slices.SortStableFunc(want, func(a, b int) int {
			for _, s := range v.Sort {
				if c := naiveCompare(table, s, a, b); c != 0 {
					return c
				}
			}
			return 0
		})
		if !slices.Equal(got, want) {
			t.Fatalf("%+v: got %v, want %v", v, got, want)
		}
		naiveCounts(t, table, got)
		naiveDescribe(t, table, got)
	})
}

func naiveCompare(table *Table, s SortBy, a, b int) int {
	x, y := table.Treatments[a], table.Treatments[b]
	sign := 1
	if s.Descending {
		sign = -1
	}
	if number, ok := numberColumns[s.Column]; ok {
		p, q := number(&x), number(&y)
		if p == 0 || q == 0 {
			return cmp.Compare(boolInt(p == 0), boolInt(q == 0))
		}
		return sign * cmp.Compare(p, q)
	}
	text := textColumns[s.Column]
	return sign * cmp.Compare(Folded(text(table, &x)), Folded(text(table, &y)))
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

func naiveCounts(t *rapid.T, table *Table, rows []int) {
	counts, err := table.CountBy(rows, ByGroup, ByMethod)
	if err != nil {
		t.Fatal(err)
	}
	want := map[[2]string]int{}
	for _, r := range rows {
		x := table.Treatments[r]
		crop, _ := table.Crop(x.Crop)
		want[[2]string{string(crop.Group), string(x.Method)}]++
	}
	if len(counts) != len(want) {
		t.Fatalf("%d groups, want %d", len(counts), len(want))
	}
	for _, c := range counts {
		if n := want[[2]string{c.Values[0], c.Values[1]}]; c.N != n || len(c.Rows) != n {
			t.Fatalf("%v: %d, want %d", c.Values, c.N, n)
		}
	}
}

func naiveDescribe(t *rapid.T, table *Table, rows []int) {
	s, err := table.Describe(rows, ByMinutes)
	if err != nil {
		t.Fatal(err)
	}
	n, low, high := 0, math.Inf(1), math.Inf(-1)
	for _, r := range rows {
		if m := table.Treatments[r].Minutes; m > 0 {
			n, low, high = n+1, min(low, m), max(high, m)
		}
	}
	if s.N != n || s.N+s.Missing != len(rows) || n > 0 && (s.Min != low || s.Max != high || s.Median < low || s.Median > high) {
		t.Fatalf("%+v, want n %d, %v to %v", s, n, low, high)
	}
}

func TestViewsRefuse(t *testing.T) {
	table := Shipped()
	for name, call := range map[string]func() error{
		"unknown sort column": func() error { _, err := table.Rows(View{Sort: []SortBy{{Column: "weight"}}}); return err },
		"group by numbers":    func() error { _, err := table.CountBy([]int{0}, ByMinutes); return err },
		"group by nothing":    func() error { _, err := table.CountBy([]int{0}); return err },
		"describe text":       func() error { _, err := table.Describe([]int{0}, ByCrop); return err },
		"a row too far":       func() error { _, err := table.CountBy([]int{len(table.Treatments)}, ByCrop); return err },
		"a negative row":      func() error { _, err := table.Describe([]int{-1}, ByMinutes); return err },
	} {
		t.Run(name, func(t *testing.T) {
			if err := call(); err == nil {
				t.Error("no error")
			}
		})
	}
	if counts, err := table.CountBy(nil, ByCrop); err != nil || len(counts) != 0 {
		t.Errorf("no rows: %v, %v", counts, err)
	}
	if s, err := table.Describe(nil, ByMinutes); err != nil || s.N != 0 || !math.IsNaN(s.Median) {
		t.Errorf("no rows: %+v, %v", s, err)
	}
	if rows, err := (&Table{}).Rows(View{Text: "x"}); err != nil || len(rows) != 0 {
		t.Errorf("an empty table: %v, %v", rows, err)
	}
}

func BenchmarkView(b *testing.B) {
	v := View{Text: "whole medium", Sort: []SortBy{{ByMinutes, true}, {ByCrop, false}}}
	for b.Loop() {
		if _, err := Shipped().Rows(v); err != nil {
			b.Fatal(err)
		}
	}
}
