// Package handouts is the handouts area of the window: which sheets go into
// the workbook, on which paper, and where it is written.
package handouts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content/words"
	"example.org/kettleside/exports"
)

// Host is what the area needs of the window program.
type Host interface {
	// SaveFile asks where to write and calls then with the path.
	SaveFile(title, folder, name, extension string, then func(path string))
	// Show opens a file or a folder in whatever the system opens it with.
	Show(path string) error
	// Folder is where files were written last.
	Folder() string
	// Paper is the paper chosen last; SetPaper keeps another.
	Paper() exports.Paper
	SetPaper(p exports.Paper)
	// Canvas is that of the window.
	Canvas() fyne.Canvas
}

// extension is that of a workbook.
const extension = ".xlsx"

// Area is the handouts area.
type Area struct {
	session  *session.Session
	host     Host
	follower *look.Follower

	checks    []*look.Check
	paper     *widget.RadioGroup
	whole     *look.Check // every treatment of the class's crops
	grid      *look.Select
	grids     []exports.Grid // in the order in which grid offers them
	gridBox   *fyne.Container
	export    *look.Button
	hint      *look.Text
	progress  *widget.ProgressBarInfinite
	outcome   *outcome
	summary   *summary
	content   fyne.CanvasObject
	filling   bool
	exporting bool
	away      func(work func()) // runs work outside the thread of the window
}

// does says what each sheet is for, as a text to be said later; a sheet without
// words here shows its title only.
var does = map[string]string{
	exports.CoverSheet:        words.Key("Place, people, tasks, shopping and totals: the page for whoever runs the class."),
	exports.TreatmentsSheet:   words.Key("Each treatment with its minutes, when the clock starts, chilling, headspace and source."),
	exports.BatchSheet:        words.Key("Each batch worked through for one station, with the working of every figure."),
	exports.OwnNumbersSheet:   words.Key("Participants type their own pounds, kettle and altitude; the sheet works it out again."),
	exports.ShoppingSheet:     words.Key("What to buy, with ice, packs and water: to tick off, with a column for the price."),
	exports.StationCardsSheet: words.Key("One page in large type for each batch, to stand on its stations."),
	exports.PowerCutSheet:     words.Key("How long a freezer keeps, what may be frozen again, dry ice."),
	exports.PracticeSheet:     words.Key("Eight questions from this class's own numbers, with room to write."),
	exports.AnswersSheet:      words.Key("The answers to the practice sheet, each with working and source."),
	exports.EvaluationSheet:   words.Key("One page for participants, before and now; no names, only counts."),
	exports.CurvesSheet:       words.Key("The kettle of one batch and the share of the freezer as charts, with their numbers."),
	exports.LabelsSheet:       words.Key("Labels for the packs: food, day, amount, best by, and how to use it."),
}

// New makes the area for a session.
func New(s *session.Session, h Host) *Area {
	a := &Area{session: s, host: h, away: func(work func()) { go work() }}
	a.outcome = newOutcome(h)
	a.summary = newSummary(s)
	sheets := a.sheets()
	page := look.Fold(780, 36, []float32{1.45, 1}, sheets, look.Column(20, a.printing(), a.summary.box))
	a.content = look.Frame(nil, a.exporter(), nil, nil, look.VScroll(28, 18, page))
	a.follower = look.Follow(a.content, a.Refresh)
	s.Subscribe(a.follower.Changed)
	a.Refresh()
	return a
}

// Shown is called when the area was hidden and is shown again.
func (a *Area) Shown() { a.follower.Shown() }

// Content is the area as one object.
func (a *Area) Content() fyne.CanvasObject { return a.content }

// Refresh shows what the class would print.
func (a *Area) Refresh() {
	a.summary.show()
	a.settle()
}

