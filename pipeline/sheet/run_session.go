package sheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// session takes a start time or number that is said in so many words.
func (rs *runSettler) session(p *Part) {
	p.runs.sessionCol = p.Index(Session)
	if rs.o.Session != "" {
		p.Session = Found{Value: sessionText(rs.o.Session), Text: rs.o.Session, From: "given by hand"}
		p.runs.sessionCol, p.runs.session = -1, p.Session.Value
		return
	}
	if p.startsInWaves(p.runs.sessionCol) {
		c := p.column(p.runs.sessionCol)
		c.Meaning, c.Why = Other, c.Why+", but one ranking goes through all of them: one run, started in groups"
		p.runs.sessionCol = -1
	}
	if p.runs.sessionCol >= 0 {
		p.Session = Found{From: "column " + letters(p.runs.sessionCol), Why: p.Columns[p.runs.sessionCol].Why}
		return
	}
	look := func(text, from string) bool {
		value, why, ok := sessionIn(text)
		if ok {
			p.Session = Found{Value: value, Text: text, From: from, Why: why}
		}
		return ok
	}
	for i, t := range p.Titles {
		if !saysToday(t) {
			continue
		}
		if look(t, fmt.Sprintf("title line %d", i+1)) {
			p.runs.session = p.Session.Value
			return
		}
	}
	if p.Tab != "" && look(p.Tab, "tab name") || look(strings.ReplaceAll(baseName(rs.sheet.Name), "_", " "), "file name") {
		p.runs.session = p.Session.Value
	}
}

// startsInWaves says whether a column of sessions is one of the groups in which the runners of one run were started,
// "Wave", "Heat", "Start time": one ranking goes through all its values, or the times do where there are no places.
func (p *Part) startsInWaves(column int) bool {
	if column < 0 || !p.Whole || anyWord(p.column(column).Heading, sittings) {
		return false
	}
	if p.rules.pos >= 0 {
		return p.oneNumbering(column)
	}
	clock, n, last, rising := p.Index(Time), 0, 0.0, true
	if clock < 0 || len(columnTexts(p, column)) < 2 || p.inTurn(column) {
		return false
	}
	p.Each(func(_ int, cells []string) error {
		t := secondsOf(cells, clock)
		n++
		rising = rising && (t == 0 || t >= last)
		last = max(last, t)
		return nil
	}) // was read without an error before
	return rising && n >= 6
}

// oneNumbering says whether the values of a column share one row of places: no place but a slip or a tie stands in two
// of them, and those that begin behind the first have lines of their own.
func (p *Part) oneNumbering(column int) bool {
	of, least, n, twice := map[int]string{}, map[string]int{}, 0, 0
	p.Each(func(_ int, cells []string) error {
		place, v := placeFigure(cellAt(cells, p.rules.pos)), fold(cellAt(cells, column))
		if place == 0 {
			return nil
		}
		n++
		if other, taken := of[place]; taken && other != v {
			twice++
		} else {
			of[place] = v
		}
		if l := least[v]; l == 0 || place < l {
			least[v] = place
		}
		return nil
	}) // was read without an error before
	behind := 0
	for _, l := range least {
		if l > 1 {
			behind++
		}
	}
	return n >= 6 && len(least) > 1 && behind >= len(least)-1 && 10*twice <= n
}

// sittings head columns of runs of one day that have rankings of their own. Common practice, no source.
var sittings = set("session sessions sitting sittings seance sessie sesion sessione sitzung")

// saysToday says whether a title line may be about the run itself.
func saysToday(title string) bool {
	return !isRemark(title) && !strings.Contains(" "+fold(title)+" ", " next ")
}

