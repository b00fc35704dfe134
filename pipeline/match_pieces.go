package pipeline

import (
	"cmp"
	"slices"
)

// Letters that stand in the Decision column beside the runners of one question:
// those with one letter are one person.
const answerLetters = "abcdefgh"

// AnswerLetters are the choices, as they are written.
func AnswerLetters() []string {
	out := make([]string, len(answerLetters))
	for i := range answerLetters {
		out[i] = string(answerLetters[i] - 'a' + 'A')
	}
	return out
}

// pieceAnswer is the letter that one of several runners was given.
type pieceAnswer struct {
	row    *MatchAnswer
	code   rowCode
	letter byte
	t      target
}

// readPiece takes a row about one of several runners.
func (a *applying) readPiece(r *MatchAnswer, c rowCode, p MatchPerson, answer string) error {
	if len(answer) != 1 || answer[0] < answerLetters[0] || answer[0] > answerLetters[len(answerLetters)-1] {
		a.refuse(r.Answer, "read %q, expected a letter from A to H, the same beside all that are one person, or %s", r.Answer.Text, AnswerLeave)
		return nil
	}
	now, err := a.now(c.runners[0])
	if err != nil {
		return err
	}
	if !a.gone(r.Second, c.runners[0], now, p) && !a.moved(r.Second, p, c.states[0]) {
		a.pieces = append(a.pieces, pieceAnswer{r, c, answer[0], target{no: now, at: p.at, person: p, shown: p.Shown()}})
	}
	return nil
}

// readPieces turns the letters of each question into decisions: runners with one
// letter are one person, those with different letters are two.
func (a *applying) readPieces() {
	slices.SortStableFunc(a.pieces, func(x, y pieceAnswer) int {
		return cmp.Or(cmp.Compare(x.code.among, y.code.among), cmp.Compare(x.letter, y.letter), cmp.Compare(x.t.no, y.t.no))
	})
	for lo := 0; lo < len(a.pieces); {
		hi := lo + 1
		for hi < len(a.pieces) && a.pieces[hi].code.among == a.pieces[lo].code.among {
			hi++
		}
		a.decidePieces(a.pieces[lo:hi])
		lo = hi
	}
}

// decidePieces takes the rows of one question, by letter.
func (a *applying) decidePieces(list []pieceAnswer) {
	if len(list) == 1 {
		a.refuse(list[0].row.Answer, "only this one of the question has a letter: give the same letter to those that are the same person and another one to those that are not, or leave it")
		return
	}
	decide := func(same bool, x, y pieceAnswer) {
		if x.t.no > y.t.no {
			x, y = y, x
		}
		a.decide(y.row, y.code, same, x.t, y.t)
	}
	var first []pieceAnswer // of each letter
	for i, p := range list {
		if i == 0 || p.letter != list[i-1].letter {
			for _, f := range first {
				decide(false, f, p)
			}
			first = append(first, p)
			continue
		}
		decide(true, first[len(first)-1], p)
	}
}
