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

// pathDate reads a date of which each part is a folder of its own, with the day as
// the name of the file or of the last folder: 2026/01 January/Alder Bank/17.csv.
// parts are those of the path, the last without its ending. months says which
// folders are months, and so no dates by themselves.
func pathDate(parts []string) (e evidence, months map[int]bool, ok bool) {
	year, month, text := 0, 0, ""
	months = map[int]bool{}
	for i, p := range parts {
		p = strings.TrimSpace(p)
		switch {
		case i < len(parts)-1 && yearFolder.MatchString(p):
			year, _ = strconv.Atoi(yearFolder.FindStringSubmatch(p)[1])
			month, text = 0, p
		case year > 0 && month == 0 && i < len(parts)-1 && folderMonth(p) > 0:
			month, text = folderMonth(p), text+"/"+p
			months[i] = true
		case month > 0 && dayName.MatchString(p):
			d, _ := strconv.Atoi(dayName.FindStringSubmatch(p)[1])
			if !validDate(year, month, d) {
				continue
			}
			e = evidence{foundDate: foundDate{readings: []reading{{y: year, m: month, d: d}}, weekday: -1}, text: text + "/…/" + p, from: "folder name", strength: 1}
			ok = true
		}
	}
	return e, months, ok
}
