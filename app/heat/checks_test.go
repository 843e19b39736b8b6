package heat

import (
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"
)

var report = flag.Bool("report", false, "write every row of testdata/heat/checks.csv with what was computed to out/heat-checks.txt")

// check is one value from outside that the engine is held against. kind: eq
// must hold within its tolerance, chart is a book's reading of a chart, bench
// is one method against another, info is reported only.
type check struct {
	id, kind, unit, source, basis string
	want, tolerance               float64
	in                            map[string]string
}

// checks are all rows by id; a row whose inputs say as=ID has that row's
// inputs too.
type checks map[string]check

func readTable(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open(filepath.Join("../../testdata/heat", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var table []map[string]string
	for _, row := range rows[1:] {
		cells := map[string]string{}
		for i, name := range rows[0] {
			cells[name] = row[i]
		}
		table = append(table, cells)
	}
	return table
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func readChecks(t testing.TB) (order []string, all checks) {
	t.Helper()
	all = checks{}
	for _, row := range readTable(t, "checks.csv") {
		c := check{
			id: row["id"], kind: row["kind"], unit: row["unit"], source: row["source"], basis: row["basis"],
			want: number(t, row["expected"]), tolerance: number(t, row["tolerance"]), in: map[string]string{},
		}
		for part := range strings.SplitSeq(row["inputs"], "; ") {
			key, value, ok := strings.Cut(part, "=")
			if !ok {
				t.Fatalf("%s: input %q is not key=value", c.id, part)
			}
			c.in[key] = value
		}
		if from, ok := c.in["as"]; ok {
			for key, value := range all[from].in {
				c.in[key] = value
			}
		}
		if _, twice := all[c.id]; twice || c.source == "" || c.basis == "" || c.tolerance <= 0 {
			t.Fatalf("%s: there twice, or without source, basis or tolerance", c.id)
		}
		all[c.id] = c
		order = append(order, c.id)
	}
	return order, all
}

// run gives the row's inputs to its handler.
type run struct {
	testing.TB
	check
}

func (r run) num(key string) float64 {
	r.Helper()
	text, ok := r.in[key]
	if !ok {
		r.Fatalf("%s: no input %q", r.id, key)
	}
	return number(r, text)
}

func (r run) shape() Shape {
	shape, ok := map[string]Shape{"slab": Slab, "cyl": Cylinder, "sph": Sphere}[r.in["shape"]]
	if !ok {
		r.Fatalf("%s: no shape %q", r.id, r.in["shape"])
	}
	return shape
}

// rest is the id without the handler's prefix.
func (r run) rest(prefix string) string { return strings.TrimPrefix(r.id, prefix) }

type handler struct {
	prefix string
	work   func(run) float64
}

// handlerFor is the handler with the longest prefix of the id.
func handlerFor(id string) (handler, bool) {
	best, found := handler{}, false
	for _, h := range slices.Concat(waterChecks, produceChecks, conductionChecks, freezingChecks, kitchenChecks) {
		if strings.HasPrefix(id, h.prefix) && (!found || len(h.prefix) > len(best.prefix)) {
			best, found = h, true
		}
	}
	return best, found
}

// family is how rows are grouped in the report.
func family(id string) string {
	h, _ := handlerFor(id)
	return strings.Trim(h.prefix, "-")
}

// Every row of checks.csv: rows of kind eq must be within their tolerance, the
// others are computed and reported, those out of tolerance one by one.
func TestChecks(t *testing.T) {
	order, all := readChecks(t)
	if len(order) != 566 {
		t.Errorf("%d rows; want 566", len(order))
	}
	type worst struct {
		rows, held int
		off        float64 // over the tolerance
		id         string
	}
	groups := map[string]*worst{}
	var lines, outside []string
	for _, id := range order {
		h, ok := handlerFor(id)
		if !ok {
			t.Errorf("%s: no handler", id)
			continue
		}
		row := all[id]
		got := h.work(run{t, row})
		off := math.Abs(got-row.want) / row.tolerance
		line := fmt.Sprintf("%-40s %-5s %13.7g want %13.7g ± %-9.3g %-10s off %6.2f of the tolerance  [%s; %s]", id, row.kind, got, row.want, row.tolerance, row.unit, off, row.source, row.basis)
		lines = append(lines, line)
		held := off <= 1 // false for NaN
		if !held {
			if row.kind == "eq" {
				t.Errorf("%s", line)
			} else {
				outside = append(outside, line)
			}
		}
		key := row.kind + " " + family(id)
		g := groups[key]
		if g == nil {
			g = &worst{}
			groups[key] = g
		}
		g.rows++
		if held {
			g.held++
		}
		if off > g.off || g.id == "" {
			g.off, g.id = off, id
		}
	}
	keys := make([]string, 0, len(groups))
	for key := range groups {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	summary := []string{fmt.Sprintf("%-30s %5s %5s  %s", "kind and family", "rows", "held", "worst, over its tolerance")}
	for _, key := range keys {
		g := groups[key]
		summary = append(summary, fmt.Sprintf("%-30s %5d %5d  %.2f %s", key, g.rows, g.held, g.off, g.id))
	}
	t.Log("\n" + strings.Join(summary, "\n"))
	t.Log("\nout of tolerance, reported only:\n" + strings.Join(outside, "\n"))
	if *report {
		const path = "../../out/heat-checks.txt"
		text := strings.Join(slices.Concat(summary, []string{""}, lines), "\n") + "\n"
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		t.Log("written to out/heat-checks.txt")
	}
}

// nearly is near for tests, benchmarks and rows.
func nearly(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v; want %v ± %v", what, got, want, tolerance)
	}
}
