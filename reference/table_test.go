package reference

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func TestShippedCounts(t *testing.T) {
	table := Shipped()
	if n := len(table.Crops); n < 45 {
		t.Errorf("%d crops, at least 45 wanted", n)
	}
	if n := len(table.Treatments); n < 110 {
		t.Errorf("%d treatments, at least 110 wanted", n)
	}
	for _, c := range table.Crops {
		if len(table.TreatmentsOf(c.ID)) == 0 {
			t.Errorf("%s has no treatment", c.ID)
		}
	}
	if table.Edition != "Kettleside table 2026-11" {
		t.Errorf("edition %q", table.Edition)
	}
}

// The values where sources left a choice, one line each.
func TestChosenValues(t *testing.T) {
	for _, c := range []struct {
		id        string
		low, high float64
		source    string
		why       string
	}{
		{"snap-beans-cut-water", 3, 3, "UMAINE_SNAP24", "exactly this cut, read, newest"},
		{"snap-beans-pieces-water", 3, 3, "NDSU_FN403", "2 for about 1 in is the Penn State line"},
		{"spinach-leaves-water", 2, 2, "MSU_PFS_049", "names spinach"},
		{"spinach-tender-water", 1.5, 2, "UK_CSA", "read"},
		{"spinach-leaves-steam", 3, 5, "UMAINE_4040", "leafy greens in steam"},
		{"broccoli-flowerets-water", 3, 3, "NDSU_FN403", "read"},
		{"broccoli-flowerets-steam", 5, 5, "NDSU_FN403", "disagreements no. 2: one sheet has 3"},
		{"corn-on-the-cob-small-water", 7, 7, "MSU_PFS_283", "prints the size limits too"},
		{"corn-on-the-cob-medium-water", 9, 9, "MSU_PFS_283", ""},
		{"corn-on-the-cob-large-water", 11, 11, "MSU_PFS_283", ""},
		{"corn-whole-kernel-water", 4, 4, "MSU_HNI30", "second reading no. 8: 3 is the Penn State line"},
		{"green-peas-shelled-water", 1.5, 1.5, "ILL_OLD", "disagreements no. 7"},
		{"edible-pod-peas-small-water", 1.5, 1.5, "NCHFP_PEAPOD", "second reading no. 10"},
		{"edible-pod-peas-large-water", 2, 2, "NCHFP_PEAPOD", ""},
		{"carrots-sliced-water", 3, 3, "MSU_E1886", "second reading no. 6: bulletins read say 3"},
		{"cabbage-thin-wedges-water", 1.5, 1.5, "MSU_CABBAGE", "second reading no. 5"},
		{"cabbage-thick-wedges-water", 3, 3, "MSU_PFS_060", ""},
		{"cauliflower-pieces-water", 3, 3, "MSU_PFS_073", "disagreements no. 6"},
		{"cauliflower-large-water", 4, 4, "MSU_PFS_073", ""},
		{"celery-pieces-water", 3, 3, "NCHFP_CELERY", "second reading no. 1"},
		{"potatoes-new-small-water", 4, 6, "PSU_POTATO", "second reading no. 2"},
		{"potatoes-new-large-water", 8, 10, "PSU_POTATO", ""},
		{"rutabagas-cubes-water", 3, 3, "MSU_HNI52", "second reading no. 3"},
		{"sweet-peppers-halves-water", 3, 3, "MSU_HNI25", "disagreements no. 11: optional"},
		{"sweet-peppers-strips-water", 2, 2, "MSU_HNI25", ""},
		{"dandelion-greens-leaves-water", 2, 2, "MSU_GREENS_NEWS", "disagreements no. 16"},
		{"onions-rings-water", 10.0 / 60, 15.0 / 60, "NCHFP_TABLE", "seconds, exactly"},
		{"asparagus-medium-water", 3, 3, "NCHFP_ASPARAGUS", ""},
	} {
		x, ok := Shipped().Treatment(c.id)
		if !ok || x.Minutes != c.low || x.MinutesHigh != c.high || x.Source != c.source {
			t.Errorf("%s: %v to %v from %s, want %v to %v from %s (%s)", c.id, x.Minutes, x.MinutesHigh, x.Source, c.low, c.high, c.source, c.why)
		}
	}
	for id, words := range map[string]string{
		"pumpkin-mashed-cook":       "Cook until soft",
		"sweet-peppers-raw":         "No blanching needed",
		"pimiento-roasted-cook":     "400 to 450 °F for 6 to 8 minutes", // MSU_HNI25, second reading no. 4
		"beets-small-cook":          "25 to 30 minutes",                 // NDSU_FN403
		"tomatoes-juice-cook":       "simmer about 5 minutes",           // USU_TOM
		"onions-bulbs-water":        "centre is hot",                    // MSU_HNI24
		"zucchini-grated-steam":     "translucent",                      // NDSU_BENSON
		"mushrooms-saute-cook":      "almost done",                      // MSU_PFS_286
		"sweet-potatoes-whole-cook": "almost tender",                    // MSU_PFS_191
	} {
		if x, _ := Shipped().Treatment(id); !strings.Contains(x.Words, words) {
			t.Errorf("%s says %q, want %q in it", id, x.Words, words)
		}
	}
}

