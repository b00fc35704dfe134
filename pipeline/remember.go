package pipeline

import (
	"context"
	"fmt"
	"strings"

	"lapwing/pipeline/place"
)

// remembered are the answers that people have given about columns, by course
// and headings: next week's sheet with the same headings is read the same way
// and asks nothing.
type remembered map[string]string

// headingsKey tells sheets of one maker: the course and the headings in order.
func headingsKey(course string, headings []string) string {
	return course + "\x00" + strings.ToLower(strings.Join(headings, "\x00"))
}

// remember collects the answers of the sheets that are loaded, the latest
// answer standing.
func (pl *Pipeline) remember(ctx context.Context) (remembered, error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	out := remembered{}
	for _, e := range ledger {
		if e.Answers == "" {
			continue
		}
		rows, err := pl.DB.QueryContext(ctx, `
			select p.part_no, string_agg(c.heading, chr(0) order by c.column_no),
				(select min(k.course) from record.line l join record.run r on r.run_no = l.run_no join record.course k on k.course_no = r.course_no where l.part_no = p.part_no)
			from sheet.part p join sheet.column c on c.part_no = p.part_no where p.sheet_no = ? group by p.part_no order by p.part_no`, e.Seq)
		if err != nil {
			return nil, err
		}
		for rows.Next() {
			var part int32
			var headings string
			var course *string
			if err := rows.Scan(&part, &headings, &course); err != nil {
				rows.Close()
				return nil, err
			}
			if course != nil {
				out[headingsKey(*course, strings.Split(headings, "\x00"))] = e.Answers
			}
		}
		if err := rows.Close(); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// answerFor looks for an answer given earlier for a sheet that waits.
func (r remembered) answerFor(p *parsedSheet) string {
	if len(r) == 0 || !p.waits() {
		return ""
	}
	for _, q := range p.parts {
		headings := make([]string, len(q.part.Columns))
		for i, c := range q.part.Columns {
			headings[i] = c.Heading
		}
		for _, k := range q.runs {
			if a := r[headingsKey(k.course.course, headings)]; a != "" {
				return a
			}
		}
	}
	return ""
}

// noteAnswer says on the sheet that an earlier answer was used.
func (p *parsedSheet) noteAnswer(answers string) {
	q := place.Problem{Place: place.Place{Sheet: p.sheet.Name}, Severity: place.Note, Kind: "answer-remembered", Read: answers,
		Do: fmt.Sprintf("Read as an earlier sheet with these headings; to change it, load the sheet again with --answer %q.", answers)}
	p.problems = append(p.problems, q)
	p.sheet.Problems = append(p.sheet.Problems, q)
}
