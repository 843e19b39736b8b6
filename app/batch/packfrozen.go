package batch

import (
	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
)

// Frozen is one pack after freezing, by estimate, against the published
// headspace, which stays what people leave.
type Frozen struct {
	GrowsShare float64 // of the filling; 0: not estimated
	LeftIn     float64 // headspace left, inches; 0: none, or not worked out for this container
	OverIn     float64 // how far it would stand over the brim, inches; 0: it fits
	Text       string  // "⅜ in left", "needs ⅝ in"
}

// frozenBag grows as its walls let it.
func (w *worker) frozenBag(percent float64) Frozen {
	return Frozen{GrowsShare: percent / 100, Text: w.Say("the bag gives way")}
}

// frozenLoose is a pack without headspace, as the table has it for what lies
// loosely.
func (w *worker) frozenLoose(percent float64) Frozen {
	return Frozen{GrowsShare: percent / 100, Text: w.Say("it grows into the air")}
}

// frozenIn is a filling between rigid walls.
func (w *worker) frozenIn(headspaceM, percent float64, fit heat.Fit) Frozen {
	f := Frozen{GrowsShare: percent / 100, LeftIn: fit.LeftM / measure.Inch.Factor}
	_, left, _ := w.length(f.LeftIn)
	switch {
	case fit.Holds && fit.LeftM > tightM:
		f.Text = w.Say("%s left", left)
	case fit.NeedM < headspaceM+tightM:
		f.Text = w.Say("just fits")
	default:
		f.OverIn = (fit.RiseM - headspaceM) / measure.Inch.Factor
		f.Text = w.Say("needs %s", w.lengthUp(fit.NeedM))
	}
	return f
}
