package measure

// A Dimension says what kind of thing is measured. Only this package defines
// dimensions.
type Dimension interface {
	massDim | volumeDim | lengthDim | temperatureDim | durationDim | powerDim
	family() family
}

// family is what all amounts of one dimension share.
type family struct {
	noun    string // "a weight"
	example string // "3 lb, 1 1/2 lb or 2 kg"
}

type (
	massDim        struct{}
	volumeDim      struct{}
	lengthDim      struct{}
	temperatureDim struct{}
	durationDim    struct{}
	powerDim       struct{}
)

func (massDim) family() family   { return family{"a weight", "3 lb, 8 oz or 1.5 kg"} }
func (volumeDim) family() family { return family{"a volume", "1 gal, 3 3/4 qt, 20 cu ft or 4 L"} }
func (lengthDim) family() family { return family{"a length or height", "1/2 in, 5,000 ft or 1,524 m"} }
func (temperatureDim) family() family {
	return family{"a temperature", "70 °F or 21 °C"}
}
func (durationDim) family() family { return family{"a time", "3 min, 90 s or 2 h"} }
func (powerDim) family() family    { return family{"a power", "1,800 W, 1.8 kW or 12,000 Btu/h"} }

// Unit is one unit of a dimension. SI value = amount × Factor + Offset, in kg,
// L, m, °C, s or W.
type Unit[D Dimension] struct {
	Symbol string // as printed: "lb"
	Factor float64
	Offset float64
	// parts are the denominators that a kitchen tool for this unit is marked
	// in; nil prints decimals.
	parts []int
	words []string // other spellings that are read, lower case
}

// The units that are read and printed.
var (
	Pound    = &Unit[massDim]{Symbol: "lb", Factor: 0.45359237, words: []string{"lbs", "pound", "pounds", "#"}}
	Ounce    = &Unit[massDim]{Symbol: "oz", Factor: 0.45359237 / 16, words: []string{"ounce", "ounces"}}
	Kilogram = &Unit[massDim]{Symbol: "kg", Factor: 1, words: []string{"kilo", "kilos", "kilogram", "kilograms"}}
	Gram     = &Unit[massDim]{Symbol: "g", Factor: 0.001, words: []string{"gram", "grams"}}

	Gallon     = &Unit[volumeDim]{Symbol: "gal", Factor: 3.785411784, parts: []int{2, 4}, words: []string{"gallon", "gallons", "gals"}}
	Quart      = &Unit[volumeDim]{Symbol: "qt", Factor: 3.785411784 / 4, parts: kitchenParts, words: []string{"quart", "quarts", "qts"}}
	Pint       = &Unit[volumeDim]{Symbol: "pt", Factor: 3.785411784 / 8, parts: kitchenParts, words: []string{"pint", "pints", "pts"}}
	Cup        = &Unit[volumeDim]{Symbol: "cup", Factor: 3.785411784 / 16, parts: kitchenParts, words: []string{"cups"}}
	FluidOunce = &Unit[volumeDim]{Symbol: "fl oz", Factor: 3.785411784 / 128, words: []string{"fluid ounce", "fluid ounces"}}
	Litre      = &Unit[volumeDim]{Symbol: "L", Factor: 1, words: []string{"litre", "litres", "liter", "liters"}}
	Millilitre = &Unit[volumeDim]{Symbol: "mL", Factor: 0.001, words: []string{"millilitre", "millilitres", "milliliter", "milliliters"}}
	CubicFoot  = &Unit[volumeDim]{Symbol: "cu ft", Factor: 28.316846592, words: []string{"cubic foot", "cubic feet", "cubic ft", "ft3", "ft³", "cuft", "cf"}}

	Inch       = &Unit[lengthDim]{Symbol: "in", Factor: 0.0254, parts: []int{2, 4, 8}, words: []string{"inch", "inches", `"`, "″"}}
	Foot       = &Unit[lengthDim]{Symbol: "ft", Factor: 0.3048, words: []string{"foot", "feet", "'", "′"}}
	Metre      = &Unit[lengthDim]{Symbol: "m", Factor: 1, words: []string{"metre", "metres", "meter", "meters"}}
	Centimetre = &Unit[lengthDim]{Symbol: "cm", Factor: 0.01, words: []string{"centimetre", "centimetres", "centimeter", "centimeters"}}
	Millimetre = &Unit[lengthDim]{Symbol: "mm", Factor: 0.001, words: []string{"millimetre", "millimetres", "millimeter", "millimeters"}}

	Fahrenheit = &Unit[temperatureDim]{Symbol: "°F", Factor: 5.0 / 9, Offset: -160.0 / 9, words: []string{"f", "deg f", "degf", "degrees f", "fahrenheit"}}
	Celsius    = &Unit[temperatureDim]{Symbol: "°C", Factor: 1, words: []string{"c", "deg c", "degc", "degrees c", "celsius"}}

	Second = &Unit[durationDim]{Symbol: "s", Factor: 1, words: []string{"sec", "secs", "second", "seconds"}}
	Minute = &Unit[durationDim]{Symbol: "min", Factor: 60, parts: []int{2, 4}, words: []string{"mins", "minute", "minutes"}}
	Hour   = &Unit[durationDim]{Symbol: "h", Factor: 3600, parts: []int{2, 4}, words: []string{"hr", "hrs", "hour", "hours"}}

	Watt     = &Unit[powerDim]{Symbol: "W", Factor: 1, words: []string{"watt", "watts"}}
	Kilowatt = &Unit[powerDim]{Symbol: "kW", Factor: 1000, words: []string{"kilowatt", "kilowatts"}}
	BtuPerH  = &Unit[powerDim]{Symbol: "Btu/h", Factor: 0.29307107, words: []string{"btu", "btuh", "btu/hr", "btus"}}
)

// kitchenParts are halves, thirds and quarters: the marks of cups and jugs.
var kitchenParts = []int{2, 3, 4}

// unitsOf lists the units of a dimension in the order in which they are
// offered to a reader.
func unitsOf[D Dimension]() []*Unit[D] {
	var d D
	var list any
	switch any(d).(type) {
	case massDim:
		list = []*Unit[massDim]{Pound, Ounce, Kilogram, Gram}
	case volumeDim:
		list = []*Unit[volumeDim]{Gallon, Quart, Pint, Cup, FluidOunce, CubicFoot, Litre, Millilitre}
	case lengthDim:
		list = []*Unit[lengthDim]{Inch, Foot, Metre, Centimetre, Millimetre}
	case temperatureDim:
		list = []*Unit[temperatureDim]{Fahrenheit, Celsius}
	case durationDim:
		list = []*Unit[durationDim]{Minute, Second, Hour}
	case powerDim:
		list = []*Unit[powerDim]{Watt, Kilowatt, BtuPerH}
	}
	return list.([]*Unit[D])
}

// System is the family of units that a class is shown in.
type System string

const (
	US     System = "us"     // pounds, US gallons, inches, °F
	Metric System = "metric" // kilograms, litres, centimetres, °C
)
