package pipeline

import (
	"strings"
	"testing"
)

// Whatever stands on a line of decisions.csv is read or refused, and an
// acceptance that is read is written as it was.
func FuzzDecision(f *testing.F) {
	f.Add("1", "claim", "abc", "", "12", "", "", "Cora Moss", "")
	f.Add("2", "accept problem", "", "", "", "alder-bank", "2026-01-03", "time-read-as, sheets 1 to 118", "")
	f.Add("3", "exchange", "abc", "Sheet1", "4", "", "", "abc:Sheet1!7", "2")
	f.Add("x", "run state", "", "", "-1", "../..", "2026-02-30", "short by 120 m", "9")
	f.Add("4", "club name", "", "", "", "", "", "Fell = Fell Harriers", "")
	f.Fuzz(func(t *testing.T, id, kind, hash, tab, line, course, date, value, table string) {
		d, err := readDecision([]string{id, "2026-01-03T09:00:00Z", "Pat", kind, hash, tab, line, "R1", course, date, "", value, "", table})
		if err != nil {
			return
		}
		if strings.ContainsAny(d.Course, "/\\") {
			t.Fatalf("course %q", d.Course)
		}
		if err := d.check(); err == nil && d.Kind == DecideAccept {
			a, _ := parseAcceptance(d.Value)
			if back, err := parseAcceptance(a.String()); err != nil || back != a {
				t.Fatalf("%q is read as %+v and then as %+v (%v)", d.Value, a, back, err)
			}
		}
		d.what(map[string]string{})
		d.about(map[string]string{})
	})
}
