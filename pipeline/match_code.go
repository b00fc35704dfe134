package pipeline

import (
	"fmt"
	"strconv"
	"strings"

	"lapwing/pipeline/store"
)

// Every row of the workbook for deciding carries a code: which runners or line
// it is about, up to which sheet of the ledger it knew the archive, what state
// the runners were in, and a check sum over all that and over the names shown
// beside it. So rows can be sorted, filtered and deleted; a row whose cells no
// longer belong together, or that the archive has overtaken, is refused.
//
//	R12 R40 17 5f3a09c2 77b1d0e4 9c41aa07          pair: runners, sheet, states, check
//	q3.0.24 R12+R40 17 9c41aa07                    question: a line and its namesakes
//	f3.0.24 R12 17 9c41aa07                        fit: a line and its runner

// Shown is how a person stands in a cell.
func (p MatchPerson) Shown() string { return p.ID + " " + p.Name }

// Shown is how the namesakes of a question stand in a cell.
func (q MatchQuestion) Shown() string {
	names := make([]string, len(q.Namesakes))
	for i, p := range q.Namesakes {
		names[i] = p.Shown() + " (" + p.Facts() + ")"
	}
	return strings.Join(names, "; or ")
}

// Shown is how a line stands in a cell.
func (l MatchLine) Shown() string { return l.Place.String() + ": " + l.Words() }

func checkSum(code, first, second string) string {
	return store.Hash([]byte(code + "\x1f" + first + "\x1f" + second))[:8]
}

// code gives every row of the review its code.
func (r *Review) code() {
	sum := func(code, first, second string) string { return code + " " + checkSum(code, first, second) }
	for i := range r.Pairs {
		p := &r.Pairs[i]
		code := fmt.Sprintf("%s %s %d %.8s %.8s", p.First.ID, p.Second.ID, r.latest, p.First.state, p.Second.state)
		p.Code = sum(code, p.First.Shown(), p.Second.Shown())
	}
	for i := range r.Questions {
		q := &r.Questions[i]
		ids := make([]string, len(q.Namesakes))
		for k, p := range q.Namesakes {
			ids[k] = p.ID
		}
		for k := range q.Lines {
			l := &q.Lines[k]
			l.Code = sum(fmt.Sprintf("q%s %s %d", l.keep, strings.Join(ids, "+"), r.latest), l.Shown(), q.Shown())
		}
	}
	for i := range r.Thin {
		t := &r.Thin[i]
		for k := range t.Lines {
			l := &t.Lines[k]
			l.Code = sum(fmt.Sprintf("f%s %s %d", l.keep, t.Runner.ID, r.latest), l.Shown(), t.Runner.Shown())
		}
	}
}

func (l lineAt) String() string { return fmt.Sprintf("%d.%d.%d", l.sheet, l.tab, l.row) }

// rowCode is a code taken apart.
type rowCode struct {
	runners []int32
	states  []string // of a pair's runners, 8 characters each
	line    lineAt   // row 0 where it is a pair
	fit     bool     // the line fits its runner badly
	latest  int
	body    string
	sum     string
}

// readCode takes a code apart; ok is false where it is none.
func readCode(text string) (c rowCode, ok bool) {
	f := strings.Fields(text)
	if len(f) != 4 && len(f) != 6 {
		return c, false
	}
	c.body, c.sum = strings.Join(f[:len(f)-1], " "), f[len(f)-1]
	ids := f[:2]
	if len(f) == 6 {
		c.states = f[3:5]
	} else {
		c.fit = f[0][0] == 'f'
		if f[0][0] != 'f' && f[0][0] != 'q' {
			return c, false
		}
		if n, err := fmt.Sscanf(f[0][1:], "%d.%d.%d", &c.line.sheet, &c.line.tab, &c.line.row); n != 3 || err != nil || c.line.row < 1 {
			return c, false
		}
		ids = strings.Split(f[1], "+")
	}
	for _, id := range ids {
		n, isID := runnerNumber(id)
		if !isID {
			return c, false
		}
		c.runners = append(c.runners, n)
	}
	latest, err := strconv.Atoi(f[2])
	c.latest = latest
	return c, err == nil
}
