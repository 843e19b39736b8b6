package reference

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/kettleside/app/measure"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// whole compares tables with what only In sets.
var whole = cmp.AllowUnexported(Table{})

func edit(id, field, typed string) Edit {
	return Shipped().NewEdit(id, field, typed, "our agency's sheet", "A. Teacher", noon)
}

func TestWithUsesGoodEdits(t *testing.T) {
	for _, c := range []struct{ id, field, typed, want string }{
		{"snap-beans-cut-water", FieldMinutes, "4", "4"},
		{"snap-beans-cut-water", FieldMinutes, "3-4", "3-4"},
		{"snap-beans-cut-water", FieldMinutes, "3 – 4 min", "3-4"},
		{"snap-beans-cut-water", FieldMinutes, "3 to 4 minutes", "3-4"},
		{"snap-beans-cut-water", FieldMinutes, "3 1/2", "3.5"},
		{"snap-beans-cut-water", FieldMinutes, "3½", "3.5"},
		{"carrots-sliced-water", FieldMinutes, "2", "2"}, // NCHFP_TABLE and HG10_MEM print 2
		{"onions-rings-water", FieldMinutes, "12 s", "12 s"},
		{"onions-rings-water", FieldMinutes, "10 s-20 s", "10 s-20 s"},
		{"onions-rings-water", FieldMinutes, "12-20 secs.", "12 s-20 s"},
		{"snap-beans-cut-water", FieldMinutes, "4 mins", "4"},
		{"snap-beans-cut-water", FieldMinutes, "4 Min.", "4"},
		{"snap-beans-cut-water", FieldMinutes, "3 min 30 s", "3.5"},
		{"snap-beans-cut-water", FieldMinutes, "3 min 30 s – 5 min", "3.5-5"},
		{"snap-beans-cut-water", FieldMinutes, "200-240 s", "3.3333333333333335-4"},
		{"spinach-leaves-water", FieldMinutes, "2 min 18 s", "2.3"},
		{"spinach-leaves-water", FieldMinutes, "2-2 minutes 15 seconds", "2-2.25"},
		{"snap-beans-cut-water", FieldWords, "Until bright green.", "Until bright green."},
		{"pumpkin-mashed-cook", FieldWords, "Pressure-cook until soft.", "Pressure-cook until soft."},
		{"corn-on-the-cob-medium-water", FieldChillFactor, "1", "1"}, // MSU_HNI30: the same time
		{"pumpkin-mashed-cook", FieldChillWords, "Spread on trays.", "Spread on trays."},
		{"snap-beans-cut-water", FieldHeadspace, "1", "1"},
		{"snap-beans-cut-water", FieldHeadspace, "3/4 in", "0.75"},
		{"snap-beans-cut-water", FieldWater, "2", "2"},
		{"snap-beans-cut-water", FieldBlanchWater, "1 tsp salt per gallon", "1 tsp salt per gallon"},
		{"cauliflower-pieces-water", FieldBlanchWater, "", ""},
		{"snap-beans-cut-water", FieldNote, "Ask for yellow ones.", "Ask for yellow ones."},
		{"snap-beans-cut-water", FieldStorage, "8-12", "8-12"},
		{"broccoli-flowerets-steam", FieldWords, "Until bright green.", "Until bright green."},
		{"hot-peppers-whole-raw", FieldWords, "Pack raw, stems on.", "Pack raw, stems on."},
		{"beets-small-cook", FieldWords, "Cueza de 25 a 30 minutos.", "Cueza de 25 a 30 minutos."},
		{"tomatoes-peeled-raw", FieldWords, "Sumerja 30 segundos y pele.", "Sumerja 30 segundos y pele."},
		{"snap-beans-cut-water", FieldMinutes, "3 a 4 minutos", "3-4"},
		{"spinach-leaves-water", FieldMinutes, "150 seg", "2.5"},
		{"snap-beans-cut-water", FieldHeadspace, "3/4 pulg", "0.75"},
	} {
		t.Run(c.id+" "+c.field+" "+c.typed, func(t *testing.T) {
			e := edit(c.id, c.field, c.typed)
			table, err := Shipped().With([]Edit{e})
			if err != nil {
				t.Fatal(err)
			}
			x, _ := table.Treatment(c.id)
			if got := FieldText(x, c.field); got != c.want {
				t.Errorf("reads %q, want %q", got, c.want)
			}
			if x.Changed[c.field] != e || len(x.Changed) != 1 {
				t.Errorf("changed %v", x.Changed)
			}
			if faults := checkTreatment(&x); len(faults) > 0 {
				t.Errorf("%v", faults)
			}
			for _, id := range []string{x.Source, x.ChillSource, x.HeadspaceSource, x.StorageSource} {
				if _, ok := table.Source(id); !ok {
					t.Errorf("source %s is not in the table", id)
				}
			}
			if s, _ := Shipped().Treatment(c.id); s.Changed != nil || FieldText(s, c.field) != e.Old {
				t.Error("the shipped table changed")
			}
		})
	}
}

