package batch

import "example.org/kettleside/reference"

// Packing is how a batch goes into the freezer.
type Packing struct {
	Container Container       `json:"container"`
	Size      Size            `json:"size"`
	Mouth     reference.Mouth `json:"mouth"` // of a box or jar
	Tray      bool            `json:"tray"`  // frozen loose on a tray first
	Count     int             `json:"count"` // packs wanted from one batch; 0: as many as it gives
}

// Container is what is filled.
type Container string

const (
	Bag Container = "bag"
	Box Container = "box" // rigid, made for freezing
	Jar Container = "jar" // glass, made for freezing
)

// Size is the size of a container.
type Size string

const (
	Pint  Size = "pint"
	Quart Size = "quart"
)

// Pints is how many US pints the size holds.
func (s Size) Pints() float64 {
	if s == Quart {
		return 2
	}
	return 1
}
