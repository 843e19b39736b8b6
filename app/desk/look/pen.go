package look

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// pen draws icons on a field of 24 by 24 as one filled path, because the toolkit
// gives an icon its colour through the fill and takes long over many shapes.
// All parts of the path turn the same way, so that overlaps stay filled.
type pen struct{ path strings.Builder }

// line is a stroke with round ends.
func (p *pen) line(width float64, points ...float64) *pen {
	for i := 0; i+3 < len(points); i += 2 {
		x1, y1, x2, y2 := points[i], points[i+1], points[i+2], points[i+3]
		length := math.Hypot(x2-x1, y2-y1)
		nx, ny := -(y2-y1)/length*width/2, (x2-x1)/length*width/2
		p.area(x1+nx, y1+ny, x2+nx, y2+ny, x2-nx, y2-ny, x1-nx, y1-ny)
	}
	for i := 0; i+1 < len(points); i += 2 {
		p.dot(points[i], points[i+1], width/2)
	}
	return p
}

// loop is a closed stroke.
func (p *pen) loop(width float64, points ...float64) *pen {
	return p.line(width, append(points, points[0], points[1])...)
}

// area is a filled polygon.
func (p *pen) area(points ...float64) *pen {
	if turn(points) < 0 {
		for i, j := 0, len(points)-2; i < j; i, j = i+2, j-2 {
			points[i], points[i+1], points[j], points[j+1] = points[j], points[j+1], points[i], points[i+1]
		}
	}
	for i := 0; i+1 < len(points); i += 2 {
		step := "L"
		if i == 0 {
			step = "M"
		}
		fmt.Fprintf(&p.path, "%s%.2f %.2f", step, points[i], points[i+1])
	}
	p.path.WriteString("Z")
	return p
}

// turn is twice the area of a polygon, negative where it turns the other way.
func turn(points []float64) float64 {
	sum, n := 0.0, len(points)
	for i := 0; i+1 < n; i += 2 {
		j := (i + 2) % n
		sum += points[i]*points[j+1] - points[j]*points[i+1]
	}
	return sum
}

// dot is a disc, as a polygon with as many sides as nobody sees.
func (p *pen) dot(x, y, r float64) *pen {
	sides := 10
	if r > 1.5 {
		sides = 20
	}
	var points []float64
	for i := range sides {
		a := 2 * math.Pi * float64(i) / float64(sides)
		points = append(points, x+r*math.Cos(a), y+r*math.Sin(a))
	}
	return p.area(points...)
}

// arc is a stroke along a circle, from and to in degrees, clockwise from the
// right.
func (p *pen) arc(width, x, y, r, from, to float64) *pen {
	steps := max(2, int(math.Abs(to-from)/12))
	var points []float64
	for i := 0; i <= steps; i++ {
		a := (from + (to-from)*float64(i)/float64(steps)) * math.Pi / 180
		points = append(points, x+r*math.Cos(a), y+r*math.Sin(a))
	}
	return p.line(width, points...)
}

// icon is the drawing as a resource that takes a colour of the theme.
func (p *pen) icon(name string, ink fyne.ThemeColorName) fyne.Resource {
	svg := `<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="#000000" d="` + p.path.String() + `"/></svg>`
	return theme.NewColoredResource(fyne.NewStaticResource("kettleside-"+name+".svg", []byte(svg)), ink)
}
