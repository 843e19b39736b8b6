// Package gotaframe is the one place that touches gota. It makes views of a
// table (filter, arrange, group) from columns of parsed Go values and returns
// row numbers only, so that none of gota's conversions of text and numbers
// reaches a screen.
//
// gota is finished and not maintained. The fence: frames are thrown away after
// one step; text goes in as ranks or as length-prefixed keys, because the
// text "NaN" would count as missing and joined keys would be merged; the error
// of every frame and column is looked at; the cases on which gota panics are
// kept away from it, and a panic that comes all the same is turned into an
// error.
package gotaframe

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gota/gota/dataframe"
	"github.com/go-gota/gota/series"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Column is one column: either Text or Numbers, one value a row. In Numbers
// NaN means missing.
type Column struct {
	Name    string
	Text    []string
	Numbers []float64
}

// Key is one column to arrange by.
type Key struct {
	Column     string
	Descending bool
}

// Group is the rows that share their values in some text columns.
type Group struct {
	Values []string // one for each column grouped by
	Rows   []int    // ascending
}

// Summary describes one numeric column. The numbers are NaN where N is 0.
type Summary struct {
	N, Missing             int
	Min, Median, Max, Mean float64
}

// rowColumn carries the row numbers through gota.
const rowColumn = "__row"

// fence turns a panic into an error that names the operation.
func fence(operation string, columns []string, err *error) {
	if p := recover(); p != nil {
		*err = fmt.Errorf("%s (columns %s): %v", operation, strings.Join(columns, ", "), p)
	}
}

// Filter returns the numbers from 0 to rows-1 that keep wants, ascending.
func Filter(rows int, keep func(row int) bool) (out []int, err error) {
	defer fence("filter", nil, &err)
	if rows < 0 {
		return nil, fmt.Errorf("filter: %d rows", rows)
	}
	if rows == 0 {
		return nil, nil
	}
	df := dataframe.New(rowNumbers(rows))
	wants := func(e series.Element) bool {
		row, err := e.Int()
		return err == nil && keep(row)
	}
	return numbers(df.Filter(dataframe.F{Colname: rowColumn, Comparator: series.CompFunc, Comparando: wants}), "filter")
}

// Arrange returns all row numbers sorted by the keys in turn. The sort is
// stable and missing numbers come last in both directions.
func Arrange(columns []Column, keys []Key) (out []int, err error) {
	defer fence("arrange", names(columns), &err)
	rows, err := check("arrange", columns)
	if err != nil {
		return nil, err
	}
	order := make([]dataframe.Order, len(keys))
	for i, k := range keys {
		if !slices.ContainsFunc(columns, func(c Column) bool { return c.Name == k.Column }) {
			return nil, fmt.Errorf("arrange: no column %q", k.Column)
		}
		order[i] = dataframe.Order{Colname: k.Column, Reverse: k.Descending}
	}
	if rows == 0 {
		return nil, nil
	}
	all := []series.Series{rowNumbers(rows)}
	for _, c := range columns {
		all = append(all, c.ranked())
	}
	df := dataframe.New(all...)
	// One key a time, the last one first: with three keys or more in one call
	// gota mixes up row numbers of two steps, and each single step is stable.
	for _, o := range slices.Backward(order) {
		if df.Err != nil {
			break
		}
		df = df.Arrange(o)
	}
	return numbers(df, "arrange")
}

