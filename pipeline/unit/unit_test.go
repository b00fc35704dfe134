package unit

import "testing"

// ISO 8601: Thu 1 and Sat 3 Jan 2026 are 2026-W01, Sat 2 Jan 2021 is 2020-W53.
func TestISOWeeks(t *testing.T) {
	for _, c := range []struct {
		day        Day
		year, week int
	}{{NewDay(2026, 1, 1), 2026, 1}, {NewDay(2026, 1, 3), 2026, 1}, {NewDay(2021, 1, 2), 2020, 53}} {
		if y, w := c.day.ISOWeek(); y != c.year || w != c.week {
			t.Errorf("%v is %d-W%02d, want %d-W%02d", c.day, y, w, c.year, c.week)
		}
	}
	for d := NewDay(1969, 1, 1); d < NewDay(2031, 1, 1); d++ {
		y0, w0 := (d - 1).ISOWeek()
		y, w := d.ISOWeek()
		if (y0 == y && w0 == w) != ((d - 1).Week() == d.Week()) {
			t.Fatalf("Week disagrees with ISOWeek at %v", d)
		}
	}
}

// World Athletics Technical Rules, road races: 2:09:44.3 is 2:09:45.
func TestCeilSeconds(t *testing.T) {
	if s := CeilSeconds(2*3600000 + 9*60000 + 44300); Clock(s) != "2:09:45" {
		t.Errorf("2:09:44.3 rounds to %s", Clock(s))
	}
	if s := CeilSeconds(1471000); Clock(s) != "24:31" {
		t.Errorf("24:31.000 rounds to %s", Clock(s))
	}
}

func TestLong(t *testing.T) {
	if got := NewDay(2026, 1, 3).Long(); got != "3 January 2026" {
		t.Errorf("%q, want 3 January 2026", got)
	}
}

func TestDistance(t *testing.T) {
	// 1 mile is 1609.344 m exactly (international yard and pound agreement, 1959).
	for m, want := range map[int32]string{5000: "5 km", 3000: "3 km", 6437: "4 miles", 6438: "4 miles", 1609: "1 mile", 10000: "10 km", 5100: "5.1 km", 4321: "4321 m"} {
		if got := Distance(m); got != want {
			t.Errorf("Distance(%d) = %s, want %s", m, got, want)
		}
	}
}

func TestZeroDay(t *testing.T) {
	for _, c := range []struct {
		text, rest string
		days       int
		ok         bool
	}{
		{"30.12.1899 0:22:14", "0:22:14", 0, true},
		{"12/30/1899 12:22:14 AM", "12:22:14 AM", 0, true},
		{"1/1/1900 0:31:00", "0:31:00", 1, true},
		{"01/02/1904 0:31:00", "0:31:00", 1, true},
		{"30.12.1999 0:22:14", "", 0, false},
		{"5/6/1899 0:22:14", "", 0, false},
		{"1899-12-30 0:22:14", "", 0, false},
		{"24:31", "", 0, false},
	} {
		if days, rest, ok := ZeroDay(c.text); ok != c.ok || ok && (days != c.days || rest != c.rest) {
			t.Errorf("%q: %d %q %v", c.text, days, rest, ok)
		}
	}
}

func TestLastOn(t *testing.T) {
	for _, c := range []struct {
		day        Day
		month, dom int
		want       string
	}{
		{NewDay(2026, 1, 3), 9, 1, "2025-09-01"},
		{NewDay(2025, 9, 1), 9, 1, "2025-09-01"},
		{NewDay(2025, 8, 31), 9, 1, "2024-09-01"},
		{NewDay(2024, 2, 29), 2, 28, "2024-02-28"},
		{NewDay(2026, 12, 31), 1, 1, "2026-01-01"},
	} {
		if got := c.day.LastOn(c.month, c.dom).String(); got != c.want {
			t.Errorf("the last %d-%d on %s is %s, want %s", c.month, c.dom, c.day, got, c.want)
		}
	}
}
