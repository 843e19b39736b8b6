package reference

import (
	"math"
	"strings"
)

// readTreatments reads treatments.csv. What single fields cannot show (minutes
// beside the rule that starts the clock, headspace beside the pack) is checked
// by checkTreatment, which edits go through as well.
func (t *tableReader) readTreatments(s *sheet) {
	for _, r := range s.rows {
		x := Treatment{
			ID: r.id("id"), Crop: t.crop(r, "crop"), Cut: r.needed("cut"), Grade: r.text("grade"), Size: r.text("size"),
			Method: enum(r, "method", methods), Words: r.text("words"), ClockStart: enum(r, "clock", clockStarts),
			SourceClock: enum(r, "source_clock", []ClockStart{"", AtReturnToBoil, AtOnce}),
			ChillFactor: r.number("chill_factor", 0.5, 3), ChillWords: r.text("chill_words"),
			ChillSource:       t.source(r, "chill_source", false),
			ChillStanding:     enum(r, "chill_standing", standings),
			Pack:              enum(r, "pack", packs),
			HeadspaceIn:       r.number("headspace_in", 0.25, 3),
			HeadspaceRow:      enum(r, "headspace_table", []string{"", "liquid", "juice"}),
			HeadspaceSource:   t.source(r, "headspace_source", false),
			HeadspaceStanding: enum(r, "headspace_standing", standings),
			WaterGalPerLb:     r.number("water_gal_per_lb", 0.5, 5),
			BlanchWater:       r.text("blanch_water"), BlanchSource: t.source(r, "blanch_source", true),
			Note: r.text("note"), StorageSource: t.source(r, "storage_source", false),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
			Rows: strings.Fields(r.text("rows")),
		}
		x.Minutes, x.MinutesHigh = r.minuteSpan()
		x.StorageMonths, x.StorageMonthsHigh = r.span("storage_months", "storage_high_months", 1, 24)
		t.waterRule(r, &x)
		for _, fault := range checkTreatment(&x) {
			r.wrong(fault.column, fault.found, fault.allowed)
		}
		if once(r, "id", x.ID, t.treatments) {
			t.treatments[x.ID] = len(t.table.Treatments)
			t.table.Treatments = append(t.table.Treatments, x)
		}
	}
}

// waterRule finds the rule that the gallons of a treatment rest on. There are
// two, so that no row repeats their source.
func (t *tableReader) waterRule(r record, x *Treatment) {
	if x.WaterGalPerLb == 0 {
		return
	}
	for _, id := range []string{"water-gal-per-lb", "water-leafy-gal-per-lb"} {
		if rule, ok := find(t.table.Rules, func(r *Rule) bool { return r.ID == id && r.Value == x.WaterGalPerLb }); ok {
			x.WaterSource, x.WaterStanding = rule.Source, rule.Standing
			return
		}
	}
	r.wrong("water_gal_per_lb", quoted(r.raw("water_gal_per_lb")), "the gallons of the rule water-gal-per-lb or water-leafy-gal-per-lb")
}

// minuteSpan reads minutes and minutes_high.
func (r record) minuteSpan() (float64, float64) {
	if r.raw("minutes") == "" && r.raw("minutes_high") != "" {
		r.wrong("minutes", "nothing beside a high end", "a low end")
	}
	a, b := r.minutes("minutes"), r.minutes("minutes_high")
	return r.ordered("minutes_high", a, b, r.raw("minutes_high") == "")
}

// readAlso reads also.csv and hangs each row on its treatment.
func (t *tableReader) readAlso(s *sheet) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		p := Published{
			Treatment: r.id("treatment"), Method: enum(r, "method", append([]Method{""}, methods...)),
			Words: r.text("words"), ClockStart: enum(r, "clock", append([]ClockStart{""}, clockStarts...)),
			Source: t.source(r, "source", false), Standing: enum(r, "standing", standings),
			Agrees: r.yes("agrees"), Note: r.text("note"), Row: r.text("row"),
		}
		p.Minutes, p.MinutesHigh = r.minuteSpan()
		if p.Minutes == 0 && p.Words == "" {
			r.wrong("words", "neither minutes nor words", "minutes or words")
		}
		i, ok := t.treatments[p.Treatment]
		if !ok {
			r.wrong("treatment", quoted(p.Treatment), "the id of a treatment in treatments.csv")
			continue
		}
		if key := p.Treatment + " " + p.Row; p.Row != "" && once(r, "row", key, seen) {
			seen[key] = true
		}
		t.table.Treatments[i].Also = append(t.table.Treatments[i].Also, p)
	}
}

