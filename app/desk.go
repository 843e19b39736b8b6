package app

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/crops"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/planning"
	"example.org/kettleside/app/desk/questions"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/reference"
)

// area is one part of the window.
type area struct {
	id, name string
	icon     fyne.Resource
	content  fyne.CanvasObject
}

// desk is the main window: rail, header, areas, menu, and the class on it.
type desk struct {
	app      fyne.App
	window   fyne.Window
	folder   string // settings, table edits, recovery copy
	settings Settings
	version  string
	session  *session.Session
	ask      asker

	areas     []*area
	crops     *crops.Crops
	planning  *planning.Area
	bench     *bench.Bench
	questions *questions.Area
	rail      *rail
	header    *header
	menu      *menu
	recovery  *time.Timer

	projection *projection // the second window; nil where it is not open
	shown      shown
	exporting  func() bool        // says whether a workbook is being written
	running    func(pid int) bool // says whether a process is there; a test has its own
}

// shown is what the entries of the window are about.
type shown struct{ class, batch int }

// newDesk makes the window, without showing it.
func newDesk(a fyne.App, o Options) *desk {
	d := &desk{app: a, folder: o.Folder, settings: readSettings(o.Folder), version: o.Version, running: running}
	d.setAsideRecovery()
	d.applyLook()
	d.session = session.New(reference.Shipped(), demoClass())
	d.window = a.NewWindow("Kettleside")
	d.window.SetMaster()
	d.window.SetPadded(false)
	d.ask = ask.Dialogs{Window: d.window}

	d.areas = newAreas(d)
	d.header = newHeader(d.showFindings)
	d.rail = newRail(d.areas, d.open)
	stack := container.NewStack()
	for _, one := range d.areas {
		stack.Add(one.content)
	}
	d.window.SetContent(look.Frame(d.header.box, nil, d.rail.box, nil, stack))
	d.menu = newMenu(d)
	d.window.SetMainMenu(d.menu.main)
	d.window.Canvas().AddShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift},
		func(fyne.Shortcut) { d.menu.redo.Action() })
	d.window.Canvas().SetOnTypedKey(d.typedKey)
	d.open(d.settings.Area)
	d.session.Subscribe(d.changed)
	d.changed()

	d.window.Resize(fyne.NewSize(d.settings.Width, d.settings.Height))
	d.window.SetCloseIntercept(d.quit)
	d.window.SetOnDropped(d.dropped)
	return d
}

// open shows an area.
func (d *desk) open(id string) {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	if !d.has(id) {
		id = d.areas[0].id
	}
	d.window.Canvas().Unfocus()
	for _, one := range d.areas {
		if one.id == id {
			one.content.Show()
		} else {
			one.content.Hide()
		}
	}
	d.settings.Area = id
	d.rail.show(id)
	if d.menu != nil { // Undo means the trial in one area and the class in the others
		d.refreshMenu()
	}
}

func (d *desk) has(id string) bool {
	for _, one := range d.areas {
		if one.id == id {
			return true
		}
	}
	return false
}

// changed brings everything around the areas up to date; the areas listen to
// the session by themselves.
func (d *desk) changed() {
	if now := (shown{d.session.Started(), d.session.Selected()}); now != d.shown {
		d.shown = now
		look.RestoreRefused() // what was refused belongs to the class or batch before
	}
	title := "Kettleside — " + titleOf(d.session.Class())
	if d.session.Unsaved() {
		title += " • unsaved"
	}
	d.window.SetTitle(title)
	d.header.show(d.session)
	d.refreshMenu()
	d.scheduleRecovery()
}

// undo takes back what is being typed, and where nothing is the last change.
func (d *desk) undo() {
	if look.UndoTyping(d.window.Canvas()) {
		return
	}
	if d.tryingHere() {
		d.session.UndoView()
	} else {
		d.session.Undo()
	}
}

// tryingHere says whether a trial is what the window shows: the other areas
// show the plan at all times.
func (d *desk) tryingHere() bool {
	_, trying := d.session.Trying()
	return trying && d.settings.Area == "batch"
}

// withBatch does something with the selected batch, after what is being typed
// was handed over to it.
func (d *desk) withBatch(do func(i int) error) {
	if look.CommitFocused(d.window.Canvas()) {
		d.must(do(d.session.Selected()))
	}
}

// addBatch asks for a treatment and adds a batch with it.
func (d *desk) addBatch() {
	d.open("class")
	d.planning.AddBatch()
}

// find goes to the search line of the crop table.
func (d *desk) find() {
	d.open("crops")
	d.crops.Focus(d.window.Canvas())
}

// askQuestion goes to the search among the questions from the room.
func (d *desk) askQuestion() {
	d.open("questions")
	d.questions.Focus(d.window.Canvas())
}

// must says why a change was refused.
func (d *desk) must(err error) {
	if err != nil {
		d.ask.Problem("That cannot be done", err)
	}
}

func (d *desk) redo() {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	if d.tryingHere() {
		d.session.RedoView()
	} else {
		d.session.Redo()
	}
}

// applyLook puts the theme of the settings on the program.
func (d *desk) applyLook() {
	d.app.Settings().SetTheme(look.NewScaled(look.VariantNamed(d.settings.Variant), d.settings.Scale))
}

func (d *desk) setVariant(v look.Variant) {
	d.settings.Variant = string(v)
	d.relook()
}

func (d *desk) scale(by int) {
	d.settings.step(by)
	d.relook()
}

// relook redraws the window in the look that was chosen.
func (d *desk) relook() {
	d.applyLook()
	d.window.Content().Refresh()
	d.keepSettings()
	d.refreshMenu()
}

func (d *desk) keepSettings() {
	if size := d.window.Canvas().Size(); size.Width >= leastWidth/2 {
		d.settings.Width, d.settings.Height = size.Width, size.Height
	}
	if err := d.settings.write(d.folder); err != nil {
		fyne.LogError("the settings could not be kept", err)
	}
}

// showFindings lists everything that needs attention.
func (d *desk) showFindings() {
	d.ask.Page("What to mind in this class", look.NewFindings("Nothing stands in the way of this class.", d.session.Findings()))
}
