// Package content holds all words that people read beside the figures: the
// method in steps, cautions, questions from the room, and the demo class. The words are data, one file
// a language and subject, so that a translation never touches code. A number
// inside a text stands as a placeholder, {return-to-boil-min}, and is filled
// from the rules of the crop table: words and figures have one source of
// numbers. The texts of another language have the same ids in the same order.
package content

import (
	"embed"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/content/words"
)

//go:embed en/*.json es/*.json es/demo.kettleside
var files embed.FS

//go:embed demo.kettleside
var demo []byte

// DemoClass is the demo class as a class file. Everything in it is invented
// and says so.
func DemoClass() []byte { return slices.Clone(demo) }

// DemoClassIn is the demo class with its names in a language: the same class
// otherwise.
func DemoClassIn(l words.Language) []byte {
	if l != words.Spanish {
		return DemoClass()
	}
	data, err := files.ReadFile("es/demo.kettleside")
	if err != nil {
		panic("content: " + err.Error()) // embedded
	}
	return data
}

// Topic is what a caution or a step concerns.
type Topic string

const (
	Always    Topic = "always"     // stands on every handout
	BoilWater Topic = "water"      // boiling water
	Steam     Topic = "steam"      //
	Cook      Topic = "cook"       // cooked through before freezing
	Raw       Topic = "raw"        // packed without heating
	Glass     Topic = "glass"      // jars
	Power     Topic = "power"      // plug-in burners
	IceBath   Topic = "ice"        // cold water
	HotPepper Topic = "hot pepper" // burning juice
	DryIce    Topic = "dry ice"    //
)

// AllTopics lists every topic, for a surface that shows all cautions.
func AllTopics() []Topic {
	return []Topic{Always, BoilWater, Steam, Cook, Raw, Glass, Power, IceBath, HotPepper, DryIce}
}

// Caution is one warning: what it is, then what to do.
type Caution struct {
	ID     string  `json:"id"`
	Title  string  `json:"title"`
	Text   string  `json:"text"`
	Topics []Topic `json:"topics"`
	Source string  `json:"source"` // id in the crop table's sources, or "common practice"
}

// Step is one action of the method.
type Step struct {
	ID     string  `json:"id"`
	Title  string  `json:"title"`
	Text   string  `json:"text"`
	Topics []Topic `json:"topics"` // the methods it belongs to
}

// TopicsOf lists what concerns one batch: its method ("water", "steam", "cook"
// or "raw"), what is filled ("bag", "box" or "jar") and the crop's id in the
// table. Every surface that shows a batch takes its cautions from here.
func TopicsOf(method, container, crop string) []Topic {
	topics := []Topic{Topic(method)}
	switch Topic(method) {
	case BoilWater, Steam:
		topics = append(topics, IceBath, Power)
	case Cook:
		topics = append(topics, Power)
	}
	if container == "jar" {
		topics = append(topics, Glass)
	}
	if crop == "hot-peppers" {
		topics = append(topics, HotPepper)
	}
	return topics
}

// Cautions returns the cautions for any of the topics, in order; Always is
// implied.
func Cautions(l words.Language, topics ...Topic) []Caution {
	all := load[Caution](l, "cautions.json")
	return slices.DeleteFunc(all, func(c Caution) bool { return !touches(c.Topics, append(topics, Always)) })
}

// Steps returns the steps of one method in order: BoilWater, Steam, Cook or
// Raw.
func Steps(l words.Language, method Topic) []Step {
	all := load[Step](l, "steps.json")
	return slices.DeleteFunc(all, func(s Step) bool { return !touches(s.Topics, []Topic{method, Always}) })
}

func touches(have, want []Topic) bool {
	return slices.ContainsFunc(have, func(t Topic) bool { return slices.Contains(want, t) })
}

// Fill puts values into the placeholders of a text. A placeholder without a
// value is an error that names it: a text never prints a gap.
func Fill(text string, values map[string]string) (string, error) {
	return fill(text, func(key string) (string, bool) {
		value, known := values[key]
		return value, known
	})
}

func fill(text string, valueOf func(key string) (string, bool)) (string, error) {
	var out strings.Builder
	for rest := text; ; {
		before, after, open := strings.Cut(rest, "{")
		out.WriteString(before)
		if !open {
			return out.String(), nil
		}
		key, tail, closed := strings.Cut(after, "}")
		value, known := valueOf(key)
		if !closed || !known {
			return "", fmt.Errorf("no value for {%s} in “%s”", key, text)
		}
		out.WriteString(value)
		rest = tail
	}
}

// load reads one embedded list in a language; an unknown one reads English. The
// files are part of the program: a broken one is a broken invariant.
func load[T any](l words.Language, file string) []T {
	name := string(spoken(l)) + "/" + file
	data, err := files.ReadFile(name)
	if err != nil {
		panic("content: " + err.Error())
	}
	var list []T
	if err := json.Unmarshal(data, &list); err != nil {
		panic("content: " + name + ": " + err.Error())
	}
	return list
}

// spoken is the language itself where there are texts in it, else English.
func spoken(l words.Language) words.Language {
	if slices.Contains(words.Languages(), l) {
		return l
	}
	return words.English
}
