package bench

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// shown is what the bench shows: one batch worked through, and the class it
// belongs to. While somebody types it is worked from a copy of the class.
type shown struct {
	class class.Class
	table *reference.Table
	batch class.BatchWorked

	trying      bool                 // it is a trial
	differences []session.Difference // from the plan
}

// kettle is the kettle of the batch; not given where none is chosen.
func (s shown) kettle() class.Kettle {
	k, _ := s.class.Kit.KettleNamed(s.batch.Batch.Kettle)
	return k
}

// inSI is a figure's value in SI, by the unit that it is printed in.
func inSI(f measure.Figure, one interface {
	UnmarshalText([]byte) error
	SI() float64
}) float64 {
	if f.InWords() || one.UnmarshalText([]byte("1 "+f.Unit)) != nil {
		return 0
	}
	return f.Value * one.SI()
}

func litres(f measure.Figure) float64    { return inSI(f, new(measure.Volume)) }
func kilograms(f measure.Figure) float64 { return inSI(f, new(measure.Mass)) }
func inches(f measure.Figure) float64    { return inSI(f, new(measure.Length)) / measure.Inch.Factor }

func highKg(f measure.Figure) float64 {
	f.Value = f.High
	return kilograms(f)
}

// drawsKettle says whether the treatment is done in a kettle by rule.
func (s shown) drawsKettle() bool {
	m := s.batch.Treatment.Method
	return m == reference.WaterBlanch || m == reference.SteamBlanch
}

func (s shown) kettleState() drawing.KettleState {
	b, kettle := s.batch, s.kettle()
	burner, _ := s.class.Kit.BurnerNamed(b.Batch.Burner)
	k := drawing.KettleState{Electric: burner.Heat.Kind.Electric(), HoldsL: kettle.Holds.SI(), LoadKg: kilograms(b.LoadWeight), Load: b.LoadWeight.Text}
	if kettle.Holds.Given() {
		k.Holds = look.Say("holds %s", amount(kettle.Holds))
	}
	if b.Treatment.Method == reference.SteamBlanch {
		depth, basket := s.table.Rule("steam-water-in"), s.table.Rule("steam-basket-in")
		k.Steam = true
		k.DepthCm, k.BasketCm = (depth.Value+depth.High)/2*2.54, basket.Value*2.54
		k.LoadKg, k.Load, k.Water = b.Batch.Prepared.SI(), b.Loads.Text, look.Say("shallow water")
		return k
	}
	k.WaterL = litres(b.LoadWater)
	k.Water = look.Say("%s water", b.LoadWater.Text)
	k.Loads = int(b.Loads.Value)
	k.LoadsText = b.Loads.Text
	if k.WaterL == 0 { // no kettle is chosen: the whole batch at once
		k.WaterL, k.Water = litres(b.Water), look.Say("%s water", b.Water.Text)
		k.LoadKg, k.Load, k.LoadsText = b.Batch.Prepared.SI(), b.Prepared.Text, ""
	}
	return k
}

func (s shown) bathState() drawing.BathState {
	b := s.batch
	ice := b.Ice
	if b.IceEntered.ID != "" {
		ice = b.IceEntered
	}
	return drawing.BathState{
		FoodKg: b.Batch.Prepared.SI(), IceKg: kilograms(ice),
		Food: b.Prepared.Text, Ice: look.Say("%s ice", ice.Text), Water: look.Say("cold water to cover"),
	}
}

// drawsBath says whether the rule of ice counts for the treatment.
func (s shown) drawsBath() bool { return kilograms(s.batch.Ice) > 0 }

