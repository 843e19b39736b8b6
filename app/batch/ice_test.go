package batch

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// iced is three pounds of beans in a known kitchen with so much ice, "" for by
// the rule.
func iced(t testing.TB, ice string) Worked {
	t.Helper()
	j := withKitchen(t, job(t, "snap-beans-cut-water", "3 lb", "1 gal"))
	if ice != "" {
		read(t, ice, &j.Ice)
	}
	return Work(j, reference.Shipped())
}

// Ice that is entered stands beside the rule, takes its place in the estimate
// of the bath, and is remarked where it is less.
func TestIceEntered(t *testing.T) {
	rule := iced(t, "")
	if rule.IceEntered.ID != "" || has(rule, "ice-under-rule") {
		t.Errorf("no ice is entered: %+v", rule.IceEntered)
	}
	same, less, more := iced(t, "3 lb"), iced(t, "2 lb"), iced(t, "6 lb")
	for _, w := range []Worked{same, less, more} {
		if w.Ice != rule.Ice {
			t.Errorf("the rule's ice became %+v", w.Ice)
		}
	}
	if same.Estimates.Cool.Value != rule.Estimates.Cool.Value || has(same, "ice-under-rule") {
		t.Error("the ice of the rule, entered, changes something")
	}
	if !has(less, "ice-under-rule") || has(more, "ice-under-rule") {
		t.Error("less than the rule is to be remarked, more is not")
	}
	for _, f := range less.Findings {
		if f.ID == "ice-under-rule" && (f.Severity != measure.Mind || !strings.Contains(f.Says, "2 lb") || !strings.Contains(f.Says, "3 lb")) {
			t.Errorf("%+v", f)
		}
	}
	if !strings.Contains(less.Estimates.Cold.Working, "2 lb of ice") {
		t.Errorf("the working says %q", less.Estimates.Cold.Working)
	}
	if f := more.IceEntered; f.Text != "6 lb" || f.Value != 6 || f.Basis != measure.Entered {
		t.Errorf("%+v", f)
	}
	if none := iced(t, "0 lb"); !has(none, "ice-under-rule") || none.IceEntered.Text != "0 lb" {
		t.Errorf("no ice at all: %+v", none.IceEntered)
	}
}

// In another unit it is said in the class's.
func TestIceInTheUnitOfTheClass(t *testing.T) {
	f := iced(t, "2 kg").IceEntered
	if f.Text != "4.41 lb" || f.Unit != "lb" || !strings.Contains(f.Working, "2 kg") {
		t.Errorf("%+v", f)
	}
}

// No ice is asked for where nothing is chilled in ice water.
func TestIceWhereNoneIsAsked(t *testing.T) {
	j := job(t, "snap-beans-cut-water", "3 lb", "1 gal")
	j.Treatment.ChillFactor = 0
	read(t, "1 lb", &j.Ice)
	if w := Work(j, reference.Shipped()); has(w, "ice-under-rule") || w.IceEntered.Text != "1 lb" {
		t.Errorf("%+v", w.IceEntered)
	}
}

// More ice never makes the centre colder later, and never ends warmer.
func TestMoreIceIsNeverLater(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		pounds := rapid.Float64Range(0, 12).Draw(r, "ice in lb")
		more := pounds + rapid.Float64Range(0, 12).Draw(r, "more in lb")
		a, b := iced(t, fmt.Sprintf("%.4f lb", pounds)), iced(t, fmt.Sprintf("%.4f lb", more))
		for i, cool := range []measure.Figure{a.Estimates.Cool, a.Estimates.Cold} {
			then := []measure.Figure{b.Estimates.Cool, b.Estimates.Cold}[i]
			if !cool.InWords() && (then.InWords() || seconds(then) > seconds(cool)*(1+1e-6)) {
				r.Errorf("%s with %.3g lb: %s, with %.3g lb: %s", cool.ID, pounds, cool.Text, more, then.Text)
			}
		}
		if has(b, "ice-short") && !has(a, "ice-short") {
			r.Errorf("%.3g lb is enough, %.3g lb is not", pounds, more)
		}
	})
}
