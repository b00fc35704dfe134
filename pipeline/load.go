package pipeline

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"sort"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
)

// ByHand is what a person says about sheets that do not say it themselves.
type ByHand struct {
	Course, Date, Session, Distance, Kind string
	Answers                               string // to questions about columns: "time=mm.ss; sex V=W"
}

// handOf is what was said by hand about a sheet of the ledger.
func handOf(e store.Entry) ByHand {
	return ByHand{e.Course, e.Date, e.Session, e.Distance, e.Kind, e.Answers}
}

// differs says whether something is said by hand that was not said when a sheet was
// loaded, and that its course and date do not show: its distance, its kind, how a
// column is read.
func (h ByHand) differs(e store.Entry) bool {
	return h.Distance != "" && h.Distance != e.Distance || h.Kind != "" && h.Kind != e.Kind || h.Answers != "" && !strings.Contains(e.Answers, h.Answers)
}

// SheetReport says what became of one sheet of a load.
type SheetReport struct {
	Path     string          `json:"sheet"`
	State    string          `json:"state"` // loaded, already loaded, waiting, refused
	Rows     int             `json:"rows"`
	Runs     []string        `json:"runs,omitempty"` // "alder-bank 2026-01-03"
	Why      string          `json:"why,omitempty"`
	Problems []place.Problem `json:"problems,omitempty"`
	Counts   map[string]int  `json:"counts,omitempty"` // by status
	Notes    []string        `json:"notes,omitempty"`  // how it differs from earlier sheets of its course
	// Forgotten is the number of rows that were kept without a name, because
	// their owner asked to be forgotten.
	Forgotten int `json:"kept_without_a_name,omitempty"`
	// Settled says in words that the title has a course's name misspelt and was
	// read as that course, because of the people on the sheet.
	Settled string `json:"course_settled,omitempty"`
	// Question is what the sheet waits for, nil where it waits for nothing. In
	// words it is in Why.
	Question *Question `json:"-"`

	seq int // in the ledger, where it is kept
}

// LoadReport sums up a load.
type LoadReport struct {
	Sheets  []SheetReport `json:"sheets"`
	Loaded  int           `json:"loaded"`
	Known   int           `json:"already_loaded"`
	Waiting int           `json:"waiting"`
	Refused int           `json:"refused"`
	Rows    int           `json:"rows"`
}

// Err is ErrWaits where a sheet or one of its tabs waits, or a sheet was refused.
func (r *LoadReport) Err() error {
	if r.Waiting+r.Refused > 0 {
		return ErrWaits
	}
	for i := range r.Sheets {
		if len(r.Sheets[i].TabsLeftOut()) > 0 {
			return ErrWaits
		}
	}
	return nil
}

// TabsLeftOut are the questions about tabs that were left out of a sheet that was
// loaded.
func (s *SheetReport) TabsLeftOut() (out []place.Problem) {
	for _, q := range s.Problems {
		if q.Kind == sheet.TabLeftOut && s.State == "loaded" {
			out = append(out, q)
		}
	}
	return out
}

// FindSheets lists the files that paths stand for: files, folders with all
// that is in them, or patterns. Names come in natural order. Helper files
// that spreadsheet programs and file managers leave about are passed over.
func FindSheets(paths []string) ([]string, []string, error) {
	var files, names []string
	add := func(root, p string) {
		if !helperFile(filepath.Base(p)) {
			files = append(files, p)
			names = append(names, relative(root, p))
		}
	}
	for _, p := range paths {
		st, err := os.Stat(p)
		if err != nil {
			matches, globErr := filepath.Glob(p)
			if globErr != nil || len(matches) == 0 {
				return nil, nil, fmt.Errorf("%s: there is no such file or folder", p)
			}
			for _, m := range matches {
				add(m, m)
			}
			continue
		}
		if !st.IsDir() {
			add(p, p)
			continue
		}
		if err := lookThrough(p, map[string]bool{}, func(q string) { add(p, q) }); err != nil {
			return nil, nil, fmt.Errorf("can't look through %s: %w", p, err)
		}
	}
	order := make([]int, len(files))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool {
		x, y := order[a], order[b]
		if names[x] == names[y] {
			return files[x] < files[y]
		}
		return nameLess(names[x], names[y])
	})
	f2, n2 := make([]string, len(files)), make([]string, len(files))
	for k, i := range order {
		f2[k], n2[k] = files[i], names[i]
	}
	return f2, n2, nil
}

