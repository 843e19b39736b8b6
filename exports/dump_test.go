package exports

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/reference"
)

// dump writes a workbook as text, from the file itself: print settings, names,
// limits, and each cell with type, formula, value, role and lock.
func dump(t *testing.T, data []byte) []byte {
	t.Helper()
	f := open(t, data)
	roles := map[int]role{}
	styles, err := makeStyles(excelize.NewFile())
	noErr(t, err)
	for _, r := range roleOrder { // roles that look alike share a style
		if _, taken := roles[styles[r]]; !taken {
			roles[styles[r]] = r
		}
	}
	var out bytes.Buffer
	props, err := f.GetDocProps()
	noErr(t, err)
	fmt.Fprintf(&out, "document: %q by %q, %q, made %s\n", props.Title, props.Creator, props.Description, props.Created)
	for _, n := range f.GetDefinedName() {
		fmt.Fprintf(&out, "name: %s = %s (%s)\n", n.Name, n.RefersTo, n.Scope)
	}
	for _, sheet := range f.GetSheetList() {
		fmt.Fprintf(&out, "\n== %s\n", sheet)
		dumpPaper(t, f, sheet, &out)
		dumpCells(t, f, sheet, roles, &out)
	}
	return out.Bytes()
}

func dumpPaper(t *testing.T, f *excelize.File, sheet string, out *bytes.Buffer) {
	t.Helper()
	layout, err := f.GetPageLayout(sheet)
	noErr(t, err)
	props, err := f.GetSheetProps(sheet)
	noErr(t, err)
	margins, err := f.GetPageMargins(sheet)
	noErr(t, err)
	heads, err := f.GetHeaderFooter(sheet)
	noErr(t, err)
	protection, err := f.GetSheetProtection(sheet)
	noErr(t, err)
	fmt.Fprintf(out, "paper %d %s, fit %v: %s wide, %s high\n", *layout.Size, *layout.Orientation, *props.FitToPage, orDash(layout.FitToWidth), orDash(layout.FitToHeight))
	fmt.Fprintf(out, "margins left %v right %v top %v bottom %v header %v footer %v\n",
		*margins.Left, *margins.Right, *margins.Top, *margins.Bottom, *margins.Header, *margins.Footer)
	if heads != nil {
		fmt.Fprintf(out, "header %q\nfooter %q\n", heads.OddHeader, heads.OddFooter)
	}
	fmt.Fprintf(out, "locked cells can be chosen %v, password %q\n", protection.SelectLockedCells, protection.Password)
	limits, err := f.GetDataValidations(sheet)
	noErr(t, err)
	for _, v := range limits {
		fmt.Fprintf(out, "limit %s: %s %s %s %s | %s | %s\n", v.Sqref, v.Type, v.Operator, v.Formula1, v.Formula2, orEmpty(v.Prompt), orEmpty(v.Error))
	}
	merged, err := f.GetMergeCells(sheet)
	noErr(t, err)
	var spans []string
	for _, m := range merged {
		spans = append(spans, m.GetStartAxis()+":"+m.GetEndAxis())
	}
	fmt.Fprintf(out, "merged %s\n", strings.Join(spans, " "))
}

func dumpCells(t *testing.T, f *excelize.File, sheet string, roles map[int]role, out *bytes.Buffer) {
	t.Helper()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	noErr(t, err)
	for i, row := range rows {
		height, err := f.GetRowHeight(sheet, i+1)
		noErr(t, err)
		fmt.Fprintf(out, "row %d, %v points\n", i+1, height)
		for j := range row {
			at, _ := excelize.CoordinatesToCellName(j+1, i+1)
			formula, err := f.GetCellFormula(sheet, at)
			noErr(t, err)
			value, err := f.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
			noErr(t, err)
			if value == "" && formula == "" {
				continue
			}
			kind, err := f.GetCellType(sheet, at)
			noErr(t, err)
			style, err := f.GetCellStyle(sheet, at)
			noErr(t, err)
			fmt.Fprintf(out, "  %s [%s%s] %s %q", at, roles[style], lock(looks[roles[style]]), kindName(kind), value)
			if formula != "" {
				fmt.Fprintf(out, " = %s", formula)
			}
			out.WriteByte('\n')
		}
	}
}

