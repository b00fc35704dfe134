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
	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// MatchPerson is what tells a runner apart when somebody decides who is who.
type MatchPerson struct {
	ID      string   `json:"runner_id"`
	Name    string   `json:"name"`
	Sex     string   `json:"sex,omitempty"`  // M, W or X
	Born    string   `json:"born,omitempty"` // what all sheets together allow
	Club    string   `json:"club,omitempty"`
	Lines   int      `json:"lines"`
	First   string   `json:"first,omitempty"` // day of the first line
	Last    string   `json:"last,omitempty"`
	Results []string `json:"last_results,omitempty"` // day, course, time; latest first

	no    int32
	at    lineRef // a typical line, to tie decisions to
	state string  // changes when lines of known runs come or go
}

// Facts are sex, birth and club in a few words.
func (p MatchPerson) Facts() string {
	var parts []string
	for _, s := range []string{p.Sex, p.Club} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	born := "age not known"
	if p.Born != "" {
		born = "born " + p.Born
	}
	return strings.Join(slices.Insert(parts, min(1, len(parts)), born), "; ")
}

// History is how many lines there are and from when to when.
func (p MatchPerson) History() string {
	switch {
	case p.Lines == 1:
		return "1 line, " + p.Last
	case p.First == p.Last:
		return fmt.Sprintf("%d lines, %s", p.Lines, p.Last)
	}
	return fmt.Sprintf("%d lines, %s to %s", p.Lines, p.First, p.Last)
}

// Evidence is a part of the evidence that two are one person.
type Evidence struct {
	Of    string  `json:"of"` // start, name, number, age, sex, club, courses, times or days
	Words string  `json:"words"`
	Bits  float64 `json:"bits"` // positive speaks for one person
}

// MatchPair is two runners who may be one person.
type MatchPair struct {
	Place    int         `json:"place"` // in the list, from 1; 0 where it is not on it
	First    MatchPerson `json:"first"` // the older number
	Second   MatchPerson `json:"second"`
	Evidence []Evidence  `json:"evidence"`
	Bits     float64     `json:"bits"`   // the sum
	Chance   float64     `json:"chance"` // that they are one person, 0 to 1

	Code string `json:"-"` // names the row in the workbook
}

// ChanceWords says a chance as a volunteer would.
func ChanceWords(p float64) string {
	switch {
	case p >= .995:
		return "almost surely one person"
	case p >= .015:
		return fmt.Sprintf("about %.0f in 100 such pairs are one person", 100*p)
	}
	return "hardly one person"
}

// MatchLine is a line that somebody must give to a runner.
type MatchLine struct {
	Place  place.Place `json:"at"`
	Date   string      `json:"date"`
	Course string      `json:"course"`
	Name   string      `json:"name"` // as received
	Age    string      `json:"age,omitempty"`
	Club   string      `json:"club,omitempty"`
	Time   string      `json:"time,omitempty"`

	Code string `json:"-"` // names the row in the workbook

	at   lineRef
	no   int32
	keep lineAt // place in the ledger
}

// Words is the line in a few words.
func (l MatchLine) Words() string {
	parts := []string{l.Date + " " + l.Course, l.Name}
	for _, s := range []string{l.Time, l.Age, l.Club} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, ", ")
}

// MatchQuestion asks whose of several namesakes some lines are.
type MatchQuestion struct {
	Namesakes []MatchPerson `json:"namesakes"`
	Lines     []MatchLine   `json:"lines"`
}

// MatchPieces is several runners of whom some may be one person.
type MatchPieces struct {
	Place  int          `json:"place"` // in the list, from 1
	Pieces []MatchPiece `json:"pieces"`
}

// MatchPiece is one of them.
type MatchPiece struct {
	MatchPerson
	Chance float64 `json:"chance"` // that it is one person with at least one of the others

	Code string `json:"-"` // names the row in the workbook
}

// MatchThin is lines that fit the rest of their runner badly, and are perhaps
// somebody else's.
type MatchThin struct {
	Runner MatchPerson `json:"runner"`
	Lines  []MatchLine `json:"lines"`
	Bits   float64     `json:"bits"`

	Code string `json:"-"` // names the row in the workbook
}

// MatchContradiction is a decision that others contradict.
type MatchContradiction struct {
	Decision int    `json:"decision"`
	Words    string `json:"words"`
}

