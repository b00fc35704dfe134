package pipeline

import (
	"context"
	"maps"
	"slices"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
)

// Question is what a sheet waits for.
type Question struct {
	Sheet   string         // as the ledger has it
	Words   string         // the question, with its place
	Answers []place.Answer // none where the sheet has to be mended
	Lacks   string         // "course" or "date" where the sheet says none at all; its like follow the answer
	TabOnly bool           // a tab of a loaded sheet is asked about
	Order   bool           // date_order in the settings answers it, for this sheet and all like it
}

// String is the question with its answers, in one line.
func (q Question) String() string {
	return place.WithAnswers(q.Words, q.Answers)
}

// WaitingQuestions gives the questions of waiting sheets, and those about tabs that were
// left out of sheets that are loaded.
func (pl *Pipeline) WaitingQuestions(ctx context.Context) ([]Question, error) {
	out, err := pl.SheetQuestions()
	if err != nil || pl.DB == nil {
		return out, err
	}
	tabs, err := pl.problemsWhere(ctx, "p.settled = '' and p.kind = '"+sheet.TabLeftOut+"'")
	for _, q := range tabs {
		out = append(out, Question{Sheet: q.Place.Sheet, Words: q.String(), TabOnly: true})
	}
	return out, err
}

// SheetQuestions reads the waiting sheets again and gives the question of each.
func (pl *Pipeline) SheetQuestions() ([]Question, error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	var out []Question
	for _, e := range ledger {
		if e.State != store.Waiting {
			continue
		}
		data, err := pl.copyOf(e)
		if err != nil {
			return nil, err
		}
		p, err := pl.parseSheet(e.Path, data, handOf(e))
		if err != nil {
			out = append(out, Question{Sheet: e.Path, Words: e.Path + ": " + err.Error()})
			continue
		}
		p.byHand = e.Course != ""
		pl.askMisspelt([]*parsedSheet{p})
		p.askFarAhead(time.Now(), handOf(e))
		if q := p.questionOf(e.Path); q != nil {
			pl.offerCourses(q)
			out = append(out, *q)
		} else {
			out = append(out, Question{Sheet: e.Path, Words: e.Path + ": has its answer now; load it again"})
		}
	}
	return out, nil
}

// fewCourses is how many courses are offered as answers.
const fewCourses = 6

// offerCourses puts the known courses, where they are few, among the answers to the
// question which course a sheet is of.
func (pl *Pipeline) offerCourses(q *Question) {
	i := slices.IndexFunc(q.Answers, func(a place.Answer) bool { return strings.HasPrefix(a.Flags, "--course NAME") })
	if i < 0 || len(q.Answers) > 1 || pl.courses == nil {
		return
	}
	days := pl.knownCourses()
	known := slices.Collect(maps.Keys(days.days))
	for c := range days.listed {
		if days.days[c] == nil {
			known = append(known, c)
		}
	}
	if len(known) == 0 || len(known) > fewCourses {
		return
	}
	slices.Sort(known)
	other := q.Answers[i]
	other.When = "if it is another course"
	q.Answers = nil
	for _, c := range known {
		q.Answers = append(q.Answers, place.Answer{Flags: strings.Replace(other.Flags, "NAME", c, 1)})
	}
	q.Answers = append(q.Answers, other)
}

// questionOf is the question that a sheet waits for, nil where it waits for none.
func (p *parsedSheet) questionOf(path string) *Question {
	asked := p.asked()
	if asked == nil {
		return nil
	}
	q := &Question{Sheet: path, Words: asked.Question(), Answers: asked.PossibleAnswers()}
	switch asked.Kind {
	case "course-missing":
		q.Lacks = "course"
		// both at once, where one date answers for the whole sheet
		if slices.ContainsFunc(p.problems, func(o place.Problem) bool {
			return o.Severity == place.Waits && (o.Kind == "date-missing" || o.Kind == sheet.DateImpossible) && o.Answers != ""
		}) && len(p.parts) == 1 {
			q.Words += " And which date was the run?"
			for i := range q.Answers {
				q.Answers[i].Flags += " --date YEAR-MONTH-DAY"
			}
		}
	case "date-missing":
		if _, ok := sheet.NumberOf(path); ok {
			q.Lacks = "date"
		}
	}
	if asked.Kind == "date-unclear" && p.sheet != nil {
		for _, part := range p.sheet.Parts {
			q.Order = q.Order || part.Date.ByOrder != nil
		}
	}
	return q
}
