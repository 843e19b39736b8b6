package exports

import "example.org/kettleside/reference"

// marks are a column of the lists that holds sources: its defined name, and the
// sources that a treatment has there. A line that rests on the treatment shows
// the mark of the chosen one.
type marks struct {
	list string
	of   func(o *own, r ownRecord) string // the source's id
}

var (
	treatmentMarks = &marks{"source_list", func(_ *own, r ownRecord) string { return r.Treatment.Source }}
	clockMarks     = &marks{"clock_source_list", func(_ *own, r ownRecord) string { return r.Clock.Source }}
	chillMarks     = &marks{"chill_source_list", func(_ *own, r ownRecord) string { return r.Chill.Source }}
	yieldMarks     = &marks{"pint_source_list", func(_ *own, r ownRecord) string { return r.yield.Source }}
	shareMarks     = &marks{"share_source_list", func(_ *own, r ownRecord) string { return r.yield.UsableShareSource }}

	// the water rule of the treatment, also where no weight is entered
	waterMarks = &marks{"water_source_list", func(_ *own, r ownRecord) string {
		if r.Treatment.Method == reference.WaterBlanch {
			return r.Treatment.WaterSource
		}
		return r.Water.Source
	}}
	headspaceMarks = &marks{"headspace_source_list", func(o *own, r ownRecord) string {
		if r.Treatment.Pack == reference.TrayPack {
			return o.Table.Rule("tray-headspace-in").Source
		}
		return r.Treatment.HeadspaceSource
	}}
)

// cell is the mark of a treatment in the lists.
func (k *marks) cell(o *own, r ownRecord) cell {
	return cell{role: mark, name: k.list, value: o.sources.ref(k.of(o, r))}
}

// chosen is the mark of the chosen treatment; a source that is not there is an
// empty text, which INDEX alone would give as 0.
func (k *marks) chosen() string { return `INDEX(` + k.list + `,treatment_row)&""` }

// start is the mark of the treatment that the sheet starts with.
func (k *marks) start(o *own) string {
	if r, _, ok := o.record(); ok {
		return o.sources.ref(k.of(o, r))
	}
	return ""
}

// sourceName is the name of the cell with the source of a line.
func sourceName(name string) string { return name + "_source" }

// mark is the cell with the source of a line: fixed, or of the chosen treatment.
func (o *own) mark(r result) cell {
	c := cell{col: 5, role: resultMark, value: o.sources.ref(r.source), name: sourceName(r.name)}
	switch {
	case r.markFormula != "":
		c.formula, c.value = r.markFormula, r.markValue
	case r.marks != nil:
		c.formula, c.value = needsTreatment+r.marks.chosen()+`)`, r.marks.start(o)
	}
	return c
}

// headspaceMark is the source of the headspace: the tray rule, the published
// table by size and mouth, or the treatment's own.
func (o *own) headspaceMark() (formula, start string) {
	tray := o.sources.ref(o.Table.Rule("tray-headspace-in").Source)
	other := headspaceMarks.chosen()
	if len(o.headspaceRows()) > 0 {
		key := `MATCH(` + chosenKey + `,headspace_keys,0)`
		other = `IF(ISNUMBER(` + key + `),INDEX(headspace_cell_sources,` + key + `)&"",` + other + `)`
	}
	formula = needsTreatment + `IF(` + o.onTray() + `,"` + tray + `",` + other + `))`
	if o.first != nil {
		start = o.sources.ref(o.first.Headspace.Source)
	}
	return formula, start
}

// buyMark is the source of the weight to buy: the weight for a pack where packs
// are wanted, else the share that is left.
func (o *own) buyMark() (formula, start string) {
	formula = needsTreatment + `IF(AND(packs_wanted>0,COUNT(per_pint_from,pints_each)=2),` + yieldMarks.chosen() + `,` + shareMarks.chosen() + `))`
	r, _, ok := o.record()
	switch {
	case !ok:
	case o.first.Batch.Pack.Count > 0 && r.known && r.yield.LbPerPint > 0:
		start = yieldMarks.start(o)
	default:
		start = shareMarks.start(o)
	}
	return formula, start
}
