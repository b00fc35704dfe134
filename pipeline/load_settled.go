package pipeline

import (
	"context"
	"strings"

	"lapwing/pipeline/store"
)

// loadSettled loads sheets whose course was settled, and puts what became of
// them in their places of the report.
func (l *loading) loadSettled(ctx context.Context, sheets []*unsureSheet, answers *remembered) error {
	pl := l.pl
	known := pl.knownCourses()
	var take []*unsureSheet
	var results []readResult
	for _, s := range sheets {
		if l.known[s.read.hash].State != store.Waiting {
			continue // another sheet took its place
		}
		p, given, err := pl.readMeant(s, s.read.said(l.hand))
		if err != nil || !p.allKnown(known, s.meant) {
			continue
		}
		take = append(take, s)
		results = append(results, readResult{data: s.read.data, hash: s.read.hash, left: s.read.left, parsed: p, course: given, hand: s.read.hand})
	}
	_, err := l.loadAgain(ctx, take, results, answers)
	return err
}

// loadAgain loads sheets that were read again, puts what became of them in their
// places of the report, and returns what was read.
func (l *loading) loadAgain(ctx context.Context, take []*unsureSheet, results []readResult, answers *remembered) ([]readResult, error) {
	if len(take) == 0 {
		return nil, nil
	}
	names := make([]string, len(take))
	for i, s := range take {
		names[i] = s.name
	}
	tmp := &LoadReport{}
	b := &loading{pl: l.pl, names: names, results: results, hand: l.hand, known: l.known, next: l.next, now: l.now, rep: tmp}
	if err := b.readAsBefore(ctx, answers); err != nil {
		return results, err
	}
	parsed, err := b.keep(ctx)
	if err != nil {
		return results, err
	}
	for i, s := range take {
		l.rep.Sheets[s.report] = tmp.Sheets[i]
		for _, k := range s.again {
			again := SheetReport{Path: l.rep.Sheets[k].Path, State: "already loaded", Rows: tmp.Sheets[i].Rows}
			if again.Path != s.name {
				again.Why = "the same sheet was loaded as " + s.name
			}
			if tmp.Sheets[i].State == "loaded" {
				l.rep.Sheets[k] = again
				l.rep.Known++
				l.rep.Waiting--
			}
		}
	}
	l.rep.Waiting += tmp.Waiting - len(take)
	l.rep.Loaded += tmp.Loaded
	l.rep.Rows += tmp.Rows
	return b.results, l.pl.writeSheets(ctx, parsed)
}

// allKnown says whether the sheet, read anew, has runs of the courses that are
// meant, all over distances that these are known to have.
func (p *parsedSheet) allKnown(d *knownDays, meant []courseMeant) bool {
	for _, m := range meant {
		n := 0
		for _, q := range p.parts {
			for _, k := range q.runs {
				if k.course.course == m.read || k.course.course == m.course && !d.distances[k.course] {
					return false
				}
				if k.course.course == m.course {
					n++
				}
			}
		}
		if n == 0 {
			return false
		}
	}
	return true
}

// openAsMeant reads a sheet for a dry run: with a date of two readings as other
// sheets say, with a misspelt course as the people on it say, or asking. meant is what
// is answered about the two.
func (pl *Pipeline) openAsMeant(ctx context.Context, name string, data []byte, hand ByHand, earlier *remembered) (p *parsedSheet, meant string, err error) {
	said := hand
	if hand.Course == "" {
		meant = earlier.meant[store.Hash(data)]
		said.Answers = joinAnswers(hand.Answers, meant)
	}
	if p, err = pl.openOrParse(name, data, said); err != nil {
		return nil, "", err
	}
	order := ""
	if u := undated(name, readResult{data: data, parsed: p}); u != nil {
		dated, err := pl.settleOrders(ctx, unsureSheets{u})
		if err != nil {
			return nil, "", err
		}
		if len(dated) > 0 {
			order = u.answers
			meant = joinAnswers(meant, order)
			said.Answers = joinAnswers(said.Answers, order)
			if p, err = pl.openOrParse(name, data, said); err != nil {
				return nil, "", err
			}
		}
	}
	p.byHand = hand.Course != ""
	pl.askMisspelt([]*parsedSheet{p})
	u := unsureOf(name, readResult{data: data, parsed: p})
	if u == nil {
		return p, meant, nil
	}
	u.answers = order
	settled, err := pl.settleMisspelt(ctx, unsureSheets{u})
	if err != nil || len(settled) == 0 {
		return p, meant, err
	}
	now, answers, err := pl.readMeant(u, hand)
	if err != nil || !now.allKnown(pl.knownCourses(), u.meant) {
		return p, meant, err
	}
	return now, answers, nil
}

// readMeant reads a sheet again with its courses settled.
func (pl *Pipeline) readMeant(u *unsureSheet, hand ByHand) (p *parsedSheet, answers string, err error) {
	list := make([]string, len(u.meant))
	for i, m := range u.meant {
		list[i] = m.String()
	}
	answers = joinAnswers(u.answers, strings.Join(list, "; "))
	hand.Answers = joinAnswers(hand.Answers, answers)
	p, err = pl.parseSheet(u.name, u.read.data, hand)
	return p, answers, err
}
