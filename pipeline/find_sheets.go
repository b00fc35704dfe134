package pipeline

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strings"
)

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
	f2, n2 := make([]string, len(files)), make([]string, len(files))
	for k, i := range order {
		f2[k], n2[k] = files[i], names[i]
	}
	return f2, n2, nil
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
