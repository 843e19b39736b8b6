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

// newAreas makes the areas of the window, in the order of the rail.
func newAreas(d *desk) []*area {
	d.crops = crops.New(d.session, func() { d.open("batch") })
	d.planning = planning.New(d.session, d.window)
	d.planning.OpenBatch = func() { d.open("batch") }
	d.bench = bench.New(d.session, d.window, func() { d.open("crops") })
	d.questions = questions.New(d.session)
	handouts := handouts.New(d.session, handoutsHost{d})
	d.exporting = handouts.Exporting
	return []*area{
		{"crops", "Crops", look.IconCrops(), d.crops.Content},
		{"class", "Class", look.IconClass(), d.planning.Content()},
		{"batch", "Batch", look.IconBatch(), d.bench.Content},
		{"handouts", "Handouts", look.IconHandouts(), handouts.Content()},
		{"questions", "Questions", look.IconQuestions(), d.questions.Content},
	}
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
