// Command handouts does the desk work of Kettleside without a window: it
// writes the handouts of a class as a workbook or a PDF, prints every figure,
// writes the crop table and the demo class. It needs no display and no cgo.
package main

import (
	"os"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }
