package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// told is a result in a sentence: "Jo Lee won in 18:20".
type told struct {
	place, name, group, time string
}

var (
	proseClock = regexp.MustCompile(`(?:^|[^\d:.])((?:\d:)?\d{1,3}:[0-5]\d(?:[.,]\d{1,2})?)(?:$|[^\d:])`)
	// properName is two words and more that begin with capitals, small words of names between.
	properName = regexp.MustCompile(`\p{Lu}[\pL'’.-]*(?:[ \x{00A0}](?:(?:de|del|della|der|den|van|von|le|la|da|di|du|dos|ap|ab|ferch|zu|ter|ten) ){0,2}\p{Lu}[\pL'’-]*)+`)
	// behindName is what may stand between names of a group, and between its times.
	behindName = regexp.MustCompile(`^\s*(?:,|&|\+|and|und|et|y|e|en|i|och|a|ac|, and)\s*$`)
	// gluedMark is a mark that divides cells: nothing stands behind it as in a sentence.
	gluedMark     = regexp.MustCompile(`[\pL\d"'],[\pL\d"']|;[^\s]|,,`)
	ordinalBehind = regexp.MustCompile(`^[^.;]{0,30}?\b(\d{1,3})(?:st|nd|rd|th)\b`)
	ordinalAt     = regexp.MustCompile(`(?i)(?:^|[\s(])(?:platz |place |pos(?:ition)?\.? |no\.? |nr\.? )?(\d{1,3})(?:st|nd|rd|th|er|e|º|ª|°|\.|\)|:)(?: place)?[:,.]?\s*$|^\s*(\d{1,3})\s+$`)
	// groupBehind is what may be a sex or a class, in brackets behind a name.
	groupBehind = regexp.MustCompile(`^\s*\(([^()]{1,20})\)`)
	// ofClub are small words between a runner and the club.
	ofClub = set("of from for vom von de del du des da dei van voor för fran från z o")
)

// leadIns begin sentences and are no names. Common practice, no source.
var leadIns = set(`then next also and but while after behind followed following first second third fourth fifth sixth last winner well congratulations thanks
	suivent suit puis ensuite viennent vient aussi enfin premier premiere deuxieme troisieme victoire
	dann danach auch erster erste zweiter zweite dritter dritte vierter vierte sieger siegerin es platz
	luego despues tambien siguen sigue primero primera segundo segunda tercero tercera gano
	poi seguono segue anche primo prima secondo seconda terzo terza vince
	daarna vervolgens ook eerste tweede derde winnaar potem nastepnie tez pierwszy pierwsza drugi druga trzeci trzecia wygral wygrala
	sedan darefter aven forst forsta andra tredje segrare vann wedyn cyntaf ail trydydd`)

// proseLine reads the results that a line tells in sentences: each time behind one name, or
// as many times as names that stand behind one another. lead is what stands before the
// first. ok is false where a time has no name of its own.
func proseLine(line string) (lead string, results []told, ok bool) {
	clocks := proseClock.FindAllStringSubmatchIndex(line, -1)
	from := 0
	for k := 0; k < len(clocks); k++ {
		between := line[from:clocks[k][2]]
		names := runnersIn(between, from == 0 || strings.ContainsAny(between, ".!?"))
		if len(names) == 0 {
			return "", nil, false
		}
		if k == 0 {
			lead = strings.TrimRight(line[:names[0][0]], " ,;:.(-–—")
		}
		last := k
		for last+1 < len(clocks) && behindName.MatchString(line[clocks[last][3]:clocks[last+1][2]]) {
			last++
		}
		if n := last - k + 1; n > 1 {
			if n != len(names) {
				return "", nil, false
			}
		} else {
			if len(names) > 1 && behindName.MatchString(between[names[len(names)-2][1]:names[len(names)-1][0]]) {
				return "", nil, false // two people and one time
			}
			names = names[len(names)-1:]
			if k == 0 {
				lead = strings.TrimRight(line[:names[0][0]], " ,;:.(-–—")
			}
		}
		for i, at := range names {
			r := told{name: between[at[0]:at[1]], time: line[clocks[k+i][2]:clocks[k+i][3]]}
			if m := ordinalAt.FindStringSubmatch(between[:at[0]]); m != nil {
				r.place = orText(m[1], m[2])
			} else if m := ordinalBehind.FindStringSubmatch(between[at[1]:]); m != nil && len(names) == 1 {
				r.place = m[1]
			}
			if m := groupBehind.FindStringSubmatch(between[at[1]:]); m != nil {
				if k := kindOf(m[1]); k == kSex || k == kGroup {
					r.group = m[1]
				}
			}
			results = append(results, r)
		}
		k = last
		from = clocks[k][3]
	}
	if len(results) > 0 && results[0].place != "" {
		lead = strings.TrimRight(ordinalAt.ReplaceAllString(lead+" "+results[0].place+".", ""), " ,;:.(-–—")
	}
	return lead, results, len(results) > 0
}

