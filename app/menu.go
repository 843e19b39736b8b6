package app

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/desk/look"
)

// menu is the menu bar. Every shortcut of the program belongs to an item of
// it: only such a shortcut works while something is being typed.
type menu struct {
	main                  *fyne.MainMenu
	undo, redo, recent    *fyne.MenuItem
	light, dark, contrast *fyne.MenuItem
	larger, smaller       *fyne.MenuItem
	ofBatch               []*fyne.MenuItem // what needs a batch
	ofTrial               []*fyne.MenuItem // what needs a trial on view
}

func newMenu(d *desk) *menu {
	item := d.item
	m := &menu{
		undo:     d.undoItem(),
		redo:     d.command("Redo", d.redo, &fyne.ShortcutRedo{}),
		recent:   fyne.NewMenuItem("Open recent", nil),
		light:    d.plain("Light", func() { d.setVariant(look.Light) }),
		dark:     d.plain("Dark", func() { d.setVariant(look.Dark) }),
		contrast: d.plain("High contrast", func() { d.setVariant(look.HighContrast) }),
		larger:   item("Larger text", func() { d.scale(1) }, fyne.KeyEqual, 0),
		smaller:  item("Smaller text", func() { d.scale(-1) }, fyne.KeyMinus, 0),
	}
	quit := item("Quit", d.quit, fyne.KeyQ, 0)
	quit.IsQuit = true
	file := fyne.NewMenu("File",
		item("New class", d.newClass, fyne.KeyN, 0),
		item("Open…", d.chooseAndOpen, fyne.KeyO, 0),
		m.recent,
		d.plain("Open the demo class", d.demoClass),
		fyne.NewMenuItemSeparator(),
		item("Save", d.save, fyne.KeyS, 0),
		item("Save as…", d.saveAs, fyne.KeyS, fyne.KeyModifierShift),
		fyne.NewMenuItemSeparator(),
		quit)
	edit := fyne.NewMenu("Edit", m.editItems(d)...)
	help := fyne.NewMenu("Help",
		d.plain("What the figures rest on", d.showSources),
		d.plain("Cautions", d.showCautions),
		d.plain("Keys", d.showKeys),
		fyne.NewMenuItemSeparator(),
		d.plain("About Kettleside", d.showAbout))
	m.main = fyne.NewMainMenu(file, edit, fyne.NewMenu("Trial", m.trialItems(d)...), fyne.NewMenu("View", m.viewItems(d)...), help)
	return m
}

func (m *menu) editItems(d *desk) []*fyne.MenuItem {
	s, item := d.session, d.item
	m.ofBatch = []*fyne.MenuItem{
		item("Duplicate batch", func() { d.withBatch(s.DuplicateBatch) }, fyne.KeyD, 0),
		item("Move batch up", func() { d.withBatch(func(i int) error { return s.MoveBatch(i, -1) }) }, fyne.KeyUp, fyne.KeyModifierShift),
		item("Move batch down", func() { d.withBatch(func(i int) error { return s.MoveBatch(i, 1) }) }, fyne.KeyDown, fyne.KeyModifierShift),
		d.plain("Remove batch", func() { d.withBatch(s.RemoveBatch) }),
	}
	add := item("Add batch…", d.addBatch, fyne.KeyB, 0)
	return append([]*fyne.MenuItem{m.undo, m.redo, fyne.NewMenuItemSeparator(), add}, m.ofBatch...)
}

func (m *menu) trialItems(d *desk) []*fyne.MenuItem {
	try := d.item("Try it on a copy", func() {
		d.open("batch")
		d.bench.Try()
	}, fyne.KeyT, 0)
	m.ofBatch = append(m.ofBatch, try)
	m.ofTrial = []*fyne.MenuItem{
		d.item("Return to the plan", d.bench.ReturnToPlan, fyne.KeyR, 0),
		d.plain("Adopt into the plan", d.bench.AdoptTrial),
		d.plain("Drop the trial", d.bench.DropTrial),
	}
	return append([]*fyne.MenuItem{try, fyne.NewMenuItemSeparator()}, m.ofTrial...)
}

