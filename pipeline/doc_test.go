package pipeline

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The package comment is the table of contents: under "The files" it names every file once, by
// its name or with others of one beginning, and none that is not there.
func TestEveryFileIsNamed(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	_, list, found := strings.Cut(string(doc), "# The files")
	if !found {
		t.Fatal("doc.go has no list of files")
	}
	list, _, _ = strings.Cut(list, "// # ")
	names := regexp.MustCompile(`\b[a-z_]+(?:\*)?\.go\b`).FindAllString(list, -1)
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, f := range files {
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
			t.Errorf("doc.go names %s %d times; name it once, under the work that it belongs to", f, n)
		}
	}
	for _, name := range names {
		if !used[name] {
			t.Errorf("doc.go names %s, which is not there", name)
		}
	}
}
