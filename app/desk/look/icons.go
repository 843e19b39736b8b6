package look

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"example.org/kettleside/app/measure"
)

// stroke is the width of a line in an icon.
const stroke = 1.7

// Icon makes an image of an icon at a size of the type scale.
func Icon(res fyne.Resource, size float32) *canvas.Image {
	img := canvas.NewImageFromResource(res)
	img.FillMode = canvas.ImageFillContain
	img.SetMinSize(fyne.NewSquareSize(size))
	return img
}

// IconCrops is a pod with its seeds: the crop table.
func IconCrops() fyne.Resource {
	p := &pen{}
	p.arc(stroke, 20, 20, 17, 180, 270).arc(stroke, 3, 3, 17, 0, 90)
	p.dot(8.4, 8.4, 1.6).dot(12, 12, 1.9).dot(15.6, 15.6, 1.6)
	return p.icon("crops", Ink)
}

// IconClass is people round a table: the class.
func IconClass() fyne.Resource {
	p := &pen{}
	p.arc(stroke, 12, 7, 3.2, 0, 360).arc(stroke, 12, 19.5, 6.5, 180, 360)
	p.arc(stroke, 4.6, 9.5, 2.1, 0, 360).arc(stroke, 19.4, 9.5, 2.1, 0, 360)
	p.line(stroke, 2, 19.5, 22, 19.5)
	return p.icon("class", Ink)
}

// IconBatch is a kettle on its burner: a batch worked through.
func IconBatch() fyne.Resource {
	p := &pen{}
	p.line(stroke, 5, 8, 5, 17, 6.5, 18.5, 17.5, 18.5, 19, 17, 19, 8).line(stroke, 3, 8, 21, 8)
	p.line(stroke, 9, 5.5, 15, 5.5).line(stroke, 2, 11, 5, 11).line(stroke, 19, 11, 22, 11)
	p.line(stroke, 8, 21.5, 16, 21.5)
	return p.icon("batch", Ink)
}

// IconHandouts is a sheet with a turned corner: what is printed.
func IconHandouts() fyne.Resource {
	p := &pen{}
	p.loop(stroke, 5, 2.5, 15, 2.5, 19, 6.5, 19, 21.5, 5, 21.5).line(stroke, 15, 2.5, 15, 6.5, 19, 6.5)
	p.line(stroke, 8, 11, 16, 11).line(stroke, 8, 14.5, 16, 14.5).line(stroke, 8, 18, 13, 18)
	return p.icon("handouts", Ink)
}

// IconQuestions is a spoken question: a bubble with two lines.
func IconQuestions() fyne.Resource {
	p := &pen{}
	p.loop(stroke, 3, 3.5, 21, 3.5, 21, 16.5, 12, 16.5, 7.5, 21, 7.5, 16.5, 3, 16.5)
	p.line(stroke, 7, 8, 17, 8).line(stroke, 7, 12, 13.5, 12)
	return p.icon("questions", Ink)
}

// IconSeverity is the shape of a finding: eight sides for stop, three for
// mind, round for note.
func IconSeverity(s measure.Severity) fyne.Resource {
	switch s {
	case measure.Stop:
		p := &pen{}
		p.loop(stroke, regular8(12, 12, 10)...).line(2.4, 7.5, 12, 16.5, 12)
		return p.icon("stop", Stop)
	case measure.Mind:
		p := &pen{}
		p.loop(stroke, 12, 3, 22, 20.5, 2, 20.5).line(2.2, 12, 9.5, 12, 14).dot(12, 17.4, 1.3)
		return p.icon("mind", Mind)
	default:
		p := &pen{}
		p.arc(stroke, 12, 12, 9.6, 0, 360).line(2.2, 12, 11, 12, 16.5).dot(12, 7.4, 1.4)
		return p.icon("note", Note)
	}
}

func regular8(x, y, r float64) []float64 {
	var points []float64
	for i := range 8 {
		a := (22.5 + 45*float64(i)) * math.Pi / 180
		points = append(points, x+r*math.Cos(a), y+r*math.Sin(a))
	}
	return points
}

// IconCaution is the sign that the face has no glyph for.
func IconCaution() fyne.Resource {
	p := &pen{}
	p.loop(stroke, 12, 3, 22, 20.5, 2, 20.5).line(2.2, 12, 9.5, 12, 14).dot(12, 17.4, 1.3)
	return p.icon("caution", Ink)
}

// IconEdited is a pencil: a value changed by the educator.
func IconEdited() fyne.Resource {
	p := &pen{}
	p.loop(stroke, 4, 20, 5.5, 15, 16, 4.5, 19.5, 8, 9, 18.5).line(stroke, 13.5, 7, 17, 10.5)
	return p.icon("edited", Edited)
}

// IconAdd is a plus.
func IconAdd() fyne.Resource {
	return (&pen{}).line(2, 12, 5, 12, 19).line(2, 5, 12, 19, 12).icon("add", Ink)
}

// IconRemove is a minus.
func IconRemove() fyne.Resource { return (&pen{}).line(2, 5, 12, 19, 12).icon("remove", Ink) }

// IconUp and IconDown move a line in a list.
func IconUp() fyne.Resource {
	return (&pen{}).line(2, 12, 5, 12, 19).line(2, 6, 11, 12, 5, 18, 11).icon("up", Ink)
}

// IconDown moves a line down in a list.
func IconDown() fyne.Resource {
	return (&pen{}).line(2, 12, 5, 12, 19).line(2, 6, 13, 12, 19, 18, 13).icon("down", Ink)
}

// IconCopy is two sheets: a duplicate.
func IconCopy() fyne.Resource {
	p := &pen{}
	p.loop(stroke, 4, 4, 15, 4, 15, 16, 4, 16).line(stroke, 8, 19.5, 19, 19.5, 19, 8)
	return p.icon("copy", Ink)
}
