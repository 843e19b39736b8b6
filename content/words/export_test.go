package words

// Hearing is a voice that knows no translation and so remembers every text that
// it is asked to say.
func Hearing() *Voice { return &Voice{language: Spanish, missing: map[string]bool{}} }
