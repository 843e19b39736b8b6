package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
	"example.org/kettleside/exports"
	"example.org/kettleside/reference"
)

func tableFlags(f *flag.FlagSet, s *settings) {
	shippedFlag(f, s)
	languageFlag(f, s, "a workbook, and of what is told; CSV is always English")
	f.StringVar(&s.compare, "compare", "", "a table that was sent back, .csv or .xlsx: tell where it differs, row by row, and write nothing")
	f.StringVar(&s.take, "take", "", "a table that was sent back: make edits of its differences, into EDITS.json")
	f.StringVar(&s.who, "who", "", "with -take: whose change it is")
	f.StringVar(&s.why, "why", "", "with -take: the reason, or the bulletin")
	f.StringVar(&s.only, "only", "", "with -take: the differences to take, as -compare calls them, with commas between them; empty: all that can be taken")
}

// table writes the crop table for a colleague, or reads what came back.
func table(s *settings, args []string, stdout io.Writer) error {
	voice, err := s.voice()
	if err != nil {
		return err
	}
	t, err := readTable(s)
	if err != nil {
		return err
	}
	switch {
	case s.compare != "":
		return compareTable(t, voice, s.compare, stdout)
	case s.take != "":
		return takeTable(t, voice, s, args[0], stdout)
	}
	return writeTable(t, voice, args[0])
}

// writeTable writes a workbook or a CSV file, whichever the name asks for.
func writeTable(t *reference.Table, voice *words.Voice, path string) error {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".xlsx":
		data, err := exports.TableWorkbook(t, voice, exports.Letter)
		if err != nil {
			return err
		}
		return disk.Replace(path, data)
	case ".csv":
		var buf bytes.Buffer
		if err := t.WriteCSV(&buf); err != nil {
			return err
		}
		return disk.Replace(path, buf.Bytes())
	}
	return fmt.Errorf("%s: the name of a table ends in .csv or .xlsx", filepath.Base(path))
}

// readSent reads a table that was sent back and lists its differences. Faults of
// the file come with what could be compared all the same.
func readSent(t *reference.Table, voice *words.Voice, path string) ([]reference.Difference, error) {
	sent, err := reference.ReadSentFile(path)
	if err == nil {
		var list []reference.Difference
		if list, err = reference.Compare(t, sent); err == nil {
			return list, nil
		}
		return list, errors.New(voice.Error(err))
	}
	return nil, errors.New(voice.Error(err))
}

func compareTable(t *reference.Table, voice *words.Voice, path string, stdout io.Writer) error {
	list, err := readSent(t, voice, path)
	refused := 0
	for _, d := range list {
		tell(stdout, voice, d)
		if d.Refused != nil {
			refused++
		}
	}
	switch {
	case err != nil:
		return err
	case len(list) == 0:
		fmt.Fprintln(stdout, voice.Say("No difference."))
	default:
		fmt.Fprintln(stdout, voice.Say("Differences: %d. Can be taken as edits: %d.", len(list), len(list)-refused))
	}
	if refused > 0 {
		return errors.New(voice.Say("Differences that cannot be taken: %d. The list says why.", refused))
	}
	return nil
}

// tell prints one difference: where it stands, what it is, whether it could be an
// edit.
func tell(w io.Writer, voice *words.Voice, d reference.Difference) {
	fmt.Fprintln(w, d.At.Say(voice))
	fmt.Fprintln(w, "  "+voice.Say("%s: here “%s”, there “%s”", d.Name(), d.Here, d.There))
	if d.Refused != nil {
		fmt.Fprintln(w, "  "+voice.Say("cannot be taken: %s", voice.Error(d.Refused)))
		return
	}
	fmt.Fprintln(w, "  "+voice.Say("can be taken as an edit"))
}

// takeTable lays the chosen differences over the edits of a file, and tells which
// were not used. A file with a fault is not taken at all.
func takeTable(t *reference.Table, voice *words.Voice, s *settings, path string, stdout io.Writer) error {
	if s.who == "" || s.why == "" {
		return errors.New(voice.Say("An edit needs a name and a reason: give -who and -why."))
	}
	list, err := readSent(t, voice, s.take)
	if err != nil {
		return err
	}
	edits, left, err := reference.Take(t, list, only(s.only), s.why, s.who, time.Now().UTC().Truncate(time.Second))
	if err != nil {
		return errors.New(voice.Error(err))
	}
	older, err := reference.ReadEdits(path)
	if err != nil {
		return errors.New(voice.Error(err))
	}
	if err := reference.WriteEdits(path, reference.Over(older, edits)); err != nil {
		return errors.New(voice.Error(err))
	}
	for _, e := range edits {
		fmt.Fprintln(stdout, voice.Say("Taken: %s.%s: shipped “%s”, now “%s”", e.Treatment, e.Field, e.Old, e.New))
	}
	for _, d := range left {
		fmt.Fprintln(stdout, voice.Say("Not used:"))
		tell(stdout, voice, d)
	}
	fmt.Fprintln(stdout, voice.Say("Edits taken: %d. Not used: %d.", len(edits), len(left)))
	return nil
}

// only splits the names of differences; a field of two words may be written with
// "_" between them.
func only(text string) []string {
	var names []string
	for name := range strings.SplitSeq(text, ",") {
		name = strings.TrimSpace(name)
		if at := strings.LastIndexByte(name, '.'); at >= 0 {
			name = name[:at] + strings.ReplaceAll(name[at:], "_", " ")
		}
		if name != "" {
			names = append(names, name)
		}
	}
	return names
}
