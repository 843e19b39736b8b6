package exports

import (
	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// plainPack is the pack that the sheet starts from where the class has none.
var plainPack = batch.Packing{Container: batch.Box, Size: batch.Pint, Mouth: reference.WideMouth}

// own builds the sheet that a participant types into.
type own struct {
	*maker
	*sheet
	units   ownUnits
	records []ownRecord
	first   *class.BatchWorked // whose entries the sheet starts with; nil: none
}

// ownNumbers is the sheet with live formulas: the participant types into the
// tinted cells and gets water, loads, minutes, chilling, ice, headspace, packs,
// weight to buy and days in the freezer. It starts with the entries of the
// class's first batch; the values beside the formulas are the program's.
func (m *maker) ownNumbers(def Sheet) *sheet {
	o := &own{maker: m, units: unitsOf(m.Class.Units), records: m.records()}
	for i := range m.Worked.Batches {
		if m.Worked.Batches[i].Known {
			o.first = &m.Worked.Batches[i]
			break
		}
	}
	o.sheet = m.newSheet(def, m.ownShares()...)
	o.add(row{cells: []cell{o.wide(title, o.Say("Your own numbers"))}, keep: true})
	o.add(row{cells: []cell{o.wide(subtitle, o.Say("Type into the tinted cells; all other cells work themselves out. They are locked without a password, so that a slip of the finger breaks nothing: choose one to read its formula."))}, space: 4})
	o.entries()
	o.results()
	o.minds()
	o.sheet.gap(4)
	offered := make([]class.BatchWorked, len(o.records))
	for i, r := range o.records {
		offered[i] = r.BatchWorked
	}
	m.warnings(o.sheet, "", warningSmall, m.cautionsOf(m.Worked.Batches, offered))
	o.lists()
	o.rules()
	m.measuresLegend(o.sheet)
	m.sources.list(o.sheet, m.Say("Sources of this sheet"))
	return o.sheet
}

// ownShares are the columns: a name, two numbers, a unit, how it is worked out,
// and the source. The third holds the units of the open cells too, which are
// longer in Spanish.
func (m *maker) ownShares() []float64 {
	if m.Voice.Language() == words.Spanish {
		return []float64{126, 90, 61, 61, 134, 42}
	}
	return []float64{118, 98, 46, 58, 152, 42}
}

// entry is one open cell: its name and value, its unit and what is allowed.
type entry struct {
	label string
	role  role
	value any
	unit  string
	about string // what is meant
	check check
}

// entries are the open cells.
func (o *own) entries() {
	names := make([]string, len(o.records))
	for i, r := range o.records {
		names[i] = r.name
	}
	o.heading(o.Say("Type here"))
	choice := o.choice()
	o.add(row{cells: []cell{
		{role: entryLabel, value: o.Say("Treatment")},
		{col: 1, span: 4, role: inputText, name: "treatment", value: choice, room: longest(names)},
		{col: 5, role: small},
	}, space: 6, keep: true})
	o.checks = append(o.checks, check{
		cell: "treatment", title: o.Say("Treatment"), list: "treatment_list",
		help: o.Say("Choose a treatment from the list. It stands below under “What this sheet knows”."),
		stop: o.Say("Choose one of the treatments in the list."),
	})
	for _, e := range o.amounts() {
		e.check.title = e.label
		if len(e.check.choices) > 0 {
			e.check.help = o.Say("Choose %s.", either(o.Voice, e.check.choices))
			e.check.stop = o.Say("Allowed is %s.", either(o.Voice, e.check.choices))
		} else {
			allowed := o.Say("%s to %s %s", measure.Plain(e.check.low), measure.Plain(e.check.high), e.unit)
			e.check.help = o.Say("Type a number: %s, without the unit.", allowed)
			e.check.stop = o.Say("Allowed is a number from %s.", allowed)
			if e.check.whole {
				e.check.stop = o.Say("Allowed is a whole number from %s.", allowed)
			}
			e.about += ": " + allowed
		}
		o.checks = append(o.checks, e.check)
		o.add(row{cells: []cell{
			{role: entryLabel, value: e.label},
			{col: 1, role: e.role, name: e.check.cell, value: e.value, room: longest(e.check.choices)},
			{col: 2, role: unit, value: e.unit},
			{col: 3, span: 3, role: entryHow, value: e.about},
		}, space: 4, keep: true})
	}
	o.rows[len(o.rows)-1].keep = false
}

// choice is the treatment that the sheet starts with.
func (o *own) choice() any {
	if o.first != nil {
		for _, r := range o.records {
			if r.Treatment.ID == o.first.Treatment.ID {
				return r.name
			}
		}
	}
	return nil
}

// amounts are the open cells under the treatment.
func (o *own) amounts() []entry {
	u := o.units
	var prepared, kettle, freezer, altitude, packs any
	pack := plainPack
	if a := o.Class.Place.Altitude; a.Given() {
		altitude = a.In(u.altitude)
	}
	if f := o.Class.Place.Freezer; f.Given() {
		freezer = f.In(u.freezer)
	}
	if o.first != nil {
		b := o.first.Batch
		pack = b.Pack
		if b.Prepared.Given() {
			prepared = o.first.Prepared.Value
		}
		if k, ok := o.Class.Kit.KettleNamed(b.Kettle); ok && k.Holds.Given() {
			kettle = k.Holds.In(u.water)
		}
		if pack.Count > 0 {
			packs = float64(pack.Count)
		}
	}
	mouth := pack.Mouth
	if pack.Container == batch.Bag {
		mouth = reference.WideMouth // a bag is counted as one
	}
	size := func(s batch.Size) string { return o.Say(sizeNames[s]) }
	mouthName := func(x reference.Mouth) string { return o.Say(mouthNames[x]) }
	limit := func(name string, low, high float64) check { return check{cell: name, low: low, high: high} }
	preparedLow, preparedHigh := limitsIn(class.PreparedLimits, u.mass)
	kettleLow, kettleHigh := limitsIn(class.KettleLimits, u.water)
	freezerLow, freezerHigh := limitsIn(class.FreezerLimits, u.freezer)
	altitudeLow, altitudeHigh := limitsIn(class.AltitudeLimits, u.altitude)
	whole := check{cell: "packs_wanted", low: float64(class.PackCounts.Low), high: float64(class.PackCounts.High), whole: true}
	return []entry{
		{o.Say("Prepared weight"), inputAmount, prepared, u.mass.Symbol, o.Say("Trimmed, ready for the kettle"), limit(u.prepared, preparedLow, preparedHigh)},
		{o.Say("Water in your kettle"), inputAmount, kettle, u.water.Symbol, o.Say("What it holds with room to boil"), limit(u.kettle, kettleLow, kettleHigh)},
		{o.Say("Your freezer"), inputAmount, freezer, o.symbol(u.freezer.Symbol), o.Say("Its capacity"), limit(u.capacity, freezerLow, freezerHigh)},
		{o.Say("Your altitude"), inputAmount, altitude, o.symbol(u.altitude.Symbol), o.Say("Height of your kitchen"), limit(u.height, altitudeLow, altitudeHigh)},
		{o.Say("Packs you want"), inputCount, packs, o.Say("packs"), o.Say("Empty: as many as it gives"), whole},
		{o.Say("Size of a pack"), inputText, size(pack.Size), "", o.Say("Pint or quart"), check{cell: "container", choices: []string{size(batch.Pint), size(batch.Quart)}}},
		{o.Say("Mouth"), inputText, mouthName(mouth), "", o.Say("Wide or narrow; a bag counts as wide"), check{cell: "mouth", choices: []string{mouthName(reference.WideMouth), mouthName(reference.NarrowMouth)}}},
		{o.Say("Loose on a tray first"), inputText, o.yesNo(pack.Tray), "", o.Say("Yes: frozen loose first, so no headspace"), check{cell: "tray", choices: []string{o.yesNo(true), o.yesNo(false)}}},
	}
}

// longest is the longest of some texts on paper.
func longest(texts []string) string {
	out, width := "", 0.0
	for _, t := range texts {
		if w := arial.width(t, 10, true, false); w > width {
			out, width = t, w
		}
	}
	return out
}

// longestOf is the longest text that a list gives.
func (o *own) longestOf(text func(ownRecord) string) string {
	texts := make([]string, len(o.records))
	for i, r := range o.records {
		texts[i] = text(r)
	}
	return longest(texts)
}
