package setup

import (
	"strconv"
	"strings"
)

// Screenless returns why no window can be shown, or "" when one can. getenv
// looks up the environment; reach reports whether something listens at a Unix
// socket, named by its path, with an @ in front for one in the abstract space.
//
// Only systems that draw with X or Wayland are asked: macOS and Windows have a
// screen as far as this program can tell. A display on another machine is
// taken at its word.
func Screenless(goos string, getenv func(string) string, reach func(socket string) bool) string {
	if goos == "darwin" || goos == "windows" {
		return ""
	}
	display, wayland := getenv("DISPLAY"), getenv("WAYLAND_DISPLAY")
	switch {
	case display == "" && wayland == "":
		return "neither DISPLAY nor WAYLAND_DISPLAY is set"
	case wayland != "":
		return ""
	}
	path, ok := displaySocket(display)
	if !ok || reach(path) || reach("@"+path) {
		return ""
	}
	return "DISPLAY is " + display + ", but nothing answers there"
}

// displaySocket returns the path of the socket of an X display on this
// machine; false for a display elsewhere and for a name in another form.
func displaySocket(display string) (path string, ok bool) {
	host, rest, ok := strings.Cut(display, ":")
	if !ok || host != "" && host != "unix" {
		return "", false
	}
	number, _, _ := strings.Cut(rest, ".")
	if n, err := strconv.Atoi(number); err != nil || n < 0 {
		return "", false
	}
	return "/tmp/.X11-unix/X" + number, true
}
