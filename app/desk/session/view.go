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
	changed, err := alter(s.onView(), label, change)
	if changed {
		s.reworkView()
	}
	return err
}

// TryView is Try for what is on view.
func (s *Session) TryView(change func(*class.Class)) (class.Worked, bool) {
	return s.try(s.onView(), change)
}

// UndoView takes back the last change of what is on view.
func (s *Session) UndoView() {
	if _, ok := s.onView().Undo(); ok {
		s.reworkView()
	}
}

// RedoView makes a change of what is on view again that was taken back.
func (s *Session) RedoView() {
	if _, ok := s.onView().Redo(); ok {
		s.reworkView()
	}
}

// CanUndoView names the change that UndoView would take back.
func (s *Session) CanUndoView() (change string, ok bool) { return s.onView().CanUndo() }

// CanRedoView names the change that RedoView would make again.
func (s *Session) CanRedoView() (change string, ok bool) { return s.onView().CanRedo() }

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
