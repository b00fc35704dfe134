package history

import "lapwing/pipeline/unit"

// calendar answers, per course and ISO week, which runs there were. It is one
// bit a week and state.
type calendar struct {
	first, weeks           int // weeks counted by unit.Day.Week
	listed, loaded, absent []uint64
	stride                 int // words a course
}

func newCalendar(courses int, runs []Run) *calendar {
	c := &calendar{}
	if len(runs) == 0 {
		return c
	}
	last := runs[0].Day.Week()
	c.first = last
	for _, r := range runs {
		w := r.Day.Week()
		c.first, last = min(c.first, w), max(last, w)
	}
	c.weeks = last - c.first + 1
	c.stride = (c.weeks + 63) / 64
	c.listed = make([]uint64, courses*c.stride)
	c.loaded = make([]uint64, courses*c.stride)
	c.absent = make([]uint64, courses*c.stride)
	for _, r := range runs {
		w := r.Day.Week() - c.first
		at, bit := int(r.Course)*c.stride+w/64, uint64(1)<<(w%64)
		c.listed[at] |= bit
		switch r.State {
		case SheetLoaded:
			c.loaded[at] |= bit
		case SheetMissing:
			c.absent[at] |= bit
		}
	}
	return c
}

func (c *calendar) has(set []uint64, course int32, week int) bool {
	w := week - c.first
	if w < 0 || w >= c.weeks {
		return false
	}
	return set[int(course)*c.stride+w/64]>>(w%64)&1 != 0
}

// known says whether any run of the course is listed in the week of a day.
func (c *calendar) known(course int32, day unit.Day) bool {
	return c.has(c.listed, course, day.Week())
}
