package exports

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// fiveAnswers are what a person needs at the stove, as they stand on paper.
type fiveAnswers struct {
	minutes, clock   string
	water, headspace string
	freezer          string // what it takes in a day
	each             string // what one load weighs, by which the water is checked
}

// printedCell is a cell of a dumped sheet.
type printedCell struct{ column, role, text string }

var (
	dumpedCell = regexp.MustCompile(`^  ([A-Z]+)\d+ \[([a-z0-9 ]+?)(?:, open)?\] \w+ (".*?")(?: = .*)?$`)
	dumpedRow  = regexp.MustCompile(`^row \d+, `)
)

// printedRows reads one sheet of a dump, row by row.
func printedRows(t *testing.T, dumped, sheet string) (rows [][]printedCell) {
	t.Helper()
	_, text, found := strings.Cut(dumped, "\n== "+sheet+"\n")
	if !found {
		t.Fatalf("no sheet %s", sheet)
	}
	text, _, _ = strings.Cut(text, "\n== ")
	for _, l := range strings.Split(text, "\n") {
		if dumpedRow.MatchString(l) {
			rows = append(rows, nil)
		} else if m := dumpedCell.FindStringSubmatch(l); m != nil && len(rows) > 0 {
			text, err := strconv.Unquote(m[3])
			noErr(t, err)
			last := len(rows) - 1
			rows[last] = append(rows[last], printedCell{m[1], m[2], strings.ReplaceAll(text, noBreak, " ")})
		}
	}
	return rows
}

// onCards reads the station cards by their titles, as a person does: a figure
// stands under its name.
func onCards(rows [][]printedCell, v *words.Voice) map[string]fiveAnswers {
	cards := map[string]fiveAnswers{}
	var title string
	names := map[string]string{} // column → the name that stands over it
	for _, r := range rows {
		a := cards[title]
		for _, c := range r {
			switch c.role {
			case string(cardTitle):
				title, a = c.text, fiveAnswers{}
				clear(names)
			case string(cardMinutes), string(cardWords):
				a.minutes = c.text
			case string(cardClock), string(cardWhat):
				if at, rest, ok := strings.Cut(strings.ReplaceAll(c.text, ": ", "\n"), "\n"); ok && at == v.Say("The clock starts") {
					a.clock = strings.ReplaceAll(rest, "\n", ": ")
				}
			case string(cardLabel):
				names[c.column] = c.text
			case string(cardValue), string(cardGuess):
				switch names[c.column] {
				case v.Say("Least water in the kettle"), v.Say("Water in the kettle"):
					a.water = c.text
				case v.Say("Headspace"):
					a.headspace = c.text
				case v.Say("The freezer takes in a day"):
					a.freezer = c.text
				case v.Say("Each load"):
					a.each = c.text
				}
			}
		}
		if title != "" {
			cards[title] = a
		}
	}
	return cards
}

// The five questions (minutes, when the clock starts, water, headspace, what the
// freezer takes) are answered by the printed text of the station cards alone,
// for every treatment of the table, and the answers are the table's.
func TestFiveQuestionsAreAnsweredOnPaper(t *testing.T) {
	slow(t)
	var ids []string
	crops := map[string]bool{}
	for _, x := range reference.Shipped().Treatments {
		ids = append(ids, x.ID)
	}
	for _, l := range languages {
		w := workedIn(l, classOf(t, ids...))
		data, err := Workbook(w, Options{Sheets: []string{StationCardsSheet}})
		noErr(t, err)
		answers := onCards(printedRows(t, string(dump(t, data)), w.Voice.Say("Station cards")), w.Voice)
		for _, x := range w.Table.Treatments {
			got, found := answers[x.ID]
			if !found {
				t.Errorf("%s: %s has no card", l, x.ID)
				continue
			}
			crops[x.Crop] = true
			compareFive(t, string(l)+" "+x.ID, w.Voice, w.Table, x, got)
		}
	}
	if all := reference.Shipped().Crops; len(crops) != len(all) {
		t.Errorf("%d crops of %d were asked about", len(crops), len(all))
	}
}

