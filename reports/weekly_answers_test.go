package reports

import (
	"testing"

	"lapwing/pipeline/place"
)

// The desk's workbook says what answers a question as the program prints it: ready to be
// typed, and when each is right.
func TestWhatToDo(t *testing.T) {
	for _, c := range []struct {
		sheet, todo string
		answers     []place.Answer
		want        string
	}{
		{"a.csv", "Correct the cell", nil, "Correct the cell"},
		{"a $5.csv", "Look for the missing lines", []place.Answer{{Flags: "--kind excerpt", When: "if the sheet holds only some of the field"}},
			"Look for the missing lines. To answer, type:\nif the sheet holds only some of the field: lapwing load 'a $5.csv' --kind excerpt"},
		{"a.csv", "What does V stand for in this column?", []place.Answer{{Flags: `--answer "sex V=M"`}, {Flags: `--answer "sex V=W"`}},
			"What does V stand for in this column? To answer, type one of these:\nlapwing load \"a.csv\" --answer \"sex V=M\"\nlapwing load \"a.csv\" --answer \"sex V=W\""},
	} {
		r := problemRow{sheet: c.sheet, todo: c.todo, answers: place.AnswerLines(c.answers...)}
		if got := r.whatToDo(); got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
}
