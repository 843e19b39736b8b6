package reference

import (
	"io/fs"
	"strings"
)

// The columns of the data files. A file whose header is not exactly this is
// refused, so that a value never lands under another name.
var (
	sourceColumns = []string{"id", "title", "publisher", "edition", "address", "seen"}
	cropColumns   = []string{"id", "name", "also_called", "group", "leafy", "note"}
	prepColumns   = []string{"crop", "prepare", "select", "soak", "source", "standing"}
	yieldColumns  = []string{"crop", "market_unit", "lot", "weight_lb", "weight_high_lb", "pints", "pints_high",
		"lb_per_pint", "lb_per_pint_high", "as_bought", "usable_share", "usable_share_source",
		"source", "standing", "chosen", "note"}
	headspaceColumns = []string{"pack", "size", "mouth", "inches", "source"}
	ruleColumns      = []string{"id", "value", "high", "unit", "says", "source", "standing", "note"}
	treatmentColumns = []string{"id", "crop", "cut", "grade", "size", "method", "minutes", "minutes_high", "words",
		"clock", "source_clock", "chill_factor", "chill_words", "chill_source", "chill_standing", "pack", "headspace_in",
		"headspace_table", "headspace_source", "headspace_standing", "water_gal_per_lb", "blanch_water", "blanch_source", "note",
		"storage_months", "storage_high_months", "storage_source", "source", "standing", "rows"}
	alsoColumns = []string{"treatment", "method", "minutes", "minutes_high", "words", "clock", "source", "standing", "agrees", "note", "row"}
)

// What the fields with a fixed set of values may hold.
var (
	methods     = []Method{WaterBlanch, SteamBlanch, CookThrough, NoHeat}
	clockStarts = []ClockStart{AtReturnToBoil, AtOnce, NoClock}
	packs       = []Pack{SolidPack, LoosePack, TrayPack, LiquidPack}
	// standings are those a shipped value may have; EnteredHere comes with an
	// edit only.
	standings = []Standing{Read, ReadElsewhere, FromMemory, CommonPractice}
	mouths    = []Mouth{WideMouth, NarrowMouth}
	asBought  = []AsBought{"", InPods, InHusk, WithoutTops, WithTops}
)

// ReadTable reads a whole table from the twelve CSV files at the root of fsys:
// sources, crops, prep, rules, treatments, also, yields, headspace, composition,
// pieces, kinetics and containers. It is strict and reports every fault it finds,
// up to 100: the error is a *DataError or DataErrors, and the table is then nil.
// A table that is read has every rule of RequiredRules, so that Rule does not
// panic on it.
func ReadTable(fsys fs.FS) (*Table, error) {
	f := &faults{}
	r := &tableReader{
		table: &Table{Edition: Edition}, faults: f,
		sources: map[string]bool{}, crops: map[string]int{}, treatments: map[string]int{},
	}
	r.readSources(readSheet(fsys, "sources.csv", sourceColumns, f))
	r.readCrops(readSheet(fsys, "crops.csv", cropColumns, f))
	r.readPrep(readSheet(fsys, "prep.csv", prepColumns, f))
	r.readRules(readSheet(fsys, "rules.csv", ruleColumns, f))
	r.readTreatments(readSheet(fsys, "treatments.csv", treatmentColumns, f))
	r.readAlso(readSheet(fsys, "also.csv", alsoColumns, f))
	r.readYields(readSheet(fsys, "yields.csv", yieldColumns, f))
	r.readHeadspaces(readSheet(fsys, "headspace.csv", headspaceColumns, f))
	r.readCompositions(readSheet(fsys, "composition.csv", compositionColumns, f))
	r.readPieces(readSheet(fsys, "pieces.csv", pieceColumns, f))
	r.readKinetics(readSheet(fsys, "kinetics.csv", kineticsColumns, f))
	r.readContainers(readSheet(fsys, "containers.csv", containerColumns, f))
	if err := f.err(); err != nil {
		return nil, err
	}
	return r.table, nil
}

// tableReader builds a table and remembers what later files may refer to.
type tableReader struct {
	table      *Table
	faults     *faults
	sources    map[string]bool
	crops      map[string]int // place in table.Crops
	treatments map[string]int // place in table.Treatments
}

// source returns a field that names a listed source; empty only if allowed.
func (t *tableReader) source(r record, name string, empty bool) string {
	v := r.raw(name)
	if !t.sources[v] && !(v == "" && empty) {
		r.wrong(name, quoted(v), "the id of a source in sources.csv")
	}
	return v
}

// crop returns a field that names a listed crop.
func (t *tableReader) crop(r record, name string) string {
	v := r.raw(name)
	if _, ok := t.crops[v]; !ok {
		r.wrong(name, quoted(v), "the id of a crop in crops.csv")
	}
	return v
}

// once reports a key that stands in the file already.
func once[V any](r record, name, key string, seen map[string]V) bool {
	if _, ok := seen[key]; ok {
		r.wrong(name, quoted(key)+" a second time", "each only once")
		return false
	}
	return true
}

func (t *tableReader) readSources(s *sheet) {
	for _, r := range s.rows {
		x := Source{
			ID: r.needed("id"), Title: r.needed("title"), Publisher: r.needed("publisher"),
			Edition: r.needed("edition"), Address: r.text("address"), Seen: r.needed("seen"),
		}
		if strings.Trim(x.ID, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_") != "" || x.ID == EnteredHereSource {
			r.wrong("id", quoted(x.ID), "capital letters, digits and underscores, other than "+EnteredHereSource)
		}
		if x.Address != "" && !strings.HasPrefix(x.Address, "http://") && !strings.HasPrefix(x.Address, "https://") {
			r.wrong("address", quoted(x.Address), "a web address or nothing")
		}
		if once(r, "id", x.ID, t.sources) {
			t.sources[x.ID] = true
			t.table.Sources = append(t.table.Sources, x)
		}
	}
}

