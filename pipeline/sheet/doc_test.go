package sheet

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The package comment is the table of contents: it names every file once, and none that is
// not there.
func TestEveryFileIsNamed(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]int{}
	for _, m := range regexp.MustCompile(`\b[a-z_0-9]+\.go\b`).FindAllString(string(doc), -1) {
		named[m]++
	}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") || f == "doc.go" {
			continue
		}
		if n := named[f]; n != 1 {
			t.Errorf("doc.go names %s %d times; name it once, under the step that it belongs to", f, n)
		}
		delete(named, f)
	}
	for f := range named {
		t.Errorf("doc.go names %s, which is not there", f)
	}
}
