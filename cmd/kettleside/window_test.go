package main_test

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"example.org/kettleside/app/class"
	"example.org/kettleside/content"
)

// The window is opened in this size, so that what is clicked stands where it is
// expected.
const settings = `{"area": "class", "greeted": true, "width": 1024, "height": 700}`

// place is a point of the window.
type place struct{ x, y int }

var (
	corner        = place{1000, 690}
	titleField    = place{500, 187}
	placeLine     = place{216, 168} // in the list of pages
	altitudeField = place{430, 251}
	weightField   = place{175, 407} // of the batch area
	exportButton  = place{207, 671}
)

// answerPart is where the answer to a question stands, without the entry with
// its blinking mark.
var answerPart = []string{"-crop", "600x500+420+120"}

// TestWindow starts the program in a real window, works in it as a person
// would, and looks at what is on the disk afterwards. The program is built
// without the tag migrated_fynedo, so that the toolkit reports every call that
// comes from a wrong goroutine.
func TestWindow(t *testing.T) {
	p, file := startDemo(t)
	demo, err := class.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	p.point(corner)
	last := p.settled(p.window, "open")
	for _, area := range []struct{ key, name string }{{"ctrl+1", "crops"}, {"ctrl+3", "batch"}, {"ctrl+4", "handouts"}, {"ctrl+2", "class"}} {
		p.xdo("key", area.key)
		last = p.otherThan(last, p.window, area.name)
	}

	const title, altitude = "Typed into the window", "6000 ft"
	p.enter(titleField, title)
	p.point(placeLine)
	p.xdo("click", "1")
	p.enter(altitudeField, "6,000")
	saves := func(what, title, altitude string) {
		t.Helper()
		p.saves(file, what, func(c class.Class) bool { return c.Title == title && c.Place.Altitude.String() == altitude })
	}
	saves("title and altitude", title, altitude)
	p.keep("saved")
	p.xdo("key", "ctrl+z")
	saves("the altitude taken back", title, demo.Place.Altitude.String())
	p.xdo("key", "ctrl+z")
	saves("the title taken back", demo.Title, demo.Place.Altitude.String())
	p.xdo("key", "ctrl+y")
	saves("the title made again", title, demo.Place.Altitude.String())

	// what is typed and not handed over is taken back first, then the title
	p.point(altitudeField)
	p.xdo("click", "1")
	time.Sleep(pause)
	p.xdo("key", "End")
	p.xdo("type", "--delay", "30", "99")
	for range 4 {
		p.xdo("key", "ctrl+z")
	}
	saves("typing and title taken back", demo.Title, demo.Place.Altitude.String())
	p.xdo("key", "ctrl+q")
	p.quits()
	p.saidNothingBad()
}

// TestAClassFromTheFirstBatchToThePaper plans one more batch, tries something on
// a copy, shows it to the room, answers a question and exports, in one run.
func TestAClassFromTheFirstBatchToThePaper(t *testing.T) {
	p, file := startDemo(t)
	p.point(corner)
	p.settled(p.window, "open")

	p.xdo("key", "ctrl+b")
	p.xdo("type", "--delay", "30", "green peas")
	p.keep("which-treatment")
	p.xdo("key", "Return")
	p.saves(file, "the new batch", func(c class.Class) bool { return len(c.Batches) == 5 })
	last := p.settled(p.window, "batch-added")

	p.xdo("key", "ctrl+3")
	p.otherThan(last, p.window, "batch")
	p.enter(weightField, "4.5")
	p.saves(file, "the weight", func(c class.Class) bool { return c.Batches[4].Prepared.String() == "4.5 lb" })
	p.keep("weight")

	p.xdo("key", "ctrl+3") // leaves the entry, whose mark blinks
	plan := p.settled(p.window, "plan")
	p.xdo("key", "ctrl+t")
	trial := p.otherThan(plan, p.window, "trial")
	p.xdo("key", "ctrl+r")
	p.otherThan(trial, p.window, "returned")

	p.xdo("key", "ctrl+p")
	projector := p.newWindow(p.window)
	p.focus(projector)
	first := p.settled(projector, "projector")
	p.xdo("key", "Next")
	p.otherThan(first, projector, "projector-next")
	p.focus(p.window)

	p.xdo("key", "ctrl+k")
	p.xdo("type", "--delay", "30", "clock")
	before := p.picture(p.window, answerPart...)
	p.xdo("key", "Return")
	p.waitFor("an answer", func() bool { return !bytes.Equal(p.picture(p.window, answerPart...), before) })
	p.keep("answer")

	p.xdo("key", "ctrl+4")
	p.settled(p.window, "handouts")
	p.point(exportButton)
	p.xdo("click", "1")
	time.Sleep(pause)
	p.keep("name")
	p.xdo("key", "Return")
	workbook := filepath.Join(filepath.Dir(file), "demo.xlsx")
	p.waitFor("the workbook", func() bool {
		data, err := os.ReadFile(workbook)
		return err == nil && bytes.HasPrefix(data, []byte("PK"))
	})
	p.point(corner)
	p.settled(p.window, "exported")

	p.xdo("key", "ctrl+s")
	p.xdo("key", "ctrl+q")
	p.quits()
	p.saidNothingBad()
	checkClass(t, file)
}

// checkClass asks that the class has the batch that was added, with the weight
// that was typed, and is the demo's otherwise: no trial touched it.
func checkClass(t *testing.T, file string) {
	t.Helper()
	c, err := class.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Batches) != 5 || c.Batches[4].Treatment != "green-peas-shelled-water" || c.Batches[4].Prepared.String() != "4.5 lb" {
		t.Errorf("the batches in the file are %+v", c.Batches)
	}
	c.Batches = c.Batches[:4]
	demo, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(c, demo) {
		t.Errorf("the class in the file is\n%+v, want\n%+v", c, demo)
	}
}

// startDemo starts the program with the demo class in a file of its own.
func startDemo(t *testing.T) (p *program, file string) {
	t.Helper()
	needs(t)
	dir := t.TempDir()
	file = filepath.Join(dir, "demo.kettleside")
	write(t, file, content.DemoClass())
	write(t, filepath.Join(dir, "config", "kettleside", "settings.json"), []byte(settings))
	return start(t, build(t), dir, file), file
}
