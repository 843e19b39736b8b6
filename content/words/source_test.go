package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
)

// saying are the functions whose first argument is a text for a person.
var saying = []string{"Say", "Key", "Later", "Errorf"}

// said is a text in the code.
type said struct{ text, at string }

// inCode lists every text that the code says.
func inCode(t *testing.T) []said {
	t.Helper()
	var all []said
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if name := d.Name(); name != ".." && strings.HasPrefix(name, ".") || name == "testdata" {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		some, err := inFile(path)
		all = append(all, some...)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func inFile(path string) ([]said, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var all []said
	ast.Inspect(file, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return true
		}
		if from, name := called(call.Fun); !slices.Contains(saying, name) || name == "Errorf" && from != "words" {
			return true
		}
		if text, ok := literal(call.Args[0]); ok && text != "" {
			all = append(all, said{text, files.Position(call.Pos()).String()})
		}
		return true
	})
	return all, nil
}

// called is the name of a function, and what stands before its point.
func called(f ast.Expr) (from, name string) {
	switch f := f.(type) {
	case *ast.Ident:
		return "", f.Name
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			from = x.Name
		}
		return from, f.Sel.Name
	}
	return "", ""
}

// literal is the value of a string literal, or of several joined.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		left, ok := literal(e.X)
		right, also := literal(e.Y)
		return left + right, ok && also
	}
	return "", false
}

// What the code says is said in every language.
func TestCodeIsTranslated(t *testing.T) {
	dictionary := map[string]bool{}
	all, err := words.Texts()
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range all {
		dictionary[x.English] = true
	}
	texts := inCode(t)
	if len(texts) < 100 {
		t.Errorf("only %d texts found in the code: the search is broken", len(texts))
	}
	for _, s := range texts {
		if !dictionary[s.text] {
			t.Errorf("%s: not translated: %q", s.at, s.text)
		}
	}
}

// A translation that nothing says any more is removed.
func TestTranslationsAreUsed(t *testing.T) {
	used := map[string]bool{}
	for _, s := range inCode(t) {
		used[s.text] = true
	}
	for _, text := range inTable(t) {
		used[text] = true
	}
	all, err := words.Texts()
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range all {
		if !used[x.English] {
			t.Errorf("%s:%d: nothing says %q", x.File, x.Line, x.English)
		}
	}
}
