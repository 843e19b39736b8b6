package class

import (
	"bytes"
	"strings"
	"testing"

	"example.org/kettleside/app/measure"
)

// The ice of a batch is kept as it was written; without it the file has no such
// field, so that older copies of the program still read it.
func TestIceInTheFile(t *testing.T) {
	c := demo(t)
	plain, err := Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(plain, []byte(`"ice"`)) {
		t.Error("a class without ice has a field for it")
	}
	c.Batches[0].Ice = measure.New(4, measure.Pound)
	data, err := Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(data, []byte(`"ice": "4 lb"`)) {
		t.Errorf("the ice is not there as people write it:\n%s", data)
	}
	back, err := Read(bytes.NewReader(data), "with ice")
	if err != nil || back.Batches[0] != c.Batches[0] {
		t.Errorf("read back %+v, %v", back.Batches[0], err)
	}
	for typed, says := range map[string]string{"much": "no number", "900 lb": "too much", "-1 lb": "too little", "3 gal": "does not fit"} {
		bad := bytes.Replace(data, []byte(`"ice": "4 lb"`), []byte(`"ice": "`+typed+`"`), 1)
		if _, err := Read(bytes.NewReader(bad), "with ice"); err == nil || !strings.Contains(err.Error(), "batches[0].ice") || !strings.Contains(err.Error(), says) {
			t.Errorf("%q is answered with %v", typed, err)
		}
	}
}
