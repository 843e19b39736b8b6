package estimate

import (
	"errors"
)

// Freezing is how long one pack needs until its core is at Case.CoreC.
type Freezing struct {
	QuickS  float64 // in the colder freezer with air all round
	LikelyS float64 // in the colder freezer
	WarmS   float64 // in the warmer one
	SlowS   float64 // in the warmer one, crowded
	PhamS   float64 // LikelyS by Pham's formula; 0 outside its range
	Course  Course  // in the colder freezer
}

func (c Case) packKnown() bool { return c.foodKnown() && c.Pack.Shape != 0 && c.CoreC < 0 }

func (c Case) freezing() (*Freezing, error) {
	cold, warm := c.FreezerC[0], c.FreezerC[1]
	time := func(film, airC float64) (float64, error) {
		p := c.Pack
		p.FilmWPerM2K = film
		return p.FreezingTimeS(c.Food, c.PackedC, airC, c.CoreC)
	}
	var f Freezing
	var errs [4]error
	f.QuickS, errs[0] = time(packFilm.High, cold)
	f.LikelyS, errs[1] = time(packFilm.Likely, cold)
	f.WarmS, errs[2] = time(packFilm.Likely, warm)
	f.SlowS, errs[3] = time(packFilm.Low, warm)
	if err := errors.Join(errs[:]...); err != nil {
		return nil, err
	}
	p := c.Pack
	p.FilmWPerM2K = packFilm.Likely
	f.PhamS, _ = p.PhamTimeS(c.Food, c.PackedC, cold, c.CoreC) // outside its range it stays 0
	pack, err := p.Freeze(c.Food, c.PackedC)
	if err != nil {
		return nil, err
	}
	air := func(float64) float64 { return cold }
	f.Course = course(1.2*f.LikelyS, steps, func(s float64) (float64, float64, float64) {
		if e := pack.Step(s-pack.AfterS(), air); e != nil && err == nil {
			err = e
		}
		return cold, pack.CoreC(), pack.MeanC()
	})
	return &f, err
}