// Review is what is doubtful about who is who, as at the last refresh.
type Review struct {
	Pairs          []MatchPair          `json:"pairs"`
	Questions      []MatchQuestion      `json:"questions"`
	Several        []MatchPieces        `json:"several"` // of these, some may be one person
	Thin           []MatchThin          `json:"bad_fits"`
	Contradictions []MatchContradiction `json:"contradictions"`
	Listed         int                  `json:"pairs_listed"` // pairs kept in the list
	Found          int                  `json:"pairs_found"`  // doubtful pairs there were

	latest int
}

// Review reads the review list, the first so many pairs, questions and bad
// fits of it (0 all).
func (pl *Pipeline) Review(ctx context.Context, most int) (*Review, error) {
	k, err := pl.linkage(ctx)
	if err != nil {
		return nil, err
	}
	if most <= 0 {
		most = 1 << 30
	}
	r := &Review{Pairs: []MatchPair{}, Questions: []MatchQuestion{}, Several: []MatchPieces{}, Thin: []MatchThin{}, Contradictions: []MatchContradiction{}, Found: k.Doubtful, latest: k.latest}
	if err := pl.DB.Get(ctx, "select count(*) from record.doubtful_pair", &r.Listed); err != nil {
		return nil, err
	}
	people := pl.lookUp(ctx, k.latest)
	if r.Pairs, err = pl.pairs(ctx, most, "true"); err != nil {
		return nil, err
	}
	for i := range r.Pairs {
		people.want(&r.Pairs[i].First, &r.Pairs[i].Second)
	}
	if err := pl.readPieces(ctx, r, most); err != nil {
		return nil, err
	}
	if err := pl.readAsked(ctx, r, most); err != nil {
		return nil, err
	}
	for i := range r.Several {
		for j := range r.Several[i].Pieces {
			people.want(&r.Several[i].Pieces[j].MatchPerson)
		}
	}
	for i := range r.Questions {
		for j := range r.Questions[i].Namesakes {
			people.want(&r.Questions[i].Namesakes[j])
		}
	}
	for i := range r.Thin {
		people.want(&r.Thin[i].Runner)
	}
	if err := people.fill(); err != nil {
		return nil, err
	}
	r.code()
	r.Contradictions, err = pl.contradictions(ctx)
	return r, err
}

// pairs reads doubtful pairs with their evidence; the people hold their
// numbers only.
func (pl *Pipeline) pairs(ctx context.Context, most int, where string, args ...any) ([]MatchPair, error) {
	out := []MatchPair{}
	err := pl.each(ctx, "select pair, first_no, second_no, bits, chance from record.doubtful_pair where "+where+" order by pair limit "+strconv.Itoa(most), func(rows *sql.Rows) error {
		var p MatchPair
		err := rows.Scan(&p.Place, &p.First.no, &p.Second.no, &p.Bits, &p.Chance)
		p.Evidence = []Evidence{}
		out = append(out, p)
		return err
	}, args...)
	if err != nil || len(out) == 0 {
		return out, err
	}
	at := map[int]int{}
	for i := range out {
		at[out[i].Place] = i
	}
	err = pl.each(ctx, "select pair, evidence, words, bits from record.evidence where pair between ? and ? order by pair, part", func(rows *sql.Rows) error {
		var pair int
		var e Evidence
		err := rows.Scan(&pair, &e.Of, &e.Words, &e.Bits)
		if i, ok := at[pair]; ok {
			out[i].Evidence = append(out[i].Evidence, e)
		}
		return err
	}, out[0].Place, out[len(out)-1].Place)
	return out, err
}

// readPieces reads the questions about several runners.
func (pl *Pipeline) readPieces(ctx context.Context, r *Review, most int) error {
	return pl.each(ctx, "select question, runner_no, chance from record.piece where question <= ? order by question, runner_no", func(rows *sql.Rows) error {
		var q int
		var p MatchPiece
		err := rows.Scan(&q, &p.no, &p.Chance)
		for len(r.Several) < q {
			r.Several = append(r.Several, MatchPieces{Place: len(r.Several) + 1})
		}
		r.Several[q-1].Pieces = append(r.Several[q-1].Pieces, p)
		return err
	}, most)
}

