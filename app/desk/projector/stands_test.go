package projector

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// sizes are those of projectors and of the smallest window.
var sizes = []fyne.Size{{Width: 800, Height: 600}, {Width: 1024, Height: 768}, {Width: 1280, Height: 720}, {Width: 1920, Height: 1080}}

// TestStands looks at every page of the demo, and of a trial of it, in every
// size and in both systems of units, and draws them for a person to look at.
func TestStands(t *testing.T) {
	for i, size := range sizes {
		for _, units := range []measure.System{measure.US, measure.Metric} {
			variant := []look.Variant{look.Light, look.Dark}[i%2]
			c := demo(t)
			c.Units = units
			r := open(t, variant, c, size.Width, size.Height)
			for i := range c.Batches {
				r.session.Select(i)
				r.standsOnEachPage(t, fmt.Sprintf("projector-%s-%.0f-%s-%d", variant, size.Width, units, i))
			}
			r.try(t)
			r.standsOnEachPage(t, fmt.Sprintf("projector-%s-%.0f-%s-trial", variant, size.Width, units))
		}
	}
}

func (r *room) standsOnEachPage(t *testing.T, name string) {
	r.eachPage(func(page string) {
		where := name + "-" + strings.ReplaceAll(page, " ", "-")
		if os.Getenv(looktest.Pictures) != "" { // painting takes longer than all the rest
			looktest.Picture(t, r.window, where)
		}
		r.stands(t, where)
	})
}

// try starts a trial of the first batch that differs in much.
func (r *room) try(t testing.TB) {
	t.Helper()
	r.session.Select(0)
	must(t, r.session.StartTrial("Two pounds at a time in the big kettle"))
	must(t, r.session.ChangeView("try", func(c *class.Class) {
		c.Batches[0].Kettle, c.Batches[0].Burner = "Big kettle", "Range, large plate"
		c.Batches[0].Prepared = measure.New(4, measure.Pound)
	}))
}

// long is a name as long as one may be.
const long = "The very long name of a batch that somebody typed in without stopping"

// odd are batches at the ends of what can be entered.
func odd(t testing.TB) class.Class {
	c := demo(t)
	c.Place.Freezer, c.Place.Altitude = measure.New(0.5, measure.CubicFoot), measure.New(19999, measure.Foot)
	c.Kit.Kettles = append(c.Kit.Kettles,
		class.Kettle{Name: long, Holds: measure.New(0.25, measure.Gallon), Across: measure.New(3.5, measure.Inch), Count: 1},
		class.Kettle{Name: "Vat", Holds: measure.New(100, measure.Gallon), Across: measure.New(30, measure.Inch), Count: 1})
	c.Kit.Burners = append(c.Kit.Burners, class.Burner{Name: "Nothing known", Count: 1})
	jar := batch.Packing{Container: batch.Jar, Size: batch.Quart, Mouth: reference.NarrowMouth, Count: 2000}
	box := batch.Packing{Container: batch.Box, Size: batch.Pint, Mouth: reference.WideMouth}
	one := func(treatment string, pounds float64, kettle, burner string, pack batch.Packing) class.Batch {
		return class.Batch{Name: long, Treatment: treatment, Prepared: measure.New(pounds, measure.Pound), Stations: 100, Kettle: kettle, Burner: burner, Pack: pack}
	}
	empty := one("snap-beans-cut-water", 1, "Vat", "Plug-in burner", box)
	empty.Prepared = measure.Mass{}
	c.Batches = []class.Batch{
		one("snap-beans-cut-water", 500, long, "Plug-in burner", jar),
		one("snap-beans-cut-water", 0.05, "Vat", "Range, large plate", box),
		one("spinach-leaves-water", 333.33, "Vat", "Nothing known", jar),
		one("broccoli-flowerets-steam", 500, long, "Plug-in burner", jar),
		one("broccoli-flowerets-steam", 0.05, "", "", box),
		one("okra-for-frying-large-water", 1, "", "", jar),
		one("corn-cream-style-water", 2.7182, "Station kettle", "Plug-in burner", jar),
		empty,
	}
	return c
}

func TestStandsWithOddBatches(t *testing.T) {
	for i, size := range sizes {
		c := odd(t)
		c.Units = []measure.System{measure.US, measure.Metric}[i%2]
		r := open(t, look.Light, c, size.Width, size.Height)
		for i := range c.Batches {
			r.session.Select(i)
			r.standsOnEachPage(t, fmt.Sprintf("odd-%.0f-%d", size.Width, i))
		}
		must(t, r.session.StartTrial(long))
		must(t, r.session.ChangeView("try", func(c *class.Class) { c.Batches[0], c.Batches[7] = c.Batches[6], c.Batches[4] }))
		r.standsOnEachPage(t, fmt.Sprintf("odd-%.0f-trial", size.Width))
	}
}

// TestStandsForEveryTreatment looks at the least window; the others are no
// narrower for their height.
func TestStandsForEveryTreatment(t *testing.T) {
	r := open(t, look.Light, demo(t), 800, 600)
	for i, treatment := range r.session.Table().Treatments {
		must(t, r.session.Change("treatment", func(c *class.Class) {
			c.Batches[0].Treatment = treatment.ID
			c.Units = []measure.System{measure.US, measure.Metric}[i%2]
		}))
		r.eachPage(func(page string) { r.stands(t, treatment.ID+" "+page) })
	}
}
