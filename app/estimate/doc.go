// Package estimate follows one batch with the heat engine: from the cold kettle
// to the return of the boil, through the blanch, into the ice bath and into the
// freezer. It fills in what nobody in a kitchen measures with ranges that are
// named in guesses.go, and gives a middle and a band.
//
// Estimates explain, warn and size. Nothing that people are told to do comes
// from here: that is the rules' part, in package batch, which also turns these
// numbers into figures and words.
//
// All numbers are SI with the unit in the name. Everything is pure: the same
// case gives the same results.
package estimate