// An entered number names no agency; the shipped one stays beside it.
func TestEnteredMinutesKeepTheShippedOnes(t *testing.T) {
	table, err := Shipped().With([]Edit{edit("snap-beans-cut-water", FieldMinutes, "4"), edit("snap-beans-cut-water", FieldMinutes, "5")})
	if err != nil {
		t.Fatal(err)
	}
	x, _ := table.Treatment("snap-beans-cut-water")
	if x.Minutes != 5 || x.MinutesHigh != 5 || x.Source != EnteredHereSource || x.Standing != EnteredHere {
		t.Errorf("%v to %v from %s, %s", x.Minutes, x.MinutesHigh, x.Source, x.Standing)
	}
	was, _ := Shipped().Treatment("snap-beans-cut-water")
	if len(x.Also) != len(was.Also)+1 || x.Also[0].Minutes != 3 || x.Also[0].Source != "UMAINE_SNAP24" {
		t.Errorf("also %+v", x.Also[0])
	}
	for _, a := range x.Also {
		if a.Agrees {
			t.Errorf("%s agrees with 5 minutes", a.Source)
		}
	}
}

func TestWithRefusesInOneSentence(t *testing.T) {
	for _, c := range []struct{ id, field, typed, says string }{
		{"snap-beans-cut-water", FieldMinutes, "abc", `you typed "abc"; allowed is minutes from above 0 to 60`},
		{"snap-beans-cut-water", FieldMinutes, "", "nothing was typed; allowed is minutes"},
		{"snap-beans-cut-water", FieldMinutes, "0", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "-3", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "6-4", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "61", "to 60"},
		{"snap-beans-cut-water", FieldMinutes, "3", "take the edit back"},
		{"snap-beans-cut-water", FieldMinutes, "2", "never shortened"},
		{"snap-beans-cut-water", FieldMinutes, "150 s", "never shortened"},
		{"snap-beans-cut-water", FieldMinutes, "2 min 59 s", "never shortened"},
		{"snap-beans-cut-water", FieldMinutes, "3 min 60 s", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "3 s 30 min", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "3.5 min 30 s", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "3 min 30", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "4 hours", "minutes from above 0"},
		{"snap-beans-cut-water", FieldMinutes, "2.9999999995", "take the edit back"}, // clamped to the shortest, the shipped one here
		{"carrots-sliced-water", FieldMinutes, "1.5", "the shortest published time is 2 min"},
		{"carrots-sliced-water", FieldMinutes, "1.5-4", "USDA, Home and Garden Bulletin 10"},
		{"edible-pod-peas-small-water", FieldMinutes, "1", "never shortened"}, // LF_PEAS 1 to 1.5 is a newspaper without an author
		{"pumpkin-mashed-cook", FieldMinutes, "20", "change its words"},
		{"pumpkin-mashed-cook", FieldWords, " ", "needs words"},
		{"snap-beans-cut-water", FieldWords, "One minute is plenty.", "their own field"},
		{"beets-small-cook", FieldWords, "Cook 2 minutes.", "times that the shipped words have"},
		{"pimiento-roasted-cook", FieldWords, "Roast for 1 minute.", "times that the shipped words have"},
		{"tomatoes-peeled-raw", FieldWords, "Dip 5 seconds.", "times that the shipped words have"},
		{"snap-beans-cut-water", FieldWords, "Basta un minuto.", "their own field"},
		{"snap-beans-cut-water", FieldWords, "Until bright green, 1 ½ min.", "their own field"},
		{"beets-small-cook", FieldWords, "Cueza 2 minutos.", "times that the shipped words have"},
		{"beets-small-cook", FieldWords, "Cueza media hora.", "times that the shipped words have"},
		{"tomatoes-peeled-raw", FieldWords, "Sumerja 5 seg.", "times that the shipped words have"},
		{"snap-beans-cut-water", FieldWords, "a\nb", "one line"},
		{"snap-beans-cut-water", FieldWords, "a\u0085b", "can all be seen"},
		{"snap-beans-cut-water", FieldNote, "a\u202eb", "can all be seen"},
		{"snap-beans-cut-water", FieldNote, "a\u200bb", "can all be seen"},
		{"snap-beans-cut-water", FieldBlanchWater, "a\u2028b", "can all be seen"},
		{"pumpkin-mashed-cook", FieldChillWords, "a\u2029b", "can all be seen"},
		{"snap-beans-cut-water", FieldNote, strings.Repeat("x", 301), "at most 300"},
		{"snap-beans-cut-water", FieldChillFactor, "0.5", "from 1 to 3"},
		{"pumpkin-mashed-cook", FieldChillFactor, "1", "chilled by words"},
		{"snap-beans-cut-water", FieldChillWords, "Stir.", "change the chill factor"},
		{"snap-beans-cut-water", FieldHeadspace, "10", "inches from 1/4 to 3"},
		{"broccoli-flowerets-water", FieldHeadspace, "1/2", "needs no headspace"},
		{"tomatoes-juice-cook", FieldHeadspace, "1 1/2", "goes by the size and the mouth of the container (juice table)"},
		{"broccoli-flowerets-steam", FieldWater, "2", "no water blanch"},
		{"spinach-leaves-water", FieldWater, "half", "from 1 to 5"},
		{"snap-beans-cut-water", FieldStorage, "30", "whole months from 1 to 24"},
		{"snap-beans-cut-water", FieldStorage, "8.5", "whole months from 1 to 24"},
		{"snap-beans-cut-water", FieldStorage, "8-9 1/2", "whole months from 1 to 24"},
		{"snap-beans-cut-water", "clock", "at once", `allowed is "minutes", "words"`},
		{"no-such-treatment", FieldMinutes, "3", "no treatment"},
	} {
		t.Run(c.id+" "+c.field+" "+c.typed, func(t *testing.T) {
			table, err := Shipped().With([]Edit{edit(c.id, c.field, c.typed)})
			var e *EditError
			if !errors.As(err, &e) || !strings.Contains(e.Says, c.says) || e.Stale {
				t.Fatalf("got %v, want %q in it", err, c.says)
			}
			if !strings.HasSuffix(e.Says, ".") || strings.Contains(e.Says, "\n") {
				t.Errorf("not one sentence: %s", e.Says)
			}
			if diff := cmp.Diff(Shipped(), table, whole); diff != "" {
				t.Errorf("a refused edit changed the table: %s", diff)
			}
		})
	}
	for says, spoil := range map[string]func(*Edit){
		"a name and a reason":  func(e *Edit) { e.Who = "" },
		"needs a name and":     func(e *Edit) { e.Why = " " },
		"the day on which":     func(e *Edit) { e.When = time.Time{} },
		"name and reason: you": func(e *Edit) { e.Who = "A.\u2066 Teacher" },
		"can all be seen":      func(e *Edit) { e.Why = "because\u200d" },
	} {
		e := edit("snap-beans-cut-water", FieldMinutes, "4")
		spoil(&e)
		if _, err := Shipped().With([]Edit{e}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", says, err)
		}
	}
}

