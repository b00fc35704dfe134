package reports

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// ordinal is 1st, 2nd, 3rd, 4th, 11th, 21st.
func ordinal(n int32) string {
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return strconv.Itoa(int(n)) + suffix
}

var small = []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

// spelt is text.CountOf with numbers to ten as words, as prose has them.
func spelt(n int, one, many string) string {
	if n < 0 || n >= len(small) {
		return text.CountOf(n, one, many)
	}
	if n == 1 {
		return small[n] + " " + one
	}
	return small[n] + " " + many
}

// list joins with commas and "and": "A", "A and B", "A, B and C".
func list(s []string) string {
	switch len(s) {
	case 0:
		return ""
	case 1:
		return s[0]
	}
	return strings.Join(s[:len(s)-1], ", ") + " and " + s[len(s)-1]
}

// span is a length of time in words: "12 s", "1:05".
func span(s int32) string {
	if s < 60 {
		return fmt.Sprintf("%d s", s)
	}
	return unit.Clock(s)
}

// longDay is "Saturday 7 March 2026".
func longDay(d unit.Day) string { return d.Time().Format("Monday 2 January 2006") }

// roundTo5 rounds seconds to five where that loses nothing that is known.
func roundTo5(s float64) int {
	if math.Abs(s) < 10 {
		return int(math.Round(s))
	}
	return int(math.Round(s/5) * 5)
}

// muchAsUsual is how far from usual a day may have been, in seconds for somebody who
// takes 25:00, that is called much as usual: 3 %. Common practice, no source.
const muchAsUsual = 45

// conditions says in a sentence how the day compared with a usual one, ""
// where it can't be told. Only a difference whose 90 % interval leaves zero
// out is called one, and a day is called usual only where that interval is
// narrow and there are runs enough to know what is usual.
func (d *weekly) conditions() string {
	if !d.held() {
		return d.stateSentence()
	}
	c, lo, hi := d.run.condition, d.run.condLow, d.run.condHi
	if c == nil || lo == nil || hi == nil {
		return ""
	}
	word, a, b := "slower", *lo, *hi
	if *c < 0 {
		word, a, b = "faster", -*hi, -*lo
	}
	n := roundTo5(math.Abs(*c))
	if *lo <= 0 && *hi >= 0 || n < 5 {
		if math.Max(-*lo, *hi) > muchAsUsual || d.heldRuns() < leastRuns {
			return "" // not known to be unusual is not known to be usual
		}
		return "Times came out much as usual here."
	}
	x, y := roundTo5(a), roundTo5(b)
	return fmt.Sprintf("It was a %s day than usual here: by about %d s for somebody who takes 25:00 (likely %d to %d s).", word, n, min(x, y), max(x, y))
}

// heldRuns counts the runs of the course that were held as usual, this one among them.
func (d *weekly) heldRuns() (n int) {
	for i := range d.runs {
		if d.runs[i].state == "held" {
			n++
		}
	}
	return n
}

// stateSentence says what was not as usual with the run itself.
func (d *weekly) stateSentence() string {
	if d.run.finishers == 0 {
		return fmt.Sprintf("This run is recorded as: %s.", d.run.state)
	}
	return fmt.Sprintf("This run is recorded as: %s. Its times are not compared with other weeks.", d.run.state)
}

// place is where a line stands, as a person finds it.
func where(sheet, tab string, row int32) string {
	s := sheet
	if tab != "" {
		s += ", tab " + tab
	}
	if row > 0 {
		s += ", row " + strconv.Itoa(int(row))
	}
	return s
}

// hasHistory says whether the archive knows everything since the course began
// or since a day that somebody gave.
func (d *weekly) hasHistory() bool { return d.run.complete }

// Signs of the result list, with what they mean.
func (d *weekly) legend() []table.Mark {
	pb := "personal best at this distance"
	if !d.hasHistory() {
		pb = "fastest at this distance since the sheets held here began"
	}
	return []table.Mark{
		{Sign: "PB", Text: pb, Tint: "D6E9F8"},
		{Sign: "CB", Text: "fastest so far on this course", Tint: "E6F2E1"},
		{Sign: "AB", Text: "best so far after allowing for course and day", Tint: "FBEFD5"},
		{Sign: "newcomer", Text: "first run anywhere in these records"},
		{Sign: "visitor", Text: "first run on this course"},
	}
}

// marks gives the signs of a result and the words of its note column.
func (d *weekly) marks(r *resultRow) (signs []string, note string) {
	var parts []string
	add := func(sign string, margin *int32) {
		signs = append(signs, sign)
		if margin != nil && *margin > 0 && !r.protected {
			sign += " by " + span(*margin)
		}
		parts = append(parts, sign)
	}
	if r.trusted() {
		switch {
		case r.isPB:
			add("PB", r.pbMargin)
		case r.isCourseBest:
			add("CB", r.courseMargin)
		case r.isAdjustedBest && !r.protected:
			add("AB", nil)
		}
		if r.newcomer != nil && *r.newcomer {
			add("newcomer", nil)
		} else if r.visitor != nil && *r.visitor {
			add("visitor", nil)
		}
		if r.milestone != nil {
			parts = append(parts, ordinal(*r.milestone)+" run")
		}
		if r.pbStreak >= 3 && !r.protected {
			parts = append(parts, fmt.Sprintf("%d PBs running", r.pbStreak))
		}
	}
	if r.takingPart != "runner" && !r.hidden {
		parts = append(parts, r.takingPart)
	}
	switch {
	case r.status == "doubtful":
		parts = append(parts, "being checked")
	case r.status == "untimed" || r.timeS == nil:
		parts = append(parts, "no time")
	case r.grade != nil && *r.grade >= 100 && !r.protected && !r.hidden:
		parts = append(parts, "grade being checked")
	}
	return signs, strings.Join(parts, ", ")
}
