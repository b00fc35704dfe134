package pipeline

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// TestSomeLinesAtRandom lives through weeks of a messy district in random order:
// new, corrected, late, partial and two-part sheets, sheets withdrawn and
// restored, decisions, volunteers, waiting sheets, refreshes cut short and
// processes killed. After each step, what stands must be what a refresh of
// everything makes of the same archive, and at the end what a rebuild makes of
// it.
//
// LAPWING_TEST_SEEDS=FROM-TO runs other seeds.
func TestSomeLinesAtRandom(t *testing.T) {
	from, to, steps := 1, 2, 14
	if s := os.Getenv("LAPWING_TEST_SEEDS"); s != "" {
		if _, err := fmt.Sscanf(s, "%d-%d", &from, &to); err != nil || from > to {
			t.Fatalf("LAPWING_TEST_SEEDS=%q: want FROM-TO", s)
		}
		steps = 40
	}
	some, compared := 0, 0
	for seed := from; seed <= to; seed++ {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			w := newWeeks(t, uint64(seed))
			// Refreshes are cut short by the clock, so a slow machine may need more steps
			// to show enough.
			for n := 0; n < steps || n < 4*steps && (w.some < 2 || w.compared < 1); n++ {
				w.step()
			}
			w.rebuilt()
			t.Logf("%s", w.said())
			some, compared = some+w.some, compared+w.compared
		})
	}
	if t.Failed() {
		return
	}
	if some < 2*(to-from+1) || compared < to-from+1 {
		t.Errorf("%d refreshes of some lines, %d of them compared: the test shows too little", some, compared)
	}
}

// weeks is a district's archive on its way through random weeks.
type weeks struct {
	t    *testing.T
	seed uint64
	r    *rand.Rand
	dir  string
	pl   *Pipeline
	last unit.Day // newest run loaded at first

	coming []string // sheets held back, in the order of coming
	old    []string // texts that were loaded and may come again
	parts  []string // of two-part sheets, the part still to come
	asked  []asking // sheets that wait
	n      int      // sheets made up so far
	names  []string // people of the district
	did    []string

	some, compared, parted int
	before                 map[string]int
}

type asking struct {
	path string
	hand ByHand
}

func newWeeks(t *testing.T, seed uint64) *weeks {
	w := &weeks{t: t, seed: seed, r: rand.New(rand.NewPCG(seed, 'w')), dir: t.TempDir(), before: map[string]int{}}
	truth, err := scenario.District(w.dir, scenario.DistrictOptions{Seed: 7000 + seed, People: 420, Courses: 8, Weeks: 20, Workbooks: seed%4 == 0,
		Numbers: []scenario.Numbering{scenario.AllNumbers, scenario.SomeNumbers, scenario.NoNumbers}[seed%3]})
	w.must(err)
	for _, r := range truth.Runs {
		w.last = max(w.last, r.Date)
	}
	unseen := truth.Courses[len(truth.Courses)-1].Slug
	var late []string
	w.must(filepath.WalkDir(filepath.Join(w.dir, "sheets"), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, date, _ := strings.Cut(strings.TrimSuffix(e.Name(), filepath.Ext(path)), "_")
		day, bad := unit.Day(0), error(nil)
		if len(date) >= 10 {
			day, bad = unit.ParseDay(date[:10])
		}
		if len(date) < 10 || bad != nil {
			return nil
		}
		switch text := filepath.Ext(path) == ".csv"; {
		case day > w.last-14, name == unseen && day > w.last-60 || w.r.Float64() < .06:
			to := filepath.Join(w.dir, "later", e.Name())
			late = append(late, to)
			w.must(os.MkdirAll(filepath.Dir(to), 0o755))
			return os.Rename(path, to)
		case name == unseen:
			return os.Remove(path)
		case text:
			w.old = append(w.old, path)
		}
		return nil
	}))
	slices.SortFunc(late, func(a, b string) int { return strings.Compare(filepath.Base(a), filepath.Base(b)) })
	w.r.Shuffle(len(late), func(a, b int) { late[a], late[b] = late[b], late[a] })
	w.coming = late
	w.open()
	w.load(ByHand{}, filepath.Join(w.dir, "sheets"))
	_, err = w.pl.Refresh(context.Background(), false)
	w.must(err)
	w.names = dump(t, w.pl, "select name from record.runner where name not like '%\"%' order by runner_no")
	w.sideTables(unseen, truth)
	w.must(w.pl.Close())
	w.open() // history.csv is read then
	for range 6 {
		w.decide()
	}
	_, err = w.pl.Refresh(context.Background(), false)
	w.must(err)
	w.must(w.pl.Reported(context.Background()))
	return w
}

