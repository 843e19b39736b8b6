// Package class is the class as a document: what an educator types in, its
// undo history, its file, and Work, the one pure function that computes
// everything that can be computed about it.
//
// A class file (NAME.kettleside) is JSON with quantities as people write them
// ("3 lb", "1 1/2 gal", "5,000 ft"), so that a colleague can read and compare
// it. Reading reports every problem it finds with its field, what stands there
// and what is allowed.
package class

import (
	"slices"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
)

// Schema is the version of the class file that this program writes.
const Schema = 2

// Class is everything that an educator enters about one class. It is a value:
// Clone makes an independent copy, and nothing in it is computed.
type Class struct {
	Schema  int            `json:"schema"`
	Title   string         `json:"title"`
	Date    string         `json:"date"`    // year-month-day, or "" where not fixed
	Edition string         `json:"edition"` // the table it was planned with
	Units   measure.System `json:"units"`
	Place   Place          `json:"place"`
	People  People         `json:"people"`
	Kit     Kit            `json:"kit"`
	Batches []Batch        `json:"batches"`
	Notes   string         `json:"notes"`
}

// Place is where the class is held.
type Place struct {
	Name     string              `json:"name"`
	Altitude measure.Length      `json:"altitude"`
	Tap      measure.Temperature `json:"tap"`     // tap water
	Freezer  measure.Volume      `json:"freezer"` // capacity of the freezer that takes the packs
}

// People are those who come and those who help.
type People struct {
	Headcount  int    `json:"headcount"`
	PerStation int    `json:"perStation"` // at most so many share one station
	Educator   string `json:"educator"`
	Agency     string `json:"agency"`   // whose table and advice stand above ours
	HelpLine   string `json:"helpLine"` // whom a participant asks afterwards
	Roles      []Role `json:"roles"`
}

// Role is one helper's task.
type Role struct {
	Name string `json:"name"`
	Does string `json:"does"`
}

// Kit is what stands in the kitchen.
type Kit struct {
	Kettles   []Kettle       `json:"kettles"`
	Burners   []Burner       `json:"burners"`
	Baths     int            `json:"baths"`     // ice baths
	BathWater measure.Volume `json:"bathWater"` // cold water in one bath, before the ice
	IceBag    measure.Mass   `json:"iceBag"`    // ice is bought in bags of this weight
}

// Kettle is one kind of kettle.
type Kettle struct {
	Name   string         `json:"name"`
	Holds  measure.Volume `json:"holds"`  // water it holds with room to boil
	Across measure.Length `json:"across"` // inside width of its basket; counts for steam
	Count  int            `json:"count"`
}

// Burner is one kind of burner.
type Burner struct {
	Name  string       `json:"name"`
	Heat  batch.Burner `json:"heat"` // what is known of its heat
	Count int          `json:"count"`
}

// Batch is what one station works through with one treatment.
type Batch struct {
	Name      string       `json:"name"`
	Treatment string       `json:"treatment"` // id in the crop table
	Prepared  measure.Mass `json:"prepared"`  // trimmed, ready for the kettle, per station
	Stations  int          `json:"stations"`  // how many stations work this batch
	Kettle    string       `json:"kettle"`    // Kettle.Name
	Burner    string       `json:"burner"`    // Burner.Name

	// Start is the temperature of the vegetables when they go in; not given:
	// guessed.
	Start measure.Temperature `json:"start"`
	// Ice is what the bath of one station gets for the batch; not given: by the
	// rule, and not in the file.
	Ice  measure.Mass  `json:"ice,omitzero"`
	Pack batch.Packing `json:"pack"`
}

// New is an empty class with the settings that most classes start from.
func New(edition string) Class {
	return Class{
		Schema: Schema, Edition: edition, Units: measure.US,
		People: People{Headcount: 8, PerStation: 4},
		Kit: Kit{
			Kettles: []Kettle{{Name: "Kettle", Holds: measure.New(4, measure.Quart), Count: 2}},
			Burners: []Burner{{Name: "Burner", Count: 2}},
			Baths:   2, IceBag: measure.New(10, measure.Pound),
		},
	}
}

// Clone is a copy that shares nothing with c.
func (c Class) Clone() Class {
	c.People.Roles = slices.Clone(c.People.Roles)
	c.Kit.Kettles = slices.Clone(c.Kit.Kettles)
	c.Kit.Burners = slices.Clone(c.Kit.Burners)
	c.Batches = slices.Clone(c.Batches)
	return c
}

// KettleNamed is the kettle of that name in the kit.
func (k Kit) KettleNamed(name string) (Kettle, bool) {
	for _, kettle := range k.Kettles {
		if kettle.Name == name {
			return kettle, true
		}
	}
	return Kettle{}, false
}

// BurnerNamed is the burner of that name in the kit.
func (k Kit) BurnerNamed(name string) (Burner, bool) {
	for _, burner := range k.Burners {
		if burner.Name == name {
			return burner, true
		}
	}
	return Burner{}, false
}

// KettleCount and BurnerCount are how many there are of all kinds.
func (k Kit) KettleCount() int {
	n := 0
	for _, kettle := range k.Kettles {
		n += kettle.Count
	}
	return n
}

func (k Kit) BurnerCount() int {
	n := 0
	for _, burner := range k.Burners {
		n += burner.Count
	}
	return n
}
