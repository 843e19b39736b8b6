package reference

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestReadSmallProduce(t *testing.T) {
	table, err := ReadTable(smallFS("", "", ""))
	if err != nil {
		t.Fatal(err)
	}
	beans, _ := table.Composition("beans")
	want := Composition{Crop: "beans", Item: "11052 BEANS,RAW", WaterPct: 90, ProteinPct: 2, FatPct: 0.2, CarbohydratePct: 4.2,
		FiberPct: 2.9, AshPct: 0.7, Source: "A_1", Standing: Read, FreezingC: -0.7, FreezingSource: "B_2", FreezingStanding: FromMemory}
	if d := cmp.Diff(want, beans); d != "" {
		t.Error(d)
	}
	if kale, _ := table.Composition("kale"); kale.FreezingC != 0 || kale.StandIn != "beans" {
		t.Errorf("kale %+v", kale)
	}
	cut, _ := table.Piece("beans-cut-water")
	if d := cmp.Diff(Piece{"beans-cut-water", CylinderPiece, 2.4, 3.5, 4.7, FromASource, "B_2", Read, "A pod."}, cut); d != "" {
		t.Error(d)
	}
	if _, ok := table.Piece("kale-mash-cook"); ok {
		t.Error("a treatment of words has no piece")
	}
	all := table.Enzymes("kale")
	if len(all) != 1 || len(all[0].Parts) != 2 || all[0].LowC != 70 || all[0].HighC != 95 || !all[0].WithLag || all[0].StandIn {
		t.Fatalf("enzymes %+v", all)
	}
	quick, slow := all[0].Parts[0], all[0].Parts[1]
	if quick.PerMin() != 8 || quick.RateError != 4 || quick.EaKJPerMol != 70 || math.Abs(slow.PerMin()-math.Ln10/0.4) > 1e-12 || slow.ZC != 16 || slow.Ours == "" {
		t.Errorf("parts %+v", all[0].Parts)
	}
	if got := table.Enzymes("leek"); got != nil {
		t.Errorf("an unknown crop: %+v", got)
	}
	for _, c := range []struct {
		kind  string
		mouth Mouth
		id    string
	}{{"box", WideMouth, "pint-box"}, {"box", NarrowMouth, "pint-box"}, {"jar", WideMouth, "pint-jar"}, {"jar", NarrowMouth, ""}, {"bag", "", "pint-bag"}} {
		if got, ok := table.ContainerFor(c.kind, "pint", c.mouth); got.ID != c.id || ok != (c.id != "") {
			t.Errorf("%s %s: %+v, %v", c.kind, c.mouth, got, ok)
		}
	}
}

