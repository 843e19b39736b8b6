package setup

import "slices"

// A Need is a set of system packages that one purpose asks for.
type Need int

// What the two commands need, each for its own purpose.
const (
	// Window is what compiling the window program takes: a C compiler and the
	// headers of OpenGL and X.
	Window Need = iota
	// Screen is what the window's tests take: a display in memory, a hand on
	// its keyboard, a camera, and OpenGL without a graphics card.
	Screen
	// Papers is what the tests of workbook and handouts take: a spreadsheet
	// program to recalculate and print, a reader for what was printed, and the
	// fonts it is printed with.
	Papers
	// Solver is the independent numerical library that the heat engine is held
	// against.
	Solver
)

// purposes says in a few words what each need is for.
var purposes = map[Need]string{
	Window: "to compile the window",
	Screen: "to try the window without a monitor",
	Papers: "to recalculate and print the workbook",
	Solver: "to hold the heat engine against another solver",
}

// packages lists what each family calls the things each need asks for. macOS
// and Windows bring their own screen, so Screen is empty there.
var packages = map[Family]map[Need][]string{
	Debian: {
		Window: {"gcc", "pkg-config", "libgl1-mesa-dev", "xorg-dev"},
		Screen: {"xvfb", "xdotool", "imagemagick", "libgl1-mesa-dri"},
		Papers: {"libreoffice-calc", "poppler-utils", "fonts-liberation"},
		Solver: {"python3-scipy"},
	},
	Fedora: {
		Window: {
			"gcc", "mesa-libGL-devel", "libX11-devel", "libXcursor-devel", "libXrandr-devel",
			"libXinerama-devel", "libXi-devel", "libXxf86vm-devel",
		},
		Screen: {"xorg-x11-server-Xvfb", "xdotool", "ImageMagick", "mesa-dri-drivers"},
		Papers: {"libreoffice-calc", "poppler-utils", "liberation-fonts"},
		Solver: {"python3-scipy"},
	},
	Arch: {
		Window: {
			"gcc", "pkgconf", "mesa", "libglvnd", "libx11", "libxcursor", "libxrandr",
			"libxinerama", "libxi", "libxxf86vm",
		},
		Screen: {"xorg-server-xvfb", "xdotool", "imagemagick"},
		Papers: {"libreoffice-fresh", "poppler", "ttf-liberation"},
		Solver: {"python-scipy"},
	},
	MacOS: {
		Papers: {"libreoffice", "poppler"},
		Solver: {"scipy"},
	},
	Windows: {},
}

// PackagesFor lists the packages of some needs under the family's own names,
// each once and in the order of the needs.
func PackagesFor(family Family, needs ...Need) []string {
	var list []string
	for _, need := range needs {
		for _, name := range packages[family][need] {
			if !slices.Contains(list, name) {
				list = append(list, name)
			}
		}
	}
	return list
}

// Purpose says in a few words what a need is for.
func (n Need) Purpose() string { return purposes[n] }
