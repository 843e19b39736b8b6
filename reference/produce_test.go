package reference

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const mmPerInch = 25.4

// readHeat returns the rows of a file of testdata/heat by the names of its
// columns.
func readHeat(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../testdata/heat/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	var out []map[string]string
	for _, fields := range rows[1:] {
		row := map[string]string{}
		for i, name := range rows[0] {
			row[name] = fields[i]
		}
		out = append(out, row)
	}
	return out
}

func amount(t *testing.T, text string) float64 {
	t.Helper()
	x, err := parseAmount(text)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return x
}

func TestEveryCropHasAComposition(t *testing.T) {
	table := Shipped()
	if len(table.Compositions) != len(table.Crops) {
		t.Errorf("%d compositions for %d crops", len(table.Compositions), len(table.Crops))
	}
	for _, crop := range table.Crops {
		c, ok := table.Composition(crop.ID)
		if !ok {
			t.Errorf("%s has no composition", crop.ID)
			continue
		}
		sum := c.WaterPct + c.ProteinPct + c.FatPct + c.CarbohydratePct + c.FiberPct + c.AshPct
		if math.Abs(sum-100) > 1.5 {
			t.Errorf("%s adds up to %v", crop.ID, sum)
		}
		if c.Source != "USDA_SR26" || c.FreezingC != 0 && c.FreezingSource != "ASHRAE_REFR_T3" || c.FreezingC < -3 || c.FreezingC > 0 {
			t.Errorf("%s: %+v", crop.ID, c)
		}
		if c.StandIn == "" {
			continue
		}
		// red peppers stand in for pimientos; the table's sweet peppers are green
		other, _ := table.Composition(c.StandIn)
		if crop.ID != "pimiento" && (other.Item != c.Item || other.WaterPct != c.WaterPct) || c.Note == "" {
			t.Errorf("%s stands on %s: %+v", crop.ID, c.StandIn, c)
		}
	}
}

// The table and the file that package heat is tested with say the same.
func TestCompositionAgreesWithTestdata(t *testing.T) {
	rows := readHeat(t, "crop-composition.csv")
	if len(rows) != len(Shipped().Compositions) {
		t.Errorf("%d rows for %d compositions", len(rows), len(Shipped().Compositions))
	}
	for _, row := range rows {
		c, ok := Shipped().Composition(row["crop"])
		number := func(name string) float64 { return amount(t, row[name]) }
		freezing := 0.0
		if row["freezing_c"] != "" {
			freezing = number("freezing_c")
		}
		if !ok || c.Item != row["item"] || c.WaterPct != number("water_pct") || c.ProteinPct != number("protein_pct") || c.FatPct != number("fat_pct") ||
			math.Abs(c.CarbohydratePct+c.FiberPct-number("carbohydrate_pct")) > 1e-9 || c.FiberPct != number("fiber_pct") || c.AshPct != number("ash_pct") ||
			c.FreezingC != freezing || c.Source != row["source"] || string(c.Standing) != row["standing"] || c.FreezingSource != row["freezing_source"] ||
			string(c.FreezingStanding) != row["freezing_standing"] || (c.StandIn != "") != (row["stands"] == "stand-in") || c.Note != row["note"] {
			t.Errorf("%s: the table has %+v, the file %v", row["crop"], c, row)
		}
	}
}

// Freezing points as ASHRAE's table 3 prints them, with its basis: what was
// remembered there does not count as read here.
func TestFreezingPointsArePublished(t *testing.T) {
	names := map[string]string{"artichoke-globe": "Artichokes, globe", "asparagus": "Asparagus", "snap-beans": "Beans, snap", "carrots": "Carrots",
		"broccoli": "Broccoli", "corn-on-the-cob": "Corn, sweet, yellow", "green-peas": "Peas, green", "spinach": "Spinach", "okra": "Okra",
		"tomatoes": "Tomatoes, ripe", "sweet-potatoes": "Potatoes, sweet", "turnip-greens": "Turnip greens", "kale": "Kale"}
	found := 0
	for _, row := range readHeat(t, "composition.csv") {
		for crop, item := range names {
			if item != row["item"] {
				continue
			}
			found++
			c, _ := Shipped().Composition(crop)
			remembered := strings.Contains(row["basis"], "memory") && !strings.Contains(row["note"], "freezing point read")
			if c.FreezingC != amount(t, row["freezing_c"]) || (c.FreezingStanding == FromMemory) != remembered {
				t.Errorf("%s: %v °C, %s; the table of ASHRAE has %s, %s", crop, c.FreezingC, c.FreezingStanding, row["freezing_c"], row["basis"])
			}
		}
	}
	if found != len(names) {
		t.Errorf("%d of %d items found", found, len(names))
	}
}

