package pipeline

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The package comments of the two largest rooms are their tables of contents: each names every
// file once, by its name or with others of one beginning, and none that is not there.
func TestEveryFileIsNamed(t *testing.T) {
	for _, room := range []struct{ dir, from, to string }{
		{".", "# The files", "// # "},
		{"sheet", "", "\npackage "},
	} {
		doc, err := os.ReadFile(filepath.Join(room.dir, "doc.go"))
		if err != nil {
			t.Fatal(err)
		}
		_, list, found := strings.Cut(string(doc), room.from)
		if !found {
			t.Fatalf("%s/doc.go has no %q", room.dir, room.from)
		}
		list, _, _ = strings.Cut(list, room.to)
		names := regexp.MustCompile(`\b[a-z_0-9]+(?:\*)?\.go\b`).FindAllString(list, -1)
		files, err := filepath.Glob(filepath.Join(room.dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		used := map[string]bool{}
		for _, f := range files {
			f = filepath.Base(f)
			if strings.HasSuffix(f, "_test.go") || f == "doc.go" {
				continue
			}
			n := 0
			for _, name := range names {
				if ok, err := filepath.Match(name, f); err == nil && ok {
					n++
					used[name] = true
				}
			}
			if n != 1 {
				t.Errorf("%s/doc.go names %s %d times; name it once, under the step that it belongs to", room.dir, f, n)
			}
		}
		for _, name := range names {
			if !used[name] {
				t.Errorf("%s/doc.go names %s, which is not there", room.dir, name)
			}
		}
	}
}
