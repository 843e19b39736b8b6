package reference

import (
	"encoding/csv"
	"os"
	"slices"
	"testing"
)

// publishedRow is one row of testdata/published/treatments.csv.
type publishedRow struct {
	id, crop, cut, label, source, standing string
	water, waterHigh, steam, steamHigh     float64
}

func publishedRows(t *testing.T) map[string]publishedRow {
	t.Helper()
	out := map[string]publishedRow{}
	for i, r := range readPublished(t, "treatments.csv") {
		minutes := func(low, high string) (float64, float64) {
			if low == "" {
				return 0, 0
			}
			a, err := parseMinutes(low)
			if err != nil {
				t.Fatalf("row %d: %q", i+2, low)
			}
			if high == "" {
				return a, a
			}
			b, err := parseMinutes(high)
			if err != nil {
				t.Fatalf("row %d: %q", i+2, high)
			}
			return a, b
		}
		p := publishedRow{id: r[0], crop: r[1], cut: r[2], label: r[7], source: r[8], standing: r[9]}
		p.water, p.waterHigh = minutes(r[3], r[4])
		p.steam, p.steamHigh = minutes(r[5], r[6])
		if _, ok := out[p.id]; ok {
			t.Errorf("row %s stands twice", p.id)
		}
		if (p.water == 0 && p.steam == 0) != (p.label != "") {
			t.Errorf("row %s: a label stands where no minutes do, and only there", p.id)
		}
		out[p.id] = p
	}
	return out
}

func readPublished(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// gives returns the minutes of the row for a method.
func (p publishedRow) gives(m Method) (float64, float64) {
	switch m {
	case WaterBlanch:
		return p.water, p.waterHigh
	case SteamBlanch:
		return p.steam, p.steamHigh
	}
	return 0, 0
}

// Every chosen value stands in a published row of its own source with the same
// minutes, and its standing is that row's.
func TestChosenValuesArePublished(t *testing.T) {
	rows := publishedRows(t)
	for _, x := range Shipped().Treatments {
		t.Run(x.ID, func(t *testing.T) {
			if len(x.Rows) == 0 {
				t.Fatal("no published row")
			}
			for i, id := range x.Rows {
				p, ok := rows[id]
				if !ok || p.source != x.Source {
					t.Fatalf("row %s is of %s, the treatment of %s", id, p.source, x.Source)
				}
				if p.standing != string(x.Standing) {
					t.Errorf("row %s is %s, the treatment %s", id, p.standing, x.Standing)
				}
				low, high := p.gives(x.Method)
				if i == 0 && x.ClockStart != NoClock && (low != x.Minutes || high != x.MinutesHigh) {
					t.Errorf("row %s prints %v to %v, the treatment has %v to %v", id, low, high, x.Minutes, x.MinutesHigh)
				}
				if i == 0 && x.Method == NoHeat && !slices.Contains([]string{"raw", "raw, dip 30 s to peel"}, p.label) {
					t.Errorf("row %s is %q", id, p.label)
				}
			}
		})
	}
}

func TestAlsoPublishedValuesArePublished(t *testing.T) {
	rows := publishedRows(t)
	for _, x := range Shipped().Treatments {
		for _, a := range x.Also {
			p, ok := rows[a.Row]
			if !ok || p.source != a.Source || p.standing != string(a.Standing) {
				t.Errorf("%s also %s: row %s is of %s (%s)", x.ID, a.Source, a.Row, p.source, p.standing)
			}
			method := a.Method
			if method == "" {
				method = x.Method
			}
			if low, high := p.gives(method); a.Minutes != 0 && (low != a.Minutes || high != a.MinutesHigh) {
				t.Errorf("%s also %s: row %s prints %v to %v, also has %v to %v", x.ID, a.Source, a.Row, low, high, a.Minutes, a.MinutesHigh)
			}
			same := method == x.Method && a.Minutes == x.Minutes && a.MinutesHigh == x.MinutesHigh
			if a.Minutes != 0 && a.Agrees != same || a.Agrees && method != x.Method {
				t.Errorf("%s also %s (row %s): agrees is %v", x.ID, a.Source, a.Row, a.Agrees)
			}
			if slices.Contains(x.Rows, a.Row) {
				t.Errorf("%s: row %s is chosen and also published", x.ID, a.Row)
			}
		}
	}
}

// No published value is lost: each stands in the table or in left-out.csv.
func TestEveryPublishedRowIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, x := range Shipped().Treatments {
		for _, id := range x.Rows {
			used[id] = true
		}
		for _, a := range x.Also {
			used[a.Row] = true
		}
	}
	leftOut := map[string]string{}
	for _, r := range readPublished(t, "left-out.csv") {
		leftOut[r[0]] = r[1]
	}
	rows := publishedRows(t)
	if len(rows) != 321 {
		t.Errorf("%d published rows, the collection has 321", len(rows))
	}
	for id := range rows {
		if used[id] == (leftOut[id] != "") {
			t.Errorf("row %s: used %v, reason for leaving it out %q", id, used[id], leftOut[id])
		}
	}
	for id := range leftOut {
		if _, ok := rows[id]; !ok {
			t.Errorf("left-out.csv names %s, which is no row", id)
		}
	}
}
