package exports

import (
	"strconv"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
)

// Words that stand where no number does; the program uses the same.
const (
	noMinutes    = "no minutes"
	inWords      = "in words"
	noIce        = "none by rule"
	none         = "none"
	notPublished = "not given"
	fillOne      = "fill one and count"
	noKettle     = "kettle not known"
	noWeight     = "enter a weight" // the sheet shows nothing instead
	noFreezer    = "freezer not entered"
	asItIs       = "as it is"
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
	moreThan := `"more than "&` + printed(u.prepared) + `&"` + noBreak + u.mass.Symbol + `"`
	return []result{
		{name: "headspace_rule", label: "Headspace, table", role: inch, unit: u.lengthUnit(), marks: headspaceMarks,
			formula: needsTreatment + `INDEX(headspace_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.headspaceRule(r) }), how: "from the lists below", room: none},
		{name: "headspace", label: "Headspace", role: inch, unit: u.lengthUnit(),
			markFormula: headspaceMark, markValue: headspaceStart,
			formula: o.headspaceFormula(), value: headspace, how: "of the table; none after a tray", room: none},
		{name: "pints_each", label: "Pints in a pack", role: resultCount, unit: "pt",
			formula: `IF(container="","",IF(container="quart",pints_per_quart,1))`, value: o.pintsEach(), how: "1 for a pint, 2 for a quart"},
		{name: "per_pint_from", label: "As bought, for a pint", role: resultAmount, unit: u.mass.Symbol, marks: yieldMarks,
			formula: needsTreatment + `INDEX(pint_list,treatment_row))`, value: o.fromRecord(func(r ownRecord) any { return o.perPint(r, r.yield.LbPerPint) }),
			toFormula: `IF(ISNUMBER(per_pint_from),INDEX(pint_high_list,treatment_row),"")`, toValue: o.fromRecord(o.perPintHigh),
			how: "from the lists below", room: notPublished},
		{name: "share_left", label: "Left after trimming", role: resultAmount, unit: "of 1", marks: shareMarks,
			formula: needsTreatment + `INDEX(share_list,treatment_row))`, value: o.fromRecord(shareLeft), how: "from the lists below", room: notPublished},
		{name: "bought_weight", label: "Weight as bought", role: resultAmount, unit: u.mass.Symbol,
			formula: `IF(OR(treatment_row="",COUNT(` + u.prepared + `)=0),"",IF(ISNUMBER(share_left),` + u.prepared + `/share_left,IF(OR(INDEX(bought_list,treatment_row)="in pods",INDEX(bought_list,treatment_row)="in husk"),"` + notPublished + `",` + u.prepared + `)))`,
			value:   o.boughtWeight(), how: "Estimate: prepared ÷ what is left", room: notPublished},
		{name: "packs_from", label: "Packs it fills", role: resultCount, unit: "packs", marks: yieldMarks,
			formula: needsTreatment + `IF(packs_wanted>0,packs_wanted,IF(bought_weight="","",IF(` + noneCounted + `,"` + fillOne + `",` + lowPacks + `)))`, value: packsLow,
			toFormula: `IF(OR(NOT(ISNUMBER(packs_from)),packs_wanted>0),"",IF(` + highPacks + `=packs_from,"",` + highPacks + `))`, toValue: packsHigh,
			how: "what you want; else an estimate: as bought ÷ weight for a pack", room: fillOne},
		{name: "buy_from", label: "Buy", role: resultAmount, unit: u.mass.Symbol, markFormula: buyMark, markValue: buyStart,
			formula: needsTreatment + `IF(AND(packs_wanted>0,COUNT(per_pint_from,pints_each)=2),packs_wanted*pints_each*per_pint_from,IF(COUNT(` + u.prepared + `)=0,"",IF(ISNUMBER(share_left),` + u.prepared + `/share_left,` + moreThan + `))))`, value: buyLow,
			toFormula: `IF(AND(ISNUMBER(buy_from),packs_wanted>0,COUNT(per_pint_from,pints_each)=2),IF(per_pint_to=per_pint_from,"",packs_wanted*pints_each*per_pint_to),"")`, toValue: buyHigh,
			how: "Estimate: packs × weight for a pack; else prepared ÷ what is left", room: "more than 500.55 kg"},
		{name: "freezer_day_from", label: "Freezer takes in a day", role: resultAmount, unit: u.mass.Symbol, source: freezer,
			formula: `IF(COUNT(` + u.capacity + `)=0,IF(treatment_row="","","` + noFreezer + `"),` + u.capacity + `*freezer_low)`, value: dayLow,
			toFormula: `IF(ISNUMBER(freezer_day_from),` + u.capacity + `*freezer_high,"")`, toValue: dayHigh,
			how: u.freezer.Symbol + " × " + u.perDayUnit() + ", in 24 hours", room: noFreezer},
		{name: "days_from", label: "Days to freeze it", role: resultCount, unit: "days", source: freezer,
			formula: needsTreatment + `IF(ISNUMBER(freezer_day_from),IF(COUNT(` + u.prepared + `)=0,"",` + quickDays + `),freezer_day_from))`, value: daysLow,
			toFormula: `IF(ISNUMBER(days_from),IF(` + slowDays + `=days_from,"",` + slowDays + `),"")`, toValue: daysHigh,
			how: "prepared ÷ a day's load, whole days", room: noFreezer},
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
		byMouth = `IF(ISNUMBER(MATCH(headspace_rule&" pint wide",headspace_keys,0)),IF(OR(container="",mouth=""),"",INDEX(headspace_cells,MATCH(headspace_rule&" "&container&" "&mouth,headspace_keys,0))),headspace_rule)`
	}
	return `IF(headspace_rule="","",IF(AND(tray="yes",INDEX(tray_list,treatment_row)="yes"),"` + none + `",` + byMouth + `))`
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
	if share, number := shareLeft(r).(float64); number {
		return prepared / share
	}
	if b := r.yield.AsBought; r.known && (b == "in pods" || b == "in husk") {
		return notPublished
	}
	return prepared
}

// mind is a line that a formula shows only where it applies; finding is the
// program's own for the same case.
type mind struct{ name, formula, says, finding string }

// minds are what a participant should mind.
func (o *own) minds() {
	u := o.units
	texts := batch.RuleTexts(o.Table, o.Class.Units)
	loadWords := "Each load is more than about " + texts["batch-lb"] + ". Watch the first load: if the water is not boiling again within " + texts["return-to-boil-min"] + ", use less."
	waterWords := "Many loads in one kettle: keep the water level up, change the water when it is cloudy, and let it boil before each load."
	freezerWords := "This is more than your freezer should take in a day: spread it over the days shown, or use more freezers."
	altitudeWords := "No altitude is typed in: the minutes are for low altitude."
	when := func(test, words string) string { return `IF(` + test + `,"` + words + `","")` }
	list := []mind{
		{"mind_load", `IF(ISNUMBER(load_weight),` + when(`load_weight>load_limit*`+strconv.FormatFloat(batch.AboutAPound, 'f', -1, 64), loadWords) + `,"")`, loadWords, "load-over-a-pound"},
		{"mind_water", `IF(ISNUMBER(loads),` + when(`loads>reuse_most`, waterWords) + `,"")`, waterWords, "change-water"},
		{"mind_freezer", `IF(ISNUMBER(days_from),` + when(`MAX(days_from,days_to)>1`, freezerWords) + `,"")`, freezerWords, "freezer-more-than-a-day"},
		{"mind_altitude", when(`AND(ISNUMBER(published_from),COUNT(`+u.height+`)=0)`, altitudeWords), altitudeWords, "no-altitude"},
	}
	o.heading("What to mind: a line appears where something concerns you")
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
