// Command bare opens a window with one line of text in it and nothing else of
// ours: what the toolkit by itself takes to its first frame. cmd/verify -start
// measures Kettleside's start against it.
package main

import (
	"fmt"
	"os"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
)

func main() {
	a := fyneapp.NewWithID("org.example.kettleside.bare")
	w := a.NewWindow("A bare window")
	w.SetContent(widget.NewLabel("A bare window"))
	w.Resize(fyne.NewSize(1024, 700))
	// The toolkit paints the first frame while it shows the window, and reports
	// the start after that.
	a.Lifecycle().SetOnStarted(func() { fmt.Fprintln(os.Stderr, "first frame painted") })
	w.ShowAndRun()
}
