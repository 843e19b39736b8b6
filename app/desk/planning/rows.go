package planning

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// rows are the entries of a list in the class, such as its kettles: one row of
// fields for each, made when first needed and hidden when not.
type rows struct {
	box    *fyne.Container
	make   func(i int) (row fyne.CanvasObject, fields []*look.Field)
	fields [][]*look.Field
	shown  [][]string // what the rows held when last shown

	left *look.Text // said in the place of a row that was removed
	note fyne.CanvasObject
}

func newRows(gap float32, makeRow func(i int) (fyne.CanvasObject, []*look.Field)) *rows {
	left := look.NewText("", look.SizeSmall, look.Ink, fyne.TextStyle{}).Wrapped()
	return &rows{box: look.Column(gap), make: makeRow, left: left, note: look.Marked(look.IconSeverity(measure.Mind), left)}
}

// sayAt says something in the place of row i, which was removed, until the rows
// are shown the next time; "" says nothing.
func (r *rows) sayAt(i int, text string) {
	if text == "" {
		return
	}
	r.left.SetText(text)
	r.box.Objects = slices.Insert(r.box.Objects, min(i, len(r.box.Objects)), r.note)
	r.box.Refresh()
}

// show shows n rows and fills the fields of each with values(i).
func (r *rows) show(n int, values func(i int) []string) {
	r.box.Remove(r.note)
	now := make([][]string, n)
	for i := range now {
		now[i] = values(i)
	}
	for len(r.fields) < n {
		row, fields := r.make(len(r.fields))
		r.fields = append(r.fields, fields)
		r.box.Add(row)
	}
	for i, fields := range r.fields {
		look.Show(r.box.Objects[i], i < n)
		if i >= n {
			for _, f := range fields {
				f.Restore() // what was typed into a row that is gone
			}
			continue
		}
		moved := r.moved(i, now)
		for j, text := range now[i] {
			fields[j].SetValue(text)
			if moved {
				fields[j].Restore() // what was refused belongs to another
			}
		}
	}
	r.shown = now
	r.box.Refresh()
}

// moved says whether row i may stand for another entry of the list than when
// last shown: the list became shorter, or the row holds what is new to it while
// what it held is elsewhere, or the other way round. A row whose values were
// changed in place has not moved.
func (r *rows) moved(i int, now [][]string) bool {
	if len(now) < len(r.shown) {
		return true
	}
	if i >= len(r.shown) || slices.Equal(r.shown[i], now[i]) {
		return false
	}
	holds := func(list [][]string, row []string) bool {
		return slices.ContainsFunc(list, func(other []string) bool { return slices.Equal(other, row) })
	}
	return len(now) > len(r.shown) || holds(r.shown, now[i]) || holds(now, r.shown[i])
}

// onFirst is the label of a field in the first row; those below need none.
func onFirst(i int, label string) string {
	if i == 0 {
		return label
	}
	return ""
}

// labelledOnFirst puts a label over an object in the first row.
func labelledOnFirst(i int, label string, o fyne.CanvasObject) fyne.CanvasObject {
	if i == 0 {
		return look.Labelled(label, o)
	}
	return look.AtTop(o)
}

// inLine sets a button in line with the entries of row i.
func inLine(i int, b *look.Button) fyne.CanvasObject {
	if i == 0 {
		return look.Lowered(b)
	}
	return look.AtTop(b)
}

// removeButton takes a row away.
func removeButton(remove func()) *look.Button {
	b := look.NewButtonWithIcon("", look.IconRemove(), remove)
	b.Importance = widget.LowImportance
	return b
}
