package reference_test

import (
	"fmt"
	"time"

	"example.org/kettleside/reference"
)

func ExampleTable() {
	table := reference.Shipped()
	x, _ := table.Treatment("broccoli-flowerets-steam")
	s, _ := table.Source(x.Source)
	fmt.Printf("%s, %s: %g minutes, counted %s\n", x.Cut, x.Size, x.Minutes, x.ClockStart.Says())
	fmt.Printf("%s (%s), %s\n", s.Publisher, x.Source, x.Standing)
	for _, a := range x.Also {
		if !a.Agrees {
			fmt.Printf("%s prints %g\n", a.Source, a.Minutes)
		}
	}
	// Output:
	// flowerets, up to 1 1/2 in across: 5 minutes, counted at once, when the lid goes on
	// North Dakota State University Extension (NDSU_FN403), read
	// AIB410_117 prints 3
}

func ExampleTable_With() {
	table := reference.Shipped()
	when := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	_, err := table.With([]reference.Edit{
		table.NewEdit("snap-beans-cut-water", reference.FieldMinutes, "2", "to save gas", "A. Teacher", when),
	})
	fmt.Println(err)
	edited, _ := table.With([]reference.Edit{
		table.NewEdit("snap-beans-cut-water", reference.FieldMinutes, "4", "our county's sheet", "A. Teacher", when),
	})
	x, _ := edited.Treatment("snap-beans-cut-water")
	fmt.Println(x.Minutes, x.Standing, "instead of", x.Changed[reference.FieldMinutes].Old)
	// Output:
	// Snap beans, green or wax (whole or cut 2 to 4 in): you typed "2", but the shortest published time is 3 min (University of Maine Extension, Tips for Freezing Green Beans; University of Maine, Tips on freezing green beans; and 5 more) and published times are never shortened.
	// 4 entered here instead of 3
}

func ExampleTable_Rows() {
	table := reference.Shipped()
	rows, _ := table.Rows(reference.View{
		Group: "cabbage family", Text: "flowerets",
		Sort: []reference.SortBy{{Column: reference.ByMinutes, Descending: true}},
	})
	fmt.Println(table.IDs(rows))
	// Output:
	// [broccoli-flowerets-steam broccoli-flowerets-water]
}
