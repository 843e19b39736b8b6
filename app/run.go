// Package app puts the window program together: the window with its rail of
// areas, the menu, the file of the class, and what is remembered between two
// runs. The areas themselves live in app/desk, what they show is worked out in
// app/class.
package app

import (
	"fmt"
	"io"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// Options are how the program is started.
type Options struct {
	File    string // class to open, "" for the demo class
	Folder  string // where settings live: see DataFolder
	Version string
	Ready   io.Writer // gets the line "window ready" when the window is drawn; nil for none
}

// Run shows the window and returns when it is closed.
func Run(a fyne.App, o Options) {
	a.SetIcon(look.AppIcon())
	d := newDesk(a, o)
	editsErr := d.keepTableEdits()
	fileErr := d.openFirst(o.File)
	a.Lifecycle().SetOnStarted(func() { d.started(o, editsErr, fileErr) })
	d.window.ShowAndRun()
}

// openFirst opens the class that the program was started with.
func (d *desk) openFirst(file string) error {
	if file == "" {
		return nil
	}
	if full, err := filepath.Abs(file); err == nil {
		file = full
	}
	if err := d.session.Open(file); err != nil {
		return err
	}
	d.remember(file)
	return nil
}

// readyDelay lets the first frame be drawn before anybody is told.
const readyDelay = 300 * time.Millisecond

// started does what needs a window on the screen.
func (d *desk) started(o Options, editsErr, fileErr error) {
	if o.File == "" {
		d.offerRecovery()
	}
	if editsErr != nil {
		d.ask.Problem("Not all of your table edits are in use", editsErr)
	}
	if fileErr != nil {
		d.ask.Problem("This class cannot be opened", fileErr)
	}
	if o.Ready != nil {
		time.AfterFunc(readyDelay, func() { fyne.Do(func() { fmt.Fprintln(o.Ready, "window ready") }) })
	}
}
