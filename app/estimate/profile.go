package estimate

import (
	"math"

	"example.org/kettleside/app/heat"
)

// profileDepths is how many depths of a piece a profile has, evenly from its
// middle to its outside.
const profileDepths = 17

// Profile is the temperature through the likely piece at one moment.
type Profile struct {
	AfterS float64                // from when the load goes in
	TempC  [profileDepths]float64 // the first is its middle, the last its outside
}

// Moments are the profiles of a piece that is heated: early, further on, at the
// end.
type Moments [3]Profile

const (
	// earlyS is the latest first moment: a minute, which a room can wait for.
	earlyS = 60
	// begun and wellOn are how far the middle has come from its start to the
	// boil at the first two moments, if that is soon: so heat is seen on its way.
	begun  = 0.1
	wellOn = 0.55
)

// moments follows a piece to the end of its blanch, whose course is known.
func moments(b *heat.Blanch, c Course, boilC float64) Moments {
	end := c.AfterS[len(c.AfterS)-1]
	first := min(readable(min(c.middleS(begun, boilC), earlyS, end/4)), end)
	second := max(readable(min(c.middleS(wellOn, boilC), end/2)), first+shortestS)
	var all Moments
	for i, afterS := range []float64{first, min(second, end), end} {
		all[i].AfterS = afterS
		for d := range all[i].TempC {
			all[i].TempC[d] = b.PieceC(afterS, float64(d)/(profileDepths-1))
		}
	}
	return all
}

// middleS is when the middle has come a share of the way from its start to the
// boil, or the end.
func (c Course) middleS(share, boilC float64) float64 {
	want := c.CentreC[0] + share*(boilC-c.CentreC[0])
	for i := 1; i < len(c.AfterS); i++ {
		if before, now := c.CentreC[i-1], c.CentreC[i]; now >= want {
			return c.AfterS[i-1] + (c.AfterS[i]-c.AfterS[i-1])*(want-before)/(now-before)
		}
	}
	return c.AfterS[len(c.AfterS)-1]
}

// shortestS is a span that people can tell.
const shortestS = 5

// readable is a moment as it is printed: to 5 seconds, from 3 minutes on to 10.
func readable(s float64) float64 {
	step := 5.0
	if s >= 180 {
		step = 10
	}
	return max(math.Round(s/step)*step, shortestS)
}
