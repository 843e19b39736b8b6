package content

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/kettleside/content/words"
)

// digitsAllowed lists the questions with a digit that no rule and no figure
// holds, and why.
var digitsAllowed = map[string]string{
	"hands": "how long to wash hands is in no rule of freezing; the caution on clean hands prints the same",
}

// estimates are the figures that are estimates or may be: a sentence with one
// of them says so.
var estimates = []string{
	"boils", "packs", "buy", "first-boil", "back-at-boil", "largest-load", "layer", "layers", "boiled-away", "centre", "enzyme-left", "vitamin-c",
	"ice-balance", "freezing", "growth",
}

var (
	placeholder = regexp.MustCompile(`\{[^{}]*\}`)
	ruleKey     = regexp.MustCompile(`^\{[a-z]+(-[a-z]+)*\}$`)
	figureOf    = regexp.MustCompile(`^\{figure:([a-z]+(?:-[a-z]+)*)\}$`)
	kebab       = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	sentenceEnd = regexp.MustCompile(`[.?!](\s|$)`)
)

func TestQuestionsAreComplete(t *testing.T) {
	for _, l := range words.Languages() {
		t.Run(string(l), func(t *testing.T) { questionsAreComplete(t, Questions(l)) })
	}
}

func questionsAreComplete(t *testing.T, all []Question) {
	if len(all) < 60 || len(all) > 90 {
		t.Errorf("%d questions; want 60 to 90", len(all))
	}
	ids, asked := map[string]bool{}, map[string]bool{}
	for _, q := range all {
		if !kebab.MatchString(q.ID) || ids[q.ID] || asked[q.Asks] {
			t.Errorf("%s: the id is not in kebab case, or it or the question stands twice", q.ID)
		}
		ids[q.ID], asked[q.Asks] = true, true
		if !strings.HasSuffix(q.Asks, "?") || len(q.Also) < 4 || slices.Contains(q.Also, "") {
			t.Errorf("%s: not asked as a question, or with too few other wordings", q.ID)
		}
		if !slices.Contains([]string{"read", "from memory", "common practice"}, q.Standing) || q.Standing == "read" && q.Source == "" {
			t.Errorf("%s: standing %q, source %q", q.ID, q.Standing, q.Source)
		}
		for _, topic := range q.Topics {
			if !slices.Contains(AllTopics(), topic) {
				t.Errorf("%s: no topic is called %q", q.ID, topic)
			}
		}
		for _, crop := range q.Crops {
			if !kebab.MatchString(crop) {
				t.Errorf("%s: %q is no id of a crop", q.ID, crop)
			}
		}
	}
	for id := range digitsAllowed {
		if !ids[id] {
			t.Errorf("a digit is allowed in %s, which is not there", id)
		}
	}
}

// mostSentences is how many an answer may have. Spanish ones are shorter: they
// are read easily by people who learn the method in it.
var mostSentences = map[words.Language]int{words.English: 3, words.Spanish: 5}

func TestAnswersAreShortAndNameNoNumberThatARuleHolds(t *testing.T) {
	for l, most := range mostSentences {
		t.Run(string(l), func(t *testing.T) { answersAreShort(t, Questions(l), most) })
	}
}

func answersAreShort(t *testing.T, all []Question, most int) {
	for _, q := range all {
		bare := placeholder.ReplaceAllString(q.Says, "")
		switch n := len(sentenceEnd.FindAllString(bare, -1)); {
		case utf8.RuneCountInString(q.Says) > 420, n < 1, n > most, !strings.HasSuffix(q.Says, "."):
			t.Errorf("%s: %d characters in %d sentences, or no full stop: %s", q.ID, utf8.RuneCountInString(q.Says), n, q.Says)
		case strings.ContainsAny(bare, "{}") || strings.Contains(q.Says, "  ") || strings.Contains(bare, "..") || q.Says != strings.TrimSpace(q.Says):
			t.Errorf("%s is badly set: %s", q.ID, q.Says)
		}
		for _, p := range placeholder.FindAllString(q.Says, -1) {
			if !ruleKey.MatchString(p) {
				t.Errorf("%s: %s is no rule, and the answer stands without a batch", q.ID, p)
			}
		}
		if _, allowed := digitsAllowed[q.ID]; strings.ContainsAny(bare, "0123456789½¼¾⅓⅔") != allowed {
			t.Errorf("%s: digits are allowed: %v; %s", q.ID, allowed, bare)
		}
	}
}

// estimateWord is what an estimate is called.
var estimateWord = map[words.Language]string{words.English: "estimate", words.Spanish: "estimación"}

func TestSentencesOfABatch(t *testing.T) {
	for l, estimate := range estimateWord {
		t.Run(string(l), func(t *testing.T) { sentencesOfABatch(t, Questions(l), estimate) })
	}
}

