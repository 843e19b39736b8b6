package crops

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// column is one column of the crop table: what stands in it, how wide it is at
// least, and what it sorts by ("" where it does not sort).
type column struct {
	title string
	wide  float32
	sort  reference.Column
	text  func(*reference.Table, reference.Treatment) (first, second string)
	field []string // what an edit must change for the column to be marked
}

// only is a column of one text.
func only(text func(reference.Treatment) string) func(*reference.Table, reference.Treatment) (string, string) {
	return func(_ *reference.Table, t reference.Treatment) (string, string) { return text(t), "" }
}

// columns from the left; the first six say what is done and when the clock
// starts, and are seen together in the least window.
var columns = []column{
	{"Crop", 112, reference.ByCrop, cropCell, nil},
	{"Cut", 106, reference.ByCut, only(func(t reference.Treatment) string { return t.Cut }), nil},
	{"Size", 88, reference.ByGrade, only(sizeWords), nil},
	{"Method", 66, reference.ByMethod, only(func(t reference.Treatment) string { return string(t.Method) }), nil},
	{"Minutes or words", 104, reference.ByMinutes, only(minutesWords), []string{reference.FieldMinutes, reference.FieldWords}},
	{"Clock starts", 84, "", only(func(t reference.Treatment) string { return clockShort(t.ClockStart) }), nil},
	{"Chill", 92, reference.ByChill, func(table *reference.Table, t reference.Treatment) (string, string) { return chillWords(table, t), "" }, []string{reference.FieldChillFactor, reference.FieldChillWords}},
	{"Headspace", 92, reference.ByHeadspace, only(headspaceWords), []string{reference.FieldHeadspace}},
	{"Source", 190, reference.BySource, sourceCell, nil},
	{"Standing", 100, reference.ByStanding, only(func(t reference.Treatment) string { return string(t.Standing) }), nil},
}

// essential is how many columns are seen together in the least window.
const essential = 6

func cropCell(table *reference.Table, t reference.Treatment) (string, string) {
	crop, ok := table.Crop(t.Crop)
	if !ok {
		return t.Crop, ""
	}
	return crop.Name, ""
}

func sourceCell(table *reference.Table, t reference.Treatment) (string, string) {
	s, ok := table.Source(t.Source)
	if !ok {
		return t.Source, ""
	}
	return s.Publisher, s.Title
}

// edited is the shipped text of a column where it was changed here.
func (c column) edited(t reference.Treatment) (shipped string, changed bool) {
	for _, field := range c.field {
		if _, ok := t.Changed[field]; ok {
			return "shipped " + fieldWords(field, reference.ShippedText(t, field)), true
		}
	}
	return "", false
}

// widths shares out a width: the columns grow a little where the essential ones
// then fill it, and as far as is needed where all of them fit.
func widths(wide float32) []float32 {
	var all, front float32
	for i, c := range columns {
		all += c.wide
		if i < essential {
			front += c.wide
		}
	}
	scale := look.Current().Scale
	gaps := float32(len(columns)-1) * gap()
	grow := min(max(1, (wide-gap()*essential)/(front*scale)), 1.12)
	if fill := (wide - gaps) / (all * scale); fill >= 1 {
		grow = min(fill, 1.8)
	}
	out := make([]float32, len(columns))
	for i, c := range columns {
		out[i] = float32(int(c.wide * scale * grow))
	}
	return out
}

// gap is what the toolkit leaves between two columns.
func gap() float32 { return fyne.CurrentApp().Settings().Theme().Size("padding") }
