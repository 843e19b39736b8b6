// Package words puts what the program says into the language of its reader.
//
// English stands in the code, as the sentence itself; a Voice looks it up among
// the translations of its language. A sentence is translated whole, with its
// placeholders, so that another language can put them in another order
// (%[2]s before %[1]s). Numbers come into a sentence already printed: they are
// the same in every language (US Spanish keeps the decimal point).
//
// A text without a translation stays English, and the voice remembers it: a
// page in two languages says so instead of mixing them in silence.
package words

import (
	"fmt"
	"slices"
	"sync"
)

// Language is a language that Kettleside speaks, as its tag (BCP 47).
type Language string

const (
	English Language = "en"
	Spanish Language = "es"
)

// Languages lists what a person can choose.
func Languages() []Language { return []Language{English, Spanish} }

// Name is what speakers call the language.
func (l Language) Name() string {
	if l == Spanish {
		return "Español"
	}
	return "English"
}

// Voice says things in one language. The zero value and nil speak English. It
// may be used by several goroutines.
type Voice struct {
	language Language
	texts    map[string]string
	mu       sync.Mutex
	missing  map[string]bool
}

// In returns a voice for a language; an unknown one speaks English.
func In(l Language) *Voice {
	if l != Spanish {
		return &Voice{language: English}
	}
	return &Voice{language: l, texts: spanish(), missing: map[string]bool{}}
}

// Language is the language that the voice speaks.
func (v *Voice) Language() Language {
	if v == nil || v.language == "" {
		return English
	}
	return v.language
}

// Say is the text in the reader's language, its placeholders filled as by
// fmt.Sprintf where there are arguments.
func (v *Voice) Say(text string, args ...any) string {
	text = v.lookUp(text)
	if len(args) == 0 {
		return text
	}
	return fmt.Sprintf(text, args...)
}

// Key marks a text that is said later, so that it is listed among those to
// translate: a name in a table, for instance.
func Key(text string) string { return text }

// lookUp finds the translation of a text, and remembers where there is none.
func (v *Voice) lookUp(text string) string {
	if v.Language() == English || text == "" {
		return text
	}
	if other, ok := v.texts[text]; ok {
		return other
	}
	v.mu.Lock()
	defer v.mu.Unlock()
	v.missing[text] = true
	return text
}

// Untranslated lists what the voice was asked to say and could say only in
// English, sorted.
func (v *Voice) Untranslated() []string {
	if v == nil {
		return nil
	}
	v.mu.Lock()
	defer v.mu.Unlock()
	var list []string
	for text := range v.missing {
		list = append(list, text)
	}
	slices.Sort(list)
	return list
}
