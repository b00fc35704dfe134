package sheet

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// isTotal recognises the words that begin a line of totals, in the languages
// of headings (common practice, no source).
func isTotal(f string) bool {
	if f == "" || len(f) > 60 {
		return false
	}
	head, rest, _ := strings.Cut(f, " ")
	if totalWords[head] {
		// "Best, George" is a name; "Best time" is not.
		if rest == "" || !softTotals[head] {
			return true
		}
		tail := strings.Fields(rest)[0]
		return totalTails[tail] || len(tail) > 2 && sexWords[tail] // "Total hombres"
	}
	if second, _, _ := strings.Cut(rest, " "); averageWords[second] && headingWords[head]&cTime != 0 {
		return true // "Tiempo medio"
	}
	return strings.HasPrefix(f, "number of ") || strings.HasPrefix(f, "no of ") || strings.HasPrefix(f, "anzahl ") || strings.HasPrefix(f, "nombre de ") || strings.HasPrefix(f, "numero de ") || strings.HasPrefix(f, "numero di ")
}

// headsSum says whether a heading is that of what many runs come to: "Average", "Fastest", "Best time".
func headsSum(heading string) bool {
	head, _, _ := strings.Cut(fold(heading), " ")
	return totalWords[head] || fastestWords[head]
}

// isRecord recognises what begins a line about a record: "Course record: Jo Lee".
func isRecord(f string) bool {
	words := strings.Fields(f)
	if len(words) > 0 && recordWords[words[0]] {
		return true
	}
	return len(words) > 1 && recordWords[words[1]] && recordOf[words[0]]
}

// averageWords stand behind a word for time in Romance and Slavic languages.
var averageWords = set("medio media moyen moyenne medi sredni srednia sredny prumerny")

var recordWords = set("record records rekord rekorde recordtijd streckenrekord parcoursrecord baanrecord streckenrekorde")

var recordOf = set("course club track venue event ladies womens women mens men male female current previous old new all parcours overall junior veteran age group")

var totalWords = set(`carried ubertrag riporto avg target total totals totaal totale totali totalt gesamt gesamtzahl summe sum suma somme razem ogolem average mean median mittelwert durchschnitt
	promedio keskiarvo atlag atlagido prumer priemer medie keskmine povprecje prosjek vidurkis videji
	schnitt moyenne mediane media mediana gemiddelde gemiddeld srednia mediana snitt genomsnitt gjennomsnitt gennemsnit medel fastest slowest quickest
	count cut par cutoff zeitlimit finishers finisher counted maximum minimum max min teilnehmerzahl anzahl antal antall best subtotal sous participants schnellste langsamste
	summa yhteensa celkem cyfanswm nopein hitain snelste langzaamste snabbast langsammast najszybszy najwolniejszy nejrychlejsi nejpomalejsi cyflymaf arafaf cyfartaledd mediaani mediaan`)

// softTotals may also begin a person's name.
var softTotals = set("carried cut par best max min mean sum count suma sous media fastest finisher participants total")

var totalTails = set("over forward off time times of finishers finisher runners number age man men woman women male female lady ladies lap score zeit temps tiempo tempo tijd tid total participants parcial and all runner club")

// findReckoned finds the rows without a place, where others have one, whose time is reckoned from the
// times above it, whatever the words beside it: their mean, with a fraction of a second that no
// runner has or out of order; their shortest below longer ones; or two and more of mean, median,
// shortest and longest together under the last. candidates are rows of the grid.
func (r *rowRules) findReckoned(g *grid, candidates []int, lastPlaced int) {
	var all, block []float64
	var under []int
	next, fraction := 0, false
	for i := 0; i < g.len() && next < len(candidates); i++ {
		row, cells := g.at(i)
		t := secondsOf(cells, r.time)
		if row < r.first || t <= 0 {
			continue
		}
		if i != candidates[next] {
			if kindOf(cellAt(cells, r.pos)) == kInt {
				all, block = append(all, t), append(block, t)
				fraction = fraction || t != math.Trunc(t)
			}
			continue
		}
		next++
		for _, of := range [][]float64{block, all} {
			if len(of) < leastOfList {
				continue
			}
			mean, lowest, highest, median := figuresOf(of)
			outOfOrder := t < of[len(of)-1]
			isMean := math.Abs(t-mean) <= .5
			switch {
			case isMean && (outOfOrder || t != math.Trunc(t) && !fraction), t == lowest && outOfOrder:
				r.reckon(row)
			case i > lastPlaced && (isMean || t == highest || math.Abs(t-median) <= .5):
				under = append(under, row)
			default:
				continue
			}
			break
		}
		block = block[:0]
	}
	if len(under)+len(r.reckoned) > 1 {
		for _, row := range under {
			r.reckon(row)
		}
	}
}

func (r *rowRules) reckon(row int) {
	if r.reckoned == nil {
		r.reckoned = map[int]bool{}
	}
	r.reckoned[row] = true
}

// figuresOf are mean, lowest, highest and median of some values.
func figuresOf(of []float64) (mean, lowest, highest, median float64) {
	sorted := slices.Sorted(slices.Values(of))
	for _, v := range sorted {
		mean += v / float64(len(sorted))
	}
	n := len(sorted)
	return mean, sorted[0], sorted[n-1], (sorted[(n-1)/2] + sorted[n/2]) / 2
}

// peopleWords say of whom a total is.
var peopleWords = set("lady gent gents lad lads lass person athlete overall ever home club year season month day week")

// calledLikeTotal says whether a row without a place is of somebody called like a word
// of totals, "Max Age" or "Record Smith", and no total: its label is two or three words
// with capitals of which the last is no word of totals or headings, it has a running
// time, and it stands among the results, or right below them and is no faster.
func (r *rowRules) calledLikeTotal(row int, label, clock string) bool {
	words := strings.Fields(label)
	if len(words) < 2 || len(words) > 3 || kindOf(clock) != kClock || r.lastSure == 0 {
		return false
	}
	for i, w := range words {
		f := fold(w)
		if first, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(first) || strings.ContainsAny(w, ":.=0123456789") {
			return false
		}
		if i > 0 && f != "age" && (totalTails[f] || totalWords[f] && !softTotals[f] || recordWords[f] || headingWords[f] != 0 || sexWords[f] || peopleWords[f] || titleWords[f] || fieldWords[f]) {
			return false
		}
	}
	return row <= r.lastSure || row == r.lastSure+1 && r.lastTime > 0 && finishTime(clock) >= r.lastTime
}
