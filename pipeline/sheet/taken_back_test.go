package sheet

import (
	"strings"
	"testing"
)

// A line beside the table that speaks against results by their places or full names is noted on their rows, and on
// no others.
func TestTakenBack(t *testing.T) {
	for line, want := range map[string]string{
		"Place 2 disqualified":                         "2",
		"Jo Lee – disqualified":                        "2",
		"Please delete Cy Dee":                         "3",
		"N.B. position 4 ran the wrong course":         "4",
		"Places 2 and 4 did not do the full course":    "24",
		"Positions 2, 3: estimated times":              "23",
		"Jo Lee and Cy Dee missed a lap":               "23",
		"Void: 2":                                      "2",
		"Cy Dee has been withdrawn from the results":   "3",
		"Die Zeit von Jo Lee ist geschätzt":            "2",
		"Jo Lee a coupé le parcours":                   "2",
		"Correction: Di Fox did not run":               "4",
		"The result of Di Fox does not stand":          "4",
		"2 and 3 should be swapped":                    "23",
		"Please swap 2nd and 3rd":                      "23",
		"3 und 4 vertauscht":                           "34",
		"Inverser 2 et 3":                              "23",
		"Positions 2 to 4 are out of order":            "234",
		"5-6 not in the right order":                   "56",
		"Times from position 3 on are wrong":           "3456",
		"Names and times don't match after 4":          "56",
		"names from 5 down are one out":                "56",
		"3 finished before 2":                          "23",
		"Cy Dee was in front of Jo Lee":                "23",
		"Jo Lee finished behind Cy Dee":                "23",
		"Jo Lee beat Cy Dee":                           "",
		"2 finished before 3":                          "",
		"2, 4 and 5 did one lap only":                  "245",
		"Remove 4":                                     "4",
		"4 should not be in the list":                  "4",
		"4 time?":                                      "4",
		"?? Jo Lee":                                    "2",
		"Cy's time is wrong":                           "3",
		"2nd's time is wrong":                          "2",
		"Jo Lee's time can't be right":                 "2",
		"Well done 2 and 3 for a great finish":         "",
		"Great battle between 2 and 3":                 "",
		"Spot prizes to 2 and 4":                       "",
		"Tokens 2 and 4 missing":                       "",
		"2 dogs, 3 buggies":                            "",
		"DNF lap 2: Ben Tarn":                          "",
		"** retired on lap 2":                          "",
		"(1) disqualified":                             "",
		"2 laps of the lake":                           "",
		"2 and 4 did not finish":                       "24",
		"Strike position 2":                            "2",
		"Jo Lee's time is an estimate":                 "2",
		"Times for 2 and 4 are estimated":              "24",
		"The time of no 4 is not reliable":             "4",
		"Jo Lee hat aufgegeben":                        "2",
		"2 and 4 year olds did not finish the cake":    "",
		"Thanks to Jo Lee for the cake":                "",
		"Well done Jo Lee – no short cuts!":            "",
		"Jo Lee was disqualified last week":            "",
		"No disqualifications today":                   "",
		"Position 2 won the spot prize":                "",
		"Welcome back Jo Lee":                          "",
		"Al Roe, Jo Lee, Cy Dee and Di Fox: estimated": "",
	} {
		for _, above := range []bool{true, false} {
			text := "Pos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|18:31\n3|Cy Dee|19:02\n4|Di Fox|19:40\n5|Ed Gow|19:55\n6|Ida Kay|20:10\n"
			if above {
				text = line + "\n" + text
			} else {
				text += "\n" + line + "\n"
			}
			got := ""
			for i, note := range cellsOf(t, text, Notes) {
				if strings.HasPrefix(note, "time disputed: ") {
					got += string(rune('1' + i))
				}
			}
			if got != want {
				t.Errorf("%s (above %v): rows %q, want %q", line, above, got, want)
			}
		}
	}
}

// Beside start numbers a number in a line is a place where no start number is so small, and whatever is written with
// the places.
func TestTakenBackBesideNumbers(t *testing.T) {
	for _, c := range []struct {
		places, numbers [4]string
		line, want      string
	}{
		{[4]string{"1", "2", "3", "4"}, [4]string{"101", "214", "87", "33"}, "2 and 3 should be swapped", "23"},
		{[4]string{"1", "2", "3", "4"}, [4]string{"101", "2", "87", "3"}, "2 and 3 should be swapped", ""},
		{[4]string{"#1", "#2", "#3", "#4"}, [4]string{"101", "214", "87", "33"}, "Remove 4", "4"},
		{[4]string{"1st", "2nd", "3rd", "4th"}, [4]string{"101", "214", "87", "33"}, "Please swap 2 and 3", "23"},
	} {
		text := "Pos|Number|Name|Time\n"
		for i, name := range []string{"Al Roe", "Jo Lee", "Cy Dee", "Di Fox"} {
			text += c.places[i] + "|" + c.numbers[i] + "|" + name + "|18:2" + string(rune('0'+i)) + "\n"
		}
		got := ""
		for i, note := range cellsOf(t, text+"\n"+c.line+"\n", Notes) {
			if strings.HasPrefix(note, "time disputed: ") {
				got += string(rune('1' + i))
			}
		}
		if got != c.want {
			t.Errorf("%s, places %v, numbers %v: rows %q, want %q", c.line, c.places, c.numbers, got, c.want)
		}
	}
}

