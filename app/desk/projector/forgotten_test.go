package projector

import (
	"os"
	"os/exec"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
)

// The toolkit forgets how widgets are drawn that were not seen for a minute,
// with the theme laid over them. A page that was not seen for so long, and a
// text on the page that was hidden for so long, are shown as they were before.
// It is asked of a process of its own, in which the minute is shorter.
func TestForgotten(t *testing.T) {
	const minute = "FYNE_CACHE"
	if os.Getenv(minute) == "" {
		again := exec.Command(os.Args[0], "-test.run=^TestForgotten$")
		again.Env = append(os.Environ(), minute+"=300ms")
		if out, err := again.CombinedOutput(); err != nil {
			t.Errorf("%v: %s", err, out)
		}
		return
	}
	r := open(t, look.Light, demo(t), 1024, 768)
	r.view.Next()
	kettle := test.RenderToMarkup(r.window.Canvas())
	r.view.Previous()
	before := test.RenderToMarkup(r.window.Canvas())
	r.session.Select(3)
	cooked := test.RenderToMarkup(r.window.Canvas())
	number := r.view.open.(*treatment).minutes.number.value.text // hidden: pumpkin goes by words
	drawn := test.WidgetRenderer(number)

	time.Sleep(400 * time.Millisecond)
	equal(t, "what stands unchanged", test.RenderToMarkup(r.window.Canvas()), cooked) // keeps alive what is seen
	r.window.Canvas().Capture()
	if test.WidgetRenderer(number) == drawn {
		t.Fatal("nothing was forgotten")
	}
	r.session.Select(0)
	equal(t, "the text that was hidden", test.RenderToMarkup(r.window.Canvas()), before)
	r.view.Next()
	equal(t, "the page that was not seen", test.RenderToMarkup(r.window.Canvas()), kettle)
}
