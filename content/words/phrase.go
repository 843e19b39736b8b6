package words

// Phrase is a text with what is put into it, to be said later in whatever
// language is asked for.
type Phrase struct {
	text string
	args []any
}

// Later makes a phrase; what is put into it may be a phrase too.
func Later(text string, args ...any) Phrase { return Phrase{text, args} }

// Say is the phrase by a voice.
func (p Phrase) Say(v *Voice) string {
	said := make([]any, len(p.args))
	for i, arg := range p.args {
		said[i] = v.inside(arg)
	}
	return v.Say(p.text, said...)
}

// String is the phrase in English.
func (p Phrase) String() string { return p.Say(nil) }
