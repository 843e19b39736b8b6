package projector

import (
	"slices"

	"fyne.io/fyne/v2"
)

// block is a part of a page. A page is laid out in one pass from the outside
// in: each block is told the scale and its width, answers how high it is then,
// and is put into its place, which may be higher than that.
type block interface {
	// fit takes on a scale and a width and says how high the block is then; 0
	// where it has nothing to show.
	fit(k, wide float32) float32
	// put gives it its place, for the scale and width it was fitted to.
	put(x, y, high float32)
	// objects are what it draws.
	objects() []fyne.CanvasObject
}

// column stacks blocks with a gap between them, in units at scale 1. Height to
// spare goes to the first block that grows, and otherwise stays at the bottom.
type column struct {
	gap    float32
	blocks []block
	grow   []block // by preference

	heights []float32
	between float32
	high    float32
}

func newColumn(gap float32, blocks ...block) *column { return &column{gap: gap, blocks: blocks} }

// growing names the blocks of which the first that shows something takes the
// height to spare, and gives way where it is too little.
func (c *column) growing(blocks ...block) *column {
	c.grow = blocks
	return c
}

func (c *column) fit(k, wide float32) float32 {
	c.heights, c.high, c.between = c.heights[:0], 0, c.gap*k
	for _, b := range c.blocks {
		high := b.fit(k, wide)
		c.heights = append(c.heights, high)
		if high > 0 && c.high > 0 {
			c.high += c.between
		}
		c.high += high
	}
	return c.high
}

func (c *column) put(x, y, high float32) {
	grows := c.grows()
	for i, b := range c.blocks {
		own := c.heights[i]
		if own == 0 {
			b.put(x, y, 0)
			continue
		}
		if i == grows {
			own = max(own+high-c.high, 0)
		}
		b.put(x, y, own)
		y += own + c.between
	}
}

// grows is the index of the block that takes the height to spare; -1 where
// none does.
func (c *column) grows() int {
	for _, g := range c.grow {
		if i := slices.Index(c.blocks, g); c.heights[i] > 0 {
			return i
		}
	}
	return -1
}

func (c *column) objects() []fyne.CanvasObject { return objectsOf(c.blocks) }

// row sets blocks side by side in shares of the width, each from the top. One
// that has nothing to show leaves its room to the others.
type row struct {
	gap    float32
	shares []float32
	blocks []block

	widths []float32
	apart  float32
}

func newRow(gap float32, shares []float32, blocks ...block) *row {
	return &row{gap: gap, shares: shares, blocks: blocks}
}

func (r *row) fit(k, wide float32) float32 {
	r.apart = r.gap * k
	r.widths = make([]float32, len(r.blocks))
	var sum, shown float32
	for i, b := range r.blocks {
		if b.fit(k, wide*r.shares[i]/total(r.shares)) > 0 {
			sum += r.shares[i]
			shown++
			r.widths[i] = 1
		}
	}
	var high float32
	for i, b := range r.blocks {
		if r.widths[i] > 0 {
			r.widths[i] = (wide - (shown-1)*r.apart) * r.shares[i] / sum
			high = max(high, b.fit(k, r.widths[i]))
		}
	}
	return high
}

func (r *row) put(x, y, high float32) {
	for i, b := range r.blocks {
		if r.widths[i] == 0 {
			b.put(x, y, 0)
			continue
		}
		b.put(x, y, high)
		x += r.widths[i] + r.apart
	}
}

func (r *row) objects() []fyne.CanvasObject { return objectsOf(r.blocks) }

func total(shares []float32) (sum float32) {
	for _, s := range shares {
		sum += s
	}
	return sum
}

func objectsOf(blocks []block) (all []fyne.CanvasObject) {
	for _, b := range blocks {
		all = append(all, b.objects()...)
	}
	return all
}

// rule is a thin line across the page.
type rule struct {
	line fyne.CanvasObject
	wide float32
}

func (r *rule) fit(_, wide float32) float32 {
	r.wide = wide
	return 1
}

func (r *rule) put(x, y, _ float32) {
	r.line.Move(fyne.NewPos(x, y))
	r.line.Resize(fyne.NewSize(r.wide, 1))
}

func (r *rule) objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.line} }
