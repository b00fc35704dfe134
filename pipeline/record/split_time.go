package record

import (
	"strings"
	"unsafe"
)

// splitTime finds a time that stands in two columns, minutes and seconds.
func (r *Reader) splitTime() {
	r.seconds = -1
	minutes, seconds := -1, -1
	for i := range r.headings {
		switch h := strings.Trim(r.heading(i), " .:()"); {
		case minuteHeadings[h] && minutes < 0:
			minutes = i
		case secondHeadings[h] && seconds < 0:
			seconds = i
		}
	}
	if minutes >= 0 && seconds >= 0 && (r.c.Time < 0 || r.c.Time == minutes) {
		r.c.Time, r.seconds = minutes, seconds
	}
}

var (
	minuteHeadings = wordSet(`min|mins|minute|minutes|minuten|minuti|minutos|minuter|minutter|minuty|time min|time (min|mm`)
	secondHeadings = wordSet(`sec|secs|second|seconds|sek|sekunden|secondes|secondi|segundos|seg|sekunder|sekundy|seconden|time sec|time (sec|ss`)
)

// timeText is the cell that holds the time, or minutes and seconds put
// together.
func (r *Reader) timeText(cells []string) string {
	m := cell(cells, r.c.Time)
	if r.seconds < 0 {
		return m
	}
	s := cell(cells, r.seconds)
	if len(m) == 0 || len(s) == 0 || m[len(m)-1] < '0' || m[len(m)-1] > '9' || s[0] < '0' || s[0] > '9' {
		return m
	}
	r.timeRoom = append(append(r.timeRoom[:0], m...), ':')
	if len(s) == 1 || s[1] < '0' || s[1] > '9' {
		r.timeRoom = append(r.timeRoom, '0')
	}
	r.timeRoom = append(r.timeRoom, s...)
	return unsafe.String(&r.timeRoom[0], len(r.timeRoom))
}
