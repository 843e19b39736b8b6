package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

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
