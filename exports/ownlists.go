package exports

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// doText is what is done: the method, or the words of a treatment without
// minutes.
func doText(r ownRecord) string {
	text := r.Minutes.Words
	if r.timed() {
		text = methodWords(r.Treatment.Method)
		text = strings.ToUpper(text[:1]) + text[1:] + " and count the minutes."
		if w := r.Treatment.Words; w != "" {
			text += " " + w
		}
	}
	return sentences(append([]string{text}, editMarks(r.Treatment)...)...)
}

// editMarks say of each changed field what was shipped.
func editMarks(t reference.Treatment) []string {
	var marks []string
	for _, field := range editedFields(t) {
		marks = append(marks, "Changed here: "+field+", shipped value "+orNothing(t.Changed[field].Old))
	}
	return marks
}

// minutesLow are the minutes of the table, or that there are none; minutesHigh
// is the upper end of a range.
func minutesLow(r ownRecord) any {
	if !r.timed() {
		return noMinutes
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
func mayTray(r ownRecord) string {
	if (batch.Packing{Tray: true}).OnTray(r.Treatment) {
		return "yes"
	}
	return "no"
}

// chillTimes is the factor of the chilling time, or that words stand instead.
func chillTimes(r ownRecord) any {
	if r.chilled() {
		return r.Treatment.ChillFactor
	}
	return inWords
}

// chillText says how to chill.
func chillText(r ownRecord) string {
	if !r.chilled() {
		return r.Chill.Words
	}
	text := "In ice water"
	if r.Treatment.ChillFactor == 1 {
		text += ", as long as the blanch"
	} else {
		text += ", " + measure.Plain(r.Treatment.ChillFactor) + " times as long as the blanch"
	}
	if r.Chill.Note != "" {
		text += ". " + r.Chill.Note
	}
	return strings.TrimSuffix(text, ".") + "."
}

// waterRate is the water rule of a treatment, or that words stand instead.
func (o *own) waterRate(r ownRecord) any {
	if r.Treatment.Method == reference.WaterBlanch {
		return o.units.rate(r.Treatment.WaterGalPerLb)
	}
	return inWords
}

// waterText says in words how much water there is.
func (o *own) waterText(r ownRecord) string {
	if r.Treatment.Method == reference.WaterBlanch {
		return o.waterRule(r.Treatment)
	}
	return r.Water.Words + "; loads: " + r.KettleTakes.Words
}

// headspaceRule is a number, "none", or the row of the headspace table.
func (o *own) headspaceRule(r ownRecord) any {
	t := r.Treatment
	switch {
	case t.Pack == reference.TrayPack:
		return none
	case t.HeadspaceRow != "":
		return t.HeadspaceRow
	case t.HeadspaceIn == 0:
		return none
	}
	return o.units.length(t.HeadspaceIn)
}

// perPint is the weight as bought for a pint, if one is published.
func (o *own) perPint(r ownRecord, lb float64) any {
	if !r.known || r.yield.LbPerPint == 0 {
		return notPublished
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
func shareLeft(r ownRecord) any {
	if !r.known || r.yield.UsableShare == 0 {
		return notPublished
	}
	return r.yield.UsableShare
}

// list is one table of the treatments: its columns after the name.
type list struct {
	caption string
	heads   [5]string // of columns B to F
	cells   func(r ownRecord) []cell
}

// lists are what the formulas look up: the treatments, attribute by attribute,
// in the same order in each table.
func (o *own) lists() {
	u := o.units
	o.heading("What this sheet knows")
	o.para(small, "The formulas look up the chosen treatment here. These are the values of the crop table with their sources; nothing is hidden.")
	_, inch := u.lengthRoles()
	tables := []list{
		{"Minutes and what to do", [5]string{"from", "to", "unit", "what to do", "Source"}, func(r ownRecord) []cell {
			cells := []cell{{role: constant, name: "minutes_list", value: noMinutes}, {role: constant, name: "minutes_high_list", value: ""}, {role: constantUnit}}
			if r.timed() {
				cells[0].value, cells[1].value, cells[2].value = r.Treatment.Minutes, r.Treatment.MinutesHigh, "min"
			}
			return append(cells, cell{role: constantUnit, name: "do_list", value: doText(r)}, treatmentMarks.cell(o, r))
		}},
		{"When the clock starts", [5]string{"in words", "", "", "", "Source"}, func(r ownRecord) []cell {
			return []cell{{span: 4, role: constantUnit, name: "clock_list", value: r.Clock.Text}, clockMarks.cell(o, r)}
		}},
		{"Water", [5]string{"rule", "unit", "in words", "", "Source"}, func(r ownRecord) []cell {
			unit := ""
			if r.Treatment.Method == reference.WaterBlanch {
				unit = u.rateUnit()
			}
			return []cell{{role: constantTwo, name: "water_list", value: o.waterRate(r)}, {role: constantUnit, value: unit},
				{span: 2, role: constantUnit, name: "water_how_list", value: o.waterText(r)}, waterMarks.cell(o, r)}
		}},
		{"Chilling", [5]string{"times", "how", "", "", "Source"}, func(r ownRecord) []cell {
			return []cell{{role: constant, name: "chill_list", value: chillTimes(r)},
				{span: 3, role: constantUnit, name: "chill_how_list", value: chillText(r)}, chillMarks.cell(o, r)}
		}},
		{"Headspace and pack", [5]string{"headspace", "unit", "tray", "how it packs", "Source"}, func(r ownRecord) []cell {
			unit := ""
			if _, number := o.headspaceRule(r).(float64); number {
				unit = u.lengthUnit()
			}
			return []cell{{role: inch, name: "headspace_list", value: o.headspaceRule(r)}, {role: constantUnit, value: unit},
				{role: constantUnit, name: "tray_list", value: mayTray(r)},
				{role: constantUnit, value: packWords(r.Treatment.Pack)}, headspaceMarks.cell(o, r)}
		}},
		{"Weight as bought, " + u.mass.Symbol + " for a pint", [5]string{"from", "to", "unit", "", "Source"}, func(r ownRecord) []cell {
			unit := ""
			if r.known && r.yield.LbPerPint > 0 {
				unit = u.mass.Symbol
			}
			return []cell{{role: constantTwo, name: "pint_list", value: o.perPint(r, r.yield.LbPerPint)}, {role: constantTwo, name: "pint_high_list", value: o.perPintHigh(r)},
				{span: 2, role: constantUnit, value: unit}, yieldMarks.cell(o, r)}
		}},
		{"Left after trimming, of 1", [5]string{"left", "how it is weighed when bought", "", "", "Source"}, func(r ownRecord) []cell {
			bought := r.yield.AsBought
			if bought == "" {
				bought = asItIs
			}
			return []cell{{role: constantTwo, name: "share_list", value: shareLeft(r)}, {span: 3, role: constantUnit, name: "bought_list", value: bought}, shareMarks.cell(o, r)}
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
	heads := row{cells: []cell{{role: head, value: "Treatment"}}, keep: true}
	for i, h := range t.heads {
		if h == "" && i > 0 { // the head before goes on over it
			last := &heads.cells[len(heads.cells)-1]
			last.span = last.cols() + 1
			continue
		}
		r := headUnit
		switch h {
		case "from", "to", "rule", "times", "headspace", "left", "Source":
			r = headRight
		}
		heads.cells = append(heads.cells, cell{col: i + 1, role: r, value: h})
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
	o.add(row{cells: []cell{o.wide(subheading, "Headspace by size and mouth")}, space: 6, keep: true})
	for _, h := range o.Table.Headspaces {
		if !slices.Contains(rows, h.Pack) {
			continue
		}
		o.add(row{cells: []cell{
			{role: constantText, name: "headspace_keys", value: h.Pack + " " + h.Size + " " + string(h.Mouth)},
			{col: 1, role: inch, name: "headspace_cells", value: o.units.length(h.Inches)},
			{col: 2, role: constantUnit, value: o.units.lengthUnit()},
			{col: 5, role: mark, name: "headspace_cell_sources", value: o.sources.ref(h.Source)},
		}})
	}
}

// rules are the constants of the formulas, each with the rule in words.
func (o *own) rules() {
	u := o.units
	o.add(row{cells: []cell{o.wide(subheading, "Rules of method and conversions")}, space: 6, keep: true})
	o.add(row{cells: []cell{
		{role: head, value: "Rule"}, {col: 1, role: headRight, value: "value"}, {col: 2, role: headRight, value: "to"},
		{col: 3, role: headUnit, value: "unit"}, {col: 4, role: head, value: "in words"}, {col: 5, role: headRight, value: "Source"},
	}, keep: true})
	rule := func(id, caption, name, toName, unit string, low, high float64) {
		r := o.Table.Rule(id)
		shown := constant
		if u.metric && low < 1 { // a converted value
			shown = constantFour
		}
		says := r.Says
		if r.Standing != reference.Read {
			says += " (" + string(r.Standing) + ")"
		}
		cells := []cell{{role: constantText, value: caption}, {col: 1, role: shown, name: name, value: low}, {col: 2, role: shown}}
		if toName != "" {
			cells[2].name, cells[2].value = toName, high
		}
		o.add(row{cells: append(cells, cell{col: 3, role: constantUnit, value: unit}, cell{col: 4, role: constantText, value: says},
			cell{col: 5, role: mark, value: o.sources.ref(r.Source)}), space: 1})
	}
	altitude := o.Table.Rule("altitude-ft")
	rule("altitude-ft", "Altitude step from", "altitude_limit", "", u.altitude.Symbol, measure.New(altitude.Value, measure.Foot).In(u.altitude), 0)
	rule("altitude-extra-min", "Altitude step", "altitude_extra", "", "min", o.Table.Rule("altitude-extra-min").Value, 0)
	rule("ice-lb-per-lb", "Ice", "ice_rate", "", u.mass.Symbol+"/"+u.mass.Symbol, o.Table.Rule("ice-lb-per-lb").Value, 0)
	day := o.Table.Rule("freezer-lb-per-cuft-day")
	rule("freezer-lb-per-cuft-day", "Freezer in a day", "freezer_low", "freezer_high", u.perDayUnit(), u.perDay(day.Value), u.perDay(day.High))
	rule("batch-lb", "One load, about", "load_limit", "", u.mass.Symbol, u.pounds(o.Table.Rule("batch-lb").Value), 0)
	reuse := o.Table.Rule("kettle-reuse-lots")
	rule("kettle-reuse-lots", "Loads in the same water", "", "reuse_most", "loads", reuse.Value, reuse.High)
	unit := func(caption, name, unit string, value float64) {
		o.add(row{cells: []cell{{role: constantText, value: caption}, {col: 1, role: constant, name: name, value: value},
			{col: 2, role: constant}, {col: 3, role: constantUnit, value: unit}, {col: 4, role: constantText, value: "by definition"}}})
	}
	if u.metric {
		unit("Litres in a quart", "litres_per_quart", "L/qt", measure.Quart.Factor)
	} else {
		unit("Quarts in a gallon", "quarts_per_gallon", "qt/gal", measure.Gallon.Factor/measure.Quart.Factor)
		unit("Litres in a gallon", "litres_per_gallon", "L/gal", measure.Gallon.Factor)
	}
	unit("Pints in a quart", "pints_per_quart", "pt/qt", measure.Quart.Factor/measure.Pint.Factor)
}
