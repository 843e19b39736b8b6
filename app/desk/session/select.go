package session

import "example.org/kettleside/app/class"

// Selected is the index of the batch of the plan that is being looked at;
// meaningless where the class has no batches. A trial has its own: Trial.Batch.
func (s *Session) Selected() int { return s.selected }

// Select looks at another batch: of the plan, and of the trial on view. An index
// that one of them does not have is its nearest.
func (s *Session) Select(batch int) {
	plan := inside(batch, s.worked)
	moved := plan != s.selected
	s.selected = plan
	if t := s.viewed; t != nil {
		at := inside(batch, t.worked)
		moved = moved || at != t.batch
		t.batch = at
	}
	if moved {
		s.tell()
	}
}

// lookAt puts the plan on view with one of its batches: what adds, copies or
// moves a batch of the class looks at it there.
func (s *Session) lookAt(batch int) {
	batch = inside(batch, s.worked)
	if s.viewed == nil && batch == s.selected {
		return
	}
	s.viewed, s.selected = nil, batch
	s.tell()
}

// SelectedBatch is the batch of the plan that is being looked at, worked
// through; false where the class has none.
func (s *Session) SelectedBatch() (class.BatchWorked, bool) { return batchOf(s.worked, s.selected) }

func batchOf(w class.Worked, i int) (class.BatchWorked, bool) {
	if i >= len(w.Batches) {
		return class.BatchWorked{}, false
	}
	return w.Batches[i], true
}

// inside is the index of a batch that there is, where there is any.
func inside(batch int, w class.Worked) int { return max(0, min(batch, len(w.Batches)-1)) }
