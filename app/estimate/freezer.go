package estimate

import (
	"math"

	"example.org/kettleside/app/heat"
)

// Day is a freezer that is given fresh packs, all alike and all at once.
type Day struct {
	CapacityL float64 // of a household freezer, 30 to 1,500 L
	SetC      float64 // thermostat
	Food      heat.Composition
	Pack      heat.Pack // its film is guessed here
	PackedC   float64
	MassKg    float64
	CoreC     float64 // frozen through
}

// Load is what that does.
type Load struct {
	WarmestC, WarmestAtS float64 // of the air
	FrozenS              float64 // until all cores are at Day.CoreC; +Inf where they are not within five days
}

// Household freezers run from 30 to 1,500 L; the guesses below are for those.
const (
	leastFreezerL = 30
	mostFreezerL  = 1500
)

// roomC is a room that nobody measured.
const roomC = 22

// Work estimates the freezer's day. The freezer is a guess from its capacity
// alone: one of 425 L (15 cu ft) is taken to lose 1.2 W/K through its walls, to
// pull 110 W, and to have 30 kJ/K in it that follow the air; leak and pull go
// with the surface, what follows the air goes with the volume. Input out of
// range gives a *heat.RangeError.
func (d Day) Work() (Load, error) {
	if !(d.CapacityL >= leastFreezerL && d.CapacityL <= mostFreezerL) {
		return Load{}, &heat.RangeError{Quantity: "capacity of a household freezer", Value: d.CapacityL, Low: leastFreezerL, High: mostFreezerL, Unit: "L"}
	}
	size := d.CapacityL / 425
	surface := math.Cbrt(size * size)
	z := heat.Freezer{SetC: d.SetC, RoomC: roomC, LeakWPerK: 1.2 * surface, PullW: 110 * surface, HeldJPerK: max(30000*size, 5000)}
	p := d.Pack
	p.FilmWPerM2K = packFilm.Likely
	day, err := z.Load(p, d.Food, d.MassKg, d.PackedC)
	if err != nil {
		return Load{}, err
	}
	frozenS, ok, err := day.UntilCore(d.CoreC, 5*86400)
	if err != nil {
		return Load{}, err
	}
	if !ok {
		frozenS = math.Inf(1)
	}
	return Load{WarmestC: day.WarmestC(), WarmestAtS: day.WarmestAtS(), FrozenS: frozenS}, nil
}
