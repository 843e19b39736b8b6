package exports

import (
	"bytes"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// The table that goes out comes back without a difference, in either language
// and with an educator's edits; what was typed into an open cell is the one
// difference.
func TestTableGoesOutAndComesBack(t *testing.T) {
	edited, err := reference.Shipped().With([]reference.Edit{
		reference.Shipped().NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4-5", "why", "A. Teacher", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)),
	})
	noErr(t, err)
	for name, table := range map[string]*reference.Table{"shipped": reference.Shipped(), "edited": edited} {
		for _, l := range languages {
			voice := words.In(l)
			data, err := TableWorkbook(table, voice, Letter)
			noErr(t, err)
			again, err := TableWorkbook(table, voice, Letter)
			noErr(t, err)
			if !bytes.Equal(data, again) {
				t.Errorf("%s, %s: other bytes", name, l)
			}
			sent, err := reference.ReadSent("back.xlsx", data)
			noErr(t, err)
			if list, err := reference.Compare(table, sent); len(list) > 0 || err != nil {
				t.Errorf("%s, %s: %v, %v", name, l, list, err)
			}
			if left := voice.Untranslated(); len(left) > 0 {
				t.Errorf("%s: in English: %q", l, left)
			}
		}
	}
	f := open(t, mustTable(t))
	sheet := f.GetSheetList()[1]
	column, row := 0, 0
	rows, err := f.GetRows(sheet)
	noErr(t, err)
	for i, r := range rows {
		if r[0] == "snap-beans-cut-water" {
			row = i + 1
		}
	}
	for i, head := range rows[1] {
		if head == "minutes" {
			column = i
		}
	}
	at := string(rune('A'+column)) + strconv.Itoa(row)
	noErr(t, f.SetCellValue(sheet, at, "1 1/2-4"))
	buf, err := f.WriteToBuffer()
	noErr(t, err)
	sent, err := reference.ReadSent("back.xlsx", buf.Bytes())
	noErr(t, err)
	list, err := reference.Compare(reference.Shipped(), sent)
	if len(list) != 1 || err != nil || list[0].Name() != "snap-beans-cut-water.minutes" || list[0].There != "1 1/2-4" || list[0].Refused == nil ||
		!strings.HasSuffix(list[0].At.String(), "sheet Minutes, cell "+at+" (minutes)") {
		t.Errorf("%v, %v", list, err)
	}
}

func mustTable(t *testing.T) []byte {
	t.Helper()
	data, err := TableWorkbook(reference.Shipped(), nil, Letter)
	noErr(t, err)
	return data
}

// Only what can take an edit is open; heads stay in view; no formula goes out.
func TestTableIsLockedButForEdits(t *testing.T) {
	f := open(t, mustTable(t))
	openCells := 0
	for i, name := range f.GetSheetList() {
		rows, err := f.GetRows(name)
		noErr(t, err)
		panes, err := f.GetPanes(name)
		noErr(t, err)
		if on, err := f.GetSheetProtection(name); err != nil || !on.SelectLockedCells || on.InsertRows {
			t.Errorf("%s is not locked: %+v, %v", name, on, err)
		}
		if i == 0 {
			continue
		}
		if !panes.Freeze || panes.YSplit != 2 || rows[1][0] != "id" {
			t.Errorf("%s: %+v, %q", name, panes, rows[1])
		}
		for j, r := range rows[2:] {
			x, ok := reference.Shipped().Treatment(r[0])
			if !ok {
				t.Fatalf("%s: no treatment %q", name, r[0])
			}
			for k, column := range rows[1] {
				at := string(rune('A'+k)) + strconv.Itoa(j+3)
				id, err := f.GetCellStyle(name, at)
				noErr(t, err)
				style, err := f.GetStyle(id)
				noErr(t, err)
				field := ""
				for _, e := range reference.EditFields {
					if reference.FieldColumn(e) == column {
						field = e
					}
				}
				unlocked := style.Protection != nil && !style.Protection.Locked
				if unlocked != (field != "" && x.Takes(field)) {
					t.Errorf("%s %s (%s of %s) is open: %v", name, at, column, x.ID, unlocked)
				}
				if unlocked {
					openCells++
				}
				if column == "source" && k < len(r) && name == "Chilling" {
					if source, _ := reference.Shipped().Source(x.ChillSource); r[k] != source.Title {
						t.Errorf("%s: the source of the chilling of %s is %q", name, x.ID, r[k])
					}
				}
			}
		}
	}
	want := 0
	for _, x := range reference.Shipped().Treatments {
		for _, f := range reference.EditFields {
			if x.Takes(f) {
				want++
			}
		}
	}
	if openCells != want {
		t.Errorf("%d open cells; want %d", openCells, want)
	}
}

// What LibreOffice saves of the workbook is
// the table still.
func TestTableSavedByLibreOffice(t *testing.T) {
	slow(t)
	need(t, "soffice")
	files := map[string][]byte{}
	for _, l := range languages {
		data, err := TableWorkbook(reference.Shipped(), words.In(l), Letter)
		noErr(t, err)
		files[string(l)] = data
	}
	for l, data := range office(t, "xlsx", files) {
		sent, err := reference.ReadSent("back.xlsx", data)
		noErr(t, err)
		if list, err := reference.Compare(reference.Shipped(), sent); len(list) > 0 || err != nil {
			t.Errorf("%s: %.500v, %v", l, list, err)
		}
	}
}
