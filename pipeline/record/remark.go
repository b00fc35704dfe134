package record

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
)

// remark is what a note or status cell says.
type remark struct {
	part   TakingPart
	status Status
	first  Status // the code that the note begins with
	sure   bool   // first is said in words that mean nothing else
	cut    bool   // not all of the course was run
}

const remarkLimit = 8192

// ofBefore says whether a note is about another time: "DQ last week".
func ofBefore(note string) bool {
	return saysBefore(string(fold(nil, note)), true)
}

// saysBefore finds words for another day in a folded note, or, where not says so, a "not".
func saysBefore(folded string, not bool) bool {
	words := strings.FieldsFunc(folded, func(r rune) bool { return r < 'a' || r > 'z' })
	for i, w := range words {
		if w == "last" && i+1 < len(words) && endOfRun[words[i+1]] {
			continue // "missed last lap"
		}
		if beforeWords[w] || not && w == "not" {
			return true
		}
	}
	return false
}

// endOfRun are words behind "last" for a part of the run.
var endOfRun = wordSet("lap|laps|loop|loops|turn|corner|km|k|mile|bit|part|leg|section")

var beforeWords = wordSet("last|previous|previously|week|weeks|month|year|ago|before|earlier|former|once|letzte|letzten|vorige|woche|derniere|semaine|pasada|scorsa|vorig|forra|sidste|forrige|ubieglym")

// remark reads a note or status cell, each distinct text once.
func (r *Reader) remark(s string) remark {
	if len(s) == 0 || len(s) > 200 {
		return remark{}
	}
	if m, ok := r.remarks[s]; ok {
		return m
	}
	r.scratch = r.scratch[:0]
	for line := range strings.Lines(strings.ReplaceAll(s, "_", " ")) { // a note of several lines says several things
		if len(r.scratch) > 0 {
			r.scratch = append(r.scratch, ';')
		}
		r.scratch = fold(r.scratch, line)
	}
	m := remark{}
	m.part, _ = partOf(r.scratch, r.words)
	m.status, _ = statusOf(r.scratch, r.states)
	m.first, m.sure = startsWithStatus(r.scratch)
	if m.status == OK && !m.sure {
		if folded := string(r.scratch); (r.againstTime(folded) || somebodyElse.MatchString(s)) && !saysBefore(folded, false) {
			m.status, m.cut = Untimed, text.NotWholeCourse(folded)
		} else if part := r.partAgainst(folded); part != "" {
			m.status, m.cut = Untimed, text.NotWholeCourse(part)
		}
	}
	if len(r.remarks) < remarkLimit {
		r.remarks[strings.Clone(s)] = m
	}
	return m
}

// somebodyElse is a remark that says who a line is really about, "should be Jo Lee". Common practice, no source.
var somebodyElse = regexp.MustCompile(`(?:^|[;,.] ?)(?i:should be|should read|should say|actually|really|is really|was really|is actually|was actually|eigentlich|richtig ist|en fait|en realidad|in realtà|eigenlijk|egentligen|egentlig) \p{Lu}[\p{L}'’-]+ \p{Lu}[\p{L}'’-]+[.!?]?$`)

// againstTime says whether a folded remark, or one of its clauses that gives the length of a way or begins with
// how the race ended, speaks against a time: "injured, stopped at 2k", "went astray, ran 4k".
func (r *Reader) againstTime(folded string) bool {
	if text.AgainstTime(folded, r.usualKM) || r.otherWay(folded) {
		return true
	}
	against, n := false, 0
	clauses([]byte(folded), func(c []byte) bool {
		n++
		_, sure := startsWithStatus(c)
		against = n > 1 && (sure || text.DoubtedTime(string(c), r.usualKM))
		return against
	})
	return against
}

// partAgainst is the part of a folded remark that speaks by itself against a time, where several things are said with
// semicolons between them, "lovely morning; invalid", as they stand in two columns of notes or beside a mark that a
// line explains; "" where there is none, and where another part says that it was put right.
func (r *Reader) partAgainst(folded string) string {
	if strings.IndexByte(folded, ';') < 0 {
		return ""
	}
	against := ""
	for part := range strings.SplitSeq(folded, ";") {
		if part = strings.Trim(part, " -.:*"); part == "" {
			continue
		}
		if text.PutRight(part) {
			return ""
		}
		if against == "" && r.againstTime(part) && !saysBefore(part, false) {
			against = part
		}
	}
	return against
}

// mayBear says whether a note of which remark makes nothing has to be read by a person, each distinct text once.
func (r *Reader) mayBear(s string) bool {
	if len(s) > 200 || strings.IndexByte(s, ' ') < 0 {
		return false
	}
	bears, known := r.bearing[s]
	if !known {
		r.scratch = fold(r.scratch[:0], s)
		if bears = text.MayBear(string(r.scratch), r.usualKM); len(r.bearing) < remarkLimit {
			r.bearing[strings.Clone(s)] = bears
		}
	}
	return bears
}

// otherWay says whether a folded remark is nothing but the length of another way, "2 km", "10k".
func (r *Reader) otherWay(folded string) bool {
	figures := strings.TrimRight(strings.TrimRight(folded, "abcdefghijklmnopqrstuvwxyz"), " ")
	unit := strings.TrimLeft(folded[len(figures):], " ")
	if unit != "k" && unit != "km" || len(figures) == 0 || len(figures) > 4 {
		return false
	}
	km, err := strconv.ParseFloat(strings.Replace(figures, ",", ".", 1), 64)
	return err == nil && math.Round(km) != float64(r.usualKM)
}
