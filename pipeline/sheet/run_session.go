package sheet

import (
	"fmt"
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
	if p.runs.sessionCol >= 0 {
		p.Session = Found{From: "column " + letters(p.runs.sessionCol), Why: p.Columns[p.runs.sessionCol].Why}
		return
	}
	look := func(text, from string) bool {
		sc := dateScan{s: text, toks: tokenize(text)}
		for i, t := range sc.toks {
			if t.kind == 'l' && sessionWords[t.word] {
				j := i + 1
				for k := 0; k < 4 && (sc.tok(j).kind == 's' || sc.tok(j).kind == ':' || sc.tok(j).kind == '-' || sc.tok(j).kind == '#' || sc.tok(j).kind == 'l' && (sc.tok(j).word == "time" || sc.tok(j).word == "at" || sc.tok(j).word == "no" || sc.tok(j).word == "um")); k++ {
					j++
				}
				if clock, _, ok := sc.clockAt(j); ok {
					p.Session = Found{Value: clock, Text: text, From: from, Why: "the start time"}
					return true
				}
				if n := sc.tok(j); n.kind == 'd' && n.digits() <= 2 && n.n >= 1 && n.n <= 20 && t.word == "session" {
					p.Session = Found{Value: strconv.Itoa(n.n), Text: text, From: from, Why: "the number of the session"}
					return true
				}
			}
			if clock, next, ok := sc.clockAt(i); ok && sc.tok(next).kind == 's' && sc.tok(next+1).kind == 'l' && sessionWords[sc.tok(next+1).word] {
				p.Session = Found{Value: clock, Text: text, From: from, Why: "the start time"}
				return true
			}
		}
		return false
	}
	for i, t := range p.Titles {
		if isRemark(t) || strings.Contains(" "+fold(t)+" ", " next ") {
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

var sessionWords = set("session start starts started depart salida partenza largada starttime startzeit sessie startad seance")
