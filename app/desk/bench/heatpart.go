package bench

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// heatPart is what the heat model says of the batch: three curves with the
// figures that they answer, the piece cut through, and the rest in small. It
// stands apart from the rules, which are what people do.
type heatPart struct {
	content fyne.CanvasObject
	pieces  []*heatTile
	through *throughTile
	more    *rest
}

// heatTile is one curve under the figures that it answers.
type heatTile struct {
	content fyne.CanvasObject
	figures []*look.FigureView
	title   *look.Text
	chart   *drawing.Chart
}

// newHeatTile makes a tile for so many figures, its chart a share of its width
// high.
func newHeatTile(named func(*look.FigureView) *look.FigureView, figures int, share float32) *heatTile {
	t := &heatTile{chart: drawing.NewChart(), title: pictureTitle()}
	row := tiles(figureWide, 12)
	for range figures {
		view := named(look.NewFigure(measure.Figure{}))
		t.figures = append(t.figures, view)
		row.Add(view)
	}
	t.content = look.Column(6, row, t.title, scaled(share, 250, t.chart))
	return t
}

// pictureTitle says what the picture under it shows.
func pictureTitle() *look.Text {
	return look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{Bold: true}).Wrapped()
}

// figureWide is what a time of minutes and seconds takes with its unit.
const figureWide = 172

// throughTile is the piece cut through, with what is taken for a piece.
type throughTile struct {
	content fyne.CanvasObject
	title   *look.Text
	says    *look.Text
	section *drawing.Section
}

func newThroughTile() *throughTile {
	t := &throughTile{title: pictureTitle(), says: look.Small(""), section: drawing.NewSection()}
	t.content = look.Column(4, t.title, scaled(0.36, 230, t.section), t.says)
	return t
}

// show fills the tile; false where no piece is estimated, and it is hidden.
func (t *throughTile) show(s measure.Section) bool {
	look.Show(t.content, s.Drawn())
	t.title.SetText(s.Title)
	t.says.SetText(strings.TrimSpace(look.Say("Counted from when the piece goes in. Above it stands the temperature outside, within it that of the middle. It is taken as a %s.", s.Says) + " " + s.Note))
	t.section.Set(s)
	return s.Drawn()
}

func newHeatPart(named func(*look.FigureView) *look.FigureView) *heatPart {
	estimates := func(v *look.FigureView) *look.FigureView {
		return named(v.SaidAbove())
	}
	h := &heatPart{more: newRest(estimates), through: newThroughTile()}
	kettle, bath, freezer := newHeatTile(estimates, 4, 0.36), newHeatTile(estimates, 2, 0.58), newHeatTile(estimates, 2, 0.58)
	h.pieces = []*heatTile{kettle, bath, freezer}
	h.content = look.Section(look.Say("What heat does, by estimate"),
		look.Small(look.Say("The model follows heat and nothing else. It explains and warns; what to do is what the rules above say.")),
		kettle.content, h.through.content, tiles(284, 20, bath.content, freezer.content), h.more.content)
	return h
}

func (h *heatPart) show(now shown) {
	e := now.batch.Estimates
	charts := []measure.Chart{e.Kettle, e.Bath, e.Freezer}
	leading := [][]measure.Figure{
		present(e.Back, e.InAMinute, renamed(e.LargestLoad, look.Say("Largest load in time")), renamed(e.Centre, look.Say("Centre at the lift")), e.Layers),
		present(e.IceBalance, e.Cool),
		present(e.Freezing, renamed(e.Growth, look.Say("Grows by"))),
	}
	var above []string
	some := false
	for i, t := range h.pieces {
		figures := leading[i][:min(len(leading[i]), len(t.figures))]
		for _, f := range figures {
			above = append(above, f.ID)
		}
		some = t.show(figures, charts[i]) || some
	}
	some = h.through.show(e.Through) || some
	some = h.more.show(now, e.Figures(), above) || some
	look.Show(h.content, some)
}

// show fills the tile; false where there is nothing to show, and it is hidden.
func (t *heatTile) show(figures []measure.Figure, chart measure.Chart) bool {
	for i, v := range t.figures {
		look.Show(v, i < len(figures))
		if i < len(figures) {
			v.SetFigure(counted(figures[i]))
		}
	}
	t.chart.Set(chart)
	t.title.SetText(chart.Title)
	look.Show(t.title, chart.Drawn())
	there := len(figures) > 0 || chart.ID != ""
	look.Show(t.chart, chart.ID != "")
	look.Show(t.content, there)
	return there
}

// present are the figures that there are.
func present(figures ...measure.Figure) []measure.Figure {
	return slices.DeleteFunc(figures, func(f measure.Figure) bool { return f.ID == "" })
}
