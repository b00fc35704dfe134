package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// Halves of a result are read however the places stand on their lines: the times of a watch, and the names
// of who took which place.
func TestTypedHalves(t *testing.T) {
	names := []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow", "Fay Ivy", "Gus Hay"}
	const day = "alder-bank 2026-01-03"
	for _, c := range []struct{ line, columns, kind string }{
		{"%[1]d %[3]s", "position time", "times"},
		{"%[1]d. %[3]s", "position time", "times"},
		{"%[1]d: %[3]s", "position time", "times"},
		{"(%[1]d) %[3]s", "position time", "times"},
		{"%[1]d -> %[3]s", "position time", "times"},
		{"Lap %[1]d: %[3]s", "position - time", "times"},
		{"Token %[1]d - %[3]s", "position - time", "times"},
		{"T%[1]d %[3]s", "position time", "times"},
		{"P%03[1]d,%[3]s", "position - time", "times"},
		{"Split %[1]d,%[3]s", "position - time", "times"},
		{"%[3]s %[1]d", "position time", "times"},
		{"%[3]s (%[1]d)", "position time", "times"},
		{"%[1]d %[4]dm%02[5]ds", "position time", "times"},
		{"%[1]d, %[4]d min %[5]d sec", "position time", "times"},
		{"%[1]d %[2]s", "position name", "names"},
		{"%[1]d. %[2]s", "position name", "names"},
		{"%[1]d = %[2]s", "position name", "names"},
		{"#%[1]d %[2]s", "position name", "names"},
		{"%[2]s (%[1]d)", "position name", "names"},
		{"%[2]s,%[1]d", "position name", "names"},
		{"P%03[1]d,%[2]s", "position - name", "names"},
		{"Token %[1]d: %[2]s", "position - name", "names"},
		{"%[1]d %[2]s M34", "position name age-group", "names"},
	} {
		lines := make([]string, len(names))
		for i, n := range names {
			minutes, seconds := 18+i, i*7
			lines[i] = trimExtra(fmt.Sprintf(c.line+"\x00%[1]d%[2]s%[3]s%[4]d%[5]d", i+1, n, fmt.Sprintf("%d:%02d", minutes, seconds), minutes, seconds))
		}
		for _, order := range []string{"as they came in", "the last first"} {
			if order == "the last first" {
				slices.Reverse(lines)
			}
			s, err := Read("alder-bank_2026-01-03.txt", []byte(strings.Join(lines, "\n")+"\n"), Options{})
			if err != nil {
				t.Errorf("%s, %s: %v", c.line, order, err)
				continue
			}
			got := outcome(s)
			columns := strings.TrimRight(strings.Join(strings.Fields(strings.ReplaceAll(got.columns+" ", "other ", "- ")), " "), " -")
			if columns != c.columns || got.kind != c.kind || got.run != day || got.rows != "1-7" || got.asks != "" {
				t.Errorf("%s, %s: columns %q, kind %q, run %q, rows %q, asks %q", c.line, order, columns, got.kind, got.run, got.rows, got.asks)
			}
		}
	}
}

// What stands over the times of a watch, or over names from the funnel, names no course where the file does.
func TestTitlesOfHalves(t *testing.T) {
	const times, names = "1 18:20\n2 18:31\n3 19:02\n4 19:10\n5 19:40\n", "1 Jo Lee\n2 Al Roe\n3 Cy Dee\n4 Di Fox\n5 Ed Gow\n"
	for title, rows := range map[string]string{
		"Watch 1, started 9:00": times, "Jean's phone": times, "Raw times": times, "Hand timed": times, "Stoppuhr": times, "Downloaded from the timer": times,
		"Funnel list": names, "Scanner 2": names, "5 finishers": names, "Part 2: names": names, "Raffle tickets": names, "Ordre d'arrivée": names,
	} {
		s, err := Read("Alder Bank 2026-01-03 list.txt", []byte(title+"\n"+rows), Options{})
		if err != nil {
			t.Errorf("%s: %v", title, err)
			continue
		}
		if got := outcome(s); !strings.HasPrefix(got.run, "alder-bank 2026-01-03") || got.rows != "2-6" || got.asks != "" {
			t.Errorf("%s: run %q, rows %q, asks %q", title, got.run, got.rows, got.asks)
		}
	}
	// A place that the title names stays one.
	s, err := Read("Alder Bank 2026-01-03 list.txt", []byte("Mill Lane\n"+times), Options{})
	if err != nil || outcome(s).run != "mill-lane 2026-01-03" {
		t.Errorf("Mill Lane: %v", err)
	}
}

