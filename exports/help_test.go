package exports

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

var update = flag.Bool("update", false, "write the golden files anew")

// demoClass is the demo class as it ships.
func demoClass(t testing.TB) class.Class {
	t.Helper()
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	noErr(t, err)
	return c
}

func demoWorked(t testing.TB) class.Worked {
	t.Helper()
	return class.Work(demoClass(t), reference.Shipped())
}

// languages are those that everything is tested in.
var languages = words.Languages()

// workedIn works a class through in a language.
func workedIn(l words.Language, c class.Class) class.Worked {
	v := words.In(l)
	return class.WorkWith(class.With{Voice: v}, c, reference.Shipped().In(v))
}

// classOf is a class with one batch of each treatment, and with everything that
// the heat model needs.
func classOf(t testing.TB, treatments ...string) class.Class {
	t.Helper()
	c := demoClass(t)
	c.Batches = nil
	for _, id := range treatments {
		x, ok := reference.Shipped().Treatment(id)
		if !ok {
			t.Fatalf("the table has no treatment %s", id)
		}
		kettle := "Station kettle"
		if x.Method == reference.SteamBlanch {
			kettle = "Steamer"
		}
		c.Batches = append(c.Batches, class.Batch{
			Name: id, Treatment: id, Prepared: measure.New(2, measure.Pound), Stations: 1, Kettle: kettle, Burner: "Plug-in burner",
			Pack: batch.Packing{Container: batch.Box, Size: batch.Pint, Mouth: reference.WideMouth},
		})
	}
	return c
}

// editedWorked is the demo class with a table that an educator changed.
func editedWorked(t testing.TB) class.Worked {
	t.Helper()
	return editedIn(t, words.English)
}

func editedIn(t testing.TB, l words.Language) class.Worked {
	t.Helper()
	v := words.In(l)
	shipped := reference.Shipped()
	when := time.Date(2027, 3, 4, 9, 0, 0, 0, time.UTC)
	edited, err := shipped.With([]reference.Edit{
		shipped.NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4", "our own bulletin", "A. Educator", when),
	})
	noErr(t, err)
	return class.WorkWith(class.With{Voice: v}, demoClass(t), edited.In(v))
}

func noErr(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// open reads a workbook as it stands in the file.
func open(t testing.TB, data []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	noErr(t, err)
	t.Cleanup(func() { f.Close() })
	return f
}

// golden compares with a file under testdata/exports, or writes it.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("..", "testdata", "exports", name)
	if *update {
		noErr(t, os.MkdirAll(filepath.Dir(path), 0o755))
		noErr(t, os.WriteFile(path, got, 0o644))
		return
	}
	want, err := os.ReadFile(path)
	noErr(t, err)
	if bytes.Equal(got, want) {
		return
	}
	gotLines, wantLines := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	for i := range max(len(gotLines), len(wantLines)) {
		var a, b []byte
		if i < len(gotLines) {
			a = gotLines[i]
		}
		if i < len(wantLines) {
			b = wantLines[i]
		}
		if !bytes.Equal(a, b) {
			t.Fatalf("%s differs in line %d (-update writes it anew)\n got: %s\nwant: %s", name, i+1, a, b)
		}
	}
}

// need skips a test where a tool of the system is missing; where everything
// must be verified it fails instead.
func need(t *testing.T, tools ...string) {
	t.Helper()
	for _, tool := range tools {
		if _, err := exec.LookPath(tool); err != nil {
			if os.Getenv("KETTLESIDE_VERIFY") == "1" {
				t.Fatalf("%s is missing: install it, or run without KETTLESIDE_VERIFY=1", tool)
			}
			t.Skipf("skipped: %s is not installed", tool)
		}
	}
}

// alwaysRecalculate is the setting that makes LibreOffice work out every
// formula of a file that it opens; left alone it trusts the last values of a
// file that names the application that excelize names.
const alwaysRecalculate = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`

// office converts files with LibreOffice, in a profile of its own, and gives
// back the converted ones by name. All files of a call share one start.
func office(t *testing.T, to string, files map[string][]byte) map[string][]byte {
	t.Helper()
	need(t, "soffice")
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in"), filepath.Join(dir, "out")
	noErr(t, os.Mkdir(in, 0o755))
	noErr(t, os.MkdirAll(filepath.Join(dir, "profile", "user"), 0o755))
	noErr(t, os.WriteFile(filepath.Join(dir, "profile", "user", "registrymodifications.xcu"), []byte(alwaysRecalculate), 0o644))
	args := []string{"-env:UserInstallation=file://" + filepath.ToSlash(filepath.Join(dir, "profile")), "--headless", "--convert-to", to, "--outdir", out}
	for name, data := range files {
		path := filepath.Join(in, name+".xlsx")
		noErr(t, os.WriteFile(path, data, 0o644))
		args = append(args, path)
	}
	cmd := exec.Command("soffice", args...)
	cmd.Env = append(os.Environ(), "HOME="+dir) // nothing of this user's settings
	log, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("soffice: %v\n%s", err, log)
	}
	ending, _, _ := bytes.Cut([]byte(to), []byte(":"))
	converted := map[string][]byte{}
	for name := range files {
		data, err := os.ReadFile(filepath.Join(out, name+"."+string(ending)))
		if err != nil {
			t.Fatalf("soffice made no %s of %s: %v\n%s", to, name, err, log)
		}
		converted[name] = data
	}
	return converted
}

// poppler runs a PDF tool on a PDF and gives back what it prints.
func poppler(t *testing.T, pdf []byte, tool string, args ...string) string {
	t.Helper()
	need(t, tool)
	path := filepath.Join(t.TempDir(), "in.pdf")
	noErr(t, os.WriteFile(path, pdf, 0o644))
	for i, a := range args {
		if a == "IN" {
			args[i] = path
		}
	}
	out, err := exec.Command(tool, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", tool, err)
	}
	return string(out)
}

func mustJSON(t *testing.T, data []byte, to any) {
	t.Helper()
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	noErr(t, dec.Decode(to))
}
