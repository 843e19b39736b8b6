package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"strings"
	"testing"
)

const module = "example.org/kettleside"

// room is the part of `go list -json` that the arrows need.
type room struct {
	ImportPath   string
	Imports      []string
	Deps         []string
	CgoFiles     []string
	Standard     bool
	TestImports  []string
	XTestImports []string
}

// list asks go list; cgo is off so that no C compiler is needed.
func list(t *testing.T, args ...string) []room {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-e", "-json=ImportPath,Imports,Deps,CgoFiles,Standard,TestImports,XTestImports"}, args...)...)
	cmd.Env = append(cmd.Environ(), "CGO_ENABLED=0")
	cmd.Dir = "../.."
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("go list %v: %v\n%s", args, err, errs.String())
	}
	var rooms []room
	for dec := json.NewDecoder(&out); ; {
		var r room
		if err := dec.Decode(&r); errors.Is(err, io.EOF) {
			return rooms
		} else if err != nil {
			t.Fatal(err)
		}
		rooms = append(rooms, r)
	}
}

// within says whether a path is the package or lies below it.
func within(path, pkg string) bool { return path == pkg || strings.HasPrefix(path, pkg+"/") }

// mayImport says which rooms of our own each room may import; the design of
// the house. Rooms below app/desk may also import each other's widgets.
var mayImport = map[string][]string{
	"app/disk":          {"content/words"},
	"app/measure":       {"content/words"},
	"app/heat":          {"app/measure"},
	"app/runsheet":      {"app/measure"},
	"reference":         {"app/disk", "app/measure", "content/words", "reference"},
	"app/estimate":      {"app/heat"},
	"app/batch":         {"app/estimate", "app/heat", "app/measure", "content/words", "reference"},
	"app/class":         {"app/disk", "app/batch", "app/estimate", "app/runsheet", "app/measure", "content/words", "reference"},
	"content":           {"content"},
	"exports":           {"app/disk", "app/class", "app/batch", "app/measure", "content", "reference", "exports"},
	"app/desk":          {"app/disk", "app/class", "app/batch", "app/estimate", "app/measure", "content", "reference", "app/desk"},
	"cmd/handouts":      {"exports", "app/disk", "app/class", "reference", "content"},
	"cmd/start":         {"cmd/internal"},
	"cmd/verify":        {"cmd/internal"},
	"cmd/internal":      {"cmd/internal"},
	"cmd/kettleside":    {"app"},
	"app":               {"app/disk", "app/desk", "app/class", "app/batch", "app/measure", "content", "reference", "exports"},
	"app/desk/handouts": {"app/disk", "exports", "app/class", "app/batch", "app/measure", "content", "reference", "app/desk"},
}

// fencedLibraries names the only rooms that may import a library directly.
var fencedLibraries = map[string][]string{
	"fyne.io/fyne/v2":             {"app", "app/desk", "cmd/kettleside"},
	"github.com/xuri/excelize/v2": {"exports", "reference"},
	"github.com/go-gota/gota":     {"reference"},
	"codeberg.org/go-pdf/fpdf":    {"exports"},
}

// roomOf finds the longest room that holds a package, or "".
func roomOf(pkg string) string {
	best := ""
	for r := range mayImport {
		if within(pkg, r) && len(r) > len(best) {
			best = r
		}
	}
	return best
}

func TestImportArrows(t *testing.T) {
	rooms := list(t, "./...")
	if len(rooms) < 10 {
		t.Fatalf("go list found only %d packages", len(rooms))
	}
	for _, r := range rooms {
		pkg := strings.TrimPrefix(r.ImportPath, module+"/")
		name := roomOf(pkg)
		if name == "" {
			t.Errorf("%s lies in no room of the design", pkg)
			continue
		}
		for _, imported := range r.Imports {
			if inner, ours := strings.CutPrefix(imported, module+"/"); ours {
				if !allowed(inner, mayImport[name]) {
					t.Errorf("%s imports %s, which the design does not allow", pkg, inner)
				}
				continue
			}
			for library, fence := range fencedLibraries {
				if within(imported, library) && !allowed(pkg, fence) {
					t.Errorf("%s imports %s; only %v may", pkg, imported, fence)
				}
			}
			if imported == "fyne.io/fyne/v2/app" && pkg != "cmd/kettleside" {
				t.Errorf("%s imports %s; only cmd/kettleside may, so that all else builds without cgo", pkg, imported)
			}
		}
	}
}

// allowed says whether a package lies in one of the rooms. "app" alone means
// the package that puts the program together, not the rooms below it.
func allowed(pkg string, rooms []string) bool {
	for _, r := range rooms {
		if r == "app" && pkg != "app" {
			continue
		}
		if within(pkg, r) {
			return true
		}
	}
	return false
}

// The window's toolkit must not reach the rooms that work without a window,
// not even through another package, and the no-window program must not need C.
func TestNoWindowRoomsStayFreeOfTheToolkit(t *testing.T) {
	for _, r := range list(t, "./cmd/handouts", "./exports/...", "./reference/...", "./content/...", "./app/class", "./app/batch", "./app/measure", "./app/desk/session") {
		for _, dep := range r.Deps {
			if within(dep, "fyne.io/fyne/v2") {
				t.Errorf("%s depends on %s", r.ImportPath, dep)
			}
		}
	}
	seen := false
	for _, r := range list(t, "-deps", "./cmd/handouts") {
		seen = true
		if len(r.CgoFiles) > 0 {
			t.Errorf("cmd/handouts depends on %s, which has C in it", r.ImportPath)
		}
	}
	if !seen {
		t.Error("go list -deps ./cmd/handouts listed nothing")
	}
	build := exec.Command("go", "build", "-o", t.TempDir(), "./cmd/handouts")
	build.Env, build.Dir = append(build.Environ(), "CGO_ENABLED=0"), "../.."
	if out, err := build.CombinedOutput(); err != nil {
		t.Errorf("cmd/handouts without cgo: %v\n%s", err, out)
	}
}
