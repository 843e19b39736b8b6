package main_test

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content"
)

// The window is opened in this size, so that what is clicked stands where it is
// expected.
const settings = `{"area": "class", "width": 1024, "height": 700}`

// place is a point of the window.
type place struct{ x, y int }

var (
	corner        = place{1000, 690}
	titleField    = place{500, 187}
	placeLine     = place{216, 168} // in the list of pages
	altitudeField = place{430, 251}
	exportButton  = place{207, 671}
)

// TestWindow starts the program in a real window, works in it as a person
// would, and looks at what is on the disk afterwards. The program is built
// without the tag migrated_fynedo, so that the toolkit reports every call that
// comes from a wrong goroutine.
func TestWindow(t *testing.T) {
	needs(t)
	dir := t.TempDir()
	file := filepath.Join(dir, "demo.kettleside")
	write(t, file, content.DemoClass())
	write(t, filepath.Join(dir, "config", "kettleside", "settings.json"), []byte(settings))
	demo, err := class.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	p := start(t, build(t), dir, file)

	p.point(corner)
	var last []byte
	for _, area := range []struct{ key, name string }{{"ctrl+1", "crops"}, {"ctrl+3", "batch"}, {"ctrl+4", "handouts"}, {"ctrl+2", "class"}} {
		p.xdo("key", area.key)
		picture := p.settled(area.name)
		if bytes.Equal(picture, last) {
			t.Errorf("%s shows nothing new", area.key)
		}
		last = picture
	}

	const title, altitude = "Typed into the window", "6000 ft"
	p.enter(titleField, title)
	p.point(placeLine)
	p.xdo("click", "1")
	p.enter(altitudeField, "6,000")
	saves := func(what, title, altitude string) {
		p.xdo("key", "ctrl+s")
		p.waitFor(what, func() bool {
			c, err := class.Open(file)
			return err == nil && c.Title == title && c.Place.Altitude.String() == altitude
		})
	}
	saves("the class to be saved", title, altitude)
	p.keep("saved")
	p.xdo("key", "ctrl+z")
	saves("the altitude to be taken back", title, demo.Place.Altitude.String())
	p.xdo("key", "ctrl+z")
	saves("the title to be taken back", demo.Title, demo.Place.Altitude.String())
	p.xdo("key", "ctrl+y")
	saves("the title to be made again", title, demo.Place.Altitude.String())

	// what is typed and not handed over is taken back first, then the title
	p.point(altitudeField)
	p.xdo("click", "1")
	time.Sleep(pause)
	p.xdo("key", "End")
	p.xdo("type", "--delay", "30", "99")
	for range 4 {
		p.xdo("key", "ctrl+z")
	}
	saves("typing and title to be taken back", demo.Title, demo.Place.Altitude.String())

	p.xdo("key", "ctrl+4")
	p.settled("export")
	p.point(exportButton)
	p.xdo("click", "1")
	time.Sleep(pause)
	p.keep("name")
	p.xdo("key", "Return")
	workbook := filepath.Join(dir, "demo.xlsx")
	p.waitFor("the workbook", func() bool {
		data, err := os.ReadFile(workbook)
		return err == nil && bytes.HasPrefix(data, []byte("PK"))
	})
	p.point(corner)
	p.settled("exported")

	p.xdo("key", "ctrl+q")
	p.quits()
	for _, bad := range []string{"Error in Fyne call thread", "panic", "Fyne error"} {
		if strings.Contains(p.said(), bad) {
			t.Errorf("the program said:\n%s", p.said())
			break
		}
	}
}

// needs skips the test where there is no display; under KETTLESIDE_VERIFY=1
// that is a failure.
func needs(t *testing.T) {
	t.Helper()
	missing := ""
	for _, tool := range []string{"xdotool", "import"} {
		if _, err := exec.LookPath(tool); err != nil {
			missing = "the program " + tool
		}
	}
	if os.Getenv("DISPLAY") == "" {
		missing = "a display"
	}
	switch {
	case missing == "":
	case os.Getenv("KETTLESIDE_VERIFY") == "1":
		t.Fatalf("%s is missing", missing)
	default:
		t.Skipf("%s is missing", missing)
	}
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

func build(t *testing.T) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "kettleside")
	if out, err := exec.CommandContext(t.Context(), "go", "build", "-buildvcs=false", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("the program does not build: %v\n%s", err, out)
	}
	return program
}

