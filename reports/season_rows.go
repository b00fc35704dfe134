package reports

import (
	"context"
	"database/sql"
	"sort"

	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
)

// season is everything that a season workbook says.
type season struct {
	o       Options
	s       SeasonOptions
	runs    []seasonRun
	results []seasonResult
	people  map[int32]*seasonPerson
	helped  []helpedRow
	days    map[int32][]unit.Day
	records []seasonRecord
	alltime []seasonRecord
	courses []courseRow
	latest  unit.Day

	rules    league.Rules
	runTable map[string][]league.Line // by list: "course/W"
	clubTab  map[string][]league.Line // by course
	clubs    []string                 // number → name
	clubAt   map[string]int32         // name → number
	improved []standing.Improved

	awarded bool     // the season is closed, and this is as it was then
	since   []string // how it differs from the season as closed, a line each
}

type seasonRun struct {
	day           unit.Day
	course        string
	session       string
	name, state   string
	finishers     int32
	cond, low, hi *float64
	complete      bool
	event         int32
}

// takenPlace says whether people ran: as held as usual or otherwise, as over a short course.
func (r *seasonRun) takenPlace() bool {
	return r.state == "held" || r.state != "cancelled" && r.finishers > 0
}

type seasonResult struct {
	runner    int32
	run       int32 // index of runs
	position  int32
	time      int32
	club      int32 // 0 none
	age       int16 // youngest, -1 not known
	timed     bool
	scores    bool
	claim     league.Claim
	protected bool
	certain   bool
	pb        bool
	newcomer  int8 // 1 yes, 0 no, -1 not known
	grade     float64
	group     string
}

type seasonPerson struct {
	name, sex         string
	protected, hidden bool
	form, change, sd  *float64
}

type helpedRow struct {
	day             unit.Day
	course          string
	runner          int32
	name            string // as published
	roles           string
	days, milestone int32 // of helping so far; the round number that this day was, 0 none
	hidden          bool
}

type seasonRecord struct {
	course, sex, group, runner, name string
	distance                         int32 // m, 0 where not known
	time                             int32
	day                              unit.Day
	was                              *int32
	state                            string // confirmed, earlier (than the sheets), or "" for a candidate
}

func readSeason(ctx context.Context, q Queryer, o Options, s SeasonOptions) (*season, error) {
	d := &season{o: o, s: s, people: map[int32]*seasonPerson{}, days: map[int32][]unit.Day{}, clubs: []string{""}, clubAt: map[string]int32{}}
	from, to := s.From.Time(), s.To.Time()
	index := map[seasonRunKey]int32{} // into runs
	steps := []struct {
		name string
		scan func(*sql.Rows) error
		args []any
	}{
		{"latest", func(rows *sql.Rows) error {
			var when day
			err := rows.Scan(&when)
			d.latest = when.Day
			return err
		}, nil},
		{"season_run", func(rows *sql.Rows) error {
			var r seasonRun
			var when day
			err := rows.Scan(&when, &r.course, &r.session, &r.name, &r.state, &r.finishers, &r.cond, &r.low, &r.hi, &r.complete)
			r.day, r.event = when.Day, int32(len(d.runs))
			index[seasonRunKey{r.course, r.session, r.day}] = r.event
			d.runs = append(d.runs, r)
			return err
		}, []any{from, to, s.Course}},
		{"season_result", func(rows *sql.Rows) error { return d.addResult(rows, index) }, []any{from, to, s.Course, s.Club, s.ByMembers}},
		{"season_person", func(rows *sql.Rows) error {
			var id int32
			p := &seasonPerson{}
			err := rows.Scan(&id, &p.name, &p.sex, &p.protected, &p.hidden, &p.form, &p.change, &p.sd)
			d.people[id] = p
			return err
		}, []any{from, to}},
		{"season_volunteer", func(rows *sql.Rows) error {
			var r helpedRow
			var when day
			var protected bool
			err := rows.Scan(&when, &r.course, &r.runner, &r.name, &r.roles, &r.days, &r.milestone, &protected, &r.hidden)
			r.day, r.name = when.Day, publicName(r.name, protected, r.hidden)
			d.helped = append(d.helped, r)
			return err
		}, []any{from, to, s.Course}},
		{"season_days", func(rows *sql.Rows) error {
			var id int32
			var when day
			var session string
			err := rows.Scan(&id, &when, &session)
			d.days[id] = append(d.days[id], when.Day)
			return err
		}, []any{from, to}},
		{"season_record", func(rows *sql.Rows) error {
			var r seasonRecord
			var when day
			var dist *int32
			err := rows.Scan(&r.course, &dist, &r.sex, &r.group, &r.runner, &r.name, &r.time, &when, &r.was, &r.state)
			r.day, r.distance = when.Day, or0(dist)
			d.records = append(d.records, r)
			return err
		}, []any{to, s.Course}},
		{"season_alltime", func(rows *sql.Rows) error {
			var r seasonRecord
			var when day
			var dist *int32
			err := rows.Scan(&r.course, &dist, &r.sex, &r.runner, &r.name, &r.time, &when)
			r.day, r.distance = when.Day, or0(dist)
			d.alltime = append(d.alltime, r)
			return err
		}, []any{to, s.Course}},
	}
	for _, step := range steps {
		if err := ask(ctx, q, step.name, step.scan, step.args...); err != nil {
			return nil, err
		}
	}
	var err error
	d.courses, err = readCourses(ctx, q)
	return d, err
}

// seasonRunKey tells the runs of a season apart.
type seasonRunKey struct {
	course, session string
	day             unit.Day
}

