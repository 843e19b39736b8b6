package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// shown are the ids of the rows on the screen.
func (r *room) shown() []string { return r.crops.grid.table.IDs(r.crops.grid.rows) }

// cellOf is what stands in one cell.
func (r *room) cellOf(row, col int) *cell {
	c := newCell()
	r.crops.grid.update(widget.TableCellID{Row: row, Col: col}, c)
	return c
}

func columnNamed(title string) int {
	return slices.IndexFunc(columns, func(c column) bool { return c.title == title })
}

const beans = "snap-beans-cut-water"

func TestEveryRowSaysWhatIsDoneAndFromWhere(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	equal(t, "rows", len(r.shown()), len(r.session.Table().Treatments))
	for row := range r.crops.grid.rows {
		for col, c := range columns {
			if text := r.cellOf(row, col).first; text == "" || text == "0" || strings.HasPrefix(text, "0 ") {
				t.Errorf("row %d has %q as %s", row, text, c.title)
			}
		}
	}
}

func TestSearchAndFilters(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	test.Type(r.crops.search, "BEANS cut")
	if rows := r.shown(); len(rows) == 0 || len(rows) > 20 || !slices.Contains(rows, beans) {
		t.Errorf("search shows %v", rows)
	}
	if !strings.Contains(r.crops.count.Text(), " of ") {
		t.Errorf("the count says %q", r.crops.count.Text())
	}
	r.crops.search.SetText("no such crop")
	if r.crops.grid.Visible() || !r.crops.none.Visible() {
		t.Error("an empty result is not said")
	}
	r.crops.ShowAll()
	equal(t, "rows after showing all", len(r.shown()), len(r.session.Table().Treatments))
	r.crops.method.SetSelected("Steam blanch")
	for _, id := range r.shown() {
		if x, _ := r.session.Table().Treatment(id); x.Method != reference.SteamBlanch {
			t.Errorf("%s is no steam blanch", id)
		}
	}
	r.crops.method.SetSelected(allMethods)
	r.crops.group.SetSelected("greens")
	if n := len(r.shown()); n == 0 || n > 40 {
		t.Errorf("%d greens", n)
	}
	r.crops.standing.SetSelected(string(reference.FromMemory))
	for _, id := range r.shown() {
		if x, _ := r.session.Table().Treatment(id); x.Standing != reference.FromMemory {
			t.Errorf("%s is %s", id, x.Standing)
		}
	}
	r.crops.ShowAll()
	r.crops.changed.SetChecked(true)
	equal(t, "rows changed here", len(r.shown()), 0)
}

func TestSorting(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	first := r.shown()[0]
	minutes := func() (out []float64) {
		for _, id := range r.shown() {
			if x, _ := r.session.Table().Treatment(id); x.Minutes > 0 {
				out = append(out, x.Minutes)
			}
		}
		return out
	}
	h := newHead(r.crops.grid.sort)
	col := columnNamed("Minutes or words")
	r.crops.grid.updateHead(widget.TableCellID{Row: -1, Col: col}, h)
	h.Tapped(nil)
	if m := minutes(); !slices.IsSorted(m) {
		t.Errorf("not sorted: %v", m)
	}
	last, _ := r.session.Table().Treatment(r.shown()[len(r.shown())-1])
	equal(t, "minutes of the last row", last.Minutes, 0)
	h.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	m := minutes()
	slices.Reverse(m)
	if !slices.IsSorted(m) {
		t.Error("not sorted downwards")
	}
	r.crops.grid.updateHead(widget.TableCellID{Row: -1, Col: col}, h)
	if h.arrow == nil || h.arrow.Name() != look.IconDown().Name() {
		t.Error("the heading does not show that it sorts downwards")
	}
	h.Tapped(nil)
	equal(t, "first row in the order of the table", r.shown()[0], first)
	clock := newHead(r.crops.grid.sort)
	r.crops.grid.updateHead(widget.TableCellID{Row: -1, Col: columnNamed("Clock starts")}, clock)
	clock.Tapped(nil)
	equal(t, "first row", r.shown()[0], first)
}

