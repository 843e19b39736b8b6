package exports

import (
	"strconv"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Words that stand where no number does; the program uses the same.
var (
	noMinutes    = words.Key("no minutes")
	inWords      = words.Key("in words")
	noIce        = words.Key("none by rule")
	none         = words.Key("none")
	notPublished = words.Key("not given")
	fillOne      = words.Key("fill one and count")
	noKettle     = words.Key("kettle not known")
	noWeight     = words.Key("enter a weight") // the sheet shows nothing instead
	noFreezer    = words.Key("freezer not entered")
	asItIs       = words.Key("as it is")
	moreThan     = words.Key("more than %s")
)

// packs are headspace, packs, weight to buy and days in the freezer.
func (o *own) packs() []result {
	u := o.units
	headspace, _ := o.of(func(w batch.Worked) measure.Figure { return w.Headspace })
	packsLow, packsHigh := o.of(func(w batch.Worked) measure.Figure { return w.Packs })
	buyLow, buyHigh := o.of(func(w batch.Worked) measure.Figure { return w.Buy })
	dayLow, dayHigh := o.of(func(w batch.Worked) measure.Figure { return w.FreezerDay })
	if o.first == nil && o.Class.Place.Freezer.Given() {
		dayLow, dayHigh = o.Totals.FreezerDay.Value, o.Totals.FreezerDay.High
	}
	daysLow, daysHigh := o.of(func(w batch.Worked) measure.Figure { return w.FreezerDays })
	inch, _ := u.lengthRoles()
	freezer := o.Table.Rule("freezer-lb-per-cuft-day").Source
	headspaceMark, headspaceStart := o.headspaceMark()
	buyMark, buyStart := o.buyMark()
	const noneCounted = `COUNT(bought_weight,per_pint_from,pints_each)<3`
	lowPacks := `ROUNDUP(bought_weight/per_pint_to/pints_each-0.000000001,0)`
	highPacks := `ROUNDUP(bought_weight/per_pint_from/pints_each-0.000000001,0)`
	quickDays := `ROUNDUP(` + u.prepared + `/freezer_day_to-0.000000001,0)`
	slowDays := `ROUNDUP(` + u.prepared + `/freezer_day_from-0.000000001,0)`
	before, after, _ := strings.Cut(o.Say(moreThan), "%s")
	overPrepared := quoted(before) + `&` + printed(u.prepared) + `&` + quoted(noBreak+u.mass.Symbol+after)
	return []result{
		{name: "headspace_rule", label: o.Say("Headspace, table"), role: inch, unit: o.symbol(u.lengthUnit()), marks: headspaceMarks,
			formula: needsTreatment + `INDEX(headspace_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.headspaceRule(r) }), how: o.Say("from the lists below"), room: o.Say(none)},
		{name: "headspace", label: o.Say("Headspace"), role: inch, unit: o.symbol(u.lengthUnit()),
			markFormula: headspaceMark, markValue: headspaceStart,
			formula: o.headspaceFormula(), value: headspace, how: o.Say("of the table; none after a tray"), room: o.Say(none)},
		{name: "pints_each", label: o.Say("Pints in a pack"), role: resultCount, unit: "pt",
			formula: `IF(container="","",IF(container=` + o.size(batch.Quart) + `,pints_per_quart,1))`, value: o.pintsEach(), how: o.Say("1 for a pint, 2 for a quart")},
		{name: "per_pint_from", label: o.Say("As bought, for a pint"), role: resultAmount, unit: u.mass.Symbol, marks: yieldMarks,
			formula: needsTreatment + `INDEX(pint_list,treatment_row))`, value: o.fromRecord(func(r ownRecord) any { return o.perPint(r, r.yield.LbPerPint) }),
			toFormula: `IF(ISNUMBER(per_pint_from),INDEX(pint_high_list,treatment_row),"")`, toValue: o.fromRecord(o.perPintHigh),
			how: o.Say("from the lists below"), room: o.Say(notPublished)},
		{name: "share_left", label: o.Say("Left after trimming"), role: resultAmount, unit: o.Say("of 1"), marks: shareMarks,
			formula: needsTreatment + `INDEX(share_list,treatment_row))`, value: o.fromRecord(o.shareLeft), how: o.Say("from the lists below"), room: o.Say(notPublished)},
		{name: "bought_weight", label: o.Say("Weight as bought"), role: resultAmount, unit: u.mass.Symbol,
			formula: `IF(OR(treatment_row="",COUNT(` + u.prepared + `)=0),"",IF(ISNUMBER(share_left),` + u.prepared + `/share_left,IF(OR(INDEX(bought_list,treatment_row)=` + quoted(o.Say(inPods)) + `,INDEX(bought_list,treatment_row)=` + quoted(o.Say(inHusk)) + `),` + quoted(o.Say(notPublished)) + `,` + u.prepared + `)))`,
			value:   o.boughtWeight(), how: o.Say("Estimate: prepared ÷ what is left"), room: o.Say(notPublished)},
		{name: "packs_from", label: o.Say("Packs it fills"), role: resultCount, unit: o.Say("packs"), marks: yieldMarks,
			formula: needsTreatment + `IF(packs_wanted>0,packs_wanted,IF(bought_weight="","",IF(` + noneCounted + `,` + quoted(o.Say(fillOne)) + `,` + lowPacks + `)))`, value: packsLow,
			toFormula: `IF(OR(NOT(ISNUMBER(packs_from)),packs_wanted>0),"",IF(` + highPacks + `=packs_from,"",` + highPacks + `))`, toValue: packsHigh,
			how: o.Say("what you want; else an estimate: as bought ÷ weight for a pack"), room: o.Say(fillOne)},
		{name: "buy_from", label: o.Say("Buy"), role: resultAmount, unit: u.mass.Symbol, markFormula: buyMark, markValue: buyStart,
			formula: needsTreatment + `IF(AND(packs_wanted>0,COUNT(per_pint_from,pints_each)=2),packs_wanted*pints_each*per_pint_from,IF(COUNT(` + u.prepared + `)=0,"",IF(ISNUMBER(share_left),` + u.prepared + `/share_left,` + overPrepared + `))))`, value: buyLow,
			toFormula: `IF(AND(ISNUMBER(buy_from),packs_wanted>0,COUNT(per_pint_from,pints_each)=2),IF(per_pint_to=per_pint_from,"",packs_wanted*pints_each*per_pint_to),"")`, toValue: buyHigh,
			how: o.Say("Estimate: packs × weight for a pack; else prepared ÷ what is left"), room: o.Say(moreThan, "500.55 kg")},
		{name: "freezer_day_from", label: o.Say("Freezer takes in a day"), role: resultAmount, unit: u.mass.Symbol, source: freezer,
			formula: `IF(COUNT(` + u.capacity + `)=0,IF(treatment_row="","",` + quoted(o.Say(noFreezer)) + `),` + u.capacity + `*freezer_low)`, value: dayLow,
			toFormula: `IF(ISNUMBER(freezer_day_from),` + u.capacity + `*freezer_high,"")`, toValue: dayHigh,
			how: o.Say("%s × %s, in 24 hours", o.symbol(u.freezer.Symbol), o.symbol(u.perDayUnit())), room: o.Say(noFreezer)},
		{name: "days_from", label: o.Say("Days to freeze it"), role: resultCount, unit: o.Say("days"), source: freezer,
			formula: needsTreatment + `IF(ISNUMBER(freezer_day_from),IF(COUNT(` + u.prepared + `)=0,"",` + quickDays + `),freezer_day_from))`, value: daysLow,
			toFormula: `IF(ISNUMBER(days_from),IF(` + slowDays + `=days_from,"",` + slowDays + `),"")`, toValue: daysHigh,
			how: o.Say("prepared ÷ a day's load, whole days"), room: o.Say(noFreezer)},
	}
}

// printed is a formula that writes a weight as measure.Plain prints it.
func printed(x string) string {
	return `ROUND(` + x + `,IF(` + x + `>=100,0,IF(` + x + `>=10,1,IF(` + x + `>=0.1,2,3))))`
}

// headspaceFormula takes the table's value, or its cell for size and mouth.
func (o *own) headspaceFormula() string {
	byMouth := `headspace_rule`
	if len(o.headspaceRows()) > 0 {
		one := `headspace_rule&` + quoted(" "+o.Say(sizeNames[batch.Pint])+" "+o.Say(mouthNames[reference.WideMouth]))
		byMouth = `IF(ISNUMBER(MATCH(` + one + `,headspace_keys,0)),IF(OR(container="",mouth=""),"",INDEX(headspace_cells,MATCH(` + chosenKey + `,headspace_keys,0))),headspace_rule)`
	}
	return `IF(headspace_rule="","",IF(` + o.onTray() + `,` + quoted(o.Say(none)) + `,` + byMouth + `))`
}

func (o *own) pintsEach() any {
	if o.first != nil {
		return o.first.Batch.Pack.Size.Pints()
	}
	return plainPack.Size.Pints()
}

// boughtWeight is the step between the prepared weight and the packs. It is no
// figure of the class; it is the prepared figure over the share of the table.
func (o *own) boughtWeight() any {
	r, _, ok := o.record()
	if !ok || !o.ready() {
		return nil
	}
	prepared := o.first.Prepared.Value
	if share, number := o.shareLeft(r).(float64); number {
		return prepared / share
	}
	if r.known && r.yield.AsBought.InHull() {
		return o.Say(notPublished)
	}
	return prepared
}

// mind is a line that a formula shows only where it applies; finding is the
// program's own for the same case.
type mind struct{ name, formula, says, finding string }

// minds are what a participant should mind.
func (o *own) minds() {
	u := o.units
	texts := o.ruleTexts()
	loadWords := o.Say("Each load is more than about %s. Watch the first load: if the water is not boiling again within %s, use less.", texts["batch-lb"], texts["return-to-boil-min"])
	waterWords := o.Say("Many loads in one kettle: keep the water level up, change the water when it is cloudy, and let it boil before each load.")
	freezerWords := o.Say("This is more than your freezer should take in a day: spread it over the days shown, or use more freezers.")
	altitudeWords := o.Say("No altitude is typed in: the minutes are for low altitude.")
	when := func(test, says string) string { return `IF(` + test + `,` + quoted(says) + `,"")` }
	list := []mind{
		{"mind_load", `IF(ISNUMBER(load_weight),` + when(`load_weight>load_limit*`+strconv.FormatFloat(batch.AboutAPound, 'f', -1, 64), loadWords) + `,"")`, loadWords, "load-over-a-pound"},
		{"mind_water", `IF(ISNUMBER(loads),` + when(`loads>reuse_most`, waterWords) + `,"")`, waterWords, "change-water"},
		{"mind_freezer", `IF(ISNUMBER(days_from),` + when(`MAX(days_from,days_to)>1`, freezerWords) + `,"")`, freezerWords, "freezer-more-than-a-day"},
		{"mind_altitude", when(`AND(ISNUMBER(published_from),COUNT(`+u.height+`)=0)`, altitudeWords), altitudeWords, "no-altitude"},
	}
	o.heading(o.Say("What to mind: a line appears where something concerns you"))
	for _, m := range list {
		shown := ""
		if o.found(m.finding) {
			shown = m.says
		}
		o.add(row{cells: []cell{{span: len(o.cols), role: minding, formula: m.formula, value: shown, name: m.name, room: m.says}}, keep: true})
	}
	o.rows[len(o.rows)-1].keep = false
}

// found says whether the first batch has a finding.
func (o *own) found(id string) bool {
	if o.first == nil {
		return false
	}
	for _, f := range o.first.Findings {
		if f.ID == id {
			return true
		}
	}
	return false
}
