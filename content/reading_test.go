package content

import (
	"regexp"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

// Reading ease of Spanish by Szigriszt-Pazos, from 0 to 100; 65 and more is easy.
// 206.835 − 62.3·(syllables per word) − (words per sentence). A placeholder counts
// as one word of two syllables, such as “cinco”.
func readingEase(text string) float64 {
	list := spanishWord.FindAllString(placeholder.ReplaceAllString(text, "cinco"), -1)
	syllables := 0
	for _, w := range list {
		syllables += syllablesIn(w)
	}
	n := float64(len(list))
	sentences := max(len(sentenceEnd.FindAllString(text, -1)), 1)
	return 206.835 - 62.3*float64(syllables)/n - n/float64(sentences)
}

var (
	spanishWord = regexp.MustCompile(`\p{L}+`)
	vowels      = regexp.MustCompile(`[aeiouáéíóúü]+`)
	silentU     = regexp.MustCompile(`([qg])u([eéií])`)
	vowelY      = regexp.MustCompile(`y($|[^aeiouáéíóú])`)
)

// syllablesIn counts the syllables of a Spanish word: vowels that stand together
// are one syllable unless two strong ones meet. An accented i or u is strong.
func syllablesIn(word string) int {
	word = vowelY.ReplaceAllString(silentU.ReplaceAllString(strings.ToLower(word), "$1$2"), "i$1")
	n := 0
	for _, group := range vowels.FindAllString(word, -1) {
		n++
		before := false
		for _, v := range group {
			strong := strings.ContainsRune("aeoáéóíú", v)
			if strong && before {
				n++
			}
			before = strong
		}
	}
	return max(n, 1)
}

func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"agua": 2, "hielo": 2, "escaldar": 3, "guíe": 2, "vacío": 3, "muy": 1, "y": 1, "que": 1, "maíz": 2, "poeta": 3, "congelación": 4, "ya": 1, "rey": 1, "desagüe": 3, "lb": 1,
	} {
		if got := syllablesIn(word); got != want {
			t.Errorf("%s has %d syllables, counted %d", word, want, got)
		}
	}
}

// What Spanish readers read is easy on the average, and no text is hard.
func TestSpanishIsReadEasily(t *testing.T) {
	texts := map[string]map[string]string{"cautions": {}, "steps": {}, "answers": {}, "power cut": {}, "evaluation": {}}
	for _, c := range load[Caution](words.Spanish, "cautions.json") {
		texts["cautions"][c.ID] = c.Text
	}
	for _, s := range load[Step](words.Spanish, "steps.json") {
		texts["steps"][s.ID] = s.Text
	}
	for _, q := range Questions(words.Spanish) {
		texts["answers"][q.ID] = q.Says
	}
	for _, a := range PowerCut(words.Spanish) {
		texts["power cut"][a.ID] = a.Text
	}
	for _, x := range Evaluation(words.Spanish) {
		texts["evaluation"][x.ID] = x.Text
	}
	for kind, list := range texts {
		sum, least, hardest := 0.0, 100.0, ""
		for id, text := range list {
			ease := readingEase(text)
			if ease < 50 {
				t.Errorf("%s %s has a reading ease of %.0f: %s", kind, id, ease, text)
			}
			if ease < least {
				least, hardest = ease, id
			}
			sum += ease
		}
		mean := sum / float64(len(list))
		if mean < 65 {
			t.Errorf("%s have a reading ease of %.1f on the average, want 65", kind, mean)
		}
		t.Logf("%d %s: reading ease %.1f on the average, least %.1f (%s)", len(list), kind, mean, least, hardest)
	}
}
