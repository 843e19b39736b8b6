// Package palette holds the colours of Kettleside as plain values, so that
// window, plots and paper use the same ones: six substances, which are the
// same everywhere, and three grounds to put ink on.
//
// The substances form a ladder of lightness (from boiling water, the darkest,
// to air, the lightest), so that they stay apart for the colour-blind and in
// grey print. A filled substance is outlined in ink.
package palette

import "image/color"

// The substances.
var (
	Boiling = hex(0xA63F72) // boiling water
	Plant   = hex(0x4B8A3C) // vegetables
	Metal   = hex(0x8A8C91) // kettles, baskets
	Heat    = hex(0xEE8F3E) // burner, heat
	Ice     = hex(0x97CBE8) // ice water and ice
	Air     = hex(0xE9E3D6) // headspace, the empty part of a freezer
)

// Ground is a surface and the inks that stand on it.
type Ground struct {
	Paper, Card, Rule color.NRGBA // the page, a surface on it, hairlines
	Ink, InkSoft      color.NRGBA // text and outlines; labels, units, working
	Stop, Mind, Note  color.NRGBA // findings
	Edited            color.NRGBA // a value changed by the educator
	Field, Edge       color.NRGBA // where something is typed, and its border
}

// Light is ink on warm off-white paper; it is also the paper of handouts.
var Light = Ground{
	Paper: hex(0xFAF6EE), Card: hex(0xFFFDF9), Rule: hex(0xDDD4C4),
	Ink: hex(0x25211C), InkSoft: hex(0x625B51),
	Stop: hex(0xA3260F), Mind: hex(0x7F5200), Note: hex(0x2B5C80),
	Edited: hex(0x6A3A9C), Field: hex(0xFFFFFF), Edge: hex(0x91887A),
}

// Dark is for a dim kitchen.
var Dark = Ground{
	Paper: hex(0x1B1916), Card: hex(0x25221E), Rule: hex(0x3D3831),
	Ink: hex(0xF1EBDF), InkSoft: hex(0xB9B0A1),
	Stop: hex(0xFF9E88), Mind: hex(0xF0BE5A), Note: hex(0x93C4EA),
	Edited: hex(0xCBA6F2), Field: hex(0x12110F), Edge: hex(0x7D7568),
}

// HighContrast is black on white with full-strength rules.
var HighContrast = Ground{
	Paper: hex(0xFFFFFF), Card: hex(0xFFFFFF), Rule: hex(0x000000),
	Ink: hex(0x000000), InkSoft: hex(0x1F1F1F),
	Stop: hex(0x8A0000), Mind: hex(0x5C3A00), Note: hex(0x00366B),
	Edited: hex(0x4A0080), Field: hex(0xFFFFFF), Edge: hex(0x000000),
}

func hex(rgb uint32) color.NRGBA {
	return color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 0xFF}
}
