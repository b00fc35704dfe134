package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// TabLeftOut is the kind of a question that holds one tab of a workbook and not the
// others.
const TabLeftOut = "tab-left-out"

// ofTab are the kinds of questions that are about one tab, and that are answered on it.
var ofTab = set("date-unclear date-missing year-missing course-missing heading-unclear", DateImpossible, distancesDiffer)

// leaveTabs takes tabs that wait for an answer out of a workbook on which another tab
// is clear: one that was copied and not changed, or that says less than the others,
// does not hold up the rest. It returns the parts that stay. Halves of results are
// never taken apart, and what other sheets may answer holds the workbook.
func (rs *runSettler) leaveTabs(parts []*Part) (kept []*Part) {
	asks := map[*Part]place.Problem{}
	settled := 0
	for _, p := range parts {
		for _, q := range p.Problems {
			if q.Severity != place.Waits {
				continue
			}
			if !ofTab[q.Kind] || p.Tab == "" || p.Kind != "full" && p.Kind != "excerpt" || p.Date.ByOrder != nil || p.Date.Slip {
				return parts
			}
			if _, asked := asks[p]; !asked {
				asks[p] = q
			}
		}
		if _, waits := asks[p]; !waits && (p.Kind == "full" || p.Kind == "excerpt") {
			settled++
		}
	}
	if settled == 0 || len(asks) == 0 {
		return parts
	}
	for _, p := range parts {
		q, ok := asks[p]
		if !ok {
			kept = append(kept, p)
			continue
		}
		rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: q.Place, Severity: place.Doubtful, Kind: TabLeftOut, Read: q.Read, Expected: q.Expected,
			Do: fmt.Sprintf("%s Until then its %s left out; the other tabs are loaded. If this tab holds no results of its own, delete it.", rs.answerOnTab(p, q), text.CountOf(p.lineCount(), "line is", "lines are"))})
	}
	return kept
}

// answerOnTab says how a question about a tab is answered on it.
func (rs *runSettler) answerOnTab(p *Part, q place.Problem) string {
	const again = ", save, and load the workbook again."
	if !p.Course.OK() {
		return "Which course was this? Write its name in a line above the table" + again
	}
	if p.Date.OK() {
		return q.Do
	}
	if len(p.Date.Choices) > 1 && saysDate(p.Tab, p.Date.Choices[0]) != saysDate(p.Tab, p.Date.Choices[1]) {
		return "Which date was the run? Write the right one above the table and in the name of this tab" + again
	}
	return "Which date was the run? Write it, with its year, in a line above the table" + again
}

// leaveApart takes tabs out of a workbook whose names say that they are of another day or do not stand,
// "Last week", "Backup", where another tab has results of the same run and they themselves give no
// day. Other tabs that are taken for one run, though the places of each begin at 1, are pointed out.
func (rs *runSettler) leaveApart(parts []*Part) (kept []*Part) {
	run := func(p *Part) string { return fmt.Sprint(p.Course.Value, p.Date.Day, p.Session.Value, p.DistanceM()) }
	ofRun := map[string][]*Part{}
	for _, p := range parts {
		if p.Kind == "full" && p.Whole && p.runs.dateCol < 0 && p.Date.Settled && p.Course.OK() {
			ofRun[run(p)] = append(ofRun[run(p)], p)
		}
	}
	if len(ofRun) == len(parts) {
		return parts
	}
	left := map[*Part]bool{}
	for _, p := range parts { // in the order of the tabs
		lists := ofRun[run(p)]
		if len(lists) < 2 || !slices.Contains(lists, p) {
			continue
		}
		others := slices.DeleteFunc(slices.Clone(lists), func(q *Part) bool {
			return q.Tab == p.Tab && q.HeadingRow != p.HeadingRow || q == p || setApartByTab(q)
		})
		switch {
		case len(others) == 0:
		case setApartByTab(p):
			left[p] = true
			rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: place.Place{Sheet: rs.sheet.Name, Tab: p.Tab}, Severity: place.Doubtful, Kind: TabLeftOut, Read: p.Tab, Expected: fmt.Sprintf("results of %s, as on tab %q", p.Date.Day.Long(), others[0].Tab),
				Do: fmt.Sprintf("The name of this tab says that it is of another day, or does not count, so its %s left out. If they do count, write their day above them, or give the tab another name, save, and load the workbook again.", text.CountOf(p.lineCount(), "line is", "lines are"))})
		case slices.Index(lists, others[0]) < slices.Index(lists, p) && others[0].beginsAt1() && p.beginsAt1() && !listedApart(p) && !listedApart(others[0]):
			which := fmt.Sprintf("tabs %q and %q", others[0].Tab, p.Tab)
			if others[0].Tab == p.Tab {
				which = "two lists beside one another"
			}
			p.problem(rs.sheet.Name, p.HeadingRow, -1, place.Look, "lists-of-one-run", which, "places that begin at 1 once",
				"Both are taken for one run, and the places of each begin at 1. If one of them is of another day or race, write that above its table, or delete it if it does not count, and load the sheet again; otherwise there is nothing to do.")
		}
	}
	return slices.DeleteFunc(slices.Clone(parts), func(p *Part) bool { return left[p] })
}

// setApartByTab says whether the name of a tab says that it is of another day or does not stand, and
// nothing on it gives its day.
func setApartByTab(p *Part) bool {
	if p.Date.Text != "" && (p.Date.From == "tab name" || strings.HasPrefix(p.Date.From, "title")) {
		return false
	}
	apart := false // of a text, which has no tabs
	for _, w := range strings.Fields(fold(p.Tab)) {
		switch {
		case apartTabs[w] || otherDayWords[w]:
			apart = true
		case !besideApart[w] && !titleWords[w] && !digitsOnly(w):
			return false
		}
	}
	return apart
}

// apartTabs are words of such names. Common practice, no source.
var apartTabs = set("old draft superseded outdated test example sample backup archive archived scratch obsolete unused predicted targets forecast goals duplicates deleted removed entwurf sicherung archiv brouillon ancien ancienne sauvegarde borrador antiguo bozza vecchio concept oud gammal gammel utkast stary kopia")

// listedApart says whether the tab or the line nearest above a list says whose it is of the run's: a
// sex, a group, a club, a heat, a wave.
func listedApart(p *Part) bool {
	for _, t := range []string{p.Tab, lastTitle(p.Titles)} {
		if isSection(t) || saysField(t) || heatWords.MatchString(" "+t) || anyWord(t, clubWords) || anyWord(t, ofPartWords) {
			return true
		}
	}
	return false
}

// ofPartWords are further words of lists that share a run. Common practice, no source.
var ofPartWords = set("wave waves heat heats group groups gruppe gruppen groupe team teams class klasse classe year form school junior juniors kids walkers runners nw walking start welle vague late nachtrag extra guests guest gaste")

// beginsAt1 says whether the first place of a list is 1.
func (p *Part) beginsAt1() bool {
	first, _ := p.placesFromTo()
	return first == 1
}

// lineCount is how many lines a list has.
func (p *Part) lineCount() (n int) {
	p.Each(func(int, []string) error {
		n++
		return nil
	}) // a grid has no error of its own
	return n
}
