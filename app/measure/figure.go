package measure

// Basis says what a figure rests on.
type Basis string

const (
	Tabled   Basis = "table"    // a value of the crop table
	Ruled    Basis = "rule"     // the rules of method applied to what was entered
	Entered  Basis = "entered"  // typed by the educator
	Estimate Basis = "estimate" // computed or judged; always shown as such
)

// Figure is a number on its way to a person. It carries its unit, one line of
// working and what it rests on, so that every surface can show them.
type Figure struct {
	ID    string // stable within its batch or class: "water"
	Label string // "Water in the kettle"

	// Value is the number in Unit; High is the upper end of a range and
	// equals Value where the figure is one number. Where no number exists
	// Words say what to do, and Value and High are 0.
	Value, High float64
	Unit        string
	Words       string

	Text    string // as printed: "3 gal", "40–60 lb", "cook until tender"
	Also    string // the same in other units: "12 qt · 11.4 L"
	Working string // "3 lb × 1 gal/lb = 3 gal"
	Basis   Basis
	Source  string // id of the source in the table, or "entered"
	// Standing is how sure its source is, in the table's words ("read", "from
	// memory", "common practice"), "" where nothing published is in it.
	Standing string
	Note     string // what a person should know beside it, or ""
}

// IsRange says whether the figure is a range of numbers.
func (f Figure) IsRange() bool { return f.High != f.Value }

// InWords says whether the figure has words instead of a number.
func (f Figure) InWords() bool { return f.Words != "" && f.Value == 0 && f.High == 0 }

// Range prints two ends with one unit, as one number where both print alike:
// "40–60 lb", "3 min".
func Range(low, high string, unit string) string {
	text := low
	if high != low {
		text += "–" + high
	}
	if unit == "" {
		return text
	}
	return text + " " + unit
}
