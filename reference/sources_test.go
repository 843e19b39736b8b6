package reference

import (
	"encoding/json"
	"os"
	"regexp"
	"testing"
)

func TestEverySourceIsUsed(t *testing.T) {
	table := Shipped()
	used := map[string]bool{BoilingPointSource: true, HeatModelSource: true, VitaminCSource: true}
	for _, x := range table.Treatments {
		for _, id := range []string{x.Source, x.ChillSource, x.HeadspaceSource, x.WaterSource, x.BlanchSource, x.StorageSource} {
			used[id] = true
		}
		for _, a := range x.Also {
			used[a.Source] = true
		}
	}
	for _, c := range table.Crops {
		for _, p := range c.Prep {
			used[p.Source] = true
		}
	}
	for _, y := range table.Yields {
		used[y.Source], used[y.UsableShareSource] = true, true
	}
	for _, h := range table.Headspaces {
		used[h.Source] = true
	}
	for _, c := range table.Compositions {
		used[c.Source], used[c.FreezingSource] = true, true
	}
	for _, p := range table.Pieces {
		used[p.Source] = true
	}
	for _, e := range table.Kinetics {
		used[e.Source] = true
	}
	for _, c := range table.Containers {
		used[c.Source] = true
	}
	ids := regexp.MustCompile(`\b[A-Z]+[A-Z0-9]*_[A-Z0-9_]+\b`)
	for _, r := range table.Rules {
		used[r.Source] = true
		for _, id := range ids.FindAllString(r.Note, -1) { // a note may name the source that differs
			used[id] = true
			if _, ok := table.Source(id); !ok {
				t.Errorf("rule %s names %s, which is not listed", r.ID, id)
			}
		}
	}
	for caution, id := range cautionSources(t) {
		used[id] = true
		if _, ok := table.Source(id); !ok && id != string(CommonPractice) {
			t.Errorf("caution %s names %s, which is not listed", caution, id)
		}
	}
	for _, s := range table.Sources {
		if !used[s.ID] {
			t.Errorf("source %s is listed and used nowhere", s.ID)
		}
	}
}

// cautionSources are the sources of the cautions in content, which rest on this
// table's list.
func cautionSources(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile("../content/en/cautions.json")
	if err != nil {
		t.Fatal(err)
	}
	var cautions []struct{ ID, Source string }
	if err := json.Unmarshal(text, &cautions); err != nil || len(cautions) == 0 {
		t.Fatalf("%d cautions, %v", len(cautions), err)
	}
	out := map[string]string{}
	for _, c := range cautions {
		out[c.ID] = c.Source
	}
	return out
}
