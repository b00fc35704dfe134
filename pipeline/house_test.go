package pipeline

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// allowed says which rooms of the house each room may import; a trailing
// slash stands for a room and all below it.
var allowed = map[string][]string{
	"cmd":               {"pipeline", "pipeline/", "reports", "reports/", "sql"},
	"reports":           {"reports/", "pipeline/store", "pipeline/place", "pipeline/unit", "pipeline/age", "pipeline/text", "pipeline/insight/standing", "pipeline/insight/league", "sql"},
	"pipeline":          {"pipeline/", "sql"},
	"pipeline/sheet":    {"pipeline/place", "pipeline/unit", "pipeline/text"},
	"pipeline/record":   {"pipeline/record/", "pipeline/place", "pipeline/unit", "pipeline/age", "pipeline/text", "pipeline/parallel"},
	"pipeline/insight":  {"pipeline/insight/", "pipeline/place", "pipeline/unit", "pipeline/age", "pipeline/parallel"},
	"pipeline/store":    {"pipeline/place", "pipeline/unit", "sql"},
	"pipeline/scenario": {"pipeline/scenario/", "pipeline/unit", "pipeline/age", "pipeline/place"},
	"pipeline/age":      {"pipeline/unit"},
	"pipeline/place":    {},
	"pipeline/unit":     {},
	"pipeline/text":     {},
	"pipeline/parallel": {},
	"sql":               {},
}

// pure rooms have no database, no files and no clock.
var pure = map[string][]string{
	"pipeline/insight": {"database/sql", "os", "time", "io/ioutil", "github.com/marcboeker/go-duckdb"},
	"pipeline/record":  {"database/sql", "os", "github.com/marcboeker/go-duckdb"},
	"pipeline/sheet":   {"database/sql", "github.com/marcboeker/go-duckdb"},
}

// TestHouse parses the imports of every file and fails where a room reaches
// into one that it may not know.
func TestHouse(t *testing.T) {
	files := 0
	err := filepath.WalkDir("..", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && p != "..") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return nil
		}
		files++
		room := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(filepath.ToSlash(p), "../")))
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		rule := room
		for rule != "." {
			if _, ok := allowed[rule]; ok {
				break
			}
			rule = filepath.ToSlash(filepath.Dir(rule))
		}
		if rule == "." {
			t.Errorf("%s: room %q is on no list; add it to the house", p, room)
			return nil
		}
		for _, im := range f.Imports {
			path, _ := strconv.Unquote(im.Path.Value)
			for _, bad := range pure[rule] {
				if path == bad {
					t.Errorf("%s imports %s; %s is pure", p, path, rule)
				}
			}
			if path == "github.com/marcboeker/go-duckdb" && room != "pipeline/store" {
				t.Errorf("%s imports the database driver; only pipeline/store may", p)
			}
			inner, ours := strings.CutPrefix(path, "lapwing/")
			if !ours {
				continue
			}
			ok := inner == rule || strings.HasPrefix(inner, rule+"/")
			for _, a := range allowed[rule] {
				ok = ok || inner == a || strings.HasSuffix(a, "/") && strings.HasPrefix(inner, a)
			}
			if !ok {
				t.Errorf("%s imports %s; %s may not know it", p, inner, rule)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 20 {
		t.Fatalf("only %d files were looked at", files)
	}
}

// TestTopLevel keeps the top of the house to what belongs there.
func TestTopLevel(t *testing.T) {
	want := map[string]bool{"cmd": true, "pipeline": true, "sql": true, "reports": true, "testdata": true, "go.mod": true, "go.sum": true,
		"Makefile": true, "README.md": true, "DEVELOPERS.md": true, ".ci": true, ".gitignore": true, ".git": true,
		"bin": true, "demo": true, "bench": true} // the last three are made by make and ignored by git
	entries, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !want[e.Name()] {
			t.Errorf("%s does not belong at the top", e.Name())
		}
	}
}
