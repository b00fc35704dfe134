package sheet

import (
	"strings"
)

// minutesAndSeconds finds times that stand in two columns, minutes and seconds,
// or three with the hours. They are joined into a column of their own.
func (s *settler) minutesAndSeconds() {
	unit := func(i int) byte {
		u := unitHeading(s.headings[i])
		if p := s.profiles[i]; u != 0 && p.filled > 0 && p.shareOf(kInt, kDecimal) < .8 && (u != 'm' || !s.repeatsFigures(i)) {
			return 0
		}
		return u
	}
	at := map[byte]int{'h': -1, 'm': -1, 's': -1}
	for i := range s.columns {
		u := unit(i)
		if first, ok := at[u]; ok && first < 0 {
			at[u] = i
		}
	}
	if i := at['s']; i >= 0 && at['m'] < 0 && at['h'] < 0 && s.columns[i].Meaning == Other && s.profiles[i].shareOf(kInt, kDecimal) > .8 && s.profiles[i].lo >= 100 && s.profiles[i].hi >= 600 {
		// beyond the seconds of a minute, were the fastest an error of the clock
		s.set(i, Time, "heading %q: its values are seconds", s.headings[i])
		return
	}
	if parts := s.underOneHeading(); len(parts) > 1 && at['m'] < 0 {
		s.clock = parts
		for _, c := range s.clock {
			s.set(c, Other, "heading %q: a part of the time", s.headings[parts[0]])
		}
		return
	}
	if at['m'] < 0 || at['s'] < 0 || s.profiles[at['s']].hi >= 60 {
		return
	}
	if p := s.profiles[at['s']]; p.filled >= 8 && p.hi < 20 {
		return // seconds are spread over the minute: eight of them are all below 20 once in 6 561 times
	}
	s.clock = []int{at['m'], at['s']}
	if at['h'] >= 0 {
		s.clock = []int{at['h'], at['m'], at['s']}
	}
	p := s.profiles[at['s']]
	s.secondsGiven = p.lo == 0 || p.filled*20 > len(s.rows)*19 && p.filled >= 20
	for _, c := range s.clock {
		s.set(c, Other, "heading %q: a part of the time", s.headings[c])
	}
}

// risesUnderMinutes says whether seconds beside a blank cell of minutes go on from the row above, and no
// time falls from row to row, so that each stands under the minutes that it shares.
func (s *settler) risesUnderMinutes() bool {
	minutes, seconds := s.clock[len(s.clock)-2], s.clock[len(s.clock)-1]
	last, minute, blanks := 0.0, 0.0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		m, sec := trim(cellAt(r.cells, minutes)), trim(cellAt(r.cells, seconds))
		if !digitsOnly(sec) || sec == "" || m != "" && !digitsOnly(m) {
			continue
		}
		if m != "" {
			minute = looseNumber(m)
		} else {
			blanks++
		}
		at := 60*minute + looseNumber(sec)
		if minute == 0 || at < last {
			return false
		}
		last = at
	}
	return blanks > 0
}

// repeatsFigures says whether a column begins with a whole number, and all that it holds are
// such numbers and marks for the number above.
func (s *settler) repeatsFigures(i int) bool {
	numbers := 0
	for _, r := range s.rows {
		switch c := trim(cellAt(r.cells, i)); {
		case digitsOnly(c) && c != "":
			numbers++
		case numbers == 0 || c != "" && !isDitto(c) && kindOf(c) != kStatus:
			return false
		}
	}
	return numbers > 1
}

// underOneHeading finds minutes and seconds, or hours before them, in columns of
// which only the first has a heading, "Time": whole numbers, of which the last are
// all under 60 and go up and down.
func (s *settler) underOneHeading() []int {
	whole := func(i int, hi float64) bool {
		p := s.profiles[i]
		return p.filled >= 4 && p.whole && p.shareOf(kInt, kStatus) > .9 && p.count[kInt] > 0 && p.lo >= 0 && p.hi < hi
	}
	for i, g := range s.guesses {
		if !g.known || !g.meaning.isTime() {
			continue
		}
		parts, last := []int{i}, i+1
		for ; last < len(s.headings) && len(parts) < 3 && s.headings[last] == ""; last++ {
			if mark := s.profiles[last]; mark.filled > 3 && mark.count[kStatus] == mark.filled && len(mark.distinct) == 1 {
				continue // a colon in a column of its own
			}
			if !whole(last, 60) {
				break
			}
			parts = append(parts, last)
		}
		end := s.profiles[parts[len(parts)-1]]
		switch n := len(parts); {
		case n == 1 || end.rising*10 > end.steps*9 || len(end.distinct) < 4:
		case n == 2 && whole(i, 200) && s.profiles[i].lo >= 8, n == 3 && whole(i, 5):
			return parts
		}
	}
	return nil
}

// timeUnits are headings of columns that hold a part of a time.
var timeUnits = unitsOf(map[byte]string{
	'h': "h hh hr hrs hour hours awr oriau std stunden stunde heures heure horas hora ore ora uren uur godz timer timmar tim",
	'm': "m mm min mins minute minutes mun munud munudau minuten minutos minuti minuty minuter minutter perc perce minut minuta dk dakika хв мин λεπτα minutes",
	's': "s ss sec secs second seconds eil eiliad eiliadau sek sekunden seconde secondes segundos secondi seconden sekundy sekunder seg mp masodperc sn saniye sekund sekunda sekundit sekundes sekundziu сек δευτ",
}, nil)

// clockUnits are timeUnits with the words that stand only behind figures.
var clockUnits = unitsOf(map[byte]string{
	'h': "hod hodin oras tund tundi st val sat sati ч час часа ωρες ω sa saat klst t 時間 時 小时 小時 时 시간 시",
	'm': "mn minut minutu minuto perc minuta minutit minute minuciu minuutti minuuttia minuut dk dakika мин минута минуты минут м хв хвилина хвилини хвилин λ λεπ λεπτα p phut menit นาที دقيقة דקות 分 分钟 分鐘 분",
	's': "sekund segundo mp sekunda sekundi sekunde sekundes sekundziu sekundit secunde secunda sekuntia sekunti sekunnit vterin vteriny vter vt sn saniye сек секунда секунды секунди секунд с δ δευτ δευτερολεπτα giay detik วินาที ثانية שניות 秒 초",
}, timeUnits)

func unitsOf(words map[byte]string, also map[string]byte) map[string]byte {
	m := map[string]byte{}
	for unit, list := range words {
		for _, w := range strings.Fields(list) {
			m[fold(w)] = unit
		}
	}
	for w, unit := range also {
		m[w] = unit
	}
	return m
}