// Minutes below the shipped ones are marked with the sources that print them;
// the last digit below the shortest is that shortest time.
func TestShorterThanShippedNamesItsSources(t *testing.T) {
	for _, c := range []struct {
		typed   string
		low     float64
		shorter string
	}{
		{"2", 2, "Blanching times table"},
		{"1.9999999995", 2, "Blanching times table"},
		{"1 min 60 s", 0, ""}, // refused
		{"2.5", 2.5, "Blanching times table"},
		{"4", 4, ""},
		{"3-4", 3, ""},
	} {
		table, _ := Shipped().With([]Edit{edit("carrots-sliced-water", FieldMinutes, "5"), edit("carrots-sliced-water", FieldMinutes, c.typed)})
		x, _ := table.Treatment("carrots-sliced-water")
		if c.low == 0 {
			c.low = 5 // the edit before it
		}
		names := strings.Join(x.ShorterThanShipped, "; ")
		if x.Minutes != c.low || (names != "") != (c.shorter != "") || !strings.Contains(names, c.shorter) || strings.Contains(names, "E1886") {
			t.Errorf("%q: %v minutes, shorter than shipped by %q", c.typed, x.Minutes, names)
		}
		if n := len(x.ShorterThanShipped); n != 0 && (n != 2 || !strings.HasSuffix(x.ShorterThanShipped[0], ", from memory")) {
			t.Errorf("%q: %q", c.typed, x.ShorterThanShipped)
		}
		if low, high, source := x.ShippedMinutes(); low != 3 || high != 3 || source != "MSU_E1886" {
			t.Errorf("%q: shipped as %v to %v from %s", c.typed, low, high, source)
		}
	}
	for _, x := range Shipped().Treatments {
		if low, high, source := x.ShippedMinutes(); low != x.Minutes || high != x.MinutesHigh || source != x.Source {
			t.Errorf("%s: shipped as %v to %v from %s", x.ID, low, high, source)
		}
	}
}