func TestEveryTimedTreatmentHasAPiece(t *testing.T) {
	table := Shipped()
	timed, bases := 0, map[SizeBasis]int{}
	for _, x := range table.Treatments {
		p, ok := table.Piece(x.ID)
		if ok != (x.Minutes > 0) {
			t.Errorf("%s: minutes %v, piece %v", x.ID, x.Minutes, ok)
		}
		if !ok {
			continue
		}
		timed++
		bases[p.Basis]++
		if p.SizeLowMm > p.SizeMm || p.SizeMm > p.SizeHighMm || p.SizeLowMm <= 0 {
			t.Errorf("%s: %+v", x.ID, p)
		}
		if p.SizeLowMm == p.SizeHighMm {
			t.Errorf("%s is an estimate and has no spread", x.ID)
		}
		if strings.Contains(x.Cut, "leaves") && !strings.Contains(p.Note, " mat ") {
			t.Errorf("%s does not say that leaves mat: %s", x.ID, p.Note)
		}
		if strings.Contains(x.Cut, "leaves") && x.Crop != "cabbage" && (p.Shape != SlabPiece || p.SizeLowMm < 0.15 || p.SizeHighMm > 0.4) {
			t.Errorf("%s: a leaf of %+v", x.ID, p)
		}
	}
	if timed != len(table.Pieces) || timed < 90 {
		t.Errorf("%d timed treatments, %d pieces", timed, len(table.Pieces))
	}
	t.Logf("%d pieces: %v", timed, bases)
}

// A larger grade of the same cut is larger in each of the three sizes.
func TestGradesGrow(t *testing.T) {
	for _, ids := range [][]string{
		{"asparagus-small-water", "asparagus-medium-water", "asparagus-large-water"},
		{"lima-beans-small-water", "lima-beans-medium-water", "lima-beans-large-water"},
		{"butter-beans-small-water", "butter-beans-medium-water", "butter-beans-large-water"},
		{"pinto-beans-small-water", "pinto-beans-medium-water", "pinto-beans-large-water"},
		{"edible-pod-peas-small-water", "edible-pod-peas-large-water"},
		{"potatoes-new-small-water", "potatoes-new-large-water"},
		{"brussels-sprouts-small-water", "brussels-sprouts-medium-water", "brussels-sprouts-large-water"},
		{"cabbage-thin-wedges-water", "cabbage-thick-wedges-water"},
		{"cauliflower-pieces-water", "cauliflower-large-water"},
		{"corn-on-the-cob-small-water", "corn-on-the-cob-medium-water", "corn-on-the-cob-large-water"},
		{"okra-small-water", "okra-large-water"},
		{"mushrooms-slices-steam", "mushrooms-buttons-steam", "mushrooms-whole-steam"},
	} {
		var last Piece
		for _, id := range ids {
			p, _ := Shipped().Piece(id)
			if p.SizeLowMm <= last.SizeLowMm || p.SizeMm <= last.SizeMm || p.SizeHighMm <= last.SizeHighMm {
				t.Errorf("%s: %+v is not over %+v", id, p, last)
			}
			last = p
		}
	}
}

