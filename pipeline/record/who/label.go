package who

import (
	"math"

	"lapwing/pipeline/unit"
)

// labels are the rows' labels, renamed in the order of first appearance by
// Key, so that no sum or tie depends on the order of the rows or on how the
// caller numbered things.
type labels struct {
	order                []int32 // row indices by Key
	sorted               bool    // order is 0, 1, 2, …
	club, course, run    []int32 // per row; club 0 blank
	clubs, courses, runs int
	runDay               []unit.Day // by run label
	runPlace             []int32    // by run label
	dev                  []int32    // log time against the run's own level, in millionths; noTime for none

	// the labels as given, by label: kept for what a linkage leaves behind
	clubFrom, courseFrom, runFrom []int32
	level                         []int32 // by run, in millionths; noTime where no time is known
	courseLevel                   []int32 // by course, the same
}

const noTime = math.MinInt32

// label renames the labels and measures each time against its run.
func (m *model) label() error {
	m.rename()
	m.measurePace()
	return nil
}

// rename renames the labels.
func (m *model) rename() {
	r := m.rows
	n := r.Len()
	l := &m.lab
	l.order = make([]int32, n)
	l.sorted = true
	for i := range l.order {
		l.order[i] = int32(i)
		l.sorted = l.sorted && (i == 0 || r.Key[i-1] < r.Key[i])
	}
	if !l.sorted {
		keys := make([]uint64, n)
		for i, k := range r.Key {
			keys[i] = uint64(k) ^ 1<<63
		}
		radixSort(m.o.Threads, keys, l.order)
	}
	rename := func(col []int32, blank bool) (out, from []int32) {
		to := make([]int32, max(0, top(col))+1)
		if blank {
			to[0], from = 1, []int32{0}
		}
		out = make([]int32, n)
		for _, i := range l.order {
			v := col[i]
			if to[v] == 0 {
				from = append(from, v)
				to[v] = int32(len(from))
			}
			out[i] = to[v] - 1
		}
		return out, from
	}
	together(m.o.Threads,
		func() { l.club, l.clubFrom = rename(r.Club, true) },
		func() { l.course, l.courseFrom = rename(r.Course, false) },
		func() { l.run, l.runFrom = rename(r.Run, false) })
	l.clubs, l.courses, l.runs = len(l.clubFrom), len(l.courseFrom), len(l.runFrom)
	l.runDay = make([]unit.Day, l.runs)
	for i, k := range l.run {
		l.runDay[k] = r.Day[i]
	}
	l.runPlace = make([]int32, l.runs)
	for i, k := range l.run {
		l.runPlace[k] = r.Course[i]
		if r.PlaceOf != nil {
			l.runPlace[k] = r.PlaceOf[r.Course[i]]
		}
	}
	m.sortRunsByDay()
}

// sortRunsByDay renumbers the runs so that their order is that of their days.
func (m *model) sortRunsByDay() {
	l := &m.lab
	keys, by := make([]uint64, l.runs), make([]int32, l.runs)
	for k := range keys {
		keys[k], by[k] = uint64(int64(l.runDay[k])+1<<31), int32(k)
	}
	radixSort(m.o.Threads, keys, by)
	to, days, from, places := make([]int32, l.runs), make([]unit.Day, l.runs), make([]int32, l.runs), make([]int32, l.runs)
	for new, old := range by {
		to[old], days[new], from[new], places[new] = int32(new), l.runDay[old], l.runFrom[old], l.runPlace[old]
	}
	for i, k := range l.run {
		l.run[i] = to[k]
	}
	l.runDay, l.runFrom, l.runPlace = days, from, places
}

// measurePace sets dev: the log time less its run's mean, the mean shrunk to
// the course's with the weight of 40 results. Sums are of whole millionths, so
// that they do not depend on the order of the rows. A level that is known
// already stays as it was.
func (m *model) measurePace() {
	l, r := &m.lab, m.rows
	runSum, runN := make([]int64, l.runs), make([]int64, l.runs)
	courseSum, courseN := make([]int64, l.courses), make([]int64, l.courses)
	runCourse := make([]int32, l.runs)
	for i, x := range r.LogTime {
		if x == 0 {
			continue
		}
		v := micro(x)
		k, c := l.run[i], l.course[i]
		runSum[k] += v
		runN[k]++
		runCourse[k] = c
		courseSum[c] += v
		courseN[c]++
	}
	level := func(of int, known []int32, from []int32) int32 {
		if f := from[of]; int(f) < len(known) {
			return known[f]
		}
		return noTime
	}
	var knownRuns, knownCourses []int32
	if m.known != nil {
		knownRuns, knownCourses = m.known.RunLevel, m.known.CourseLevel
	}
	l.courseLevel, l.level = make([]int32, l.courses), make([]int32, l.runs)
	for c := range l.courseLevel {
		l.courseLevel[c] = level(c, knownCourses, l.courseFrom)
		if l.courseLevel[c] == noTime && courseN[c] > 0 {
			l.courseLevel[c] = int32(math.Round(float64(courseSum[c]) / float64(courseN[c])))
		}
	}
	for k := range l.level {
		l.level[k] = level(k, knownRuns, l.runFrom)
		if l.level[k] == noTime && runN[k] > 0 {
			mean := float64(l.courseLevel[runCourse[k]])
			l.level[k] = int32(math.Round((float64(runSum[k]) + 40*mean) / (float64(runN[k]) + 40)))
		}
	}
	l.dev = make([]int32, r.Len())
	inPieces(m.o.Threads, r.Len(), func(_, lo, hi int) {
		for i := lo; i < hi; i++ {
			if x := r.LogTime[i]; x == 0 {
				l.dev[i] = noTime
			} else {
				l.dev[i] = int32(micro(x)) - l.level[l.run[i]]
			}
		}
	})
}

func micro(x float32) int64 { return int64(math.Round(float64(x) * 1e6)) }
