package main_test

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/kettleside/app"
	"example.org/kettleside/app/class"
)

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
	kept   int // pictures
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
	p.waitFor("the window", func() bool { return strings.Contains(p.said(), app.WindowReady) })
	p.window = p.newWindow()
	p.focus(p.window)
	return p
}

// newWindow waits for a window of the program beside those that are known, and
// returns its number.
func (p *program) newWindow(known ...string) string {
	p.t.Helper()
	number := ""
	p.waitFor("a window", func() bool {
		out, err := exec.CommandContext(p.t.Context(), "xdotool", "search", "--onlyvisible", "--pid", fmt.Sprint(p.cmd.Process.Pid)).Output()
		for _, one := range strings.Fields(string(out)) {
			if err == nil && !slices.Contains(known, one) {
				number = one
			}
		}
		return number != ""
	})
	return number
}

// focus brings a window to the front and gives it the keyboard. There is no
// window manager that would.
func (p *program) focus(window string) {
	p.t.Helper()
	p.xdo("windowraise", window)
	p.xdo("windowfocus", window)
	p.waitFor("the keyboard to go there", func() bool { return strings.TrimSpace(p.xdo("getwindowfocus")) == window })
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
	p.keepPicture(name, p.picture(p.window))
}

func (p *program) keepPicture(name string, picture []byte) {
	p.t.Helper()
	p.kept++
	write(p.t, filepath.Join(p.t.ArtifactDir(), fmt.Sprintf("%02d-%s.png", p.kept, name)), picture)
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

// settled waits until a window stands still, which it never does while the mark
// for typing blinks in an entry. It keeps and returns the picture.
func (p *program) settled(window, name string) []byte {
	p.t.Helper()
	var last []byte
	same := 0
	p.waitFor("the window to stand still", func() bool {
		time.Sleep(150 * time.Millisecond)
		picture := p.picture(window)
		if bytes.Equal(picture, last) {
			same++
		} else {
			last, same = picture, 0
		}
		return same >= 2
	})
	p.keepPicture(name, last)
	return last
}

// otherThan waits until a window stands still and shows something else than
// before.
func (p *program) otherThan(before []byte, window, name string) []byte {
	p.t.Helper()
	p.waitFor("something new in the window", func() bool { return !bytes.Equal(p.picture(window), before) })
	return p.settled(window, name)
}

func (p *program) picture(window string, crop ...string) []byte {
	p.t.Helper()
	// without its dates, equal pictures are equal files
	args := append([]string{"-window", window, "-define", "png:exclude-chunks=date,time"}, crop...)
	out, err := exec.CommandContext(p.t.Context(), "import", append(args, "png:-")...).Output()
	if err != nil {
		p.t.Fatalf("no picture of the window: %v", err)
	}
	if _, err := png.Decode(bytes.NewReader(out)); err != nil {
		p.t.Fatalf("the picture of the window: %v", err)
	}
	return out
}

// saves saves the class by its key and waits until the file is as it should be.
func (p *program) saves(file, what string, right func(class.Class) bool) {
	p.t.Helper()
	p.xdo("key", "ctrl+s")
	p.waitFor(what+" in the file", func() bool {
		c, err := class.Open(file)
		return err == nil && right(c)
	})
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

// quitting is said now and then at the end, where the toolkit watches its own
// settings while it writes them. We keep none there.
const quitting = "Fyne error:  Preferences load error:"

// saidNothingBad fails the test where the program reported a mistake in itself,
// such as a call from the wrong goroutine.
func (p *program) saidNothingBad() {
	p.t.Helper()
	said := strings.ReplaceAll(p.said(), quitting, "")
	for _, bad := range []string{"Fyne call thread", "panic", "Fyne error"} {
		if strings.Contains(said, bad) {
			p.t.Errorf("the program said:\n%s", p.said())
			return
		}
	}
}
