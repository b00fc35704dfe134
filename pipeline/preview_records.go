package pipeline

import (
	"cmp"
	"fmt"
	"slices"

	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// recordKey is a list that a fastest time stands on: course, sex, group.
type recordKey struct {
	course int32
	sex    uint8
	group  string // "" all ages
}

type fastest struct {
	timeS  int32
	runner int32
	line   int    // -1: held before the sheets
	held   string // by whom then
}

// heldFastest gives the records held before the sheets on some courses.
func (c *comparison) heldFastest(courses map[int32]bool) map[recordKey]fastest {
	out := map[recordKey]fastest{}
	f := c.w.field
	for _, h := range c.w.held {
		for n := range courses {
			sex, err := parseSex(h.sex)
			if x := &f.courses[n-1]; err != nil || x.course != h.course || x.distanceM != h.distanceM {
				continue
			}
			for _, group := range []string{"", h.group} { // somebody of a group is somebody of all ages
				k := recordKey{n, uint8(sex), group}
				if o, ok := out[k]; !h.protected && (!ok || h.timeS < o.timeS) {
					out[k] = fastest{timeS: h.timeS, line: -1, held: h.name}
				}
			}
		}
	}
	return out
}

// records tells where the fastest time of a sex, or of a sex and age group, on
// a course changes. Runners and guided runners hold them, with a time that
// counts and, for a group, an age that is certain.
func (c *comparison) records(lines []int) {
	f := c.w.field
	courses := map[int32]bool{}
	for _, i := range lines {
		courses[f.course(i)] = true
	}
	if len(courses) == 0 {
		return
	}
	best := func(facts func(int) lineFacts, void func(int) bool) map[recordKey]fastest {
		out := c.heldFastest(courses)
		for i := range f.n {
			if !courses[f.course(i)] {
				continue
			}
			x := facts(i)
			part := record.TakingPart(x.takingPart)
			if void(i) || x.counts&2 == 0 || x.sex != uint8(record.M) && x.sex != uint8(record.W) || part != record.Runner && part != record.Guided {
				continue
			}
			t := fastest{timeS: unit.CeilSeconds(x.timeMS), runner: x.runner, line: i}
			add := func(k recordKey) {
				if o, ok := out[k]; !ok || t.timeS < o.timeS || t.timeS == o.timeS && o.line >= 0 && f.key[i] < f.key[o.line] {
					out[k] = t
				}
			}
			add(recordKey{f.course(i), x.sex, ""})
			if x.group != noGroup {
				add(recordKey{f.course(i), x.sex, f.rule.Scheme.Name(int(x.group), record.Sex(x.sex).String())})
			}
		}
		return out
	}
	old := best(c.before, func(i int) bool { return c.recordsWere[i] == recordVoid })
	now := best(c.after, func(i int) bool { return c.w.desk.records[i].word == recordVoid })
	var keys []recordKey
	for k := range old {
		if n, ok := now[k]; !ok || n.timeS != old[k].timeS || n.runner != old[k].runner {
			keys = append(keys, k)
		}
	}
	for k := range now {
		if _, ok := old[k]; !ok {
			keys = append(keys, k)
		}
	}
	slices.SortFunc(keys, func(a, b recordKey) int {
		return cmp.Or(cmp.Compare(f.courses[a.course-1].course, f.courses[b.course-1].course), cmp.Compare(a.course, b.course), cmp.Compare(a.sex, b.sex), cmp.Compare(a.group, b.group))
	})
	for _, k := range keys {
		say := func(m map[recordKey]fastest) (string, string) {
			t, ok := m[k]
			if !ok {
				return "none", ""
			}
			if t.line < 0 {
				return fmt.Sprintf("%s %s (before the sheets)", unit.Clock(t.timeS), cmp.Or(t.held, "holder not known")), ""
			}
			return fmt.Sprintf("%s %s", unit.Clock(t.timeS), c.whom(t.runner)), f.day(t.line).String()
		}
		list := "fastest here, " + map[uint8]string{uint8(record.M): "men", uint8(record.W): "women"}[k.sex]
		if k.group != "" {
			list += ", " + k.group
		}
		x := Change{Course: f.courses[k.course-1].course, What: list}
		x.Before, _ = say(old)
		x.After, x.Date = say(now)
		if x.Date == "" {
			_, x.Date = say(old)
		}
		c.out = append(c.out, x)
	}
}