// addResult reads a row of season_result.
func (d *season) addResult(rows *sql.Rows, runs map[seasonRunKey]int32) error {
	var r seasonResult
	var when day
	var course, session, club, claim string
	var position, time, age *int32
	var grade *float64
	var newcomer *bool
	if err := rows.Scan(&course, &when, &session, &r.runner, &position, &time, &r.timed, &r.scores, &club,
		&r.group, &grade, &r.certain, &age, &r.protected, &newcomer, &r.pb, &claim); err != nil {
		return err
	}
	run, ok := runs[seasonRunKey{course, session, when.Day}]
	if !ok {
		return nil // a run that the runs view leaves out has no event to score in
	}
	r.run, r.position, r.time, r.age, r.newcomer = run, or0(position), or0(time), -1, -1
	if age != nil {
		r.age = int16(*age)
	}
	if grade != nil {
		r.grade = *grade
	}
	if newcomer != nil {
		r.newcomer = 0
		if *newcomer {
			r.newcomer = 1
		}
	}
	r.club = d.clubNumber(club)
	if claim == "second" {
		r.claim = league.SecondClaim
	}
	d.results = append(d.results, r)
	return nil
}

func (d *season) clubNumber(name string) int32 {
	if name == "" {
		return 0
	}
	n, ok := d.clubAt[name]
	if !ok {
		n = int32(len(d.clubs))
		d.clubs = append(d.clubs, name)
		d.clubAt[name] = n
	}
	return n
}

// listed says whether somebody may stand in the tables of this workbook: not a
// hidden person, and nobody who may be under 18 in a club's workbook, which
// would tell their club.
func (d *season) listed(r *seasonResult) bool {
	p := d.people[r.runner]
	return p != nil && !p.hidden && (d.s.Club == "" || !r.protected && !p.protected)
}

// scopes are the leagues: one a course, or a single one for a club, whose
// members are compared wherever they run.
func (d *season) scopes() []string {
	if d.s.Club != "" {
		return []string{""}
	}
	seen := map[string]bool{}
	var out []string
	for _, r := range d.runs {
		if !seen[r.course] {
			seen[r.course] = true
			out = append(out, r.course)
		}
	}
	sort.Strings(out)
	return out
}

// lists are the lists of a league: women, men, and everybody, those who are
// neither or did not say among them.
var lists = []string{"W", "M", ""}

// compute works out leagues and the most improved.
func (d *season) compute() error {
	d.rules = league.DefaultRules()
	if d.s.League != nil {
		d.rules = *d.s.League
	}
	d.runTable, d.clubTab = map[string][]league.Line{}, map[string][]league.Line{}
	for _, scope := range d.scopes() {
		byClub := []league.Result{}
		for list, sex := range lists {
			var rows []league.Result
			type once struct{ runner, run int32 }
			seen := map[once]bool{}
			for i := range d.results {
				r := &d.results[i]
				run := &d.runs[r.run]
				if !r.scores || r.position == 0 || scope != "" && run.course != scope || !d.listed(r) ||
					sex != "" && d.people[r.runner].sex != sex || seen[once{r.runner, r.run}] {
					continue
				}
				seen[once{r.runner, r.run}] = true
				x := league.Result{Runner: r.runner, Event: run.event, Day: run.day, Position: r.position, Club: r.club, Claim: r.claim}
				rows = append(rows, x)
				if x.List = int32(list); r.protected {
					x.Club = 0 // a child's run takes a place, and tells no club
				}
				if sex != "" {
					byClub = append(byClub, x)
				}
			}
			ran := map[int32]bool{}
			for _, r := range rows {
				ran[r.Runner] = true
			}
			var weeks []league.Helped
			// A week is credited in the league of the course where it was given.
			for _, h := range d.helped {
				if ran[h.runner] && (scope == "" || h.course == scope) {
					weeks = append(weeks, league.Helped{Runner: h.runner, Day: h.day})
				}
			}
			lines, err := league.Runners(rows, weeks, d.rules)
			if err != nil {
				return err
			}
			d.runTable[scope+"/"+sex] = lines
		}
		if d.s.Club == "" {
			lines, err := league.Clubs(byClub, d.scorers(), d.rules)
			if err != nil {
				return err
			}
			d.clubTab[scope] = lines
		}
	}
	d.judgeImproved()
	return nil
}

// scorers is how many members of a club score in a run.
func (d *season) scorers() int {
	if d.s.ClubScorers > 0 {
		return d.s.ClubScorers
	}
	return 4
}

// judgeImproved ranks the change of form, which the archive knows up to each
// runner's last result: so only while the season is the newest, and only for
// those whose last result lies in it.
func (d *season) judgeImproved() {
	if d.s.To < d.latest {
		return
	}
	youngest := map[int32]int{}
	for i := range d.results {
		r := &d.results[i]
		if d.listed(r) {
			youngest[r.runner] = max(0, int(r.age)) // the last one stands
		}
	}
	var ids []int32
	for id := range youngest {
		ids = append(ids, id)
	}
	sort.Slice(ids, func(i, j int) bool { return ids[i] < ids[j] })
	var all []standing.Candidate
	for _, id := range ids {
		p, days := d.people[id], d.days[id]
		if p.change == nil || p.sd == nil || len(days) == 0 {
			continue
		}
		all = append(all, standing.Candidate{Runner: id, Record: standing.RecordOf(days, d.s.From, days[len(days)-1]),
			YoungAge: youngest[id], Change: *p.change, SD: *p.sd})
	}
	d.improved = standing.MostImproved(all)
}
