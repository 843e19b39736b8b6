package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/disk"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/exports"
	"example.org/kettleside/reference"
)

// What run returns to the system.
const (
	done     = 0
	failed   = 1 // something was wrong with what was given; stderr says what
	misspelt = 2 // the command line itself; stderr shows the usage
)

// A command is one thing that the program does.
type command struct {
	name  string
	args  string // as shown in the usage
	says  string
	count int // arguments after the flags
	flags func(*flag.FlagSet, *settings)
	do    func(*settings, []string, io.Writer) error
}

// settings are what the flags say.
type settings struct {
	paper, sheets, labels string
	language              string
	all, plain, shipped   bool
	force                 bool
	compare, take         string // tables that were sent back
	who, why, only        string
	nudge                 string
	stderr                io.Writer
}

func commands() []command {
	return []command{
		{"workbook", "[-language en|es] [-paper letter|a4] [-sheets a,b] [-all] [-labels grid] [-nudge X,Y] [-shipped] CLASS OUT.xlsx",
			"write the handouts of a class as a workbook", 2, workbookFlags, workbook},
		{"pdf", "[-language en|es] [-paper letter|a4] [-sheets a,b] [-all] [-labels grid] [-nudge X,Y] [-shipped] CLASS OUT.pdf",
			"write the same pages as a PDF, for those who print elsewhere", 2, workbookFlags, pdf},
		{"numbers", "[-plain [-language en|es]] [-shipped] CLASS", "print every figure of a class, as JSON in English with stable names, or as a list to read", 1, numbersFlags, numbers},
		{"table", "[-shipped] [-language en|es] OUT.csv|OUT.xlsx | -compare IN | -take IN -who NAME -why TEXT [-only TREATMENT.FIELD,…] EDITS.json",
			"write the crop table for a colleague; compare one that was sent back; make edits of its differences", 1, tableFlags, table},
		{"demo", "[-force] OUT" + class.Extension, "write the demo class", 1, demoFlags, demo},
	}
}

func shippedFlag(f *flag.FlagSet, s *settings) {
	f.BoolVar(&s.shipped, "shipped", false, "use the table as shipped, without your own changes")
}

func languageFlag(f *flag.FlagSet, s *settings, of string) {
	f.StringVar(&s.language, "language", string(words.English), "language of "+of+": "+strings.Join(languages(), " or "))
}

// languages are the tags of those that can be chosen.
func languages() []string {
	var tags []string
	for _, l := range words.Languages() {
		tags = append(tags, string(l))
	}
	return tags
}

func workbookFlags(f *flag.FlagSet, s *settings) {
	shippedFlag(f, s)
	languageFlag(f, s, "the handouts")
	f.StringVar(&s.paper, "paper", string(exports.Letter), "paper: letter or a4")
	f.StringVar(&s.sheets, "sheets", "", "sheets to write, by id, with commas between them ("+sheetIDs(false)+"); empty: "+sheetIDs(true))
	f.BoolVar(&s.all, "all", false, "list every treatment of the class's crops, not only those it uses")
	f.StringVar(&s.labels, "labels", "", "grid of the label sheet: "+gridNames())
	f.StringVar(&s.nudge, "nudge", "", "shift the labels for a printer that is a little off: `X,Y` in mm, to the right and down; at most 5, and less where the paper ends")
}

func numbersFlags(f *flag.FlagSet, s *settings) {
	shippedFlag(f, s)
	f.BoolVar(&s.plain, "plain", false, "a list to read instead of JSON")
	languageFlag(f, s, "the list; JSON is always English with its stable names")
}

func demoFlags(f *flag.FlagSet, s *settings) {
	f.BoolVar(&s.force, "force", false, "replace a file that is there already")
}

// sheetIDs are the ids of all sheets, or of the usual ones.
func sheetIDs(usual bool) string {
	var ids []string
	for _, s := range exports.Sheets {
		if s.Usual || !usual {
			ids = append(ids, s.ID)
		}
	}
	return strings.Join(ids, ",")
}

func gridNames() string {
	var names []string
	for _, g := range exports.Grids() {
		names = append(names, g.ID+" ("+g.Name()+")")
	}
	return strings.Join(names, "; ")
}

// run does what the arguments say and returns the exit code.
func run(args []string, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		usage(stderr)
		return misspelt
	}
	if args[0] == "help" || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		usage(stdout)
		return done
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(args[1:], stdout, stderr)
		}
	}
	fmt.Fprintf(stderr, "handouts: there is no command “%s”\n", args[0])
	usage(stderr)
	return misspelt
}