// sessionIn finds a start time or the number of a session in a text, and why it is one.
func sessionIn(text string) (value, why string, ok bool) {
	sc := dateScan{s: text, toks: tokenize(text)}
	for i, t := range sc.toks {
		if t.kind == 'l' && sessionWords[t.word] {
			j := i + 1
			for k := 0; k < 4 && (strings.IndexByte("s:-#,;|=", sc.tok(j).kind) >= 0 || sc.tok(j).kind == 'l' && (sc.tok(j).word == "time" || sc.tok(j).word == "at" || sc.tok(j).word == "no" || sc.tok(j).word == "um")); k++ {
				j++
			}
			if clock, _, ok := sc.clockAt(j); ok {
				return clock, "the start time", true
			}
			if n := sc.tok(j); n.kind == 'd' && n.digits() <= 2 && n.n >= 1 && n.n <= 20 && t.word == "session" {
				return strconv.Itoa(n.n), "the number of the session", true
			}
		}
		if clock, next, ok := sc.clockAt(i); ok && sc.tok(next).kind == 's' && sc.tok(next+1).kind == 'l' && sessionWords[sc.tok(next+1).word] {
			return clock, "the start time", true
		}
	}
	if m := dottedStart.FindStringSubmatch(text); m != nil && (m[1] != "" || m[3] > "12" || m[3] == "00") {
		return ("0" + m[2])[len(m[2])-1:] + ":" + m[3], "the start time", true
	}
	return "", "", false
}

// dottedStart is a start with a dot in its time, "Started at 9.00", and no day, "Starts 3.10.2026".
var dottedStart = regexp.MustCompile(`(?i)\b(?:start|started|starts) ?:? *(at )? *([01]?\d|2[0-3])\.([0-5]\d)(?:$|[ ,;)])`)

var sessionWords = set("session start starts started depart salida partenza largada partida starttime startzeit starttijd starttid startu startovni lahto lahtoaika cychwyn rajt sessie startad seance")

// dayparts rank words for a part of the day, as tabs are named after.
var dayparts = byRank("am morning vormittag morgen matin manana mattina ochtend rano", "noon midday", "pm afternoon nachmittag apresmidi tarde pomeriggio middag", "evening abend soir sera avond wieczor night")

func byRank(lists ...string) map[string]int {
	m := map[string]int{}
	for i, l := range lists {
		for _, w := range strings.Fields(l) {
			m[w] = i + 1
		}
	}
	return m
}

// daypart is the part of the day that a tab's name says and nothing else besides a
// date, a distance and general words; 0 for none.
func daypart(tab string) (rank int) {
	for _, w := range strings.Fields(fold(strings.ReplaceAll(cutSpans(tab, true), "|", " "))) {
		switch r := dayparts[w]; {
		case r > 0 && rank == 0:
			rank = r
		case r > 0 || !titleWords[w] && !isOrdinalOrNumber(w):
			return 0
		}
	}
	return rank
}

// settleDayparts tells the races of one day apart whose tabs are named after parts of
// the day: the first is the run of that day, the others are its second and third.
func (rs *runSettler) settleDayparts(parts []*Part) {
	tabs := map[runDay]map[int]bool{}
	of := func(p *Part) (runDay, int) {
		if p.Session.OK() || p.Tab == "" || p.Course.Value == "" || !p.Date.Settled || p.Kind != "full" && p.Kind != "excerpt" {
			return runDay{}, 0
		}
		return runDay{p.Course.Value, p.Date.Day}, daypart(p.Tab)
	}
	for _, p := range parts {
		if k, rank := of(p); rank > 0 {
			if tabs[k] == nil {
				tabs[k] = map[int]bool{}
			}
			tabs[k][rank] = true
		}
	}
	for _, p := range parts {
		k, rank := of(p)
		before := 0
		for r := range tabs[k] {
			if r < rank {
				before++
			}
		}
		if rank > 0 && before > 0 {
			p.Session = Found{Value: strconv.Itoa(before + 1), Text: p.Tab, From: "tab name", Why: "another tab is of an earlier part of that day"}
			p.runs.session = p.Session.Value
		}
	}
}
