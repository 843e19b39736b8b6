package content

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"example.org/kettleside/content/words"
)

// tongue is what the search has to know of a language.
type tongue struct {
	small map[string]bool // words that every question has
	stem  func(string) string
}

var tongues = map[words.Language]tongue{
	words.English: {setOf(`a am an and any are as at be been but by can could did do does for from get got had has have
		he her his how i if in is it its just me may might must my of on or our please shall she should so some than that the their
		them then there these they this those to was we were what when where whether which who why will with would you your`), englishStem},
	words.Spanish: {setOf(`a ahi al algo alguna alguno aqui asi cada como con cual cuales cuando da dan de debe deben debo del desde despues donde e
		el ella ellas ellos en entre era es esa esas ese eso esos esta estan estar estas este esto estos estoy fue ha haber hace hacen hacer hago han
		hasta hay he la las le les lo los mas me mi mis mucha muchas mucho muchos muy ni nos nosotros nuestra nuestro o otra otro para pasa pero podemos poder por porque
		puede pueden puedo pues que quien quiero se sea ser si sirve sobre solo somos son su sus tal tambien tan te tengo tenemos tiene tienen tu u un
		una unas uno unos usted ustedes va van voy y ya yo`), spanishStem},
}

func setOf(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// wordsOf takes a text apart into different words: small letters without
// accents, apostrophes closed up, and without the small words that every
// question has.
func (t tongue) wordsOf(text string) []word {
	var plain strings.Builder
	for _, r := range norm.NFKD.String(text) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\'' || r == '’':
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			plain.WriteRune(unicode.ToLower(r))
		default:
			plain.WriteByte(' ')
		}
	}
	var list []word
	for _, written := range strings.Fields(plain.String()) {
		w := word{written, t.stem(written)}
		if !t.small[written] && !slices.ContainsFunc(list, func(o word) bool { return o.stem == w.stem }) {
			list = append(list, w)
		}
	}
	return list
}

// englishStem takes the usual endings off a word: "berries" and "berry", "peas" and
// "pea", "chilling", "chilled" and "chill" become the same. It need not be a
// word.
func englishStem(w string) string {
	switch {
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		w = w[:len(w)-3] + "y"
	case hasAnyEnding(w, "ches", "shes", "xes", "sses", "zes", "oes") && len(w) > 4:
		w = w[:len(w)-2]
	case strings.HasSuffix(w, "s") && !hasAnyEnding(w, "ss", "us", "is") && len(w) > 3:
		w = w[:len(w)-1]
	}
	for _, ending := range []string{"ing", "ed"} {
		if rest, cut := strings.CutSuffix(w, ending); cut && len(rest) >= 3 && strings.ContainsAny(rest, "aeiouy") && !strings.HasSuffix(w, "eed") {
			w = rest
			break
		}
	}
	if rest, cut := strings.CutSuffix(w, "e"); cut && len(rest) >= 3 {
		w = rest
	}
	if n := len(w); n >= 4 && w[n-1] == w[n-2] {
		w = w[:n-1]
	}
	return w
}

// spanishStem does it for Spanish, without accents: "congelo", "congelar" and
// "congeladas" become the same, "frijoles" and "frijol", "veces" and "vez".
func spanishStem(w string) string {
	switch {
	case strings.HasSuffix(w, "ces") && len(w) > 4:
		w = w[:len(w)-3] + "z"
	case hasAnyEnding(w, "des", "jes", "les", "nes", "res") && len(w) > 4:
		w = w[:len(w)-2]
	case strings.HasSuffix(w, "s") && !hasAnyEnding(w, "ss", "us", "is") && len(w) > 3:
		w = w[:len(w)-1]
	}
	if rest, cut := withoutEnding(w, "a", "e", "o"); cut {
		w = rest
	}
	for _, endings := range [][]string{{"iend", "and"}, {"ad", "id"}, {"ar", "er", "ir"}} {
		if rest, cut := withoutEnding(w, endings...); cut {
			return rest
		}
	}
	return w
}

// withoutEnding takes one of the endings off a word, where three letters are
// left.
func withoutEnding(w string, endings ...string) (string, bool) {
	for _, e := range endings {
		if rest, cut := strings.CutSuffix(w, e); cut && len(rest) >= 3 {
			return rest, true
		}
	}
	return w, false
}

func hasAnyEnding(w string, endings ...string) bool {
	return slices.ContainsFunc(endings, func(e string) bool { return strings.HasSuffix(w, e) })
}
