package measure

// Section is a piece cut through the middle, with the temperature in it at a few
// moments, on its way to a person. Like a figure it says what it rests on.
type Section struct {
	ID      string // stable within its batch: "through"
	Title   string // what it shows, in a few words
	Form    Form
	Says    string  // which piece it is: "a long round piece 0.2–0.4 in across"
	Low     float64 // what its tints run over: the piece as it went in
	High    float64 // and what surrounds it
	Moments []Moment
	Basis   Basis
	// Source and Standing are what it rests on, as in a Figure.
	Source   string
	Standing string
	Note     string // what a person should know beside it, or ""
}

// Form is the form of a piece that heat enters from outside.
type Form string

const (
	Flat  Form = "flat"  // heat comes through its two faces
	Long  Form = "long"  // round in section, and long
	Round Form = "round" // a ball
)

// Moment is the temperature through a piece at one time.
type Moment struct {
	Label   string    // "after 1 min"
	Temps   []float64 // at depths that are evenly apart, the first in the middle, the last outside; in the unit of Low and High
	Outside string    // as printed: "204 °F"
	Middle  string
	Lines   []Isotherm
}

// Isotherm is where a piece has one temperature.
type Isotherm struct {
	At    float64 // how far out from the middle: 0 there, 1 outside
	Label string  // "160 °F"
}

// Drawn says whether there is anything to draw.
func (s Section) Drawn() bool { return len(s.Moments) > 0 }