func orDash(p *int) string {
	if p == nil {
		return "-"
	}
	return fmt.Sprint(*p)
}

func orEmpty(p *string) string {
	if p == nil {
		return ""
	}
	return *p
}

func lock(l look) string {
	if l.open {
		return ", open"
	}
	return ""
}

func kindName(k excelize.CellType) string {
	switch k {
	case excelize.CellTypeInlineString, excelize.CellTypeSharedString, excelize.CellTypeFormula:
		return "text"
	case excelize.CellTypeNumber, excelize.CellTypeUnset:
		return "number"
	}
	return fmt.Sprint("type ", k)
}

// The demo workbook in every detail: whoever changes a word, a formula, a
// limit or a margin sees it here.
func TestDemoWorkbookGolden(t *testing.T) {
	data, err := Workbook(demoWorked(t), Options{})
	noErr(t, err)
	golden(t, "demo-workbook.txt", dump(t, data))
}

// The sheets that are in a workbook only where they are chosen.
func TestChosenSheetsGolden(t *testing.T) {
	for name, c := range map[string]class.Class{"demo-handouts.txt": demoClass(t), "metric-handouts.txt": metricDemo(t)} {
		data, err := Workbook(class.Work(c, reference.Shipped()), Options{Sheets: chosenSheets()})
		noErr(t, err)
		golden(t, name, dump(t, data))
	}
}

// chosenSheets are the ids of those.
func chosenSheets() (ids []string) {
	for _, s := range Sheets {
		if !s.Usual {
			ids = append(ids, s.ID)
		}
	}
	return ids
}

// Changed values are marked on cover, treatments and batches.
func TestEditedWorkbookGolden(t *testing.T) {
	data, err := Workbook(editedWorked(t), Options{Paper: A4, Sheets: []string{CoverSheet, TreatmentsSheet}})
	noErr(t, err)
	got := dump(t, data)
	if n := bytes.Count(got, []byte("Changed here: minutes 4; shipped value 3 (A. Educator, 2027-03-04, our own bulletin)")); n != 2 {
		t.Errorf("the changed minutes are marked %d times; want once on the cover and once beside the treatment", n)
	}
	golden(t, "edited-workbook.txt", got)
}

// The styles in the file are those of the roles: locked but for open roles,
// never under 10 point, never a date.
func TestStylesInTheFile(t *testing.T) {
	f := excelize.NewFile()
	styles, err := makeStyles(f)
	noErr(t, err)
	if len(styles) != len(looks) || len(roleOrder) != len(looks) {
		t.Errorf("%d styles and %d roles in order for %d looks", len(styles), len(roleOrder), len(looks))
	}
	for r, id := range styles {
		s, err := f.GetStyle(id)
		noErr(t, err)
		if s.Font.Size < 10 || s.Font.Family != face {
			t.Errorf("%s: %v point %s", r, s.Font.Size, s.Font.Family)
		}
		if s.Protection.Locked == looks[r].open {
			t.Errorf("%s: locked %v", r, s.Protection.Locked)
		}
		if s.CustomNumFmt != nil && strings.ContainsAny(*s.CustomNumFmt, "ymdhs") {
			t.Errorf("%s: number format %s could show a date", r, *s.CustomNumFmt)
		}
	}
	open := []role{inputText, inputAmount, inputCount, line, writeBox, tick, tableOpen, packLabel, packLarge}
	for r, l := range looks {
		if l.open != slices.Contains(open, r) {
			t.Errorf("%s: open %v", r, l.open)
		}
	}
}
