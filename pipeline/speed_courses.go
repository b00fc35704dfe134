package pipeline

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/unit"
)

// CourseSpeed is a course as the course table shows it. Index, seconds and
// their intervals are missing where no index may be stated; Reason says why.
type CourseSpeed struct {
	Course        string   `json:"course"`
	Name          string   `json:"name"`
	DistanceM     int      `json:"distance_m"`
	Measured      bool     `json:"measured"`
	Rank          int      `json:"rank,omitempty"` // among the ranked of its set, the fastest first
	Index         *float64 `json:"speed_index"`    // 100 is the set's mean course, higher is faster
	Low           *float64 `json:"low"`            // 90 % interval
	High          *float64 `json:"high"`
	Seconds       *float64 `json:"seconds_at_25min"` // + is slower
	SecondsLow    *float64 `json:"seconds_low"`
	SecondsHigh   *float64 `json:"seconds_high"`
	Results       int      `json:"results"` // in the model
	Runs          int      `json:"runs"`
	SharedRunners int      `json:"shared_runners"` // who also ran another course
	Link          string   `json:"link"`           // how strong that link is, in words
	Standing      string   `json:"standing"`       // published, provisional or no index
	Reason        string   `json:"reason,omitempty"`

	no, group, network int32
}

// CourseSet is a set of courses that can be compared with each other: one
// distance, and linked by runners.
type CourseSet struct {
	DistanceM int           `json:"distance_m"`
	Network   int32         `json:"network"` // 1 is the largest; 0: not in the model yet
	Courses   []CourseSpeed `json:"courses"`
}

// CourseTable is what there is to say about the courses.
type CourseTable struct {
	Sets  []CourseSet `json:"sets"`
	Basis SpeedBasis  `json:"basis"`
}

// SpeedBasis says what the figures of the model rest on.
type SpeedBasis struct {
	ModelVersion string             `json:"model_version"`
	Results      int                `json:"results"`     // in the last full fit
	NewestRun    string             `json:"newest_run"`  // in it
	AddedSince   int                `json:"added_since"` // results of runs that were added to it
	Settled      bool               `json:"settled"`     // the fit came to rest
	Rounds       int                `json:"rounds"`
	Source       string             `json:"quantities_from"`
	Quantities   map[string]float64 `json:"quantities"` // of log time, by name
	Words        string             `json:"words"`      // where the quantities come from
}

func (k speedFit) basis() SpeedBasis {
	b := SpeedBasis{ModelVersion: k.Version, Results: k.Results, NewestRun: k.Upto, AddedSince: k.Updated, Settled: k.Settled, Rounds: k.Rounds,
		Source: k.Quantities.Source, Quantities: map[string]float64{}, Words: k.Quantities.words()}
	for _, f := range k.Fitted.Fields() {
		b.Quantities[f.Name] = *f.Value
	}
	return b
}

// linkWords says how well a course is tied to the others. On simulated
// districts 50 shared runners gave the index a standard error of about 0.35 %,
// 100 one of 0.25 %, 300 and more one of 0.17 % or less.
func linkWords(shared int) string {
	switch {
	case shared == 0:
		return "none"
	case shared < 20:
		return "too few"
	case shared < 50:
		return "weak"
	case shared < 100:
		return "fair"
	case shared < 300:
		return "good"
	}
	return "strong"
}

// CourseTable gives every course, in sets that can be compared: the largest
// network first, in it the distance with most results, and the courses from
// fast to slow, those without an index after them by name.
func (pl *Pipeline) CourseTable(ctx context.Context) (*CourseTable, error) {
	fit, err := pl.speedFit(ctx)
	if err != nil {
		return nil, err
	}
	courses, err := pl.courseSpeeds(ctx)
	if err != nil {
		return nil, err
	}
	t := &CourseTable{Basis: fit.basis()}
	type key struct {
		network  int32
		distance int
	}
	at := map[key]int{}
	for _, c := range courses {
		k := key{c.network, c.DistanceM}
		i, ok := at[k]
		if !ok {
			i = len(t.Sets)
			at[k] = i
			t.Sets = append(t.Sets, CourseSet{DistanceM: c.DistanceM, Network: c.network})
		}
		t.Sets[i].Courses = append(t.Sets[i].Courses, c)
	}
	last := func(network int32) int32 { // 0, not known, goes last
		if network == 0 {
			return math.MaxInt32
		}
		return network
	}
	slices.SortFunc(t.Sets, func(a, b CourseSet) int {
		return cmp.Or(cmp.Compare(last(a.Network), last(b.Network)), cmp.Compare(b.results(), a.results()), cmp.Compare(a.DistanceM, b.DistanceM))
	})
	for _, set := range t.Sets {
		slices.SortFunc(set.Courses, func(a, b CourseSpeed) int {
			switch {
			case a.Index != nil && b.Index != nil:
				return cmp.Or(cmp.Compare(*b.Index, *a.Index), cmp.Compare(a.Course, b.Course))
			case a.Index != nil:
				return -1
			case b.Index != nil:
				return 1
			}
			return cmp.Compare(a.Course, b.Course)
		})
		rank := 0
		for i := range set.Courses {
			if set.Courses[i].Standing == speed.Published.String() {
				rank++
				set.Courses[i].Rank = rank
			}
		}
	}
	return t, nil
}

