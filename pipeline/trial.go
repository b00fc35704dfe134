package pipeline

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
)

// mostTried is how many bytes of sheets, and how large a database, a load is
// tried with: beyond it the copying would take longer than anybody waits.
const mostTried = 256 << 20

// NotTried is why a load was not tried: each sheet can then only be looked at by
// itself.
type NotTried struct{ Why string }

func (e NotTried) Error() string { return e.Why }

// TryLoad loads sheets into a copy of the archive that is thrown away, and says
// what became of each: which would stand, repeat or take the place of another,
// which are two parts of one run, and whose misspelt course the people settle.
// It changes nothing. files and names are those that FindSheets has found, and the
// sheets of the report come in their order.
// An error of type NotTried says why that was not done. No Pipeline of this
// archive may be open in this process.
func TryLoad(ctx context.Context, s Settings, files, names []string, hand ByHand) (*LoadReport, error) {
	bytes, size := int64(0), fileSize(files)
	for i := range files {
		bytes += size(i)
	}
	if bytes > mostTried {
		return nil, NotTried{"they are too large for that"}
	}
	dir, err := os.MkdirTemp("", "lapwing-trial-")
	if err != nil {
		return nil, NotTried{"there is no room for a copy of the archive (" + err.Error() + ")"}
	}
	defer os.RemoveAll(dir)
	if err := copyForTrial(store.Archive{Dir: s.Archive}, store.Archive{Dir: dir}); err != nil {
		return nil, err
	}
	s.Archive = dir
	pl, err := Open(ctx, s, ReadWrite, nil)
	if err != nil {
		return nil, err
	}
	rep, err := pl.LoadFiles(ctx, files, names, hand)
	if err == nil && rep.Loaded > 0 {
		err = pl.compareLoaded(ctx, rep)
	}
	return rep, errors.Join(err, pl.Close())
}

// copyForTrial copies what loading needs. The sheets' copies are linked.
func copyForTrial(from, to store.Archive) error {
	if err := to.Make(); err != nil {
		return NotTried{err.Error()}
	}
	if _, err := os.Stat(from.File("sheets")); os.IsNotExist(err) {
		// no archive yet: its side tables may be there already
		return copyFiles(from.Dir, to.Dir, nil)
	}
	if st, err := os.Stat(from.DatabasePath()); err == nil && st.Size() > mostTried {
		return NotTried{fmt.Sprintf("the archive is large (%d MB)", st.Size()>>20)}
	}
	release, err := from.Lock()
	if errors.Is(err, store.ErrHeld) {
		return NotTried{"another lapwing is working in the archive"}
	}
	if err != nil {
		return NotTried{err.Error()}
	}
	defer release()
	if from.WasUnclean() {
		return NotTried{"the last lapwing was stopped in the middle; any command that reads the archive sets that right"}
	}
	if err := copyFiles(from.Dir, to.Dir, nil); err != nil {
		return err
	}
	const ledger = "ledger.csv" // grows; the copies of the sheets never change
	return copyFiles(from.File("sheets"), to.File("sheets"), func(name string) bool { return name != ledger })
}

// copyFiles copies the files of a folder, or links them where link says so.
func copyFiles(from, to string, link func(name string) bool) error {
	entries, err := os.ReadDir(from)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return NotTried{err.Error()}
	}
	for _, e := range entries {
		old, now := filepath.Join(from, e.Name()), filepath.Join(to, e.Name())
		if !e.Type().IsRegular() {
			continue
		}
		if link != nil && link(e.Name()) {
			if old, err = filepath.Abs(old); err == nil && os.Symlink(old, now) == nil {
				continue
			}
		}
		if err := copyFile(old, now); err != nil {
			return NotTried{err.Error()}
		}
	}
	return nil
}

func copyFile(from, to string) error {
	r, err := os.Open(from)
	if err != nil {
		return err
	}
	defer r.Close()
	w, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(w, r)
	return errors.Join(err, w.Close())
}

// compareLoaded goes through the first steps of a refresh, up to who is who, and
// adds to the report what these say about the sheets that were loaded.
func (pl *Pipeline) compareLoaded(ctx context.Context, rep *LoadReport) error {
	w := &work{}
	for _, run := range []func(*Pipeline, context.Context, *work) error{(*Pipeline).stepRead, (*Pipeline).stepCompare, (*Pipeline).stepDecisions} {
		if err := run(pl, ctx, w); err != nil {
			return err
		}
	}
	at := map[int]*SheetReport{}
	for i := range rep.Sheets {
		if s := &rep.Sheets[i]; s.State == "loaded" {
			maps.DeleteFunc(s.Counts, func(what string, _ int) bool { return what != "volunteers" })
			at[s.seq] = s
		}
	}
	f := w.field
	for i := range f.n {
		if s := at[int(f.parts[f.part[i]-1].sheetNo)]; s != nil {
			s.Counts[record.Status(f.status[i]).String()]++
		}
	}
	for _, p := range w.problems {
		if s := at[int(p.sheetNo)]; s != nil {
			s.Problems = append(s.Problems, p.Problem)
		}
	}
	for _, s := range at {
		slices.SortStableFunc(s.Problems, func(a, b place.Problem) int { return cmp.Compare(a.Severity, b.Severity) })
	}
	return nil
}
