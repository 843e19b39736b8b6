package projector

import (
	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/drawing"
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
	k := drawing.KettleState{HoldsL: kettle.Holds.SI()}
	if kettle.Holds.Given() {
		k.Holds = "holds " + kettle.Holds.String()
	}
	switch {
	case s.steamed():
		depth, basket := s.table.Rule("steam-water-in"), s.table.Rule("steam-basket-in")
		k.Steam = true
		k.DepthCm, k.BasketCm = (depth.Value+depth.High)/2*2.54, basket.Value*2.54
		k.LoadKg, k.Load, k.Water = b.Batch.Prepared.SI(), "one layer", "shallow water"
	case litres(b.LoadWater) == 0: // no kettle is chosen: the whole batch at once
		k.WaterL, k.Water = litres(b.Water), b.Water.Text+" water"
		k.LoadKg, k.Load = b.Batch.Prepared.SI(), b.Prepared.Text
	default:
		k.WaterL, k.Water = litres(b.LoadWater), b.LoadWater.Text+" water"
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
	b := s.batch
	return drawing.BathState{
		FoodKg: b.Batch.Prepared.SI(), IceKg: kilograms(b.Ice),
		Food: b.Prepared.Text, Ice: b.Ice.Text + " ice", Water: "cold water to cover",
	}
}

func (s shown) pack() drawing.PackState {
	b := s.batch
	pack := b.Batch.Pack
	p := drawing.PackState{
		Kind: drawing.PackKind(pack.Container), Pints: pack.Size.Pints(),
		HeadspaceIn: inches(b.Headspace), Liquid: b.Treatment.Pack == reference.LiquidPack,
		Headspace: b.Headspace.Text, Amount: string(pack.Size) + " " + string(pack.Container),
	}
	if b.Headspace.InWords() {
		p.Headspace = "no headspace"
		if b.Headspace.Words != "none" {
			p.Headspace = ""
		}
	}
	if pack.Container == batch.Jar {
		p.Narrow = pack.Mouth == reference.NarrowMouth
		p.Amount += ", " + string(pack.Mouth)
	}
	return p
}

func (s shown) freezer() drawing.FreezerState {
	b, freezer := s.batch, s.class.Place.Freezer
	high := b.FreezerDay
	high.Value = high.High
	f := drawing.FreezerState{
		CapacityL: freezer.SI(), FoodKg: b.Batch.Prepared.SI(),
		DayLowKg: kilograms(b.FreezerDay), DayHighKg: kilograms(high),
		Days: int(b.FreezerDays.High), Capacity: freezer.String(),
		Food: b.Prepared.Text + " today", Limit: "most in a day", DaysText: b.FreezerDays.Text,
	}
	if f.Days > 1 {
		f.Food = "a day’s share"
	}
	if !freezer.Given() {
		f.Food, f.Limit = b.Prepared.Text+" to freeze", ""
	}
	return f
}

func (s shown) clock() drawing.ClockState {
	b := s.batch
	c := drawing.ClockState{
		AtBoil: b.Treatment.ClockStart == reference.AtReturnToBoil, Minutes: b.Minutes.Value, MinutesHigh: b.Minutes.High,
		In: "in", Starts: "clock starts", Counted: b.Minutes.Text,
	}
	if !b.Chill.InWords() {
		c.ChillMin, c.Chill = b.Chill.High, "chill "+b.Chill.Text
	}
	return c
}
