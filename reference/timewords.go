package reference

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// timeInWords refuses words that would carry another time past the minutes:
// a time beside minutes, and a time that the shipped words do not have.
// Published times are never shortened, in words either.
func timeInWords(x *Treatment, typed string) error {
	shipped := timesIn(ShippedText(*x, FieldWords))
	for _, t := range timesIn(typed) {
		if x.Minutes > 0 {
			return words.Errorf("you typed %s; allowed are words without a time: the minutes have their own field.", quoted(t.typed))
		}
		if !slices.ContainsFunc(shipped, func(s spokenTime) bool { return s.is == t.is }) {
			return words.Errorf("you typed %s; allowed are only times that the shipped words have.", quoted(t.typed))
		}
	}
	return nil
}

// spokenTime is a time in a sentence: as it stands there, and in one form for
// both languages, "0.5 h". What looks like a time and is none that is known
// keeps its words, so that it is like nothing else.
type spokenTime struct{ typed, is string }

// timesIn lists the times of a sentence in English or Spanish, whatever the
// language of the table: "5 minutes", "1 ½ min", "3 to 5 min" (two of them),
// "fifteen minutes", "media hora", "an hour and a half", "30 s", "5′".
func timesIn(sentence string) []spokenTime {
	tokens := tokensOf(sentence)
	var times []spokenTime
	for i, t := range tokens {
		unit := unitsOfTime[t.text]
		if unit == "" || t.short() && !(i > 0 && tokens[i-1].number && t.start-tokens[i-1].end <= 1) {
			continue
		}
		if i > 0 && (tokens[i-1].text == "la" || tokens[i-1].text == "the") { // at the hour of serving
			continue
		}
		first := i
		for first > 0 && tokens[first-1].counts() {
			first--
		}
		more, last := halfMore(tokens[i+1:])
		for _, part := range parts(tokens[first:i]) {
			typed := sentence[part[0].start:tokens[i+last].end]
			is := wordsOf(part)
			if n, ok := valueOf(part); ok {
				is = strconv.FormatFloat(n+more, 'g', 6, 64)
			}
			times = append(times, spokenTime{typed, is + " " + unit})
		}
	}
	return times
}

// unitsOfTime are the words and signs for units of time.
var unitsOfTime = map[string]string{
	"h": "h", "hour": "h", "hours": "h", "hr": "h", "hrs": "h", "hora": "h", "horas": "h",
	"min": "min", "mins": "min", "minute": "min", "minutes": "min", "minuto": "min", "minutos": "min", "'": "min", "′": "min", "’": "min",
	"s": "s", "sec": "s", "secs": "s", "second": "s", "seconds": "s", "seg": "s", "segs": "s", "segundo": "s", "segundos": "s", `"`: "s", "″": "s", "”": "s",
}

// numberWords are the numbers in words.
var numberWords = map[string]float64{
	"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
	"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "ninety": 90,
	"un": 1, "una": 1, "uno": 1, "dos": 2, "tres": 3, "cuatro": 4, "cinco": 5, "seis": 6, "siete": 7, "ocho": 8, "nueve": 9, "diez": 10,
	"once": 11, "doce": 12, "trece": 13, "catorce": 14, "quince": 15, "dieciseis": 16, "diecisiete": 17, "dieciocho": 18, "diecinueve": 19,
	"veinte": 20, "veintiun": 21, "veintiuno": 21, "veintidos": 22, "veintitres": 23, "veinticuatro": 24, "veinticinco": 25, "veintiseis": 26,
	"veintisiete": 27, "veintiocho": 28, "veintinueve": 29, "treinta": 30, "cuarenta": 40, "cincuenta": 50, "sesenta": 60, "noventa": 90,
}

// shares are parts of one, and how they multiply what stands before them.
var shares = map[string]float64{
	"half": 0.5, "medio": 0.5, "media": 0.5, "quarter": 0.25, "quarters": 0.25, "cuarto": 0.25, "cuartos": 0.25, "third": 1.0 / 3, "tercio": 1.0 / 3,
	"dozen": 12, "docena": 12, "couple": 2, "par": 2, "few": 3, "several": 3, "hundred": 100, "cien": 100,
}

// joins stand between the words of one number, and between two numbers.
var (
	joins    = []string{"of", "de", "and", "y", "la", "the"}
	ofRange  = []string{"to", "or", "o", "-", "–", "—"}
	hasShare = func(t token) bool { _, is := shares[t.text]; return is }
)