// program is the program at work.
type program struct {
	t      *testing.T
	cmd    *exec.Cmd
	window string // number of its window
	done   chan error
	mu     sync.Mutex
	stderr bytes.Buffer
}

// Write takes what the program says.
func (p *program) Write(b []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.stderr.Write(b)
}

func (p *program) said() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.stderr.String()
}

func start(t *testing.T, path, dir, file string) *program {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	p := &program{t: t, done: make(chan error, 1)}
	p.cmd = exec.CommandContext(ctx, path, file)
	p.cmd.Dir = dir
	p.cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_CONFIG_HOME="+filepath.Join(dir, "config"),
		"LANG=en_US.UTF-8", "LC_ALL=en_US.UTF-8", "FYNE_SCALE=1", "FYNE_THEME=", "FYNE_FONT=")
	p.cmd.Stderr = p
	if err := p.cmd.Start(); err != nil {
		cancel()
		t.Fatal(err)
	}
	go func() { p.done <- p.cmd.Wait() }()
	t.Cleanup(cancel)
	p.waitFor("the window", func() bool { return strings.Contains(p.said(), "window ready") })
	p.window = strings.TrimSpace(p.xdo("search", "--sync", "--onlyvisible", "--pid", fmt.Sprint(p.cmd.Process.Pid), "--limit", "1"))
	p.xdo("windowfocus", p.window)
	return p
}

// patience is how long the program may take for anything. A machine without a
// graphics card that is busy with other tests is slow.
const patience = 60 * time.Second

func (p *program) waitFor(what string, there func() bool) {
	p.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		if there() {
			return
		}
		select {
		case err := <-p.done:
			p.t.Fatalf("waiting for %s, the program ended: %v\n%s", what, err, p.said())
		default:
		}
	}
	p.t.Fatalf("%s did not come\n%s", what, p.said())
}

func (p *program) xdo(args ...string) string {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.t.Context(), patience)
	defer cancel()
	out, err := exec.CommandContext(ctx, "xdotool", args...).CombinedOutput()
	if err != nil {
		p.t.Fatalf("xdotool %s: %v\n%s\n%s", strings.Join(args, " "), err, out, p.said())
	}
	return string(out)
}

// pause lets the window take the focus.
const pause = 500 * time.Millisecond

// keep puts a picture of the window beside the results of the test.
func (p *program) keep(name string) {
	p.t.Helper()
	time.Sleep(pause)
	write(p.t, filepath.Join(p.t.ArtifactDir(), name+".png"), p.picture())
}

func (p *program) point(at place) {
	p.t.Helper()
	p.xdo("mousemove", "--sync", "--window", p.window, fmt.Sprint(at.x), fmt.Sprint(at.y))
}

// enter types into the field at a place, and leaves it with Enter.
func (p *program) enter(at place, text string) {
	p.t.Helper()
	time.Sleep(pause)
	p.point(at)
	p.xdo("click", "1")
	time.Sleep(pause)
	p.xdo("key", "ctrl+a")
	p.xdo("type", "--delay", "30", text)
	p.xdo("key", "Return")
}

// settled waits until the window stands still, which it never does while the
// mark for typing blinks in an entry. It keeps and returns the picture.
func (p *program) settled(name string) []byte {
	p.t.Helper()
	var last []byte
	same := 0
	p.waitFor("the window to stand still", func() bool {
		time.Sleep(150 * time.Millisecond)
		picture := p.picture()
		if bytes.Equal(picture, last) {
			same++
		} else {
			last, same = picture, 0
		}
		return same >= 2
	})
	write(p.t, filepath.Join(p.t.ArtifactDir(), name+".png"), last)
	return last
}

func (p *program) picture() []byte {
	p.t.Helper()
	// without its dates, equal pictures are equal files
	out, err := exec.CommandContext(p.t.Context(), "import", "-window", p.window, "-define", "png:exclude-chunks=date,time", "png:-").Output()
	if err != nil {
		p.t.Fatalf("no picture of the window: %v", err)
	}
	img, err := png.Decode(bytes.NewReader(out))
	if err != nil || img.Bounds().Dx() < 1000 {
		p.t.Fatalf("the picture of the window: %v", err)
	}
	return out
}

func (p *program) quits() {
	p.t.Helper()
	select {
	case err := <-p.done:
		if err != nil {
			p.t.Errorf("the program ended with %v\n%s", err, p.said())
		}
	case <-time.After(patience):
		p.t.Fatalf("the program does not quit\n%s", p.said())
	}
}
