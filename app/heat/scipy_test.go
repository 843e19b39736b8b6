package heat

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"
	"time"
)

// scipyCase and scipyAnswer are what kettle_reference.py reads and writes.
type scipyCase struct {
	Dims        int     `json:"dims"`
	SizeM       float64 `json:"sizeM"`
	K           float64 `json:"k"`
	Rho         float64 `json:"rho"`
	C           float64 `json:"c"`
	H           float64 `json:"h"`
	MassKg      float64 `json:"massKg"`
	CapacityJPK float64 `json:"capacityJPK"`
	BoilC       float64 `json:"boilC"`
	WaterC      float64 `json:"waterC"`
	StartC      float64 `json:"startC"`
	PowerW      float64 `json:"powerW"`
	BlanchS     float64 `json:"blanchS"`
}

type scipyAnswer struct {
	BackS   float64 `json:"backS"`
	DipC    float64 `json:"dipC"`
	CentreC float64 `json:"centreC"`
	MeanC   float64 `json:"meanC"`
}

// Fifty random kitchens against scipy's stiff integrator on the same equations
// (testdata/heat/kettle_reference.py), to 0.1 %: of the return time, and of the
// span between start and boil for temperatures. It also says how many times
// faster the closed form is on the same problems at the same error.
func TestAgainstScipy(t *testing.T) {
	python := "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import scipy").Run(); err != nil {
		if os.Getenv("KETTLESIDE_VERIFY") != "" {
			t.Fatal("python3 with scipy (Debian: python3-scipy) is not here: ", err)
		}
		t.Skip("python3 with scipy is not here; cmd/verify installs it")
	}
	random := rand.New(rand.NewPCG(2027, 50))
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	var cases []scipyCase
	for i := range 50 {
		c := scipyCase{
			Dims: 1 + i%3, SizeM: between(0.002, 0.025), K: between(0.4, 0.65), Rho: between(700, 1080), C: between(3400, 4050), H: between(400, 3000),
			MassKg: between(0.1, 1.5), CapacityJPK: between(2, 20) * waterHeatJPerKgK, BoilC: between(90, 100), StartC: between(5, 30),
			PowerW: between(600, 4000), BlanchS: between(60, 660),
		}
		c.WaterC = c.BoilC - between(0, 2)
		cases = append(cases, c)
	}
	input, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "../../testdata/heat/kettle_reference.py")
	cmd.Stdin = bytes.NewReader(input)
	cmd.Stderr = os.Stderr
	output, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Answers []scipyAnswer `json:"answers"`
		Seconds float64       `json:"seconds"`
	}
	if err := json.Unmarshal(output, &got); err != nil || len(got.Answers) != len(cases) {
		t.Fatalf("%d answers for %d cases: %v", len(got.Answers), len(cases), err)
	}
	worstTime, worstTemp, compared := 0.0, 0.0, 0
	var ours time.Duration
	for i, c := range cases {
		k := Kettle{BoilC: c.BoilC, WaterKg: c.CapacityJPK / waterHeatJPerKgK, PowerW: c.PowerW, WaterC: c.WaterC}
		p := Piece{Shape: Shape(c.Dims), SizeM: c.SizeM, ConductivityWPerMK: c.K, DensityKgPerM3: c.Rho, HeatJPerKgK: c.C, FilmWPerM2K: c.H}
		began := time.Now()
		b, err := k.Blanch(p, c.MassKg, c.StartC)
		if err != nil {
			t.Fatal(err)
		}
		centre, mean := b.PieceC(b.BackS+c.BlanchS, 0), b.MeanC(b.BackS+c.BlanchS)
		ours += time.Since(began)
		a := got.Answers[i]
		span := c.BoilC - c.StartC
		for _, pair := range [][2]float64{{b.DipC, a.DipC}, {centre, a.CentreC}, {mean, a.MeanC}} {
			off := math.Abs(pair[0]-pair[1]) / span
			worstTemp = max(worstTemp, off)
			if off > 0.001 {
				t.Errorf("case %d: %.4f °C here, %.4f by scipy: %+v", i, pair[0], pair[1], c)
			}
		}
		if a.BackS > 1 {
			compared++
			off := math.Abs(b.BackS-a.BackS) / a.BackS
			worstTime = max(worstTime, off)
			if off > 0.001 {
				t.Errorf("case %d: back after %.3f s here, %.3f by scipy: %+v", i, b.BackS, a.BackS, c)
			}
		}
	}
	if compared < 40 {
		t.Errorf("only %d cases had a return to compare", compared)
	}
	t.Logf("worst: return %.4f %%, temperatures %.4f %% of the span; scipy %.2f s, here %s: %.0f times faster",
		worstTime*100, worstTemp*100, got.Seconds, ours, got.Seconds/ours.Seconds())
}