func TestEveryTreatmentIsWhole(t *testing.T) {
	table := Shipped()
	for _, x := range table.Treatments {
		if faults := checkTreatment(&x); len(faults) > 0 {
			t.Errorf("%s: %v", x.ID, faults)
		}
		crop, _ := table.Crop(x.Crop)
		if !strings.HasPrefix(x.ID, x.Crop+"-") || !strings.HasSuffix(x.ID, "-"+string(x.Method)) && x.Method != NoHeat {
			t.Errorf("%s: the id starts with the crop %s and ends with the method %s", x.ID, x.Crop, x.Method)
		}
		// KSTATE_OLD and UK_CSA: two gallons a pound for leafy greens; NCHFP_BLANCH: one for all else
		rule := map[bool]Rule{true: table.Rule("water-leafy-gal-per-lb"), false: table.Rule("water-gal-per-lb")}[crop.Leafy]
		if x.Method != WaterBlanch {
			rule = Rule{}
		}
		if x.WaterGalPerLb != rule.Value || x.WaterSource != rule.Source || x.WaterStanding != rule.Standing {
			t.Errorf("%s: %v gallons by %s (%s)", x.ID, x.WaterGalPerLb, x.WaterSource, x.WaterStanding)
		}
		if len(x.ShorterThanShipped) > 0 {
			t.Errorf("%s is shipped as shorter than shipped", x.ID)
		}
		if x.Changed != nil || x.Standing == EnteredHere {
			t.Errorf("%s is shipped as changed", x.ID)
		}
		// KSTATE_NEW: as long as the blanch; corn on the cob alone twice, as common practice
		if cob := x.Crop == "corn-on-the-cob"; cob != (x.ChillFactor == 2) || cob != (x.ChillStanding == CommonPractice) {
			t.Errorf("%s: chill factor %v, %s", x.ID, x.ChillFactor, x.ChillStanding)
		}
	}
	cob, _ := table.Treatment("corn-on-the-cob-medium-water")
	for _, says := range []string{"common practice in the trade, no single source", "4384 says twice", "HNI30 (2023) says the same time"} {
		if !strings.Contains(cob.Note, says) {
			t.Errorf("the note of corn on the cob lacks %q: %s", says, cob.Note)
		}
	}
}

