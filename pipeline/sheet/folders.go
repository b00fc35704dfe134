package sheet

import (
	"regexp"
	"strconv"
	"strings"
)

// yearFolder, dayName: the parts of a path in which people keep a folder for a
// year, one for each month in it, and one or a file for each day.
var (
	yearFolder = regexp.MustCompile(`^(?:.*\D)?((?:19|20)\d{2})$`)
	dayName    = regexp.MustCompile(`(?i)^(?:day |tag |jour |dia )?(\d{1,2})(?:st|nd|rd|th|\.)?$`)
	ordinalDay = regexp.MustCompile(`(?i)(?:^|[\s_-])(\d{1,2})(?:st|nd|rd|th)$`)
	yearMonth  = regexp.MustCompile(`^((?:19|20)\d{2})[ ._-](\d{1,2})$`)
	monthYear  = regexp.MustCompile(`^(\pL+)\.?[ ,._-]+((?:19|20)\d{2})$`)
	dayMonth   = regexp.MustCompile(`^\d{1,2}[-./ ]\d{1,2}\.?$`)
	monthParts = regexp.MustCompile(`^(\d{1,2})?[ ._-]*(\pL*)\.?$`)
)

// folderMonth is the month that a folder of a year stands for: "01", "01 January",
// "1-Jan", "January"; 0 where it is none.
func folderMonth(folder string) int {
	p := monthParts.FindStringSubmatch(strings.TrimSpace(folder))
	if p == nil {
		return 0
	}
	n, _ := strconv.Atoi(p[1])
	if p[2] == "" {
		if n <= 12 {
			return n
		}
		return 0
	}
	m, ok := monthNames[fold(p[2])]
	if !ok || p[1] != "" && n != m+1 {
		return 0
	}
	return m + 1
}

// folderOfMonth reads a folder that stands for one month of a year: "2019-03", "March 2019".
func folderOfMonth(folder string) (year, month int, ok bool) {
	if m := yearMonth.FindStringSubmatch(folder); m != nil {
		year, _ = strconv.Atoi(m[1])
		month, _ = strconv.Atoi(m[2])
		return year, month, month >= 1 && month <= 12
	}
	if m := monthYear.FindStringSubmatch(folder); m != nil {
		n, known := monthNames[fold(m[1])]
		year, _ = strconv.Atoi(m[2])
		return year, n + 1, known
	}
	return 0, 0, false
}

// dayOfName is the day that a name in the folder of a month ends with, "17", "Sat 7th",
// "Alder Bank 7th", and the weekday beside it, -1 for none.
func dayOfName(name string) (day, weekday int, ok bool) {
	weekday = -1
	if m := dayName.FindStringSubmatch(name); m != nil {
		day, _ = strconv.Atoi(m[1])
		return day, weekday, true
	}
	if n, alone := dayAlone(name); alone {
		return n, weekdayNames[strings.Trim(strings.Fields(fold(name))[0], ".")], true
	}
	if m := ordinalDay.FindStringSubmatch(name); m != nil {
		day, _ = strconv.Atoi(m[1])
		return day, weekday, day > 0
	}
	return 0, weekday, false
}

// inYearFolder says whether a name is nothing but a day and a month in figures, "13.01", and
// one of the folders above it is called after a year: elsewhere such figures may be anything.
func inYearFolder(parts []string, i int) bool {
	if !dayMonth.MatchString(strings.TrimSpace(parts[i])) {
		return false
	}
	for _, p := range parts[:i] {
		if yearFolder.MatchString(strings.TrimSpace(p)) || IsYear(strings.TrimSpace(p)) {
			return true
		}
	}
	return false
}

// pathDate reads a date of which each part is a folder of its own, with the day as
// the name of the file or of the last folder: 2026/01 January/Alder Bank/17.csv.
// parts are those of the path, the last without its ending. months says which
// folders are months, and so no dates by themselves.
func pathDate(parts []string) (e evidence, months map[int]bool, ok bool) {
	year, month, text := 0, 0, ""
	months = map[int]bool{}
	for i, p := range parts {
		p = strings.TrimSpace(p)
		y, m, both := folderOfMonth(p)
		d, weekday, named := 0, -1, false
		if month > 0 {
			d, weekday, named = dayOfName(p)
		}
		switch {
		case i < len(parts)-1 && both:
			year, month, text = y, m, p
			months[i] = true
		case i < len(parts)-1 && yearFolder.MatchString(p):
			year, _ = strconv.Atoi(yearFolder.FindStringSubmatch(p)[1])
			month, text = 0, p
		case year > 0 && month == 0 && i < len(parts)-1 && folderMonth(p) > 0:
			month, text = folderMonth(p), text+"/"+p
			months[i] = true
		case named:
			if !validDate(year, month, d) {
				continue
			}
			e = evidence{foundDate: foundDate{readings: []reading{{y: year, m: month, d: d}}, weekday: weekday}, text: text + "/…/" + p, from: "folder name", strength: 1}
			ok = true
		}
	}
	return e, months, ok
}
