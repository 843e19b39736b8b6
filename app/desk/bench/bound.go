package bench

import (
	"slices"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
)

// bound is the batch that the fields stand for. A class knows its batches only
// by their order, so the batch is followed from change to change: what is typed
// for one never lands in another that took its place.
type bound struct {
	at      int
	view    onView
	batches []class.Batch // as they stood when the batch was last found
	handing bool          // what was typed is being handed over to it
}

// onView tells one class on view from another: which was opened, and which trial
// of it, −1 for the plan.
type onView struct{ started, trial int }

// ofBatch are the fields of the batch; all others are those of the class.
func (in *inputs) ofBatch() []*look.Field {
	return []*look.Field{in.name, in.prepared.Field, in.stations, in.holds.Field, in.start.Field, in.ice.Field, in.count}
}

// ofClass are the fields of the place and the kit.
func (in *inputs) ofClass() []*look.Field {
	return []*look.Field{in.altitude.Field, in.freezer.Field, in.bath.Field, in.tap.Field}
}

// bind lets the fields stand for the selected batch. What is typed and not yet
// handed over goes to the batch it was typed for, or, where that is gone or
// refuses it, nowhere. False means that this is being done, and nothing is to
// be shown before it is.
func (in *inputs) bind(batches []class.Batch, selected int, view onView) bool {
	if view != in.bound.view { // what is typed for one class is nothing to another
		in.bound = bound{at: selected, view: view, batches: batches}
		for _, f := range append(in.ofBatch(), in.ofClass()...) {
			if f.Dirty() || f.Problem() != "" {
				f.Restore()
			}
		}
		return true
	}
	at, there := follow(in.bound.batches, batches, in.bound.at)
	in.bound.batches = batches
	if there {
		in.bound.at = at
	}
	if in.bound.handing || there && at == selected {
		return !in.bound.handing
	}
	if there {
		in.bound.handing = true
		for _, f := range in.ofBatch() {
			f.Done()
		}
		in.bound.handing = false
	}
	in.bound.at = selected
	for _, f := range in.ofBatch() {
		if f.Dirty() || f.Problem() != "" {
			f.Restore()
		}
	}
	return true
}

// follow finds the batch that was at a place before a change; false where it
// is gone.
func follow(before, after []class.Batch, at int) (int, bool) {
	if at >= len(before) {
		return 0, false
	}
	least := min(len(before), len(after))
	head := 0 // as many at the start are the same
	for head < least && before[head] == after[head] {
		head++
	}
	tail := 0 // and as many at the end
	for tail < least-head && before[len(before)-1-tail] == after[len(after)-1-tail] {
		tail++
	}
	switch moved := slices.Index(after[head:len(after)-tail], before[at]); {
	case at < head:
		return at, true
	case at >= len(before)-tail:
		return at + len(after) - len(before), true
	case moved >= 0:
		return head + moved, true
	case len(before) != len(after):
		return 0, false
	}
	same := after[at].Name == before[at].Name || after[at].Treatment == before[at].Treatment
	return at, same || len(before)-head-tail == 1 // edited in its place
}