func (t *tableReader) readCrops(s *sheet) {
	for _, r := range s.rows {
		x := Crop{ID: r.id("id"), Name: r.needed("name"), AlsoCalled: r.list("also_called"), Group: Group(r.needed("group")), Leafy: r.yes("leafy"), Note: r.text("note")}
		if once(r, "id", x.ID, t.crops) {
			t.crops[x.ID] = len(t.table.Crops)
			t.table.Crops = append(t.table.Crops, x)
		}
	}
}

func (t *tableReader) readPrep(s *sheet) {
	for _, r := range s.rows {
		x := Prep{
			Crop: t.crop(r, "crop"), Prepare: r.text("prepare"), Select: r.text("select"), Soak: r.text("soak"),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
		}
		if x.Prepare == "" && x.Select == "" && x.Soak == "" {
			r.wrong("prepare", "no words in prepare, select and soak", "words in one of them")
		}
		if i, ok := t.crops[x.Crop]; ok {
			t.table.Crops[i].Prep = append(t.table.Crops[i].Prep, x)
		}
	}
}

func (t *tableReader) readYields(s *sheet) {
	chosen := map[string]bool{}
	for _, r := range s.rows {
		y := Yield{
			Crop: t.crop(r, "crop"), MarketUnit: r.text("market_unit"), Lot: r.yes("lot"),
			AsBought:    enum(r, "as_bought", asBought),
			UsableShare: r.number("usable_share", 0.01, 1), UsableShareSource: t.source(r, "usable_share_source", true),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
			Chosen: r.yes("chosen"), Note: r.text("note"),
		}
		y.WeightLb, y.WeightHighLb = r.span("weight_lb", "weight_high_lb", 0.1, 200)
		y.Pints, y.PintsHigh = r.span("pints", "pints_high", 0.5, 200)
		y.LbPerPint, y.LbPerPintHigh = r.span("lb_per_pint", "lb_per_pint_high", 0.1, 10)
		if (y.UsableShare > 0) != (y.UsableShareSource != "") {
			r.wrong("usable_share_source", quoted(y.UsableShareSource), "a source where a share is given, and only there")
		}
		if y.WeightLb == 0 && y.Pints == 0 && y.LbPerPint == 0 && y.UsableShare == 0 {
			r.wrong("weight_lb", "no number in the row", "a weight, pints, pounds per pint or a usable share")
		}
		if y.Chosen {
			if y.LbPerPint == 0 && y.UsableShare == 0 {
				r.wrong("chosen", "yes without pounds per pint or a usable share", "a row that shopping can use")
			}
			if once(r, "crop", y.Crop+" chosen", chosen) {
				chosen[y.Crop+" chosen"] = true
			}
		}
		t.table.Yields = append(t.table.Yields, y)
	}
}

func (t *tableReader) readHeadspaces(s *sheet) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		h := Headspace{
			Pack:   enum(r, "pack", []string{"dry", "liquid", "juice"}),
			Size:   enum(r, "size", []string{"pint", "quart"}),
			Mouth:  enum(r, "mouth", mouths),
			Inches: r.positive("inches", 0.25, 3), Source: t.source(r, "source", false),
		}
		key := h.Pack + " " + h.Size + " " + string(h.Mouth)
		if once(r, "pack", key, seen) {
			seen[key] = true
			t.table.Headspaces = append(t.table.Headspaces, h)
		}
	}
}

func (t *tableReader) readRules(s *sheet) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		x := Rule{
			ID: r.id("id"), Unit: r.needed("unit"), Says: r.needed("says"),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings), Note: r.text("note"),
		}
		x.Value, x.High = r.signedSpan("value", "high", -50, 10000)
		if unit, ok := requiredRules[x.ID]; ok && x.Unit != unit {
			r.wrong("unit", quoted(x.Unit)+" for the rule "+x.ID, quoted(unit))
		}
		if once(r, "id", x.ID, seen) {
			seen[x.ID] = true
			t.table.Rules = append(t.table.Rules, x)
		}
	}
	for _, id := range RequiredRules() {
		if !seen[id] {
			t.faults.add(&DataError{File: s.file, Found: "no rule " + id, Allowed: "a table with every rule that the program reads"})
		}
	}
}

// positive returns a number that must be there.
func (r record) positive(name string, lo, hi float64) float64 {
	if r.raw(name) == "" {
		r.wrong(name, "nothing", "a number from "+plain(lo)+" to "+plain(hi))
		return 0
	}
	return r.number(name, lo, hi)
}

// span returns two numbers, low and high; an empty high means the same as low,
// and both empty mean unknown.
func (r record) span(low, high string, lo, hi float64) (float64, float64) {
	if r.raw(low) == "" && r.raw(high) != "" {
		r.wrong(low, "nothing beside a high end", "a low end")
	}
	a, b := r.number(low, lo, hi), r.number(high, lo, hi)
	return r.ordered(high, a, b, r.raw(high) == "")
}

// signedSpan is span for a value that must be there.
func (r record) signedSpan(low, high string, lo, hi float64) (float64, float64) {
	r.positive(low, lo, hi)
	return r.span(low, high, lo, hi)
}

// ordered completes a range and refuses one that runs downwards.
func (r record) ordered(high string, a, b float64, empty bool) (float64, float64) {
	if empty {
		return a, a
	}
	if b < a {
		r.wrong(high, quoted(r.raw(high)), "a high end that is not below the low end")
	}
	return a, b
}
