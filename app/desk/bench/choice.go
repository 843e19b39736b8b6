package bench

import (
	"slices"

	"example.org/kettleside/app/desk/look"
)

// option is one of a few values, with its words as they are shown.
type option struct{ value, words string }

// choice is a list that opens, of options of which one holds.
type choice struct {
	*look.Select
	options []option
}

// newChoice makes a list; set hears of every option that comes to hold.
func newChoice(set func(value string), options ...option) *choice {
	c := &choice{}
	c.Select = look.NewSelect(nil, func(string) { set(c.value()) })
	c.PlaceHolder = " "
	c.offer(options)
	return c
}

// value is the value that holds.
func (c *choice) value() string {
	if at := c.SelectedIndex(); at >= 0 {
		return c.options[at].value
	}
	return ""
}

// offer offers other options.
func (c *choice) offer(options []option) {
	if slices.Equal(c.options, options) {
		return
	}
	c.options = options
	texts := make([]string, len(options))
	for i, o := range options {
		texts[i] = o.words
	}
	c.SetOptions(texts)
}

// show lets a value hold.
func (c *choice) show(value string) {
	at := slices.IndexFunc(c.options, func(o option) bool { return o.value == value })
	if at < 0 {
		c.ClearSelected()
	} else {
		c.SetSelectedIndex(at)
	}
}

// ofKit are names of the kit to choose from, and the words for none.
func ofKit(names []string, none string) []option {
	options := make([]option, 0, len(names)+1)
	for _, name := range names {
		options = append(options, option{name, name})
	}
	return append(options, option{"", none})
}