func TestReadProduceReportsEachFault(t *testing.T) {
	for _, c := range []struct {
		name, file, old, replacement string
		line, column                 int
		field, found, allowed        string
	}{
		{"composition: header", "composition.csv", "ash_pct", "ashes", 1, 8, "ash_pct", `"ashes"`, "crop,item"},
		{"composition: unknown crop", "composition.csv", "\nbeans", "\nleek", 2, 1, "crop", `"leek"`, "crops.csv"},
		{"composition: twice", "composition.csv", "kale,11233", "beans,11233", 3, 14, "stand_in", `"beans"`, "another crop"},
		{"composition: a crop twice", "composition.csv", "kale,11233 KALE,84,4.3,0.9,5.2,3.6,2,,A_1,read,,,beans", "beans,11233 KALE,84,4.3,0.9,5.2,3.6,2,,A_1,read,,,", 3, 1, "crop", "a second time", "once"},
		{"composition: no item", "composition.csv", "11233 KALE", "", 3, 2, "item", "nothing", "text"},
		{"composition: a part left out", "composition.csv", ",0.2,", ",,", 2, 5, "fat_pct", "nothing", "a number"},
		{"composition: text", "composition.csv", ",0.2,", ",trace,", 2, 5, "fat_pct", `"trace"`, "0 to 50"},
		{"composition: does not add up", "composition.csv", ",90,", ",88,", 2, 3, "water_pct", "98 % in all", "100 %"},
		{"composition: fiber counted twice", "composition.csv", ",4.2,2.9,", ",7.1,2.9,", 2, 3, "water_pct", "102.9 % in all", "100 %"},
		{"composition: freezes above 0", "composition.csv", "-0.7", "0.7", 2, 9, "freezing_c", `"0.7"`, "-6 to -0.05"},
		{"composition: freezing point without a source", "composition.csv", "B_2,from memory", ",from memory", 2, 12, "freezing_source", "nothing", "both or neither"},
		{"composition: freezing point without a standing", "composition.csv", "B_2,from memory", "B_2,", 2, 13, "freezing_standing", "nothing", "both or neither"},
		{"composition: unknown source", "composition.csv", "-0.7,A_1", "-0.7,C_3", 2, 10, "source", `"C_3"`, "sources.csv"},
		{"composition: stands in for nothing known", "composition.csv", ",beans,\n", ",leek,\n", 3, 14, "stand_in", `"leek"`, "crops.csv"},
		{"piece: unknown treatment", "pieces.csv", "beans-cut-water", "beans-cut", 2, 1, "treatment", `"beans-cut"`, "with minutes"},
		{"piece: no minutes", "pieces.csv", "beans-cut-water", "kale-mash-cook", 2, 1, "treatment", `"kale-mash-cook"`, "with minutes"},
		{"piece: twice", "pieces.csv", "beans-rings-steam", "beans-cut-water", 3, 1, "treatment", "a second time", "once"},
		{"piece: a cube", "pieces.csv", "cylinder", "cube", 2, 2, "shape", `"cube"`, `"slab", "cylinder" or "sphere"`},
		{"piece: no likely size", "pieces.csv", "2.4,3.5", "2.4,", 2, 4, "size_mm", "nothing", "0.1 to 60"},
		{"piece: a size of nothing", "pieces.csv", "slab,1,", "slab,0,", 3, 3, "size_low_mm", `"0"`, "0.1 to 60"},
		{"piece: likely over high", "pieces.csv", "2.4,3.5", "2.4,5.5", 2, 4, "size_mm", "5.5 between 2.4 and 4.7", "from the low to the high end"},
		{"piece: likely under low", "pieces.csv", "2.4,3.5", "2.4,2", 2, 4, "size_mm", "2 between 2.4 and 4.7", "from the low to the high end"},
		{"piece: unknown basis", "pieces.csv", "our guess", "a hunch", 3, 6, "basis", `"a hunch"`, `"our guess"`},
		{"piece: a guess with a source", "pieces.csv", "our guess,,", "our guess,A_1,read", 3, 7, "source", `"A_1" for basis "our guess"`, "only there"},
		{"piece: a source without its name", "pieces.csv", "B_2,read", ",", 2, 7, "source", "nothing", "a source"},
		{"piece: a source without a standing", "pieces.csv", "B_2,read", "B_2,", 2, 8, "standing", "nothing", "both or neither"},
		{"piece: no note", "pieces.csv", "A pod.", "", 2, 9, "note", "nothing", "text"},
		{"kinetics: unknown crop", "kinetics.csv", "beans; kale", "beans; leek", 2, 14, "crops", `"beans; leek"`, "crops.csv"},
		{"kinetics: shares", "kinetics.csv", "labile,0.9", "labile,0.8", 2, 3, "share", "0.9 in all parts of pod", "add up to 1"},
		{"kinetics: a part twice", "kinetics.csv", "pod,resistant", "pod,labile", 3, 2, "part", "a second time", "once"},
		{"kinetics: neither rate nor D", "kinetics.csv", "0.9,8,4,", "0.9,,,", 2, 6, "d_min", "nothing", "one of the two"},
		{"kinetics: rate and D", "kinetics.csv", "0.9,8,4,,", "0.9,8,4,3,", 2, 6, "d_min", `"3" beside "8"`, "one of the two"},
		{"kinetics: energy and z", "kinetics.csv", "100,70,,,", "100,70,,16,", 2, 11, "z_c", `"16" beside "70"`, "one of the two"},
		{"kinetics: an error of nothing", "kinetics.csv", "100,70,,,", "100,70,,,3", 2, 12, "z_error", `"3"`, "beside its value"},
		{"kinetics: a D value in words", "kinetics.csv", "24 s", "half a minute", 3, 6, "d_min", `"half a minute"`, "seconds"},
		{"kinetics: only one end of the range", "kinetics.csv", "70,95,yes,beans,,Says little.,A_1,read\npod", "70,,yes,beans,,Says little.,A_1,read\npod", 2, 17, "high_c", "nothing", "both or neither"},
		{"kinetics: range downwards", "kinetics.csv", "70,95", "95,70", 2, 17, "high_c", `"70"`, "not below"},
		{"kinetics: lag", "kinetics.csv", "95,yes", "95,perhaps", 2, 18, "with_lag", `"perhaps"`, `"yes", "no"`},
		{"kinetics: no limits", "kinetics.csv", "Says little.", "", 2, 21, "limits", "nothing", "text"},
		{"kinetics: rows of one enzyme differ", "kinetics.csv", "z is ours.,beans; kale", "z is ours.,beans", 3, 14, "crops", `"beans"`, "the same as in the first row of pod"},
		{"kinetics: unknown source", "kinetics.csv", "little.,A_1", "little.,C_3", 2, 22, "source", `"C_3"`, "sources.csv"},
		{"container: unknown kind", "containers.csv", "box,box,pint", "box,tin,pint", 2, 3, "kind", `"tin"`, `"box", "jar" or "bag"`},
		{"container: a cell twice", "containers.csv", "pint-jar,jar,jar,pint,wide,490,120,,0.8,0.9,0.7,", "pint-tub,tub,box,pint,,490,120,0.8,,,,", 3, 3, "kind", `"box pint " a second time`, "once"},
		{"container: no volume", "containers.csv", "490,94", ",94", 2, 6, "volume_ml", "nothing", "100 to 5000"},
		{"container: a box without its taper", "containers.csv", "0.85", "", 2, 8, "bottom_share", "nothing for a box", "a number for a box"},
		{"container: a bag with a neck", "containers.csv", "150,,,,", "150,,,0.9,", 4, 10, "neck_share", `"0.9" for a bag`, "a number for a jar"},
		{"container: a box with a mouth", "containers.csv", "box,pint,,", "box,pint,wide,", 2, 5, "mouth", `"wide" for a box`, "only there"},
		{"container: neck under the shoulder", "containers.csv", "0.8,0.9", "0.9,0.8", 3, 10, "neck_share", `"0.8"`, "below the shoulder"},
		{"container: from a cut", "containers.csv", "25,our guess", "25,from the cut", 4, 14, "basis", `"from the cut"`, `"from a source" or "our guess"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			table, err := ReadTable(smallFS(c.file, c.old, c.replacement))
			var e *DataError
			if table != nil || !errors.As(err, &e) {
				t.Fatalf("table %v, error %v", table != nil, err)
			}
			if e.File != c.file || e.Line != c.line || e.Column != c.column || e.Name != c.field {
				t.Errorf("at %s line %d column %d (%s): %v", e.File, e.Line, e.Column, e.Name, err)
			}
			if !strings.Contains(e.Found, c.found) || !strings.Contains(e.Allowed, c.allowed) {
				t.Errorf("found %s, allowed %s", e.Found, e.Allowed)
			}
		})
	}
}
