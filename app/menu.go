package app

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// menu is the menu bar. Every shortcut of the program belongs to an item of
// it: only such a shortcut works while something is being typed.
type menu struct {
	main                   *fyne.MainMenu
	undo, redo, recent     *fyne.MenuItem
	light, dark, contrast  *fyne.MenuItem
	languages              map[words.Language]*fyne.MenuItem
	larger, smaller, usual *fyne.MenuItem
	us, metric             *fyne.MenuItem
	ofBatch                []*fyne.MenuItem // what needs a batch
	ofTrial                []*fyne.MenuItem // what needs a trial on view
}

func newMenu(d *desk) *menu {
	item := d.item
	shifted := func(label string, do func(), key fyne.KeyName) *fyne.MenuItem {
		return item(label, do, key, fyne.KeyModifierShift)
	}
	m := &menu{
		undo:      d.stepItem(look.Say("Undo"), d.undo, &fyne.ShortcutUndo{}),
		redo:      d.stepItem(look.Say("Redo"), d.redo, &fyne.ShortcutRedo{}),
		recent:    fyne.NewMenuItem(look.Say("Open recent"), nil),
		light:     shifted(look.Say("Light"), func() { d.setVariant(look.Light) }, fyne.Key1),
		dark:      shifted(look.Say("Dark"), func() { d.setVariant(look.Dark) }, fyne.Key2),
		contrast:  shifted(look.Say("High contrast"), func() { d.setVariant(look.HighContrast) }, fyne.Key3),
		languages: map[words.Language]*fyne.MenuItem{},
		larger:    item(look.Say("Larger text"), func() { d.rescale(d.settings.beside(1)) }, fyne.KeyEqual, 0),
		usual:     item(look.Say("Usual size of text"), func() { d.rescale(1) }, fyne.Key0, 0),
		us:        shifted(look.Say("Pounds, gallons, °F"), func() { d.setUnits(measure.US) }, fyne.Key4),
		metric:    shifted(look.Say("Kilograms, litres, °C"), func() { d.setUnits(measure.Metric) }, fyne.Key5),
		smaller:   item(look.Say("Smaller text"), func() { d.rescale(d.settings.beside(-1)) }, fyne.KeyMinus, 0),
	}
	for i, l := range words.Languages() {
		m.languages[l] = shifted(l.Name(), func() { d.setLanguage(l) }, []fyne.KeyName{fyne.Key6, fyne.Key7}[i])
	}
	quit := item(look.Say("Quit"), d.quit, fyne.KeyQ, 0)
	quit.IsQuit = true
	file := fyne.NewMenu(look.Say("File"),
		item(look.Say("New class"), d.newClass, fyne.KeyN, 0),
		item(look.Say("Open…"), d.chooseAndOpen, fyne.KeyO, 0),
		m.recent,
		shifted(look.Say("Open the demo class"), d.demoClass, fyne.KeyO),
		fyne.NewMenuItemSeparator(),
		item(look.Say("Save"), d.save, fyne.KeyS, 0),
		item(look.Say("Save as…"), d.saveAs, fyne.KeyS, fyne.KeyModifierShift),
		fyne.NewMenuItemSeparator(),
		quit)
	edit := fyne.NewMenu(look.Say("Edit"), m.editItems(d)...)
	help := fyne.NewMenu(look.Say("Help"),
		shifted(look.Say("What the figures rest on"), d.showSources, fyne.KeyF),
		shifted(look.Say("Cautions"), d.showCautions, fyne.KeyC),
		item(look.Say("Keys"), d.showKeys, fyne.KeySlash, 0),
		fyne.NewMenuItemSeparator(),
		shifted(look.Say("About Kettleside"), d.showAbout, fyne.KeyA))
	m.main = fyne.NewMainMenu(file, edit, fyne.NewMenu(look.Say("Trial"), m.trialItems(d)...), fyne.NewMenu(look.Say("View"), m.viewItems(d)...),
		fyne.NewMenu(look.Say("Appearance"), m.appearance()...), help)
	return m
}

