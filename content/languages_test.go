package content

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

// entry is a caution, a step or a question with all its texts.
type entry struct {
	id    string
	same  []string // what no language changes: topics, source, …
	texts []string
}

// entries lists what one language says, file by file.
func entries(l words.Language) map[string][]entry {
	all := map[string][]entry{}
	for _, c := range load[Caution](l, "cautions.json") {
		all["cautions.json"] = append(all["cautions.json"], entry{c.ID, append(topicNames(c.Topics), c.Source), []string{c.Title, c.Text}})
	}
	for _, s := range load[Step](l, "steps.json") {
		all["steps.json"] = append(all["steps.json"], entry{s.ID, topicNames(s.Topics), []string{s.Title, s.Text}})
	}
	for _, q := range Questions(l) {
		same := slices.Concat(topicNames(q.Topics), q.Crops, []string{q.Source, q.Standing})
		all["questions.json"] = append(all["questions.json"], entry{q.ID, same, []string{q.Asks, q.Says, q.SaysHere}})
	}
	for _, a := range PowerCut(l) {
		all["power-cut.json"] = append(all["power-cut.json"], entry{a.ID, []string{string(a.Part), a.Source}, []string{a.Title, a.Text}})
	}
	for _, x := range Practice(l) {
		all["practice.json"] = append(all["practice.json"], entry{x.ID, nil, []string{x.Asks}})
	}
	for _, x := range Evaluation(l) {
		all["evaluation.json"] = append(all["evaluation.json"], entry{x.ID, []string{string(x.Kind), fmt.Sprint(x.True), x.Rule}, []string{x.Text}})
	}
	return all
}

func topicNames(topics []Topic) []string {
	var names []string
	for _, t := range topics {
		names = append(names, string(t))
	}
	return names
}

var figuresWritten = regexp.MustCompile(`\d+`)

// numberWords are the words for numbers that an answer may say, with what they
// count; 1 is missing, for it is an article in Spanish and a pronoun in English.
var numberWords = map[words.Language]map[string]string{
	words.English: {"half": "½", "third": "⅓", "thirds": "⅓", "quarters": "¼", "two": "2", "twice": "2", "three": "3", "four": "4", "seven": "7", "thirty": "30", "sixty": "60",
		"dozen": "12", "hundreds": "100", "thousands": "1000", "second": "2."},
	words.Spanish: {"medio": "½", "media": "½", "tercio": "⅓", "tercios": "⅓", "cuartas": "¼", "dos": "2", "doble": "2", "tres": "3", "cuatro": "4", "siete": "7", "treinta": "30", "sesenta": "60",
		"docenas": "12", "cientos": "100", "miles": "1000", "segundo": "2."},
}

// numbersIn lists the numbers of a text that stand outside placeholders, as
// digits or as words, sorted.
func numbersIn(l words.Language, text string) []string {
	bare := strings.ToLower(placeholder.ReplaceAllString(text, " "))
	list := figuresWritten.FindAllString(bare, -1)
	for _, w := range strings.FieldsFunc(bare, func(r rune) bool { return !strings.ContainsRune("abcdefghijklmnopqrstuvwxyzáéíóúñ", r) }) {
		if n, is := numberWords[l][w]; is {
			list = append(list, n)
		}
	}
	slices.Sort(list)
	return list
}

// What one language says, the other says too: the same entries in the same order,
// with the same numbers, in words of its own.
func TestLanguagesSayTheSame(t *testing.T) {
	english, spanish := entries(words.English), entries(words.Spanish)
	for file, want := range english {
		got := spanish[file]
		if len(got) != len(want) {
			t.Errorf("%s: %d entries in Spanish, %d in English", file, len(got), len(want))
			continue
		}
		for i, e := range want {
			s := got[i]
			if s.id != e.id || !slices.Equal(s.same, e.same) {
				t.Errorf("%s: %s %v stands where English has %s %v", file, s.id, s.same, e.id, e.same)
				continue
			}
			for j, text := range e.texts {
				sameText(t, file+" "+e.id, text, s.texts[j])
			}
		}
	}
}

func sameText(t *testing.T, at, english, spanish string) {
	t.Helper()
	if (english == "") != (spanish == "") || english != "" && english == spanish {
		t.Errorf("%s is not translated: %q, %q", at, english, spanish)
	}
	e, s := placeholder.FindAllString(english, -1), placeholder.FindAllString(spanish, -1)
	if slices.Sort(e); !slices.Equal(e, slices.Sorted(slices.Values(s))) {
		t.Errorf("%s has the placeholders %v, English %v", at, s, e)
	}
	if e, s := numbersIn(words.English, english), numbersIn(words.Spanish, spanish); !slices.Equal(e, s) {
		t.Errorf("%s has the numbers %v, English %v: %s", at, s, e, spanish)
	}
}

// Surfaces take the first sentence of a caution against burns, and the last one on
// food that is not ready to eat: these stand alone.
func TestCautionsSayTheirPointWhereItIsTaken(t *testing.T) {
	for l, want := range map[words.Language]map[string]string{
		words.English: {"scald": "scald", "steam": "burns", "hot-pepper": "gloves", "not-ready-to-eat": "Cook"},
		words.Spanish: {"scald": "queman", "steam": "quema", "hot-pepper": "guantes", "not-ready-to-eat": "Cocine"},
	} {
		for _, c := range Cautions(l, AllTopics()...) {
			sentences := strings.Split(c.Text, ". ")
			taken := sentences[0]
			if c.ID == "not-ready-to-eat" {
				taken = sentences[len(sentences)-1]
			}
			if !strings.Contains(taken, want[c.ID]) {
				t.Errorf("%s in %s: %q does not say %q", c.ID, l, taken, want[c.ID])
			}
		}
	}
}

// basis is what the texts of one file rest on: "read" or "memory".
type basis struct{ File, Basis, Note string }

// Every file of a translation says whether its sentences were read somewhere or
// written from memory, and what a native reader should look at.
func TestTranslationsSayWhatTheyRestOn(t *testing.T) {
	listed := []string{}
	for _, b := range load[basis](words.Spanish, "basis.json") {
		if b.Basis != "memory" && b.Basis != "read" || b.Note == "" {
			t.Errorf("%s: basis %q, note %q", b.File, b.Basis, b.Note)
		}
		listed = append(listed, "es/"+b.File)
	}
	there, err := fs.Glob(files, "es/*.json")
	if err != nil {
		t.Fatal(err)
	}
	there = slices.DeleteFunc(there, func(name string) bool { return path.Base(name) == "basis.json" })
	if slices.Sort(listed); !slices.Equal(listed, there) {
		t.Errorf("basis.json lists %v, there are %v", listed, there)
	}
}

// Words that mean something else to some readers. Questions may be asked with
// them; nothing says them.
func TestSpanishAvoidsTraps(t *testing.T) {
	for file, list := range entries(words.Spanish) {
		for _, e := range list {
			for _, trap := range []string{"blanque", "espacio de cabeza", "remover", "colinabo", "inocuidad", "hallazgo", "lote", "tomate verde"} {
				if text := strings.ToLower(strings.Join(e.texts, " ")); regexp.MustCompile(`\b` + trap).MatchString(text) {
					t.Errorf("%s %s says %q", file, e.id, trap)
				}
			}
		}
	}
}
