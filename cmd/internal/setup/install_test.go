package setup_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
	"example.org/kettleside/cmd/internal/setup/setuptest"
)

func TestMissing(t *testing.T) {
	wanted := []string{"gcc", "xvfb", "xorg-dev"}
	tests := []struct {
		name, listing string
		want          []string
	}{
		{"all there", "gcc\tinstalled\nxorg-dev\tinstalled\nxvfb\tinstalled\n", nil},
		{"one taken off but its settings kept", "gcc\tinstalled\nxorg-dev\tconfig-files\nxvfb\tinstalled\n", []string{"xorg-dev"}},
		{"one never there", "gcc\tinstalled\nxvfb\tinstalled\n", []string{"xorg-dev"}},
		{"known but not installed", "gcc\tnot-installed\nxvfb\thalf-installed\nxorg-dev\tinstalled", []string{"gcc", "xvfb"}},
		{"two processors, one installed", "gcc\tnot-installed\ngcc\tinstalled\nxvfb\tinstalled\nxorg-dev\tinstalled\n", nil},
		{"nothing listed", "", wanted},
		{"another name with the same start", "gcc-12\tinstalled\n", wanted},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := setup.Missing(wanted, tt.listing); !slices.Equal(got, tt.want) {
				t.Errorf("Missing = %v, want %v", got, tt.want)
			}
		})
	}
}

const (
	windowHere = "gcc\tinstalled\npkg-config\tinstalled\nlibgl1-mesa-dev\tinstalled\nxorg-dev\tinstalled\n"
	noXorg     = "gcc\tinstalled\npkg-config\tinstalled\nlibgl1-mesa-dev\tinstalled\n"
	aptGet     = "env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 "
)

func TestInstall(t *testing.T) {
	unknown := setuptest.Answer{Stdout: noXorg, Err: errors.New("exit status 1")}
	here := setuptest.Answer{Stdout: windowHere}
	boom := []setuptest.Answer{{Err: errors.New("exit status 100")}}
	tests := []struct {
		name    string
		root    bool
		asking  bool
		lacking []string
		answers map[string][]setuptest.Answer
		apt     []string // the apt-get commands that have to run
		wantErr []string // what the error has to say; none means no error
	}{
		{
			name:    "all there already",
			answers: map[string][]setuptest.Answer{"dpkg-query": {here}},
		},
		{
			name: "root installs the one that is missing", root: true,
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown, here}},
			apt:     []string{aptGet + "update", aptGet + "install -y --no-install-recommends xorg-dev"},
		},
		{
			name: "sudo that may ask", asking: true,
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown, here}},
			apt:     []string{"sudo " + aptGet + "update", "sudo " + aptGet + "install -y --no-install-recommends xorg-dev"},
		},
		{
			name:    "sudo with nobody to ask",
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown, here}},
			apt:     []string{"sudo -n " + aptGet + "update", "sudo -n " + aptGet + "install -y --no-install-recommends xorg-dev"},
		},
		{
			name: "no rights and no sudo", lacking: []string{"sudo"},
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown}},
			wantErr: []string{"xorg-dev", "no sudo", "By hand, as root:\n  apt-get install -y --no-install-recommends xorg-dev"},
		},
		{
			name: "no apt-get", root: true, lacking: []string{"apt-get"},
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown}},
			wantErr: []string{"find apt-get", "\n  apt-get install"},
		},
		{
			name: "no dpkg-query", lacking: []string{"dpkg-query"},
			wantErr: []string{"find dpkg-query", "gcc, pkg-config, libgl1-mesa-dev, xorg-dev"},
		},
		{
			name: "one broken package list does not stop it", root: true,
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown, here}, aptGet + "update": boom},
			apt:     []string{aptGet + "update", aptGet + "install -y --no-install-recommends xorg-dev"},
		},
		{
			name: "apt-get fails", root: true,
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown}, aptGet + "install": boom},
			apt:     []string{aptGet + "update", aptGet + "install -y --no-install-recommends xorg-dev"},
			wantErr: []string{"exit status 100", "xorg-dev", "By hand"},
		},
		{
			name: "apt-get installs something else", root: true,
			answers: map[string][]setuptest.Answer{"dpkg-query": {unknown}},
			apt:     []string{aptGet + "update", aptGet + "install -y --no-install-recommends xorg-dev"},
			wantErr: []string{"yet they are not installed"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			runner := &setuptest.Runner{Answers: tt.answers, Lacking: tt.lacking}
			var out strings.Builder
			err := setup.Installer{
				Machine: setup.Machine{Name: "Debian", Family: setup.Debian, Root: tt.root},
				Runner:  runner, Out: &out, Asking: tt.asking,
			}.Install(t.Context(), setup.Window)
			checkError(t, err, tt.wantErr)
			apt := slices.DeleteFunc(runner.Lines(), func(line string) bool { return strings.HasPrefix(line, "dpkg-query") })
			if !slices.Equal(apt, tt.apt) {
				t.Errorf("ran\n%s\nwant\n%s", strings.Join(apt, "\n"), strings.Join(tt.apt, "\n"))
			}
			if len(tt.apt) > 0 && !strings.Contains(out.String(), "Will install, with what they depend on: xorg-dev\n") {
				t.Errorf("does not say what it will install:\n%s", &out)
			}
		})
	}
}

