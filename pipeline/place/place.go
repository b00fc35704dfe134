// Package place says where something was read and what is wrong there.
//
// Every fact of the archive can be walked back to a Place; every Problem
// names one, says what was read, what was expected and what to do next.
package place

import (
	"fmt"
	"strings"
)

// Place is a spot in a sheet: the file, the tab of a workbook, the 1-based row
// that a person sees in a text editor or spreadsheet, and the column letter.
// Empty parts (Row 0, no Tab, no Column) are left out of the printed form.
type Place struct {
	Sheet  string // path relative to the folder loaded, or the file's name
	Tab    string // name of the tab; "" for text sheets
	Row    int    // 1-based; 0 means the whole tab or sheet
	Column string // spreadsheet column letters, "C"; "" means the whole row
}

// String prints club.xlsx:Sheet1!C14, club.csv:C14, club.csv:14 or club.csv.
func (p Place) String() string {
	cell := p.Column
	if p.Row > 0 {
		cell += fmt.Sprint(p.Row)
	}
	switch {
	case p.Tab != "" && cell != "":
		return p.Sheet + ":" + p.Tab + "!" + cell
	case p.Tab != "":
		return p.Sheet + ":" + p.Tab
	case cell != "":
		return p.Sheet + ":" + cell
	}
	return p.Sheet
}

// ColumnLetters turns a 0-based column index into spreadsheet letters:
// 0 is A, 25 is Z, 26 is AA (ECMA-376 Part 1, 18.18.62, cell references).
func ColumnLetters(index int) string {
	s := ""
	for n := index + 1; n > 0; n = (n - 1) / 26 {
		s = string(rune('A'+(n-1)%26)) + s
	}
	return s
}

// Severity orders problems, worst first.
type Severity uint8

const (
	// Waits means the sheet (or part) can't be used until somebody answers.
	Waits Severity = iota + 1
	// Doubtful means a line stands but its time or person is not trusted.
	Doubtful
	// Look means somebody should look; the line counts.
	Look
	// Note is for information.
	Note
)

// String is the word printed in lists.
func (s Severity) String() string {
	switch s {
	case Waits:
		return "waits"
	case Doubtful:
		return "doubtful"
	case Look:
		return "look"
	}
	return "note"
}

// Problem is one thing that a person should know about a sheet. A bad row is
// a Problem, never an error: the load goes on.
type Problem struct {
	Place    Place
	Severity Severity
	Kind     string // short stable word, e.g. "time-unreadable"; see Kinds of the room that raises it
	Read     string // what the sheet says, as received
	Expected string // what would have been right
	Do       string // what to do next, one sentence

	// Answers are the possible answers to a question about a sheet, one a line, as
	// AnswerLines writes them.
	Answers string `json:",omitempty"`
}

// Answer is a possible answer to a question about a sheet.
type Answer struct {
	Flags string // as they follow lapwing load and the sheet's name: --date 2026-01-03
	When  string // "if it is another race of that day"; "" where the flags say enough
}

// AnswerLines keeps answers in a text, one a line.
func AnswerLines(answers ...Answer) string {
	lines := make([]string, len(answers))
	for i, a := range answers {
		lines[i] = a.Flags
		if a.When != "" {
			lines[i] += "\t" + a.When
		}
	}
	return strings.Join(lines, "\n")
}

// PossibleAnswers are those of the text that AnswerLines wrote.
func (p Problem) PossibleAnswers() (out []Answer) {
	if p.Answers == "" {
		return nil
	}
	for _, line := range strings.Split(p.Answers, "\n") {
		flags, when, _ := strings.Cut(line, "\t")
		out = append(out, Answer{flags, when})
	}
	return out
}

// String prints "club.csv:C14: time unreadable: read "24.75.1", expected mm:ss. Correct the cell …".
func (p Problem) String() string {
	return WithAnswers(p.Question(), p.PossibleAnswers())
}

// WithAnswers is a question, or what to do, with its possible answers behind it.
func WithAnswers(question string, answers []Answer) string {
	if len(answers) == 0 {
		return question
	}
	words := make([]string, len(answers))
	for i, a := range answers {
		words[i] = strings.TrimSpace(a.Flags + " " + a.When)
	}
	return question + " Load the sheet again with " + strings.Join(words, " or ") + "."
}

// Question is the problem without its possible answers.
func (p Problem) Question() string {
	var b strings.Builder
	if where := p.Place.String(); where != "" { // a problem of a side table has no sheet
		b.WriteString(where + ": ")
	}
	b.WriteString(KindWords(p.Kind))
	if p.Read != "" {
		fmt.Fprintf(&b, ": read %q", p.Read)
	}
	switch {
	case p.Expected == "":
	case p.Kind == "tab-refused", p.Kind == "no-table": // which is why
		b.WriteString(": " + p.Expected)
	default:
		fmt.Fprintf(&b, ", expected %s", p.Expected)
	}
	if p.Do != "" {
		b.WriteString(". " + p.Do)
	}
	return b.String()
}

// plainKinds has the kinds whose short name does not say enough.
var plainKinds = map[string]string{
	"held-record":            "holder of a record unclear",
	"opening-date":           "runs before the sheets have two dates",
	"opening-time":           "best before the sheets too fast",
	"positions-missing-many": "many positions missing",
	"said-remembered":        "taken as somebody said before",
	"several-runners":        "name of several runners",
	"tab-refused":            "tab without results",
}

// KindWords is a kind as it is printed: "position repeated".
func KindWords(kind string) string {
	if words, ok := plainKinds[kind]; ok {
		return words
	}
	return strings.ReplaceAll(kind, "-", " ")
}

// ParseKind is the kind that words name, as printed or as they stand in an export.
func ParseKind(words string) string {
	words = strings.ToLower(strings.TrimSpace(words))
	for kind, plain := range plainKinds {
		if words == plain {
			return kind
		}
	}
	return strings.ReplaceAll(words, " ", "-")
}

// Cell is what stands at a place.
type Cell struct {
	Place
	Text string
}