// lookThrough calls f for every file below a folder, and for folders that can't
// be looked into, whose reading says why. Links are followed, each folder once.
func lookThrough(dir string, seen map[string]bool, f func(path string)) error {
	real, err := filepath.EvalSymlinks(dir)
	if err != nil || seen[real] {
		return err
	}
	seen[real] = true
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		p := filepath.Join(dir, e.Name())
		st, err := os.Stat(p)
		switch {
		case err == nil && st.IsDir() && strings.HasPrefix(e.Name(), "."):
		case err == nil && st.IsDir():
			if lookThrough(p, seen, f) != nil {
				f(p)
			}
		case err != nil, st.Mode().IsRegular():
			f(p)
		}
	}
	return nil
}

// helperFile says whether a name is one of the files that programs leave
// beside sheets and that never hold results.
func helperFile(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") || strings.EqualFold(name, "thumbs.db") || strings.EqualFold(name, "desktop.ini")
}

// nameLess compares the names of sheets without their endings first: "3 May.csv"
// comes before "3 May (corrected).csv".
func nameLess(a, b string) bool {
	x, y := strings.TrimSuffix(a, path.Ext(a)), strings.TrimSuffix(b, path.Ext(b))
	if x != y {
		return naturalLess(x, y)
	}
	return naturalLess(a, b)
}

