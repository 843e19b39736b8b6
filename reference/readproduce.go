package reference

import (
	"math"
	"slices"
)

// The columns of the four files that the heat model needs.
var (
	compositionColumns = []string{"crop", "item", "water_pct", "protein_pct", "fat_pct", "carbohydrate_pct", "fiber_pct", "ash_pct",
		"freezing_c", "source", "standing", "freezing_source", "freezing_standing", "stand_in", "note"}
	pieceColumns = []string{"treatment", "shape", "size_low_mm", "size_mm", "size_high_mm", "basis", "source", "standing", "note"}
	// kineticsColumns start with those of a part; enzymeColumns are the same in
	// all rows of an enzyme.
	kineticsColumns = append([]string{"id", "part", "share", "rate_per_min", "rate_error", "d_min", "d_error", "ref_c",
		"ea_kj_per_mol", "ea_error", "z_c", "z_error", "ours"}, enzymeColumns...)
	enzymeColumns    = []string{"crops", "enzyme", "low_c", "high_c", "with_lag", "measured_on", "stand_in", "limits", "source", "standing"}
	containerColumns = []string{"id", "name", "kind", "size", "mouth", "volume_ml", "height_mm", "bottom_share",
		"shoulder_share", "neck_share", "mouth_share", "width_mm", "thickness_mm", "basis", "source", "standing", "note"}
)

// shapes are the bodies that a piece may stand for.
var shapes = []PieceShape{SlabPiece, CylinderPiece, SpherePiece}

// kindColumns are the measures that only one kind of container has, and must
// have.
var kindColumns = []struct{ column, kind string }{
	{"bottom_share", "box"}, {"shoulder_share", "jar"}, {"neck_share", "jar"}, {"mouth_share", "jar"}, {"width_mm", "bag"}, {"thickness_mm", "bag"},
}

func (t *tableReader) readCompositions(s *sheet) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		x := Composition{
			Crop: t.crop(r, "crop"), Item: r.needed("item"),
			WaterPct: r.positive("water_pct", 1, 100), ProteinPct: r.positive("protein_pct", 0, 50), FatPct: r.positive("fat_pct", 0, 50),
			CarbohydratePct: r.positive("carbohydrate_pct", 0, 90), FiberPct: r.positive("fiber_pct", 0, 50), AshPct: r.positive("ash_pct", 0, 10),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
			FreezingC: r.number("freezing_c", -6, -0.05), FreezingSource: t.source(r, "freezing_source", true),
			FreezingStanding: enum(r, "freezing_standing", append([]Standing{""}, standings...)),
			StandIn:          r.raw("stand_in"), Note: r.text("note"),
		}
		if sum := x.WaterPct + x.ProteinPct + x.FatPct + x.CarbohydratePct + x.FiberPct + x.AshPct; math.Abs(sum-100) > 1.5 {
			r.wrong("water_pct", plain(math.Round(sum*100)/100)+" % in all", "parts that add up to 100 % within 1.5")
		}
		r.together("freezing_c", "freezing_source", "freezing_standing")
		if x.StandIn != "" && (t.crop(r, "stand_in") == x.Crop) {
			r.wrong("stand_in", quoted(x.StandIn), "another crop, or nothing where the values are its own")
		}
		if once(r, "crop", x.Crop, seen) {
			seen[x.Crop] = true
			t.table.Compositions = append(t.table.Compositions, x)
		}
	}
}

func (t *tableReader) readPieces(s *sheet) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		x := Piece{
			Treatment: r.raw("treatment"), Shape: enum(r, "shape", shapes),
			SizeLowMm: r.positive("size_low_mm", 0.1, 60), SizeMm: r.positive("size_mm", 0.1, 60), SizeHighMm: r.positive("size_high_mm", 0.1, 60),
			Basis: enum(r, "basis", []SizeBasis{FromTheCut, FromASource, OurGuess}), Note: r.needed("note"),
		}
		x.Source, x.Standing = t.sizeSource(r, x.Basis)
		if i, ok := t.treatments[x.Treatment]; !ok || t.table.Treatments[i].Minutes == 0 {
			r.wrong("treatment", quoted(x.Treatment), "the id of a treatment with minutes in treatments.csv")
		}
		if x.SizeMm < x.SizeLowMm || x.SizeHighMm < x.SizeMm {
			r.wrong("size_mm", plain(x.SizeMm)+" between "+plain(x.SizeLowMm)+" and "+plain(x.SizeHighMm), "a likely size from the low to the high end")
		}
		if once(r, "treatment", x.Treatment, seen) {
			seen[x.Treatment] = true
			t.table.Pieces = append(t.table.Pieces, x)
		}
	}
}

// sizeSource returns source and standing of a size, which stand where the size
// was printed on another page, and only there.
func (t *tableReader) sizeSource(r record, basis SizeBasis) (string, Standing) {
	source, standing := t.source(r, "source", true), enum(r, "standing", append([]Standing{""}, standings...))
	if (basis == FromASource) != (source != "") {
		r.wrong("source", quoted(source)+" for basis "+quoted(string(basis)), "a source with "+quoted(string(FromASource))+", and only there")
	}
	r.together("source", "standing")
	return source, standing
}

// together reports fields of which some stand and some do not.
func (r record) together(first string, others ...string) {
	for _, name := range others {
		if (r.raw(name) == "") != (r.raw(first) == "") {
			r.wrong(name, quoted(r.raw(name))+" beside "+quoted(r.raw(first))+" in "+first, "both or neither")
		}
	}
}

