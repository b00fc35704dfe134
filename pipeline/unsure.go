package pipeline

import (
	"context"
	"fmt"
	"os"
	"sort"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
)

// A course with at least knownRuns runs is known well enough to suspect that a
// name in a hand-typed title, one letter away and with at most newRuns runs or
// rarer by the factor rarer, is a slip of the pen. Names shorter than
// shortestSlip are left alone: they are near too much; so are names that
// differ in a figure (route 1, route 2).
const (
	knownRuns    = 4
	newRuns      = 2
	rarer        = 8
	shortestSlip = 7
)

// askMisspelt adds a question to each sheet of a load whose course is new and
// only a slip away from a well-known one. It is asked when a sheet is loaded,
// never when the archive's copies are read again: by then a person has
// answered.
func (pl *Pipeline) askMisspelt(sheets []*parsedSheet) {
	runs := map[string]int{}
	for k := range pl.courses.runs {
		runs[k.course.course]++
	}
	for _, s := range sheets {
		for _, p := range s.parts {
			for _, k := range p.runs {
				if _, have := pl.courses.runs[k]; !have {
					runs[k.course.course]++
				}
			}
		}
	}
	for c, n := range pl.ahead {
		runs[c] = max(runs[c], n)
	}
	listed := map[string]bool{}
	for _, c := range pl.courses.known {
		listed[c.course] = true
		runs[c.course] = max(runs[c.course], knownRuns)
	}
	var known []string
	for c, n := range runs {
		if n >= knownRuns {
			known = append(known, c)
		}
	}
	sort.Strings(known)
	for _, s := range sheets {
		if s.byHand {
			continue
		}
		for _, p := range s.parts {
			if !strings.HasPrefix(p.part.Course.From, "title") {
				continue
			}
			for i, k := range p.runs {
				c := k.course.course
				if listed[c] {
					continue
				}
				for _, q := range known {
					if runs[c] > newRuns && runs[q] < rarer*runs[c] || q == c || !slip(c, q) {
						continue
					}
					problem := place.Problem{
						Place: place.Place{Sheet: s.sheet.Name, Tab: p.part.Tab}, Severity: place.Waits, Kind: "course-unsure", Read: c,
						Expected: fmt.Sprintf("a course that is known, such as %s", q),
						Do:       fmt.Sprintf("Load it again with --course %s if that is meant, or with --course %s if it is another course.", q, c),
					}
					p.problems = append(p.problems, partProblem{problem, int32(i)})
					s.problems = append(s.problems, problem)
					break
				}
			}
		}
	}
}

// slip says whether two names differ by one letter: left out, put in, changed,
// or two exchanged.
func slip(a, b string) bool {
	if min(len(a), len(b)) < shortestSlip || text.OSA(a, b) != 1 {
		return false
	}
	digits := func(s string) string {
		return strings.Map(func(r rune) rune {
			if r >= '0' && r <= '9' {
				return r
			}
			return -1
		}, s)
	}
	return digits(a) == digits(b)
}

// lookAheadMost is the number of files up to which a load looks at the courses
// of all of them first.
const lookAheadMost = 4000

// lookAhead counts the runs of each course in the archive and in all new files
// of a load that takes several batches, so that a slip of the pen in the first
// batch is seen for one. Files that are loaded already are not read again: their
// runs are known. Very large first loads go without.
func (pl *Pipeline) lookAhead(ctx context.Context, files, names []string, known map[string]store.Entry) map[string]int {
	if len(files) <= batchSheets || len(files) > lookAheadMost {
		return nil
	}
	found := make([]map[runKey]bool, len(files))
	options := sheet.Options{Headings: pl.Settings.Headings, Courses: pl.courses.names(), DateOrder: pl.Settings.DateOrder}
	eachParallel(len(files), pl.workers(), func(i int) {
		if ctx.Err() != nil {
			return
		}
		data, err := os.ReadFile(files[i])
		if err != nil {
			return // told when it is loaded
		}
		if known[store.Hash(data)].State == store.Loaded {
			return
		}
		s, err := sheet.Read(names[i], data, options)
		if err != nil {
			return
		}
		found[i] = map[runKey]bool{}
		for _, p := range s.Parts {
			_ = p.Each(func(_ int, cells []string) error {
				if course, day, session, ok := p.RunOf(cells); ok {
					found[i][runKey{pl.courses.key(course, day, 0), day, session}] = true
				}
				if p.Course.Value != "" && p.Date.Settled {
					return errStop // one run for all rows
				}
				return nil
			})
		}
	})
	all, runs := map[runKey]bool{}, map[string]int{}
	for k := range pl.courses.runs {
		all[k] = true
		runs[k.course.course]++
	}
	for _, m := range found {
		for k := range m {
			if !all[k] {
				all[k] = true
				runs[k.course.course]++
			}
		}
	}
	return runs
}
