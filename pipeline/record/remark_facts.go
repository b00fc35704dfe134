package record

import (
	"bytes"
	"regexp"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// remarkFacts is what a remark says of its runner and nothing else: a sex, "first lady", "2nd F", a group, "V60",
// "1st vet 50", "under 11", or an age, "aged 12", "turned 70 today". age is -1 for none.
type remarkFacts struct {
	sex    Sex
	group  string
	lo, hi int // ages of the group
	age    int
	year   int // of birth
}

// facts reads a remark or one of its clauses, each distinct text once.
func (r *Reader) facts(s string) remarkFacts {
	none := remarkFacts{age: -1}
	if len(s) < 2 || len(s) > 60 {
		return none
	}
	if f, known := r.factsOf[s]; known {
		return f
	}
	f := none
	r.scratch = fold(r.scratch[:0], s)
	clauses(r.scratch, func(c []byte) bool {
		f = clauseFacts(c)
		return f != none
	})
	if len(r.factsOf) < remarkLimit {
		if r.factsOf == nil {
			r.factsOf = map[string]remarkFacts{}
		}
		r.factsOf[strings.Clone(s)] = f
	}
	return f
}

// clauseFacts reads a folded clause.
func clauseFacts(c []byte) remarkFacts {
	f := remarkFacts{age: -1}
	if m := ageSaid.FindSubmatch(c); m != nil {
		for _, n := range m[1:] {
			if len(n) > 0 {
				f.age = atoi(n)
			}
		}
	} else if n, ok := ageWithUnit(c); ok && !countedYears[string(bytes.Trim(bytes.TrimLeft(c, "0123456789"), " ."))] {
		f.age = n
	}
	if f.age >= youngestAge && f.age <= oldestAge {
		return f
	}
	f.age = -1
	if m := bornSaid.FindSubmatch(c); m != nil {
		f.year = atoi(m[1])
		return f
	}
	words := bytes.Fields(c)
	from, to, ranked := 0, len(words), false
	for from < to && (firstOfGroup[string(bytes.Trim(words[from], ".!:"))] || rankWord.Match(words[from])) {
		from, ranked = from+1, true
	}
	for to > from && behindFirst[string(bytes.Trim(words[to-1], ".!"))] {
		to--
	}
	if groupOfRemark.Match(c) {
		from, to = 0, len(words) // 40 and over
	}
	rest := bytes.Trim(bytes.Join(words[from:to], []byte(" ")), " .!")
	switch said := text.SexOf(string(rest)); {
	case len(rest) == 0:
	case ranked && string(rest) == "no": // 1. nő
		f.sex = W
	case len(rest) == 1:
		if ranked && (rest[0] == 'f' || rest[0] == 'w') {
			f.sex = W // "1st F"
		} else if ranked && rest[0] == 'm' {
			f.sex = M
		}
	case said == 'M':
		f.sex = M
	case said == 'W':
		f.sex = W
	case groupOfRemark.Match(rest):
		switch g := parseGroup(rest); g.kind {
		case under, upTo:
			if g.lo >= 8 && g.lo <= 23 {
				f.group, f.sex, f.hi = string(rest), groupSexes.sex(g.sex), int(g.lo)
				if g.kind == under {
					f.hi--
				}
			}
		case open, start:
			if g.lo >= 30 && g.lo%5 == 0 && !g.young {
				f.group, f.sex, f.lo, f.hi = string(rest), groupSexes.sex(g.sex), int(g.lo), oldest
			}
		case junior:
			f.group, f.hi = string(rest), youngAdult-1
		}
	}
	return f
}

var (
	// ageSaid is an age with the words that say it is one. Common practice, no source.
	ageSaid = regexp.MustCompile(`^(?:only )?(?:aged?|age:|alter|im alter von|agee?|edad|eta|leeftijd|alder|ika|wiek|vek) ?:? ?(\d{1,3})(?: today)?$|^(?:turned|turns|is|just turned|fyller|wird heute|wird|wurde heute|fylte|fyldt|cumple|compie|fait|wordt) (\d{1,3}) (?:today|heute|ans aujourd'hui|ans|idag|i dag|hoy|oggi|vandaag)$|^(?:wird heute|wurde heute|wordt vandaag) (\d{1,3})$|^(\d{1,3})(?:st|nd|rd|th) birthday(?: today| run)?$|^(?:only )?(\d{1,3}) (?:years? old|yrs? old|ans aujourd'hui|jahre alt|jaar oud|ar gammal|ar gammel)(?: today)?$|^(\d{1,3}) ?(?:yo|y\.o|y/o)$`)
	// bornSaid is a year of birth with a word that says it is one. Common practice, no source.
	bornSaid = regexp.MustCompile(`^(?:born|born in|b|yob|year of birth|jg|jahrgang|geb|geboren|ne en|nee en|nato nel|nata nel|fodt|fodd|rocnik|rocznik|ur|nar)[.:]? ?((?:19|20)\d\d)$`)
	// rankWord is a place before a group, "1st", "2.", "3e", "1:a".
	rankWord = regexp.MustCompile(`^\d{1,2}(?:st|nd|rd|th|\.?[aoe]|er|re|ere|eme|:[ae]|\.)?$`)
	// groupOfRemark is a group that says by its words or letters that it is one of ages.
	groupOfRemark = regexp.MustCompile(`^(?:u|u-|under|over|o|ue|v|vet|vets|veteran|mv|fv|lv|wv|vm|vw|master|masters|sub|sub-|m|w|f|l|unter|uber|onder|boven|moins de|plus de|menos de|menores de|mayores de|mas de|alle|yli|ponizej|powyzej|do|nad) ?\d{1,2}s?(?: (?:boys?|girls?|men|women|man|woman|lady|ladies|male|female|m|f|w|jahre|ans|anos|anni|lat|let))?$|^(?:veteran|vet|master)s? \d\d ?\+$|^\d\d (?:and|or|&) (?:over|older|above)$|^\d\d plus$|^(?:veteran|vet|master) (?:over|men|women|man|woman|lady|ladies) ?\d{2}$|^(?:jun|junior|juniors)$|^\d\d ?\+$`)

	// groupSexes are the letters that stand for one sex in a group by themselves.
	groupSexes = func() *letters {
		l := &letters{}
		l.is['m'], l.is['f'], l.is['w'], l.is['l'] = M, W, W, W
		return l
	}()
	countedYears = wordSet("years|year|yrs|yr|y|j|v|an|l|r|anys|ani|a")
	firstOfGroup = wordSet("first|second|third|fastest|quickest|leading|top|winning|winner|best|erste|erster|zweite|schnellste|schnellster|beste|premiere|premier|deuxieme|meilleure|prima|primo|seconda|primera|primer|segunda|primeira|primeiro|eerste|tweede|snelste|forsta|andra|forste|anden|andre|ensimmainen|toinen|nopein|pierwsza|pierwszy|druga|prvni|druha|elso|masodik|ilk|ikinci|a|the|die|la|le|de|cat|category|class|klasse|kategorie|categorie|categoria|kat|ak")
	behindFirst  = wordSet("home|finisher|finishers|runner|winner|across|the|line|in|today|overall|race|finish|athlete|arrivee|classee|classificata|arrivata|clasificada|clasificado|im|ziel|i|mal|over|here|again|again!|category|place")
)

// youngAdult is the age from which nobody is called a junior.
const youngAdult = 20

// readRemarks takes sex and age from the remarks of a row where its columns say none: its notes, what stands behind
// its name in brackets or behind a dash, and behind its time.
func (r *Reader) readRemarks(cells []string, day unit.Day, out *Line, meet func(int, age.Window, age.Basis, string), aged bool) {
	if aged && (r.c.Sex >= 0 || out.Sex != NotGiven) {
		return
	}
	name := cell(cells, r.c.Name)
	behind := endBrackets(name)
	if at, tail, figure := bareGroup(name); behind == "" && at > 0 && figure {
		behind = tail // Jo Lee V55
	}
	if behind == "" {
		if i := max(strings.LastIndex(name, " - "), strings.LastIndex(name, " – ")); i > 0 {
			behind = strings.TrimLeft(name[i:], " -–")
		}
	}
	_, beside := timeAndRemark(cell(cells, r.c.Time))
	for _, k := range [...]struct {
		index int
		said  string
	}{{r.c.Notes, words(cells, r.c.Notes)}, {r.c.Name, behind}, {r.c.Time, beside}} {
		if k.said == "" {
			continue
		}
		f := r.facts(k.said)
		if r.c.Sex < 0 && out.Sex == NotGiven {
			out.Sex = f.sex
		}
		switch {
		case aged:
		case f.age >= 0:
			meet(k.index, r.windowOf(f.age, day), age.OnTheDay, "")
			aged = true
		case f.year > 0:
			meet(k.index, age.OfYear(f.year), age.Born, "")
			aged = true
		case f.group != "":
			meet(k.index, r.groupAges(f.lo, f.hi, r.o.GroupBasis, day), r.o.GroupBasis, f.group)
			aged = true
		}
	}
}