// compareFive holds the answers against the table: two pounds in pint boxes with
// a wide mouth, at 640 ft, with a freezer of 14 cu ft.
func compareFive(t *testing.T, at string, v *words.Voice, table *reference.Table, x reference.Treatment, got fiveAnswers) {
	t.Helper()
	minutes := x.Words
	if x.Minutes > 0 {
		minutes = measure.MinutesRangeBy(v, x.Minutes, x.MinutesHigh)
	}
	clock := v.Say(x.ClockStart.Says())
	if x.Minutes > 0 && x.Words != "" {
		clock += ": " + x.Words
	}
	inches := x.HeadspaceIn
	if x.HeadspaceRow != "" {
		cell, err := table.HeadspaceFor(x.HeadspaceRow, "pint", reference.WideMouth)
		noErr(t, err)
		inches = cell.Inches
	}
	headspace := v.Say("none")
	if inches > 0 && x.Pack != reference.TrayPack {
		headspace = v.Amount(measure.Kitchen(inches, measure.Inch))
	}
	rule := table.Rule("freezer-lb-per-cuft-day")
	freezer := measure.Range(measure.Plain(14*rule.Value), measure.Plain(14*rule.High), "lb")
	for _, c := range [][3]string{
		{"minutes", got.minutes, minutes}, {"clock", got.clock, clock}, {"headspace", got.headspace, headspace}, {"freezer", got.freezer, freezer},
	} {
		if c[1] != c[2] {
			t.Errorf("%s: the card answers %q for %s; the table says %q", at, c[1], c[0], c[2])
		}
	}
	switch x.Method {
	case reference.WaterBlanch:
		var each measure.Mass
		var water measure.Volume
		noErr(t, each.UnmarshalText([]byte(got.each)))
		noErr(t, water.UnmarshalText([]byte(got.water)))
		if need := each.In(measure.Pound) * x.WaterGalPerLb; water.In(measure.Gallon) != need {
			t.Errorf("%s: the card answers %s of water for %s; the table asks for %v gal", at, got.water, got.each, need)
		}
	case reference.SteamBlanch:
		if depth := batch.RuleTexts(table, measure.US, v)["steam-water-in"]; !strings.Contains(got.water, depth) {
			t.Errorf("%s: the card answers %q; the water is %s deep", at, got.water, depth)
		}
	case reference.CookThrough:
		if got.water != v.Say("as for cooking") {
			t.Errorf("%s: the card answers %q for water", at, got.water)
		}
	default:
		if got.water != v.Say("none") {
			t.Errorf("%s: the card answers %q for water", at, got.water)
		}
	}
}

// onTreatments reads the treatments sheet: a line of six columns, and under it
// the sentence on water.
func onTreatments(rows [][]printedCell) (list []fiveAnswers) {
	for i, r := range rows[:len(rows)-1] {
		by := map[string]string{}
		for _, c := range r {
			by[c.column] = c.text
		}
		if len(by["D"]) == 0 || len(by["F"]) == 0 || r[0].role == string(head) || len(rows[i+1]) != 1 {
			continue
		}
		a := fiveAnswers{minutes: by["B"], clock: by["D"], water: rows[i+1][0].text}
		a.headspace, _, _ = strings.Cut(by["F"], "; ")
		list = append(list, a)
	}
	return list
}

// The treatments sheet alone answers the first four of them.
func TestTreatmentsAreAnsweredOnPaper(t *testing.T) {
	slow(t)
	var ids []string
	for _, x := range reference.Shipped().Treatments {
		ids = append(ids, x.ID)
	}
	for _, l := range languages {
		w := workedIn(l, classOf(t, ids...))
		data, err := Workbook(w, Options{Sheets: []string{TreatmentsSheet}})
		noErr(t, err)
		list := onTreatments(printedRows(t, string(dump(t, data)), w.Voice.Say("Treatments")))
		if len(list) != len(ids) {
			t.Fatalf("%s: %d treatments read of %d", l, len(list), len(ids))
		}
		for i, x := range w.Table.Treatments {
			minutes := x.Words
			if x.Minutes > 0 {
				minutes = measure.MinutesRangeBy(w.Voice, x.Minutes, x.MinutesHigh)
			}
			water := w.Voice.Say("%s gal per lb prepared", measure.Plain(x.WaterGalPerLb))
			if got := list[i]; got.minutes != minutes || got.clock != w.Voice.Say(x.ClockStart.Says()) || got.headspace != w.Batches[i].Headspace.Text ||
				x.Method == reference.WaterBlanch && !strings.Contains(got.water, water) {
				t.Errorf("%s %s: the sheet answers %+v", l, x.ID, got)
			}
		}
	}
}