// readKinetics reads one row for each part of an enzyme; rows with the same id
// are one enzyme and say the same of it.
func (t *tableReader) readKinetics(s *sheet) {
	first := map[string]record{} // the first row of each enzyme
	parts := map[string]bool{}
	at := map[string]int{}
	for _, r := range s.rows {
		id := r.id("id")
		part := r.enzymePart()
		if once(r, "part", id+" "+part.Name, parts) {
			parts[id+" "+part.Name] = true
		}
		if head, ok := first[id]; ok {
			for _, name := range enzymeColumns {
				if r.raw(name) != head.raw(name) {
					r.wrong(name, quoted(r.raw(name)), "the same as in the first row of "+id)
				}
			}
			x := &t.table.Kinetics[at[id]]
			x.Parts = append(x.Parts, part)
			continue
		}
		first[id], at[id] = r, len(t.table.Kinetics)
		x := Enzyme{
			ID: id, Crops: r.list("crops"), Name: r.needed("enzyme"), Parts: []EnzymePart{part},
			LowC: r.number("low_c", 20, 140), HighC: r.number("high_c", 20, 140), WithLag: r.yes("with_lag"),
			MeasuredOn: r.needed("measured_on"), StandIn: r.yes("stand_in"), Limits: r.needed("limits"),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
		}
		r.together("low_c", "high_c")
		if x.HighC < x.LowC {
			r.wrong("high_c", quoted(r.raw("high_c")), "a high end that is not below the low end")
		}
		if len(x.Crops) == 0 || slices.ContainsFunc(x.Crops, func(c string) bool { _, ok := t.crops[c]; return !ok }) {
			r.wrong("crops", quoted(r.raw("crops")), `ids of crops in crops.csv, separated by "; "`)
		}
		t.table.Kinetics = append(t.table.Kinetics, x)
	}
	for _, x := range t.table.Kinetics {
		sum := 0.0
		for _, p := range x.Parts {
			sum += p.Share
		}
		if math.Abs(sum-1) > 0.001 {
			first[x.ID].wrong("share", plain(math.Round(sum*1e4)/1e4)+" in all parts of "+x.ID, "shares that add up to 1")
		}
	}
}

// enzymePart reads the numbers of one part: a rate or a D value, an activation
// energy or a z value, each with its error or without.
func (r record) enzymePart() EnzymePart {
	p := EnzymePart{
		Name: r.needed("part"), Share: r.positive("share", 0.001, 1),
		RatePerMin: r.number("rate_per_min", 1e-6, 1e6), RateError: r.number("rate_error", 0, 1e6),
		DMin: r.minutes("d_min"), DError: r.minutes("d_error"), RefC: r.positive("ref_c", 20, 140),
		EaKJPerMol: r.number("ea_kj_per_mol", 10, 1000), EaErrorKJ: r.number("ea_error", 0, 1000),
		ZC: r.number("z_c", 1, 60), ZErrorC: r.number("z_error", 0, 60), Ours: r.text("ours"),
	}
	for _, pair := range [][4]string{
		{"rate_per_min", "rate_error", "d_min", "d_error"},
		{"ea_kj_per_mol", "ea_error", "z_c", "z_error"},
	} {
		if (r.raw(pair[0]) == "") == (r.raw(pair[2]) == "") {
			r.wrong(pair[2], quoted(r.raw(pair[2]))+" beside "+quoted(r.raw(pair[0]))+" in "+pair[0], "one of the two")
		}
		for i := 0; i < 4; i += 2 {
			if r.raw(pair[i]) == "" && r.raw(pair[i+1]) != "" {
				r.wrong(pair[i+1], quoted(r.raw(pair[i+1])), "an error beside its value only")
			}
		}
	}
	return p
}

func (t *tableReader) readContainers(s *sheet) {
	ids, cells := map[string]bool{}, map[string]bool{}
	for _, r := range s.rows {
		x := Container{
			ID: r.id("id"), Name: r.needed("name"),
			Kind: enum(r, "kind", []string{"box", "jar", "bag"}), Size: enum(r, "size", []string{"pint", "quart"}),
			Mouth:    enum(r, "mouth", append([]Mouth{""}, mouths...)),
			VolumeML: r.positive("volume_ml", 100, 5000), HeightMm: r.positive("height_mm", 20, 400),
			BottomShare:   r.number("bottom_share", 0.5, 1),
			ShoulderShare: r.number("shoulder_share", 0.3, 1), NeckShare: r.number("neck_share", 0.3, 1), MouthShare: r.number("mouth_share", 0.4, 1),
			WidthMm: r.number("width_mm", 20, 400), ThicknessMm: r.number("thickness_mm", 5, 100),
			Basis: enum(r, "basis", []SizeBasis{FromASource, OurGuess}), Note: r.text("note"),
		}
		x.Source, x.Standing = t.sizeSource(r, x.Basis)
		if (x.Mouth != "") != (x.Kind == "jar") {
			r.wrong("mouth", quoted(string(x.Mouth))+" for a "+x.Kind, "a mouth for a jar, and only there")
		}
		for _, only := range kindColumns {
			if (r.raw(only.column) != "") != (only.kind == x.Kind) {
				r.wrong(only.column, quoted(r.raw(only.column))+" for a "+x.Kind, "a number for a "+only.kind+", and only there")
			}
		}
		if x.NeckShare < x.ShoulderShare {
			r.wrong("neck_share", quoted(r.raw("neck_share")), "a neck that does not begin below the shoulder")
		}
		cell := x.Kind + " " + x.Size + " " + string(x.Mouth)
		if once(r, "id", x.ID, ids) && once(r, "kind", cell, cells) {
			ids[x.ID], cells[cell] = true, true
			t.table.Containers = append(t.table.Containers, x)
		}
	}
}