func (w *weeks) open() {
	s := DefaultSettings()
	s.Archive = filepath.Join(w.dir, "archive")
	s.AgeGroups = []string{ageGroupsJuniorsByYear, ageGroupsByDay, ageGroupsByYear}[w.seed%3]
	pl, err := Open(context.Background(), s, ReadWrite, nil)
	w.must(err)
	pl.fewLines = 400
	w.pl = pl
	w.t.Cleanup(func() { _ = pl.Close() })
}

func (w *weeks) must(err error) {
	w.t.Helper()
	if err != nil {
		w.t.Fatalf("after %s: %v", strings.Join(w.did, "; "), err)
	}
}

func (w *weeks) load(hand ByHand, paths ...string) {
	w.t.Helper()
	_, err := w.pl.Load(context.Background(), paths, hand)
	w.must(err)
}

func pickOne[T any](r *rand.Rand, list []T) T { return list[r.IntN(len(list))] }

func (w *weeks) person() string {
	switch w.r.IntN(12) {
	case 0:
		return "Nobody Everseen"
	case 1:
		return "R" + strconv.Itoa(1+w.r.IntN(len(w.names)))
	}
	return pickOne(w.r, w.names)
}

func (w *weeks) day() unit.Day { return w.last - unit.Day(w.r.IntN(140)) }

// sideTables writes the tables that people keep by hand, with their usual
// faults: names of nobody and of several, dates of birth that don't fit.
func (w *weeks) sideTables(unseen string, truth *scenario.Truth) {
	var v, m, h strings.Builder
	v.WriteString("name,role,course,date\n")
	for range 60 {
		fmt.Fprintf(&v, "%s,timekeeper,%s,%s\n", w.person(), pickOne(w.r, truth.Courses).Slug, w.day())
	}
	m.WriteString("person,club,claim,from,to,birth_date\n")
	for range 60 {
		born := ""
		if w.r.IntN(2) == 0 {
			born = fmt.Sprintf("%d-%02d-11", 1945+w.r.IntN(60), 1+w.r.IntN(12))
		}
		fmt.Fprintf(&m, "%s,Larkhill Striders,,,,%s\n", w.person(), born)
	}
	h.WriteString("fact,course,name,sex,age_group,distance_m,finishes,time,date\n")
	for _, c := range truth.Courses {
		if w.r.IntN(2) == 0 {
			fmt.Fprintf(&h, "complete from,%s,,,,,,,%s\n", c.Slug, w.last-unit.Day(60+w.r.IntN(90)))
		}
	}
	counted := map[string]bool{}
	for range 40 {
		p, course := w.person(), ""
		if w.r.IntN(2) == 0 {
			course = pickOne(w.r, truth.Courses).Slug
		}
		if w.r.IntN(6) == 0 {
			course = unseen
		}
		switch w.r.IntN(3) {
		case 0:
			// two rows of one runner must have one date, and an id may be anybody
			if !counted[p] && p[0] != 'R' {
				fmt.Fprintf(&h, "finishes before,%s,%s,,,,%d,,2026-01-01\n", course, p, w.r.IntN(99))
			}
			counted[p] = true
		case 1:
			fmt.Fprintf(&h, "best before,%s,%s,,,,,%d:%02d,2025-06-07\n", course, p, 17+w.r.IntN(15), w.r.IntN(60))
		default:
			fmt.Fprintf(&h, "record,%s,%s,%s,,,,%d:%02d,2025-05-03\n", pickOne(w.r, truth.Courses).Slug, p, pickOne(w.r, []string{"M", "W", ""}), 15+w.r.IntN(3), w.r.IntN(60))
		}
	}
	for name, text := range map[string]string{"volunteers.csv": v.String(), "members.csv": m.String(), "history.csv": h.String()} {
		w.must(os.WriteFile(filepath.Join(w.dir, "archive", name), []byte(text), 0o644))
	}
}

