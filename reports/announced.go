package reports

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// announcedName is the table in the archive folder of the milestones that
// weekly reports have told, in order; only ever added to. When a late claim
// moves a milestone to another run it is not told again.
const announcedName = "announced.csv"

var announcedHead = []string{"runner", "milestone", "course", "date", "session"}

// feat is a runner's number of runs, one of the milestones.
type feat struct{ runner, runs int32 }

// announced knows for each milestone told the run whose reports told it.
type announced struct {
	path  string
	at    map[feat]int32 // place in runs
	runs  []Run
	place map[Run]int32
}

func readAnnounced(archiveDir string) (announced, error) {
	a := announced{path: filepath.Join(archiveDir, announcedName), at: map[feat]int32{}, place: map[Run]int32{}}
	rows, err := store.Archive{Dir: archiveDir}.ReadList(announcedName, announcedHead)
	if err != nil {
		return a, err
	}
	for i, r := range rows {
		who, err1 := runnerNumber(r[0])
		n, err2 := strconv.ParseInt(r[1], 10, 32)
		on, err3 := unit.ParseDay(r[3])
		for _, err := range []error{err1, err2, err3} {
			if err != nil {
				return a, fmt.Errorf("%s: %w; restore this file from a backup", store.Archive{Dir: archiveDir}.At(announcedName, i), err)
			}
		}
		a.add(feat{who, int32(n)}, Run{r[2], on, r[4]})
	}
	return a, nil
}

// add notes where a milestone was told; the first time stands.
func (a *announced) add(f feat, r Run) {
	if _, ok := a.at[f]; ok {
		return
	}
	k, ok := a.place[r]
	if !ok {
		k = int32(len(a.runs))
		a.runs = append(a.runs, r)
		a.place[r] = k
	}
	a.at[f] = k
}

// announce notes the milestones of a run as told by its reports, and marks
// those that the reports of another run have told before. What is new is on
// disk before anything is written that tells it.
func (r *Register) announce(d *weekly) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	here := Run{d.course, d.on, d.session}
	var lines [][]string
	for _, x := range d.milestones() {
		who, err := runnerNumber(x.runner)
		if err != nil {
			return err
		}
		f := feat{who, *x.milestone}
		if k, ok := r.told.at[f]; !ok {
			r.told.add(f, here)
			lines = append(lines, []string{x.runner, strconv.Itoa(int(f.runs)), here.Course, here.On.String(), here.Session})
		} else if first := r.told.runs[k]; first != here {
			x.toldAt = &first
		}
	}
	if len(lines) == 0 {
		return nil
	}
	return appendLines(r.told.path, announcedHead, lines)
}

// runnerID is a runner's id, R12 for number 12.
func runnerID(n int32) string { return "R" + strconv.Itoa(int(n)) }

// runnerNumber reads a runner's id, R12.
func runnerNumber(id string) (int32, error) {
	digits, ok := strings.CutPrefix(id, "R")
	n, err := strconv.ParseInt(digits, 10, 32)
	if !ok || err != nil || n < 1 {
		return 0, fmt.Errorf("%q is not a runner's id", id)
	}
	return int32(n), nil
}
