package main

import (
	"strconv"
	"strings"

	"example.org/kettleside/exports"
)

// nudgeOf reads "1.5,-0.5": millimetres to the right and down. Nothing is no
// nudge.
func nudgeOf(text string) (xMm, yMm float64, err error) {
	if text == "" {
		return 0, 0, nil
	}
	x, y, both := strings.Cut(text, ",")
	xMm, errX := strconv.ParseFloat(strings.TrimSpace(x), 64)
	yMm, errY := strconv.ParseFloat(strings.TrimSpace(y), 64)
	if !both || errX != nil || errY != nil {
		return 0, 0, &exports.OptionError{Option: "nudge", Got: text, Allowed: []string{"two numbers of millimetres with a comma between them, such as 1.5,-0.5"}}
	}
	return xMm, yMm, nil
}