func TestKeysMoveThroughRows(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.window.Canvas().Focus(r.crops.grid)
	press := func(key fyne.KeyName) { r.crops.grid.TypedKey(&fyne.KeyEvent{Name: key}) }
	press(fyne.KeyDown)
	press(fyne.KeyDown)
	equal(t, "row", r.crops.grid.at(), 2)
	press(fyne.KeyUp)
	equal(t, "row", r.crops.grid.at(), 1)
	equal(t, "record", r.crops.record.shown, r.shown()[1])
	press(fyne.KeyEnd)
	equal(t, "row", r.crops.grid.at(), len(r.shown())-1)
	press(fyne.KeyPageUp)
	press(fyne.KeyHome)
	equal(t, "row", r.crops.grid.at(), 0)
	press(fyne.KeyEnter)
	equal(t, "batches after Enter", len(r.session.Class().Batches), 5)
}

func TestTapShowsTheRecord(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	test.TapCanvas(r.window.Canvas(), fyne.NewPos(60, 200))
	if at := r.crops.grid.at(); at < 1 || r.crops.record.shown != r.shown()[at] {
		t.Errorf("row %d, record %s", at, r.crops.record.shown)
	}
}

// TestRecords asks of every treatment that its record names start and source.
func TestRecords(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	for _, x := range r.session.Table().Treatments {
		r.crops.choose(x.ID)
		rec := r.crops.record
		source, _ := r.session.Table().Source(x.Source)
		for _, part := range []string{source.Title, source.Publisher, source.Edition} {
			if !strings.Contains(rec.source.Text(), part) {
				t.Errorf("%s: the source does not name %q", x.ID, part)
			}
		}
		if rec.minutes.Figure().Text == "" || rec.clock.Text() == "" {
			t.Errorf("%s: no minutes or words, or no start", x.ID)
		}
		markup := test.RenderObjectToMarkup(rec.parts)
		if got := strings.Count(markup, "value, ") + strings.Count(markup, "same minutes") + strings.Count(markup, "same words") + strings.Count(markup, "Another value"); len(x.Also) > 0 && got < len(x.Also) {
			t.Errorf("%s: %d of %d other values", x.ID, got, len(x.Also))
		}
	}
}

func TestUseInABatch(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose("broccoli-flowerets-steam")
	test.Tap(r.crops.record.use)
	batches := r.session.Class().Batches
	equal(t, "batches", len(batches), 5)
	equal(t, "treatment", batches[4].Treatment, "broccoli-flowerets-steam")
	equal(t, "batch looked at", r.session.Selected(), 4)
	if !strings.Contains(r.crops.record.told.Text(), "batch 5") {
		t.Errorf("it says %q", r.crops.record.told.Text())
	}
	test.Tap(r.crops.record.work)
	equal(t, "asked for the batch area", r.opened, 1)
	r.crops.choose(beans)
	if r.crops.record.work.Visible() {
		t.Error("the offer stands for another treatment")
	}
}

// edit fills in the form and saves it.
func (r *room) edit(field, value, why, who string) {
	test.Tap(r.crops.record.change)
	r.crops.form.field.SetSelected(fieldNames[field])
	r.crops.form.value.SetText(value)
	r.crops.form.why.SetText(why)
	r.crops.form.who.SetText(who)
	r.crops.form.save()
}

func TestChangeAValueAndTakeItBack(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	row := r.crops.grid.at()
	before, _ := r.session.Table().Treatment(beans)
	r.edit(reference.FieldMinutes, "4", "our own bulletin", "A. Lead")
	if r.crops.form.content.Visible() {
		t.Fatalf("the form stands: %s", r.crops.form.problem.Text())
	}
	after, _ := r.session.Table().Treatment(beans)
	equal(t, "minutes", after.Minutes, 4)
	equal(t, "name of who changed it", after.Changed[reference.FieldMinutes].Who, "A. Lead")
	equal(t, "day of the change", after.Changed[reference.FieldMinutes].When.Format("2006-01-02"), "2027-06-01")
	minutes := r.cellOf(row, columnNamed("Minutes or words"))
	equal(t, "cell", minutes.first, "4 min")
	equal(t, "beside it", minutes.second, "shipped 3 min")
	equal(t, "its ink", minutes.ink, look.Edited)
	if !r.cellOf(row, 0).marked || r.cellOf(row+1, 0).marked {
		t.Error("the sign of a change stands in the wrong row")
	}
	markup := test.RenderObjectToMarkup(r.crops.record.content)
	for _, text := range []string{"Entered here", "4 min instead of 3 min", "our own bulletin", "Take back"} {
		if !strings.Contains(strings.Join(strings.Fields(markup), " "), text) {
			t.Errorf("the record does not say %q", text)
		}
	}
	if b, _ := r.session.SelectedBatch(); b.Minutes.Text != "4 min" {
		t.Errorf("the batch has %s", b.Minutes.Text)
	}
	r.crops.changed.SetChecked(true)
	equal(t, "rows changed here", len(r.shown()), 1)
	r.crops.changed.SetChecked(false)

	test.Tap(r.crops.record.change)
	if !r.crops.form.back.Visible() || !strings.Contains(r.crops.form.shipped.Text(), "As shipped: 3 min") {
		t.Errorf("the form says %q", r.crops.form.shipped.Text())
	}
	test.Tap(r.crops.form.back)
	back, _ := r.session.Table().Treatment(beans)
	equal(t, "minutes taken back", back.Minutes, before.Minutes)
	equal(t, "source taken back", back.Source, before.Source)
	equal(t, "changes left", len(back.Changed), 0)
	if r.cellOf(row, 0).marked {
		t.Error("the sign of a change stands after it was taken back")
	}
}

