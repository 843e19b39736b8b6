package look

// refused are the fields whose text was refused and still stands in them, in
// the order of the refusals. There is one window with fields, and the toolkit
// runs on one goroutine.
var refused []*Field

func (f *Field) markRefused(is bool) {
	for i, other := range refused {
		if other == f {
			if !is {
				refused = append(refused[:i], refused[i+1:]...)
			}
			return
		}
	}
	if is {
		refused = append(refused, f)
	}
}

// Refused says in a sentence which entry was refused and would be left out, ""
// where there is none.
func Refused() string {
	if len(refused) == 0 {
		return ""
	}
	f := refused[0]
	text := Say("“%s” stands in a field and cannot be used: %s", f.Text(), f.Problem())
	if f.label.Text() != "" { // only the first row of a list has labels
		text = Say("“%s” stands in the field “%s” and cannot be used: %s", f.Text(), f.label.Text(), f.Problem())
	}
	if more := len(refused) - 1; more > 0 {
		text = Say("%s (and %d more)", text, more)
	}
	return text
}

// RestoreRefused brings the last good value back into every refused field: at
// the start of another class, or where somebody says so.
func RestoreRefused() {
	for len(refused) > 0 {
		refused[0].Restore()
	}
}
