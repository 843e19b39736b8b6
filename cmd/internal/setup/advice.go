package setup

import (
	"fmt"
	"slices"
	"strings"
)

// InstallLine is the command that installs packages by hand on a system of the
// given family, or "" where there is no one such command.
func InstallLine(family Family, root bool, names []string) string {
	if len(names) == 0 {
		return ""
	}
	var before string
	switch family {
	case Debian:
		before = "apt-get install -y --no-install-recommends "
	case Fedora:
		before = "dnf install -y "
	case Arch:
		before = "pacman -S --needed "
	default:
		return ""
	}
	if !root {
		before = "sudo " + before
	}
	return before + strings.Join(names, " ")
}

// Advice says what to install by hand for some needs. For a system it does not
// know it gives the lines of all that it does, to translate from.
func Advice(m Machine, needs ...Need) string {
	var text strings.Builder
	switch m.Family {
	case Debian, Fedora, Arch:
		fmt.Fprintf(&text, "On %s run:\n", m.Name)
		fmt.Fprintf(&text, "  %s\n", InstallLine(m.Family, m.Root, PackagesFor(m.Family, needs...)))
	case MacOS:
		text.WriteString("On macOS run:\n")
		writeMacOS(&text, needs)
	case Windows:
		text.WriteString("On Windows:\n")
		writeWindows(&text, needs)
	default:
		fmt.Fprintf(&text, "%s is not a system whose packages this program knows. ", m.Name)
		text.WriteString("Install the like of one of these lines:\n")
		for _, family := range []Family{Debian, Fedora, Arch} {
			fmt.Fprintf(&text, "  %-7s %s\n", family, InstallLine(family, m.Root, PackagesFor(family, needs...)))
		}
	}
	return text.String()
}

func writeMacOS(text *strings.Builder, needs []Need) {
	if slices.Contains(needs, Window) {
		text.WriteString("  xcode-select --install\n")
	}
	if slices.Contains(needs, Papers) {
		text.WriteString("  brew install --cask libreoffice\n")
		text.WriteString("  brew install poppler\n")
	}
	if slices.Contains(needs, Solver) {
		text.WriteString("  brew install scipy\n")
	}
}

func writeWindows(text *strings.Builder, needs []Need) {
	if slices.Contains(needs, Window) {
		text.WriteString("  winget install MSYS2.MSYS2\n")
		text.WriteString("  then, in the window \"MSYS2 UCRT64\":  pacman -S --needed mingw-w64-ucrt-x86_64-gcc\n")
		text.WriteString("  then put C:\\msys64\\ucrt64\\bin in Path and open a new terminal\n")
	}
	if slices.Contains(needs, Papers) {
		text.WriteString("  winget install TheDocumentFoundation.LibreOffice\n")
		text.WriteString("  then, in the window \"MSYS2 UCRT64\":  pacman -S --needed mingw-w64-ucrt-x86_64-poppler\n")
		text.WriteString("  then put the folder that holds soffice.exe in Path\n")
	}
}
