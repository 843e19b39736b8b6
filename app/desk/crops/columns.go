package crops

import (
	"slices"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// column is one column of the crop table.
type column struct {
	id     string           // as the settings name it
	title  string           // as a key to be said
	wide   float32          // at least, at normal size
	sort   reference.Column // "" where it does not sort
	text   func(*reference.Table, reference.Treatment) (first, second string)
	fields []string // what may be changed in it: the first that a treatment has
	tells  bool     // which treatment it is, so that its text is shown in full
	extra  bool     // stands in the table only where it was asked for
	with   string   // id of the column without which it never stands, nor that without it
}

// only is a column of one text.
func only(text func(reference.Treatment) string) func(*reference.Table, reference.Treatment) (string, string) {
	return func(_ *reference.Table, t reference.Treatment) (string, string) { return text(t), "" }
}

// columns from the left. The usual first six say what is done and when the clock
// starts, and are seen together in the least window.
var columns = []column{
	{id: "crop", title: words.Key("Crop"), wide: 112, sort: reference.ByCrop, tells: true, text: cropCell},
	{id: "cut", title: words.Key("Cut"), wide: 104, sort: reference.ByCut, tells: true, text: only(func(t reference.Treatment) string { return t.Cut })},
	{id: "size", title: words.Key("Size"), wide: 96, sort: reference.ByGrade, tells: true, text: only(sizeWords)},
	{id: "method", title: words.Key("Method"), wide: 66, sort: reference.ByMethod, text: only(func(t reference.Treatment) string { return methodShort(t.Method) })},
	{id: "minutes", title: words.Key("Minutes or words"), wide: 108, sort: reference.ByMinutes, text: only(minutesWords), fields: []string{reference.FieldMinutes, reference.FieldWords}},
	{id: "clock", title: words.Key("Clock starts"), wide: 84, text: only(func(t reference.Treatment) string { return clockShort(t.ClockStart) }), with: "minutes"},
	{id: "chill", title: words.Key("Chill"), wide: 92, sort: reference.ByChill, text: chillCell, fields: []string{reference.FieldChillFactor, reference.FieldChillWords}},
	{id: "headspace", title: words.Key("Headspace"), wide: 92, sort: reference.ByHeadspace, text: only(headspaceWords), fields: []string{reference.FieldHeadspace}},
	{id: "water", title: words.Key("Water, gal a pound"), wide: 92, sort: reference.ByWater, text: only(waterWords), fields: []string{reference.FieldWater}, extra: true},
	{id: "storage", title: words.Key("Best quality"), wide: 92, sort: reference.ByStorage, text: only(storageWords), fields: []string{reference.FieldStorage}, extra: true},
	{id: "pack", title: words.Key("Pack"), wide: 104, sort: reference.ByPack, text: only(func(t reference.Treatment) string { return packWords(t.Pack) }), extra: true},
	{id: "source", title: words.Key("Source"), wide: 190, sort: reference.BySource, text: sourceCell},
	{id: "standing", title: words.Key("Standing"), wide: 100, sort: reference.ByStanding, text: only(func(t reference.Treatment) string { return look.Say(string(t.Standing)) })},
}

// choosable are the columns that may be left out; one that always stands with
// another goes with it.
func choosable() []column {
	return slices.DeleteFunc(slices.Clone(columns[1:]), func(c column) bool { return c.with != "" })
}

// choice is how a column is named where columns are chosen.
func (c column) choice() string {
	if c.id == "minutes" {
		return look.Say("Minutes, with their clock")
	}
	return look.Say(c.title)
}

// usual are the ids of the columns that stand where nobody chose.
func usual() []string {
	var ids []string
	for _, c := range choosable() {
		if !c.extra {
			ids = append(ids, c.id)
		}
	}
	return ids
}

// known are those of the ids that name a column that may be chosen, in the order
// of the table; where there are none, the usual ones.
func known(ids []string) []string {
	var there []string
	for _, c := range choosable() {
		if slices.Contains(ids, c.id) {
			there = append(there, c.id)
		}
	}
	if len(there) == 0 {
		return usual()
	}
	return there
}

// standing are the crop and the columns with these ids.
func standing(ids []string) []column {
	return slices.DeleteFunc(slices.Clone(columns), func(c column) bool {
		return c.id != "crop" && !slices.Contains(ids, c.id) && (c.with == "" || !slices.Contains(ids, c.with))
	})
}

func cropCell(table *reference.Table, t reference.Treatment) (string, string) {
	crop, ok := table.Crop(t.Crop)
	if !ok {
		return t.Crop, ""
	}
	return crop.Name, ""
}

func chillCell(table *reference.Table, t reference.Treatment) (string, string) {
	return chillWords(table, t), ""
}

func sourceCell(table *reference.Table, t reference.Treatment) (string, string) {
	s, ok := table.Source(t.Source)
	if !ok {
		return t.Source, ""
	}
	return s.Publisher, s.Title
}

// waterWords are the gallons of boiling water for a pound, as published.
func waterWords(t reference.Treatment) string {
	if t.WaterGalPerLb == 0 {
		return look.Say("no water blanch")
	}
	return measure.Plain(t.WaterGalPerLb) + " gal"
}

func storageWords(t reference.Treatment) string {
	if t.StorageMonths == 0 {
		return look.Say("not published")
	}
	return look.Say("%s months", months(t))
}

// months are those of best quality, as a number or two.
func months(t reference.Treatment) string {
	return measure.Range(measure.Plain(t.StorageMonths), measure.Plain(t.StorageMonthsHigh), "")
}

// field is what may be changed of a treatment in the column, "" where nothing
// may.
func (c column) field(t reference.Treatment) string {
	for _, field := range c.fields {
		if reference.ShippedText(t, field) != "" {
			return field
		}
	}
	return ""
}

// edited is the shipped text of a column where it was changed here.
func (c column) edited(t reference.Treatment) (shipped string, changed bool) {
	for _, field := range c.fields {
		if _, ok := t.Changed[field]; ok {
			return look.Say("shipped %s", fieldShipped(t, field)), true
		}
	}
	return "", false
}

// widths shares out a width: the columns grow a little where as many as fit then
// fill it, and as far as is needed where all of them fit.
func widths(columns []column, wide float32) []float32 {
	scale := look.Current().Scale
	var all, front float32 // of all columns, and of those that are seen together
	for _, c := range columns {
		all += c.wide * scale
		if all <= wide {
			front = all
		}
	}
	grow := float32(1)
	switch {
	case all <= wide:
		grow = min(wide/all, 1.8)
	case front > 0:
		grow = min(wide/front, 1.12)
	}
	out := make([]float32, len(columns))
	for i, c := range columns {
		out[i] = float32(int(c.wide * scale * grow))
	}
	return out
}
