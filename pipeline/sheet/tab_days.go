package sheet

import (
	"slices"
	"strings"

	"lapwing/pipeline/unit"
)

// tabDays gives tabs called after days alone, "07", "14", "Sat 21", their dates, where the
// name of the file or a title says the month and its year. All must be days of that month and
// of one weekday, as those of a weekly run are: else the numbers may be anything.
func (rs *runSettler) tabDays(parts []*Part, evs [][]evidence) {
	if len(parts) < 2 {
		return
	}
	month, year, from, ok := rs.monthOfAll(parts)
	if !ok {
		rs.tabFigures(parts, evs)
		return
	}
	days, seen := make([]int, len(parts)), map[int]bool{}
	weekday := -1
	for i, p := range parts {
		d, alone := dayAlone(p.Tab)
		if !alone || seen[d] || len(evs[i]) > 0 || !validDate(year, month, d) {
			return
		}
		w := unit.NewDay(year, month, d).Weekday()
		if weekday >= 0 && int(w) != weekday {
			return
		}
		if said, named := weekdayNames[strings.Trim(strings.Fields(fold(p.Tab))[0], ".")]; named && said != int(w) {
			return
		}
		days[i], seen[d], weekday = d, true, int(w)
	}
	for i, p := range parts {
		evs[i] = append(evs[i], evidence{foundDate: foundDate{readings: []reading{{y: year, m: month, d: days[i]}}, weekday: -1},
			text: p.Tab, from: "tab name and " + from, strength: 3})
	}
}

// monthOfAll is the one month with its year that the name of the file and the titles give.
func (rs *runSettler) monthOfAll(parts []*Part) (month, year int, from string, ok bool) {
	found := func(text, where string) bool {
		m, y, has := monthAndYear(text)
		if !has {
			return true
		}
		if ok && (m != month || y != year) {
			return false
		}
		month, year, from, ok = m, y, where, true
		return true
	}
	if !found(strings.ReplaceAll(baseStem(rs.sheet.Name), "_", " "), "file name") {
		return 0, 0, "", false
	}
	for _, p := range parts {
		for i, t := range p.Titles {
			if !found(t, p.titleAt(i)) {
				return 0, 0, "", false
			}
		}
	}
	return month, year, from, ok
}

// monthAndYear finds a month in words with its year behind it, "November 2026", "nov 26", or before its number, "2026-11
// November".
func monthAndYear(text string) (month, year int, ok bool) {
	toks := tokenize(text)
	for i, t := range toks {
		if m, known := monthNames[t.word]; t.kind == 'l' && known {
			if j := yearBehind(toks, i); j > 0 {
				return m + 1, toks[j].n, true
			}
			if numbersMonth(toks, i-2) {
				return m + 1, toks[i-4].n, true
			}
		}
	}
	f := strings.Fields(fold(text))
	return monthOfTab(strings.Join(f[max(0, len(f)-2):], " "))
}

// tabFigures gives tabs called after day and month in four figures without a mark, "1801", "2501",
// their dates, where the sheet says a year. All must be days of one weekday in one order of day
// and month, and not in the other.
func (rs *runSettler) tabFigures(parts []*Part, evs [][]evidence) {
	years := distinctYears(slices.Clone(rs.years))
	if len(years) == 0 || len(years) > 2 {
		return
	}
	tabs := map[string]bool{}
	for i, p := range parts {
		if len(p.Tab) != 4 || !digitsOnly(p.Tab) || len(evs[i]) > 0 {
			return
		}
		tabs[p.Tab] = true
	}
	if len(tabs) < 2 {
		return
	}
	var found func(tab string) (month, day int)
	year, fits, valid := 0, 0, 0
	for _, dayFirst := range []bool{true, false} {
		read := func(tab string) (month, day int) {
			a, b := int(tab[0]-'0')*10+int(tab[1]-'0'), int(tab[2]-'0')*10+int(tab[3]-'0')
			if dayFirst {
				return b, a
			}
			return a, b
		}
		for _, y := range years {
			weekdays, days := map[int]bool{}, 0
			for tab := range tabs {
				if m, d := read(tab); validDate(y, m, d) {
					weekdays[int(unit.NewDay(y, m, d).Weekday())] = true
					days++
				}
			}
			if days < len(tabs) {
				continue
			}
			valid++
			if len(weekdays) == 1 {
				found, year = read, y
				fits++
			}
		}
	}
	if fits != 1 || len(tabs) == 2 && valid > 1 {
		return
	}
	for i, p := range parts {
		m, d := found(p.Tab)
		evs[i] = append(evs[i], evidence{foundDate: foundDate{readings: []reading{{y: year, m: m, d: d}}, weekday: -1},
			text: p.Tab, from: "tab name and the year that the sheet says", strength: 3})
	}
}