// NCHFP_HEADSPACE, the four dry and four liquid cells, and the four of juice.
func TestHeadspaceTable(t *testing.T) {
	for _, c := range []struct {
		pack, size string
		mouth      Mouth
		inches     float64
	}{
		{"liquid", "pint", WideMouth, 0.5}, {"liquid", "quart", WideMouth, 1},
		{"liquid", "pint", NarrowMouth, 0.75}, {"liquid", "quart", NarrowMouth, 1.5},
		{"dry", "pint", WideMouth, 0.5}, {"dry", "quart", WideMouth, 0.5},
		{"dry", "pint", NarrowMouth, 0.5}, {"dry", "quart", NarrowMouth, 0.5},
		{"juice", "pint", WideMouth, 0.5}, {"juice", "quart", WideMouth, 1},
		{"juice", "pint", NarrowMouth, 1.5}, {"juice", "quart", NarrowMouth, 1.5},
	} {
		h, err := Shipped().HeadspaceFor(c.pack, c.size, c.mouth)
		if err != nil || h.Inches != c.inches || h.Source != "NCHFP_HEADSPACE" {
			t.Errorf("%+v: %+v, %v", c, h, err)
		}
	}
	if _, err := Shipped().HeadspaceFor("dry", "gallon", WideMouth); err == nil || !strings.Contains(err.Error(), `"pint" or "quart"`) {
		t.Errorf("a gallon: %v", err)
	}
	if _, err := (&Table{}).HeadspaceFor("dry", "pint", WideMouth); err == nil {
		t.Error("an empty table has no headspace")
	}
	for _, id := range []string{"tomatoes-juice-cook", "tomatoes-puree-cook", "tomatoes-stewed-cook"} {
		x, _ := Shipped().Treatment(id)
		if _, err := Shipped().HeadspaceFor(x.HeadspaceRow, "pint", WideMouth); x.HeadspaceRow == "" || err != nil {
			t.Errorf("%s: row %q, %v", id, x.HeadspaceRow, err)
		}
	}
}

// The rules that package batch asks for, with the values of method.md.
func TestRules(t *testing.T) {
	for id, want := range map[string][2]float64{
		"water-gal-per-lb": {1, 1}, "water-leafy-gal-per-lb": {2, 2}, "return-to-boil-min": {1, 1}, "batch-lb": {1, 1},
		"altitude-ft": {5000, 5000}, "altitude-extra-min": {1, 1}, "chill-water-max-f": {60, 60}, "ice-lb-per-lb": {1, 1},
		"freezer-lb-per-cuft-day": {2, 3}, "freezer-set-f": {-10, -10}, "freezer-set-hours": {24, 24}, "hold-f": {0, 0},
		"storage-months": {8, 12}, "steam-factor": {1.5, 1.5}, "steam-water-in": {1, 2}, "steam-basket-in": {3, 3},
		"steam-clock-min": {0, 0}, "tray-headspace-in": {0, 0},
		"reheat-f": {165, 165}, "freezer-capacity-lb-per-cuft": {35, 35}, "power-full-h": {48, 48}, "power-half-h": {24, 24},
		"dry-ice-lb-per-cuft": {2.5, 2.5}, "refreeze-max-f": {40, 40}, "insect-soak-salt-tsp-per-gal": {4, 4}, "kettle-reuse-lots": {2, 3},
	} {
		if r := Shipped().Rule(id); r.Value != want[0] || r.High != want[1] || r.Says == "" || r.Source == "" {
			t.Errorf("%s: %+v", id, r)
		}
	}
	if r := Shipped().Rule("ice-lb-per-lb"); r.Standing != FromMemory {
		t.Errorf("ice per pound was read only in a copy, yet it is %q", r.Standing)
	}
	if r := Shipped().Rule("return-to-boil-min"); !strings.Contains(r.Note, "at once") {
		t.Errorf("the older rule of the clock is not named: %s", r.Note)
	}
	for id, source := range map[string]string{"water-gal-per-lb": "NCHFP_BLANCH", "water-leafy-gal-per-lb": "KSTATE_OLD",
		"steam-clock-min": "KSTATE_NEW", "tray-headspace-in": "NCHFP_PACK"} {
		if r := Shipped().Rule(id); r.Source != source || r.Standing != Read {
			t.Errorf("%s: %s, %s", id, r.Source, r.Standing)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("an unknown rule is a programmer's error and panics")
		}
	}()
	Shipped().Rule("no-such-rule")
}