// GroupBy returns the groups of rows with equal text in the named columns, in
// the order in which they first appear.
func GroupBy(columns []Column, by []string) (out []Group, err error) {
	defer fence("group", by, &err)
	rows, err := check("group", columns)
	if err != nil {
		return nil, err
	}
	if len(by) == 0 {
		return nil, fmt.Errorf("group: no columns to group by")
	}
	picked := make([]Column, len(by))
	for i, name := range by {
		at := slices.IndexFunc(columns, func(c Column) bool { return c.Name == name })
		if at < 0 || columns[at].Text == nil && rows > 0 {
			return nil, fmt.Errorf("group: no text column %q", name)
		}
		picked[i] = columns[at]
	}
	if rows == 0 {
		return nil, nil
	}
	keys := make([]string, rows)
	for row := range rows {
		for _, c := range picked {
			keys[row] += fmt.Sprintf("%d:%s", len(c.Text[row]), c.Text[row])
		}
	}
	df := dataframe.New(rowNumbers(rows), series.New(keys, series.String, "key"))
	if df.Err != nil {
		return nil, fmt.Errorf("group: %w", df.Err)
	}
	groups := df.GroupBy("key")
	if groups == nil || groups.Err != nil {
		return nil, fmt.Errorf("group: %v", groups)
	}
	for _, part := range groups.GetGroups() {
		in, err := numbers(part, "group")
		if err != nil {
			return nil, err
		}
		slices.Sort(in)
		g := Group{Rows: in}
		for _, c := range picked {
			g.Values = append(g.Values, c.Text[in[0]])
		}
		out = append(out, g)
	}
	slices.SortFunc(out, func(a, b Group) int { return a.Rows[0] - b.Rows[0] })
	return out, nil
}

// Describe summarises the numbers that are there. The median of an even count
// is the mean of the two in the middle.
func Describe(values []float64) Summary {
	s := Summary{Min: math.NaN(), Median: math.NaN(), Max: math.NaN(), Mean: math.NaN()}
	there := slices.DeleteFunc(slices.Clone(values), math.IsNaN)
	s.N, s.Missing = len(there), len(values)-len(there)
	if s.N == 0 {
		return s
	}
	slices.Sort(there)
	s.Min, s.Max, s.Mean = floats.Min(there), floats.Max(there), stat.Mean(there, nil)
	s.Median = stat.Mean(there[(s.N-1)/2:s.N/2+1], nil)
	return s
}

// check returns the common number of rows.
func check(operation string, columns []Column) (int, error) {
	if len(columns) == 0 {
		return 0, fmt.Errorf("%s: no columns", operation)
	}
	rows := columns[0].rows()
	seen := map[string]bool{rowColumn: true}
	for _, c := range columns {
		switch {
		case c.Name == "" || seen[c.Name]:
			return 0, fmt.Errorf("%s: the column name %q is empty, taken or used twice", operation, c.Name)
		case c.Text != nil && c.Numbers != nil:
			return 0, fmt.Errorf("%s: column %q has text and numbers", operation, c.Name)
		case c.rows() != rows:
			return 0, fmt.Errorf("%s: column %q has %d rows, the first has %d", operation, c.Name, c.rows(), rows)
		}
		seen[c.Name] = true
	}
	return rows, nil
}

func (c Column) rows() int { return max(len(c.Text), len(c.Numbers)) }

// ranked is the column as gota may sort it: numbers as they are, text as its
// rank among the column's values.
func (c Column) ranked() series.Series {
	if c.Text == nil {
		return series.New(c.Numbers, series.Float, c.Name)
	}
	sorted := slices.Compact(slices.Sorted(slices.Values(c.Text)))
	ranks := make([]int, len(c.Text))
	for i, v := range c.Text {
		ranks[i], _ = slices.BinarySearch(sorted, v)
	}
	return series.New(ranks, series.Int, c.Name)
}

func rowNumbers(rows int) series.Series {
	ids := make([]int, rows)
	for i := range ids {
		ids[i] = i
	}
	return series.New(ids, series.Int, rowColumn)
}

// numbers takes the row numbers out of a frame.
func numbers(df dataframe.DataFrame, operation string) ([]int, error) {
	if df.Err != nil {
		return nil, fmt.Errorf("%s: %w", operation, df.Err)
	}
	if df.Nrow() == 0 {
		return nil, nil
	}
	if !slices.Contains(df.Names(), rowColumn) {
		return nil, fmt.Errorf("%s: the row numbers are lost", operation)
	}
	col := df.Col(rowColumn)
	if col.Err != nil {
		return nil, fmt.Errorf("%s: %w", operation, col.Err)
	}
	ids, err := col.Int()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", operation, err)
	}
	return ids, nil
}

func names(columns []Column) []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.Name
	}
	return out
}
