package pipeline

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"

	"lapwing/pipeline/store"
)

// Forgetting changes many files of the archive that must agree with each
// other. They are all written into a folder of their own first; then a list of
// what is to be done is put beside them, in one step. Up to that step nothing
// has happened; after it, whoever opens the archive next finishes the list,
// however often it is cut short.
const (
	swapFolder = "forget"
	swapList   = "ready.json"
)

// swap is the list: new files that take the place of others, and files that go.
type swap struct {
	Put    []swapPut `json:"put"`
	Remove []string  `json:"remove"`
}

type swapPut struct {
	From string `json:"from"` // in the swap folder
	To   string `json:"to"`   // in the archive folder, or a report's whole path
}

// stageSwap writes the new files and the list.
func (pl *Pipeline) stageSwap(files map[string][]byte, remove []string) error {
	dir := pl.Archive.File(swapFolder)
	if err := os.RemoveAll(dir); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	s := swap{Remove: remove}
	for _, to := range slices.Sorted(maps.Keys(files)) {
		from := strconv.Itoa(len(s.Put))
		if err := store.WriteFile(filepath.Join(dir, from), files[to]); err != nil {
			return errors.Join(err, os.RemoveAll(dir))
		}
		s.Put = append(s.Put, swapPut{from, to})
	}
	list, err := json.Marshal(s)
	if err != nil {
		return err
	}
	if err := store.WriteFile(filepath.Join(dir, swapList), list); err != nil {
		return errors.Join(err, os.RemoveAll(dir))
	}
	return nil
}

// finishSwap carries out a list that is there, and takes away what was being
// prepared where there is none. The database goes first: it holds what is to
// be forgotten, and is made again from the folder. Only the process that has
// the archive's lock may call it, with the database closed.
func (pl *Pipeline) finishSwap() error {
	dir := pl.Archive.File(swapFolder)
	list, err := os.ReadFile(filepath.Join(dir, swapList))
	if errors.Is(err, fs.ErrNotExist) {
		return os.RemoveAll(dir)
	}
	if err != nil {
		return err
	}
	var s swap
	if err := json.Unmarshal(list, &s); err != nil {
		return fmt.Errorf("%s: %w", filepath.Join(dir, swapList), err)
	}
	if err := store.RemoveFiles(pl.Archive.DatabasePath()); err != nil {
		return err
	}
	folders := map[string]bool{}
	for _, p := range s.Put {
		to := p.To
		if !filepath.IsAbs(to) {
			to = pl.Archive.File(filepath.FromSlash(to))
		}
		err := move(filepath.Join(dir, p.From), to)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		if err != nil { // moved before the last time was cut short
			if _, err := os.Stat(to); err != nil {
				return err
			}
		}
		folders[filepath.Dir(to)] = true
	}
	for _, f := range slices.Sorted(maps.Keys(folders)) {
		if err := store.FlushDir(f); err != nil {
			return err
		}
	}
	for _, p := range s.Remove {
		if err := os.Remove(pl.Archive.File(filepath.FromSlash(p))); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	if err := store.FlushDir(pl.Archive.File("sheets")); err != nil {
		return err
	}
	// the list goes last
	if err := os.Remove(filepath.Join(dir, swapList)); err != nil {
		return err
	}
	return os.RemoveAll(dir)
}

// move renames a file, also to another disk.
func move(from, to string) error {
	err := os.Rename(from, to)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return err
	}
	data, e := os.ReadFile(from)
	if e != nil {
		return errors.Join(err, e)
	}
	if e := store.WriteFile(to, data); e != nil {
		return errors.Join(err, e)
	}
	return os.Remove(from)
}