// decide settles something about a random line, runner, run or problem.
func (w *weeks) decide() string {
	d := Decision{By: "Una Desk"}
	line := func() {
		at := strings.Split(pickOne(w.r, dump(w.t, w.pl, `select s.hash || '|' || p.tab || '|' || l.row_number from record.line l
			join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no order by l.line_no`)), "|")
		d.Sheet, d.Tab = at[0], at[1]
		d.Row, _ = strconv.Atoi(at[2])
	}
	runner := func() {
		d.Runner = "R" + pickOne(w.r, dump(w.t, w.pl, "select runner_no::varchar from record.runner order by runner_no"))
	}
	switch k := w.r.IntN(9); k {
	case 0:
		line()
		d.Kind, d.Value = DecideTime, fmt.Sprintf("%d:%02d", 19+w.r.IntN(20), w.r.IntN(60))
	case 1:
		line()
		d.Kind, d.Value = DecideName, pickOne(w.r, w.names)
	case 2:
		line()
		d.Kind, d.Value = DecideClub, "Larkhill Striders"
	case 3:
		line()
		d.Kind, d.Value = DecideStatus, pickOne(w.r, []string{"dq", "dnf", notAFinisher})
	case 4:
		runner()
		d.Kind, d.Value = DecidePrintName, "Someone Else"
	case 5:
		runner()
		d.Kind = DecideHide
	case 6:
		line()
		d.Kind, d.Value = DecideRecord, pickOne(w.r, []string{recordConfirmed, recordVoid})
	case 7:
		run := strings.Split(pickOne(w.r, dump(w.t, w.pl, "select course || '|' || run_date from main.runs order by all")), "|")
		d.Kind, d.Course, d.Value = DecideRunState, run[0], pickOne(w.r, []string{"short by 120 m", "times lost", "held"})
		day, err := unit.ParseDay(run[1])
		w.must(err)
		d.Date = day
	default:
		runner()
		d.Kind, d.Value = DecideCategory, pickOne(w.r, []string{"M", "W", "X"})
	}
	_, err := w.pl.AppendDecisions([]Decision{d})
	w.must(err)
	return "decision: " + d.Kind
}

// write keeps text as a new file named like a sheet of a run.
func (w *weeks) write(base string, data []byte) string {
	w.n++
	path := filepath.Join(w.dir, "made", strconv.Itoa(w.n), base)
	w.must(os.MkdirAll(filepath.Dir(path), 0o755))
	w.must(os.WriteFile(path, data, 0o644))
	return path
}

var clockOnSheet = regexp.MustCompile(`(\d\d[:.])([0-5])(\d)`)

// otherIssue is a sheet that was loaded, with some lines changed.
func (w *weeks) otherIssue() (path string, ok bool) {
	from := pickOne(w.r, w.old)
	data, err := os.ReadFile(from)
	w.must(err)
	lines := bytes.SplitAfter(data, []byte("\n"))
	if len(lines) < 12 {
		return "", false
	}
	for range 1 + w.r.IntN(4) {
		k := 6 + w.r.IntN(len(lines)-6)
		switch w.r.IntN(4) {
		case 0:
			lines = slices.Delete(slices.Clone(lines), k, k+1)
		case 1:
			lines[k] = clockOnSheet.ReplaceAllFunc(lines[k], func(b []byte) []byte {
				c := bytes.Clone(b)
				c[len(c)-1] = '0' + (c[len(c)-1]-'0'+3)%10
				return c
			})
		case 2: // a slip in a name
			at := regexp.MustCompile(`[a-z]{4}`).FindIndex(lines[k])
			if at != nil {
				lines[k] = slices.Concat(lines[k][:at[0]+1], lines[k][at[0]+2:])
			}
		default: // another person
			if p := regexp.MustCompile(`[A-Z][a-z]+ [A-Z][a-z]+`); p.Match(lines[k]) {
				lines[k] = p.ReplaceAll(lines[k], []byte(pickOne(w.r, w.names)))
			}
		}
		if len(lines) < 10 {
			break
		}
	}
	path = w.write(filepath.Base(from), bytes.Join(lines, nil))
	w.old = append(w.old, path)
	return path, true
}

