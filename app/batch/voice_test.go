package batch

import (
	"testing"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// What was changed in the table is said in Spanish, with the name of the field
// and what the educator typed as it was typed.
func TestChangesInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	for _, c := range []struct {
		shorter  []string
		says, do string
	}{
		{nil, "Cambiado aquí: minutos ahora “2”, de origen “nada”.", "Motivo: colder kitchen."},
		{[]string{"A"}, "Cambiado aquí: minutos ahora “2”, de origen “nada”.", "Más corto que el valor de origen; lo imprime A. Motivo: colder kitchen."},
		{[]string{"A", "B", "C"}, "Cambiado aquí: minutos ahora “2”, de origen “nada”.", "Más corto que el valor de origen; lo imprime A, B y C. Motivo: colder kitchen."},
	} {
		j := job(t, "snap-beans-cut-water", "3 lb", "1 gal")
		j.Voice = v
		j.Treatment.Changed = map[string]reference.Edit{}
		for _, field := range reference.EditFields {
			j.Treatment.Changed[field] = reference.Edit{New: "2", Why: "colder kitchen"}
		}
		j.Treatment.ShorterThanShipped = c.shorter
		found := false
		for _, f := range Work(j, reference.Shipped()).Findings {
			if f.ID == "changed-here-minutes" {
				found = true
				if f.Says != c.says || f.Do != c.do {
					t.Errorf("says %q\n%q\nwant %q\n%q", f.Says, f.Do, c.says, c.do)
				}
			}
		}
		if !found {
			t.Error("no finding of the change")
		}
	}
	if missing := v.Untranslated(); len(missing) > 0 {
		t.Errorf("said in English: %q", missing)
	}
}

// Every rule has words in Spanish for its unit, with the same numbers.
func TestRuleTextsInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	for units, want := range map[measure.System]map[string]string{
		measure.US: {
			"water-gal-per-lb": "1 galón por libra", "water-leafy-gal-per-lb": "2 galones por libra", "altitude-ft": "5,000 pies",
			"steam-water-in": "1 pulg a 2 pulg", "freezer-lb-per-cuft-day": "2–3 lb por pie³", "storage-months": "8–12 meses", "kettle-reuse-lots": "2–3 cargas",
		},
		measure.Metric: {"water-gal-per-lb": "8.35 L por kg", "altitude-ft": "1,524 m", "freezer-lb-per-cuft-day": "3.2–4.81 kg por 100 L"},
	} {
		texts := RuleTexts(reference.Shipped(), units, v)
		for id, text := range want {
			if texts[id] != text {
				t.Errorf("%s: %q, want %q", id, texts[id], text)
			}
		}
	}
	if missing := v.Untranslated(); len(missing) > 0 {
		t.Errorf("said in English: %q", missing)
	}
}

// A sentence goes on or starts with a letter that has an accent.
func TestFirstLetter(t *testing.T) {
	for text, want := range map[string][2]string{"": {"", ""}, "Cook": {"cook", "Cook"}, "Échelo": {"échelo", "Échelo"}, "ácido": {"ácido", "Ácido"}} {
		if lowerFirst(text) != want[0] || upperFirst(text) != want[1] {
			t.Errorf("%q: %q and %q; want %q", text, lowerFirst(text), upperFirst(text), want)
		}
	}
}

// Two times share their unit only where both have no other.
func TestTimeRange(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{{20, 40, "20–40 s"}, {50, 160, "50 s to 2 min 40 s"}, {60, 120, "1–2 min"}, {100, 130, "1 min 40 s to 2 min 10 s"}, {3600 * 6, 3600 * 9, "6–9 h"}, {60, 60, "1 min"}} {
		if got := (kitchen{}).timeRange(c.low, c.high); got != c.want {
			t.Errorf("%v to %v s: %q, want %q", c.low, c.high, got, c.want)
		}
	}
}

func BenchmarkWorkWithEstimatesInSpanish(b *testing.B) {
	j, table := withKitchen(b, job(b, "snap-beans-cut-water", "3 lb", "1 gal")), reference.Shipped()
	j.Voice = words.In(words.Spanish)
	for b.Loop() {
		Work(j, table)
	}
}