// Values that an educator entered name no agency.
func TestEnteredHeadspaceAndWaterNameNoAgency(t *testing.T) {
	table, err := Shipped().With([]Edit{edit("kale-leaves-water", FieldHeadspace, "1"), edit("kale-leaves-water", FieldWater, "3")})
	if err != nil {
		t.Fatal(err)
	}
	x, _ := table.Treatment("kale-leaves-water")
	if x.HeadspaceSource != EnteredHereSource || x.HeadspaceStanding != EnteredHere || x.WaterSource != EnteredHereSource || x.WaterStanding != EnteredHere {
		t.Errorf("headspace %s (%s), water %s (%s)", x.HeadspaceSource, x.HeadspaceStanding, x.WaterSource, x.WaterStanding)
	}
	if x.Source != "MSU_PFS_049" || x.SourceClock != AtOnce {
		t.Errorf("the minutes are still %s's, counted %s", x.Source, x.SourceClock)
	}
}

// What measure prints of a time can be typed again.
func TestPrintedMinutesAreRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := float64(rapid.IntRange(1, 1800).Draw(t, "low")) / 60
		high := low + float64(rapid.IntRange(0, 1800).Draw(t, "more"))/60
		printed := measure.MinutesRange(low, high)
		a, b, ok := typedMinutes(printed)
		if !ok || math.Abs(a-low) > 1e-9 || math.Abs(b-high) > 1e-9 {
			t.Fatalf("%q of %v to %v is read as %v to %v, %v", printed, low, high, a, b, ok)
		}
	})
}