func (w *weeks) excerpt() (path string, ok bool) {
	from := pickOne(w.r, w.old)
	data, err := os.ReadFile(from)
	w.must(err)
	lines := bytes.SplitAfter(data, []byte("\n"))
	if len(lines) < 16 {
		return "", false
	}
	out := slices.Clone(lines[:6])
	for _, l := range lines[6:] {
		if w.r.IntN(3) == 0 {
			if w.r.IntN(5) == 0 {
				l = clockOnSheet.ReplaceAll(l, []byte("${1}${2}1"))
			}
			out = append(out, l)
		}
	}
	return w.write(filepath.Base(from), bytes.Join(out, nil)), true
}

// field of a run made up of known people.
func (w *weeks) finishers(n int) []string {
	people := slices.Clone(w.names)
	w.r.Shuffle(len(people), func(a, b int) { people[a], people[b] = people[b], people[a] })
	people = people[:min(n, len(people))]
	if w.r.IntN(2) == 0 {
		people = append(people, fmt.Sprintf("Newt Comer%c", 'a'+rune(w.r.IntN(26))))
	}
	return people
}

func (w *weeks) aRun() string {
	base := filepath.Base(pickOne(w.r, w.old))
	course, _, _ := strings.Cut(base, "_")
	return course + "_" + (w.last - 100 + unit.Day(w.r.IntN(116))).String() + ".csv"
}

func full(people []string) string {
	var b strings.Builder
	b.WriteString("Pos,Name,Time,Sex\n")
	for i, p := range people {
		fmt.Fprintf(&b, "%d,%s,%d:%02d,%s\n", i+1, p, 18+i/2, i%2*30+len(p)%25, []string{"M", "W"}[len(p)%2])
	}
	return b.String()
}

