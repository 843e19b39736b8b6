package app

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
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
	d.guardTyped(func() {
		if !d.session.Unsaved() {
			then()
			return
		}
		d.ask.Question(look.Say("Save the class first?"), look.Say("“%s” has changes that are not saved.", titleOf(d.session.Class())),
			ask.Answer{Label: look.Say("Save"), Do: func() { d.saveThen(then) }},
			ask.Answer{Label: look.Say("Leave without saving"), Do: then},
			ask.Answer{Label: look.Say("Go back")})
	})
}

// guardTyped makes sure that nothing typed and not yet made is lost.
func (d *desk) guardTyped(then func()) {
	if !look.CommitFocused(d.window.Canvas()) {
		return // the refused entry says what is wrong
	}
	if d.crops != nil && d.crops.Unfinished() {
		d.ask.Question(look.Say("Give up the change of a value?"), look.Say("In the crop table a change is typed that was not made."),
			ask.Answer{Label: look.Say("Give it up"), Do: func() { d.crops.GiveUp(); d.guardTyped(then) }},
			ask.Answer{Label: look.Say("Go back"), Do: func() { d.open("crops") }})
		return
	}
	if left := look.Refused(); left != "" {
		d.ask.Question(look.Say("Leave an entry out?"), left,
			ask.Answer{Label: look.Say("Leave it out"), Do: func() { look.RestoreRefused(); d.guardTyped(then) }},
			ask.Answer{Label: look.Say("Go back")})
		return
	}
	then()
}

func (d *desk) newClass() {
	d.guard(func() {
		c := class.New(d.session.Table().Edition)
		c.Kit.Kettles[0].Name, c.Kit.Burners[0].Name = look.Say("Kettle"), look.Say("Burner")
		d.session.Start(c, "")
		d.open("class")
	})
}

func (d *desk) demoClass() {
	d.guard(func() { d.session.Start(demoClass(d.settings.Language), ""); d.open("class") })
}

// demoClass is the class that the program opens with.
func demoClass(l words.Language) class.Class {
	c, err := class.Read(strings.NewReader(string(content.DemoClassIn(l))), "demo")
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
		if errors.Is(err, fs.ErrNotExist) {
			d.settings.forget(path)
			d.refreshMenu()
		}
		d.ask.Problem(look.Say("This class cannot be opened"), err)
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
	folder, name := d.settings.Folder, session.FileName(d.session.Class(), class.Extension)
	if path := d.session.Path(); path != "" {
		folder, name = filepath.Dir(path), filepath.Base(path)
	}
	d.ask.SaveFile(look.Say("Save the class"), folder, name, class.Extension, func(path string) { d.write(path, then) })
}

func (d *desk) write(path string, then func()) {
	if left := look.Refused(); left != "" {
		d.ask.Question(look.Say("Save without one entry?"), left,
			ask.Answer{Label: look.Say("Save without it"), Do: func() { look.RestoreRefused(); d.write(path, then) }},
			ask.Answer{Label: look.Say("Go back")})
		return
	}
	if err := d.session.Save(path); err != nil {
		d.ask.Problem(look.Say("The class could not be saved"), err)
		return
	}
	d.remember(path)
	then()
}

// dropped opens the first class file that is dropped on the window.
func (d *desk) dropped(_ fyne.Position, uris []fyne.URI) {
	for _, u := range uris {
		if strings.EqualFold(u.Extension(), class.Extension) {
			d.openGuarded(u.Path())
			return
		}
	}
	d.ask.Notice(look.Say("Not a class"), look.Say("A class is a file that ends in %s.", class.Extension))
}

// quit leaves the program, after the guard. A workbook that is being written
// would be lost with it.
func (d *desk) quit() {
	if d.exporting() {
		d.ask.Question(look.Say("Leave while the workbook is written?"), look.Say("The workbook is not complete yet. Leaving now gives it up."),
			ask.Answer{Label: look.Say("Wait for it")},
			ask.Answer{Label: look.Say("Leave now"), Do: d.leave})
		return
	}
	d.leave()
}

func (d *desk) leave() {
	d.guard(func() {
		d.forgetRecovery()
		d.keepSettings()
		d.window.SetCloseIntercept(nil)
		d.window.Close()
	})
}
