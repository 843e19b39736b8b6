package measure

// Severity is how much a finding weighs.
type Severity string

const (
	Stop Severity = "stop" // the plan cannot work, or the input cannot be used
	Mind Severity = "mind" // it can work, but something needs a decision
	Note Severity = "note" // good to know
)

// Finding is what the engine wants a person to know: a plain sentence with its
// numbers, what to do about it, and the rule or source it rests on.
type Finding struct {
	ID       string // "water-too-much-for-kettle"
	Severity Severity
	Says     string
	Do       string
	Source   string // id of a source or rule in the table, or ""
}
