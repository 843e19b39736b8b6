package content

import "example.org/kettleside/content/words"

// Advice is one line of the power-cut card: what it is, then what to do.
type Advice struct {
	ID     string `json:"id"`
	Part   Part   `json:"part"`
	Title  string `json:"title"`
	Text   string `json:"text"`   // with {rule-id} placeholders: these name the sources of its numbers
	Source string `json:"source"` // of what is no rule: id in the crop table's sources, "common practice", or ""
}

// Part is a part of the power-cut card.
type Part string

const (
	PowerOff   Part = "off"     // while the power is out
	PowerBack  Part = "back"    // what to keep when it is back
	WithDryIce Part = "dry ice" //
)

// PowerCut is the power-cut and refreezing card, in order.
func PowerCut(l words.Language) []Advice { return load[Advice](l, "power-cut.json") }

// Exercise is one question of the practice sheet. Its number is its place, on the
// sheet and in the answer key.
type Exercise struct {
	ID   string `json:"id"`   // which figure answers it: the sheets know
	Asks string `json:"asks"` // with {placeholders} for what the class has: {prepared}, {kettle}, {pack}, {altitude}, {freezer}
}

// Practice lists the questions of the practice sheet, in order.
func Practice(l words.Language) []Exercise { return load[Exercise](l, "practice.json") }

// Item is one line of the evaluation form. A tally goes by its id, which never
// changes its meaning: an item that asks something else has another id.
type Item struct {
	ID   string   `json:"id"`
	Kind ItemKind `json:"kind"`
	Text string   `json:"text"` // with {rule-id} placeholders
	True bool     `json:"true"` // of a statement: whether it is so
	Rule string   `json:"rule"` // of a statement: the rule of the table that says so
}

// ItemKind is how an item is answered.
type ItemKind string

const (
	Sure      ItemKind = "sure"      // how sure, from 1 to 5, before and now
	Statement ItemKind = "statement" // true, not true, or not known
	WillDo    ItemKind = "will"      // what somebody will do
	Open      ItemKind = "open"      // in own words
)

// Evaluation lists the items of the evaluation form, in order.
func Evaluation(l words.Language) []Item { return load[Item](l, "evaluation.json") }
