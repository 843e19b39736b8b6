package setup

import "testing"

func TestIdentify(t *testing.T) {
	tests := []struct {
		name, goos, text string
		wantName         string
		want             Family
	}{
		{"Debian", "linux", "PRETTY_NAME=\"Debian GNU/Linux 12 (bookworm)\"\nNAME=\"Debian GNU/Linux\"\nID=debian\n", "Debian GNU/Linux 12 (bookworm)", Debian},
		{"made from Ubuntu", "linux", "NAME='Linux Mint'\nID=linuxmint\nID_LIKE=\"ubuntu debian\"\n", "Linux Mint", Debian},
		{"Fedora", "linux", "NAME=\"Fedora Linux\"\nID=fedora\n", "Fedora Linux", Fedora},
		{"made from Fedora", "linux", "NAME=Rocky\nID=rocky\nID_LIKE=\"rhel centos fedora\"", "Rocky", Fedora},
		{"Arch", "linux", "NAME=\"Arch Linux\"\nID=arch\n", "Arch Linux", Arch},
		{"comments and blanks", "linux", "# ID=debian\n\n  ID=arch  \n", "Linux", Arch},
		{"no such distribution known", "linux", "NAME=Other\nID=other\n", "Other", Unknown},
		{"no os-release", "linux", "", "Linux", Unknown},
		{"macOS", "darwin", "", "macOS", MacOS},
		{"Windows", "windows", "", "Windows", Windows},
		{"another Unix", "openbsd", "ID=debian", "openbsd", Unknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			name, family := Identify(tt.goos, tt.text)
			if name != tt.wantName || family != tt.want {
				t.Errorf("Identify = %q, %q; want %q, %q", name, family, tt.wantName, tt.want)
			}
		})
	}
}

func TestScreenless(t *testing.T) {
	const socket = "/tmp/.X11-unix/X7"
	tests := []struct {
		name, goos, display, wayland string
		listening                    string // the one address that answers
		want                         string
	}{
		{"nothing set", "linux", "", "", "", "neither DISPLAY nor WAYLAND_DISPLAY is set"},
		{"nothing set on macOS", "darwin", "", "", "", ""},
		{"nothing set on Windows", "windows", "", "", "", ""},
		{"nothing set on a BSD", "freebsd", "", "", "", "neither DISPLAY nor WAYLAND_DISPLAY is set"},
		{"local display", "linux", ":7", "", socket, ""},
		{"local display and screen", "linux", ":7.0", "", socket, ""},
		{"local display, other kind of socket", "linux", "unix:7", "", "@" + socket, ""},
		{"forwarded display", "linux", "localhost:10.0", "", "", ""},
		{"dead display", "linux", ":7", "", "", "DISPLAY is :7, but nothing answers there"},
		{"dead display beside Wayland", "linux", ":7", "wayland-0", "", ""},
		{"Wayland alone", "linux", "", "wayland-0", "", ""},
		{"name in a form not known", "linux", "/run/launch:0", "", "", ""},
		{"display without a number", "linux", ":x", "", "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			getenv := func(name string) string {
				return map[string]string{"DISPLAY": tt.display, "WAYLAND_DISPLAY": tt.wayland}[name]
			}
			reach := func(address string) bool { return tt.listening != "" && address == tt.listening }
			if got := Screenless(tt.goos, getenv, reach); got != tt.want {
				t.Errorf("Screenless = %q, want %q", got, tt.want)
			}
		})
	}
}
