package exports

import (
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
)

// result is one line that a formula works out, with the program's own value.
// A range has a second cell; it is empty where both ends are the same.
type result struct {
	name, label string
	role        role
	formula     string
	value       any
	toFormula   string // name of the cell: toName(name)
	toValue     any
	unit        string
	how         string // in words
	source      string // id, where it is the same for every treatment; else
	marks       *marks // where the source of the chosen treatment stands; else
	markFormula string // what finds the source, with
	markValue   string // the program's own
	room        string // longest words in the place of a number
	wide        bool   // words only, over the width of number and unit
}

// toName is the name of the upper end of a range.
func toName(name string) string {
	if base, ok := strings.CutSuffix(name, "_from"); ok {
		return base + "_to"
	}
	return name + "_to"
}

// results are the lines under the open cells, in the order of the work.
func (o *own) results() {
	for _, part := range []struct {
		caption string
		lines   []result
	}{
		{o.Say("How long"), o.times()},
		{o.Say("Water, loads and ice"), o.waters()},
		{o.Say("Packs, shopping and freezer"), o.packs()},
	} {
		o.heading(part.caption)
		o.add(row{cells: []cell{
			{role: head, value: ""},
			{col: 1, role: headRight, value: o.Say("from")}, {col: 2, role: headRight, value: o.Say("to")},
			{col: 3, role: headUnit, value: o.Say("unit")}, {col: 4, role: head, value: o.Say("How it is worked out")},
			{col: 5, role: headRight, value: o.Say("Source")},
		}, keep: true})
		for i, r := range part.lines {
			o.result(r)
			o.rows[len(o.rows)-1].keep = i < len(part.lines)-1
		}
	}
}

// result adds one line.
func (o *own) result(r result) {
	line := row{cells: []cell{{role: resultLabel, value: r.label}}, space: 3}
	if r.wide {
		line.cells = append(line.cells, cell{col: 1, span: 4, role: resultText, formula: r.formula, value: orBlank(r.value), name: r.name, room: r.room})
	} else {
		line.cells = append(line.cells, cell{col: 1, role: r.role, formula: r.formula, value: orBlank(r.value), name: r.name, room: r.room})
		if r.toFormula != "" {
			line.cells = append(line.cells, cell{col: 2, role: r.role, formula: r.toFormula, value: orBlank(r.toValue), name: toName(r.name)})
		} else {
			line.cells = append(line.cells, cell{col: 2, role: resultText})
		}
		unit := cell{col: 3, role: resultUnit, value: ""}
		if r.unit != "" {
			unit.formula = `IF(ISNUMBER(` + r.name + `),` + quoted(r.unit) + `,"")`
			if _, number := r.value.(float64); number {
				unit.value = r.unit
			}
		}
		line.cells = append(line.cells, unit, cell{col: 4, role: resultHow, value: r.how})
	}
	line.cells = append(line.cells, o.mark(r))
	o.add(line)
}

// orBlank is what a formula gives where it has nothing to show.
func orBlank(v any) any {
	if v == nil {
		return ""
	}
	return v
}

// of is a figure of the class's first batch: its number or its words; nothing
// where the sheet starts empty.
func (o *own) of(pick func(batch.Worked) measure.Figure) (low, high any) {
	if o.first == nil {
		return nil, nil
	}
	f := pick(o.first.Worked)
	if f.Words == o.Say(noWeight) {
		return nil, nil
	}
	if f.InWords() {
		return f.Words, nil
	}
	if f.High != f.Value {
		return f.Value, f.High
	}
	return f.Value, nil
}

// ready is false while the treatment or the weight is missing.
func (o *own) ready() bool { return o.first != nil && o.first.Batch.Prepared.Given() }

// record is the row of the treatment that the sheet starts with.
func (o *own) record() (ownRecord, int, bool) {
	for i, r := range o.records {
		if o.first != nil && r.Treatment.ID == o.first.Treatment.ID {
			return r, i + 1, true
		}
	}
	return ownRecord{}, 0, false
}

// fromRecord is a value of that row, nothing where the sheet starts empty.
func (o *own) fromRecord(value func(ownRecord) any) any {
	if r, _, ok := o.record(); ok {
		return value(r)
	}
	return nil
}

// scaled is a number in another unit; words and nothing stay out.
func scaled(v any, factor float64) any {
	if n, ok := v.(float64); ok {
		return n * factor
	}
	return nil
}

const needsTreatment = `IF(treatment_row="","",`

