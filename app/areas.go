package app

import (
	"net/url"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/crops"
	"example.org/kettleside/app/desk/handouts"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/planning"
	"example.org/kettleside/app/desk/questions"
	"example.org/kettleside/exports"
)

// newAreas lists the areas of the window, in the order of the rail.
func newAreas(d *desk) []*area {
	return []*area{
		{id: "crops", name: look.Say("Crops"), icon: look.IconCrops(), make: d.makeCrops},
		{id: "class", name: look.Say("Class"), icon: look.IconClass(), make: d.makePlanning},
		{id: "batch", name: look.Say("Batch"), icon: look.IconBatch(), make: d.makeBench},
		{id: "handouts", name: look.Say("Handouts"), icon: look.IconHandouts(), make: d.makeHandouts},
		{id: "questions", name: look.Say("Questions"), icon: look.IconQuestions(), make: d.makeQuestions},
	}
}

func (d *desk) makeCrops() (fyne.CanvasObject, func()) {
	d.crops = crops.New(d.session, func() { d.open("batch") })
	d.crops.OpenQuestion = func(id string) { d.openThen("questions", func() { d.questions.Open(id) }) }
	d.crops.SetColumns(d.settings.Columns)
	d.crops.ColumnsChosen = func(names []string) {
		d.settings.Columns = names
		d.keepSettings()
	}
	return d.crops.Content, d.crops.Shown
}

func (d *desk) makePlanning() (fyne.CanvasObject, func()) {
	d.planning = planning.New(d.session, d.window)
	d.planning.OpenBatch = func() { d.open("batch") }
	return d.planning.Content(), d.planning.Shown
}

func (d *desk) makeBench() (fyne.CanvasObject, func()) {
	d.bench = bench.New(d.session, d.window, func() { d.open("crops") })
	return d.bench.Content, d.bench.Shown
}

func (d *desk) makeHandouts() (fyne.CanvasObject, func()) {
	a := handouts.New(d.session, handoutsHost{d})
	d.exporting = a.Exporting
	return a.Content(), a.Shown
}

func (d *desk) makeQuestions() (fyne.CanvasObject, func()) {
	d.questions = questions.New(d.session)
	return d.questions.Content, d.questions.Shown
}

// keepTableEdits lays the educator's earlier edits over the crop table.
func (d *desk) keepTableEdits() error {
	return d.session.KeepEditsIn(filepath.Join(d.folder, "table-edits.json"))
}

// handoutsHost is the desk as the handouts area needs it.
type handoutsHost struct{ *desk }

func (h handoutsHost) SaveFile(title, folder, name, extension string, then func(path string)) {
	h.ask.SaveFile(title, folder, name, extension, func(path string) {
		h.settings.Folder = filepath.Dir(path)
		h.keepSettings()
		then(path)
	})
}

// Show opens a file or folder with whatever the system opens it with.
func (h handoutsHost) Show(path string) error {
	return h.app.OpenURL(fileURL(path))
}

// fileURL is the address of a file, whatever signs its name holds.
func fileURL(path string) *url.URL {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") { // C:/…
		path = "/" + path
	}
	return &url.URL{Scheme: "file", Path: path}
}

func (h handoutsHost) Folder() string       { return h.settings.Folder }
func (h handoutsHost) Paper() exports.Paper { return exports.Paper(h.settings.Paper) }
func (h handoutsHost) Canvas() fyne.Canvas  { return h.window.Canvas() }

func (h handoutsHost) SetPaper(p exports.Paper) {
	h.settings.Paper = string(p)
	h.keepSettings()
}