// runnersIn finds the names of people in a text that stands before a time, as from and to.
// Clubs, which stand in brackets or behind a small word, are left out where others are left.
func runnersIn(s string, sentence bool) (found [][2]int) {
	var clubs [][2]int
	for _, m := range properName.FindAllStringIndex(s, -1) {
		from, to := m[0], m[1]
		first, rest, _ := strings.Cut(s[from:to], " ")
		if begins := sentence && strings.TrimRight(s[:from], " ") == "" || endsSentence(s[:from]); begins && leadIns[fold(first)] {
			trimmed := strings.TrimLeftFunc(rest, unicode.IsSpace)
			if word, more, ok := strings.Cut(trimmed, " "); ok && ofClub[fold(word)] {
				trimmed = more
			}
			if from = to - len(trimmed); !strings.Contains(trimmed, " ") {
				continue
			}
		}
		before := finalWordOf(" " + strings.TrimSpace(s[:from]))
		name := s[from:to]
		if strings.HasSuffix(strings.TrimSpace(s[:from]), "(") || ofClub[fold(before)] && len(found) > 0 || anyWord(name, clubWords) {
			clubs = append(clubs, [2]int{from, to})
			continue
		}
		if len(findDates(name)) > 0 {
			continue
		}
		found = append(found, [2]int{from, to})
	}
	if len(found) == 0 && len(clubs) == 1 && !anyWord(s[clubs[0][0]:clubs[0][1]], clubWords) {
		return clubs
	}
	return found
}

func endsSentence(s string) bool {
	s = strings.TrimRight(s, " ")
	return s != "" && strings.ContainsRune(".!?:;", rune(s[len(s)-1]))
}

// finishWords tell of a finish, toldLate that somebody is told of late. Common practice, no source.
var (
	finishWords = regexp.MustCompile(` (?:won|wins|win|winner|first|second|third|fourth|1st|2nd|3rd|home|finished|finish|came|crossed|ran|clocked|took|takes|beat|ahead|followed|behind|runner up|gewann|siegte|sieger|siegerin|lief|wurde|vor|folgte|folgten|gagne|remporte|victoire|devant|suivi|suivent|gano|vencio|entro|llego|vince|vinto|arrivato|davanti|won|gewonnen|liep|voor|wygral|wygrala|przed|vann|sprang|fore|enillodd) `)
	toldLate    = regexp.MustCompile(` (?:also|forgot|forgotten|missed|missing|add|late|left out|plus|ps|auch|vergessen|nachtrag|noch|aussi|oublie|oubliee|manque|ajouter|tambien|falta|falto|olvide|anche|dimenticato|dimenticata|manca|ook|vergeten|tez|rowniez|zapomnialem|zapomnialam|aven|ocksa|glomde|hefyd) `)
)

// plainResult is a line of a list, with nothing of a sentence.
func plainResult(l string) bool {
	if !clockInside.MatchString(l) {
		return false
	}
	words := strings.Fields(l)
	if leadIns[fold(words[0])] {
		return false
	}
	before := strings.Fields(l[:clockInside.FindStringIndex(l)[0]])
	if len(before) > 1 {
		if w := before[len(before)-1]; len(w) > 1 && w == strings.ToLower(w) && hasLetter(w) && hasNoDigit(w) && kindOf(w) == kText {
			return false // "Jo Lee ran 18:20"
		}
	}
	small := 0
	for _, w := range words {
		if r := []rune(w); len(r) > 2 && unicode.IsLower(r[0]) {
			small++
		}
	}
	return small <= 1 && len(proseClock.FindAllStringIndex(l, 3)) <= 2
}

