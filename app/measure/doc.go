// Package measure holds the quantities of a kitchen: amounts with the unit
// they were written in, read from what people type, converted exactly and
// printed as a measuring jug, a ruler or a scale can show them. It also holds
// what a computation hands to a person: Figure and Finding.
//
// An amount of one dimension cannot be mixed with another: Mass, Volume,
// Length, Temperature, Duration and Power are distinct types. Conversions are
// exact by definition: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, 1 US gallon =
// 231 in³ = 3.785411784 L (NIST Special Publication 811, 2008, appendix B,
// from memory).
package measure
