package measure

import "example.org/kettleside/content/words"

// A Dimension says what kind of thing is measured. Only this package defines
// dimensions.
type Dimension interface {
	massDim | volumeDim | lengthDim | temperatureDim | durationDim | powerDim
	such() words.Phrase // what an entry has to be: "a weight such as 3 lb"
}

type (
	massDim        struct{}
	volumeDim      struct{}
	lengthDim      struct{}
	temperatureDim struct{}
	durationDim    struct{}
	powerDim       struct{}
)

func (massDim) such() words.Phrase {
	return words.Later("a weight such as 3 lb, 8 oz or 1.5 kg")
}

func (volumeDim) such() words.Phrase {
	return words.Later("a volume such as 1 gal, 3 3/4 qt, 20 cu ft or 4 L")
}

func (lengthDim) such() words.Phrase {
	return words.Later("a length or height such as 1/2 in, 5,000 ft or 1,524 m")
}

func (temperatureDim) such() words.Phrase {
	return words.Later("a temperature such as 70 °F or 21 °C")
}

func (durationDim) such() words.Phrase { return words.Later("a time such as 3 min, 90 s or 2 h") }

func (powerDim) such() words.Phrase {
	return words.Later("a power such as 1,800 W, 1.8 kW or 12,000 Btu/h")
}

// Unit is one unit of a dimension. SI value = amount × Factor + Offset, in kg,
// L, m, °C, s or W.
type Unit[D Dimension] struct {
	Symbol string // as printed: "lb"
	Factor float64
	Offset float64
	// parts are the denominators that a kitchen tool for this unit is marked
	// in; nil prints decimals.
	parts  []int
	words  []string // other spellings that are read, English and Spanish, lower case
	metric bool
}

// Of says whether the unit belongs to a system; units of time and of power
// belong to both.
func (u *Unit[D]) Of(s System) bool {
	var d D
	switch any(d).(type) {
	case durationDim, powerDim:
		return true
	}
	return u.metric == (s == Metric)
}

// The units that are read and printed.
var (
	Pound    = &Unit[massDim]{Symbol: "lb", Factor: 0.45359237, words: []string{"lbs", "pound", "pounds", "#", "libra", "libras"}}
	Ounce    = &Unit[massDim]{Symbol: "oz", Factor: 0.45359237 / 16, words: []string{"ounce", "ounces", "onza", "onzas"}}
	Kilogram = &Unit[massDim]{Symbol: "kg", metric: true, Factor: 1, words: []string{"kilo", "kilos", "kilogram", "kilograms", "kilogramo", "kilogramos"}}
	Gram     = &Unit[massDim]{Symbol: "g", metric: true, Factor: 0.001, words: []string{"gram", "grams", "gramo", "gramos"}}

	Gallon     = &Unit[volumeDim]{Symbol: "gal", Factor: 3.785411784, parts: []int{2, 4}, words: []string{"gallon", "gallons", "gals", "galón", "galones", "galon"}}
	Quart      = &Unit[volumeDim]{Symbol: "qt", Factor: 3.785411784 / 4, parts: kitchenParts, words: []string{"quart", "quarts", "qts", "cuarto de galón", "cuartos de galón", "cuarto de galon", "cuartos de galon"}}
	Pint       = &Unit[volumeDim]{Symbol: "pt", Factor: 3.785411784 / 8, parts: kitchenParts, words: []string{"pint", "pints", "pts", "pinta", "pintas"}}
	Cup        = &Unit[volumeDim]{Symbol: "cup", Factor: 3.785411784 / 16, parts: kitchenParts, words: []string{"cups", "taza", "tazas"}}
	FluidOunce = &Unit[volumeDim]{Symbol: "fl oz", Factor: 3.785411784 / 128, words: []string{"fluid ounce", "fluid ounces", "onza líquida", "onzas líquidas", "onza liquida", "onzas liquidas"}}
	Litre      = &Unit[volumeDim]{Symbol: "L", metric: true, Factor: 1, words: []string{"litre", "litres", "liter", "liters", "litro", "litros"}}
	Millilitre = &Unit[volumeDim]{Symbol: "mL", metric: true, Factor: 0.001, words: []string{"millilitre", "millilitres", "milliliter", "milliliters", "mililitro", "mililitros"}}
	CubicFoot  = &Unit[volumeDim]{Symbol: "cu ft", Factor: 28.316846592, words: []string{"cubic foot", "cubic feet", "cubic ft", "ft3", "ft³", "cuft", "cf", "pie cúbico", "pies cúbicos", "pie cubico", "pies cubicos", "pie³", "pies³", "pie3", "pies3"}}

	Inch       = &Unit[lengthDim]{Symbol: "in", Factor: 0.0254, parts: []int{2, 4, 8}, words: []string{"inch", "inches", `"`, "″", "pulgada", "pulgadas", "pulg"}}
	Foot       = &Unit[lengthDim]{Symbol: "ft", Factor: 0.3048, words: []string{"foot", "feet", "'", "′", "pie", "pies"}}
	Metre      = &Unit[lengthDim]{Symbol: "m", metric: true, Factor: 1, words: []string{"metre", "metres", "meter", "meters", "metro", "metros"}}
	Centimetre = &Unit[lengthDim]{Symbol: "cm", metric: true, Factor: 0.01, words: []string{"centimetre", "centimetres", "centimeter", "centimeters", "centímetro", "centímetros", "centimetro", "centimetros"}}
	Millimetre = &Unit[lengthDim]{Symbol: "mm", metric: true, Factor: 0.001, words: []string{"millimetre", "millimetres", "millimeter", "millimeters", "milímetro", "milímetros", "milimetro", "milimetros"}}

	Fahrenheit = &Unit[temperatureDim]{Symbol: "°F", Factor: 5.0 / 9, Offset: -160.0 / 9, words: []string{"f", "deg f", "degf", "degrees f", "fahrenheit", "grados f", "grado f", "grados fahrenheit"}}
	Celsius    = &Unit[temperatureDim]{Symbol: "°C", metric: true, Factor: 1, words: []string{"c", "deg c", "degc", "degrees c", "celsius", "grados c", "grado c", "grados celsius", "centígrados", "grados centígrados"}}

	Second = &Unit[durationDim]{Symbol: "s", Factor: 1, words: []string{"sec", "secs", "second", "seconds", "seg", "segundo", "segundos"}}
	Minute = &Unit[durationDim]{Symbol: "min", Factor: 60, parts: []int{2, 4}, words: []string{"mins", "minute", "minutes", "minuto", "minutos"}}
	Hour   = &Unit[durationDim]{Symbol: "h", Factor: 3600, parts: []int{2, 4}, words: []string{"hr", "hrs", "hour", "hours", "hora", "horas"}}

	Watt     = &Unit[powerDim]{Symbol: "W", Factor: 1, words: []string{"watt", "watts", "vatio", "vatios"}}
	Kilowatt = &Unit[powerDim]{Symbol: "kW", Factor: 1000, words: []string{"kilowatt", "kilowatts", "kilovatio", "kilovatios"}}
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
