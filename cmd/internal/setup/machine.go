package setup

import (
	"os"
	"runtime"
	"strings"
)

// A Family is a kind of system that takes its packages in the same way.
type Family string

// The families that the two commands know something about.
const (
	Debian  Family = "debian" // Debian, Ubuntu and what is made from them
	Fedora  Family = "fedora"
	Arch    Family = "arch"
	MacOS   Family = "macos"
	Windows Family = "windows"
	Unknown Family = "unknown"
)

// Machine is what has to be known about this machine before anything is
// installed on it.
type Machine struct {
	// Name is how the system calls itself, for messages.
	Name   string
	Family Family
	// Root is true when this process may install packages without sudo.
	Root bool
}

// ThisMachine looks at the running system.
func ThisMachine() Machine {
	// A system without the file is not an error: it is simply not known.
	text, _ := os.ReadFile("/etc/os-release")
	name, family := Identify(runtime.GOOS, string(text))
	return Machine{Name: name, Family: family, Root: os.Geteuid() == 0}
}

// Identify tells the family from Go's name for the system and, on Linux, from
// the text of /etc/os-release.
func Identify(goos, osRelease string) (name string, family Family) {
	switch goos {
	case "darwin":
		return "macOS", MacOS
	case "windows":
		return "Windows", Windows
	case "linux":
	default:
		return goos, Unknown
	}
	facts := parseOSRelease(osRelease)
	name = facts["PRETTY_NAME"]
	if name == "" {
		name = facts["NAME"]
	}
	if name == "" {
		name = "Linux"
	}
	ids := append([]string{facts["ID"]}, strings.Fields(facts["ID_LIKE"])...)
	for _, id := range ids {
		switch strings.ToLower(id) {
		case "debian", "ubuntu":
			return name, Debian
		case "fedora", "rhel", "centos":
			return name, Fedora
		case "arch":
			return name, Arch
		}
	}
	return name, Unknown
}

// parseOSRelease reads the KEY=value lines of an os-release file; values may
// stand in single or double quotes.
func parseOSRelease(text string) map[string]string {
	facts := make(map[string]string)
	for line := range strings.Lines(text) {
		key, value, ok := strings.Cut(strings.TrimSpace(line), "=")
		if !ok || strings.HasPrefix(key, "#") {
			continue
		}
		if n := len(value); n >= 2 && (value[0] == '"' || value[0] == '\'') && value[n-1] == value[0] {
			value = value[1 : n-1]
		}
		facts[key] = value
	}
	return facts
}