// mayTell is the cheap test that hardly any line of a table passes: a time and two small words
// by themselves, or three times.
func mayTell(l string) bool {
	clocks, small := 0, 0
	for i := 1; i+1 < len(l); i++ {
		switch c := l[i]; {
		case c == '\t' || c == '|', (c == ',' || c == ';') && l[i+1] != ' ':
			return false
		case c == ':' && l[i-1] >= '0' && l[i-1] <= '9' && l[i+1] >= '0' && l[i+1] <= '9':
			clocks++
		case l[i-1] == ' ' && c >= 'a' && c <= 'z':
			small++
		}
	}
	return clocks > 2 || clocks > 0 && small > 0
}

// proseLists puts results that are told in sentences one to a line. Where a text has a list
// as well, these are sentences before it that tell of a finish and whose times come before the
// list's, and those below it that say they are late; a text without a list must tell three
// results and more, every time with one name. ok is false where there is none.
func proseLists(lines []string) (out []string, ok bool) { return proseBeside(lines, true) }

// proseAlone is proseLists for a text in which nothing was found to be a list.
func proseAlone(lines []string, _ byte) []string {
	out, _ := proseBeside(lines, false)
	return out // cells divided by tabs
}

func proseBeside(lines []string, lists bool) (out []string, ok bool) {
	if !slices.ContainsFunc(lines, mayTell) {
		return nil, false
	}
	plain, firstPlain, lastPlain := 0, -1, -1
	for i, l := range lines {
		if lists && plainResult(l) && len(l) <= 200 {
			if _, results, ok := proseLine(l); !ok || len(results) < 2 {
				if firstPlain < 0 {
					firstPlain = i
				}
				plain++
				lastPlain = i
			}
		}
	}
	type cut struct {
		lead    string
		results []told
	}
	cuts := make([]*cut, len(lines))
	n, placed := 0, 0
	for i, l := range lines {
		if len(l) > 4000 || !clockInside.MatchString(l) || strings.ContainsAny(l, "\t|") {
			if plain < 3 && clockInside.MatchString(l) {
				return nil, false
			}
			continue
		}
		if gluedMark.MatchString(l) { // a table
			if plain < 3 {
				return nil, false
			}
			continue
		}
		if plain >= 3 && (i >= firstPlain && i <= lastPlain || plainResult(l) && i > firstPlain) {
			continue
		}
		f := " " + fold(l) + " "
		about := isRecord(fold(l)) || anyWord(l, recordWords) || ofOtherWeeks(l) || ofAllTimes(l)
		lead, results, ok := proseLine(l)
		if plain >= 3 {
			if !ok || about || i < firstPlain && !finishWords.MatchString(f) || i > lastPlain && !toldLate.MatchString(f) && !strings.HasPrefix(strings.TrimSpace(l), "+ ") {
				continue
			}
			if i < firstPlain && !proseBefore(results, lines[firstPlain]) {
				continue
			}
		} else if !ok {
			if about || len(findDates(l)) > 0 {
				continue
			}
			return nil, false
		} else if about {
			continue
		}
		cuts[i] = &cut{lead, results}
		for _, r := range results {
			if n++; r.place != "" {
				placed++
			}
		}
	}
	if n == 0 || plain < 3 && n < 3 {
		return nil, false
	}
	plainPlaced := firstPlain >= 0 && leadingPlace.MatchString(lines[firstPlain])
	for i, l := range lines {
		c := cuts[i]
		if c == nil {
			out = append(out, l)
			continue
		}
		if lead := strings.TrimSpace(c.lead); lead != "" && (len(findDates(lead)) > 0 || i == 0) {
			out = append(out, lead)
		}
		for _, r := range c.results {
			line, gap := r.name, " "
			if r.group != "" {
				line += " (" + r.group + ")"
			}
			if !lists {
				gap = "\t"
			}
			if placed == n && (plain < 3 || plainPlaced) && r.place != "" {
				line = r.place + "." + gap + line
			}
			line += gap + r.time
			out = append(out, line)
		}
	}
	return out, true
}

// proseBefore says whether results told above a list come in before its first line.
func proseBefore(results []told, first string) bool {
	last := clockInside.FindString(first)
	times := []float64{}
	for _, r := range results {
		times = append(times, looseNumber(r.time))
	}
	return slices.IsSorted(times) && times[len(times)-1] <= looseNumber(last)
}
