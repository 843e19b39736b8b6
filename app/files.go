package app

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
)

// asker is what the window needs of its dialogs; a test answers in their
// place.
type asker interface {
	Question(title, text string, answers ...ask.Answer)
	Notice(title, text string)
	Problem(title string, err error)
	Page(title string, content fyne.CanvasObject)
	OpenFile(folder, extension string, then func(path string))
	SaveFile(title, folder, name, extension string, then func(path string))
}

// guard makes sure that nothing typed or unsaved is lost before something
// takes the class off the desk.
func (d *desk) guard(then func()) {
	if !look.CommitFocused(d.window.Canvas()) {
		return // the refused entry says what is wrong
	}
	if !d.session.Unsaved() {
		then()
		return
	}
	d.ask.Question("Save the class first?", "“"+titleOf(d.session.Class())+"” has changes that are not saved.",
		ask.Answer{Label: "Save", Do: func() { d.saveThen(then) }},
		ask.Answer{Label: "Leave without saving", Do: then},
		ask.Answer{Label: "Go back"})
}

func (d *desk) newClass() {
	d.guard(func() { d.session.Start(class.New(d.session.Table().Edition), ""); d.open("class") })
}

func (d *desk) demoClass() {
	d.guard(func() { d.session.Start(demoClass(), ""); d.open("class") })
}

// demoClass is the class that the program opens with.
func demoClass() class.Class {
	c, err := class.Read(strings.NewReader(string(content.DemoClass())), "demo")
	if err != nil {
		panic("app: demo class: " + err.Error()) // part of the program; a test reads it
	}
	return c
}

func (d *desk) chooseAndOpen() {
	d.guard(func() { d.ask.OpenFile(d.settings.Folder, class.Extension, d.openFile) })
}

func (d *desk) openGuarded(path string) { d.guard(func() { d.openFile(path) }) }

// openFile puts the class of a file on the desk.
func (d *desk) openFile(path string) {
	if err := d.session.Open(path); err != nil {
		if os.IsNotExist(err) {
			d.settings.forget(path)
			d.refreshMenu()
		}
		d.ask.Problem("This class cannot be opened", err)
		return
	}
	d.remember(path)
}

func (d *desk) remember(path string) {
	d.settings.used(path)
	d.keepSettings()
	d.refreshMenu()
}

func (d *desk) save() { d.saveThen(func() {}) }

// saveThen saves, and does something where that worked.
func (d *desk) saveThen(then func()) {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	if d.session.Path() == "" {
		d.saveAsThen(then)
		return
	}
	d.write(d.session.Path(), then)
}

func (d *desk) saveAs() { d.saveAsThen(func() {}) }

func (d *desk) saveAsThen(then func()) {
	if !look.CommitFocused(d.window.Canvas()) {
		return
	}
	folder, name := d.settings.Folder, fileNameFor(d.session.Class())
	if path := d.session.Path(); path != "" {
		folder, name = filepath.Dir(path), filepath.Base(path)
	}
	d.ask.SaveFile("Save the class", folder, name, class.Extension, func(path string) { d.write(path, then) })
}

func (d *desk) write(path string, then func()) {
	if err := d.session.Save(path); err != nil {
		d.ask.Problem("The class could not be saved", err)
		return
	}
	d.remember(path)
	then()
}

// fileNameFor makes a file name out of date and title.
func fileNameFor(c class.Class) string {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return -1
		}
		return r
	}, strings.TrimSpace(c.Date+" "+c.Title))
	if name == "" {
		name = "class"
	}
	return name + class.Extension
}

// dropped opens the first class file that is dropped on the window.
func (d *desk) dropped(_ fyne.Position, uris []fyne.URI) {
	for _, u := range uris {
		if strings.EqualFold(u.Extension(), class.Extension) {
			d.openGuarded(u.Path())
			return
		}
	}
	d.ask.Notice("Not a class", "A class is a file that ends in "+class.Extension+".")
}

// quit leaves the program, after the guard.
func (d *desk) quit() {
	d.guard(func() {
		d.forgetRecovery()
		d.keepSettings()
		d.window.SetCloseIntercept(nil)
		d.window.Close()
	})
}