// Places that are written with more than their number, or in words, are read without a heading too.
func TestSpokenPlaces(t *testing.T) {
	for _, places := range [][]string{
		{"First", "Second", "Third", "Fourth", "Fifth"}, {"Winner", "2", "3", "4", "5"}, {"[1]", "[2]", "[3]", "[4]", "[5]"},
		{"1 of 30", "2 of 30", "3 of 30", "4 of 30", "5 of 30"}, {"P001", "P002", "P003", "P004", "P005"},
	} {
		var b strings.Builder
		for i, p := range places {
			fmt.Fprintf(&b, "%s,%s,%d:%02d\n", p, []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow"}[i], 18+i, 7*i)
		}
		s, err := Read("alder-bank_2026-01-03.csv", []byte(b.String()), Options{})
		if err != nil {
			t.Errorf("%q: %v", places, err)
			continue
		}
		if got := outcome(s); got.columns != "position name time" || got.rows != "1-5" || got.asks != "" {
			t.Errorf("%q: columns %q, rows %q, asks %q", places, got.columns, got.rows, got.asks)
		}
	}
	// Curly marks around all cells are marks as well.
	s, err := Read("alder-bank_2026-01-03.csv", []byte("“Pos”,“Name”,“Age”,“Time”\n“1”,“Jo Lee”,“34”,“18:20”\n“2”,“Al Roe”,“29”,“18:31”\n“3”,“Cy Dee”,“41”,“19:02”\n“4”,“Di Fox”,“52”,“19:10”\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	s.Parts[0].Each(func(_ int, cells []string) error {
		if strings.Contains(strings.Join(cells, ""), "“") {
			t.Errorf("a mark stands in %q", cells)
		}
		return nil
	})
}

// trimExtra leaves out what stands behind the mark that lets every form take all arguments.
func trimExtra(s string) string {
	s, _, _ = strings.Cut(s, "\x00")
	return s
}

// What a watch or a scanner writes beside places, times and names.
func TestWatchAndScanner(t *testing.T) {
	for _, c := range []struct{ name, text, columns, kind, rows string }{
		{"laps and the time so far, the last first", "Lap 6,00:21.30,20:01.30\nLap 5,00:20.00,19:40.00\nLap 4,00:18.00,19:20.00\nLap 3,00:31.00,19:02.00\nLap 2,00:10.69,18:31.00\nLap 1,18:20.31,18:20.31\n", "position - time", "times", "1-6"},
		{"the start at place 0", "0,0:00:00.00\n1,0:18:20.31\n2,0:18:31.00\n3,0:19:02.00\n4,0:19:40.00\n5,0:20:01.00\n", "position time", "times", "2-6"},
		{"the start without a place", "00:00.00\n18:20.31\n18:31.00\n19:02.00\n19:40.00\n20:01.00\n", "time", "times", "2-6"},
		{"the start in a row of its own", "Start,09:00:04\n1,09:18:24\n2,09:18:35\n3,09:19:06\n4,09:19:10\n5,09:19:44\n6,09:20:07\n7,09:20:30\n8,09:21:02\n", "position - time", "times", "2-9"},
		{"the start at place 0 of a clock", "0,09:00:04\n1,09:18:24\n2,09:18:35\n3,09:19:06\n4,09:19:10\n5,09:19:44\n6,09:20:07\n7,09:20:30\n8,09:21:02\n", "position - time", "times", "2-9"},
		{"a time that nobody is sure of, and one that is missing", "1 18:20\n2 18:31\n3 19:02?\n4 ---\n5 19:40\n6 20:01\n", "position time", "times", "1-6"},
		{"when who was scanned", "Position,Name,Scanned at\n1,Jo Lee,09:19:34\n2,Al Roe,09:19:50\n3,Cy Dee,09:20:26\n4,Di Fox,09:20:39\n5,Ed Gow,09:20:44\n6,Fay Ivy,09:21:07\n7,Gus Hay,09:21:47\n8,Hal Jay,09:22:10\n", "position name -", "names", "2-9"},
		{"who is here for the first time", "Pos,Name,First time?\n1,Jo Lee,yes\n2,Al Roe,\n3,Cy Dee,\n4,Di Fox,yes\n", "position name -", "names", "2-5"},
		{"numbers that are the places", "Number,Name\n3,Jo Lee\n1,Al Roe\n2,Cy Dee\n5,Di Fox\n6,Ed Gow\n4,Fay Ivy\n", "position name", "names", "2-7"},
		{"numbers of times alone", "Finisher,Time\n1,18:20\n2,18:31\n3,19:02\n4,19:10\n5,19:40\n6,20:01\n", "position time", "times", "2-7"},
		{"nobody known at some places", "1. Jo Lee\n2. Al Roe\n3.\n4. Di Fox\n5. n/a\n6. Fay Ivy\n7. Gus Hay\n", "position name", "names", "1-7"},
		{"two lists of names beside one another", "Pos,Name,Pos,Name\n1,Jo Lee,4,Di Fox\n2,Al Roe,5,Ed Gow\n3,Cy Dee,6,Fay Ivy\n", "position name", "names", "2-4 2-4"},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		got := outcome(s)
		columns := strings.Join(strings.Fields(strings.NewReplacer("other ", "- ", "split ", "- ").Replace(got.columns+" ")), " ")
		if columns != c.columns || got.kind != c.kind || !strings.HasPrefix(got.run, "alder-bank 2026-01-03") || got.rows != c.rows || got.asks != "" {
			t.Errorf("%s: columns %q, kind %q, run %q, rows %q, asks %q", c.name, columns, got.kind, got.run, got.rows, got.asks)
		}
	}
}
