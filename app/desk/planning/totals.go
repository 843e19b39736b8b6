package planning

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// totals are the figures of the whole class, with what to mind in it below.
type totals struct {
	area     *Area
	figures  []*look.FigureView
	findings *look.Findings
	box      fyne.CanvasObject
}

func newTotals(a *Area) *totals {
	t := &totals{area: a, findings: look.NewFindings(look.Say("Nothing stands in the way."), nil)}
	column := look.Flow(180, 10)
	for _, f := range a.session.Worked().Totals.Figures() {
		view := look.NewFigure(f)
		view.SourceName = a.session.SourceName
		t.figures = append(t.figures, view)
		column.Add(view)
	}
	t.box = look.Frame(nil, nil, look.Upright(), nil, look.VScroll(20, 18,
		look.Column(24, look.Section(look.Say("In all"), column), look.Section(look.Say("To mind"), t.findings))))
	return t
}

func (t *totals) object() fyne.CanvasObject { return t.box }

func (t *totals) show() {
	list := t.area.session.Worked().Totals.Figures()
	for i, view := range t.figures {
		view.SetFigure(list[i])
	}
	var serious []measure.Finding
	for _, f := range t.area.session.Findings() {
		if f.Severity != measure.Note {
			serious = append(serious, f)
		}
	}
	t.findings.SetFindings(serious)
	t.box.Refresh() // figures may have grown by a line
}