func sentencesOfABatch(t *testing.T, all []Question, estimate string) {
	with := 0
	for _, q := range all {
		if q.SaysHere == "" {
			continue
		}
		with++
		bare := placeholder.ReplaceAllString(q.SaysHere, "")
		if len(sentenceEnd.FindAllString(bare, -1)) != 1 || !strings.HasSuffix(q.SaysHere, ".") || len(q.SaysHere) > 200 || strings.ContainsAny(bare, "{}0123456789") {
			t.Errorf("%s: not one short sentence without digits: %s", q.ID, q.SaysHere)
		}
		var figures []string
		for _, p := range placeholder.FindAllString(q.SaysHere, -1) {
			if f := figureOf.FindStringSubmatch(p); f != nil {
				figures = append(figures, f[1])
			} else if !ruleKey.MatchString(p) {
				t.Errorf("%s: %s is neither a figure nor a rule", q.ID, p)
			}
		}
		if len(figures) == 0 {
			t.Errorf("%s has no figure of the batch: %s", q.ID, q.SaysHere)
		}
		if slices.ContainsFunc(figures, func(f string) bool { return slices.Contains(estimates, f) }) && !strings.Contains(strings.ToLower(bare), estimate) {
			t.Errorf("%s shows an estimate without saying so: %s", q.ID, q.SaysHere)
		}
		if slices.Contains(figures, "minutes") && !slices.Contains(figures, "clock") { // minutes never travel alone
			t.Errorf("%s shows minutes without when the clock starts: %s", q.ID, q.SaysHere)
		}
		if slices.Contains(figures, "minutes") && !slices.ContainsFunc(q.Topics, func(t Topic) bool { return t == BoilWater || t == Steam }) {
			t.Errorf("%s shows minutes but is not bound to a timed method", q.ID)
		}
	}
	if with < 30 {
		t.Errorf("only %d questions have the numbers of a batch", with)
	}
}

// The words of the caution on plug-in burners: never a verdict on the wiring.
func TestAnswersOnPowerGiveNoVerdict(t *testing.T) {
	for _, q := range append(Questions(words.English), Questions(words.Spanish)...) {
		for _, verdict := range []string{"safe", "allowed", "complies", "segur", "permit", "cumple"} {
			if slices.Contains(q.Topics, Power) && strings.Contains(strings.ToLower(q.Says), verdict) {
				t.Errorf("%s says %q", q.ID, verdict)
			}
		}
	}
}

func question(t *testing.T, id string) Question {
	t.Helper()
	for _, q := range Questions(words.English) {
		if q.ID == id {
			return q
		}
	}
	t.Fatalf("no question %s", id)
	return Question{}
}

func TestAnswerAndHere(t *testing.T) {
	q := question(t, "water-how-much")
	rules := map[string]string{"water-gal-per-lb": "1 gallon per pound", "water-leafy-gal-per-lb": "2 gallons per pound"}
	if got, err := q.Answer(rules); err != nil || !strings.HasPrefix(got, "1 gallon per pound of prepared vegetables, and 2 gallons per pound for leafy greens.") {
		t.Errorf("%q, %v", got, err)
	}
	if got, err := q.Answer(nil); err == nil {
		t.Errorf("an answer with a gap: %q", got)
	}
	if got, ok := q.Here(rules, map[string]string{"water": "3 gal", "load-water": "1 gal"}); !ok || got != "This batch: 3 gal in all, and at least 1 gal in the kettle for each load." {
		t.Errorf("%q, %v", got, ok)
	}
	for _, figures := range []map[string]string{nil, {"water": "3 gal"}, {"water": "3 gal", "load-water": ""}} {
		if got, ok := q.Here(rules, figures); ok || got != "" {
			t.Errorf("%v: %q, although a figure is missing", figures, got)
		}
	}
	if got, ok := question(t, "lid").Here(rules, map[string]string{"water": "3 gal"}); ok || got != "" {
		t.Errorf("a question without numbers has %q", got)
	}
	both := Question{SaysHere: "{figure:ice}, at {rule}."}
	if got, ok := both.Here(map[string]string{"rule": "1 lb per lb", "figure:ice": "no"}, map[string]string{"ice": "3 lb", "rule": "no"}); !ok || got != "3 lb, at 1 lb per lb." {
		t.Errorf("%q, %v", got, ok)
	}
}

func TestConcerns(t *testing.T) {
	for _, c := range []struct {
		id, method, container, crop string
		want                        bool
	}{
		{"water-how-much", "water", "bag", "snap-beans", true},
		{"water-how-much", "steam", "bag", "broccoli", false},
		{"clock-start", "steam", "bag", "broccoli", true},
		{"clock-start", "cook", "box", "pumpkin", false},
		{"ice-how-much", "steam", "bag", "broccoli", true}, // ice is of both
		{"keeps", "raw", "bag", "basil", true},
		{"corn-cob", "water", "bag", "corn-on-the-cob", true},
		{"corn-cob", "water", "bag", "snap-beans", false},
		{"headspace-none", "steam", "bag", "broccoli", true},
		{"jars", "water", "jar", "snap-beans", true},
		{"jars", "water", "bag", "snap-beans", false},
	} {
		if got := question(t, c.id).Concerns(c.method, c.container, c.crop); got != c.want {
			t.Errorf("%s concerns %s, %s, in a %s: %v", c.id, c.crop, c.method, c.container, got)
		}
	}
}

func TestQuestionsAreAFreshList(t *testing.T) {
	list := Questions(words.English)
	first := list[0].ID
	list[0] = Question{}
	if Questions(words.English)[0].ID != first {
		t.Error("a change of the list changed the questions")
	}
}
