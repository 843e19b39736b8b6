// Package heat is the physics of the kitchen: what boiling water, a kettle, a
// piece of vegetable, an ice bath and a freezer do with heat. It explains,
// warns and sizes; it never shortens a published time.
//
// Everything is in SI units, named in the identifier: tempC, pressurePa,
// altitudeM, massKg, powerW. Functions are pure. An input outside the stated
// range gives a *RangeError that names the range.
package heat

import (
	"fmt"
	"math"
	"strconv"
)

// RangeError is an input outside of what an equation is good for.
type RangeError struct {
	Quantity  string // "altitude"
	Value     float64
	Low, High float64
	Unit      string
}

func (e *RangeError) Error() string {
	unit := e.Unit
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf("%s of %s%s is out of range: allowed is %s to %s%s", e.Quantity, digits(e.Value), unit, digits(e.Low), digits(e.High), unit)
}

// digits prints four digits that count, without an exponent where people read
// it.
func digits(x float64) string {
	if size := math.Abs(x); size >= 1e7 || size > 0 && size < 1e-4 {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	if math.Abs(x) >= 1000 {
		return strconv.FormatFloat(math.Round(x), 'f', -1, 64)
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// within returns nil where low ≤ x ≤ high; NaN is never within.
func within(quantity string, x, low, high float64, unit string) error {
	if x >= low && x <= high {
		return nil
	}
	return &RangeError{quantity, x, low, high, unit}
}