// Every rule that the program reads by its id, or that its texts name as a
// placeholder, is required of a table; so Rule does not panic on one that was
// read.
func TestRequiredRulesAreAllThatAreUsed(t *testing.T) {
	required := map[string]bool{}
	for _, id := range RequiredRules() {
		required[id] = true
		Shipped().Rule(id)
	}
	patterns := map[string]*regexp.Regexp{
		".go":   regexp.MustCompile(`(\bRule\()?"([a-z]+(?:-[a-z]+)+)"`),
		".json": regexp.MustCompile(`(\{)([a-z]+(?:-[a-z]+)+)\}`),
	}
	used := 0
	for _, folder := range []string{"app", "exports", "cmd", "content"} {
		err := filepath.WalkDir(filepath.Join("..", folder), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(path, "_test.go") || patterns[filepath.Ext(path)] == nil {
				return err
			}
			text, err := os.ReadFile(path)
			for _, found := range patterns[filepath.Ext(path)].FindAllSubmatch(text, -1) {
				asked, id := len(found[1]) > 0, string(found[len(found)-1])
				if _, rule := find(Shipped().Rules, func(r *Rule) bool { return r.ID == id }); !rule && !asked {
					continue // another word with hyphens
				}
				if used++; !required[id] {
					t.Errorf("%s reads the rule %s, which RequiredRules lacks", path, id)
				}
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if used < 20 {
		t.Errorf("only %d uses of rules found: the program reads them in another way now", used)
	}
}

// Best-quality months as each source prints them.
func TestStorageIsPublished(t *testing.T) {
	published := map[string][2]float64{
		"AIB410_STORE": {8, 12}, "UMAINE_SNAP24": {6, 8}, "MSU_GREENS_NEWS": {12, 12}, "PSU_SQUASH": {12, 12},
		"MU_SQUASH12": {10, 10}, "MSU_HNI46": {8, 10}, "MSU_PFS_793": {2, 2}, "UNL_PEPPER": {8, 8}, "UNL_TOM": {8, 8}, "UNL_ONION": {3, 6},
	}
	for _, x := range Shipped().Treatments {
		if want := published[x.StorageSource]; x.StorageMonths != want[0] || x.StorageMonthsHigh != want[1] {
			t.Errorf("%s: %v to %v months from %s", x.ID, x.StorageMonths, x.StorageMonthsHigh, x.StorageSource)
		}
	}
}

func TestYields(t *testing.T) {
	for _, c := range []struct {
		crop      string
		low, high float64
		share     float64
		source    string
	}{
		{"snap-beans", 2.0 / 3, 1, 0, "HG10_MEM"},
		{"broccoli", 1, 1.5, 0, "MSU_HNI12"},
		{"carrots", 1.25, 1.5, 0.9, "MSU_E1886"},
		{"green-peas", 2, 2.5, 0.317, "HG10_MEM"}, // share: 3.25 of 10.25 lb, field case C19
		{"corn-whole-kernel", 2, 2.5, 0.71, "MSU_HNI30"},
		{"corn-on-the-cob", 0, 0, 0.71, "MSU_CORN_OLD"},
		{"asparagus", 1, 1.5, 0, "MSU_HORT369"},
		{"summer-squash", 1.25, 1.25, 0, "MU_SQUASH12"},
	} {
		y, ok := Shipped().ChosenYield(c.crop)
		if !ok || y.LbPerPint != c.low || y.LbPerPintHigh != c.high || y.UsableShare != c.share || y.Source != c.source {
			t.Errorf("%s: %+v", c.crop, y)
		}
	}
	if y, _ := Shipped().ChosenYield("green-peas"); y.UsableShareSource != "FIELD_C19" || y.AsBought != "in pods" {
		t.Errorf("peas: %+v", y)
	}
	if _, ok := Shipped().ChosenYield("tomatoes"); ok {
		t.Error("no source gives a frozen yield of tomatoes")
	}
	// pounds per pint and pints per market unit must tell the same story
	for _, y := range Shipped().Yields {
		if y.WeightLb == 0 || y.Pints == 0 || y.LbPerPint == 0 {
			continue
		}
		if most := y.WeightHighLb / y.LbPerPint; y.PintsHigh > most*1.3 || y.PintsHigh < most*0.7 {
			t.Errorf("%s from %s: %v pints, but the weight gives %v", y.Crop, y.Source, y.PintsHigh, most)
		}
	}
}

// Frozen vegetables are cooked before they are eaten, also for salads: no text
// may invite to anything else.
func TestNothingInvitesToEatThemUncooked(t *testing.T) {
	table := Shipped()
	texts := map[string]string{}
	for _, x := range table.Treatments {
		texts[x.ID+" note"], texts[x.ID+" words"] = x.Note, x.Words
		for i, a := range x.Also {
			texts[fmt.Sprint(x.ID, " also ", i)] = a.Note + " " + a.Words
		}
	}
	for _, c := range table.Crops {
		texts[c.ID] = c.Note
		for i, p := range c.Prep {
			texts[fmt.Sprint(c.ID, " prep ", i)] = p.Prepare + " " + p.Select + " " + p.Soak
		}
	}
	for _, r := range table.Rules {
		if r.ID != "reheat-f" { // which says to cook them also for cold salads
			texts[r.ID] = r.Says + " " + r.Note
		}
	}
	invites := regexp.MustCompile(`(?i)uncooked|salad|smoothie|\bdips\b|eat(en)? raw|without cooking|ready to eat|snack`)
	for id, text := range texts {
		if found := invites.FindString(text); found != "" {
			t.Errorf("%s says %q: %s", id, found, text)
		}
	}
}

// Sentences end as sentences and fit a handout; nothing is left of a source's
// shorthand.
func TestWordsAreFitForHandouts(t *testing.T) {
	table := Shipped()
	var texts []string
	for _, x := range table.Treatments {
		texts = append(texts, x.Words, x.Note, x.ChillWords)
	}
	for _, c := range table.Crops {
		texts = append(texts, c.Note)
		for _, p := range c.Prep {
			texts = append(texts, p.Prepare, p.Select, p.Soak)
		}
	}
	for _, r := range table.Rules {
		texts = append(texts, r.Says, r.Note)
	}
	for _, y := range table.Yields {
		texts = append(texts, y.Note)
	}
	for _, c := range table.Compositions {
		texts = append(texts, c.Note)
	}
	for _, p := range table.Pieces {
		texts = append(texts, p.Note)
	}
	for _, e := range table.Kinetics {
		texts = append(texts, e.Limits)
		for _, p := range e.Parts {
			texts = append(texts, p.Ours)
		}
	}
	for _, c := range table.Containers {
		texts = append(texts, c.Note)
	}
	says := map[string]bool{}
	for _, c := range []ClockStart{AtReturnToBoil, AtOnce, NoClock} {
		if s := c.Says(); s == "" || says[s] || strings.ContainsAny(s, "0123456789") || strings.Contains(s, "minute") {
			t.Errorf("%s: %q", c, s)
		}
		says[c.Says()] = true
	}
	for _, s := range texts {
		if s == "" {
			continue
		}
		if len(s) > 260 || !strings.HasSuffix(s, ".") || strings.ToUpper(s[:1]) != s[:1] {
			t.Errorf("not a short sentence: %q", s)
		}
		if slices.ContainsFunc([]string{"blanching.csv", "yields.csv", "method.md", "prep.csv", ";;", "  "}, func(bad string) bool { return strings.Contains(s, bad) }) {
			t.Errorf("shorthand: %q", s)
		}
	}
}

func BenchmarkShipped(b *testing.B) {
	for b.Loop() {
		if _, ok := Shipped().Treatment("zucchini-grated-steam"); !ok {
			b.Fatal("not there")
		}
	}
}