func (s CourseSet) results() int {
	n := 0
	for _, c := range s.Courses {
		n += c.Results
	}
	return n
}

// courseSpeeds reads every course, in order of name and distance.
func (pl *Pipeline) courseSpeeds(ctx context.Context) ([]CourseSpeed, error) {
	rows, err := pl.DB.QueryContext(ctx, `
		select c.course_no, c.course, c.name, c.distance_m, c.measured, coalesce(i.group_no, -1), coalesce(i.network, 0), coalesce(i.effect, 0), coalesce(i.sd, 0),
			coalesce(i.results, 0), coalesce(i.runs, 0), coalesce(i.shared_runners, 0), coalesce(i.standing, 0), coalesce(i.reason, '')
		from record.course c left join insight.course i on i.course_no = c.course_no
		order by c.course, c.distance_m`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []CourseSpeed
	for rows.Next() {
		var c CourseSpeed
		var k speed.Course
		if err := rows.Scan(&c.no, &c.Course, &c.Name, &c.DistanceM, &c.Measured, &c.group, &c.network, &k.Effect, &k.SD, &c.Results, &c.Runs, &c.SharedRunners, &k.Standing, &c.Reason); err != nil {
			return nil, err
		}
		c.Standing, c.Link = k.Standing.String(), linkWords(c.SharedRunners)
		if c.Results == 0 && c.Reason == "" {
			c.Reason = speed.NoResults.String()
		}
		if k.Standing != speed.NoIndex {
			index := k.SpeedIndex()
			low, high := k.SpeedInterval()
			s, sLow, sHigh := speed.SecondsAt25(k.Effect, k.SD)
			c.Index, c.Low, c.High, c.Seconds, c.SecondsLow, c.SecondsHigh = &index, &low, &high, &s, &sLow, &sHigh
		}
		out = append(out, c)
	}
	return out, rows.Err()
}

// distanceAt is a distance at the end of a course's name: "alder-bank 3 km".
var distanceAt = regexp.MustCompile(`^(.*?)[\s,(]+(\d+(?:[.,]\d+)?)\s*(km|k|miles?|mi|m)\)?$`)

// findCourses gives the courses that a name may mean: one for each distance of
// the venue, or only that of the distance written after the name.
func (pl *Pipeline) findCourses(ctx context.Context, name string) ([]CourseSpeed, error) {
	all, err := pl.courseSpeeds(ctx)
	if err != nil {
		return nil, err
	}
	of := func(name string, metres float64) (out []CourseSpeed) {
		course := pl.courses.resolve(name)
		for _, c := range all {
			if c.Course == course && (metres == 0 || math.Abs(float64(c.DistanceM)-metres) < 1) {
				out = append(out, c)
			}
		}
		return out
	}
	found := of(name, 0)
	if m := distanceAt.FindStringSubmatch(name); len(found) == 0 && m != nil {
		d, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
		if err != nil {
			return nil, err
		}
		switch m[3] {
		case "km", "k":
			d *= 1000
		case "mile", "miles", "mi":
			d *= unit.Mile
		}
		found = of(m[1], d)
	}
	if len(found) == 0 {
		var names []string
		for _, c := range all {
			names = append(names, c.Course)
		}
		if names = slices.Compact(names); len(names) == 0 {
			return nil, errors.New("there are no courses yet: load a sheet first")
		}
		more := ""
		if len(names) > 12 {
			names, more = names[:12], " … (lapwing courses lists them all)"
		}
		return nil, fmt.Errorf("there is no course %q. The courses are: %s%s", name, strings.Join(names, ", "), more)
	}
	return found, nil
}

// ConvertRequest asks what a time on one course amounts to on another. With a
// day, the conditions of that day's run are allowed for, and the two courses
// may be the same.
type ConvertRequest struct {
	TimeMS   int32
	From, To string   // any name of the course, a distance may follow: "alder-bank 3 km"
	Day      unit.Day // 0: an average day
	Session  string   // where the day had several runs
}

// Conversion is a time carried to another course; times are in seconds.
type Conversion struct {
	TimeS       int32   `json:"time_s"`
	From        string  `json:"from"`
	To          string  `json:"to"`
	DistanceM   int     `json:"distance_m"`
	Date        string  `json:"date,omitempty"`
	ConditionS  float64 `json:"condition_s,omitempty"` // that day at 25:00, + is slower
	Seconds     float64 `json:"converted_s"`           // on an average day
	Low         float64 `json:"low_s"`                 // 90 % interval
	High        float64 `json:"high_s"`
	DayLow      float64 `json:"one_day_low_s"` // 90 % interval on any one day
	DayHigh     float64 `json:"one_day_high_s"`
	Provisional bool    `json:"provisional"` // one of the courses is not certain enough to be ranked

	fromName, toName string
}

// Words says the conversion in a few lines.
func (c *Conversion) Words() []string {
	clock := func(s float64) string { return unit.Clock(int32(math.Round(s))) }
	where := c.fromName
	if c.toName != c.fromName {
		where += " → " + c.toName
	}
	out := []string{fmt.Sprintf("%s, %s", where, unit.Distance(c.DistanceM))}
	if c.Date != "" {
		day := "much as usual"
		if s := int(math.Round(math.Abs(c.ConditionS))); s > 0 {
			day = fmt.Sprintf("%d s slower than usual there", s)
			if c.ConditionS < 0 {
				day = fmt.Sprintf("%d s faster than usual there", s)
			}
			day += " for a time of 25:00"
		}
		out = append(out, fmt.Sprintf("%s was %s; that is allowed for.", c.Date, day))
	}
	out = append(out,
		fmt.Sprintf("%s → %s (%s–%s) on an average day", unit.Clock(c.TimeS), clock(c.Seconds), clock(c.Low), clock(c.High)),
		fmt.Sprintf("On any one day, whatever its conditions: most likely between %s and %s.", clock(c.DayLow), clock(c.DayHigh)))
	if c.Provisional {
		out = append(out, "Provisional: one of the courses is still uncertain.")
	}
	return append(out, "An estimate for an equal effort, never a personal best.")
}

// Convert carries a time from one course to another with the last fit. Where
// that can't be done the error says why.
func (pl *Pipeline) Convert(ctx context.Context, q ConvertRequest) (*Conversion, error) {
	from, err := pl.findCourses(ctx, q.From)
	if err != nil {
		return nil, err
	}
	to, err := pl.findCourses(ctx, q.To)
	if err != nil {
		return nil, err
	}
	var day *dayOfCourse
	if q.Day != 0 {
		if day, err = pl.dayOf(ctx, from, q); err != nil {
			return nil, err
		}
		from = []CourseSpeed{day.course}
	}
	a, b, err := pair(from, to)
	if err != nil {
		return nil, err
	}
	if a.no == b.no && day == nil {
		return nil, fmt.Errorf("%s is both courses. To see what a time was worth on an average day there, give the day: --date", a.Name)
	}
	known, err := pl.keptCourses(ctx)
	if err != nil {
		return nil, err
	}
	fit, err := pl.speedFit(ctx)
	if err != nil {
		return nil, err
	}
	s := speed.Solution{Hyper: fit.Fitted}
	at := map[int32]int{}
	for i, c := range known {
		s.Courses = append(s.Courses, c.Course)
		at[c.no] = i
	}
	i, ok := at[a.no]
	j, ok2 := at[b.no]
	if !ok || !ok2 {
		return nil, whyNoConversion(a, b)
	}
	out := &Conversion{TimeS: unit.CeilSeconds(q.TimeMS), From: a.Course, To: b.Course, DistanceM: a.DistanceM, fromName: a.Name, toName: b.Name}
	var run speed.Run
	if day != nil {
		run = day.run
		out.Date = q.Day.String()
		out.ConditionS, _, _ = speed.SecondsAt25(run.Effect, 0)
	}
	c, ok := s.ConvertFrom(float64(out.TimeS), i, j, run)
	if !ok {
		return nil, whyNoConversion(a, b)
	}
	out.Seconds, out.Low, out.High, out.DayLow, out.DayHigh = c.Seconds, c.Low, c.High, c.DayLow, c.DayHigh
	provisional := speed.Provisional.String()
	out.Provisional = a.no != b.no && (a.Standing == provisional || b.Standing == provisional)
	return out, nil
}

// dayOfCourse is a run that a time was run in.
type dayOfCourse struct {
	course CourseSpeed
	run    speed.Run
}

// dayOf finds the run that a request names, on one of the courses.
func (pl *Pipeline) dayOf(ctx context.Context, courses []CourseSpeed, q ConvertRequest) (*dayOfCourse, error) {
	var found []dayOfCourse
	var sessions []string
	for _, c := range courses {
		rows, err := pl.DB.QueryContext(ctx, `select r.session, i.fitted, i.fitted_sd, i.effect is not null
			from record.run r left join insight.run i on i.run_no = r.run_no
			where r.course_no = ? and r.run_date = ?::date and (? = '' or r.session = ?) order by r.session`, c.no, q.Day.String(), q.Session, q.Session)
		if err != nil {
			return nil, err
		}
		for rows.Next() {
			var session string
			var effect, sd *float64
			var stated bool
			if err := rows.Scan(&session, &effect, &sd, &stated); err != nil {
				return nil, errors.Join(err, rows.Close())
			}
			d := dayOfCourse{course: c}
			if stated {
				d.run = speed.Run{Effect: *effect, SD: *sd, Stated: true}
			}
			found = append(found, d)
			sessions = append(sessions, strings.TrimSpace(unit.Distance(c.DistanceM)+" "+session))
		}
		if err := errors.Join(rows.Err(), rows.Close()); err != nil {
			return nil, err
		}
	}
	switch {
	case len(found) == 0:
		return nil, fmt.Errorf("no run of %s on %s is loaded", courses[0].Name, q.Day)
	case len(found) > 1:
		return nil, fmt.Errorf("%s had several runs on %s: %s. Say which: the distance after the course's name, or --session", courses[0].Name, q.Day, strings.Join(sessions, "; "))
	case !found[0].run.Stated:
		return nil, fmt.Errorf("the conditions of %s on %s are not known: that takes 5 timed results of named runners on the course as measured", courses[0].Name, q.Day)
	}
	return &found[0], nil
}

// pair chooses one course of each by their distance.
func pair(from, to []CourseSpeed) (a, b CourseSpeed, err error) {
	var pairs [][2]CourseSpeed
	for _, x := range from {
		for _, y := range to {
			if x.DistanceM == y.DistanceM {
				pairs = append(pairs, [2]CourseSpeed{x, y})
			}
		}
	}
	// a distance that is not in use on both sides is hardly meant
	if len(pairs) > 1 {
		pairs = slices.DeleteFunc(pairs, func(p [2]CourseSpeed) bool { return p[0].Index == nil || p[1].Index == nil })
	}
	switch {
	case len(pairs) == 1:
		return pairs[0][0], pairs[0][1], nil
	case len(pairs) > 1:
		var which []string
		for _, p := range pairs {
			which = append(which, strconv.Quote(p[0].Course+" "+unit.Distance(p[0].DistanceM)))
		}
		return a, b, fmt.Errorf("%s has courses of several distances. Say which: --from %s", from[0].Name, strings.Join(which, " or "))
	}
	return from[0], to[0], whyNoConversion(from[0], to[0])
}

// whyNoConversion says why a time can't be carried from a to b.
func whyNoConversion(a, b CourseSpeed) error {
	switch {
	case a.DistanceM != b.DistanceM:
		return fmt.Errorf("%s is %s and %s %s: a time is only carried over between courses of one distance", a.Name, unit.Distance(a.DistanceM), b.Name, unit.Distance(b.DistanceM))
	case a.network != b.network && a.network > 0 && b.network > 0:
		return fmt.Errorf("%s and %s can't be compared: no chain of runners who have run here and there links them", a.Name, b.Name)
	}
	for _, c := range []CourseSpeed{a, b} {
		if c.Index == nil {
			return fmt.Errorf("%s can't be compared yet: %s", c.Name, c.Reason)
		}
	}
	return fmt.Errorf("%s and %s can't be compared", a.Name, b.Name)
}