// A short code in a column is what a line beside the table says, where that speaks against the row.
func TestCodesAgainst(t *testing.T) {
	for _, c := range []struct{ heading, code, line, want string }{
		{"Code", "R", "R = retired", "retired"},
		{"St", "3", "1 = finished, 2 = retired, 3 = disqualified", "disqualified"},
		{"", "NC", "NC: not counted", "not counted"},
		{"", "SC", "SC - short cut", "short cut"},
		{"Note", "T", "T = test entry", "test entry"},
		{"St", "R", "Key: R = retired", "retired"},
		{"St", "9", "Status: 1 = finished 9 = disqualified", "disqualified"},
		{"Flag", "E", "E = estimated time", "estimated time"},
		{"Flag", "P", "P = personal best", ""},
		{"Code", "R", "R = course record", ""},
	} {
		text := "Pos|Name|Time|" + c.heading + "\n1|Al Roe|18:20|\n2|Jo Lee|18:31|" + c.code + "\n3|Cy Dee|19:02|\n4|Di Fox|19:40|\n\n" + c.line + "\n"
		got := cellsOf(t, text, Notes)
		if c.want == "" && len(got) == 4 && got[1] == c.code {
			continue // as it stands
		}
		if len(got) != 4 || got[1] != c.want || got[0]+got[2]+got[3] != "" {
			t.Errorf("%s: %q", c.line, got)
		}
	}
}

// Remarks by which a row is no result count in a column under any heading, and in that of the clubs.
func TestRemarksElsewhere(t *testing.T) {
	for _, c := range []struct{ heading, others, cell, want string }{
		{"Extra", "", "missed a lap", "missed a lap"},
		{"What", "", "wrong course", "wrong course"},
		{"Club", "Alder AC", "did not finish", "did not finish"},
		{"Club", "Alder AC", "please ignore", "please ignore"},
		{"Club", "Alder AC", "Short Cut Striders", ""},
		{"Club", "Alder AC", "Virtual Runners", ""},
		{"Stat", "Male", "Mixed", ""},
	} {
		text := "Pos|Name|Time|" + c.heading + "\n1|Al Roe|18:20|" + c.others + "\n2|Jo Lee|18:31|" + c.cell + "\n3|Cy Dee|19:02|" + c.others + "\n4|Di Fox|19:40|" + c.others + "\n"
		if got := strings.Join(cellsOf(t, text, Notes), ""); got != c.want {
			t.Errorf("%s, %s: %q", c.heading, c.cell, got)
		}
	}
}

// A line about next week under which nothing stands leaves no table out.
func TestNoTableUnderALine(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte(threeTimes+"\nNext week we start 15 minutes earlier\n"), Options{})
	if err != nil || s.Parts[0].says("table-left-out", 6) {
		t.Errorf("%v %v", err, s.Parts[0].Problems)
	}
	s, err = Read("alder-bank_2026-01-03.csv", []byte(threeTimes+"\nLast week\n1,Di Fox,18:11\n2,Ed Gow,18:15\n"), Options{})
	if err != nil || !s.Parts[0].says("table-left-out", 6) {
		t.Errorf("%v %v", err, s.Parts[0].Problems)
	}
}

// A key of figures holds in a column that has the same few again and again, though its heading is that of numbers; and
// letters of which each begins what a line says of it are no sexes.
func TestKeysOfEnds(t *testing.T) {
	rows := func(heading, usual, other string) string {
		return "Pos|Name|Time|" + heading + "\n1|Al Roe|18:20|" + usual + "\n2|Jo Lee|18:31|" + other + "\n3|Cy Dee|19:02|" + usual + "\n4|Di Fox|19:40|" + usual + "\n5|Ed Gow|19:55|" + usual + "\n6|Ida Kay|20:10|" + usual + "\n\n"
	}
	for text, want := range map[string]string{
		rows("Code", "1", "9") + "1 = finished; 9 = disqualified\n":   "disqualified",
		rows("Status", "C", "N") + "C: completed  N: not completed\n": "not completed",
		rows("S", "F", "R") + "F finished, R retired\n":               "retired",
		rows("Laps", "2", "1"):                      "only 1 of 2 laps",
		rows("Laps done", "2/2", "1/2"):             "only 1 of 2 laps",
		rows("Laps", "1", "1"):                      "",
		rows("Club", "AC", "RC") + "RC = retired\n": "",
		"Pos|Name|Time|Laps\n1|Al Roe|18:20|2\n2|Jo Lee|9:31|1\n3|Cy Dee|19:02|2\n": "",
	} {
		got := ""
		for i, note := range cellsOf(t, text, Notes) {
			if note != "" && note != "F" && note != "C" && note != "1" {
				got += note
				if i != 1 {
					t.Errorf("%q: row %d: %q", text, i+1, note)
				}
			}
		}
		if got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(rows("S", "F", "R")+"\"F finished, R retired\"\n"), Options{})
	if err != nil || s.Parts[0].Index(Sex) >= 0 {
		t.Errorf("a sex is read: %v", err)
	}
}
