package session

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Edits are the educator's changes to the crop table, as a copy. One that the
// table cannot use (any more) is kept in the list and reported by Refused.
func (s *Session) Edits() []reference.Edit { return slices.Clone(s.edits) }

// Refused are the edits that could not be laid over the table, with the reason.
func (s *Session) Refused() []*reference.EditError { return slices.Clone(s.refused) }

// KeepEditsIn reads the edits from a file and writes every later change of
// them there. A file that is not there yet holds no edits; a damaged one is
// moved aside, so that nothing in it is lost and later edits are kept. The
// error also tells of edits that the table cannot use; all others are laid
// over it.
func (s *Session) KeepEditsIn(path string) error {
	edits, err := reference.ReadEdits(path)
	if err != nil {
		aside, moved := moveAside(path)
		if moved != nil {
			s.editsLost = words.Errorf("the table edits cannot be kept: %w", moved)
			return words.Errorf("%w; it could not be moved aside, so the table cannot be changed until that is put right: %w", err, moved)
		}
		s.editsIn = path
		return words.Errorf("%w; it was moved aside as %s, and later edits go into a new file", err, filepath.Base(aside))
	}
	s.editsIn = path
	err = s.lay(edits)
	s.reworkAll()
	s.tell()
	return err
}

// moveAside renames a damaged file, to a name that nothing has yet.
func moveAside(path string) (aside string, err error) {
	aside = path + ".damaged-" + time.Now().Format("2006-01-02")
	for n, day := 2, aside; ; n++ {
		if _, err := os.Lstat(aside); err != nil {
			if errors.Is(err, fs.ErrNotExist) {
				err = os.Rename(path, aside)
			}
			return aside, err
		}
		aside = fmt.Sprintf("%s-%d", day, n)
	}
}

// ApplyEdit lays one more change over the crop table; reference.NewEdit makes
// it. It replaces an earlier edit of the same field. Where it cannot be used,
// or cannot be written down, everything stays as it was.
func (s *Session) ApplyEdit(e reference.Edit) error {
	return s.change(changeOfTable, append(reference.Without(s.edits, e.Treatment, e.Field), e), &e)
}

// TakeBack removes the edit of one field, which brings the shipped value back
// exactly. Taking back what was never edited changes nothing.
func (s *Session) TakeBack(treatment, field string) error {
	return s.change(takenBack, reference.Without(s.edits, treatment, field), nil)
}

// change lays other edits over the table as one change that Undo takes back.
func (s *Session) change(name string, edits []reference.Edit, added *reference.Edit) error {
	if slices.Equal(s.edits, edits) {
		return nil
	}
	was := s.order
	s.order.add(&tableChange{name, s.edits, edits})
	err := s.relay(edits, added)
	if err != nil {
		s.order = was
	}
	return err
}

// relay lays other edits over the table and keeps them; added is the one that
// must be usable, nil where there is none.
func (s *Session) relay(edits []reference.Edit, added *reference.Edit) error {
	table, before, refused := s.table, s.edits, s.refused
	s.lay(edits)
	err := s.refusal(added)
	if err == nil {
		err = s.editsLost
	}
	if err == nil && s.editsIn != "" {
		err = reference.WriteEdits(s.editsIn, edits)
	}
	if err != nil {
		s.table, s.edits, s.refused = table, before, refused
		return err
	}
	s.reworkAll()
	s.tell()
	return nil
}

func (s *Session) lay(edits []reference.Edit) error {
	table, err := s.shipped.With(edits)
	s.table, s.edits, s.refused = table.In(s.voice), edits, nil
	collect(err, &s.refused)
	return err
}

// collect takes the refused edits out of the error of reference.Table.With.
func collect(err error, into *[]*reference.EditError) {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, one := range joined.Unwrap() {
			collect(one, into)
		}
		return
	}
	var refused *reference.EditError
	if errors.As(err, &refused) {
		*into = append(*into, refused)
	}
}

func (s *Session) refusal(e *reference.Edit) error {
	for _, r := range s.refused {
		if e != nil && r.Edit == *e {
			return r
		}
	}
	return nil
}
