// Package licences holds the licences of everything that is built into the
// programs, so that they travel with them.
package licences

import (
	"embed"
	"io/fs"
	"strings"
)

// texts are the licence files as their modules carry them, one a module, named
// by its path with underscores for slashes.
//
//go:embed texts/*.txt
var texts embed.FS

// Licence is the licence of one module.
type Licence struct {
	Module string // its path, or "go" for the standard library
	Text   string
}

// All lists the licences by the names of their modules.
func All() []Licence {
	names, _ := fs.Glob(texts, "texts/*.txt") // the pattern is well-formed
	var all []Licence
	for _, name := range names {
		data, err := texts.ReadFile(name)
		if err != nil {
			panic("licences: " + err.Error()) // embedded: a test reads them all
		}
		module := strings.TrimSuffix(strings.TrimPrefix(name, "texts/"), ".txt")
		all = append(all, Licence{Module: strings.ReplaceAll(module, "_", "/"), Text: string(data)})
	}
	return all
}

// Kind is the usual name of the licence, read from its text; "" for one that
// is known by no name.
func (l Licence) Kind() string {
	text := strings.Join(strings.Fields(l.Text), " ")
	for _, k := range kinds {
		if strings.Contains(text, k.says) {
			return k.name
		}
	}
	return ""
}

// kinds tell licences apart by words that only they have; the first that fits
// counts.
var kinds = []struct{ says, name string }{
	{"UNLICENSE", "Unlicense or BSD"},
	{"Apache License", "Apache 2.0"},
	{"Neither the name", "BSD 3-Clause"},
	{"names of its contributors may", "BSD 3-Clause"},
	{"Redistribution and use in source and binary forms", "BSD 2-Clause"},
	{"Permission to use, copy, modify, and/or distribute this software for any purpose", "ISC"},
	{"Permission is hereby granted, free of charge", "MIT"},
}
