package words_test

import (
	"testing"

	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// inTable lists the texts of the crop table that a person reads: what In says,
// and what it leaves for the surfaces to say because the program compares it.
func inTable(t *testing.T) []string {
	t.Helper()
	listener := words.Hearing()
	reference.Shipped().In(listener)
	for _, text := range saidBySurfaces() {
		listener.Say(text)
	}
	heard := listener.Untranslated()
	if len(heard) < 400 {
		t.Errorf("only %d texts heard in the table: the search is broken", len(heard))
	}
	return heard
}

// saidBySurfaces lists the texts that are the same in every language of the
// table. Titles of documents and names of publishers stay in their own language.
func saidBySurfaces() []string {
	var all []string
	for _, s := range []reference.Standing{reference.Read, reference.ReadElsewhere, reference.FromMemory, reference.CommonPractice, reference.EnteredHere} {
		all = append(all, string(s))
	}
	for _, p := range []reference.Pack{reference.LoosePack, reference.TrayPack} {
		all = append(all, string(p)) // those that need no headspace
	}
	table := reference.Shipped()
	for _, x := range table.Treatments {
		if x.HeadspaceRow != "" {
			all = append(all, reference.FieldText(x, reference.FieldHeadspace)) // "liquid table"
		}
	}
	for _, c := range table.Crops {
		all = append(all, string(c.Group))
	}
	for _, y := range table.Yields {
		all = append(all, string(y.AsBought))
	}
	for _, s := range table.Sources {
		all = append(all, s.Seen)
	}
	return all
}

func TestTableIsTranslated(t *testing.T) {
	spanish := words.In(words.Spanish)
	reference.Shipped().In(spanish)
	for _, text := range saidBySurfaces() {
		spanish.Say(text)
	}
	for _, text := range spanish.Untranslated() {
		t.Errorf("not translated: %q", text)
	}
}
