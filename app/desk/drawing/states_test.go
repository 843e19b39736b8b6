package drawing

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// named is a drawing in one state.
type named struct {
	name string
	make func() fyne.CanvasObject
}

// app is an app for the drawing, in the language of its labels.
func (n named) app(t *testing.T, v look.Variant) {
	looktest.App(t, v)
	if strings.HasSuffix(n.name, "-spanish") {
		look.Speak(words.In(words.Spanish))
		t.Cleanup(func() { look.Speak(nil) })
	}
}

func kettleIn(s KettleState) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { k := NewKettle(); k.Set(s); return k }
}
func bathIn(s BathState) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { b := NewBath(); b.Set(s); return b }
}
func packIn(s PackState) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { p := NewPackSection(); p.Set(s); return p }
}
func freezerIn(s FreezerState) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { f := NewFreezerShelf(); f.Set(s); return f }
}
func sectionIn(s measure.Section) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { d := NewSection(); d.Set(s); return d }
}
func clockIn(s ClockState) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { c := NewClockStart(); c.Set(s); return c }
}

// threeLoads is 3 lb in three loads in a kettle that holds 4 qt.
var threeLoads = KettleState{
	HoldsL: 3.785411784, WaterL: 3.785411784, LoadKg: 0.45359237, Loads: 3,
	Holds: "holds 4 qt", Water: "1 gal water", Load: "1 lb", LoadsText: "3 loads of 1 lb",
}

