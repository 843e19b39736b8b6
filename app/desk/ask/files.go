package ask

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
)

// OpenFile asks for a file with one extension, beginning in a folder. It is
// not called where nothing was chosen.
func (d Dialogs) OpenFile(folder, extension string, then func(path string)) {
	chooser := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		if err != nil {
			d.Problem(look.Say("That file cannot be opened"), err)
			return
		}
		if file == nil {
			return
		}
		path := file.URI().Path()
		file.Close()
		then(path)
	}, d.Window)
	chooser.SetTitleText(look.Say("Open a class"))
	chooser.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	d.place(chooser, folder)
}

// Folder asks for a folder, beginning in another.
func (d Dialogs) Folder(folder string, then func(path string)) {
	chooser := dialog.NewFolderOpen(func(chosen fyne.ListableURI, err error) {
		if err != nil {
			d.Problem(look.Say("That folder cannot be used"), err)
			return
		}
		if chosen != nil {
			then(chosen.Path())
		}
	}, d.Window)
	chooser.SetTitleText(look.Say("Choose a folder"))
	d.place(chooser, folder)
}

func (d Dialogs) place(chooser *dialog.FileDialog, folder string) {
	if at, err := storage.ListerForURI(storage.NewFileURI(folder)); err == nil {
		chooser.SetLocation(at)
	}
	size := d.Window.Canvas().Size()
	chooser.Resize(fyne.NewSize(min(860, size.Width-60), min(600, size.Height-60)))
	chooser.Show()
	d.leaveOnEscape(chooser)
}

// leaveOnEscape gives the toolkit's own file dialog the key it lacks.
func (d Dialogs) leaveOnEscape(chooser *dialog.FileDialog) {
	canvas := d.Window.Canvas()
	before := canvas.OnTypedKey()
	canvas.SetOnTypedKey(func(key *fyne.KeyEvent) {
		if key.Name == fyne.KeyEscape {
			chooser.Dismiss()
		}
	})
	chooser.SetOnClosed(func() { canvas.SetOnTypedKey(before) })
}

// SaveFile asks where to write a file. The extension is put to the name, and a
// file that is there already is only replaced after asking. Nothing is written
// here.
func (d Dialogs) SaveFile(title, folder, name, extension string, then func(path string)) {
	form := &saveForm{asks: d, extension: extension, then: then}
	form.name = form.entry(strings.TrimSuffix(name, extension))
	form.folder = form.entry(folder)
	form.where = look.Small("")
	choose := look.NewButton(look.Say("Choose…"), form.choose)
	save := look.NewButton(look.Say("Save"), form.save)
	save.Importance = widget.HighImportance
	cancel := look.NewButton(look.Say("Cancel"), form.close)
	choose.Escape, save.Escape, cancel.Escape = form.close, form.close, form.close
	content := look.Column(12,
		look.Labelled(look.Say("Name"), form.name),
		look.Labelled(look.Say("Folder"), container.NewBorder(nil, nil, nil, choose, form.folder)),
		form.where,
		look.Inset(0, 8, container.NewBorder(nil, nil, nil, container.NewHBox(save, cancel))))
	form.dialog = dialog.NewCustomWithoutButtons(title, content, d.Window)
	form.dialog.Resize(fyne.NewSize(min(620, d.Window.Canvas().Size().Width-60), 0))
	form.show()
	form.dialog.Show()
	d.Window.Canvas().Focus(form.name)
	form.name.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// saveForm is the dialog of SaveFile.
type saveForm struct {
	asks         Dialogs
	extension    string
	then         func(path string)
	name, folder *keyEntry
	where        *look.Text
	dialog       *dialog.CustomDialog
}

func (f *saveForm) entry(text string) *keyEntry {
	e := &keyEntry{enter: f.save, escape: f.close}
	e.ExtendBaseWidget(e)
	e.SetText(text)
	e.OnChanged = func(string) { f.show() }
	return e
}

// path is the file that would be written, "" where no name is typed.
func (f *saveForm) path() string {
	name := strings.TrimSpace(f.name.Text)
	if name == "" || name == f.extension {
		return ""
	}
	if !strings.EqualFold(filepath.Ext(name), f.extension) {
		name += f.extension
	}
	return filepath.Join(strings.TrimSpace(f.folder.Text), name)
}

func (f *saveForm) show() {
	f.where.SetInk(look.InkSoft)
	f.where.SetText(look.Say("Writes %s", filepath.Base(f.path())))
	if f.path() == "" {
		f.where.SetText(look.Say("Type a name for the file."))
	}
}

func (f *saveForm) choose() {
	f.asks.Folder(f.folder.Text, func(path string) { f.folder.SetText(path) })
}

func (f *saveForm) close() { f.dialog.Hide() }

func (f *saveForm) save() {
	path := f.path()
	if problem := f.problem(path); problem != "" {
		f.where.SetInk(look.Stop)
		f.where.SetText(problem)
		return
	}
	f.close()
	if _, err := os.Stat(path); err != nil {
		f.then(path)
		return
	}
	f.asks.Question(look.Say("Replace the file?"), look.Say("%s is there already.", filepath.Base(path)),
		Answer{look.Say("Keep it"), nil},
		Answer{look.Say("Replace it"), func() { f.then(path) }})
}

// problem says why nothing can be written at the path, "" where it can.
func (f *saveForm) problem(path string) string {
	if path == "" {
		return look.Say("Type a name for the file.")
	}
	if strings.ContainsAny(strings.TrimSpace(f.name.Text), `/\:*?"<>|`) {
		return `A name cannot hold any of / \ : * ? " < > |`
	}
	info, err := os.Stat(filepath.Dir(path))
	if err != nil || !info.IsDir() {
		return look.Say("That folder is not there. Choose another, or make it first.")
	}
	return ""
}

// keyEntry is an entry that takes Enter and Escape for its dialog.
type keyEntry struct {
	widget.Entry
	enter, escape func()
}

// TypedKey is for the toolkit.
func (e *keyEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape:
		e.escape()
	case fyne.KeyReturn, fyne.KeyEnter:
		e.enter()
	default:
		e.Entry.TypedKey(key)
	}
}
