package exports

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"io/fs"
	"regexp"
	"slices"
)

// sortedZip gathers the parts of a workbook and writes them in the order of
// their names, so that the same workbook has the same bytes every time:
// excelize itself writes streamed sheets in the order of a map.
type sortedZip struct {
	to    io.Writer
	parts map[string]*bytes.Buffer
}

func newSortedZip(to io.Writer) *sortedZip {
	return &sortedZip{to, map[string]*bytes.Buffer{}}
}

// Create opens a part.
func (z *sortedZip) Create(name string) (io.Writer, error) {
	part := &bytes.Buffer{}
	z.parts[name] = part
	return part, nil
}

// AddFS is not needed for a new workbook.
func (z *sortedZip) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes the archive.
func (z *sortedZip) Close() error {
	names := make([]string, 0, len(z.parts))
	for name := range z.parts {
		names = append(names, name)
	}
	slices.Sort(names)
	out := zip.NewWriter(z.to)
	for _, name := range names {
		data := z.parts[name].Bytes()
		if name == "[Content_Types].xml" {
			data = sortDefaults(data)
		}
		// no time is set, so none is recorded
		w, err := out.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate})
		if err != nil {
			return err
		}
		if _, err := w.Write(data); err != nil {
			return err
		}
	}
	return out.Close()
}

var defaultElements = regexp.MustCompile(`(?:<Default [^>]*>(?:</Default>)?)+`)
var defaultElement = regexp.MustCompile(`<Default [^>]*>(?:</Default>)?`)

// sortDefaults puts the list of file endings in order; excelize writes it in
// the order of a map.
func sortDefaults(xml []byte) []byte {
	return defaultElements.ReplaceAllFunc(xml, func(run []byte) []byte {
		list := defaultElement.FindAll(run, -1)
		slices.SortFunc(list, bytes.Compare)
		return bytes.Join(list, nil)
	})
}
