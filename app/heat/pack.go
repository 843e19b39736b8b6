package heat

import "math"

// coldWaterKgPerM3 is the density of liquid water between −20 and 20 °C to
// 0.6 %. IAPWS-95 (computed): 999.84 at 0 °C.
const coldWaterKgPerM3 = 999.8

// volumeM3PerKg is the volume of a kg of tissue without its air. Water and ice
// have their own densities here, not those of Choi & Okos, because their small
// difference is what counts: ice 916.9 − 0.1307 t, within 0.05 % of IAPWS
// R10-06.
func (c *Composition) volumeM3PerKg(tempC float64) float64 {
	sum := 0.0
	for i, x := range c.fractions(tempC) {
		rho := coldWaterKgPerM3
		if i != ofWater {
			rho = components[i].densityAt(tempC)
		}
		sum += x / rho
	}
	return sum
}

// GrowthPercent is how much the tissue grows in volume from fillC (0 to 40 °C)
// to frozenC (−40 to −5 °C): the ice that there is at frozenC by Chen, bound
// and still liquid water taken off, the solids' shrinking too. It is an
// estimate: tissue that holds air can take some of the growth into itself.
func (c Composition) GrowthPercent(fillC, frozenC float64) (float64, error) {
	if err := first(c.Check(), within("water", c.Water, 0.5, 0.99, "of the mass"),
		within("filling temperature", fillC, 0, 40, "°C"), within("frozen temperature", frozenC, -40, -5, "°C")); err != nil {
		return 0, err
	}
	return 100 * (c.volumeM3PerKg(frozenC)/c.volumeM3PerKg(fillC) - 1), nil
}

// waterGrowthPercent is the growth of water itself, all of it ice at frozenC.
func waterGrowthPercent(frozenC float64) float64 {
	return 100 * (coldWaterKgPerM3/components[ofIce].densityAt(frozenC) - 1)
}

// Filling is what a container is filled with, as shares of the filled volume;
// the rest is food.
type Filling struct {
	WaterShare float64 // cover water, juice or thin syrup, 0 to 0.9
	AirShare   float64 // between the pieces, 0 to 0.6
}

// GrowthPercent is how much the filling grows, if no piece moves into the air
// between the pieces: an upper estimate for a loose pack. Liquid counts as
// water; salt and sugar keep some of it liquid, so that is an upper estimate
// too.
func (f Filling) GrowthPercent(food Composition, fillC, frozenC float64) (float64, error) {
	err := first(within("cover water", f.WaterShare, 0, 0.9, "of the volume"), within("air in the pack", f.AirShare, 0, 0.6, "of the volume"),
		within("cover water and air", f.WaterShare+f.AirShare, 0, 1, "of the volume"))
	if err != nil {
		return 0, err
	}
	growth, err := food.GrowthPercent(fillC, frozenC)
	if err != nil {
		return 0, err
	}
	return (1-f.WaterShare-f.AirShare)*growth + f.WaterShare*waterGrowthPercent(frozenC), nil
}

// Tier is a part of a container, with sides that run straight from its bottom
// area to its top area.
type Tier struct{ HeightM, BottomM2, TopM2 float64 }

// volumeM3 is the content up to a level in the tier.
func (t Tier) volumeM3(levelM float64) float64 {
	low, high := math.Sqrt(t.BottomM2), math.Sqrt(t.TopM2)
	grow := (high - low) * levelM / t.HeightM
	return levelM * (low*low + low*grow + grow*grow/3)
}

// levelM is the inverse of volumeM3.
func (t Tier) levelM(volumeM3 float64) float64 {
	low, high := math.Sqrt(t.BottomM2), math.Sqrt(t.TopM2)
	if math.Abs(high-low) < 1e-9*low {
		return volumeM3 / (low * low)
	}
	side := math.Cbrt(low*low*low + 3*volumeM3*(high-low)/t.HeightM)
	return (side - low) / (high - low) * t.HeightM
}

// Container is a rigid container: tiers from the bottom up.
type Container []Tier

