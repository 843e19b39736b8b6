package content

import (
	"slices"
	"strings"

	"example.org/kettleside/content/words"
)

// Question is one "what if" as people in class ask it, with its short answer.
// Its slices are shared with the package: they are for reading.
type Question struct {
	ID       string   `json:"id"`
	Asks     string   `json:"asks"`     // as a person asks it
	Also     []string `json:"also"`     // other wordings and key words, for the search
	Says     string   `json:"answer"`   // the general answer, with {rule-id} placeholders
	SaysHere string   `json:"here"`     // one sentence with {figure:id} placeholders too, or ""
	Source   string   `json:"source"`   // id in the crop table's sources, or "" where the answer is no value of theirs
	Standing string   `json:"standing"` // how sure its main point is, no surer than the rules it prints: "read", "from memory" or "common practice"
	Topics   []Topic  `json:"topics"`   // as far as one fits
	Crops    []string `json:"crops"`    // ids of the crops it concerns; none: any
}

// Questions lists all questions, by subject in the order of the work.
func Questions(l words.Language) []Question { return slices.Clone(room(l).questions) }

// Answer is the general answer, filled with the rules: it does not depend on
// any batch.
func (q Question) Answer(rules map[string]string) (string, error) { return Fill(q.Says, rules) }

// Here is the sentence with the numbers of one batch, false where the question
// has none or one of its figures is missing. The figures go by their id
// ("load-weight") and are the texts as printed. A figure belongs into them only
// where it answers: a number, or words such as the clock's or a headspace of
// "none", but not words that say which input is missing. Here does not ask
// whether the batch is one that the question is about; Concerns does.
func (q Question) Here(rules, figures map[string]string) (string, bool) {
	if q.SaysHere == "" {
		return "", false
	}
	text, err := fill(q.SaysHere, func(key string) (string, bool) {
		if id, ofBatch := strings.CutPrefix(key, figureKey); ofBatch {
			return figures[id], figures[id] != ""
		}
		value, known := rules[key]
		return value, known
	})
	return text, err == nil
}

// figureKey begins a placeholder for a figure of the batch.
const figureKey = "figure:"

// Concerns says whether the question is about a batch with this method
// ("water", "steam", "cook" or "raw"), container ("bag", "box" or "jar") and
// crop: whether its numbers belong under the answer. A question that names
// methods is about those, and one on glass about jars.
func (q Question) Concerns(method, container, crop string) bool {
	if len(q.Crops) > 0 && !slices.Contains(q.Crops, crop) {
		return false
	}
	if slices.Contains(q.Topics, Glass) && container != "jar" {
		return false
	}
	named := slices.ContainsFunc(q.Topics, func(t Topic) bool { return t == BoilWater || t == Steam || t == Cook || t == Raw })
	return !named || slices.Contains(q.Topics, Topic(method))
}
