package reports

import (
	"cmp"
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// desk builds the workbook for the results desk: what to check, and every line
// as a form to correct.
func (d *weekly) desk(i issueOf) *table.Book {
	b := d.book(i)
	b.Title = "FOR THE RESULTS DESK ONLY: " + b.Title
	b.Subject = text.DeskBook
	b.Tabs = []*table.Tab{d.checksTab(), d.linesTab(), d.deskNotes(i)}
	return b
}

var urgency = map[string]string{
	"waits":    "1 waits for an answer",
	"doubtful": "2 doubtful",
	"look":     "3 please look",
	"note":     "4 for information",
}

// checksTab lists what somebody should look at, worst first.
func (d *weekly) checksTab() *table.Tab {
	t := &table.Table{Name: "Checks", None: "Nothing to check.", Columns: []table.Column{
		{Head: "Urgency", Max: 22}, {Head: "Where", Max: 28}, {Head: "What", Max: 24}, {Head: "On the sheet", Max: 22},
		{Head: "Expected", Max: 22}, {Head: "What to do", Max: 40}, {Head: boxAnswer, Width: 18, Input: true}, {Head: headQuestion, Hidden: true}}}
	// question names what an Answer is about, for ReadDesk; blank where the
	// answer belongs on the tab Lines.
	question := func(severity, at, what, read, expected, todo, question string) {
		t.Add(nil, table.Words(urgency[severity]), table.Words(at), table.Words(what), table.Words(read),
			table.Words(expected), table.Lines(todo), table.Value{}, table.Words(question))
	}
	add := func(severity, at, what, read, expected, todo string) {
		question(severity, at, what, read, expected, todo, "")
	}
	said, counts := map[string]bool{}, map[string]bool{}
	for i := range d.results {
		r := &d.results[i]
		counts[where(r.sheet, r.tab, r.row)] = r.status == "ok"
	}
	for _, severity := range []string{"waits", "doubtful", "look", "note"} {
		for _, c := range d.checks {
			at := where(c.sheet, c.tab, c.row)
			urgent, what, todo := c.severity, place.KindWords(c.kind), c.whatToDo()
			if urgent == "doubtful" && c.row > 0 && counts[at] {
				// The line is trusted again: a decision has settled the doubt.
				urgent, what, todo = "note", what+"; the line counts now", "Nothing more, if it was settled by a correction."
			}
			if urgent != severity {
				continue
			}
			if c.column != "" {
				at += ", column " + c.column
			}
			said[where(c.sheet, c.tab, c.row)] = true
			about := ""
			if severity == "look" {
				about = deskQuestion(askProblem, c.sheet, c.tab, fmt.Sprint(c.row), c.column, c.kind, c.read, d.course, d.on.String())
				between := "\n" // behind a command
				if strings.HasSuffix(todo, ".") {
					between = " "
				}
				todo = strings.TrimSpace(todo + between + "Or answer: " + isRight + ".")
			}
			question(severity, at, what, c.read, c.expected, todo, about)
		}
		for i := range d.results {
			r := &d.results[i]
			at := where(r.sheet, r.tab, r.row)
			switch {
			case severity == "doubtful" && r.status == "doubtful" && !said[at]:
				add(severity, at, "not trusted: "+cmp.Or(r.doubt, r.note, "see the same name on another line"), r.line(), "", "Ask, then correct the line on the tab Lines.")
			case severity == "look" && r.grade != nil && *r.grade >= 100:
				add(severity, at, fmt.Sprintf("age grade %.2f", *r.grade), r.line(), "under 100", "Check age, sex and course before anybody is praised.")
			case severity == "note" && r.status == "unnamed" && !said[at]:
				add(severity, at, "finisher without a name", r.line(), "a name", "If somebody claims the place, enter the name on the tab Lines.")
			}
		}
		if severity == "look" {
			asked := map[string]bool{}
			for _, rec := range d.records {
				about := deskQuestion(askRecord, rec.sheet, rec.tab, fmt.Sprint(rec.row))
				if rec.confirmed || asked[about] {
					continue // one answer holds for all lists that the result heads
				}
				asked[about] = true
				read := unit.Clock(rec.timeS)
				if r := d.resultOf(&rec); r != nil {
					read = r.line()
				}
				question(severity, where(rec.sheet, rec.tab, rec.row), d.recordTitle()+" ("+rec.what()+")",
					read, "fastest before: "+unit.Clock(rec.wasS),
					"Check the person, age, time and route. Answer: confirmed, or void where it can't stand.", about)
			}
			for _, c := range d.oneClub {
				question(severity, "", "club: "+c.other, c.other, c.club, "Is this "+c.club+"? ("+c.why+") Answer: yes, or no where they are two clubs.",
					deskQuestion(askClub, c.other, c.club))
			}
		}
	}
	state := d.run.state
	if d.held() {
		state = "" // no sheet says that a run was held as usual
	}
	question("note", "", "state of the run", state, "held", "Only where it was not held as usual. Answer: "+strings.Join(runStateChoices, ", ")+".",
		deskQuestion(askState, d.course, d.on.String(), d.session))
	tab := &table.Tab{Name: checksTab, Landscape: true}
	tab.Add(table.Title{Level: 1, Text: "To check, most urgent first"},
		table.Para{Text: d.counts()},
		table.Para{Text: "Holds full names, ages and doubts: for the results desk, not for publication.", Bold: true},
		table.Para{Text: "Where What to do offers answers, write one of them under Answer: \"is right\" if the sheet is right as it stands, \"all are right\" for every such point of the same sheet. For anything else go to the tab Lines."},
		table.Full{Table: t})
	return tab
}

// line is the result in a few words, in full.
func (r *resultRow) line() string {
	s := ""
	if r.place.N > 0 {
		s = r.place.String() + ". "
	}
	if s += r.name; r.name == "" {
		s += nobody
	}
	if r.timeS != nil {
		s += ", " + unit.Clock(*r.timeS)
	}
	return s
}

// Headings of the form's boxes, which ReadDesk looks for.
const (
	headSheet   = "Sheet"
	headTab     = "Tab"
	headRow     = "Row"
	boxPlace    = "Right place"
	boxTime     = "Right time"
	boxName     = "Right name"
	boxSex      = "Right sex"
	boxGroup    = "Right group"
	boxClub     = "Right club"
	boxTaking   = "Took part as"
	boxStrike   = "Strike out"
	boxWhy      = "Why"
	boxExchange = "Names exchanged with place"
	boxRecord   = "As a record"
	boxRuns     = "Runs before the sheets"
	boxBest     = "Best before the sheets"
	linesTab    = "Lines"

	boxAnswer    = "Answer"
	headQuestion = "Question"
	checksTab    = "To check"
)

// oldBoxes are the headings that boxes had in workbooks written until 2026-11.
var oldBoxes = map[string]string{boxWhy: "Remark", boxExchange: "Change places with"}

// What a line can be struck out as, or brought back.
var strikeChoices = []string{"disqualified", "did not finish", "not a finisher", "counts after all"}

var recordChoices = []string{"confirmed", "void"}

var runStateChoices = []string{"cancelled", "abandoned", "times lost", "other route", "misdirected", "short by 120 m", "long by 50 m", "held"}

// The kinds of questions that an Answer is read for.
const (
	askRecord = "record" // sheet, tab, row
	askClub   = "club"   // other, club
	askState  = "state"  // course, date, session

	askProblem = "problem" // sheet, tab, row, column, kind, what was read, course and date of the run
)

// Answers to a problem that needs no look: the sheet is right.
const (
	isRight     = "is right"
	allAreRight = "all are right"
)

// deskQuestion names a question for ReadDesk: its kind and what it is about.
func deskQuestion(parts ...string) string {
	for i, p := range parts {
		parts[i] = url.PathEscape(p)
	}
	return strings.Join(parts, "/")
}

var takingPartChoices = []string{"runner", "walker", "guided", "guide", "pacer", "back marker", "adult with a child",
	"buggy", "dog", "racing wheelchair or handcycle", "day wheelchair or frame"}

// linesTab is every line of the run's sheets, whatever became of it, with boxes
// to correct it.
func (d *weekly) linesTab() *table.Tab {
	box := func(head string, width int, choices ...string) table.Column {
		return table.Column{Head: head, Width: width, Input: true, Choices: choices}
	}
	t := &table.Table{Name: "Lines", None: "No lines.", Columns: []table.Column{
		{Head: "Place", Kind: table.Place}, {Head: "Time", Kind: table.Clock}, {Head: "Name", Max: 26}, {Head: "Sex"}, {Head: "Group"},
		{Head: "Club", Max: 18}, {Head: "What counts", Max: 18}, {Head: "Note", Max: 24},
		box(boxPlace, 8), box(boxTime, 9), box(boxName, 20), box(boxSex, 7, "M", "W", "X", "not given"), box(boxGroup, 8), box(boxWhy, 18),
		box(boxClub, 14), box(boxTaking, 12, takingPartChoices...), box(boxStrike, 12, strikeChoices...), box(boxExchange, 10),
		box(boxRecord, 10, recordChoices...), box(boxRuns, 10), box(boxBest, 10),
		{Head: headSheet, Max: 60}, {Head: headTab, Max: 10}, {Head: headRow, Kind: table.Whole},
	}}
	for i := range d.results {
		r := &d.results[i]
		remark := joinWords(r.doubt, r.note)
		if r.takingPart != "runner" && !strings.Contains(strings.ToLower(r.note), r.takingPart) {
			remark = joinWords(r.takingPart, remark)
		}
		if r.toldAt != nil {
			remark = joinWords(fmt.Sprintf("%s run, moved here; told before in the reports of %s", ordinal(*r.milestone), r.toldAt), remark)
		}
		if r.protected {
			remark = joinWords("may be under 18", remark)
		}
		if r.hidden {
			remark = joinWords("hidden", remark)
		}
		t.Add(nil, table.Maybe(r.position).Tie(r.tied), table.Maybe(r.timeS), table.Words(r.name), table.Words(r.sex), table.Words(r.group),
			table.Words(r.club), table.Words(r.whatCounts()), table.Words(remark),
			table.Value{}, table.Value{}, table.Value{}, table.Value{}, table.Value{}, table.Value{}, table.Value{}, table.Value{}, table.Value{},
			table.Value{}, table.Value{}, table.Value{}, table.Value{},
			table.Words(r.sheet), table.Words(r.tab), table.Number(r.row))
	}
	tab := &table.Tab{Name: linesTab, Landscape: true, PrintColumns: 14}
	tab.Add(table.Title{Level: 1, Text: "Every line, with boxes to correct it"},
		table.Para{Text: "Fill in only what is wrong, in the boxes to the right of a line, and the reason under Why. Leave the other columns as they are. Times as 24:31."},
		table.Para{Text: "On paper are the boxes that are wanted most. Those for the club, taking part as, striking out and more are on the screen, to the right."},
		table.Full{Table: t})
	return tab
}

// whatCounts says what of a line counts, and why not more.
func (r *resultRow) whatCounts() string {
	s := "nothing"
	switch {
	case r.countsRun && r.countsTime:
		s = "run and time"
	case r.countsRun:
		s = "run only"
	case r.status == "unnamed" || r.status == "doubtful":
		s = "place only"
	}
	why, ok := map[string]string{"ok": "", "unnamed": "no name", "untimed": "no time", "dnf": "did not finish", "dq": "disqualified",
		"repeat": "repeated", "doubtful": "in doubt", "superseded": "replaced"}[r.status]
	switch {
	case !ok:
		why = r.status
	case r.status == "superseded" && strings.HasPrefix(r.doubt, "left out"):
		why = "left out"
	}
	if why == "" {
		return s
	}
	return s + ": " + why
}

// deskNotes says how to use the desk's workbook and what changed.
func (d *weekly) deskNotes(i issueOf) *table.Tab {
	n := newNotes("DeskNotes", d.standingOf(i), i.Desk)
	add := n.add
	add("To check", "What could not be read, does not fit or is not certain. \"Does not fit\" accuses nobody: please ask.")
	add("What counts", "Of every line of the sheets. Run: attendance and milestones. Time: bests, form and records. Place only: nobody is named, or not for sure, and somebody finished there. Nothing: did not finish; disqualified; repeated, the same result twice; replaced, a later sheet of the run stands; left out, until somebody says of which run the sheet is.")
	add("Boxes", "A correction needs only the box that is wrong. Right group and right club are as printed, right sex is M, W, X or not given. To strike out a line choose the reason. An empty box changes nothing.")
	add("More boxes", "Names exchanged with place: where two people stand under each other's name, as when the two were mixed up at the finish, the place of the other; the names change over, places and times stay. (Two who came in the other way round: Right place, of both.) As a record: whether the result has been checked and stands. Runs and best before the sheets: what this person had run before the sheets begin, on all courses.")
	add("Reading it back", "Save this workbook, then: lapwing correct --from and its name. You see what changes elsewhere before anything is kept.")
	add("If you edit this file", "It is never overwritten. The next report goes beside it under the same name with \"(issue "+strconv.Itoa(max(2, i.Number+1))+")\".")
	add("Personal data", "This workbook holds full names, also of children and of people who asked not to be shown. Keep it at the desk, do not send it around, delete what is no longer needed.")
	return n.tab("Notes for the results desk")
}

// whatToDo is what to do about a problem, with the commands that answer it, a line each.
func (r problemRow) whatToDo() string {
	answers := (place.Problem{Answers: r.answers}).PossibleAnswers()
	if len(answers) == 0 {
		return r.todo
	}
	todo := r.todo
	if todo != "" && !strings.HasSuffix(todo, ".") && !strings.HasSuffix(todo, "?") {
		todo += "."
	}
	todo += " To answer, type:"
	if len(answers) > 1 {
		todo = strings.TrimSuffix(todo, ":") + " one of these:"
	}
	lines := []string{strings.TrimSpace(todo)}
	for _, a := range answers {
		when := ""
		if a.When != "" {
			when = a.When + ": "
		}
		lines = append(lines, when+"lapwing load "+text.Typed(r.sheet)+" "+a.Flags)
	}
	return strings.Join(lines, "\n")
}