// token is a word, a number or a sign of a sentence.
type token struct {
	text       string // folded
	start, end int    // in bytes
	number     bool   // in digits
}

// short says whether a unit is one sign, which is a unit only behind digits.
func (t token) short() bool { return len([]rune(t.text)) == 1 }

// counts says whether a token may be a part of a number.
func (t token) counts() bool {
	_, spoken := numberWords[t.text]
	return t.number || spoken || hasShare(t) || slices.Contains(joins, t.text) || slices.Contains(ofRange, t.text)
}

// tokensOf cuts a sentence into words, numbers with their fractions, and signs.
func tokensOf(sentence string) []token {
	var tokens []token
	kindOf := func(r rune) int {
		switch {
		case unicode.IsLetter(r) || unicode.Is(unicode.Mn, r):
			return 1
		case unicode.IsDigit(r) || strings.ContainsRune("½⅓⅔¼¾⅛⅜⅝⅞/.", r):
			return 2
		case unicode.IsSpace(r):
			return 0
		}
		return 3
	}
	last := 0
	for at, r := range sentence {
		kind := kindOf(r)
		if n := len(tokens) - 1; kind != 0 && kind != 3 && kind == last {
			tokens[n].end = at + len(string(r))
		} else if kind != 0 {
			tokens = append(tokens, token{start: at, end: at + len(string(r)), number: kind == 2})
		}
		last = kind
	}
	for i := range tokens {
		t := &tokens[i]
		t.text = strings.ToLower(sentence[t.start:t.end])
		if t.number {
			whole := strings.TrimRight(t.text, ".") // the end of a sentence
			t.end -= len(t.text) - len(whole)
			t.text = whole
			t.number = strings.ContainsFunc(whole, unicode.IsDigit) || strings.ContainsAny(whole, "½⅓⅔¼¾⅛⅜⅝⅞")
		} else if unicode.IsLetter([]rune(t.text)[0]) { // signs stay: folding would take ″ apart
			t.text = Folded(t.text)
		}
	}
	return tokens
}

// parts are the numbers before a unit: one, or the two ends of a range. The "a"
// of Spanish ranges is the article of English.
func parts(run []token) [][]token {
	var all [][]token
	var one []token
	end := func() {
		for len(one) > 0 && slices.Contains(joins, one[0].text) {
			one = one[1:]
		}
		for len(one) > 0 && slices.Contains([]string{"and", "y", "la", "the"}, one[len(one)-1].text) {
			one = one[:len(one)-1]
		}
		if len(one) > 0 && slices.ContainsFunc(one, func(t token) bool { return !slices.Contains(joins, t.text) }) {
			all = append(all, one)
		}
		one = nil
	}
	for i, t := range run {
		if slices.Contains(ofRange, t.text) || t.text == "a" && len(one) > 0 && i < len(run)-1 && !hasShare(run[i+1]) {
			end()
			continue
		}
		one = append(one, t)
	}
	end()
	return all
}

// valueOf is the number that some tokens say; false where they say none.
func valueOf(part []token) (float64, bool) {
	var digits []string
	for _, t := range part {
		if t.number {
			digits = append(digits, t.text)
		}
	}
	if len(digits) == len(part) {
		n, err := measure.ParseNumber(strings.Join(digits, " "))
		return n, err == nil
	}
	sum, some := 0.0, false
	for _, t := range part {
		n, spoken := numberWords[t.text]
		share, is := shares[t.text]
		switch {
		case t.number:
			return 0, false
		case is && some:
			sum *= share
		case is:
			sum, some = share, true
		case spoken && t.text != "a" && t.text != "an" || spoken && !some:
			sum, some = sum+n, true
		}
	}
	return sum, some
}

func wordsOf(part []token) string {
	var text []string
	for _, t := range part {
		text = append(text, t.text)
	}
	return strings.Join(text, " ")
}

// halfMore reads what may stand behind a unit: "and a half", "y media".
func halfMore(behind []token) (more float64, tokens int) {
	for _, say := range [][]string{{"and", "a", "half"}, {"y", "media"}, {"y", "medio"}, {"y", "cuarto"}, {"y", "un", "cuarto"}, {"and", "a", "quarter"}} {
		if len(behind) >= len(say) && slices.EqualFunc(behind[:len(say)], say, func(t token, text string) bool { return t.text == text }) {
			return shares[say[len(say)-1]], len(say)
		}
	}
	return 0, 0
}
