package exports

import (
	"bytes"
	"regexp"
	"slices"
	"testing"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// Every question can be answered in both systems of units, names what the table
// knows, and is no surer than the rules it prints.
func TestQuestionsRestOnTheTable(t *testing.T) {
	table := reference.Shipped()
	rulesIn := regexp.MustCompile(`\{([a-z-]+)\}`)
	sure := []string{"from memory", "common practice", "read"} // the least sure first
	for _, q := range content.Questions() {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			answer, err := q.Answer(batch.RuleTexts(table, units))
			if err != nil || utf8.RuneCountInString(answer) > 420 {
				t.Errorf("%s: %d characters, %v: %s", q.ID, utf8.RuneCountInString(answer), err, answer)
			}
		}
		if _, known := table.Source(q.Source); !known && q.Source != "" {
			t.Errorf("%s: no source is called %s", q.ID, q.Source)
		}
		for _, crop := range q.Crops {
			if _, known := table.Crop(crop); !known {
				t.Errorf("%s: no crop is called %s", q.ID, crop)
			}
		}
		for _, m := range rulesIn.FindAllStringSubmatch(q.Says, -1) {
			if rule := table.Rule(m[1]); slices.Index(sure, q.Standing) > slices.Index(sure, string(rule.Standing)) {
				t.Errorf("%s is said to be %s, its rule %s is %s", q.ID, q.Standing, m[1], rule.Standing)
			}
		}
	}
}

// Every sentence with the numbers of a batch is said of some batch of the demo
// class.
func TestQuestionsFindTheirFigures(t *testing.T) {
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo.kettleside")
	noErr(t, err)
	table := reference.Shipped()
	said := map[string]bool{}
	known := map[string]bool{}
	for _, b := range class.Work(c, table).Batches {
		figures := map[string]string{}
		for _, f := range append(b.Worked.Figures(), b.Worked.Estimates.Figures()...) {
			known[f.ID] = true
			if !f.InWords() || f.ID == "headspace" || f.ID == "clock" {
				figures[f.ID] = f.Text
			}
		}
		for _, q := range content.Questions() {
			if _, ok := q.Here(batch.RuleTexts(table, c.Units), figures); ok && (len(q.Crops) > 0 || slices.Contains(q.Topics, content.Glass) || q.Concerns(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)) {
				said[q.ID] = true
			}
		}
	}
	figuresIn := regexp.MustCompile(`\{figure:([a-z-]+)\}`)
	for _, q := range content.Questions() {
		if q.SaysHere != "" && !said[q.ID] {
			t.Errorf("%s has no batch whose figures it can show: %s", q.ID, q.SaysHere)
		}
		for _, m := range figuresIn.FindAllStringSubmatch(q.SaysHere, -1) {
			if !known[m[1]] {
				t.Errorf("%s: no figure is called %s", q.ID, m[1])
			}
		}
	}
}
