package sheet

import (
	"strings"

	"lapwing/pipeline/unit"
)

// sayBelow adds to the titles of the only list of a sheet or tab, or of lists side by side, the line
// below that gives the day of the run, where nothing above it, nor the names of tab and file, give one: "Alder Bank, 3
// January 2026" or "Run held Saturday 3 January 2026" at the foot of the page. Lines about when
// the list was made, about records, deadlines and the next run are none, and of two days
// neither is taken.
func (s *Sheet) sayBelow(lex *lexicon) {
	if len(s.Parts) == 0 || len(s.facts) > 0 || len(s.cover) > 0 {
		return
	}
	var tab []*Part
	for i, p := range s.Parts {
		tab = append(tab, p)
		if i+1 == len(s.Parts) || s.Parts[i+1].Tab != p.Tab {
			s.sayBelowTab(tab, lex)
			tab = nil
		}
	}
}

// sayBelowTab does so for the lists of one tab.
func (s *Sheet) sayBelowTab(parts []*Part, lex *lexicon) {
	first := parts[0]
	for _, p := range parts {
		if p.Kind == Volunteers || !p.Whole || p.Index(Date) >= 0 || p != first && (p.HeadingRow == 0 || p.HeadingRow != first.HeadingRow) {
			return
		}
	}
	name := baseStem(s.Name)
	for _, t := range append([]string{strings.ReplaceAll(name, "_", " "), first.Tab}, first.Titles...) {
		if len(titleDates(t, "", lex, false)) > 0 || t != first.Tab && len(scanDates(t, true)) > 0 && len(titleDates(t, "", lex, true)) > 0 {
			return
		}
	}
	lastSure := 0
	for _, p := range parts {
		lastSure = max(lastSure, p.rules.lastSure)
	}
	var line string
	var day unit.Day
	for _, p := range parts {
		for _, sk := range p.linesAtFoot(lastSure) {
			dates := titleDates(sk.Text, "", lex, false)
			if len(dates) != 1 || dates[0].readings[0].y == 0 || hasClock(sk.Text) || untilThen(sk.Text[:dates[0].foundDate.from]) || len(strings.Fields(cutSpans(untilMade(sk.Text, dates[0].to), false))) > 10 {
				continue
			}
			if d := dates[0].readings[0].day(); line != "" && d != day {
				return
			} else if line == "" {
				line, day = sk.Text, d
			}
		}
	}
	if line != "" {
		for _, p := range parts {
			p.Titles = append(p.Titles, line)
		}
	}
}

// untilMade is a line up to where it goes on, behind the day of the run, with who made the list and when:
// "Results of the run held on 3 January 2026, compiled 5/1/26 by Jo Lee".
func untilMade(line string, from int) string {
	for i := from; i < len(line); i++ {
		if strings.IndexByte(",;(.", line[i]) >= 0 && anyWord(leadWords(line[i+1:], 2), madeWords) {
			return line[:i]
		}
	}
	return line
}

// linesAtFoot are the lines left out below a row that are about this run and over no other list.
func (p *Part) linesAtFoot(below int) (out []Skipped) {
	for _, sk := range p.Skipped {
		if sk.Row > below && (sk.Why == whyFooter.String() || sk.Why == whyNoResult.String()) && !ofAnotherRun(sk.Text) && !otherLists(sk.Text) {
			out = append(out, sk)
		}
	}
	return out
}

// sayCourseBelow adds to the titles of the lists of a tab the line below them that is labelled
// as their course, "Course: Alder Bank", or that over the day of the run, where what stands above names one at
// most without day, distance or label, as the club's name in a letterhead does. Of two names neither is taken.
func (s *Sheet) sayCourseBelow(lex *lexicon, book *courseBook) {
	if len(s.facts) > 0 || len(s.cover) > 0 {
		return
	}
	var tab []*Part
	for i, p := range s.Parts {
		tab = append(tab, p)
		if i+1 == len(s.Parts) || s.Parts[i+1].Tab != p.Tab {
			s.sayCourseBelowTab(tab, lex, book)
			tab = nil
		}
	}
}

// sayCourseBelowTab does so for the lists of one tab.
func (s *Sheet) sayCourseBelowTab(parts []*Part, lex *lexicon, book *courseBook) {
	lastSure, skipped := 0, false
	for _, p := range parts {
		if p.Kind == Volunteers || !p.Whole || p.Index(Course) >= 0 {
			return
		}
		lastSure, skipped = max(lastSure, p.rules.lastSure), skipped || len(p.Skipped) > 0
	}
	if !skipped {
		return
	}
	line, slug := "", ""
	for _, p := range parts {
		for _, sk := range p.linesAtFoot(lastSure) {
			if len(sk.Text) > 80 {
				continue
			}
			if label, _, _ := strings.Cut(sk.Text, ":"); anyWord(label, issueWords) || anyWord(label, deadlineWords) {
				continue // "Next venue: Alder Bank"
			}
			for _, w := range courseWords(sk.Text, lex, book) {
				if w.why != labelledCourse {
					continue
				}
				if slug != "" && slug != w.slug {
					return
				}
				line, slug = sk.Text, w.slug
			}
		}
	}
	if line == "" {
		if line = overDayBelow(parts, lex, book); line == "" || len(fileWords(s.Name, book)) > 0 {
			return
		}
	}
	bare := ""
	for _, p := range parts {
		for _, t := range p.Titles {
			for _, w := range courseWords(t, lex, book) {
				if w.weight > bareTitle || bare != "" && w.slug != bare {
					return
				}
				bare = w.slug
			}
		}
	}
	for _, p := range parts {
		p.Titles = append(p.Titles, line)
	}
}

// overDayBelow is the line right above that with the day of the run, where this stands at the foot of the page
// and names no course: "Alder Bank 5k" over "Saturday 3 January 2026". "" for none.
func overDayBelow(parts []*Part, lex *lexicon, book *courseBook) string {
	for _, p := range parts {
		n := len(p.Titles)
		foot := p.linesAtFoot(p.rules.lastSure)
		for i, sk := range foot {
			if i > 0 && n > 0 && sk.Text == p.Titles[n-1] && foot[i-1].Row == sk.Row-1 && len(courseWords(sk.Text, lex, book)) == 0 {
				over := foot[i-1].Text
				if _, _, _, far := findDistance(over); len(strings.Fields(over)) <= 6 && (far || anyWord(over, runLegWords)) {
					return over // not a name over a day, which signs
				}
			}
		}
	}
	return ""
}

// untilThen says whether the words before a date make it a deadline, or the day of something
// that is still to come or long ago.
func untilThen(before string) bool {
	words := strings.Fields(fold(before))
	for _, w := range words[max(0, len(words)-3):] {
		if deadlineWords[w] || sinceWords[w] {
			return true
		}
	}
	return false
}

// saysSince says whether a line is about the year in which something began: "running since 1987".
func saysSince(line string) bool {
	words := strings.Fields(fold(line))
	for i, w := range words[:max(0, len(words)-1)] {
		if sinceWords[w] && len(words[i+1]) == 4 && digitsOnly(words[i+1]) {
			return true
		}
	}
	return false
}

var sinceWords = set("since from seit ab depuis desde dal sinds vanaf sedan siden od founded established est")
