package pipeline

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"lapwing/pipeline/scenario"
)

// speedTruth is what a made-up district knows about speed. Log times.
type speedTruth struct {
	courses map[string]float64   // by short name: the effect, with the mean of the conditions that the course had
	runs    map[string]float64   // by short name and date: conditions
	form    map[trueLine]float64 // all-out over a plain 5 km that day
}

type trueLine struct {
	sheet, tab string
	row        int
}

// addRun notes the truth of one run; done turns sums into means.
type truthSums struct {
	speedTruth
	sum, n map[string]float64
	effect map[string]float64
}

func newTruthSums() *truthSums {
	return &truthSums{speedTruth{map[string]float64{}, map[string]float64{}, map[trueLine]float64{}}, map[string]float64{}, map[string]float64{}, map[string]float64{}}
}

func (s *truthSums) addRun(course, date string, effect, conditions float64) {
	s.runs[course+" "+date] = conditions
	s.sum[course] += conditions
	s.n[course]++
	s.effect[course] = effect
}

func (s *truthSums) done() *speedTruth {
	for c, n := range s.n {
		s.courses[c] = s.effect[c] + s.sum[c]/n
	}
	return &s.speedTruth
}

func speedTruthOf(t *scenario.Truth) *speedTruth {
	s := newTruthSums()
	for _, r := range t.Runs {
		c := t.Courses[r.Course]
		s.addRun(c.Slug, r.Date.String(), c.Effect, r.Conditions)
	}
	for _, l := range t.Lines {
		if l.As == "walker" {
			continue // who only ever walks has no running form to compare with
		}
		d := t.Courses[t.Runs[l.Run].Course].DistanceM
		s.form[trueLine{l.Sheet, l.Tab, l.Row}] = l.Form - 1.06*math.Log(d/5000)
	}
	return s.done()
}

// speedScore is how well the figures agree with the truth, in per cent of time.
type speedScore struct {
	results, runners  int
	courses           int     // with an index
	course            float64 // RMSE of their effects, less the mean of the distance
	covered           float64 // share of their 90 % intervals that hold the truth
	fast              float64 // mean error of the fastest 30 % less that of the others
	runs              int
	conditions        float64 // RMSE, weighted by finishers, less the mean of the course
	conditionsCovered float64
	formed            int     // runners with 10 results or more
	form              float64 // RMSE of their form after the common offset
	formOffset        float64
}

func (s speedScore) String() string {
	return fmt.Sprintf("%d results of %d runners: %d courses RMSE %.3f %%, 90 %% intervals hold %.0f %%, fast ones off by %+.2f %%; %d conditions %.3f %%, intervals hold %.0f %%; form of %d runners %.2f %% (offset %+.2f %%)",
		s.results, s.runners, s.courses, s.course, 100*s.covered, s.fast, s.runs, s.conditions, 100*s.conditionsCovered, s.formed, s.form, s.formOffset)
}

