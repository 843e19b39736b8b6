package planning

import (
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/content/words"
)

func TestATimeOfAStopwatchIsRead(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	took := burnerFields(a, 1)[trialTook]
	held := func() string { return a.session.Class().Kit.Burners[1].Heat.Rehearsal.Took.String() }
	for typed, want := range map[string]string{
		"10:30": "10 1/2 min", " 9:00 ": "9 min", "12:15": "12 1/4 min", "10:37": "637 s", "120:00": "120 min", "11": "11 min", "8 min 30 s": "8 1/2 min",
	} {
		if enter(took, typed); held() != want || took.Text() != want || took.Problem() != "" {
			t.Errorf("%q: the class holds %q, the field shows %q with %q", typed, held(), took.Text(), took.Problem())
		}
	}
	before := held()
	for _, typed := range []string{"0:30", "200:00", "10:60", "10:3", "1:10:30", "10:-30", ":30"} {
		if enter(took, typed); held() != before || !strings.Contains(took.Problem(), "“"+typed+"”") || took.Text() != typed {
			t.Errorf("%q: the class holds %q, the field shows %q with %q", typed, held(), took.Text(), took.Problem())
		}
	}
}

func TestARatingWithoutItsUnitIsAskedAbout(t *testing.T) {
	a, _ := demo(t, look.Light, 920, 600)
	rating := burnerFields(a, 0)[burnerRating]
	held := func() string { return a.session.Class().Kit.Burners[0].Heat.Rating.String() }
	before := held()
	for typed, says := range map[string]string{
		"12,000": "12,000 needs its unit, such as 12,000 Btu/h; 12,000 W is more than most burners give.",
		"12000":  "such as 12,000 Btu/h",
		"5000":   "5,000 needs its unit",
		"20,000": "such as 20,000 Btu/h",
	} {
		if enter(rating, typed); held() != before || !strings.Contains(rating.Problem(), says) || rating.Text() != typed {
			t.Errorf("%q: the class holds %q, the field shows %q with %q", typed, held(), rating.Text(), rating.Problem())
		}
	}
	for typed, want := range map[string]string{"12,000 Btu/h": "12000 Btu/h", "12,000 W": "12000 W", "4,999": "4999 W", "1,800": "1800 W"} {
		if enter(rating, typed); held() != want || rating.Problem() != "" {
			t.Errorf("%q: the class holds %q with %q", typed, held(), rating.Problem())
		}
	}
}

// Which batches lose what is taken out of the kit is said where it is taken out,
// until something else changes.
func TestWhatIsTakenOutSaysWhoUsedIt(t *testing.T) {
	for l, want := range map[words.Language][2]string{
		words.English: {"“Plug-in burner” is out of the kit. Without a burner now: Beans at every station, Corn for show. Undo brings it back.",
			"“Big kettle” is out of the kit. Without a kettle now: Spinach for show. Undo brings it back."},
		words.Spanish: {"“Plug-in burner” ya no está en el equipo. Sin hornilla ahora: Beans at every station, Corn for show. Con Deshacer vuelve.",
			"“Big kettle” ya no está en el equipo. Sin olla ahora: Spinach for show. Con Deshacer vuelve."},
	} {
		t.Run(string(l), func(t *testing.T) {
			speak(t, l)
			a, w := demo(t, look.Light, 920, 600)
			a.session.Change("use", func(c *class.Class) {
				c.Batches[2].Name = "Corn for show"
				c.Batches[1].Kettle, c.Batches[2].Kettle, c.Batches[3].Kettle = "Big kettle", "", ""
			})
			a.OpenPage("kit")
			kit := kitOf(a)
			big := 0
			for i, k := range a.session.Class().Kit.Kettles {
				if k.Name == "Big kettle" {
					big = i
				}
			}
			says := func(list *rows, at int, want string) {
				t.Helper()
				is := slices.Index(list.box.Objects, list.note)
				if is != at || is >= 0 && list.left.Text() != want {
					t.Errorf("says %q at %d, want %q at %d", list.left.Text(), is, want, at)
				}
			}
			burners.removeButton(a, 0, kit.burners).OnTapped()
			says(kit.burners, 0, want[0])
			says(kit.kettles, -1, "")
			looktest.Settle(w, 920, 600)
			textfits.Check(t, w)
			a.session.Undo()
			says(kit.burners, -1, "")
			kettles.removeButton(a, big, kit.kettles).OnTapped()
			says(kit.kettles, big, want[1])
			kit.addKettle()
			says(kit.kettles, -1, "")
			kettles.removeButton(a, len(a.session.Class().Kit.Kettles)-1, kit.kettles).OnTapped() // nobody uses it
			says(kit.kettles, -1, "")
			kettles.removeButton(a, 99, kit.kettles).OnTapped() // gone in the meantime
			says(kit.kettles, -1, "")
		})
	}
}
