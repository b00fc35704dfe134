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
//	f3.0.24+3.0.31 R12 17 9c41aa07                 fit: lines and their runner
//	p R12 R3+R12+R40 17 5f3a09c2 9c41aa07          piece: a runner, the runners of its question

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

// Shown is how a question stands in a cell.
func (q MatchPieces) Shown() string {
	ids := make([]string, len(q.Pieces))
	for i, p := range q.Pieces {
		ids[i] = p.ID
	}
	return fmt.Sprintf("%d: %s", q.Place, strings.Join(ids, ", "))
}

// Shown is how the lines of a runner that fit badly stand in a cell.
func (t MatchThin) Shown() string {
	words := make([]string, len(t.Lines))
	for i, l := range t.Lines {
		words[i] = l.Shown()
	}
	if len(words) == 1 {
		return words[0]
	}
	return fmt.Sprintf("%d lines. %s", len(words), strings.Join(words, "; "))
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
	for i := range r.Several {
		q := &r.Several[i]
		ids := make([]string, len(q.Pieces))
		for k, p := range q.Pieces {
			ids[k] = p.ID
		}
		for k := range q.Pieces {
			p := &q.Pieces[k]
			p.Code = sum(fmt.Sprintf("p %s %s %d %.8s", p.ID, strings.Join(ids, "+"), r.latest, p.state), q.Shown(), p.Shown())
		}
	}
	for i := range r.Thin {
		t := &r.Thin[i]
		at := make([]string, len(t.Lines))
		for k, l := range t.Lines {
			at[k] = l.keep.String()
		}
		t.Code = sum(fmt.Sprintf("f%s %s %d", strings.Join(at, "+"), t.Runner.ID, r.latest), t.Shown(), t.Runner.Shown())
	}
}

func (l lineAt) String() string { return fmt.Sprintf("%d.%d.%d", l.sheet, l.tab, l.row) }

// rowCode is a code taken apart.
type rowCode struct {
	runners []int32
	states  []string // of a pair's or piece's runners, 8 characters each
	lines   []lineAt // none where it is about runners
	fit     bool     // the lines fit their runner badly
	among   string   // the runners of a piece's question, "" where it is no piece
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
	at := f[2]
	switch {
	case f[0] == "p" && len(f) == 6:
		c.among, at, c.states, ids = f[2], f[3], f[4:5], f[1:2]
	case len(f) == 6:
		c.states = f[3:5]
	default:
		c.fit = f[0][0] == 'f'
		if f[0][0] != 'f' && f[0][0] != 'q' {
			return c, false
		}
		for text := range strings.SplitSeq(f[0][1:], "+") {
			var l lineAt
			if n, err := fmt.Sscanf(text, "%d.%d.%d", &l.sheet, &l.tab, &l.row); n != 3 || err != nil || l.row < 1 {
				return c, false
			}
			c.lines = append(c.lines, l)
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
	latest, err := strconv.Atoi(at)
	c.latest = latest
	return c, err == nil
}
