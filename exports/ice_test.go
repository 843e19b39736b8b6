package exports

import (
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// The ice that was entered is said beside the ice of the rule, in the numbers
// and on the batch's sheet; nothing is said of it where none was.
func TestIceThatWasEntered(t *testing.T) {
	c := demoClass(t)
	c.Batches[0].Ice = measure.New(2, measure.Pound)
	w := class.Work(c, reference.Shipped())
	data, err := Numbers(w)
	noErr(t, err)
	var doc numbersDoc
	mustJSON(t, data, &doc)
	said := func(batch int) map[string]string {
		texts := map[string]string{}
		for _, f := range doc.Batches[batch].Figures {
			texts[f.ID] = f.Text
		}
		return texts
	}
	if with, without := said(0), said(1); with["ice"] != "3 lb" || with["ice-entered"] != "2 lb" || without["ice-entered"] != "" {
		t.Errorf("with ice %v, without %v", with, without)
	}
	onSheet := false
	for _, f := range saidOnce(w.Batches[0]) {
		onSheet = onSheet || f.ID == "ice-entered" && strings.Contains(f.Working, "the rule asks for 3 lb")
	}
	if !onSheet {
		t.Error("the batch's sheet does not say what ice was entered")
	}
}
