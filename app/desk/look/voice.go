package look

import (
	"strings"

	"example.org/kettleside/content/words"
)

// voice speaks in every widget: like the theme it belongs to the whole program,
// and the toolkit runs on one goroutine.
var voice *words.Voice

// Speak lets widgets that are made from now on speak with a voice; nil speaks
// English.
func Speak(v *words.Voice) { voice = v }

// Voice is the voice that widgets speak with.
func Voice() *words.Voice { return voice }

// Say is a text in the language of the window: see words.Voice.
func Say(text string, args ...any) string { return voice.Say(text, args...) }

// Amount is a printed amount with its unit in the language of the window.
func Amount(text string) string { return voice.Amount(text) }

// AtLeast takes the words off an amount that is a lower bound: "3–4 pint bags" of
// "at least 3–4 pint bags".
func AtLeast(text string) (bare string, is bool) {
	before, after, _ := strings.Cut(Say("at least %s"), "%s")
	bare, is = strings.CutPrefix(text, before)
	if !is {
		return text, false
	}
	return strings.CutSuffix(bare, after)
}
