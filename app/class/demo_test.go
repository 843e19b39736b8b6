package class

import (
	"bytes"
	"encoding/json"
	"reflect"
	"testing"

	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// The demo class is the same class in every language but for names and
// sentences, and those are others.
func TestDemoClassInSpanish(t *testing.T) {
	english, spanish := unnamed(t, words.English), unnamed(t, words.Spanish)
	if !reflect.DeepEqual(english, spanish) {
		t.Errorf("the Spanish demo class differs:\n%v\n%v", english, spanish)
	}
	c, err := Read(bytes.NewReader(content.DemoClassIn(words.Spanish)), "demo")
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range c.Batches {
		if _, ok := c.Kit.KettleNamed(b.Kettle); b.Kettle != "" && !ok {
			t.Errorf("%s: no kettle %q", b.Name, b.Kettle)
		}
		if _, ok := c.Kit.BurnerNamed(b.Burner); b.Burner != "" && !ok {
			t.Errorf("%s: no burner %q", b.Name, b.Burner)
		}
	}
	if before := content.DemoClassIn(words.English); c.Title == "" || bytes.Contains(before, []byte(c.Title)) || bytes.Contains(before, []byte(c.Notes)) {
		t.Errorf("not translated: %q, %q", c.Title, c.Notes)
	}
}

// unnamed is the file of a demo class without what a person named or wrote.
func unnamed(t *testing.T, l words.Language) any {
	t.Helper()
	var file any
	if err := json.Unmarshal(content.DemoClassIn(l), &file); err != nil {
		t.Fatal(err)
	}
	strip(file)
	return file
}

func strip(x any) {
	switch x := x.(type) {
	case []any:
		for _, one := range x {
			strip(one)
		}
	case map[string]any:
		for key, value := range x {
			switch key {
			case "title", "name", "educator", "agency", "helpLine", "does", "kettle", "burner", "notes":
				x[key] = value == "" // whether there is one
			default:
				strip(value)
			}
		}
	}
}
