package class

// maxSteps is how many changes can be taken back.
const maxSteps = 200

// History is the line of states of one class, with the present in it. The
// zero value is not usable: see NewHistory.
type History struct {
	states []step
	now    int
	saved  int // index of the state on disk; -1 where none is
}

// step is a state of the class and the change that led to it.
type step struct {
	class  Class
	change string
}

// NewHistory starts with a class; saved says whether it is on disk as it is.
func NewHistory(c Class, saved bool) *History {
	h := &History{states: []step{{class: c.Clone()}}, saved: -1}
	if saved {
		h.saved = 0
	}
	return h
}

// Class is the present state, as a copy.
func (h *History) Class() Class { return h.states[h.now].class.Clone() }

// Add makes c the present state; what had been undone is gone. It says how many
// of the oldest changes can be taken back no more.
func (h *History) Add(change string, c Class) (dropped int) {
	h.states = append(h.states[:h.now+1], step{c.Clone(), change})
	h.now++
	if h.saved > h.now-1 {
		h.saved = -1 // the saved state was among the undone ones
	}
	dropped = max(0, len(h.states)-1-maxSteps)
	if dropped > 0 {
		h.states = append([]step(nil), h.states[dropped:]...)
		h.now -= dropped
		h.saved = max(h.saved-dropped, -1)
	}
	return dropped
}

// Undo goes one change back and returns its name; false if there is none.
func (h *History) Undo() (change string, ok bool) {
	if h.now == 0 {
		return "", false
	}
	h.now--
	return h.states[h.now+1].change, true
}

// Redo goes one change forward again.
func (h *History) Redo() (change string, ok bool) {
	if h.now == len(h.states)-1 {
		return "", false
	}
	h.now++
	return h.states[h.now].change, true
}

// CanUndo returns the name of the change that Undo would take back.
func (h *History) CanUndo() (change string, ok bool) {
	if h.now == 0 {
		return "", false
	}
	return h.states[h.now].change, true
}

// CanRedo returns the name of the change that Redo would bring back.
func (h *History) CanRedo() (change string, ok bool) {
	if h.now == len(h.states)-1 {
		return "", false
	}
	return h.states[h.now+1].change, true
}

// MarkSaved says that the present state is on disk.
func (h *History) MarkSaved() { h.saved = h.now }

// Unsaved says whether the present state is not what is on disk.
func (h *History) Unsaved() bool { return h.saved != h.now }
