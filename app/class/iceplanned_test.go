package class

import (
	"testing"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// What is entered counts in the bags where it is more than the rule, and a
// warning does not depend on the units that it is printed in.
func TestIceThatIsEnteredIsBought(t *testing.T) {
	c := demo(t)
	plain := Work(c, reference.Shipped())
	if plain.Totals.IcePlanned.ID != "" {
		t.Errorf("nothing is entered, yet planned: %+v", plain.Totals.IcePlanned)
	}
	for _, one := range []struct {
		ice, planned, bags string
		value              float64
	}{
		{"10 lb", "43.5 lb", "5 bags of 10 lb", 43.5}, // 15.5 lb by the rule, 4 × (10 − 3) more
		{"1 lb", "7.5 lb", "2 bags of 10 lb", 7.5},    // less than the rule: bags by the rule
	} {
		ice, err := measure.Parse(one.ice, measure.Pound)
		if err != nil {
			t.Fatal(err)
		}
		c.Batches[0].Ice = ice
		got := Work(c, reference.Shipped()).Totals
		if got.IcePlanned.Text != one.planned || got.IceBags.Text != one.bags || got.Ice.Text != plain.Totals.Ice.Text {
			t.Errorf("%s: planned %q, bags %q, rule %q", one.ice, got.IcePlanned.Text, got.IceBags.Text, got.Ice.Text)
		}
	}
}

func TestWarningsAreTheSameInBothUnits(t *testing.T) {
	c := demo(t)
	ids := func(units measure.System) (all []string) {
		c.Units = units
		w := Work(c, reference.Shipped())
		for _, f := range w.Findings {
			all = append(all, f.ID)
		}
		for _, b := range w.Batches {
			for _, f := range b.Findings {
				all = append(all, b.Batch.Name+" "+f.ID)
			}
		}
		return all
	}
	us, metric := ids(measure.US), ids(measure.Metric)
	if len(us) != len(metric) {
		t.Fatalf("in pounds %q, in kilograms %q", us, metric)
	}
	for i := range us {
		if us[i] != metric[i] {
			t.Errorf("in pounds %q, in kilograms %q", us[i], metric[i])
		}
	}
}
