package app

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

// keyboard is somebody at the window without a mouse.
type keyboard struct {
	*desk
	t *testing.T
}

// command presses Ctrl and a key, as the menu has it.
func (k keyboard) command(key fyne.KeyName, more fyne.KeyModifier) {
	k.t.Helper()
	for _, menu := range k.menu.main.Items {
		for _, item := range menu.Items {
			s, ok := item.Shortcut.(*desktop.CustomShortcut)
			if ok && s.KeyName == key && s.Modifier == fyne.KeyModifierShortcutDefault|more {
				item.Action()
				looktest.Settle(k.window, usualWidth, usualHeight)
				return
			}
		}
	}
	k.t.Fatalf("no command for %s", key)
}

// press presses a key in what has the focus, of a dialog where one is open.
func (k keyboard) press(keys ...fyne.KeyName) {
	k.t.Helper()
	for _, key := range keys {
		focused := k.window.Canvas().Focused()
		if focused == nil {
			k.t.Fatalf("%s is pressed and nothing has the focus", key)
		}
		focused.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

// tabTo goes on with Tab until the focus is where it is wanted.
func (k keyboard) tabTo(what string, there func(fyne.Focusable) bool) {
	k.t.Helper()
	for range 200 {
		test.FocusNext(k.window.Canvas())
		if focused := k.window.Canvas().Focused(); focused != nil && there(focused) {
			return
		}
	}
	k.t.Fatalf("Tab never comes to %s", what)
}

// field goes to the entry with a label and types over what stands in it.
func (k keyboard) field(label, text string) {
	k.t.Helper()
	var of fyne.Focusable
	for _, f := range found[*look.Field](k.window.Content()) {
		if f.Label() == label && of == nil {
			of = f.Entry()
		}
	}
	if of == nil {
		k.t.Fatalf("no field %q is shown", label)
	}
	k.tabTo(label, func(f fyne.Focusable) bool { return f == of })
	k.over(text)
	k.press(fyne.KeyReturn)
}

// over types over what stands in the entry that has the focus.
func (k keyboard) over(text string) {
	k.window.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	k.typeText(text)
}

// typeText types into what has the focus.
func (k keyboard) typeText(text string) {
	for _, sign := range text {
		k.window.Canvas().Focused().TypedRune(sign)
	}
}

// line opens a line of a list.
func (k keyboard) line(name string) {
	k.t.Helper()
	k.tabTo(name, func(f fyne.Focusable) bool {
		l, ok := f.(*look.Line)
		if !ok {
			return false
		}
		called, _ := l.Text()
		return called == name
	})
	k.press(fyne.KeyReturn)
	looktest.Settle(k.window, usualWidth, usualHeight)
}

// button presses a button.
func (k keyboard) button(label string) {
	k.t.Helper()
	k.tabTo(label, func(f fyne.Focusable) bool {
		b, ok := f.(*look.Button)
		return ok && b.Text == label
	})
	k.press(fyne.KeySpace)
	looktest.Settle(k.window, usualWidth, usualHeight)
}

// A whole class, from nothing to the file on the disk, by keys alone.
func TestAClassIsBuiltWithoutAMouse(t *testing.T) {
	d, said := newTestDesk(t)
	k := keyboard{d, t}
	k.command(fyne.KeyN, 0)
	k.field("Title", "Beans on a Tuesday")
	k.field("Date", "2027-07-06")
	k.line("Place")
	k.field("Altitude", "5,400 ft")
	k.field("Freezer", "14 cu ft")
	k.line("People")
	k.field("People who come", "9")
	k.line("Kit")
	k.button("Add a kettle")
	k.field("Name", "Station kettle")
	k.field("Holds", "1 gal")

	k.command(fyne.KeyB, 0)
	k.typeText("beans whole water")
	k.press(fyne.KeyReturn)
	looktest.Settle(d.window, usualWidth, usualHeight)
	k.field("Prepared, one station", "2 lb")

	k.command(fyne.Key3, 0)
	k.field("Prepared", "3 lb")
	k.command(fyne.KeyT, 0)
	k.field("Prepared", "5 lb") // in the trial
	k.command(fyne.KeyR, 0)

	said.path = filepath.Join(t.TempDir(), "tuesday.kettleside")
	k.command(fyne.KeyS, 0)
	c, err := class.Open(said.path)
	if err != nil {
		t.Fatal(err)
	}
	if c.Title != "Beans on a Tuesday" || c.Date != "2027-07-06" || c.People.Headcount != 9 ||
		c.Place.Altitude.String() != "5400 ft" || c.Place.Freezer.String() != "14 cu ft" ||
		len(c.Kit.Kettles) != 2 || c.Kit.Kettles[0].Name != "Station kettle" ||
		len(c.Batches) != 1 || c.Batches[0].Prepared.String() != "3 lb" || c.Batches[0].Treatment != "snap-beans-cut-water" {
		t.Errorf("the class is %+v", c)
	}
	if got := d.session.Worked().Batches[0].Minutes.Text; got != "4 min" { // 3 and one for the altitude
		t.Errorf("blanched for %s", got)
	}
}

// Everything in the menu has a key, and no key has two meanings.
func TestEveryCommandHasAKey(t *testing.T) {
	d, _ := newTestDesk(t)
	seen := map[string]string{}
	for _, menu := range d.menu.main.Items {
		for _, item := range menu.Items {
			if item.IsSeparator || item.ChildMenu != nil || item == d.menu.recent {
				continue
			}
			if item.Shortcut == nil {
				t.Errorf("%s > %s has no key", menu.Label, item.Label)
				continue
			}
			key := item.Shortcut.ShortcutName()
			if other, twice := seen[key]; twice {
				t.Errorf("%s means %s and %s", key, other, item.Label)
			}
			seen[key] = item.Label
		}
	}
}
