package exports

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// tablePart is one sheet of the crop table that goes out: what a colleague may
// edit of one kind of thing.
type tablePart struct {
	id     string
	name   string // on the tab, in English: a voice says it
	fields []string
	widths []float64 // of their columns, in points
	// ids of the sources of these values; nil where none is named
	sources func(x *reference.Treatment) []string
}

var tableParts = []tablePart{
	{"minutes", words.Key("Minutes"), []string{reference.FieldMinutes, reference.FieldWords}, []float64{54, 130}, func(x *reference.Treatment) []string { return []string{x.Source} }},
	{"chilling", words.Key("Chilling"), []string{reference.FieldChillFactor, reference.FieldChillWords}, []float64{54, 130}, func(x *reference.Treatment) []string { return []string{x.ChillSource} }},
	{"headspace", words.Key("Headspace"), []string{reference.FieldHeadspace}, []float64{100}, func(x *reference.Treatment) []string { return []string{x.HeadspaceSource} }},
	{"water", words.Key("Water"), []string{reference.FieldWater, reference.FieldBlanchWater}, []float64{54, 130}, func(x *reference.Treatment) []string { return []string{x.WaterSource, x.BlanchSource} }},
	{"notes", words.Key("Notes"), []string{reference.FieldNote}, []float64{294}, nil},
	{"storage", words.Key("Storage"), []string{reference.FieldStorage}, []float64{100}, func(x *reference.Treatment) []string { return []string{x.StorageSource} }},
}

// tableWhat are the locked columns that say what a treatment is, with the heads
// by which a table that comes back is read.
var tableWhat = []struct{ column, head string }{
	{"id", words.Key("Id")}, {"crop", words.Key("Crop")}, {"cut", words.Key("Cut")}, {"grade", words.Key("Size class")}, {"method", words.Key("Method")},
}

// TableWorkbook makes the workbook of the crop table that a colleague can edit
// and send back: a sheet that says how, then a sheet for each kind of thing that
// may be edited. Only cells that can take an edit are open. reference.ReadSent
// reads what comes back, in whatever language it went out.
func TableWorkbook(t *reference.Table, v *words.Voice, p Paper) ([]byte, error) {
	t = t.In(v)
	b := &book{
		title: v.Say("Crop table to look over"), author: "Kettleside", about: t.Edition,
		created: stamp("", time.Time{}), language: documentLanguage(v),
	}
	b.sheets = append(b.sheets, tableLetter(t, v, p))
	for _, part := range tableParts {
		b.sheets = append(b.sheets, part.sheet(t, v, p))
	}
	return encode(b)
}

func newTableSheet(id, name string, t *reference.Table, v *words.Voice, p Paper, shares ...float64) *sheet {
	page := handoutPage(p)
	page.header, page.footer = edgeLine{t.Edition, name}, edgeLine{"", v.Say("Page &P of &N")}
	return &sheet{id: id, name: name, page: page, face: arial, cols: page.columns(shares...), sealed: true}
}

// tableLetter is the first sheet: what to do with the table.
func tableLetter(t *reference.Table, v *words.Voice, p Paper) *sheet {
	s := newTableSheet("how", v.Say("How to send it back"), t, v, p, 20, 120, 396)
	s.add(row{cells: []cell{s.wide(title, v.Say("Crop table to look over"))}})
	s.add(row{cells: []cell{s.wide(subtitle, t.Edition)}, space: 6})
	for i, text := range []string{
		v.Say("Change tinted cells only. The others say what a treatment is and where its value comes from; they are locked against a slip of the finger, without a password."),
		v.Say("Leave every row, column, sheet and id where it is: a row is found by its id. Comments belong into your letter."),
		v.Say("Type plain numbers and words. A cell with a formula is refused."),
		v.Say("A time below the shortest published one is not taken: published times are never shortened."),
		v.Say("Save the workbook as .xlsx and send it back. Say in your letter why you changed a value and where you read it."),
		v.Say("Whoever gets it sees every difference beside their own value and decides about each. The shipped table is never overwritten."),
	} {
		s.add(row{cells: []cell{{role: number, value: fmt.Sprint(i + 1)}, {col: 1, span: 2, role: column, value: text}}, space: 4})
	}
	s.heading(v.Say("What may be typed"))
	for _, f := range reference.EditFields {
		s.add(row{cells: []cell{{span: 2, role: label, value: upperFirst(v.Say(f))}, {col: 2, role: plain, value: v.Say(reference.Allowed(f))}}, space: 2})
	}
	return s
}

// sheet lists the treatments with the open cells of one part. The second row
// holds the heads that the table is read by; both rows stay in view.
func (part tablePart) sheet(t *reference.Table, v *words.Voice, p Paper) *sheet {
	s := newTableSheet(part.id, v.Say(part.name), t, v, p)
	s.cols = slices.Concat([]float64{118, 84, 100, 62, 52}, part.widths) // for a screen: paper gets it smaller
	if part.sources != nil {
		s.cols = append(s.cols, 110)
	}
	var said, read []cell
	head2 := func(text, column string) {
		said = append(said, cell{col: len(said), role: head, value: text})
		read = append(read, cell{col: len(read), role: small, value: column})
	}
	for _, c := range tableWhat {
		head2(v.Say(c.head), c.column)
	}
	for _, f := range part.fields {
		head2(upperFirst(v.Say(f)), reference.FieldColumn(f))
	}
	if part.sources != nil {
		head2(v.Say("Source"), "source")
	}
	s.headFrom = s.add(row{cells: said})
	s.headTo = s.add(row{cells: read})
	s.frozen = s.headTo
	for i := range t.Treatments {
		s.add(row{cells: part.cells(t, v, &t.Treatments[i]), space: 2})
	}
	return s
}

func (part tablePart) cells(t *reference.Table, v *words.Voice, x *reference.Treatment) []cell {
	crop, _ := t.Crop(x.Crop)
	var list []cell
	add := func(r role, text string) { list = append(list, cell{col: len(list), role: r, value: text}) }
	for _, text := range []string{x.ID, crop.Name, x.Cut, x.Grade, v.Say(string(x.Method))} {
		add(small, text)
	}
	for _, f := range part.fields {
		r, text := tableShut, reference.FieldText(*x, f)
		if x.Takes(f) {
			r = tableOpen
		} else if f == reference.FieldHeadspace {
			text = v.Say(text) // "liquid table"
		}
		add(r, text)
	}
	if part.sources != nil {
		add(small, titles(t, part.sources(x)))
	}
	return list
}

// titles are those of some sources, each once.
func titles(t *reference.Table, ids []string) string {
	var list []string
	for _, id := range ids {
		if source, ok := t.Source(id); ok && !slices.Contains(list, source.Title) {
			list = append(list, source.Title)
		}
	}
	return strings.Join(list, "; ")
}
