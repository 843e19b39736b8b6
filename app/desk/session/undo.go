package session

import (
	"slices"

	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// The names of changes of the crop table in the Edit menu.
var (
	changeOfTable = words.Key("Change a value of the crop table")
	takenBack     = words.Key("Take a change of the crop table back")
)

// tableChange is a change of the edits that Undo can take back.
type tableChange struct {
	name          string
	before, after []reference.Edit
}

// order is the order in which class and table were changed, the latest last:
// one Undo serves both. A change of the class is nil here; its history has it.
type order struct{ done, undone []*tableChange }

// add makes a change the latest; what had been undone is gone.
func (o *order) add(c *tableChange) { *o = order{done: append(o.done, c)} }

// forget lets the oldest changes of the class go, which its history has dropped,
// and those of the table before them.
func (o *order) forget(dropped int) {
	for range dropped {
		o.done = o.done[slices.Index(o.done, nil)+1:]
	}
}

// latest is the last change of a list; nil where that is one of the class, or
// there is none.
func latest(changes []*tableChange) *tableChange {
	if len(changes) == 0 {
		return nil
	}
	return changes[len(changes)-1]
}

// move takes the last change of one list over to the other.
func move(from, to *[]*tableChange) {
	*from, *to = (*from)[:len(*from)-1], append(*to, latest(*from))
}

// Undo takes the last change of class or table back. The error says why a
// change of the table stays: its file cannot be written.
func (s *Session) Undo() error {
	was, last := s.order, latest(s.order.done)
	if len(was.done) > 0 {
		move(&s.order.done, &s.order.undone)
	}
	if last != nil {
		return s.layStep(last.before, was)
	}
	if _, ok := s.history.Undo(); ok {
		s.rework()
		s.tell()
	}
	return nil
}

// Redo makes a change again that was taken back.
func (s *Session) Redo() error {
	was, last := s.order, latest(s.order.undone)
	if len(was.undone) == 0 {
		return nil
	}
	move(&s.order.undone, &s.order.done)
	if last != nil {
		return s.layStep(last.after, was)
	}
	if _, ok := s.history.Redo(); ok {
		s.rework()
		s.tell()
	}
	return nil
}

// layStep lays the edits of a step over the table; where it cannot the order of
// changes stays as it was.
func (s *Session) layStep(edits []reference.Edit, was order) error {
	err := s.relay(edits, nil)
	if err != nil {
		s.order = was
	}
	return err
}

// CanUndo names the change that Undo would take back.
func (s *Session) CanUndo() (change string, ok bool) {
	if last := latest(s.order.done); last != nil {
		return last.name, true
	}
	return s.history.CanUndo()
}

// CanRedo names the change that Redo would make again.
func (s *Session) CanRedo() (change string, ok bool) {
	if last := latest(s.order.undone); last != nil {
		return last.name, true
	}
	if len(s.order.undone) == 0 { // a change of the table ends what the class could make again
		return "", false
	}
	return s.history.CanRedo()
}