func (s shown) packState() drawing.PackState {
	b := s.batch
	pack := b.Batch.Pack
	p := drawing.PackState{
		Kind: drawing.PackKind(pack.Container), Pints: pack.Size.Pints(),
		HeadspaceIn: inches(b.Headspace), Liquid: b.Treatment.Pack == reference.LiquidPack,
		Headspace: look.Say("%s headspace", b.Headspace.Text), Amount: packName(pack),
	}
	switch {
	case b.Headspace.InWords() && b.Headspace.Unit == "": // not known
		p.Headspace = look.Say("headspace: %s", b.Headspace.Words)
	case b.Headspace.InWords():
		p.Headspace = look.Say("no headspace")
	}
	if pack.Container == batch.Jar {
		p.Narrow = pack.Mouth == reference.NarrowMouth
	}
	if f := b.Estimates.Frozen; f.GrowsShare > 0 {
		p.Frozen = drawing.FrozenState{GrowsShare: f.GrowsShare, LeftIn: f.LeftIn, OverIn: f.OverIn, Text: f.Text, When: look.Say("frozen, by estimate")}
	}
	return p
}

// packName is what the drawing of a pack says of it. There is room for a few
// words only.
func packName(p batch.Packing) string {
	if p.Container == batch.Jar {
		return look.Say(jarNames[jar{p.Size, p.Mouth}])
	}
	name, _ := p.ContainerName(look.Voice())
	return name
}

// jar is a jar by what tells it from another.
type jar struct {
	size  batch.Size
	mouth reference.Mouth
}

var jarNames = map[jar]string{
	{batch.Pint, reference.WideMouth}: words.Key("pint jar, wide"), {batch.Quart, reference.WideMouth}: words.Key("quart jar, wide"),
	{batch.Pint, reference.NarrowMouth}: words.Key("pint jar, narrow"), {batch.Quart, reference.NarrowMouth}: words.Key("quart jar, narrow"),
}

func (s shown) freezerState() drawing.FreezerState {
	b, freezer := s.batch, s.class.Place.Freezer
	f := drawing.FreezerState{
		CapacityL: freezer.SI(), FoodKg: b.Batch.Prepared.SI(),
		DayLowKg: kilograms(b.FreezerDay), DayHighKg: highKg(b.FreezerDay),
		Days: int(b.FreezerDays.High), Capacity: amount(freezer),
		Food: look.Say("%s today", b.Prepared.Text), Limit: look.Say("%s a day", b.FreezerDay.Text), DaysText: b.FreezerDays.Text,
	}
	if f.Days > 1 {
		f.Food = look.Say("a day’s share")
	}
	if !freezer.Given() {
		f.Food, f.Limit = look.Say("%s to freeze", b.Prepared.Text), b.FreezerDay.Words
	}
	return f
}

// timed says whether the treatment has minutes.
func (s shown) timed() bool { return s.batch.Minutes.Value > 0 }

func (s shown) clockState() drawing.ClockState {
	b := s.batch
	c := drawing.ClockState{
		AtBoil: b.Treatment.ClockStart == reference.AtReturnToBoil, Minutes: b.Minutes.Value, MinutesHigh: b.Minutes.High,
		In: look.Say("in"), Starts: look.Say("clock starts"), Counted: b.Minutes.Text,
	}
	if !b.Chill.InWords() {
		c.ChillMin, c.Chill = b.Chill.High, look.Say("chill %s", b.Chill.Text)
	}
	return c
}

// renamed is a figure under a shorter label, for where its place says the rest.
func renamed(f measure.Figure, label string) measure.Figure {
	f.Label = label
	return f
}

// counted is a figure of things, whose printed unit ("pint bags", "day") is cut
// from the number so that it stands smaller. A text that does not begin with
// its number ("at least 3 pint bags") stands as words.
func counted(f measure.Figure) measure.Figure {
	first, _ := utf8.DecodeRuneInString(f.Text)
	_, unit := look.Split(f)
	switch {
	case f.InWords():
	case unicode.IsLetter(first):
		f.Words, f.Value, f.High = f.Text, 0, 0
	case unit == "":
		_, f.Unit, _ = strings.Cut(f.Text, " ")
	}
	return f
}

// amount is a quantity as printed for a person, "" where it is not given.
func amount[D measure.Dimension](q measure.Of[D]) string { return look.Amount(q.String()) }
