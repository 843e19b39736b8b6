package main

import (
	"io"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

func TestReadDisplay(t *testing.T) {
	tests := []struct {
		name, text string
		want       int
		wantErr    string
	}{
		{"ready", "7\n", 7, ""},
		{"ended", "", 0, "ended before it was ready"},
		{"ended half way", "7", 0, "ended before it was ready"},
		{"no number", "seven\n", 0, `answered "seven"`},
		{"below zero", "-1\n", 0, `answered "-1"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := readDisplay(strings.NewReader(tt.text), time.Minute)
			if got != tt.want || (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Errorf("readDisplay = %d, %v; want %d, %q", got, err, tt.want, tt.wantErr)
			}
		})
	}
	t.Run("silent", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			read, write := io.Pipe()
			_, err := readDisplay(read, time.Minute)
			if err == nil || !strings.Contains(err.Error(), "not ready after 1m") {
				t.Errorf("error %v", err)
			}
			write.Close()
		})
	})
}

// TestScreen starts the real server, where it is installed, and ends it.
func TestScreen(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the display in memory is used on Linux alone")
	}
	if _, err := exec.LookPath("Xvfb"); err != nil {
		t.Skip("Xvfb is not installed; the step window installs it")
	}
	display, end, err := startScreen(t.Context(), t.Output())
	if err != nil {
		t.Fatal(err)
	}
	// A server on an abstract address alone is one without the usual folder.
	socket := filepath.Join("/tmp/.X11-unix", "X"+strings.TrimPrefix(display, ":"))
	alive := func() bool { return setup.Reach(socket) || setup.Reach("@"+socket) }
	if !alive() {
		t.Errorf("display %s does not answer", display)
	}
	end()
	if alive() {
		t.Errorf("display %s still answers after its end", display)
	}
}

func TestPulse(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var out strings.Builder
		p := startPulse(&out, "vet", 30*time.Second)
		write := func(text string) {
			if _, err := io.WriteString(p, text); err != nil {
				t.Error(err)
			}
		}
		time.Sleep(20*time.Second + time.Millisecond)
		write("one\n")
		time.Sleep(20 * time.Second)
		write("two, not ended")
		time.Sleep(65 * time.Second)
		p.stop()
		want := "one\ntwo, not ended\n   ... vet is still at work, 1m11s\n   ... vet is still at work, 1m41s\n"
		if out.String() != want {
			t.Errorf("printed\n%s\nwant\n%s", &out, want)
		}
	})
}
