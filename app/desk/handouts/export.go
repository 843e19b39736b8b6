package handouts

import (
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/exports"
)

// options are what is chosen in the area.
func (a *Area) options() exports.Options {
	o := exports.Options{Paper: a.chosenPaper(), AllTreatments: a.whole.Checked}
	for i, s := range exports.Sheets {
		if i < len(a.checks) && a.checks[i].Checked {
			o.Sheets = append(o.Sheets, s.ID)
		}
	}
	if i := a.grid.SelectedIndex(); i >= 0 {
		o.LabelGrid = a.grids[i].ID
	}
	return o
}

func (a *Area) chooseAndExport() {
	if !look.CommitFocused(a.host.Canvas()) {
		return
	}
	folder, name := a.host.Folder(), session.FileName(a.session.Class(), extension)
	if path := a.session.Path(); path != "" {
		folder = filepath.Dir(path)
		name = strings.TrimSuffix(filepath.Base(path), class.Extension) + extension
	}
	a.host.SaveFile(look.Say("Export the workbook"), folder, name, extension, a.exportTo)
}

// exportTo writes the workbook away from the thread of the window: what it
// writes is worked out already and does not change under it.
func (a *Area) exportTo(path string) {
	worked, options := a.session.Worked(), a.options()
	options.Made = time.Now()
	a.setExporting(true)
	a.away(func() {
		err := exports.WriteWorkbook(path, worked, options)
		fyne.Do(func() { a.exported(path, err) })
	})
}

func (a *Area) exported(path string, err error) {
	a.outcome.show(path, err)
	a.setExporting(false)
}

// Exporting says whether a workbook is being written.
func (a *Area) Exporting() bool { return a.exporting }

func (a *Area) setExporting(on bool) {
	a.exporting = on
	look.Show(a.progress, on)
	if on {
		a.progress.Start()
	} else {
		a.progress.Stop()
	}
	a.settle()
}

// outcome says beside the button what became of the last export.
type outcome struct {
	host     Host
	path     string
	says     *look.Text
	where    *look.Text
	workbook *look.Button
	folder   *look.Button
	box      *fyne.Container
}

func newOutcome(h Host) *outcome {
	o := &outcome{host: h, says: look.Body(""), where: look.Small("")}
	o.workbook = look.NewButton(look.Say("Open the workbook"), func() { o.open(o.path) })
	o.folder = look.NewButton(look.Say("Open the folder"), func() { o.open(filepath.Dir(o.path)) })
	o.box = look.Fold(560, 16, []float32{1, 1.1}, look.Column(1, o.says, o.where), look.Flow(150, 8, o.workbook, o.folder))
	o.box.Hide()
	return o
}

func (o *outcome) show(path string, err error) {
	o.path = path
	o.says.SetInk(look.Ink)
	o.says.SetText(look.Say("Written: %s", filepath.Base(path)))
	o.where.SetText(filepath.Dir(path))
	if err != nil {
		o.says.SetInk(look.Stop)
		o.says.SetText(look.Say("The workbook could not be written. %s", look.Sentence(look.Voice().Error(err))))
		o.where.SetText(look.Say("Nothing that stood there before was changed."))
	}
	look.Show(o.workbook, err == nil)
	look.Show(o.folder, err == nil)
	o.box.Show()
	look.Rearrange(o.box)
}

func (o *outcome) open(path string) {
	if err := o.host.Show(path); err != nil {
		o.says.SetInk(look.Stop)
		o.says.SetText(look.Say("It could not be opened from here: %s", look.Voice().Error(err)))
	}
}

// summary is what the workbook will be about.
type summary struct {
	session  *session.Session
	lines    *fyne.Container
	findings *look.Findings
	box      fyne.CanvasObject
}

func newSummary(s *session.Session) *summary {
	m := &summary{session: s, lines: look.Column(7), findings: look.NewFindings("", nil)}
	m.box = look.Column(22, look.Section(look.Say("What will be printed"), m.lines), look.Section(look.Say("Look at this first"), m.findings))
	return m
}

func (m *summary) show() {
	m.lines.Objects = nil
	for _, b := range m.session.Worked().Batches {
		name := look.NewText(b.Batch.Name, look.SizeText, look.Ink, fyne.TextStyle{}).Clipped()
		does := look.Say("no treatment of this table")
		if b.Known {
			does = strings.TrimSuffix(m.session.BatchDoes(b), ".") + " · " + m.session.SourceOf(b.Treatment)
			if len(b.Treatment.Changed) > 0 {
				does += " · " + look.Say("holds an edited value")
			}
		}
		m.lines.Add(look.Column(0, name, look.Small(look.Sentence(does))))
	}
	if len(m.lines.Objects) == 0 {
		m.lines.Add(look.Small(look.Say("No batches yet.")))
	}
	var serious []measure.Finding
	for _, f := range m.session.Findings() {
		if f.Severity != measure.Note {
			serious = append(serious, f)
		}
	}
	m.findings.Empty = look.Say("Nothing stands in the way of printing.")
	if len(m.session.Worked().Batches) == 0 {
		m.findings.Empty = look.Say("Nothing yet.")
	}
	m.findings.SetFindings(serious)
	m.lines.Refresh()
}
