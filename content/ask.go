package content

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"example.org/kettleside/content/words"
)

// How many questions are found at most, and how much of what was typed counts:
// letters (bytes), and then words.
const (
	mostFound   = 8
	mostLetters = 400
	mostWords   = 24
)

// What a hit is worth, by where the word stands; the judgement behind the
// order. A wording that is all that was typed adds up to nearness, which is less
// than the step between two places.
const (
	inAsks   = 9.0
	inAlso   = 3.0
	inAnswer = 1.0
	nearness = 4.0
)

// What a word is worth that is only the beginning of one, or one typing error
// away.
const (
	begun    = 0.7
	mistyped = 0.6
)

// The shortest word that may be the beginning of another, and the shortest that
// may have a typing error.
const (
	leastBegun    = 3
	leastMistyped = 5
)

// Ask finds the questions for a few typed words, best first, at most eight.
// Upper and lower case, accents and the usual endings ("beans", "chilling",
// "congelada") do not matter, a word of five letters or more may have one typing
// error, and the last letters of a word need not be typed yet; both only where the
// word stands in a question or its other wordings. A word counts most in the
// question itself, less in its other wordings, least in its answer; rare words
// count more than common ones. Words that match nothing are passed over: nonsense
// finds nothing.
//
// A room may speak two languages: English words are looked up in English where
// they say more there than in the language of the questions.
//
// Where a crop's id is given, questions about that crop come first, except those
// that fit the words less than a third as well as the best does.
func Ask(l words.Language, text, crop string) []Question {
	own, english := room(l), room(words.English)
	places := own.find(text, crop)
	if own != english && (len(places) == 0 || own.saysMore(english, text)) {
		places = english.find(text, crop)
	}
	var list []Question
	for _, i := range places {
		list = append(list, own.questions[i])
	}
	return list
}

// typed takes apart what somebody typed, as much of it as counts.
func (x *index) typed(text string) []word {
	all := x.wordsOf(text[:min(len(text), mostLetters)])
	return all[:min(len(all), mostWords)]
}

// saysMore says whether what was typed says more in another language: whether the
// words that stand there, and not in these questions, are worth more than those
// that stand in these.
func (x *index) saysMore(other *index, text string) bool {
	here, there := 0.0, 0.0
	for _, w := range x.typed(text) {
		here += x.rarity[w.stem]
	}
	for _, w := range other.typed(text) {
		if x.rarity[x.stem(w.written)] == 0 {
			there += other.rarity[w.stem]
		}
	}
	return there > here
}

// find finds the places of the questions for what was typed, best first.
func (x *index) find(text, crop string) []int {
	hits := x.hits(x.typed(text))
	type found struct {
		question int
		score    float64
		own      bool
	}
	var all []found
	best := 0.0
	for i, q := range x.questions {
		if score := x.score(i, hits); score > 0 {
			all = append(all, found{i, score, crop != "" && slices.Contains(q.Crops, crop)})
			best = max(best, score)
		}
	}
	for i := range all {
		all[i].own = all[i].own && all[i].score >= best/3
	}
	slices.SortStableFunc(all, func(a, b found) int {
		if a.own != b.own {
			if a.own {
				return -1
			}
			return 1
		}
		return cmp.Compare(b.score, a.score)
	})
	var places []int
	for _, f := range all[:min(len(all), mostFound)] {
		places = append(places, f.question)
	}
	return places
}

// index is the questions in one language, ready to be searched.
type index struct {
	tongue
	questions []Question
	places    []map[string]float64 // by question: each stem and the best place it stands in
	wordings  [][][]string         // by question: the stems of asks and of each other wording
	rarity    map[string]float64   // of each stem
	words     []word               // all words but those of the answers, in order
}

// word is a word as written and what is left of it without its ending.
type word struct{ written, stem string }

// room is the index of a language, made when it is first asked for.
func room(l words.Language) *index { return rooms[spoken(l)]() }

var rooms = func() map[words.Language]func() *index {
	all := map[words.Language]func() *index{}
	for _, l := range words.Languages() {
		all[l] = sync.OnceValue(func() *index { return newIndex(l) })
	}
	return all
}()

