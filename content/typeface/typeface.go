// Package typeface carries the one face of Kettleside, IBM Plex Sans, for the
// window, drawings and paper. It has every kitchen fraction (½ ⅓ ⅔ ¼ ¾ ⅛ ⅜ ⅝ ⅞),
// ° − × ÷ ≥ ≤ ≈ → ✓ and Spanish; all its digits have one width.
//
// The face is under the SIL Open Font License 1.1: LICENSE.txt beside the files.
package typeface

import _ "embed"

// Regular is the upright text weight, as a TrueType file.
//
//go:embed PlexSans-Regular.ttf
var Regular []byte

// SemiBold is the weight of headings and figures, as a TrueType file.
//
//go:embed PlexSans-SemiBold.ttf
var SemiBold []byte

// Italic is the slanted text weight, as a TrueType file.
//
//go:embed PlexSans-Italic.ttf
var Italic []byte

// License is the text of the font licence, which travels with the face.
//
//go:embed LICENSE.txt
var License string
