package exports

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"sync"

	"example.org/kettleside/content/words"
)

// Grid is a sheet of labels, named by the size of a label: no product is.
type Grid struct {
	ID            string
	Paper         Paper
	Size          string // "2 5/8 x 1 in"
	Columns, Rows int

	// all lengths in millimetres, from the left and top edge of the paper
	WidthMm, HeightMm  float64
	LeftMm, TopMm      float64
	RightMm, BottomMm  float64 // what is left over
	PitchXMm, PitchYMm float64 // from one label to the next
	Basis              string  // how the numbers were found: "read"
	Source             string
}

// Name is the grid in words: "30 a sheet, 2 5/8 x 1 in, letter".
func (g Grid) Name() string { return g.Say(nil) }

// Say is the grid in words by a voice.
func (g Grid) Say(v *words.Voice) string {
	return v.Say("%d a sheet, %s, %s", g.Columns*g.Rows, v.Amount(g.Size), v.Say(paperNames[g.Paper]))
}

//go:embed data/labels.csv
var labelData []byte

var grids = sync.OnceValue(func() []Grid {
	list, err := readGrids(labelData)
	if err != nil { // the file is part of the program; a test reads it
		panic("exports: labels.csv: " + err.Error())
	}
	return list
})

// Grids lists the label sheets that can be printed.
func Grids() []Grid { return slices.Clone(grids()) }

func gridNamed(id string) (Grid, bool) {
	for _, g := range grids() {
		if g.ID == id {
			return g, true
		}
	}
	return Grid{}, false
}

// firstGrid is the id of the usual grid for a paper.
func firstGrid(p Paper) string {
	for _, g := range grids() {
		if g.Paper == p {
			return g.ID
		}
	}
	return ""
}

// readGrids reads the label table: strict about its header and its numbers.
func readGrids(data []byte) ([]Grid, error) {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return nil, err
	}
	header := []string{"id", "paper", "size", "columns", "rows", "width_mm", "height_mm", "left_mm", "top_mm", "right_mm", "bottom_mm", "pitch_x_mm", "pitch_y_mm", "basis", "source"}
	if len(rows) == 0 || !slices.Equal(rows[0], header) {
		return nil, fmt.Errorf("the header is not %v", header)
	}
	var list []Grid
	for i, r := range rows[1:] {
		g := Grid{ID: r[0], Paper: Paper(r[1]), Size: r[2], Basis: r[13], Source: r[14]}
		numbers := []*float64{&g.WidthMm, &g.HeightMm, &g.LeftMm, &g.TopMm, &g.RightMm, &g.BottomMm, &g.PitchXMm, &g.PitchYMm}
		for j, n := range numbers {
			if *n, err = strconv.ParseFloat(r[5+j], 64); err != nil {
				return nil, fmt.Errorf("line %d: %s: %w", i+2, header[5+j], err)
			}
		}
		for j, n := range []*int{&g.Columns, &g.Rows} {
			if *n, err = strconv.Atoi(r[3+j]); err != nil {
				return nil, fmt.Errorf("line %d: %s: %w", i+2, header[3+j], err)
			}
		}
		list = append(list, g)
	}
	return list, nil
}
