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
	dev                  []int32    // log time against the run's own level, in millionths; noTime for none
}

const noTime = math.MinInt32

// label renames the labels and measures each time against its run.
func (m *model) label() error {
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
		radixSort(keys, l.order)
	}
	rename := func(col []int32, blank bool) ([]int32, int) {
		top := int32(0)
		for _, v := range col {
			top = max(top, v)
		}
		to := make([]int32, top+1)
		next := int32(1)
		if blank {
			to[0] = 1
		}
		out := make([]int32, n)
		for _, i := range l.order {
			v := col[i]
			if to[v] == 0 {
				next++
				to[v] = next
				if !blank {
					to[v] = next - 1
				}
			}
			out[i] = to[v] - 1
		}
		if !blank {
			next--
		}
		return out, int(next)
	}
	l.club, l.clubs = rename(r.Club, true)
	l.course, l.courses = rename(r.Course, false)
	l.run, l.runs = rename(r.Run, false)
	l.runDay = make([]unit.Day, l.runs)
	for i, k := range l.run {
		l.runDay[k] = r.Day[i]
	}
	m.sortRunsByDay()
	m.measurePace()
	return nil
}

// sortRunsByDay renumbers the runs so that their order is that of their days.
func (m *model) sortRunsByDay() {
	l := &m.lab
	keys, by := make([]uint64, l.runs), make([]int32, l.runs)
	for k := range keys {
		keys[k], by[k] = uint64(int64(l.runDay[k])+1<<31), int32(k)
	}
	radixSort(keys, by)
	to, days := make([]int32, l.runs), make([]unit.Day, l.runs)
	for new, old := range by {
		to[old], days[new] = int32(new), l.runDay[old]
	}
	for i, k := range l.run {
		l.run[i] = to[k]
	}
	l.runDay = days
}

// measurePace sets dev: the log time less its run's mean, the mean shrunk to
// the course's with the weight of 40 results. Sums are of whole millionths, so
// that they do not depend on the order of the rows.
func (m *model) measurePace() {
	l, r := &m.lab, m.rows
	micro := func(x float32) int64 { return int64(math.Round(float64(x) * 1e6)) }
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
	level := make([]int64, l.runs)
	for k := range level {
		if runN[k] > 0 {
			c := runCourse[k]
			mean := float64(courseSum[c]) / float64(courseN[c])
			level[k] = int64(math.Round((float64(runSum[k]) + 40*mean) / (float64(runN[k]) + 40)))
		}
	}
	l.dev = make([]int32, r.Len())
	for i, x := range r.LogTime {
		if x == 0 {
			l.dev[i] = noTime
		} else {
			l.dev[i] = int32(micro(x) - level[l.run[i]])
		}
	}
}

// radixSort sorts keys upwards and carries with along; equal keys keep their
// order. Both have the same length.
func radixSort(keys []uint64, with []int32) {
	const bits = 11
	n := len(keys)
	if n < 2 {
		return
	}
	var diff uint64
	for _, k := range keys[1:] {
		diff |= k ^ keys[0]
	}
	k2, w2 := make([]uint64, n), make([]int32, n)
	a, b, wa, wb := keys, k2, with, w2
	for shift := 0; shift < 64; shift += bits {
		if diff>>shift&(1<<bits-1) == 0 {
			continue
		}
		var count [1 << bits]int32
		for _, k := range a {
			count[k>>shift&(1<<bits-1)]++
		}
		at := int32(0)
		for d := range count {
			at, count[d] = at+count[d], at
		}
		for i, k := range a {
			d := k >> shift & (1<<bits - 1)
			p := count[d]
			count[d]++
			b[p], wb[p] = k, wa[i]
		}
		a, b, wa, wb = b, a, wb, wa
	}
	if &a[0] != &keys[0] {
		copy(keys, a)
		copy(with, wa)
	}
}

// sortUnique sorts keys and drops repeats.
func sortUnique(keys []uint64) []uint64 {
	const bits = 11
	n := len(keys)
	if n < 2 {
		return keys
	}
	var diff uint64
	for _, k := range keys[1:] {
		diff |= k ^ keys[0]
	}
	a, b := keys, make([]uint64, n)
	for shift := 0; shift < 64; shift += bits {
		if diff>>shift&(1<<bits-1) == 0 {
			continue
		}
		var count [1 << bits]int
		for _, k := range a {
			count[k>>shift&(1<<bits-1)]++
		}
		at := 0
		for d := range count {
			at, count[d] = at+count[d], at
		}
		for _, k := range a {
			d := k >> shift & (1<<bits - 1)
			b[count[d]] = k
			count[d]++
		}
		a, b = b, a
	}
	out := a[:1]
	for _, k := range a[1:] {
		if k != out[len(out)-1] {
			out = append(out, k)
		}
	}
	return out
}
