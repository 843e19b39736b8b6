package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content"
)

// ran is what one call of the program did.
type ran struct {
	code        int
	out, errors string
}

func call(args ...string) ran {
	var out, errs bytes.Buffer
	code := run(args, &out, &errs)
	return ran{code, out.String(), errs.String()}
}

// home gives the program a configuration folder of its own, so that no test
// sees the changes of whoever runs it.
func home(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"HOME", "XDG_CONFIG_HOME", "AppData", "APPDATA"} {
		t.Setenv(name, dir)
	}
	return dir
}

func write(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// Wrong input: exit code 1, the file or the field, and what is allowed.
func TestWrongClassFiles(t *testing.T) {
	home(t)
	demo := string(content.DemoClass())
	for _, c := range []struct {
		name, text string
		says       []string
	}{
		{"damaged", `{"schema": 1,, "title": "x"}`, []string{"damaged", "class.kettleside", "line 1"}},
		{"cut off", `{"schema": 1, "title": "x`, []string{"cut off", "class.kettleside"}},
		{"empty", ``, []string{"class.kettleside", "empty"}},
		{"not a class", `[1, 2]`, []string{"class.kettleside", "schema"}},
		{"wrong unit", strings.Replace(demo, `"3 lb"`, `"3 gal"`, 1), []string{"batches[0].prepared", "3 gal", "lb"}},
		{"unknown unit", strings.Replace(demo, `"3 lb"`, `"3 stone"`, 1), []string{"batches[0].prepared", "3 stone"}},
		{"unknown field", strings.Replace(demo, `"notes"`, `"remarks"`, 1), []string{"remarks", "notes"}},
		{"negative", strings.Replace(demo, `"3 lb"`, `"-3 lb"`, 1), []string{"batches[0].prepared", "-3 lb"}},
		{"a slip of the unit", strings.Replace(demo, `"3 lb"`, `"1000000000 lb"`, 1), []string{"batches[0].prepared", "too much", "0.05 lb to 500 lb"}},
		{"no number", strings.Replace(demo, `"3 lb"`, `"three lb"`, 1), []string{"batches[0].prepared", "three"}},
		{"newer schema", strings.Replace(demo, `"schema": 2`, `"schema": 99`, 1), []string{"schema", "newer"}},
		{"date", strings.Replace(demo, `"2027-06-12"`, `"12/6/27"`, 1), []string{"date", "year-month-day"}},
	} {
		path := write(t, filepath.Join(t.TempDir(), "class"+class.Extension), c.text)
		out := filepath.Join(t.TempDir(), "out.xlsx")
		for _, args := range [][]string{{"numbers", path}, {"numbers", "-plain", path}, {"workbook", path, out}, {"pdf", path, strings.TrimSuffix(out, ".xlsx") + ".pdf"}} {
			got := call(args...)
			if got.code != failed || got.out != "" {
				t.Errorf("%s, %s: exit %d, printed %q; want exit 1 and nothing", c.name, args[0], got.code, got.out)
			}
			for _, want := range c.says {
				if !strings.Contains(got.errors, want) {
					t.Errorf("%s, %s: %q does not say %q", c.name, args[0], got.errors, want)
				}
			}
		}
		if _, err := os.Stat(out); err == nil {
			t.Errorf("%s: a workbook was written", c.name)
		}
	}
}

func TestCommandLine(t *testing.T) {
	dir := home(t)
	demo := write(t, filepath.Join(dir, "demo.kettleside"), string(content.DemoClass()))
	for _, c := range []struct {
		args []string
		code int
		says string // on standard error
	}{
		{nil, misspelt, "handouts workbook"},
		{[]string{"help"}, done, ""},
		{[]string{"print"}, misspelt, "there is no command “print”"},
		{[]string{"numbers"}, misspelt, "usage: handouts numbers"},
		{[]string{"numbers", "a", "b"}, misspelt, "usage: handouts numbers"},
		{[]string{"numbers", "-loud", demo}, misspelt, "usage: handouts numbers"},
		{[]string{"numbers", filepath.Join(dir, "none.kettleside")}, failed, "there is no file"},
		{[]string{"numbers", dir}, failed, ""},
		{[]string{"workbook", "-paper", "a5", demo, filepath.Join(dir, "x.xlsx")}, misspelt, "allowed is letter or a4"},
		{[]string{"workbook", "-sheets", "cover,menu", demo, filepath.Join(dir, "x.xlsx")}, misspelt, "“menu” is not known; allowed is cover, treatments, batch, own-numbers, shopping, station-cards"},
		{[]string{"workbook", "-labels", "big", demo, filepath.Join(dir, "x.xlsx")}, misspelt, "“big” is not known; allowed is l30a"},
		{[]string{"workbook", "-language", "fr", demo, filepath.Join(dir, "x.xlsx")}, misspelt, "language: “fr” is not known; allowed is en or es"},
		{[]string{"numbers", "-plain", "-language", "Español", demo}, misspelt, "“Español” is not known; allowed is en or es"},
		{[]string{"numbers", "-language", "es", demo}, misspelt, "language without -plain: “es” is not known; allowed is en"},
		{[]string{"workbook", demo, filepath.Join(dir, "x.ods")}, failed, "ends in .xlsx"},
		{[]string{"workbook", demo, filepath.Join(dir, "no", "x.xlsx")}, failed, "there is no folder"},
		{[]string{"pdf", demo}, misspelt, "usage: handouts pdf"},
		{[]string{"pdf", "-paper", "a5", demo, filepath.Join(dir, "x.pdf")}, misspelt, "allowed is letter or a4"},
		{[]string{"pdf", demo, filepath.Join(dir, "x.xlsx")}, failed, "the name of a PDF ends in .pdf"},
		{[]string{"pdf", demo, filepath.Join(dir, "no", "x.pdf")}, failed, "there is no folder"},
		{[]string{"table", filepath.Join(dir, "no", "x.csv")}, failed, "there is no folder"},
		{[]string{"demo", demo}, failed, "is there already"},
	} {
		got := call(c.args...)
		if got.code != c.code || !strings.Contains(got.errors, c.says) {
			t.Errorf("%v: exit %d, %q; want %d, %q", c.args, got.code, got.errors, c.code, c.says)
		}
	}
	if got := call("help"); !strings.Contains(got.out, "own-numbers") || !strings.Contains(got.out, "2 5/8 x 1 in") {
		t.Errorf("help says %q", got.out)
	}
	if _, err := os.Stat(filepath.Join(dir, "x.xlsx")); err == nil {
		t.Error("a refused command wrote its file")
	}
}

// The whole way: demo class, workbook, numbers, table.
func TestFromDemoToHandouts(t *testing.T) {
	dir := home(t)
	demo, book, sheet := filepath.Join(dir, "Kurs 1 äöü.kettleside"), filepath.Join(dir, "out.xlsx"), filepath.Join(dir, "table.csv")
	spanish := filepath.Join(dir, "hojas.xlsx")
	pages, spanishPages := filepath.Join(dir, "out.pdf"), filepath.Join(dir, "hojas.PDF")
	for _, args := range [][]string{
		{"demo", demo}, {"demo", "-force", demo},
		{"workbook", demo, book}, {"workbook", "-paper", "A4", "-sheets", "cover, batch", "-all", "-labels", "a21a", demo, book},
		{"workbook", "-language", "ES", demo, spanish},
		{"pdf", demo, pages}, {"pdf", "-language", "es", "-paper", "A4", "-sheets", "cover, batch", "-labels", "a21a", demo, spanishPages},
		{"table", sheet}, {"table", "-shipped", sheet},
	} {
		if got := call(args...); got.code != done || got.out != "" || got.errors != "" {
			t.Fatalf("%v: exit %d, printed %q, %q", args, got.code, got.out, got.errors)
		}
	}
	if data, err := os.ReadFile(demo); err != nil || !bytes.Equal(data, content.DemoClass()) {
		t.Errorf("the demo class is not the demo class: %v", err)
	}
	if data, err := os.ReadFile(book); err != nil || !bytes.HasPrefix(data, []byte("PK")) {
		t.Errorf("no workbook: %v", err)
	}
	if data, err := os.ReadFile(spanish); err != nil || !bytes.HasPrefix(data, []byte("PK")) {
		t.Errorf("no workbook in Spanish: %v", err)
	}
	for path, language := range map[string]string{pages: "/Lang (en-US)", spanishPages: "/Lang (es-US)"} {
		if data, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) || !bytes.Contains(data, []byte(language)) {
			t.Errorf("%s: no PDF with %s: %v", filepath.Base(path), language, err)
		}
	}
	if data, err := os.ReadFile(sheet); err != nil || !bytes.Contains(data, []byte("snap-beans-cut-water")) {
		t.Errorf("no table: %v", err)
	}
	numbers := call("numbers", demo)
	var doc struct {
		Batches []struct{ Figures []struct{ ID, Text string } }
	}
	if err := json.Unmarshal([]byte(numbers.out), &doc); err != nil || len(doc.Batches) != 4 || doc.Batches[0].Figures[1].Text != "3 gal" {
		t.Errorf("numbers: %v, %+v", err, doc)
	}
	plain := call("numbers", "-plain", demo)
	if plain.code != done || !strings.Contains(plain.out, "Water for the batch: 3 gal (12 qt · 11.4 L)\n    3 lb × 1 gal/lb = 3 gal. Rests on: rule [") {
		t.Errorf("plain: exit %d, %q", plain.code, plain.out)
	}
	inSpanish := call("numbers", "-plain", "-language", "es", demo)
	if inSpanish.code != done || !strings.Contains(inSpanish.out, "sábado, 12 de junio de 2027") || !strings.Contains(inSpanish.out, ": 3 gal (12 qt · 11.4 L)\n    3 lb × 1 gal/lb = 3 gal. Se apoya en: regla [") {
		t.Errorf("plain in Spanish: exit %d, %q", inSpanish.code, inSpanish.out)
	}
}

