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

	// Answers are the possible answers to a question about a sheet, as they follow
	// lapwing load and the sheet's name, one a line: --date 2026-01-03
	Answers string `json:",omitempty"`
}

// String prints "club.csv:C14: time unreadable: read "24.75.1", expected mm:ss. Correct the cell …".
func (p Problem) String() string {
	return WithAnswers(p.Question(), p.Answers)
}

// WithAnswers is a question with its possible answers, one a line, behind it.
func WithAnswers(question, answers string) string {
	if answers == "" {
		return question
	}
	return question + " Load the sheet again with " + strings.ReplaceAll(answers, "\n", " or ") + "."
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
	if p.Expected != "" {
		fmt.Fprintf(&b, ", expected %s", p.Expected)
	}
	if p.Do != "" {
		b.WriteString(". " + p.Do)
	}
	return b.String()
}

// plainKinds has the kinds whose short name does not say enough.
var plainKinds = map[string]string{
	"held-record":     "holder of a record unclear",
	"opening-date":    "runs before the sheets have two dates",
	"opening-time":    "best before the sheets too fast",
	"several-runners": "name of several runners",
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