// printedSizes are the ways in which cut and size print inches, and what they
// mean for half the thickness or the radius.
var printedSizes = []struct {
	pattern *regexp.Regexp
	check   func(p Piece, inches []float64) bool
}{
	{regexp.MustCompile(`^up to (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeHighMm <= in[0]/2 }},
	{regexp.MustCompile(`^over (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeLowMm >= in[0]/2 }},
	{regexp.MustCompile(`^(\d.*) to (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeLowMm >= in[0]/2 && p.SizeHighMm <= in[1]/2 }},
	{regexp.MustCompile(`^about (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeMm <= in[0]/2 && p.SizeHighMm >= in[0]/2 }},
	{regexp.MustCompile(`^under about (\d.*) to (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeHighMm <= in[1]/2 && p.SizeHighMm > in[0]/2 }},
	{regexp.MustCompile(`^over about (\d.*) to (\d.*) in across$`), func(p Piece, in []float64) bool { return p.SizeLowMm >= in[0]/2 && p.SizeLowMm < in[1]/2 }},
	{regexp.MustCompile(`^(\d.*) in slices(?:, peeled)?$`), func(p Piece, in []float64) bool {
		return p.Shape == SlabPiece && near(p.SizeMm, in[0]/2) && p.SizeLowMm >= 0.8*p.SizeMm && p.SizeHighMm <= 1.2*p.SizeMm
	}},
	{regexp.MustCompile(`^(\d.*) in cubes$`), cubeFits},
	{regexp.MustCompile(`^up to (\d.*) in long$|^over (\d.*) in long$|^(\d.*) in lengths$|^whole or cut (\d) to (\d) in$|^cut (\d) to (\d.*) in$`),
		func(p Piece, _ []float64) bool { return p.Basis != FromTheCut }}, // lengths do not bound the thickness
}

func near(got, want float64) bool { return math.Abs(got-want) <= 0.05 }

// cubeFits: half the side; the sphere whose first term of the series decays as
// fast as the cube's, 3 (π/2)² / half² = π² / radius²; the sphere of the cube's
// volume.
func cubeFits(p Piece, in []float64) bool {
	half := in[0] / 2
	return p.Shape == SpherePiece && near(p.SizeLowMm, half) && near(p.SizeMm, half*2/math.Sqrt(3)) && near(p.SizeHighMm, half*math.Cbrt(6/math.Pi))
}

func TestPiecesAgreeWithPrintedInches(t *testing.T) {
	inches := regexp.MustCompile(`\d in\b`)
	checked := 0
	for _, x := range Shipped().Treatments {
		p, ok := Shipped().Piece(x.ID)
		if !ok {
			continue
		}
		printed := false
		for _, text := range []string{x.Cut, x.Size} {
			if !inches.MatchString(text) {
				continue
			}
			known := false
			for _, way := range printedSizes {
				found := way.pattern.FindStringSubmatch(text)
				if found == nil {
					continue
				}
				var mm []float64
				for _, number := range found[1:] {
					if number != "" {
						mm = append(mm, amount(t, number)*mmPerInch)
					}
				}
				known, printed = true, printed || way.pattern != printedSizes[len(printedSizes)-1].pattern
				checked++
				rounded := p // to a tenth of a millimetre
				rounded.SizeLowMm, rounded.SizeHighMm = p.SizeLowMm+0.05, p.SizeHighMm-0.05
				if !way.check(p, mm) && !way.check(rounded, mm) {
					t.Errorf("%s is printed as %q and has %+v", x.ID, text, p)
				}
				break
			}
			if !known {
				t.Errorf("%s: nothing here understands %q", x.ID, text)
			}
		}
		if p.Basis == FromTheCut && !printed {
			t.Errorf("%s is from the cut, but %q and %q print no thickness", x.ID, x.Cut, x.Size)
		}
	}
	if checked < 22 {
		t.Errorf("only %d printed sizes found", checked)
	}
}

// Sizes from other pages: PROF_ASPARAGUS, AMS_SNAP_BEANS and the 1/4 in cubes
// of MSU_PFS_171, which stand in the preparation of carrots too.
func TestPiecesAgreeWithTheirSources(t *testing.T) {
	for id, in := range map[string][2]float64{
		"asparagus-small-water": {5. / 16, 8. / 16}, "asparagus-medium-water": {8. / 16, 11. / 16}, "asparagus-large-water": {11. / 16, 14. / 16},
		"snap-beans-cut-water": {12. / 64, 24. / 64}, "snap-beans-pieces-water": {12. / 64, 24. / 64},
	} {
		p, _ := Shipped().Piece(id)
		low, high := in[0]/2*mmPerInch, in[1]/2*mmPerInch
		if p.Basis != FromASource || p.Standing != Read || p.SizeLowMm < low || p.SizeLowMm > low+0.1 || p.SizeHighMm > high || p.SizeHighMm < high-0.1 {
			t.Errorf("%s: %+v, printed %.2f to %.2f mm", id, p, low, high)
		}
	}
	dice, _ := Shipped().Piece("carrots-diced-water")
	carrots, _ := Shipped().Crop("carrots")
	if !cubeFits(dice, []float64{mmPerInch / 4}) || !slices.ContainsFunc(carrots.Prep, func(p Prep) bool {
		return p.Source == dice.Source && strings.Contains(p.Prepare, "1/4 in cubes")
	}) {
		t.Errorf("%+v", dice)
	}
}

// Typical containers hold what they are sold as, and a bag's measures make its
// volume.
func TestContainers(t *testing.T) {
	for _, kind := range []string{"box", "jar", "bag"} {
		for size, ml := range map[string]float64{"pint": 473.2, "quart": 946.4} {
			for _, mouth := range []Mouth{WideMouth, NarrowMouth} {
				c, ok := Shipped().ContainerFor(kind, size, mouth)
				if !ok || c.VolumeML < ml-1 || c.VolumeML > 1.08*ml || c.Basis != OurGuess || c.Source != "" {
					t.Errorf("%s %s %s: %+v", mouth, size, kind, c)
				}
				if v := c.WidthMm * c.HeightMm * c.ThicknessMm / 1000; kind == "bag" && math.Abs(v/c.VolumeML-1) > 0.1 {
					t.Errorf("%s: %v mL by its measures", c.Name, v)
				}
			}
		}
	}
	if n := len(Shipped().Containers); n != 8 {
		t.Errorf("%d containers", n)
	}
}
