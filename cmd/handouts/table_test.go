package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/kettleside/reference"
)

// A table goes out, comes back with changes, is compared, and some are taken.
func TestTableComesBack(t *testing.T) {
	dir := home(t)
	for _, name := range []string{"out.csv", "out.xlsx", "salida.xlsx"} {
		path := filepath.Join(dir, name)
		language := "en"
		if name == "salida.xlsx" {
			language = "es"
		}
		if got := call("table", "-language", language, path); got.code != done || got.errors != "" {
			t.Fatalf("%s: %+v", name, got)
		}
		if got := call("table", "-compare", path); got.code != done || got.out != "No difference.\n" {
			t.Errorf("%s: %+v", name, got)
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, "out.csv"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, id := range []string{"kale-leaves-water", "collards-leaves-water", "snap-beans-cut-water"} {
		at := strings.Index(text, "\n"+id+",") + 1
		line, _, _ := strings.Cut(text[at:], "\n")
		typed := ",9,,"
		if id == "snap-beans-cut-water" {
			typed = ",1,,"
		}
		x, _ := reference.Shipped().Treatment(id)
		was := "," + reference.FieldText(x, reference.FieldMinutes)
		text = strings.Replace(text, line, strings.Replace(line, was+was+",", typed, 1), 1)
	}
	back := write(t, filepath.Join(dir, "back.csv"), text)
	got := call("table", "-compare", back)
	for _, want := range []string{"back.csv, row ", "kale-leaves-water.minutes: here “2”, there “9”", "can be taken as an edit", "there “1”", "published times are never shortened", "Differences: 3. Can be taken as edits: 2."} {
		if !strings.Contains(got.out, want) {
			t.Errorf("%q is not in %s", want, got.out)
		}
	}
	if got.code != failed || !strings.Contains(got.errors, "cannot be taken: 1") {
		t.Errorf("%+v", got)
	}
	if es := call("table", "-language", "es", "-compare", back); !strings.Contains(es.out, "Diferencias: 3") || strings.Contains(es.out, "can be taken") {
		t.Errorf("%+v", es)
	}

	edits := filepath.Join(dir, "edits.json")
	got = call("table", "-take", back, "-who", "B. Colleague", "-why", "their bulletin", "-only", "kale-leaves-water.minutes", edits)
	if got.code != done || !strings.Contains(got.out, "Taken: kale-leaves-water.minutes: shipped “2”, now “9”") || !strings.Contains(got.out, "Edits taken: 1. Not used: 2.") {
		t.Errorf("%+v", got)
	}
	got = call("table", "-take", back, "-who", "B. Colleague", "-why", "their bulletin", edits)
	list, err := reference.ReadEdits(edits)
	if got.code != done || err != nil || len(list) != 2 || list[0].Who != "B. Colleague" || list[0].New != "9" {
		t.Errorf("%+v; %+v, %v", got, list, err)
	}
	if table, err := reference.Shipped().With(list); err != nil || table == nil {
		t.Error(err)
	}

	broken := write(t, filepath.Join(dir, "broken.csv"), strings.Replace(text, "\nkale-leaves-water,", "\nkail,", 1))
	none := filepath.Join(dir, "none.json")
	for name, c := range map[string]struct {
		args []string
		code int
		says string
	}{
		"a fault":      {[]string{"-take", broken, "-who", "w", "-why", "y", none}, failed, `(id): found "kail"`},
		"no name":      {[]string{"-take", back, "-why", "y", none}, failed, "needs a name and a reason"},
		"refused":      {[]string{"-take", back, "-who", "w", "-why", "y", "-only", "snap-beans-cut-water.minutes", none}, failed, "never shortened"},
		"unknown":      {[]string{"-take", back, "-who", "w", "-why", "y", "-only", "kale-leaves-water.chill_factor", none}, failed, `no difference "kale-leaves-water.chill factor"`},
		"no edits":     {[]string{"-take", back, "-who", "w", "-why", "y"}, misspelt, "1 needed"},
		"too much":     {[]string{"-compare", back, none}, misspelt, "0 needed"},
		"no file":      {[]string{"-compare", filepath.Join(dir, "no.csv")}, failed, "no.csv"},
		"another kind": {[]string{filepath.Join(dir, "t.ods")}, failed, "ends in .csv or .xlsx"},
		"language":     {[]string{"-language", "fr", none}, misspelt, "allowed is en or es"},
	} {
		if got := call(append([]string{"table"}, c.args...)...); got.code != c.code || !strings.Contains(got.errors, c.says) {
			t.Errorf("%s: %+v; want %d, %s", name, got, c.code, c.says)
		}
	}
	if _, err := os.Stat(none); err == nil {
		t.Error("edits were written all the same")
	}
}
