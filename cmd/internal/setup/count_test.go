package setup

import (
	"slices"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

func TestReadPackages(t *testing.T) {
	got := ReadPackages("unsafe false\nerrors true\n\nodd line here\nexample.org/a true\n")
	if got.Total != 3 || got.Todo != 2 {
		t.Errorf("ReadPackages = %+v, want 3 in all and 2 to do", got)
	}
}

func TestCountTakesOnlyProgress(t *testing.T) {
	tests := []struct {
		line string
		want bool
	}{
		{"go: downloading example.org/a v1.2.3", true},
		{"runtime/cgo", true},
		{"example.org/gl/v2.1/gl", true},
		{"example.org/x-y_z/internal.v3", true},
		{"", false},
		{"# example.org/a", false},
		{"a.go:3:1: undefined: b", false},
		{"go: example.org/a@v1.2.3: not found", false},
		{"\tand more", false},
		{"      |     ^~~~~", false},
		{"cgo: C compiler \"gcc\" not found", false},
	}
	for _, tt := range tests {
		var c Count
		if got := c.Take(tt.line); got != tt.want {
			t.Errorf("Take(%q) = %t, want %t", tt.line, got, tt.want)
		}
	}
}

func TestCountLine(t *testing.T) {
	tests := []struct {
		name  string
		count Count
		lines []string
		want  string
	}{
		{"nothing known", Count{}, nil, "1m05s  reading what the program is made of"},
		{"fetching", Count{}, []string{"go: downloading example.org/a v1"}, "1m05s  fetching example.org/a v1"},
		{"listed", Count{Total: 300, Todo: 12}, nil, "1m05s  12 of 300 packages to compile"},
		{"compiling", Count{Total: 300, Todo: 12}, []string{"errors", "io"}, "1m05s  package 2 of 12, io"},
		{"fetched and compiling", Count{Total: 300, Todo: 12, Fetching: "x"}, []string{"io"}, "1m05s  package 1 of 12, io"},
		{"more than foreseen", Count{Total: 300, Todo: 1}, []string{"errors", "io"}, "1m05s  package 2 of 2, io"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, line := range tt.lines {
				tt.count.Take(line)
			}
			if got := tt.count.Line(65 * time.Second); got != tt.want {
				t.Errorf("Line = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestClock(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0s", 900 * time.Millisecond: "1s", 59 * time.Second: "59s", time.Minute: "1m00s",
		59*time.Minute + 59*time.Second + 600*time.Millisecond: "1h00m00s", 3*time.Hour + 62*time.Second: "3h01m02s",
	} {
		if got := Clock(d); got != want {
			t.Errorf("Clock(%v) = %q, want %q", d, got, want)
		}
	}
}

func TestLines(t *testing.T) {
	var got []string
	lines := &Lines{Each: func(line string) { got = append(got, line) }}
	for _, part := range []string{"on", "e\ntwo\r\n", "\nth", "ree"} {
		if n, err := lines.Write([]byte(part)); n != len(part) || err != nil {
			t.Fatalf("Write = %d, %v", n, err)
		}
	}
	lines.Flush()
	lines.Flush()
	if want := []string{"one", "two", "", "three"}; !slices.Equal(got, want) {
		t.Errorf("lines %q, want %q", got, want)
	}
}

func TestTicker(t *testing.T) {
	t.Run("in a file each line stays", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			var out strings.Builder
			ticker := StartTicker(&out, false, Clock)
			time.Sleep(20 * time.Second)
			ticker.Update(func() { ticker.Say("a warning") })
			time.Sleep(11 * time.Second)
			if took := ticker.Stop(); took != 31*time.Second {
				t.Errorf("took %v", took)
			}
			if want := "15s\na warning\n30s\n"; out.String() != want {
				t.Errorf("printed %q, want %q", &out, want)
			}
		})
	})
	t.Run("in a terminal one line is written over", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			var out strings.Builder
			ticker := StartTicker(&out, true, func(d time.Duration) string { return Clock(d) + strings.Repeat("é", 100) })
			time.Sleep(1500 * time.Millisecond)
			ticker.Update(func() { ticker.Say("a warning") })
			ticker.Stop()
			blank := "\r" + strings.Repeat(" ", terminalWidth) + "\r"
			want := "\r1s" + strings.Repeat("é", terminalWidth-5) + "..." + blank + "a warning\n"
			if out.String() != want {
				t.Errorf("printed %q, want %q", &out, want)
			}
		})
	})
}
