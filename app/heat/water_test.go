package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

const psi = 6894.757293168

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v; want %v ± %v", what, got, want, tolerance)
	}
}

func must(t testing.TB, x float64, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// IAPWS R7-97(2012), section 8, tables 35 and 36 (read).
func TestSaturationLine(t *testing.T) {
	for tK, wantMPa := range map[float64]float64{300: 0.353658941e-2, 500: 0.263889776e1, 600: 0.123443146e2} {
		p, err := SaturationPressurePa(tK - zeroCelsiusK)
		near(t, "saturation pressure", must(t, p, err)/1e6, wantMPa, wantMPa*1e-8)
	}
	for pMPa, wantK := range map[float64]float64{0.1: 0.372755919e3, 1: 0.453035632e3, 10: 0.584149488e3} {
		b, err := BoilingPointC(pMPa * 1e6)
		near(t, "boiling point", must(t, b, err)+zeroCelsiusK, wantK, 1e-6)
	}
}

// US Standard Atmosphere 1976, geometric altitude (read: PDAS table by 2 km;
// fluids documentation; engineeringtoolbox d_604; 1,000 m from memory), and
// ASHRAE Fundamentals, psychrometrics (read: engineersedge 15729).
func TestAirPressure(t *testing.T) {
	for _, c := range []struct{ altitudeM, wantPa, tolerance float64 }{
		{-2000, 127780, 6.389}, {0, 101320, 6}, {1000, 89876, 3}, {2000, 79501, 6}, {4000, 61660, 6},
		{5000, 54048.286, 1}, {6000, 47218, 6}, {8000, 35652, 6}, {10000, 26500, 6},
		{0, 14.696 * psi, 0.0006 * psi}, {5000 * 0.3048, 12.228 * psi, 0.0006 * psi}, {10000 * 0.3048, 10.108 * psi, 0.0006 * psi},
		{15000 * 0.3048, 8.297 * psi, 0.0006 * psi},
		{1000 * 0.3048, 14.175 * psi, 0.006 * psi}, {5000 * 0.3048, 12.230 * psi, 0.006 * psi}, {10000 * 0.3048, 10.108 * psi, 0.006 * psi},
	} {
		p, err := AirPressurePa(c.altitudeM)
		near(t, "air pressure", must(t, p, err), c.wantPa, c.tolerance)
	}
}

// Boiling point against altitude: table credited to NOAA/NASA (read in
// Wikipedia, High-altitude cooking) to 0.25 °F up to 12,000 ft; whole-degree
// US teaching table to 0.7 °F; metre table to 0.25 °C up to 2,000 m. Higher
// rows of these tables are reported wrong by straight lines and are left out.
func TestBoilingPointAtAltitude(t *testing.T) {
	for _, c := range []struct{ altitudeM, wantC, tolerance float64 }{
		{0, f(212), 0.25 / 1.8}, {500 * ft, f(211.1), 0.25 / 1.8}, {1000 * ft, f(210.2), 0.25 / 1.8}, {2000 * ft, f(208.4), 0.25 / 1.8},
		{5000 * ft, f(203.0), 0.25 / 1.8}, {6000 * ft, f(201.1), 0.25 / 1.8}, {8000 * ft, f(197.4), 0.25 / 1.8},
		{10000 * ft, f(193.6), 0.25 / 1.8}, {12000 * ft, f(189.8), 0.25 / 1.8},
		{2000 * ft, f(208), 0.7 / 1.8}, {5000 * ft, f(203), 0.7 / 1.8}, {7500 * ft, f(198), 0.7 / 1.8}, {10000 * ft, f(194), 0.7 / 1.8},
		{300, 99.1, 0.25}, {600, 98.1, 0.25}, {1000, 96.8, 0.25}, {2000, 93.3, 0.25},
	} {
		b, err := BoilingPointAtC(c.altitudeM)
		near(t, "boiling point", must(t, b, err), c.wantC, c.tolerance)
	}
}

const ft = 0.3048

func f(tempF float64) float64 { return (tempF - 32) / 1.8 }

// The two equations are inverse to each other, and higher is always cooler.
func TestBoilingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tempC := rapid.Float64Range(1, 370).Draw(t, "°C")
		p, err := SaturationPressurePa(tempC)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := BoilingPointC(p); err != nil || math.Abs(back-tempC) > 1e-6 {
			t.Fatalf("%v °C → %v Pa → %v °C, %v", tempC, p, back, err)
		}
		low := rapid.Float64Range(-2000, 10999).Draw(t, "m")
		a, errA := BoilingPointAtC(low)
		b, errB := BoilingPointAtC(low + 1)
		if errA != nil || errB != nil || b >= a {
			t.Fatalf("%v m boils at %v °C, one metre higher at %v °C", low, a, b)
		}
	})
}

func TestOutOfRangeNamesTheRange(t *testing.T) {
	for _, call := range []func() (float64, error){
		func() (float64, error) { return SaturationPressurePa(-1) },
		func() (float64, error) { return BoilingPointC(0) },
		func() (float64, error) { return BoilingPointC(math.NaN()) },
		func() (float64, error) { return AirPressurePa(12000) },
		func() (float64, error) { return BoilingPointAtC(math.Inf(-1)) },
	} {
		_, err := call()
		var outside *RangeError
		if !errors.As(err, &outside) || outside.Low >= outside.High || outside.Unit == "" {
			t.Errorf("%v; want a *RangeError with its range", err)
		}
	}
}
