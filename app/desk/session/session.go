// Package session is the state behind the window: the class with its history,
// the crop table with the educator's edits laid over it, everything worked out
// from both, and which batch is being looked at. The areas of the window change
// the class through Change, and learn of any change through Subscribe.
//
// Beside the class, which is the plan, stand trials: what-ifs on copies of it.
// Either the plan or one trial is on view. View, ChangeView and their like are
// about what is on view, everything else about the plan; so no trial touches
// the class, its file or the table before it is adopted.
//
// It knows nothing of the toolkit, and is used from one goroutine.
package session

import (
	"errors"
	"reflect"
	"slices"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Session is one class being worked on.
type Session struct {
	shipped *reference.Table
	table   *reference.Table // shipped with the edits laid over it, said by the voice
	edits   []reference.Edit
	refused []*reference.EditError
	editsIn string // file that keeps the edits, "" for none

	started   int   // how often another class was started
	editsLost error // why no edit can be kept; nil where each can

	voice    *words.Voice // nil: English
	history  *class.History
	order    order // in which class and table were changed
	worked   class.Worked
	memory   *estimate.Memory
	path     string
	selected int
	heard    []*func()

	asked      string // id of the question that is open, "" for none
	askedTimes int

	trials []*trial
	viewed *trial // one of trials; nil: the plan is on view
}

// New starts with a table as shipped and a class that is on no disk yet, but
// holds nothing that would be a pity to lose. It speaks English.
func New(shipped *reference.Table, c class.Class) *Session {
	s := &Session{shipped: shipped, table: shipped, memory: &estimate.Memory{}}
	s.start(c, "", true)
	return s
}

// Start replaces the class; path is the file it stands in, or "". The trials of
// the class before are gone.
func (s *Session) Start(c class.Class, path string) {
	s.start(c, path, true)
	s.tell()
}

// StartUnsaved replaces the class with one that is on no disk and would be a
// pity to lose.
func (s *Session) StartUnsaved(c class.Class) {
	s.start(c, "", false)
	s.tell()
}

func (s *Session) start(c class.Class, path string, saved bool) {
	s.history, s.order = class.NewHistory(c, saved), order{}
	s.path = path
	s.selected = 0
	s.trials, s.viewed = nil, nil
	s.started++
	s.rework()
}

func (s *Session) rework() {
	s.worked = s.work(s.history.Class())
	s.selected = inside(s.selected, s.worked)
}

func (s *Session) work(c class.Class) class.Worked {
	return class.WorkWith(s.with(), c, s.table)
}

func (s *Session) with() class.With { return class.With{Memory: s.memory, Voice: s.voice} }

// Subscribe calls f after every change of class, table, trials, selected batch,
// voice, open question or what is on view, until the function that it returns is called.
func (s *Session) Subscribe(f func()) (leave func()) {
	own := &f
	s.heard = append(s.heard, own)
	return func() { s.heard = slices.DeleteFunc(slices.Clone(s.heard), func(h *func()) bool { return h == own }) }
}

// EndSubscriptions lets everybody go who listens: before the window is made
// anew.
func (s *Session) EndSubscriptions() { s.heard = nil }

func (s *Session) tell() {
	for _, f := range s.heard {
		(*f)()
	}
}

// Speak lets everything that is worked out be said by a voice from now on. What
// was entered stays as it is.
func (s *Session) Speak(v *words.Voice) {
	if v.Language() == s.voice.Language() {
		return
	}
	s.voice, s.table = v, s.table.In(v)
	s.reworkAll()
	s.tell()
}

// Voice is the voice that everything is said by.
func (s *Session) Voice() *words.Voice { return s.voice }

// Class is the class as it stands, as a copy.
func (s *Session) Class() class.Class { return s.history.Class() }

// Table is the crop table with the educator's edits, said by the voice. It is
// read-only.
func (s *Session) Table() *reference.Table { return s.table }

// Shipped is the crop table as it came with the program.
func (s *Session) Shipped() *reference.Table { return s.shipped }

// Worked is everything worked out from class and table. It is read-only.
func (s *Session) Worked() class.Worked { return s.worked }

// Change makes a change to a copy of the class and takes it over where the
// class then holds nothing out of range; otherwise everything stays as it was
// and the error says why. The label names the change in the Edit menu.
func (s *Session) Change(label string, change func(*class.Class)) error {
	changed, err := s.alter(s.history, label, change)
	if changed {
		s.rework()
		s.tell()
	}
	return err
}

// alter adds a change to a history; false where nothing would change, or the
// class would then hold something out of range.
func (s *Session) alter(h *class.History, label string, change func(*class.Class)) (changed bool, err error) {
	before := h.Class()
	after := before.Clone()
	change(&after)
	if reflect.DeepEqual(before, after) {
		return false, nil
	}
	if err := after.Check(); err != nil {
		return false, plainly(err)
	}
	dropped := h.Add(label, after)
	if h == s.history {
		s.order.add(nil)
		s.order.forget(dropped)
	}
	return true, nil
}

// plainly is the first thing that is wrong, without the name of its field in
// the file: it is said beside the field.
func plainly(err error) error {
	var entry *measure.EntryError
	if !errors.As(err, &entry) {
		return err
	}
	said := *entry
	said.Field = ""
	return &said
}

// Unsaved says whether the class is not as it stands on disk.
func (s *Session) Unsaved() bool { return s.history.Unsaved() }

// Path is the file of the class, "" where it has none yet.
func (s *Session) Path() string { return s.path }

// Open reads a class file in place of the present class. Where it cannot be
// read everything stays as it was.
func (s *Session) Open(path string) error {
	c, err := class.Open(path)
	if err != nil {
		return err
	}
	s.Start(c, path)
	return nil
}

// Save writes the class to a file, which is its file from then on.
func (s *Session) Save(path string) error {
	if err := class.Save(path, s.history.Class()); err != nil {
		return err
	}
	s.path = path
	s.history.MarkSaved()
	s.tell()
	return nil
}

// Started counts the classes that were put in place of another.
func (s *Session) Started() int { return s.started }

// Findings are all findings: those of the class, then those of each batch in
// turn, whose sentences begin with the name of the batch.
func (s *Session) Findings() []measure.Finding {
	all := slices.Clone(s.worked.Findings)
	for _, b := range s.worked.Batches {
		for _, f := range b.Findings {
			if b.Batch.Name != "" {
				f.Says = b.Batch.Name + ": " + f.Says
			}
			all = append(all, f)
		}
	}
	return all
}

// SourceName says in words what the id of a source stands for.
func (s *Session) SourceName(id string) string {
	source, ok := s.table.Source(id)
	switch {
	case !ok && id == "entered":
		return s.voice.Say("as entered")
	case !ok:
		return id
	case source.Edition != "":
		return source.Title + ", " + source.Edition
	default:
		return source.Title
	}
}
