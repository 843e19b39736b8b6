package exports

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// doText is what is done: the method, or the words of a treatment without
// minutes.
func (m *maker) doText(r ownRecord) string {
	text := r.Minutes.Words
	if r.timed() {
		text = countMinutes(m.Voice, r.Treatment.Method)
		if w := r.Treatment.Words; w != "" {
			text += " " + w
		}
	}
	return sentences(append([]string{text}, m.editMarks(r.Treatment)...)...)
}

// countMinutes says to do what a method does, by the clock.
func countMinutes(v *words.Voice, m reference.Method) string {
	switch m {
	case reference.WaterBlanch:
		return v.Say("Blanch in water and count the minutes.")
	case reference.SteamBlanch:
		return v.Say("Blanch in steam and count the minutes.")
	case reference.CookThrough:
		return v.Say("Cook through and count the minutes.")
	}
	return v.Say("Count the minutes.")
}

// editMarks say of each changed field what was shipped.
func (m *maker) editMarks(t reference.Treatment) []string {
	var marks []string
	for _, field := range editedFields(t) {
		marks = append(marks, m.Say("Changed here: %s, shipped value %s", m.fieldName(field), m.orNothing(m.shipped(field, t.Changed[field].Old))))
	}
	return marks
}

// minutesLow are the minutes of the table, or that there are none; minutesHigh
// is the upper end of a range.
func (o *own) minutesLow(r ownRecord) any {
	if !r.timed() {
		return o.Say(noMinutes)
	}
	return r.Treatment.Minutes
}

func minutesHigh(r ownRecord) any {
	if !r.timed() || r.Treatment.MinutesHigh == r.Treatment.Minutes {
		return nil
	}
	return r.Treatment.MinutesHigh
}

// mayTray says whether the pieces are frozen loose on a tray first where that
// is chosen.
func (o *own) mayTray(r ownRecord) string {
	return o.yesNo((batch.Packing{Tray: true}).OnTray(r.Treatment))
}

// chillTimes is the factor of the chilling time, or that words stand instead.
func (o *own) chillTimes(r ownRecord) any {
	if r.chilled() {
		return r.Treatment.ChillFactor
	}
	return o.Say(inWords)
}

// chillText says how to chill.
func (m *maker) chillText(r ownRecord) string {
	if !r.chilled() {
		return r.Chill.Words
	}
	text := m.Say("In ice water, as long as the blanch")
	if times := r.Treatment.ChillFactor; times != 1 {
		text = m.Say("In ice water, %s times as long as the blanch", measure.Plain(times))
	}
	return strings.TrimSuffix(sentences(text, r.Chill.Note), ".") + "."
}

// waterRate is the water rule of a treatment, or that words stand instead.
func (o *own) waterRate(r ownRecord) any {
	if r.Treatment.Method == reference.WaterBlanch {
		return o.units.rate(r.Treatment.WaterGalPerLb)
	}
	return o.Say(inWords)
}

// waterText says in words how much water there is.
func (o *own) waterText(r ownRecord) string {
	if r.Treatment.Method == reference.WaterBlanch {
		return o.waterRule(r.Treatment)
	}
	return o.Say("%s; loads: %s", r.Water.Words, r.KettleTakes.Words)
}

// headspaceRule is a number, "none", or the row of the headspace table.
func (o *own) headspaceRule(r ownRecord) any {
	t := r.Treatment
	switch {
	case t.Pack == reference.TrayPack:
		return o.Say(none)
	case t.HeadspaceRow != "":
		return o.Say(headspaceRowNames[t.HeadspaceRow])
	case t.HeadspaceIn == 0:
		return o.Say(none)
	}
	return o.units.length(t.HeadspaceIn)
}

// perPint is the weight as bought for a pint, if one is published.
func (o *own) perPint(r ownRecord, lb float64) any {
	if !r.known || r.yield.LbPerPint == 0 {
		return o.Say(notPublished)
	}
	return o.units.pounds(lb)
}

func (o *own) perPintHigh(r ownRecord) any {
	if v, ok := o.perPint(r, r.yield.LbPerPintHigh).(float64); ok {
		return v
	}
	return nil
}

// shareLeft is what is left after trimming, if it is published.
func (o *own) shareLeft(r ownRecord) any {
	if !r.known || r.yield.UsableShare == 0 {
		return o.Say(notPublished)
	}
	return r.yield.UsableShare
}

// list is one table of the treatments: its columns after the name.
type list struct {
	caption string
	heads   [5]listHead // of columns B to F
	cells   func(r ownRecord) []cell
}

// listHead is the head of a column; one without a text is covered by the head
// before it.
type listHead struct {
	text  string
	right bool // over a column of numbers or sources
}

