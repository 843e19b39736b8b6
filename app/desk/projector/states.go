package projector

import (
	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// What the drawings show of a batch. Their texts are short: the figures stand
// large beside them.

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

func (s shown) kettle() drawing.KettleState {
	b := s.batch
	kettle, _ := s.class.Kit.KettleNamed(b.Batch.Kettle)
	burner, _ := s.class.Kit.BurnerNamed(b.Batch.Burner)
	k := drawing.KettleState{Electric: burner.Heat.Kind.Electric(), HoldsL: kettle.Holds.SI()}
	if kettle.Holds.Given() {
		k.Holds = look.Say("holds %s", look.Amount(kettle.Holds.String()))
	}
	switch {
	case s.steamed():
		depth, basket := s.table.Rule("steam-water-in"), s.table.Rule("steam-basket-in")
		k.Steam = true
		k.DepthCm, k.BasketCm = (depth.Value+depth.High)/2*2.54, basket.Value*2.54
		k.LoadKg, k.Load, k.Water = b.Batch.Prepared.SI(), look.Say("one layer"), look.Say("shallow water")
	case litres(b.LoadWater) == 0: // no kettle is chosen: the whole batch at once
		k.WaterL, k.Water = litres(b.Water), look.Say("%s water", b.Water.Text)
		k.LoadKg, k.Load = b.Batch.Prepared.SI(), b.Prepared.Text
	default:
		k.WaterL, k.Water = litres(b.LoadWater), look.Say("%s water", b.LoadWater.Text)
		k.LoadKg, k.Load = kilograms(b.LoadWeight), b.LoadWeight.Text
		if b.Loads.Value <= mostDrawn {
			k.Loads, k.LoadsText = int(b.Loads.Value), b.Loads.Text
		}
	}
	return k
}

// mostDrawn is how many loads are drawn as small kettles; nobody counts more.
const mostDrawn = 99

func (s shown) bath() drawing.BathState {
	b, ice := s.batch, s.batch.Ice
	if b.IceEntered.ID != "" {
		ice = b.IceEntered
	}
	return drawing.BathState{
		FoodKg: b.Batch.Prepared.SI(), IceKg: kilograms(ice),
		Food: b.Prepared.Text, Ice: look.Say("%s ice", ice.Text), Water: look.Say("cold water to cover"),
	}
}

func (s shown) pack() drawing.PackState {
	b := s.batch
	pack := b.Batch.Pack
	p := drawing.PackState{
		Kind: drawing.PackKind(pack.Container), Pints: pack.Size.Pints(),
		HeadspaceIn: inches(b.Headspace), Liquid: b.Treatment.Pack == reference.LiquidPack,
		Headspace: b.Headspace.Text, Amount: packName(pack),
	}
	if b.Headspace.InWords() {
		p.Headspace = ""
		if b.Headspace.Unit != "" { // none, rather than not known
			p.Headspace = look.Say("no headspace")
		}
	}
	if pack.Container == batch.Jar {
		p.Narrow = pack.Mouth == reference.NarrowMouth
		p.Amount = look.Say("%s, wide", packName(pack))
		if p.Narrow {
			p.Amount = look.Say("%s, narrow", packName(pack))
		}
	}
	return p
}

func packName(p batch.Packing) string {
	name, _ := p.ContainerName(look.Voice())
	return name
}

// freezer is what the class puts into its one freezer: all batches on all
// stations.
func (s shown) freezer() drawing.FreezerState {
	t, freezer := s.totals, s.class.Place.Freezer
	high := t.FreezerDay
	high.Value = high.High
	f := drawing.FreezerState{
		CapacityL: freezer.SI(), FoodKg: kilograms(t.Prepared),
		DayLowKg: kilograms(t.FreezerDay), DayHighKg: kilograms(high),
		Days: int(t.FreezerDays.High), Capacity: look.Amount(freezer.String()),
		Food: look.Say("%s today", t.Prepared.Text), Limit: look.Say("most in a day"), DaysText: t.FreezerDays.Text,
	}
	if f.Days > 1 {
		f.Food = look.Say("a day’s share")
	}
	if !freezer.Given() {
		f.Food, f.Limit = look.Say("%s to freeze", t.Prepared.Text), ""
	}
	return f
}

func (s shown) clock() drawing.ClockState {
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
