package session

// Asked is the id of the question from the room that is open, "" where none is,
// and how often one was opened: so that who listens can tell the same question
// opened again from any other change.
func (s *Session) Asked() (id string, times int) { return s.asked, s.askedTimes }

// Ask opens a question from the room, for every view that shows one. It stays
// open with another class or batch.
func (s *Session) Ask(id string) {
	s.asked = id
	s.askedTimes++
	s.tell()
}
