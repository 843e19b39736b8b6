package session

import "example.org/kettleside/app/class"

// View is everything worked out from what is on view, the plan or a trial. It is
// read-only.
func (s *Session) View() class.Worked {
	if s.viewed != nil {
		return s.viewed.worked
	}
	return s.worked
}

// ViewedBatch is the batch being looked at in what is on view; false where that
// has none.
func (s *Session) ViewedBatch() (class.BatchWorked, bool) {
	if s.viewed != nil {
		return batchOf(s.viewed.worked, s.viewed.batch)
	}
	return s.SelectedBatch()
}

// ChangeView is Change for what is on view. A change of a trial goes into the
// history of that trial and leaves the class as it is.
func (s *Session) ChangeView(label string, change func(*class.Class)) error {
	changed, err := s.alter(s.onView(), label, change)
	if changed {
		s.reworkView()
	}
	return err
}

// Tried is the batch being looked at as a change would make it, in its class.
type Tried struct {
	Class       class.Class
	Batch       class.BatchWorked
	Differences []Difference // from the plan, where a trial is on view
}

// TryView works out what a change would make of the batch being looked at,
// without making it; false where the class would then hold something out of
// range, or not that batch. Nothing else of the class is worked out: this is
// done at every keystroke.
func (s *Session) TryView(change func(*class.Class)) (Tried, bool) {
	c := s.onView().Class()
	change(&c)
	at := s.selected
	if s.viewed != nil {
		at = s.viewed.batch
	}
	if c.Check() != nil || at >= len(c.Batches) {
		return Tried{}, false
	}
	t := Tried{Class: c, Batch: class.WorkBatch(s.with(), c, at, s.table)}
	t.Differences = s.compareWith(side{c, t.Batch})
	return t, true
}

// UndoView takes back the last change of what is on view.
func (s *Session) UndoView() error {
	if s.viewed == nil {
		return s.Undo()
	}
	if _, ok := s.viewed.history.Undo(); ok {
		s.reworkView()
	}
	return nil
}

// RedoView makes a change of what is on view again that was taken back.
func (s *Session) RedoView() error {
	if s.viewed == nil {
		return s.Redo()
	}
	if _, ok := s.viewed.history.Redo(); ok {
		s.reworkView()
	}
	return nil
}

// CanUndoView names the change that UndoView would take back.
func (s *Session) CanUndoView() (change string, ok bool) {
	if s.viewed == nil {
		return s.CanUndo()
	}
	return s.viewed.history.CanUndo()
}

// CanRedoView names the change that RedoView would make again.
func (s *Session) CanRedoView() (change string, ok bool) {
	if s.viewed == nil {
		return s.CanRedo()
	}
	return s.viewed.history.CanRedo()
}

func (s *Session) onView() *class.History {
	if s.viewed != nil {
		return s.viewed.history
	}
	return s.history
}

func (s *Session) reworkView() {
	if s.viewed != nil {
		s.reworkTrial(s.viewed)
	} else {
		s.rework()
	}
	s.tell()
}