// naturalLess compares names as people do: week2 before week10.
func naturalLess(a, b string) bool {
	for len(a) > 0 && len(b) > 0 {
		da, db := digits(a), digits(b)
		if da > 0 && db > 0 {
			x, y := strings.TrimLeft(a[:da], "0"), strings.TrimLeft(b[:db], "0")
			if len(x) != len(y) {
				return len(x) < len(y)
			}
			if x != y {
				return x < y
			}
			if da != db {
				return da < db
			}
			a, b = a[da:], b[db:]
			continue
		}
		if a[0] != b[0] {
			return a[0] < b[0]
		}
		a, b = a[1:], b[1:]
	}
	return len(a) < len(b)
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// Load reads files into the archive: each sheet is parsed whole, then its copy
// and ledger line are put on disk, then its lines go into the database. A
// sheet that can't be used yet waits, one that is no sheet is refused; neither
// stops the others.
func (pl *Pipeline) Load(ctx context.Context, paths []string, hand ByHand) (*LoadReport, error) {
	files, names, err := FindSheets(paths)
	if err != nil {
		return nil, err
	}
	return pl.LoadFiles(ctx, files, names, hand)
}

// LoadFiles is Load for files that FindSheets has found, with their names.
func (pl *Pipeline) LoadFiles(ctx context.Context, files, names []string, hand ByHand) (*LoadReport, error) {
	defer pl.stopWith(ctx)()
	if err := pl.checkSideTables(); err != nil { // before anything is kept
		return nil, err
	}
	var err error
	if pl.forgotten, err = pl.readForgotten(); err != nil {
		return nil, err
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	var answered map[int]bool
	if hand != (ByHand{}) {
		if answered, err = pl.leftOutSheets(ctx); err != nil {
			return nil, err
		}
	}
	known, inArchive := map[string]store.Entry{}, map[string]bool{}
	next := 1
	for _, e := range ledger {
		known[e.Hash] = e
		inArchive[e.Hash] = e.State == store.Loaded && !answered[e.Seq]
		next = max(next, e.Seq+1)
	}
	answers := pl.remember(ledger)
	rep := &LoadReport{}
	var unsure, undatedOnes unsureSheets
	now := time.Now()
	defer pl.took("Loading sheets", now)
	size := fileSize(files)
	watchLoad(len(files), size)
	read := func(i int) readResult { return pl.readFile(files[i], names[i], hand, inArchive) }
	if hand.Course == "" {
		var kept []readResult
		pl.ahead, kept = pl.lookAhead(ctx, len(files), size, read)
		defer func() { pl.ahead = nil }()
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if kept != nil {
			read = func(i int) readResult {
				r := kept[i]
				kept[i] = readResult{}
				return r
			}
		}
	}
	if err := readAhead(ctx, len(files), pl.workers(), size, read, func(from int, batch []readResult) error {
		if err := pl.loadBatch(ctx, names[from:], batch, hand, known, answers, &next, now, rep, &unsure, &undatedOnes); err != nil {
			return err
		}
		pl.Progress.Step("Reading sheets", int64(from+len(batch)), int64(len(files)))
		return nil
	}); err != nil {
		return rep, err
	}
	pl.Progress.Done()
	l := &loading{pl: pl, hand: hand, known: known, next: &next, now: now, rep: rep}
	if len(undatedOnes) > 0 {
		settled, err := pl.settleOrders(ctx, undatedOnes)
		if err != nil {
			return rep, err
		}
		if err := l.loadDated(ctx, settled, answers, &unsure); err != nil {
			return rep, err
		}
	}
	if len(unsure) > 0 {
		settled, err := pl.settleMisspelt(ctx, unsure)
		if err != nil {
			return rep, err
		}
		if err := l.loadSettled(ctx, settled, answers); err != nil {
			return rep, err
		}
	}
	if err := l.answerAlike(ctx); err != nil {
		return rep, err
	}
	debug.FreeOSMemory() // a large sheet's bytes are needed no more
	return rep, pl.watchMemory(ctx)
}

// fileSize gives what files weigh, 0 where one can't be looked at.
func fileSize(files []string) func(i int) int64 {
	return func(i int) int64 {
		st, err := os.Stat(files[i])
		if err != nil {
			return 0
		}
		return weight(files[i], st.Size())
	}
}

// weight is the size of a sheet as text. A workbook unpacks to several times
// its size.
func weight(name string, bytes int64) int64 {
	switch strings.ToLower(path.Ext(name)) {
	case ".xlsx", ".xlsm":
		return 8 * bytes
	}
	return bytes
}

// readResult is what a reading goroutine found out about one file.
type readResult struct {
	data    []byte
	hash    string
	parsed  *parsedSheet
	answers string  // given earlier for a sheet with these headings
	course  string  // an answer that says which course a misspelt title means
	hand    *ByHand // what is said of it, where that is more than is said of the whole load
	notes   []string
	err     error
	left    int // rows without a name, because their owner asked to be forgotten
}

// readFile reads a file and turns it into facts, unless the archive has it.
func (pl *Pipeline) readFile(file, name string, hand ByHand, inArchive map[string]bool) (r readResult) {
	r.data, r.err = sheet.Fetch(file, pl.limits)
	if r.err == nil {
		r.data, r.left, r.err = pl.withoutForgotten(name, r.data, hand)
	}
	if r.err != nil {
		return r
	}
	r.hash = store.Hash(r.data)
	if !inArchive[r.hash] {
		r.parsed, r.err = pl.openOrParse(name, r.data, hand)
	}
	return r
}

// largeSheet is the size from which a sheet's lines are read as they are
// written. It is never more than a batch, so that such a sheet is alone.
var largeSheet = batchBytes

// openOrParse reads a sheet; a large one without its lines.
func (pl *Pipeline) openOrParse(name string, data []byte, hand ByHand) (*parsedSheet, error) {
	if weight(name, int64(len(data))) > int64(largeSheet) {
		return pl.openSheet(name, data, hand)
	}
	return pl.parseSheet(name, data, hand)
}

// loadBatch puts what was read of a batch of files into the archive.
func (pl *Pipeline) loadBatch(ctx context.Context, names []string, results []readResult, hand ByHand, known map[string]store.Entry, answers *remembered, next *int, now time.Time, rep *LoadReport, unsure, undatedOnes *unsureSheets) error {
	var fresh []*parsedSheet
	for i := range results {
		if p := results[i].parsed; p != nil && results[i].err == nil {
			p.byHand = hand.Course != ""
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
	if len(results) == 1 && results[0].unread() {
		return l.large(ctx)
	}
	first := len(rep.Sheets)
	parsed, err := l.keep()
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
		hand := l.hand
		if race, ok := answers.raceOf(r.parsed, hand); ok {
			hand = hand.withRace(race)
			said := hand
			said.Answers = joinAnswers(said.Answers, r.course)
			if now, err := l.pl.openOrParse(l.names[i], r.data, said); err == nil && now.waits() == r.parsed.waits() {
				now.byHand = r.parsed.byHand
				r.parsed, r.hand = now, &hand
			} else {
				hand = l.hand
			}
		}
		if l.hand.Answers == "" {
			r.parsed, r.answers = answers.readAsBefore(r.parsed, func(a string) (*parsedSheet, error) {
				said := hand
				said.Answers = joinAnswers(joinAnswers(hand.Answers, a), r.course)
				return l.pl.openOrParse(l.names[i], r.data, said)
			})
		}
		r.notes = answers.notes(r.parsed)
		for k := range r.notes {
			r.notes[k] += "; lapwing load … --dry-run shows it"
		}
	}
	return nil
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
		_, err := l.keep()
		return err
	}
	r.parsed.entry = l.entry(0)
	l.begun = l.pl.Archive.Begin(r.parsed.entry, r.data)
	defer l.begun.End()
	err := l.pl.changeSheets(ctx, func() error {
		if err := l.pl.insertSheets(ctx, []*parsedSheet{r.parsed}); err != nil {
			return err
		}
		_, err := l.keep()
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
	_, err = l.keep()
	return err
}

// entry is the ledger line of a sheet that was read.
func (l *loading) entry(i int) store.Entry {
	r, hand := &l.results[i], l.hand
	if r.hand != nil {
		hand = *r.hand
	}
	p := r.parsed
	e := store.Entry{Seq: *l.next, Hash: r.hash, Path: l.names[i], LoadedAt: l.now, State: store.Loaded, Rows: p.rows(),
		Course: hand.Course, Date: hand.Date, Session: hand.Session, Distance: hand.Distance, Kind: hand.Kind, Answers: joinAnswers(joinAnswers(hand.Answers, r.answers), r.course)}
	if old, seen := l.known[r.hash]; seen { // it waited, or was loaded under another answer: the same sheet, so the same place
		e.Seq, e.LoadedAt, e.Path = old.Seq, old.LoadedAt, old.Path
	}
	return e
}

// keep decides what becomes of each sheet of the batch, and puts copies and
// ledger lines on disk. It returns those that go into the database.
func (l *loading) keep() ([]*parsedSheet, error) {
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
		if seen && e.State == store.Loaded {
			odd = pl.ofAnotherRun(names[i], r.data, hand, e)
		}
		switch {
		case r.err != nil && !(seen && e.State == store.Loaded):
			sr.State, sr.Why = "refused", plainReadError(r.err)
			rep.Refused++
		case odd != "":
			sr.State, sr.Why = "refused", odd
			rep.Refused++
		case seen && e.State == store.Loaded && hand.differs(e):
			sr.State, sr.Why = "refused", fmt.Sprintf("it is in the archive already, without what you say about it now. To have it read anew: lapwing sheets withdraw %q, then the same command again", e.Path)
			rep.Refused++
		case seen && e.State == store.Loaded:
			sr.State, sr.Rows = "already loaded", e.Rows
			if e.Path != names[i] {
				sr.Why = "the same sheet was loaded as " + e.Path
			}
			rep.Known++
		case seen && e.State == store.Withdrawn && hand == (ByHand{}):
			sr.State, sr.Why = "withdrawn", fmt.Sprintf("this sheet was withdrawn; to use it again: lapwing sheets restore %q", e.Path)
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
		return fmt.Sprintf("it is in the archive already, as %s. To make it %s: lapwing sheets withdraw %q, then the same command again", shortList(before.runNames(), 3), shortList(now.runNames(), 3), e.Path)
	}
	return fmt.Sprintf("it is byte for byte the sheet %s of %s, yet here it would be of %s. If it was copied or named by mistake, get the right one. If the other was read wrongly: lapwing sheets withdraw %q, then load this one with --course and --date",
		e.Path, shortList(before.runNames(), 3), shortList(now.runNames(), 3), e.Path)
}

// stopWith lets reading sheets end with a context, until what it returns is
// called.
func (pl *Pipeline) stopWith(ctx context.Context) (undo func()) {
	before := pl.limits
	pl.limits.Stop = ctx.Err
	return func() { pl.limits = before }
}

func plainReadError(err error) string {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return "no permission to read it. Ask its owner for the right to read, or copy it, then load again"
	case errors.Is(err, fs.ErrNotExist):
		return "it is gone"
	}
	return err.Error()
}

func (pl *Pipeline) workers() int {
	if pl.Settings.Threads > 0 {
		return pl.Settings.Threads
	}
	return runtime.NumCPU()
}

// checkSideTables reads every table that people edit, for its faults.
func (pl *Pipeline) checkSideTables() error {
	for _, read := range []func() error{
		func() error { _, err := pl.Decisions(); return err },
		func() error { _, err := pl.readHistoryTable(); return err },
		func() error { _, err := pl.readVolunteers(); return err },
		func() error { _, err := pl.readMembers(clubBook{}); return err },
	} {
		if err := read(); err != nil {
			return err
		}
	}
	return nil // courses.csv was read when the archive was opened
}

// catchUp loads what the ledger has and the database has not, and takes out
// what the ledger no longer has: after a kill between the two, after a
// restored backup, and to make a database again.
func (pl *Pipeline) catchUp(ctx context.Context) error {
	defer pl.stopWith(ctx)()
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	have := map[int]string{}
	keys, err := pl.sheetsInDatabase(ctx)
	if err != nil {
		return err
	}
	for _, k := range keys {
		have[k.seq] = k.hash
	}
	var missing []store.Entry
	for _, e := range ledger {
		if e.State == store.Loaded && have[e.Seq] != e.Hash {
			missing = append(missing, e)
		}
		if e.State == store.Loaded && have[e.Seq] == e.Hash {
			delete(have, e.Seq)
		}
	}
	for n := range have { // in the database, not (or no longer) in the ledger
		if err := pl.dropSheet(ctx, n); err != nil {
			return err
		}
	}
	copies := make([]string, len(missing))
	for i, e := range missing {
		copies[i] = pl.Archive.Copy(e)
	}
	type copyRead struct {
		sheet *parsedSheet
		err   error
	}
	if err := readAhead(ctx, len(missing), pl.workers(), fileSize(copies), func(i int) (r copyRead) {
		r.sheet, r.err = pl.readCopy(missing[i], pl.openOrParse)
		return r
	}, func(from int, batch []copyRead) error {
		parsed := make([]*parsedSheet, len(batch))
		for i, r := range batch {
			if r.err != nil {
				return r.err
			}
			parsed[i] = r.sheet
		}
		pl.Progress.Step("Reading the archive's sheets", int64(from+len(batch)), int64(len(missing)))
		return pl.writeSheets(ctx, parsed)
	}); err != nil {
		return err
	}
	if len(missing) > 0 {
		pl.Progress.Done()
	}
	return nil
}

// parseCopy reads the archive's copy of a sheet, as it was read when it was
// loaded.
func (pl *Pipeline) parseCopy(e store.Entry) (*parsedSheet, error) {
	return pl.readCopy(e, pl.parseSheet)
}

func (pl *Pipeline) readCopy(e store.Entry, read func(name string, data []byte, hand ByHand) (*parsedSheet, error)) (*parsedSheet, error) {
	data, err := os.ReadFile(pl.Archive.Copy(e))
	if err != nil {
		return nil, fmt.Errorf("the archive's copy of %s can't be read: %w; restore the folder from a backup", e.Path, err)
	}
	if h := store.Hash(data); h != e.Hash {
		return nil, fmt.Errorf("the archive's copy of %s (%s) has changed; restore it from a backup", e.Path, pl.Archive.Copy(e))
	}
	p, err := read(e.Path, data, handOf(e))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", e.Path, err)
	}
	p.entry = e
	p.entry.Rows = p.rows()
	return p, nil
}

// dropSheet takes a sheet out of the database.
func (pl *Pipeline) dropSheet(ctx context.Context, sheetNo int) error {
	return pl.DB.Transaction(ctx, func() error {
		for _, q := range []string{
			"delete from record.line where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from record.helper where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from sheet.column where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from sheet.problem where sheet_no = ?",
			"delete from sheet.part where sheet_no = ?",
			"delete from sheet.sheet where sheet_no = ?",
		} {
			if err := pl.DB.Exec(ctx, q, sheetNo); err != nil {
				return err
			}
		}
		// numbers of parts and lines are free to be given again
		return errors.Join(pl.setState(ctx, "figures", ""), pl.setState(ctx, stateBase, ""))
	})
}
