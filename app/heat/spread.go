package heat

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
)

// Guess is an input that people only guess: a lowest, a likely and a highest
// value. Draws follow a triangle over it; equal ends are a fixed value.
type Guess struct{ Low, Likely, High float64 }

// Known is a value without a spread.
func Known(x float64) Guess { return Guess{x, x, x} }

func (g Guess) check(name string) error {
	if !(g.Low <= g.Likely && g.Likely <= g.High) {
		return &RangeError{name + " (likely value)", g.Likely, g.Low, g.High, ""}
	}
	return nil
}

// at is the value below which the share u of the draws lies.
func (g Guess) at(u float64) float64 {
	span := g.High - g.Low
	if span == 0 {
		return g.Low
	}
	peak := (g.Likely - g.Low) / span
	if u < peak {
		return g.Low + span*math.Sqrt(u*peak)
	}
	return g.High - span*math.Sqrt((1-u)*(1-peak))
}

// Kitchens is a kettle, a load and what is only guessed about them.
type Kitchens struct {
	Kettle  Kettle // PowerW is drawn
	Piece   Piece  // SizeM and FilmWPerM2K are drawn
	LoadKg  float64
	BlanchS float64 // from the return to the boil
	WithinS float64 // the return that counts as soon enough, more than 0

	PowerW, SizeM, FilmWPerM2K, StartC Guess
}

// Spread is what a number of kitchens like this one do. Band values are the
// tenth, fiftieth and ninetieth of a hundred.
type Spread struct {
	Draws   int
	Within  float64 // share of the draws that are back at the boil within Kitchens.WithinS
	BackS   Band
	DipC    Band
	CentreC Band // at the end of the blanch
}

// Band is the middle four fifths of the draws, with the middle one.
type Band struct{ Low, Middle, High float64 }

// Spread draws n kitchens (10 to 100,000). The same seed gives the same draws.
// Each input is drawn in n equal slices, shuffled (a Latin hypercube: McKay,
// Beckman and Conover 1979, from memory), which steadies the shares.
func (k Kitchens) Spread(n int, seed uint64) (Spread, error) {
	if err := first(within("draws", float64(n), 10, 100000, ""), within("blanch", k.BlanchS, 0, 7200, "s"), within("return", k.WithinS, 1, 3600, "s"),
		k.PowerW.check("power"), k.SizeM.check("piece size"), k.FilmWPerM2K.check("surface coefficient"), k.StartC.check("start temperature")); err != nil {
		return Spread{}, err
	}
	random := rand.New(rand.NewPCG(seed, 0x6b6574746c65))
	guesses := [4]Guess{k.PowerW, k.SizeM, k.FilmWPerM2K, k.StartC}
	var draws [4][]float64
	for i, g := range guesses {
		draws[i] = make([]float64, n)
		for j, slot := range random.Perm(n) {
			draws[i][j] = g.at((float64(slot) + random.Float64()) / float64(n))
		}
	}
	backs, dips, centres := make([]float64, n), make([]float64, n), make([]float64, n)
	follow := func(from, to int) error {
		var b Blanch
		one := k
		for j := from; j < to; j++ {
			one.Kettle.PowerW, one.Piece.SizeM, one.Piece.FilmWPerM2K = draws[0][j], draws[1][j], draws[2][j]
			if err := b.work(one.Kettle, one.Piece, one.LoadKg, draws[3][j], kettleModes); err != nil {
				return err
			}
			backs[j], dips[j], centres[j] = b.BackS, b.DipC, b.PieceC(b.BackS+one.BlanchS, 0)
		}
		return nil
	}
	if err := shared(n, follow); err != nil {
		return Spread{}, err
	}
	within := 0
	for _, s := range backs {
		if s <= k.WithinS {
			within++
		}
	}
	return Spread{Draws: n, Within: float64(within) / float64(n), BackS: band(backs), DipC: band(dips), CentreC: band(centres)}, nil
}

// shared does n things in as many parts as there are processors; the error is
// that of the first part that has one, so that it does not depend on the order.
func shared(n int, do func(from, to int) error) error {
	parts := min(runtime.GOMAXPROCS(0), n)
	errs := make([]error, parts)
	var all sync.WaitGroup
	for i := range parts {
		all.Go(func() { errs[i] = do(n*i/parts, n*(i+1)/parts) })
	}
	all.Wait()
	return first(errs...)
}

// band sorts x in place.
func band(x []float64) Band {
	slices.Sort(x)
	at := func(share float64) float64 { return x[int(share*float64(len(x)-1)+0.5)] }
	return Band{at(0.1), at(0.5), at(0.9)}
}
