package reference

import (
	"archive/zip"
	"bytes"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/content/words"
)

// What is wrong with a file is told with its place and what is allowed.
func TestSentFaults(t *testing.T) {
	for name, c := range map[string]struct {
		change func(g grid) grid
		says   []string
	}{
		"an unknown column": {func(g grid) grid { g[0][17] = "remarks"; return g }, []string{`row 1, column 18 (remarks): found the column "remarks"`, "no column note"}},
		"a column twice":    {func(g grid) grid { g[0][17] = "words"; return g }, []string{`found the column "words" a second time`}},
		"no head":           {func(g grid) grid { g[0][0] = "key"; return g }, []string{"no column minutes"}},
		"an unknown id":     {func(g grid) grid { g[4][0] = "runner-beans"; return g }, []string{`back.csv, row 5, column 1 (id): found "runner-beans"`, "no row for " + outGrid(t, Shipped())[4][0]}},
		"no id":             {func(g grid) grid { g[4][0] = ""; return g }, []string{"row 5, column 1 (id): found nothing; allowed is the id of a treatment"}},
		"an id twice":       {func(g grid) grid { g[4][0] = g[3][0]; return g }, []string{"row 5, column 1 (id): found \"" + outGrid(t, Shipped())[3][0] + `" a second time`}},
		"rows left out":     {func(g grid) grid { return g[:20] }, []string{" more; allowed is one row for each treatment"}},
		"a formula":         {func(g grid) grid { g[3][6] = "=1+1"; return g }, []string{"row 4, column 7: found a formula"}},
		"beside the table":  {func(g grid) grid { g[3] = append(g[3], "thanks!"); return g }, []string{`column 27: found "thanks!"`}},
		"too many rows": {func(g grid) grid {
			for len(g) <= maxSentRows {
				g = append(g, g[1])
			}
			return g
		}, []string{"allowed is at most 20,000 rows"}},
		"too wide": {func(g grid) grid { g[2] = append(g[2], make([]string, 300)...); g[2][299] = "x"; return g }, []string{"allowed is at most 200 columns"}},
	} {
		list, err := compare(Shipped(), "back.csv", c.change(outGrid(t, Shipped())).csv(','))
		if err == nil {
			t.Errorf("%s: not told; %s", name, told(list))
			continue
		}
		var one *SentError
		for _, want := range c.says {
			if !strings.Contains(err.Error(), want) || !errors.As(err, &one) || one.At.File != "back.csv" {
				t.Errorf("%s: %.400v; want %s", name, err, want)
			}
		}
		if es := words.In(words.Spanish).Error(err); es == err.Error() {
			t.Errorf("%s is not told in Spanish: %.200s", name, es)
		}
	}
	for file, c := range map[string]struct{ data, says string }{
		"a.txt":  {"id", "a name that ends in .csv or .xlsx"},
		"a.csv":  {"id,\xff", "UTF-8"},
		"b.csv":  {"id,\"x", "quotation marks in pairs"},
		"a.xlsx": {"id,crop", "no workbook, or a damaged one"},
		"b.xlsx": {oldBook + "rest", "without a password"},
		"c.csv":  {strings.Repeat("x", maxSentBytes+1), "more than 20 MB"},
	} {
		if _, err := ReadSent(file, []byte(c.data)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v; want %s", file, err, c.says)
		}
	}
}

