package reference

import (
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// small is a valid table of two crops; each case below breaks one thing in it.
var small = map[string]string{
	"sources.csv": "id,title,publisher,edition,address,seen\n" +
		"A_1,Leaflet one,Office,2001,https://example.org/1,whole page\n" +
		"B_2,Leaflet two,Office,2002,,not read\n",
	"crops.csv": "id,name,also_called,group,leafy,note\n" +
		"beans,Beans,string beans; haricots,beans and peas,,\n" +
		"kale,Kale,,greens,yes,\n",
	"prep.csv": "crop,prepare,select,soak,source,standing\n" +
		"beans,Wash.,,,A_1,read\n",
	"treatments.csv": strings.Join(treatmentColumns, ",") + "\n" +
		"beans-cut-water,beans,cut,,,water,3,,,boil,at once,1,,A_1,read,solid,1/2,,B_2,from memory,1,,,,8,12,A_1,A_1,read,P001\n" +
		"beans-rings-steam,beans,rings,,,steam,10 s,15 s,,at once,,1,,A_1,read,loose,,,A_1,read,,,,,8,,A_1,B_2,from memory,\n" +
		"kale-mash-cook,kale,mash,,,cook,,,Cook soft,none,,,Cool.,A_1,read,liquid,,liquid,A_1,read,,,,,8,12,A_1,A_1,read,P002 P003\n",
	"also.csv": strings.Join(alsoColumns, ",") + "\n" +
		"beans-cut-water,,2,,,at once,B_2,from memory,,,P004\n",
	"yields.csv": strings.Join(yieldColumns, ",") + "\n" +
		"beans,bushel,,30,,30,45,2/3,1,in pods,0.5,A_1,A_1,read,yes,\n",
	"headspace.csv": "pack,size,mouth,inches,source\ndry,pint,wide,1/2,A_1\n",
	"rules.csv":     smallRules(),
	"composition.csv": strings.Join(compositionColumns, ",") + "\n" +
		"beans,\"11052 BEANS,RAW\",90,2,0.2,4.2,2.9,0.7,-0.7,A_1,read,B_2,from memory,,\n" +
		"kale,11233 KALE,84,4.3,0.9,5.2,3.6,2,,A_1,read,,,beans,\n",
	"pieces.csv": strings.Join(pieceColumns, ",") + "\n" +
		"beans-cut-water,cylinder,2.4,3.5,4.7,from a source,B_2,read,A pod.\n" +
		"beans-rings-steam,slab,1,2,3,our guess,,,A ring.\n",
	"kinetics.csv": strings.Join(kineticsColumns, ",") + "\n" +
		"pod,labile,0.9,8,4,,,100,70,,,,,beans; kale,peroxidase,70,95,yes,beans,,Says little.,A_1,read\n" +
		"pod,resistant,0.1,,,24 s,1.5,100,,,16,2,z is ours.,beans; kale,peroxidase,70,95,yes,beans,,Says little.,A_1,read\n",
	"containers.csv": strings.Join(containerColumns, ",") + "\n" +
		"pint-box,box,box,pint,,490,94,0.85,,,,,,our guess,,,\n" +
		"pint-jar,jar,jar,pint,wide,490,120,,0.8,0.9,0.7,,,from a source,A_1,read,\n" +
		"pint-bag,bag,bag,pint,,473,150,,,,,130,25,our guess,,,\n",
}

// smallRules are all rules that a table needs, each 1 but for the first.
func smallRules() string {
	out := "id,value,high,unit,says,source,standing,note\nfreezer-set-f,-10,,F,Set it to -10.,A_1,read,\n"
	for _, id := range RequiredRules() {
		if id != "freezer-set-f" {
			out += id + ",1,,\"" + requiredRules[id] + "\",Do so.,A_1,read,\n"
		}
	}
	return out
}

func smallFS(file, old, replacement string) fs.FS {
	fsys := fstest.MapFS{}
	for name, text := range small {
		if name == file {
			if !strings.Contains(text, old) {
				panic("no " + old + " in " + file)
			}
			text = strings.Replace(text, old, replacement, 1)
		}
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return fsys
}

func TestReadSmallTable(t *testing.T) {
	table, err := ReadTable(smallFS("", "", ""))
	if err != nil {
		t.Fatal(err)
	}
	rings, _ := table.Treatment("beans-rings-steam")
	if rings.Minutes != 10.0/60 || rings.MinutesHigh != 15.0/60 {
		t.Errorf("10 s to 15 s: %v to %v minutes", rings.Minutes, rings.MinutesHigh)
	}
	if y, _ := table.ChosenYield("beans"); y.LbPerPint != 2.0/3 || y.LbPerPintHigh != 1 || y.WeightHighLb != 30 {
		t.Errorf("yield %+v", y)
	}
	mash, _ := table.Treatment("kale-mash-cook")
	if mash.HeadspaceRow != "liquid" || strings.Join(mash.Rows, "+") != "P002+P003" {
		t.Errorf("mash %+v", mash)
	}
	cut, _ := table.Treatment("beans-cut-water")
	if cut.SourceClock != AtOnce || cut.HeadspaceSource != "B_2" || cut.HeadspaceStanding != FromMemory || cut.WaterSource != "A_1" || cut.WaterStanding != Read {
		t.Errorf("cut %+v", cut)
	}
	if c, _ := table.Crop("beans"); strings.Join(c.AlsoCalled, "+") != "string beans+haricots" {
		t.Errorf("also called %q", c.AlsoCalled)
	}
	if r := table.Rule("freezer-set-f"); r.Value != -10 || r.High != -10 {
		t.Errorf("rule %+v", r)
	}
}

func TestReadSkipsAByteOrderMark(t *testing.T) {
	if _, err := ReadTable(smallFS("crops.csv", "id,name", "\uFEFFid,name")); err != nil {
		t.Error(err)
	}
}

func TestReadReportsEachFault(t *testing.T) {
	for _, c := range []struct {
		name, file, old, replacement string
		line, column                 int
		field, found, allowed        string
	}{
		{"header: a column missing", "crops.csv", ",leafy", "", 1, 5, "leafy", "no such column", "id,name,also_called,group,leafy,note"},
		{"header: last column missing", "crops.csv", "leafy,note", "leafy", 1, 6, "note", "no such column", "note"},
		{"header: one too many", "crops.csv", "leafy,note", "leafy,note,more", 1, 7, "more", "one column too many", "leafy,note"},
		{"header: out of order", "crops.csv", "id,name,also_called,group", "id,group,also_called,name", 1, 2, "name", `"group" out of its order`, "id,name"},
		{"header: another name", "rules.csv", "value", "amount", 1, 2, "value", `the column "amount"`, "value"},
		{"a short record", "crops.csv", "beans,Beans,string beans; haricots,beans and peas,,", "beans,Beans", 2, 0, "", "2 fields", "6"},
		{"a broken quote", "crops.csv", "beans,Beans", `beans,"Beans" x`, 2, 13, "", "quote", "quotes in pairs"},
		{"not UTF-8", "crops.csv", "Kale", "K\xffle", 0, 0, "", "not UTF-8", "UTF-8"},
		{"duplicate source", "sources.csv", "B_2", "A_1", 3, 1, "id", `"A_1" a second time`, "once"},
		{"duplicate crop", "crops.csv", "kale,Kale", "beans,Kale", 3, 1, "id", `"beans" a second time`, "once"},
		{"duplicate treatment", "treatments.csv", "beans-rings-steam", "beans-cut-water", 3, 1, "id", "a second time", "once"},
		{"an id with capitals", "crops.csv", "kale,Kale", "Kale,Kale", 3, 1, "id", `"Kale"`, "lower case"},
		{"the id kept for edits", "sources.csv", "B_2", EnteredHereSource, 3, 1, "id", EnteredHereSource, "other than"},
		{"an address that is none", "sources.csv", "https://example.org/1", "ftp:1", 2, 5, "address", `"ftp:1"`, "web address"},
		{"minutes are text", "treatments.csv", "water,3,", "water,three,", 2, 7, "minutes", `"three"`, "from above 0 to 60"},
		{"minutes with a comma", "treatments.csv", "water,3,", `water,"1,5",`, 2, 7, "minutes", `"1,5"`, "from above 0"},
		{"minutes negative", "treatments.csv", "water,3,", "water,-3,", 2, 7, "minutes", `"-3"`, "from above 0"},
		{"minutes zero", "treatments.csv", "water,3,", "water,0,", 2, 7, "minutes", `"0"`, "from above 0"},
		{"minutes absurd", "treatments.csv", "water,3,", "water,61,", 2, 7, "minutes", `"61"`, "to 60"},
		{"minutes not a number", "treatments.csv", "water,3,", "water,NaN,", 2, 7, "minutes", `"NaN"`, "to 60"},
		{"minutes with an exponent", "treatments.csv", "water,3,", "water,1e1,", 2, 7, "minutes", `"1e1"`, "to 60"},
		{"part of a second", "treatments.csv", "10 s,", "10.5 s,", 3, 7, "minutes", `"10.5 s"`, "seconds"},
		{"high below low", "treatments.csv", "water,3,,", "water,3,2,", 2, 8, "minutes_high", `"2"`, "not below"},
		{"high without low", "treatments.csv", "water,3,,", "water,,4,", 2, 7, "minutes", "nothing beside", "low end"},
		{"a blanch without minutes", "treatments.csv", "water,3,,,", "water,,,Cook.,", 2, 7, "minutes", "without minutes", "minutes"},
		{"neither minutes nor words", "treatments.csv", "cook,,,Cook soft", "cook,,,", 4, 7, "minutes", "neither minutes nor words", "words"},
		{"words with minutes", "treatments.csv", "cook,,,", "cook,20,,", 4, 7, "minutes", "minutes for a treatment of words", "words"},
		{"unknown method", "treatments.csv", ",water,", ",boiled,", 2, 6, "method", `"boiled"`, `"water", "steam", "cook" or "raw"`},
		{"unknown clock", "treatments.csv", ",boil,", ",soon,", 2, 10, "clock", `"soon"`, `"boil", "at once" or "none"`},
		{"clock of another method", "treatments.csv", ",boil,", ",none,", 2, 10, "clock", `"none" for method "water"`, `"boil"`},
		{"unknown pack", "treatments.csv", ",solid,", ",tight,", 2, 16, "pack", `"tight"`, `"solid"`},
		{"solid without headspace", "treatments.csv", ",solid,1/2,", ",solid,,", 2, 17, "headspace_in", "0 inches", "inches of its own"},
		{"loose with headspace", "treatments.csv", ",loose,,", ",loose,1/2,", 3, 17, "headspace_in", "0.5 inches", "nothing"},
		{"liquid without a row", "treatments.csv", ",liquid,,liquid,", ",liquid,,,", 4, 18, "headspace_table", "0 inches", "a row of the headspace table"},
		{"water for steam", "treatments.csv", ",loose,,,A_1,read,,", ",loose,,,A_1,read,1,", 3, 21, "water_gal_per_lb", `"1" gallons`, "water blanch"},
		{"two chilling rules", "treatments.csv", "at once,1,,", "at once,1,Cool.,", 2, 12, "chill_factor", `"1" and chill words "Cool."`, "one of the two"},
		{"a factor without minutes", "treatments.csv", "none,,,Cool.,", "none,,1,,", 4, 12, "chill_factor", "a factor without minutes", "words"},
		{"something in the water without a source", "treatments.csv", "memory,1,,,,8", "memory,1,salt,,,8", 2, 23, "blanch_source", "nothing", "a source"},
		{"no storage", "treatments.csv", ",8,12,A_1,A_1,read,P001", ",,,A_1,A_1,read,P001", 2, 25, "storage_months", "nothing", "months"},
		{"half a month of storage", "treatments.csv", ",8,12,A_1,A_1,read,P001", ",8.5,12,A_1,A_1,read,P001", 2, 25, "storage_months", `"8.5-12"`, "whole months"},
		{"a headspace without its source", "treatments.csv", ",B_2,from memory,1", ",,from memory,1", 2, 19, "headspace_source", "nothing", "sources.csv"},
		{"a headspace without a standing", "treatments.csv", ",B_2,from memory,1", ",B_2,,1", 2, 20, "headspace_standing", "nothing", `"read"`},
		{"steam counted from the boil", "treatments.csv", "at once,,1", "at once,boil,1", 3, 11, "source_clock", `"boil" for method "steam"`, "nothing"},
		{"a clock for words", "treatments.csv", "none,,,Cool.", "none,boil,,Cool.", 4, 11, "source_clock", `"boil" for method "cook"`, "nothing"},
		{"water by no rule", "treatments.csv", "memory,1,", "memory,2.5,", 2, 21, "water_gal_per_lb", `"2.5"`, "water-gal-per-lb"},
		{"an unseen character", "treatments.csv", "beans,cut,", "beans,c\u202eut,", 2, 3, "cut", `\u202e`, "without control"},
		{"entered here is for edits", "treatments.csv", "A_1,read,P001", "A_1,entered here,P001", 2, 29, "standing", `"entered here"`, "common practice"},
		{"unknown source", "treatments.csv", "A_1,A_1,read,P001", "A_1,C_3,read,P001", 2, 28, "source", `"C_3"`, "sources.csv"},
		{"unknown crop", "treatments.csv", "beans-cut-water,beans", "beans-cut-water,bean", 2, 2, "crop", `"bean"`, "crops.csv"},
		{"blanks around a text", "treatments.csv", "beans,cut,", "beans,cut ,", 2, 3, "cut", `"cut "`, "without blanks"},
		{"a cut left out", "treatments.csv", "beans,cut,", "beans,,", 2, 3, "cut", "nothing", "text"},
		{"also: unknown treatment", "also.csv", "beans-cut-water", "beans-cut", 2, 1, "treatment", `"beans-cut"`, "treatments.csv"},
		{"also: nothing said", "also.csv", ",2,", ",,", 2, 5, "words", "neither minutes nor words", "minutes or words"},
		{"also: not yes or no", "also.csv", "from memory,,", "from memory,true,", 2, 9, "agrees", `"true"`, `"yes"`},
		{"yield of nothing", "yields.csv", "30,,30,45,2/3,1,in pods,0.5,A_1,A_1,read,yes", ",,,,,,in pods,,,A_1,read,", 2, 4, "weight_lb", "no number", "a weight"},
		{"yield: bought otherwise", "yields.csv", "in pods", "in sacks", 2, 10, "as_bought", `"in sacks"`, `"in pods", "in husk"`},
		{"yield: a lot or not", "yields.csv", "bushel,,", "bushel,maybe,", 2, 3, "lot", `"maybe"`, "yes"},
		{"yield: a fraction by zero", "yields.csv", "2/3", "2/0", 2, 8, "lb_per_pint", `"2/0"`, "a number from 0.1 to 10"},
		{"yield: share above one", "yields.csv", "0.5", "1.5", 2, 11, "usable_share", `"1.5"`, "to 1"},
		{"yield: share without source", "yields.csv", "0.5,A_1,", "0.5,,", 2, 12, "usable_share_source", "nothing", "a source"},
		{"yield: chosen twice", "yields.csv", "yes,\n", "yes,\nbeans,,,,,,,1,,,,,A_1,read,yes,\n", 3, 1, "crop", `"beans chosen" a second time`, "once"},
		{"headspace: unknown mouth", "headspace.csv", "wide", "open", 2, 3, "mouth", `"open"`, `"wide" or "narrow"`},
		{"headspace: no inches", "headspace.csv", "1/2", "", 2, 4, "inches", "nothing", "a number"},
		{"headspace: a cell twice", "headspace.csv", "A_1\n", "A_1\ndry,pint,wide,1,A_1\n", 3, 1, "pack", "a second time", "once"},
		{"rule without a value", "rules.csv", "-10,,F", ",,F", 2, 2, "value", "nothing", "a number"},
		{"rule without words", "rules.csv", "Set it to -10.", "", 2, 5, "says", "nothing", "text"},
		{"rule: another unit than the program takes", "rules.csv", "-10,,F", "-10,,C", 2, 4, "unit", `"C" for the rule freezer-set-f`, `"F"`},
		{"rule: missing", "rules.csv", "hold-f,", "keep-f,", 0, 0, "", "no rule hold-f", "every rule"},
		{"names not in parts", "crops.csv", "string beans; haricots", "string beans;haricots", 2, 3, "also_called", "string beans;haricots", `"; "`},
		{"prep that says nothing", "prep.csv", "Wash.", "", 2, 2, "prepare", "no words", "words"},
	} {
		t.Run(c.name, func(t *testing.T) {
			table, err := ReadTable(smallFS(c.file, c.old, c.replacement))
			var e *DataError
			if table != nil || !errors.As(err, &e) {
				t.Fatalf("table %v, error %v", table != nil, err)
			}
			if e.File != c.file || e.Line != c.line || e.Column != c.column || e.Name != c.field {
				t.Errorf("at %s line %d column %d (%s)", e.File, e.Line, e.Column, e.Name)
			}
			if !strings.Contains(e.Found, c.found) || !strings.Contains(e.Allowed, c.allowed) {
				t.Errorf("found %s, allowed %s", e.Found, e.Allowed)
			}
			if s := e.Error(); !strings.HasSuffix(s, ".") || strings.Contains(s, "\n") || !strings.Contains(s, c.file) {
				t.Errorf("not one sentence: %s", s)
			}
		})
	}
}

func TestReadReportsAllFaultsAndMissingFiles(t *testing.T) {
	fsys := smallFS("treatments.csv", "water,3,", "water,three,").(fstest.MapFS)
	delete(fsys, "rules.csv")
	_, err := ReadTable(fsys)
	var all DataErrors
	if !errors.As(err, &all) || len(all) < 2 || !strings.Contains(err.Error(), "three") || !strings.Contains(err.Error(), "rules.csv: found no readable file") {
		t.Errorf("got %v", err)
	}
	if _, err := ReadTable(fstest.MapFS{}); err == nil {
		t.Error("an empty folder is no table")
	}
}

func TestAmounts(t *testing.T) {
	for text, want := range map[string]float64{"3": 3, "1.5": 1.5, ".5": 0.5, "2/3": 2.0 / 3, "1 1/4": 1.25, "-10": -10, "0.90": 0.9} {
		if got, err := parseAmount(text); err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", " ", "1 ", "1/0", "1 3/2", "-1 1/2", "1,5", "1e3", "0x1", "Inf", "--1", "1.2.3", ".", "½", "1/2/3", "1 1", "+1"} {
		if got, err := parseAmount(text); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

func FuzzReadTable(f *testing.F) {
	for name, text := range small {
		f.Add(name, []byte(text))
	}
	f.Add("treatments.csv", []byte("\uFEFF\"\n,\x00"))
	f.Fuzz(func(t *testing.T, name string, data []byte) {
		fsys := smallFS("", "", "").(fstest.MapFS)
		if _, ok := fsys[name]; !ok {
			name = "treatments.csv"
		}
		fsys[name] = &fstest.MapFile{Data: data}
		table, err := ReadTable(fsys)
		if (table == nil) == (err == nil) {
			t.Fatalf("table %v with error %v", table != nil, err)
		}
		if table == nil {
			return
		}
		for _, x := range table.Treatments {
			if faults := checkTreatment(&x); len(faults) > 0 || x.Minutes < 0 || x.MinutesHigh > maxMinutes {
				t.Fatalf("accepted %+v: %v", x, faults)
			}
		}
	})
}

func BenchmarkReadShipped(b *testing.B) {
	data, err := fs.Sub(shippedData, "data")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := ReadTable(data); err != nil {
			b.Fatal(err)
		}
	}
}
