package content

import (
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

// What people type in a Spanish class, in the words of several regions.
var typedInSpanish = []typedWords{
	{"cuanto tiempo ejotes", "beans-many-times"},
	{"habichuelas minutos", "beans-many-times"},
	{"judias verdes", "beans-many-times"},
	{"elote entero cuantos minutos", "corn-cob"},
	{"choclo", "corn-cob"},
	{"desgranar maiz", "corn-kernels"},
	{"enfriar elotes doble", "corn-chill"},
	{"chicharos", "green-peas"},
	{"arvejas minutos", "green-peas"},
	{"guisantes", "green-peas"},
	{"tirabeques", "pea-pods"},
	{"hay que blanquear", "why-blanch"},
	{"congelar sin hervir", "skip-blanching"},
	{"cuanto hielo", "ice-how-much"},
	{"cuanta agua", "water-how-much"},
	{"no vuelve a hervir", "boil-again-slow"},
	{"CON TAPA O SIN TAPA", "lid"},
	{"misma agua", "reuse-water"},
	{"vaporera", "steam-setup"},
	{"microondas", "microwave-blanch"},
	{"altitd", "altitude"},
	{"vivo en la montaña", "altitude"},
	{"vivo en la montana", "altitude"},
	{"se fue la luz", "power-cut"},
	{"apagones", "power-cut"},
	{"recongelar", "refreeze"},
	{"hielo seco", "dry-ice"},
	{"frascos de vidrio", "jars"},
	{"espacio libre frasco", "jar-headspace"},
	{"sacar aire bolsa", "air-out"},
	{"se pegan en un bloque", "tray"},
	{"que pongo en la etiqueta", "label"},
	{"cuantos meses duran", "keeps"},
	{"congelador lleno", "freezer-too-much"},
	{"temperatura del congelador", "freezer-setting"},
	{"embarazada", "at-risk"},
	{"comer crudas ensalada", "from-the-bag"},
	{"gusanos brocoli", "insects"},
	{"acelgas", "greens"},
	{"camote", "cooked-crops"},
	{"auyama", "cooked-crops"},
	{"calabasitas", "zucchini"},
	{"jitomates", "tomatoes"},
	{"champiñones", "mushrooms"},
	{"champinones", "mushrooms"},
	{"chiles picantes guantes", "peppers-onions"},
	{"lechuga", "do-not-freeze"},
	{"cable de extension", "outlets"},
	{"kilos", "metric"},
}

func TestAskFindsWhatIsTypedInSpanish(t *testing.T) {
	for _, c := range typedInSpanish {
		got := idsOf(Ask(words.Spanish, c.words, ""))
		if !slices.Contains(got[:min(len(got), 3)], c.want) {
			t.Errorf("%q: %v; want %s among the first three", c.words, got, c.want)
		}
	}
}

func TestAskFindsEverySpanishQuestionByItsOwnWords(t *testing.T) {
	for _, q := range Questions(words.Spanish) {
		if got := idsOf(Ask(words.Spanish, q.Asks, "")); len(got) == 0 || got[0] != q.ID {
			t.Errorf("%q: %v; want %s first", q.Asks, got, q.ID)
		}
		for _, also := range q.Also {
			if got := idsOf(Ask(words.Spanish, also, "")); !slices.Contains(got[:min(len(got), 3)], q.ID) {
				t.Errorf("%q: %v; want %s among the first three", also, got, q.ID)
			}
		}
	}
}

func TestAskInSpanishFindsNothingInNonsense(t *testing.T) {
	for _, typed := range []string{"", "¿?", "xyzzy", "qué pasa si", "el de la", "cómo lo hago", "wwwww.", "\xff\xfe"} {
		if got := idsOf(Ask(words.Spanish, typed, "corn-on-the-cob")); len(got) > 0 {
			t.Errorf("%q found %v", typed, got)
		}
	}
}

// Accents, ñ typed as n, plurals, gender and the usual endings of verbs do not
// matter.
func TestAskInSpanishIsTolerant(t *testing.T) {
	for _, same := range [][]string{
		{"brócoli", "brocoli", "BRÓCOLI", "¿brócoli?"},
		{"champiñón", "champinon", "champiñones"},
		{"dos años", "dos anos", "dos año"},
		{"frijol", "frijoles"},
		{"etiqueta", "etiquetas"},
		{"raíz camotes", "raiz camote"},
		{"congelado", "congelar", "congelando", "congeladas", "congelo"},
		{"escurrir", "escurrido", "escurra", "escurriendo"},
	} {
		want := idsOf(Ask(words.Spanish, same[0], ""))
		if len(want) == 0 {
			t.Errorf("%q finds nothing", same[0])
		}
		for _, typed := range same[1:] {
			if got := idsOf(Ask(words.Spanish, typed, "")); !slices.Equal(got, want) {
				t.Errorf("%q finds %v, %q finds %v", typed, got, same[0], want)
			}
		}
	}
}

// A room may speak two languages: English words find the Spanish question.
func TestAskInSpanishUnderstandsEnglish(t *testing.T) {
	for _, c := range []typedWords{
		{"how much ice", "ice-how-much"}, {"cuánto ice", "ice-how-much"}, {"mason jars", "jars"}, {"power out", "power-cut"},
		{"how long corn", "corn-cob"}, {"pregnant", "at-risk"}, {"water per pound", "water-how-much"}, {"when start timer", "clock-start"},
		{"can i skip blanching", "skip-blanching"}, {"lid", "lid"}, {"french fries", "potatoes"},
	} {
		got := Ask(words.Spanish, c.words, "")
		at := slices.IndexFunc(got[:min(len(got), 3)], func(q Question) bool { return q.ID == c.want })
		if at < 0 || !strings.Contains(got[at].Asks, "¿") {
			t.Errorf("%q: %v; want %s in Spanish among the first three", c.words, idsOf(got), c.want)
		}
	}
	if got := idsOf(Ask(words.English, "cuánto hielo", "")); len(got) > 0 {
		t.Errorf("Spanish words found %v in English", got)
	}
}

func TestAskInSpanishPutsTheCropFirst(t *testing.T) {
	for _, c := range []struct{ words, crop, first string }{
		{"cuánto tiempo", "snap-beans", "beans-many-times"},
		{"cuánto tiempo", "kale", "greens"},
		{"cuánto tiempo elotes", "snap-beans", "corn-cob"}, // what is typed counts
		{"how long", "snap-beans", "beans-many-times"},
	} {
		if got := idsOf(Ask(words.Spanish, c.words, c.crop)); len(got) == 0 || got[0] != c.first {
			t.Errorf("%q for %s: %v; want %s first", c.words, c.crop, got, c.first)
		}
	}
}

func TestAskInAnUnknownLanguageIsEnglish(t *testing.T) {
	if got, want := Ask("xx", "how much ice", ""), Ask(words.English, "how much ice", ""); len(got) == 0 || got[0].Asks != want[0].Asks {
		t.Errorf("%v, want %v", idsOf(got), idsOf(want))
	}
}

func TestSpanishStem(t *testing.T) {
	for _, c := range [][2]string{
		{"frijoles", "frijol"}, {"frijol", "frijol"}, {"ejotes", "ejot"}, {"ejote", "ejot"}, {"veces", "vez"}, {"vez", "vez"}, {"coles", "col"},
		{"escaldado", "escald"}, {"escaldar", "escald"}, {"escaldo", "escald"}, {"escaldando", "escald"}, {"hirviendo", "hirv"}, {"hervir", "herv"},
		{"tapa", "tap"}, {"tapar", "tap"}, {"sal", "sal"}, {"luz", "luz"}, {"mes", "mes"}, {"meses", "mes"}, {"col", "col"}, {"", ""},
	} {
		if got := spanishStem(c[0]); got != c[1] {
			t.Errorf("spanishStem(%q) = %q; want %q", c[0], got, c[1])
		}
	}
}
