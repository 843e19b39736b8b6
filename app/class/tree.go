package class

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"example.org/kettleside/content/words"
)

// maxDepth is how deep a file may nest; a class nests four deep.
const maxDepth = 12

// decodeTree reads one JSON value, with numbers as they are written. Unlike
// encoding/json it refuses a field that stands twice, because one of the two
// would be lost without a word.
func decodeTree(data []byte) (any, error) {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	tree, err := decodeValue(dec, "", 0)
	if err != nil {
		return nil, plainProblem(data, err)
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		return nil, words.Errorf("there is something after the end of the class")
	}
	return tree, nil
}

func decodeValue(dec *json.Decoder, field string, depth int) (any, error) {
	if depth > maxDepth {
		return nil, words.Errorf("the file nests deeper than a class does")
	}
	token, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch token {
	case json.Delim('{'):
		object := map[string]any{}
		for dec.More() {
			key, err := dec.Token()
			if err != nil {
				return nil, err
			}
			name := key.(string) // the decoder lets nothing else be a key
			if _, twice := object[name]; twice {
				return nil, words.Errorf("%s: the field stands twice; allowed is once", join(field, name))
			}
			if object[name], err = decodeValue(dec, join(field, name), depth+1); err != nil {
				return nil, err
			}
		}
		_, err := dec.Token()
		return object, err
	case json.Delim('['):
		list := []any{}
		for dec.More() {
			item, err := decodeValue(dec, fmt.Sprintf("%s[%d]", field, len(list)), depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, item)
		}
		_, err := dec.Token()
		return list, err
	}
	return token, nil
}

// plainProblem says where the JSON breaks.
func plainProblem(data []byte, err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		upTo := data[:min(int(syntax.Offset), len(data))]
		return words.Errorf("line %d: the file is damaged or not a class (%s)", bytes.Count(upTo, []byte("\n"))+1, syntax)
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return words.Errorf("the file is empty, cut off or not a class")
	}
	return err
}