// A workbook made to harm is refused in a sentence, and quickly: it names the
// cell of a formula and believes no size that it claims.
func TestHostileBooks(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	_ = f.SetCellFormula("Sheet1", "AB12", "1+1")
	if _, err := ReadSent("a.xlsx", bookBytes(t, f)); err == nil || !strings.Contains(err.Error(), "sheet Sheet1, cell AB12: found a formula") {
		t.Errorf("a formula: %v", err)
	}
	for name, c := range map[string]struct{ xml, says string }{
		"far down":     {`<row r="1048576"><c r="A1048576" t="inlineStr"><is><t>x</t></is></c></row>`, "at most 20,000 rows"},
		"far right":    {`<row r="1"><c r="XFD1"><v>1</v></c></row>`, "at most 200 columns"},
		"no such cell": {`<row r="1"><c r="1"><v>1</v></c></row>`, "damaged"},
		"backwards":    {`<row r="5"/><row r="2"/>`, "damaged"},
		"cut off":      {`<row r="5"><c`, "damaged"},
		"unpacks":      {strings.Repeat(" ", maxUnpacked+1), "unpacked at most"},
	} {
		if _, err := ReadSent("a.xlsx", bookOf(c.xml)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v; want %s", name, err, c.says)
		}
	}
	sent, err := ReadSent("a.xlsx", bookOf(`<row><c t="inlineStr"><is><r><t>i</t></r><r><t>d</t></r><rPh><t>no</t></rPh></is></c><c r="C1"><v>1E-1</v></c><c t="b"><v>1</v></c></row>`))
	if err != nil || len(sent.sheets) != 1 || !slices.Equal(sent.sheets[0].rows[0].cells, []string{"id", "", "0.1", "1"}) {
		t.Errorf("%+v, %v", sent, err)
	}
}

// bookOf is the least workbook that holds these rows.
func bookOf(rows string) []byte {
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, part := range [][2]string{
		{bookPart, `<workbook xmlns:r="x"><sheets><sheet name="S" sheetId="1" r:id="r1"/></sheets></workbook>`},
		{linksPart, `<Relationships><Relationship Id="r1" Target="worksheets/sheet1.xml"/></Relationships>`},
		{"xl/worksheets/sheet1.xml", `<worksheet><sheetData>` + rows + `</sheetData></worksheet>`},
	} {
		w, _ := z.Create(part[0])
		_, _ = w.Write([]byte(part[1]))
	}
	_ = z.Close()
	return buf.Bytes()
}

// fuzzSent checks what must hold of any file: no panic, sentences for faults,
// and a difference is an edit exactly where it says so.
func fuzzSent(t *testing.T, file string, data []byte) {
	list, err := compare(Shipped(), file, data)
	if err != nil {
		var one *SentError
		if !errors.As(err, &one) || one.At.File != file || err.Error() == "" {
			t.Errorf("%T %v", err, err)
		}
	}
	for _, d := range list {
		e := Shipped().NewEdit(d.Treatment, d.Field, d.There, "why", "who", someDay)
		if _, err := Shipped().With([]Edit{e}); (err == nil) != (d.Refused == nil) {
			t.Errorf("%s %q: %v, but as an edit: %v", d.Name(), d.There, d.Refused, err)
		}
	}
}

func FuzzSentCSV(f *testing.F) {
	g := outGrid(f, Shipped())
	f.Add(g[:6].csv(','))
	f.Add(g[:3].csv(';'))
	g.set(g[1][0], "minutes", "=1+1")
	f.Add(g[:2].csv('\t'))
	f.Add([]byte("id,note\nkale-leaves-water,\"a\nb\"\n"))
	f.Fuzz(func(t *testing.T, data []byte) { fuzzSent(t, "f.csv", data) })
}

// FuzzSentBook tries files, and the XML of a sheet inside a sound one.
func FuzzSentBook(f *testing.F) {
	f.Add(outGrid(f, Shipped())[:4].book(f), `<row><c><v>1</v></c></row>`)
	f.Add([]byte("PK"), `<row r="3"><c r="A3" t="inlineStr"><is><t>id</t></is></c><c t="str"><v>minutes</v></c></row><row><c t="str"><v>kale-leaves-water</v></c><c><f>1</f><v>9</v></c></row>`)
	f.Fuzz(func(t *testing.T, data []byte, rows string) {
		fuzzSent(t, "f.xlsx", data)
		fuzzSent(t, "f.xlsx", bookOf(rows))
	})
}
