package pipeline

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strings"

	"lapwing/pipeline/store"
)

// FindSheets lists the files that paths stand for, as the function of this name does.
// A path that is not here is looked for in the inbox, then among the sheets of the
// archive: a question names a sheet as the archive has it, and its answer works from any
// folder, and where the file itself is gone; the archive's copy is read then.
func (s Settings) FindSheets(paths []string) (files, names []string, err error) {
	var here, keptFiles, keptNames []string
	var ledger []store.Entry
	archive := store.Archive{Dir: s.Archive}
	for _, p := range paths {
		if isThere(p) || filepath.IsAbs(p) {
			here = append(here, p)
			continue
		}
		if q := filepath.Join(s.Inbox, p); isThere(q) {
			here = append(here, q)
			continue
		}
		if ledger == nil {
			if ledger, err = archive.Ledger(); err != nil {
				return nil, nil, err
			}
		}
		e, ok := askedOf(ledger, p)
		if !ok {
			here = append(here, p)
			continue
		}
		keptFiles, keptNames = append(keptFiles, archive.Copy(e)), append(keptNames, e.Path)
	}
	if files, names, err = FindSheets(here); err != nil {
		return nil, nil, err
	}
	files, names = inNameOrder(append(files, keptFiles...), append(names, keptNames...))
	return files, names, nil
}

// askedOf is the sheet of the ledger that somebody who answers a question means by a
// path: one that waits before any other, and else the latest.
func askedOf(ledger []store.Entry, name string) (found store.Entry, ok bool) {
	name = path.Clean(filepath.ToSlash(name))
	for _, e := range ledger {
		if e.Path == name && (!ok || e.State == store.Waiting || found.State != store.Waiting) {
			found, ok = e, true
		}
	}
	return found, ok
}

func isThere(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}

// FindSheets lists the files that paths stand for: files, folders with all
// that is in them, or patterns. Names come in natural order. Helper files
// that spreadsheet programs and file managers leave about are passed over.
func FindSheets(paths []string) ([]string, []string, error) {
	var files, names []string
	add := func(root, p string) {
		if !helperFile(filepath.Base(p)) {
			files = append(files, p)
			names = append(names, relative(root, p))
		}
	}
	for _, p := range paths {
		st, err := os.Stat(p)
		if err != nil {
			matches, globErr := filepath.Glob(p)
			if globErr != nil || len(matches) == 0 {
				return nil, nil, fmt.Errorf("%s: there is no such file or folder", p)
			}
			for _, m := range matches {
				add(m, m)
			}
			continue
		}
		if !st.IsDir() {
			add(p, p)
			continue
		}
		if err := lookThrough(p, map[string]bool{}, func(q string) { add(p, q) }); err != nil {
			return nil, nil, fmt.Errorf("can't look through %s: %w", p, err)
		}
	}
	files, names = inNameOrder(files, names)
	return files, names, nil
}

// inNameOrder sorts files by the names of their sheets.
func inNameOrder(files, names []string) (f2, n2 []string) {
	order := make([]int, len(files))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool {
		x, y := order[a], order[b]
		if names[x] == names[y] {
			return files[x] < files[y]
		}
		return nameLess(names[x], names[y])
	})
	for _, i := range order {
		f2, n2 = append(f2, files[i]), append(n2, names[i])
	}
	return f2, n2
}

// lookThrough calls f for every file below a folder, and for folders that can't
// be looked into, whose reading says why. Links are followed, each folder once.
func lookThrough(dir string, seen map[string]bool, f func(path string)) error {
	real, err := filepath.EvalSymlinks(dir)
	if err != nil || seen[real] {
		return err
	}
	seen[real] = true
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		p := filepath.Join(dir, e.Name())
		st, err := os.Stat(p)
		switch {
		case err == nil && st.IsDir() && strings.HasPrefix(e.Name(), "."):
		case err == nil && st.IsDir():
			if lookThrough(p, seen, f) != nil {
				f(p)
			}
		case err != nil, st.Mode().IsRegular():
			f(p)
		}
	}
	return nil
}

// helperFile says whether a name is one of the files that programs leave
// beside sheets and that never hold results.
func helperFile(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") || strings.EqualFold(name, "thumbs.db") || strings.EqualFold(name, "desktop.ini")
}

// nameLess compares the names of sheets without their endings first: "3 May.csv"
// comes before "3 May (corrected).csv".
func nameLess(a, b string) bool {
	x, y := strings.TrimSuffix(a, path.Ext(a)), strings.TrimSuffix(b, path.Ext(b))
	if x != y {
		return naturalLess(x, y)
	}
	return naturalLess(a, b)
}

// naturalLess compares names as people do: week2 before week10.
func naturalLess(a, b string) bool {
	for len(a) > 0 && len(b) > 0 {
		da, db := digits(a), digits(b)
		if da > 0 && db > 0 {
			x, y := strings.TrimLeft(a[:da], "0"), strings.TrimLeft(b[:db], "0")
			if len(x) != len(y) {
				return len(x) < len(y)
			}
			if x != y {
				return x < y
			}
			if da != db {
				return da < db
			}
			a, b = a[da:], b[db:]
			continue
		}
		if a[0] != b[0] {
			return a[0] < b[0]
		}
		a, b = a[1:], b[1:]
	}
	return len(a) < len(b)
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}