// The user's own changes of the table count unless -shipped is given; a change
// that cannot be used is told; a damaged file of changes stops.
func TestChangesOfTheTable(t *testing.T) {
	dir := home(t)
	demo := write(t, filepath.Join(dir, "demo.kettleside"), string(content.DemoClass()))
	config, err := os.UserConfigDir()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(config, "kettleside"), 0o755); err != nil {
		t.Fatal(err)
	}
	edits := filepath.Join(config, "kettleside", "table-edits.json")
	write(t, edits, `[
 {"treatment":"snap-beans-cut-water","field":"minutes","old":"3","new":"4","why":"our bulletin","who":"A. Educator","when":"2027-01-02T00:00:00Z"},
 {"treatment":"no-such","field":"minutes","old":"3","new":"4","why":"x","who":"y","when":"2027-01-02T00:00:00Z"}]`)
	got := call("numbers", "-plain", demo)
	if got.code != done || !strings.Contains(got.out, "Blanch: 4 min") || !strings.Contains(got.out, "shipped value 3") || !strings.Contains(got.errors, "no-such") {
		t.Errorf("with changes: exit %d, %q\n%s", got.code, got.errors, got.out)
	}
	if got := call("numbers", "-plain", "-shipped", demo); got.code != done || !strings.Contains(got.out, "Blanch: 3 min") || got.errors != "" {
		t.Errorf("-shipped: exit %d, %q", got.code, got.errors)
	}
	write(t, edits, `[{"treatment":`)
	for _, args := range [][]string{{"numbers", demo}, {"table", filepath.Join(dir, "t.csv")}} {
		if got := call(args...); got.code != failed || !strings.Contains(got.errors, "table-edits.json") || !strings.Contains(got.errors, "-shipped") {
			t.Errorf("%v with a damaged file of changes: exit %d, %q", args, got.code, got.errors)
		}
	}
}

// The program has no window in it and needs no cgo.
func TestNoWindowInside(t *testing.T) {
	list := exec.Command("go", "list", "-deps", ".")
	list.Env = append(os.Environ(), "CGO_ENABLED=0")
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	deps := strings.Fields(string(out))
	if len(deps) < 50 {
		t.Fatalf("go list names only %d packages", len(deps))
	}
	for _, dep := range deps {
		if strings.HasPrefix(dep, "fyne.io/") || strings.HasPrefix(dep, "example.org/kettleside/app/desk") || dep == "runtime/cgo" {
			t.Errorf("handouts contains %s", dep)
		}
	}
	program := filepath.Join(t.TempDir(), "handouts.exe")
	build := exec.Command("go", "build", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	out, err = exec.Command(program, "help").Output()
	if err != nil || !strings.Contains(string(out), "handouts workbook") {
		t.Errorf("the built program: %v, %q", err, out)
	}
}