// An edit made against another shipped value is reported and left out; the
// good ones beside it count.
func TestStaleEditIsReported(t *testing.T) {
	stale := edit("snap-beans-cut-water", FieldMinutes, "4")
	stale.Old = "2.5"
	good := edit("broccoli-flowerets-water", FieldMinutes, "4")
	table, err := Shipped().With([]Edit{stale, good})
	var e *EditError
	if !errors.As(err, &e) || !e.Stale || e.Index != 0 || !strings.Contains(e.Says, `from "2.5", but the shipped value is "3"`) {
		t.Fatalf("got %v", err)
	}
	if x, _ := table.Treatment("snap-beans-cut-water"); x.Minutes != 3 || x.Changed != nil {
		t.Errorf("a stale edit was applied: %v", x.Minutes)
	}
	if x, _ := table.Treatment("broccoli-flowerets-water"); x.Minutes != 4 {
		t.Errorf("the good edit was lost: %v", x.Minutes)
	}
}

func TestTakingEditsBackRestoresExactly(t *testing.T) {
	edits := []Edit{
		edit("snap-beans-cut-water", FieldMinutes, "4"), edit("snap-beans-cut-water", FieldMinutes, "5"),
		edit("snap-beans-cut-water", FieldNote, "Hello."), edit("corn-on-the-cob-small-water", FieldChillFactor, "1"),
	}
	all, err := Shipped().With(edits)
	if err != nil {
		t.Fatal(err)
	}
	again, err := all.With(nil)
	if err != nil || cmp.Diff(all, again, whole) != "" {
		t.Errorf("no more edits change an edited table: %v", err)
	}
	edits = Without(edits, "snap-beans-cut-water", FieldMinutes)
	if len(edits) != 2 {
		t.Fatalf("%d edits left", len(edits))
	}
	some, err := Shipped().With(edits)
	if err != nil {
		t.Fatal(err)
	}
	if x, _ := some.Treatment("snap-beans-cut-water"); x.Minutes != 3 || x.Source != "UMAINE_SNAP24" || x.Note != "Hello." {
		t.Errorf("%+v", x)
	}
	edits = Without(edits, "snap-beans-cut-water", FieldNote)
	edits = Without(edits, "corn-on-the-cob-small-water", FieldChillFactor)
	none, err := Shipped().With(edits)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(Shipped(), none, whole); diff != "" {
		t.Errorf("not as shipped: %s", diff)
	}
}

// Whatever is typed, With does not panic, never touches the shipped table, and
// what it accepts passes the reader's checks and is not shorter than every
// published time.
func TestWithHoldsForAnyTyping(t *testing.T) {
	before, err := Shipped().With(nil)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		var edits []Edit
		for range rapid.IntRange(0, 4).Draw(t, "edits") {
			x := rapid.SampledFrom(Shipped().Treatments).Draw(t, "treatment")
			typed := rapid.OneOf(rapid.SampledFrom([]string{"1", "2", "3", "4-6", "1/2", "½", "10 s", "5 min", "12-8", "Inf", "NaN"}), rapid.String()).Draw(t, "typed")
			edits = append(edits, edit(x.ID, rapid.SampledFrom(EditFields).Draw(t, "field"), typed))
		}
		table, _ := Shipped().With(edits)
		for _, x := range table.Treatments {
			if faults := checkTreatment(&x); len(faults) > 0 {
				t.Fatalf("%s: %v", x.ID, faults)
			}
			was, _ := Shipped().Treatment(x.ID)
			floor := was.Minutes
			for _, p := range was.Also {
				if p.Minutes > 0 && p.Method == "" && p.Standing != ReadElsewhere {
					floor = min(floor, p.Minutes)
				}
			}
			if x.Minutes < floor {
				t.Fatalf("%s: %v minutes, the shortest published are %v", x.ID, x.Minutes, floor)
			}
		}
	})
	if diff := cmp.Diff(before, Shipped(), whole); diff != "" {
		t.Errorf("the shipped table changed: %s", diff)
	}
}

