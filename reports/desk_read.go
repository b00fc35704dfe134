package reports

import (
	"fmt"
	"math"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// Correction is one line of a desk workbook in which somebody has filled in a
// box. Empty fields change nothing.
type Correction struct {
	At    place.Place // the first box of the line, in the desk workbook
	Sheet string      // the line it corrects: sheet, tab and row as received
	Tab   string
	Row   int
	// Name and Time are what the workbook printed for the line, so that a
	// stale workbook can be told.
	Name, Time string

	Position, RightTime, RightName, Sex, Group, Club, TookPartAs string
	Strike                                                       string // one of strikeChoices
	Remark                                                       string
	Exchange                                                     string // place of the other
	Record                                                       string // confirmed or void
	RunsBefore, BestBefore                                       string // before the sheets

	// Of an answer on the tab To check that is about a whole run or about two
	// names of clubs; Sheet is blank then.
	Course, Date, Session, State string
	OtherClub, IsClub            string
	NotTheClub                   bool

	// Accepted is a problem on the tab To check that was answered to be right.
	Accepted *Accepted
}

// Accepted names a problem that needs no look any more: its place on the sheet
// as received, its kind and what was read there.
type Accepted struct {
	Sheet, Tab, Column, Kind, Read string
	Row                            int
	All                            bool   // all of its kind, of this sheet and run
	Course, Date                   string // of the run
}

// ReadDesk reads the boxes of a desk workbook back. A workbook without the tab
// or the headings of one, or with a box that can't be what it should be, is an
// error that names the cell; nothing of it is returned then.
func ReadDesk(path string) ([]Correction, error) {
	f, err := excelize.OpenFile(path, excelize.Options{UnzipSizeLimit: 1 << 30})
	if err != nil {
		return nil, fmt.Errorf("%s can't be read as a workbook: %w", path, err)
	}
	defer f.Close()
	raw, err := f.GetRows(linesTab, excelize.Options{RawCellValue: true})
	if err != nil {
		return nil, fmt.Errorf("%s is no workbook of the results desk: %w", path, err)
	}
	shown, err := f.GetRows(linesTab)
	if err != nil {
		return nil, err
	}
	head, col := headingRow(raw, headSheet, headRow)
	boxes := []string{boxPlace, boxTime, boxName, boxSex, boxGroup, boxClub, boxTaking, boxStrike, boxWhy, boxExchange, boxRecord, boxRuns, boxBest}
	for now, before := range oldBoxes {
		if head >= 0 && col[now] == 0 {
			col[now] = col[before]
		}
	}
	for _, h := range append([]string{headSheet, headTab, headRow, "Name", "Time"}, boxes...) {
		if head < 0 || col[h] == 0 {
			return nil, fmt.Errorf("%s, tab %s: there is no column %q. Take a fresh desk workbook and fill in that", path, linesTab, h)
		}
	}
	var out []Correction
	for i := head + 1; i < len(raw); i++ {
		cell := func(rows [][]string, h string) string {
			if i < len(rows) && col[h] <= len(rows[i]) {
				return strings.TrimSpace(rows[i][col[h]-1])
			}
			return ""
		}
		c := Correction{Sheet: cell(raw, headSheet), Tab: cell(raw, headTab), Name: cell(raw, "Name"), Time: cell(shown, "Time"),
			Position: cell(raw, boxPlace), RightName: cell(raw, boxName), Sex: cell(raw, boxSex), Group: cell(raw, boxGroup),
			Club: cell(raw, boxClub), TookPartAs: cell(raw, boxTaking), Strike: cell(raw, boxStrike), Remark: cell(raw, boxWhy),
			Exchange: cell(raw, boxExchange), Record: cell(raw, boxRecord), RunsBefore: cell(raw, boxRuns)}
		at := func(h string) place.Place {
			return place.Place{Sheet: path, Tab: linesTab, Row: i + 1, Column: place.ColumnLetters(col[h] - 1)}
		}
		if c.RightTime, err = clockBox(cell(raw, boxTime)); err != nil {
			return nil, fmt.Errorf("%s: %w", at(boxTime), err)
		}
		if c.BestBefore, err = clockBox(cell(raw, boxBest)); err != nil {
			return nil, fmt.Errorf("%s: %w", at(boxBest), err)
		}
		filled := ""
		for _, h := range boxes {
			if cell(raw, h) != "" {
				filled = h
				break
			}
		}
		if filled == "" {
			continue
		}
		c.At = at(filled)
		if c.Row, err = strconv.Atoi(cell(raw, headRow)); err != nil || c.Sheet == "" {
			return nil, fmt.Errorf("%s: the line has lost its sheet or row (columns %s and %s); copy them back from the line above it in the sheet, or take a fresh desk workbook", c.At, headSheet, headRow)
		}
		for _, box := range []struct {
			head    string
			choices []string
		}{{boxSex, []string{"M", "W", "X", "not given"}}, {boxTaking, takingPartChoices}, {boxStrike, strikeChoices}, {boxRecord, recordChoices}} {
			if v := cell(raw, box.head); v != "" && !slices.Contains(box.choices, v) {
				return nil, fmt.Errorf("%s: %q is not one of: %s", at(box.head), v, strings.Join(box.choices, ", "))
			}
		}
		for _, h := range []string{boxPlace, boxExchange} {
			if p := cell(raw, h); p != "" {
				if n, err := strconv.Atoi(p); err != nil || n < 1 {
					return nil, fmt.Errorf("%s: %q is no place; write a whole number from 1", at(h), p)
				}
			}
		}
		out = append(out, c)
	}
	answers, err := readAnswers(f, path, raw, shown)
	return append(out, answers...), err
}

// headingRow finds the first row that holds all of some headings, and the
// columns of all its headings, from 1; -1 where there is none.
func headingRow(rows [][]string, heads ...string) (at int, col map[string]int) {
	for i, r := range rows {
		col = map[string]int{}
		for c, h := range r {
			col[strings.TrimSpace(h)] = c + 1
		}
		if !slices.ContainsFunc(heads, func(h string) bool { return col[h] == 0 }) {
			return i, col
		}
	}
	return -1, map[string]int{}
}

// readAnswers reads the column Answer of the tab To check. lines are the rows
// of the tab Lines, which has what the workbook printed for a result; shown are
// the same as a person sees them.
func readAnswers(f *excelize.File, path string, lines, shown [][]string) ([]Correction, error) {
	rows, err := f.GetRows(checksTab, excelize.Options{RawCellValue: true})
	if err != nil {
		return nil, fmt.Errorf("%s is no workbook of the results desk: %w", path, err)
	}
	head, col := headingRow(rows, boxAnswer, headQuestion)
	if head < 0 {
		return nil, fmt.Errorf("%s, tab %s: there is no column %q. Take a fresh desk workbook and fill in that", path, checksTab, boxAnswer)
	}
	var out []Correction
	for i := head + 1; i < len(rows); i++ {
		cell := func(h string) string {
			if col[h] <= len(rows[i]) {
				return strings.TrimSpace(rows[i][col[h]-1])
			}
			return ""
		}
		answer := strings.ToLower(strings.Join(strings.Fields(cell(boxAnswer)), " "))
		if answer == "" {
			continue
		}
		at := place.Place{Sheet: path, Tab: checksTab, Row: i + 1, Column: place.ColumnLetters(col[boxAnswer] - 1)}
		c := Correction{At: at}
		about := strings.Split(cell(headQuestion), "/")
		for k := range about {
			if about[k], err = url.PathUnescape(about[k]); err != nil {
				return nil, fmt.Errorf("%s: the row has lost what it asks; take a fresh desk workbook", at)
			}
		}
		choose := func(choices ...string) error {
			if !slices.Contains(choices, answer) {
				return fmt.Errorf("%s: %q is not one of: %s", at, answer, strings.Join(choices, ", "))
			}
			return nil
		}
		switch {
		case about[0] == askRecord && len(about) == 4:
			err = choose(recordChoices...)
			c.Sheet, c.Tab, c.Record = about[1], about[2], answer
			c.Row, _ = strconv.Atoi(about[3])
			c.Name, c.Time = printedOf(lines, shown, about[1:])
		case about[0] == askClub && len(about) == 3:
			err = choose("yes", "no")
			c.OtherClub, c.IsClub, c.NotTheClub = about[1], about[2], answer == "no"
		case about[0] == askProblem && len(about) == 9:
			err = choose(isRight, allAreRight)
			a := &Accepted{Sheet: about[1], Tab: about[2], Column: about[4], Kind: about[5], Read: about[6], Course: about[7], Date: about[8], All: answer == allAreRight}
			a.Row, _ = strconv.Atoi(about[3])
			c.Accepted = a
		case about[0] == askState && len(about) == 4:
			c.Course, c.Date, c.Session, c.State = about[1], about[2], about[3], answer
		default:
			err = fmt.Errorf("%s: an answer here can't be kept. Correct the line on the tab %s, or do what stands under What to do", at, linesTab)
		}
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// printedOf gives name and time that the tab Lines prints for a line.
func printedOf(raw, shown [][]string, line []string) (name, time string) {
	head, col := headingRow(raw, headSheet, headTab, headRow, "Name", "Time")
	if head < 0 {
		return "", ""
	}
	cell := func(rows [][]string, i int, h string) string {
		if i < len(rows) && col[h] <= len(rows[i]) {
			return strings.TrimSpace(rows[i][col[h]-1])
		}
		return ""
	}
	for i := head + 1; i < len(raw); i++ {
		if cell(raw, i, headSheet) == line[0] && cell(raw, i, headTab) == line[1] && cell(raw, i, headRow) == line[2] {
			return cell(raw, i, "Name"), cell(shown, i, "Time")
		}
	}
	return "", ""
}

// clockBox reads the time box. It is a text cell, but a program may have made
// a time of day of "24:31": a day and 31 minutes as hours and minutes, which
// stands for minutes and seconds, or a proper duration. Anything from three
// hours up in whole minutes is the former: nobody is corrected to that. 25.52
// is 25 minutes 52, as on sheets; whoever reads the box back sees it as 25:52.
func clockBox(s string) (string, error) {
	if s == "" {
		return "", nil
	}
	if m := dottedClock.FindStringSubmatch(s); m != nil {
		return m[1] + ":" + m[2], nil
	}
	days, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Contains(s, ":") {
		return s, nil // words: the reader of times judges them
	}
	sec := math.Round(days * 86400)
	if days <= 0 || days >= 3 || sec < 1 {
		return "", fmt.Errorf("%q is no time; write it as 24:31 or 1:02:03", s)
	}
	if sec >= 3*3600 && math.Mod(sec, 60) == 0 {
		sec /= 60
	}
	return unit.Clock(int32(sec)), nil
}

// dottedClock is a time of three minutes or more with a dot or comma; a number
// that has lost its last zero (25.5) is none.
var dottedClock = regexp.MustCompile(`^([3-9]|[1-9]\d{1,2})[.,]([0-5]\d)$`)