// NewBox is a box or tub of a volume up to the brim (0.0001 to 0.02 m³) and a
// height (0.02 to 0.4 m); its bottom is narrowing (0.5 to 1) times as wide as
// its top, 1 for straight sides.
func NewBox(volumeM3, heightM, narrowing float64) (Container, error) {
	if err := first(within("volume", volumeM3, 1e-4, 0.02, "m³"), within("height", heightM, 0.02, 0.4, "m"),
		within("width of the bottom", narrowing, 0.5, 1, "of the top")); err != nil {
		return nil, err
	}
	topM2 := volumeM3 / heightM * 3 / (1 + narrowing + narrowing*narrowing)
	return Container{{heightM, topM2 * narrowing * narrowing, topM2}}, nil
}

// NewJar is a jar with a straight body up to its shoulder, a shoulder drawn in
// to the mouth, and a neck. volumeM3 and heightM are up to the brim, shoulder
// and neck are the shares of the height at which they begin (0.3 to 1, the neck
// not below the shoulder), mouth is the width of the mouth over that of the
// body (0.4 to 1).
func NewJar(volumeM3, heightM, shoulder, neck, mouth float64) (Container, error) {
	if err := first(within("volume", volumeM3, 1e-4, 0.02, "m³"), within("height", heightM, 0.02, 0.4, "m"),
		within("shoulder", shoulder, 0.3, 1, "of the height"), within("neck", neck, shoulder, 1, "of the height"),
		within("width of the mouth", mouth, 0.4, 1, "of the body")); err != nil {
		return nil, err
	}
	perBody := shoulder + (neck-shoulder)*(1+mouth+mouth*mouth)/3 + (1-neck)*mouth*mouth
	bodyM2 := volumeM3 / heightM / perBody
	mouthM2 := bodyM2 * mouth * mouth
	c := Container{{shoulder * heightM, bodyM2, bodyM2}}
	if neck > shoulder {
		c = append(c, Tier{(neck - shoulder) * heightM, bodyM2, mouthM2})
	}
	if neck < 1 {
		c = append(c, Tier{(1 - neck) * heightM, mouthM2, mouthM2})
	}
	return c, nil
}

// HeightM is the height of the brim.
func (c Container) HeightM() float64 {
	sum := 0.0
	for _, t := range c {
		sum += t.HeightM
	}
	return sum
}

// VolumeM3 is the content up to a level, at most to the brim.
func (c Container) VolumeM3(levelM float64) float64 {
	sum := 0.0
	for _, t := range c {
		if levelM <= 0 {
			break
		}
		sum += t.volumeM3(math.Min(levelM, t.HeightM))
		levelM -= t.HeightM
	}
	return sum
}

// LevelM is the level of a content, at most the brim.
func (c Container) LevelM(volumeM3 float64) float64 {
	sum := 0.0
	for _, t := range c {
		whole := t.volumeM3(t.HeightM)
		if volumeM3 < whole {
			return sum + t.levelM(math.Max(volumeM3, 0))
		}
		volumeM3 -= whole
		sum += t.HeightM
	}
	return sum
}

// Fit is what becomes of a headspace in the freezer.
type Fit struct {
	RiseM float64 // how far the filling rises, if there were room
	LeftM float64 // headspace left; 0 where it does not hold
	Holds bool
	NeedM float64 // the least headspace that holds
}

// Fit is whether a headspace holds a filling that grows by growthPercent (0 to
// 15). It takes all growth to go upwards, between rigid walls; a box that bulges
// or a bag that gives way needs less, and a filling that freezes over at the
// top first can break glass with headspace to spare.
func (c Container) Fit(headspaceM, growthPercent float64) (Fit, error) {
	heightM := c.HeightM()
	if err := first(within("tiers of the container", float64(len(c)), 1, 10, ""), within("headspace", headspaceM, 0, 0.9*heightM, "m"),
		within("growth", growthPercent, 0, 15, "%")); err != nil {
		return Fit{}, err
	}
	grow := 1 + growthPercent/100
	fillM := heightM - headspaceM
	grown := c.VolumeM3(fillM) * grow
	brim := c.VolumeM3(heightM)
	fit := Fit{Holds: grown <= brim*(1+1e-12), NeedM: heightM - c.LevelM(brim/grow)}
	fit.RiseM = c.LevelM(grown) - fillM
	if fit.Holds {
		fit.LeftM = headspaceM - fit.RiseM
	} else { // as if the brim went straight up
		fit.RiseM += (grown - brim) / c[len(c)-1].TopM2
	}
	return fit, nil
}
