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
}

func newMenu(d *desk) *menu {
	m := &menu{
		undo:     item("Undo", d.undo, fyne.KeyZ, 0),
		redo:     item("Redo", d.redo, fyne.KeyZ, fyne.KeyModifierShift),
		recent:   fyne.NewMenuItem("Open recent", nil),
		light:    fyne.NewMenuItem("Light", func() { d.setVariant(look.Light) }),
		dark:     fyne.NewMenuItem("Dark", func() { d.setVariant(look.Dark) }),
		contrast: fyne.NewMenuItem("High contrast", func() { d.setVariant(look.HighContrast) }),
		larger:   item("Larger text", func() { d.scale(1) }, fyne.KeyEqual, 0),
		smaller:  item("Smaller text", func() { d.scale(-1) }, fyne.KeyMinus, 0),
	}
	quit := item("Quit", d.quit, fyne.KeyQ, 0)
	quit.IsQuit = true
	file := fyne.NewMenu("File",
		item("New class", d.newClass, fyne.KeyN, 0),
		item("Open…", d.chooseAndOpen, fyne.KeyO, 0),
		m.recent,
		fyne.NewMenuItem("Open the demo class", d.demoClass),
		fyne.NewMenuItemSeparator(),
		item("Save", d.save, fyne.KeyS, 0),
		item("Save as…", d.saveAs, fyne.KeyS, fyne.KeyModifierShift),
		fyne.NewMenuItemSeparator(),
		quit)
	edit := fyne.NewMenu("Edit", m.editItems(d)...)
	help := fyne.NewMenu("Help",
		fyne.NewMenuItem("What the figures rest on", d.showSources),
		fyne.NewMenuItem("Cautions", d.showCautions),
		fyne.NewMenuItem("Keys", d.showKeys),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem("About Kettleside", d.showAbout))
	m.main = fyne.NewMainMenu(file, edit, fyne.NewMenu("View", m.viewItems(d)...), help)
	return m
}

func (m *menu) editItems(d *desk) []*fyne.MenuItem {
	s := d.session
	m.ofBatch = []*fyne.MenuItem{
		item("Duplicate batch", func() { d.must(s.DuplicateBatch(s.Selected())) }, fyne.KeyD, 0),
		item("Move batch up", func() { d.must(s.MoveBatch(s.Selected(), -1)) }, fyne.KeyUp, fyne.KeyModifierShift),
		item("Move batch down", func() { d.must(s.MoveBatch(s.Selected(), 1)) }, fyne.KeyDown, fyne.KeyModifierShift),
		fyne.NewMenuItem("Remove batch", func() { d.must(s.RemoveBatch(s.Selected())) }),
	}
	add := item("Add batch…", d.addBatch, fyne.KeyB, 0)
	return append([]*fyne.MenuItem{m.undo, m.redo, fyne.NewMenuItemSeparator(), add}, m.ofBatch...)
}

func (m *menu) viewItems(d *desk) []*fyne.MenuItem {
	keys := []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6}
	var items []*fyne.MenuItem
	for i, a := range d.areas {
		items = append(items, item(a.name, func() { d.open(a.id) }, keys[i], 0))
	}
	return append(items,
		item("Search the crop table", d.find, fyne.KeyF, 0),
		item("What to mind", d.showFindings, fyne.KeyM, 0),
		fyne.NewMenuItemSeparator(), m.light, m.dark, m.contrast,
		fyne.NewMenuItemSeparator(), m.larger, m.smaller)
}

func item(label string, do func(), key fyne.KeyName, more fyne.KeyModifier) *fyne.MenuItem {
	i := fyne.NewMenuItem(label, do)
	i.Shortcut = &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | more}
	return i
}

// refreshMenu brings the names and ticks of the menu up to date.
func (d *desk) refreshMenu() {
	m := d.menu
	change, ok := d.session.CanUndo()
	m.undo.Label, m.undo.Disabled = named("Undo", change), !ok
	change, ok = d.session.CanRedo()
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
		items = append(items, fyne.NewMenuItem(filepath.Base(path), func() { d.openGuarded(path) }))
	}
	return fyne.NewMenu("", items...)
}
