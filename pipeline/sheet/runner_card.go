package sheet

import (
	"slices"
	"strings"
)

// One runner's card or diary: lines of many days under "Date | Course | Time", with the runner's
// name above them and on none of them.

// fewestOfCard is how many lines such a table has at least where no label says the name.
const fewestOfCard = 4

// nameByCard gives the lines of such a table the name of its runner, and the sex and the birth that
// labels above it say, each in a column of its own, and sets t.runner. It leaves the table as it is where
// nothing above it says beyond doubt whose it is, where one day stands on many lines, or where something
// but days, times and what belongs to them stands on the lines.
func (t *table) nameByCard(lex *lexicon, file string) {
	if t.grid == nil || t.grid.len() < 3 {
		return
	}
	type list struct {
		day, clock int
		days       map[string]bool
		lines      int
	}
	heading, heads, data, width := -1, map[int]bool{}, map[int]bool{}, 0 // heading is the first
	var lists []*list
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		width = max(width, len(cells))
		if heading < 0 && i >= headingLooks {
			break
		}
		if !hasFigures(cells) || heading < 0 && furthest(cells) >= 0 { // as all lines of results have
			if day, clock := dayAndTime(lex, cells); day >= 0 {
				if heading < 0 {
					heading = i
				}
				heads[i] = true
				lists = append(lists, &list{day: day, clock: clock, days: map[string]bool{}})
				continue
			}
		}
		if len(lists) == 0 {
			continue
		}
		if l := lists[len(lists)-1]; isDayCell(cellAt(cells, l.day)) && kindOf(cellAt(cells, l.clock)) == kClock {
			l.lines++
			l.days[trim(cells[l.day])] = true
			data[i] = true
		}
	}
	lines := len(data)
	if lines == 0 || slices.ContainsFunc(lists, func(l *list) bool { return 10*len(l.days) < 9*l.lines }) {
		return
	}
	card := runnerCard{said: map[int]bool{}}
	_, headings := t.grid.at(heading)
	bare, bareRow, course := "", 0, slices.ContainsFunc(headings, func(h string) bool { return lex.read(h).meaning == Course })
	for i := range heading {
		_, cells := t.grid.at(i)
		card.read(lex, i, cells)
		switch text := titleText(cells); {
		case text == "":
		case bare == "" && rowFilled(cells) == 1 && isRunnersName(text) && len(strings.Fields(text)) < 4:
			bare, bareRow = trim(text), i
		default:
			course = course || len(courseWords(text, lex, &courseBook{})) > 0
			if bare == "" {
				bare = "-" // the first line is something else
			}
		}
	}
	if card.name == "" && bare != "-" && course {
		card.name, card.said[bareRow] = bare, true
	}
	if card.name == "" && slices.ContainsFunc(headings, func(h string) bool { return lex.read(h).meaning == Course }) {
		for i := 0; i < heading && card.name == ""; i++ { // which name no course
			_, cells := t.grid.at(i)
			if card.name = keeperOf(titleText(cells)); card.name != "" {
				card.said[i] = true
			}
		}
		if card.name == "" {
			card.name = runnerOfFile(file)
		}
	}
	if card.name == "" || lines < fewestOfCard && !card.labelled {
		return
	}
	t.runner = card.name
	trained := map[int]bool{}
	for i := range data {
		_, cells := t.grid.at(i)
		trained[i] = slices.ContainsFunc(cells, func(c string) bool { return trainingWords[fold(c)] })
	}
	var counted []int // columns that number the lines
	for c, h := range headings {
		if g := lex.read(h); g.number && t.countsUp(heading, c) {
			counted = append(counted, c)
		}
	}
	names, values := []string{"Name"}, []string{card.name}
	for _, f := range card.facts {
		names, values = append(names, f[0]), append(values, f[1])
	}
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		switch {
		case i < heading && card.said[i]:
			return nil, true
		case trained[i]:
			return nil, true // no run of a course
		case !heads[i] && !data[i]:
			return nil, false
		}
		wide := make([]string, width, width+len(names))
		copy(wide, cells)
		for _, c := range counted {
			wide[c] = ""
		}
		if heads[i] {
			return append(wide, names...), true
		}
		return append(wide, values...), true
	})
}

// runnerCard is what the lines above a table say of one runner.
type runnerCard struct {
	name     string
	labelled bool         // a label says the name
	facts    [][2]string  // heading and value of sex and birth
	said     map[int]bool // rows that say nothing else
}

// read takes in a line: "Name | Jo Lee", "Sex: F", "Season card 2025: Jo Lee, F52", "Jo Lee's runs 2025". The first
// line that says a name counts.
func (c *runnerCard) read(lex *lexicon, row int, cells []string) {
	text := titleText(cells)
	label, value, ok := strings.Cut(text, ":")
	if filled := rowFilled(cells); !ok && filled == 2 {
		first := slices.IndexFunc(cells, func(s string) bool { return !isBlank(s) })
		label, value, ok = cells[first], strings.TrimPrefix(text, trim(cells[first])), true
		value = strings.TrimLeft(value, " |:")
	}
	label, value = trim(label), trim(value)
	if ok && value != "" {
		switch g := lex.read(label); {
		case !g.known:
		case g.meaning == Name && looksNamed(value) && c.name == "":
			c.name, c.said[row], c.labelled = value, true, isRunnersName(value)
			return
		case g.meaning == Sex, g.meaning == BirthYear, g.meaning == BirthDate:
			c.facts, c.said[row] = append(c.facts, [2]string{label, value}), true
			return
		}
	}
	if c.name == "" {
		c.name = cardOf(text)
	}
}

