package reports

import (
	"fmt"
	"math"
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
	Strike                                                       string // "disqualified" or "not a finisher"
	Remark                                                       string
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
	head, col := -1, map[string]int{}
	for i, r := range raw {
		for c, h := range r {
			col[strings.TrimSpace(h)] = c + 1
		}
		if col[headSheet] > 0 && col[headRow] > 0 {
			head = i
			break
		}
		clear(col)
	}
	boxes := []string{boxPlace, boxTime, boxName, boxSex, boxGroup, boxClub, boxTaking, boxStrike, boxRemark}
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
			Club: cell(raw, boxClub), TookPartAs: cell(raw, boxTaking), Strike: cell(raw, boxStrike), Remark: cell(raw, boxRemark)}
		at := func(h string) place.Place {
			return place.Place{Sheet: path, Tab: linesTab, Row: i + 1, Column: place.ColumnLetters(col[h] - 1)}
		}
		if c.RightTime, err = clockBox(cell(raw, boxTime)); err != nil {
			return nil, fmt.Errorf("%s: %w", at(boxTime), err)
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
		for h, choices := range map[string][]string{boxSex: {"M", "W", "X", "not given"}, boxTaking: takingPartChoices, boxStrike: {strikeWrong, strikeTwice}} {
			if v := cell(raw, h); v != "" && !oneOf(v, choices) {
				return nil, fmt.Errorf("%s: %q is not one of: %s", at(h), v, strings.Join(choices, ", "))
			}
		}
		if p := c.Position; p != "" {
			if n, err := strconv.Atoi(p); err != nil || n < 1 {
				return nil, fmt.Errorf("%s: %q is no place; write a whole number from 1", at(boxPlace), p)
			}
		}
		out = append(out, c)
	}
	return out, nil
}

func oneOf(s string, choices []string) bool {
	for _, c := range choices {
		if s == c {
			return true
		}
	}
	return false
}

// clockBox reads the time box. It is a text cell, but a program may have made
// a time of day of "24:31": a day and 31 minutes as hours and minutes, which
// stands for minutes and seconds, or a proper duration. Anything from three
// hours up in whole minutes is the former: nobody is corrected to that.
func clockBox(s string) (string, error) {
	if s == "" {
		return "", nil
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