var states = []named{
	{"kettle-three-loads", kettleIn(threeLoads)},
	{"kettle-half", kettleIn(KettleState{
		HoldsL: 11.36, WaterL: 5.68, LoadKg: 0.68, Loads: 1,
		Holds: "holds 12 qt", Water: "1 1/2 gal water", Load: "1 1/2 lb", LoadsText: "1 load",
	})},
	{"kettle-electric", kettleIn(KettleState{
		Electric: true,
		HoldsL:   11.36, WaterL: 5.68, LoadKg: 0.68, Loads: 1,
		Holds: "holds 12 qt", Water: "1 1/2 gal water", Load: "1 1/2 lb", LoadsText: "1 load",
	})},
	{"kettle-steam", kettleIn(KettleState{
		HoldsL: 7.57, DepthCm: 3.8, BasketCm: 7.6, LoadKg: 0.3, Steam: true,
		Holds: "holds 8 qt", Water: "1–2 in water", Load: "one layer at a time",
	})},
	{"kettle-many", kettleIn(KettleState{
		HoldsL: 3.785, WaterL: 3.5, LoadKg: 0.44, Loads: 17,
		Holds: "holds 4 qt", Water: "15 cups water", Load: "0.97 lb", LoadsText: "17 loads",
	})},
	{"kettle-empty", kettleIn(KettleState{})},
	{"bath", bathIn(BathState{
		FoodKg: 1.36, IceKg: 1.36, Food: "3 lb vegetables", Ice: "3 lb ice", Water: "cold water to cover", Chill: "chill 3 min",
	})},
	{"bath-empty", bathIn(BathState{})},
	{"pack-jar-narrow", packIn(PackState{Kind: PackJar, Pints: 2, Narrow: true, HeadspaceIn: 1.5, Liquid: true, Headspace: "1 ½ in headspace", Amount: "quart jar, narrow"})},
	{"pack-box", packIn(PackState{Kind: PackBox, Pints: 1, HeadspaceIn: 0.5, Headspace: "½ in headspace", Amount: "pint box"})},
	{"pack-box-frozen", packIn(PackState{Kind: PackBox, Pints: 2, HeadspaceIn: 1, Liquid: true, Headspace: "1 in headspace", Amount: "quart box",
		Frozen: FrozenState{GrowsShare: 0.08, LeftIn: 0.6, Text: "⅝ in left", When: "frozen, by estimate"}})},
	{"pack-jar-too-full", packIn(PackState{Kind: PackJar, Pints: 1, Narrow: true, HeadspaceIn: 0.5, Headspace: "½ in headspace", Amount: "pint jar, narrow",
		Frozen: FrozenState{GrowsShare: 0.08, OverIn: 0.3, Text: "needs ⅞ in", When: "frozen, by estimate"}})},
	{"pack-bag-frozen", packIn(PackState{Kind: PackBag, Pints: 1, HeadspaceIn: 0.5, Headspace: "½ in headspace", Amount: "pint bag",
		Frozen: FrozenState{GrowsShare: 0.05, Text: "the bag gives way", When: "frozen, by estimate"}})},
	{"section-round", sectionIn(inside(measure.Round))},
	{"section-flat", sectionIn(inside(measure.Flat))},
	{"pack-bag-none", packIn(PackState{Kind: PackBag, Pints: 2, Headspace: "no headspace", Amount: "quart bag"})},
	{"freezer-one-day", freezerIn(FreezerState{
		CapacityL: 396, FoodKg: 5.44, DayLowKg: 12.7, DayHighKg: 19.05, Days: 1,
		Capacity: "14 cu ft", Food: "12 lb today", Limit: "28–42 lb a day", DaysText: "1 day",
	})},
	{"freezer-four-days", freezerIn(FreezerState{
		CapacityL: 198, FoodKg: 27.2, DayLowKg: 6.35, DayHighKg: 9.53, Days: 4,
		Capacity: "7 cu ft", Food: "15 lb today", Limit: "14–21 lb a day", DaysText: "4 days",
	})},
	{"freezer-unknown", freezerIn(FreezerState{Food: "3 lb to freeze", Limit: "freezer not entered"})},
	{"clock-boil", clockIn(ClockState{
		AtBoil: true, Minutes: 3, MinutesHigh: 3, ChillMin: 3,
		In: "in", Starts: "clock starts when it boils again", Counted: "3 min", Chill: "chill 3 min",
	})},
	{"clock-steam", clockIn(ClockState{Minutes: 5, MinutesHigh: 5, ChillMin: 5, Starts: "clock starts at once", Counted: "5 min", Chill: "chill 5 min"})},
	// Spanish says most things longer.
	{"kettle-spanish", kettleIn(KettleState{
		HoldsL: 3.785411784, WaterL: 3.785411784, LoadKg: 0.45359237, Loads: 3,
		Holds: "caben 1 gal", Water: "1 gal de agua", Load: "1 lb", LoadsText: "3 cargas",
	})},
	{"bath-spanish", bathIn(BathState{FoodKg: 1.36, IceKg: 1.36, Food: "3 lb", Ice: "3 lb de hielo", Water: "agua fría hasta cubrir"})},
	{"pack-box-spanish", packIn(PackState{Kind: PackBox, Pints: 2, HeadspaceIn: 1, Liquid: true,
		Headspace: "1 pulg de espacio", Amount: "recipiente rígido de un cuarto de galón",
		Frozen: FrozenState{GrowsShare: 0.08, LeftIn: 0.6, Text: "quedan ⅝ pulg", When: "congelado (estimación)"}})},
	{"pack-jar-spanish", packIn(PackState{Kind: PackJar, Pints: 2, Narrow: true, HeadspaceIn: 1.5,
		Headspace: "1 ½ pulg de espacio", Amount: "frasco 1 qt, angosto",
		Frozen: FrozenState{GrowsShare: 0.08, OverIn: 0.3, Text: "hacen falta 1 ⅞ pulg", When: "congelado (estimación)"}})},
	{"freezer-spanish", freezerIn(FreezerState{
		CapacityL: 198, FoodKg: 27.2, DayLowKg: 6.35, DayHighKg: 9.53, Days: 4,
		Capacity: "7 pies³", Food: "lo de un día", Limit: "14–21 lb al día", DaysText: "4 días",
	})},
	{"clock-spanish", clockIn(ClockState{
		AtBoil: true, Minutes: 3, MinutesHigh: 3, ChillMin: 3,
		In: "entra", Starts: "empieza el tiempo", Counted: "3 min", Chill: "enfriar 3 min",
	})},
	{"clock-words", clockIn(ClockState{Starts: "no clock", Counted: "cook until soft", Chill: "cool"})},
}