// sheets are the boxes to tick, each with what the sheet is for; those that a
// workbook usually has are ticked.
func (a *Area) sheets() fyne.CanvasObject {
	boxes := make([]fyne.CanvasObject, len(exports.Sheets))
	for i, s := range exports.Sheets {
		check := look.NewCheck(look.Say(s.Title), func(bool) { a.settle() })
		check.Checked = s.Usual
		a.checks = append(a.checks, check)
		boxes[i] = look.Column(-6, check, look.Inset(32, 0, look.Small(look.Say(does[s.ID]))))
	}
	half := (len(boxes) + 1) / 2
	return look.Section(look.Say("Sheets"), look.Fold(400, 0, []float32{1, 1}, look.Column(0, boxes[:half]...), look.Column(0, boxes[half:]...)))
}

func (a *Area) printing() fyne.CanvasObject {
	a.paper = widget.NewRadioGroup([]string{paperName(exports.Letter), paperName(exports.A4)}, func(string) { a.paperChosen() })
	a.paper.Horizontal, a.paper.Required = true, true
	a.grid = look.NewSelect(nil, nil)
	a.gridBox = look.Labelled(look.Say("Labels on"), look.Boxed(a.grid))
	a.whole = look.NewCheck(look.Say("List every treatment of the class's crops"), nil)
	a.filling = true
	a.paper.SetSelected(paperName(a.host.Paper()))
	a.filling = false
	a.showGrids()
	return look.Section(look.Say("Printing"), look.Fold(400, 12, []float32{1, 1.3}, look.Labelled(look.Say("Paper"), a.paper), a.gridBox), a.whole)
}

// paperName is a paper as it is offered; what is not known is letter.
func paperName(p exports.Paper) string {
	if p == exports.A4 {
		return "A4"
	}
	return look.Say("Letter")
}

func (a *Area) chosenPaper() exports.Paper {
	if a.paper.Selected == paperName(exports.A4) {
		return exports.A4
	}
	return exports.Letter
}

func (a *Area) paperChosen() {
	if a.filling {
		return
	}
	a.host.SetPaper(a.chosenPaper())
	a.showGrids()
}

// showGrids offers the label sheets of the chosen paper.
func (a *Area) showGrids() {
	a.grid.Options, a.grids = nil, nil
	for _, g := range exports.Grids() {
		if g.Paper == a.chosenPaper() {
			a.grid.Options = append(a.grid.Options, g.Say(look.Voice()))
			a.grids = append(a.grids, g)
		}
	}
	a.grid.Selected = ""
	if len(a.grid.Options) > 0 {
		a.grid.Selected = a.grid.Options[0]
	}
	a.grid.Refresh()
}

func (a *Area) exporter() fyne.CanvasObject {
	a.export = look.NewButton(look.Say("Export workbook…"), a.chooseAndExport)
	a.export.Importance = widget.HighImportance
	a.hint = look.Small("")
	a.progress = widget.NewProgressBarInfinite()
	a.progress.Stop()
	a.progress.Hide()
	says := look.Column(4, a.hint, a.outcome.box, a.progress)
	return look.Column(0, look.Hairline(), look.Inset(28, 12, container.NewBorder(nil, nil, container.NewCenter(a.export), nil, look.Inset(16, 8, says))))
}

// settle says whether something can be exported.
func (a *Area) settle() {
	if a.export == nil {
		return
	}
	ticked := len(a.options().Sheets)
	empty := len(a.session.Worked().Batches) == 0
	hint := look.Say("One workbook with a sheet for each. It opens in any spreadsheet program and prints as it stands.")
	switch {
	case ticked == 0:
		hint = look.Say("Tick at least one sheet.")
	case empty:
		hint = look.Say("The class has no batches yet, so there is nothing to print. Add one in the class area.")
	}
	a.hint.SetText(hint)
	look.Show(a.hint, ticked == 0 || empty || !a.outcome.box.Visible())
	if ticked == 0 || empty || a.exporting {
		a.export.Disable()
	} else {
		a.export.Enable()
	}
	look.Show(a.gridBox, a.checks[len(a.checks)-1].Checked)
}
