package sheet

import (
	"regexp"
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
		if !hasFigures(cells) { // as all lines of results have
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
		card.name = runnerOfFile(file) // which names no course
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

// possessive is a name before what is that person's.
var possessive = regexp.MustCompile(`^(\PN+?)['’](?:s\b)?(.*)$`)

// cardOf is the name in a title that says whose runs these are, with a word for a card or diary beside it: "Season
// card 2025: Jo Lee, F52", "Jo Lee – running log", "Jo Lee's 5k diary"; "" for none.
func cardOf(title string) string {
	if m := possessive.FindStringSubmatch(title); m != nil && isRunnersName(m[1]) && anyWord(m[2], cardWords) {
		return trim(m[1])
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

// runnerOfFile is the name of a runner in that of a file with words for what one keeps of one's own runs: "Jo Lee - my
// runs", "Jo Lee 5k history"; "" for none.
func runnerOfFile(file string) string {
	if name := cardOf(file); name != "" {
		return name
	}
	words := strings.FieldsFunc(file, func(r rune) bool { return r == ' ' || r == '_' })
	n, kept := len(words), false
	for ; n > 0; n-- {
		w := fold(words[n-1])
		if _, _, _, far := findDistance(words[n-1]); !far && !cardWords[w] && !titleWords[w] && !digitsOnly(w) && w != "my" {
			break
		}
		kept = kept || cardWords[w]
	}
	name := strings.Join(words[:n], " ")
	if !kept || n < 2 || n > 3 || strings.ToLower(name) == name || !isRunnersName(name) {
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
