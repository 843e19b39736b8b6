package measure

import (
	"math"
	"strconv"
	"strings"
)

// Of is an amount of one dimension together with the unit it was written in,
// so that "3 3/4 qt" stays quarts in a file that a colleague reads. The zero
// value is "not given".
type Of[D Dimension] struct {
	amount float64
	unit   *Unit[D]
}

type (
	Mass        = Of[massDim]        // SI: kg
	Volume      = Of[volumeDim]      // SI: L
	Length      = Of[lengthDim]      // SI: m
	Temperature = Of[temperatureDim] // SI: °C
	Duration    = Of[durationDim]    // SI: s
	Power       = Of[powerDim]       // SI: W
)

// The units of each dimension, by name.
type (
	MassUnit        = Unit[massDim]
	VolumeUnit      = Unit[volumeDim]
	LengthUnit      = Unit[lengthDim]
	TemperatureUnit = Unit[temperatureDim]
	DurationUnit    = Unit[durationDim]
	PowerUnit       = Unit[powerDim]
)

// New is amount in unit.
func New[D Dimension](amount float64, unit *Unit[D]) Of[D] { return Of[D]{amount, unit} }

// Given says whether an amount was entered at all.
func (q Of[D]) Given() bool { return q.unit != nil }

// Amount is the number as written, in Unit.
func (q Of[D]) Amount() float64 { return q.amount }

// Unit is the unit the amount was written in, nil if it was not given.
func (q Of[D]) Unit() *Unit[D] { return q.unit }

// SI is the value in kg, L, m, °C, s or W; 0 if it was not given.
func (q Of[D]) SI() float64 {
	if q.unit == nil {
		return 0
	}
	return q.amount*q.unit.Factor + q.unit.Offset
}

// In is the value in another unit; 0 if it was not given.
func (q Of[D]) In(u *Unit[D]) float64 {
	if q.unit == nil || q.unit == u {
		return q.amount
	}
	return (q.SI() - u.Offset) / u.Factor
}

// To is the same amount written in another unit.
func (q Of[D]) To(u *Unit[D]) Of[D] {
	if q.unit == nil {
		return q
	}
	return Of[D]{q.In(u), u}
}

// String is the amount as people write it, and reads back exactly: "3 lb",
// "1 1/2 gal", "0.94 lb". It is empty for an amount that was not given.
func (q Of[D]) String() string {
	if q.unit == nil {
		return ""
	}
	return exactText(q.amount, q.unit.parts) + " " + q.unit.Symbol
}

// MarshalText writes the amount as String does.
func (q Of[D]) MarshalText() ([]byte, error) { return []byte(q.String()), nil }

// UnmarshalText reads what String wrote, and what people type. The unit must
// be there; an empty text is "not given".
func (q *Of[D]) UnmarshalText(text []byte) error {
	if len(strings.TrimSpace(string(text))) == 0 {
		*q = Of[D]{}
		return nil
	}
	parsed, err := Parse[D](string(text), nil)
	if err != nil {
		return err
	}
	*q = parsed
	return nil
}

// exactText writes a number so that it reads back as the same number: as a
// kitchen fraction where it is one exactly, otherwise in decimals.
func exactText(amount float64, parts []int) string {
	if whole, frac := math.Modf(amount); frac != 0 {
		if len(parts) == 0 {
			parts = []int{3} // a third is typed for any unit and has no short decimal
		}
		for _, d := range parts {
			n := math.Round(frac * float64(d))
			// the test is on the number that ParseNumber would make of the text
			if n != 0 && whole+n/float64(d) == amount && amount > 0 {
				return fractionText(whole, int(n), d)
			}
		}
	}
	return strconv.FormatFloat(amount, 'f', -1, 64)
}

func fractionText(whole float64, n, d int) string {
	text := strconv.Itoa(n) + "/" + strconv.Itoa(d)
	if whole != 0 {
		text = strconv.FormatFloat(whole, 'f', -1, 64) + " " + text
	}
	return text
}