func (m *menu) editItems(d *desk) []*fyne.MenuItem {
	s, item := d.session, d.item
	m.ofBatch = []*fyne.MenuItem{
		item(look.Say("Duplicate batch"), func() { d.withBatch(s.DuplicateBatch) }, fyne.KeyD, 0),
		item(look.Say("Move batch up"), func() { d.withBatch(func(i int) error { return s.MoveBatch(i, -1) }) }, fyne.KeyUp, fyne.KeyModifierShift),
		item(look.Say("Move batch down"), func() { d.withBatch(func(i int) error { return s.MoveBatch(i, 1) }) }, fyne.KeyDown, fyne.KeyModifierShift),
		item(look.Say("Remove batch"), func() { d.withBatch(s.RemoveBatch) }, fyne.KeyX, fyne.KeyModifierShift),
	}
	add := item(look.Say("Add batch…"), d.addBatch, fyne.KeyB, 0)
	return append([]*fyne.MenuItem{m.undo, m.redo, fyne.NewMenuItemSeparator(), add}, m.ofBatch...)
}

func (m *menu) trialItems(d *desk) []*fyne.MenuItem {
	try := d.item(look.Say("Try it on a copy"), func() {
		d.openThen("batch", func() { d.bench.Try() })
	}, fyne.KeyT, 0)
	m.ofBatch = append(m.ofBatch, try)
	inBatch := func(do func()) func() { return func() { d.openThen("batch", do) } } // the area may not be made yet
	m.ofTrial = []*fyne.MenuItem{
		d.item(look.Say("Return to the plan"), inBatch(func() { d.bench.ReturnToPlan() }), fyne.KeyR, 0),
		d.item(look.Say("Adopt into the plan"), inBatch(func() { d.bench.AdoptTrial() }), fyne.KeyT, fyne.KeyModifierShift),
		d.item(look.Say("Drop the trial"), inBatch(func() { d.bench.DropTrial() }), fyne.KeyR, fyne.KeyModifierShift),
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
		item(look.Say("Search the crop table"), d.find, fyne.KeyF, 0),
		item(look.Say("Ask a question from the room"), d.askQuestion, fyne.KeyK, 0),
		item(look.Say("What to mind"), d.showFindings, fyne.KeyM, 0),
		fyne.NewMenuItemSeparator(),
		item(look.Say("Projector view"), d.openProjection, fyne.KeyP, 0),
		item(look.Say("Projector: next page"), func() { d.turn(true) }, fyne.KeyPageDown, 0),
		item(look.Say("Projector: page before"), func() { d.turn(false) }, fyne.KeyPageUp, 0),
		item(look.Say("Projector: full screen or window (F11)"), d.fillScreen, fyne.KeyF11, 0))
}

// appearance is how things are said and drawn.
func (m *menu) appearance() []*fyne.MenuItem {
	return []*fyne.MenuItem{
		m.us, m.metric,
		fyne.NewMenuItemSeparator(), m.languages[words.English], m.languages[words.Spanish],
		fyne.NewMenuItemSeparator(), m.light, m.dark, m.contrast,
		fyne.NewMenuItemSeparator(), m.larger, m.smaller, m.usual,
	}
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

// stepItem undoes or redoes. It is a command also where the class has nothing to
// take back or bring back: in an entry there may be, and in one of a dialog the
// toolkit's own undo and redo work.
func (d *desk) stepItem(label string, step func(), shortcut fyne.Shortcut) *fyne.MenuItem {
	i := fyne.NewMenuItem(label, func() {
		canvas := d.window.Canvas()
		if canvas.Overlays().Top() == nil {
			step()
		} else if entry, ok := canvas.Focused().(fyne.Shortcutable); ok {
			entry.TypedShortcut(shortcut)
		}
	})
	i.Shortcut = shortcut
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
	m.undo.Label, m.undo.Disabled = named(look.Say("Undo"), change), !ok
	change, ok = canRedo()
	m.redo.Label, m.redo.Disabled = named(look.Say("Redo"), change), !ok
	v := look.VariantNamed(d.settings.Variant)
	m.light.Checked, m.dark.Checked, m.contrast.Checked = v == look.Light, v == look.Dark, v == look.HighContrast
	for l, item := range m.languages {
		item.Checked = l == d.settings.Language
	}
	units := d.session.View().Class.Units
	m.us.Checked, m.metric.Checked = units == measure.US, units == measure.Metric
	m.usual.Disabled = d.settings.Scale == 1
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
	return verb + ": " + look.Say(change)
}

func (d *desk) recentMenu() *fyne.Menu {
	var items []*fyne.MenuItem
	for _, path := range d.settings.Recent {
		items = append(items, d.plain(filepath.Base(path), func() { d.openGuarded(path) }))
	}
	return fyne.NewMenu("", items...)
}
