// Package app puts the window program together: the window with its rail of
// areas, the menu, the file of the class, and what is remembered between two
// runs. The areas themselves live in app/desk, what they show is worked out in
// app/class.
package app

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// Options are how the program is started.
type Options struct {
	File    string // class to open, "" for the demo class
	Folder  string // where settings live: see DataFolder
	Version string
	Ready   io.Writer // gets the lines FirstFrame and WindowReady; nil for none
}

// What the program tells on Options.Ready: that the window is on the screen, and
// that it takes input in the area that was open last.
const (
	FirstFrame  = "first frame painted"
	WindowReady = "window ready"
)

// Run shows the window and returns when it is closed.
func Run(a fyne.App, o Options) {
	a.SetIcon(look.AppIcon())
	d := newFrame(a, o)
	editsErr := d.keepTableEdits()
	fileErr := d.openFirst(o.File)
	a.Lifecycle().SetOnStarted(func() { d.started(o, editsErr, fileErr) })
	d.window.ShowAndRun()
}

// openFirst opens the class that the program was started with, or else the one
// that was open last. The first time it is the demo class, and so it is where
// that one cannot be opened.
func (d *desk) openFirst(file string) error {
	if file == "" {
		if len(d.settings.Recent) == 0 {
			return nil
		}
		file = d.settings.Recent[0]
	}
	if full, err := filepath.Abs(file); err == nil {
		file = full
	}
	if err := d.session.Open(file); err != nil {
		if errors.Is(err, fs.ErrNotExist) { // said once, not at every start
			d.settings.forget(file)
			d.keepSettings()
		}
		return err
	}
	d.remember(file)
	return nil
}

// started opens the area that was open last and does what else needs a window
// on the screen. The toolkit paints the first frame while it shows the window,
// reports the start after that, and takes input when this returns.
func (d *desk) started(o Options, editsErr, fileErr error) {
	o.tell(FirstFrame)
	d.open(d.settings.Area)
	if o.File == "" {
		d.offerRecovery()
	}
	if editsErr != nil {
		d.ask.Problem(look.Say("Not all of your table edits are in use"), editsErr)
	}
	if fileErr != nil {
		d.ask.Problem(look.Say("This class cannot be opened"), fileErr)
	}
	o.tell(WindowReady)
}

func (o Options) tell(line string) {
	if o.Ready != nil {
		fmt.Fprintln(o.Ready, line)
	}
}
