package gotaframe

import (
	"cmp"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/go-gota/gota/series"
	"pgregory.net/rapid"
)

// oddTexts holds what gota stumbles over: its words for missing values and
// parts that merge when joined with "_" (engineering notes on gota, section 5).
var oddTexts = []string{"", "a", "b", "a_b", "b_c", "c", "NaN", "NA", "<nil>", "true", "007", "1e3", " a", "é", "%s", "1:a"}

func texts(rows int) *rapid.Generator[[]string] {
	return rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(oddTexts), rapid.String()), rows, rows)
}

func floatsWithGaps(rows int) *rapid.Generator[[]float64] {
	return rapid.SliceOfN(rapid.SampledFrom([]float64{0, 1, 1, 2, -3, 1e-7, 2e-7, 1e12, 0.1, math.NaN()}), rows, rows)
}

func TestFilterIsANaiveLoop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		keep := rapid.SliceOfN(rapid.Bool(), 0, 40).Draw(t, "keep")
		got, err := Filter(len(keep), func(i int) bool { return keep[i] })
		if err != nil {
			t.Fatal(err)
		}
		var want []int
		for i, k := range keep {
			if k {
				want = append(want, i)
			}
		}
		if !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

func TestArrangeIsAStableSort(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(0, 30).Draw(t, "rows")
		cols := []Column{
			{Name: "x", Text: texts(rows).Draw(t, "x")},
			{Name: "y", Numbers: floatsWithGaps(rows).Draw(t, "y")},
			{Name: "a_0", Text: texts(rows).Draw(t, "z")},
		}
		keys := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"x", "y", "a_0"}), 0, 3, rapid.ID).Draw(t, "keys")
		var by []Key
		for _, k := range keys {
			by = append(by, Key{k, rapid.Bool().Draw(t, "down")})
		}
		got, err := Arrange(cols, by)
		if err != nil {
			t.Fatal(err)
		}
		want := make([]int, rows)
		for i := range want {
			want[i] = i
		}
		slices.SortStableFunc(want, func(a, b int) int {
			for _, k := range by {
				if c := compare(cols, k, a, b); c != 0 {
					return c
				}
			}
			return 0
		})
		if !slices.Equal(got, want) {
			t.Fatalf("by %v: got %v, want %v", by, got, want)
		}
	})
}

func compare(cols []Column, k Key, a, b int) int {
	c := cols[slices.IndexFunc(cols, func(c Column) bool { return c.Name == k.Column })]
	var r int
	if c.Text != nil {
		r = cmp.Compare(c.Text[a], c.Text[b])
	} else {
		an, bn := math.IsNaN(c.Numbers[a]), math.IsNaN(c.Numbers[b])
		if an || bn { // missing last in both directions
			return map[bool]int{true: 1}[an] - map[bool]int{true: 1}[bn]
		}
		r = cmp.Compare(c.Numbers[a], c.Numbers[b])
	}
	if k.Descending {
		return -r
	}
	return r
}

func TestGroupIsANaiveMap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(0, 25).Draw(t, "rows")
		cols := []Column{{Name: "x", Text: texts(rows).Draw(t, "x")}, {Name: "y", Text: texts(rows).Draw(t, "y")}}
		got, err := GroupBy(cols, []string{"x", "y"})
		if err != nil {
			t.Fatal(err)
		}
		type key struct{ x, y string }
		var order []key
		want := map[key][]int{}
		for i := range rows {
			k := key{cols[0].Text[i], cols[1].Text[i]}
			if _, ok := want[k]; !ok {
				order = append(order, k)
			}
			want[k] = append(want[k], i)
		}
		if len(got) != len(order) {
			t.Fatalf("%d groups, want %d", len(got), len(order))
		}
		for i, k := range order {
			if !slices.Equal(got[i].Values, []string{k.x, k.y}) || !slices.Equal(got[i].Rows, want[k]) {
				t.Fatalf("group %d: got %v, want %v %v", i, got[i], k, want[k])
			}
		}
	})
}

// gota's own figures are the second opinion: min, max and median skip missing
// values there, so they are asked with the missing values taken out.
func TestDescribeAgainstGota(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := floatsWithGaps(rapid.IntRange(0, 30).Draw(t, "rows")).Draw(t, "values")
		s := Describe(values)
		there := slices.DeleteFunc(slices.Clone(values), math.IsNaN)
		if s.N != len(there) || s.N+s.Missing != len(values) {
			t.Fatalf("counts %d and %d of %d", s.N, s.Missing, len(values))
		}
		if s.N == 0 {
			if !math.IsNaN(s.Min) || !math.IsNaN(s.Median) {
				t.Fatalf("nothing there, yet %+v", s)
			}
			return
		}
		g := series.New(there, series.Float, "v")
		for name, pair := range map[string][2]float64{
			"min": {s.Min, g.Min()}, "max": {s.Max, g.Max()}, "median": {s.Median, g.Median()}, "mean": {s.Mean, g.Mean()},
		} {
			if d := math.Abs(pair[0] - pair[1]); d > 1e-9*(1+math.Abs(pair[1])) {
				t.Fatalf("%s: ours %v, gota's %v", name, pair[0], pair[1])
			}
		}
	})
}

func TestWhatIsRefused(t *testing.T) {
	two := []Column{{Name: "a", Text: []string{"x", "y"}}, {Name: "n", Numbers: []float64{1, 2}}}
	for name, call := range map[string]func() error{
		"no columns":          func() error { _, err := Arrange(nil, nil); return err },
		"unknown sort column": func() error { _, err := Arrange(two, []Key{{Column: "zz"}}); return err },
		"no group names":      func() error { _, err := GroupBy(two, nil); return err },
		"group by numbers":    func() error { _, err := GroupBy(two, []string{"n"}); return err },
		"unknown group":       func() error { _, err := GroupBy(two, []string{"zz"}); return err },
		"ragged columns": func() error {
			_, err := Arrange([]Column{two[0], {Name: "b", Text: []string{"x"}}}, nil)
			return err
		},
		"a name twice":     func() error { _, err := Arrange([]Column{two[0], two[0]}, nil); return err },
		"the row column":   func() error { _, err := Arrange([]Column{{Name: rowColumn, Text: []string{"x"}}}, nil); return err },
		"negative rows":    func() error { _, err := Filter(-1, nil); return err },
		"a panic in keep":  func() error { _, err := Filter(2, func(int) bool { panic("inside") }); return err },
		"both kinds given": func() error { _, err := Arrange([]Column{{"c", []string{"x"}, []float64{1}}}, nil); return err },
	} {
		t.Run(name, func(t *testing.T) {
			if err := call(); err == nil {
				t.Error("no error")
			}
		})
	}
}

// The known panics of gota (engineering notes, section 6) become errors.
func TestTheFenceHoldsAPanic(t *testing.T) {
	step := func() (err error) {
		defer fence("step", []string{"a", "b"}, &err)
		_ = series.New([]int{1}, series.Type("unknown"), "x")
		return nil
	}
	if err := step(); err == nil || !strings.Contains(err.Error(), "step (columns a, b)") {
		t.Errorf("got %v", err)
	}
}

// Only this package may touch gota.
func TestGotaIsImportedHereAlone(t *testing.T) {
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return nil // a file in the making is not this test's business
		}
		for _, i := range file.Imports {
			if strings.Contains(i.Path.Value, "go-gota") && filepath.Base(filepath.Dir(path)) != "gotaframe" {
				t.Errorf("%s imports %s", path, i.Path.Value)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
