package reference

import (
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"sync"

	"example.org/kettleside/content/words"
)

// Edition names the shipped table. It was made for this program from the
// sources listed in it; no agency has published it.
const Edition = "Kettleside table 2026-11"

// BoilingPointSource is the source of the boiling point at an altitude, which is
// computed and stands in no row.
const BoilingPointSource = "IAPWS_R7_97"

// HeatModelSource is the source of what the program's own heat model estimates,
// which the rows of the table do not name.
const HeatModelSource = "HEAT_MODEL"

// VitaminCSource is the source of what a blanch keeps of vitamin C.
const VitaminCSource = "VITAMIN_C_1941"

// Table is the whole of the reference data. Rows stand in the order of their
// files. Treat a Table as read-only: With returns a changed copy, In one in
// another language.
type Table struct {
	Edition    string
	Crops      []Crop
	Treatments []Treatment
	Yields     []Yield
	Headspaces []Headspace
	Rules      []Rule
	Sources    []Source

	// What the heat model needs: see produce.go.
	Compositions []Composition
	Pieces       []Piece
	Kinetics     []Enzyme
	Containers   []Container

	// Of a copy in another language: the table it was made from and the voice
	// that says its texts; nil in the table itself. See In.
	base  *Table
	voice *words.Voice
}

//go:embed data/*.csv
var shippedData embed.FS

func shippedFiles() fs.FS {
	data, err := fs.Sub(shippedData, "data")
	if err != nil {
		panic("reference: embedded data: " + err.Error())
	}
	return data
}

var shipped = sync.OnceValue(func() *Table {
	t, err := ReadTable(shippedFiles())
	if err != nil {
		panic("reference: embedded data: " + err.Error())
	}
	return t
})

// Shipped returns the table that came with the program, parsed once. All
// callers share it: it is read-only. It panics only if the embedded files are
// broken, which a test excludes.
func Shipped() *Table { return shipped() }

// Crop returns the crop with this id.
func (t *Table) Crop(id string) (Crop, bool) {
	return find(t.Crops, func(c *Crop) bool { return c.ID == id })
}

// Treatment returns the treatment with this id.
func (t *Table) Treatment(id string) (Treatment, bool) {
	return find(t.Treatments, func(x *Treatment) bool { return x.ID == id })
}

// TreatmentsOf returns the treatments of one crop in table order; none for an
// unknown crop.
func (t *Table) TreatmentsOf(crop string) []Treatment {
	var out []Treatment
	for i := range t.Treatments {
		if t.Treatments[i].Crop == crop {
			out = append(out, t.Treatments[i])
		}
	}
	return out
}

// Source returns the source with this id.
func (t *Table) Source(id string) (Source, bool) {
	return find(t.Sources, func(s *Source) bool { return s.ID == id })
}

// requiredRules are the rules that the program reads, or that its texts name
// as placeholders, with the unit in which it takes them.
var requiredRules = map[string]string{
	"water-gal-per-lb": "gal/lb", "water-leafy-gal-per-lb": "gal/lb", "batch-lb": "lb", "kettle-reuse-lots": "lots",
	"return-to-boil-min": "min", "altitude-ft": "ft", "altitude-extra-min": "min",
	"steam-water-in": "in", "steam-basket-in": "in", "steam-clock-min": "min",
	"chill-water-max-f": "F", "ice-lb-per-lb": "lb/lb",
	"tray-first-look-h": "h", "tray-headspace-in": "in",
	"freezer-lb-per-cuft-day": "lb/cu ft", "freezer-set-f": "F", "hold-f": "F", "storage-months": "months", "reheat-f": "F",
	// named by the questions from the room
	"steam-factor":                 "times",
	"chill-factor-corn-on-the-cob": "times",
	"room-temperature-max-h":       "h",
	"freezer-set-hours":            "h",
	"freezer-capacity-lb-per-cuft": "lb/cu ft",
	"power-full-h":                 "h",
	"power-half-h":                 "h",
	"dry-ice-lb-per-cuft":          "lb/cu ft",
	"refreeze-max-f":               "F",
	"insect-soak-min":              "min",
	"insect-soak-salt-tsp-per-gal": "tsp/gal",
}

// RequiredRules returns the ids of the rules that every table must have,
// sorted: ReadTable refuses one that lacks any.
func RequiredRules() []string { return slices.Sorted(maps.Keys(requiredRules)) }

// Rule returns the numeric rule with this id. Rule ids are written in the
// program and stand in RequiredRules, so an unknown one is a programmer's error
// and panics.
func (t *Table) Rule(id string) Rule {
	r, ok := find(t.Rules, func(r *Rule) bool { return r.ID == id })
	if !ok {
		panic("reference: no rule " + id)
	}
	return r
}

// ChosenYield returns the yield that shopping uses for the crop. False means
// that no source in the table gives one.
func (t *Table) ChosenYield(crop string) (Yield, bool) {
	return find(t.Yields, func(y *Yield) bool { return y.Crop == crop && y.Chosen })
}

// HeadspaceFor returns the cell of the published headspace table for a pack
// ("dry", "liquid", "juice"), a container size ("pint", "quart") and a mouth.
// The error is one sentence that says what the table has.
func (t *Table) HeadspaceFor(pack, size string, mouth Mouth) (Headspace, error) {
	h, ok := find(t.Headspaces, func(h *Headspace) bool { return h.Pack == pack && h.Size == size && h.Mouth == mouth })
	if ok {
		return h, nil
	}
	var packs, sizes []string
	for _, h := range t.Headspaces {
		if !slices.Contains(packs, h.Pack) {
			packs = append(packs, h.Pack)
		}
		if !slices.Contains(sizes, h.Size) {
			sizes = append(sizes, h.Size)
		}
	}
	if len(packs) == 0 {
		return Headspace{}, fmt.Errorf("this table has no headspace values")
	}
	return Headspace{}, fmt.Errorf("the headspace table has no value for pack %s, size %s, mouth %s; it has pack %s, size %s, mouth %s",
		quoted(pack), quoted(size), quoted(string(mouth)), oneOf(packs), oneOf(sizes), oneOf([]Mouth{WideMouth, NarrowMouth}))
}

// find returns the first element that fits.
func find[T any](list []T, fits func(*T) bool) (T, bool) {
	for i := range list {
		if fits(&list[i]) {
			return list[i], true
		}
	}
	var none T
	return none, false
}