func TestRefusedChangesAreSaid(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	for _, one := range []struct{ field, value, why, who, says string }{
		{reference.FieldMinutes, "2", "quicker", "A", "never shortened"},
		{reference.FieldMinutes, "lots", "why", "A", "allowed is"},
		{reference.FieldMinutes, "4", "", "A", "needs a name and a reason"},
		{reference.FieldMinutes, "4", "why", "", "needs a name and a reason"},
		{reference.FieldMinutes, "3", "why", "A", "is the shipped value"},
		{reference.FieldHeadspace, "9", "why", "A", "1/4 to 3"},
	} {
		r.edit(one.field, one.value, one.why, one.who)
		f := r.crops.form
		if !f.content.Visible() || !strings.Contains(f.problem.Text(), one.says) {
			t.Errorf("%q is answered with %q", one.value, f.problem.Text())
		}
		equal(t, "what was typed", f.value.Text, one.value)
		f.value.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if f.content.Visible() {
			t.Error("Escape does not leave the form")
		}
	}
	if x, _ := r.session.Table().Treatment(beans); len(x.Changed) > 0 {
		t.Error("a refused change was kept")
	}
}

// TestEveryFieldOpensInTheForm walks through all fields of some treatments.
func TestEveryFieldOpensInTheForm(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	for _, id := range []string{beans, "pumpkin-mashed-cook", "broccoli-flowerets-steam"} {
		r.crops.choose(id)
		test.Tap(r.crops.record.change)
		for _, name := range r.crops.form.field.Options {
			r.crops.form.field.SetSelected(name)
			if fieldNamed(name) == "" || r.crops.form.shipped.Text() == "" {
				t.Errorf("%s: %s shows nothing", id, name)
			}
		}
	}
	for _, field := range reference.EditFields {
		if fieldNames[field] == "" {
			t.Errorf("the field %s has no name", field)
		}
	}
}

func TestTwoLines(t *testing.T) {
	looktest.App(t, look.Light)
	style := fyne.TextStyle{}
	wide := fyne.MeasureText("Cook until soft,", 13, style).Width + 1
	for _, one := range [][3]string{
		{"hearts", "hearts", ""},
		{"Cook until soft, then mash", "Cook until soft,", "then mash"},
		{"", "", ""},
	} {
		first, second := twoLines(one[0], wide, 13, style)
		if first != one[1] || second != one[2] {
			t.Errorf("%q breaks into %q and %q", one[0], first, second)
		}
	}
	for _, long := range []string{"Cook until soft, then put through a sieve and cool in cold water", "Unbreakablelongwordthatgoesonandon"} {
		first, second := twoLines(long, wide, 13, style)
		for _, line := range []string{first, second} {
			if fyne.MeasureText(line, 13, style).Width > wide {
				t.Errorf("%q is too wide", line)
			}
		}
		if !strings.HasSuffix(first+second, "…") {
			t.Errorf("%q and %q do not say that something is left out", first, second)
		}
	}
}