// times are minutes, clock and chilling.
func (o *own) times() []result {
	_, place, ok := o.record()
	var treatmentRow any
	if ok {
		treatmentRow = float64(place)
	}
	publishedLow, publishedHigh := o.fromRecord(o.minutesLow), o.fromRecord(minutesHigh)
	hereLow, hereHigh := o.of(func(w batch.Worked) measure.Figure { return w.Minutes })
	chillLow, chillHigh := o.of(func(w batch.Worked) measure.Figure { return w.Chill })
	var step any
	if a, number := hereLow.(float64); number {
		step = a - publishedLow.(float64)
	} else if hereLow != nil {
		hereLow = o.Say(noMinutes)
	}
	if _, number := chillLow.(float64); !number && chillLow != nil {
		chillLow = o.Say(inWords)
	}
	altitude, extra := o.Table.Rule("altitude-ft"), o.Table.Rule("altitude-extra-min")
	return []result{
		{name: "treatment_row", label: o.Say("Row in the lists"), role: resultCount, source: "",
			formula: `IFERROR(MATCH(treatment,treatment_list,0),"")`, value: treatmentRow,
			how: o.Say("its place in the lists below")},
		{name: "what_to_do", label: o.Say("What to do"), wide: true, marks: treatmentMarks,
			formula: needsTreatment + `INDEX(do_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.doText(r) }), room: o.longestOf(o.doText)},
		{name: "published_from", label: o.Say("In the table"), role: resultTime, unit: "min", marks: treatmentMarks,
			formula: needsTreatment + `INDEX(minutes_list,treatment_row))`, value: publishedLow,
			toFormula: `IF(ISNUMBER(published_from),IF(INDEX(minutes_high_list,treatment_row)=published_from,"",INDEX(minutes_high_list,treatment_row)),"")`, toValue: publishedHigh,
			how: o.Say("for low altitude"), room: o.Say(noMinutes)},
		{name: "altitude_step", label: o.Say("Altitude step"), role: resultTime, unit: "min", source: extra.Source,
			formula: `IF(ISNUMBER(published_from),IF(COUNT(` + o.units.height + `)=0,0,IF(` + o.units.height + `>=altitude_limit,altitude_extra,0)),"")`, value: step,
			how: o.Say("from %s up: %s longer", grouped(o.Voice, measure.New(altitude.Value, measure.Foot).To(o.units.altitude)), measure.Minutes(extra.Value))},
		{name: "minutes_from", label: o.Say("Blanch here"), role: resultTime, unit: "min", marks: treatmentMarks,
			formula: `IF(ISNUMBER(published_from),published_from+altitude_step,published_from)`, value: hereLow,
			toFormula: `IF(ISNUMBER(published_to),published_to+altitude_step,"")`, toValue: hereHigh,
			how: o.Say("in the table + altitude step"), room: o.Say(noMinutes)},
		{name: "seconds_from", label: o.Say("The same in seconds"), role: resultCount, unit: "s", source: "",
			formula: `IF(ISNUMBER(minutes_from),ROUND(minutes_from*60,0),"")`, value: scaled(hereLow, 60),
			toFormula: `IF(ISNUMBER(minutes_to),ROUND(minutes_to*60,0),"")`, toValue: scaled(hereHigh, 60),
			how: o.Say("minutes × 60")},
		{name: "clock_start", label: o.Say("The clock starts"), wide: true, marks: clockMarks,
			formula: needsTreatment + `INDEX(clock_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return r.Clock.Text }),
			room:    o.longestOf(func(r ownRecord) string { return r.Clock.Text })},
		{name: "chill_times", label: o.Say("Chill, times the blanch"), role: resultTime, unit: o.Say("times"), marks: chillMarks,
			formula: needsTreatment + `INDEX(chill_list,treatment_row))`,
			value:   o.fromRecord(o.chillTimes), how: o.Say("from the lists below"), room: o.Say(inWords)},
		{name: "chill_from", label: o.Say("Chill in ice water"), role: resultTime, unit: "min", marks: chillMarks,
			formula: `IF(ISNUMBER(chill_times),minutes_from*chill_times,chill_times)`, value: chillLow,
			toFormula: `IF(ISNUMBER(chill_times),IF(ISNUMBER(minutes_to),minutes_to*chill_times,""),"")`, toValue: chillHigh,
			how: o.Say("minutes here × times"), room: o.Say(inWords)},
		{name: "how_to_chill", label: o.Say("How to chill"), wide: true, marks: chillMarks,
			formula: needsTreatment + `INDEX(chill_how_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.chillText(r) }), room: o.longestOf(o.chillText)},
	}
}

// waters are water, loads and ice.
func (o *own) waters() []result {
	u := o.units
	ice := o.Table.Rule("ice-lb-per-lb")
	pick := func(f func(batch.Worked) measure.Figure) any { low, _ := o.of(f); return low }
	water := pick(func(w batch.Worked) measure.Figure { return w.Water })
	longLoads, worded := o.Say(noKettle), o.Say(inWords)
	// words stand on a line of their own
	if _, number := water.(float64); !number && water != nil {
		water = worded
	}
	load := func(f func(batch.Worked) measure.Figure) any {
		v := pick(f)
		if _, number := v.(float64); !number && water == worded {
			return worded
		}
		return v
	}
	perUnit := u.mass.Symbol + " × " + u.rateUnit()
	lines := []result{
		{name: "water_how", label: o.Say("Water, in words"), wide: true, marks: waterMarks,
			formula: needsTreatment + `INDEX(water_how_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.waterText(r) }), room: o.longestOf(o.waterText)},
		{name: "water_rate", label: o.Say("Water rule"), role: resultAmount, unit: u.rateUnit(), marks: waterMarks,
			formula: needsTreatment + `INDEX(water_list,treatment_row))`,
			value:   o.fromRecord(func(r ownRecord) any { return o.waterRate(r) }), how: o.Say("from the lists below"), room: worded},
		{name: u.waterName, label: o.Say("Boiling water in all"), role: resultAmount, unit: u.water.Symbol, marks: waterMarks,
			formula: needsTreatment + `IF(ISNUMBER(water_rate),IF(COUNT(` + u.prepared + `)=0,"",` + u.prepared + `*water_rate),water_rate))`,
			value:   water, how: perUnit, room: worded},
	}
	if u.metric {
		lines = append(lines, result{name: "water_qt", label: o.Say("The same in quarts"), role: resultTenth, unit: "qt",
			formula: `IF(ISNUMBER(water_l),water_l/litres_per_quart,"")`, value: scaled(water, 1/measure.Quart.Factor), how: "L ÷ L/qt"})
	} else {
		lines = append(lines,
			result{name: "water_qt", label: o.Say("The same in quarts"), role: resultTenth, unit: "qt",
				formula: `IF(ISNUMBER(water_gal),water_gal*quarts_per_gallon,"")`, value: scaled(water, measure.Gallon.Factor/measure.Quart.Factor), how: "gal × qt/gal"},
			result{name: "water_l", label: o.Say("The same in litres"), role: resultTenth, unit: "L",
				formula: `IF(ISNUMBER(water_gal),water_gal*litres_per_gallon,"")`, value: scaled(water, measure.Gallon.Factor), how: "gal × L/gal"})
	}
	return append(lines,
		result{name: "load_most", label: o.Say("A load takes at most"), role: resultAmount, unit: u.mass.Symbol, marks: waterMarks,
			formula: needsTreatment + `IF(ISNUMBER(water_rate),IF(COUNT(` + u.kettle + `)=0,` + quoted(longLoads) + `,` + u.kettle + `/water_rate),water_rate))`,
			value:   load(func(w batch.Worked) measure.Figure { return w.KettleTakes }), how: o.Say("water in your kettle ÷ rule"), room: longLoads},
		result{name: "loads", label: o.Say("Loads"), role: resultCount, unit: o.Say("loads"), marks: waterMarks,
			formula: `IF(ISNUMBER(load_most),IF(COUNT(` + u.prepared + `)=0,"",ROUNDUP(` + u.prepared + `/load_most-0.000000001,0)),load_most)`,
			value:   load(func(w batch.Worked) measure.Figure { return w.Loads }), how: o.Say("prepared ÷ one load, rounded up"), room: longLoads},
		result{name: "load_weight", label: o.Say("Each load"), role: resultAmount, unit: u.mass.Symbol, marks: waterMarks,
			formula: `IF(ISNUMBER(loads),` + u.prepared + `/loads,loads)`,
			value:   load(func(w batch.Worked) measure.Figure { return w.LoadWeight }), how: o.Say("prepared ÷ loads"), room: longLoads},
		result{name: "load_water", label: o.Say("Water for a load"), role: resultAmount, unit: u.water.Symbol, marks: waterMarks,
			formula: `IF(ISNUMBER(load_weight),load_weight*water_rate,IF(ISNUMBER(water_rate),load_weight,water_rate))`,
			value:   load(func(w batch.Worked) measure.Figure { return w.LoadWater }), how: o.Say("each load × water rule"), room: longLoads},
		result{name: "ice_weight", label: o.Say("Ice, by rule of thumb"), role: resultAmount, unit: u.mass.Symbol, source: ice.Source,
			formula: needsTreatment + `IF(ISNUMBER(chill_times),IF(COUNT(` + u.prepared + `)=0,"",` + u.prepared + `*ice_rate),` + quoted(o.Say(noIce)) + `))`,
			value:   pick(func(w batch.Worked) measure.Figure { return w.Ice }), how: o.Say("prepared × ice rule; warm tap water needs more"), room: o.Say(noIce)},
	)
}