// step does one random thing, brings the figures up to date and compares.
func (w *weeks) step() {
	ctx := context.Background()
	var did string
	switch k := w.r.IntN(22); {
	case k < 6:
		if len(w.coming) == 0 {
			return
		}
		did = "new sheet " + filepath.Base(w.coming[0])
		w.load(ByHand{}, w.coming[0])
		if filepath.Ext(w.coming[0]) == ".csv" {
			w.old = append(w.old, w.coming[0])
		}
		w.coming = w.coming[1:]
	case k < 10:
		path, ok := w.otherIssue()
		if !ok {
			return
		}
		did = "corrected " + filepath.Base(path)
		w.load(ByHand{}, path)
	case k < 12:
		path, ok := w.excerpt()
		if !ok {
			return
		}
		did = "excerpt " + filepath.Base(path)
		w.load(ByHand{}, path)
	case k == 12 && len(w.parts) > 0:
		did = "second part " + filepath.Base(w.parts[0])
		w.load(ByHand{}, w.parts[0])
		w.parts = w.parts[1:]
	case k <= 13:
		base, people := w.aRun(), w.finishers(12)
		var a, b strings.Builder
		a.WriteString("Pos,Time\n")
		b.WriteString("Pos,Name,Sex\n")
		for i, p := range people {
			fmt.Fprintf(&a, "%d,%d:%02d\n", i+1, 19+i, w.r.IntN(60))
			fmt.Fprintf(&b, "%d,%s,%s\n", i+1, p, []string{"M", "W"}[len(p)%2])
		}
		two := []string{w.write(base, []byte(a.String())), w.write(base, []byte(b.String()))}
		if w.r.IntN(2) == 0 {
			slices.Reverse(two)
		}
		did = "first part " + base
		w.load(ByHand{}, two[0])
		w.parts = append(w.parts, two[1])
	case k == 14:
		did = "the same sheet again"
		w.load(ByHand{}, pickOne(w.r, w.old))
	case k == 15:
		did = w.withdrawOrRestore()
	case k == 16:
		did = w.decide()
	case k == 17 && w.r.IntN(2) == 0:
		base := fmt.Sprintf("nook-of-%c%c_%s.csv", 'a'+rune(w.r.IntN(26)), 'a'+rune(w.r.IntN(26)), w.day())
		did = "unknown course " + base
		w.load(ByHand{}, w.write(base, []byte(full(w.finishers(10)))))
	case k == 17 && len(w.asked) > 0:
		did = "answer"
		w.load(w.asked[0].hand, w.asked[0].path)
		w.asked = w.asked[1:]
	case k == 18:
		course, _, _ := strings.Cut(filepath.Base(pickOne(w.r, w.old)), "_")
		a := asking{w.write("results.csv", []byte(full(w.finishers(9)))), ByHand{Course: course, Date: w.day().String()}}
		did = "a sheet that waits"
		w.load(ByHand{}, a.path)
		w.asked = append(w.asked, a)
	case k == 19 && w.r.IntN(2) == 0:
		did = "volunteer"
		f, err := os.OpenFile(filepath.Join(w.dir, "archive", "volunteers.csv"), os.O_APPEND|os.O_WRONLY, 0)
		w.must(err)
		_, err = fmt.Fprintf(f, "%s,marshal,,%s\n", w.person(), w.day())
		w.must(errors.Join(err, f.Close()))
	case k == 20:
		did = "closed and opened"
		if w.r.IntN(2) == 0 {
			did, w.pl.trusted = "killed and opened", false
		}
		w.must(w.pl.Close())
		w.open()
	default:
		if len(w.coming) == 0 {
			return
		}
		did = "a refresh cut short after " + filepath.Base(w.coming[0])
		w.load(ByHand{}, w.coming[0])
		w.coming = w.coming[1:]
		short, stop := context.WithTimeout(ctx, time.Duration(w.r.IntN(250))*time.Millisecond)
		_, err := w.pl.Refresh(short, false)
		stop()
		if err != nil {
			did += " (cut)"
		}
		if w.r.IntN(2) == 0 {
			w.must(w.pl.Close())
			w.open()
		}
	}
	w.did = append(w.did, did)
	w.before[strings.Fields(did)[0]]++
	if w.r.IntN(4) == 0 {
		return // the next step comes before a refresh
	}
	w.pl.Timings = nil
	_, err := w.pl.Refresh(ctx, false)
	w.must(err)
	if someRefreshed(w.pl) {
		w.some++
		w.did[len(w.did)-1] += " [some]"
		w.looked()
	}
	if w.r.IntN(3) > 0 {
		w.compare()
	}
	if w.r.IntN(2) == 0 {
		w.must(w.pl.Reported(ctx))
	}
}

func (w *weeks) withdrawOrRestore() string {
	ledger, err := w.pl.Archive.Ledger()
	w.must(err)
	var gone, there []store.Entry
	for _, e := range ledger {
		switch e.State {
		case store.Withdrawn:
			gone = append(gone, e)
		case store.Loaded:
			there = append(there, e)
		}
	}
	state, list := store.Withdrawn, there
	if len(gone) > 0 && w.r.IntN(2) == 0 {
		state, list = store.Loaded, gone
	} else if w.r.IntN(2) == 0 {
		list = there[len(there)-1:]
	}
	e := pickOne(w.r, list)
	_, err = w.pl.SetState(context.Background(), e.Hash, state)
	w.must(err)
	return fmt.Sprint(state, " ", e.Path)
}

// looked compares the changed runs that the touched ones give with those that
// all give.
func (w *weeks) looked() {
	ctx := context.Background()
	touched, err := w.pl.ChangedRuns(ctx)
	w.must(err)
	was, err := w.pl.state(ctx, stateLooked)
	w.must(err)
	w.must(w.pl.setState(ctx, stateLooked, ""))
	all, err := w.pl.ChangedRuns(ctx)
	w.must(err)
	w.must(w.pl.setState(ctx, stateLooked, was))
	if fmt.Sprint(touched) != fmt.Sprint(all) {
		w.t.Errorf("after %s: runs found changed\n%v, by looking at all\n%v", strings.Join(w.did, "; "), touched, all)
	}
}

