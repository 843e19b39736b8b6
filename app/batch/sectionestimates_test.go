package batch

import (
	"math"
	"strings"
	"testing"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Wherever the middle of a piece is estimated there is its section, and nowhere
// else; it ends with the centre that stands as a figure.
func TestSectionStandsWithTheCentre(t *testing.T) {
	table, memory := reference.Shipped(), &estimate.Memory{}
	drawn := map[measure.Form]int{}
	for _, units := range []measure.System{measure.US, measure.Metric} {
		for _, tr := range table.Treatments {
			j := withKitchen(t, job(t, tr.ID, "1 lb", "2 gal"))
			j.Memory, j.Units = memory, units
			e := Work(j, table).Estimates
			s := e.Through
			if there := e.Centre.ID != "" && !e.Centre.InWords(); s.Drawn() != there {
				t.Errorf("%s: centre %q, section drawn: %v", tr.ID, e.Centre.Text, s.Drawn())
			}
			if !s.Drawn() {
				continue
			}
			drawn[s.Form]++
			end := s.Moments[len(s.Moments)-1]
			if end.Middle != e.Centre.Text || s.Standing != e.Centre.Standing || s.Basis != measure.Estimate {
				t.Errorf("%s: ends with %q (%s), the figure says %q (%s)", tr.ID, end.Middle, s.Standing, e.Centre.Text, e.Centre.Standing)
			}
			for _, m := range s.Moments {
				checkIsotherms(t, tr.ID, m)
			}
		}
	}
	if drawn[measure.Flat] == 0 || drawn[measure.Long] == 0 || drawn[measure.Round] == 0 || drawn[""] > 0 {
		t.Errorf("drawn by form: %v", drawn)
	}
}

// An isotherm lies where the profile has its temperature.
func checkIsotherms(t *testing.T, id string, m measure.Moment) {
	t.Helper()
	last := float64(len(m.Temps) - 1)
	for _, line := range m.Lines {
		inner := min(int(line.At*last), len(m.Temps)-2)
		share := line.At*last - float64(inner)
		temp := m.Temps[inner] + (m.Temps[inner+1]-m.Temps[inner])*share
		number, _, _ := strings.Cut(line.Label, " ")
		want, err := measure.ParseNumber(number)
		if err != nil || math.Abs(temp-want) > 1e-6 {
			t.Errorf("%s, %s: the isotherm of %s lies at %v", id, m.Label, line.Label, temp)
		}
	}
}

func TestSectionIsHiddenWithoutAnEstimate(t *testing.T) {
	table := reference.Shipped()
	j := job(t, "snap-beans-cut-water", "1 lb", "2 gal")
	if Work(j, table).Estimates.Through.Drawn() {
		t.Error("no burner is known, and yet heat goes in")
	}
}

// The frozen pack says what the figure of growth says, and the published
// headspace stays.
func TestFrozenPackAgreesWithTheGrowth(t *testing.T) {
	table, memory := reference.Shipped(), &estimate.Memory{}
	said := map[string]int{}
	for _, tr := range table.Treatments {
		for _, container := range []Container{Bag, Box, Jar} {
			for _, tooLittle := range []bool{false, true} {
				j := job(t, tr.ID, "1 lb", "2 gal")
				j.Memory, j.Pack = memory, Packing{Container: container, Size: Pint, Mouth: reference.NarrowMouth}
				if tooLittle { // as an educator may have entered it
					j.Treatment.HeadspaceRow, j.Treatment.HeadspaceIn = "", 0.125
				}
				w := Work(j, table)
				f, growth := w.Estimates.Frozen, w.Estimates.Growth
				if (f.GrowsShare > 0) != (growth.ID != "") {
					t.Errorf("%s in a %s: grows %v, figure %q", tr.ID, container, f.GrowsShare, growth.Text)
				}
				if growth.ID == "" {
					continue
				}
				tight := has(w, "headspace-tight")
				if (f.OverIn > 0) != tight || tight != strings.HasPrefix(f.Text, "needs ") {
					t.Errorf("%s in a %s: %+v, remarked: %v", tr.ID, container, f, tight)
				}
				if f.LeftIn > w.Headspace.Value || f.LeftIn > 0 && f.OverIn > 0 {
					t.Errorf("%s in a %s: %+v of %s", tr.ID, container, f, w.Headspace.Text)
				}
				what, _, _ := strings.Cut(f.Text, " ")
				said[what]++
			}
		}
	}
	if said["needs"] == 0 || said["the"] == 0 || said["it"] == 0 || len(said) < 5 {
		t.Errorf("said %v", said)
	}
}
