package words

import (
	"errors"
	"fmt"
)

// Fault is an error whose sentence can be said in another language.
type Fault struct {
	text string
	args []any
	in   error // as fmt makes it: English, with what it wraps
}

// Errorf makes a fault as fmt.Errorf makes an error, %w included.
func Errorf(text string, args ...any) error {
	return &Fault{text: text, args: args, in: fmt.Errorf(text, args...)}
}

// Error is the sentence in English.
func (f *Fault) Error() string { return f.in.Error() }

// Unwrap gives what the fault wraps with %w.
func (f *Fault) Unwrap() error { return errors.Unwrap(f.in) }

// Say is the sentence by a voice, with the faults and phrases inside it.
func (f *Fault) Say(v *Voice) string {
	if v.Language() == English {
		return f.Error()
	}
	said := make([]any, len(f.args))
	for i, arg := range f.args {
		said[i] = v.inside(arg)
	}
	return fmt.Errorf(v.lookUp(f.text), said...).Error()
}

// Sayer is what can be said in any language: a Fault, a Phrase, an error with
// fields of its own.
type Sayer interface{ Say(v *Voice) string }

// Error says an error in the voice's language, the faults inside it too. What
// comes from elsewhere, such as the operating system, stays as it is.
func (v *Voice) Error(err error) string {
	if err == nil {
		return ""
	}
	if s, ok := err.(Sayer); ok {
		return s.Say(v)
	}
	return err.Error()
}

// inside is what is put into a text, said by the voice where it can be.
func (v *Voice) inside(arg any) any {
	switch arg := arg.(type) {
	case error:
		return errors.New(v.Error(arg)) // may stand behind %w
	case Sayer:
		return arg.Say(v)
	}
	return arg
}
