package estimate

import "example.org/kettleside/app/heat"

// Freezing is how long one pack needs until its core is at Case.CoreC.
type Freezing struct {
	QuickS  float64 // in the colder freezer with air all round
	LikelyS float64 // in the colder freezer
	WarmS   float64 // in the warmer one
	SlowS   float64 // in the warmer one, crowded
	PhamS   float64 // LikelyS by Pham's formula; 0 outside its range
	Course  Course  // in the colder freezer
}

// freezingSteps are enough for a curve over hours, whose steps are marched.
const freezingSteps = 36

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
	if err := firstOf(errs[:]...); err != nil {
		return nil, err
	}
	p := c.Pack
	p.FilmWPerM2K = packFilm.Likely
	f.PhamS, _ = p.PhamTimeS(c.Food, c.PackedC, cold, c.CoreC) // outside its range it stays 0
	course, err := c.freezingCourse(p, 1.2*f.LikelyS)
	if err != nil {
		return nil, err
	}
	f.Course = course
	return &f, nil
}

// packed is all of a case that its freezing follows from.
func (c Case) packed() Case {
	return Case{Food: c.Food, Pack: c.Pack, PackedC: c.PackedC, FreezerC: c.FreezerC, CoreC: c.CoreC}
}

// freezingCourse follows a pack in the colder freezer.
func (c Case) freezingCourse(p heat.Pack, endS float64) (Course, error) {
	pack, err := p.Freeze(c.Food, c.PackedC)
	if err != nil {
		return Course{}, err
	}
	coldC := c.FreezerC[0]
	followed := course(endS, freezingSteps, func(s float64) (float64, float64, float64) {
		if e := pack.Step(s-pack.AfterS(), func(float64) float64 { return coldC }); e != nil && err == nil {
			err = e
		}
		return coldC, pack.CoreC(), pack.MeanC()
	})
	return followed, err
}
