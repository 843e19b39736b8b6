// Command kettleside is the window program: it plans a class in freezing
// vegetables and prints its handouts.
//
//	kettleside [-version] [FILE.kettleside]
//
// Without a file it opens the demo class.
package main

import (
	"flag"
	"fmt"
	"os"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"

	"example.org/kettleside/app"
)

// version is what -version prints and what the window says about itself.
const version = "0.1.0"

func main() {
	showVersion := flag.Bool("version", false, "print the version and leave")
	flag.Usage = usage
	flag.Parse()
	if *showVersion {
		fmt.Println("kettleside " + version)
		return
	}
	if flag.NArg() > 1 {
		usage()
		os.Exit(2)
	}
	const id = "org.example.kettleside"
	fyneapp.SetMetadata(fyne.AppMetadata{ID: id, Name: "Kettleside", Version: version})
	app.Run(fyneapp.NewWithID(id), app.Options{
		File: flag.Arg(0), Folder: app.DataFolder(), Version: version, Ready: os.Stderr,
	})
}

func usage() {
	fmt.Fprintln(flag.CommandLine.Output(), "usage: kettleside [-version] [FILE.kettleside]")
	flag.PrintDefaults()
}
