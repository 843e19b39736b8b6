package reference

import (
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// publishedRow is one row of testdata/published/treatments.csv.
type publishedRow struct {
	id, crop, cut, label, clock, headspace, more, source, standing string
	water, waterHigh, steam, steamHigh                             float64
}

func publishedRows(t *testing.T) map[string]publishedRow {
	t.Helper()
	out := map[string]publishedRow{}
	for _, r := range readPublished(t, "treatments.csv") {
		minutes := func(column string) (float64, float64) {
			if r[column] == "" {
				return 0, 0
			}
			a, err := parseMinutes(r[column])
			if err != nil {
				t.Fatalf("row %s: %q", r["id"], r[column])
			}
			if r[column+"_high"] == "" {
				return a, a
			}
			b, err := parseMinutes(r[column+"_high"])
			if err != nil {
				t.Fatalf("row %s: %q", r["id"], r[column+"_high"])
			}
			return a, b
		}
		p := publishedRow{id: r["id"], crop: r["crop"], cut: r["cut"], label: r["label"], clock: r["clock"],
			headspace: r["headspace"], more: r["more"], source: r["source"], standing: r["standing"]}
		p.water, p.waterHigh = minutes("water")
		p.steam, p.steamHigh = minutes("steam")
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

// readPublished returns the rows of a file by the names of its columns.
func readPublished(t *testing.T, name string) []map[string]string {
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
	var out []map[string]string
	for _, r := range rows[1:] {
		byName := map[string]string{}
		for i, column := range rows[0] {
			byName[column] = r[i]
		}
		out = append(out, byName)
	}
	return out
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
		leftOut[r["id"]] = r["reason"]
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

// rowsOfCrops are the published rows that any treatment of a crop was taken
// from or has beside it.
func rowsOfCrops(t *testing.T) map[string][]publishedRow {
	rows := publishedRows(t)
	out := map[string][]publishedRow{}
	for _, x := range Shipped().Treatments {
		for _, id := range x.Rows {
			out[x.Crop] = append(out[x.Crop], rows[id])
		}
		for _, a := range x.Also {
			out[x.Crop] = append(out[x.Crop], rows[a.Row])
		}
	}
	return out
}

// Each headspace stands in a row of its own source for the same crop, or, where
// no page for the crop was read that prints one, on a general page for the pack.
func TestHeadspaceIsPublished(t *testing.T) {
	table, ofCrop := Shipped(), rowsOfCrops(t)
	general := readPublished(t, "headspace.csv")
	for _, x := range table.Treatments {
		want := "none"
		switch {
		case x.HeadspaceRow != "":
			want = x.HeadspaceRow + " table"
		case x.HeadspaceIn > 0:
			want = plain(x.HeadspaceIn)
		}
		found := false
		for _, p := range ofCrop[x.Crop] {
			found = found || p.source == x.HeadspaceSource && p.standing == string(x.HeadspaceStanding) && slices.Contains(p.headspaces(&x), want)
		}
		for _, g := range general {
			p := publishedRow{headspace: g["headspace"]}
			found = found || g["pack"] == string(x.Pack) && g["source"] == x.HeadspaceSource && g["standing"] == string(x.HeadspaceStanding) && slices.Contains(p.headspaces(&x), want)
		}
		if !found {
			t.Errorf("%s: no row of %s (%s) prints %s", x.ID, x.HeadspaceSource, x.HeadspaceStanding, want)
		}
	}
	for _, h := range table.Headspaces { // the general page for a solid pack is the dry row, the same for all containers
		if h.Pack == "dry" && (plain(h.Inches) != "0.5" || h.Source != "NCHFP_HEADSPACE") {
			t.Errorf("%+v", h)
		}
	}
}

// headspaces returns what a row prints for a treatment: "0.5", "none", "liquid
// table". A row may print it for pieces heated or raw, on a tray or in bags only.
func (p publishedRow) headspaces(x *Treatment) []string {
	applies := map[string]bool{"": true, "rigid": true, "table": true, "heated": x.Method != NoHeat, "raw": x.Method == NoHeat,
		"on a tray": x.Pack == TrayPack, "in bags": false}
	var out []string
	for _, part := range strings.Split(p.headspace, "; ") {
		found := regexp.MustCompile(`^(none|liquid|juice|[0-9/ ]*[0-9]) ?(.*)$`).FindStringSubmatch(part)
		if found == nil || !applies[found[2]] {
			continue
		}
		if v, err := parseAmount(found[1]); err == nil {
			out = append(out, plain(v))
		} else {
			out = append(out, part)
		}
	}
	return out
}

// The source's own start of the clock stands in its row, and one source says
// the same everywhere.
func TestSourceClockIsPublished(t *testing.T) {
	rows := publishedRows(t)
	says := map[string]ClockStart{}
	same := func(id, source string, method Method, clock ClockStart) {
		key := source + " " + string(method)
		if was, ok := says[key]; ok && clock != "" && was != clock {
			t.Errorf("%s: %s counts %s for %s, elsewhere %s", id, source, clock, method, was)
		}
		if clock != "" {
			says[key] = clock
		}
	}
	atOnce := 0
	for _, x := range Shipped().Treatments {
		if x.Minutes == 0 {
			continue
		}
		p := rows[x.Rows[0]]
		if x.Method == WaterBlanch && string(x.SourceClock) != p.clock || x.Method == SteamBlanch && p.water == 0 && string(x.SourceClock) != p.clock {
			t.Errorf("%s: row %s counts %q, the treatment's source %q", x.ID, p.id, p.clock, x.SourceClock)
		}
		if x.Method == WaterBlanch && x.SourceClock == AtOnce {
			atOnce++
		}
		same(x.ID, x.Source, x.Method, x.SourceClock)
		for _, a := range x.Also {
			method := a.Method
			if method == "" {
				method = x.Method
			}
			p := rows[a.Row]
			switch {
			case a.Minutes == 0 && a.ClockStart != NoClock:
				t.Errorf("%s also %s: clock %q for words", x.ID, a.Source, a.ClockStart)
			case a.Minutes > 0 && (method == WaterBlanch) == (p.water > 0) && string(a.ClockStart) != p.clock:
				t.Errorf("%s also %s: row %s counts %q, not %q", x.ID, a.Source, p.id, p.clock, a.ClockStart)
			case a.Minutes > 0:
				same(x.ID, a.Source, method, a.ClockStart)
			}
		}
	}
	if atOnce != 17 {
		t.Errorf("%d treatments in water rest on a page that counts at once, the second reading has 17", atOnce)
	}
}

// What a text says in numbers: "1 1/2 tsp citric", "25 min", "per gallon".
var (
	amountPattern = `(?:[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?)`
	amounts       = regexp.MustCompile(`(` + amountPattern + `)(?: ?(?:-|to) ?(` + amountPattern + `))? ?(°F|[a-z]+|F\b)?(?: (salt|lemon|citric))?`)
	rates         = regexp.MustCompile(`per (gallon|pint|quart|lb)`)
	unitNames     = map[string]string{"in": "in", "min": "min", "minute": "min", "minutes": "min", "s": "s", "seconds": "s", "°F": "F", "F": "F", "h": "h", "hour": "h", "hours": "h",
		"tsp": "tsp", "cup": "cup", "cups": "cup", "pint": "pint", "pints": "pint", "tbsp": "tbsp", "lb": "lb", "qt": "qt", "gallon": "gallon", "gallons": "gallon"}
)

func figuresIn(t *testing.T, texts ...string) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	for _, text := range texts {
		for _, m := range amounts.FindAllStringSubmatch(text, -1) {
			for _, number := range m[1:3] {
				if number == "" {
					continue
				}
				v, err := parseAmount(number)
				if err != nil {
					t.Fatalf("%q in %q", number, text)
				}
				out[strings.TrimSpace(plain(v)+" "+unitNames[m[3]]+" "+m[4])] = true
			}
		}
		for _, m := range rates.FindAllString(text, -1) {
			out[m] = true
		}
	}
	return out
}

// Every number in the cut, the size and the words stands in the row that the
// treatment was taken from, and every inch of that row stands in the treatment;
// what goes into the water and how it is cooled stand in a row of their sources.
func TestFiguresInWordsArePublished(t *testing.T) {
	rows, ofCrop := publishedRows(t), rowsOfCrops(t)
	for _, x := range Shipped().Treatments {
		var own []string
		for _, id := range x.Rows {
			own = append(own, rows[id].cut, rows[id].label, rows[id].more)
		}
		printed := func(source string) []string {
			var texts []string
			for _, p := range ofCrop[x.Crop] {
				if p.source == source {
					texts = append(texts, p.cut, p.label, p.more)
				}
			}
			return texts
		}
		for name, c := range map[string]struct{ shipped, published []string }{
			"cut, size and words": {[]string{x.Cut, x.Size, x.Words}, own},
			"blanch water":        {[]string{x.BlanchWater}, printed(x.BlanchSource)},
			"chill words":         {[]string{x.ChillWords}, printed(x.ChillSource)},
		} {
			published := figuresIn(t, c.published...)
			for figure := range figuresIn(t, c.shipped...) {
				if !published[figure] {
					t.Errorf("%s: %s say %s, the rows of the source say %v", x.ID, name, figure, c.published)
				}
			}
		}
		if x.Minutes == 0 {
			continue
		}
		shipped := figuresIn(t, x.Cut, x.Size, x.Words)
		for figure := range figuresIn(t, rows[x.Rows[0]].cut) {
			if strings.HasSuffix(figure, " in") && !shipped[figure] {
				t.Errorf("%s: row %s prints %s, which the treatment lacks", x.ID, x.Rows[0], figure)
			}
		}
	}
}

// The numbers in the notes stand in the rows that the treatment rests on or has
// beside it.
func TestFiguresInNotesArePublished(t *testing.T) {
	ofCrop := rowsOfCrops(t)
	for _, x := range Shipped().Treatments {
		var texts []string
		for _, p := range ofCrop[x.Crop] {
			texts = append(texts, p.cut, p.label, p.more, p.headspace+" in")
			for _, v := range []float64{p.water, p.waterHigh, p.steam, p.steamHigh} {
				texts = append(texts, plain(v)+" min", plain(v))
			}
		}
		published := figuresIn(t, texts...)
		note := regexp.MustCompile(`HNI30 \(2023\)|bulletin 4384`).ReplaceAllString(x.Note, "")
		for figure := range figuresIn(t, note) {
			if !published[figure] {
				t.Errorf("%s: the note says %s: %s", x.ID, figure, x.Note)
			}
		}
	}
}