func checkError(t *testing.T, err error, parts []string) {
	t.Helper()
	if len(parts) == 0 {
		if err != nil {
			t.Errorf("unexpected error: %v", err)
		}
		return
	}
	if !errors.Is(err, setup.ErrMissing) {
		t.Fatalf("error %v is not ErrMissing", err)
	}
	for _, part := range parts {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("error %q does not say %q", err, part)
		}
	}
}

func TestAdvice(t *testing.T) {
	all := []setup.Need{setup.Window, setup.Screen, setup.Papers}
	tests := []struct {
		name    string
		machine setup.Machine
		needs   []setup.Need
		want    []string
		not     []string
	}{
		{"Fedora", setup.Machine{Name: "Fedora Linux", Family: setup.Fedora}, all, []string{"Fedora Linux", "sudo dnf install -y gcc ", "libreoffice-calc"}, []string{"apt-get"}},
		{"Arch as root", setup.Machine{Name: "Arch Linux", Family: setup.Arch, Root: true}, all[:1], []string{"  pacman -S --needed gcc "}, []string{"sudo", "libreoffice"}},
		{"macOS", setup.Machine{Name: "macOS", Family: setup.MacOS}, all, []string{"xcode-select --install", "libreoffice"}, []string{"sudo"}},
		{"macOS, window only", setup.Machine{Name: "macOS", Family: setup.MacOS}, all[:1], []string{"xcode-select --install"}, []string{"brew"}},
		{"Windows", setup.Machine{Name: "Windows", Family: setup.Windows}, all, []string{"mingw-w64-ucrt-x86_64-gcc", "LibreOffice"}, []string{"sudo"}},
		{"unknown", setup.Machine{Name: "Other", Family: setup.Unknown}, all[:1], []string{"Other", "apt-get install", "dnf install", "pacman -S"}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := setup.Advice(tt.machine, tt.needs...)
			for _, part := range tt.want {
				if !strings.Contains(got, part) {
					t.Errorf("does not say %q:\n%s", part, got)
				}
			}
			for _, part := range tt.not {
				if strings.Contains(got, part) {
					t.Errorf("says %q:\n%s", part, got)
				}
			}
			runner := &setuptest.Runner{}
			var out strings.Builder
			if err := (setup.Installer{Machine: tt.machine, Runner: runner, Out: &out}).Install(t.Context(), tt.needs...); err != nil {
				t.Errorf("Install: %v", err)
			}
			if len(runner.Runs()) > 0 || !strings.Contains(out.String(), got) {
				t.Errorf("Install ran %q and said:\n%s", runner.Lines(), &out)
			}
		})
	}
}

func TestPackagesForNamesEachOnce(t *testing.T) {
	got := setup.PackagesFor(setup.Debian, setup.Window, setup.Screen, setup.Window)
	want := []string{"gcc", "pkg-config", "libgl1-mesa-dev", "xorg-dev", "xvfb", "xdotool", "imagemagick", "libgl1-mesa-dri"}
	if !slices.Equal(got, want) {
		t.Errorf("PackagesFor = %v, want %v", got, want)
	}
	if line := setup.InstallLine(setup.Debian, true, nil); line != "" {
		t.Errorf("InstallLine with nothing to install = %q", line)
	}
}
