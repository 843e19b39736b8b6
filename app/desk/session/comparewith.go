package session

import "example.org/kettleside/app/class"

// CompareWith is Compare for a trial as it would be after a change that is only
// being tried: see TryView.
func (s *Session) CompareWith(worked class.Worked, batch int) []Difference {
	if s.viewed == nil {
		return nil
	}
	plan, inPlan := s.SelectedBatch()
	trial, inTrial := batchOf(worked, batch)
	if !inPlan || !inTrial {
		return nil
	}
	return s.compare(side{s.worked.Class, plan}, side{worked.Class, trial})
}