// lists are what the formulas look up: the treatments, attribute by attribute,
// in the same order in each table.
func (o *own) lists() {
	u := o.units
	o.heading(o.Say("What this sheet knows"))
	o.para(small, o.Say("The formulas look up the chosen treatment here. These are the values of the crop table with their sources; nothing is hidden."))
	_, inch := u.lengthRoles()
	number := func(text string) listHead { return listHead{text, true} }
	text := func(text string) listHead { return listHead{text, false} }
	from, to, unit, source := number(o.Say("from")), number(o.Say("to")), text(o.Say("unit")), number(o.Say("Source"))
	var on listHead
	tables := []list{
		{o.Say("Minutes and what to do"), [5]listHead{from, to, unit, text(o.Say("what to do")), source}, func(r ownRecord) []cell {
			cells := []cell{{role: constant, name: "minutes_list", value: o.Say(noMinutes)}, {role: constant, name: "minutes_high_list", value: ""}, {role: constantUnit}}
			if r.timed() {
				cells[0].value, cells[1].value, cells[2].value = r.Treatment.Minutes, r.Treatment.MinutesHigh, "min"
			}
			return append(cells, cell{role: constantUnit, name: "do_list", value: o.doText(r)}, treatmentMarks.cell(o, r))
		}},
		{o.Say("When the clock starts"), [5]listHead{text(o.Say(inWords)), on, on, on, source}, func(r ownRecord) []cell {
			return []cell{{span: 4, role: constantUnit, name: "clock_list", value: r.Clock.Text}, clockMarks.cell(o, r)}
		}},
		{o.Say("Water"), [5]listHead{number(o.Say("rule")), unit, text(o.Say(inWords)), on, source}, func(r ownRecord) []cell {
			unit := ""
			if r.Treatment.Method == reference.WaterBlanch {
				unit = u.rateUnit()
			}
			return []cell{{role: constantTwo, name: "water_list", value: o.waterRate(r)}, {role: constantUnit, value: unit},
				{span: 2, role: constantUnit, name: "water_how_list", value: o.waterText(r)}, waterMarks.cell(o, r)}
		}},
		{o.Say("Chilling"), [5]listHead{number(o.Say("times")), text(o.Say("how")), on, on, source}, func(r ownRecord) []cell {
			return []cell{{role: constant, name: "chill_list", value: o.chillTimes(r)},
				{span: 3, role: constantUnit, name: "chill_how_list", value: o.chillText(r)}, chillMarks.cell(o, r)}
		}},
		{o.Say("Headspace and pack"), [5]listHead{number(o.Say("headspace")), unit, text(o.Say("tray")), text(o.Say("how it packs")), source}, func(r ownRecord) []cell {
			unit := ""
			if _, number := o.headspaceRule(r).(float64); number {
				unit = o.symbol(u.lengthUnit())
			}
			return []cell{{role: inch, name: "headspace_list", value: o.headspaceRule(r)}, {role: constantUnit, value: unit},
				{role: constantUnit, name: "tray_list", value: o.mayTray(r)},
				{role: constantUnit, value: packWords(o.Voice, r.Treatment.Pack)}, headspaceMarks.cell(o, r)}
		}},
		{o.Say("Weight as bought, %s for a pint", u.mass.Symbol), [5]listHead{from, to, unit, on, source}, func(r ownRecord) []cell {
			unit := ""
			if r.known && r.yield.LbPerPint > 0 {
				unit = u.mass.Symbol
			}
			return []cell{{role: constantTwo, name: "pint_list", value: o.perPint(r, r.yield.LbPerPint)}, {role: constantTwo, name: "pint_high_list", value: o.perPintHigh(r)},
				{span: 2, role: constantUnit, value: unit}, yieldMarks.cell(o, r)}
		}},
		{o.Say("Left after trimming, of 1"), [5]listHead{number(o.Say("left")), text(o.Say("how it is weighed when bought")), on, on, source}, func(r ownRecord) []cell {
			return []cell{{role: constantTwo, name: "share_list", value: o.shareLeft(r)}, {span: 3, role: constantUnit, name: "bought_list", value: o.bought(r)}, shareMarks.cell(o, r)}
		}},
	}
	for i, t := range tables {
		o.table(t, i == 0)
	}
	o.headspaceTable()
}

// table adds one table; the names of the treatments in the first one are what
// the list of choices shows.
func (o *own) table(t list, named bool) {
	o.add(row{cells: []cell{o.wide(subheading, t.caption)}, space: 6, keep: true})
	heads := row{cells: []cell{{role: head, value: o.Say("Treatment")}}, keep: true}
	for i, h := range t.heads {
		if h.text == "" {
			last := &heads.cells[len(heads.cells)-1]
			last.span = last.cols() + 1
			continue
		}
		r := headUnit
		if h.right {
			r = headRight
		}
		heads.cells = append(heads.cells, cell{col: i + 1, role: r, value: h.text})
	}
	o.add(heads)
	for i, r := range o.records {
		name := cell{role: constantText, value: fmt.Sprintf("%d  %s", i+1, r.Crop.Name)}
		if named {
			name.value, name.name = r.name, "treatment_list"
		}
		line := row{cells: []cell{name}, space: 1}
		col := 1
		for _, c := range t.cells(r) {
			c.col = col
			col += c.cols()
			line.cells = append(line.cells, c)
		}
		o.add(line)
	}
}

