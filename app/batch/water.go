package batch

import (
	"fmt"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// boilingWater works out the water, what one filling of the kettle takes and
// the number of loads.
func (w *worker) boilingWater() {
	t := w.Treatment
	switch {
	case t.Method != reference.WaterBlanch:
		w.noWater()
		return
	case !w.weighed():
		w.out.Water = w.noWeight("water", w.Say("Water for the batch"))
	default:
		needL := w.Prepared.SI() * t.WaterGalPerLb * gallonPerPound
		text, also := w.waterText(needL)
		need := w.water(needL)
		w.out.Water = w.byWater(measure.Figure{
			ID: "water", Label: w.Say("Water for the batch"), Value: need, High: need, Unit: w.waterUnit().Symbol, Text: text, Also: also,
			Working: fmt.Sprintf("%s × %s = %s %s", w.massExact(w.Prepared.SI()), w.rate(t.WaterGalPerLb), measure.Plain(need), w.waterUnit().Symbol),
		})
		if w.Crop.Leafy && t.WaterGalPerLb == w.table.Rule("water-leafy-gal-per-lb").Value {
			w.out.Water.Note = w.Say("Leafy greens take %s.", w.rule(w.table.Rule("water-leafy-gal-per-lb")))
		}
	}
	w.loads()
}

// byWater lets a figure rest on the treatment's water rule.
func (w *worker) byWater(f measure.Figure) measure.Figure {
	f = from(w.Treatment.WaterSource, w.Treatment.WaterStanding, f)
	if f.Basis == measure.Tabled {
		f.Basis = measure.Ruled
	}
	return f
}

func (w *worker) loads() {
	if !w.Kettle.Given() {
		unknown := func(id, label string) measure.Figure {
			f := inWords(id, label, w.Say("kettle not known"), w.Say("the water that the kettle holds is not entered"))
			f.Basis, f.Source = measure.Entered, "entered"
			return f
		}
		w.out.KettleTakes = unknown("kettle-takes", w.Say("One load takes at most"))
		w.out.Loads = unknown("loads", w.Say("Loads"))
		w.out.LoadWeight = unknown("load-weight", w.Say("Each load"))
		w.out.LoadWater = unknown("load-water", w.Say("Least water in the kettle"))
		w.find(measure.Mind, "no-kettle", "", w.Say("The loads are not worked out: no kettle is chosen, or how much water it holds is not entered."),
			w.Say("Choose a kettle and say how much water it holds with room to boil."))
		return
	}
	perLb := w.Treatment.WaterGalPerLb
	takesKg := w.Kettle.SI() / (perLb * gallonPerPound)
	takes, takesText := w.mass(takesKg)
	w.out.KettleTakes = w.byWater(measure.Figure{
		ID: "kettle-takes", Label: w.Say("One load takes at most"), Value: takes, High: takes, Unit: w.massUnit().Symbol, Text: takesText,
		Working: w.Say("%s of water ÷ %s = %s", w.asTyped(w.Kettle), w.rate(perLb), takesText),
	})
	if !w.weighed() {
		w.out.Loads = w.noWeight("loads", w.Say("Loads"))
		w.out.LoadWeight = w.noWeight("load-weight", w.Say("Each load"))
		w.out.LoadWater = w.noWeight("load-water", w.Say("Least water in the kettle"))
		return
	}
	quotient := w.Prepared.SI() / takesKg
	loads := wholeUp(quotient)
	quotientText := measure.Plain(quotient)
	if quotientText == measure.Plain(loads-1) || quotientText == measure.Plain(loads) && quotient != loads { // just over a whole number: show that it is
		quotientText = measure.Exact(quotient)
		if quotientText == measure.Plain(loads-1) {
			quotientText = w.Say("a little over %s", quotientText)
		}
	}
	prepared := w.massExact(w.Prepared.SI())
	w.out.Loads = w.byWater(measure.Figure{
		ID: "loads", Label: w.Say("Loads"), Value: loads, High: loads, Unit: "loads", Text: measure.Counted(loads, w.Say("load"), w.Say("loads")),
		Working: w.Say("%s ÷ %s a load = %s, so %s", prepared, w.massExact(takesKg), quotientText, measure.Counted(loads, w.Say("load"), w.Say("loads"))),
	})
	eachKg := w.Prepared.SI() / loads
	each, eachText := w.mass(eachKg)
	w.out.LoadWeight = w.byWater(measure.Figure{
		ID: "load-weight", Label: w.Say("Each load"), Value: each, High: each, Unit: w.massUnit().Symbol, Text: eachText,
		Working: fmt.Sprintf("%s ÷ %s = %s", prepared, measure.Counted(loads, w.Say("load"), w.Say("loads")), eachText),
	})
	loadL := eachKg * perLb * gallonPerPound
	w.loadWaterL = loadL
	loadWater := w.water(loadL)
	loadText, loadAlso := w.waterText(loadL)
	w.out.LoadWater = w.byWater(measure.Figure{
		ID: "load-water", Label: w.Say("Least water in the kettle"), Value: loadWater, High: loadWater, Unit: w.waterUnit().Symbol, Text: loadText, Also: loadAlso,
		Working: fmt.Sprintf("%s × %s = %s %s", w.massExact(eachKg), w.rate(perLb), measure.Plain(loadWater), w.waterUnit().Symbol),
	})
	w.loadFindings(eachKg, eachText, loads)
}

// AboutAPound is how far "about one pound" may be over before it is remarked;
// a judgement of this program, not a published limit.
const AboutAPound = 1.05

func (w *worker) loadFindings(eachKg float64, eachText string, loads float64) {
	back := w.table.Rule("return-to-boil-min")
	if limit := w.table.Rule("batch-lb"); eachKg > limit.Value*measure.Pound.Factor*AboutAPound {
		_, limitText := w.mass(limit.Value * measure.Pound.Factor)
		w.find(measure.Mind, "load-over-a-pound", limit.Source,
			w.Say("Each load is %s; the rule of method works with about %s at a time.", eachText, limitText),
			w.Say("Watch the first load: if the water is not boiling again within %s, use less.", measure.Minutes(back.Value)))
	}
	if reuse := w.table.Rule("kettle-reuse-lots"); loads > reuse.High {
		w.find(measure.Note, "change-water", reuse.Source,
			w.Say("This kettle is filled %s times.", measure.Plain(loads)),
			w.Say("The same water may serve %s–%s loads: keep the level, change it when it is cloudy, and let it boil before each load.", measure.Plain(reuse.Value), measure.Plain(reuse.High)))
	}
}

// noWater fills the water figures for treatments without a water blanch.
func (w *worker) noWater() {
	t := w.Treatment
	tabled := func(f measure.Figure) measure.Figure { return from(t.Source, t.Standing, f) }
	water, load, working := w.Say("none"), w.Say("not counted"), w.Say("this treatment uses no boiling water")
	switch t.Method {
	case reference.SteamBlanch:
		depth, basket := w.table.Rule("steam-water-in"), w.table.Rule("steam-basket-in")
		tabled = func(f measure.Figure) measure.Figure { return by(depth, f) }
		water = w.Say("%s deep, under the basket", w.rule(depth))
		load = w.Say("one layer at a time")
		working = w.Say("steam: shallow water, basket at least %s above the bottom of the pot", w.rule(basket))
		w.find(measure.Note, "steam-single-layer", basket.Source,
			w.Say("Steam reaches only a single layer."), w.Say("Lay one layer in the basket, lid on tight, heat on high; the clock starts when the lid goes on."))
	case reference.CookThrough:
		water, working = w.Say("as for cooking"), w.Say("cooked until done, not blanched by the clock")
	}
	w.out.Water = tabled(inWords("water", w.Say("Water"), water, working))
	w.out.KettleTakes = tabled(inWords("kettle-takes", w.Say("One load takes at most"), load, working))
	w.out.Loads = tabled(inWords("loads", w.Say("Loads"), load, working))
	w.out.LoadWeight = tabled(inWords("load-weight", w.Say("Each load"), load, working))
	w.out.LoadWater = tabled(inWords("load-water", w.Say("Water in the kettle"), water, working))
}
