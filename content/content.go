// Package content holds all words that people read beside the figures: the
// method in steps, cautions, questions from the room, and the demo class. The words are data, one file
// a language and subject, so that a translation never touches code. A number
// inside a text stands as a placeholder, {return-to-boil-min}, and is filled
// from the rules of the crop table: words and figures have one source of
// numbers.
package content

import (
	"embed"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

//go:embed en/*.json
var english embed.FS

//go:embed demo.kettleside
var demo []byte

// DemoClass is the demo class as a class file. Everything in it is invented
// and says so.
func DemoClass() []byte { return slices.Clone(demo) }

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
func Cautions(topics ...Topic) []Caution {
	all := load[Caution]("en/cautions.json")
	return slices.DeleteFunc(all, func(c Caution) bool { return !touches(c.Topics, append(topics, Always)) })
}

// Steps returns the steps of one method in order: BoilWater, Steam, Cook or
// Raw.
func Steps(method Topic) []Step {
	all := load[Step]("en/steps.json")
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

// load reads one embedded list. The files are part of the program: a broken
// one is a broken invariant.
func load[T any](name string) []T {
	data, err := english.ReadFile(name)
	if err != nil {
		panic("content: " + err.Error())
	}
	var list []T
	if err := json.Unmarshal(data, &list); err != nil {
		panic("content: " + name + ": " + err.Error())
	}
	return list
}
