package projector

// page answers one question about the batch on view.
type page interface {
	// name is what the foot of the view calls it.
	name() string
	// applies says whether it has anything to show.
	applies(shown) bool
	// show fills it.
	show(shown)
	// body is what stands on it.
	body() block
}

// base is what the pages have in common.
type base struct {
	called string
	page   block
}

func (b *base) name() string { return b.called }
func (b *base) body() block  { return b.page }