// cardOf is the name in a title that says whose runs these are, with a word for a card or diary beside it: "Season
// card 2025: Jo Lee, F52", "Jo Lee – running log", "Jo Lee's 5k diary"; "" for none.
func cardOf(title string) string {
	for i, r := range title { // "Ann O'Shea's runs"
		if r != '\'' && r != '’' {
			continue
		}
		if name := title[:i]; isRunnersName(name) && hasNoDigit(name) && anyWord(strings.TrimPrefix(strings.TrimLeft(title[i:], "'’"), "s"), cardWords) {
			return trim(name)
		}
	}
	for _, mark := range [...]string{":", " - ", " – ", " — ", " | "} {
		parts := strings.Split(title, mark)
		for i, part := range parts {
			name, _, _ := strings.Cut(part, ",")
			name, _, _ = strings.Cut(name, " (")
			name, _, _ = strings.Cut(name, " |")
			if !isRunnersName(name) {
				continue
			}
			for k, other := range parts {
				if k != i && anyWord(other, cardWords) {
					return trim(name)
				}
			}
		}
	}
	return ""
}

// trainingWords fill a cell of a line of such a table that is no run of a course. Common practice, no source.
var trainingWords = set("training intervals track treadmill recovery tempo fartlek commute", "training run", "easy run", "long run", "recovery run", "tempo run", "hill reps", "hill session", "track session", "speed session", "interval training", "lauftraining entrainement entrenamiento allenamento traning trening treenaus")

// runnerOfFile is the name of a runner in that of a file, perhaps with words for what one keeps of one's own runs: "Jo Lee - my
// runs", "5k history Jo Lee", "Jo Lee"; "" for none.
func runnerOfFile(file string) string {
	if name := keeperOf(file); name != "" {
		return name
	}
	words, _ := withoutKept(file)
	if name := runnerAlone(words); plainWords(name) == name {
		return name
	}
	return ""
}

// keeperOf is the name in a text that says whose runs these are by words for what one keeps of them, with or without a mark
// between: "Jo Lee 5k results"; "" for none.
func keeperOf(text string) string {
	if name := cardOf(text); name != "" {
		return name
	}
	if words, kept := withoutKept(text); kept {
		return runnerAlone(words)
	}
	return ""
}

// withoutKept are the words of a text without those at its ends for a distance, a year and what one keeps of one's own runs, and
// whether it has one for these.
func withoutKept(text string) (words []string, kept bool) {
	general := func(word string) bool {
		w := fold(word)
		_, _, _, far := findDistance(word)
		kept = kept || cardWords[w]
		return far || cardWords[w] || titleWords[w] || digitsOnly(w) || w == "my"
	}
	words = strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '_' })
	for len(words) > 0 && general(words[len(words)-1]) {
		words = words[:len(words)-1]
	}
	for len(words) > 0 && general(words[0]) {
		words = words[1:]
	}
	return words, kept
}

// runnerAlone is a name of two or three words that may be a runner's and is not typed small; "" for none.
func runnerAlone(words []string) string {
	name := strings.Join(words, " ")
	if len(words) < 2 || len(words) > 3 || strings.ToLower(name) == name || !isRunnersName(name) {
		return ""
	}
	return name
}

// isRunnersName says whether a text may be a person's name and no place, club or general words.
func isRunnersName(text string) bool {
	return mayBeRunner(text) && (!landWords[finalWord(text)] || strings.Contains(text[strings.LastIndexByte(text, ' '):], "-"))
}

// namesNobody says whether a folded word is one of clubs, titles, headings and the like, which are no names of people.
func namesNobody(w string) bool {
	return cardWords[w] || clubWords[w] || titleWords[w] || nameWords[w] || headingWords[w] != 0 || wordsOfParts[w] || recordWords[w]
}

// mayBeRunner is the same for names that a feature of the land may end, "Jo Hill", where what stands beside them says
// that they are no places.
func mayBeRunner(text string) bool {
	words := strings.Fields(text)
	return looksNamed(text) && !slices.ContainsFunc(words, func(w string) bool {
		if len(words) > 2 && w != words[0] && w == strings.ToLower(w) {
			return false // the van of van Dijk
		}
		w = fold(w)
		return andWords[w] || namesNobody(w)
	})
}

// cardWords are words for what one runner keeps of his or her own runs. Common practice, no source.
var cardWords = set(`card diary log logbook journal runs races times results history record career
	tagebuch lauftagebuch laufbuch laufkarte saisonkarte carnet journal courses diario corse carreras dagboek loopdagboek dagbok lopdagbok traningsdagbok dagbog lobedagbog paivakirja juoksupaivakirja dziennik dzienniczek denik naplo futonaplo jurnal dnevnik paevik dienorastis gunluk dyddiadur diari`)