// The facts that must agree. The first columns are a line or runner; runners
// are compared as the lines that are theirs.
var (
	factsOfLines = `select r.line_no, concat_ws('|', r.status, r.counts, r.sex, r.age_low, r.age_high, r.group_age, r.same_as, coalesce(d.words, ''), r.time_ms, r.taking_part,
		r.run_no, r.position, r.part_no, i.open_standard_s, i.age_factor, i.age_factor_most, i.age_factor_least, i.first_result, i.runs_total, i.milestone, i.is_pb,
		i.previous_best_s, i.pb_margin_s, i.is_course_best, i.course_best_margin_s, i.pb_streak, i.attendance_streak, i.attendance_since, i.newcomer, i.visitor, i.days_since_last)
		from record.result r left join insight.result i on i.line_no = r.line_no left join record.doubt d on d.doubt = r.doubt order by r.line_no`
	factsOfRunners = map[string]string{
		"runner":      "select runner_no, concat_ws('|', name, name_key, sex, birth_lo, birth_hi, club, hidden, wished, may_be_child, group_age) from record.runner order by runner_no",
		"ranked":      "select runner_no, concat_ws('|', sex, first_age, run_no, time_s, grade) from insight.ranked order by all",
		"form":        "select runner_no, concat_ws('|', results, last_day) from insight.runner order by runner_no",
		"member":      "select coalesce(try_cast(regexp_extract(m::varchar, '''runner_no'': ([0-9]+)', 1) as integer), 0), regexp_replace(m::varchar, '''runner_no'': [0-9]+', '') from record.member m order by all",
		"volunteer":   "select runner_no, concat_ws('|', name, role, course, run_date) from record.volunteer order by all",
		"held record": "select 0, h::varchar from record.held_record h order by all",
	}
	factsOfAll = map[string]string{
		"problem":    "select concat_ws('|', sheet, tab, row_number, column_letter, severity, kind, read, expected, todo, sheet_no, run_no, settled) from main.problems where kind not in ('codes-exchanged', 'name-doubtful') order by all",
		"club":       "select concat_ws('|', received, club) from record.club order by all",
		"run":        "select concat_ws('|', run_no, results, print) from insight.run order by run_no",
		"decision":   "select d::varchar from record.decision d order by all",
		"correction": "select c::varchar from record.correction c order by all",
		"state":      "select r::varchar from record.record_state r order by all",
		"run state":  "select r::varchar from record.run_state r order by all",
	}
)

type snapshot struct {
	owner   map[int32]int32  // runner by line
	lines   map[int32]string // facts by line
	runners map[string]map[string][]string
	all     map[string][]string
	key     map[int32]string // by runner: its lines
}

func (w *weeks) snapshot() *snapshot {
	s := &snapshot{map[int32]int32{}, map[int32]string{}, map[string]map[string][]string{}, map[string][]string{}, map[int32]string{0: "nobody"}}
	pairs := func(query string, f func(no int32, text string)) {
		rows, err := w.pl.DB.QueryContext(context.Background(), query)
		w.must(err)
		defer rows.Close()
		for rows.Next() {
			var no int32
			var text string
			w.must(rows.Scan(&no, &text))
			f(no, text)
		}
		w.must(rows.Err())
	}
	pairs("select runner_no, string_agg(line_no, ' ' order by line_no) from record.result where runner_no > 0 group by runner_no", func(no int32, text string) { s.key[no] = text })
	pairs("select line_no, runner_no::varchar from record.result", func(no int32, text string) {
		n, _ := strconv.Atoi(text)
		s.owner[no] = int32(n)
	})
	pairs(factsOfLines, func(no int32, text string) { s.lines[no] = text })
	for what, query := range factsOfRunners {
		s.runners[what] = map[string][]string{}
		pairs(query, func(no int32, text string) {
			s.runners[what][s.key[no]] = append(s.runners[what][s.key[no]], text)
		})
	}
	for what, query := range factsOfAll {
		s.all[what] = dump(w.t, w.pl, query)
	}
	return s
}

