// Package heat is the physics of the kitchen: what boiling water, a kettle, a
// piece of vegetable, an ice bath and a freezer do with heat. It explains,
// warns and sizes; it never shortens a published time.
//
// Everything is in SI units, named in the identifier: tempC, pressurePa,
// altitudeM, massKg, powerW. Functions are pure. An input outside the stated
// range gives a *RangeError that names the range.
package heat

import "fmt"

// RangeError is an input outside of what an equation is good for.
type RangeError struct {
	Quantity  string // "altitude"
	Value     float64
	Low, High float64
	Unit      string
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s of %g %s is out of range: allowed is %g to %g %s", e.Quantity, e.Value, e.Unit, e.Low, e.High, e.Unit)
}

// within returns nil where low ≤ x ≤ high; NaN is never within.
func within(quantity string, x, low, high float64, unit string) error {
	if x >= low && x <= high {
		return nil
	}
	return &RangeError{quantity, x, low, high, unit}
}