func TestEveryFieldTextCanBeGivenBack(t *testing.T) {
	for _, x := range Shipped().Treatments {
		if x.Minutes == 0 {
			continue
		}
		low, high, ok := typedMinutes(FieldText(x, FieldMinutes))
		if !ok || low != x.Minutes || high != x.MinutesHigh {
			t.Errorf("%s: %q is read as %v to %v", x.ID, FieldText(x, FieldMinutes), low, high)
		}
		if low, high, ok := typedSpan(FieldText(x, FieldStorage)); !ok || low != x.StorageMonths || high != x.StorageMonthsHigh {
			t.Errorf("%s: storage %q", x.ID, FieldText(x, FieldStorage))
		}
	}
}

func TestEditsFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder", editsFile)
	if edits, err := ReadEdits(path); edits != nil || err != nil {
		t.Errorf("no file yet: %v, %v", edits, err)
	}
	want := []Edit{edit("snap-beans-cut-water", FieldMinutes, "4"), edit("chard-stems-water", FieldNote, "<Ask> “us” & others")}
	if err := WriteEdits(path, want); err != nil {
		t.Fatal(err)
	}
	got, err := ReadEdits(path)
	if err != nil || cmp.Diff(want, got) != "" {
		t.Errorf("%v: %s", err, cmp.Diff(want, got))
	}
	if got, err := decodeEdits([]byte("\uFEFF[" + `{"treatment":"a","field":"","old":"","new":"","why":"","who":"","when":"0001-01-01T00:00:00Z"}` + "]\n")); err != nil || len(got) != 1 || !got[0].When.IsZero() {
		t.Errorf("a whole edit: %+v, %v", got, err)
	}
	if err := WriteEdits(path, nil); err != nil {
		t.Fatal(err)
	}
	if got, err := ReadEdits(path); len(got) != 0 || err != nil {
		t.Errorf("taken back: %v, %v", got, err)
	}
	whole := `{"treatment":"a","field":"minutes","old":"3","new":"4","why":"b","who":"c","when":"2026-11-25T12:00:00Z"}`
	spoilt := func(old, replacement string) string { return "[" + strings.Replace(whole, old, replacement, 1) + "]" }
	for _, damaged := range []string{"", "{", "[", `[{"treatment":"a"`, `[{"tratment":"a"}]`, "[] []", `{"treatment":"a"}`, whole,
		"null", "[null]", "[" + whole + ",]", "[" + whole, "[" + whole + "] 1", spoilt(`"treatment"`, `"Treatment"`), spoilt(`"3"`, "null"),
		spoilt(`"old":"3"`, `"old":"3","old":"2"`), spoilt(`"old":"3"`, `"old":"3","OLD":"2"`), spoilt(`"3"`, "3"), spoilt(`"3"`, `["3"]`),
		spoilt(`"old":"3",`, ""), spoilt("2026-11-25T12:00:00Z", "yesterday"), spoilt(`"3"`, "\"\xff\"")} {
		if err := os.WriteFile(path, []byte(damaged), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := ReadEdits(path); err == nil {
			t.Errorf("%q was read", damaged)
		}
		if now, _ := os.ReadFile(path); string(now) != damaged {
			t.Errorf("%q was not left alone", damaged)
		}
	}
}

func TestEditsPath(t *testing.T) {
	folder := t.TempDir()
	program := filepath.Join(folder, "kettleside")
	config := func() (string, error) { return filepath.Join("home", "config"), nil }
	if got, err := editsPath(program, config); err != nil || got != filepath.Join("home", "config", "kettleside", editsFile) {
		t.Errorf("%s, %v", got, err)
	}
	if err := os.Mkdir(filepath.Join(folder, "kettleside-data"), 0o755); err != nil {
		t.Fatal(err)
	}
	if got, err := editsPath(program, config); err != nil || got != filepath.Join(folder, "kettleside-data", editsFile) {
		t.Errorf("%s, %v", got, err)
	}
	if _, err := editsPath("", func() (string, error) { return "", os.ErrNotExist }); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("no folder at all: %v", err)
	}
	if _, err := EditsPath(); err != nil {
		t.Logf("this user has no configuration folder: %v", err)
	}
}
