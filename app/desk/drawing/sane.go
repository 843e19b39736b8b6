package drawing

import "math"

// upTo is x held between 0 and high; what is no number is 0. Drawings take any
// number, so that a slip of the finger cannot hang the window.
func upTo(x, high float64) float64 {
	if math.IsNaN(x) || x <= 0 {
		return 0
	}
	return math.Min(x, high)
}

// Far beyond anything in a kitchen.
const (
	mostLitres = 1e5
	mostKg     = 1e5
	mostMin    = 1e4
	mostCm     = 1e3
	mostPints  = 8
	mostInches = 60
	mostPieces = 400
)
