package content

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

func TestEveryHandoutCarriesTheCautionsThatAlwaysApply(t *testing.T) {
	got := map[string]bool{}
	for _, c := range Cautions(words.English) {
		got[c.ID] = true
	}
	for _, id := range []string{"not-ready-to-eat", "at-risk", "own-agency"} {
		if !got[id] {
			t.Errorf("caution %s does not always stand", id)
		}
	}
	if got["glass"] || got["dry-ice"] {
		t.Error("cautions that concern only some batches stand everywhere")
	}
	for topic, id := range map[Topic]string{BoilWater: "scald", Steam: "steam", Glass: "glass", Power: "power", HotPepper: "hot-pepper", DryIce: "dry-ice"} {
		found := false
		for _, c := range Cautions(words.English, topic) {
			found = found || c.ID == id
		}
		if !found {
			t.Errorf("topic %s lacks caution %s", topic, id)
		}
	}
}

func TestStepsOfEachMethodRunFromTheDayBeforeToFreezing(t *testing.T) {
	for l, clock := range map[words.Language]string{words.English: "clock", words.Spanish: "vuelva a hervir"} {
		for _, method := range []Topic{BoilWater, Steam, Cook, Raw} {
			steps := Steps(l, method)
			if len(steps) < 5 || steps[0].ID != "set-freezer" || steps[len(steps)-1].ID != "freeze" {
				t.Errorf("%s: %d steps, from %s to %s", method, len(steps), steps[0].ID, steps[len(steps)-1].ID)
			}
			for _, s := range steps {
				if s.ID == "blanch-water" && (method != BoilWater || !strings.Contains(s.Text, clock)) {
					t.Errorf("%s: step %s does not belong here or lacks the clock", method, s.ID)
				}
			}
		}
	}
}

func TestTextsAreComplete(t *testing.T) {
	for _, l := range words.Languages() {
		for _, c := range load[Caution](l, "cautions.json") {
			if c.ID == "" || c.Title == "" || c.Text == "" || c.Source == "" || len(c.Topics) == 0 {
				t.Errorf("caution is not complete: %+v", c)
			}
		}
		for _, s := range load[Step](l, "steps.json") {
			if s.ID == "" || s.Title == "" || s.Text == "" || len(s.Topics) == 0 {
				t.Errorf("step is not complete: %+v", s)
			}
		}
	}
	if !json.Valid(DemoClass()) {
		t.Error("the demo class is not JSON")
	}
}

func TestFill(t *testing.T) {
	got, err := Fill("boils within {a}, not {b}.", map[string]string{"a": "1 min", "b": "2"})
	if err != nil || got != "boils within 1 min, not 2." {
		t.Errorf("%q, %v", got, err)
	}
	for _, text := range []string{"{unknown}", "{a", "x {}"} {
		if got, err := Fill(text, map[string]string{"a": "1"}); err == nil {
			t.Errorf("Fill(%q) = %q; want an error", text, got)
		}
	}
}

func TestTopicsOfABatch(t *testing.T) {
	for _, c := range []struct {
		method, container, crop string
		want                    []string // ids of cautions beyond those that always stand
		not                     []string
	}{
		{"water", "bag", "snap-beans", []string{"scald", "ice", "power", "no-shorter"}, []string{"steam", "glass", "hot-pepper"}},
		{"steam", "box", "broccoli", []string{"steam", "ice", "power"}, []string{"scald", "glass"}},
		{"raw", "jar", "hot-peppers", []string{"glass", "hot-pepper"}, []string{"scald", "steam", "ice"}},
		{"cook", "box", "pumpkin", []string{"scald", "power"}, []string{"steam", "glass"}},
	} {
		got := map[string]bool{}
		for _, caution := range Cautions(words.English, TopicsOf(c.method, c.container, c.crop)...) {
			got[caution.ID] = true
		}
		for _, id := range append(c.want, "not-ready-to-eat", "own-agency") {
			if !got[id] {
				t.Errorf("%s %s in a %s: caution %s is missing", c.method, c.crop, c.container, id)
			}
		}
		for _, id := range c.not {
			if got[id] {
				t.Errorf("%s %s in a %s: caution %s does not belong", c.method, c.crop, c.container, id)
			}
		}
	}
}
