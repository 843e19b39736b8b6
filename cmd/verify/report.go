package main

import (
	"fmt"
	"io"

	"example.org/kettleside/cmd/internal/setup"
)

// verdict is the word for how a step went.
func (o outcome) verdict() string {
	switch {
	case !o.ran:
		return "not run"
	case o.err != nil:
		return "FAIL"
	}
	return "pass"
}

// report prints the table of steps and, as the very last line, how many passed
// and failed. It returns whether all of them ran and passed.
func report(out io.Writer, outcomes []outcome) bool {
	passed, failed := 0, 0
	fmt.Fprintf(out, "\n%-12s  %-7s  %8s\n", "step", "result", "seconds")
	for _, o := range outcomes {
		fmt.Fprintf(out, "%-12s  %-7s  %8.1f\n", o.name, o.verdict(), o.took.Seconds())
		switch {
		case o.ran && o.err == nil:
			passed++
		case o.ran:
			failed++
		}
	}
	for _, o := range outcomes {
		if o.err != nil {
			fmt.Fprintf(out, "\n%s failed after %s:\n%v\n", o.name, setup.Clock(o.took), o.err)
		}
	}
	fmt.Fprintf(out, "\n%d passed, %d failed\n", passed, failed)
	return passed == len(outcomes)
}