func scoreSpeed(t testing.TB, pl *Pipeline, truth *speedTruth) speedScore {
	t.Helper()
	var s speedScore
	each := func(query string, scan func(get func(...any))) {
		t.Helper()
		rows, err := pl.DB.QueryContext(context.Background(), query)
		if err != nil {
			t.Fatal(err)
		}
		defer rows.Close()
		for rows.Next() {
			scan(func(into ...any) {
				if err := rows.Scan(into...); err != nil {
					t.Fatal(err)
				}
			})
		}
		if err := rows.Err(); err != nil {
			t.Fatal(err)
		}
	}
	each("select coalesce(sum(results), 0)::integer, count(*) from insight.runner", func(get func(...any)) { get(&s.results, &s.runners) })
	type course struct{ effect, low, high, weight, truth float64 }
	sets := map[string][]course{}
	each(`select c.course, c.network || ' ' || c.distance_m, -ln(c.speed_index / 100), -ln(c.high / 100), -ln(c.low / 100), i.results
		from main.courses c join record.course r on r.course = c.course and r.distance_m = c.distance_m join insight.course i on i.course_no = r.course_no
		where c.speed_index is not null`, func(get func(...any)) {
		var name, set string
		var c course
		get(&name, &set, &c.effect, &c.low, &c.high, &c.weight)
		want, ok := truth.courses[name]
		if !ok {
			t.Fatalf("course %q is not in the truth", name)
		}
		c.truth = want
		sets[set] = append(sets[set], c)
	})
	var errs, pace []float64
	for _, set := range sets {
		var w, mean float64
		for _, c := range set {
			w += c.weight
			mean += c.weight * (c.truth - c.effect)
		}
		for _, c := range set {
			e := c.effect - (c.truth - mean/w)
			errs, pace = append(errs, e), append(pace, c.truth)
			s.course += e * e
			if truth := c.truth - mean/w; truth >= c.low && truth <= c.high {
				s.covered++
			}
		}
	}
	n := float64(len(errs))
	s.courses = len(errs)
	s.course, s.covered = 100*math.Sqrt(s.course/n), s.covered/n
	cut := slices.Sorted(slices.Values(pace))[len(pace)*3/10]
	var fast, rest, nf, nr float64
	for i, e := range errs {
		if pace[i] < cut {
			fast, nf = fast+e, nf+1
		} else {
			rest, nr = rest+e, nr+1
		}
	}
	s.fast = 100 * (fast/max(1, nf) - rest/max(1, nr))

	type day struct{ got, low, high, want, w float64 }
	days := map[string][]day{}
	each(`select course, run_date::varchar, ln(1 + condition_pct / 100), ln(1 + low / 100), ln(1 + high / 100), finishers from main.runs where condition_pct is not null`, func(get func(...any)) {
		var name, date string
		var d day
		get(&name, &date, &d.got, &d.low, &d.high, &d.w)
		want, ok := truth.runs[name+" "+date]
		if !ok {
			t.Fatalf("the run of %s on %s is not in the truth", name, date)
		}
		d.want = want
		days[name] = append(days[name], d)
	})
	var sq, total, held float64
	for _, list := range days {
		var w, mean float64
		for _, d := range list {
			w += d.w
			mean += d.w * (d.got - d.want)
		}
		for _, d := range list {
			e := d.got - d.want - mean/w
			sq += d.w * e * e
			total += d.w
			if x := d.want + mean/w; x >= d.low && x <= d.high {
				held++
			}
			s.runs++
		}
	}
	s.conditions, s.conditionsCovered = 100*math.Sqrt(sq/total), held/float64(s.runs)

	var off []float64
	each(`select i.level + 7.5, r.sheet, coalesce(r.tab, ''), r.row_number
		from insight.runner i join main.results r on r.runner_id = 'R' || i.runner_no
		where i.results >= 10 and r.counts_time and r.taking_part_as in ('runner', 'walker', 'guided')
		qualify row_number() over (partition by i.runner_no order by r.run_date desc, r.run_no desc, r.line_no desc) = 1`, func(get func(...any)) {
		var level float64
		var l trueLine
		get(&level, &l.sheet, &l.tab, &l.row)
		want, ok := truth.form[l]
		if !ok {
			l.tab = ""
			if want, ok = truth.form[l]; !ok {
				return // a walker
			}
		}
		off = append(off, level-want)
	})
	s.formed = len(off)
	slices.Sort(off)
	middle := off[len(off)/2]
	for _, e := range off {
		s.form += (e - middle) * (e - middle)
	}
	s.form, s.formOffset = 100*math.Sqrt(s.form/float64(len(off))), 100*middle
	return s
}

