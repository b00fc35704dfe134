package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// A course may have two races on a day: a juniors' race beside the long one, a morning
// and an evening. Once somebody has said of a sheet which race it is (--session 2,
// --distance), the words of its name that the day's other sheets have not tell the
// sheets of that race in other weeks.

// raceAnswer is the key of the answer that says from which sheet it is known which of
// several races of a day a sheet is of: "race as before=alder-bank 2026-01-03 pm.csv".
const raceAnswer = "race as before"

// raceRemembered is the kind of remark on such a sheet.
const raceRemembered = "race-remembered"

// race is one of several of a day, as somebody said of a sheet.
type race struct {
	session, distance string
	path              string   // of the sheet of which somebody said it
	words, others     []string // that its name has and the day's other sheets have not, and the other way round
}

// fits says whether a sheet is by its name of the race.
func (r race) fits(path string) bool {
	words := sheet.NameWords(path)
	return !slices.ContainsFunc(r.words, func(w string) bool { return !slices.Contains(words, w) }) &&
		!slices.ContainsFunc(r.others, func(w string) bool { return slices.Contains(words, w) })
}

// said says in words what is known of the race.
func (r race) said() string {
	var out []string
	if r.session != "" {
		out = append(out, "session "+r.session)
	}
	if r.distance != "" {
		out = append(out, r.distance)
	}
	return strings.Join(out, ", ")
}

// saysRace says whether a ledger line says of which of several races a sheet is.
func saysRace(e store.Entry) bool {
	return e.State == store.Loaded && (e.Session != "" || e.Distance != "") && e.Date == "" && e.Kind == ""
}

// racesKept is from how many sheets of a course its races are known: the latest ones, so
// that other names are learned.
const racesKept = 4

// races finds what the names of sheets tell of the races of some courses, the latest
// sheets first.
func (pl *Pipeline) races(ctx context.Context, said map[int]store.Entry, courses []string) (map[string][]race, error) {
	if len(said) == 0 || len(courses) == 0 || pl.DB == nil {
		return nil, nil
	}
	var numbers, quoted []string
	for no := range said {
		numbers = append(numbers, strconv.Itoa(no))
	}
	for _, c := range courses {
		quoted = append(quoted, store.Quote(c))
	}
	slices.Sort(numbers)
	slices.Sort(quoted)
	type sheetDay struct {
		no   int
		path string
	}
	type day struct {
		course string
		day    unit.Day
	}
	on := map[day][]sheetDay{}
	var days []day
	if err := pl.each(ctx, `
		with runs as (
			select run.run_no, run.run_date, c.course from record.run run join record.course c on c.course_no = run.course_no where c.course in (`+strings.Join(quoted, ", ")+`)
		), held as (
			select distinct runs.course, runs.run_date, t.sheet_no
			from record.line l join runs on runs.run_no = l.run_no
			join sheet.part t on t.part_no = l.part_no
		)
		select h.course, h.run_date, h.sheet_no, s.path
		from held h join sheet.sheet s on s.sheet_no = h.sheet_no
		where exists (select 1 from held o where o.course = h.course and o.run_date = h.run_date and o.sheet_no in (`+strings.Join(numbers, ", ")+`))
		order by h.course, h.run_date desc, h.sheet_no, s.path`, func(rows *sql.Rows) error {
		var k day
		var when time.Time
		var s sheetDay
		err := rows.Scan(&k.course, &when, &s.no, &s.path)
		k.day = unit.DayOf(when)
		if on[k] == nil {
			days = append(days, k)
		}
		on[k] = append(on[k], s)
		return err
	}); err != nil {
		return nil, err
	}
	out := map[string][]race{}
	for _, k := range days {
		for _, s := range on[k] {
			e, ok := said[s.no]
			if !ok || len(out[k.course]) >= racesKept {
				continue
			}
			r := race{session: e.Session, distance: e.Distance, path: e.Path}
			if answers, err := ParseAnswers(e.Answers); err == nil && answers[raceAnswer] != "" {
				r.path = answers[raceAnswer]
			}
			own := sheet.NameWords(e.Path)
			others := map[string]bool{}
			for _, o := range on[k] {
				if q := said[o.no]; q.Session == e.Session && q.Distance == e.Distance {
					continue // of the same race
				}
				for _, w := range sheet.NameWords(o.path) {
					others[w] = true
				}
			}
			for _, w := range own {
				if !others[w] && !slices.Contains(r.words, w) {
					r.words = append(r.words, w)
				}
				delete(others, w)
			}
			for w := range others {
				r.others = append(r.others, w)
			}
			slices.Sort(r.others)
			if len(r.words) > 0 {
				out[k.course] = append(out[k.course], r)
			}
		}
	}
	return out, nil
}

// raceOf is the race that a sheet of some courses is of by its name; ok is false where
// its name does not tell, or tells two.
func raceOf(known map[string][]race, path string, courses []string) (found race, ok bool) {
	for _, c := range courses {
		for _, r := range known[c] {
			if !r.fits(path) {
				continue
			}
			if ok && (r.session != found.session || r.distance != found.distance) {
				return race{}, false
			}
			if !ok {
				found, ok = r, true
			}
		}
	}
	return found, ok
}

// courses are those of a sheet's runs.
func (p *parsedSheet) courses() (out []string) {
	for _, q := range p.parts {
		for _, k := range q.runs {
			if !slices.Contains(out, k.course.course) {
				out = append(out, k.course.course)
			}
		}
	}
	return out
}

// saysNoRace says whether a sheet is of one course and day and says itself neither a
// session nor a distance.
func (p *parsedSheet) saysNoRace() bool {
	runs := 0
	for _, q := range p.parts {
		runs = max(runs, len(q.runs))
		if q.part.Kind == sheet.Volunteers || q.part.Session.OK() || q.part.Distance.OK() {
			return false
		}
	}
	return runs == 1 && len(p.courses()) == 1
}

// withRace is what is said by hand, and of which race a sheet is.
func (h ByHand) withRace(r race) ByHand {
	h.Session, h.Distance = r.session, r.distance
	h.Answers = joinAnswers(h.Answers, raceAnswer+"="+strings.ReplaceAll(r.path, ";", ","))
	return h
}

// noteRace says on a sheet from which other it is known of which race it is.
func noteRace(s *sheet.Sheet, hand ByHand, answers map[string]string) {
	from, ok := answers[raceAnswer]
	if !ok {
		return
	}
	r := race{session: hand.Session, distance: hand.Distance}
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name}, Severity: place.Note, Kind: raceRemembered, Read: r.said(),
		Do: fmt.Sprintf("Its name tells the race as that of %s does, of which somebody said it. If that is wrong: lapwing sheets withdraw %s, then load it with --kind full if it is of the run itself, or with the right --session.", from, text.Typed(s.Name))})
}
