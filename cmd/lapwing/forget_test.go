package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// naming lists the files below a folder that hold a text in any capitals,
// inside workbooks as well.
func naming(t *testing.T, dir, text string) (found []string) {
	t.Helper()
	text = strings.ToLower(text)
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		all := [][]byte{data}
		if zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data))); err == nil {
			for _, f := range zr.File {
				r, err := f.Open()
				if err != nil {
					return err
				}
				raw, err := io.ReadAll(r)
				r.Close()
				if err != nil {
					return err
				}
				all = append(all, raw)
			}
		}
		for _, b := range all {
			if strings.Contains(strings.ToLower(string(b)), text) {
				rel, _ := filepath.Rel(dir, path)
				found = append(found, filepath.ToSlash(rel))
				break
			}
		}
		return nil
	})
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return found
}

// From the weekly job to the erased person: neither the archive, nor reports
// written before or after, nor exports name her; what is the user's is listed.
func TestForgetCommand(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(14),
		"sheets/alder-bank_2026-01-10.csv": strings.Replace(weekLater(fieldSheet(14)), "21:09", "20:58", 1),
	})
	const name = "Edie Moss"
	must(t, dir, "run")
	if found := naming(t, filepath.Join(dir, "reports"), name); len(found) < 4 {
		t.Fatalf("the reports before name her in %q only", found)
	}
	o := lapwing(t, dir, "forget", name)
	if o.code != exitFailed {
		t.Errorf("without --yes: exit %d", o.code)
	}
	wants(t, o.out, "the name on 2 results in 2 sheet copies", "Nothing was changed.")
	if len(naming(t, filepath.Join(dir, "archive", "sheets"), name)) != 2 {
		t.Error("something was changed without --yes")
	}

	edited := filepath.Join(dir, "reports", "note.txt")
	write(t, dir, map[string]string{"reports/note.txt": "Thanks to " + name})
	o = must(t, dir, "forget", name, "--yes")
	wants(t, o.out, "Erased. 2 results kept place and time", "What lapwing can't recall", edited, filepath.Join(dir, "sheets", "alder-bank_2026-01-03.csv"), "backups")
	for _, part := range []string{"archive", "reports"} {
		found := slices.DeleteFunc(naming(t, filepath.Join(dir, part), name), func(f string) bool { return f == "note.txt" })
		if len(found) > 0 {
			t.Errorf("%s: the name is still in %q", part, found)
		}
	}
	// What stood beside the name is not told again as a change.
	if len(naming(t, filepath.Join(dir, "reports"), "shown otherwise")) == 0 || len(naming(t, filepath.Join(dir, "reports"), "Why: a name is no longer shown.")) == 0 {
		t.Error("the reports don't say that a line is shown otherwise")
	}
	if found := naming(t, filepath.Join(dir, "reports"), "name put right"); len(found) > 0 {
		t.Errorf("%q tell what changed about the erased", found)
	}
	o = must(t, dir, "run")
	wants(t, o.out, "Nothing has changed since the last time")
	// nor does it come back by a correction
	o = lapwing(t, dir, "correct", "alder-bank", "2026-01-03", "1", "--name", name, "--yes")
	wants(t, o.errOut, "a person of this name asked to be erased", "forgotten.csv")
	if o.code != exitFailed || len(naming(t, filepath.Join(dir, "archive"), name)) > 0 {
		t.Errorf("exit %d, an erased name is in the archive again", o.code)
	}
	write(t, dir, map[string]string{"new/alder-bank_2026-01-17.csv": fieldSheet(8)})
	wants(t, must(t, dir, "load", filepath.Join(dir, "new")).out, "1 line kept without a name")
	if err := os.RemoveAll(filepath.Join(dir, "new")); err != nil {
		t.Fatal(err)
	}
	for _, f := range []string{"csv", "parquet"} {
		out := filepath.Join(t.TempDir(), f)
		must(t, dir, "export", out, "--private", "--format", f)
		if found := naming(t, out, name); len(found) > 0 {
			t.Errorf("%s export: the name is in %q", f, found)
		}
	}
	must(t, dir, "check")
	must(t, dir, "rebuild")
	must(t, dir, "weekly", "--course", "alder-bank", "--date", "2026-01-10")
	if found := slices.DeleteFunc(naming(t, dir, name), func(f string) bool { return f == "reports/note.txt" || strings.HasPrefix(f, "sheets/") }); len(found) > 0 {
		t.Errorf("after a rebuild the name is in %q", found)
	}
	if o := lapwing(t, dir, "forget", name); o.code != exitFailed || !strings.Contains(o.errOut, "nobody called") {
		t.Errorf("a second time: exit %d %s", o.code, o.errOut)
	}

	o = must(t, dir, "--json", "forget", "Finn Moss", "--yes")
	var got struct {
		Done    bool
		Results int
	}
	if err := json.Unmarshal([]byte(o.out), &got); err != nil || !got.Done || got.Results != 3 {
		t.Errorf("--json: %v %+v\n%s", err, got, o.out)
	}
}
