package class

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// filler puts a decoded JSON tree into a class and notes every field that does
// not fit. encoding/json alone would stop at the first problem and could not
// name the field of a quantity.
type filler struct{ problems []error }

func (f *filler) problem(field, typed, problem string, allowed words.Phrase) {
	f.problems = append(f.problems, &measure.EntryError{Field: field, Typed: typed, Problem: problem, Allowed: allowed})
}

// fill sets the value that target points to from a part of the tree.
func (f *filler) fill(field string, part any, target any) {
	if reader, ok := target.(encoding.TextUnmarshaler); ok {
		text, ok := part.(string)
		if !ok {
			f.problem(field, show(part), words.Key("is not in quotes"), words.Later(`a quantity in quotes with its unit, such as "3 lb"`))
			return
		}
		if err := reader.UnmarshalText([]byte(text)); err != nil {
			if entry, ok := err.(*measure.EntryError); ok {
				entry.Field = field
			}
			f.problems = append(f.problems, err)
		}
		return
	}
	v := reflect.ValueOf(target).Elem()
	switch v.Kind() {
	case reflect.Struct:
		f.fillStruct(field, part, v)
	case reflect.Slice:
		f.fillSlice(field, part, v)
	case reflect.String:
		if text, ok := part.(string); ok {
			v.SetString(text)
		} else {
			f.problem(field, show(part), words.Key("is not a text"), words.Later("a text in quotes"))
		}
	case reflect.Bool:
		if b, ok := part.(bool); ok {
			v.SetBool(b)
		} else {
			f.problem(field, show(part), words.Key("is not yes or no"), words.Later("true or false"))
		}
	case reflect.Int:
		n, ok := part.(json.Number)
		i, err := n.Int64()
		if !ok || err != nil || i != int64(int32(i)) {
			f.problem(field, show(part), words.Key("is not a whole number"), words.Later("a whole number without quotes"))
			return
		}
		v.SetInt(i)
	default: // a field of the model that no case covers is a mistake in the program
		panic("class: no reader for field " + field)
	}
}

func (f *filler) fillStruct(field string, part any, v reflect.Value) {
	object, ok := part.(map[string]any)
	if !ok {
		f.problem(field, show(part), words.Key("is not a group of fields"), words.Later("fields in { }"))
		return
	}
	known := map[string]bool{}
	for i := range v.NumField() {
		name := nameInFile(v.Type().Field(i))
		known[name] = true
		if inner, there := object[name]; there {
			f.fill(join(field, name), inner, v.Field(i).Addr().Interface())
		}
	}
	var unknown []string
	for name := range object {
		if !known[name] {
			unknown = append(unknown, name)
		}
	}
	slices.Sort(unknown)
	for _, name := range unknown {
		f.problem(join(field, name), show(object[name]), words.Key("stands in a field that a class does not have"), words.Later("one of %s", strings.Join(fieldNames(v.Type()), ", ")))
	}
}

func (f *filler) fillSlice(field string, part any, v reflect.Value) {
	if part == nil { // an empty list is written as null
		return
	}
	list, ok := part.([]any)
	if !ok {
		f.problem(field, show(part), words.Key("is not a list"), words.Later("a list in [ ]"))
		return
	}
	if len(list) > 1000 {
		f.problem(field, fmt.Sprintf("%d entries", len(list)), words.Key("is too much"), words.Later("at most 1,000 entries"))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(list), len(list)))
	for i, inner := range list {
		f.fill(fmt.Sprintf("%s[%d]", field, i), inner, v.Index(i).Addr().Interface())
	}
}

func fieldNames(t reflect.Type) []string {
	names := make([]string, t.NumField())
	for i := range names {
		names[i] = nameInFile(t.Field(i))
	}
	return names
}

// nameInFile is the name of a field of the model; how it is left out stands
// behind it.
func nameInFile(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

func join(field, name string) string {
	if field == "" {
		return name
	}
	return field + "." + name
}

// show is a part of the tree as it stands in the file.
func show(part any) string {
	data, err := json.Marshal(part)
	if err != nil {
		return "?"
	}
	return string(data)
}
