package measure

// Chart is one or more curves over a common axis on their way to a person. Like
// a figure it says what it rests on; all of its numbers are in the units of its
// axes.
type Chart struct {
	ID     string // stable within its batch: "kettle"
	Title  string // what it shows, in a few words
	X, Y   Axis
	Curves []Curve
	Marks  []Mark
	Basis  Basis
	// Source and Standing are what it rests on, as in a Figure.
	Source   string
	Standing string
	Note     string // what a person should know beside it, or ""
}

// Axis is what runs along one side of a chart.
type Axis struct {
	Label string // "after the lid goes on"
	Unit  string // "min"
}

// Curve is one line of a chart: Y over X, X rising.
type Curve struct {
	ID    string // what it is of: "water", "centre", "mean", "core", "air"
	Label string // as it stands at the line
	Short string // where there is little room; "": the label
	X, Y  []float64
}

// Mark is a place on one axis to compare with: a rule, a moment, a limit.
type Mark struct {
	ID    string // "one-minute"
	Label string
	OnX   bool // At is a place on the x axis, else on the y axis
	At    float64
}

// Drawn says whether there is anything to draw.
func (c Chart) Drawn() bool { return len(c.Curves) > 0 }
