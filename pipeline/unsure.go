package pipeline

import (
	"context"
	"fmt"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
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
// answered, or the people on it have (misspelt.go).
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
	// Words beside the names of several courses are no part of any: "alder-bank-log"
	// and "kestrel-moor-log".
	beside := map[string]map[string]bool{}
	bare := map[string]string{} // well-known names by their letters alone
	for c, n := range runs {
		if n >= knownRuns {
			letters := strings.ReplaceAll(c, "-", "")
			if other, have := bare[letters]; !have || c < other {
				bare[letters] = c
			}
		}
	}
	for c := range runs {
		if q := longestWithin(c, runs, bare); q != "" {
			rest := strings.Replace("-"+c+"-", "-"+q+"-", "--", 1)
			if beside[rest] == nil {
				beside[rest] = map[string]bool{}
			}
			beside[rest][q] = true
		}
	}
	var known, all []string
	for c, n := range runs {
		if all = append(all, c); n >= knownRuns {
			known = append(known, c)
		}
	}
	sort.Strings(known)
	sort.Strings(all)
	inArchive := map[string]bool{}
	for k := range pl.courses.runs {
		inArchive[k.course.course] = true
	}
	same := usualSpellings(all, runs, inArchive)
	long := map[string][]string{} // what a name may be short for
	for _, s := range sheets {
		if s.byHand {
			continue
		}
		for _, p := range s.parts {
			from := p.part.Course.From
			// A list of volunteers of a course that nobody has run is odd, wherever the
			// name stands.
			byTitle := strings.HasPrefix(from, "title") || p.part.Kind == sheet.Volunteers
			if strings.HasPrefix(from, "column") {
				continue
			}
			for i, k := range append(slices.Clip(p.runs), helperRuns(p.helpers)...) {
				c := k.course.course
				if i >= len(p.runs) {
					i = -1 // volunteers are of no run
				}
				if listed[c] || i < 0 && runs[c] > 0 {
					continue
				}
				longest := longestWithin(c, runs, bare)
				usual, near := same[letters(c)], known
				if i < 0 || inArchive[c] || usual == c {
					usual = ""
				}
				if usual != "" {
					near = []string{usual}
				} else if byTitle && i >= 0 && !inArchive[c] {
					if _, have := long[c]; !have {
						long[c] = written(c, all)
					}
					near = append(slices.Clip(long[c]), known...)
				}
				for _, q := range near {
					switch {
					case q == c:
						continue
					case usual != "":
					case longest == "" && i >= 0 && !inArchive[c] && shortened(c, q) && runs[q] >= knownRuns && runs[c] <= newRuns:
					case longest == "" && abbreviates(c, q) && (inArchive[q] || listed[q] || runs[q] > runs[c]):
					case runs[q] < knownRuns: // of those written in full
						continue
					case longest != "" && q != longest:
						continue
					case longest != "":
						rest := strings.Replace("-"+c+"-", "-"+q+"-", "--", 1)
						if most := map[bool]int{true: 2 * knownRuns, false: newRuns}[len(beside[rest]) > 1]; runs[c] > most {
							continue
						}
					case !byTitle || runs[c] > newRuns && runs[q] < rarer*runs[c] || !slip(c, q):
						continue
					}
					problem := place.Problem{
						Place: place.Place{Sheet: s.sheet.Name, Tab: p.part.Tab}, Severity: place.Waits, Kind: "course-unsure", Read: c,
						Expected: fmt.Sprintf("a course that is known, such as %s", q),
						Do:       "Is it " + q + " under another name, or another course?",
						Answers:  "--course " + q + "\n--course " + c,
					}
					p.problems = append(p.problems, partProblem{problem, int32(i)})
					s.problems = append(s.problems, problem)
					if s.misspelt == nil {
						s.misspelt = map[string]string{}
					}
					s.misspelt[c] = q
					break
				}
			}
		}
	}
}

// longestWithin is the longest name of a well-known course that stands in a
// name among other words ("alder-bank" in "alder-bank-two-columns"), or is the
// name but for the spaces ("alderbank"); "" where there is none.
func longestWithin(c string, runs map[string]int, bare map[string]string) (longest string) {
	words := strings.Split(c, "-")
	for i := range words {
		for k := len(words); k > i; k-- {
			if q := strings.Join(words[i:k], "-"); len(q) >= shortestSlip && len(q) > len(longest) && q != c && runs[q] >= knownRuns {
				longest = q
			}
		}
	}
	if longest != "" || len(c) < shortestSlip {
		return longest
	}
	if q := bare[strings.ReplaceAll(c, "-", "")]; q != c {
		return q
	}
	return ""
}