// compare refreshes everything, where that has been put off, and fails where
// something comes out otherwise that should not.
func (w *weeks) compare() {
	ctx := context.Background()
	if some, err := w.pl.state(ctx, stateSome); err != nil || some != "yes" {
		w.must(err)
		return
	}
	a := w.snapshot()
	w.must(w.pl.RefreshAll(ctx))
	b := w.snapshot()
	w.compared++
	fail := func(what string, have, want []string) {
		if d := diff(have, want); len(d) > 0 {
			w.t.Errorf("after %s\n%s: some lines (-) and all (+) differ:\n%s", strings.Join(w.did, "; "), what, strings.Join(d, "\n"))
		}
	}
	var have, want []string
	other, numbers := 0, 0
	for _, no := range slices.Sorted(maps.Keys(b.lines)) {
		if a.key[a.owner[no]] != b.key[b.owner[no]] {
			other++
			continue
		}
		if a.owner[no] != b.owner[no] {
			numbers++
		}
		if a.lines[no] != b.lines[no] {
			have, want = append(have, fmt.Sprint(no, " ", a.lines[no])), append(want, fmt.Sprint(no, " ", b.lines[no]))
		}
	}
	if len(a.lines) != len(b.lines) {
		w.t.Errorf("%d lines by some, %d by all", len(a.lines), len(b.lines))
	}
	fail("lines", have, want)
	for what := range factsOfRunners {
		have, want = nil, nil
		for k, text := range b.runners[what] {
			if was, ok := a.runners[what][k]; ok && !slices.Equal(was, text) {
				for i := range max(len(was), len(text)) {
					if i < len(was) && (i >= len(text) || was[i] != text[i]) {
						have = append(have, k[:min(len(k), 30)]+" "+was[i])
					}
					if i < len(text) && (i >= len(was) || was[i] != text[i]) {
						want = append(want, k[:min(len(k), 30)]+" "+text[i])
					}
				}
			} else if !ok && other == 0 {
				want = append(want, k+" "+strings.Join(text, "; "))
			}
		}
		if other == 0 || what == "runner" || what == "form" {
			fail(what, have, want)
		}
	}
	if other > 0 || numbers > 0 {
		w.parted++
		w.t.Logf("after %s: %d lines are otherwise owned, %d have another runner number", w.did[len(w.did)-1], other, numbers)
	}
	if other == 0 {
		for what := range factsOfAll {
			fail(what, a.all[what], b.all[what])
		}
	}
}

// rebuilt compares the archive with what a rebuild makes of its folder.
func (w *weeks) rebuilt() {
	ctx := context.Background()
	const facts = `select concat_ws('|', s.hash, p.tab, p.tab_index, l.row_number, r.runner_no, r.status, r.counts, r.sex, r.age_low, r.age_high, r.group_age, r.time_ms, r.position, r.taking_part,
		i.open_standard_s, i.age_factor, i.runs_total, i.milestone, i.is_pb, i.previous_best_s, i.is_course_best, i.pb_streak, i.attendance_streak, i.attendance_since, i.newcomer, i.visitor)
		from record.result r join record.line l on l.line_no = r.line_no join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
		left join insight.result i on i.line_no = r.line_no order by s.hash, p.tab_index, p.part_no, l.row_number, l.line_no`
	const model = `select concat_ws('|', s.hash, p.tab_index, l.row_number, i.adjusted_s, i.form_s, i.form_low, i.form_high, i.effort, i.is_adjusted_best)
		from insight.result i join record.line l on l.line_no = i.line_no join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
		order by s.hash, p.tab_index, p.part_no, l.row_number, l.line_no`
	const problems = "select concat_ws('|', sheet, tab, row_number, kind, read, expected, todo, settled) from main.problems order by all"
	w.must(w.pl.RefreshAll(ctx))
	queries := []string{facts, problems, model}
	var have [3][]string
	for i, q := range queries {
		have[i] = dump(w.t, w.pl, q)
	}
	w.must(w.pl.Close())
	pl, err := Open(ctx, w.pl.Settings, Afresh, nil)
	w.must(err)
	w.pl = pl
	w.t.Cleanup(func() { _ = pl.Close() })
	_, err = pl.Refresh(ctx, true)
	w.must(err)
	for i, q := range queries {
		if d := diff(have[i], dump(w.t, pl, q)); len(d) > 0 {
			w.t.Errorf("after %s: the archive (-) and a rebuild of it (+) differ:\n%s", strings.Join(w.did, "; "), strings.Join(d, "\n"))
			break // the model follows the facts
		}
	}
}

func (w *weeks) said() string {
	return fmt.Sprintf("%v; %d refreshes of some lines, %d compared, %d of them with other owners", w.before, w.some, w.compared, w.parted)
}