func (m *menu) viewItems(d *desk) []*fyne.MenuItem {
	keys := []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6}
	var items []*fyne.MenuItem
	item := d.item
	for i, a := range d.areas {
		items = append(items, item(a.name, func() { d.open(a.id) }, keys[i], 0))
	}
	return append(items,
		item("Search the crop table", d.find, fyne.KeyF, 0),
		item("Ask a question from the room", d.askQuestion, fyne.KeyK, 0),
		item("What to mind", d.showFindings, fyne.KeyM, 0),
		fyne.NewMenuItemSeparator(),
		item("Projector view", d.openProjection, fyne.KeyP, 0),
		item("Projector: next page", func() { d.turn(true) }, fyne.KeyPageDown, 0),
		item("Projector: page before", func() { d.turn(false) }, fyne.KeyPageUp, 0),
		item("Projector: full screen or window (F11)", d.fillScreen, fyne.KeyF11, 0),
		fyne.NewMenuItemSeparator(), m.light, m.dark, m.contrast,
		fyne.NewMenuItemSeparator(), m.larger, m.smaller)
}

func (d *desk) item(label string, do func(), key fyne.KeyName, more fyne.KeyModifier) *fyne.MenuItem {
	return d.command(label, do, &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | more})
}

// command is a menu item with a shortcut. The toolkit runs shortcuts of
// disabled items too, and under an open dialog, where the answer would act on
// a class that has been replaced in the meantime: such a call does nothing.
func (d *desk) command(label string, do func(), shortcut fyne.Shortcut) *fyne.MenuItem {
	i := d.plain(label, do)
	i.Shortcut = shortcut
	return i
}

// plain is a command without a shortcut.
func (d *desk) plain(label string, do func()) *fyne.MenuItem {
	i := fyne.NewMenuItem(label, nil)
	i.Action = func() {
		if !i.Disabled && d.window.Canvas().Overlays().Top() == nil {
			do()
		}
	}
	return i
}

// undoItem is a command also where the class has nothing to take back: in an
// entry there may be, and in one of a dialog the toolkit's own undo works.
func (d *desk) undoItem() *fyne.MenuItem {
	i := fyne.NewMenuItem("Undo", func() {
		canvas := d.window.Canvas()
		if canvas.Overlays().Top() == nil {
			d.undo()
		} else if entry, ok := canvas.Focused().(fyne.Shortcutable); ok {
			entry.TypedShortcut(&fyne.ShortcutUndo{})
		}
	})
	i.Shortcut = &fyne.ShortcutUndo{}
	return i
}

// refreshMenu brings the names and ticks of the menu up to date.
func (d *desk) refreshMenu() {
	m := d.menu
	canUndo, canRedo := d.session.CanUndo, d.session.CanRedo
	if d.tryingHere() {
		canUndo, canRedo = d.session.CanUndoView, d.session.CanRedoView
	}
	change, ok := canUndo()
	m.undo.Label, m.undo.Disabled = named("Undo", change), !ok
	change, ok = canRedo()
	m.redo.Label, m.redo.Disabled = named("Redo", change), !ok
	v := look.VariantNamed(d.settings.Variant)
	m.light.Checked, m.dark.Checked, m.contrast.Checked = v == look.Light, v == look.Dark, v == look.HighContrast
	m.smaller.Disabled = d.settings.Scale == scales[0]
	m.larger.Disabled = d.settings.Scale == scales[len(scales)-1]
	m.recent.Disabled = len(d.settings.Recent) == 0
	m.recent.ChildMenu = d.recentMenu()
	for _, i := range m.ofBatch {
		i.Disabled = len(d.session.Worked().Batches) == 0
	}
	_, trying := d.session.Trying()
	for _, i := range m.ofTrial {
		i.Disabled = !trying
	}
	m.main.Refresh()
}

func named(verb, change string) string {
	if change == "" {
		return verb
	}
	return verb + ": " + change
}

func (d *desk) recentMenu() *fyne.Menu {
	var items []*fyne.MenuItem
	for _, path := range d.settings.Recent {
		items = append(items, d.plain(filepath.Base(path), func() { d.openGuarded(path) }))
	}
	return fyne.NewMenu("", items...)
}
