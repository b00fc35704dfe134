// Package unit holds the units that every room shares: calendar days and
// running times, with one way to read and print each.
package unit

import (
	"errors"
	"fmt"
	"strings"
	"time"
)

// Day is a calendar day of the proleptic Gregorian calendar, counted from
// 1970-01-01 = 0. It has no time zone and no time of day.
type Day int32

// NewDay gives the day of a civil date. Out-of-range months and days roll over
// as in time.Date: NewDay(2029, 2, 29) is 1 March 2029, which is the rule for
// birthdays on 29 February in common years.
func NewDay(year, month, day int) Day {
	return Day(time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// ParseDay reads an ISO 8601 calendar date, 2026-01-03.
func ParseDay(s string) (Day, error) {
	t, err := time.Parse("2006-01-02", s)
	var wrong *time.ParseError
	switch {
	case errors.As(err, &wrong) && strings.HasSuffix(wrong.Message, "out of range"):
		return 0, fmt.Errorf("there is no day %q: write the year, the month and the day in figures, as in 2026-01-03", s)
	case err != nil:
		return 0, fmt.Errorf("%q is not a date: write the year, the month and the day in figures, as in 2026-01-03", s)
	}
	return DayOf(t), nil
}

// DayOf is the civil date that t shows in its own zone.
func DayOf(t time.Time) Day {
	y, m, d := t.Date()
	return NewDay(y, int(m), d)
}

// Time is midnight UTC of the day.
func (d Day) Time() time.Time { return time.Unix(int64(d)*86400, 0).UTC() }

// Date gives year, month (1..12) and day of month.
func (d Day) Date() (year, month, day int) {
	y, m, dd := d.Time().Date()
	return y, int(m), dd
}

// String prints ISO 8601, 2026-01-03.
func (d Day) String() string { return d.Time().Format("2006-01-02") }

// Long prints the day in words, 3 January 2026.
func (d Day) Long() string { return d.Time().Format("2 January 2006") }

// LastOn is the latest such day of the year, on d or before it: of 1 September, on 3 January
// 2026, that of 2025. The day must be one that every year has.
func (d Day) LastOn(month, day int) Day {
	year, _, _ := d.Date()
	if on := NewDay(year, month, day); on <= d {
		return on
	}
	return NewDay(year-1, month, day)
}

// Weekday of the day.
func (d Day) Weekday() time.Weekday { return d.Time().Weekday() }

// ISOWeek gives the ISO 8601 week-numbering year and week: Saturday 2021-01-02
// is 2020, 53.
func (d Day) ISOWeek() (year, week int) { return d.Time().ISOWeek() }

// Week counts ISO weeks (Monday to Sunday) from the week that holds
// 1970-01-01; two days have the same Week exactly when they have the same
// ISO year and week.
func (d Day) Week() int {
	n := int(d) + 3 // 1970-01-01 was a Thursday
	if n < 0 {
		n -= 6
	}
	return n / 7
}
