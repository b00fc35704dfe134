package pipeline

import (
	"cmp"
	"context"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path"
	"runtime"
	"runtime/debug"
	"strings"
	"time"

	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
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

// with is what is said now, and for the rest what a person said before.
func (h ByHand) with(before ByHand) ByHand {
	if before.Answers != "" && !strings.Contains(before.Answers, h.Answers) {
		before.Answers, h.Answers = joinAnswers(before.Answers, h.Answers), "" // of two to one question the later holds
	}
	return ByHand{cmp.Or(h.Course, before.Course), cmp.Or(h.Date, before.Date), cmp.Or(h.Session, before.Session),
		cmp.Or(h.Distance, before.Distance), cmp.Or(h.Kind, before.Kind), cmp.Or(h.Answers, before.Answers)}
}

// differs says whether something is said by hand that was not said when a sheet was
// loaded, and that its course and date do not show: its distance, its kind, how a
// column is read.
func (h ByHand) differs(e store.Entry) bool {
	return h.Distance != "" && h.Distance != e.Distance || h.Kind != "" && h.Kind != e.Kind || h.Answers != "" && !strings.Contains(e.Answers, h.Answers)
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
		if answered, err = pl.askedSheets(ctx, len(files)); err != nil {
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
	states := maps.Clone(known) // they change while the next sheets are read by what was known before
	var unsure, undatedOnes unsureSheets
	now := time.Now()
	defer pl.took("Loading sheets", now)
	size := fileSize(files)
	watchLoad(len(files), size)
	// What was said of a sheet holds on, where it still waits for the answer to another
	// question or is left out until something is said of it.
	asked := func(e store.Entry) bool {
		return e.State == store.Waiting || answered[e.Seq] && e.State == store.Loaded
	}
	saved := savedDays{days: map[string]unit.Day{}}
	read := func(i int) readResult {
		r := pl.readFile(files[i], names[i], hand, known, inArchive, asked)
		saved.note(files[i], &r)
		return r
	}
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
		if err := pl.loadBatch(ctx, names[from:], batch, hand, states, answers, &next, now, rep, &unsure, &undatedOnes); err != nil {
			return err
		}
		pl.Progress.Step("Reading sheets", int64(from+len(batch)), int64(len(files)))
		return nil
	}); err != nil {
		return rep, err
	}
	pl.Progress.Done()
	l := &loading{pl: pl, hand: hand, known: states, next: &next, now: now, rep: rep}
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
	if err := l.settleSeries(ctx, saved.days); err != nil {
		return rep, err
	}
	if err := l.answerAlike(ctx); err != nil {
		return rep, err
	}
	for _, s := range rep.Sheets {
		if s.Question != nil {
			pl.offerCourses(s.Question)
		}
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

// said is what is said by hand of a sheet in a load of which hand is said.
func (r *readResult) said(hand ByHand) ByHand {
	if r.hand != nil {
		return *r.hand
	}
	return hand
}

// readFile reads a file and turns it into facts, unless the archive has it. What was
// said of a sheet that is asked about holds on.
func (pl *Pipeline) readFile(file, name string, hand ByHand, known map[string]store.Entry, inArchive map[string]bool, asked func(store.Entry) bool) (r readResult) {
	r.data, r.err = sheet.Fetch(file, pl.limits)
	if r.err == nil {
		r.data, r.left, r.err = pl.withoutForgotten(name, r.data, hand)
	}
	if r.err != nil {
		return r
	}
	r.hash = store.Hash(r.data)
	e := known[r.hash]
	again := asked(e)
	if again {
		before := handOf(e)
		if e.State == store.Waiting {
			before.Answers = answersByHand(before.Answers)
		}
		if said := hand.with(before); said != hand {
			r.hand, hand = &said, said
		}
	}
	if !inArchive[r.hash] {
		r.parsed, r.err = pl.openOrParse(name, r.data, hand)
	}
	if again && name != e.Path && r.parsed != nil && r.parsed.waits() {
		// the folders in front of it may have said what a file given by itself does not
		if p, err := pl.openOrParse(e.Path, r.data, hand); err == nil && !p.waits() {
			r.parsed = p
		}
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
