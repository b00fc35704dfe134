package pipeline

import (
	"context"
	"errors"
	"fmt"
	"path"
	"slices"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// loadBatch puts what was read of a batch of files into the archive.
func (pl *Pipeline) loadBatch(ctx context.Context, names []string, results []readResult, hand ByHand, known map[string]store.Entry, answers *remembered, next *int, now time.Time, rep *LoadReport, unsure, undatedOnes *unsureSheets) error {
	var fresh []*parsedSheet
	for i := range results {
		if p := results[i].parsed; p != nil && results[i].err == nil {
			p.byHand = results[i].said(hand).Course != ""
			fresh = append(fresh, p)
		}
	}
	pl.askMisspelt(fresh)
	l := &loading{pl: pl, names: names, results: results, hand: hand, known: known, next: next, now: now, rep: rep}
	if err := l.readAsBefore(ctx, answers); err != nil {
		return err
	}
	if err := l.takeOutAnswered(ctx); err != nil {
		return err
	}
	for i := range results {
		if r := &results[i]; r.err == nil && r.parsed != nil {
			r.parsed.askFarAhead(now, r.said(hand))
		}
	}
	if len(results) == 1 && results[0].unread() {
		return l.large(ctx)
	}
	first := len(rep.Sheets)
	parsed, err := l.keep(ctx)
	if err != nil {
		return err
	}
	for i, r := range results {
		if rep.Sheets[first+i].State == "waiting" {
			unsure.add(unsureOf, names[i], r, first+i)
			undatedOnes.add(undated, names[i], r, first+i)
		}
	}
	return pl.writeSheets(ctx, parsed)
}

// readAsBefore reads the sheets again where earlier sheets say how, and notes
// how they differ from these.
func (l *loading) readAsBefore(ctx context.Context, answers *remembered) error {
	var fresh []*parsedSheet
	for _, r := range l.results {
		if r.parsed != nil && r.err == nil {
			fresh = append(fresh, r.parsed)
		}
	}
	if err := answers.lookUp(ctx, fresh); err != nil {
		return err
	}
	for i := range l.results {
		r := &l.results[i]
		if r.parsed == nil || r.err != nil {
			continue
		}
		hand := r.said(l.hand)
		if race, ok := answers.raceOf(r.parsed, hand); ok {
			of := hand.withRace(race)
			said := of
			said.Answers = joinAnswers(said.Answers, r.course)
			if now, err := l.pl.openOrParse(l.names[i], r.data, said); err == nil && now.waits() == r.parsed.waits() {
				now.byHand = r.parsed.byHand
				r.parsed, r.hand, hand = now, &of, of
			}
		}
		now, said := answers.readAsSaid(r.parsed, hand, func(of ByHand) (*parsedSheet, error) {
			of.Answers = joinAnswers(of.Answers, r.course)
			return l.pl.openOrParse(l.names[i], r.data, of)
		})
		if said != hand {
			r.parsed, r.hand, hand = now, &said, said
		}
		if l.hand.Answers == "" {
			r.parsed, r.answers = answers.readAsBefore(r.parsed, func(a string) (*parsedSheet, error) {
				said := hand
				said.Answers = joinAnswers(joinAnswers(hand.Answers, a), r.course)
				return l.pl.openOrParse(l.names[i], r.data, said)
			})
		}
		r.notes = answers.notes(r.parsed, l.names[i])
		if len(l.names) <= mostChecked {
			if s := l.pl.saidOtherwise(r.parsed, l.names[i], r.data, l.hand); s != "" {
				r.notes = append([]string{s}, r.notes...)
			}
		}
	}
	return nil
}

// farAhead is how many days ahead of the computer's clock no run has results: a year is mistyped there.
// Nearer ones are only pointed out, as clocks may be wrong.
const farAhead = 5 * 366

// askFarAhead asks for the date of a sheet that says one of a run far ahead, unless somebody has said it.
func (p *parsedSheet) askFarAhead(now time.Time, hand ByHand) {
	if p.waits() || hand.Date != "" {
		return
	}
	if day, late := p.after(unit.DayOf(now) + farAhead); late {
		p.problems = append(p.problems, place.Problem{
			Place: place.Place{Sheet: p.sheet.Name}, Severity: place.Waits, Kind: "date-far-ahead", Read: day.Long(), Expected: "a day that is over",
			Do:      "Which date was the run? Or correct the year where it stands, save, and load the sheet again.",
			Answers: place.AnswerLines(place.Answer{Flags: "--date YEAR-MONTH-DAY", When: "if the sheet is of one run"}),
		})
	}
}

// loading is a batch of sheets on its way into the archive.
type loading struct {
	pl      *Pipeline
	names   []string
	results []readResult
	hand    ByHand
	known   map[string]store.Entry // by hash
	next    *int
	now     time.Time
	rep     *LoadReport
	begun   *store.Begun // the copy of a large sheet
}

// unread says whether lines are still to be read, and can be.
func (r *readResult) unread() bool {
	return r.err == nil && r.parsed != nil && !r.parsed.waits() && r.parsed.unread()
}

// large loads a sheet whose lines are read as they are written: they go into
// the database first, then the copy and the ledger line to disk, and only then
// is the transaction committed. Cut short in between, it is loaded from the
// copy, like any other.
func (l *loading) large(ctx context.Context) error {
	r := &l.results[0]
	if e, seen := l.known[r.hash]; seen && (e.State == store.Loaded || e.State == store.Withdrawn && l.hand == ByHand{}) {
		_, err := l.keep(ctx)
		return err
	}
	r.parsed.entry = l.entry(0)
	l.begun = l.pl.Archive.Begin(r.parsed.entry, r.data)
	defer l.begun.End()
	err := l.pl.changeSheets(ctx, func() error {
		if err := l.pl.insertSheets(ctx, []*parsedSheet{r.parsed}); err != nil {
			return err
		}
		_, err := l.keep(ctx)
		return err
	})
	var none errNoLines
	if !errors.As(err, &none) {
		return err
	}
	// undone; and what was numbered for it with it
	if err := l.pl.readCourses(); err != nil {
		return err
	}
	r.parsed, r.err = nil, none.error
	_, err = l.keep(ctx)
	return err
}

// entry is the ledger line of a sheet that was read.
func (l *loading) entry(i int) store.Entry {
	r := &l.results[i]
	hand, p := r.said(l.hand), r.parsed
	e := store.Entry{Seq: *l.next, Hash: r.hash, Path: l.names[i], LoadedAt: l.now, State: store.Loaded, Rows: p.rows(),
		Course: hand.Course, Date: hand.Date, Session: hand.Session, Distance: hand.Distance, Kind: hand.Kind, Answers: joinAnswers(joinAnswers(hand.Answers, r.answers), r.course)}
	if old, seen := l.known[r.hash]; seen { // it waited, or was loaded under another answer: the same sheet, so the same place
		e.Seq, e.LoadedAt, e.Path = old.Seq, old.LoadedAt, old.Path
	}
	return e
}

// keep decides what becomes of each sheet of the batch, and puts copies and
// ledger lines on disk. It returns those that go into the database.
func (l *loading) keep(ctx context.Context) ([]*parsedSheet, error) {
	pl, names, results, hand, known, next, rep := l.pl, l.names, l.results, l.hand, l.known, l.next, l.rep
	waiting := map[string]store.Entry{} // by path
	for _, e := range known {
		if e.State == store.Waiting {
			waiting[e.Path] = e
		}
	}
	var keep []store.Incoming
	var parsed []*parsedSheet
	for i, r := range results {
		sr := SheetReport{Path: names[i]}
		e, seen := known[r.hash]
		odd := ""
		switch {
		case seen && e.State == store.Loaded:
			odd = pl.ofAnotherRun(names[i], r.data, hand, e)
		case r.err == nil && r.parsed != nil && r.parsed.sheet.OwnReport():
			var err error
			if odd, err = l.ownReportOfHeld(ctx, &r); err != nil {
				return nil, err
			}
		}
		switch {
		case r.err != nil && !(seen && e.State == store.Loaded):
			sr.State, sr.Why = "refused", plainReadError(r.err)
			rep.Refused++
		case odd != "":
			sr.State, sr.Why = "refused", odd
			rep.Refused++
		case seen && e.State == store.Loaded && hand.differs(e):
			sr.State, sr.Why = "refused", fmt.Sprintf("it is in the archive already, without what you say about it now. To have it read anew: lapwing sheets withdraw %s, then the same command again", text.Typed(e.Path))
			rep.Refused++
		case seen && e.State == store.Loaded:
			sr.State, sr.Rows = "already loaded", e.Rows
			if e.Path != names[i] {
				sr.Why = "the same sheet was loaded as " + e.Path
			}
			rep.Known++
		case seen && e.State == store.Withdrawn && hand == (ByHand{}):
			sr.State, sr.Why = "withdrawn", fmt.Sprintf("this sheet was withdrawn; to use it again: lapwing sheets restore %s", text.Typed(e.Path))
			rep.Known++
		default:
			p := r.parsed
			p.entry = l.entry(i)
			sr.seq = p.entry.Seq
			if !seen {
				*next++
			}
			sr.Path = p.entry.Path
			sr.Notes = r.notes
			sr.Problems, sr.Counts, sr.Runs, sr.Rows, sr.Forgotten = p.problems, p.counts(), p.runNames(), p.rows(), r.left
			if p.waits() {
				p.entry.State, p.entry.Rows = store.Waiting, 0
				sr.State, sr.Why, sr.Question = "waiting", p.question(), p.questionOf(names[i])
				rep.Waiting++
			} else {
				sr.State, sr.Settled = "loaded", settledByOthers(p.problems)
				if len(l.names) <= mostChecked {
					if s := l.pl.otherWeekday(p); s != "" {
						sr.Notes = append(sr.Notes, s)
					}
				}
				if day, late := p.after(unit.DayOf(l.now) + 1); late {
					sr.Notes = append(sr.Notes, fmt.Sprintf("it is taken for a run of %s, a day that is still to come by the clock of this computer. If it is another day: lapwing sheets withdraw %s, then load it with --date", day.Long(), text.Typed(sr.Path)))
				}
				if old, ok := waiting[p.entry.Path]; ok && old.Hash != r.hash {
					// the corrected sheet answers the question of the one before
					old.State = store.Withdrawn
					known[old.Hash] = old
					keep = append(keep, store.Incoming{Entry: old})
				}
				rep.Loaded++
				rep.Rows += p.rows()
				parsed = append(parsed, p)
			}
			known[r.hash] = p.entry
			data := r.data
			if seen && e.State == p.entry.State && p.entry == e {
				break // still waiting for the same answer: nothing new to note
			}
			keep = append(keep, store.Incoming{Entry: p.entry, Data: data, Begun: l.begun})
		}
		rep.Sheets = append(rep.Sheets, sr)
	}
	return parsed, pl.Archive.Keep(keep)
}

// after is the first day of the sheet's runs after a day, where there is one.
func (p *parsedSheet) after(day unit.Day) (first unit.Day, ok bool) {
	for _, q := range p.parts {
		for _, r := range q.runs {
			if r.day > day && (!ok || r.day < first) {
				first, ok = r.day, true
			}
		}
	}
	return first, ok
}

// ofAnotherRun says what is odd about bytes that are in the archive already
// and would be of another run under this name or with this answer: last week's
// file sent again as this week's, most likely. "" where nothing is odd.
func (pl *Pipeline) ofAnotherRun(name string, data []byte, hand ByHand, e store.Entry) string {
	if hand == (ByHand{}) && path.Base(name) == path.Base(e.Path) {
		return ""
	}
	if hand.Course == "" {
		hand.Answers = joinAnswers(hand.Answers, onlyCourses(e.Answers))
	}
	now, err := pl.openSheet(name, data, hand)
	if err != nil || now.waits() {
		return ""
	}
	before, err := pl.openSheet(e.Path, data, handOf(e))
	if err != nil || slices.Equal(now.runNames(), before.runNames()) {
		return ""
	}
	if path.Base(name) == path.Base(e.Path) && hand != (ByHand{}) {
		return fmt.Sprintf("it is in the archive already, as %s. To make it %s: lapwing sheets withdraw %s, then the same command again", shortList(before.runNames(), 3), shortList(now.runNames(), 3), text.Typed(e.Path))
	}
	return fmt.Sprintf("it is byte for byte the sheet %s of %s, yet here it would be of %s. If it was copied or named by mistake, get the right one. If the other was read wrongly: lapwing sheets withdraw %s, then load this one with --course and --date",
		e.Path, shortList(before.runNames(), 3), shortList(now.runNames(), 3), text.Typed(e.Path))
}