// readAsked reads the questions about single lines.
func (pl *Pipeline) readAsked(ctx context.Context, r *Review, most int) error {
	err := pl.each(ctx, "select question, runner_no from record.namesake where question <= ? order by question, runner_no", func(rows *sql.Rows) error {
		var q int
		var p MatchPerson
		err := rows.Scan(&q, &p.no)
		for len(r.Questions) < q {
			r.Questions = append(r.Questions, MatchQuestion{})
		}
		r.Questions[q-1].Namesakes = append(r.Questions[q-1].Namesakes, p)
		return err
	}, most)
	if err != nil {
		return err
	}
	f, err := sqlFile("reports/match_line.sql")
	if err != nil {
		return err
	}
	return pl.each(ctx, f.Select, func(rows *sql.Rows) error {
		var q, fit int
		var runner, ms int32
		var bits *float64
		var l MatchLine
		var day time.Time
		if err := rows.Scan(&q, &fit, &runner, &bits, &l.no, &l.Name, &l.Age, &l.Club, &ms, &day, &l.Course, &l.Place.Sheet, &l.at.hash, &l.at.tab, &l.keep.sheet, &l.keep.tab, &l.at.row); err != nil {
			return err
		}
		l.Date, l.Place.Tab, l.Place.Row, l.keep.row = unit.DayOf(day).String(), l.at.tab, l.at.row, int32(l.at.row)
		if ms > 0 {
			l.Time = unit.Clock(unit.CeilSeconds(ms))
		}
		switch {
		case q > 0 && q <= len(r.Questions):
			r.Questions[q-1].Lines = append(r.Questions[q-1].Lines, l)
		case fit > 0 && fit <= most:
			for len(r.Thin) < fit {
				r.Thin = append(r.Thin, MatchThin{Runner: MatchPerson{no: runner}, Bits: *bits})
			}
			r.Thin[fit-1].Lines = append(r.Thin[fit-1].Lines, l)
		}
		return nil
	})
}

func (pl *Pipeline) contradictions(ctx context.Context) ([]MatchContradiction, error) {
	out := []MatchContradiction{}
	err := pl.each(ctx, "select decision, words from record.contradiction order by decision", func(rows *sql.Rows) error {
		var c MatchContradiction
		err := rows.Scan(&c.Decision, &c.Words)
		out = append(out, c)
		return err
	})
	return out, err
}

// each runs a query and hands over its rows.
func (pl *Pipeline) each(ctx context.Context, query string, row func(*sql.Rows) error, args ...any) error {
	rows, err := pl.DB.QueryContext(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := row(rows); err != nil {
			return err
		}
	}
	return rows.Err()
}

// lookUp fills in people by their numbers, all in one query.
type lookUp struct {
	pl     *Pipeline
	ctx    context.Context
	latest int
	people map[int32][]*MatchPerson
}

// lookUp prepares to look people up; latest is the sheet up to which runs
// count for their state.
func (pl *Pipeline) lookUp(ctx context.Context, latest int) *lookUp {
	return &lookUp{pl, ctx, latest, map[int32][]*MatchPerson{}}
}

func (l *lookUp) want(people ...*MatchPerson) {
	for _, p := range people {
		l.people[p.no] = append(l.people[p.no], p)
	}
}

// fill reads everybody that was wanted; who is no runner stays without an ID.
func (l *lookUp) fill() error {
	if len(l.people) == 0 {
		return nil
	}
	f, err := sqlFile("reports/match_person.sql")
	if err != nil {
		return err
	}
	var numbers []string
	for n := range l.people {
		numbers = append(numbers, itoa(n))
	}
	slices.Sort(numbers)
	return l.pl.each(l.ctx, f.Select, func(rows *sql.Rows) error {
		var p MatchPerson
		var sex uint8
		var lo, hi, first, last *time.Time
		var results string
		if err := rows.Scan(&p.no, &p.Name, &sex, &lo, &hi, &p.Club, &p.Lines, &first, &last, &results, &p.state, &p.at.hash, &p.at.tab, &p.at.row); err != nil {
			return err
		}
		p.ID = "R" + itoa(p.no)
		if sex > 0 {
			p.Sex = record.Sex(sex).String()
		}
		if lo != nil && hi != nil {
			p.Born = born(unit.DayOf(*lo), unit.DayOf(*hi))
		}
		if first != nil && last != nil {
			p.First, p.Last = unit.DayOf(*first).String(), unit.DayOf(*last).String()
		}
		if results != "" {
			p.Results = strings.Split(results, "; ")
		}
		for _, to := range l.people[p.no] {
			*to = p
		}
		return nil
	}, strings.Join(numbers, ","), l.latest)
}

// born is a birth window in words, no finer than it needs to be.
func born(lo, hi unit.Day) string {
	y, _, _ := lo.Date()
	z, _, _ := hi.Date()
	switch {
	case lo == hi:
		return lo.String()
	case hi-lo <= 62:
		return lo.String() + " to " + hi.String()
	case y == z:
		return strconv.Itoa(y)
	}
	return fmt.Sprintf("%d to %d", y, z)
}
