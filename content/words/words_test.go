package words_test

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

func TestEnglishIsTheTextItself(t *testing.T) {
	for name, v := range map[string]*words.Voice{"nil": nil, "zero": {}, "English": words.In(words.English), "unknown": words.In("xx")} {
		if got := v.Say("%s a load", "1 lb"); got != "1 lb a load" {
			t.Errorf("%s voice says %q", name, got)
		}
		if v.Language() != words.English || len(v.Untranslated()) != 0 {
			t.Errorf("%s voice: language %q, untranslated %q", name, v.Language(), v.Untranslated())
		}
	}
}

func TestUntranslatedIsRemembered(t *testing.T) {
	v := words.In(words.Spanish)
	const unknown = "nobody ever translated this %s"
	if got := v.Say(unknown, "text"); got != "nobody ever translated this text" {
		t.Errorf("says %q", got)
	}
	if got := v.Untranslated(); !slices.Equal(got, []string{unknown}) {
		t.Errorf("remembers %q", got)
	}
}

func TestFaults(t *testing.T) {
	inner := words.Errorf("no file %q", "a")
	outer := words.Errorf("cannot open: %w", inner)
	if outer.Error() != `cannot open: no file "a"` {
		t.Errorf("English: %q", outer)
	}
	if !errors.Is(outer, inner) || !errors.Is(words.Errorf("disk: %w", fs.ErrPermission), fs.ErrPermission) {
		t.Error("a fault hides what it wraps")
	}
	v := words.In(words.Spanish)
	if got := v.Error(outer); got != outer.Error() {
		t.Errorf("untranslated: %q", got)
	}
	if got := v.Untranslated(); !slices.Equal(got, []string{"cannot open: %w", "no file %q"}) {
		t.Errorf("the inner fault was not looked up: %q", got)
	}
	if v.Error(nil) != "" || v.Error(fs.ErrExist) != fs.ErrExist.Error() {
		t.Error("other errors change")
	}
}

// An error with fields of its own says itself, also inside a fault, and so does
// a phrase inside a phrase.
func TestFaultsOfOtherKinds(t *testing.T) {
	odd := oddError{words.Later("%s from %d", words.Later("a number"), 3)}
	outer := words.Errorf("refused: %w", odd)
	if outer.Error() != "refused: odd: a number from 3" || !errors.As(outer, new(oddError)) {
		t.Errorf("English: %q", outer)
	}
	v := words.In(words.Spanish)
	if got := v.Error(outer); got != "refused: odd: a number from 3" {
		t.Errorf("untranslated: %q", got)
	}
	if got := v.Untranslated(); !slices.Equal(got, []string{"%s from %d", "a number", "odd: %s", "refused: %w"}) {
		t.Errorf("not all was looked up: %q", got)
	}
}

type oddError struct{ allowed words.Phrase }

func (e oddError) Error() string             { return e.Say(nil) }
func (e oddError) Say(v *words.Voice) string { return v.Say("odd: %s", e.allowed.Say(v)) }

func TestAmounts(t *testing.T) {
	v := words.In(words.Spanish)
	for english, spanish := range map[string]string{
		"1 ½ in": "1 ½ pulg", "5,000 ft": "5,000 pies", "1 ft": "1 pie", "20 cu ft": "20 pies³", "½ cup": "½ taza", "1/2 cup": "1/2 taza", "1 1/2 cup": "1 1/2 tazas", "3 cup": "3 tazas",
		"3 lb": "3 lb", "2–3 lb/cu ft": "2–3 lb/pie³", "1 gal": "1 gal", "": "", "in": "in",
	} {
		if got := v.Amount(english); got != spanish {
			t.Errorf("%q becomes %q, want %q", english, got, spanish)
		}
		if got := (*words.Voice)(nil).Amount(english); got != english {
			t.Errorf("English %q becomes %q", english, got)
		}
	}
}

// Every translation says something, once, with the same placeholders as the
// English, and says what it rests on.
func TestTexts(t *testing.T) {
	all, err := words.Texts()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]words.Text{}
	for _, x := range all {
		at := func(format string, args ...any) {
			t.Helper()
			t.Errorf("%s:%d: "+format, append([]any{x.File, x.Line}, args...)...)
		}
		if before, twice := seen[x.English]; twice {
			at("%q stands already in %s:%d", x.English, before.File, before.Line)
		}
		seen[x.English] = x
		if strings.TrimSpace(x.Spanish) == "" || strings.TrimSpace(x.English) == "" {
			at("an empty text")
		}
		if x.Basis != "read" && x.Basis != "memory" {
			at("basis %q, want read or memory", x.Basis)
		}
		if e, s := placeholders(x.English), placeholders(x.Spanish); !slices.Equal(e, s) {
			at("placeholders %q in English, %q in Spanish", e, s)
		}
		for _, bad := range traps {
			if strings.Contains(strings.ToLower(x.Spanish), bad) {
				at("%q is a trap", bad)
			}
		}
	}
}

// traps are words that mean something else to some readers: blanquear suggests
// bleach, espacio de cabeza is a calque, cuarto de hora is no quart.
var traps = []string{"blanquea", "espacio de cabeza"}
