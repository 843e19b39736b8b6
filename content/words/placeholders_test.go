package words_test

import (
	"regexp"
	"slices"
	"strconv"
)

// verb is a placeholder of fmt: %s, %d, %.1f, %[2]s, and the doubled sign.
var verb = regexp.MustCompile(`%(\[(\d+)\])?([-+# 0]*[\d.]*)([a-zA-Z%])|\{[a-z0-9-]+\}`)

// placeholders lists what is put into a text, in the order of the arguments:
// two texts with the same list can stand for each other.
func placeholders(text string) []string {
	var list []string
	next := 1
	for _, m := range verb.FindAllStringSubmatch(text, -1) {
		switch {
		case m[4] == "": // {a-rule}
			list = append(list, m[0])
		case m[4] == "%":
			list = append(list, "%%")
		default:
			at := next
			if m[2] != "" {
				at, _ = strconv.Atoi(m[2])
			}
			next = at + 1
			list = append(list, "argument "+strconv.Itoa(at)+" as "+m[4])
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
