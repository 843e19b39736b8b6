package words

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"strings"
	"sync"
)

// The translations: one file a room of the house, with the columns english,
// spanish, basis and note. The basis names the rows of the glossary whose
// source was read ("read"), or says "memory": a native reader should pass over
// those.
//
//go:embed es/*.csv
var files embed.FS

// Text is one translation.
type Text struct {
	English, Spanish string
	Basis            string // "read" or "memory"
	Note             string // for the translator
	File             string
	Line             int
}

// Texts lists all translations in the order of the files.
func Texts() ([]Text, error) {
	names, err := fs.Glob(files, "es/*.csv")
	if err != nil {
		return nil, err
	}
	var all []Text
	for _, name := range names {
		data, err := files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		some, err := readTexts(name, string(data))
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}

func readTexts(name, data string) ([]Text, error) {
	r := csv.NewReader(strings.NewReader(data))
	r.FieldsPerRecord = 4
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var list []Text
	for i, row := range rows {
		if i == 0 {
			continue // the names of the columns
		}
		list = append(list, Text{English: row[0], Spanish: row[1], Basis: row[2], Note: row[3], File: name, Line: i + 1})
	}
	return list, nil
}

// spanish is the dictionary of the Spanish voice. The files are part of the
// program: a broken one is a broken invariant.
var spanish = sync.OnceValue(func() map[string]string {
	all, err := Texts()
	if err != nil {
		panic("words: " + err.Error())
	}
	dictionary := make(map[string]string, len(all))
	for _, t := range all {
		dictionary[t.English] = t.Spanish
	}
	return dictionary
})