// TestClubSpeedAgainstTruth makes up a club's district of messy sheets (12
// courses of three distances, names misspelt, two years) and compares what the
// whole pipeline says of courses, conditions and form with the truth. The
// targets are those of the project; LAPWING_SEEDS=n tries n districts.
func TestClubSpeedAgainstTruth(t *testing.T) {
	seeds := 1
	if v := os.Getenv("LAPWING_SEEDS"); v != "" {
		if _, err := fmt.Sscan(v, &seeds); err != nil {
			t.Fatal(err)
		}
	}
	var fast, covered, courses float64
	for seed := range uint64(seeds) {
		t.Run(fmt.Sprint("seed ", 500+seed), func(t *testing.T) {
			dir := t.TempDir()
			truth, err := scenario.District(dir, scenario.DistrictOptions{Seed: 500 + seed, People: 2000})
			if err != nil {
				t.Fatal(err)
			}
			pl := openForTest(t, dir)
			loadForTest(t, pl, filepath.Join(dir, "sheets"))
			s := scoreSpeed(t, pl, speedTruthOf(truth))
			t.Log(s)
			fit, err := pl.speedFit(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d rounds, settled %v. %s", fit.Rounds, fit.Settled, fit.Quantities.words())
			s.check(t, .40, .65, 2.2)
			fast += s.fast / float64(seeds)
			covered += s.covered * float64(s.courses)
			courses += float64(s.courses)
		})
	}
	t.Logf("%d districts: fast courses off by %+.2f %%, 90 %% intervals hold %.0f %%", seeds, fast, 100*covered/courses)
	// Of a dozen courses two misses are no surprise, and the mean of the three
	// fastest is uncertain by .2 % itself.
	if math.Abs(fast) > .3+.4/math.Sqrt(float64(seeds)) {
		t.Errorf("fast courses are off by %+.2f %%", fast)
	}
	if covered/courses < .75 || seeds >= 4 && covered/courses < .85 {
		t.Errorf("90 %% intervals hold %.0f %%", 100*covered/courses)
	}
}

// TestRegionSpeedAgainstTruth does the same for a region of 150 courses and a
// million results. It takes about a minute and is asked for with
// LAPWING_REGION=results, or LAPWING_REGION="results seed".
func TestRegionSpeedAgainstTruth(t *testing.T) {
	v := os.Getenv("LAPWING_REGION")
	if v == "" {
		t.Skip("takes a minute: LAPWING_REGION=1000000 runs it")
	}
	o := scenario.LargeOptions{Seed: 31, Courses: 150, Weeks: 104}
	if n, err := fmt.Sscan(v, &o.Results, &o.Seed); n == 0 {
		t.Fatal(err)
	}
	dir := t.TempDir()
	pl, truth := largeArchive(t, dir, o)
	s := scoreSpeed(t, pl, truth)
	t.Log(s)
	fit, err := pl.speedFit(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d rounds, settled %v. %s", fit.Rounds, fit.Settled, fit.Quantities.words())
	for _, x := range pl.Timings {
		t.Logf("%6.2f s %s", x.Seconds, x.What)
	}
	s.check(t, .25, .65, 2.2)
	if !(math.Abs(s.fast) <= .3) {
		t.Errorf("fast courses are off by %+.2f %%", s.fast)
	}
	if !(s.covered >= .85) {
		t.Errorf("90 %% intervals hold %.0f %%", 100*s.covered)
	}
}

// largeArchive makes up a large district, loads it and gives its truth.
func largeArchive(t testing.TB, dir string, o scenario.LargeOptions) (*Pipeline, *speedTruth) {
	t.Helper()
	path := filepath.Join(dir, "season.csv")
	out, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	a, err := scenario.NewLarge(o)
	if err != nil {
		t.Fatal(err)
	}
	sums, row := newTruthSums(), 1
	err = a.WriteSeason(out, func(r *scenario.LargeRun) error {
		c := a.Courses[r.Course]
		sums.addRun(c.Slug, r.Date.String(), c.Effect, r.Conditions)
		for _, f := range r.Form {
			row++
			sums.form[trueLine{"season.csv", "", row}] = float64(f)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
	pl := openForTest(t, dir)
	loadForTest(t, pl, path)
	return pl, sums.done()
}

// check holds a score against its targets, in per cent of time.
func (s speedScore) check(t testing.TB, course, conditions, form float64) {
	t.Helper()
	if s.courses < 5 || s.runs < 100 || s.formed < 100 {
		t.Errorf("only %d courses, %d runs and %d runners to judge by", s.courses, s.runs, s.formed)
	}
	if !(s.course <= course) {
		t.Errorf("courses: RMSE %.3f %%, want at most %.2f", s.course, course)
	}
	if !(s.conditions <= conditions) {
		t.Errorf("conditions: RMSE %.3f %%, want at most %.2f", s.conditions, conditions)
	}
	if !(s.conditionsCovered >= .85) {
		t.Errorf("conditions: 90 %% intervals hold %.0f %%", 100*s.conditionsCovered)
	}
	if !(s.form <= form) {
		t.Errorf("form: RMSE %.2f %%, want at most %.2f", s.form, form)
	}
}
