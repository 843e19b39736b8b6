package session

import (
	"testing"

	"example.org/kettleside/app/class"
)

// A question that is opened is told to all, also the same one again, and stays
// open whatever else changes.
func TestAsk(t *testing.T) {
	s := demo(t)
	told := 0
	s.Subscribe(func() { told++ })
	if id, times := s.Asked(); id != "" || times != 0 {
		t.Errorf("at first %q is open, opened %d times", id, times)
	}
	for i, id := range []string{"lid", "lid", "altitude"} {
		s.Ask(id)
		if got, times := s.Asked(); got != id || times != i+1 || told != i+1 {
			t.Errorf("%q is open, opened %d times, told %d", got, times, told)
		}
	}
	s.Select(1)
	s.Start(class.New("2027-06-12"), "")
	if id, times := s.Asked(); id != "altitude" || times != 3 {
		t.Errorf("in another class %q is open, opened %d times", id, times)
	}
	if s.Unsaved() {
		t.Error("a question changes the class")
	}
}