func TestFits(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	if least := r.crops.Content.MinSize(); least.Width > 820 || least.Height > areaHigh {
		t.Errorf("the area needs %v", least)
	}
	var front float32
	for i, wide := range widths(areaWide - sideWidth(areaWide) - 14) {
		if i < essential {
			front += wide + gap()
		}
	}
	if room := areaWide - sideWidth(areaWide) - 14; front > room+1 {
		t.Errorf("minutes and clock need %.0f, there are %.0f", front, room)
	}
	for _, wide := range []float32{300, 900, 2000} {
		for i, w := range widths(wide) {
			if w < columns[i].wide-1 {
				t.Errorf("%s is only %.0f wide", columns[i].title, w)
			}
		}
	}
}

// TestUnfinishedChangeIsKept asks that a click on another row loses nothing
// that was typed into the form, and says what to do.
func TestUnfinishedChangeIsKept(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	f := r.crops.form
	test.Tap(r.crops.record.change)
	if r.crops.Unfinished() {
		t.Error("a form in which nothing is typed is unfinished")
	}
	for _, e := range []*formEntry{f.value, f.why, f.who} {
		test.Type(e, "9")
		row := r.crops.grid.at()
		r.crops.grid.chooseRow(row + 1)
		if !r.crops.Unfinished() || !f.content.Visible() || r.crops.record.content.Visible() {
			t.Fatal("another row gives the change up")
		}
		equal(t, "what it says", f.problem.Text(), unfinished)
		equal(t, "row that is marked", r.crops.grid.at(), row)
		e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		equal(t, "unfinished after Escape", r.crops.Unfinished(), false)
		test.Tap(r.crops.record.change)
	}
	r.crops.grid.chooseRow(r.crops.grid.at() + 1) // nothing typed: no question
	if f.content.Visible() || r.crops.record.shown == beans {
		t.Error("an untouched form holds the row")
	}
}

// recordSays is all text below the minutes of a record.
func (r *room) recordSays() string {
	return textfits.All(r.crops.record.parts)
}

// TestRecordsTakeNumbersFromTheRules asks for water and cold in the units of
// the class.
func TestRecordsTakeNumbersFromTheRules(t *testing.T) {
	r := open(t, look.Light, 1400, 3000)
	greens := slices.IndexFunc(r.session.Table().Treatments, func(x reference.Treatment) bool {
		crop, _ := r.session.Table().Crop(x.Crop)
		return crop.Leafy && x.WaterGalPerLb == 2 && x.StorageMonths > 0
	})
	r.crops.choose(r.session.Table().Treatments[greens].ID)
	for units, want := range map[measure.System][]string{
		measure.US:     {"2 gallons per pound", "1 gallon per pound", "months at 0 °F"},
		measure.Metric: {"16.7 L per kg", "8.35 L per kg", "months at −18 °C"},
	} {
		if err := r.session.Change("Units", func(c *class.Class) { c.Units = units }); err != nil {
			t.Fatal(err)
		}
		looktest.Settle(r.window, 1400, 3000)
		for _, text := range want {
			if said := r.recordSays(); !strings.Contains(said, text) {
				t.Errorf("the record does not say %q: %s", text, said)
			}
		}
	}
}

// TestChillIsThatOfTheBatch asks that the column shows what a batch at low
// altitude shows.
func TestChillIsThatOfTheBatch(t *testing.T) {
	table := reference.Shipped()
	corn, _ := table.Treatment("corn-on-the-cob-small-water")
	for _, x := range append(table.Treatments[:20:20], corn) {
		if x.ChillFactor == 0 {
			continue
		}
		equal(t, x.ID, chillWords(table, x), batch.Work(batch.Job{Treatment: x}, table).Chill.Text)
	}
}

// TestRecordsWarn asks every record for the cautions that concern it.
func TestRecordsWarn(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	for _, x := range r.session.Table().Treatments {
		r.crops.choose(x.ID)
		want := []string{"Not ready to eat", "165 °F"}
		switch x.Method {
		case reference.WaterBlanch, reference.CookThrough:
			want = append(want, "scald")
		case reference.SteamBlanch:
			want = append(want, "Steam burns")
		}
		if x.Crop == "hot-peppers" {
			want = append(want, "gloves")
		}
		for _, text := range want {
			if said := r.crops.record.caution.Text(); !strings.Contains(said, text) {
				t.Errorf("%s: “%s” does not say “%s”", x.ID, said, text)
			}
		}
	}
}