func (c command) run(args []string, stdout, stderr io.Writer) int {
	s := &settings{stderr: stderr}
	f := flag.NewFlagSet("handouts "+c.name, flag.ContinueOnError)
	f.SetOutput(stderr)
	c.flags(f, s)
	f.Usage = func() {
		fmt.Fprintf(f.Output(), "usage: handouts %s %s\n", c.name, c.args)
		f.PrintDefaults()
	}
	err := f.Parse(args)
	needed := c.count
	if s.compare != "" { // the one file is given with the flag
		needed = 0
	}
	switch {
	case errors.Is(err, flag.ErrHelp):
		return done
	case err != nil:
		return misspelt
	case f.NArg() != needed:
		fmt.Fprintf(stderr, "handouts %s: %d given after the options, %d needed\n", c.name, f.NArg(), needed)
		f.Usage()
		return misspelt
	}
	if err := c.do(s, f.Args(), stdout); err != nil {
		fmt.Fprintf(stderr, "handouts %s: %s\n", c.name, err)
		var option *exports.OptionError
		if errors.As(err, &option) {
			f.Usage()
			return misspelt
		}
		return failed
	}
	return done
}

func usage(w io.Writer) {
	fmt.Fprintln(w, "Kettleside handouts: papers and figures of a class, without a window.")
	fmt.Fprintln(w)
	for _, c := range commands() {
		fmt.Fprintf(w, "  handouts %s %s\n      %s\n", c.name, c.args, c.says)
	}
	fmt.Fprintf(w, "\nSheets: %s\nLabel grids: %s\n", sheetIDs(false), gridNames())
	fmt.Fprintln(w, "Your own changes of the crop table are used where the window program kept them.")
}

// readTable is the shipped table with the user's own changes over it. A change
// that does not fit the shipped table any more is told and left out.
func readTable(s *settings) (*reference.Table, error) {
	shipped := reference.Shipped()
	if s.shipped {
		return shipped, nil
	}
	path, err := reference.EditsPath()
	if err != nil {
		return nil, fmt.Errorf("your changes of the table cannot be found (-shipped does without them): %w", err)
	}
	edits, err := reference.ReadEdits(path)
	if err != nil {
		return nil, fmt.Errorf("your changes of the table cannot be read (-shipped does without them): %w", err)
	}
	edited, err := shipped.With(edits)
	if err != nil {
		fmt.Fprintf(s.stderr, "handouts: a change of the table is not used: %s\n", err)
	}
	return edited, nil
}

// voice speaks the language that was chosen.
func (s *settings) voice() (*words.Voice, error) {
	language := words.Language(strings.ToLower(s.language))
	if !slices.Contains(words.Languages(), language) {
		return nil, &exports.OptionError{Option: "language", Got: s.language, Allowed: languages()}
	}
	return words.In(language), nil
}

// work reads a class and works it through, in the language that was chosen.
func work(s *settings, path string) (class.Worked, error) {
	voice, err := s.voice()
	if err != nil {
		return class.Worked{}, err
	}
	c, err := class.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return class.Worked{}, fmt.Errorf("there is no file %s; give the path of a class file, such as MyClass%s", path, class.Extension)
	}
	if err != nil {
		return class.Worked{}, err
	}
	t, err := readTable(s)
	if err != nil {
		return class.Worked{}, err
	}
	return class.WorkWith(class.With{Voice: voice}, c, t.In(voice)), nil
}

func workbook(s *settings, args []string, _ io.Writer) error {
	return handouts(s, args, ".xlsx", "a workbook", exports.WriteWorkbook)
}

func pdf(s *settings, args []string, _ io.Writer) error {
	return handouts(s, args, ".pdf", "a PDF", exports.WritePDF)
}

// handouts works a class through and writes its pages as a kind of file.
func handouts(s *settings, args []string, extension, kind string, write func(string, class.Worked, exports.Options) error) error {
	o := exports.Options{Paper: exports.Paper(strings.ToLower(s.paper)), AllTreatments: s.all, LabelGrid: s.labels}
	if s.sheets != "" {
		for _, id := range strings.Split(s.sheets, ",") {
			o.Sheets = append(o.Sheets, strings.TrimSpace(id))
		}
	}
	var err error
	if o.NudgeXMm, o.NudgeYMm, err = nudgeOf(s.nudge); err != nil {
		return err
	}
	if strings.ToLower(filepath.Ext(args[1])) != extension {
		return fmt.Errorf("%s: the name of %s ends in %s", filepath.Base(args[1]), kind, extension)
	}
	w, err := work(s, args[0])
	if err != nil {
		return err
	}
	return write(args[1], w, o)
}

func numbers(s *settings, args []string, stdout io.Writer) error {
	if !s.plain && !strings.EqualFold(s.language, string(words.English)) {
		return &exports.OptionError{Option: "language without -plain", Got: s.language, Allowed: []string{string(words.English)}}
	}
	w, err := work(s, args[0])
	if err != nil {
		return err
	}
	if s.plain {
		_, err = io.WriteString(stdout, exports.Plain(w))
		return err
	}
	data, err := exports.Numbers(w)
	if err != nil {
		return err
	}
	_, err = stdout.Write(data)
	return err
}

func demo(s *settings, args []string, _ io.Writer) error {
	if _, err := os.Lstat(args[0]); err == nil && !s.force {
		return fmt.Errorf("%s is there already: choose another name, or give -force to replace it", filepath.Base(args[0]))
	}
	return disk.Replace(args[0], content.DemoClass())
}