// fault is one field of a treatment that does not go with the others.
type fault struct{ column, found, allowed string }

// clockOf is the start of the clock by method.
var clockOf = map[Method]ClockStart{WaterBlanch: AtReturnToBoil, SteamBlanch: AtOnce, CookThrough: NoClock, NoHeat: NoClock}

// checkTreatment returns what does not go together in one treatment. Words rows
// never have minutes, minutes never come without the rule that starts the
// clock, and headspace goes with the pack.
func checkTreatment(x *Treatment) []fault {
	var out []fault
	add := func(column, found, allowed string) { out = append(out, fault{column, found, allowed}) }
	timed := x.Method == WaterBlanch || x.Method == SteamBlanch
	if x.Minutes == 0 && x.Words == "" {
		add("minutes", "neither minutes nor words", "minutes for a blanch, words for anything else")
	}
	switch {
	case timed && x.Minutes == 0:
		add("minutes", "a blanch without minutes", "minutes")
	case !timed && x.Minutes != 0:
		add("minutes", "minutes for a treatment of words", "nothing: cooking and packing raw stand in words")
	}
	if c, ok := clockOf[x.Method]; ok && x.ClockStart != c {
		add("clock", quoted(string(x.ClockStart))+" for method "+quoted(string(x.Method)), quoted(string(c)))
	}
	if x.SourceClock != "" && (!timed || x.Method == SteamBlanch && x.SourceClock == AtReturnToBoil) {
		add("source_clock", quoted(string(x.SourceClock))+" for method "+quoted(string(x.Method)), "what the page says of minutes by this method, or nothing")
	}
	if (x.Method == WaterBlanch) != (x.WaterGalPerLb > 0) {
		add("water_gal_per_lb", quoted(plain(x.WaterGalPerLb))+" gallons a pound", "gallons for a water blanch, and only there")
	}
	switch {
	case (x.ChillFactor == 0) == (x.ChillWords == ""):
		add("chill_factor", quoted(emptyZero(x.ChillFactor))+" and chill words "+quoted(x.ChillWords), "a factor or words, one of the two")
	case !timed && x.ChillFactor != 0:
		add("chill_factor", "a factor without minutes", "words")
	}
	out = append(out, checkPack(x)...)
	if (x.BlanchWater != "") != (x.BlanchSource != "") {
		add("blanch_source", quoted(x.BlanchSource), "a source where something goes into the water, and only there")
	}
	if x.StorageMonths == 0 || x.StorageMonths != math.Trunc(x.StorageMonths) || x.StorageMonthsHigh != math.Trunc(x.StorageMonthsHigh) {
		add("storage_months", quoted(spanText(x.StorageMonths, x.StorageMonthsHigh)), "whole months from 1 to 24")
	}
	return out
}

// checkPack looks at headspace: its own inches for a solid pack, none for a
// loose or tray pack, the table or its own inches for a liquid pack.
func checkPack(x *Treatment) []fault {
	switch {
	case (x.Pack == LoosePack || x.Pack == TrayPack) && (x.HeadspaceIn != 0 || x.HeadspaceRow != ""):
		return []fault{{"headspace_in", plain(x.HeadspaceIn) + " inches for pack " + quoted(string(x.Pack)), "nothing: such a pack needs no headspace"}}
	case x.Pack == SolidPack && (x.HeadspaceIn == 0 || x.HeadspaceRow != ""):
		return []fault{{"headspace_in", plain(x.HeadspaceIn) + " inches for a solid pack", "inches of its own"}}
	case x.Pack == LiquidPack && (x.HeadspaceIn != 0) == (x.HeadspaceRow != ""):
		return []fault{{"headspace_table", quoted(x.HeadspaceRow) + " and " + plain(x.HeadspaceIn) + " inches", "a row of the headspace table or inches, one of the two"}}
	}
	return nil
}
