// Package drawing holds the pictures that Kettleside draws itself, to scale:
// Kettle, Bath, PackSection, FreezerShelf and ClockStart. Each is a widget that
// takes one plain struct of numbers (SI, with the unit in the name) and the
// texts that stand in the picture, and is redrawn by Set. Chart draws curves
// that are given in the units of their axes, and Section the temperature through
// a piece.
//
// Nothing is computed here that a person reads as a figure: texts come from the
// worked class. What is computed is geometry, such as how high water stands in
// a kettle that holds so much.
//
// Shapes are drawn into a raster of device pixels, so that they are crisp on
// every display; labels are text objects over it. Colours are the substances of
// package look.
package drawing
