package content

import (
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

func idsOf(list []Question) []string {
	var ids []string
	for _, q := range list {
		ids = append(ids, q.ID)
	}
	return ids
}

// typedWords is what people type while somebody in the room waits, and the
// question that has to be among the first three.
type typedWords struct{ words, want string }

var typedInClass = []typedWords{
	{"how long corn", "corn-cob"},
	{"corn off cob minutes", "corn-kernels"},
	{"cool corn twice", "corn-chill"},
	{"corn in husk raw", "corn-husk"},
	{"how many ears", "corn-ears"},
	{"can i skip blanching", "skip-blanching"},
	{"why blanch", "why-blanch"},
	{"freezer full", "freezer-too-much"},
	{"how much per day freezer", "freezer-load"},
	{"freezer temp", "freezer-setting"},
	{"altidude", "altitude"},
	{"5000 feet", "altitude"},
	{"whats my elevation", "find-altitude"},
	{"boil again when", "boil-again-slow"},
	{"when start timer", "clock-start"},
	{"too much in pot", "all-at-once"},
	{"hot plate weak", "largest-load"},
	{"ice how much", "ice-how-much"},
	{"ice bath minutes", "chill-how-long"},
	{"tap water cold enough?", "chill-water-temperature"},
	{"steam times", "steam-minutes"},
	{"steam or boil", "steam-instead"},
	{"microwave", "microwave-blanch"},
	{"jar headspace", "jar-headspace"},
	{"mason jars", "jars"},
	{"head space", "headspace"},
	{"bread bags", "cartons"},
	{"ziplock", "freezer-bags"},
	{"get air out", "air-out"},
	{"clumping together lump", "tray"},
	{"label date", "label"},
	{"vacum sealer", "vacuum"},
	{"botulism", "botulism"},
	{"water per pound", "water-how-much"},
	{"same water again", "reuse-water"},
	{"LID ON OR OFF", "lid"},
	{"how long keep", "keeps"},
	{"freezer burn eat", "freezer-burn"},
	{"frost in bags", "frost-in-bag"},
	{"power out", "power-cut"},
	{"dry ice pounds", "dry-ice"},
	{"thawed refreeze", "refreeze"},
	{"defrost", "thaw"},
	{"eat raw from bag", "from-the-bag"},
	{"pregnant", "at-risk"},
	{"worms in brocoli", "insects"},
	{"salt soak", "insects"},
	{"spinich", "greens"},
	{"pumkin", "cooked-crops"},
	{"zuchini bread", "zucchini"},
	{"onions raw", "peppers-onions"},
	{"jalapeños", "peppers-onions"},
	{"tomatoe skins", "tomatoes"},
	{"basil", "herbs"},
	{"french fry", "potatoes"},
	{"snow peas", "pea-pods"},
	{"brussel sprout", "sprouts"},
	{"carrots 2 or 3 minutes", "carrots"},
	{"mushroms", "mushrooms"},
	{"okra minutes", "minutes-of-a-crop"},
	{"bushel pints", "pints-from-bushel"},
	{"kilos", "metric"},
	{"leaflets disagree", "two-leaflets"},
	{"turned brown", "colour"},
	{"rubbery beans", "chewy"},
	{"lettuce", "do-not-freeze"},
	{"extension cord", "outlets"},
	{"hand sanitizer", "hands"},
}

func TestAskFindsWhatIsTyped(t *testing.T) {
	for _, c := range typedInClass {
		got := idsOf(Ask(words.English, c.words, ""))
		if !slices.Contains(got[:min(len(got), 3)], c.want) {
			t.Errorf("%q: %v; want %s among the first three", c.words, got, c.want)
		}
	}
}

func TestAskFindsEveryQuestionByItsOwnWords(t *testing.T) {
	for _, q := range Questions(words.English) {
		if got := idsOf(Ask(words.English, q.Asks, "")); len(got) == 0 || got[0] != q.ID {
			t.Errorf("%q: %v; want %s first", q.Asks, got, q.ID)
		}
		for _, also := range q.Also {
			if got := idsOf(Ask(words.English, also, "")); !slices.Contains(got[:min(len(got), 3)], q.ID) {
				t.Errorf("%q: %v; want %s among the first three", also, got, q.ID)
			}
		}
	}
}

func TestAskFindsNothingInNonsense(t *testing.T) {
	for _, typed := range []string{
		"", " ", "?!", "xyzzy", "asdf qwer", "qqqqq zzzzz", "flurbl grommit", "what if", "the of and", "how do i", "…", "\x00", "\xff\xfe", "x", "zz", "日本語", "wwwww.",
	} {
		if got := idsOf(Ask(words.English, typed, "")); len(got) > 0 {
			t.Errorf("%q found %v", typed, got)
		}
		if got := idsOf(Ask(words.English, typed, "corn-on-the-cob")); len(got) > 0 {
			t.Errorf("%q with a crop found %v", typed, got)
		}
	}
}

// Capitals, accents, plurals and endings do not matter.
func TestAskIsTolerant(t *testing.T) {
	for _, same := range [][]string{
		{"jars", "JAR", "jár", "jar.", " jar "},
		{"label", "labels", "Labelled", "LABELLING"},
		{"tomatoes", "tomato", "Tomatoés"},
		{"chill", "chilling", "chilled"},
		{"freeze burn", "freezing burn"},
		{"tray", "trays"},
		{"boxes", "box"},
		{"berries pint", "berry pint"},
		{"sauté", "saute"},
	} {
		want := idsOf(Ask(words.English, same[0], ""))
		for _, typed := range same[1:] {
			if got := idsOf(Ask(words.English, typed, "")); !slices.Equal(got, want) {
				t.Errorf("%q finds %v, %q finds %v", typed, got, same[0], want)
			}
		}
	}
	for _, c := range []struct{ typed, want string }{
		{"altitud", "altitude"}, {"altittude", "altitude"}, {"alttiude", "altitude"}, {"altitute", "altitude"}, // missing, added, changed round, wrong
		{"bot", "botulism"}, {"pregn", "at-risk"}, // not typed to the end
	} {
		if got := idsOf(Ask(words.English, c.typed, "")); len(got) == 0 || got[0] != c.want {
			t.Errorf("%q: %v; want %s first", c.typed, got, c.want)
		}
	}
	for _, typed := range []string{"alttiutde", "laltitude", "icu", "bax"} { // two errors, the first letter, too short
		if got := idsOf(Ask(words.English, typed, "")); len(got) > 0 {
			t.Errorf("%q found %v", typed, got)
		}
	}
}

// A single word counts most in the question, less in other wordings, least in
// the answer.
func TestAskRanksQuestionOverWordingsOverAnswer(t *testing.T) {
	x := room(words.English)
	tried := 0
	for _, w := range x.words {
		last := inAsks
		for _, q := range Ask(words.English, w.written, "") {
			i := slices.IndexFunc(x.questions, func(o Question) bool { return o.ID == q.ID })
			place := x.places[i][w.stem]
			if place == 0 || place > last {
				t.Errorf("%q: %s stands at the wrong place", w.written, q.ID)
			}
			last = place
		}
		tried++
	}
	if tried < 300 {
		t.Errorf("only %d words tried", tried)
	}
}

func TestAskPutsTheCropFirst(t *testing.T) {
	for _, c := range []struct{ words, crop, first string }{
		{"how long", "snap-beans", "beans-many-times"},
		{"how long", "corn-on-the-cob", "corn-cob"},
		{"how long", "kale", "greens"},
		{"headspace", "asparagus", "headspace-none"},
		{"how much at a time", "corn-on-the-cob", "corn-ears"},
		{"power cut", "corn-on-the-cob", "power-cut"}, // nothing of corn comes near
		{"how long corn", "snap-beans", "corn-cob"},   // what is typed counts
		{"how long corn", "no-such-crop", "corn-cob"},
	} {
		got := idsOf(Ask(words.English, c.words, c.crop))
		if len(got) == 0 || got[0] != c.first {
			t.Errorf("%q for %s: %v; want %s first", c.words, c.crop, got, c.first)
		}
	}
}

func TestAskIsDeterministicAndShort(t *testing.T) {
	for _, q := range Questions(words.English) {
		typed := q.Asks + " " + strings.Join(q.Also, " ")
		first := idsOf(Ask(words.English, typed, ""))
		if len(first) == 0 || len(first) > mostFound {
			t.Errorf("%s: %d found", q.ID, len(first))
		}
		for range 3 {
			if again := idsOf(Ask(words.English, typed, "")); !slices.Equal(first, again) {
				t.Errorf("%s: %v, then %v", q.ID, first, again)
			}
		}
	}
	if got := Ask(words.English, strings.Repeat("corn ice steam zzzzz ", 1e5), ""); len(got) != mostFound {
		t.Errorf("a long paste found %d", len(got))
	}
}

func TestStem(t *testing.T) {
	for _, c := range [][2]string{
		{"beans", "bean"}, {"peas", "pea"}, {"berries", "berry"}, {"tomatoes", "tomato"}, {"boxes", "box"}, {"bunches", "bunch"}, {"radishes", "radish"},
		{"glass", "glas"}, {"glasses", "glas"}, {"blanching", "blanch"}, {"blanched", "blanch"}, {"freezing", "freez"}, {"freeze", "freez"}, {"cutting", "cut"}, {"cut", "cut"},
		{"asparagus", "asparagus"}, {"ice", "ice"}, {"need", "need"}, {"spring", "spring"}, {"is", "is"}, {"", ""},
	} {
		if got := englishStem(c[0]); got != c[1] {
			t.Errorf("englishStem(%q) = %q; want %q", c[0], got, c[1])
		}
	}
}

func FuzzAsk(f *testing.F) {
	for _, c := range typedInClass {
		f.Add(c.words, "corn-on-the-cob")
	}
	for _, c := range typedInSpanish {
		f.Add(c.words, "corn-on-the-cob")
	}
	f.Add("é\xff’{figure:ice}", "")
	f.Fuzz(func(t *testing.T, typed, crop string) {
		for _, l := range words.Languages() {
			ids := idsOf(Ask(l, typed, crop))
			if len(ids) > mostFound {
				t.Errorf("%d found", len(ids))
			}
			slices.Sort(ids)
			if slices.Contains(ids, "") || len(slices.Compact(slices.Clone(ids))) != len(ids) {
				t.Errorf("a question stands twice: %v", ids)
			}
		}
	})
}

// One search through all questions in each language: of what people type, and of
// nonsense, which is looked up in every way.
func BenchmarkAsk(b *testing.B) {
	for l, typed := range map[words.Language][]typedWords{words.English: typedInClass, words.Spanish: typedInSpanish} {
		Ask(l, "warm up", "")
		b.Run(string(l)+"/typed", func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				Ask(l, typed[i%len(typed)].words, "")
			}
		})
		b.Run(string(l)+"/nonsense", func(b *testing.B) {
			for b.Loop() {
				Ask(l, "flurble grommit asdfg qwertz yxcvb", "")
			}
		})
	}
}

// Reading and indexing the questions, once in a run of the program.
func BenchmarkIndex(b *testing.B) {
	for _, l := range words.Languages() {
		b.Run(string(l), func(b *testing.B) {
			for b.Loop() {
				newIndex(l)
			}
		})
	}
}
