package reports

import (
	"fmt"
	"math"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// rankIn gives somebody's rank among values (seconds, one a runner), how many
// there are and the percentile, "" in a group of under ten.
func rankIn(mine int32, all []int32) (rank standing.Rank, n int, percentile table.Value) {
	slower, faster, equal := 0, 0, 0
	for _, v := range all {
		switch {
		case v <= 0:
			continue
		case v < mine:
			faster++
		case v > mine:
			slower++
		default:
			equal++
		}
		n++
	}
	if mine <= 0 || equal == 0 {
		return standing.Rank{}, n, table.Value{}
	}
	if p, ok := standing.Percentile(slower, n); ok {
		percentile = table.Number(p)
	}
	return standing.Rank{N: int32(faster + 1), Shared: equal > 1}, n, percentile
}

func ceilS(s *float64) int32 {
	if s == nil {
		return 0
	}
	return int32(math.Ceil(*s - 1e-9))
}

// measures are what people are ranked by, as standing_best.sql has them and as
// printed.
var measures = []struct{ code, word string }{{"time", "time"}, {"adjusted", "adjusted"}, {"grade", "age grade"}}

// ranking is somebody's rank among the bests of the age group.
type ranking struct {
	rank  standing.Rank
	of    int
	ahead table.Value // percentile
}

// eachRank goes through the ranks within the age group: by time on each course,
// and over all by time, adjusted time and age grade, ever and this season.
func (d *standingRows) eachRank(give func(standIn, ranking)) {
	each := func(in standIn) {
		for _, season := range []bool{false, true} {
			in.season = season
			if g := d.bests[in]; g != nil {
				if r, n, p := rankIn(g.mine, g.all); r.N > 0 {
					give(in, ranking{r, n, p})
				}
			}
		}
	}
	distances := d.distances()
	for i, c := range d.courses {
		if i > 0 && c.course == d.courses[i-1].course {
			continue // its other distance
		}
		for _, dist := range distances {
			each(standIn{measure: "time", course: c.course, distance: dist})
		}
	}
	for _, dist := range distances {
		for _, m := range measures {
			each(standIn{measure: m.code, distance: dist})
		}
	}
}

// standingSection shows the ranks within the age group.
func (d *standingRows) standingSection() (section, bool) {
	t := &table.Table{Columns: []table.Column{{Head: "Where"}, {Head: "When"}, {Head: "Rank", Kind: table.Place}, {Head: "of", Kind: table.Whole},
		{Head: "Behind, %", Kind: table.Whole}, {Head: "By"}}}
	words := map[string]string{}
	for _, m := range measures {
		words[m.code] = m.word
	}
	var lead []string
	d.eachRank(func(in standIn, r ranking) {
		where, at := "All, "+unit.Distance(in.distance), "over "+unit.Distance(in.distance)
		if in.course != "" {
			where = d.routeName(in.course, in.distance)
			at = "at " + where
		}
		when := "ever"
		if in.season {
			when = "this season"
		}
		// A sentence tells nobody that they are the last.
		if last := int(r.rank.N) == r.of && r.of > 1; in.season && !last && in.measure == "time" &&
			(in.course == d.usualCourse() || in.course == "" && in.distance == d.usualDistance()) {
			lead = append(lead, fmt.Sprintf("%s of %d %s", ordinalRank(r.rank), r.of, at))
		}
		t.Add(nil, table.Words(where), table.Words(when), rankValue(r.rank), table.Number(r.of), r.ahead, table.Words(words[in.measure]))
	})
	if len(t.Rows) == 0 {
		return section{}, false
	}
	return section{title: "Standing in " + groupLabel(d.sex, d.group), table: t,
		paras: append(leadWords(lead, groupLabel(d.sex, d.group)), "Everybody once, with their best in this group, ever in these sheets and this season. \"Behind\" is how many in a hundred of the others are behind; it is given from ten people on. By age grade, only those whose age is certain are counted.")}, true
}

// routeName is the name of a course, with the distance where it has several.
func (d *standingRows) routeName(course string, metres int32) string {
	routes := 0
	for i := range d.courses {
		if d.courses[i].course == course {
			routes++
		}
	}
	if routes < 2 {
		return d.courseName(course)
	}
	return d.courseName(course) + ", " + unit.Distance(metres)
}

// smallGroup says whether somebody's group is of X and of so few people that it
// is not for publication.
func (d *standingRows) smallGroup() bool {
	most := 0
	for _, g := range d.bests {
		most = max(most, len(g.all))
	}
	return d.sex == "X" && most < fewest
}

// leadWords says the standing of the season in a sentence.
func leadWords(lead []string, group string) []string {
	if len(lead) == 0 {
		return nil
	}
	return []string{"By time this season in " + group + ": " + list(lead) + "."}
}

// ordinalRank is "3rd", "3rd=" where it is shared.
func ordinalRank(r standing.Rank) string {
	s := ordinal(r.N)
	if r.Shared {
		s += "="
	}
	return s
}

// usualCourse is the course that somebody has run on most often, the first of
// equals by name.
func (d *standingRows) usualCourse() string {
	n, best := map[string]int{}, ""
	for _, r := range d.results {
		if r.countsRun {
			n[r.course]++
		}
	}
	for _, c := range sortedKeys(n) {
		if best == "" || n[c] > n[best] {
			best = c
		}
	}
	return best
}

func (d *standingRows) aheadSection() (section, bool) {
	dist := d.usualDistance()
	g := d.bests[standIn{measure: "adjusted", distance: dist, season: true}]
	if g == nil || g.mine <= 0 || d.protected {
		return section{}, false
	}
	rank, _, _ := rankIn(g.mine, g.all)
	if rank.N < 2 {
		return section{}, false
	}
	targets := d.ahead()
	s := section{title: "The next places ahead", paras: []string{fmt.Sprintf("This season's %s in %s by adjusted time (see Standing); your best is %s. What each place takes on an average course and day.",
		unit.Distance(dist), groupLabel(d.sex, d.group), unit.Clock(g.mine))}}
	if len(targets) == 0 {
		s.paras = append(s.paras, "The next place takes over 5 % more, and is not named.")
		return s, true
	}
	if len(targets) < mostAhead && targets[len(targets)-1].Place.N > 1 {
		s.paras = append(s.paras, "Places further ahead take over 5 % more, and are not named.")
	}
	t := &table.Table{Columns: []table.Column{{Head: "Place", Kind: table.Place}, {Head: "Takes", Kind: table.Clock}, {Head: "Under your best by", Kind: table.Clock},
		{Head: "Under your form by", Kind: table.Clock}}}
	for _, x := range targets {
		var gap table.Value
		if d.formS != nil {
			if by := math.Round(*d.formS*math.Pow(float64(dist)/5000, enduranceExponent)) - float64(x.NeedS); by > 0 {
				gap = table.Number(by)
			}
		}
		t.Add(nil, rankValue(x.Place), table.Number(x.NeedS), table.Number(x.FasterS), gap)
	}
	s.table = t
	return s, true
}

// mostAhead is how many places ahead a card names.
const mostAhead = 3
