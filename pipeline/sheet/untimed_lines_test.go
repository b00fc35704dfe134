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
