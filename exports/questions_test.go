package exports

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Every text of the content can be filled in every language and both systems of
// units.
func TestTextsAreFilled(t *testing.T) {
	table := reference.Shipped()
	for _, l := range words.Languages() {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			rules := batch.RuleTexts(table, units, words.In(l))
			for _, q := range content.Questions(l) {
				answer, err := q.Answer(rules)
				if err != nil || utf8.RuneCountInString(answer) > 420 {
					t.Errorf("%s in %s: %d characters, %v: %s", q.ID, l, utf8.RuneCountInString(answer), err, answer)
				}
			}
			filled := func(id, text string) {
				if full, err := content.Fill(text, rules); err != nil || strings.Contains(full, "  ") {
					t.Errorf("%s in %s: %v: %s", id, l, err, full)
				}
			}
			for _, c := range content.Cautions(l, content.AllTopics()...) {
				filled(c.ID, c.Text)
			}
			for _, method := range []content.Topic{content.BoilWater, content.Steam, content.Cook, content.Raw} {
				for _, s := range content.Steps(l, method) {
					filled(s.ID, s.Text)
				}
			}
		}
	}
}

// Every question names what the table knows, and is no surer than the rules it
// prints. Other languages name the same.
func TestQuestionsRestOnTheTable(t *testing.T) {
	table := reference.Shipped()
	rulesIn := regexp.MustCompile(`\{([a-z-]+)\}`)
	sure := []string{"from memory", "common practice", "read"} // the least sure first
	for _, q := range content.Questions(words.English) {
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
	for _, l := range words.Languages() {
		t.Run(string(l), func(t *testing.T) { questionsFindTheirFigures(t, l) })
	}
}

func questionsFindTheirFigures(t *testing.T, l words.Language) {
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo.kettleside")
	noErr(t, err)
	table := reference.Shipped()
	said := map[string]bool{}
	known := map[string]bool{}
	for _, b := range class.WorkWith(class.With{Voice: words.In(l)}, c, table).Batches {
		figures := map[string]string{}
		for _, f := range append(b.Worked.Figures(), b.Worked.Estimates.Figures()...) {
			known[f.ID] = true
			if !f.InWords() || f.ID == "headspace" || f.ID == "clock" {
				figures[f.ID] = f.Text
			}
		}
		for _, q := range content.Questions(l) {
			if _, ok := q.Here(batch.RuleTexts(table, c.Units, words.In(l)), figures); ok && (len(q.Crops) > 0 || slices.Contains(q.Topics, content.Glass) || q.Concerns(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)) {
				said[q.ID] = true
			}
		}
	}
	figuresIn := regexp.MustCompile(`\{figure:([a-z-]+)\}`)
	for _, q := range content.Questions(l) {
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