// newIndex reads the questions and indexes them.
func newIndex(l words.Language) *index {
	x := &index{tongue: tongues[l], questions: load[Question](l, "questions.json"), rarity: map[string]float64{}}
	in := map[string]int{}
	for _, q := range x.questions {
		places := map[string]float64{}
		put := func(text string, worth float64) []string {
			var stems []string
			for _, w := range x.wordsOf(text) {
				places[w.stem] = max(places[w.stem], worth)
				stems = append(stems, w.stem)
				if worth > inAnswer {
					x.words = append(x.words, w)
				}
			}
			return stems
		}
		wordings := [][]string{put(q.Asks, inAsks)}
		for _, a := range q.Also {
			wordings = append(wordings, put(a, inAlso))
		}
		put(withoutPlaceholders(q.Says), inAnswer)
		for stem := range places {
			in[stem]++
		}
		x.places, x.wordings = append(x.places, places), append(x.wordings, wordings)
	}
	for stem, n := range in {
		x.rarity[stem] = math.Log(1 + float64(len(x.questions))/float64(n))
	}
	slices.SortFunc(x.words, func(a, b word) int { return cmp.Or(cmp.Compare(a.written, b.written), cmp.Compare(a.stem, b.stem)) })
	x.words = slices.Compact(x.words)
	return x
}

func withoutPlaceholders(text string) string {
	bare, _ := fill(text, func(string) (string, bool) { return " ", true })
	return bare
}

// hit is what one typed word may stand for: stems, and how well they fit.
type hit struct {
	stems []string
	fit   float64
}

// hits looks each typed word up: as it is, else as the beginning of words, else
// with one typing error. Words that stand for nothing are left out.
func (x *index) hits(typed []word) []hit {
	var all []hit
	for _, w := range typed {
		if _, known := x.rarity[w.stem]; known {
			all = append(all, hit{[]string{w.stem}, 1})
			continue
		}
		if h := (hit{x.stems(w, begins), begun}); len(h.stems) > 0 {
			all = append(all, h)
		} else if h := (hit{x.stems(w, nearly), mistyped}); len(h.stems) > 0 {
			all = append(all, h)
		}
	}
	return all
}

func (x *index) stems(typed word, fits func(typed, known word) bool) []string {
	var stems []string
	for _, w := range x.words {
		if fits(typed, w) && !slices.Contains(stems, w.stem) {
			stems = append(stems, w.stem)
		}
	}
	return stems
}

func begins(typed, known word) bool {
	return utf8.RuneCountInString(typed.written) >= leastBegun && strings.HasPrefix(known.written, typed.written)
}

func nearly(typed, known word) bool {
	return utf8.RuneCountInString(typed.written) >= leastMistyped &&
		(oneError(typed.written, known.written) || oneError(typed.stem, known.stem))
}

// score adds up what the hits are worth in one question.
func (x *index) score(question int, hits []hit) float64 {
	sum := 0.0
	for _, h := range hits {
		best := 0.0
		for _, stem := range h.stems {
			best = max(best, x.places[question][stem]*x.rarity[stem]*h.fit)
		}
		sum += best
	}
	if sum == 0 {
		return 0
	}
	near := 0.0
	for _, wording := range x.wordings[question] {
		near = max(near, x.near(wording, hits))
	}
	return sum + near*nearness
}

// near is how much of the hits stands in one wording, less where the wording
// says other things too.
func (x *index) near(wording []string, hits []hit) float64 {
	both, worth := 0, 0.0
	for _, h := range hits {
		best := 0.0
		for _, stem := range h.stems {
			if slices.Contains(wording, stem) {
				best = max(best, x.rarity[stem]*h.fit)
			}
		}
		if best > 0 {
			both++
			worth += best
		}
	}
	if both == 0 {
		return 0
	}
	return worth * float64(both) / float64(max(len(wording)+len(hits)-both, both))
}

// oneError says whether two words are one typing error apart: a letter missing,
// added, wrong, or changed with its neighbour, but not the first one.
func oneError(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch {
	case i == 0:
		return false
	case len(b) == len(a)+1:
		return a[i:] == b[i+1:]
	case len(b) != len(a) || i == len(a):
		return false
	case a[i+1:] == b[i+1:]:
		return true
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}
