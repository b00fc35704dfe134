package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// people are the keys of those who are named in full on the lines of a course,
// "" for all courses.
func (p *parsedSheet) people(course string) map[string]bool {
	out := map[string]bool{}
	for _, q := range p.parts {
		for _, b := range q.lines.batches {
			for i := range b.lines {
				if course == "" || q.runs[b.run[i]].course.course == course {
					if key := personKey(b.lines[i].Name); key != "" {
						out[key] = true
					}
				}
			}
		}
	}
	return out
}

// days are those of a course's runs.
func (p *parsedSheet) days(course string) map[unit.Day]bool {
	out := map[unit.Day]bool{}
	for _, q := range p.parts {
		for _, k := range q.runs {
			if k.course.course == course {
				out[k.day] = true
			}
		}
	}
	return out
}

// personKey is a full name's folded words in order of the alphabet, so that it
// does not matter which name comes first; "" for nobody, several people, and
// names with an initial alone.
func personKey(s string) string {
	if len(s) < 4 {
		return ""
	}
	n := name.Parse(s)
	if n.Unnamed || n.Several || utf8.RuneCountInString(n.Given) < 2 || utf8.RuneCountInString(n.Family) < 2 || strings.Contains(n.Full, "?") {
		return ""
	}
	words := strings.Fields(n.Given + " " + n.Family)
	sort.Strings(words)
	return strings.Join(words, " ")
}

// whereKnown finds the courses on whose sheets people stand in the archive, in
// two queries for all. It needs no right to write.
func (pl *Pipeline) whereKnown(ctx context.Context, wanted map[string]int32) (map[string]map[int32]bool, error) {
	var persons, names []string // numbers, as they stand in a query
	if err := pl.DB.Scan(ctx, "select text_no, text from record.text", func(r arrow.Record) error {
		no, texts := r.Column(0).(*array.Int32), r.Column(1).(*array.String)
		n := int(r.NumRows())
		person := make([]int32, n)
		parallel.Pieces(n, pl.workers(), func(from, to int) {
			for i := from; i < to; i++ {
				person[i] = -1
				if key := personKey(texts.Value(i)); key != "" {
					if k, ok := wanted[key]; ok {
						person[i] = k
					}
				}
			}
		})
		for i, k := range person {
			if k >= 0 {
				persons = append(persons, strconv.Itoa(int(k)))
				names = append(names, strconv.Itoa(int(no.Value(i))))
			}
		}
		return nil
	}); err != nil {
		return nil, err
	}
	out := map[string]map[int32]bool{}
	return out, pl.each(ctx, fmt.Sprintf(`
		with w as (select unnest([%s]::integer[]) as person, unnest([%s]::integer[]) as name_no)
		select distinct w.person, c.course
		from record.line l
		join w on w.name_no = l.name_no
		join record.run run on run.run_no = l.run_no
		join record.course c on c.course_no = run.course_no`, strings.Join(persons, ", "), strings.Join(names, ", ")), func(rows *sql.Rows) error {
		var person int32
		var course string
		err := rows.Scan(&person, &course)
		if out[course] == nil {
			out[course] = map[int32]bool{}
		}
		out[course][person] = true
		return err
	})
}

// ask asks the people of a sheet whether the course is meant. between says that
// the course had runs both before and after; else more of them must be known.
func (m *courseMeant) ask(p *parsedSheet, wanted map[string]int32, at map[string]map[int32]bool, between bool) bool {
	there := at[m.course]
	people := p.people(m.read)
	only := map[string][2]int{} // known at the course and not at the other, and the other way round
	m.named, m.known = len(people), 0
	for key := range people {
		k := wanted[key]
		if there[k] {
			m.known++
		}
		for other, list := range at {
			if n := only[other]; list[k] != there[k] {
				if there[k] {
					n[0]++
				} else {
					n[1]++
				}
				only[other] = n
			}
		}
	}
	if m.known < leastKnown || 2*m.known < m.named || !between && 4*m.known < 3*m.named {
		return false
	}
	for other := range at {
		if n := only[other]; other != m.course && (n[0] < leastKnown || n[0] < foldKnown*n[1]) {
			return false
		}
	}
	return true
}

// elsewhere says whether the people of a sheet are another course's: at least
// leastKnown of them, and foldKnown times as many as are known at the course.
func (m *courseMeant) elsewhere(p *parsedSheet, wanted map[string]int32, at map[string]map[int32]bool) bool {
	people := p.people(m.read)
	for other, list := range at {
		if other == m.course {
			continue
		}
		there, here := 0, 0
		for key := range people {
			switch k := wanted[key]; {
			case list[k] && !at[m.course][k]:
				there++
			case at[m.course][k] && !list[k]:
				here++
			}
		}
		if there >= leastKnown && there > foldKnown*here {
			return true
		}
	}
	return false
}
