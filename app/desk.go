package app

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/crops"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/planning"
	"example.org/kettleside/app/desk/questions"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// area is one part of the window. Its content is made when it is first opened:
// all of them together would keep the first frame waiting for a second.
type area struct {
	id, name string
	icon     fyne.Resource
	make     func() (content fyne.CanvasObject, seen func())
	content  fyne.CanvasObject // nil until it is first opened
	seen     func()            // is called when it is shown again
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
	stack     *fyne.Container // the areas that were opened so far
	crops     *crops.Crops    // this and the next three are nil until their area is opened
	planning  *planning.Area
	bench     *bench.Bench
	questions *questions.Area
	rail      *rail
	header    *header
	pointing  fyne.CanvasObject // of the first start
	menu      *menu
	recovery  *time.Timer

	projection *projection // the second window; nil where it is not open
	shown      shown
	exporting  func() bool        // says whether a workbook is being written
	running    func(pid int) bool // says whether a process is there; a test has its own
}

// shown is what the entries of the window are about.
type shown struct{ class, batch int }

// newDesk makes the window with the area that was open last, without showing
// it.
func newDesk(a fyne.App, o Options) *desk {
	d := newFrame(a, o)
	d.open(d.settings.Area)
	return d
}

// newFrame makes the window with no area open yet: what is round the areas is
// painted in half the time.
func newFrame(a fyne.App, o Options) *desk {
	d := &desk{app: a, folder: o.Folder, settings: readSettings(o.Folder), version: o.Version, running: running}
	d.setAsideRecovery()
	d.applyLook()
	voice := words.In(d.settings.Language)
	look.Speak(voice)
	begun := make(chan *session.Session)
	go func() { // the class is worked out while the rail is drawn
		s := session.New(reference.Shipped(), demoClass(d.settings.Language))
		s.Speak(voice)
		begun <- s
	}()
	d.window = a.NewWindow("Kettleside")
	d.window.SetMaster()
	d.window.SetPadded(false)
	d.ask = ask.Dialogs{Window: d.window}
	d.furnish(func() { d.session = <-begun })
	d.window.Canvas().AddShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift},
		func(fyne.Shortcut) { d.menu.redo.Action() })
	d.window.Canvas().SetOnTypedKey(d.typedKey)

	d.window.Resize(fyne.NewSize(d.settings.Width, d.settings.Height))
	d.window.SetCloseIntercept(d.quit)
	d.window.SetOnDropped(d.dropped)
	return d
}

// furnish makes what stands in the window, in the language that is spoken. begun
// is called when the session is needed.
func (d *desk) furnish(begun func()) {
	d.crops, d.planning, d.bench, d.questions = nil, nil, nil, nil
	d.exporting = func() bool { return false }
	d.areas = newAreas(d)
	d.rail = newRail(d.areas, d.open)
	d.header = newHeader(d.showFindings)
	d.stack = container.NewStack()
	begun()
	d.pointing = d.pointers()
	d.window.SetContent(look.Frame(look.Column(0, d.header.box, d.pointing), nil, d.rail.box, nil, d.stack))
	d.menu = newMenu(d)
	d.window.SetMainMenu(d.menu.main)
	d.session.Subscribe(d.changed)
	d.changed()
}

// open shows an area, unless something is being typed that is refused.
func (d *desk) open(id string) { d.openThen(id, func() {}) }

// openThen shows an area and does something in it.
func (d *desk) openThen(id string, then func()) {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	if !d.has(id) {
		id = d.areas[0].id
	}
	d.window.Canvas().Unfocus()
	for _, one := range d.areas {
		d.showArea(one, one.id == id)
	}
	d.settings.Area = id
	d.rail.show(id)
	d.refreshMenu() // Undo means the trial in one area and the class in the others
	then()
}

func (d *desk) showArea(one *area, shown bool) {
	switch {
	case shown && one.content == nil:
		one.content, one.seen = one.make()
		d.stack.Add(one.content)
	case shown:
		one.content.Show()
		one.seen()
	case one.content != nil:
		one.content.Hide()
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
		title = look.Say("%s • unsaved", title)
	}
	d.window.SetTitle(title)
	look.Show(d.pointing, !d.settings.Greeted && d.session.Started() == 1) // they are about the demo class
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
		d.must(d.session.UndoView())
	} else {
		d.must(d.session.Undo())
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
	d.openThen("class", func() { d.planning.AddBatch() })
}

// find goes to the search line of the crop table.
func (d *desk) find() {
	d.openThen("crops", func() { d.crops.Focus(d.window.Canvas()) })
}

// askQuestion goes to the search among the questions from the room.
func (d *desk) askQuestion() {
	d.openThen("questions", func() { d.questions.Focus(d.window.Canvas()) })
}

// must says why a change was refused.
func (d *desk) must(err error) {
	if err != nil {
		d.ask.Problem(look.Say("That cannot be done"), err)
	}
}

// redo brings back what undo took of what is being typed, and otherwise the next
// change.
func (d *desk) redo() {
	if look.RedoTyping(d.window.Canvas()) || d.menu.redo.Disabled || !look.CommitFocused(d.window.Canvas()) {
		return
	}
	if d.tryingHere() {
		d.must(d.session.RedoView())
	} else {
		d.must(d.session.Redo())
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

func (d *desk) rescale(scale float32) {
	d.settings.Scale = scale
	d.relook()
}

// setUnits shows the figures of what is on view in other units; what was typed
// stays as it was typed.
func (d *desk) setUnits(units measure.System) {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	change := d.session.Change
	if d.tryingHere() {
		change = d.session.ChangeView
	}
	d.must(change(words.Key("Units"), func(c *class.Class) { c.Units = units }))
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
	d.ask.Page(look.Say("What to mind in this class"), look.NewFindings(look.Say("Nothing stands in the way of this class."), d.session.Findings()))
}