// headspaceRows are the rows of the headspace table that the treatments use.
func (o *own) headspaceRows() []string {
	var rows []string
	for _, r := range o.records {
		if h := r.Treatment.HeadspaceRow; h != "" && !slices.Contains(rows, h) {
			rows = append(rows, h)
		}
	}
	return rows
}

// headspaceTable is the part of the published table that the treatments use.
func (o *own) headspaceTable() {
	rows := o.headspaceRows()
	if len(rows) == 0 {
		return
	}
	_, inch := o.units.lengthRoles()
	o.add(row{cells: []cell{o.wide(subheading, o.Say("Headspace by size and mouth"))}, space: 6, keep: true})
	for _, h := range o.Table.Headspaces {
		if !slices.Contains(rows, h.Pack) {
			continue
		}
		o.add(row{cells: []cell{
			{role: constantText, name: "headspace_keys", value: o.headspaceKey(h.Pack, batch.Size(h.Size), h.Mouth)},
			{col: 1, role: inch, name: "headspace_cells", value: o.units.length(h.Inches)},
			{col: 2, role: constantUnit, value: o.symbol(o.units.lengthUnit())},
			{col: 5, role: mark, name: "headspace_cell_sources", value: o.sources.ref(h.Source)},
		}})
	}
}

// rules are the constants of the formulas, each with the rule in words.
func (o *own) rules() {
	u := o.units
	o.add(row{cells: []cell{o.wide(subheading, o.Say("Rules of method and conversions"))}, space: 6, keep: true})
	o.add(row{cells: []cell{
		{role: head, value: o.Say("Rule")}, {col: 1, role: headRight, value: o.Say("value")}, {col: 2, role: headRight, value: o.Say("to")},
		{col: 3, role: headUnit, value: o.Say("unit")}, {col: 4, role: head, value: o.Say(inWords)}, {col: 5, role: headRight, value: o.Say("Source")},
	}, keep: true})
	rule := func(id, caption, name, toName, unit string, low, high float64) {
		r := o.Table.Rule(id)
		shown := constant
		if u.metric && low < 1 { // a converted value
			shown = constantFour
		}
		says := r.Says
		if r.Standing != reference.Read {
			says += " (" + o.Say(string(r.Standing)) + ")"
		}
		cells := []cell{{role: constantText, value: caption}, {col: 1, role: shown, name: name, value: low}, {col: 2, role: shown}}
		if toName != "" {
			cells[2].name, cells[2].value = toName, high
		}
		o.add(row{cells: append(cells, cell{col: 3, role: constantUnit, value: unit}, cell{col: 4, role: constantText, value: says},
			cell{col: 5, role: mark, value: o.sources.ref(r.Source)}), space: 1})
	}
	altitude := o.Table.Rule("altitude-ft")
	rule("altitude-ft", o.Say("Altitude step from"), "altitude_limit", "", o.symbol(u.altitude.Symbol), measure.New(altitude.Value, measure.Foot).In(u.altitude), 0)
	rule("altitude-extra-min", o.Say("Altitude step"), "altitude_extra", "", "min", o.Table.Rule("altitude-extra-min").Value, 0)
	rule("ice-lb-per-lb", o.Say("Ice"), "ice_rate", "", u.mass.Symbol+"/"+u.mass.Symbol, o.Table.Rule("ice-lb-per-lb").Value, 0)
	day := o.Table.Rule("freezer-lb-per-cuft-day")
	rule("freezer-lb-per-cuft-day", o.Say("Freezer in a day"), "freezer_low", "freezer_high", o.symbol(u.perDayUnit()), u.perDay(day.Value), u.perDay(day.High))
	rule("batch-lb", o.Say("One load, about"), "load_limit", "", u.mass.Symbol, u.pounds(o.Table.Rule("batch-lb").Value), 0)
	reuse := o.Table.Rule("kettle-reuse-lots")
	rule("kettle-reuse-lots", o.Say("Loads in the same water"), "", "reuse_most", o.Say("loads"), reuse.Value, reuse.High)
	unit := func(caption, name, unit string, value float64) {
		o.add(row{cells: []cell{{role: constantText, value: caption}, {col: 1, role: constant, name: name, value: value},
			{col: 2, role: constant}, {col: 3, role: constantUnit, value: unit}, {col: 4, role: constantText, value: o.Say("by definition")}}})
	}
	if u.metric {
		unit(o.Say("Litres in a quart"), "litres_per_quart", "L/qt", measure.Quart.Factor)
	} else {
		unit(o.Say("Quarts in a gallon"), "quarts_per_gallon", "qt/gal", measure.Gallon.Factor/measure.Quart.Factor)
		unit(o.Say("Litres in a gallon"), "litres_per_gallon", "L/gal", measure.Gallon.Factor)
	}
	unit(o.Say("Pints in a quart"), "pints_per_quart", "pt/qt", measure.Quart.Factor/measure.Pint.Factor)
}
