package session

import (
	"strings"
	"unicode/utf8"

	"example.org/kettleside/app/class"
)

// maxNameBytes leaves room for what is put to a name within the 255 bytes that
// a file system takes.
const maxNameBytes = 200

// FileName makes a file name out of date and title of a class.
func FileName(c class.Class, extension string) string {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return -1
		}
		return r
	}, strings.TrimSpace(c.Date+" "+c.Title))
	for len(name)+len(extension) > maxNameBytes { // a file system counts bytes, a person letters
		_, last := utf8.DecodeLastRuneInString(name)
		name = strings.TrimSpace(name[:len(name)-last])
	}
	if name == "" {
		name = "class"
	}
	return name + extension
}