// letters is a name without what is written in two ways: its spaces, and the
// vowels that German and the Nordic languages write with two dots or with an e.
func letters(name string) string { return unspaced.Replace(name) }

var unspaced = strings.NewReplacer("-", "", "ae", "a", "oe", "o", "ue", "u")

// sameLetters says whether two names differ in their spaces alone, or in how such
// vowels are written.
func sameLetters(a, b string) bool {
	return a != b && letters(a) == letters(b)
}

// usualSpellings gives for the letters of a name the spelling that names a course:
// one that is in the archive, then the one with most runs, then with most words.
func usualSpellings(all []string, runs map[string]int, inArchive map[string]bool) map[string]string {
	out := map[string]string{}
	better := func(a, b string) bool {
		if inArchive[a] != inArchive[b] {
			return inArchive[a]
		}
		if runs[a] != runs[b] {
			return runs[a] > runs[b]
		}
		return strings.Count(a, "-") > strings.Count(b, "-")
	}
	for _, c := range all {
		if l := letters(c); len(l) >= shortestSlip {
			if other, have := out[l]; !have || better(c, other) {
				out[l] = c
			}
		}
	}
	return out
}

// written lists the names that one may be short for.
func written(short string, all []string) (out []string) {
	for _, c := range all {
		if len(c) > len(short) && abbreviates(short, c) {
			out = append(out, c)
		}
	}
	return out
}

// abbreviates says whether a name is another with one word shortened: "withy-bank-pk"
// is "withy-bank-park".
func abbreviates(short, long string) bool {
	was, now, ok := changedWord(long, short)
	if !ok || len(now) < 2 || len(now) >= len(was) || was[0] != now[0] || strings.Replace(long, was, now, 1) != short {
		return false
	}
	if strings.HasPrefix(was, now) {
		return len(was)-len(now) > 1 // Wood and Woods are two words
	}
	k := 0
	for i := 0; i < len(was) && k < len(now); i++ {
		if was[i] == now[k] {
			k++
		}
	}
	return k == len(now) && !strings.ContainsAny(now[1:], "aeiou")
}

// shortened says whether a name of two words or more is another without its first or
// last words: "withy-bank" for "withy-bank-park".
func shortened(short, long string) bool {
	return strings.Contains(short, "-") && len(short) >= shortestSlip && (strings.HasPrefix(long, short+"-") || strings.HasSuffix(long, "-"+short))
}

// standsIn says whether the name of a course is in a longer one, or is the same
// but for the spaces.
func standsIn(course, read string) bool {
	return strings.Contains("-"+read+"-", "-"+course+"-") || sameLetters(course, read)
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

// A load of at most lookAheadMost files looks at the courses of all of them
// first. Where they have at most keepAhead bytes together, what was read is kept
// for loading; else these files are read twice.
const lookAheadMost = 4000

var keepAhead int64 = 3 * batchBytes

// lookAhead counts the runs of each course in the archive and in all new files
// of a load that takes several batches, so that a slip of the pen in the first
// batch is seen for one. Very large first loads go without. kept is what read
// gave for each file, nil where the files are to be read again.
func (pl *Pipeline) lookAhead(ctx context.Context, n int, size func(i int) int64, read func(i int) readResult) (runs map[string]int, kept []readResult) {
	bytes := int64(0)
	for i := 0; i < n && n <= lookAheadMost; i++ {
		bytes += size(i)
	}
	keep := bytes <= keepAhead
	if n > lookAheadMost || n <= batchSheets && (bytes <= batchBytes || !keep) {
		return nil, nil
	}
	if keep {
		kept = make([]readResult, n)
	}
	found := make([][]runKey, n)
	parallel.Each(n, pl.workers(), func(i int) {
		if ctx.Err() != nil {
			return
		}
		r := read(i)
		if r.parsed != nil {
			for _, p := range r.parsed.parts {
				found[i] = append(found[i], p.runs...)
			}
		}
		if keep {
			kept[i] = r
		}
	})
	all, runs := map[runKey]bool{}, map[string]int{}
	for k := range pl.courses.runs {
		all[k] = true
		runs[k.course.course]++
	}
	for _, list := range found {
		for _, k := range list {
			if !all[k] {
				all[k] = true
				runs[k.course.course]++
			}
		}
	}
	return runs, kept
}
