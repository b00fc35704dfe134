package sheet

import (
	"strings"
	"testing"
)

// Those whose race ended without a time stand in lines of their own words, in and below a typed
// list. What names nobody, or several who can't be told from clubs, is none.
func TestUntimedRows(t *testing.T) {
	list := "1\tJo Lee\t\t18:20\n2\tAnn Roe\tVale AC\t18:31\n3\tSam Field\t\t19:02\n"
	for _, k := range []struct{ below, want string }{
		{"DNF Di Fox", "\tDi Fox\t\tDNF"},
		{"Di Fox DNF", "\tDi Fox\t\tDNF"},
		{"- Di Fox (W40) – did not finish", "\tDi Fox (W40)\t\tdid not finish"},
		{"DQ: Di Fox, Vale AC", "\tDi Fox, Vale AC\t\tDQ"},
		{"Abandon : Luc de Witt", "\tLuc de Witt\t\tAbandon"},
		{"Did not finish (2):\nDi Fox\n\nAl Roe\n\nMany Thanks", "Did not finish (2):\n\tDi Fox\t\tDid not finish\n\nAl Roe\n\nMany Thanks"},
		{"DNF: Di Fox, Al Roe", "DNF: Di Fox, Al Roe"},
		{"DNF 3", "DNF 3"},
		{"Did not start: nobody", "Did not start: nobody"},
		{"retired runners welcome", "retired runners welcome"},
		{"Race director Di Fox", "Race director Di Fox"},
		{"Finished: Di Fox", "Finished: Di Fox"},
	} {
		out := strings.Split("Alder Bank 5k\n"+list+k.below, "\n")
		untimedRows(out)
		if got := strings.Join(out[4:], "\n"); got != k.want {
			t.Errorf("%q becomes %q, not %q", k.below, got, k.want)
		}
	}
}

// Within a typed list, who has a question mark or a dash in place of the time, or of the name, is a row; below it
// such lines are about something else.
func TestLeftOpen(t *testing.T) {
	for _, k := range []struct{ line, want string }{
		{"Di Fox ??", "\tDi Fox\t??"},
		{"Di Fox - n/t", "\tDi Fox\tn/t"},
		{"Fox, Di –", "\tFox, Di\t–"},
		{"- Di Fox DNF (calf)", "\tDi Fox\tDNF"},
		{"?? Di Fox", "\tDi Fox\t??"},
		{"??? 19:30", "\t???\t19:30"},
		{"- 19:30", "\t-\t19:30"},
		{"rained here ?", "rained here ?"},
	} {
		out := strings.Split("Alder Bank 5k\n1\tJo Lee\t18:20\n2\tAnn Roe\t18:31\n3\tSam Field\t19:02\n"+k.line+"\n4\tAl Roe\t19:40", "\n")
		untimedRows(out)
		if out[4] != k.want {
			t.Errorf("%q becomes %q, not %q", k.line, out[4], k.want)
		}
		out = strings.Split("Alder Bank 5k\n1\tJo Lee\t18:20\n2\tAnn Roe\t18:31\n3\tSam Field\t19:02\n\n"+k.line, "\n")
		if untimedRows(out); out[5] != k.line && !strings.Contains(k.line, "DNF") {
			t.Errorf("below the list %q becomes %q", k.line, out[5])
		}
	}
}

// Lines of a typed list that are otherwise than most are read with them.
func TestOddLinesOfTypedLists(t *testing.T) {
	for _, c := range []struct{ text, rows, columns string }{
		{"Jo Lee 18:20\nAnn Roe 18:31\nSam Field 19.02\nDi Fox 19:20.\nAl Roe 19:31 mins\nBo Fenn 19:40\nCy Dee 19:51\nEd Gow 20:02\n", "1-8", "name time"},
		{"18:20 Jo Lee\n18:31 Ann Roe\n19:02 mins Sam Field\n19:20 Di Fox\n19:31 Al Roe\n19:40 Bo Fenn\n", "1-6", "name time"},
		{"1 Jo Lee W40 18:20\n2 Ann Roe W45 18:31\n3 Sam Field M40 DNF\n4 Unknown M40 19:20\n5 Al Roe M50 19:31\n6 Bo Fenn M35 19:40\n7 Cy Dee M20 20:01\n8 Ed Gow M40 20:11\n", "1-8", "position name age-group time"},
		{"1..Jo Lee..18:20\n2..Ann Roe..18:31\n3..Sam Field..no time\n4..Di Fox..19:20\n5..Al Roe..19:31\n", "1-5", "position name time notes"},
		{"Mill Leat 18.20\nJo Lee 18:20\nAnn Roe 18:31\nDi Fox 19:20\nAl Roe 19:31\n", "2-5", "name time"}, // nobody knows what that was
	} {
		s, err := Read("alder-bank_2026-01-03.txt", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := outcome(s); got.rows != c.rows || got.columns != c.columns {
			t.Errorf("%q: columns %q, rows %q", c.text, got.columns, got.rows)
		}
	}
}
