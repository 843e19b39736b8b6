package batch

import (
	"fmt"
	"math"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Work computes everything about one batch by the rules of method. It is pure:
// the same job and table give the same result.
func Work(job Job, table *reference.Table) Worked {
	w := worker{Job: job, table: table, kitchen: kitchen{metric: job.Units == measure.Metric}}
	w.entered()
	w.water()
	w.minutes()
	w.chill()
	w.pack()
	w.buy()
	w.freezer()
	w.storage()
	w.provenance()
	return w.out
}

// worker carries one batch through its steps.
type worker struct {
	Job
	kitchen
	table *reference.Table
	out   Worked
}

// heated says whether the pieces go through boiling water or steam by the
// clock.
func (w *worker) timed() bool {
	return w.Treatment.Method == reference.WaterBlanch || w.Treatment.Method == reference.SteamBlanch
}

func (w *worker) find(severity measure.Severity, id, source, says, do string) {
	w.out.Findings = append(w.out.Findings, measure.Finding{ID: id, Severity: severity, Says: says, Do: do, Source: source})
}

func (w *worker) entered() {
	amount, text := w.mass(w.Prepared.SI())
	if w.Prepared.Unit() == w.massUnit() {
		text = w.Prepared.String() // as typed, to the last digit
	}
	_, other := kitchen{metric: !w.metric}.mass(w.Prepared.SI())
	w.out.Prepared = measure.Figure{
		ID: "prepared", Label: "Prepared weight", Value: amount, High: amount, Unit: w.massUnit().Symbol,
		Text: text, Also: other, Working: "as entered: " + w.Prepared.String() + ", trimmed and ready for the kettle",
		Basis: measure.Entered, Source: "entered",
	}
	if !w.Prepared.Given() {
		w.out.Prepared.Text, w.out.Prepared.Also, w.out.Prepared.Working = "not entered", "", "no weight entered"
		w.out.Prepared.Words = "not entered"
		w.find(measure.Stop, "no-weight", "", "No prepared weight is entered for this batch.", "Enter what one station weighs after trimming, such as 3 lb.")
	}
}

// water works out the boiling water, what one filling of the kettle takes and
// the number of loads.
func (w *worker) water() {
	t := w.Treatment
	if t.Method != reference.WaterBlanch {
		w.noWater()
		return
	}
	rule := w.table.Rule("water-gal-per-lb")
	if w.Crop.Leafy {
		rule = w.table.Rule("water-leafy-gal-per-lb")
	}
	// the treatment's own water rule, which equals the general one unless edited
	perLb := t.WaterGalPerLb
	needL := w.Prepared.SI() * perLb * gallonPerPound
	text, also := w.waterText(needL)
	_, prepared := w.mass(w.Prepared.SI())
	need := w.kitchen.water(needL)
	w.out.Water = measure.Figure{
		ID: "water", Label: "Boiling water for the batch", Value: need, High: need, Unit: w.waterUnit().Symbol,
		Text: text, Also: also, Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s × %s = %s %s", prepared, w.rate(perLb), measure.Plain(need), w.waterUnit().Symbol),
	}
	if w.Crop.Leafy {
		w.out.Water.Note = "Leafy greens take twice the water."
	}
	if !w.Kettle.Given() {
		unknown := func(id, label string) measure.Figure {
			return measure.Figure{ID: id, Label: label, Words: "choose a kettle", Text: "choose a kettle", Working: "no kettle chosen", Basis: measure.Entered, Source: "entered"}
		}
		w.out.KettleTakes = unknown("kettle-takes", "One load takes at most")
		w.out.Loads = unknown("loads", "Loads")
		w.out.LoadWeight = unknown("load-weight", "Each load")
		w.out.LoadWater = unknown("load-water", "Water in the kettle")
		w.find(measure.Mind, "no-kettle", "", "No kettle is chosen, so the loads are not worked out.", "Choose a kettle and say how much water it holds.")
		return
	}
	takesKg := w.Kettle.SI() / (perLb * gallonPerPound)
	takes, takesText := w.mass(takesKg)
	w.out.KettleTakes = measure.Figure{
		ID: "kettle-takes", Label: "One load takes at most", Value: takes, High: takes, Unit: w.massUnit().Symbol,
		Text: takesText, Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s of water ÷ %s = %s", w.Kettle, w.rate(perLb), takesText),
	}
	loads := math.Ceil(w.Prepared.SI()/takesKg - 1e-9)
	w.out.Loads = measure.Figure{
		ID: "loads", Label: "Loads", Value: loads, High: loads, Unit: "loads",
		Text: counted(loads, "load", "loads"), Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s ÷ %s a load = %s, so %s", prepared, takesText, measure.Plain(w.Prepared.SI()/takesKg), counted(loads, "load", "loads")),
	}
	if loads == 0 {
		loads = 1
	}
	eachKg := w.Prepared.SI() / loads
	each, eachText := w.mass(eachKg)
	w.out.LoadWeight = measure.Figure{
		ID: "load-weight", Label: "Each load", Value: each, High: each, Unit: w.massUnit().Symbol,
		Text: eachText, Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s ÷ %s = %s", prepared, counted(loads, "load", "loads"), eachText),
	}
	loadL := eachKg * perLb * gallonPerPound
	loadWater := w.kitchen.water(loadL)
	loadText, loadAlso := w.waterText(loadL)
	w.out.LoadWater = measure.Figure{
		ID: "load-water", Label: "Water in the kettle, at least", Value: loadWater, High: loadWater, Unit: w.waterUnit().Symbol,
		Text: loadText, Also: loadAlso, Basis: measure.Ruled, Source: rule.Source,
		Working: fmt.Sprintf("%s × %s = %s %s", eachText, w.rate(perLb), measure.Plain(loadWater), w.waterUnit().Symbol),
	}
	w.loadFindings(eachKg, eachText, loads)
}

func (w *worker) loadFindings(eachKg float64, eachText string, loads float64) {
	back := w.table.Rule("return-to-boil-min")
	if limit := w.table.Rule("batch-lb"); eachKg > limit.Value*measure.Pound.Factor*1.05 {
		_, limitText := w.mass(limit.Value * measure.Pound.Factor)
		w.find(measure.Mind, "load-over-a-pound", limit.Source,
			fmt.Sprintf("Each load is %s; the rule of method works with about %s at a time.", eachText, limitText),
			fmt.Sprintf("Watch the first load: if the water is not boiling again within %s, use less.", measure.Minutes(back.Value)))
	}
	if reuse := w.table.Rule("kettle-reuse-lots"); loads > reuse.High {
		w.find(measure.Note, "change-water", reuse.Source,
			fmt.Sprintf("This kettle is filled %s times.", measure.Plain(loads)),
			fmt.Sprintf("The same water may serve %s–%s loads: keep the level, change it when it is cloudy, and let it boil before each load.", measure.Plain(reuse.Value), measure.Plain(reuse.High)))
	}
}

// noWater fills the water figures for treatments without a water blanch.
func (w *worker) noWater() {
	words, source, working := "none", w.Treatment.Source, "this treatment uses no boiling water"
	switch w.Treatment.Method {
	case reference.SteamBlanch:
		depth, basket := w.table.Rule("steam-water-in"), w.table.Rule("steam-basket-in")
		_, low, _ := w.length(depth.Value)
		_, high, _ := w.length(depth.High)
		_, above, _ := w.length(basket.Value)
		words = fmt.Sprintf("%s to %s deep, under the basket", low, high)
		source, working = depth.Source, fmt.Sprintf("steam: shallow water, basket at least %s above the bottom of the pot", above)
		w.find(measure.Note, "steam-single-layer", basket.Source,
			"Steam reaches only a single layer.", "Lay one layer in the basket, lid on tight, heat on high; the clock starts when the lid goes on.")
	case reference.CookThrough:
		words, working = "as for cooking", "cooked until done, not blanched by the clock"
	}
	inWords := func(id, label, says string) measure.Figure {
		return measure.Figure{ID: id, Label: label, Words: says, Text: says, Working: working, Basis: measure.Tabled, Source: source}
	}
	w.out.Water = inWords("water", "Water", words)
	loads := "not counted"
	if w.Treatment.Method == reference.SteamBlanch {
		loads = "one layer at a time"
	}
	w.out.KettleTakes = inWords("kettle-takes", "One load takes at most", loads)
	w.out.Loads = inWords("loads", "Loads", loads)
	w.out.LoadWeight = inWords("load-weight", "Each load", loads)
	w.out.LoadWater = inWords("load-water", "Water in the kettle", words)
}

func counted(n float64, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return measure.Plain(n) + " " + many
}
