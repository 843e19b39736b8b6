package drawing

import (
	"cmp"
	"math"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/kettleside/app/measure"
)

// Chart draws curves over a common axis, with marks to compare with and what
// the curves say under the pointer. Its title, and its note where there are
// curves, stand beside it and are not drawn here. The name of the x axis is
// read after its unit: "min after the lid goes on".
type Chart struct {
	surface
	graph   graph
	set     *setting   // the graph laid out, nil when it changed
	setFor  [3]float32 // width, height and how far larger type enlarged it
	frame   frame      // where the curves stand, as last drawn
	pointed bool
	at      float64 // under the pointer, in the unit of the x axis
}

var _ desktop.Hoverable = (*Chart)(nil)

// NewChart makes an empty picture; Set fills it.
func NewChart() *Chart {
	c := &Chart{}
	c.setUp(c, fyne.NewSize(280, 150), c.draw)
	return c
}

// Set shows another chart. What is drawn is a copy, so that curves may be
// filled anew in place.
func (c *Chart) Set(chart measure.Chart) {
	g := graphOf(chart)
	if reflect.DeepEqual(c.graph, g) {
		return
	}
	c.graph, c.set = g, nil
	c.Refresh()
}

// ReadAt is what all curves say at a place on the x axis, in one line, or ""
// where there is none: "2.5 min · water 204 °F · centre 171 °F". It reads
// between the points that are given.
func (c *Chart) ReadAt(x float64) string {
	return joined(c.graph.reading(c.graph.stop(x), unitsEach))
}

// MouseIn is for the toolkit.
func (c *Chart) MouseIn(e *desktop.MouseEvent) { c.pointAt(e.Position.X) }

// MouseMoved is for the toolkit.
func (c *Chart) MouseMoved(e *desktop.MouseEvent) { c.pointAt(e.Position.X) }

// MouseOut is for the toolkit.
func (c *Chart) MouseOut() { c.point(false, 0) }

// nearby is how far beside the curves the pointer still reads their ends.
const nearby = 6

func (c *Chart) pointAt(x float32) {
	at, f := float64(x/c.grown()), c.frame
	if f.right <= f.left || at < f.left-nearby || at > f.right+nearby {
		c.point(false, 0)
		return
	}
	c.point(true, c.graph.stop(f.xAt(min(max(at, f.left), f.right))))
}

// point draws anew only where the reading moves.
func (c *Chart) point(pointed bool, at float64) {
	if c.pointed == pointed && c.at == at {
		return
	}
	c.pointed, c.at = pointed, at
	c.Refresh()
}

// graph is a chart made fit to draw.
type graph struct {
	id     string
	x, y   measure.Axis
	curves []curve
	marks  []measure.Mark
	note   string
}

// curve is one line in the units of the axes. What is no number is a gap
// between two of its parts; a point that goes back on x is left out.
type curve struct {
	id, label string
	short     string // in a reading
	parts     path
}

// More than a chart can show.
const (
	mostPoints = 2000
	mostCurves = 8
	mostMarks  = 12
	mostOnAxis = 1e6
)

func graphOf(c measure.Chart) graph {
	g := graph{id: c.ID, x: c.X, y: c.Y, note: c.Note}
	for _, one := range c.Curves[:min(len(c.Curves), mostCurves)] {
		if parts := partsOf(one.X, one.Y); len(parts) > 0 {
			g.curves = append(g.curves, curve{one.ID, one.Label, cmp.Or(one.Short, one.Label), parts})
		}
	}
	for _, m := range c.Marks {
		if onAxis(m.At) && len(g.marks) < mostMarks {
			g.marks = append(g.marks, m)
		}
	}
	return g
}

// onAxis says whether a number can stand on an axis.
func onAxis(x float64) bool { return math.Abs(x) <= mostOnAxis } // false for NaN

func partsOf(xs, ys []float64) path {
	n := min(len(xs), len(ys))
	stride := (n + mostPoints - 1) / mostPoints
	var parts path
	gap, last := true, math.Inf(-1)
	for i := 0; i < n; i += stride {
		switch x, y := xs[i], ys[i]; {
		case !onAxis(x) || !onAxis(y):
			gap = true
		case x < last:
		case gap:
			parts = append(parts, []point{{x, y}})
			gap, last = false, x
		default:
			parts[len(parts)-1] = append(parts[len(parts)-1], point{x, y})
			last = x
		}
	}
	return parts
}

// value reads a curve at x, on the straight line between two points; slack is
// how far beyond an end its last value still counts.
func (c curve) value(x, slack float64) (float64, bool) {
	for _, points := range c.parts {
		first, last := points[0], points[len(points)-1]
		if x < first.x-slack || x > last.x+slack {
			continue
		}
		if x <= first.x {
			return first.y, true
		}
		for i, b := range points[1:] {
			if a := points[i]; x <= b.x {
				return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x), true
			}
		}
		return last.y, true
	}
	return 0, false
}
