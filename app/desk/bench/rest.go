package bench

import (
	"slices"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// rest shows the figures of a list that do not stand larger elsewhere.
type rest struct {
	content *fyne.Container
	views   map[string]*look.FigureView // by id of the figure
	named   func(*look.FigureView) *look.FigureView
}

func newRest(named func(*look.FigureView) *look.FigureView) *rest {
	return &rest{content: tiles(198, 16), views: map[string]*look.FigureView{}, named: named}
}

// above are the figures that stand over the drawings.
var above = []string{"loads", "load-water", "minutes", "clock", "chill", "ice", "headspace", "packs", "freezer-day", "freezer-days"}

// leading are the figures that come first of the rest, the first one last.
var leading = []string{"best-by", "buy"}

// show shows every figure but those that stand elsewhere; false where none is
// left.
func (r *rest) show(now shown, figures []measure.Figure, elsewhere []string) bool {
	figures = slices.DeleteFunc(figures, func(f measure.Figure) bool {
		return f.ID == "" || slices.Contains(elsewhere, f.ID)
	})
	slices.SortStableFunc(figures, func(x, y measure.Figure) int {
		return slices.Index(leading, y.ID) - slices.Index(leading, x.ID)
	})
	objects := make([]fyne.CanvasObject, 0, len(figures))
	for _, f := range figures {
		view, ok := r.views[f.ID]
		if !ok {
			view = r.named(look.NewSmallFigure(f))
			r.views[f.ID] = view
		}
		view.SetFigure(counted(f))
		objects = append(objects, view)
	}
	if view, ok := r.views["published-minutes"]; ok {
		_, changed := now.batch.Treatment.Changed[reference.FieldMinutes]
		view.SetEdited(changed)
	}
	if !slices.Equal(objects, r.content.Objects) {
		r.content.Objects = objects
		r.content.Refresh()
	}
	return len(figures) > 0
}
